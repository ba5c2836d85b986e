r"""What a case is, seen from above, where it is no rectangle: its sides, and the angles between them.

   diagonal corner                 inside corner               angled end

 wall  left back                    left back                   back
 P4 ____________________ C      P5 __________________ C      ________________
   |                    |         |                  |      |                |
   | left side          |         |                  |      |                | right side
   |                    | right   |________          | right|             .-'
 P0 `-.                 | back    left   I |         | back |          .-'
       `-. front        |         front    | right   |      |______.-'  front
          `-.___________|                  | front   |
           P1  right    P2                 |_________|
               side                          right side

Numbers are in the case's own frame: x right from the outer face of its left side, y from that
side's front edge back to the wall (of an angled end: from its deeper side's). Sides go round to
the left, as seen from above.
Source: plane geometry; the corners of a shape of n sides come to (n - 2) x 180 deg together.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.cases.cabinet import CabinetSpec, PlanKind
from parametric.figures import Figure, cosine, hypot, named, tilt
from parametric.names import join

Point = tuple[float, float]
SideWord = Literal[
    "front",
    "left front",
    "right front",
    "left side",
    "right side",
    "back",
    "left back",
    "right back",
]
FRONTS: tuple[SideWord, ...] = ("front", "left front", "right front")
SQUARE = 90.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSide:
    """One side: how long it is outside, mm, and where it begins.

    `angle` is inside the case, between it and the side before it, deg. `banded` is said of a board.
    """

    word: SideWord
    length: Figure
    begins: Point
    angle: Figure
    banded: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CasePlan:
    """A case seen from above: its sides from the left end of its front on, round to the left.

    `corner` is the angle of the walls that it stands in, deg, 90 where it stands in none; `turn`
    how far its front is turned from the wall's line, deg, more than 0 where it comes forward to
    the right.
    """

    word: PlanKind
    sides: tuple[PlanSide, ...]
    corner: Figure
    turn: Figure
    depth: Figure
    """Of its left side; of an angled end, of its deeper one."""

    @property
    def outline(self) -> tuple[Point, ...]:
        """Its corners outside."""
        return tuple(side.begins for side in self.sides)

    def side(self, word: SideWord) -> PlanSide:
        """The side of that name."""
        return next(side for side in self.sides if side.word == word)

    def line(self, word: SideWord, inwards: float = 0.0) -> tuple[Point, Point]:
        """A side's line, moved into the case: a point of it and its direction."""
        at = next(i for i, side in enumerate(self.sides) if side.word == word)
        (ax, ay), (bx, by) = self.sides[at].begins, self.sides[(at + 1) % len(self.sides)].begins
        long = math.hypot(bx - ax, by - ay)
        dx, dy = (bx - ax) / long, (by - ay) / long
        return (ax - dy * inwards, ay + dx * inwards), (dx, dy)

    def within(self, inwards: Mapping[SideWord, float]) -> tuple[Point, ...]:
        """What is inside when each side is moved in by so much, mm; a side not named stays."""
        lines = [self.line(side.word, inwards.get(side.word, 0.0)) for side in self.sides]
        return tuple(
            meeting(before, line) for before, line in zip((lines[-1], *lines), lines, strict=False)
        )

    def turned(self, word: SideWord) -> float:
        """How a board along a side is turned from one of a case that is square, deg."""
        right = self.in_a_corner and word in ("right side", "right back")
        return float(self.corner) - 180.0 if right else 0.0

    @property
    def convex_parts(self) -> tuple[tuple[Point, ...], ...]:
        """Its outline in parts that have no inside corner: two arms, from the inside corner back."""
        if self.word != "inside corner":
            return (self.outline,)
        left, inner, right, beside, corner, far = self.outline
        return (left, inner, corner, far), (inner, right, beside, corner)

    @property
    def front_line(self) -> tuple[Point, Point]:
        """From the front end of its left side to that of its right one."""
        return self.sides[0].begins, self.side("right side").begins

    def around(self, name: str) -> tuple[Figure, Figure]:
        """Length and width of the narrowest rectangle that it goes into, mm.

        Source: one side of the rectangle lies along a side of the shape's hull.
        """
        points = self.outline if self.word != "inside corner" else _without(self.outline, 1)
        found = []
        for (ax, ay), (bx, by) in zip(points, (*points[1:], points[0]), strict=True):
            long = math.hypot(bx - ax, by - ay)
            dx, dy = (bx - ax) / long, (by - ay) / long
            along = [x * dx + y * dy for x, y in points]
            across = [y * dx - x * dy for x, y in points]
            found.append((max(across) - min(across), max(along) - min(along)))
        wide, long = min((round(min(p), 6), round(max(p), 6)) for p in found)
        return (
            named(join(name, "narrowest rectangle round it", "length"), Figure(long)),
            named(join(name, "narrowest rectangle round it", "width"), Figure(wide)),
        )

    @property
    def in_a_corner(self) -> bool:
        """Whether it stands against two walls."""
        return self.word != "angled end"


def _without(points: tuple[Point, ...], at: int) -> tuple[Point, ...]:
    return (*points[:at], *points[at + 1 :])


def meeting(one: tuple[Point, Point], other: tuple[Point, Point]) -> Point:
    """Where two lines meet, each a point and a direction."""
    (ax, ay), (ux, uy) = one
    (bx, by), (vx, vy) = other
    across = ux * vy - uy * vx
    far = ((bx - ax) * vy - (by - ay) * vx) / across
    return ax + far * ux, ay + far * uy


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """The corner that a case stands in: the angle of its walls, deg, and its width on the right one.

    `right_width` is None where the cabinet says it itself, mm.
    """

    angle: Figure
    right_width: Figure | None = None


