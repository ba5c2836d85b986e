"""The shelves of every case: what each does under its load, those that are alike taken once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.cases.case import CaseBay, CaseBoard, Space
from parametric.cases.plan_boards import longest_span
from parametric.cases.shelf import ShelfSpec
from parametric.design import Design
from parametric.figures import exceeds, named
from parametric.names import join
from parametric.resolve.casework import StandingCase
from parametric.resolve.door import Resolved
from parametric.resolve.shelf_lips import lip_of, lip_stiffness, shelf_of
from parametric.resolve.stiffness import board_stiffness
from parametric.trade.shelf_sag import Lip, ShelfSag, WaysOut, shelf_sag, ways_out


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseShelf:
    """A shelf of a case, and all of that case that are as long and as deep and bear as much.

    `is_open` where no front hides it. `ways` are what would hold it, where it sags too far without.
    """

    standing: StandingCase
    written: ShelfSpec
    board: CaseBoard
    is_open: bool
    sag: ShelfSag
    ways: WaysOut | None

    @property
    def is_asked(self) -> bool:
        """Whether the design or the house says what it bears, or how far it may sag."""
        return any(self.written.origin(key) != "assumed" for key in ("load", "sag"))


def case_shelves(resolved: Resolved) -> tuple[CaseShelf, ...]:
    """Every kind of shelf, case by case."""
    if resolved.casework is None:
        return ()
    return tuple(
        shelf
        for standing in resolved.casework.cases
        for shelf in _of_case(resolved.design, standing)
    )


def _of_case(design: Design, standing: StandingCase) -> Iterator[CaseShelf]:
    written = shelf_of(design, standing.case.spec)
    told: set[tuple[float | str, ...]] = set()
    for bay in standing.case.bays:
        for board in standing.case.boards:
            space = _space_of(bay, board)
            if space is None:
                continue
            alike = (
                float(bay.width),
                float(board.width),
                float(board.thickness),
                board.role,
                "open" if space.what == "open" else "",
            )
            if alike not in told:
                told.add(alike)
                yield _shelf(design, standing, written, bay, board, space)


def _space_of(bay: CaseBay, board: CaseBoard) -> Space | None:
    """The space of a bay that a shelf is in, or that stands on it; None for any other board."""
    if board.role not in ("shelf", "fixed shelf"):
        return None
    middle, top = board.x + board.length / 2 - bay.left, board.z + board.thickness
    if not board.sides and not 0.0 < middle < bay.width:
        return None
    return next(
        (space for space in bay.spaces if space.foot - _SAME <= top < space.head - _SAME), None
    )


_SAME = 1e-6


def _shelf(
    design: Design,
    standing: StandingCase,
    written: ShelfSpec,
    bay: CaseBay,
    board: CaseBoard,
    space: Space,
) -> CaseShelf:
    plan = standing.case.plan
    stiffness = board_stiffness(design, str(standing.case.spec.board))
    made = lip_of(design, standing.case.spec) if board.role == "shelf" else None
    lip = None
    if made is not None:
        lip = Lip(thickness=made.thickness, depth=made.depth, stiffness=made.stiffness)
    load = named(join(board.name, "load"), written.load, written.load.unit)
    sag = shelf_sag(
        board.name,
        span=bay.width if plan is None else longest_span(plan, standing.case.box),
        depth=board.width,
        thickness=board.thickness,
        stiffness=stiffness,
        load=load,
        sag=named(join(board.name, "sag allowed"), written.sag, written.sag.unit),
        lip=lip,
    )
    return CaseShelf(
        standing=standing,
        written=written,
        board=board,
        is_open=space.what == "open",
        sag=sag,
        ways=None
        if not exceeds(sag.plain, sag.limit)
        else ways_out(
            sag,
            depth=board.width,
            stiffness=stiffness,
            strip=board.thickness if written.lip is None else written.lip[0],
            strip_stiffness=lip_stiffness(design, standing.case.spec),
        ),
    )
