"""The cutting plan's own file sawn up again on paper: every piece once, from what is there.

Each sheet begins as large as it says, less its trim. A cut takes what it is made in, sets the
fence's size off it and leaves the rest less the kerf; a piece must be as large as what gives it.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from parametric.model import Part
from parametric.pack.verifying.known import Known, Verdict, in_file
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
    for own in sheets.values():
        sawn, wrong = _sawn(own, wanted, known)
        faults += wrong
        for mark, count in sawn.items():
            given[mark] += count * int(own[0]["cut alike"])
    for mark, parts in wanted.items():
        if given[mark] != len(parts):
            faults.append(f"{mark}: {given[mark]} are sawn, there are {len(parts)}")
    return Verdict(
        looked_at={"layouts": len(sheets), "pieces": given.total()},
        faults=tuple(in_file(PLAN, faults)),
    )


def _sawn(
    own: Sequence[Row], wanted: Mapping[str, list[Part]], known: Known
) -> tuple[Counter[str], list[str]]:
    """What one sheet gives, and what is wrong with how it is sawn."""
    given: Counter[str] = Counter()
    faults: list[str] = []
    first = own[0]
    name = f"{first['board']} {first['thick']}, no. {first['no.']}"
    whole = _whole(first, known)
    if whole is None:
        return given, [f"{name}: {first['from']!r} is no sheet"]
    there: dict[str, Size] = {"sheet": whole}
    kerf = float(known.figures["saw kerf"])
    for row in own:
        run = _RUN.fullmatch(row["cuts"])
        marks = list(_marks(row["gives"]))
        sizes: list[Size] = []
        place = row["cut in"]
        if run is None:
            sizes.append(there.pop(place, (0.0, 0.0)))
        else:
            low, high = int(run[1]), int(run[2] or run[1])
            at = length(row["fence at"], known.unit) or 0.0
            for number in range(low, high + 1):
                of = there.pop(place, (0.0, 0.0))
                rip = row["way"] == "rip"
                left = (of[1] if rip else of[0]) - at
                if left < -_CLOSE:
                    faults.append(f"{name}: cut {number} finds too little in {place}")
                part = (of[0], at) if rip else (at, of[1])
                sizes.append(part)
                there[f"part {number}"] = part
                place = f"past {number}"
                there[place] = (of[0], left - kerf) if rip else (left - kerf, of[1])
            sizes.append(there[place])
        for index, mark in enumerate(marks):
            if mark in _NO_PIECE:
                continue
            given[mark] += 1
            size = sizes[min(index, len(sizes) - 1)]
            if mark not in wanted:
                faults.append(f"{name}: there is no such piece as {mark}")
            elif not _is(size, wanted[mark][0], either_way=first["grain"] == "none"):
                faults.append(f"{name}: what becomes {mark} is {size[0]:.2f} x {size[1]:.2f}")
    return given, faults


def _marks(text: str) -> Iterator[str]:
    """`strip, 3 C6`: each by itself."""
    for one in text.split(", "):
        found = _GIVES.fullmatch(one)
        if found is not None:
            yield from [found[2]] * int(found[1] or 1)


def _whole(row: Row, known: Known) -> Size | None:
    """A sheet's size, less what is trimmed off its edges."""
    sizes = [length(text, known.unit) for text in re.sub(r"^[a-z]+ ", "", row["from"]).split(" x ")]
    trim = length(row["trim"], known.unit)
    if len(sizes) != 2 or trim is None or sizes[0] is None or sizes[1] is None:
        return None
    return sizes[0] - 2 * trim, sizes[1] - 2 * trim


def _is(size: Size, part: Part, *, either_way: bool) -> bool:
    """Whether a rectangle is a part's blank, its grain along the sheet unless it has none."""
    blank = (float(part.blank.length), float(part.blank.width))
    ways = (blank, blank[::-1]) if either_way else (blank,)
    return any(all(abs(a - b) <= _CLOSE for a, b in zip(size, way, strict=True)) for way in ways)
