"""The drawers of cases: a box behind every front that draws out."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from parametric.cases.case import Case, CaseBay
from parametric.cases.drawer import DrawerBox, size_drawer
from parametric.cases.drawer_faults import drawer_faults
from parametric.cases.drawer_runners import DrawerRunners, size_runners
from parametric.cases.drawer_written import DrawerBlock, DrawerSpec, WoodenRunnersSpec
from parametric.catalog.boards import Board
from parametric.catalog.shop import Shop
from parametric.catalog.timbers import Timber
from parametric.design import Design
from parametric.figures import Figure, largest, named, smallest
from parametric.model import Slide
from parametric.names import join
from parametric.problems import Problem
from parametric.resolve.case_drawer import CaseDrawer
from parametric.resolve.case_openings import opening_of
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door
from parametric.resolve.panel_field import resolve_board, resolve_timber
from parametric.units import length_text


def drawer_of(design: Design, name: str | None) -> DrawerSpec | None:
    """The drawer box that a cabinet calls; None where the file has none."""
    found = design.block("drawer", name)
    assert found is None or isinstance(found, DrawerSpec), "by its kind"
    return found


def stuff_of(design: Design, spec: DrawerBlock, case_board: str) -> tuple[Timber | Board, Board]:
    """What a box's frame and its bottom are made of: as written, else the case's own board."""
    bottom = resolve_board(design, str(spec.bottom_board))
    if spec.timber is not None:
        return resolve_timber(design, str(spec.timber)), bottom
    return resolve_board(design, str(spec.board or case_board)), bottom


def with_drawers(
    design: Design, shop: Shop, casework: Casework, doors: tuple[Door, ...]
) -> tuple[Casework, tuple[Problem, ...]]:
    """The cabinets with a box behind every front that draws out.

    Args:
        design: the blocks.
        shop: the workshop's limits.
        casework: the cabinets.
        doors: their fronts.
    """
    drawers: list[CaseDrawer] = []
    problems: list[Problem] = []
    for door in doors:
        case = casework.case(door.case)
        spec = drawer_of(design, _name(case))
        for leaf in door.leaves:
            if not any(isinstance(step, Slide) for step in leaf.hung.motion):
                continue
            assert spec is not None, "the reader has seen that it is there"
            drawer = _drawer(design, case, leaf, spec)
            drawers.append(drawer)
            problems += _told(design, shop, drawer.box, problems)
    for case in casework.cases:
        for drawer in _inner(design, case):
            drawers.append(drawer)
            problems += _told(design, shop, drawer.box, problems)
    return dataclasses.replace(casework, drawers=tuple(drawers)), tuple(problems)


def _name(case: StandingCase) -> str | None:
    written = case.case.spec.drawer
    return None if written is None else str(written)


def _told(design: Design, shop: Shop, box: DrawerBox, told: list[Problem]) -> Iterator[Problem]:
    """What is wrong with a box, where no other has said it of the same line."""
    known = {(problem.code, problem.where) for problem in told}
    for problem in drawer_faults(box, shop.limits, lambda mm: length_text(float(mm), design.unit)):
        if (problem.code, problem.where) not in known:
            yield problem


def _drawer(design: Design, case: StandingCase, leaf: Leaf, spec: DrawerSpec) -> CaseDrawer:
    """The box behind one front: centred in its bay, from the middle of the gap below its front."""
    own, hung = case.case, leaf.hung
    name = join(leaf.name, "drawer")
    x = float(own.opening.left + hung.left)
    low = hung.foot - own.box.foot
    bay = own.bay_at(x + float(hung.width) / 2)
    middle = float(low + hung.height / 2)
    # a fixed shelf so thick that it stands behind the middle leaves the space beside it
    space = min(bay.spaces, key=lambda s: max(float(s.foot) - middle, middle - float(s.head), 0.0))
    gap = own.spec.front_gap
    foot = named(join(name, "foot of its room"), largest(space.foot, low - gap / 2))
    over = smallest(space.head, low + hung.height + gap / 2)
    if own.frame is not None and own.spec.fronts != "inset":
        # a front over the frame is higher than what its box goes out through
        over = smallest(over, own.opening.head - own.box.foot)
    head = named(join(name, "head of its room"), over)
    stuff, bottom = stuff_of(design, spec, str(own.spec.board))
    box = size_drawer(
        spec,
        name=name,
        clear_width=_clear_width(case, leaf, bay),
        clear_height=head - foot,
        clear_depth=own.behind - own.front_back,
        stuff=stuff,
        bottom_stuff=bottom,
    )
    pack = named(join(name, "packed out"), (bay.width - box.clear_width) / 2)
    return CaseDrawer(
        case=case.name,
        leaf=leaf.name,
        box=box,
        x=named(join(name, "left in its case"), _left(own, bay, box, spec)),
        y=float(own.front_back),
        z=named(join(name, "up in its case"), foot + box.foot),
        pack=pack,
        runners=_runners(spec, box, name=join(case.name, leaf.name), pack=pack),
    )


def _inner(design: Design, case: StandingCase) -> Iterator[CaseDrawer]:
    """The boxes behind doors, from the top, between packings at either side of their bay."""
    own, number = case.case, 0
    spec = drawer_of(design, _name(case))
    front = largest(own.front_back, 0.0)
    for bay in own.bays:
        for space in reversed(bay.spaces):
            if space.what != "inner drawer":
                continue
            assert spec is not None, "the reader has seen that it is there"
            number += 1
            name = join(case.name, f"drawer {number}")
            stuff, bottom = stuff_of(design, spec, str(own.spec.board))
            left, right = _between_packings(own, bay)
            head = smallest(space.head, own.opening.head - own.box.foot)
            box = size_drawer(
                spec,
                name=name,
                clear_width=right - left,
                clear_height=named(join(name, "head of its room"), head) - space.foot,
                clear_depth=own.behind - front,
                stuff=stuff,
                bottom_stuff=bottom,
                planted=False,
            )
            nothing = named(join(box.name, "packed out"), Figure(0.0))
            yield CaseDrawer(
                case=case.name,
                leaf="",
                box=box,
                x=named(join(name, "left in its case"), left + box.room_beside),
                y=float(front),
                z=named(join(name, "up in its case"), space.foot + box.foot),
                pack=nothing,
                runners=_runners(spec, box, name=box.name, pack=nothing),
            )


def _between_packings(own: Case, bay: CaseBay) -> tuple[Figure, Figure]:
    """Where a drawer behind doors may run: a board's thickness in, clear of a face frame, and of
    doors within the opening, which stand in it when they are open.
    """
    thick = own.box.thickness
    left, right = opening_of(own, bay)
    door = Figure(0.0)
    if own.spec.fronts == "inset":
        proud = Figure(0.0) if own.frame is None else own.frame.thickness
        door = own.front_back + proud + own.spec.front_gap
    return (
        largest(bay.left + thick, left + door),
        smallest(bay.left + bay.width - thick, right - door),
    )


def _left(own: Case, bay: CaseBay, box: DrawerBox, spec: DrawerSpec) -> Figure:
    """Where a box begins: in the middle of its bay; on slides behind a face frame, of its opening."""
    in_bay = bay.left + (bay.width - box.width) / 2
    if own.frame is None or isinstance(spec, WoodenRunnersSpec):
        return in_bay
    left, right = opening_of(own, bay)
    middle = (left + right) / 2
    least = bay.left + box.room_beside
    most = bay.left + bay.width - box.room_beside - box.width
    return smallest(largest(middle - box.width / 2, least), most)


def _runners(spec: DrawerSpec, box: DrawerBox, *, name: str, pack: Figure) -> DrawerRunners | None:
    """Strips on the sides of the bay, packed out to what the drawer must pass through."""
    if not isinstance(spec, WoodenRunnersSpec):
        return None
    return size_runners(spec, box, name=name, pack=pack, stuff=box.stuff)


def _clear_width(case: StandingCase, leaf: Leaf, bay: CaseBay) -> Figure:
    """Between what its slides are screwed to; behind a face frame, what it must pass through."""
    own = case.case
    if own.frame is None:
        return bay.width
    if own.spec.fronts == "inset":
        return smallest(bay.width, leaf.width + 2 * own.spec.front_gap)
    left, right = opening_of(own, bay)
    return smallest(bay.width, right - left)
