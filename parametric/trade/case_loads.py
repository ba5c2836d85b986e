"""What every case weighs, how many carry it, how it comes to stand, and whether it tips over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.case import OF_THE_BACK, CaseBoard
from parametric.catalog.case_facts import UPRIGHT
from parametric.figures import Figure, exceeds, largest, named
from parametric.model import Assembly, Part
from parametric.names import join
from parametric.resolve.case_edges import lowest_ceiling
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.case_opens import what_opens
from parametric.trade.delivery_item import people_for
from parametric.trade.loads import LeafLoad
from parametric.trade.planned_middle import middle_behind
from parametric.trade.tip_over import TipOver, tip_over, within_the_rule
from parametric.trade.tipping import StandingUp, standing_up


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseLoad:
    """A case as it is carried and as it stands; kg.

    `weight` is of all its boards as cut, `carried` without the shelves that lift out; fronts and
    what goes into the case are not in them. `fronts` are its fronts' weights, the heaviest first.
    `up` is None where the case comes in upright and stands on the floor, `hangs` on the wall, or
    no ceiling was measured; `tips` of a case that hangs. `in_the_rule` says whether the law on
    tip-over would speak of it, stood free.
    """

    standing: StandingCase
    weight: Figure
    carried: Figure
    people: Figure
    fronts: tuple[Figure, ...]
    up: StandingUp | None
    tips: TipOver | None
    doors: int
    flaps: int
    drawers: int
    in_the_rule: bool
    hangs: bool


def case_loads(
    resolved: Resolved, assembly: Assembly, loads: tuple[LeafLoad, ...]
) -> tuple[CaseLoad, ...]:
    """Every case, from the left."""
    if resolved.casework is None:
        return ()
    groups = {group.name: group.parts for group in assembly.groups}
    heavy = {load.leaf: load.governing for load in loads}
    found = []
    for standing in resolved.casework.cases:
        leaves = [
            leaf for door in resolved.doors if door.case == standing.name for leaf in door.leaves
        ]
        fronts = [(leaf, heavy[leaf.name]) for leaf in leaves]
        one_person = resolved.shop.limits.one_person
        found.append(_load(resolved.casework, standing, groups[standing.name], fronts, one_person))
    return tuple(found)


def _load(
    casework: Casework,
    standing: StandingCase,
    parts: Sequence[Part],
    fronts: Sequence[tuple[Leaf, Figure]],
    one_person: Figure,
) -> CaseLoad:
    name, box = standing.name, standing.case.box
    weight = _weight(join(name, "weight"), parts)
    carried = _weight(
        join(name, "weight as it is carried"),
        [part for part in parts if not part.noun.startswith("shelf")],
    )
    tips = up = None
    hangs = _hangs(casework, standing)
    if not hangs:
        foot = _foot_line(casework, standing)
        tips = tip_over(
            name,
            weight=weight,
            behind=named(join(name, "middle behind its foot line"), _middle(standing) - foot),
            opens=tuple(what_opens(casework, standing, fronts, foot)),
        )
        on_a_case = bool(standing.on) and exceeds(box.highest, box.depth)
        tipped = on_a_case or exceeds(box.highest, _upright(standing))
        if standing.opening.ceiling and tipped:
            up = _stood_up(standing)
    return CaseLoad(
        standing=standing,
        weight=weight,
        carried=carried,
        people=people_for(
            join(name, "people"),
            carried,
            one_person,
            named(join(name, "face"), box.width * box.highest / 1e6, "m2"),
        ),
        fronts=tuple(sorted((mass for _, mass in fronts), key=float, reverse=True)),
        up=up,
        tips=tips,
        doors=sum(leaf.hung.swing is not None for leaf, _ in fronts),
        flaps=sum(leaf.hung.flap is not None for leaf, _ in fronts),
        drawers=sum(drawer.case == name for drawer in casework.drawers),
        in_the_rule=within_the_rule(
            height=box.foot + box.highest, weight=weight, enclosed=_enclosed(standing)
        ),
        hangs=hangs,
    )


def _upright(standing: StandingCase) -> Figure:
    """How high a case may be that is carried in upright: the way in, where it was measured."""
    route = standing.survey.route
    return UPRIGHT if route is None else route[1]


def _stood_up(standing: StandingCase) -> StandingUp:
    """Under a level ceiling where that is lowest; under a slope it is tipped up where that is highest."""
    box, opening = standing.case.box, standing.opening
    broad, deep = standing.case.around
    over = lowest_ceiling(opening, standing.left, standing.left + box.width)
    over = named(join(standing.name, "ceiling over it"), over)
    highest = named("highest ceiling", largest(*opening.ceiling.values()))
    return standing_up(
        standing.name,
        height=box.highest,
        width=broad,
        depth=deep,
        base=box.foot,
        headroom=over,
        beside=highest if opening.slopes else over,
    )


def _weight(name: str, parts: Sequence[Part]) -> Figure:
    total = sum(part.mass for part in parts)
    return named(name, Figure(total, op="sum of the parts as cut", unit="kg"), "kg")


def _hangs(casework: Casework, standing: StandingCase) -> bool:
    """Whether it hangs on the wall and stands on nothing."""
    raised = [run.spec.above_floor for run in casework.runs if run.name == standing.run]
    return any(above is not None for above in (standing.case.spec.above_floor, *raised))


def _foot_line(casework: Casework, standing: StandingCase) -> Figure:
    """How far behind its front edges the line lies that a case turns on: a kick's, a plinth's."""
    name = join(standing.name, "foot line behind its front")
    if standing.case.box.kick_deep is not None:
        return named(name, standing.case.box.kick_deep)
    for run in casework.runs:
        if run.name == standing.run and run.edges.plinth is not None:
            back = named(join(run.name, "plinth back"), run.spec.plinth_back)
            return named(name, largest(0, back - (standing.front - run.front)))
    return named(name, Figure(0.0))


def _middle(standing: StandingCase) -> Figure:
    """How far behind the front edges the middle of all its boards lies, by their weights."""
    if standing.case.plan is not None:
        return middle_behind(standing.case.plan, standing.case.boards, standing.board)
    moment, weight = Figure(0.0), Figure(0.0)
    for board in standing.case.boards:
        of = standing.board
        if board.role in OF_THE_BACK and standing.back_board is not None:
            of = standing.back_board
        own = board.length * board.width * board.thickness * of.density / 1e9
        moment, weight = moment + own * (board.y + _deep(board) / 2), weight + own
    return Figure(float(moment / weight), op="middle of all its boards by weight")


def _deep(board: CaseBoard) -> Figure:
    """How far a board reaches from front to back, mm."""
    match board.lies:
        case "upright" | "level" | "sloping":
            return board.width
        case "inwards":
            return board.length
        case "facing" | "facing, level":
            return board.thickness
        case _:
            assert_never(board.lies)


def _enclosed(standing: StandingCase) -> Figure:
    """The room behind its fronts, mm3."""
    found = Figure(0.0)
    for bay in standing.case.bays:
        for space in bay.spaces:
            if space.what != "open":
                found = found + bay.width * (space.head - space.foot) * standing.case.box.depth
    return named(join(standing.name, "enclosed room"), found, "mm3")
