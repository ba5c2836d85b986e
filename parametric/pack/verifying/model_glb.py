"""The model for pictures against the parts: every part there, where it stands, right way round.

A mesh is held against its part by its volume, its middle, its box and by points: a hair
inside every side and floor of a hollow it must be empty, and a hair outside there must be
wood, so that a part that is mirrored shows even where sizes and weights agree.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from parametric.model import (
    Drilled,
    Groove,
    Group,
    Moulded,
    Part,
    Placement,
    Pocket,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Vector,
    face_point,
)
from parametric.pack.verifying.boxes import finished_box
from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.expected import centre_of_volume, in_hollow
from parametric.pack.verifying.glb_file import Floats, GlbFile, Node, Skin, read_glb
from parametric.pack.verifying.hollows import Hollow, hollow, hollows, wood
from parametric.pack.verifying.inside_skin import inside
from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.motion import motion_faults
from parametric.pack.verifying.moulded_runs import in_run, rounds_of
from parametric.pack.verifying.outlines import Outline, inwards

PLACE = 2e-3
"""mm: corners are kept as 32-bit metres, which are good to a ten-thousandth."""
TURN = 0.2
"""rad: a chord of a round turns no more than this, so a round of chords has at least
sin(TURN) / TURN of the circle's area."""
_CHORD = 0.05
"""How far a chord may leave its arc, mm."""
_HAIR = 0.1
"""mm: more than a chord may leave its arc."""
_WELD = 1e-3
"""Corners nearer than this are one corner, mm."""

_TO_WORLD = np.array([[1.0, 0, 0, 0], [0, 0, -1.0, 0], [0, 1.0, 0, 0], [0, 0, 0, 1.0]])
"""The scene is Y up; the world is Z up, with Y away from the viewer."""


def check_glb(data: bytes, known: Known) -> Verdict:
    """Hold the GLB file against the parts where they stand shut.

    Args:
        data: the file.
        known: the design.
    """
    try:
        file = read_glb(data)
    except UnreadableError as error:
        return Verdict(looked_at={}, faults=(f"cannot be read back: {error}",))
    turning = sum(played.turns is not None for played in file.played.values())
    return Verdict(
        looked_at={
            "parts": sum(node.mesh is not None for node in file.nodes),
            "meshes": len(file.skins),
            "sliding": len(file.played) - turning,
            **({"turning": turning} if turning else {}),
        },
        faults=(*scene_faults(file, known), *_looks(file, known)),
    )


def scene_faults(file: GlbFile, known: Known, *, animated: bool = True) -> tuple[str, ...]:
    """What is wrong with a scene: names, places, motion and the shape of every mesh.

    Args:
        file: the scene.
        known: the design.
        animated: whether leaves must move by themselves as well as say how they do.
    """
    faults = [*_names(file, known)]
    nodes = {node.name: node for node in file.nodes}
    held: set[tuple[int, str]] = set()
    for group in known.assembly.groups:
        if group.name in nodes:
            faults += motion_faults(
                group, nodes[group.name], file, near=PLACE / 1000, animated=animated
            )
        for part in group.parts:
            node = nodes.get(part.name)
            if node is None or node.mesh is None:
                continue
            faults += _stands(group, part, node, file.skins[node.mesh])
            if (node.mesh, part.mark) not in held:
                held.add((node.mesh, part.mark))
                faults += _shape(part, file.skins[node.mesh])
    return tuple(faults)


