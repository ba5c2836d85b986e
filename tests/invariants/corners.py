"""Random cases in corners and at the ends of runs, written as a maker writes them, and their geometry."""

from __future__ import annotations

import math
from collections.abc import Sequence

from hypothesis import strategies as st

from parametric.cases.case import CaseBoard
from tests.invariants.casework import CUP, REST, block
from tests.invariants.designs import halves

Point = tuple[float, float]
PLANS = ("diagonal corner", "inside corner", "angled end")


@st.composite
def walls(draw: st.DrawFn, left: float, right: float) -> str:
    """Two walls that meet at anything near a right angle, or far from one; either may lean in."""
    turns = draw(st.one_of(st.just(90.0), halves(85, 96), halves(112, 140)))
    lean = [0.0, draw(halves(0, 4)), draw(halves(0, 6))]
    up = ("bottom", "middle", "top")
    plumb = "{" + ", ".join(f"{p}: {v}" for p, v in zip(up, lean, strict=True)) + "}"
    crook = [draw(halves(0, 6)) for _ in up]
    widths = "{" + ", ".join(f"{p}: {left + c}" for p, c in zip(up, crook, strict=True)) + "}"
    own = "{" + ", ".join(f"{p}: {right + c}" for p, c in zip(up, crook, strict=True)) + "}"
    heights = "heights: {left: 2400, right: 2400}"
    return "\n".join(
        [
            block("survey left", [f"widths: {widths}", "left side: plumb", heights]),
            block(
                "survey right",
                [
                    "right of: left",
                    f"turns: {turns} deg",
                    f"widths: {own}",
                    f"left side: {plumb}",
                    heights,
                ],
            ),
        ]
    )


@st.composite
def planned(draw: st.DrawFn, plan: str, fronts: str) -> list[str]:
    """The keys of a case with a plan, but for its widths."""
    deep = draw(halves(300, 420))
    lines = [
        f"plan: {plan}",
        f"depth: {deep}",
        f"height: {draw(halves(600, 900))}",
        f"fronts: {fronts}",
        f"front gap: {draw(halves(2, 4))}",
    ]
    if plan == "angled end":
        side = draw(st.sampled_from(["left", "right"]))
        lines.append(f"{side} depth: {deep - draw(halves(40, 150))}")
    elif draw(st.booleans()):
        lines.append(f"right depth: {draw(halves(300, 420))}")
    kind = draw(st.sampled_from(["door", "door", "open"]))
    hinged = "" if kind == "open" else ", hinge side: left"
    lines += [
        f"top to bottom: [{{{kind}: rest{hinged if plan != 'inside corner' else ''}}}]",
        f"shelves: {draw(st.integers(0, 2))}",
    ]
    if kind == "open":
        lines[-2] = "top to bottom: [{open: rest, shelves: 1}]"
        lines.pop()
    return lines


@st.composite
def alone(draw: st.DrawFn) -> str:
    """One case in a corner, or an angled end on a wall."""
    plan = draw(st.sampled_from(PLANS))
    keys = draw(planned(plan, draw(st.sampled_from(["inset", "overlay"]))))
    keys += ["in: left", f"width: {draw(halves(700, 1000))}"]
    if plan != "angled end":
        keys.append(f"right width: {draw(halves(700, 1000))}")
    return "\n".join(
        [
            "stilewright: 1\njob: A corner at random\nunits: mm",
            draw(walls(1500, 1500)),
            block("cabinet", keys),
            REST,
            CUP,
        ]
    )


@st.composite
def round_a_corner(draw: st.DrawFn) -> str:
    """Two runs that meet at a case in the corner, with a plinth, perhaps with counters."""
    plan = draw(st.sampled_from(PLANS[:2]))
    keys = draw(planned(plan, "inset"))
    high = next(line for line in keys if line.startswith("height"))
    lines = [f"plinth: {draw(halves(60, 120))}"]
    if draw(st.booleans()):
        lines.append("counter: 30")
    if draw(st.booleans()):
        lines.append("levelled by: legs")
    wide = draw(halves(700, 900)), draw(halves(700, 900))
    beside = ["depth: 320", high, "fronts: inset", "top to bottom: [{open: rest}]"]
    return "\n".join(
        [
            "stilewright: 1\njob: A corner of runs at random\nunits: mm",
            draw(walls(1900, 1700)),
            block(
                "run left",
                [
                    "in: left",
                    *lines,
                    f"left to right: [filler: at least 20, cabinet a: rest, cabinet c: {wide[0]}]",
                ],
            ),
            block(
                "run right",
                [
                    "in: right",
                    *lines,
                    f"left to right: [cabinet c: {wide[1]}, cabinet a: rest, filler: at least 20]",
                ],
            ),
            block("cabinet a", beside),
            block("cabinet c", keys),
            REST,
            CUP,
        ]
    )


def area(points: Sequence[Point]) -> float:
    """Inside straight sides, round to the left: half the sum of the cross products."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs) / 2


def seen(board: CaseBoard) -> tuple[Point, ...]:
    """A board from above, in its case's frame, from its blank, its outline and its turn."""
    level = board.lies == "level"
    size = (board.length, board.width) if level else (board.width, board.thickness)
    wide, high = float(size[0]), float(size[1])
    points = board.outline or ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    if board.lies == "upright":
        # across the board runs its thickness, to the left of the way it faces
        points = tuple((float(board.thickness) - v, u) for u, v in points)
    c, s = math.cos(math.radians(board.turn)), math.sin(math.radians(board.turn))
    return tuple((board.x + x * c - y * s, board.y + x * s + y * c) for x, y in points)


def convex(points: tuple[Point, ...]) -> list[tuple[Point, ...]]:
    """A shape in parts without inside corners: cut from its inside corner to the farthest one."""
    count = len(points)
    for at in range(count):
        (ax, ay), (bx, by), (cx, cy) = points[at - 1], points[at], points[(at + 1) % count]
        if (bx - ax) * (cy - by) - (by - ay) * (cx - bx) < -1e-6:
            turned = (*points[at:], *points[:at])
            far = max(range(2, count - 1), key=lambda i: math.dist(turned[0], turned[i]))
            return [turned[: far + 1], (turned[0], *turned[far:])]
    return [points]


def shared(one: Sequence[Point], other: Sequence[Point]) -> float:
    """The area that two shapes without inside corners share: one clipped by the other's sides."""
    left = list(one)
    for (ax, ay), (bx, by) in zip(other, (*other[1:], other[0]), strict=True):

        def side(p: Point, ax: float = ax, ay: float = ay, bx: float = bx, by: float = by) -> float:
            return (bx - ax) * (p[1] - ay) - (by - ay) * (p[0] - ax)

        kept: list[Point] = []
        for a, b in zip(left, (*left[1:], left[0]) if left else (), strict=True):
            da, db = side(a), side(b)
            if da >= 0:
                kept.append(a)
            if (da > 0 > db) or (da < 0 < db):
                part = da / (da - db)
                kept.append((a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])))
        left = kept
        if len(left) < 3:
            return 0.0
    return area(left)
