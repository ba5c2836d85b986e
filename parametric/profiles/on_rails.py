"""Mouldings along a rail and what its ends are on moulded stiles: coped over them, or mitred.

A rail's blank is longer than its shoulders by the width of the moulding at each moulded stile.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.model import Blank, Cut, Making, Moulded, Shaped
from parametric.outlines import Outline, Vertex, arc_of, area_of, backwards
from parametric.paths import heading, nearest_meeting
from parametric.profiles.meeting import mitre_line, mitred
from parametric.profiles.moulding import Moulding
from parametric.profiles.sticking import Broad, Sticking, run_along, tidy, turned
from parametric.runs import RunEnd

_SAME = 1e-6
_OTHER: dict[Broad, Broad] = {"low face": "high face", "high face": "low face"}


def rail_cuts(
    sticking: Sticking,
    blank: Blank,
    *,
    low: Outline | None,
    high: Outline | None,
    ends: tuple[bool, bool] = (True, True),
    steps: tuple[float, float] = (0.0, 0.0),
) -> tuple[Cut, ...]:
    """The ends and the mouldings of a rail whose blank reaches the moulding's width past its shoulders.

    Args:
        sticking: the moulding, its faces, how it meets.
        blank: the rail's, the moulding's width longer than its shoulders at either end.
        low: the sight edge below, from the left shoulder to the right one; None where the
            rail has none.
        high: the one above, from the right shoulder to the left one.
        ends: whether the left and the right end lie on a moulded stile.
        steps: how wide a rebate is taken from the face along the lower edge and along the upper
            one, deeper than the moulding; there the ends are cut off at the shoulders.

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
        if not moulded:
            continue
        end = _End(sticking=sticking, blank=blank, left=side == "left", low=low, steps=steps)
        cuts += end.cut_off()
        if sticking.meets == "coped":
            cuts.append(_coped(end))
        else:
            cuts += _mitred_end(end, high, up, down)
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
    return tidy(ring)


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


@dataclass(frozen=True, slots=True, kw_only=True)
class _End:
    """One end of a rail, from its shoulder out, with what bounds it below and above."""

    sticking: Sticking
    blank: Blank
    left: bool
    low: Outline | None
    steps: tuple[float, float]

    @property
    def out(self) -> float:
        return 0.0 if self.left else float(self.blank.length)

    @property
    def shoulder(self) -> float:
        width = float(self.sticking.moulding.width)
        return width if self.left else float(self.blank.length) - width

    @property
    def high(self) -> float:
        return float(self.blank.width) - self.steps[1]

    @property
    def floor(self) -> Outline:
        """What it stands on, from the shoulder out."""
        if self.low is None:
            return (Vertex(self.shoulder, self.steps[0]), Vertex(self.out, self.steps[0]))
        return floor_past(backwards(self.low) if self.left else self.low, self.blank)

    def ring(self, *vertices: Vertex) -> Outline:
        """A ring that is set out from the shoulder, counter-clockwise at a right end."""
        return tidy(turned(vertices) if self.left else vertices)

    def cut_off(self) -> Iterator[Shaped]:
        """Beside a step in the face nothing is left past the shoulder."""
        wide = float(self.blank.width)
        for low, high in ((0.0, self.steps[0]), (self.high, wide)):
            if high - low < _SAME:
                continue
            yield Shaped(
                name="cut off at the step",
                face=self.sticking.faces[0],
                outline=self.ring(
                    Vertex(self.shoulder, low),
                    Vertex(self.out, low),
                    Vertex(self.out, high),
                    Vertex(self.shoulder, high),
                ),
                depth=float(self.blank.thickness),
                making=Making(by="saw", tool="tenoning jig or hand saw, to the shoulder line"),
            )


def _coped(end: _End) -> Moulded:
    """A rail's end cut to the negative of the stile's moulding, with the shoulder behind it."""
    sticking, moulding, blank = end.sticking, end.sticking.moulding, end.blank
    floor, high = end.floor, Vertex(end.out, end.high)
    top = (Vertex(end.shoulder, end.high), high)
    foot = Vertex(floor[-1].x, floor[-1].y)
    path = (high, foot) if end.left else (foot, high)
    lines = [RunEnd(line=backwards(chain)) for chain in (floor, top)]
    begins, stops = reversed(lines) if end.left else lines
    return Moulded(
        name=f"coped over the {moulding.name}",
        face=sticking.faces[0],
        profile=f"{moulding.name}, negative",
        section=negative(moulding, float(blank.thickness), both=len(sticking.faces) > 1),
        path=path,
        start=begins,
        end=stops,
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
    return tidy((*front, *back))


def _mitred_end(end: _End, high: Outline | None, up: Outline, down: Outline) -> Iterator[Shaped]:
    """A rail's end with its shoulder behind the moulding, and mitred at the front."""
    sticking, moulding, blank = end.sticking, end.sticking.moulding, end.blank
    left, low, floor, ring = end.left, end.low, end.floor, end.ring
    width, depth = float(moulding.width), float(moulding.depth)
    out, shoulder, wide = end.out, end.shoulder, end.high
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