def _names(file: GlbFile, known: Known) -> Iterator[str]:
    """Every part and group once, each part under its group, nothing besides."""
    there = [node.name for node in file.nodes]
    wanted = {known.assembly.name: ""}
    for group in known.assembly.groups:
        wanted[group.name] = known.assembly.name
        wanted.update({part.name: group.name for part in group.parts})
    for name in sorted(set(there)):
        if name not in wanted:
            yield f"{name}: there is no such part"
        elif there.count(name) > 1:
            yield f"{name}: is there {there.count(name)} times"
    for node in file.nodes:
        if wanted.get(node.name, node.parent) != node.parent:
            yield f"{node.name}: hangs on {node.parent}, not on {wanted[node.name]}"
    parts = {part.name: part for part in known.assembly.parts}
    for name in wanted:
        if name not in there:
            yield f"{name}: is missing"
    for node in file.nodes:
        part = parts.get(node.name)
        if part is None:
            continue
        if node.mesh is None:
            yield f"{node.name}: has no mesh"
        if node.extras.get("mark") != part.mark:
            yield f"{node.name}: is marked {node.extras.get('mark')}, the part {part.mark}"


def _stands(group: Group, part: Part, node: Node, skin: Skin) -> Iterator[str]:
    """The box of a part where the scene puts it, and that nothing on the way mirrors it."""
    matrix = _TO_WORLD @ node.matrix
    size = float(np.linalg.det(matrix[:3, :3]))
    if abs(size - 1) > 1e-5:
        yield f"{part.name}: is {'mirrored' if size < 0 else 'stretched'} on its way into the scene"
    corners = skin.corners @ matrix[:3, :3].T + matrix[:3, 3] * 1000
    axes = [group.placement.direction(way) for way in _axes(part.placement)]
    origin = group.placement.point(part.placement.origin)
    # as the part's own frame has them, which is the same however its wall runs
    corners = (corners - np.array(origin)) @ np.array(axes).T
    low, high = finished_box(part)
    off = max(
        float(np.abs(corners.min(axis=0) - low).max()),
        float(np.abs(corners.max(axis=0) - high).max()),
    )
    if off > PLACE + (_CHORD if _bounded_by_arc(part) else 0.0):
        yield f"{part.name}: its box is {off:.3f} off where the part stands"
    turned = float(np.abs(matrix[:3, :3] - np.array(axes).T).max())
    if turned > 1e-5:
        yield f"{part.name}: is turned otherwise than the part"


def _bounded_by_arc(part: Part) -> bool:
    """Whether a part may end at the crown of an arc, which its chords do not quite reach."""
    return any(
        isinstance(cut, (RoundArrises, RoundCorners))
        or (isinstance(cut, Shaped) and any(_arcs(part, cut)))
        for cut in part.cuts
    )


def _axes(placement: Placement) -> tuple[Vector, Vector, Vector]:
    return (placement.x, placement.y, placement.z)


# --- a mesh and its part -------------------------------------------------------------------


def _shape(part: Part, skin: Skin) -> Iterator[str]:
    """Closed, right way out, of the part's volume and middle, hollow where the part is."""
    name = f"mesh of {part.mark}"
    triangles = skin.corners[skin.triangles]
    open_edges = _open_edges(skin)
    if open_edges:
        yield f"{name}: {open_edges} edges do not close"
    volume, middle = _volume_and_middle(triangles)
    allowed = _lost_in_chords(part) + 1e-5 * part.blank.volume
    if volume < 0:
        yield f"{name}: is inside out"
        return
    if abs(volume - part.volume) > allowed:
        yield f"{name}: {volume:.0f} mm3, the part {part.volume:.0f}"
    off = math.dist(middle, centre_of_volume(part))
    if off > PLACE + allowed * max(_sides(part)) / volume:
        yield f"{name}: its middle is {off:.3f} off that of the part"
    if _normals_against(skin, triangles):
        yield f"{name}: normals point into the wood"
    yield from (f"{name}: {fault}" for fault in _probed(part, triangles))


def _looks(file: GlbFile, known: Known) -> Iterator[str]:
    """The page dresses a part by the look of its material."""
    wanted = {part.name: part.material.look for part in known.assembly.parts}
    for node in file.nodes:
        if node.mesh is not None and node.name in wanted:
            look = file.skins[node.mesh].look
            if look != wanted[node.name]:
                yield f"{node.name}: looks like {look or 'nothing'}, the part like {wanted[node.name]}"


