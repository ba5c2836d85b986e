"""What a section shows of a part, in the part's own axes: across it, along its face, along its middle."""

from __future__ import annotations

import itertools
import math

from parametric.drawing import shaped
from parametric.drawing.finished_outline import bevels, through_cuts
from parametric.drawing.moulded_fronts import goes_over_stiles
from parametric.drawing.moulded_sections import ends_along, past_the_shoulders, run_across
from parametric.drawing.plane import Point, Polygon, rectangle, without_spikes
from parametric.drawing.shaped import flattened, less, open_to
from parametric.model import (
    Blank,
    Drilled,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundCorners,
    Shaped,
    Slot,
    Tongue,
    Trim,
)
from parametric.trade.moulded_runs import shoulders

_HAIR = 1e-6
"""mm."""


def trimmed(part: Part) -> tuple[float, float]:
    """Where the finished part begins and ends along its length."""
    low = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    high = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "high end")
    return low, float(part.blank.length) - high


def across(part: Part, at: float) -> Polygon:
    """The section square to the length, in the part's y and z."""
    wide, thick = float(part.blank.width), float(part.blank.thickness)
    profile = _raised_profile(part, wide)
    if profile:
        return profile
    sides: dict[str, list[tuple[float, float, float]]] = {}
    low, high = 0.0, wide
    ends: list[Polygon] = []
    for cut in part.cuts:
        match cut:
            case Shaped() if "face" in cut.face:
                for a, b in shaped.across(flattened(cut.outline), at):
                    if float(cut.surface) > 0:
                        z0, z1 = float(cut.surface), float(cut.depth)
                        if cut.face == "high face":
                            z0, z1 = thick - z1, thick - z0
                        ends.append(rectangle(a, z0, b, z1))
                    elif float(cut.depth) < thick - 1e-6:
                        sides.setdefault(cut.face, []).append((a, b, float(cut.depth)))
                    elif a <= low + 1e-6:
                        low = b
                    elif b >= high - 1e-6:
                        high = a
            case Shaped() if "edge" in cut.face:
                for a, b in shaped.across(flattened(cut.outline), at):
                    sides.setdefault(cut.face, []).append((a, b, float(cut.depth)))
            case Shaped() if "end" in cut.face:
                behind = at if cut.face == "low end" else float(part.blank.length) - at
                ends += [flattened(cut.outline)] if open_to(cut, behind) else []
            case Groove() | Slot() if float(cut.u0) <= at <= float(cut.u1):
                middle, half = float(cut.v), float(cut.width) / 2
                sides.setdefault(cut.face, []).append(
                    (middle - half, middle + half, float(cut.depth))
                )
            case Pocket() if abs(at - float(cut.u)) < float(cut.length) / 2:
                middle, half = float(cut.v), float(cut.width) / 2
                sides.setdefault(cut.face, []).append(
                    (middle - half, middle + half, float(cut.depth))
                )
            case Drilled() if "end" not in cut.face:
                for u, middle in cut.places:
                    if abs(at - u) < (radius := float(cut.diameter) / 2):
                        half = math.sqrt(radius**2 - (at - u) ** 2)
                        notch = (middle - half, middle + half, float(cut.depth))
                        sides.setdefault(cut.face, []).append(notch)
            case Moulded() if (taken := run_across(cut, at, thick)) is not None:
                ends.append(taken)
            case Island():
                sides.setdefault(cut.face, []).extend(_round_island(cut, at, part.blank))
            case _:
                pass
    ring: list[Point] = []
    ring += [(p, d) for p, d in _steps(sides.get("low face", []), wide)]
    ring += [(wide - d, q) for q, d in _steps(sides.get("high edge", []), thick)]
    ring += [(p, thick - d) for p, d in reversed(_steps(sides.get("high face", []), wide))]
    ring += [(d, q) for q, d in reversed(_steps(sides.get("low edge", []), thick))]
    left = without_spikes(tuple(dict.fromkeys((min(max(p, low), high), q) for p, q in ring)))
    for taken in ends:
        left = less(left, taken)
    return left


def _round_island(cut: Island, at: float, blank: Blank) -> list[tuple[float, float, float]]:
    """What an island's cut takes from its face here, as notches across the width."""
    wide, middle = float(blank.width), float(blank.width) / 2
    half, depth = float(cut.width) / 2, float(cut.depth)
    if abs(at - float(blank.length) / 2) > float(cut.length) / 2:
        return [(0.0, wide, depth)]
    return [(0.0, middle - half, depth), (middle + half, wide, depth)]


def _steps(notches: list[tuple[float, float, float]], length: float) -> list[tuple[float, float]]:
    """A side with its notches, from 0 to its length, as (along, depth) corner by corner."""
    stops = sorted({0.0, length, *(n[0] for n in notches), *(n[1] for n in notches)})
    steps: list[tuple[float, float]] = []
    for low, high in itertools.pairwise(stops):
        middle = (low + high) / 2
        depth = max((d for a, b, d in notches if a < middle < b), default=0.0)
        steps += [(low, depth), (high, depth)]
    return steps


