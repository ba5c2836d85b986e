"""The cuts that a corner joint makes on a side and on an end board, and the bottom's groove in both.

A side lies with its inside up: x from one end of the box to the other, y up, its high face
inside. An end board, the box's front or back, with its outside up: x from one side to the
other, y up, its low face inside. Lengths are mm, from the end of the blank.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer_corners import (
    BoxCorner,
    Corner,
    DovetailCorner,
    DowelCorner,
    GrooveBand,
    RebateCorner,
    ScrewCorner,
)
from parametric.figures import Figure
from parametric.model import Cut, Drilled, End, Face, Groove, Making, Shaped
from parametric.outlines import Outline, Vertex, rectangle, turned_over

Cutters = tuple[Figure, ...]

_FINGERS = Making(by="saw", tool="dado set and finger jig, sides and ends together")
_REBATE = Making(by="saw", tool="dado set, inside down against the mitre gauge")
_HOLE = Making(by="bench", tool="dowelling jig, bit with a stop")
_SCREW = Making(by="bench", tool="twist bit, through the side into the end while they are clamped")


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """One board of the box: its blank, and how thick the boards at its ends are, mm."""

    length: float
    height: float
    thickness: float
    other: float


def _tails(corner: DovetailCorner) -> Making:
    return Making(
        by="bench",
        tool=f"dovetail saw and chisel, sliding bevel at {corner.slope}; or a router and a template "
        "of this pitch",
    )


def side_corner(corner: Corner, end: End, side: Member) -> tuple[Cut, ...]:
    """What a corner takes from one end of a side."""
    match corner:
        case DovetailCorner():
            return tuple(
                _inside(
                    "space for a pin",
                    _pin(corner, pin, side.height),
                    side.thickness,
                    _tails(corner),
                    (end, side),
                )
                for pin in range(int(corner.count) + 1)
            )
        case BoxCorner():
            return _fingers(corner, end, side, first=1)
        case RebateCorner():
            outline = rectangle(0.0, 0.0, side.other, side.height)
            return (_inside("rebate", outline, corner.reach, _REBATE, (end, side)),)
        case DowelCorner():
            return (_row("dowel holes", corner, (end, side), corner.thick, corner.in_side, _HOLE),)
        case ScrewCorner():
            return (_row("screw holes", corner, (end, side), corner.thick, side.thickness, _SCREW),)
        case _:
            assert_never(corner)


def end_corner(corner: Corner, end: End, board: Member) -> tuple[Cut, ...]:
    """What a corner takes from one end of the box's front or back; nothing where it is let in whole."""
    match corner:
        case DovetailCorner():
            return tuple(
                _cut("socket for a tail", end, _tail(corner, tail), corner.reach, _tails(corner))
                for tail in range(int(corner.count))
            )
        case BoxCorner():
            return _fingers(corner, end, board, first=0)
        case RebateCorner():
            return ()
        case DowelCorner():
            return (_in_end("dowel holes", corner, end, board, corner.thick, _HOLE),)
        case ScrewCorner():
            return (_in_end("screw pilots", corner, end, board, corner.pilot, _SCREW),)
        case _:
            assert_never(corner)


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveEnd:
    """How far from the end of its blank a groove ends, mm, and whether it stops in wood there."""

    off: float
    stopped: bool = False


def side_groove(
    corner: Corner, groove: GrooveBand, side: Member, *, hidden: bool = True
) -> GrooveEnd:
    """Where the bottom's groove ends in a side.

    It runs out at a butt, and behind the lap of half-blind tails; through tails and the side's
    own fingers show, and it stops in them; where the end board has the wood, in a rebate or at a
    finger of its own, it goes no farther than there.

    Args:
        corner: the joint there.
        groove: the groove.
        side: the side.
        hidden: nobody sees the end of a butted side: a front is planted over it, or it is at the
            back.
    """
    inside = side.other - float(corner.lap)
    stops = GrooveEnd(off=inside - float(groove.depth), stopped=True)
    match corner:
        case DovetailCorner(kind="half-blind dovetail"):
            return GrooveEnd(off=0.0)
        case DowelCorner() | ScrewCorner():
            return GrooveEnd(off=0.0) if hidden else stops
        case DovetailCorner():
            return stops
        case BoxCorner() if finger_at(corner, groove) % 2 == 0:
            return stops
        case RebateCorner() | BoxCorner():
            return GrooveEnd(off=inside)
        case _:
            assert_never(corner)


def end_groove(corner: Corner, groove: GrooveBand) -> GrooveEnd:
    """Where the bottom's groove ends in the box's front or back."""
    reach = float(corner.reach)
    match corner:
        case DowelCorner() | ScrewCorner() | RebateCorner():
            return GrooveEnd(off=0.0)
        case BoxCorner() if finger_at(corner, groove) % 2 == 1:
            return GrooveEnd(off=reach - float(groove.depth), stopped=True)
        case DovetailCorner() | BoxCorner():
            return GrooveEnd(off=reach)
        case _:
            assert_never(corner)


