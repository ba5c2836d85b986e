"""Mouldings along a stile: from end to end, or between its rails with mitres and room for theirs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.model import Blank, Cut, Making, Shaped
from parametric.outlines import Outline, Vertex, area_of, backwards, no_short_edges
from parametric.profiles.meeting import across, mitre_line, mitred
from parametric.profiles.sticking import Sticking, level_edge, run_along, turned

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One opening beside a stile, between the sight edges of the rails below and above it.

    Both are paths in the stile's own x and y, the wood on their left, that touch the stile's
    sight edge: the lower one where it ends or begins, the upper one likewise.
    """

    low: Outline
    high: Outline


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
        ValueError: openings are so near one another, or an end, that their mitres cross.
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
            raise ValueError(
                "openings are so near one another, or the stile's end, that their mitres cross"
            )
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
    return turned(outline)
