"""What a shaped cut is measured by: a curve by its radius and its heights, a bevel by its angle.

The heights of a curve are those above the low edge of the blank, at both of its ends and at
its crown where that is higher: with the radius they set a trammel.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from parametric.cases.slope import BLADE_TILTS
from parametric.model import Blank, Edge, Face, Shaped, face_depth, face_size
from parametric.outlines import Outline, Vertex, arc_of, bounds_of, edges

_SAME = 1e-6
Run = tuple[tuple[Vertex, Vertex], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """The curved or raking wall of a cut that runs along its face, mm.

    `low` and `high` are where it begins and ends along u, `left` and `right` its heights
    there; `crown` its greatest height, and `crown_at` where that is. `radii` are those of its
    arcs, smallest first; none of a straight one. `wide` is how far it stands off the wall that
    runs with it, None where nothing does.
    """

    low: float
    high: float
    left: float
    right: float
    crown: float
    crown_at: float
    radii: tuple[float, ...]
    wide: float | None
    run: Run

    @property
    def crowned(self) -> bool:
        """Whether it is higher between its ends than at either."""
        return self.crown > max(self.left, self.right) + _SAME


@dataclass(frozen=True, slots=True, kw_only=True)
class Bevel:
    """An edge planed aslant along the piece: how far in at one face, over what thickness, mm."""

    inwards: float
    over: float
    edge: Edge
    long: float


def curve_of(cut: Shaped, blank: Blank) -> Curve | None:
    """The curve or rake of a cut; None for one that has none, or one that runs across its face.

    Between two that run side by side, a rebate that follows an arch, it is the upper one.
    """
    runs = _runs(cut, blank)
    if not 1 <= len(runs) <= 2 or not all(_goes_along(run) for run in runs):
        return None
    wide = _between(*runs) if len(runs) == 2 else None
    if len(runs) == 2 and wide is None:
        return None
    run = max(runs, key=lambda one: max(v.y for edge in one for v in edge))
    ends = sorted((run[0][0], run[-1][1]), key=lambda v: v.x)
    tops = [(v.y, v.x) for edge in run for v in edge]
    for a, b in run:
        arc = arc_of(a, b)
        if arc is not None:
            _, _, _, top = bounds_of((a, Vertex(b.x, b.y)))
            if top > max(a.y, b.y) + _SAME:
                tops.append((top, arc.x))
    crown, crown_at = max(tops)
    radii = sorted(arc.radius for a, b in run if (arc := arc_of(a, b)) is not None)
    return Curve(
        low=ends[0].x,
        high=ends[1].x,
        left=ends[0].y,
        right=ends[1].y,
        crown=crown,
        crown_at=crown_at,
        radii=tuple(radii),
        wide=wide,
        run=run,
    )


def _between(one: Run, other: Run) -> float | None:
    """How far two walls run apart, piece for piece; None where that is not the same all along."""
    if len(one) != len(other):
        return None
    apart = [_apart(a, b) for a, b in zip(one, reversed(other), strict=True)]
    if any(far is None or apart[0] is None or abs(far - apart[0]) > 1e-4 for far in apart):
        return None
    return apart[0]


def _apart(one: tuple[Vertex, Vertex], other: tuple[Vertex, Vertex]) -> float | None:
    """How far apart two arcs about one centre are, or two lines that are parallel."""
    mine, theirs = arc_of(*one), arc_of(*other)
    if mine is not None and theirs is not None:
        beside = math.hypot(mine.x - theirs.x, mine.y - theirs.y)
        return abs(mine.radius - theirs.radius) if beside < 1e-4 else None
    if mine is not None or theirs is not None:
        return None
    (a, b), (c, d) = one, other
    far = math.dist(a[:2], b[:2])
    off = [abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / far for p in (c, d)]
    return off[0] if abs(off[0] - off[1]) < 1e-4 else None


def bevel_of(cut: Shaped, blank: Blank) -> Bevel | None:
    """The bevel of a long edge; None for another cut."""
    if cut.face not in ("low end", "high end") or len(cut.outline) != 3:
        return None
    runs = _runs(cut, blank)
    if len(runs) != 1 or len(runs[0]) != 1 or runs[0][0][0].bulge:
        return None
    ((a, b),) = runs[0]
    wide, thick = (float(size) for size in face_size(cut.face, blank))
    if abs(abs(a.y - b.y) - thick) > _SAME:
        return None
    us = [vertex.x for vertex in cut.outline]
    if min(us) > _SAME and max(us) < wide - _SAME:
        return None
    edge: Edge = "low edge" if min(us) <= _SAME else "high edge"
    return Bevel(
        inwards=abs(a.x - b.x),
        over=abs(a.y - b.y),
        edge=edge,
        long=float(cut.depth) - float(cut.surface),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Slant:
    """An end that is not sawn square: how far it runs along the piece, over what it runs across, mm.

    `tilted` says that it leans through the thickness, as a blade must; else it runs over the
    broad face, to a line. `long` is the face, or the edge, that it leaves the longer.
    """

    along: float
    across: float
    tilted: bool
    long: Face

    @property
    def angle(self) -> float:
        """Off square, deg."""
        return math.degrees(math.atan2(self.along, self.across))

    @property
    def on_end(self) -> bool:
        """Whether it is past what a blade tilts to: the board then stands on end at a tall fence."""
        return self.tilted and self.angle > BLADE_TILTS + _SAME

    @property
    def tilt(self) -> float:
        """What the blade is tilted by, deg: off square, or past that off the board's own face."""
        return 90.0 - self.angle if self.on_end else self.angle


