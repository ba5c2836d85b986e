"""The boards of a case that is no rectangle from above: sides, backs, and level boards cut to shape.

Sides stand from the front to the wall, their front edges planed to the line of the front; backs
are of the case's own board and stand between them, the left one past the end of the right one.
Level boards lie between all of those and end on the front's line.
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Sequence

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import (
    CaseBoard,
    CaseBox,
    FrontOpening,
    Lies,
    Role,
    Space,
    TurnedFront,
)
from parametric.cases.plan_shape import (
    FRONTS,
    SQUARE,
    CasePlan,
    PlanSide,
    Point,
    SideWord,
    meeting,
)
from parametric.figures import Figure, cosine, exceeds, hypot, named, tangent
from parametric.hangings.hanging import Side
from parametric.names import join


class PlanBoards:
    """The boards of one such case as they are worked out."""

    def __init__(self, plan: CasePlan, box: CaseBox) -> None:
        self.plan, self.box = plan, box

    def carcass(self) -> Iterator[CaseBoard]:
        """Sides, backs, bottom, top."""
        t = self.box.thickness
        for word in ("left side", "right side"):
            yield self._upright(word, "side", "upright", self._side(word), True)
        for word, outline in self._backs():
            yield self._upright(word, "back", "facing", outline, False)
        for word, role, z in (
            ("bottom", "bottom", float(self.box.bottom - t)),
            ("top", "top", float(self.box.top)),
        ):
            yield self._level(word, _ROLES[role], z, t, self.carcass_outline(), True)

    def fixed_shelf(self, word: str, z: float, front: float) -> CaseBoard:
        """A shelf between sides and backs, its front so far behind the front's line, mm."""
        inwards = {**self._thick(), **dict.fromkeys(FRONTS, front)}
        return self._level(
            word, "fixed shelf", z, self.box.thickness, self.plan.within(inwards), True
        )

    def shelves(
        self,
        spaces: Sequence[Space],
        *,
        thickness: Figure,
        clearance: Figure,
        front: float,
    ) -> Iterator[CaseBoard]:
        """Adjustable ones, free of sides and backs, equally apart in each space, from the top."""
        inwards: dict[SideWord, float] = {
            side: thick + float(clearance) for side, thick in self._thick().items()
        }
        outline = self.plan.within({**inwards, **dict.fromkeys(FRONTS, front)})
        number = 0
        for space in reversed(spaces):
            for each in range(space.shelves, 0, -1):
                number += 1
                apart = (space.head - space.foot - space.shelves * thickness) / (space.shelves + 1)
                z = float(space.foot + each * apart + (each - 1) * thickness)
                yield self._level(f"shelf {number}", "shelf", z, thickness, outline, True)

    def carcass_outline(self) -> tuple[Point, ...]:
        """What is between sides and backs, up to the front's line."""
        return self.plan.within(self._thick())

    def _thick(self) -> dict[SideWord, float]:
        t = float(self.box.thickness)
        return {side.word: t for side in self.plan.sides if side.word not in FRONTS}

    def _side(self, word: SideWord) -> tuple[Point, ...]:
        t, left = float(self.box.thickness), word == "left side"
        inner, outer = self.plan.line(word, t), self.plan.line(word)
        walls: tuple[SideWord, SideWord] = (
            ("left back", "right back") if self.plan.in_a_corner else ("back", "back")
        )
        wall = self.plan.line(walls[0] if left else walls[1])
        front = self.plan.line(_front_at(self.plan, word))
        if left:
            return _round(outer, front, inner, wall)
        return _round(inner, front, outer, wall)

    def _backs(self) -> Iterator[tuple[SideWord, tuple[Point, ...]]]:
        t, plan = float(self.box.thickness), self.plan
        left, right = plan.line("left side", t), plan.line("right side", t)
        if not plan.in_a_corner:
            yield "back", _round(left, plan.line("back", t), right, plan.line("back"))
            return
        inner = plan.line("left back", t)
        yield "left back", _round(left, inner, plan.line("right back"), plan.line("left back"))
        yield (
            "right back",
            _round(inner, plan.line("right back", t), right, plan.line("right back")),
        )

    def _upright(
        self,
        word: str,
        role: Role,
        lies: Lies,
        outline: tuple[Point, ...],
        banded: bool,
    ) -> CaseBoard:
        """A board that stands, by its outline from above."""
        turn = self.plan.turned(_side_word(word))
        low, far = _bounds(outline, turn)
        wide, thick = far[0] - low[0], far[1] - low[1]
        seen = [(x - low[0], y - low[1]) for x, y in turned_points(outline, -turn)]
        if lies == "upright":
            # its thickness runs to the left
            seen = [(y, wide - x) for x, y in seen]
            wide = thick
        return self._board(
            word,
            role,
            lies,
            (self.box.height, wide),
            self.box.thickness,
            low,
            turn,
            0.0,
            seen,
            banded,
        )

    def _level(
        self,
        word: str,
        role: Role,
        z: float,
        thickness: Figure,
        outline: tuple[Point, ...],
        banded: bool,
    ) -> CaseBoard:
        low, far = _bounds(outline, 0.0)
        seen = [(x - low[0], y - low[1]) for x, y in outline]
        size = (Figure(far[0] - low[0]), far[1] - low[1])
        board = self._board(word, role, "level", size, thickness, low, 0.0, z, seen, False)
        return dataclasses.replace(
            board,
            # an end whose front runs along the blank is banded there
            banded=banded and not board.outline,
            sides=tuple(self._sides_of(board.name, board.outline, banded)),
        )

    def _sides_of(self, name: str, outline: Sequence[Point], banded: bool) -> Iterator[PlanSide]:
        """The sides of a level board's outline, which are its case's, moved in."""
        if not outline:
            return
        for side, (ax, ay), (bx, by) in zip(
            self.plan.sides, outline, (*outline[1:], outline[0]), strict=True
        ):
            yield PlanSide(
                word=side.word,
                length=named(join(name, side.word, "long"), hypot(bx - ax, by - ay)),
                begins=(ax, ay),
                angle=side.angle,
                banded=banded and side.word in FRONTS,
            )

    def _board(
        self,
        word: str,
        role: Role,
        lies: Lies,
        size: tuple[Figure, float],
        thickness: Figure,
        low: Point,
        turn: float,
        z: float,
        seen: Sequence[Point],
        banded: bool,
    ) -> CaseBoard:
        name = join(self.box.name, word)
        outline = tuple((_tidy(u), _tidy(v)) for u, v in seen)
        (x, y), *_ = turned_points([low], turn)
        return CaseBoard(
            name=name,
            role=role,
            lies=lies,
            length=named(join(name, "length"), size[0]),
            width=named(join(name, "width"), size[1]),
            thickness=named(join(name, "thickness"), thickness),
            x=x,
            y=y,
            z=z,
            banded=banded,
            turn=turn,
            outline=() if len(outline) == 4 and _is_square(outline) else outline,
        )


