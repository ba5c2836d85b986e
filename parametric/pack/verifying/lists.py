"""Cut list and glass order against the parts: every piece once, as many as there are, its sizes."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from parametric.model import Part
from parametric.pack.verifying.known import Known, Verdict, in_file
from parametric.pack.verifying.printed import length
from parametric.pack.verifying.rebuilt import rows

CUT_LIST = "order/cut-list.csv"
GLASS = "order/glass.csv"
_KG = 0.00501
"""Weights are printed to a hundredth of a kilogram."""
_THICK = re.compile(r"(?P<said>[^()]+) \((?P<true>[0-9./-]+)(?P<measured> true)?\)")
_SET = re.compile(r"(set \d+): (\d+) of (\d+)")
"""The place of a piece in a matched set, as the note of a row says it."""
_MEASURED: Mapping[str, Fraction] = {"mm": Fraction(1, 100), "inch": Fraction(1, 1000)}
"""What a measured thickness is printed to."""

Row = Mapping[str, str]


def check_lists(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold the lists that are ordered and sawn from against the parts.

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    faults: list[str] = []
    counted: dict[str, int] = {}
    for path, glass in ((CUT_LIST, False), (GLASS, True)):
        wanted = {
            mark: parts
            for mark, parts in known.made().items()
            if (parts[0].material.look == "glass") == glass
        }
        if path not in files:
            if wanted:
                faults.append(f"{path} is missing")
            continue
        listed = rows(files[path])
        counted["panes" if glass else "pieces"] = len(listed)
        faults += in_file(path, _rows(listed, wanted, known, glass=glass))
    return Verdict(looked_at=counted, faults=tuple(faults))


def _rows(
    listed: list[dict[str, str]], wanted: Mapping[str, list[Part]], known: Known, *, glass: bool
) -> Iterator[str]:
    seen: set[str] = set()
    for row in listed:
        mark = row.get("mark", "")
        parts = wanted.get(mark)
        if parts is None:
            yield f"{mark}: there is no such piece"
            continue
        if mark in seen:
            yield f"{mark}: is listed twice"
        seen.add(mark)
        if row.get("no.") != str(len(parts)):
            yield f"{mark}: {row.get('no.')} off are listed, there are {len(parts)}"
        yield from _pane(row, parts[0], known) if glass else _piece(row, parts[0], known)
    for mark in wanted:
        if mark not in seen:
            yield f"{mark}: is missing"


def _piece(row: Row, part: Part, known: Known) -> Iterator[str]:
    if row.get("material") != part.material.name:
        yield f"{part.mark}: is of {row.get('material')}, the part of {part.material.name}"
    told, own = _SET.fullmatch(row.get("note", "")), part.matched
    place = None if told is None else (told[1], int(told[2]), int(told[3]))
    if place != (None if own is None else (own.set, own.number, own.of)):
        yield f"{part.mark}: {row.get('note')!r} is said of its matched set"
    blank = part.blank
    for heading, size in (
        ("length", blank.length),
        ("width", blank.width),
        ("thick", blank.thickness),
    ):
        yield from _size(row, heading, float(size), part.mark, known.wood_step, known)


def _pane(row: Row, part: Part, known: Known) -> Iterator[str]:
    """Width is across the leaf and height up it, whichever way the pane's own x runs."""
    across = abs(part.placement.x[0]) > 0.5
    length_, wide = float(part.blank.length), float(part.blank.width)
    sizes = {
        "width": length_ if across else wide,
        "height": wide if across else length_,
    }
    for heading, size in sizes.items():
        yield from _size(row, heading, size, part.mark, known.fine_step, known)
    yield from _thickness(row, part, known)
    weight = float(row.get("kg each") or "nan")
    if not abs(weight - part.mass) <= _KG:
        yield f"{part.mark}: {weight:g} kg are listed, the pane has {part.mass:.3f}"


def _thickness(row: Row, part: Part, known: Known) -> Iterator[str]:
    """`6`; `1/4 (0.226 true)`, what is sold and what it measures; `4 / 12 / 4 (20)`, a unit's parts."""
    said, true = row.get("thick", ""), float(part.blank.thickness)
    found = _THICK.fullmatch(said)
    if found is None:
        yield from _size(row, "thick", true, part.mark, known.fine_step, known)
        return
    sizes = [length(one, known.unit) for one in found["said"].split(" / ")]
    if None in sizes or len(sizes) not in (1, 3):
        yield f"{part.mark}: thick is {said!r}, which is no thickness"
        return
    over_all = length(found["true"], known.unit)
    step = known.mm(known.fine_step)
    near = known.mm(_MEASURED[known.unit]) if found["measured"] else step
    if over_all is None or abs(over_all - true) > near / 2 + 1e-6:
        yield f"{part.mark}: thick is listed {said}, the part has {true:.3f} mm"
    sold = sum(size for size in sizes if size is not None)
    if not found["measured"] and abs(sold - true) > len(sizes) * step / 2 + 1e-6:
        yield f"{part.mark}: thick is listed {said}, which does not add up"


def _size(
    row: Row, heading: str, size: float, mark: str, step: Fraction, known: Known
) -> Iterator[str]:
    """A size is printed to the nearest step, or to the one below where too large does not go in."""
    said = length(row.get(heading, ""), known.unit)
    every = known.mm(step)
    steps = size / every
    printed = (math.floor(steps + 1e-6) * every, math.floor(steps + 0.5 + 1e-6) * every)
    if said is None:
        yield f"{mark}: {heading} is {row.get(heading)!r}, which is no length"
    elif all(abs(said - one) > 1e-6 for one in printed):
        yield f"{mark}: {heading} is listed {row.get(heading)}, the part has {size:.3f} mm"
