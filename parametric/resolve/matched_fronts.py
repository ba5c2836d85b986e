"""Fronts whose grain runs on from one to the next: which panels are of one set, in which order.

up: a set in each bay, from the foot         across: a set for each row of fronts, from the left
 ______   ______                              ______________________
|__|___|  |__|___|  3                        |___1___|___2___|__3___|
|__|___|  |__|___|  2                        |___1___|___2___|__3___|
|__|___|  |__|___|  1

The blank of a set lies with its first panel at its low end. Across their grain the panels keep
the places they have in the case, so that a line of the grain meets itself again.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.catalog.boards import Board
from parametric.figures import Figure, named
from parametric.hangings.case_fronts import CaseFronts
from parametric.infill.panel import Grain
from parametric.model import Group, Matched
from parametric.names import join
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door
from parametric.resolve.panel_field import PanelField

Way = Literal["up", "across"]
_LEVEL = 1e-6
"""Panels whose places are no farther apart than this stand in line, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchedPanel:
    """A panel of a set, mm: `at` is its low edge from the low edge of the set's blank."""

    name: str
    leaf: str
    number: int
    across: Figure
    at: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchedRow:
    """What is crosscut off a set's blank in one, mm: a panel, or those of a pair of doors.

    `hidden` is what frames and the gap between fronts hide between the row before it and this.
    """

    panels: tuple[MatchedPanel, ...]
    along: Figure
    hidden: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchedSet:
    """Panels sawn from one blank, in the order they lie along its grain."""

    name: str
    case: str
    way: Way
    board: str
    thickness: Figure
    rows: tuple[MatchedRow, ...]

    @property
    def panels(self) -> tuple[MatchedPanel, ...]:
        """All of them, by their numbers."""
        return tuple(panel for row in self.rows for panel in row.panels)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stands:
    """A panel where it stands among the fronts, mm: `low` and `along` are with the grain."""

    leaf: Leaf
    field: PanelField
    low: Figure
    along: Figure
    side: Figure
    """Where it begins across its grain: of an upright panel from the right."""
    across: Figure


def grain_of(way: Way) -> Grain:
    """How the grain of a panel has to run that is matched that way."""
    return "upright" if way == "up" else "level"


def may_be_matched(field: PanelField, way: Way) -> bool:
    """Whether a panel is sawn from a sheet with a grain that runs that way."""
    stuff = field.panel.material
    return isinstance(stuff, Board) and stuff.grain and field.panel.grain == grain_of(way)


def matched_sets(doors: Iterable[Door]) -> tuple[MatchedSet, ...]:
    """Every set of a job, by their numbers; a panel that has no other to be matched to is of none.

    Args:
        doors: of which the fronts of cases may be matched.
    """
    found: list[MatchedSet] = []
    for door in doors:
        spec = door.written
        if not isinstance(spec, CaseFronts) or spec.fronts_matched == "none":
            continue
        way = spec.fronts_matched
        for stands in _in_line(door, spec, way):
            if len(stands) > 1:
                found.append(_set(f"set {len(found) + 1}", door, way, stands))
    return tuple(found)


def with_matches(groups: Iterable[Group], doors: Iterable[Door]) -> list[Group]:
    """The parts of a job, each panel of a set with its place in it."""
    places = {
        panel.name: Matched(set=own.name, number=panel.number, of=len(own.panels))
        for own in matched_sets(doors)
        for panel in own.panels
    }
    if not places:
        return list(groups)
    return [
        dataclasses.replace(
            group,
            parts=tuple(
                dataclasses.replace(part, matched=places[part.name])
                if part.name in places
                else part
                for part in group.parts
            ),
        )
        for group in groups
    ]


def _in_line(door: Door, spec: CaseFronts, way: Way) -> Iterator[list[_Stands]]:
    """The panels of each bay from the foot, or of each row from the left."""
    if way == "up":
        bays = spec.leaf_bays
        for bay in dict.fromkeys(bays):
            leaves = [leaf for leaf, own in zip(door.leaves, bays, strict=True) if own == bay]
            yield sorted(_standing(leaves, way), key=lambda one: (one.low, one.side))
        return
    rows: list[list[_Stands]] = []
    for one in _standing(door.leaves, way):
        row = next((row for row in rows if _one_row(row[0], one)), None)
        if row is None:
            rows.append([one])
        else:
            row.append(one)
    for row in sorted(rows, key=lambda row: float(row[0].side)):
        yield sorted(row, key=lambda one: float(one.low))


def _one_row(one: _Stands, other: _Stands) -> bool:
    return abs(one.side - other.side) <= _LEVEL and abs(one.across - other.across) <= _LEVEL


def _standing(leaves: Sequence[Leaf], way: Way) -> Iterator[_Stands]:
    for leaf in leaves:
        for field in leaf.panels:
            if not may_be_matched(field, way):
                continue
            panel = field.panel
            left = leaf.hung.left + leaf.left_stile + (field.width - panel.width) / 2
            foot = leaf.hung.foot + field.foot + (field.height - panel.height) / 2
            up = way == "up"
            yield _Stands(
                leaf=leaf,
                field=field,
                low=foot if up else left,
                along=panel.along,
                side=-(left + panel.width) if up else foot,
                across=panel.across,
            )


def _set(name: str, door: Door, way: Way, stands: Sequence[_Stands]) -> MatchedSet:
    first, edge = stands[0], min((one.side for one in stands), key=float)
    lines: list[list[_Stands]] = []
    for one in stands:
        if lines and abs(lines[-1][0].low - one.low) <= _LEVEL:
            lines[-1].append(one)
        else:
            lines.append([one])
    rows: list[MatchedRow] = []
    number = 0
    for line in lines:
        panels = []
        for one in line:
            number += 1
            panels.append(
                MatchedPanel(
                    name=one.field.name,
                    leaf=one.leaf.name,
                    number=number,
                    across=one.across,
                    at=named(join(name, str(number), "from the blank's edge"), one.side - edge),
                )
            )
        hidden = None
        if rows:
            before = lines[len(rows) - 1][0]
            hidden = named(
                join(name, str(panels[0].number), "hidden before it"),
                line[0].low - before.low - before.along,
            )
        rows.append(MatchedRow(panels=tuple(panels), along=line[0].along, hidden=hidden))
    stuff = first.field.panel.material
    assert isinstance(stuff, Board), "nothing else is matched"
    return MatchedSet(
        name=name,
        case=door.case,
        way=way,
        board=stuff.name,
        thickness=first.field.panel.thickness,
        rows=tuple(rows),
    )
