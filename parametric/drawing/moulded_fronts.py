"""Moulded parts seen on their moulded face: what a rail covers of its stiles, and lines along edges.

|   |          the stile, behind the rail's end
|  _|________  the moulding's arris on the rail, out to the end of the rail's blank
| | .'         the mitre, also where it is coped: two mouldings of one section meet in it
| |'|________  the sight edges
| | |
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.plane import Polygon
from parametric.drawing.shaped import flattened
from parametric.model import Cut, Face, Moulded, Part, Shaped
from parametric.outlines import Outline, Vertex, arc_of, area_of
from parametric.profiles.sticking import turned
from parametric.runs import RunEnd, end_at, run_line
from parametric.sections import depth_of, reach_of
from parametric.trade.moulded_runs import edge_beside, shoulders

_SAME = 1e-6
_PIECES = 8
"""In how many pieces the mitre of a curved run is drawn."""


def edge_runs(part: Part) -> tuple[Moulded, ...]:
    """The mouldings along a part's long edges, without the ends that are coped over others."""
    return tuple(
        cut
        for cut in part.cuts
        if isinstance(cut, Moulded) and edge_beside(cut) in ("low edge", "high edge")
    )


def goes_over_stiles(part: Part) -> bool:
    """Whether a part's ends lie over moulded stiles, which are behind it there."""
    long = float(part.blank.length)
    low, high = shoulders(part.blank, part.cuts)
    return bool(edge_runs(part)) and (low > _SAME or high < long - _SAME)


def of_a_moulding(cut: Cut, part: Part) -> bool:
    """Whether a shape taken from a face only makes room for a moulding: as deep, and filled again."""
    return isinstance(cut, Shaped) and any(
        run.face == cut.face and abs(depth_of(run.section) - float(cut.depth)) < _SAME
        for run in edge_runs(part)
    )


def coped_corners(part: Part) -> Iterator[Outline]:
    """What a coped rail has not past the mitre, in its own x and y, counter-clockwise."""
    for run in edge_runs(part):
        for end, piece in ((run.start, run.path[:2]), (run.end, run.path[-2:])):
            if not end.over:
                continue
            mitre = mitre_of(end, piece, reach_of(run.section))
            corner = (*end.floor, *(Vertex(*point) for point in mitre[:0:-1]))
            yield corner if area_of(corner) > 0 else turned(corner)


def mitre_of(end: RunEnd, piece: Outline, width: float) -> Polygon:
    """The line on which a run meets the one across its end, from the sight edge in."""
    steps = 1 if arc_of(*piece) is None else _PIECES
    return tuple(end_at(end, piece, width * step / steps) for step in range(steps + 1))


def moulding_lines(part: Part, face: Face) -> Iterator[Polygon]:
    """The arris along each moulding of a face, and the mitres at its ends."""
    for run in edge_runs(part):
        if run.face != face:
            continue
        width = reach_of(run.section)
        yield _chain(run_line(run.path, run.start, run.end, width))
        for end, piece in ((run.start, run.path[:2]), (run.end, run.path[-2:])):
            yield mitre_of(end, piece, width)


def _chain(path: Outline) -> Polygon:
    """An open path of lines and arcs as points."""
    return flattened((*path[:-1], path[-1]._replace(bulge=0.0)))
