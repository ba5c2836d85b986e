"""Boards under a sloping top: what is sawn off their ends, and how the top itself lies."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from parametric.cases.case import CaseBoard
from parametric.cases.slope import BLADE_TILTS, Slope
from parametric.model import Cut, Face, Making, Placement, Shaped
from parametric.outlines import Outline, Vertex, area_of
from parametric.parts.scribing import SCRIBED
from parametric.units import mm_text

SAWN = Making(by="saw", tool="circular saw along a straightedge, to the line")
_SAME = 1e-6


def top_placement(slope: Slope, board: CaseBoard) -> Placement:
    """Where a sloping top's low corner stands, and which way it runs, in its case's frame."""
    c, s = _turn(slope)
    x = min(0.0, s * float(board.thickness))
    return Placement(
        origin=(x, board.y, float(slope.under(0.0)) + s * x / c), x=(c, 0.0, s), y=(0.0, 1.0, 0.0)
    )


def top_cuts(slope: Slope, board: CaseBoard) -> Iterator[Cut]:
    """Its two ends, plumb."""
    c, s = _turn(slope)
    t, long = float(board.thickness), float(board.length)
    x = min(0.0, s * t)
    low = [((s * w - x) / c, w) for w in (0.0, t)]
    high = [((float(slope.width) + s * w - x) / c, w) for w in (0.0, t)]
    making, deep = _bevelled(slope), float(board.width)
    for ends, edge in ((low, 0.0), (high, long)):
        corners = [*ends, (edge, t), (edge, 0.0)]
        yield from _beyond("plumb end", corners, "low edge", deep, making)


def filler_placement(slope: Slope, kept: float, at: tuple[float, float, float]) -> Placement:
    """Where a filler on a sloping top stands, its face to the front.

    Args:
        slope: of the top.
        kept: how wide it is once it is scribed, square to the slope, mm.
        at: the left end of the top's outer face, at the back of the filler, mm.
    """
    c, s = _turn(slope)
    before = max(0.0, -kept * s / c)
    x, y, z = at
    return Placement(origin=(x - before * c, y, z - before * s), x=(c, 0.0, s), y=(-s, 0.0, c))


def filler_cuts(slope: Slope, size: tuple[float, float, float], kept: float) -> Iterator[Cut]:
    """What is scribed off it all along, and of what is kept its two ends, plumb.

    Args:
        slope: of the top that it stands on.
        size: length, width and thickness as made, mm.
        kept: how wide it is once it is scribed, mm.
    """
    c, s = _turn(slope)
    long, wide, thick = size
    before, length = max(0.0, -kept * s / c), float(slope.width) / c
    tool = f"{SAWN.tool}, {_degrees(slope)} off square"
    for start, edge in ((before, 0.0), (before + length, long)):
        ends = [(start + w * s / c, w) for w in (0.0, kept)]
        corners = [*ends, (edge, kept), (edge, 0.0)]
        yield from _beyond("plumb end", corners, "high face", thick, replace(SAWN, tool=tool))
    band = [(0.0, kept), (long, kept), (long, wide), (0.0, wide)]
    yield from _beyond("scribed", band, "high face", thick, SCRIBED)


def upright_cuts(slope: Slope, board: CaseBoard) -> Iterator[Cut]:
    """The upper end of a side or a partition, bevelled to the under face of the top."""
    t, long = float(board.thickness), float(board.length)
    # its thickness runs to the left, from its right face
    ends = [(float(slope.under(board.x + t - w)) - board.z, w) for w in (0.0, t)]
    corners = [*ends, (long, t), (long, 0.0)]
    making = _bevelled(slope)
    yield from _beyond("end to the slope", corners, "low edge", float(board.width), making)


def raked_end(
    name: str, corners: Sequence[tuple[float, float]], thick: float, making: Making = SAWN
) -> Iterator[Cut]:
    """What comes off the upper end of a board that faces the front, (up, across); none of a square one."""
    yield from _beyond(name, corners, "low face", thick, making)


def back_cuts(slope: Slope, board: CaseBoard) -> Iterator[Cut]:
    """The upper edge of a planted back, along the outer face of the top."""
    long, wide = float(board.length), float(board.width)
    ends = [(float(slope.outer(board.x + v)) - board.z, v) for v in (0.0, wide)]
    corners = [*ends, (long, wide), (long, 0.0)]
    yield from _beyond("end to the slope", corners, "low face", float(board.thickness), SAWN)


def _bevelled(slope: Slope) -> Making:
    """At the saw, its blade tilted by as much as the slope is off the level, or what is left of 90."""
    off = abs(float(slope.angle))
    if off > BLADE_TILTS:
        return Making(by="saw", tool=f"on end at a tall fence, blade tilted {_told(90.0 - off)}")
    return Making(by="saw", tool=f"blade or fence tilted {_degrees(slope)}")


def _degrees(slope: Slope) -> str:
    return _told(abs(float(slope.angle)))


def _told(angle: float) -> str:
    return f"{mm_text(angle, 0.1)}°"


def _turn(slope: Slope) -> tuple[float, float]:
    angle = math.radians(float(slope.angle))
    return math.cos(angle), math.sin(angle)


def _beyond(
    name: str, corners: Sequence[tuple[float, float]], face: Face, depth: float, making: Making
) -> Iterator[Cut]:
    """The wood inside corners on the front edge, or on the front face, right through; none if there is none."""
    outline = _outline(corners)
    if len(outline) < 3 or abs(area_of(outline)) < _SAME:
        return
    yield Shaped(
        name=name,
        face=face,
        outline=outline if area_of(outline) > 0 else tuple(reversed(outline)),
        depth=depth,
        making=making,
    )


def _outline(corners: Sequence[tuple[float, float]]) -> Outline:
    found: list[Vertex] = []
    for u, v in corners:
        if not found or math.hypot(u - found[-1].x, v - found[-1].y) > _SAME:
            found.append(Vertex(u, v))
    if len(found) > 1 and math.hypot(found[0].x - found[-1].x, found[0].y - found[-1].y) <= _SAME:
        found.pop()
    return tuple(found)
