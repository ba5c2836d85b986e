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
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.model import Blank, Cut, Making, Moulded, Shaped, When
from parametric.outlines import Outline, Vertex, arc_of, area_of, backwards, no_short_edges
from parametric.profiles.meeting import across, mitre_line, mitred, smooth_runs
from parametric.profiles.moulding import Moulding
from parametric.sections import RunEnd, heading, nearest_meeting

Meets = Literal["coped", "mitred"]
Broad = Literal["low face", "high face"]
_SAME = 1e-6
_OTHER: dict[Broad, Broad] = {"low face": "high face", "high face": "low face"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sticking:
    """The moulding of a frame, the faces of a part that it is on, and how rails meet stiles."""

    moulding: Moulding
    faces: tuple[Broad, ...]
    meets: Meets


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One opening beside a stile, between the sight edges of the rails below and above it.

    Both are paths in the stile's own x and y, the wood on their left, that touch the stile's
    sight edge: the lower one where it ends or begins, the upper one likewise.
    """

    low: Outline
    high: Outline


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


def _stuck(moulding: Moulding, path: Outline, when: When = "before glue-up") -> Making:
    guided = "against a template" if any(v.bulge for v in path) else "along the fence"
    return Making(by="router", when=when, tool=f"{moulding.name} cutter, {guided}")


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


def stile_cuts(
    sticking: Sticking,
    blank: Blank,
    *,
    edge: Literal["low edge", "high edge"],
    wood: tuple[float, float],
    openings: Sequence[Opening],
) -> tuple[Cut, ...]:
    """The moulding along a stile's inner edge.

    Args:
        sticking: the moulding, its faces, how it meets.
        blank: the stile's.
        edge: the inner one.
        wood: where the stile begins and ends along x once its ends are trimmed, mm.
        openings: from the foot up; a coped stile's moulding runs past them from end to end.

    Raises:
        ValueError: two openings are so near one another that their mitres cross.
    """
    if sticking.meets == "coped":
        return _whole_length(sticking, level_edge(blank, edge, wood))
    width, depth = float(sticking.moulding.width), float(sticking.moulding.depth)
    rises = 1 if edge == "low edge" else -1
    height = 0.0 if edge == "low edge" else float(blank.width)
    cuts: list[Cut] = []
    # the lines that bound the moulding along the stile, from its foot to its top
    lines: list[Outline] = []
    for opening in openings:
        low, high = (_touching(sight, height) for sight in (opening.low, opening.high))
        path: Outline = (Vertex(low, height), Vertex(high, height))
        if rises < 0:
            path = backwards(path)
            first, last = opening.high, opening.low
        else:
            first, last = opening.low, opening.high
        start = mitre_line(first, path, width)
        end = mitre_line(path, last, width)
        cuts += run_along(sticking, path, mitred(start), mitred(end))
        lines += [start, end] if rises > 0 else [end, start]
    inner = height + rises * width
    square = [(Vertex(x, height), Vertex(x, inner)) for x in wood]
    bounds = [square[0], *lines, square[1]]
    for below, above in zip(bounds[::2], bounds[1::2], strict=True):
        if any(above[i].x - below[i].x < -_SAME for i in (0, -1)):
            raise ValueError("two openings are so near one another that their mitres cross")
        outline = _between(below, above, upright=rises > 0)
        if area_of(outline) < _SAME:
            continue
        for face in sticking.faces:
            cuts.append(
                Shaped(
                    name=f"{sticking.moulding.name} cut away at a rail",
                    face=face,
                    outline=outline,
                    depth=depth,
                    making=Making(by="bench", tool="saw down the mitre, pare to the quirk line"),
                )
            )
    return tuple(cuts)


def _whole_length(sticking: Sticking, path: Outline) -> tuple[Cut, ...]:
    """The moulding from one end of a member to the other."""
    width = float(sticking.moulding.width)
    start, end = (across(path, width, at_start=flag) for flag in (True, False))
    return tuple(run_along(sticking, path, start, end))


def _touching(path: Outline, height: float) -> float:
    """Where along the stile a rail's sight edge touches that of the stile."""
    ends = [v for v in (path[0], path[-1]) if abs(v.y - height) < _SAME]
    if not ends:
        raise ValueError("the sight edge of a rail does not come up to that of the stile")
    return ends[0].x


def _between(below: Outline, above: Outline, *, upright: bool) -> Outline:
    """What lies between two lines that both run in from the edge, counter-clockwise."""
    ring = (*above[:-1], Vertex(above[-1].x, above[-1].y), *backwards(below))
    outline = tuple(no_short_edges(list(ring)))
    if upright:
        return outline
    return _turned(outline)


def _turned(ring: Outline) -> Outline:
    """A ring run the other way round."""
    count = len(ring)
    return tuple(
        Vertex(ring[-i].x, ring[-i].y, -ring[(-i - 1) % count].bulge) for i in range(count)
    )


def rail_cuts(
    sticking: Sticking,
    blank: Blank,
    *,
    low: Outline | None,
    high: Outline | None,
    ends: tuple[bool, bool] = (True, True),
) -> tuple[Cut, ...]:
    """The ends and the mouldings of a rail whose blank reaches the moulding's width past its shoulders.

    Args:
        sticking: the moulding, its faces, how it meets.
        blank: the rail's, the moulding's width longer than its shoulders at either end.
        low: the sight edge below, from the left shoulder to the right one; None where the
            rail has none.
        high: the one above, from the right shoulder to the left one.
        ends: whether the left and the right end lie on a moulded stile.

    Raises:
        ValueError: the moulding cannot be coped, or an arch is too steep to be coped.
    """
    if sticking.meets == "coped" and not sticking.moulding.copes:
        raise ValueError(
            f"a {sticking.moulding.name} is mitred: what is behind it hangs on nothing"
        )
    width, long, wide = float(sticking.moulding.width), float(blank.length), float(blank.width)
    left, right = (width if ends[0] else 0.0), (long - width if ends[1] else long)
    # the stiles' sight edges as the rail sees them: up the left one, down the right one
    up = (Vertex(left, -wide), Vertex(left, 2 * wide))
    down = (Vertex(right, 2 * wide), Vertex(right, -wide))
    cuts: list[Cut] = []
    for side, moulded in (("left", ends[0]), ("right", ends[1])):
        if moulded and sticking.meets == "coped":
            cuts.append(_coped(sticking, blank, side == "left", low))
        elif moulded:
            cuts += _mitred_end(sticking, blank, side == "left", low, high, up, down)
    for path, first, last in ((low, up, down), (high, down, up)):
        if path is None:
            continue
        begins, stops = _ends(sticking, blank, path, first, last)
        flags = ends if first is up else (ends[1], ends[0])
        cuts += run_along(
            sticking,
            path,
            begins if flags[0] else _up_end(path[0], path, width),
            stops if flags[1] else _up_end(path[-1], path, width),
        )
    return tuple(cuts)


def _ends(
    sticking: Sticking, blank: Blank, path: Outline, first: Outline, last: Outline
) -> tuple[RunEnd, RunEnd]:
    """How a rail's run begins and ends on the stiles before and after it."""
    start, end = path[0], path[-1]
    if sticking.meets == "mitred":
        width = float(sticking.moulding.width)
        comes = (first[0], Vertex(start.x, start.y))
        goes = (Vertex(end.x, end.y), last[-1])
        return (
            mitred(mitre_line(comes, path, width)),
            mitred(mitre_line(path, goes, width)),
        )
    # the wood of a rail is above its lower edge and below its upper one
    rise = 1.0 if end.x > start.x else -1.0
    over = sticking.moulding.section
    return (
        RunEnd(
            line=(Vertex(start.x, start.y), Vertex(start.x, start.y + rise)),
            over=over,
            floor=floor_past(backwards(path), blank),
        ),
        RunEnd(
            line=(Vertex(end.x, end.y), Vertex(end.x, end.y + rise)),
            over=over,
            floor=floor_past(path, blank),
        ),
    )


def _up_end(at: Vertex, path: Outline, width: float) -> RunEnd:
    """A run's end along the end of the blank."""
    rise = width if path[-1].x > path[0].x else -width
    return RunEnd(line=(Vertex(at.x, at.y), Vertex(at.x, at.y + rise)))


def floor_past(path: Outline, blank: Blank) -> Outline:
    """Where a rail's sight edge goes on past its end, to the end of the blank.

    It keeps to its line or its circle, but never runs out of the blank: below the blank's
    edge it follows that.
    """
    a, b = path[-2:]
    out = float(blank.length) if b.x > a.x else 0.0
    if a.y == b.y and not a.bulge:
        return (Vertex(b.x, b.y), Vertex(out, b.y))
    # from one point of the curve to where it goes on, as far as it does
    arc = arc_of(a, b)
    level = (Vertex(0.0, 0.0), Vertex(1.0, 0.0))
    if b.y < _SAME and heading(a, b, (b.x, b.y))[1] < 0:
        return (Vertex(b.x, b.y), Vertex(out, b.y))
    end_line = (Vertex(out, 0.0), Vertex(out, 1.0))
    last = _on(a, b, end_line)
    points = [(b.x, b.y)]
    if last is not None and last[1] >= 0:
        points.append(last)
    else:
        crossing = _on(a, b, level)
        if crossing is None:
            raise ValueError("an arch that ends in the middle of a rail's end is not stuck")
        points += [crossing, (out, 0.0)]
    bulge = 0.0
    if arc is not None:
        ends = [math.atan2(y - arc.y, x - arc.x) for x, y in points[:2]]
        bulge = math.tan(math.remainder(ends[1] - ends[0], math.tau) / 4)
    return (Vertex(*points[0], bulge), *(Vertex(x, y) for x, y in points[1:]))


def _on(a: Vertex, b: Vertex, line: Outline) -> tuple[float, float] | None:
    try:
        return nearest_meeting((a, b), line, (b.x, b.y))
    except ValueError:
        return None


def under_outline(low: Outline, blank: Blank) -> Outline:
    """What is below an arched sight edge, along the whole blank of a rail: its underside to saw.

    Args:
        low: from the left shoulder to the right one, on its own wood.
        blank: the rail's, longer than its shoulders.
    """
    before, after = floor_past(backwards(low), blank), floor_past(low, blank)
    chain = (*backwards(before)[:-1], *low[:-1], *after)
    first, last = chain[0], chain[-1]
    ring = (Vertex(first.x, 0.0), Vertex(last.x, 0.0), *backwards(chain))
    return _tidy(ring)


def _tidy(ring: Outline) -> Outline:
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


def _coped(sticking: Sticking, blank: Blank, left: bool, low: Outline | None) -> Moulded:
    """A rail's end cut to the negative of the stile's moulding, with the shoulder behind it."""
    moulding = sticking.moulding
    width, wide = float(moulding.width), float(blank.width)
    out, shoulder = (0.0, width) if left else (float(blank.length), float(blank.length) - width)
    if low is None:
        floor: Outline = (Vertex(shoulder, 0.0), Vertex(out, 0.0))
    else:
        floor = floor_past(backwards(low) if left else low, blank)
    top = (Vertex(shoulder, wide), Vertex(out, wide))
    foot = Vertex(floor[-1].x, floor[-1].y)
    path = (Vertex(out, wide), foot) if left else (foot, Vertex(out, wide))
    lines = [RunEnd(line=backwards(chain)) for chain in (floor, top)]
    start, end = reversed(lines) if left else lines
    return Moulded(
        name=f"coped over the {moulding.name}",
        face=sticking.faces[0],
        profile=f"{moulding.name}, negative",
        section=negative(moulding, float(blank.thickness), both=len(sticking.faces) > 1),
        path=path,
        start=start,
        end=end,
        making=Making(by="router", tool=f"coping cutter, {moulding.name}, on the end of the blank"),
    )


def negative(moulding: Moulding, thickness: float, *, both: bool = False) -> Outline:
    """What is cut off a rail's end so that it goes over a moulding, in from the end of its blank.

    Args:
        moulding: the stile's.
        thickness: the rail's; behind the moulding all is cut off up to the shoulder, mm.
        both: whether the stile is stuck on both faces.
    """
    width = float(moulding.width)
    section = moulding.section
    first = next(i for i, v in enumerate(section) if v.x >= width - _SAME and abs(v.y) < _SAME)
    edge = next(i for i, v in enumerate(section) if abs(v.x) < _SAME and i > first)
    front = tuple(Vertex(width - v.x, v.y, -v.bulge) for v in section[first : edge + 1])
    front = (*front[:-1], Vertex(front[-1].x, front[-1].y))
    back: Outline = (Vertex(width, thickness), Vertex(0.0, thickness))
    if both:
        back = backwards(tuple(Vertex(v.x, thickness - v.y, -v.bulge) for v in front))
    return _tidy((*front, *back))


def _mitred_end(
    sticking: Sticking,
    blank: Blank,
    left: bool,
    low: Outline | None,
    high: Outline | None,
    up: Outline,
    down: Outline,
) -> Iterator[Shaped]:
    """A rail's end with its shoulder behind the moulding, and mitred at the front."""
    moulding = sticking.moulding
    width, depth, wide = float(moulding.width), float(moulding.depth), float(blank.width)
    out, shoulder = (0.0, width) if left else (float(blank.length), float(blank.length) - width)
    floor: Outline = (Vertex(shoulder, 0.0), Vertex(out, 0.0))
    if low is not None:
        floor = floor_past(backwards(low) if left else low, blank)

    def ring(*vertices: Vertex) -> Outline:
        return _tidy(_turned(vertices) if left else vertices)

    begins, other = sticking.faces[0], _OTHER[sticking.faces[0]]
    both = len(sticking.faces) > 1
    yield Shaped(
        name="shoulder behind the moulding",
        face=begins if both else other,
        outline=ring(*floor, Vertex(out, wide), Vertex(shoulder, wide)),
        surface=depth if both else 0.0,
        depth=float(blank.thickness) - depth,
        making=Making(by="saw", tool="tenoning jig, to the long shoulder's line"),
    )
    corners: list[Outline] = []
    if low is not None:
        mitre = (
            mitre_line((up[0], _bare(low[0])), low, width)
            if left
            else mitre_line(low, (_bare(low[-1]), down[-1]), width)
        )
        corners.append(ring(*floor, *backwards(mitre)[:-1]))
    if high is not None:
        mitre = (
            mitre_line(high, (_bare(high[-1]), up[-1]), width)
            if left
            else mitre_line((down[0], _bare(high[0])), high, width)
        )
        corners.append(ring(Vertex(out, wide), Vertex(shoulder, wide), *mitre[1:-1], mitre[-1]))
    for outline in corners:
        if len(outline) < 3 or area_of(outline) < _SAME:
            continue
        for face in sticking.faces:
            yield Shaped(
                name="mitre of the moulding",
                face=face,
                outline=outline,
                depth=depth,
                making=Making(by="bench", tool="mitre template and chisel"),
            )


def _bare(vertex: Vertex) -> Vertex:
    return Vertex(vertex.x, vertex.y)
