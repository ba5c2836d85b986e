"""The words of the saw and bench list read back into cuts: what a person at the saw would make.

Sizes are mm from the lower left corner of the blank's face, printed to a thousandth.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import assert_never

from parametric.model import (
    FACES,
    Blank,
    Cut,
    Drilled,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
)
from parametric.pack.verifying.outlines import closed_outline, relieved_rectangle
from parametric.runs import run_volume

_N = r"(\d+(?:\.\d+)?)"
_DEEP = rf"{_N} deep(?: from {_N} below the blank)?"
_FORMS: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (kind, re.compile(form))
    for kind, form in (
        ("chop", rf"chop the round ends square, r {_N}, {_N} deep, in the (.+)"),
        ("trim", rf"trim {_N} off the (.+)"),
        ("mitre", r"mitre the (.+) at 45 degrees, the (.+) keeping its length"),
        (
            "groove",
            rf"groove {_N} wide, {_N} to {_N}, centre across {_N}, {_DEEP}, in the (.+?)"
            rf"(?:, stopped with ramps of a blade r {_N})?",
        ),
        ("slot", rf"slot {_N} wide, {_N} to {_N}, centre across {_N}, {_DEEP}, in the (.+)"),
        (
            "pocket",
            rf"pocket {_N} x {_N}, corners r {_N}(?: relieved by r {_N})?, centred on {_N}; {_N}, {_DEEP}, in the (.+)",
        ),
        (
            "bore",
            rf"bore (\d+) holes? {_N} dia(?: at|, the first at) {_N}; {_N}"
            rf"(?:, then every {_N} (along|across))?, {_DEEP}, in the (.+)",
        ),
        (
            "screw pocket",
            rf"bore a screw pocket {_N} dia, {_N} deep along it at {_N} degrees, in the (.+) {_N} from "
            rf"the (.+) at {_N}(?:, {_N} of them, then every {_N} across)?, and a pilot {_N} dia out "
            "of the end",
        ),
        ("bevel", rf"bevel all round the (.+): {_N} in, from {_N} thick at the edge to {_N}"),
        ("tongue", rf"tongue all round: {_N} thick, {_N} long, {_N} off the (.+)"),
        ("arrises", rf"round the four long edges, r {_N}"),
        ("corners", rf"round the four corners, r {_N}"),
        ("block", rf"take out {_N} to {_N} along, {_N} to {_N} across, {_DEEP}, in the (.+)"),
        ("shape", rf"take out the shape (.+), {_DEEP}, in the (.+)"),
        (
            "moulding",
            rf"run the (.+) {_N} x {_N}, section {_N} mm2, {_N} long in the middle, "
            r"in the (.+) along the (.+)",
        ),
        ("island", rf"take the (.+) down {_N} round a raised {_N} x {_N}, corners r {_N}"),
    )
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A cut in words: its kind, its numbers in the order of the sentence, the faces it names."""

    kind: str
    sizes: tuple[float, ...]
    faces: tuple[str, ...]


def read_words(text: str) -> Said | None:
    """One line of the list as a cut; None when it is no sentence that this reader knows."""
    for kind, form in _FORMS:
        found = form.fullmatch(text)
        if found is None:
            continue
        sizes: list[float] = []
        faces: list[str] = []
        if kind == "shape":
            corners, deep, begins, face = found.groups()
            return _shape_said(corners, float(deep), float(begins or 0.0), face)
        for group in found.groups():
            if group is None:
                sizes.append(0.0)
            elif re.fullmatch(_N, group):
                sizes.append(float(group))
            else:
                faces.append(group)
        return Said(kind=kind, sizes=tuple(sizes), faces=tuple(faces))
    return None


_CORNER = re.compile(rf"{_N}; {_N}(?: (hollow|bulging)(?: {_N} \(r {_N}\)| r {_N}))?")


def _shape_said(corners: str, deep: float, begins: float, face: str) -> Said | None:
    """A shape by its corners; the side that leaves one may be hollow or bulge, by so much."""
    sizes = [deep, begins]
    for corner in corners.split(", "):
        found = _CORNER.fullmatch(corner)
        if found is None:
            return None
        u, v, way, height, radius, alone = found.groups()
        bow = float(height or 0.0) * (-1 if way == "hollow" else 1)
        sizes += [float(u), float(v), bow, float(radius or alone or 0.0)]
    return Said(kind="shape", sizes=tuple(sizes), faces=(face,))


def _bow(a: Sequence[float], b: Sequence[float]) -> tuple[float, float]:
    """How far the side between two corners stands off its chord, hollow negative; and its radius.

    Of a circle through both ends and the middle of the bow: (chord2 / 4 + bow2) / 2 bow.
    """
    half = math.dist(a[:2], b[:2]) / 2
    bow = float(a[2]) * half
    return (bow, (half**2 + bow**2) / (2 * abs(bow))) if bow else (0.0, 0.0)