def slant_of(cut: Shaped, blank: Blank) -> Slant | None:
    """The end that a cut right through a piece leaves aslant; None for any other cut."""
    tilted = cut.face in ("low edge", "high edge")
    through = float(cut.depth) - float(cut.surface) >= float(face_depth(cut.face, blank)) - _SAME
    if cut.face in ("low end", "high end") or not through:
        return None
    runs = _runs(cut, blank)
    if len(runs) != 1 or len(runs[0]) != 1 or runs[0][0][0].bulge:
        return None
    if not tilted and _goes_along(runs[0]):
        return None
    low, high = sorted(runs[0][0], key=lambda v: v.y)
    _, tall = face_size(cut.face, blank)
    if abs(low.y) > _SAME or abs(high.y - float(tall)) > _SAME:
        return None
    at_top = max(v.x for v in cut.outline) >= float(blank.length) - _SAME
    longer_low = (low.x > high.x) == at_top
    faces: tuple[Face, Face] = ("low face", "high face") if tilted else ("low edge", "high edge")
    return Slant(
        along=abs(high.x - low.x),
        across=high.y - low.y,
        tilted=tilted,
        long=faces[0] if longer_low else faces[1],
    )


def is_rectangle(outline: Outline) -> bool:
    """Whether an outline is a rectangle along the face's own edges."""
    u0, v0, u1, v1 = bounds_of(outline)
    corners = {(u, v) for u in (u0, u1) for v in (v0, v1)}
    return (
        len(outline) == 4
        and not any(v.bulge for v in outline)
        and {(v.x, v.y) for v in outline} == corners
    )


def narrow_side(outline: Outline) -> float | None:
    """How wide a tail or its socket is where it is narrowest; None of any other outline.

    Four straight sides, two of them along one edge of the face and of unlike lengths.
    """
    if len(outline) != 4 or any(vertex.bulge for vertex in outline):
        return None
    sides = edges(outline)
    for one, other in (sides[0::2], sides[1::2]):
        for axis, along in ((0, 1), (1, 0)):
            if all(abs(a[axis] - b[axis]) <= _SAME for a, b in (one, other)):
                lengths = sorted(abs(a[along] - b[along]) for a, b in (one, other))
                return lengths[0] if lengths[1] - lengths[0] > _SAME else None
    return None


def _runs(cut: Shaped, blank: Blank) -> list[Run]:
    """The walls of a cut that are curved or aslant, those that follow one another together."""
    far = tuple(float(size) for size in face_size(cut.face, blank))

    def upright(a: Vertex, b: Vertex) -> bool:
        square = abs(a.x - b.x) <= _SAME or abs(a.y - b.y) <= _SAME
        on_rim = any(
            abs(a[axis] - at) <= _SAME and abs(b[axis] - at) <= _SAME
            for axis in (0, 1)
            for at in (0.0, far[axis])
        )
        return not a.bulge and (square or on_rim)

    sides = edges(cut.outline)
    start = next((i for i, side in enumerate(sides) if upright(*side)), 0)
    turned = [*sides[start:], *sides[:start]]
    return [
        tuple(run) for square, run in itertools.groupby(turned, lambda s: upright(*s)) if not square
    ]


def _goes_along(run: Run) -> bool:
    """Whether a run of walls goes along the face rather than across it."""
    a, b = run[0][0], run[-1][1]
    return abs(a.x - b.x) > abs(a.y - b.y)
