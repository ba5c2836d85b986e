"""What each kind of cut draws: its outline on its own side, dashed through the face, its places.

A kind of cut that is added to the model adds its arm to each match here, and every sheet
draws it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.drawing.part_sheets.drilled_cuts import drilled_lines, drilled_span
from parametric.drawing.part_sheets.moulded_cuts import moulded_lines, moulded_target
from parametric.drawing.part_sheets.screw_pockets import (
    screw_pocket_lines,
    screw_pocket_span,
    screw_pocket_target,
)
from parametric.drawing.part_sheets.shaped_cuts import (
    Bow,
    Line,
    shaped_lines,
    shaped_target,
    span_of,
)
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.pieces import rounded
from parametric.drawing.plane import Point, Polygon
from parametric.model import (
    Cut,
    Drilled,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
    face_size,
    ramp_length,
)
from parametric.trade.moulded_runs import run_sizes

Milled = Slot | Pocket | Groove
"""Cuts that go into one face to a depth, with a middle line."""


def own_side(cut: Cut, part: Unfolded) -> Side:
    """The side on which a cut is seen and wears its balloon."""
    match cut:
        case (
            Slot()
            | Pocket()
            | Groove()
            | Drilled()
            | ScrewPocket()
            | Island()
            | Shaped()
            | Moulded()
        ):
            return part.side(cut.face)
        case Trim() | Mitre() | RaisedBevel() | Tongue() | RoundArrises() | RoundCorners():
            return "face"
        case _:
            assert_never(cut)


def lines_of(cut: Cut, part: Unfolded) -> Iterator[Line | Bow]:
    """Everything that a cut draws."""
    match cut:
        case Slot() | Pocket() | Groove():
            yield from _milled(cut, part)
        case Drilled():
            yield from drilled_lines(cut, part)
        case ScrewPocket():
            yield from screw_pocket_lines(cut, part)
        case Shaped():
            yield from shaped_lines(cut, part)
        case Moulded():
            yield from moulded_lines(cut, part)
        case Trim():
            along = 0.0 if cut.end == "low end" else part.length
            sides: tuple[Side, ...] = ("face", "back", "over", "under")
            for side in sides:
                ends = ((along, 0.0), (along, part.height(side)))
                yield Line(side=side, layer="adjacent", points=ends, closed=False)
        case Mitre():
            yield from _mitre(cut, part)
        case RoundArrises():
            for rise in (float(cut.radius), part.width - float(cut.radius)):
                if 0 < rise < part.width:
                    line = ((-part.foot, rise), (part.length + part.head, rise))
                    yield Line(side="face", layer="edge_fine", points=line, closed=False)
        case RaisedBevel():
            yield from _raised(float(cut.run), part)
        case Tongue():
            reach = float(cut.length)
            ring = rounded(reach, reach, part.length - reach, part.width - reach, 0.0)
            yield Line(side="face", layer="edge_fine", points=ring)
        case RoundCorners():
            ring = rounded(0.0, 0.0, part.length, part.width, float(cut.radius))
            yield Line(side="face", layer="edge", points=ring)
        case Island():
            x, y = float(part.part.blank.length) / 2, part.width / 2
            half, rise = float(cut.length) / 2, float(cut.width) / 2
            ring = rounded(x - half, y - rise, x + half, y + rise, float(cut.corner))
            yield Line(
                side=part.side(cut.face),
                layer="edge",
                points=part.path(cut.face, ring, part.side(cut.face)),
            )
        case _:
            assert_never(cut)


def target(cut: Cut, part: Unfolded) -> Point:
    """Where the leader of a cut's balloon ends, on its own side."""
    match cut:
        case Slot() | Groove():
            side = part.side(cut.face)
            middle = (float(cut.u0) + float(cut.u1)) / 2
            return part.on_face(cut.face, middle, float(cut.v), 0.0, side)
        case Pocket():
            return _pocket_target(cut, part)
        case Drilled():
            return part.on_face(cut.face, cut.u, cut.v, 0.0, part.side(cut.face))
        case ScrewPocket():
            return screw_pocket_target(cut, part)
        case Shaped():
            return shaped_target(cut, part)
        case Moulded():
            return moulded_target(cut, part)
        case Trim():
            off = float(cut.length) / 2
            return (-off if cut.end == "low end" else part.length + off, part.width / 2)
        case Mitre():
            x, y = _mitre_ends(cut, part)
            return ((x[0] + y[0]) / 2, (x[1] + y[1]) / 2)
        case RaisedBevel():
            return (part.length / 2, part.width - float(cut.run) * 0.6)
        case Tongue():
            return (part.length * 0.42, part.width - float(cut.length) / 2)
        case RoundArrises():
            return (part.length / 2, part.width - float(cut.radius) / 2)
        case RoundCorners():
            off = float(cut.radius) * 0.3
            return (part.length - off, part.width - off)
        case Island():
            return (part.length * 0.02, part.width / 2)
        case _:
            assert_never(cut)


