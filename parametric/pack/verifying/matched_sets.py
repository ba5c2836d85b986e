"""The blanks of matched sets on a cutting plan, held against where their panels stand.

Along the grain the panels of a set follow one another on their blank as they do in their case,
and across it each lies as far from the others as it stands; what does not come out of its set's
blank is no match, unless the set is larger than a sheet.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from parametric.model import Part
from parametric.pack.verifying.known import Known

Rectangle = tuple[float, float, float, float]
"""On a sheet, mm: its corner along and across, its size along and across."""
NOWHERE: Rectangle = (0.0, 0.0, 0.0, 0.0)
_CLOSE = 0.2
"""mm: fences are printed to the twentieth, and several stand one after another."""
_ROUNDED = 1.0
"""mm: how much larger a sheet may be printed than it is."""
_STRIP = 1.0
"""mm: a strip this much wider than the saw cut, or less, is not sawn out between two panels."""


@dataclass(slots=True, kw_only=True)
class Blank:
    """A blank as it lies on its sheet, and the pieces that are sawn out of it."""

    name: str
    at: Rectangle
    pieces: list[tuple[str, float, float]] = field(default_factory=list)
    """Mark, and place along and across from the blank's corner."""

    def take(self, mark: str, at: Rectangle) -> None:
        """Keep a piece that lies in it."""
        x, y, long, wide = self.at
        a, b = at[0] - x, at[1] - y
        if -_CLOSE <= a <= long - at[2] + _CLOSE and -_CLOSE <= b <= wide - at[3] + _CLOSE:
            self.pieces.append((mark, a, b))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stands:
    """A panel where it stands, mm: along its grain and across it."""

    part: Part
    along: float
    across: float


def of_set(name: str, known: Known) -> str | None:
    """The set that a blank is of, by its name: `set 1`, or `set 1b` of one in several."""
    found = re.fullmatch(r"(set \d+)[a-z]*", name)
    sets = {part.matched.set for part in known.assembly.parts if part.matched is not None}
    return found[1] if found and found[1] in sets else None


def faults_of_sets(
    blanks: Sequence[Blank], known: Known, sheets: Mapping[str, tuple[float, float]]
) -> list[str]:
    """What is wrong with the matched sets of a plan.

    Args:
        blanks: those of the plan.
        known: the design.
        sheets: by the board's name, what the trim leaves of a sheet, mm.
    """
    faults: list[str] = []
    for name, stands in _sets(known).items():
        own = [blank for blank in blanks if of_set(blank.name, known) == name]
        kerf = float(known.figures["saw kerf"])
        sheet = sheets.get(stands[0].part.material.name, (0.0, 0.0))
        out = {mark for blank in own for mark, _, _ in blank.pieces}
        missing = [one.part.mark for one in stands if one.part.mark not in out]
        if _holds(stands, sheet, kerf) and (len(own) != 1 or missing):
            loose = f", without {' '.join(missing)}" if own and missing else ""
            faults.append(f"{name} goes on one sheet, and has {len(own)} blanks{loose}")
        for blank in own:
            faults += _wrong_in(blank, stands, kerf)
    return faults


def _sets(known: Known) -> dict[str, list[_Stands]]:
    """The panels of every set, in their order along the grain."""
    found: dict[str, list[_Stands]] = {}
    for group in known.assembly.groups:
        for part in group.parts:
            if part.matched is None:
                continue
            at = group.placement.point(part.placement.origin)
            x, y = (group.placement.direction(way) for way in (part.placement.x, part.placement.y))
            along, across = (sum(a * b for a, b in zip(at, way, strict=True)) for way in (x, y))
            stands = _Stands(part=part, along=along, across=across)
            found.setdefault(part.matched.set, []).append(stands)
    return {
        name: sorted(own, key=lambda one: (round(one.along, 3), one.across))
        for name, own in sorted(found.items())
    }


def _holds(stands: Sequence[_Stands], sheet: tuple[float, float], kerf: float) -> bool:
    """Whether a sheet is large enough for a whole set."""
    rows = {round(one.along, 3): float(one.part.blank.length) for one in stands}
    low = min(one.across for one in stands)
    wide = max(one.across + float(one.part.blank.width) for one in stands) - low
    long = sum(rows.values()) + kerf * (len(rows) - 1)
    return long <= sheet[0] - _ROUNDED and wide <= sheet[1] - _ROUNDED


def _wrong_in(blank: Blank, stands: Sequence[_Stands], kerf: float) -> Iterator[str]:
    """Panels in another order than they stand, or out of line across the grain."""
    lie = [mark for mark, _, _ in sorted(blank.pieces, key=lambda p: (round(p[1], 1), p[2]))]
    stand = [one.part.mark for one in stands if one.part.mark in lie]
    if lie != stand or len(lie) < 2:
        yield f"{blank.name} gives {' '.join(lie)}, and they stand {' '.join(stand)}"
        return
    across = {one.part.mark: one.across for one in stands}
    low = min(across[mark] for mark in lie)
    for mark, _, at in blank.pieces:
        if abs(at - (across[mark] - low)) > kerf + _STRIP + _CLOSE:
            yield f"{blank.name}: {mark} lies {at:.2f} across and stands {across[mark] - low:.2f}"