def faceways(part: Part, at: float, outline: Polygon) -> Polygon:
    """The section along the face at a depth, in the part's x and y: what is let into edges and ends.

    A panel is taken to be cut through its tongue, whole.
    """
    if any(isinstance(cut, (Mitre, RoundCorners)) for cut in part.cuts):
        return outline
    sides: dict[str, list[tuple[float, float, float]]] = {}
    for cut in part.cuts:
        if (
            isinstance(cut, (Groove, Slot))
            and "face" not in cut.face
            and abs(at - float(cut.v)) < float(cut.width) / 2
        ):
            sides.setdefault(cut.face, []).append((float(cut.u0), float(cut.u1), float(cut.depth)))
    low, high = trimmed(part)
    if goes_over_stiles(part):
        first, last = shoulders(part.blank, part.cuts)
        low, high = max(low, first), min(high, last)
    ring = _ring(sides, (low, high), (float(part.blank.length), float(part.blank.width)))
    for cut in part.cuts:
        if isinstance(cut, Shaped) and "face" in cut.face and not past_the_shoulders(cut, part):
            behind = at if cut.face == "low face" else float(part.blank.thickness) - at
            ring = less(ring, flattened(cut.outline)) if open_to(cut, behind) else ring
        elif isinstance(cut, Shaped) and bevels(cut, part):
            for x0, x1 in shaped.across(_turned(flattened(cut.outline)), at):
                ring = less(ring, rectangle(x0, 0.0, x1, float(part.blank.width)))
    return ring


def _turned(outline: Polygon) -> Polygon:
    """An outline with its two ways changed over, still anticlockwise."""
    return tuple((y, x) for x, y in reversed(outline))


def _ring(
    sides: dict[str, list[tuple[float, float, float]]],
    kept: tuple[float, float],
    size: tuple[float, float],
) -> Polygon:
    """A blank cut along its face: trimmed to what is kept, less what is let into edges and ends.

    Depths count from the blank's own sides; an end begins where the edge beside it has wood.
    """
    low, high = kept
    long, wide = size

    def edge(face: str, corner: int) -> list[tuple[float, float]]:
        start, end = (_steps(sides.get(f"{e} end", []), wide)[corner][1] for e in ("low", "high"))
        a, b = max(low, start), min(high, long - end)
        return [(max(a, min(x, b)), d) for x, d in _steps(sides.get(face, []), long)]

    bottom = edge("low edge", 0)
    top = [(x, wide - d) for x, d in edge("high edge", -1)]

    def end(face: str, under: float, over: float) -> list[tuple[float, float]]:
        steps = _steps(sides.get(face, []), wide)
        return [(d, min(max(y, under), over)) for y, d in steps]

    right = [(min(high, long - d), y) for d, y in end("high end", bottom[-1][1], top[-1][1])]
    left = [(max(low, d), y) for d, y in end("low end", bottom[0][1], top[0][1])]
    return tuple(dict.fromkeys((*bottom, *right, *reversed(top), *reversed(left))))


def lengthwise(part: Part, at: float) -> Polygon:
    """The section along the length at a place across the width, in the part's x and z.

    What is let into the ends is shown as it is in the middle of the width.
    """
    low, high = trimmed(part)
    thick = float(part.blank.thickness)
    ring = _raised_profile(part, float(part.blank.length)) or (
        (low, 0.0),
        (high, 0.0),
        (high, thick),
        (low, thick),
    )
    for taken in ends_along(part):
        ring = less(ring, taken)
    for cut in part.cuts:
        if not isinstance(cut, Shaped):
            continue
        if bevels(cut, part):
            ring = less(ring, flattened(cut.outline))
        elif cut in through_cuts(part):
            for x0, x1 in shaped.across(_turned(flattened(cut.outline)), at):
                # a hole between the ends would leave two pieces, and a section shows one
                if x0 <= low + _HAIR or x1 >= high - _HAIR:
                    ring = less(ring, rectangle(x0, 0.0, x1, thick))
    return ring


def _raised_profile(part: Part, long: float) -> Polygon:
    """The outline of a raised panel cut through its middle; empty for any other part."""
    bevel = next((c for c in part.cuts if isinstance(c, RaisedBevel)), None)
    tongue = next((c for c in part.cuts if isinstance(c, Tongue)), None)
    if bevel is None or tongue is None:
        return ()
    thick, reach = float(part.blank.thickness), float(tongue.length)
    low, high = float(tongue.back), float(tongue.back + tongue.thickness)
    shoulder = float(tongue.edge + tongue.slope * tongue.length)
    run, foot = float(bevel.run), float(bevel.foot)
    half = (
        (reach, 0.0),
        (reach, low),
        (0.0, low),
        (0.0, high),
        (reach, high),
        (reach, shoulder),
        (run, foot),
        (run, thick),
    )
    return (*half, *((long - x, z) for x, z in reversed(half)))
