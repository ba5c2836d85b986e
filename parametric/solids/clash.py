"""What overlaps, what touches, and how far apart things are.

A part lies inside its blank, so two parts whose blanks, where they stand, do not
overlap cannot clash; only the others are given to the kernel. Two pieces of the same
two shapes at the same relative position (twins) are measured once.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
from OCP.BRepExtrema import BRepExtrema_DistShapeShape
from OCP.BRepGProp import BRepGProp
from OCP.GeomAbs import GeomAbs_Plane
from OCP.gp import gp_Pln
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Shape
from OCP.TopTools import TopTools_ListOfShape

from parametric.model import Assembly, Part, Placement, State, Vector, displaced
from parametric.solids.placing import placed, within
from parametric.solids.shape import WrongSolidError, solids_in, volume
from parametric.solids.solid_set import Solids

TOUCH = 1e-6
"""Parts no further apart than this touch, mm."""

FLUSH = 1e-9
"""Faces no further out of parallel than this lie flat against each other, rad."""

Box = tuple[Vector, Vector]
_FAR: Vector = (1e9, 1e9, 1e9)


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Two parts that would be in the same place, and how much of it, mm3."""

    a: str
    b: str
    volume: float
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A part where it stands in one state of the assembly."""

    part: Part
    group: int
    placement: Placement
    box: Box


def standing(assembly: Assembly, state: State) -> tuple[Standing, ...]:
    """Every part of an assembly where it stands in a state."""
    found = []
    for number, group in enumerate(assembly.groups):
        frame = displaced(group, state)
        for part in group.parts:
            placement = within(frame, part.placement)
            found.append(
                Standing(part=part, group=number, placement=placement, box=_box(part, placement))
            )
    return tuple(found)


def clashes(
    assembly: Assembly, state: State, solids: Solids, tolerance: float = 1e-3
) -> tuple[Clash, ...]:
    """Every two parts that share more than `tolerance` mm3 in one state."""
    return _clashes(assembly, (state,), solids, tolerance)


def clashes_in_all_states(
    assembly: Assembly, solids: Solids, tolerance: float = 1e-3
) -> tuple[Clash, ...]:
    """Every two parts that share more than `tolerance` mm3, in each state of the assembly.

    Two parts that stand to each other as in an earlier state (those of one leaf, above
    all) are not looked at again.
    """
    return _clashes(assembly, assembly.states, solids, tolerance)


def touching(
    assembly: Assembly, state: State, solids: Solids, name: str, within_mm: float = TOUCH
) -> tuple[str, ...]:
    """The names of the parts that touch a part, in the order of the assembly."""
    parts = [p for p in standing(assembly, state) if solids.shows(p.part)]
    this = next(piece for piece in parts if piece.part.name == name)
    near = (p for p in parts if p is not this and _apart(p.box, this.box) <= within_mm)
    return tuple(p.part.name for p in near if gap(this, p, solids) <= within_mm)


def gap(a: Standing, b: Standing, solids: Solids) -> float:
    """The least distance between two parts, mm; 0 when they touch or overlap."""
    measured = BRepExtrema_DistShapeShape(
        placed(solids.of(a.part), a.placement), placed(solids.of(b.part), b.placement)
    )
    if not measured.IsDone():
        raise WrongSolidError(f"no distance found between {a.part.name} and {b.part.name}")
    return float(measured.Value())


def contact_area(a: Standing, b: Standing, solids: Solids) -> float:
    """How much of their flat faces lies against each other, mm2: 0 for a touch at an edge."""
    ones = _flats(placed(solids.of(a.part), a.placement))
    others = _flats(placed(solids.of(b.part), b.placement))
    area = 0.0
    for (face, plane), (other, opposite) in itertools.product(ones, others):
        if (
            plane.Axis().IsOpposite(opposite.Axis(), FLUSH)
            and plane.Distance(opposite.Location()) <= TOUCH
        ):
            properties = GProp_GProps()
            BRepGProp.SurfaceProperties_s(_common(face, other), properties)
            area += float(properties.Mass())
    return area


def _flats(shape: TopoDS_Shape) -> list[tuple[TopoDS_Face, gp_Pln]]:
    """The flat faces of a shape, each with its plane turned to face outwards."""
    found = []
    explorer = TopExp_Explorer(shape, TopAbs_FACE)
    while explorer.More():
        face = TopoDS.Face_s(explorer.Current())
        surface = BRepAdaptor_Surface(face)
        if surface.GetType() == GeomAbs_Plane:
            plane = surface.Plane()
            inwards = (face.Orientation() == TopAbs_REVERSED) == plane.Direct()
            axis = plane.Axis().Reversed() if inwards else plane.Axis()
            found.append((face, gp_Pln(axis.Location(), axis.Direction())))
        explorer.Next()
    return found


def common_volume(a: TopoDS_Shape, b: TopoDS_Shape) -> float:
    """The volume two placed solids share, mm3."""
    return sum(volume(solid) for solid in solids_in(_common(a, b)))


def _common(a: TopoDS_Shape, b: TopoDS_Shape) -> TopoDS_Shape:
    ones, others = TopTools_ListOfShape(), TopTools_ListOfShape()
    ones.Append(a)
    others.Append(b)
    operation = BRepAlgoAPI_Common()
    operation.SetArguments(ones)
    operation.SetTools(others)
    operation.SetToFillHistory(False)
    operation.Build()
    if not operation.IsDone():
        raise WrongSolidError("the kernel could not find what two shapes share")
    return operation.Shape()


def _clashes(
    assembly: Assembly, states: Sequence[State], solids: Solids, tolerance: float
) -> tuple[Clash, ...]:
    found: list[Clash] = []
    measured: dict[tuple[object, ...], float] = {}
    looked_at: set[tuple[object, ...]] = set()
    stood = _Stood(assembly, solids)
    for state in states:
        for a, b in stood.near(state):
            stance = (a.part.name, b.part.name, _relative(a.placement, b.placement))
            if stance in looked_at:
                continue
            looked_at.add(stance)
            twin = (solids.key(a.part), solids.key(b.part), stance[2])
            if twin not in measured:
                measured[twin] = common_volume(
                    placed(solids.of(a.part), a.placement), placed(solids.of(b.part), b.placement)
                )
            if measured[twin] > tolerance:
                found.append(
                    Clash(a=a.part.name, b=b.part.name, volume=measured[twin], state=state.name)
                )
    return tuple(found)


class _Stood:
    """The groups of an assembly from state to state.

    Two that stand as they stood before are not held against one another again, so that a long
    run with a state for every door stays cheap.
    """

    def __init__(self, assembly: Assembly, solids: Solids) -> None:
        self._assembly, self._solids = assembly, solids
        self._parts: dict[tuple[int, Placement], list[tuple[int, Standing]]] = {}
        self._seen: set[tuple[int, Placement, int, Placement]] = set()

    def near(self, state: State) -> list[tuple[Standing, Standing]]:
        """The parts whose blanks overlap and that did not stand so before, in the assembly's order."""
        frames = [displaced(group, state) for group in self._assembly.groups]
        stood = [self._of(number, frame) for number, frame in enumerate(frames)]
        boxes = [_round([piece.box for _, piece in own]) for own in stood]
        found = []
        for i, j in _overlapping(boxes, itself=True):
            pair = (i, frames[i], j, frames[j])
            if pair in self._seen:
                continue
            self._seen.add(pair)
            both = stood[i] if i == j else [*stood[i], *stood[j]]
            for a, b in _overlapping([piece.box for _, piece in both]):
                one, other = both[a], both[b]
                if (one[1].group == other[1].group) == (i == j):
                    found.append((one, other) if one[0] < other[0] else (other, one))
        found.sort(key=lambda pair: (pair[0][0], pair[1][0]))
        return [(a[1], b[1]) for a, b in found]

    def _of(self, number: int, frame: Placement) -> list[tuple[int, Standing]]:
        """The parts of a group that stands so, each with its place in the assembly."""
        key = (number, frame)
        if key not in self._parts:
            groups = self._assembly.groups
            first = sum(len(group.parts) for group in groups[:number])
            self._parts[key] = [
                (
                    first + place,
                    Standing(
                        part=part,
                        group=number,
                        placement=(where := within(frame, part.placement)),
                        box=_box(part, where),
                    ),
                )
                for place, part in enumerate(groups[number].parts)
                if self._solids.shows(part)
            ]
        return self._parts[key]