def span_along(cut: Cut, part: Unfolded) -> tuple[float, float] | None:
    """From where to where a cut goes along the part; None for one that knows no place along."""
    match cut:
        case Slot() | Groove() if cut.face in ("low end", "high end"):
            return _end_span(cut.face, float(cut.depth), part)
        case Pocket() | Drilled() if cut.face in ("low end", "high end"):
            return _end_span(cut.face, float(cut.depth), part)
        case Slot():
            return (float(cut.u0) - part.foot, float(cut.u1) - part.foot)
        case Groove():
            past = _ramp(cut)
            return (float(cut.u0) - past - part.foot, float(cut.u1) + past - part.foot)
        case Pocket():
            half = float(cut.length) / 2
            return (float(cut.u) - half - part.foot, float(cut.u) + half - part.foot)
        case Drilled():
            return drilled_span(cut, part)
        case ScrewPocket():
            return screw_pocket_span(cut, part)
        case Shaped():
            return span_of(cut, part)
        case Moulded():
            own = run_sizes(cut, part.part.blank)
            return (own.low - part.foot, own.high - part.foot)
        case Trim() if cut.end == "low end":
            return (-float(cut.length), 0.0)
        case Trim():
            return (part.length, part.length + float(cut.length))
        case Mitre() if cut.end == "low end":
            return (0.0, part.width)
        case Mitre():
            return (part.length - part.width, part.length)
        case RaisedBevel() | Tongue() | RoundArrises() | RoundCorners() | Island():
            return None
        case _:
            assert_never(cut)


def shape_on_face(cut: Milled, part: Unfolded) -> Polygon:
    """The outline of a cut on its own face, in the face's u and v."""
    middle, half = float(cut.v), float(cut.width) / 2
    match cut:
        case Slot():
            return rounded(float(cut.u0), middle - half, float(cut.u1), middle + half, half)
        case Pocket():
            long = float(cut.length) / 2
            u = float(cut.u)
            return rounded(u - long, middle - half, u + long, middle + half, float(cut.corner))
        case Groove():
            return _groove(cut, part)
        case _:
            assert_never(cut)


def _groove(cut: Groove, part: Unfolded) -> Polygon:
    """Round where the cutter stops and nobody squares it; a blade's ramps run on past the stops."""
    far = float(face_size(cut.face, part.part.blank)[0])
    low, high, past = float(cut.u0), float(cut.u1), _ramp(cut)
    middle, half = float(cut.v), float(cut.width) / 2
    if past:
        low, high = max(0.0, low - past), min(far, high + past)
    corner = 0.0 if cut.squared or past else min(float(cut.corner), half)
    ring = rounded(low, middle - half, high, middle + half, corner)
    if not corner:
        return ring
    # An end that runs out of the wood is open: square in the picture.
    square = rounded(low, middle - half, high, middle + half, 0.0)
    open_low, open_high = low <= 1e-9, high >= far - 1e-9
    kept = [p for p in ring if not (open_low and p[0] < low + corner + 1e-9)]
    kept = [p for p in kept if not (open_high and p[0] > high - corner - 1e-9)]
    if open_low and open_high:
        return square
    if open_low:
        return (square[0], *kept, square[3])
    if open_high:
        # `rounded` begins at the low right corner, so the two high corners close the ring.
        return (*kept, square[1], square[2]) if kept else square
    return ring


