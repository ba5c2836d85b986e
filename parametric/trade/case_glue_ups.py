"""Cases put together: what is done in order, the diagonals they must show, what goes in them then.

->|======= top ========|<-    clamps press the uprights on level boards
  |         |          |
  |         | partition|
  |         |          |
->|====== bottom ======|<-
  |________ kick ______|
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer_written import SideSlidesSpec, UnderSlidesSpec, WoodenRunnersSpec
from parametric.catalog.bench import CASE_DIAGONALS
from parametric.figures import Figure, hypot, named
from parametric.model import Assembly, Part
from parametric.names import join
from parametric.resolve.casework import StandingCase
from parametric.resolve.door import Resolved
from parametric.trade.case_kinds import case_kinds
from parametric.trade.case_names import listed
from parametric.trade.cautions import GLUE, Cautions
from parametric.trade.drawer_places import DrawerPlace, drawer_places
from parametric.trade.printed import Printed, printed


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseGlueUp:
    """Cases put together alike, mm: the first is drawn and measured.

    `marks` are those of their boards; `diagonal` is None where the top slopes.
    """

    cases: tuple[StandingCase, ...]
    marks: tuple[str, ...]
    diagonal: Figure | None
    diagonals_differ: Figure
    minutes: Figure
    steps: tuple[str, ...]
    cautions: Cautions

    @property
    def first(self) -> StandingCase:
        """The one that is drawn."""
        return self.cases[0]


def case_glue_ups(resolved: Resolved, assembly: Assembly) -> tuple[CaseGlueUp, ...]:
    """Every kind of case of a job.

    Args:
        resolved: the job's numbers.
        assembly: its parts.

    Source: order and clamps are common practice, no source; the diagonal is Pythagoras.
    """
    casework = resolved.casework
    if casework is None:
        return ()
    said, places = printed(resolved), drawer_places(resolved)
    groups = {group.name: group.parts for group in assembly.groups}
    found = []
    for kind in case_kinds(casework.cases, assembly):
        case, box = kind.first, kind.first.case.box
        parts = [part for part in groups[case.name] if not part.supplied]
        square = (
            named(join(case.name, "glue-up", "diagonal"), hypot(box.width, box.height))
            if box.slope is None
            else None
        )
        own = [place for place in places if place.case == case.name]
        found.append(
            CaseGlueUp(
                cases=kind.cases,
                marks=tuple(dict.fromkeys(part.mark for part in parts)),
                diagonal=square,
                diagonals_differ=CASE_DIAGONALS,
                minutes=named("glue minutes", resolved.shop.clamps.glue_minutes, "min"),
                steps=tuple(_steps(said, case, parts, square, own)),
                cautions=GLUE,
            )
        )
    return tuple(found)


def _steps(
    said: Printed,
    case: StandingCase,
    parts: list[Part],
    diagonal: Figure | None,
    drawers: list[DrawerPlace],
) -> Iterator[str]:
    own = case.case
    marks = {part.name: part.mark for part in parts}
    yield "Dry first, on its back edges on two battens: front edges flush, every joint closed."
    yield _fastened(said, case)
    between_sides = ("bottom", "top", "stretcher", "fixed shelf")
    level = [b for b in own.boards if b.role in between_sides and b.lies == "level"]
    partitions = dict.fromkeys(marks[board.name] for board in own.of_role("partition"))
    between = listed(dict.fromkeys(marks[board.name] for board in level))
    if partitions:
        word = "Partition" if len(own.of_role("partition")) == 1 else "Partitions"
        yield f"{word} {listed(partitions)} on {between} first, the middle of the case."
    in_groove = own.back is not None and own.back.held == "groove"
    dry = " the back dry into its grooves," if in_groove else ""
    what = "the middle" if partitions else between
    yield f"One side flat, its inside up: {what} on it,{dry} then the other side."
    squared = (
        "square at every corner"
        if diagonal is None
        else f"both diagonals of the back {said.wood(diagonal)}, alike within "
        f"{said.fine(CASE_DIAGONALS)}"
    )
    yield f"Clamp across every level board, over cauls: {squared}; front edges in one plane."
    if own.box.slope is not None:
        top = listed(dict.fromkeys(marks[board.name] for board in own.of_role("top")))
        yield (
            f"{top} on the bevelled ends, its own ends plumb and flush with the sides: glued, and "
            "screwed plumb into the middles of the ends, heads sunk."
        )
    if own.back is None:
        yield "No back holds it square: a batten from corner to corner until it stands."
    elif not in_groove:
        where = "in its rebate" if own.back.held == "rebate" else "on the back edges"
        true = "the diagonals are alike"
        if own.box.slope is not None:
            true = "its sloping edge is flush with the top: it holds the case true"
        yield f"The back last, {where}, glued and pinned while {true}."
    kicks = dict.fromkeys(marks[board.name] for board in own.of_role("kick board"))
    if kicks and own.box.kick_deep is not None:
        yield (
            f"Kick board {listed(kicks)} between the sides, its face {said.wood(own.box.kick_deep)} "
            "behind their front edges, glued, and screwed through blocks behind it."
        )
    yield from _runs(said, drawers)


def _fastened(said: Printed, case: StandingCase) -> str:
    own = case.case
    let_in = float(own.box.let_in) > 0
    start = f"Level boards go {said.wood(own.box.let_in)} into the uprights: " if let_in else ""
    match own.spec.held_by:
        case "dowel":
            how = "glue in the holes, dowels into the ends first, then thin on the ends"
        case "screw":
            how = "glue thin on the ends; clamp, then the screws through their pilot holes"
        case "pocket screw":
            how = "glue thin on the ends; clamp, then the screws from their pockets"
        case "loose tenon":
            how = "glue in the slots, tenons into the ends first, then thin on the ends"
        case "glue":
            how = "glue in the housings, thin on the ends"
        case _:
            assert_never(own.spec.held_by)
    none = "; none in the back's grooves" if own.back and own.back.held == "groove" else ""
    words = f"{start}{how}{none}."
    return f"{words[:1].upper()}{words[1:]}"


def _runs(said: Printed, drawers: list[DrawerPlace]) -> Iterator[str]:
    """What drawers run on, fixed while one can still reach in."""
    slides = [(one.called, one.slides) for one in drawers if one.slides is not None]
    if slides:
        rows = "; ".join(f"{name} {said.wood(up)}" for name, up in slides)
        yield (
            "Drawer slides on the sides or their packing, in the holes bored for them; their screws "
            f"up from the case's foot, if the data sheet asks for no other: {rows}."
        )
    for kind, words in ((UnderSlidesSpec, _UNDER), (WoodenRunnersSpec, _RUNNERS)):
        own = [one for one in drawers if isinstance(one.box.written, kind)]
        if own:
            rows = "; ".join(f"{one.called} {said.wood(one.up)}" for one in own)
            yield f"{words}: {rows}."
    assert all(
        isinstance(one.box.written, (SideSlidesSpec, UnderSlidesSpec, WoodenRunnersSpec))
        for one in drawers
    ), "every drawer runs on something that has been told"


_UNDER = (
    "Slides under the boxes, as their data sheet says from box and front; the box's foot up from "
    "the case's"
)
_RUNNERS = "Runners, guides and kickers glued and screwed, the runner's top up from the case's foot"
