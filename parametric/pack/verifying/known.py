"""What a pack is held against: the design's parts and numbers, and how they print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from parametric.catalog.layer_names import OURS, LayerNames
from parametric.figures import Figure
from parametric.model import Assembly, Part, Placement
from parametric.pack.numbers import figures
from parametric.parts import parts_of
from parametric.problems import Problem
from parametric.resolve.door import Door, Resolved
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.loads import LeafLoad
from parametric.trade.paperwork import paperwork
from parametric.units import INCH, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnDoor:
    """One of several doors as its own sheets show it: its parts and its opening, in its own frame."""

    assembly: Assembly
    opening: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnRoom:
    """One opening with cabinets as its own sheet shows it: what stands in it, and where its left foot is."""

    groups: frozenset[str]
    stands: Placement


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """A design as the files of its pack must show it.

    `opening` is the outline of the opening from the front, x and z in the world, mm; of
    several doors `doors` has each one's, in the order of their drawings, and `rooms` has those
    of the openings with cabinets. The steps are what lengths of wood and of glass are printed to, in the unit of the design;
    `layers` how the workshop names the layers of its machine files. `not_for_making` is a
    design with stops, whose pack holds only what one looks at. `option` is the letter of the
    job's option that it is, and `beside` are the others, which its client's page shows too.
    """

    assembly: Assembly
    figures: Mapping[str, Figure]
    opening: tuple[tuple[float, float], ...]
    fingerprint: str
    unit: Unit
    wood_step: Fraction
    fine_step: Fraction
    layers: LayerNames = OURS
    not_for_making: bool = False
    option: str = ""
    beside: tuple[Known, ...] = ()
    doors: tuple[DrawnDoor, ...] = ()
    rooms: tuple[DrawnRoom, ...] = ()

    @property
    def mark(self) -> str:
        """The fingerprint as people read it."""
        return mark(self.fingerprint)

    def mm(self, step: Fraction) -> float:
        """A printing step, mm."""
        return float(step * INCH if self.unit == "inch" else step)

    def made(self) -> dict[str, list[Part]]:
        """Every part that is made or ordered to size, by its mark."""
        types: dict[str, list[Part]] = {}
        for part in self.assembly.parts:
            if not part.supplied:
                types.setdefault(part.mark, []).append(part)
        return types


def known_design(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    *,
    not_for_making: bool = False,
) -> Known:
    """A resolved design as its pack must show it.

    Args:
        resolved: its numbers.
        assembly: its parts.
        loads: its weights.
        not_for_making: it has stops, and no lists or set-ups.
    """
    unit, paper = resolved.design.unit, resolved.shop.paper
    lists = None if not_for_making else paperwork(resolved, assembly, loads)
    doors = tuple(
        DrawnDoor(assembly=parts_of(door, assembly), opening=_outline(door))
        for door in resolved.walls
    )
    return Known(
        assembly=assembly,
        figures=figures(resolved, loads, lists),
        opening=doors[0].opening if len(doors) == 1 else (),
        doors=doors,
        rooms=tuple(_rooms(resolved)),
        fingerprint=fingerprint(resolved, assembly),
        unit=unit,
        wood_step=Fraction(paper.wood_step(unit)),
        fine_step=Fraction(paper.fine_step(unit)),
        layers=resolved.shop.layers,
        not_for_making=not_for_making,
        option="" if resolved.design.option is None else resolved.design.option.letter,
    )


def _rooms(resolved: Resolved) -> Iterator[DrawnRoom]:
    """Every surveyed opening with cabinets, in the order they were stood."""
    casework = resolved.casework
    cases = () if casework is None else casework.cases
    for heading in dict.fromkeys(case.survey.heading for case in cases):
        own = {case.name: case for case in cases if case.survey.heading == heading}
        first = next(iter(own.values()))
        runs = {case.run for case in own.values() if case.run}
        # a case in the corner is seen along both its walls
        seen = {*own, *(case.name for case in cases if case.returns_in in runs)}
        yield DrawnRoom(
            groups=frozenset(
                {
                    *seen,
                    *(f"{name} / closings" for name in seen),
                    *runs,
                    *(
                        leaf.name
                        for door in resolved.doors
                        if door.case in seen
                        for leaf in door.leaves
                    ),
                }
            ),
            stands=first.room,
        )


def _outline(door: Door) -> tuple[tuple[float, float], ...]:
    return tuple((float(x), float(z)) for x, z in door.opening.outline())


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What one comparison looked at, how much of it, and what it found wrong."""

    looked_at: Mapping[str, int | list[str]]
    faults: tuple[str, ...] = ()

    def record(self) -> dict[str, Any]:
        """As it stands in numbers.json."""
        return {**self.looked_at, "faults": list(self.faults)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Verified:
    """What was found in a pack: the verdict of each comparison, and the problems."""

    verdicts: Mapping[str, Verdict] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def in_file(name: str, faults: Iterable[str]) -> list[str]:
    """Faults with the name of their file before them."""
    return [f"{name}: {fault}" for fault in faults]
