"""Edges of a STEP file as points: lines, arcs, the other cuts of a cone, and splines.

Source: ISO 10303-42, from memory: a conic's place has its centre (a parabola's its vertex) for
origin, and is drawn from its x; a spline's knots are said once each, with how often they count.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.step_file import Axes, StepFile, Typed, axes, vector

Floats = NDArray[np.float64]

STEP = math.radians(1.0)
"""A curve is walked in steps no longer than this; an area is then good to five hundred-thousandths
of the circle's."""
_LEAVES = 1e-4
"""Nor does a step leave its arc by more, mm: a wide flat arc has much area beside its chords."""
_PIECES = 64
_ON = 1e-3
"""How near a spline must come to its own ends, mm."""


def curve_points(file: StepFile, curve: Typed, a: Floats, b: Floats, *, same: bool) -> Floats:
    """A curve from one of its points to another, walked as drawn or, if not `same`, against it.

    Raises:
        UnreadableError: it is of another kind.
    """
    match curve.kind:
        case "LINE":
            return np.vstack([a, b])
        case "CIRCLE":
            radius = _number(curve.values[2])
            return _round(axes(file, curve.values[1]), radius, radius, a, b, same)
        case "ELLIPSE":
            long, short = _number(curve.values[2]), _number(curve.values[3])
            return _round(axes(file, curve.values[1]), long, short, a, b, same)
        case "HYPERBOLA" | "PARABOLA":
            return _open_conic(file, curve, a, b)
        case "B_SPLINE_CURVE_WITH_KNOTS":
            return _spline(file, curve, a, b)
        case _:
            raise UnreadableError(f"an edge of kind {curve.kind}, which cannot be measured")


def _number(value: object) -> float:
    return float(str(value))


def _local(place: Axes, point: Floats) -> tuple[float, float]:
    """A point in the plane of a place."""
    out, x, z = point - np.array(place.origin), np.array(place.x), np.array(place.z)
    return float(out @ x), float(out @ np.cross(z, x))


def _drawn(place: Axes, across: Floats, up: Floats, a: Floats, b: Floats) -> Floats:
    origin, z, x = (np.array(v) for v in (place.origin, place.z, place.x))
    points = origin + np.outer(across, x) + np.outer(up, np.cross(z, x))
    points[0], points[-1] = a, b
    return np.asarray(points, dtype=float)


def _round(place: Axes, long: float, short: float, a: Floats, b: Floats, forward: bool) -> Floats:
    """A circle or an ellipse, by the angle that its points are drawn by."""
    angles = [math.atan2(y / short, x / long) for x, y in (_local(place, p) for p in (a, b))]
    start, end = angles
    turn = (end - start) % math.tau if forward else -((start - end) % math.tau)
    if abs(turn) < 1e-9:
        turn = math.tau if forward else -math.tau
    step = min(STEP, 2 * math.acos(1 - min(1.0, _LEAVES / long)))
    count = max(2, math.ceil(abs(turn) / step))
    walked = start + turn * np.arange(count + 1) / count
    return _drawn(place, long * np.cos(walked), short * np.sin(walked), a, b)


def _open_conic(file: StepFile, curve: Typed, a: Floats, b: Floats) -> Floats:
    """A piece of a hyperbola or a parabola, which never closes."""
    place = axes(file, curve.values[1])
    (_, y0), (_, y1) = _local(place, a), _local(place, b)
    if curve.kind == "HYPERBOLA":
        real, other = _number(curve.values[2]), _number(curve.values[3])
        walked = np.linspace(math.asinh(y0 / other), math.asinh(y1 / other), _PIECES + 1)
        return _drawn(place, real * np.cosh(walked), other * np.sinh(walked), a, b)
    focus = _number(curve.values[2])
    walked = np.linspace(y0 / (2 * focus), y1 / (2 * focus), _PIECES + 1)
    return _drawn(place, focus * walked**2, 2 * focus * walked, a, b)


def _spline(file: StepFile, curve: Typed, a: Floats, b: Floats) -> Floats:
    """A spline between the two of its points that lie nearest the ends of the edge."""
    degree, poles, counts, knots = (curve.values[i] for i in (1, 2, 6, 7))
    if not isinstance(poles, list) or not isinstance(counts, list) or not isinstance(knots, list):
        raise UnreadableError("a spline without its points")
    points = np.array([vector(file, pole) for pole in poles])
    every = np.repeat([_number(k) for k in knots], [int(_number(c)) for c in counts])
    order = int(_number(degree))
    low, high = every[order], every[-order - 1]
    ends = []
    for end in (a, b):
        walked = np.linspace(low, high, 8 * _PIECES + 1)
        for _ in range(4):
            far = np.linalg.norm(_on_spline(order, every, points, walked) - end, axis=1)
            best = int(far.argmin())
            step = float(walked[1] - walked[0])
            found = float(walked[best])
            walked = np.linspace(max(low, found - step), min(high, found + step), _PIECES + 1)
        if far.min() > _ON:
            raise UnreadableError("an edge does not end on its own spline")
        ends.append(found)
    made = _on_spline(order, every, points, np.linspace(ends[0], ends[1], _PIECES + 1))
    made[0], made[-1] = a, b
    return made


def _on_spline(order: int, knots: Floats, poles: Floats, at: Floats) -> Floats:
    """Points of a spline. Source: C. de Boor's recursion of linear blends, from memory."""
    spans = np.clip(np.searchsorted(knots, at, side="right") - 1, order, len(poles) - 1)
    blend = np.stack([poles[spans - order + i] for i in range(order + 1)], axis=1)
    for level in range(1, order + 1):
        for i in range(order, level - 1, -1):
            first = knots[spans - order + i]
            last = knots[spans + 1 + i - level]
            share = ((at - first) / (last - first))[:, None]
            blend[:, i] = (1 - share) * blend[:, i - 1] + share * blend[:, i]
    return np.asarray(blend[:, order], dtype=float)
