"""A quarter of an ellipse as true arcs: the fewest that keep to it, each touching the next.

Everything is told by the angle at which the curve faces, from 0 where it leaves the springing
line upright to a right angle at the crown. Two smooth round shapes lie as far apart as their
tangents of the same facing do, so that distance is all that need be kept small: at its best
it comes to the same most, outside and inside by turns, between every two joints.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

CLOSE = 0.02
"""mm: no arc leaves the ellipse by more. Common practice, no source."""
_SAMPLES = 400
_STEPS = 40
_ENOUGH = 1e-12
_MOST = 60
_END = 0.7
"""How long the first and the last stretch are beside the others, where the curve is pinned at one end."""
_TOUCH = (3 - math.sqrt(3)) / 6
"""How far along a stretch the curves lie farthest apart; the same again from its other end."""


@dataclass(frozen=True, slots=True)
class EllipseArc:
    """One arc: its centre from the middle of the springing line, its radius, and the facing it ends at, rad."""

    x: float
    y: float
    radius: float
    until: float


@dataclass(frozen=True, slots=True)
class _Fit:
    """Arcs and the most that they stand off the ellipse, mm."""

    arcs: tuple[EllipseArc, ...]
    off: float


def quarter_arcs(half_span: float, rise: float) -> tuple[EllipseArc, ...]:
    """The arcs of a quarter from its springing point to the crown, at the positive end of x.

    The first leaves the springing line upright at x = half the span, the last arrives level
    at y = rise.

    Args:
        half_span: along the springing line, mm.
        rise: up from it, mm; another length than the half span.

    Raises:
        ValueError: so long and thin that no fit is found.

    Source: support function of the ellipse; the alternating error of a best approximation.
    """
    long, short = max(half_span, rise), min(half_span, rise)
    arcs = _fewest(long, short).arcs
    if half_span >= rise:
        return arcs
    # An upright ellipse is the lying one with its two ends changed over.
    starts = (0.0, *(arc.until for arc in arcs[:-1]))
    return tuple(
        EllipseArc(arc.y, arc.x, arc.radius, math.pi / 2 - start)
        for arc, start in zip(reversed(arcs), reversed(starts), strict=True)
    )


def _fewest(a: float, b: float) -> _Fit:
    shares = _shares(a, b)
    # Over a stretch of a curve whose bend changes evenly, a run of arcs stands off by this much.
    guess = (shares[-1] ** 3 * math.sqrt(3) / 216 / CLOSE) ** (1 / 3)
    count = max(2, math.floor(guess))
    fit = _fit(a, b, count, shares)
    while fit.off <= CLOSE and count > 2:
        less = _fit(a, b, count - 1, shares)
        if less.off > CLOSE:
            break
        fit, count = less, count - 1
    while fit.off > CLOSE:
        count += 1
        if count > _MOST:
            raise ValueError(f"more than {_MOST} arcs to {a} x {b}")
        fit = _fit(a, b, count, shares)
    return fit


def _bend(a: float, b: float, facing: float) -> float:
    """The ellipse's own radius where it faces so."""
    return (a * b) ** 2 / math.hypot(a * math.cos(facing), b * math.sin(facing)) ** 3


def _shares(a: float, b: float) -> list[float]:
    """Running total over the facings of how many arcs a stretch asks for."""
    step = math.pi / 2 / _SAMPLES
    radii = [_bend(a, b, i * step) for i in range(_SAMPLES + 1)]
    total = [0.0]
    for i in range(_SAMPLES):
        change = abs(radii[i + 1] - radii[i]) / step
        total.append(total[-1] + change ** (1 / 3) * step)
    return total


def _first_joints(shares: list[float], count: int) -> list[float]:
    step = math.pi / 2 / _SAMPLES
    joints, i = [0.0], 0
    for k in range(1, count):
        wanted = shares[-1] * (k - 1 + _END) / (count - 2 + 2 * _END)
        while shares[i + 1] < wanted:
            i += 1
        joints.append((i + (wanted - shares[i]) / (shares[i + 1] - shares[i])) * step)
    return [*joints, math.pi / 2]


def _fit(a: float, b: float, count: int, shares: list[float]) -> _Fit:
    """The best run of so many arcs, by Newton's method on the joints, the radii and the error.

    Raises:
        ValueError: it does not settle.
    """
    joints = _first_joints(shares, count)
    radii = [_bend(a, b, (joints[k] + joints[k + 1]) / 2) for k in range(count)]
    off = 0.0
    for step in range(_STEPS):
        arcs = _arcs(a, joints, radii)
        rows: list[list[float]] = []
        wrong: list[float] = []
        for k, facing, side in _furthest(a, b, joints, arcs, guess=step == 0):
            rows.append([*_changes(joints, radii, k, facing), -side])
            wrong.append(side * off - _stands_off(a, b, arcs[k], facing))
        last = arcs[-1]
        rows.append([*_changes(joints, radii, count - 1, math.pi / 2), 0.0])
        wrong.append(b - last.y - last.radius)
        rows.append([*_changes(joints, radii, count - 1, math.pi / 2, turned=True), 0.0])
        wrong.append(last.x)
        if step > 1 and max(map(abs, wrong)) <= _ENOUGH * a and off > 0:
            return _Fit(tuple(arcs), off)
        change = _solved(rows, wrong)
        share = _no_joint_overtakes(joints, change)
        for k in range(count - 1):
            joints[k + 1] += share * change[k]
        for k in range(count):
            radii[k] += share * change[count - 1 + k]
        off += share * change[-1]
    raise ValueError(f"no {count} arcs were found to {a} x {b}")