def _ramp(cut: Groove) -> float:
    """How far a saw-stopped groove runs on past each stop."""
    if not float(cut.ramp):
        return 0.0
    return float(ramp_length(float(cut.ramp), float(cut.depth) - float(cut.surface)))


def _milled(cut: Milled, part: Unfolded) -> Iterator[Line]:
    side = part.side(cut.face)
    shape = shape_on_face(cut, part)
    yield Line(side=side, layer="edge", points=part.path(cut.face, shape, side))
    if isinstance(cut, Groove) and _ramp(cut):
        half = float(cut.width) / 2
        for u in (float(cut.u0), float(cut.u1)):
            ends = ((u, float(cut.v) - half), (u, float(cut.v) + half))
            yield Line(
                side=side, layer="edge_fine", points=part.path(cut.face, ends, side), closed=False
            )
    if side in ("face", "back"):
        return
    yield Line(side="face", layer="hidden", points=_through_face(cut, part), closed=False)


def _through_face(cut: Milled, part: Unfolded) -> Polygon:
    """What is dashed on the face of a cut in an edge or an end: its bottom and its sides."""
    match cut:
        case Slot() | Groove():
            low, high = float(cut.u0), float(cut.u1)
        case Pocket():
            low, high = (float(cut.u) + s * float(cut.length) / 2 for s in (-1, 1))
        case _:
            assert_never(cut)
    past = _ramp(cut) if isinstance(cut, Groove) else 0.0
    start, deep = float(cut.surface), float(cut.depth)
    corners = ((low - past, start), (low, deep), (high, deep), (high + past, start))
    v = float(cut.v)
    return tuple(part.on_face(cut.face, u, v, d, "face") for u, d in corners)


def _end_span(face: Face, depth: float, part: Unfolded) -> tuple[float, float]:
    if face == "low end":
        return (0.0, depth - part.foot)
    return (part.length + part.head - depth, part.length)


def _mitre_ends(cut: Mitre, part: Unfolded) -> tuple[Point, Point]:
    """The mitre on the face, from its point to where the short edge begins."""
    keeps_low = (cut.keeps == "low edge") != part.turned
    point, short = (0.0, part.width) if keeps_low else (part.width, 0.0)
    low = cut.end == "low end"
    tip = (0.0 if low else part.length, point)
    return tip, (part.width if low else part.length - part.width, short)


def _mitre(cut: Mitre, part: Unfolded) -> Iterator[Line]:
    yield Line(side="face", layer="edge", points=_mitre_ends(cut, part), closed=False)


def _raised(run: float, part: Unfolded) -> Iterator[Line]:
    """The field, and the hips at 45 degrees from the panel's own corners."""
    long, wide = part.length, part.width
    field = rounded(run, run, long - run, wide - run, 0.0)
    yield Line(side="face", layer="edge", points=field)
    for corner, inner in zip(rounded(0.0, 0.0, long, wide, 0.0), field, strict=True):
        yield Line(side="face", layer="edge_fine", points=(corner, inner), closed=False)


def _pocket_target(cut: Pocket, part: Unfolded) -> Point:
    """In a pocket within a pocket, on the middle; in the one round it, on the rim that is left."""
    inner = any(
        isinstance(other, Pocket)
        and other.face == cut.face
        and float(other.surface) == float(cut.depth)
        for other in part.part.cuts
    )
    side = part.side(cut.face)
    if not inner:
        return part.on_face(cut.face, float(cut.u), float(cut.v), 0.0, side)
    within = min(
        float(other.length)
        for other in part.part.cuts
        if isinstance(other, Pocket)
        and other.face == cut.face
        and float(other.surface) == float(cut.depth)
    )
    u = float(cut.u) + (float(cut.length) + within) / 4
    return part.on_face(cut.face, u, float(cut.v), 0.0, side)
