"""The curve under an arched top rail, as arcs and lines; provisional until the shapes are all here."""

from __future__ import annotations

import math
from dataclasses import dataclass

from parametric.figures import Figure, named, root
from parametric.outlines import Vertex


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadCurve:
    """x from the left springing point, y up from the springing line, mm."""

    span: Figure
    rise: Figure
    radius: Figure
    crown_at: Figure


def height_at(curve: HeadCurve, x: float, name: str) -> Figure:
    """Above the springing line at x."""
    across = x - curve.crown_at
    return named(
        name, root(curve.radius * curve.radius - across * across) - (curve.radius - curve.rise)
    )


def beside(curve: HeadCurve, by: float) -> HeadCurve:
    """The concentric curve farther out by `by`."""
    return HeadCurve(
        span=curve.span,
        rise=curve.rise + by,
        radius=curve.radius + by,
        crown_at=curve.crown_at,
    )


def part_of(curve: HeadCurve, x0: float, x1: float) -> tuple[Vertex, ...]:
    """The open chain between two places."""
    y0, y1 = (float(height_at(curve, Figure(x), "y")) for x in (x0, x1))
    r, c = float(curve.radius), float(curve.crown_at)
    sweep = math.asin((x1 - c) / r) - math.asin((x0 - c) / r)
    return (Vertex(x0, y0, -math.tan(sweep / 4)), Vertex(x1, y1))


def area_under(curve: HeadCurve, x0: float, x1: float) -> Figure:
    """Between the curve and the springing line, mm2."""
    r, c = float(curve.radius), float(curve.crown_at)

    def part(x: float) -> float:
        return (x * math.sqrt(r * r - x * x) + r * r * math.asin(x / r)) / 2

    a, b = float(x0) - c, float(x1) - c
    return Figure(
        part(b) - part(a) - (r - float(curve.rise)) * (b - a),
        op="area under the arc",
        args=(curve.radius, x0, x1),
        unit="mm2",
    )