def size_plan(spec: CabinetSpec, *, name: str, width: Figure, corner: Corner | None) -> CasePlan:
    """A case's plan.

    Args:
        spec: the cabinet as written, with a `plan`.
        name: of the case.
        width: along its wall, the left one of a corner, mm.
        corner: the corner that it stands in; None of an angled end.
    """
    if corner is None:
        return _end(spec, name, width)
    match spec.plan:
        case "diagonal corner":
            return _diagonal(spec, name, width, corner)
        case "inside corner":
            return _inside(spec, name, width, corner)
        case "angled end" | None:
            raise ValueError(f"{name} stands in no corner")
        case _:
            assert_never(spec.plan)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wall:
    """The right wall's run of a corner: how far along it, how deep, and which way it goes."""

    corner: tuple[Figure, Figure]
    width: Figure
    depth: Figure
    cos: Figure
    sin: Figure

    def at(self, along: float, out: float) -> tuple[Figure, Figure]:
        """A place so far along the wall from the corner, and so far out from it."""
        x, y = self.corner
        return x - along * self.cos - out * self.sin, y - along * self.sin + out * self.cos


def _right_wall(spec: CabinetSpec, name: str, width: Figure, corner: Corner) -> _Wall:
    wide = corner.right_width or spec.right_width or width
    deep = spec.depth if spec.right_depth is None else spec.right_depth
    return _Wall(
        corner=(width, spec.depth),
        width=named(join(name, "right width"), wide),
        depth=named(join(name, "right depth"), deep),
        cos=cosine(corner.angle),
        sin=cosine(SQUARE - corner.angle),
    )


def _diagonal(spec: CabinetSpec, name: str, width: Figure, corner: Corner) -> CasePlan:
    wall = _right_wall(spec, name, width, corner)
    (x, y), (bx, by) = wall.at(wall.width, wall.depth), wall.at(wall.width, 0.0)
    turn = _deg(name, "turn of its front", tilt(-y, x))
    left = _deg(name, "angle between its left side and its front", SQUARE + turn)
    return CasePlan(
        word="diagonal corner",
        corner=_deg(name, "corner of the walls", corner.angle),
        turn=turn,
        depth=spec.depth,
        sides=(
            _side(name, "front", hypot(x, y), (Figure(0.0), Figure(0.0)), left),
            _side(
                name,
                "right side",
                wall.depth,
                (x, y),
                _deg(
                    name, "angle between its front and its right side", 360.0 - corner.angle - left
                ),
            ),
            _side(name, "right back", wall.width, (bx, by), Figure(SQUARE, unit="deg")),
            _side(name, "left back", width, wall.corner, corner.angle),
            _side(
                name, "left side", spec.depth, (Figure(0.0), spec.depth), Figure(SQUARE, unit="deg")
            ),
        ),
    )


def _inside(spec: CabinetSpec, name: str, width: Figure, corner: Corner) -> CasePlan:
    wall = _right_wall(spec, name, width, corner)
    along = named(
        join(name, "inside corner, along the right wall"),
        (spec.depth + wall.depth * wall.cos) / wall.sin,
    )
    across, _ = wall.at(along, wall.depth)
    (x, y), (bx, by) = wall.at(wall.width, wall.depth), wall.at(wall.width, 0.0)
    square = Figure(SQUARE, unit="deg")
    return CasePlan(
        word="inside corner",
        corner=_deg(name, "corner of the walls", corner.angle),
        turn=Figure(0.0, unit="deg"),
        depth=spec.depth,
        sides=(
            _side(name, "left front", across, (Figure(0.0), Figure(0.0)), square),
            _side(
                name,
                "right front",
                wall.width - along,
                (across, Figure(0.0)),
                _deg(name, "inside corner", 360.0 - corner.angle),
            ),
            _side(name, "right side", wall.depth, (x, y), square),
            _side(name, "right back", wall.width, (bx, by), square),
            _side(name, "left back", width, wall.corner, corner.angle),
            _side(name, "left side", spec.depth, (Figure(0.0), spec.depth), square),
        ),
    )


def _end(spec: CabinetSpec, name: str, width: Figure) -> CasePlan:
    left = spec.depth if spec.left_depth is None else spec.left_depth
    right = spec.depth if spec.right_depth is None else spec.right_depth
    low, high = spec.depth - left, spec.depth - right
    turn = _deg(name, "turn of its front", tilt(low - high, width))
    square = Figure(SQUARE, unit="deg")
    return CasePlan(
        word="angled end",
        corner=square,
        turn=turn,
        depth=spec.depth,
        sides=(
            _side(
                name,
                "front",
                hypot(width, low - high),
                (Figure(0.0), low),
                _deg(name, "angle between its left side and its front", SQUARE + turn),
            ),
            _side(
                name,
                "right side",
                right,
                (width, high),
                _deg(name, "angle between its front and its right side", SQUARE - turn),
            ),
            _side(name, "back", width, (width, spec.depth), square),
            _side(name, "left side", left, (Figure(0.0), spec.depth), square),
        ),
    )


def _deg(name: str, quantity: str, value: float) -> Figure:
    return named(join(name, quantity), value, "deg")


def _side(
    name: str, word: SideWord, length: Figure, begins: tuple[Figure, Figure], angle: Figure
) -> PlanSide:
    x, y = begins
    return PlanSide(
        word=word,
        length=named(join(name, word, "long"), length),
        begins=(float(x), float(y)),
        angle=angle,
    )
