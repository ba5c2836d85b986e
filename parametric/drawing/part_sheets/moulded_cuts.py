"""What a run of moulding draws: the line where it leaves the face, and where it ends."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.part_sheets.shaped_cuts import Bow, Line, edge_line, on_side
from parametric.drawing.part_sheets.unfolded import Unfolded
from parametric.drawing.plane import Point
from parametric.drawing.shaped import middle_of
from parametric.model import Moulded
from parametric.outlines import Outline, Vertex, area_of, backwards, edges
from parametric.paths import beside
from parametric.runs import run_figures
from parametric.sections import reach_of, steps_of


def moulded_lines(cut: Moulded, part: Unfolded) -> Iterator[Line | Bow]:
    """What it takes where it begins, at the face; not the line where a coped run goes on."""
    side = part.side(cut.face)
    shallowest = steps_of(cut.section)[0]
    rims: list[tuple[Vertex, Vertex]] = []
    for figure in run_figures(cut.section, cut.path, cut.start, cut.end, shallowest):
        ring = figure if area_of(figure) > 0 else _turned(figure)
        rims += edges(on_side(ring, cut.face, part, side))
    for a, b in rims:
        if not any(_same(a, d) and _same(b, c) for c, d in rims):
            yield from edge_line(a, b, side, "edge_fine")


def _same(a: Vertex, b: Vertex) -> bool:
    return abs(a.x - b.x) + abs(a.y - b.y) < 1e-6


def _turned(ring: Outline) -> Outline:
    return backwards((*ring, Vertex(ring[0].x, ring[0].y)))[:-1]


def moulded_target(cut: Moulded, part: Unfolded) -> Point:
    """Half along the run, in the middle of its width."""
    path = beside(cut.path, reach_of(cut.section) / 2)
    half = (len(path) - 1) // 2
    u, v = middle_of(path[half], path[half + 1])
    return part.on_face(cut.face, u, v, 0.0, part.side(cut.face))
