"""Machine files against the parts: every cut of every face, where and as deep as the part has it.

A file says in words which face is up and which faces lie along x = 0 and y = 0. From these
words alone the file's outlines are put back into the piece, and compared there with the
part's cuts; so a mirrored width or a datum that is not where it is said to be shows.
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.model import FACES, Face, Group, Part, Vector, face_depth, face_point
from parametric.pack.verifying.boxes import Box, leaf_box
from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.expected import in_leaf_files, in_part_files, outwards
from parametric.pack.verifying.hollows import Hollow, wood
from parametric.pack.verifying.known import Known, in_file
from parametric.pack.verifying.machine_file import (
    NEAR,
    PRINTED,
    MachineFile,
    Taken,
    read_machine_file,
)
from parametric.pack.verifying.shoulders import between_shoulders

_WAYS = ("x", "y", "z")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lie:
    """How a piece lies on the bed: its datum corner, the file's x and y, and up, in the piece."""

    origin: Vector
    x: Vector
    y: Vector
    up: Vector

    def point(self, x: float, y: float, depth: float) -> Vector:
        """A point of the file, in the piece."""
        at = [self.origin[i] + x * self.x[i] + y * self.y[i] - depth * self.up[i] for i in range(3)]
        return (at[0], at[1], at[2])


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """A hollow as a body in the piece: its box, its middle and its volume.

    `marks` are the corners of its rim and the middles of its arcs; the part gives them of a
    shape alone, since a rectangle is fixed by the rest.
    """

    what: str
    part: str
    box: Box
    middle: Vector
    volume: float
    area: float
    marks: tuple[Vector, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Machined:
    """What the machine files of a pack do: the set-ups, the faults, mm3 taken from each part."""

    files: tuple[MachineFile, ...]
    outlines: int
    faults: tuple[str, ...]
    taken: Mapping[str, float]


def machine_files(files: Mapping[str, bytes], known: Known) -> Machined:
    """Read every machine file and hold it against the parts it is run on.

    Args:
        files: the DXF files of the pack's `cnc` folder by name.
        known: the design.
    """
    read: list[MachineFile] = []
    faults: list[str] = []
    shoulders = {
        part.name: _past_shoulders(part) for parts in known.made().values() for part in parts
    }
    for name, data in files.items():
        try:
            file = read_machine_file(name, data, known.layers, shoulders)
        except (UnreadableError, ValueError) as error:
            faults.append(f"{name}: cannot be read back: {error}")
            continue
        read.append(file)
        faults += in_file(name, file.faults)
        if known.mark not in file.words:
            faults.append(f"{name}: does not carry the fingerprint {known.mark}")
    taken: dict[str, float] = {}
    faults += _part_files(read, known, taken)
    faults += _leaf_files(read, known, taken)
    return Machined(
        files=tuple(read),
        outlines=sum(len(file.taken) for file in read),
        faults=tuple(faults),
        taken=taken,
    )


def _past_shoulders(part: Part) -> tuple[float, float, float]:
    """How much of a part's two ends lies past a shoulder, alike whichever end is read first.

    The least of both: a part that has a shoulder at one end alone is read as if it had none.
    """
    long = float(part.blank.length)
    low, high = between_shoulders(part, (0.0, long))
    past = min(low, long - high)
    return (past, past, long)


def face_called(part: Part, word: str) -> Face | None:
    """The face of a part that a word means: the shop's word for one face alone, or the plain one."""
    called = [face for face in FACES if part.faces.get(face, face) == word]
    if len(called) == 1:
        return called[0]
    return next((face for face in FACES if face == word), None)


# --- loose parts ---------------------------------------------------------------------------


def _part_files(
    read: Sequence[MachineFile], known: Known, taken: dict[str, float]
) -> Iterator[str]:
    names = {part.name for parts in known.made().values() for part in parts}
    groups = {group.name for group in known.assembly.groups}
    for file in read:
        unknown = [n for n in file.names if n not in names and n not in groups]
        yield from in_file(file.name, (f"there is no piece called {n}" for n in unknown))
    for mark, parts in known.made().items():
        part = parts[0]
        own = [p.name for p in parts]
        wanted = in_part_files(part)
        for file in (f for f in read if set(own) & set(f.names)):
            if sorted(file.names) != sorted(own):
                yield f"{file.name}: is run on {len(file.names)} pieces, {mark} is {len(parts)} off"
            face = face_called(part, file.face_up)
            lie = None if face is None else _lie_of_part(part, face, file)
            if face is None or lie is None or isinstance(lie, str):
                yield f"{file.name}: {lie or f'{mark} has no face called {file.face_up}'}"
                continue
            if not file.title.startswith(f"{mark} "):
                yield f"{file.name}: is called {file.title}, and is run on {mark}"
            want = [_hole_of_part(part, hollow) for hollow in wanted.pop(face, [])]
            waste = _waste_before(part, face)
            made = [
                _hole_of_file(lie, dataclasses.replace(cut, begins=max(cut.begins, waste)))
                for cut in file.taken
            ]
            yield from in_file(file.name, _differences(want, made, lie))
            for name in own:
                taken[name] = taken.get(name, 0.0) + sum(hole.volume for hole in made)
        for face, missing in wanted.items():
            yield f"{mark}: no file cuts its {part.faces.get(face, face)} ({len(missing)} cuts)"


def _waste_before(part: Part, face: Face) -> float:
    """How far behind an end the wood between the shoulders begins, mm; 0 behind every other face."""
    (first, last), (low, high) = wood(part), between_shoulders(part, wood(part))
    return {"low end": low - first, "high end": last - high}.get(face, 0.0)


def _lie_of_part(part: Part, face: Face, file: MachineFile) -> Lie | str:
    """How the words say the part lies; a sentence when it cannot lie so."""
    left, foot = face_called(part, file.x_from), face_called(part, file.y_from)
    if left is None or foot is None:
        return f"{part.mark} has no {file.x_from if left is None else file.y_from}"
    kinds = {f.split()[1] for f in (face, left, foot)}
    if len(kinds) != 3:
        return f"{file.x_from} and {file.y_from} do not bound the {file.face_up}"
    size = (float(part.blank.length), float(part.blank.width), float(part.blank.thickness))
    corner = [0.0, 0.0, 0.0]
    for bound in (face, left, foot):
        axis = ("end", "edge", "face").index(bound.split()[1])
        corner[axis] = size[axis] if bound.startswith("high") else 0.0
    lie = Lie(
        origin=(corner[0], corner[1], corner[2]),
        x=_against(outwards(left)),
        y=_against(outwards(foot)),
        up=outwards(face),
    )
    return _sized(lie, size, file)


def _sized(lie: Lie, size: Vector, file: MachineFile) -> Lie | str:
    """A lie that is no mirror image, and whose stock is the piece; else a sentence."""
    if _cross(lie.x, lie.y) != lie.up:
        return "x, y and the face up make a mirror image of the piece"
    for way, said, what in (
        (lie.x, file.length, "long"),
        (lie.y, file.width, "wide"),
        (lie.up, file.thickness, "thick"),
    ):
        true = sum(abs(w) * s for w, s in zip(way, size, strict=True))
        if abs(true - said) > PRINTED:
            return f"the stock is {said:g} {what}, the piece {true:g}"
    return lie


def _against(way: Vector) -> Vector:
    return (0.0 - way[0], 0.0 - way[1], 0.0 - way[2])


def _cross(a: Vector, b: Vector) -> Vector:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def _hole_of_part(part: Part, hollow: Hollow) -> Hole:
    u0, v0, u1, v1 = hollow.reach
    corners = [
        face_point(hollow.face, part.blank, u, v, depth)
        for u, v, depth in ((u0, v0, hollow.begins), (u1, v1, hollow.floor))
    ]
    u, v = hollow.middle
    middle = face_point(hollow.face, part.blank, u, v, (hollow.begins + hollow.floor) / 2)
    marks = [face_point(hollow.face, part.blank, u, v, hollow.begins) for u, v in hollow.marks]
    return _hole(hollow, corners, middle, marks)


def _hole(
    hollow: Hollow, corners: Sequence[Vector], middle: Vector, marks: Sequence[Vector]
) -> Hole:
    return Hole(
        what=hollow.cut,
        part=hollow.part,
        box=_box(corners),
        middle=middle,
        volume=hollow.volume,
        area=hollow.area,
        marks=tuple(marks),
    )


def _box(corners: Sequence[Vector]) -> Box:
    a, b = corners
    return (
        (min(a[0], b[0]), min(a[1], b[1]), min(a[2], b[2])),
        (max(a[0], b[0]), max(a[1], b[1]), max(a[2], b[2])),
    )


def _hole_of_file(lie: Lie, cut: Taken) -> Hole:
    x0, y0, x1, y1 = cut.outline.bounds
    x, y = cut.outline.middle
    corners = (lie.point(x0, y0, cut.begins), lie.point(x1, y1, cut.floor))
    return Hole(
        what=cut.layer,
        part="",
        box=_box(corners),
        middle=lie.point(x, y, (cut.begins + cut.floor) / 2),
        volume=cut.volume,
        area=cut.outline.area,
        marks=tuple(lie.point(x, y, cut.begins) for x, y in cut.outline.marks),
    )


# --- glued leaves --------------------------------------------------------------------------


def _leaf_files(
    read: Sequence[MachineFile], known: Known, taken: dict[str, float]
) -> Iterator[str]:
    for group in known.assembly.groups:
        wanted = in_leaf_files(group)
        for file in (f for f in read if group.name in f.names):
            holes = wanted.pop(file.face_up, [])
            lie = _lie_of_leaf(group, file, holes)
            if isinstance(lie, str):
                yield f"{file.name}: {lie}"
                continue
            want = [_hole_of_leaf(part, hollow) for hollow, part in holes]
            made = [_hole_of_file(lie, cut) for cut in file.taken]
            yield from in_file(file.name, _differences(want, made, lie))
            for hole in made:
                owner = _owner(hole, holes)
                taken[owner] = taken.get(owner, 0.0) + hole.volume
        for side, missing in wanted.items():
            yield f"{group.name}: no file cuts its {side} ({len(missing)} cuts)"


def _lie_of_leaf(
    group: Group, file: MachineFile, holes: Sequence[tuple[Hollow, Part]]
) -> Lie | str:
    """How the words say the leaf lies: its finished foot at y = 0, its left at x = 0.

    What lies under the cutter is the part that is cut; other parts may be thinner or stand
    proud of it.
    """
    side = file.face_up
    said = (file.x_from, file.y_from)
    if not holes or file.names != (group.name,):
        return f"{file.title} has nothing to cut in its {side}"
    if said != (f"left edge as seen on the {side}", "finished foot"):
        return f"the datum is said to be at {said[0]} and {said[1]}"
    low, high = leaf_box(group)
    near, far = _under_the_cutter(holes)
    size = (high[0] - low[0], far - near, high[2] - low[2])
    if side == "front":
        origin, x, up = (low[0], near, low[2]), (1.0, 0.0, 0.0), (0.0, -1.0, 0.0)
    else:
        origin, x, up = (high[0], far, low[2]), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)
    return _sized(Lie(origin=origin, x=x, y=(0.0, 0.0, 1.0), up=up), size, file)


