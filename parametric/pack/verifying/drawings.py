"""Drawings against the design: what each dimension says, measures and spans, and the fronts.

A dimension must measure the number it prints, print the number it measures, and end on
something drawn. On the front views, a line that lies along the edge of a part may not run
past it, and the parts in the foremost plane must be drawn from end to end.
"""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from parametric.pack.verifying.drawing_file import (
    Dimension,
    DrawingFile,
    Line,
    Window,
    read_drawing,
)
from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.fronts import Front, foremost, job_fronts, leaf_fronts, room_fronts
from parametric.pack.verifying.known import DrawnDoor, Known, Verdict, in_file
from parametric.pack.verifying.outlines import Point
from parametric.pack.verifying.printed import lengths_in

NEAR = 2e-3
"""Nearer than this is the same place, mm; drawings are written to 1e-6."""

_JOB = "front elevation"
_ROOM = "cabinets from the front"
"""The view that shows the whole job where it stands."""

Carrier = tuple[float, float, float]
Span = tuple[float, float]


def check_drawings(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold every drawing against the numbers and the parts.

    Args:
        files: the drawings by their path.
        known: the design.
    """
    faults: list[str] = []
    counted = 0
    fronts: list[str] = []
    doors = iter(known.doors or (DrawnDoor(assembly=known.assembly, opening=known.opening),))
    rooms = iter(known.rooms)
    for path, data in sorted(files.items(), key=lambda file: _numbered(file[0])):
        try:
            file = read_drawing(data)
        except (UnreadableError, ValueError) as error:
            faults.append(f"{path}: cannot be read back: {error}")
            continue
        if not file.millimetres:
            faults.append(f"{path}: the header's unit is not the millimetre")
        counted += len(file.dimensions)
        for dimension in file.dimensions:
            faults += in_file(path, _dimension(dimension, file, known))
        for window in file.windows:
            seen = _fronts(window.view, known)
            jambs: tuple[Point, ...] = ()
            if window.view == _JOB:
                door = next(doors, None)
                if door is None:
                    faults.append(f"{path}: shows a door that the design does not have")
                    continue
                seen, jambs = job_fronts(door.assembly), door.opening
            if window.view == _ROOM:
                room = next(rooms, None)
                if room is None:
                    faults.append(f"{path}: shows a room that the design does not have")
                    continue
                seen = room_fronts(known.assembly, room)
            if seen:
                fronts.append(window.view)
                faults += in_file(path, _front_view(window, file, seen, jambs))
    return Verdict(
        looked_at={"drawings": len(files), "dimensions": counted, "fronts": fronts},
        faults=tuple(faults),
    )


def _numbered(path: str) -> tuple[list[str], list[int]]:
    """A path so that sheet 2 comes before sheet 10."""
    return re.split(r"[0-9]+", path), [int(number) for number in re.findall(r"[0-9]+", path)]


# --- dimensions ----------------------------------------------------------------------------


def _dimension(dimension: Dimension, file: DrawingFile, known: Known) -> Iterator[str]:
    shown = " ".join(dimension.shown) or dimension.written
    window = next((w for w in file.windows if w.holds(dimension.a)), None)
    figure = known.figures.get(dimension.figure)
    if figure is None:
        yield f'"{shown}" prints "{dimension.figure}", which is no number of the design'
        return
    value = abs(float(figure))
    named = f'"{shown}" ({dimension.figure})'
    broken = window is not None and _literal(dimension.written) and _broken(dimension, file, window)
    if not broken and abs(dimension.measured - value) > NEAR:
        yield f"{named} measures {dimension.measured:.3f}, the number is {value:.3f}"
    if abs(dimension.stated - value) > NEAR:
        yield f"{named} says it measures {dimension.stated:.3f}, the number is {value:.3f}"
    half = known.mm(max(known.wood_step, known.fine_step)) / 2 + 1e-6
    texts = [*dimension.shown, *([dimension.written] if _literal(dimension.written) else [])]
    for text in texts:
        if not any(abs(abs(v) - value) <= half for v in lengths_in(text, known.unit)):
            yield f"{named}: the text says {text}, the number is {value:.3f}"
    if not dimension.shown:
        yield f"{named} shows no text"
    if not _literal(dimension.written):
        again = _lettered_again(dimension, known)
        if not any(
            abs(abs(v) - again) <= NEAR
            for text in dimension.shown
            for v in lengths_in(text, known.unit)
        ):
            yield f"{named} would be lettered {again / known.mm(Fraction(1)):g} by another program"
    if window is None:
        yield f"{named} stands in no view"
        return
    for point in (dimension.a, dimension.b):
        if not _ends_on_something(dimension, point, file, window):
            yield f"{named} ends where nothing is drawn, at {dimension.along(point):.3f}"


def _lettered_again(dimension: Dimension, known: Known) -> float:
    """What a program prints that measures for itself, mm: by the file's own factor and step."""
    value = dimension.measured * dimension.factor
    if dimension.step > 0:
        value = math.floor(value / dimension.step + 0.5 + 1e-9) * dimension.step
    return value * known.mm(Fraction(1))


def _literal(text: str) -> bool:
    """Whether a text stands in place of the measurement."""
    return bool(text) and "<>" not in text


def _broken(dimension: Dimension, file: DrawingFile, window: Window) -> bool:
    """Whether the thing measured may be drawn shortened: a break line lies across it."""
    low, high = sorted((dimension.along(dimension.a), dimension.along(dimension.b)))
    return any(
        line.layer == "breaks"
        and window.holds(line.a)
        and low < min(dimension.along(line.a), dimension.along(line.b))
        and max(dimension.along(line.a), dimension.along(line.b)) < high
        for line in file.lines
    )


def _ends_on_something(
    dimension: Dimension, point: Point, file: DrawingFile, window: Window
) -> bool:
    """Whether an edge, a corner, a middle or the side of a round lies where a dimension ends."""
    at = dimension.along(point)

    def there(p: Point) -> bool:
        return abs(dimension.along(p) - at) <= NEAR

    for line in file.lines:
        if window.holds(line.a) and (there(line.a) or there(line.b)):
            return True
    for one in file.rounds:
        if window.holds(one.centre) or any(map(window.holds, one.ends)):
            middle = dimension.along(one.centre)
            sides = (middle, middle - one.radius, middle + one.radius)
            if any(abs(side - at) <= NEAR for side in sides) or any(map(there, one.ends)):
                return True
    return any(window.holds(middle) and there(middle) for middle in file.middles)


# --- fronts --------------------------------------------------------------------------------


def _fronts(view: str, known: Known) -> tuple[Front, ...]:
    """The parts that the front of a leaf shows; none for a view that is no leaf's front."""
    group = next((g for g in known.assembly.groups if g.name == view), None)
    return () if group is None else leaf_fronts(group)


def _front_view(
    window: Window, file: DrawingFile, fronts: Sequence[Front], jambs: Sequence[Point]
) -> Iterator[str]:
    """What is drawn of parts from the front, against the parts and the opening they stand in."""
    drawn = [
        Line(
            layer=line.layer,
            a=(line.a[0] - window.zero, line.a[1]),
            b=(line.b[0] - window.zero, line.b[1]),
        )
        for line in file.lines
        if window.holds(line.a)
    ]
    edges: dict[Carrier, list[Span]] = {}
    made = [front for front in fronts if not front.part.supplied]
    sides = [side for front in made for side in (*front.sides, *front.deeper)]
    for a, b in (*sides, *itertools.pairwise(jambs)):
        if math.dist(a, b) > NEAR:
            carrier, span = _carrier(a, b)
            edges.setdefault(carrier, []).append(span)
    edges = {carrier: _joined(spans) for carrier, spans in edges.items()}
    lines: dict[Carrier, list[Span]] = {}
    for line in drawn:
        if math.dist(line.a, line.b) <= NEAR:
            continue
        carrier, span = _carrier(line.a, line.b)
        lines.setdefault(carrier, []).append(span)
        if line.layer in ("edge", "edge_fine"):
            for edge in _joined(_near(edges, carrier)):
                if _meets(span, edge) and not _within(span, edge):
                    yield (
                        f"{window.view}: a line runs from {_told(line.a)} to {_told(line.b)}, "
                        f"past the edge that ends at {_told(_end(carrier, edge, span))}"
                    )
    for front in foremost(fronts):
        for a, b in front.sides:
            carrier, span = _carrier(a, b)
            if not any(_within(span, line) for line in _joined(_near(lines, carrier))):
                yield (
                    f"{window.view}: {front.part.name} is not drawn from {_told(a)} to {_told(b)}"
                )


def _told(point: Point) -> str:
    return f"{round(point[0], 3):g};{round(point[1], 3):g}"


def _carrier(a: Point, b: Point) -> tuple[Carrier, Span]:
    """The endless line through two points, its way and how far it lies off zero; where along it."""
    far = math.dist(a, b)
    ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far
    if ux < -1e-6 or (abs(ux) <= 1e-6 and uy < 0):
        ux, uy = -ux, -uy
    off = ux * a[1] - uy * a[0]
    low, high = sorted((ux * a[0] + uy * a[1], ux * b[0] + uy * b[1]))
    return (round(ux, 4) + 0.0, round(uy, 4) + 0.0, round(off, 2) + 0.0), (low, high)


def _near(spans: Mapping[Carrier, list[Span]], carrier: Carrier) -> list[Span]:
    """The spans on a carrier, and on those a hundredth beside it."""
    ux, uy, off = carrier
    found: list[Span] = []
    for beside in (-0.01, 0.0, 0.01):
        found += spans.get((ux, uy, round(off + beside, 2) + 0.0), [])
    return found


def _joined(spans: Sequence[Span]) -> list[Span]:
    """Touching and overlapping spans as one."""
    joined: list[Span] = []
    for low, high in sorted(spans):
        if joined and low <= joined[-1][1] + NEAR:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return joined


def _meets(span: Span, edge: Span) -> bool:
    return min(span[1], edge[1]) - max(span[0], edge[0]) > NEAR


def _within(span: Span, edge: Span) -> bool:
    return edge[0] - NEAR <= span[0] and span[1] <= edge[1] + NEAR


def _end(carrier: Carrier, edge: Span, span: Span) -> Point:
    """The end of an edge that a line runs past."""
    at = edge[1] if span[1] > edge[1] + NEAR else edge[0]
    ux, uy, off = carrier
    return (ux * at - uy * off, uy * at + ux * off)
