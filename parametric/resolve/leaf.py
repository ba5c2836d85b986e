"""One leaf resolved: stiles, rails, openings, what fills them, the joints and the weight."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from parametric.catalog.shop import Shop
from parametric.catalog.timbers import Timber
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.figures import Figure, named
from parametric.hangings.hanging import Hanging, HungLeaf, Side
from parametric.hardware.guide import GuideGroove, GuideSpec, size_guide
from parametric.hardware.hinge_kinds import AnyHinges, HingeSpec, size_hinges
from parametric.hardware.lock import Lock, LockSpec, size_lock
from parametric.hardware.pull import Pull, PullSpec, size_pull
from parametric.infill.glass import GlassSpec
from parametric.infill.raised_panel import RaisedPanelSpec
from parametric.joints.loose_tenon import (
    LooseTenon,
    LooseTenonSpec,
    SlotPlace,
    place_slots,
    size_loose_tenon,
)
from parametric.model import Material
from parametric.names import join
from parametric.problems import Problem
from parametric.resolve.bands import Band, resolve_bands
from parametric.resolve.head import LeafHead, Over
from parametric.resolve.lite import Lite, resolve_lite
from parametric.resolve.panel_field import (
    PanelField,
    groove_run_on,
    resolve_panel,
    resolve_timber,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rail:
    """A rail between the stiles, mm.

    `low_groove` and `high_groove` are how far a panel's groove reaches past either edge, in
    the rail and in the stiles beside it; None where an edge has none.
    """

    name: str
    noun: str
    foot: Figure
    height: Figure
    top: Figure
    length: Figure
    low_groove: Figure | None
    high_groove: Figure | None
    slots: tuple[SlotPlace, ...]
    head: LeafHead | None = None
    """The curve of its underside; `height` is then that of its blank, `foot` the springing."""
    left_end: Figure | None = None
    right_end: Figure | None = None
    """How high an arched rail is at its ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HungPull:
    """A pull on one stile: which, and where its centre is from the leaf's left edge, mm."""

    side: Side
    across: Figure
    pull: Pull