def _under_the_cutter(holes: Sequence[tuple[Hollow, Part]]) -> tuple[float, float]:
    """Between which Y the wood that is cut lies in the leaf."""
    ends = [
        part.placement.point(face_point(hollow.face, part.blank, 0.0, 0.0, depth))[1]
        for hollow, part in holes
        for depth in (0.0, float(face_depth(hollow.face, part.blank)))
    ]
    return min(ends), max(ends)


def _hole_of_leaf(part: Part, hollow: Hollow) -> Hole:
    in_part = _hole_of_part(part, hollow)
    low, high = (part.placement.point(corner) for corner in in_part.box)
    marks = [part.placement.point(mark) for mark in in_part.marks]
    return _hole(hollow, (low, high), part.placement.point(in_part.middle), marks)


def _owner(hole: Hole, holes: Sequence[tuple[Hollow, Part]]) -> str:
    """The part out of which a hole of a leaf is cut: the one whose own hole lies nearest."""
    nearest = (
        min((_how_far(hole, _hole_of_leaf(part, hollow)), part.name) for hollow, part in holes)
        if holes
        else (0.0, "")
    )
    return nearest[1]


# --- differences ---------------------------------------------------------------------------


def _how_far(a: Hole, b: Hole) -> float:
    return sum(
        abs(p - q)
        for one, other in zip(a.box, b.box, strict=True)
        for p, q in zip(one, other, strict=True)
    )


