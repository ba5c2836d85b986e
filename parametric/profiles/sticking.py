"""Sticking in frame work: the mouldings along the sight edges, and how rails end on stiles.

A rail's blank is longer than its shoulders by the width of the moulding at either end.

Coped: the stile's moulding runs on; the rail's end is its negative, and its own moulding runs
out over it.

    face  ______ rail ______
                  .--'         what is left of the rail's end at the front, over
            ____.'             the stile's moulding, `width` long
           |    shoulder at the sight edge, from the moulding's depth to the back
           |

Mitred: past the mitre the stile's moulding is cut away, as deep as it is, and the rail's end
fills its place.

Everything is in the part's own x and y; every path has the wood on its left. Cuts take no
wood twice: an arched underside is cut along the whole blank (`under_outline`), the end
takes what is above it, the moulding what both have left.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from parametric.model import Blank, Making, Moulded
from parametric.outlines import Outline, Vertex, no_short_edges
from parametric.profiles.meeting import mitre_line, mitred, smooth_runs
from parametric.profiles.moulding import Meets, Moulding
from parametric.runs import RunEnd

Broad = Literal["low face", "high face"]
_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Sticking:
    """The moulding of a frame, the faces of a part that it is on, and how rails meet stiles."""

    moulding: Moulding
    faces: tuple[Broad, ...]
    meets: Meets


def level_edge(
    blank: Blank, edge: Literal["low edge", "high edge"], x: tuple[float, float]
) -> Outline:
    """A straight sight edge of a part, along an edge of its blank, with the wood on its left."""
    if edge == "low edge":
        return (Vertex(x[0], 0.0), Vertex(x[1], 0.0))
    wide = float(blank.width)
    return (Vertex(x[1], wide), Vertex(x[0], wide))


def stuck(sticking: Sticking, face: Broad, path: Outline, start: RunEnd, end: RunEnd) -> Moulded:
    """One run of the moulding."""
    return Moulded(
        name=sticking.moulding.name,
        face=face,
        profile=sticking.moulding.name,
        section=sticking.moulding.section,
        path=path,
        start=start,
        end=end,
        making=_stuck(sticking.moulding, path),
    )


def _stuck(moulding: Moulding, path: Outline) -> Making:
    guided = "against a template" if any(v.bulge for v in path) else "along the fence"
    return Making(by="router", when="before glue-up", tool=f"{moulding.name} cutter, {guided}")


def run_along(sticking: Sticking, path: Outline, start: RunEnd, end: RunEnd) -> Iterator[Moulded]:
    """The moulding along one sight edge, on every face that is stuck.

    Where the edge turns a corner, at the point of a pointed head, two runs meet in a mitre.
    """
    runs = smooth_runs(path)
    width = float(sticking.moulding.width)
    ends = [start]
    for one, other in itertools.pairwise(runs):
        line = mitre_line(one, other, width)
        ends += [mitred(line, open_past=False), mitred(line, open_past=False)]
    ends.append(end)
    for face in sticking.faces:
        for index, run in enumerate(runs):
            yield stuck(sticking, face, run, ends[2 * index], ends[2 * index + 1])


def turned(ring: Outline) -> Outline:
    """A ring run the other way round."""
    count = len(ring)
    return tuple(
        Vertex(ring[-i].x, ring[-i].y, -ring[(-i - 1) % count].bulge) for i in range(count)
    )


def tidy(ring: Outline) -> Outline:
    """A ring without corners that fall together, or edges that run out and back in one line."""
    kept = list(no_short_edges(list(ring)))
    while True:
        for index, here in enumerate(kept):
            before, after = kept[index - 1], kept[(index + 1) % len(kept)]
            if before.bulge or here.bulge:
                continue
            ux, uy = here.x - before.x, here.y - before.y
            vx, vy = after.x - here.x, after.y - here.y
            if abs(ux * vy - uy * vx) < _SAME and ux * vx + uy * vy < 0:
                del kept[index]
                kept = list(no_short_edges(kept))
                break
        else:
            return tuple(kept)
