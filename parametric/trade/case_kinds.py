"""Cases of one kind, which are made from one sheet; and the heights of what lies level in a case."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.cases.case import CaseBoard
from parametric.figures import Figure, named
from parametric.model import Assembly, Part, alike
from parametric.names import join
from parametric.resolve.casework import StandingCase

_LEVEL = ("bottom", "top", "stretcher", "fixed shelf", "shelf")


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseKind:
    """Cases whose every board is alike and stands alike, in the order they stand."""

    cases: tuple[StandingCase, ...]

    @property
    def first(self) -> StandingCase:
        """The one that is drawn."""
        return self.cases[0]

    @property
    def called(self) -> str:
        """`cabinet outer 1 and 2`; a kind of one by its name."""
        names = [case.name for case in self.cases]
        if len(names) == 1:
            return names[0]
        stems = {name.rsplit(" ", 1)[0] for name in names}
        if len(stems) > 1:
            return f"{', '.join(names[:-1])} and {names[-1]}"
        *some, last = (name.rsplit(" ", 1)[1] for name in names)
        return f"{stems.pop()} {', '.join(some)} and {last}"


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
