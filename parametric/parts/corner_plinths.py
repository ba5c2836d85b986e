"""The plinth under a case that is no rectangle from above: boards along its fronts, its walls, its sides.

seen from above
     _________________________
    |____left back____________|   boards along the walls as a run's plinth has its back
    |  |                    | |
  ==|==|                    | |   the neighbour's plinth goes on to where their faces meet
       `-. front           _|_|
          `-._____________|___|   cross pieces under both sides

Front boards end square and touch at their faces, with a block glued behind the joint; where they
would run into one another behind, the case's own is bevelled to the end of its neighbour's.
"""

from __future__ import annotations

import dataclasses
import itertools
import math
from collections.abc import Iterator

from parametric.cases.plan_boards import turned_points
from parametric.cases.plan_shape import FRONTS, CasePlan, Point, SideWord, meeting
from parametric.cases.run_edges import Filler
from parametric.figures import Figure, exceeds, hypot, tangent
from parametric.model import Cut, Material, Part, Shaped
from parametric.names import join
from parametric.outlines import Vertex
from parametric.parts.planned import BEVELLED
from parametric.parts.room_boards import room_board, sheet_of
from parametric.parts.scribing import scribe_cuts
from parametric.resolve.casework import Casework, StandingCase, StandingRun
from parametric.resolve.opening import Opening
from parametric.resolve.room_lines import Point as LinePoint
from parametric.resolve.room_lines import along, between, level_line

_SAME = 1e-6


def goes_on(plan: CasePlan, side: SideWord, back: Figure) -> Figure:
    """How far a neighbour's plinth goes on past a case's side, to where its face meets the case's, mm.

    Args:
        plan: the case from above.
        side: which of its sides the neighbour stands at.
        back: how far plinths stand behind the fronts, mm.
    """
    at = 0 if side == "left side" else plan.sides.index(plan.side("right side"))
    angle = plan.sides[at].angle
    if plan.word == "angled end" and exceeds(angle, 90.0):
        # at its shallower side its front board ends with its side
        return Figure(0.0)
    return back * tangent((angle - 90.0) / 2)


def planned_plinth(standing: StandingCase, casework: Casework) -> Iterator[Part]:
    """Every board of it; nothing under a case that stands in no run, or in one without a plinth.

    Args:
        standing: the case.
        casework: all cabinets.
    """
    plan = standing.case.plan
    run = next((one for one in casework.runs if one.name == standing.run), None)
    if plan is None or run is None or run.edges.plinth is None:
        return
    plinth, sheet = run.edges.plinth, sheet_of(run.board.name, float(run.board.density))
    beyond = next((one for one in casework.runs if one.name == standing.returns_in), None)
    work = _Plinth(standing, plan, run, plinth, None if beyond is None else beyond.opening, sheet)
    yield from work.fronts()
    if run.spec.levelled_by != "legs":
        yield from work.backs()
        yield from work.cross_pieces()


