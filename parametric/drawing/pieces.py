"""Parts where they stand, and what each shows to the front and to a section.

    elevation   seen along +Y, drawn in (X, Z)
    plan        cut level and seen from above, drawn in (X, Y): the wall face is Y = 0
    upright     cut upright and seen from the left, drawn in (-Y, Z): off the wall, up
    flat        cut along the leaf and seen from the front, drawn in (X, Z)

Everything comes from a part's blank, cuts and placement.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.finished_outline import finished_outline, through_cuts
from parametric.drawing.layers import Layer
from parametric.drawing.plane import (
    Point,
    Polygon,
    arc_points,
    around,
    edges,
    grown,
    outside_all,
    swollen,
    without_spikes,
)
from parametric.drawing.shaped import across, flattened, less, open_to
from parametric.model import (
    Assembly,
    Blank,
    Groove,
    Island,
    Mitre,
    Part,
    Placement,
    Pocket,
    RaisedBevel,
    RoundCorners,
    Shaped,
    Slot,
    State,
    Tongue,
    Trim,
    Vector,
    displaced,
)

Plane = Literal["level", "upright", "flat"]
Run = Literal["end", "long across", "long up"]
_CORNER_STEP = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One part where it stands in the world."""

    part: Part
    group: str
    stands: Placement


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A line that a piece shows in a view, mm."""

    layer: Layer
    points: Polygon
    closed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPiece:
    """A piece where a section passes through it: its outline there, and how its grain runs."""

    piece: Piece
    outline: Polygon
    run: Run


def pieces(assembly: Assembly, state: State) -> tuple[Piece, ...]:
    """Every part of the job in one state of its doors."""
    found = []
    for group in assembly.groups:
        stands = displaced(group, state)
        found += [
            Piece(part=part, group=group.name, stands=_stands(stands, part.placement))
            for part in group.parts
        ]
    return tuple(found)


def leaf_pieces(parts: Sequence[Part], group: str) -> tuple[Piece, ...]:
    """The parts of one leaf in the leaf's own frame: heights from its finished foot."""
    return tuple(Piece(part=part, group=group, stands=part.placement) for part in parts)


def _stands(group: Placement, part: Placement) -> Placement:
    return Placement(
        origin=group.point(part.origin), x=group.direction(part.x), y=group.direction(part.y)
    )


def elevation(piece: Piece, x: float, y: float, z: float = 0.0) -> Point:
    """A point of the part as the elevation shows it."""
    world = piece.stands.point((x, y, z))
    return (world[0], world[2])


def section(plane: Plane, world: Vector) -> Point:
    """A point of the world as a section shows it."""
    x, y, z = world
    return {"level": (x, y), "upright": (-y, z), "flat": (x, z)}[plane]


def front(piece: Piece) -> float:
    """How near the viewer the piece comes: the Y of its foremost face."""
    blank = piece.part.blank
    return min(
        piece.stands.point((0.0, y, z))[1]
        for y in (0.0, float(blank.width))
        for z in (0.0, float(blank.thickness))
    )


def high_face_in_front(piece: Piece) -> bool:
    """True when the viewer of the elevation looks at the part's high face."""
    return piece.stands.z[1] < -0.5


def silhouette(piece: Piece) -> Polygon:
    """The finished outline seen in the elevation, mm; of a piece seen on its edge, the box."""
    if abs(piece.stands.z[1]) > 0.5:
        return tuple(elevation(piece, x, y) for x, y in face_outline(piece.part))
    low, high = _trimmed(piece.part)
    far = (float(piece.part.blank.width), float(piece.part.blank.thickness))
    corners = [
        elevation(piece, x, y, z) for x in (low, high) for y in (0.0, far[0]) for z in (0.0, far[1])
    ]
    return around(corners).polygon


