"""Loose tenons at the router: the slots in both members, and the tenons that fill them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from parametric.catalog.bench import CUT_A_PASS, SPARES, STRIP, TEST_PIECE
from parametric.figures import Figure, largest, named, whole_up
from parametric.joints.loose_tenon import LooseTenon
from parametric.model import Assembly, Slot
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.cautions import DUST, PLUNGED_CUT, ROUTER, Cautions
from parametric.trade.milling import Setting
from parametric.trade.printed import Printed, printed
from parametric.trade.stop_blocks import StopLine


@dataclass(frozen=True, slots=True, kw_only=True)
class LooseTenonSetUp:
    """One size of loose tenon, mm.

    `fence` is from the face to the middle of the cutter; `travel` how far the cutter's
    middle goes, half of it to each side of the slot's middle; `play_along` what the tenon may
    shift along its slot; `room` what stays free for glue behind each end of it. The tenons are
    crosscut from `strips`, each `strip_length` long.
    """

    leaves: tuple[str, ...]
    marks: tuple[str, ...]
    cutter: Figure
    fence: Figure
    slot_width: Figure
    slot_length: Figure
    slot_depth: Figure
    depth_passes: Figure
    travel: Figure
    half_travel: Figure
    slots: Figure
    tenons: Figure
    spare_tenons: Figure
    tenon_thickness: Figure
    tenon_width: Figure
    tenon_length: Figure
    edge_radius: Figure
    strips: Figure
    strip_length: Figure
    play_along: Figure
    room: Figure
    steps: tuple[str, ...]
    cautions: Cautions


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveSetUp:
    """One setting for grooves, with the places where they stop along each piece."""

    setting: Setting
    stops: tuple[StopLine, ...]


def loose_tenon_set_ups(resolved: Resolved, assembly: Assembly) -> tuple[LooseTenonSetUp, ...]:
    """One for every size of slot; leaves that share a joint share it."""
    sizes: dict[tuple[float, ...], list[Leaf]] = {}
    for leaf in resolved.leaves:
        joint = leaf.joint
        if not isinstance(joint, LooseTenon):
            continue
        key = tuple(
            round(float(size), 6)
            for size in (
                joint.slot_width,
                joint.slot_length,
                joint.slot_depth,
                joint.tenon_thickness,
                joint.tenon_width,
                joint.tenon_length,
                leaf.thickness,
            )
        )
        sizes.setdefault(key, []).append(leaf)
    return tuple(
        _set_up(resolved, assembly, own, number) for number, own in enumerate(sizes.values(), 1)
    )


def _set_up(
    resolved: Resolved, assembly: Assembly, leaves: list[Leaf], number: int
) -> LooseTenonSetUp:
    joint = leaves[0].joint
    assert isinstance(joint, LooseTenon), "leaves are told apart before"

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(f"tenon set-up {number}", quantity), value, unit)

    names = {leaf.name for leaf in leaves}
    parts = [part for group in assembly.groups if group.name in names for part in group.parts]
    slots = sum(isinstance(cut, Slot) for part in parts for cut in part.cuts)
    tenons = at("tenons", Figure(sum(part.noun == "loose tenon" for part in parts), unit=""), "")
    fence = at("face to the cutter's middle", leaves[0].thickness / 2)
    travel = at("travel", joint.slot_length - joint.slot_width)
    half_travel = at("travel to each side", travel / 2)
    room = at("room behind the tenon", joint.slot_depth - joint.tenon_length / 2)
    play = at("play along the slot", joint.slot_length - joint.tenon_width)
    spare = at("spare tenons", SPARES, "")
    strips, strip_length = _strips(resolved, joint, tenons, spare, at)
    passes = at("depth passes", whole_up(joint.slot_depth / (joint.slot_width * CUT_A_PASS)), "")
    return LooseTenonSetUp(
        leaves=tuple(leaf.name for leaf in leaves),
        marks=tuple(dict.fromkeys(p.mark for p in parts if p.noun == "loose tenon")),
        cutter=at("cutter", joint.slot_width),
        fence=fence,
        slot_width=at("slot width", joint.slot_width),
        slot_length=at("slot length", joint.slot_length),
        slot_depth=at("slot depth", joint.slot_depth),
        depth_passes=passes,
        travel=travel,
        half_travel=half_travel,
        slots=at("slots", Figure(slots, unit=""), ""),
        tenons=tenons,
        spare_tenons=spare,
        tenon_thickness=at("tenon thickness", joint.tenon_thickness),
        tenon_width=at("tenon width", joint.tenon_width),
        tenon_length=at("tenon length", joint.tenon_length),
        edge_radius=at("tenon edge radius", joint.tenon_thickness / 2),
        strips=strips,
        strip_length=strip_length,
        play_along=play,
        room=room,
        steps=_steps(printed(resolved), joint, fence, half_travel, passes),
        cautions=(*PLUNGED_CUT, *ROUTER, *DUST),
    )


def _strips(
    resolved: Resolved,
    joint: LooseTenon,
    tenons: Figure,
    spare: Figure,
    at: Callable[[str, float, str], Figure],
) -> tuple[Figure, Figure]:
    """How many strips, and how long, mm: short enough to handle, long enough to plane.

    As long together as the blanks that the timber order has for the tenons, and never too
    short for the spare.
    """
    shop = resolved.shop
    ordered = tenons * (joint.tenon_length + named("blank over length", shop.blanks.length))
    strips = at("strips", whole_up(ordered / STRIP), "")
    a_strip = whole_up((tenons + spare) / strips)
    length = at(
        "strip length",
        largest(ordered / strips, a_strip * (joint.tenon_length + shop.saw.kerf), TEST_PIECE),
        "mm",
    )
    return strips, length


def _steps(
    said: Printed, joint: LooseTenon, fence: Figure, half_travel: Figure, passes: Figure
) -> tuple[str, ...]:
    return (
        f"Plunge router with a fence, or slot mortiser. Cutter {said.fine(joint.slot_width)}, its middle {said.fine(fence)} from the face. Face "
        "to the fence always, in stiles and rails alike, whichever end lies to the left: then "
        "the faces come flush.",
        f"The cutter's middle travels {said.fine(half_travel)} to each side of a middle line: stops "
        "for a router's base stand half the base farther out.",
        "Mark the middle of every slot from the story stick; clamp the piece with its mark on the "
        "middle line, blocks flush beside it to carry the base, a rail upright for its ends. Lists "
        "measure a stile from its foot, a rail's end from its lower edge.",
        f"Plunge {said.fine(joint.slot_depth)} deep in {int(passes)} steps; clear the slot with the vacuum.",
        "Test piece first, one slot in its edge and one in its end: a loose tenon goes in by hand "
        "and does not fall out.",
    )


def stops_of(setting: Setting, stops: tuple[StopLine, ...]) -> tuple[StopLine, ...]:
    """The lines of the stop-block list that belong to one setting."""
    own = {cut for run in setting.runs for cut in run.covers}
    return tuple(line for line in stops if own & set(line.covers))


def groove_set_ups(
    settings: tuple[Setting, ...], stops: tuple[StopLine, ...]
) -> tuple[GrooveSetUp, ...]:
    """Every setting that runs grooves, with its passes, and its stops where it has any."""
    return tuple(
        GrooveSetUp(
            setting=setting,
            stops=stops_of(setting, stops),
        )
        for setting in settings
        if setting.kind == "groove"
    )