def _round(boxes: Sequence[Box]) -> Box:
    """The box round boxes; round none, one far away."""
    lows, highs = ([box[k] for box in boxes] or [_FAR] for k in (0, 1))
    low, high = (
        tuple(pick(corner[i] for corner in corners) for i in range(3))
        for pick, corners in ((min, lows), (max, highs))
    )
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _overlapping(boxes: Sequence[Box], *, itself: bool = False) -> Iterator[tuple[int, int]]:
    """The pairs of boxes that overlap, by their numbers, the lower first.

    They are gone through from left to right, each held only against those that begin before it
    ends: a long run takes as much longer as it has more parts.
    """
    across = sorted(range(len(boxes)), key=lambda i: boxes[i][0][0])
    for place, i in enumerate(across):
        if itself:
            yield i, i
        for later in range(place + 1, len(across)):
            j = across[later]
            if boxes[j][0][0] - boxes[i][1][0] >= -TOUCH:
                break
            if _apart(boxes[i], boxes[j]) < -TOUCH:
                yield min(i, j), max(i, j)


def _box(part: Part, placement: Placement) -> Box:
    """The upright box round a part's blank where it stands."""
    size = (float(part.blank.length), float(part.blank.width), float(part.blank.thickness))
    corners = [
        placement.point((x, y, z)) for x, y, z in itertools.product(*((0.0, s) for s in size))
    ]
    low, high = (tuple(pick(c[i] for c in corners) for i in range(3)) for pick in (min, max))
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _apart(a: Box, b: Box) -> float:
    """The largest distance between two boxes along an axis, mm; negative where they overlap."""
    return max(max(a[0][i] - b[1][i], b[0][i] - a[1][i]) for i in range(3))


def _relative(a: Placement, b: Placement) -> tuple[float, ...]:
    """How the second frame stands in the first, rounded far below anything that matters."""
    step = tuple(float(q - p) for p, q in zip(a.origin, b.origin, strict=True))
    axes = (a.x, a.y, a.z)
    seen = [sum(p * q for p, q in zip(axis, step, strict=True)) for axis in axes]
    for direction in (b.x, b.y):
        seen += [sum(p * q for p, q in zip(axis, direction, strict=True)) for axis in axes]
    return tuple(round(float(value), 7) + 0.0 for value in seen)
