"""What a run of moulding draws: the line where it leaves the face, and where it ends."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.part_sheets.shaped_cuts import Bow, Line, on_side, outline_lines
from parametric.drawing.part_sheets.unfolded import Unfolded
from parametric.drawing.plane import Point
from parametric.drawing.shaped import middle_of
from parametric.model import Moulded
from parametric.outlines import Outline, Vertex, area_of, backwards
from parametric.paths import beside
from parametric.runs import run_figures
from parametric.sections import reach_of, steps_of


def moulded_lines(cut: Moulded, part: Unfolded) -> Iterator[Line | Bow]:
    """What it takes where it begins, at the face."""
    side = part.side(cut.face)
    shallowest = steps_of(cut.section)[0]
    for figure in run_figures(cut.section, cut.path, cut.start, cut.end, shallowest):
        ring = figure if area_of(figure) > 0 else _turned(figure)
        yield from outline_lines(on_side(ring, cut.face, part, side), side, "edge_fine")


def _turned(ring: Outline) -> Outline:
    return backwards((*ring, Vertex(ring[0].x, ring[0].y)))[:-1]


def moulded_target(cut: Moulded, part: Unfolded) -> Point:
    """Half along the run, in the middle of its width."""
    path = beside(cut.path, reach_of(cut.section) / 2)
    half = (len(path) - 1) // 2
    u, v = middle_of(path[half], path[half + 1])
    return part.on_face(cut.face, u, v, 0.0, part.side(cut.face))
