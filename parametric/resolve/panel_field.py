"""One panel in its opening: its size, and the stopped grooves it asks of the stiles."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.boards import BOARDS, Board, known_board, usual_thickness
from parametric.catalog.shop import Router, Shop
from parametric.catalog.timbers import TIMBERS, Timber
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.design.settings import BoardSpec, TimberSpec
from parametric.figures import Figure, named
from parametric.infill.board_panel import BoardPanelSpec
from parametric.infill.panel import PanelBlock, Seasons
from parametric.infill.panel_kinds import AnyPanel, PanelSpec, size_panel
from parametric.model import ramp_length
from parametric.names import join
from parametric.resolve.arched_panel import ArchOver, groove_top, under_the_arch
from parametric.resolve.bands import Band
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelField:
    """An opening filled by a panel, mm, with the stopped groove it needs in each stile.

    `run_on` is how far the groove goes on past what the panel needs, so that the cutter's
    round end lies beyond the panel's square corner: 0 where ends are chopped square. `ramp`
    is how far a dado blade would run on past each stop, were the groove sawn. `through` grooves
    run the whole length of the stile and stop nowhere.
    """

    name: str
    foot: Figure
    height: Figure
    top: Figure
    width: Figure
    panel: AnyPanel
    run_on: Figure
    through: bool
    groove_low: Figure
    groove_high: Figure
    blade: Figure
    ramp: Figure
    ramp_low: Figure
    ramp_high: Figure
    arch: ArchOver | None = None
    """The arch over it; `height` and `top` are then to the springing."""


def resolve_timber(design: Design, name: str) -> Timber:
    """The catalogue's timber, with what the design or house says of it in place of its facts."""
    known = TIMBERS.get(name)
    written = design.block("timber", name)
    if not isinstance(written, TimberSpec):
        assert known is not None, "the reader has looked the timber up"
        return known
    density = known.density if known is not None else None
    moves = (known.tangential, known.radial) if known is not None else None
    if written.density is not None:
        density = named(join(name, "density"), written.density, "kg/m3")
    if written.movement is not None:
        moved = named(join(name, "movement coefficient"), written.movement / 100, "per %")
        moves = (moved, moved)
    assert density is not None, "the reader has seen to that"
    assert moves is not None, "the reader has seen to that"
    return Timber(
        name=name,
        density=density,
        tangential=moves[0],
        radial=moves[1],
        source=known.source if known is not None else "as written",
    )


def resolve_board(design: Design, name: str) -> Board:
    """The catalogue's board, with what the design or house says of it in place of its facts.

    A block without a name speaks for every board that has none of its own.
    """
    known = known_board(name, design.unit)
    written = design.block("board", name) or design.block("board")
    if not isinstance(written, BoardSpec):
        assert known is not None, "the reader has looked the board up"
        return known
    density = known.density if known is not None else None
    if written.density is not None:
        density = named(join(name, "density"), written.density, "kg/m3")
    assert density is not None, "the reader has seen to that"
    facts = known or known_board(BOARDS[0], design.unit)
    assert facts is not None
    long, wide = facts.sheet_length, facts.sheet_width
    if written.sheet is not None:
        long = named(join(name, "sheet length"), written.sheet[0])
        wide = named(join(name, "sheet width"), written.sheet[1])
    nominal, measured = _thicknesses(design, name)
    return Board(
        name=name,
        density=density,
        sheet_length=long,
        sheet_width=wide,
        source=known.source if known is not None else "as written",
        nominal=nominal,
        measured=measured,
        grain=facts.grain if written.grain is None else written.grain == "along",
    )


def board_thickness(design: Design, name: str) -> Figure:
    """How thick cases of that board are, mm: measured, else what it is sold as, else the usual."""
    nominal, measured = _thicknesses(design, name)
    if measured is not None:
        return measured
    return usual_thickness(design.unit) if nominal is None else nominal


