"""Rails of unlike leaves, side by side, that nearly line up, or lock rails at two heights.

Why: a line that misses its neighbour's by a few millimetres reads as a mistake; the same line a
hand's breadth off reads as a choice. Lock rails are looked for at one height.
Example: a lock rail at 830 to 980 in leaf A and at 836 to 986 in leaf B is 6 out.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby, pairwise

from parametric.figures import Where, exceeds
from parametric.names import short
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail
from parametric.rules.checked import Checked

NEARLY = 12.0
"""Lines no farther apart than this are taken for one line that misses, mm. Common practice, no source."""
LOCK_RAIL = "lock rail"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Edge:
    """A straight edge of a rail that is seen across a leaf, mm above the leaves' foot."""

    rail: Rail
    word: str
    up: float


def rails_out_of_line(job: Checked) -> Iterator[Problem]:
    """Caution, once for two rails that belong together."""
    for one, other in _side_by_side(job):
        if one.written.heading == other.written.heading:
            continue
        told: set[tuple[str, str]] = set()
        for mine, theirs in (*_lock_rails(one, other), *_nearly(one, other)):
            if (mine.name, theirs.name) in told:
                continue
            told.add((mine.name, theirs.name))
            yield _problem(job, (one, mine), (other, theirs))


def _side_by_side(job: Checked) -> Iterator[tuple[Leaf, Leaf]]:
    """Leaves whose feet stand at one height, each with the next to its right."""

    def stands(leaf: Leaf) -> tuple[float, float]:
        return round(float(leaf.hung.foot), 6), float(leaf.hung.left)

    for _, level in groupby(sorted(job.leaves, key=stands), key=lambda leaf: stands(leaf)[0]):
        yield from pairwise(level)


def _edges(leaf: Leaf) -> tuple[_Edge, ...]:
    """Rails' edges that are seen: not the leaf's own ends, nor under an arch."""
    return tuple(
        _Edge(rail=rail, word=word, up=float(up))
        for rail in leaf.rails
        for word, up, seen in (
            ("top", rail.top, exceeds(leaf.height, rail.top)),
            ("bottom", rail.foot, exceeds(rail.foot, 0.0) and rail.head is None),
        )
        if seen
    )


def _lock_rails(one: Leaf, other: Leaf) -> Iterator[tuple[Rail, Rail]]:
    """The lock rails of two leaves that have one each, at two heights."""
    mine = [rail for rail in one.rails if rail.noun == LOCK_RAIL]
    theirs = [rail for rail in other.rails if rail.noun == LOCK_RAIL]
    if len(mine) != 1 or len(theirs) != 1:
        return
    a, b = mine[0], theirs[0]
    if exceeds(abs(a.foot - b.foot), 0.0) or exceeds(abs(a.top - b.top), 0.0):
        yield a, b


def _nearly(one: Leaf, other: Leaf) -> Iterator[tuple[Rail, Rail]]:
    """Edges that nearly meet one another, where neither meets another truly."""
    mine, theirs = _edges(one), _edges(other)

    def met(edge: _Edge, others: tuple[_Edge, ...]) -> bool:
        return any(not exceeds(abs(edge.up - one.up), 0.0) for one in others)

    for a in mine:
        for b in theirs:
            if met(a, theirs) or met(b, mine) or exceeds(abs(a.up - b.up), NEARLY):
                continue
            yield a.rail, b.rail


def _problem(job: Checked, mine: tuple[Leaf, Rail], theirs: tuple[Leaf, Rail]) -> Problem:
    (one, a), (other, b) = mine, theirs
    out = max(abs(a.foot - b.foot), abs(a.top - b.top))
    pins = [f"`bottom: {job.fine(a.foot)}`"]
    if exceeds(abs(a.height - b.height), 0.0):
        pins.insert(0, f"`{b.noun}: {job.fine(a.height)}`")
    return Problem(
        code="rails_out_of_line",
        level="caution",
        message=f"The {short(a.name)} of {one.name} stands {job.fine(a.foot)} to {job.fine(a.top)} "
        f"above its foot, and the {short(b.name)} of {other.name} {job.fine(b.foot)} to "
        f"{job.fine(b.top)}: {job.fine(out)} out of line.",
        where=_line(other, b),
        about=f"{b.name} out of line",
        found=f"{job.fine(b.foot)} to {job.fine(b.top)}",
        allowed=f"{job.fine(a.foot)} to {job.fine(a.top)}",
        fix=f"Write {' and '.join(pins)} for the {b.noun} of {other.written.heading}, with lines "
        "above and below it that give way, or accept it where it is meant.",
    )


def _line(leaf: Leaf, rail: Rail) -> Where:
    return next(band.written.line(band.noun) for band in leaf.bands if band.name == rail.name)
