"""Every cabinet of a design, where it stands: runs from wall to wall, and cabinets on their own.

In the room x is from the left foot of the opening, y from the front edges of the deepest cabinet
backwards, z from the highest floor.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.case import Case
from parametric.cases.run import Across, RunSpec
from parametric.cases.run_edges import Filler
from parametric.catalog.boards import Board
from parametric.catalog.timbers import Timber
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, named
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
from parametric.model import Placement
from parametric.names import join
from parametric.resolve.bored_case import BoredCase
from parametric.resolve.case_drawer import CaseDrawer
from parametric.resolve.opening import Opening


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingCase:
    """A case where it stands: `left` and `front` before its own wall, whose frame is `room`.

    `fronts` are hung on it later; None where it has none.

    `run` names the run it is part of, "" for one on its own; `on` the case it stands on.
    """

    case: Case
    board: Board
    back_board: Board | None
    left: Figure
    front: float
    room: Placement
    fronts: FrontsSpec | None
    survey: SurveySpec
    opening: Opening
    run: str
    on: str
    counter: Figure | None
    frame_timber: Timber | None = None
    """What its face frame is made of."""
    beyond: FrontsSpec | None = None
    """The fronts of its other arm, of one that stands round an inside corner."""
    returns_in: str = ""
    """The run on the wall to the right of its own that it is the first of."""

    @property
    def centre_stiles(self) -> tuple[Figure, ...]:
        """The left edges of its face frame's centre stiles, from the left of the opening, mm."""
        frame, box = self.case.frame, self.case.box
        if frame is None:
            return ()
        return tuple(
            named(
                join(self.name, "face frame", f"centre stile {number}", "left"),
                self.left + board.x + (box.thickness - frame.centre_stile) / 2,
            )
            for number, board in enumerate(self.case.of_role("partition"), 1)
        )

    @property
    def name(self) -> str:
        """`cabinet outer 1`."""
        return self.case.name

    @property
    def stands(self) -> Placement:
        """Where its own frame stands among all that is made, mm."""
        at = (float(self.left), self.front, float(self.case.box.foot))
        return Placement(origin=self.room.point(at), x=self.room.x, y=self.room.y)

    @property
    def top(self) -> Figure:
        """Its top above the highest floor, counter and all, mm."""
        high = self.case.box.foot + self.case.box.height
        return high if self.counter is None else high + self.counter


@dataclass(frozen=True, slots=True, kw_only=True)
class Edges:
    """What closes cabinets to a wall, a ceiling and a floor that are not true.

    `plinth_from_line` is the top of the plinth above the level line that the floor was read from,
    mm; None where it was read from none.
    """

    name: str
    left: Filler | None
    right: Filler | None
    top: Filler | None
    plinth: Filler | None
    plinth_from_line: Figure | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingRun:
    """A run where it stands: its cabinets by name, its ends, and what closes it, mm.

    `across` is how the wall was shared out over its lines.
    """

    name: str
    spec: RunSpec
    board: Board
    thickness: Figure
    opening: Opening
    stands: Placement
    cases: tuple[str, ...]
    across: Across
    left: Figure
    right: Figure
    foot: Figure
    head: Figure
    front: float
    depth: Figure
    edges: Edges
    corners: tuple[int, ...] = ()
    """Its lines that are a case in a corner, which stands on a plinth of its own."""

    @property
    def stretches(self) -> tuple[tuple[Figure, Figure], ...]:
        """Left and right of what stands side by side without a space between."""
        lines = self.spec.left_to_right
        found: list[tuple[Figure, Figure]] = []
        begins: Figure | None = None
        ends = self.left
        places = zip(lines, self.across.lefts, self.across.widths, strict=True)
        for number, (line, left, width) in enumerate(places):
            apart = line.space is not None or number in self.corners
            if line.cabinet is not None and not apart:
                begins, ends = (left if begins is None else begins), left + width
            if apart and begins is not None:
                found.append((begins, ends))
                begins = None
        return tuple(found) if begins is None else (*found, (begins, ends))

    @property
    def fillers_between(self) -> tuple[tuple[Figure, Figure], ...]:
        """Left and width of every filler that stands at neither wall."""
        lines = self.spec.left_to_right[1:-1]
        places = list(zip(self.across.lefts, self.across.widths, strict=True))[1:-1]
        return tuple(
            place for line, place in zip(lines, places, strict=True) if line.filler is not None
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Casework:
    """Every cabinet and every run of a design; `depth` is the deepest cabinet's, mm."""

    cases: tuple[StandingCase, ...]
    runs: tuple[StandingRun, ...]
    edges: tuple[tuple[str, Edges], ...]
    """What closes cabinets that stand in no run, by their names."""
    depth: Figure
    drawers: tuple[CaseDrawer, ...] = ()
    bored: tuple[BoredCase, ...] = ()

    def case(self, name: str) -> StandingCase:
        """The case of that name."""
        return next(case for case in self.cases if case.name == name)