def _thicknesses(design: Design, name: str) -> tuple[Figure | None, Figure | None]:
    """What a board is sold as and what it measures, mm, from the first block that says either."""
    for written in (design.block("board", name), design.block("board")):
        if isinstance(written, BoardSpec):
            if written.measured is not None:
                usual = usual_thickness(design.unit)
                sold = usual if written.thickness is None else written.thickness
                return sold, written.measured
            if written.thickness is not None:
                return written.thickness, None
    return None, None


def largest_that_fits(cutters: tuple[Figure, ...], width: Figure) -> Figure | None:
    """The largest cutter in the shop that a groove admits."""
    return max((c for c in cutters if c <= width), default=None)


def groove_run_on(panel: PanelBlock, router: Router) -> Figure:
    """How far a stopped groove runs on so that no end need be chopped square, mm.

    By the cutter's radius: where its round end begins, the groove is still full width. It
    lies under the rail that meets the stile there. Source: geometry of the circle.
    """
    cutter = largest_that_fits(router.cutters, panel.groove[0])
    if router.inside_corners == "keep" or panel.groove_by == "saw" or cutter is None:
        return Figure(0.0)
    return cutter / 2


def resolve_panel(
    band: Band,
    spec: PanelSpec,
    leaf: LeafSpec,
    shop: Shop,
    frame_timber: Timber,
    design: Design,
    shoulder: Figure,
    thickness: Figure,
    run_on: Figure,
    through: Figure | None,
    left: Figure,
    head: LeafHead | None,
) -> PanelField:
    """A panel in its opening, and the stopped grooves it asks of the stiles.

    Args:
        band: the opening.
        spec: the panel as written.
        leaf: the leaf as written.
        shop: moisture and saw.
        frame_timber: the frame's, where the panel names none.
        design: for the timber it names.
        shoulder: between the stiles, mm.
        thickness: of the frame, mm.
        run_on: how far the stile's groove goes on past what the panel needs, mm.
        through: how high the leaf is where its stiles are grooved from end to end, mm.
        left: the opening's left edge in the leaf, mm.
        head: the curve over it, if any.
    """
    width = named(join(band.name, "width"), shoulder)
    material: Timber | Board
    if isinstance(spec, BoardPanelSpec):
        material = resolve_board(design, spec.board)
    else:
        material = frame_timber if spec.timber is None else resolve_timber(design, spec.timber)
    panel = size_panel(
        spec,
        name=band.name,
        opening_width=width,
        opening_height=band.height,
        frame=thickness,
        material=material,
        sawn=leaf.sawn,
        seasons=Seasons(
            made=shop.moisture.made, driest=shop.moisture.driest, dampest=shop.moisture.dampest
        ),
        blade_height=named("saw most height", shop.saw.most_height),
    )
    depth, arch = panel.groove_depth, None
    needed_low, needed_high = band.foot - depth, band.top + depth
    if head is not None:
        panel, arch = under_the_arch(panel, head, left=left, width=width, foot=band.foot)
        needed_high = groove_top(head, depth, left=left, width=width, name=band.name)
    runs_on = float(run_on) > 0 and through is None
    low = named(
        join(band.name, "stile groove low end"),
        Figure(0.0) if through is not None else needed_low - run_on if runs_on else needed_low,
    )
    high = named(
        join(band.name, "stile groove high end"),
        through if through is not None else needed_high + run_on if runs_on else needed_high,
    )
    blade = named("dado set", shop.saw.dado_set)
    ramp = named(
        join(band.name, "saw ramp"),
        Figure(
            # A groove deeper than the blade's radius cannot be sawn; past it no ramp grows longer.
            ramp_length(float(blade) / 2, min(float(panel.groove_depth), float(blade) / 2)),
            op="half chord at depth",
            args=(blade, panel.groove_depth),
        ),
    )
    return PanelField(
        name=band.name,
        foot=band.foot,
        height=band.height,
        top=band.top,
        width=width,
        panel=panel,
        run_on=run_on,
        through=through is not None,
        groove_low=low,
        groove_high=high,
        blade=blade,
        ramp=ramp,
        ramp_low=named(join(band.name, "saw ramp low end"), needed_low - ramp),
        ramp_high=named(join(band.name, "saw ramp high end"), needed_high + ramp),
        arch=arch,
    )
