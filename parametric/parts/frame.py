"""Stiles, rails and loose tenons of a framed leaf.

A stile's blank is as long as the leaf and its trims; y runs from its outer edge in. A
rail's blank is its shoulder length, and past either shoulder what goes over a moulded stile; y
runs up. Each joint's slots are cut in both members from the same numbers.
"""

from __future__ import annotations

from typing import Literal, assert_never

from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.hardware.guide import guide_cut
from parametric.hardware.hinge_kinds import hinge_cuts
from parametric.hardware.lock_cuts import lock_cuts, strike_cuts
from parametric.hardware.pull import pull_pockets
from parametric.joints.loose_tenon import (
    LooseTenon,
    rail_slot,
    stile_slot,
    tenon_arrises,
    tenon_blank,
)
from parametric.joints.stub_tenon import StubTenon, stub_cheeks
from parametric.model import Blank, Cut, Face, Groove, Making, Part, Placement, Trim
from parametric.names import join
from parametric.parts.bars import rail_notches, stile_notches
from parametric.parts.flaps import flap_cups, stay_pilots
from parametric.parts.handles import in_rail, in_stile
from parametric.parts.leaf_edges import rail_edges, stile_edges
from parametric.parts.lying import LEVEL, RIGHT, UP, rail_blank, rail_left
from parametric.parts.rebates import (
    arch_cut,
    groove_round_the_arch,
    rail_rebates,
    stile_rebate,
)
from parametric.parts.sticking import rail_sticking, stile_sticking
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungPull
from parametric.resolve.panel_field import PanelField, largest_that_fits
from parametric.resolve.rail import Rail

BroadFace = Literal["low face", "high face"]

LEFT = (-1.0, 0.0, 0.0)
_ENDS: tuple[Literal["low end", "high end"], ...] = ("low end", "high end")


def frame_parts(leaf: Leaf) -> tuple[Part, ...]:
    """Both stiles, then the rails from the top down."""
    return (
        _stile(leaf, "left"),
        _stile(leaf, "right"),
        *(_rail(leaf, rail) for rail in leaf.rails),
    )


def tenon_parts(leaf: Leaf) -> tuple[Part, ...]:
    """Every loose tenon, rail by rail."""
    return tuple(tenon for rail in leaf.rails for tenon in _tenons(leaf, rail))


def _stile(leaf: Leaf, side: Side) -> Part:
    """Left and right are one part turned about its length; the face words turn with it."""
    middle = leaf.thickness / 2
    width = leaf.left_stile if side == "left" else leaf.right_stile
    pulls = [hung for hung in leaf.pulls if hung.side == side]
    front: BroadFace = "low face" if side == "left" else "high face"
    back: BroadFace = "high face" if side == "left" else "low face"
    cuts: list[Cut] = []
    joint = leaf.joint
    match joint:
        case LooseTenon():
            cuts += [
                stile_slot(joint, place, noun=rail.noun, shift=leaf.trim, middle=middle)
                for rail in reversed(leaf.rails)
                for place in rail.slots
            ]
            cuts += [_stile_groove(leaf, field, middle) for field in reversed(leaf.panels)]
        case StubTenon():
            cuts.append(_through_groove(leaf, leaf.panels[0], middle))
        case _:
            assert_never(joint)
    for lite in reversed(leaf.lites):
        if lite.rebate is not None:
            cuts.append(stile_rebate(leaf, lite, lite.rebate, side, back))
    cuts += stile_notches(leaf, side, back)
    cuts += stile_sticking(leaf, side, front)
    cuts += _trims(leaf)
    for hung_by in leaf.hinges:
        if hung_by.side == side:
            cuts += hinge_cuts(
                hung_by.hinges,
                knuckles=front if hung_by.face == "front" else back,
                back=back,
                thickness=leaf.thickness,
                shift=leaf.trim,
            )
    shift = float(leaf.trim)
    thickness = float(leaf.thickness)
    if leaf.lock is not None and leaf.hung.lock_edge == side:
        cuts += lock_cuts(leaf.lock, front=front, thickness=thickness, shift=shift)
    if leaf.strike is not None and leaf.hung.strike_edge == side:
        cuts += strike_cuts(leaf.strike, thickness=thickness, shift=shift)
    cuts += stile_edges(leaf, side, front, back)
    if leaf.guide is not None:
        cuts.append(
            guide_cut(
                leaf.guide, face="low end", along=(0.0, width), middle=middle, trimmed=leaf.trim
            )
        )
    for hung in pulls:
        cuts += _pockets(leaf, hung, front=front, back=back)
    cuts += in_stile(leaf, side, front)
    cuts += stay_pilots(leaf, side, back)
    x, y = (0.0, RIGHT) if side == "left" else (float(leaf.width), LEFT)
    return Part(
        name=join(leaf.name, f"{side} stile"),
        noun=_stile_noun(leaf, side, bool(pulls)),
        mark="S",
        material=leaf.material,
        blank=Blank(length=leaf.stile_blank, width=width, thickness=leaf.thickness),
        placement=Placement(
            origin=(x, 0.0 if side == "left" else float(leaf.thickness), -float(leaf.trim)),
            x=UP,
            y=y,
        ),
        cuts=tuple(cuts),
        faces={
            "low end": "foot",
            "high end": "top",
            "low edge": "outer edge",
            "high edge": "inner edge",
            front: "face",
            back: "back",
        },
    )