def said_of(part: Part, cut: Cut) -> Said:
    """What the list must say of a cut."""

    def word(face: Face) -> str:
        called = part.faces.get(face, face)
        alone = sum(part.faces.get(other, other) == called for other in FACES) == 1
        return called if alone else face

    match cut:
        case Trim():
            return _said("trim", (cut.length,), word(cut.end))
        case Mitre():
            return _said("mitre", (), word(cut.end), word(cut.keeps))
        case Groove():
            sizes = (cut.width, cut.u0, cut.u1, cut.v, cut.depth - cut.surface, cut.surface)
            return _said("groove", (*sizes, cut.ramp), word(cut.face))
        case Slot():
            place = (cut.width, cut.u0, cut.u1, cut.v)
            return _said("slot", (*place, cut.depth - cut.surface, cut.surface), word(cut.face))
        case Pocket():
            sizes = (cut.length, cut.width, cut.corner, cut.relief, cut.u, cut.v)
            deep = (cut.depth - cut.surface, cut.surface)
            return _said("pocket", (*sizes, *deep), word(cut.face))
        case Drilled():
            first = (float(cut.count), cut.diameter, cut.u, cut.v)
            row = cut.count > 1
            deep = (cut.depth - cut.surface, cut.surface)
            way = ("along" if cut.along == "u" else "across",) if row else ()
            sizes = (*first, cut.pitch if row else 0.0, *(() if row else (0.0,)), *deep)
            return _said("bore", sizes, *way, word(cut.face))
        case ScrewPocket():
            many = (float(cut.count), cut.pitch) if cut.count > 1 else (0.0, 0.0)
            stepped = (cut.wide, cut.deep, cut.angle, cut.mouth, cut.v, *many, cut.pilot)
            return _said("screw pocket", stepped, word(cut.face), word(cut.end))
        case RaisedBevel():
            return _said("bevel", (cut.run, cut.edge, cut.foot), word("high face"))
        case Tongue():
            return _said("tongue", (cut.thickness, cut.length, cut.back), word("low face"))
        case RoundArrises():
            return _said("arrises", (cut.radius,))
        case RoundCorners():
            return _said("corners", (cut.radius,))
        case Shaped():
            into = (float(cut.depth) - float(cut.surface), float(cut.surface))
            block = _block(cut)
            if block:
                return _said("block", (*block, *into), word(cut.face))
            corners = [
                size
                for a, b in zip(cut.outline, (*cut.outline[1:], cut.outline[0]), strict=True)
                for size in (a[0], a[1], *_bow(a, b))
            ]
            return _said("shape", (*into, *corners), word(cut.face))
        case Moulded():
            return _moulded(cut, word)
        case Island():
            raised = (cut.depth, cut.length, cut.width, cut.corner)
            return _said("island", raised, word(cut.face))
        case _:
            assert_never(cut)


def _moulded(cut: Moulded, word: Callable[[Face], str]) -> Said:
    """Its profile and size, its section's area, and how long a square run of its wood is."""
    xs, ys = ([float(corner[axis]) for corner in cut.section] for axis in (0, 1))
    area = closed_outline([(float(x), float(y), bulge) for x, y, bulge in cut.section]).area
    taken = run_volume(cut.section, cut.path, cut.start, cut.end)
    a, b = cut.path[0], cut.path[-1]
    beside: Face
    if round(b.x - a.x, 6):
        beside = "low edge" if b.x > a.x else "high edge"
    else:
        beside = "high end" if b.y > a.y else "low end"
    sizes = (max(xs), max(ys), area, taken / area)
    return _said("moulding", sizes, cut.profile, word(cut.face), word(beside))


def _block(cut: Shaped) -> tuple[float, ...]:
    """Low u, high u, low v, high v of a rectangle along the face's own edges; else nothing."""
    us, vs = ({float(corner[axis]) for corner in cut.outline} for axis in (0, 1))
    straight = len(cut.outline) == 4 and not any(corner[2] for corner in cut.outline)
    return (min(us), max(us), min(vs), max(vs)) if straight and len(us) == len(vs) == 2 else ()


def _said(kind: str, sizes: tuple[float, ...], *faces: str) -> Said:
    return Said(kind=kind, sizes=tuple(float(size) for size in sizes), faces=faces)


