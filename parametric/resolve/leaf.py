"""One leaf resolved: stiles, rails, openings, what fills them, the joints and the weight."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from parametric.catalog.shop import Shop
from parametric.catalog.timbers import Timber
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.design.understanding import not_built
from parametric.figures import Figure, named
from parametric.hangings.hanging import Hanging, HungLeaf
from parametric.hardware.guide import GuideGroove, GuideSpec, size_guide
from parametric.hardware.handle import Handle, HandleSpec
from parametric.hardware.hinge_kinds import HingeSpec
from parametric.hardware.lock import Lock, LockSpec
from parametric.hardware.pull import PullSpec
from parametric.infill.glass import GlassSpec
from parametric.infill.panel_kinds import PanelSpec
from parametric.joints.joint_kinds import Joint, JointSpec, size_joint
from parametric.joints.stub_tenon import StubTenon, StubTenonSpec
from parametric.model import Material
from parametric.names import join
from parametric.problems import Problem
from parametric.profiles.kinds import StickingSpec
from parametric.resolve.bands import Band, resolve_bands
from parametric.resolve.head import Over
from parametric.resolve.leaf_hardware import (
    HungHinges,
    HungPull,
    leaf_handle,
    leaf_hinges,
    leaf_lock,
    leaf_pulls,
)
from parametric.resolve.leaf_stays import LeafStays
from parametric.resolve.leaf_weight import Weights, weigh_leaf
from parametric.resolve.lite import Lite, Sizes, resolve_lite
from parametric.resolve.panel_field import (
    PanelField,
    groove_run_on,
    resolve_panel,
    resolve_timber,
)
from parametric.resolve.rail import Rail, resolve_rail
from parametric.resolve.sticking import FrameSticking, does_not_fit, resolve_sticking
from parametric.written import NotMeasured


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
    joint: Joint
    guide: GuideGroove | None
    pulls: tuple[HungPull, ...]
    hinges: tuple[HungHinges, ...]
    lock: Lock | None
    wood_over_guide: Figure | None
    wood_over_guide_after_site_trim: Figure | None
    least_cover_at_top: Figure | None
    """Over the highest slot; None where rails have none."""
    weights: Weights
    sticking: FrameSticking | None = None
    """The moulding round its openings; None where their edges are square."""
    handle: Handle | None = None
    """A bar or a knob, screwed through it."""
    stays: LeafStays | None = None
    """What holds it open, where it is a flap that anything holds."""
    strike: Lock | None = None
    """The other leaf's lock, whose strike is let into this one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafParts:
    """The blocks a leaf is made by, found in the design."""

    leaf: LeafSpec
    joint: JointSpec
    panel: PanelSpec | None
    glass: GlassSpec | None
    guide: GuideSpec | None
    pull: PullSpec | None
    handle: HandleSpec | None = None
    hinge: HingeSpec | None = None
    lock: LockSpec | None = None
    sticking: StickingSpec | None = None
    sizes: Sizes | None = None
    """Of panes that share one."""