def _sides(part: Part) -> tuple[float, float, float]:
    return (float(part.blank.length), float(part.blank.width), float(part.blank.thickness))


def _volume_and_middle(triangles: Floats) -> tuple[float, tuple[float, float, float]]:
    """By the tetrahedra between each triangle and one point."""
    origin = triangles.reshape(-1, 3).mean(axis=0)
    a, b, c = (triangles[:, i] - origin for i in range(3))
    six = np.einsum("ij,ij->i", a, np.cross(b, c))
    volume = float(six.sum() / 6)
    moment = (six[:, None] * (a + b + c)).sum(axis=0) / 24
    middle = moment / volume + origin if volume else origin
    return volume, (float(middle[0]), float(middle[1]), float(middle[2]))


def _lost_in_chords(part: Part) -> float:
    """The most that rounds made of chords may change a part's volume, mm3."""
    share = 1 - math.sin(TURN) / TURN
    lost = 0.0
    for cut in part.cuts:
        if isinstance(cut, (Slot, Pocket, Groove)):
            made = hollow(part, cut, at_machine=False)
            radii = 4 * made.relief**2 or made.at_low**2 + made.at_high**2
            lost += share * math.pi * radii / 2 * (made.floor - made.begins)
        elif isinstance(cut, Drilled):
            deep = float(cut.depth) - float(cut.surface)
            lost += cut.count * share * math.pi * float(cut.diameter) ** 2 / 4 * deep
        elif isinstance(cut, ScrewPocket):
            pilot = float(cut.pilot) ** 2 * (cut.along - float(cut.deep))
            both = float(cut.wide) ** 2 * float(cut.deep) + pilot
            lost += cut.count * share * math.pi / 4 * both
        elif isinstance(cut, Shaped):
            deep = float(cut.depth) - float(cut.surface)
            lost += sum(2 / 3 * _CHORD * arc for arc in _arcs(part, cut)) * deep
        elif isinstance(cut, Moulded):
            lost += 2 / 3 * _CHORD * rounds_of(cut)
        elif isinstance(cut, RoundArrises):
            lost += share * math.pi * float(cut.radius) ** 2 * float(part.blank.length)
        elif isinstance(cut, RoundCorners):
            lost += share * math.pi * float(cut.radius) ** 2 * float(part.blank.thickness)
        elif hasattr(cut, "corner"):
            lost += share * math.pi * float(cut.corner) ** 2 * float(part.blank.thickness)
    return lost


def _arcs(part: Part, cut: Shaped) -> Iterator[float]:
    """The lengths of a shaped cut's arcs, mm."""
    shape = hollow(part, cut, at_machine=False).shape
    for edge in shape.edges if shape is not None else ():
        if edge.bulge:
            yield edge.radius * abs(edge.sweep)


def _open_edges(skin: Skin) -> int:
    """Edges with a triangle on one side only, once corners in one place are one."""
    keys = np.round(skin.corners / _WELD).astype(np.int64)
    _, welded = np.unique(keys, axis=0, return_inverse=True)
    order = welded.reshape(-1)[skin.triangles]
    count = int(welded.max()) + 1
    there = np.concatenate([order[:, (i, (i + 1) % 3)] for i in range(3)])
    there = there[there[:, 0] != there[:, 1]]
    forward, back = there[:, 0] * count + there[:, 1], there[:, 1] * count + there[:, 0]
    return int(np.setdiff1d(forward, back).size)


def _normals_against(skin: Skin, triangles: Floats) -> bool:
    faces = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    mean = skin.normals[skin.triangles].sum(axis=1)
    return bool((np.einsum("ij,ij->i", faces, mean) < 0).any())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Probe:
    """A point of a part, whether there is wood, and what is wrong if it is otherwise."""

    at: Vector
    wood: bool
    fault: str


