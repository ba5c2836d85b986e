"""Face frames as parts: wall stiles scribed to the walls, centre stiles, rails, and their joints."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.cases.boring import IN_END
from parametric.cases.butt_joints import Dowels, InEnd, dowels_in_end
from parametric.cases.case import Lies
from parametric.cases.case_tenons import IN_END_SLOT, Tenons, tenons_in_end
from parametric.cases.fixings import TooShort
from parametric.cases.frame_joints import FrameHeld, FrameJoints
from parametric.cases.pocket_screws import BroadFace, PocketScrews, pockets_in_face
from parametric.figures import Figure
from parametric.model import Cut, Drilled, Edge, End, Material, Part, Placement, Slot
from parametric.names import join
from parametric.parts.case_tenons import one_tenon
from parametric.parts.room_boards import room_board
from parametric.parts.scribing import scribe_cuts
from parametric.resolve.casework import StandingCase
from parametric.resolve.room_lines import between, wall_line

FRAME_NOUNS = ("wall stile", "centre stile", "frame rail")
"""What the members of a face frame are called."""
_ENDS: tuple[End, End] = ("low end", "high end")
BEHIND: dict[Literal["facing", "facing, level"], BroadFace] = {
    "facing": "high face",
    "facing, level": "low face",
}
"""Which face of a member is seen from inside the case only: where pockets open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Member:
    """One member before it is a part, mm in the room."""

    word: str
    noun: str
    size: tuple[Figure, Figure, Figure]
    at: tuple[float, float, float]
    lies: Literal["facing", "facing, level"]
    cuts: tuple[Cut, ...] = ()


def frame_parts(standing: StandingCase, joints: FrameJoints | None) -> Iterator[Part]:
    """Wall stiles, centre stiles between the bays, two rails; each bored for its joints.

    Args:
        standing: the case behind it.
        joints: what holds its members.
    """
    frame, box = standing.case.frame, standing.case.box
    if frame is None or standing.frame_timber is None or joints is None:
        return
    density = float(standing.frame_timber.density)
    wood = Material(name=standing.frame_timber.name, look="timber", density=density)
    kick = Figure(0.0) if box.kick_high is None else box.kick_high
    foot, high = float(box.foot + kick), box.height - kick
    y = standing.front - float(frame.thickness)
    top = high - frame.rail
    rails = (Figure(0.0), top)
    members: list[_Member] = []
    for scribe, x, inner in (
        (frame.left, frame.left.edge, "high edge"),
        (frame.right, frame.right.edge - frame.right.blank, "low edge"),
    ):
        wall = between(wall_line(standing.opening, scribe.side), foot, foot + float(high))
        line = [(z - foot, across - float(x)) for z, across in wall]
        low = scribe.side == "left"
        members.append(
            _Member(
                word=f"{scribe.side} wall stile",
                noun="wall stile",
                size=(high, scribe.blank, frame.thickness),
                at=(float(x), y, foot),
                lies="facing",
                cuts=(
                    *scribe_cuts(
                        "low face", line, low, float(scribe.blank), float(frame.thickness)
                    ),
                    *(
                        cut
                        for up in rails
                        for cut in _in_edge(joints.wall, inner, up)  # type: ignore[arg-type]
                    ),
                ),
            )
        )
    lefts = standing.centre_stiles
    for number, left in enumerate(lefts, 1):
        members.append(
            _Member(
                word=f"centre stile {number}" if len(lefts) > 1 else "centre stile",
                noun="centre stile",
                size=(high - 2 * frame.rail, frame.centre_stile, frame.thickness),
                at=(float(left), y, foot + float(frame.rail)),
                lies="facing",
                cuts=_in_ends(joints.centre, "facing"),
            )
        )
    edges: tuple[tuple[str, Figure, Edge], ...] = (
        ("top rail", top, "low edge"),
        ("bottom rail", Figure(0.0), "high edge"),
    )
    for word, up, inner_edge in edges:
        members.append(
            _Member(
                word=word,
                noun="frame rail",
                size=(frame.opening, frame.rail, frame.thickness),
                at=(float(frame.opening_left), y, foot + float(up)),
                lies="facing, level",
                cuts=(
                    *_in_ends(joints.wall, "facing, level"),
                    *(
                        cut
                        for left in lefts
                        for cut in _in_edge(joints.centre, inner_edge, left - frame.opening_left)
                    ),
                ),
            )
        )
    place = join(box.name, "face frame")
    for own in members:
        lies: Lies = own.lies
        name = join(place, own.word)
        yield room_board(name, own.noun, wood, own.size, own.at, lies, own.cuts)
    for own in members:
        held = joints.wall if own.noun == "frame rail" else joints.centre
        if own.noun != "wall stile" and isinstance(held, Tenons):
            yield from _tenons(join(place, own.word), own, held)


def _in_ends(held: FrameHeld | None, lies: Literal["facing", "facing, level"]) -> tuple[Cut, ...]:
    """What a joint takes at both ends of the member that stands between two others."""
    found: list[Cut] = []
    for end in _ENDS:
        match held:
            case Dowels():
                found += dowels_in_end(held, InEnd(end=end))
            case Tenons():
                found += tenons_in_end(held, InEnd(end=end))
            case PocketScrews():
                found.append(pockets_in_face(held, InEnd(end=end), BEHIND[lies]))
            case TooShort() | None:
                pass
            case _:
                assert_never(held)
    return tuple(found)


def _in_edge(held: FrameHeld | None, edge: Edge, begins: Figure) -> Iterator[Cut]:
    """What it takes from the edge of the member that it stands on; screws bore nothing there.

    Args:
        held: what holds the joint.
        edge: the edge.
        begins: where the other member begins along it, mm.
    """
    match held:
        case Dowels():
            yield Drilled(
                name="dowel holes",
                face=edge,
                u=begins + held.places.first,
                v=held.middle,
                diameter=held.thick,
                depth=held.in_face,
                count=int(held.places.count),
                pitch=held.places.pitch if held.places.count > 1 else 0.0,
                making=IN_END,
            )
        case Tenons():
            half = held.slot_long / 2
            for place in held.places.figures:
                yield Slot(
                    name="tenon slot",
                    face=edge,
                    u0=begins + place - half,
                    u1=begins + place + half,
                    v=held.middle,
                    width=held.thick,
                    depth=held.in_face,
                    making=dataclasses.replace(IN_END_SLOT, cutter=held.thick),
                )
        case PocketScrews() | TooShort() | None:
            return
        case _:
            assert_never(held)


def _tenons(name: str, own: _Member, held: Tenons) -> Iterator[Part]:
    """The tenons at both ends of a member, where they stand in the room."""
    length, _, thickness = own.size
    x, y, z = own.at
    wide, thick, into = float(held.wide), float(held.thick), float(held.in_face)
    far = float(length) - (float(held.long) - into)
    middle = y + float(thickness) / 2
    for end, begins in (("low", -into), ("high", far)):
        for number, place in enumerate(held.places.places, 1):
            across = place - wide / 2
            if own.lies == "facing":
                stands = Placement(
                    origin=(x + across, middle - thick / 2, z + begins),
                    x=(0.0, 0.0, 1.0),
                    y=(1.0, 0.0, 0.0),
                )
            else:
                stands = Placement(
                    origin=(x + begins, middle + thick / 2, z + across),
                    x=(1.0, 0.0, 0.0),
                    y=(0.0, 0.0, 1.0),
                )
            yield one_tenon(join(name, f"{end} tenon {number}"), held, stands)
