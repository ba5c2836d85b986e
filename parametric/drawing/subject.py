"""What is drawn: one job, with everything a sheet may print of it."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass

from parametric.drawing.pieces import Piece, pieces
from parametric.drawing.printing import Rules, printing_rules
from parametric.figures import Figure, collect
from parametric.model import Assembly
from parametric.names import SEPARATOR
from parametric.parts import parts_of
from parametric.problems import Problem
from parametric.resolve.door import Door, Resolved
from parametric.rules.among_doors import said_of
from parametric.trade.comparing import Changes
from parametric.trade.loads import LeafLoad, loads_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """A job on its way to paper.

    `shut` are its parts with the doors shut, `figures` its numbers by name (of a job narrowed
    to one door, without the door's place), `moved` what changed since it was signed.
    """

    resolved: Resolved
    assembly: Assembly
    loads: tuple[LeafLoad, ...]
    problems: tuple[Problem, ...]
    rules: Rules
    shut: tuple[Piece, ...]
    figures: Mapping[str, Figure]
    moved: Changes | None = None
    alike: Mapping[str, tuple[str, ...]] = dataclasses.field(default_factory=dict)
    """Of fronts that are drawn for others alike: by a leaf's letter, those of the others; empty where
    every leaf is drawn."""

    @property
    def each(self) -> tuple[Subject, ...]:
        """The job narrowed to each of its doors in turn."""
        return tuple(self.of(door) for door in self.resolved.doors)

    def of(self, door: Door) -> Subject:
        """The job narrowed to one of its doors, in that door's own frame; itself where that is all."""
        if not door.place and self.resolved.casework is None:
            return self
        assembly = parts_of(door, self.assembly)
        before = f"{door.place}{SEPARATOR}" if door.place else ""
        return dataclasses.replace(
            self,
            resolved=self.resolved.of(door),
            assembly=assembly,
            loads=loads_of(door, self.loads),
            problems=said_of(door, self.resolved.doors, self.problems),
            shut=_shut(assembly),
            figures={name.removeprefix(before): one for name, one in self.figures.items()},
        )

    @property
    def third_angle(self) -> bool:
        """Whether a view stands on the side it is seen from, as drawings in inches have it.

        Source: ASME Y14.3 (third angle) and ISO 128 (first angle as used here), from memory.
        """
        return self.rules.unit == "inch"

    def wood(self, value: float, *, down: bool = False) -> str:
        """A size of wood, as printed."""
        return self.rules.wood.text(value, down=down)

    def fine(self, value: float, *, down: bool = False) -> str:
        """A size of glass or of a pocket, as printed."""
        return self.rules.fine.text(value, down=down)


def subject(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    moved: Changes | None = None,
) -> Subject:
    """Gather a job for its sheets."""
    return Subject(
        resolved=resolved,
        assembly=assembly,
        loads=loads,
        problems=problems,
        rules=printing_rules(resolved.shop, resolved.design.unit),
        shut=_shut(assembly),
        figures=collect((resolved.doors, loads)),
        moved=moved,
    )


def _shut(assembly: Assembly) -> tuple[Piece, ...]:
    return pieces(assembly, next(s for s in assembly.states if s.name == "shut"))