def _stile_noun(leaf: Leaf, side: Side, pulled: bool) -> str:
    if leaf.handle is not None and leaf.handle.side == side:
        return "stile with handle"
    return "stile with pull" if pulled else "stile"


def _trims(leaf: Leaf) -> list[Cut]:
    if float(leaf.trim) == 0:
        return []
    making = Making(by="saw", when="after glue-up", tool="panel saw or track-guided saw")
    return [
        Trim(name="trim foot", end="low end", length=leaf.trim, making=making),
        Trim(name="trim top", end="high end", length=leaf.trim, making=making),
    ]


def _pockets(leaf: Leaf, hung: HungPull, *, front: Face, back: Face) -> list[Cut]:
    """Low face first, whichever way the stile is turned, so that twins come out the same."""
    cuts: list[Cut] = []
    for face in sorted(
        (front if word == "front" else back for word in hung.pull.faces), reverse=True
    ):
        cuts += pull_pockets(
            hung.pull, face=face, u=hung.pull.up + leaf.trim, v=hung.pull.from_edge
        )
    return cuts


def _groove_making(leaf: Leaf, field: PanelField) -> Making:
    if field.panel.groove_by == "saw":
        return Making(by="saw", tool="dado set")
    return Making(
        by="router",
        cutter=largest_that_fits(leaf.cutters, field.panel.groove_width),
        tool="straight cutter",
    )


def _stile_groove(leaf: Leaf, field: PanelField, middle: Figure) -> Groove:
    """Stopped at both ends: never into the glazed zone, nor into the slots.

    Its ends are chopped square, unless it runs on far enough to leave that out.
    """
    making = _groove_making(leaf, field)
    routed = making.by == "router"
    return Groove(
        name="panel groove",
        face="high edge",
        u0=field.groove_low + leaf.trim,
        u1=field.groove_high + leaf.trim,
        v=middle,
        width=field.panel.groove_width,
        depth=field.panel.groove_depth,
        corner=(making.cutter or 0.0) / 2 if routed else 0.0,
        squared=routed and float(field.run_on) == 0,
        # A groove too deep for the blade is a stop; it is shown without ramps.
        ramp=0.0 if routed or field.panel.groove_depth >= field.blade / 2 else field.blade / 2,
        making=making,
    )


def _through_groove(leaf: Leaf, field: PanelField, middle: Figure) -> Groove:
    """From end to end of the stile: it takes the panels and the rails' tenons.

    What it takes of the ends that are trimmed off goes with them.
    """
    return Groove(
        name="panel groove",
        face="high edge",
        u0=leaf.trim,
        u1=leaf.trim + leaf.height,
        v=middle,
        width=field.panel.groove_width,
        depth=field.panel.groove_depth,
        making=_groove_making(leaf, field),
    )