@dataclass(frozen=True, slots=True, kw_only=True)
class HungHinges:
    """The hinges at one edge of a leaf, and the face their knuckles stand on.

    `chain` is from the foot to the top: what is below a hinge, its length, and so on, mm.
    """

    side: Side
    face: Literal["front", "back"]
    hinges: AnyHinges
    chain: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What a leaf weighs by gross volumes, kg: to lift, to carry in, to hang."""

    frame_volume: Figure
    frame: Figure
    panels: Figure
    glass: Figure
    estimate: Figure
    without_glass: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A framed leaf, mm."""

    name: str
    letter: str
    hung: HungLeaf
    written: LeafSpec
    timber: Timber
    material: Material
    cutters: tuple[Figure, ...]
    width: Figure
    height: Figure
    thickness: Figure
    left_stile: Figure
    right_stile: Figure
    trim: Figure
    site_trim: Figure
    stile_blank: Figure
    shoulder: Figure
    bands: tuple[Band, ...]
    rails: tuple[Rail, ...]
    lites: tuple[Lite, ...]
    panels: tuple[PanelField, ...]
    joint: LooseTenon
    guide: GuideGroove | None
    pulls: tuple[HungPull, ...]
    hinges: tuple[HungHinges, ...]
    lock: Lock | None
    wood_over_guide: Figure | None
    wood_over_guide_after_site_trim: Figure | None
    least_cover_at_top: Figure
    weights: Weights
    strike: Lock | None = None
    """The other leaf's lock, whose strike is let into this one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafParts:
    """The blocks a leaf is made by, found in the design."""

    leaf: LeafSpec
    joint: LooseTenonSpec
    panel: RaisedPanelSpec | None
    glass: GlassSpec | None
    guide: GuideSpec | None
    pull: PullSpec | None
    hinge: HingeSpec | None = None
    lock: LockSpec | None = None


def resolve_leaf(
    design: Design,
    shop: Shop,
    blocks: LeafParts,
    hung: HungLeaf,
    hanging: Hanging,
    curve: Over | None = None,
) -> tuple[Leaf | None, tuple[Problem, ...]]:
    """Engineer one leaf of a given size.

    Args:
        design: for the timbers it names.
        shop: moisture, saw and router.
        blocks: the leaf and what it calls.
        hung: its size, where it stands, and what its edges do.
        hanging: the door it is a leaf of.
        curve: the curve under its top rail, if that is arched.
    """
    spec = blocks.leaf
    place = hung.name
    unit = design.unit

    def at(quantity: str, value: float, kind: str = "mm") -> Figure:
        return named(join(place, quantity), value, kind)

    own_width, own_height = at("width", hung.width), at("height", hung.height)
    thickness = at("thickness", spec.thickness)
    bands, problems = resolve_bands(
        spec,
        place=place,
        height=own_height,
        unit=unit,
        arch=None if curve is None else curve.crown,
    )
    if problems:
        return None, problems
    head = None if curve is None else curve.at(bands[0].foot)
    stiles = spec.stile_widths((hung.left_edge, hung.right_edge))
    left, right = at("left stile / width", stiles[0]), at("right stile / width", stiles[1])
    shoulder = at("shoulder", own_width - left - right)
    trim = at("trim", spec.trim)
    timber = resolve_timber(design, spec.timber)
    joint = size_loose_tenon(blocks.joint, join(place, "joint"))
    groove = run_on = None
    if blocks.panel is not None:
        run_on = named(join(place, "panel groove run-on"), groove_run_on(blocks.panel, shop.router))
        depth = named(join(place, "panel groove depth"), blocks.panel.groove[1])
        groove = depth
        if float(run_on) > 0:
            groove = named(join(place, "panel groove reach in the stiles"), depth + run_on)
    rebate = None
    if blocks.glass is not None and blocks.glass.held_by == "rebate":
        rebate = at("glass rebate", blocks.glass.frame_rebate)
    rails = tuple(
        _rail(
            bands,
            index,
            joint,
            shoulder,
            {"panel": groove, "lite": rebate},
            head if index == 0 else None,
        )
        for index, band in enumerate(bands)
        if band.is_rail
    )
    lites = tuple(
        resolve_lite(
            band,
            blocks.glass,
            left=left,
            shoulder=shoulder,
            thickness=thickness,
            head=head if index == 1 else None,
        )
        for index, band in enumerate(bands)
        if band.noun == "lite" and blocks.glass is not None
    )
    panels = tuple(
        resolve_panel(band, blocks.panel, spec, shop, timber, design, shoulder, thickness, run_on)
        for band in bands
        if band.noun == "panel" and blocks.panel is not None and run_on is not None
    )
    guide = None if blocks.guide is None else size_guide(blocks.guide, join(place, "guide groove"))
    site_trim = at("site trim", spec.site_trim)
    lowest, highest = rails[-1].slots[0], rails[0].slots[-1]
    weights = _weigh(place, own_height, thickness, left, right, rails, lites, panels, timber)
    over = None if guide is None else at("wood over the guide groove", lowest.low - guide.depth)
    return (
        Leaf(
            name=place,
            letter=hung.letter,
            hung=hung,
            written=spec,
            timber=timber,
            material=Material(name=timber.name, look="timber", density=timber.density),
            cutters=shop.router.cutters,
            width=own_width,
            height=own_height,
            thickness=thickness,
            left_stile=left,
            right_stile=right,
            trim=trim,
            site_trim=site_trim,
            stile_blank=at("stile blank length", own_height + 2 * trim),
            shoulder=shoulder,
            bands=bands,
            rails=rails,
            lites=lites,
            panels=panels,
            joint=joint,
            guide=guide,
            pulls=_pulls(blocks.pull, hung, own_width, thickness, shop),
            wood_over_guide=over,
            wood_over_guide_after_site_trim=None
            if over is None
            else at("wood over the guide groove after site trim", over - site_trim),
            least_cover_at_top=at("cover over the top slot", own_height - highest.high),
            hinges=_hinges(blocks.hinge, hung, hanging, thickness, weights, shop),
            lock=_lock(blocks.lock, hung, thickness, shop),
            weights=weights,
        ),
        (),
    )


def _rail(
    bands: tuple[Band, ...],
    index: int,
    joint: LooseTenon,
    shoulder: Figure,
    reaches: Mapping[str, Figure | None],
    head: LeafHead | None,
) -> Rail:
    """A rail, grooved on each edge that a panel stands against, rebated where glass does.

    `reaches` says how far what fills an opening reaches into the rail, by its noun.
    """
    band = bands[index]
    above = bands[index - 1].noun if index else None
    below = bands[index + 1].noun if index + 1 < len(bands) else None
    low, high = reaches.get(below or ""), reaches.get(above or "")
    # Slots of an arched rail stand where it is whole from end to end.
    foot, height = (
        (band.foot, band.height)
        if head is None
        else (
            named(join(band.name, "whole from"), band.foot + head.crown),
            named(join(band.name, "least height"), band.height - head.crown),
        )
    )
    return Rail(
        name=band.name,
        noun=band.noun,
        foot=band.foot,
        height=band.height,
        top=band.top,
        length=named(join(band.name, "length"), shoulder),
        head=head,
        left_end=None
        if head is None
        else named(join(band.name, "height at its left end"), band.height - head.at_left),
        right_end=None
        if head is None
        else named(join(band.name, "height at its right end"), band.height - head.at_right),
        low_groove=low if below == "panel" else None,
        high_groove=high if above == "panel" else None,
        slots=place_slots(
            joint,
            rail=band.name,
            count=1 if band.written.tenons is None else int(band.written.tenons),
            foot=foot,
            height=height,
            low_groove=low,
            high_groove=high,
            low_end=below is None,
            high_end=above is None,
        ),
    )


def _pulls(
    spec: PullSpec | None,
    hung: HungLeaf,
    width: Figure,
    thickness: Figure,
    shop: Shop,
) -> tuple[HungPull, ...]:
    if spec is None:
        return ()
    side = hung.pull_side
    name = join(hung.name, "pull")
    pull = size_pull(
        spec,
        place=name,
        floor_gap=hung.foot,
        thickness=thickness,
        cutters=shop.router.cutters,
        relieve=shop.router.inside_corners == "relieve",
    )
    across = pull.from_edge if side == "left" else width - pull.from_edge
    return (
        HungPull(
            side=side,
            across=named(join(name, "centre from the left edge"), across),
            pull=pull,
        ),
    )


def _hinges(
    spec: HingeSpec | None,
    hung: HungLeaf,
    hanging: Hanging,
    thickness: Figure,
    weights: Weights,
    shop: Shop,
) -> tuple[HungHinges, ...]:
    """The hinges at each edge that carries any; a leaf between two others has them at both."""
    if spec is None or not hung.hinged:
        return ()
    gap = hanging.fold_gap if hanging.hinge_gap is None else hanging.hinge_gap
    assert gap is not None, "what hangs on hinges has a gap there"
    found: list[HungHinges] = []
    for side, face in hung.hinged:
        place = hung.name if len(hung.hinged) == 1 else join(hung.name, f"{side} edge")
        hinges = size_hinges(
            spec,
            leaf=place,
            height=hung.height,
            width=hung.width,
            thickness=thickness,
            gap=gap,
            foot=hung.foot,
            head_gap=hanging.head_gap,
            weight=weights.estimate,
            cutters=shop.router.cutters,
        )
        found.append(
            HungHinges(
                side=side, face=face, hinges=hinges, chain=_hinge_chain(hinges, place, hung.height)
            )
        )
    return tuple(found)


def _hinge_chain(hinges: AnyHinges, place: str, height: Figure) -> tuple[Figure, ...]:
    """From the foot to the top of the leaf, hinge by hinge, as they are marked."""
    chain: list[Figure] = []
    at: Figure | None = None
    for one in reversed(hinges.places):
        word = one.name.rpartition(" / ")[2]
        below = one.low if at is None else one.low - at
        chain += [
            named(join(place, f"below the {word}"), below),
            named(join(one.name, "length"), one.high - one.low),
        ]
        at = one.high
    top = height if at is None else height - at
    return (*chain, named(join(place, "above the top hinge"), top))


def _lock(spec: LockSpec | None, hung: HungLeaf, thickness: Figure, shop: Shop) -> Lock | None:
    if spec is None or hung.lock_edge is None:
        return None
    return size_lock(
        spec,
        leaf=hung.name,
        foot=hung.foot,
        thickness=thickness,
        cutters=shop.router.cutters,
        bevel=hung.bevel(hung.lock_edge),
    )


def _weigh(
    place: str,
    height: Figure,
    thickness: Figure,
    left: Figure,
    right: Figure,
    rails: tuple[Rail, ...],
    lites: tuple[Lite, ...],
    panels: tuple[PanelField, ...],
    timber: Timber,
) -> Weights:
    """Gross volumes times density: tenons and slots cancel, stops and hardware left out.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "kg") -> Figure:
        return named(join(place, quantity), value, unit)

    stiles = (left + right) * height * thickness
    sections: Figure = rails[0].height
    for rail in rails[1:]:
        sections = sections + rail.height
    gross = stiles + sections * rails[0].length * thickness
    for rail in rails:
        if rail.head is not None:
            gross = gross - rail.head.area * thickness
    for lite in lites:
        if lite.bar_area is not None and lite.bars:
            gross = gross + lite.bar_area * thickness
    volume = at("frame volume", gross, "mm3")
    frame = at("frame weight", volume * timber.density / 1e9)
    panel = at("panel weight", _total([p.panel.weight for p in panels]))
    glass = at("glass weight", _total([lite.weight for lite in lites]))
    bare = at("weight without glass", frame + panel)
    return Weights(
        frame_volume=volume,
        frame=frame,
        panels=panel,
        glass=glass,
        estimate=at("weight estimate", bare + glass),
        without_glass=bare,
    )


def _total(values: list[Figure]) -> Figure:
    total = values[0] if values else Figure(0.0, unit="kg")
    for value in values[1:]:
        total = total + value
    return total
