r"""Glue-ups: a panel from its boards, a leaf from its rails and stiles, and the clamps they take.

pressure fans out at 45 degrees     clamp        clamp
                                   ____|____________|____
                                  |   / \          / \   |  outer board
                                  |__/___\________/___\__|
so clamps stand no farther apart than twice the outer board and its caul.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.catalog.bench import DIAGONALS
from parametric.catalog.shop import Clamps
from parametric.design.leaf import LeafSpec
from parametric.figures import Figure, exceeds, hypot, largest, named, whole_up
from parametric.infill.board_panel import BoardPanel
from parametric.infill.flat_panel import FlatPanel
from parametric.infill.panel import PanelTongue, SolidPanelBlock
from parametric.infill.raised_panel import RaisedPanel
from parametric.joints.stub_tenon import StubTenon
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.calls import called
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField
from parametric.resolve.rail import Rail
from parametric.trade.cautions import DUST, GLUE
from parametric.trade.printed import Printed, printed, several


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelGlueUp:
    """One type of panel glued up from boards, mm.

    `jointing` is what the stock has over a board, `planed` what its boards are planed to
    before the glue, `thickness` what the panel is planed to after it.
    """

    mark: str
    names: tuple[str, ...]
    stock: Figure
    width: Figure
    length: Figure
    thickness: Figure
    planed: Figure
    boards: Figure
    board_width: Figure
    jointing: Figure
    spacing: Figure
    clamps: Figure
    steps: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RailClamps:
    """How many clamps press one rail home, and how far up the finished leaf each stands, mm.

    A clamp over each tenon; a rail too wide for that has them spread evenly.
    """

    rail: str
    noun: str
    tenons: int
    clamps: Figure
    places: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafGlueUp:
    """One leaf glued up, mm: clamps across it, the diagonal it must show, what is done in order.

    `minutes` is how long the glue stays open, `slots` how many places it must go into in that
    time: slots, or with stub tenons the tenons' own cheeks, as `goes_in` says.
    """

    leaf: str
    rails: tuple[RailClamps, ...]
    clamps: Figure
    opens: Figure
    spacing: Figure
    diagonal: Figure
    diagonals_differ: Figure
    slots: Figure
    goes_in: Literal["slots", "tenons"]
    minutes: Figure
    steps: tuple[str, ...]
    cautions: tuple[str, ...]


def clamp_spacing(board: Figure, caul: Figure) -> Figure:
    """The farthest that clamps may stand apart over an outer board of this width, mm.

    Source: pressure taken to fan out at 45 degrees; common practice, no source.
    """
    return 2 * (board + caul)


def panel_glue_ups(resolved: Resolved, assembly: Assembly) -> tuple[PanelGlueUp, ...]:
    """Every type of panel of solid timber, from boards of the stock there is."""
    types: dict[str, list[str]] = {}
    for part in assembly.parts:
        types.setdefault(part.mark, []).append(part.name)
    marks = {name: mark for mark, names in types.items() for name in names}
    found: dict[str, PanelGlueUp] = {}
    for leaf in resolved.leaves:
        for field in leaf.panels:
            mark = marks[field.name]
            if mark not in found and not isinstance(field.panel, BoardPanel):
                found[mark] = _panel(resolved, leaf, field.panel, mark, tuple(types[mark]))
    return tuple(found.values())


def _panel(
    resolved: Resolved,
    leaf: Leaf,
    panel: RaisedPanel | FlatPanel,
    mark: str,
    names: tuple[str, ...],
) -> PanelGlueUp:
    shop, said = resolved.shop, printed(resolved)

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(f"glue-up {mark}", quantity), value, unit)

    stock = named("panel stock", panel_spec(resolved, leaf.written).stock)
    width = at("width before trim", panel.across + named("panel trim", shop.blanks.panel))
    length = at("length before trim", panel.along + named("blank over length", shop.blanks.length))
    boards = at("boards", whole_up(width / stock), "")
    board = at("board width", width / boards)
    spacing = at("clamp spacing", clamp_spacing(board, named("clamp caul", shop.clamps.caul)))
    clamps = at("clamps", whole_up(length / spacing) + 1, "")
    alone = int(boards) == 1
    planed = at(
        "boards planed to",
        panel.thickness
        + (Figure(0.0) if alone else named("panel planing", shop.blanks.panel_planing)),
    )
    return PanelGlueUp(
        mark=mark,
        names=names,
        stock=stock,
        width=width,
        length=length,
        thickness=at("thickness", panel.thickness),
        planed=planed,
        boards=boards,
        board_width=board,
        jointing=at("stock over a board", stock - board),
        spacing=spacing,
        clamps=clamps,
        steps=_panel_steps(said, panel, boards, board, planed, clamps, spacing),
        cautions=(*_too_few(shop.clamps, clamps), *GLUE, *DUST),
    )


def panel_spec(resolved: Resolved, leaf: LeafSpec) -> SolidPanelBlock:
    """The panel block as the leaf calls it; there is one where there is a panel of timber."""
    spec = called(resolved.design, leaf, "panel", SolidPanelBlock)
    assert spec is not None
    return spec


def _panel_steps(
    said: Printed,
    panel: RaisedPanel | FlatPanel,
    boards: Figure,
    board: Figure,
    planed: Figure,
    clamps: Figure,
    spacing: Figure,
) -> tuple[str, ...]:
    if int(boards) == 1:
        return (f"One board, planed to {said.wood(board)} wide; nothing to glue.",)
    return (
        f"Plane {int(boards)} boards to {said.wood(planed)}, not yet to thickness; joint them to "
        f"{said.up(board)} wide, edges square. Lay them out for colour: rings up and down in turn "
        "at their ends, long grain all one way. Strike a triangle across them.",
        f"Dry, with {int(clamps)} clamps no more than {said.fine(spacing, down=True)} apart, above and below "
        "in turn: every joint closes by hand pressure.",
        "Glue both edges, clamp from the middle out, tap the faces level, scrape the squeeze-out "
        "when it has gelled.",
        f"Leave a day. Plane both sides alike down to {said.wood(panel.thickness)}: thicknesser, "
        "wide sander or by hand.",
        "Panel saw or track-guided saw: one long-grain edge straight, the other "
        f"{said.wood(panel.across, down=True)} from it; both ends square to them, "
        f"{said.wood(panel.along, down=True)} apart. Diagonals alike.",
    )


def leaf_glue_ups(resolved: Resolved) -> tuple[LeafGlueUp, ...]:
    """Every leaf, glued up in one go."""
    return tuple(_leaf(resolved, leaf) for leaf in resolved.leaves)


def _leaf(resolved: Resolved, leaf: Leaf) -> LeafGlueUp:
    shop, said = resolved.shop, printed(resolved)

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(leaf.name, "glue-up", quantity), value, unit)

    caul = named("clamp caul", shop.clamps.caul)
    narrowest = min(leaf.left_stile, leaf.right_stile, key=float)
    spacing = at("clamp spacing", clamp_spacing(narrowest, caul))
    rails = tuple(
        RailClamps(
            rail=rail.name,
            noun=rail.noun,
            tenons=len(rail.slots),
            clamps=count,
            places=_places(rail, count),
        )
        for rail, count in ((rail, _clamps_over(rail, spacing)) for rail in leaf.rails)
    )
    total = rails[0].clamps
    slots = Figure(2 * rails[0].tenons, unit="")
    for rail in rails[1:]:
        total, slots = total + rail.clamps, slots + 2 * rail.tenons
    clamps = at("clamps", total, "")
    # A loose tenon goes into a slot at each end, and each end into both members.
    stub = isinstance(leaf.joint, StubTenon)
    glued = (
        at("tenons to glue", Figure(2 * len(leaf.rails), unit=""), "")
        if stub
        else at("slots to glue", 2 * slots, "")
    )
    diagonal = at("diagonal before trim", hypot(leaf.width, leaf.stile_blank))
    minutes = named("glue minutes", shop.clamps.glue_minutes, "min")
    return LeafGlueUp(
        leaf=leaf.name,
        rails=rails,
        clamps=clamps,
        opens=at("clamps open", leaf.width),
        spacing=spacing,
        diagonal=diagonal,
        diagonals_differ=DIAGONALS,
        slots=glued,
        goes_in="tenons" if stub else "slots",
        minutes=minutes,
        steps=_leaf_steps(said, leaf, clamps, glued, minutes, diagonal, resolved),
        cautions=(*_too_few(shop.clamps, clamps), *GLUE),
    )


def _clamps_over(rail: Rail, spacing: Figure) -> Figure:
    """As many as the rail has tenons, or as its width asks for."""
    return named(
        join(rail.name, "clamps"),
        largest(Figure(len(rail.slots), unit=""), whole_up(rail.height / spacing)),
        "",
    )


def _places(rail: Rail, count: Figure) -> tuple[Figure, ...]:
    """Up the finished leaf, mm: over each tenon, or spread over a rail that takes more clamps."""
    number = int(count)
    if number == len(rail.slots):
        return tuple(sorted((slot.centre for slot in rail.slots), key=float))
    return tuple(
        named(
            join(rail.name, f"clamp {index + 1}"),
            rail.foot + rail.height * (index + 0.5) / count,
        )
        for index in range(number)
    )


def _bare(field: PanelField, tongue: PanelTongue) -> tuple[Figure, Figure]:
    """How much of the tongue stands out of a stile's groove and of a rail's, mm, when centred."""
    panel = field.panel
    across = named(
        join(field.name, "tongue out across the grain"), tongue.length - panel.engagement_made
    )
    along = named(
        join(field.name, "tongue out along the grain"), tongue.length - panel.end_engagement
    )
    return (across, along) if panel.grain == "upright" else (along, across)


def first_coats(kind: str) -> str:
    """What goes on a panel before its leaf is glued up."""
    return "all its primer and one top coat" if kind == "paint" else "its first coat"


def _leaf_steps(
    said: Printed,
    leaf: Leaf,
    clamps: Figure,
    slots: Figure,
    minutes: Figure,
    diagonal: Figure,
    resolved: Resolved,
) -> tuple[str, ...]:
    finish = resolved.finish
    steps = [
        f"Dry first: all rails, {said.wood(leaf.shoulder)} between the stiles, every shoulder "
        "closed, faces flush, marks on the face side up.",
    ]
    moving = [field for field in leaf.panels if field.panel.moves]
    if moving and finish is not None and finish.kind != "none":
        edges = "tongues" if any(field.panel.tongue for field in moving) else "edges"
        steps.append(
            f"The panel has {first_coats(finish.kind)} on it before it goes in, so that no bare "
            f"wood shows when it shrinks. Dry, its {edges} slide in their grooves by hand."
        )
    stub = isinstance(leaf.joint, StubTenon)
    if stub:
        steps.append(
            f"Glue {int(slots)} tenons in {int(minutes)} minutes, on the tenons' cheeks and the "
            "shoulders, and none where a panel comes. Rails into one stile, at their marks."
        )
    else:
        steps.append(
            f"Glue {int(slots)} slots in {int(minutes)} minutes: two people. Tenons into one "
            "stile, rails on to them."
        )
    if any(lite.framed_bars for lite in leaf.lites):
        steps.append(
            "Bars go together first, dry: every half-lap closes flush, level bars to the front. "
            "Glue the laps and lay the frame of bars in, its tongues in the notches of the stile "
            "and the rails, before the second stile goes on."
        )
    if moving:
        edge = "tongue" if any(field.panel.tongue for field in moving) else "edge"
        steps.append(
            f"Slide the panel in dry: no glue in its grooves nor on its {edge}, ever. It must move."
        )
    elif leaf.panels:
        steps.append(
            "Slide the panel in dry, its better face to the front. Sheet material does not move: "
            "its clearance is for glue that is pressed out."
        )
    steps += [
        f"Second stile on; {several(int(clamps), 'clamp')} across the rails, drawn up "
        "a little each in turn.",
        f"Both diagonals {said.wood(diagonal)} on the untrimmed leaf, alike within "
        f"{said.fine(DIAGONALS)}; sight it across two straight edges for twist.",
    ]
    tongued = [(field, field.panel.tongue) for field in leaf.panels if field.panel.tongue]
    if tongued:
        shows = dict.fromkeys(
            " and ".join(said.fine(bare) for bare in _bare(*one)) for one in tongued
        )
        steps.append(
            "Centre the panel while it still moves: of its tongue shows, beside each stile and at "
            f"each rail, {' or '.join(shows)}."
        )
    elif moving:
        steps.append(
            "Centre the panel while it still moves, then pin it at the middle of both rails, from "
            "the back: it may grow to either side alike."
        )
    if float(leaf.trim) > 0:
        steps.append(
            f"Leave a day, then saw {said.wood(leaf.trim)} off foot and top: "
            f"{said.wood(leaf.height)} high."
        )
    return tuple(steps)


def _too_few(owned: Clamps, needed: Figure) -> tuple[str, ...]:
    if not exceeds(needed, owned.owned):
        return ()
    return (f"{int(needed)} clamps are needed and the shop owns {int(owned.owned)}.",)
