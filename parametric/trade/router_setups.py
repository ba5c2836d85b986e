"""Loose tenons at the router: the slots in both members, and the tenons that fill them."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import CUT_A_PASS, SPARES, TEST_PIECE
from parametric.figures import Figure, named, whole_up
from parametric.joints.loose_tenon import LooseTenon
from parametric.model import Assembly, Slot
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cautions import DUST, ROUTER, STOPPED_CUT, Cautions
from parametric.trade.milling import Setting
from parametric.trade.printed import Printed, printed
from parametric.trade.stop_blocks import StopLine


@dataclass(frozen=True, slots=True, kw_only=True)
class LooseTenonSetUp:
    """One size of loose tenon, mm.

    `fence` is from the face to the middle of the cutter; `travel` how far the cutter's
    middle goes; `play_along` what the tenon may shift along its slot; `room` what stays
    free for glue behind each end of it.
    """

    leaves: tuple[str, ...]
    cutter: Figure
    fence: Figure
    slot_width: Figure
    slot_length: Figure
    slot_depth: Figure
    depth_passes: Figure
    travel: Figure
    slots: Figure
    tenons: Figure
    spare_tenons: Figure
    tenon_thickness: Figure
    tenon_width: Figure
    tenon_length: Figure
    edge_radius: Figure
    play_along: Figure
    room: Figure
    test_length: Figure
    steps: tuple[str, ...]
    cautions: Cautions


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveSetUp:
    """One setting for grooves, with the places where they stop along each piece."""

    setting: Setting
    stops: tuple[StopLine, ...]


def loose_tenon_set_ups(resolved: Resolved, assembly: Assembly) -> tuple[LooseTenonSetUp, ...]:
    """One for every size of slot; leaves that share a joint share it."""
    sizes: dict[tuple[float, ...], list[int]] = {}
    for index, leaf in enumerate(resolved.door.leaves):
        joint = leaf.joint
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
        sizes.setdefault(key, []).append(index)
    return tuple(
        _set_up(resolved, assembly, own, number) for number, own in enumerate(sizes.values(), 1)
    )


def _set_up(resolved: Resolved, assembly: Assembly, own: list[int], number: int) -> LooseTenonSetUp:
    leaves = [resolved.door.leaves[index] for index in own]
    joint = leaves[0].joint

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(f"tenon set-up {number}", quantity), value, unit)

    groups = [assembly.groups[index] for index in own]
    parts = [part for group in groups for part in group.parts]
    slots = sum(isinstance(cut, Slot) for part in parts for cut in part.cuts)
    tenons = at("tenons", Figure(sum(part.noun == "loose tenon" for part in parts), unit=""), "")
    fence = at("face to the cutter's middle", leaves[0].thickness / 2)
    travel = at("travel", joint.slot_length - joint.slot_width)
    room = at("room behind the tenon", joint.slot_depth - joint.tenon_length / 2)
    play = at("play along the slot", joint.slot_length - joint.tenon_width)
    spare = at("spare tenons", SPARES, "")
    passes = at("depth passes", whole_up(joint.slot_depth / (joint.slot_width * CUT_A_PASS)), "")
    return LooseTenonSetUp(
        leaves=tuple(leaf.name for leaf in leaves),
        cutter=at("cutter", joint.slot_width),
        fence=fence,
        slot_width=at("slot width", joint.slot_width),
        slot_length=at("slot length", joint.slot_length),
        slot_depth=at("slot depth", joint.slot_depth),
        depth_passes=passes,
        travel=travel,
        slots=at("slots", Figure(slots, unit=""), ""),
        tenons=tenons,
        spare_tenons=spare,
        tenon_thickness=at("tenon thickness", joint.tenon_thickness),
        tenon_width=at("tenon width", joint.tenon_width),
        tenon_length=at("tenon length", joint.tenon_length),
        edge_radius=at("tenon edge radius", joint.tenon_thickness / 2),
        play_along=play,
        room=room,
        test_length=TEST_PIECE,
        steps=_steps(printed(resolved), joint, fence, travel, passes, room, tenons),
        cautions=(*STOPPED_CUT, *ROUTER, *DUST),
    )


def _steps(
    said: Printed,
    joint: LooseTenon,
    fence: Figure,
    travel: Figure,
    passes: Figure,
    room: Figure,
    tenons: Figure,
) -> tuple[str, ...]:
    return (
        f"Cutter {said.fine(joint.slot_width)}, its middle {said.fine(fence)} from the face. Face "
        "to the fence always, in stiles and rails alike: then the faces come flush.",
        f"Middle of the slot on the line marked for it, by the stop-block list; the cutter travels "
        f"{said.fine(travel)}.",
        f"{said.fine(joint.slot_depth)} deep in {int(passes)} steps; blow the slot clean.",
        f"Rip strips {said.fine(joint.tenon_thickness)} thick and {said.fine(joint.tenon_width)} "
        "wide, round the long edges, then crosscut "
        f"{int(tenons)} and one spare to {said.fine(joint.tenon_length)}, a brush of glue "
        f"shorter than the slots: {said.fine(room)} at each end.",
        "Test piece: the tenon goes in by hand and does not fall out.",
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