def _differences(want: Sequence[Hole], made: Sequence[Hole], lie: Lie) -> Iterator[str]:
    """What a set-up leaves undone, does that it should not, or does otherwise."""
    pairs = sorted(
        (_how_far(want[i], made[j]), i, j)
        for i, j in itertools.product(range(len(want)), range(len(made)))
    )
    met: dict[int, int] = {}
    for _, i, j in pairs:
        if i not in met and j not in met.values():
            met[i] = j
    for i, hole in enumerate(want):
        if i not in met:
            yield f"{hole.what} of {hole.part} is missing"
        else:
            yield from _difference(hole, made[met[i]], lie)
    for j, hole in enumerate(made):
        if j not in met.values():
            yield f"{hole.what} at {_places(hole, lie)} is not in the part"


def _difference(want: Hole, made: Hole, lie: Lie) -> Iterator[str]:
    named = f"{want.what} of {want.part}"
    deep = [_extent(hole, lie.up) for hole in (want, made)]
    if abs(deep[0] - deep[1]) > NEAR:
        yield f"{named} is {deep[1]:g} deep, the part has {deep[0]:g}"
    elif _how_far(want, made) > NEAR:
        yield f"{named} lies at {_places(made, lie)}, the part has it at {_places(want, lie)}"
    sides = _extent(want, lie.x) + _extent(want, lie.y)
    if abs(want.area - made.area) > 2 * NEAR * sides:
        yield f"{named} is {made.area:.2f} mm2 of outline, the part has {want.area:.2f}"
    elif max(abs(a - b) for a, b in zip(want.middle, made.middle, strict=True)) > NEAR:
        yield f"{named} has its corners at the wrong end"
    elif want.marks and (off := _off(want.marks, made.marks) or _off(made.marks, want.marks)):
        yield f"{named} is another shape: it differs at {'; '.join(f'{at:g}' for at in off)}"


def _off(marks: Sequence[Vector], others: Sequence[Vector]) -> Vector | None:
    """A mark that none of the others lies on."""
    return next(
        (
            mark
            for mark in marks
            if all(max(abs(p - q) for p, q in zip(mark, o, strict=True)) > NEAR for o in others)
        ),
        None,
    )


def _extent(hole: Hole, way: Vector) -> float:
    return sum(
        abs(w) * (high - low) for w, low, high in zip(way, hole.box[0], hole.box[1], strict=True)
    )


def _places(hole: Hole, lie: Lie) -> str:
    """Where a hole lies, as the file's x and y from its datum corner, mm."""
    spans = []
    for way in (lie.x, lie.y):
        ends = [
            sum(w * (corner[i] - lie.origin[i]) for i, w in enumerate(way)) for corner in hole.box
        ]
        low, high = sorted(ends)
        spans.append(f"{round(low, 3):g} to {round(high, 3):g}")
    return "; ".join(spans)