def _probed(part: Part, triangles: Floats) -> Iterator[str]:
    """Every side and floor of every hollow, from a hair inside it and a hair outside."""
    cuts = [cut for cut in part.cuts if isinstance(cut, (Slot, Pocket, Groove, Drilled, Shaped))]
    own = [(cut, made) for cut in cuts for made in hollows(part, cut, at_machine=False)]
    runs = [cut for cut in part.cuts if isinstance(cut, Moulded)]
    probes = [
        probe
        for cut, made in own
        for probe in _probes(part, made, ramps=isinstance(cut, Groove) and cut.ramp > 0)
        if (not probe.wood and _in_wood(part, probe.at))
        or (
            _in_wood(part, probe.at)
            # what lies on the very wall or floor of another cut is neither wood nor hollow
            and not any(in_hollow(part, o, probe.at, _HAIR / 2) for _, o in own)
            and not any(in_run(part, run, probe.at, _HAIR / 2) for run in runs)
        )
    ]
    if not probes:
        return
    points = np.array([probe.at for probe in probes], dtype=float)
    found = inside(points, triangles)
    wrong = (p.fault for p, there in zip(probes, found, strict=True) if there != p.wood)
    yield from dict.fromkeys(wrong)


def _probes(part: Part, made: Hollow, *, ramps: bool) -> Iterator[_Probe]:
    if made.shape is not None:
        yield from _round_the_shape(part, made, made.shape)
        return
    u0, v0, u1, v1 = made.bounds
    u, v = (u0 + u1) / 2, (v0 + v1) / 2
    deep = (made.begins + made.floor) / 2
    called = f"{made.cut} at {u:g};{v:g}"

    def point(at: tuple[float, float, float]) -> Vector:
        return face_point(made.face, part.blank, *at)

    yield _Probe(at=point((u, v, deep)), wood=False, fault=f"{called} is not there")
    ends = ((u0, v, -1, 0), (u1, v, 1, 0)) if not ramps else ()
    for x, y, du, dv in (*ends, (u, v0, 0, -1), (u, v1, 0, 1)):
        fault = f"{called} does not reach to {x:g};{y:g}"
        for way in (-_HAIR, _HAIR):
            at = point((x + du * way, y + dv * way, deep))
            yield _Probe(at=at, wood=way > 0, fault=fault)
    for way in (-_HAIR, _HAIR):
        at = point((u, v, made.floor + way))
        yield _Probe(at=at, wood=way > 0, fault=f"{called} is not {made.floor:g} deep")


def _round_the_shape(part: Part, made: Hollow, shape: Outline) -> Iterator[_Probe]:
    """Every side of a shaped hollow at its quarters, and the floor beside it."""
    deep = (made.begins + made.floor) / 2
    for edge in shape.edges:
        if math.dist(edge.a, edge.b) < 8 * _HAIR:
            continue
        for (u, v), way in inwards(edge, 4):
            fault = f"{made.cut} does not reach to {u:g};{v:g}"
            for far in (-_HAIR, _HAIR):
                at = (u + way[0] * far, v + way[1] * far)
                if far > 0 and not shape.contains(at):
                    continue
                point = face_point(made.face, part.blank, *at, deep)
                yield _Probe(at=point, wood=far < 0, fault=fault)
                if far > 0:
                    under = face_point(made.face, part.blank, *at, made.floor + _HAIR)
                    floor = f"{made.cut} is not {made.floor:g} deep"
                    yield _Probe(at=under, wood=True, fault=floor)


def _in_wood(part: Part, point: Vector) -> bool:
    """Whether a point lies in the part's wood before any hollow is cut."""
    low, high = wood(part)
    limits = ((low, high), (0.0, float(part.blank.width)), (0.0, float(part.blank.thickness)))
    return all(a < at < b for (a, b), at in zip(limits, point, strict=True))