def volume_said(said: Said, blank: Blank, others: tuple[Said, ...], round_ends: float) -> float:
    """What a cut in words takes from a blank, mm3.

    Args:
        said: the cut.
        blank: the blank it is made in.
        others: what else is said of the same part: a tongue is cut through the bevel.
        round_ends: the wood that the machine files leave in the round ends, for chopping.
    """
    length, wide, thick = float(blank.length), float(blank.width), float(blank.thickness)
    s = said.sizes
    match said.kind:
        case "chop":
            return round_ends
        case "trim":
            return s[0] * wide * thick
        case "mitre":
            return wide**2 / 2 * thick
        case "groove":
            return (s[2] - s[1]) * s[0] * s[4] + (2 * _ramp(s[6], s[4]) * s[0] if s[6] else 0.0)
        case "slot":
            return _rounded(s[2] - s[1], s[0], s[0] / 2) * s[4]
        case "pocket":
            return relieved_rectangle(s[0], s[1], s[2], s[3]).area * s[6]
        case "bore":
            return s[0] * math.pi * s[1] ** 2 / 4 * s[-2]
        case "screw pocket":
            wide_of, deep, angle, mouth, _, count, _, pilot = s
            whole = mouth / math.cos(math.radians(angle))
            each = math.pi / 4 * (wide_of**2 * deep + pilot**2 * (whole - deep))
            return max(1.0, count) * each
        case "bevel":
            run, edge, foot = s
            return _round_the_edge(length, wide, run, (thick - edge, thick - foot))
        case "tongue":
            tongue, reach, _ = s
            at_edge, at_shoulder = _left_by_bevel(others, thick, reach)
            return _round_the_edge(length, wide, reach, (at_edge - tongue, at_shoulder - tongue))
        case "arrises":
            return (4 - math.pi) * s[0] ** 2 * length
        case "corners":
            return (4 - math.pi) * s[0] ** 2 * thick
        case "block":
            return (s[1] - s[0]) * (s[3] - s[2]) * s[4]
        case "shape":
            return _shape_area(s[2:]) * s[0]
        case "moulding":
            return s[2] * s[3]
        case "island":
            outer = next((other.sizes[0] for other in others if other.kind == "corners"), 0.0)
            return (_rounded(length, wide, outer) - _rounded(s[1], s[2], s[3])) * s[0]
    raise AssertionError(said.kind)


def _shape_area(sizes: Sequence[float]) -> float:
    """Inside a shape said by corners and bows, mm2: its polygon, and the segment on each bow.

    A segment of chord c and height h is of a circle of radius (c2 / 4 + h2) / 2 h.
    """
    corners = [tuple(sizes[i : i + 4]) for i in range(0, len(sizes), 4)]
    total = 0.0
    for (x0, y0, bow, _), (x1, y1, _, _) in zip(corners, [*corners[1:], corners[0]], strict=True):
        total += (x0 * y1 - x1 * y0) / 2
        if bow:
            half, high = math.hypot(x1 - x0, y1 - y0) / 2, abs(bow)
            radius = (half**2 + high**2) / (2 * high)
            turn = 2 * math.atan2(half, radius - high)
            total += math.copysign(radius**2 * (turn - math.sin(turn)) / 2, bow)
    return total


def _rounded(length: float, width: float, corner: float) -> float:
    """A rectangle less its four corners, mm2."""
    return length * width - 4 * corner**2 + math.pi * corner**2


def _round_the_edge(
    length: float, wide: float, reach: float, heights: tuple[float, float]
) -> float:
    """A height that runs evenly from the edge to `reach` inside it, taken all round, mm3.

    Simpson's rule; exact, since the product of two even runs is a square at most.
    """
    edge, inside = heights

    def strip(part: float) -> float:
        inset = reach * part
        return 2 * (length + wide - 4 * inset) * (edge + (inside - edge) * part)

    return reach / 6 * (strip(0.0) + 4 * strip(0.5) + strip(1.0))


def _left_by_bevel(others: tuple[Said, ...], thick: float, reach: float) -> tuple[float, float]:
    """How thick a bevel leaves the wood at the edge and at `reach`, mm."""
    for other in others:
        if other.kind == "bevel":
            run, edge, foot = other.sizes
            return edge, edge + (foot - edge) / run * reach
    return thick, thick


def _ramp(radius: float, depth: float) -> float:
    """The ramp past one end of a groove stopped on the saw, seen from the side, mm2.

    By Simpson's rule over the angle the blade turns through from its lowest point.
    """
    turn = math.acos((radius - depth) / radius)
    steps = 64

    def slice_at(angle: float) -> float:
        height = radius * math.cos(angle) - (radius - depth)
        return height * radius * math.cos(angle)

    total = slice_at(0.0) + slice_at(turn)
    total += sum((4 if i % 2 else 2) * slice_at(turn * i / steps) for i in range(1, steps))
    return total * turn / steps / 3