def bottom_groove(
    groove: GrooveBand,
    face: Face,
    member: Member,
    low: GrooveEnd,
    high: GrooveEnd,
    cutters: Cutters,
) -> Groove:
    """The bottom's groove along a board: sawn where it runs out at both ends, else routed.

    An end that stops is chopped square, so that the bottom's corner goes home.
    """
    width = groove.width
    stopped = low.stopped or high.stopped
    cutter = max((c for c in cutters if c <= width), default=None) if stopped else None
    return Groove(
        name="bottom groove",
        face=face,
        u0=low.off,
        u1=member.length - high.off,
        v=(groove.low + groove.high) / 2,
        width=width,
        depth=groove.depth,
        corner=0.0 if cutter is None else cutter / 2,
        squared=stopped,
        making=_groove_making(stopped, cutter),
    )


def _groove_making(stopped: bool, cutter: Figure | None) -> Making:
    if not stopped:
        return Making(by="saw", tool="dado set")
    if cutter is None:
        return Making(by="bench", tool="chisel and router plane")
    return Making(by="router", cutter=cutter, tool="straight cutter")


def back_notches(wide: float, high: float, reach: float, board: Member) -> tuple[Shaped, ...]:
    """What slides under the box need out of the low corners of its back, from the sides' insides in."""
    making = Making(by="saw", tool="bandsaw, square in the corner with a chisel")
    low, far = rectangle(reach, 0.0, reach + wide, high), board.length
    return (
        _cut("notch for a slide", "high face", low, board.thickness, making),
        _cut(
            "notch for a slide", "high face", turned_over(low, across=far), board.thickness, making
        ),
    )


def _cut(name: str, face: Face, outline: Outline, depth: float, making: Making) -> Shaped:
    return Shaped(name=name, face=face, outline=outline, depth=depth, making=making)


def _inside(
    name: str, outline: Outline, depth: float, making: Making, where: tuple[End, Member]
) -> Shaped:
    """A cut in a side's inside, its outline from the low end, put at the end that is meant."""
    end, side = where
    outline = outline if end == "low end" else turned_over(outline, across=side.length)
    return _cut(name, "high face", outline, depth, making)


def _row(
    name: str,
    corner: DowelCorner | ScrewCorner,
    where: tuple[End, Member],
    across: Figure,
    depth: float,
    making: Making,
) -> Drilled:
    """Holes up the end of a side, over the middle of the board that meets it there."""
    end, side = where
    off = side.other / 2
    return Drilled(
        name=name,
        face="high face",
        u=off if end == "low end" else side.length - off,
        v=corner.places[0],
        diameter=across,
        depth=depth,
        count=len(corner.places),
        pitch=corner.pitch,
        along="v",
        making=making,
    )


def _in_end(
    name: str,
    corner: DowelCorner | ScrewCorner,
    end: End,
    board: Member,
    across: Figure,
    making: Making,
) -> Drilled:
    """The holes that meet them, in the end of the box's front or back."""
    return Drilled(
        name=name,
        face=end,
        u=corner.places[0],
        v=board.thickness / 2,
        diameter=across,
        depth=corner.in_end,
        count=len(corner.places),
        pitch=corner.pitch,
        along="u",
        making=making,
    )


def _pin(corner: DovetailCorner, number: int, height: float) -> Outline:
    """What a pin stands in, seen on the side: its narrow side at the end of the side."""
    tail, middle = float(corner.tail), float(corner.pitch) * number
    tip, root = float(corner.pin) / 2, float(corner.pin_root) / 2
    low, high = number > 0, number < int(corner.count)
    return (
        Vertex(0.0, middle - tip if low else 0.0),
        Vertex(tail, middle - root if low else 0.0),
        Vertex(tail, middle + root if high else height),
        Vertex(0.0, middle + tip if high else height),
    )


def _tail(corner: DovetailCorner, number: int) -> Outline:
    """What a tail stands in, seen on the end of the front: its wide side away from the inside."""
    tail, low = float(corner.tail), float(corner.pitch) * number
    high = float(corner.pitch) * (number + 1)
    tip, root = float(corner.pin) / 2, float(corner.pin_root) / 2
    return (
        Vertex(low + root, 0.0),
        Vertex(high - root, 0.0),
        Vertex(high - tip, tail),
        Vertex(low + tip, tail),
    )


def _fingers(corner: BoxCorner, end: End, member: Member, *, first: int) -> tuple[Cut, ...]:
    """Every other finger cut away, from the first of them up."""
    finger, count = float(corner.finger), int(corner.count)
    cuts = []
    for number in range(first, count, 2):
        top = member.height if number == count - 1 else finger * (number + 1)
        outline = rectangle(0.0, finger * number, member.other, top)
        cuts.append(_inside("between fingers", outline, member.thickness, _FINGERS, (end, member)))
    return tuple(cuts)


def finger_at(corner: BoxCorner, groove: GrooveBand) -> int:
    """In which finger, from the low edge, the middle of the groove lies: the side has the even ones."""
    finger = float(corner.finger)
    return math.floor(float(groove.low + groove.high) / 2 / finger) if finger > 0 else 0