def resolve_leaf(
    design: Design,
    shop: Shop,
    blocks: LeafParts,
    hung: HungLeaf,
    hanging: Hanging,
    curve: Over | None = None,
    lines: Mapping[str, Figure | NotMeasured] = MappingProxyType({}),
) -> tuple[Leaf | None, tuple[Problem, ...]]:
    """Engineer one leaf of a given size.

    Args:
        design: for the timbers it names.
        shop: moisture, saw and router.
        blocks: the leaf and what it calls.
        hung: its size, where it stands, and what its edges do.
        hanging: the door it is a leaf of.
        curve: the curve under its arched rails, if it has any.
        lines: the lines of the room by name, above the highest floor, mm.
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
        whole="the door" if len({float(one.foot) for one in hanging.leaves}) == 1 else place,
        arch=None if curve is None else curve.crown,
        lines={
            name: named(join(place, name), up - hung.foot) if isinstance(up, Figure) else up
            for name, up in lines.items()
        },
    )
    if problems:
        return None, problems
    sticking, problems = resolve_sticking(blocks.sticking, spec, place, unit)
    if problems:
        return None, problems
    heads = {
        index: curve.at(band.foot)
        for index, band in enumerate(bands)
        if curve is not None and band.written.underside == "arch"
    }
    stiles = spec.stile_widths((hung.left_edge, hung.right_edge))
    left, right = at("left stile / width", stiles[0]), at("right stile / width", stiles[1])
    shoulder = at("shoulder", own_width - left - right)
    trim = at("trim", spec.trim)
    timber = resolve_timber(design, spec.timber)
    if isinstance(blocks.joint, StubTenonSpec) and (blocks.guide or hung.rebates):
        return None, (_no_stub_tenon(blocks.joint, hung),)
    joint = size_joint(
        blocks.joint,
        join(place, "joint"),
        groove=None if blocks.panel is None else blocks.panel.groove,
        frame=thickness,
    )
    stub = joint if isinstance(joint, StubTenon) else None
    groove = run_on = None
    if blocks.panel is not None:
        run_on = named(join(place, "panel groove run-on"), groove_run_on(blocks.panel, shop.router))
        depth = named(join(place, "panel groove depth"), blocks.panel.groove[1])
        groove = depth
        if float(run_on) > 0 and stub is None:
            groove = named(join(place, "panel groove reach in the stiles"), depth + run_on)
    rebate = None
    if blocks.glass is not None and blocks.glass.held_by == "rebate":
        rebate = at("glass rebate", blocks.glass.frame_rebate)
    rails = tuple(
        resolve_rail(
            bands,
            index,
            joint,
            shoulder,
            {"panel": groove, "lite": rebate},
            heads.get(index),
            _past_shoulders(sticking, stub),
        )
        for index, band in enumerate(bands)
        if band.is_rail
    )
    if sticking is not None:
        problems = tuple(does_not_fit(sticking, spec, rails, (left, right), hung.rebates, unit))
        if problems:
            return None, problems
    lites = tuple(
        resolve_lite(
            band,
            blocks.glass,
            left=left,
            shoulder=shoulder,
            thickness=thickness,
            head=heads.get(index - 1),
            sizes=blocks.sizes or {},
        )
        for index, band in enumerate(bands)
        if band.noun == "lite" and blocks.glass is not None
    )
    panels = tuple(
        resolve_panel(
            band,
            blocks.panel,
            spec,
            shop,
            timber,
            design,
            shoulder,
            thickness,
            run_on,
            None if stub is None else own_height,
            left,
            heads.get(index - 1),
        )
        for index, band in enumerate(bands)
        if band.noun == "panel" and blocks.panel is not None and run_on is not None
    )
    guide = None if blocks.guide is None else size_guide(blocks.guide, join(place, "guide groove"))
    site_trim = at("site trim", spec.site_trim)
    weights = weigh_leaf(place, own_height, thickness, left, right, rails, lites, panels, timber)
    over = None
    if guide is not None:
        over = at("wood over the guide groove", rails[-1].slots[0].low - guide.depth)
    slots = rails[0].slots
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
            pulls=leaf_pulls(blocks.pull, hung, own_width, thickness, shop),
            wood_over_guide=over,
            wood_over_guide_after_site_trim=None
            if over is None
            else at("wood over the guide groove after site trim", over - site_trim),
            least_cover_at_top=at("cover over the top slot", own_height - slots[-1].high)
            if slots
            else None,
            hinges=leaf_hinges(
                blocks.hinge, hung, hanging, thickness, weights, shop, timber.density
            ),
            lock=leaf_lock(blocks.lock, hung, thickness, shop),
            handle=leaf_handle(blocks.handle, hung, own_width, own_height),
            weights=weights,
            sticking=sticking,
        ),
        (),
    )


def _past_shoulders(sticking: FrameSticking | None, stub: StubTenon | None) -> Figure | None:
    """How far a rail goes past its shoulders: over the stile's moulding, or into its groove."""
    if stub is not None:
        return stub.length
    return None if sticking is None else sticking.reach


def _no_stub_tenon(joint: StubTenonSpec, hung: HungLeaf) -> Problem:
    """A groove that runs out at a stile's ends meets what else is cut there."""
    what = "whose edge is stepped" if hung.rebates else "that runs over a floor guide"
    return not_built(f"A stub tenon in a leaf {what}", joint.line("kind"), about="stub tenon")