def _rail_joints(leaf: Leaf, rail: Rail, middle: Figure) -> tuple[Cut, ...]:
    """What the joint cuts at both ends of a rail."""
    joint = leaf.joint
    match joint:
        case LooseTenon():
            return tuple(
                rail_slot(
                    joint,
                    place,
                    face=face,
                    foot=rail.foot,
                    middle=middle,
                    shoulder=rail.reach if float(rail.reach) else None,
                )
                for face in _ENDS
                for place in rail.slots
            )
        case StubTenon():
            return stub_cheeks(joint, length=rail.blank, height=rail.height)
        case _:
            assert_never(joint)


def _rail(leaf: Leaf, rail: Rail) -> Part:
    middle = leaf.thickness / 2
    cuts: list[Cut] = [*_rail_joints(leaf, rail, middle)]
    for field in leaf.panels:
        if field.top == rail.foot and rail.head is None:
            cuts.append(_rail_groove(leaf, field, rail, "low edge", middle))
        if field.foot == rail.top:
            cuts.append(_rail_groove(leaf, field, rail, "high edge", middle))
    if rail.head is not None:
        cuts.append(arch_cut(leaf, rail, rail.head))
        cuts += [
            groove_round_the_arch(leaf, rail, rail.head, field)
            for field in leaf.panels
            if field.top == rail.foot
        ]
    cuts += rail_rebates(leaf, rail)
    cuts += rail_notches(leaf, rail)
    cuts += rail_sticking(leaf, rail)
    cuts += rail_edges(leaf, rail)
    cuts += in_rail(leaf, rail)
    cuts += flap_cups(leaf, rail)
    if leaf.guide is not None and rail is leaf.rails[-1]:
        cuts.append(
            guide_cut(leaf.guide, face="low edge", along=rail.shoulders, middle=middle, trimmed=0.0)
        )
    return Part(
        name=rail.name,
        noun=rail.noun,
        mark="R",
        material=leaf.material,
        blank=rail_blank(leaf, rail),
        placement=Placement(
            origin=(rail_left(leaf, rail), float(leaf.thickness), float(rail.foot)),
            x=RIGHT,
            y=UP,
        ),
        cuts=tuple(cuts),
        faces=LEVEL,
    )


def _rail_groove(leaf: Leaf, field: PanelField, rail: Rail, face: Face, middle: Figure) -> Groove:
    """From shoulder to shoulder, which hide where it runs out; through stub tenons to their ends."""
    low, high = (0.0, rail.blank) if isinstance(leaf.joint, StubTenon) else rail.shoulders
    return Groove(
        name="panel groove",
        face=face,
        u0=low,
        u1=high,
        v=middle,
        width=field.panel.groove_width,
        depth=field.panel.groove_depth,
        making=_groove_making(leaf, field),
    )


def _tenons(leaf: Leaf, rail: Rail) -> list[Part]:
    """One tenon for each slot pair, half its length in each member."""
    tenons: list[Part] = []
    joint = leaf.joint
    if not isinstance(joint, LooseTenon):
        return tenons
    for number, place in enumerate(rail.slots, start=1):
        for side in ("left", "right"):
            line = leaf.left_stile if side == "left" else leaf.width - leaf.right_stile
            word = f"{side} tenon {number}" if len(rail.slots) > 1 else f"{side} tenon"
            tenons.append(
                Part(
                    name=join(rail.name, word),
                    noun="loose tenon",
                    mark="T",
                    material=leaf.material,
                    blank=tenon_blank(joint),
                    placement=Placement(
                        origin=(
                            float(line - joint.tenon_length / 2),
                            float(leaf.thickness / 2 + joint.tenon_thickness / 2),
                            float(place.centre - joint.tenon_width / 2),
                        ),
                        x=RIGHT,
                        y=UP,
                    ),
                    cuts=(tenon_arrises(joint),),
                )
            )
    return tenons
