"""Parts where they stand, and what each shows to the front and to a section.

    elevation   seen along +Y, drawn in (X, Z)
    plan        cut level and seen from above, drawn in (X, Y): the wall face is Y = 0
    upright     cut upright and seen from the left, drawn in (-Y, Z): off the wall, up
    flat        cut along the leaf and seen from the front, drawn in (X, Z)

Everything comes from a part's blank, cuts and placement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.finished_outline import edge_outline, finished_outline, through_cuts
from parametric.drawing.layers import Layer
from parametric.drawing.moulded_fronts import (
    edge_runs,
    goes_over_stiles,
    moulding_lines,
    of_a_moulding,
)
from parametric.drawing.part_sections import across, faceways, lengthwise, trimmed
from parametric.drawing.plane import (
    Box,
    Point,
    Polygon,
    arc_points,
    around,
    edges,
    grown,
    hull,
    outside_all,
    rectangle,
    swollen,
)
from parametric.drawing.shaped import across as across_at
from parametric.drawing.shaped import flattened
from parametric.model import (
    Assembly,
    Blank,
    Face,
    Mitre,
    Part,
    Placement,
    Pocket,
    RaisedBevel,
    RoundCorners,
    Shaped,
    State,
    Vector,
    displaced,
)

Plane = Literal["level", "upright", "flat"]
Run = Literal["end", "long across", "long up"]
_CORNER_STEP = 0.5
_HAIR = 1e-3
_UNDER = 1e-4
"""mm"""


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """A piece as it stands before others in an elevation: how near the viewer, its outline there.

    `box` goes a hair past the outline.
    """

    piece: Piece
    front: float
    outline: Polygon
    box: Box


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
    """How near the viewer the piece comes: the Y of its foremost face.

    A moulded stile lies behind the rails that go over it, by as little as makes them seen. What
    stands aslant, or lies level and is cut to a shape, is taken where its middle is: its foremost
    corner may stand before what covers the rest of it.
    """
    blank = piece.part.blank
    if _goes_back(piece):
        sizes = (blank.length, blank.width, blank.thickness)
        x, y, z = (float(size) / 2 for size in sizes)
        return piece.stands.point((x, y, z))[1]
    near = min(
        piece.stands.point((0.0, y, z))[1]
        for y in (0.0, float(blank.width))
        for z in (0.0, float(blank.thickness))
    )
    under = bool(edge_runs(piece.part)) and not goes_over_stiles(piece.part)
    return near + _UNDER if under else near


def _goes_back(piece: Piece) -> bool:
    """Whether a piece stands aslant to the viewer, or lies level and is cut to a shape."""
    stands = piece.stands
    aslant = any(1e-9 < abs(way[1]) < 1 - 1e-9 for way in (stands.x, stands.y, stands.z))
    level = abs(stands.z[2]) > 1 - 1e-9
    return (aslant and abs(stands.x[2] + stands.y[2] + stands.z[2]) > 1 - 1e-9) or (
        level and bool(through_cuts(piece.part))
    )


def high_face_in_front(piece: Piece) -> bool:
    """True when the viewer of the elevation looks at the part's high face."""
    return piece.stands.z[1] < -0.5


def silhouette(piece: Piece) -> Polygon:
    """The finished outline seen in the elevation, mm; of a piece seen on its end, the box."""
    if abs(piece.stands.z[1]) > 0.5:
        near = tuple(elevation(piece, x, y) for x, y in face_outline(piece.part))
        return near if _faces_the_viewer(piece) else hull((*near, *_far_face(piece)))
    if _seen_on_its_edge(piece):
        return tuple(elevation(piece, x, 0.0, z) for x, z in flattened(edge_outline(piece.part)))
    low, high = trimmed(piece.part)
    far = (float(piece.part.blank.width), float(piece.part.blank.thickness))
    corners = [
        elevation(piece, x, y, z) for x in (low, high) for y in (0.0, far[0]) for z in (0.0, far[1])
    ]
    return around(corners).polygon


def _seen_on_its_edge(piece: Piece) -> bool:
    return abs(piece.stands.y[1]) > 0.5


def _faces_the_viewer(piece: Piece) -> bool:
    """Whether it is seen straight on, so that its two faces cover one another."""
    return abs(piece.stands.z[1]) > 1 - 1e-9


def _far_face(piece: Piece) -> Polygon:
    """The outline of its high face, of a piece that is seen aslant."""
    thick = float(piece.part.blank.thickness)
    return tuple(elevation(piece, x, y, thick) for x, y in face_outline(piece.part))


def face_outline(part: Part) -> Polygon:
    """The outline of a part's face in its own x and y: trimmed, mitred, rounded, cut to a shape."""
    if through_cuts(part) or goes_over_stiles(part):
        return flattened(finished_outline(part))
    low, high = trimmed(part)
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