def _arcs(a: float, joints: list[float], radii: list[float]) -> list[EllipseArc]:
    """Each centre on the line through the joint and the centre before."""
    arcs = [EllipseArc(a - radii[0], 0.0, radii[0], joints[1])]
    for k in range(1, len(radii)):
        back = radii[k - 1] - radii[k]
        x = arcs[-1].x + back * math.cos(joints[k])
        y = arcs[-1].y + back * math.sin(joints[k])
        arcs.append(EllipseArc(x, y, radii[k], joints[k + 1]))
    return arcs


def _stands_off(a: float, b: float, arc: EllipseArc, facing: float) -> float:
    """How far an arc's tangent lies outside the ellipse's of the same facing."""
    c, s = math.cos(facing), math.sin(facing)
    return arc.x * c + arc.y * s + arc.radius - math.hypot(a * c, b * s)


def _parts(a: float, b: float, arc: EllipseArc, facing: float) -> float:
    """How fast that distance grows with the facing."""
    c, s = math.cos(facing), math.sin(facing)
    return arc.y * c - arc.x * s - (b * b - a * a) * s * c / math.hypot(a * c, b * s)


def _furthest(
    a: float, b: float, joints: list[float], arcs: list[EllipseArc], *, guess: bool
) -> list[tuple[int, float, int]]:
    """Where each arc stands off most, inside (-1) and then outside (1); pinned ends have one of them."""
    found: list[tuple[int, float, int]] = []
    for k, arc in enumerate(arcs):
        low, high = joints[k], joints[k + 1]
        if k == 0:
            wanted = [(0.6, 1)]
        elif k == len(arcs) - 1:
            wanted = [(0.4, -1)]
        else:
            wanted = [(_TOUCH, -1), (1 - _TOUCH, 1)]
        for along, side in wanted:
            at = low + (high - low) * along
            found.append((k, at if guess else _turning(a, b, arc, low, high, side, at), side))
    return found


def _turning(
    a: float, b: float, arc: EllipseArc, low: float, high: float, side: int, otherwise: float
) -> float:
    """The facing at which an arc begins to come back to the ellipse, from that side."""
    places = [low + (high - low) * i / _SAMPLES * 10 for i in range(_SAMPLES // 10 + 1)]
    growing = [side * _parts(a, b, arc, place) for place in places]
    for i in range(len(places) - 1):
        if growing[i] > 0 >= growing[i + 1]:
            near, far = places[i], places[i + 1]
            while True:
                middle = (near + far) / 2
                if middle in (near, far):
                    return middle
                if side * _parts(a, b, arc, middle) > 0:
                    near = middle
                else:
                    far = middle
    return otherwise


def _changes(
    joints: list[float], radii: list[float], k: int, facing: float, *, turned: bool = False
) -> list[float]:
    """What the distance at a facing in arc k owes to each inner joint and each radius.

    `turned`: what the place along the tangent owes to them instead.
    """

    def wave(start: float) -> float:
        return math.sin(facing - start) if turned else -math.cos(facing - start)

    def swing(start: float) -> float:
        return math.cos(facing - start) if turned else math.sin(facing - start)

    by_joint = [
        (radii[j - 1] - radii[j]) * swing(joints[j]) if j <= k else 0.0
        for j in range(1, len(radii))
    ]
    by_radius = [
        wave(joints[j]) - wave(joints[j + 1] if j < k else facing) if j <= k else 0.0
        for j in range(len(radii))
    ]
    return [*by_joint, *by_radius]


def _no_joint_overtakes(joints: list[float], change: list[float]) -> float:
    """The share of a step after which every stretch keeps a good part of its length."""
    share = 1.0
    moves = [0.0, *change[: len(joints) - 2], 0.0]
    for k in range(len(joints) - 1):
        gap, closes = joints[k + 1] - joints[k], moves[k] - moves[k + 1]
        if closes > 0.7 * gap:
            share = min(share, 0.7 * gap / closes)
    return share


def _solved(rows: list[list[float]], wrong: list[float]) -> list[float]:
    """As many unknowns as equations, by elimination; the largest of a column leads."""
    table = [[*row, value] for row, value in zip(rows, wrong, strict=True)]
    size = len(table)
    for i in range(size):
        lead = max(range(i, size), key=lambda k: abs(table[k][i]))
        table[i], table[lead] = table[lead], table[i]
        if table[i][i] == 0:
            raise ValueError("two of the equations say the same")
        for k in range(i + 1, size):
            share = table[k][i] / table[i][i]
            if share:
                table[k] = [x - share * y for x, y in zip(table[k], table[i], strict=True)]
    found = [0.0] * size
    for i in reversed(range(size)):
        known = sum(table[i][j] * found[j] for j in range(i + 1, size))
        found[i] = (table[i][size] - known) / table[i][i]
    return found
