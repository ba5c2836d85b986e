"""What mouldings, and the ends that go over them, take from a section of a part."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from parametric.drawing.plane import Point, Polygon
from parametric.drawing.shaped import flattened
from parametric.model import Moulded, Part, Shaped
from parametric.outlines import Outline, bounds_of
from parametric.runs import run_line
from parametric.trade.moulded_runs import edge_beside, shoulders
from parametric.trade.shaped_sizes import is_rectangle

_SAME = 1e-6


def run_across(cut: Moulded, at: float, thick: float) -> Polygon | None:
    """What a run along an edge takes from a section square to the part's length, in its y and z.

    Args:
        cut: the run.
        at: where the part is cut along its length, mm.
        thick: the part's thickness, mm.
    """
    if edge_beside(cut) in ("low end", "high end"):
        return None
    ring: list[Point] = []
    for inwards, down in flattened(cut.section):
        y = _height(run_line(cut.path, cut.start, cut.end, inwards), at)
        if y is None:
            return None
        ring.append((y, down if cut.face == "low face" else thick - down))
    # the section turns left with x in from the edge and y into the wood
    left = (edge_beside(cut) == "low edge") == (cut.face == "low face")
    return tuple(ring if left else reversed(ring))


def _height(line: Outline, at: float) -> float | None:
    """How high a line is at a place along the part; None past its ends."""
    points = (*flattened((*line[:-1], line[-1]._replace(bulge=0.0))),)
    for (x0, y0), (x1, y1) in itertools.pairwise(points):
        if min(x0, x1) - _SAME <= at <= max(x0, x1) + _SAME and abs(x1 - x0) > _SAME:
            return y0 + (y1 - y0) * (at - x0) / (x1 - x0)
    return None


def past_the_shoulders(cut: Shaped, part: Part) -> bool:
    """Whether a shape lies wholly in what goes past a rail's shoulders."""
    low, high = shoulders(part.blank, part.cuts)
    u0, _, u1, _ = bounds_of(cut.outline)
    return u1 <= low + _SAME or u0 >= high - _SAME


def _cheek(cut: Shaped, part: Part) -> bool:
    """Whether a shape is the cheek of a tenon: square, from one end of the piece, part of the way in."""
    u0, _, u1, _ = bounds_of(cut.outline)
    one_end = (u0 <= _SAME) != (u1 >= float(part.blank.length) - _SAME)
    return (
        one_end
        and is_rectangle(cut.outline)
        and float(cut.depth) < float(part.blank.thickness) - _SAME
    )


def ends_along(part: Part) -> Iterator[Polygon]:
    """What is cut off a rail's ends, in a section along the middle of its width, in its x and z."""
    long, thick = float(part.blank.length), float(part.blank.thickness)
    middle = float(part.blank.width) / 2
    for cut in part.cuts:
        if isinstance(cut, Moulded) and (end := edge_beside(cut)) in ("low end", "high end"):
            ring = [
                (x if end == "low end" else long - x, y if cut.face == "low face" else thick - y)
                for x, y in flattened(cut.section)
            ]
            left = (end == "low end") == (cut.face == "low face")
            yield tuple(ring if left else reversed(ring))
        elif (
            isinstance(cut, Shaped)
            and "face" in cut.face
            and (past_the_shoulders(cut, part) or _cheek(cut, part))
        ):
            u0, v0, u1, v1 = bounds_of(cut.outline)
            if v0 < middle < v1:
                z0, z1 = float(cut.surface), float(cut.depth)
                if cut.face == "high face":
                    z0, z1 = thick - z1, thick - z0
                yield ((u0, z0), (u1, z0), (u1, z1), (u0, z1))