def face_outline(part: Part) -> Polygon:
    """The outline of a part's face in its own x and y: trimmed, mitred, rounded, cut to a shape."""
    if through_cuts(part):
        return flattened(finished_outline(part))
    low, high = _trimmed(part)
    wide = float(part.blank.width)
    corners = {
        ("low end", "low edge"): (low, 0.0),
        ("high end", "low edge"): (high, 0.0),
        ("high end", "high edge"): (high, wide),
        ("low end", "high edge"): (low, wide),
    }
    for cut in part.cuts:
        if isinstance(cut, Mitre):
            short = "high edge" if cut.keeps == "low edge" else "low edge"
            x, y = corners[cut.end, short]
            corners[cut.end, short] = (x + wide if cut.end == "low end" else x - wide, y)
        if isinstance(cut, RoundCorners):
            return rounded(low, 0.0, high, wide, float(cut.radius))
    return tuple(corners.values())


def rounded(x0: float, y0: float, x1: float, y1: float, radius: float) -> Polygon:
    """A rectangle with round corners, anticlockwise."""
    if radius <= 0:
        return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    r = min(radius, (x1 - x0) / 2, (y1 - y0) / 2)
    corners = (
        (x1 - r, y0 + r, -90.0),
        (x1 - r, y1 - r, 0.0),
        (x0 + r, y1 - r, 90.0),
        (x0 + r, y0 + r, 180.0),
    )
    points: list[Point] = []
    for cx, cy, start in corners:
        points += arc_points((cx, cy), r, start, start + 90.0, _CORNER_STEP)
    return tuple(points)


def _trimmed(part: Part) -> tuple[float, float]:
    """Where the finished part begins and ends along its length."""
    low = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    high = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "high end")
    return low, float(part.blank.length) - high


def shown_in_front(piece: Piece) -> Iterator[Shown]:
    """What the piece draws in the elevation, nearer pieces not yet taken into account."""
    part = piece.part
    outline, layer = silhouette(piece), outline_layer(piece)
    shaped = any(isinstance(cut, Shaped) and "face" in cut.face for cut in part.cuts)
    if shaped:
        # What is set back from the face, a tongue or a lap, lies behind its neighbours there.
        behind = [swollen(step) for step, _ in set_back(piece)]
        for a, b in edges(outline):
            for p, q in outside_all(a, b, behind):
                yield Shown(layer=layer, points=(p, q))
    else:
        yield Shown(layer=layer, points=outline, closed=True)
    for cut in part.cuts:
        if isinstance(cut, RaisedBevel) and high_face_in_front(piece):
            yield from _raised(piece, part.blank, float(cut.run))
        if isinstance(cut, Pocket) and part.supplied and part.material.look == "metal":
            x, y = float(cut.u), float(cut.v)
            half, side = float(cut.length) / 2, float(cut.width) / 2
            ring = rounded(x - half, y - side, x + half, y + side, float(cut.corner))
            yield Shown(
                layer="edge_fine",
                points=tuple(elevation(piece, *p) for p in ring),
                closed=True,
            )


def set_back(piece: Piece) -> list[tuple[Polygon, float]]:
    """Where wood is taken off the face that the viewer looks at, but not right through, and how deep."""
    face = "high face" if high_face_in_front(piece) else "low face"
    thick = float(piece.part.blank.thickness)
    return [
        (tuple(elevation(piece, *p) for p in flattened(cut.outline)), float(cut.depth))
        for cut in piece.part.cuts
        if isinstance(cut, Shaped) and cut.face == face and float(cut.depth) < thick - 1e-6
    ]


def outline_layer(piece: Piece) -> Layer:
    """The layer that a piece's outline is drawn on."""
    if piece.group == "tracks":
        return "adjacent"
    if any(isinstance(cut, Mitre) for cut in piece.part.cuts):
        return "edge_fine"
    if piece.part.material.look in ("glass", "tape"):
        return "edge_fine"
    return "edge"