class _Plinth:
    """One such plinth as it is worked out, in its case's frame from above."""

    def __init__(
        self,
        standing: StandingCase,
        plan: CasePlan,
        run: StandingRun,
        plinth: Filler,
        beyond: Opening | None,
        sheet: Material,
    ) -> None:
        self.standing, self.plan, self.run = standing, plan, run
        self.plinth, self.beyond, self.sheet = plinth, beyond, sheet
        self.back, self.t = float(run.spec.plinth_back), float(run.thickness)

    def fronts(self) -> Iterator[Part]:
        """Boards from where their faces meet to where they meet again."""
        words = [side.word for side in self.plan.sides if side.word in FRONTS]
        lines = [self.plan.line(word, self.back) for word in words]
        ends = [self._beside("left side", words[0]), *lines, self._beside("right side", words[-1])]
        points = [meeting(a, b) for a, b in itertools.pairwise(ends)]
        floor = self._floor(0.0), self._right_floor()
        for word, begins, stops in zip(words, points, points[1:], strict=False):
            long = hypot(stops[0] - begins[0], stops[1] - begins[1])
            line = ((0.0, floor[0]), (float(long), floor[1]))
            own = self._board(
                f"plinth {word}", "plinth front", begins, self._turn(word), long, line
            )
            cuts = (*own.cuts, *self._bevels(long, line))
            yield dataclasses.replace(own, cuts=cuts)

    def _bevels(self, long: Figure, floor: tuple[LinePoint, ...]) -> Iterator[Cut]:
        """The end that runs into the back of a neighbour's plinth, cut to its end, down to the scribe."""
        low = float(self.run.foot - self.plinth.blank)
        ends = (self.plan.sides[0].angle, self.plan.side("right side").angle)
        for at_left, angle in zip((True, False), ends, strict=True):
            if not exceeds(90.0, angle):
                continue
            back = self.t * math.tan(math.radians(90.0 - float(angle)))
            x, far = (0.0, back) if at_left else (float(long), float(long) - back)
            corners = [(x, 0.0), (far, 0.0), (x, self.t)]
            outline = tuple(Vertex(u, v) for u, v in (corners if at_left else corners[::-1]))
            middle = (2 * x + far) / 3
            yield Shaped(
                name="bevel to the next plinth",
                face="low edge",
                outline=outline,
                surface=max(0.0, along(floor, middle) - low),
                depth=self.plinth.blank,
                making=BEVELLED,
            )

    def _beside(self, side: SideWord, front: SideWord) -> tuple[Point, Point]:
        """The line that a front board ends at: of a neighbour's plinth, or the case's own side."""
        (ax, ay), (dx, dy) = self.plan.line(side)
        angle = self.plan.side(front if side == "left side" else "right side").angle
        free = self.plan.word == "angled end" and float(angle) > 90.0
        if free or abs(float(angle) - 90.0) < _SAME:
            return (ax, ay), (dx, dy)
        # square to the side, as far behind its front end as plinths stand
        if side == "left side":
            fx, fy = self.plan.sides[0].begins
            return (fx - dx * self.back, fy - dy * self.back), (-dy, dx)
        return (ax + dx * self.back, ay + dy * self.back), (-dy, dx)

    def backs(self) -> Iterator[Part]:
        """Boards along the walls; in a corner the right one begins at the left one's face."""
        if not self.plan.in_a_corner:
            wide = self.standing.case.box.width
            line = self._along_left(float(wide))
            at = (0.0, float(self.plan.depth) - self.t)
            yield self._board("plinth back", "plinth back", at, 0.0, wide, line)
            return
        wall, inner = self.plan.line("right back"), self.plan.line("left back", self.t)
        reach = min(meeting(wall, inner)[0], float(self.standing.case.box.width))
        at = (0.0, float(self.plan.depth) - self.t)
        line = self._along_left(reach)
        yield self._board("plinth left back", "plinth back", at, 0.0, Figure(reach), line)
        turn = self.plan.turned("right back")
        near = [meeting(self.plan.line("right back", off), inner) for off in (0.0, self.t)]
        begins = max(x for x, _ in turned_points(near, -turn))
        (ends, deep), *_ = turned_points([self.plan.side("right back").begins], -turn)
        (at, *_) = turned_points([(begins, deep - self.t)], turn)
        long = Figure(ends - begins)
        line = ((0.0, self._right_floor(0.0)), (float(long), self._right_floor()))
        yield self._board("plinth right back", "plinth back", at, turn, long, line)

    def cross_pieces(self) -> Iterator[Part]:
        """One under each side, from the boards before it to the wall's, as low as the floor is high."""
        high = self.plinth.least
        for word in ("left side", "right side"):
            side: SideWord = "left side" if word == "left side" else "right side"
            turn = self.plan.turned(side)
            front = next(
                s.word for s in self.plan.sides if s.word in _FRONT_AT[side] and s.word in FRONTS
            )
            before = self.plan.line(front, self.back + self.t)
            met = [meeting(before, self.plan.line(side, off)) for off in (0.0, self.t)]
            end = self.plan.sides[0] if side == "left side" else self.plan.side("right side")
            ((x, y), *seen) = turned_points([end.begins, *met], -turn)
            begins = max(y + self.back + self.t, *(v for _, v in seen))
            long = y + float(self.plan.side(side).length) - self.t - begins
            if long <= _SAME:
                continue
            left = x if side == "left side" else x - self.t
            (at, *_) = turned_points([(left, begins)], turn)
            yield room_board(
                join(self.standing.name, f"plinth {word.split(' ')[0]} cross piece"),
                "plinth cross piece",
                self.sheet,
                (Figure(long), high, self.run.thickness),
                self._in_the_room(at, float(self.run.foot - high)),
                "inwards",
                turn=turn,
            )

    def _board(
        self,
        word: str,
        noun: str,
        at: Point,
        turn: float,
        long: Figure,
        floor: tuple[LinePoint, ...],
    ) -> Part:
        """A board on edge along a line, scribed to the floor under it."""
        blank = self.plinth.blank
        low = float(self.run.foot - blank)
        line = [(x, z - low) for x, z in floor]
        return room_board(
            join(self.standing.name, word),
            noun,
            self.sheet,
            (long, blank, self.run.thickness),
            self._in_the_room(at, low),
            "facing, level",
            scribe_cuts("high face", line, True, float(blank), self.t),
            turn=turn,
        )

    def _in_the_room(self, at: Point, z: float) -> tuple[float, float, float]:
        return float(self.standing.left) + at[0], self.standing.front + at[1], z

    def _turn(self, word: SideWord) -> float:
        return next(one.turn for one in self.standing.case.turned_fronts if one.word == word)

    def _floor(self, x: float) -> float:
        return along(level_line(self.run.opening, "floor"), float(self.standing.left) + x)

    def _along_left(self, far: float) -> tuple[LinePoint, ...]:
        left = float(self.standing.left)
        line = between(level_line(self.run.opening, "floor"), left, left + far)
        return tuple((x - left, z) for x, z in line)

    def _right_floor(self, along_it: float | None = None) -> float:
        """The floor along the right wall, at the case's end there unless it is said."""
        wide = self.standing.case.box.width
        if self.beyond is None:
            return self._floor(float(wide))
        far = float(self.plan.side("right back").length) if along_it is None else along_it
        return along(level_line(self.beyond, "floor"), float(self.beyond.clear_left) + far)


_FRONT_AT: dict[SideWord, tuple[SideWord, SideWord]] = {
    "left side": ("front", "left front"),
    "right side": ("front", "right front"),
}
