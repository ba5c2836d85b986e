"""The cutting plan's own file sawn up again on paper: every piece once, from what is there.

Each sheet begins as large as it says, less its trim. A cut takes what it is made in, sets the
fence's size off it and leaves the rest less the kerf; a piece must be as large as what gives it.
The panels of a matched set come out of one blank, in the order they stand in their case.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.model import Part
from parametric.pack.verifying.known import Known, Verdict, in_file
from parametric.pack.verifying.matched_sets import (
    NOWHERE,
    Blank,
    Rectangle,
    faults_of_sets,
    of_set,
)
from parametric.pack.verifying.printed import length
from parametric.pack.verifying.rebuilt import rows

PLAN = "shop/cutting-plan.csv"
_CLOSE = 0.08
"""mm: a fence is printed to the twentieth, and several stand one after another."""
_RUN = re.compile(r"(\d+)(?: to (\d+))?")
_GIVES = re.compile(r"(?:(\d+) )?(.+)")
_NO_PIECE = ("strip", "rest")

Row = Mapping[str, str]
Size = tuple[float, float]


def check_cutting_plan(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold the cutting plan against the parts of sheet material.

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    wanted = {
        mark: parts for mark, parts in known.made().items() if parts[0].material.look == "board"
    }
    if PLAN not in files:
        return Verdict(looked_at={}, faults=(f"{PLAN} is missing",) if wanted else ())
    sheets: dict[tuple[str, ...], list[Row]] = {}
    for row in rows(files[PLAN]):
        sheets.setdefault((row["board"], row["thick"], row["no."]), []).append(row)
    faults: list[str] = []
    given: Counter[str] = Counter()
    lengths: dict[str, int] = {}
    blanks: list[Blank] = []
    for own in sheets.values():
        sawn, wrong = _sawn(own, wanted, known, lengths)
        faults += wrong
        blanks += sawn.blanks
        for mark, count in sawn.given.items():
            given[mark] += count * int(own[0]["cut alike"])
    for mark, parts in wanted.items():
        wants = len(parts) * lengths.get(mark, 1)
        if given[mark] != wants:
            faults.append(f"{mark}: {given[mark]} are sawn, there are {wants}")
    whole = {
        row["board"]: _size_of(row["whole sheet"], known) for own in sheets.values() for row in own
    }
    faults += faults_of_sets(blanks, known, {name: size for name, size in whole.items() if size})
    return Verdict(
        looked_at={"layouts": len(sheets), "pieces": given.total(), "matched blanks": len(blanks)}
        if blanks
        else {"layouts": len(sheets), "pieces": given.total()},
        faults=tuple(in_file(PLAN, faults)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sawn:
    """What one sheet gives: how many of each mark, and the blanks of matched sets."""

    given: Counter[str]
    blanks: list[Blank]


def _sawn(
    own: Sequence[Row],
    wanted: Mapping[str, list[Part]],
    known: Known,
    lengths: dict[str, int],
) -> tuple[_Sawn, list[str]]:
    """What one sheet gives, and what is wrong with how it is sawn."""
    given: Counter[str] = Counter()
    blanks: list[Blank] = []
    faults: list[str] = []
    first = own[0]
    name = f"{first['board']} {first['thick']}, no. {first['no.']}"
    whole = _whole(first, known)
    if whole is None:
        return _Sawn(given=given, blanks=blanks), [f"{name}: {first['from']!r} is no sheet"]
    there: dict[str, Rectangle] = {"sheet": (0.0, 0.0, *whole)}
    kerf = float(known.figures["saw kerf"])
    for row in own:
        run = _RUN.fullmatch(row["cuts"])
        marks = list(_marks(row["gives"]))
        places: list[Rectangle] = []
        place = row["cut in"]
        if run is None:
            places.append(there.pop(place, NOWHERE))
        else:
            low, high = int(run[1]), int(run[2] or run[1])
            at = length(row["fence at"], known.unit) or 0.0
            for number in range(low, high + 1):
                x, y, long, wide = there.pop(place, NOWHERE)
                rip = row["way"] == "rip"
                left = (wide if rip else long) - at
                if left < -_CLOSE:
                    faults.append(f"{name}: cut {number} finds too little in {place}")
                part = (x, y, long, at) if rip else (x, y, at, wide)
                places.append(part)
                there[f"part {number}"] = part
                place, past = f"past {number}", at + kerf
                there[place] = (
                    (x, y + past, long, left - kerf) if rip else (x + past, y, left - kerf, wide)
                )
            places.append(there[place])
        for index, mark in enumerate(marks):
            if mark in _NO_PIECE:
                continue
            found_at = places[min(index, len(places) - 1)]
            if of_set(mark, known) is not None:
                blanks.append(Blank(name=mark, at=found_at))
                continue
            given[mark] += 1
            size = found_at[2:]
            if mark not in wanted:
                faults.append(f"{name}: there is no such piece as {mark}")
                continue
            for blank in blanks:
                blank.take(mark, found_at)
            found = _lengths(size, wanted[mark][0], first, known)
            lengths[mark] = max(found, lengths.get(mark, 1))
            if not found:
                faults.append(f"{name}: what becomes {mark} is {size[0]:.2f} x {size[1]:.2f}")
    return _Sawn(given=given, blanks=blanks), faults


def _marks(text: str) -> Iterator[str]:
    """`strip, 3 C6`: each by itself."""
    for one in text.split(", "):
        found = _GIVES.fullmatch(one)
        if found is not None:
            yield from [found[2]] * int(found[1] or 1)


def _size_of(text: str, known: Known) -> Size | None:
    """`sheet 2440 x 1220`."""
    sizes = [length(one, known.unit) for one in re.sub(r"^[a-z]+ ", "", text).split(" x ")]
    if len(sizes) != 2 or sizes[0] is None or sizes[1] is None:
        return None
    return sizes[0], sizes[1]


def _whole(row: Row, known: Known) -> Size | None:
    """What is sawn up, less what is trimmed off its edges."""
    size, trim = _size_of(row["from"], known), length(row["trim"], known.unit)
    if size is None or trim is None:
        return None
    return size[0] - 2 * trim, size[1] - 2 * trim


def _lengths(size: Size, part: Part, row: Row, known: Known) -> int:
    """In how many lengths a rectangle is a part's blank; 0 when it is not.

    Its grain lies along the sheet, unless it has none or comes out of a whole sheet in no other
    way; one longer than a whole sheet may be sawn in as few lengths as can be.
    """
    blank = (float(part.blank.length), float(part.blank.width))
    sheet = _size_of(row["whole sheet"], known) or (0.0, 0.0)
    too_large = any(a > room + _CLOSE for a, room in zip(blank, sheet, strict=True))
    if _same(size, blank):
        return 1
    if _same(size, blank[::-1]):
        return int(too_large or row["grain"] == "none")
    few = math.ceil(blank[0] / sheet[0] - 1e-6) if sheet[0] else 0
    return few if few > 1 and _same(size, (blank[0] / few, blank[1])) else 0


def _same(a: Size, b: Size) -> bool:
    return all(abs(x - y) <= _CLOSE for x, y in zip(a, b, strict=True))