_ROLES: dict[str, Role] = {"bottom": "bottom", "top": "top"}


def _side_word(word: str) -> SideWord:
    return "right side" if word.startswith("right") else "left side"


def _front_at(plan: CasePlan, side: SideWord) -> SideWord:
    """The front that ends at a side."""
    if plan.word != "inside corner":
        return "front"
    return "left front" if side == "left side" else "right front"


def _round(*lines: tuple[Point, Point]) -> tuple[Point, ...]:
    """The corners between lines, each with the next."""
    return tuple(meeting(a, b) for a, b in zip(lines, (*lines[1:], lines[0]), strict=True))


def turned_points(points: Sequence[Point], turn: float) -> list[Point]:
    """Points turned about the origin, deg; square turns keep whole numbers whole."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    c, s = (round(v) + 0.0 if abs(v - round(v)) < 1e-12 else v for v in (c, s))
    return [(x * c - y * s, x * s + y * c) for x, y in points]


def _bounds(points: Sequence[Point], turn: float) -> tuple[Point, Point]:
    """The low and the high corner of points, in a frame turned by so much, deg."""
    seen = turned_points(points, -turn)
    xs, ys = [x for x, _ in seen], [y for _, y in seen]
    return (min(xs), min(ys)), (max(xs), max(ys))


def _is_square(outline: Sequence[Point]) -> bool:
    """Whether each of its sides runs along the blank or across it."""
    return all(
        min(abs(ax - bx), abs(ay - by)) < 1e-9
        for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True)
    )


def _tidy(value: float) -> float:
    return 0.0 if abs(value) < 1e-9 else value


def turned_fronts(
    spec: CabinetSpec, plan: CasePlan, box: CaseBox, *, thickness: Figure | None
) -> tuple[TurnedFront, ...]:
    """What its fronts hang in or over, from the left.

    Args:
        spec: the cabinet as written.
        plan: the case from above.
        box: its box.
        thickness: of its fronts, mm; None where it has none.
    """
    foot = named(join(box.name, "foot of its opening"), box.foot + box.bottom)
    head = named(join(box.name, "head of its opening"), box.foot + box.top)
    t = box.thickness

    def one(word: SideWord, left: Figure, right: Figure, hinged: Side | None) -> TurnedFront:
        at = next(i for i, side in enumerate(plan.sides) if side.word == word)
        side, after = plan.sides[at], plan.sides[(at + 1) % len(plan.sides)]
        (ax, ay), (bx, by) = side.begins, after.begins
        place = box.name if word == "front" else join(box.name, word)
        return TurnedFront(
            arm="" if word == "front" else word,
            word=word,
            at=side.begins,
            turn=math.degrees(math.atan2(by - ay, bx - ax)),
            opening=FrontOpening(
                left=named(join(place, "opening begins"), left),
                width=named(join(place, "clear opening"), side.length - left - right),
                foot=foot,
                head=head,
                edge=t,
                partition=t,
            ),
            hinged=hinged,
        )

    if plan.word == "inside corner":
        beyond = _beyond_the_corner(spec, plan, box, thickness)
        return one("left front", t, beyond, "left"), one("right front", beyond, t, "right")
    inset = thickness if spec.fronts == "inset" else None
    left, right = plan.side("front").angle, plan.side("right side").angle
    return (one("front", _edge(t, left, inset), _edge(t, right, inset), None),)


def _edge(thick: Figure, angle: Figure, inset: Figure | None) -> Figure:
    """How much of a front's line a side takes that is planed to it, mm.

    The edge is seen wider than the board is thick; a front that stands within a side that leans
    towards it ends before that side's inner face where it comes nearest, at the front's back.
    """
    edge = thick / cosine(angle - SQUARE)
    if inset is None or not exceeds(SQUARE, angle):
        return edge
    return edge + inset / tangent(angle)


def _beyond_the_corner(
    spec: CabinetSpec, plan: CasePlan, box: CaseBox, thickness: Figure | None
) -> Figure:
    """From the inside corner to where either front's opening ends, mm.

    Two fronts stand a gap apart where they are nearest: their faces, or the backs of what is
    inset, each half of it from the line that halves the corner. Source: arithmetic.
    """
    half, gap = plan.corner / 2, spec.front_gap
    out = Figure(0.0) if thickness is None or spec.fronts == "inset" else thickness
    near = (gap / 2 + out * cosine(half)) / cosine(SQUARE - half)
    near = named(join(box.name, "fronts end before the inside corner"), near)
    match spec.fronts:
        case "overlay":
            return near + box.thickness - spec.edge_reveal
        case "half overlay":
            return near + box.thickness / 2 - gap / 2
        case "inset":
            return near - gap


def longest_span(plan: CasePlan, box: CaseBox) -> Figure:
    """The longest that a shelf goes without support: between its sides, along its front, mm."""
    t = float(box.thickness)
    left = meeting(plan.line("left side", t), plan.line(_front_at(plan, "left side")))
    right = meeting(plan.line("right side", t), plan.line(_front_at(plan, "right side")))
    return named(
        join(box.name, "longest clear span of its shelves"),
        hypot(right[0] - left[0], right[1] - left[1]),
    )
