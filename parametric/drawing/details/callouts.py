"""Words with a line to what they are about, put where they stand clear."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from typing import Literal

from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft, Segment, segments
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import LEADER_PITCH
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.sheet import Hatch, primitives

Side = Literal["left", "right"]
_LANDING = 2.6
_FARTHEST = 46.0
_STEP = 2.0
_CROSSED = 4.0
"""What a crossed line counts, in mm of leader."""


def say(
    draft: Draft,
    target: Point,
    end: Literal["arrow", "dot"],
    words: Sequence[str],
    towards: Sequence[Point],
    view: str,
) -> None:
    """Words beside a drawing with a leader to a place in it, nearest first.

    Args:
        draft: the board.
        target: where the line ends, mm on paper.
        end: an arrow to an edge, a dot on a surface.
        words: the lines of text.
        towards: the ways to look for room in, best first, as steps of any length.
        view: the view it belongs to.
    """
    say_of_one(draft, (target,), end, (words,), towards, view)


def say_of_one(
    draft: Draft,
    targets: Sequence[Point],
    end: Literal["arrow", "dot"],
    wordings: Sequence[Sequence[str]],
    towards: Sequence[Point],
    view: str,
) -> None:
    """The same of any one of several places, in any one of several wordings: the first that stands
    clear, every place tried before the next wording.
    """
    for words, target in itertools.product(wordings, targets):
        found = _nearest(draft, target, end, words, towards, view)
        if found is not None:
            draft.add(found)
            return
    draft.unplaced.append(wordings[0][0])


def _nearest(
    draft: Draft,
    target: Point,
    end: Literal["arrow", "dot"],
    words: Sequence[str],
    towards: Sequence[Point],
    view: str,
) -> Leader | None:
    """The leader with the least way and the fewest lines crossed; None where none stands clear."""
    boxes = [part.box for e in draft.elements for part in primitives(e) if isinstance(part, Label)]
    around = Box(*target, *target).grown(_FARTHEST + 1.0)
    lines = [
        line
        for e in draft.elements
        if not isinstance(e, Hatch)
        for part in primitives(e)
        for line in segments(part)
        if around.crossed(*line)
    ]
    best: tuple[float, Leader] | None = None
    for rank, (dx, dy) in enumerate(towards):
        far = math.hypot(dx, dy)
        away = 6.0
        while away <= _FARTHEST:
            knee = (target[0] + dx / far * away, target[1] + dy / far * away)
            for side in _sides(dx):
                leader = _leader(target, knee, side, end, words, view)
                cost = away + 5.0 * rank + (0.0 if side == _sides(dx)[0] else 3.0)
                if best is not None and cost >= best[0]:
                    continue
                cost += _CROSSED * _crossings(leader, lines)
                if (best is None or cost < best[0]) and _clear(draft, leader, boxes):
                    best = cost, leader
            away += _STEP
    return None if best is None else best[1]


def _sides(dx: float) -> tuple[Side, ...]:
    if abs(dx) < 0.3:
        return ("right", "left")
    return ("right",) if dx > 0 else ("left",)


def _leader(
    target: Point,
    knee: Point,
    side: Side,
    end: Literal["arrow", "dot"],
    words: Sequence[str],
    view: str,
) -> Leader:
    sign = 1.0 if side == "right" else -1.0
    landing = (knee[0] + sign * _LANDING, knee[1])
    anchor: Anchor = "left" if side == "right" else "right"
    labels = tuple(
        Label(
            text=line,
            at=(landing[0] + sign * 0.8, knee[1] - TEXT / 2 - k * TEXT * LEADER_PITCH),
            anchor=anchor,
            view=view,
        )
        for k, line in enumerate(words)
    )
    return Leader(points=(target, knee, landing), end=end, labels=labels, view=view)


def _clear(draft: Draft, leader: Leader, boxes: Sequence[Box]) -> bool:
    """Its words stand clear, and its line runs through no other words."""
    if not all(draft.free(label.box, 0.8) for label in leader.labels):
        return False
    return not any(
        box.grown(0.5).crossed(a, b) for a, b in itertools.pairwise(leader.points) for box in boxes
    )


def _crossings(leader: Leader, lines: Sequence[Segment]) -> int:
    """How many lines its own line runs through, its end apart."""
    (x0, y0), b = leader.points[0], leader.points[1]
    a = (x0 + (b[0] - x0) * 0.04, y0 + (b[1] - y0) * 0.04)
    return sum(_cross(a, b, p, q) for p, q in lines)


def _cross(a: Point, b: Point, p: Point, q: Point) -> bool:
    def side(u: Point, v: Point, w: Point) -> float:
        return (v[0] - u[0]) * (w[1] - u[1]) - (v[1] - u[1]) * (w[0] - u[0])

    return side(a, b, p) * side(a, b, q) < 0 and side(p, q, a) * side(p, q, b) < 0


def fan(first: Point, *more: Point) -> tuple[Point, ...]:
    """Ways to look in: the one wanted, the ones beside it, then others."""
    return tuple(dict.fromkeys((*_beside(first), *(w for way in more for w in _beside(way)))))


def _beside(way: Point) -> Iterator[Point]:
    angle = math.degrees(math.atan2(way[1], way[0]))
    for turn in (0, 12, -12, 24, -24):
        a = math.radians(angle + turn)
        yield (round(math.cos(a), 6), round(math.sin(a), 6))