def _raised(piece: Piece, blank: Blank, run: float) -> Iterator[Shown]:
    """The field's line, and the hips from the panel's own corners."""
    long, wide = float(blank.length), float(blank.width)
    field = ((run, run), (long - run, run), (long - run, wide - run), (run, wide - run))
    outer = ((0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide))
    yield Shown(layer="edge_fine", points=tuple(elevation(piece, *p) for p in field), closed=True)
    for a, b in zip(outer, field, strict=True):
        yield Shown(layer="edge_fine", points=(elevation(piece, *a), elevation(piece, *b)))


def cut_through(piece: Piece, plane: Plane, at: float) -> CutPiece | None:
    """What a section shows of a piece, None where it misses.

    Args:
        piece: the part where it stands.
        plane: level (a plan), upright, or flat.
        at: the height of a level cut, the X of an upright one, the Y of a flat one, mm.
    """
    part, stands = piece.part, piece.stands
    index = {"upright": 0, "flat": 1, "level": 2}[plane]
    directions = (stands.x, stands.y, stands.z)
    axis = next(i for i, d in enumerate(directions) if abs(d[index]) > 0.5)
    local = (at - stands.origin[index]) / directions[axis][index]
    low, high = _trimmed(part)
    limits = ((low, high), (0.0, float(part.blank.width)), (0.0, float(part.blank.thickness)))
    if not limits[axis][0] < local < limits[axis][1]:
        return None
    if axis == 2:
        points = [stands.point((p, q, local)) for p, q in _faceways(part, local)]
        run: Run = "long across" if abs(stands.x[0]) > 0.5 else "long up"
    elif axis == 0:
        flat = _across(part, local)
        points = [stands.point((local, p, q)) for p, q in flat]
        run = "end"
    else:
        flat = _lengthwise(part)
        points = [stands.point((p, local, q)) for p, q in flat]
        run = "long across" if plane == "level" else "long up"
    return CutPiece(piece=piece, outline=tuple(section(plane, point) for point in points), run=run)


def _across(part: Part, at: float) -> Polygon:
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
                for a, b in across(flattened(cut.outline), at):
                    if float(cut.depth) < thick - 1e-6 or float(cut.surface) > 0:
                        sides.setdefault(cut.face, []).append((a, b, float(cut.depth)))
                    elif a <= low + 1e-6:
                        low = b
                    elif b >= high - 1e-6:
                        high = a
            case Shaped() if "edge" in cut.face:
                for a, b in across(flattened(cut.outline), at):
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


def _faceways(part: Part, at: float) -> Polygon:
    """The section along the face at a depth, in the part's x and y: what is let into edges and ends.

    A panel is taken to be cut through its tongue, whole.
    """
    if any(isinstance(cut, (Mitre, RoundCorners)) for cut in part.cuts):
        return face_outline(part)
    sides: dict[str, list[tuple[float, float, float]]] = {}
    for cut in part.cuts:
        if (
            isinstance(cut, (Groove, Slot))
            and "face" not in cut.face
            and abs(at - float(cut.v)) < float(cut.width) / 2
        ):
            sides.setdefault(cut.face, []).append((float(cut.u0), float(cut.u1), float(cut.depth)))
    ring = _ring(sides, _trimmed(part), (float(part.blank.length), float(part.blank.width)))
    for cut in part.cuts:
        if isinstance(cut, Shaped) and "face" in cut.face:
            behind = at if cut.face == "low face" else float(part.blank.thickness) - at
            ring = less(ring, flattened(cut.outline)) if open_to(cut, behind) else ring
    return ring


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


def _lengthwise(part: Part) -> Polygon:
    """The section along the length through the middle of the width, in the part's x and z."""
    low, high = _trimmed(part)
    profile = _raised_profile(part, float(part.blank.length))
    return profile or (
        (low, 0.0),
        (high, 0.0),
        (high, thick := float(part.blank.thickness)),
        (low, thick),
    )


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


def silhouettes_nearer(all_pieces: Sequence[Piece], than: float) -> list[Polygon]:
    """The outlines of all pieces that lie nearer the viewer than a Y."""
    return [grown(silhouette(p)) for p in all_pieces if front(p) < than - 1e-6]
