"""Runs of moulding as a reader of meshes meets them: whether a place lies in one, and its rounds."""

from __future__ import annotations

import math

from parametric.model import Moulded, Part, Vector
from parametric.pack.verifying.hollows import on_face
from parametric.pack.verifying.outlines import closed_outline
from parametric.runs import run_figures

_ROUND = 16


def in_run(part: Part, cut: Moulded, point: Vector, margin: float = 0.0) -> bool:
    """Whether a point of a part lies in what a run takes, or within a margin of it, mm."""
    u, v, depth = on_face(part, cut.face, point)
    deepest = max(float(corner.y) for corner in cut.section)
    turns = [math.tau * (i + 0.5) / _ROUND for i in range(_ROUND if margin else 0)]
    around = [(0.0, 0.0), *((margin * math.cos(t), margin * math.sin(t)) for t in turns)]
    for at in (depth - margin, depth, depth + margin) if margin else (depth,):
        if not 0 <= at < deepest:
            continue
        for figure in run_figures(cut.section, cut.path, cut.start, cut.end, at):
            shape = closed_outline([(float(x), float(y), bulge) for x, y, bulge in figure])
            if any(shape.contains((u + a, v + b)) for a, b in around):
                return True
    return False


def rounds_of(cut: Moulded) -> float:
    """The rounds of a run's skin, mm2: those of its section drawn along it, and of its path through it."""
    section, path = (
        [
            (edge.radius * abs(edge.sweep) if edge.bulge else 0.0, math.dist(edge.a, edge.b))
            for edge in closed_outline([(float(x), float(y), b) for x, y, b in chain]).edges
        ]
        for chain in (cut.section, cut.path)
    )
    long = sum(arc or chord for arc, chord in path)
    deep = max(float(corner.y) for corner in cut.section)
    return sum(arc for arc, _ in section) * long + sum(arc for arc, _ in path) * deep
