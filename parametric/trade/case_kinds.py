"""Cases and fronts of one kind, which are made from one sheet; heights of what lies level in a case."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.cases.case import CaseBoard
from parametric.figures import Figure, named
from parametric.model import Assembly, Part, alike
from parametric.names import SEPARATOR, join
from parametric.resolve.casework import StandingCase
from parametric.resolve.door import Door

_SAME = 1e-6
IN_A_DRAWER = f"{SEPARATOR}drawer{SEPARATOR}"
"""In the name of every board of the box behind a front."""
_LEVEL = ("bottom", "top", "stretcher", "fixed shelf", "shelf")


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseKind:
    """Cases whose every board is alike and stands alike, in the order they stand."""

    cases: tuple[StandingCase, ...]

    @property
    def first(self) -> StandingCase:
        """The one that is drawn."""
        return self.cases[0]


def case_kinds(cases: Sequence[StandingCase], assembly: Assembly) -> tuple[CaseKind, ...]:
    """Every kind of case of a job.

    Args:
        cases: as they stand.
        assembly: their boards.
    """
    groups = {group.name: group for group in assembly.groups}
    kinds: list[list[StandingCase]] = []
    for case in cases:
        own = _made(groups[case.name].parts)
        kind = next((one for one in kinds if alike(_made(groups[one[0].name].parts), own)), None)
        if kind is None:
            kinds.append([case])
        else:
            kind.append(case)
    return tuple(CaseKind(cases=tuple(kind)) for kind in kinds)


def alike_fronts(doors: Sequence[Door], assembly: Assembly) -> tuple[tuple[Door, ...], ...]:
    """Doors that one set of sheets serves: fronts of cases, leaf for leaf the same pieces alike hung.

    A door in a wall is alone. Each kind stands where its first door does.

    Args:
        doors: of the job, in the order of their letters.
        assembly: their parts.
    """
    groups = {group.name: group for group in assembly.groups}

    def made(door: Door) -> tuple[object, ...]:
        return tuple(
            (
                *(_made(groups[leaf.name].parts), leaf.hung.left, leaf.hung.foot),
                *(leaf.hung.hinged, leaf.hung.flap),
            )
            for leaf in door.leaves
        )

    kinds: list[list[Door]] = []
    for door in doors:
        own = made(door)
        kind = next(
            (one for one in kinds if one[0].case and door.case and alike(made(one[0]), own)), None
        )
        if kind is None:
            kinds.append([door])
        else:
            kind.append(door)
    return tuple(tuple(kind) for kind in kinds)


def alike_leaves(door: Door, assembly: Assembly) -> tuple[tuple[int, ...], ...]:
    """Fronts of a case that one view serves: the same pieces alike hung, whatever box is behind them.

    A leaf of a door in a wall is alone. Each lot stands where its first leaf does.

    Args:
        door: the fronts.
        assembly: their parts.
    """
    groups = {group.name: group for group in assembly.groups}

    def made(index: int) -> tuple[object, ...]:
        leaf = door.leaves[index]
        own = [part for part in groups[leaf.name].parts if IN_A_DRAWER not in part.name]
        return (_made(own), leaf.hung.hinged)

    lots: list[list[int]] = []
    for index in range(len(door.leaves)):
        own = made(index)
        lot = next((one for one in lots if door.case and alike(made(one[0]), own)), None)
        if lot is None:
            lots.append([index])
        else:
            lot.append(index)
    return tuple(tuple(lot) for lot in lots)


def _made(parts: Sequence[Part]) -> tuple[object, ...]:
    """What makes one case of a kind with another: marks and places, not names."""
    return tuple((part.mark, part.placement, part.blank) for part in parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A board that lies level: its upper face, or a top's under face, above the case's foot, mm."""

    board: CaseBoard
    up: Figure


def levels(case: StandingCase) -> tuple[Level, ...]:
    """Every level board of a case from the foot up."""
    found = []
    for board in case.case.boards:
        if board.role not in _LEVEL or board.lies != "level":
            continue
        under = board.role in ("top", "stretcher")
        face = "under face" if under else "upper face"
        up = board.z + (Figure(0.0) if under else board.thickness)
        found.append(Level(board=board, up=named(join(board.name, face), up)))
    return tuple(sorted(found, key=lambda level: float(level.up)))


def behind_the_back(case: StandingCase) -> Figure | None:
    """What is left behind a back that is let in, mm; None where it is flush with the case."""
    back = case.case.back
    if back is None or back.held == "planted":
        return None
    left = case.case.box.depth - case.case.behind - back.thickness
    return named(join(case.name, "behind the back"), left) if float(left) > _SAME else None