def shown_in_front(piece: Piece) -> Iterator[Shown]:
    """What the piece draws in the elevation, nearer pieces not yet taken into account."""
    part = piece.part
    outline, layer = silhouette(piece), outline_layer(piece)
    face: Face = "high face" if high_face_in_front(piece) else "low face"
    for line in moulding_lines(part, face):
        yield Shown(layer="edge_fine", points=tuple(elevation(piece, *p) for p in line))
    shaped = any(isinstance(cut, Shaped) and "face" in cut.face for cut in part.cuts)
    shaped = shaped or goes_over_stiles(part) or (len(outline) > 4 and _seen_on_its_edge(piece))
    if shaped:
        # What is set back from the face, a tongue or a lap, lies behind its neighbours there.
        behind = [swollen(step) for step, _ in set_back(piece)]
        for a, b in edges(outline):
            for p, q in outside_all(a, b, behind):
                yield Shown(layer=layer, points=(p, q))
    else:
        yield Shown(layer=layer, points=outline, closed=True)
    if abs(piece.stands.z[1]) > 0.5 and not _faces_the_viewer(piece):
        # of what is seen aslant, the edges of the nearer face too
        thick = float(part.blank.thickness) if face == "high face" else 0.0
        ring = tuple(elevation(piece, x, y, thick) for x, y in face_outline(part))
        yield Shown(layer=layer, points=ring, closed=True)
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
        if isinstance(cut, Shaped)
        and cut.face == face
        and float(cut.depth) < thick - 1e-6
        and not of_a_moulding(cut, piece.part)
    ]


def outline_layer(piece: Piece) -> Layer:
    """The layer that a piece's outline is drawn on."""
    bought = piece.part.supplied and piece.part.material.look == "board"
    if piece.group == "tracks" or bought:
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
    if _leans(piece):
        return _cut_leaning(piece, plane, at)
    index = {"upright": 0, "flat": 1, "level": 2}[plane]
    directions = (stands.x, stands.y, stands.z)
    axis = next(i for i, d in enumerate(directions) if abs(d[index]) > 0.5)
    local = (at - stands.origin[index]) / directions[axis][index]
    low, high = trimmed(part)
    limits = ((low, high), (0.0, float(part.blank.width)), (0.0, float(part.blank.thickness)))
    if not limits[axis][0] < local < limits[axis][1]:
        return None
    if axis == 2:
        points = [stands.point((p, q, local)) for p, q in faceways(part, local, face_outline(part))]
        run: Run = "long across" if abs(stands.x[0]) > 0.5 else "long up"
    elif axis == 0:
        flat = across(part, local)
        points = [stands.point((local, p, q)) for p, q in flat]
        run = "end"
    else:
        flat = lengthwise(part, local)
        points = [stands.point((p, local, q)) for p, q in flat]
        run = "long across" if plane == "level" else "long up"
    return CutPiece(piece=piece, outline=tuple(section(plane, point) for point in points), run=run)


def _leans(piece: Piece) -> bool:
    """Whether a piece runs neither level nor plumb in the elevation, as a board under a slope does."""
    x, _, z = piece.stands.x
    return abs(x) > _HAIR and abs(z) > _HAIR


def _cut_leaning(piece: Piece, plane: Plane, at: float) -> CutPiece | None:
    """What a section shows of a board that leans: its outline where the section meets it, as deep as it is."""
    outline = silhouette(piece)
    blank = piece.part.blank
    depths = [
        piece.stands.point((0.0, y, z))[1]
        for y in (0.0, float(blank.width))
        for z in (0.0, float(blank.thickness))
    ]
    near, far = min(depths), max(depths)
    points: Polygon
    if plane == "flat":
        if not near < at < far:
            return None
        return CutPiece(piece=piece, outline=outline, run="long across")
    if plane == "upright":
        meets = across_at(outline, at)
        points = rectangle(-far, meets[0][0], -near, meets[0][1]) if meets else ()
    else:
        meets = across_at(tuple((z, x) for x, z in outline), at)
        points = rectangle(meets[0][0], near, meets[0][1], far) if meets else ()
    run: Run = "end" if plane == "upright" else "long across"
    return CutPiece(piece=piece, outline=points, run=run) if points else None


def covers(all_pieces: Sequence[Piece]) -> tuple[Cover, ...]:
    """What each piece can hide of those behind it, worked out once for a whole view."""
    found = []
    for piece in all_pieces:
        outline = grown(silhouette(piece))
        found.append(
            Cover(
                piece=piece, front=front(piece), outline=outline, box=around(outline).grown(_HAIR)
            )
        )
    return tuple(found)


def nearer(
    found: Iterable[Cover], than: float, over: Sequence[Point], *, but: Piece | None = None
) -> list[Polygon]:
    """The outlines of what lies nearer the viewer than a Y and may lie over some points.

    Args:
        found: what is in the view.
        than: how near, mm.
        over: corners of the line or the shape that may be hidden.
        but: a piece that does not count.
    """
    box = around(over)
    return [
        cover.outline
        for cover in found
        if cover.front < than - 1e-6 and cover.box.meets(box) and cover.piece is not but
    ]
