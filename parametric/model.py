"""Parts: a blank and a tuple of cuts, a placement, a material, a mark and a name.

Frames, defined once for the whole tool
----------------------------------------
In a part, x runs along the length (the grain), y across the width, z through the
thickness, from the low corner of the blank:

        y                      faces:  low end  x = 0        high end  x = length
        |  ________________            low edge y = 0        high edge y = width
        | /               /|           low face z = 0        high face z = thickness
        |/_______________/ |
        |________________|/   -> x
       z towards you

On a face, (u, v) are the two remaining axes in the order x, y, z, measured from the
blank's corner; depth goes into the wood from the blank's own surface.

In the world X is right, Y away from the viewer, Z up; x = 0 at the left edge of the
opening, y = 0 on the wall face, z = 0 at the highest floor; the front is seen looking
along +Y. A leaf's frame is parallel to the world's, with its origin at the left outer
edge, the front face and the finished foot.

Every cut removes material, and no two cuts of a part remove the same material, so the
part's volume is the blank's less the cuts'. All lengths mm, angles deg.
"""

from __future__ import annotations

import dataclasses
import hashlib
import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Literal, assert_never

from parametric.outlines import Outline, area_of
from parametric.runs import RunEnd, run_volume

Vector = tuple[float, float, float]
Face = Literal["low end", "high end", "low edge", "high edge", "low face", "high face"]
End = Literal["low end", "high end"]
Edge = Literal["low edge", "high edge"]
CAME_LATER: Mapping[str, bool] = MappingProxyType({"came later": True})
"""Of a field that was not there when designs were signed: it counts where it is not its default."""

By = Literal["router", "saw", "bench"]
When = Literal["before glue-up", "after glue-up", "on site"]

FACES: tuple[Face, ...] = ("low end", "high end", "low edge", "high edge", "low face", "high face")


@dataclass(frozen=True, slots=True, kw_only=True)
class Making:
    """How a cut is made: by which machine, when, and with what (shop words)."""

    by: By
    when: When = "before glue-up"
    cutter: float | None = None
    tool: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A round-ended mortise of `width`, from u0 to u1 along u, centred on v.

    `surface` is where the wood begins, as at the shoulder behind a moulding; `depth` is from
    the blank's surface.
    """

    name: str
    face: Face
    u0: float
    u1: float
    v: float
    width: float
    depth: float
    making: Making
    surface: float = dataclasses.field(default=0.0, metadata=CAME_LATER)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A flat-bottomed pocket with rounded corners, centred on (u, v).

    `surface` is the depth of the floor it starts from (a deeper pocket inside a
    shallower one starts at the other's floor); `depth` is from the blank's surface.
    Depth equal to the thickness makes a window. `relief` is the radius of a cutter too
    large for the corners, run into each of them until a corner of radius `corner` is
    free; 0 where none is.
    """

    name: str
    face: Face
    u: float
    v: float
    length: float
    width: float
    corner: float
    depth: float
    making: Making
    surface: float = 0.0
    relief: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A groove along u from u0 to u1, centred on v.

    A groove that stops inside the blank is left by the cutter with ends of radius
    `corner`; `squared` says that they are chopped square at the bench afterwards,
    so that a square-cornered panel can go home. A groove stopped on the saw instead
    leaves a ramp beyond each end, an arc of the blade's radius `ramp`. `surface` is
    where the wood begins (the trim line, when the groove is run after trimming).
    """

    name: str
    face: Face
    u0: float
    u1: float
    v: float
    width: float
    depth: float
    making: Making
    corner: float = 0.0
    squared: bool = False
    ramp: float = 0.0
    surface: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Trim:
    """A square cut that takes `length` off one end."""

    name: str
    end: End
    length: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Mitre:
    """A 45 degree cut across the width at one end; `keeps` is the edge that stays full length."""

    name: str
    end: End
    keeps: Edge
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class RaisedBevel:
    """The bevel all round a raised panel's high face.

    From thickness `edge` at the very edge to `foot` where the fillet stands, over `run`;
    the fillet is the step from `foot` to the full thickness.
    """

    name: str
    run: float
    edge: float
    foot: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Tongue:
    """The tongue all round a raised panel, cut after its bevel.

    `thickness` is left over `length`, standing `back` off the low face (the back
    rebate); `edge` and `slope` are those of the bevel it is cut through.
    """

    name: str
    thickness: float
    length: float
    back: float
    edge: float
    slope: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundArrises:
    """The four arrises along x rounded to `radius` (a loose tenon's edges)."""

    name: str
    radius: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundCorners:
    """The four corners seen on the high face rounded to `radius`, through the thickness."""

    name: str
    radius: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Island:
    """All but a rounded rectangle taken away from one face, to `depth` (a pull's body under its flange).

    The blank's own corners are already rounded to `outer`.
    """

    name: str
    face: Literal["low face", "high face"]
    length: float
    width: float
    corner: float
    outer: float
    depth: float
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaped:
    """All the wood inside an outline on a face, straight in from `surface` to `depth`.

    A curved underside, a rebate that follows it, the cheek of a tenon, an edge planed to a
    bevel (on the end face, as long as the piece). `outline` is in the face's u and v,
    counter-clockwise, within the face; it may lie along the face's own edges. Depth equal
    to what lies behind the face goes right through. In an edge, what stands before `surface`
    is gone already: where that is a bevel, `surface` is its mean over the outline.
    """

    name: str
    face: Face
    outline: Outline
    depth: float
    making: Making
    surface: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Moulded:
    """A moulding run along an edge: its section taken away along a path on a broad face.

    `section` is what is taken, x in from the path and y from the face into the wood, touching
    x = 0 and y = 0. `path` is an open chain on the face with the wood on its left and none on
    its right, whose pieces run smoothly one into the next. A rail's end coped over a stile's
    moulding is one too: the negative of the section, run across the end. `profile` is what the
    shop calls the cutter.
    """

    name: str
    face: Literal["low face", "high face"]
    profile: str
    section: Outline
    path: Outline
    start: RunEnd
    end: RunEnd
    making: Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Drilled:
    """One round hole, or a row of equal ones from (u, v) on: up `along`, `pitch` apart.

    `depth` is from the blank's surface; equal to the wood behind the face, the holes go
    through. `surface` is the floor they start from, as that of a wider hole on the same middle.
    `pitch` is above 0 where there is more than one.
    """

    name: str
    face: Face
    u: float
    v: float
    diameter: float
    depth: float
    making: Making
    count: int = 1
    pitch: float = 0.0
    along: Literal["u", "v"] = "u"
    surface: float = 0.0

    @property
    def places(self) -> tuple[tuple[float, float], ...]:
        """The middle of each hole on its face, from the first one on."""
        u, v, pitch = float(self.u), float(self.v), float(self.pitch)
        along, across = (pitch, 0.0) if self.along == "u" else (0.0, pitch)
        return tuple((u + along * n, v + across * n) for n in range(self.count))


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewPocket:
    r"""A pocket for a screw, or a row of equal ones across the face: stepped, at a flat angle.

        face  _____        ______        |<-mouth->|
              |    \  wide /      end      the axis enters the face there, and dips by `angle`
              |     \_:___/....pilot...|   towards the end

    The pocket is `wide` across and ends square to its axis `deep` along it; from there the pilot
    goes on until out of the end. `v` is of the first one.
    """

    name: str
    face: Literal["low face", "high face"]
    end: End
    mouth: float
    v: float
    angle: float
    wide: float
    deep: float
    pilot: float
    making: Making
    count: int = 1
    pitch: float = 0.0

    @property
    def along(self) -> float:
        """The whole axis, from the face to the end, mm."""
        return float(self.mouth) / math.cos(math.radians(float(self.angle)))

    @property
    def reach(self) -> float:
        """From the end to the far side of the mouth, mm."""
        half = float(self.wide) / 2
        return float(self.mouth) + half / math.sin(math.radians(float(self.angle)))

    @property
    def places(self) -> tuple[float, ...]:
        """Each of them across the face."""
        return tuple(float(self.v) + n * float(self.pitch) for n in range(self.count))


Cut = (
    Slot
    | Pocket
    | Groove
    | Drilled
    | ScrewPocket
    | Trim
    | Mitre
    | RaisedBevel
    | Tongue
    | RoundArrises
    | RoundCorners
    | Island
    | Shaped
    | Moulded
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """The piece before any cut: length along the grain, width, thickness, mm."""

    length: float
    width: float
    thickness: float

    @property
    def volume(self) -> float:
        """mm3."""
        return float(self.length) * float(self.width) * float(self.thickness)


def rounded_rectangle_area(
    length: float, width: float, corner: float, relief: float = 0.0
) -> float:
    """Area of a rectangle with four round corners, relieved or not, mm2."""
    if relief <= corner:
        return length * width - (4 - math.pi) * corner**2
    chord, turn = relief_chord(corner, relief), relief_turn(corner, relief)
    # at each corner a triangle is cut off, and the circle's segment stands on its long side
    segment = relief**2 * (turn - math.sin(turn)) / 2
    return length * width + 4 * (segment - chord**2 / 2)


def relief_inset(corner: float, relief: float) -> float:
    """From either wall to the middle of the cutter that relieves their corner, mm.

    It stands on the diagonal, where its circle touches that of the corner from outside.
    """
    return corner + (relief - corner) / math.sqrt(2)


def relief_past(corner: float, relief: float) -> float:
    """How far past a wall the relief of a corner reaches, mm; 0 where there is none."""
    return relief - relief_inset(corner, relief) if relief > corner else 0.0


def relief_chord(corner: float, relief: float) -> float:
    """From a square corner along either wall to where its relief begins, mm."""
    inset = relief_inset(corner, relief)
    return inset + math.sqrt(relief**2 - inset**2)


def relief_turn(corner: float, relief: float) -> float:
    """The angle that the arc of a relief turns through, rad: half a circle in a square corner."""
    inset = relief_inset(corner, relief)
    return 1.5 * math.pi - 2 * math.atan2(inset, math.sqrt(relief**2 - inset**2))


def ramp_length(radius: float, depth: float) -> float:
    """How far a blade of this radius runs on past a stop when it is `depth` into the wood, mm.

    Half the chord: sqrt(2 r d - d2), from the circle.
    """
    return math.sqrt(2 * radius * depth - depth**2)


def ramp_area(radius: float, depth: float) -> float:
    """Area, seen from the side, of the ramp a blade leaves past one end of a stopped groove, mm2.

    Half the circular segment of height `depth`.
    """
    if depth > radius:
        raise ValueError(f"a blade of radius {radius} does not stand {depth} out of the table")
    half = math.acos((radius - depth) / radius)
    return (radius**2 * half - (radius - depth) * ramp_length(radius, depth)) / 2


def frustum_area(blank: Blank, inset: float) -> float:
    """A(s) of a raised panel: what is left of its face at an inset s from all edges, mm2."""
    return (blank.length - 2 * inset) * (blank.width - 2 * inset)


def frustum_integral(blank: Blank, inset: float) -> float:
    """G(s): the integral of A from 0 to s, mm3."""
    area, half = blank.length * blank.width, blank.length + blank.width
    return area * inset - half * inset**2 + 4 / 3 * inset**3


def removed_volume(cut: Cut, blank: Blank) -> float:
    """The volume a cut takes from its blank, mm3, in closed form.

    Raised panel: the two-step saw geometry, integrated over the inset s from the edge.
    """
    match cut:
        case Slot():
            flat = (cut.u1 - cut.u0 - cut.width) * cut.width
            return (flat + math.pi * cut.width**2 / 4) * (cut.depth - cut.surface)
        case Pocket():
            area = rounded_rectangle_area(cut.length, cut.width, cut.corner, cut.relief)
            return area * (cut.depth - cut.surface)
        case Groove():
            deep = cut.depth - cut.surface
            # Only an end that stops inside the blank is round, or ramps.
            stopped = (cut.u0 > 0) + (cut.u1 < face_size(cut.face, blank)[0])
            round_off = 0.0 if cut.squared else (4 - math.pi) / 2 * cut.corner**2
            area = (cut.u1 - cut.u0) * cut.width - stopped * round_off
            ramps = stopped * ramp_area(cut.ramp, deep) * cut.width if cut.ramp else 0.0
            return area * deep + ramps
        case Drilled():
            deep = cut.depth - cut.surface
            return cut.count * math.pi * cut.diameter**2 / 4 * deep
        case ScrewPocket():
            # a cylinder cut off aslant is as long as its axis, as long as no cut meets its floor
            pocket = float(cut.wide) ** 2 * float(cut.deep)
            pilot = float(cut.pilot) ** 2 * (cut.along - float(cut.deep))
            return cut.count * math.pi / 4 * (pocket + pilot)
        case Trim():
            return cut.length * blank.width * blank.thickness
        case Mitre():
            return blank.width**2 / 2 * blank.thickness
        case RaisedBevel():
            slope = (cut.foot - cut.edge) / cut.run
            kept = (
                cut.edge * frustum_area(blank, 0)
                + slope * frustum_integral(blank, cut.run)
                + (blank.thickness - cut.foot) * frustum_area(blank, cut.run)
            )
            return blank.volume - kept
        case Tongue():
            ring = frustum_area(blank, 0) - frustum_area(blank, cut.length)
            wedge = frustum_integral(blank, cut.length) - cut.length * frustum_area(
                blank, cut.length
            )
            return (cut.edge - cut.thickness) * ring + cut.slope * wedge
        case RoundArrises():
            return (4 - math.pi) * cut.radius**2 * blank.length
        case RoundCorners():
            return (4 - math.pi) * cut.radius**2 * blank.thickness
        case Island():
            outer = rounded_rectangle_area(blank.length, blank.width, cut.outer)
            return (outer - rounded_rectangle_area(cut.length, cut.width, cut.corner)) * cut.depth
        case Shaped():
            return area_of(cut.outline) * (float(cut.depth) - float(cut.surface))
        case Moulded():
            return run_volume(cut.section, cut.path, cut.start, cut.end)
        case _:
            assert_never(cut)


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a part is made of. `look` is the family that pictures and hatches know."""

    name: str
    look: Literal["timber", "board", "glass", "metal", "tape"]
    density: float
    """kg/m3"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """Where a part's or a group's frame stands: its origin and its x and y directions.

    Directions are unit vectors at right angles; z = x × y, so a placement never mirrors.
    """

    origin: Vector = (0.0, 0.0, 0.0)
    x: Vector = (1.0, 0.0, 0.0)
    y: Vector = (0.0, 1.0, 0.0)

    @property
    def z(self) -> Vector:
        """The third direction."""
        a, b = self.x, self.y
        return (
            a[1] * b[2] - a[2] * b[1],
            a[2] * b[0] - a[0] * b[2],
            a[0] * b[1] - a[1] * b[0],
        )

    def point(self, local: Vector) -> Vector:
        """A point of this frame, in the frame it is placed in."""
        x, y, z = self.x, self.y, self.z
        return (
            float(self.origin[0] + x[0] * local[0] + y[0] * local[1] + z[0] * local[2]),
            float(self.origin[1] + x[1] * local[0] + y[1] * local[1] + z[1] * local[2]),
            float(self.origin[2] + x[2] * local[0] + y[2] * local[1] + z[2] * local[2]),
        )

    def direction(self, local: Vector) -> Vector:
        """A direction of this frame, in the frame it is placed in."""
        x, y, z = self.x, self.y, self.z
        return (
            x[0] * local[0] + y[0] * local[1] + z[0] * local[2],
            x[1] * local[0] + y[1] * local[1] + z[1] * local[2],
            x[2] * local[0] + y[2] * local[1] + z[2] * local[2],
        )

    def seen_from(self, frame: Placement) -> Placement:
        """The same place as another frame has it; both stand in one world."""
        if frame == Placement():
            return self

        def turned(way: Vector) -> Vector:
            x, y, z = (
                float(sum(a * b for a, b in zip(way, axis, strict=True)))
                for axis in (frame.x, frame.y, frame.z)
            )
            return (x, y, z)

        x, y, z = (float(a - b) for a, b in zip(self.origin, frame.origin, strict=True))
        return Placement(origin=turned((x, y, z)), x=turned(self.x), y=turned(self.y))


@dataclass(frozen=True, slots=True, kw_only=True)
class Matched:
    """Which matched set a piece is of, and its place in it: its grain runs on into the next."""

    set: str
    number: int
    of: int

    @property
    def words(self) -> str:
        """`set 1: 2 of 3`."""
        return f"{self.set}: {self.number} of {self.of}"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutEdge:
    """An edge that a board was cut to, no edge of its blank: what it is called, and how long, mm."""

    name: str
    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One piece of one leaf or case.

    `name` is the instance (`leaf A / lock rail`); `mark` the type, counted over the job
    (twins share one). `noun` is what the shop calls it ("lock rail", "stile, with pull").
    `faces` gives the shop's word for each face that has one ("inner edge", "face").
    `supplied` parts are bought and shown, not made. `banded` are the faces that wear an edge
    band: the blank is the size as sawn, and the band, being thin, is no solid of its own;
    `banded_edges` are those that do and are no faces of the blank. What is `matched` has its own
    place among others, and no twin.
    """

    name: str
    noun: str
    mark: str
    material: Material
    blank: Blank
    placement: Placement
    cuts: tuple[Cut, ...] = ()
    faces: Mapping[Face, str] = dataclasses.field(default_factory=dict)
    supplied: bool = False
    banded: tuple[Face, ...] = dataclasses.field(default=(), metadata=CAME_LATER)
    matched: Matched | None = dataclasses.field(default=None, metadata=CAME_LATER)
    banded_edges: tuple[CutEdge, ...] = dataclasses.field(default=(), metadata=CAME_LATER)

    @property
    def volume(self) -> float:
        """Blank less cuts, mm3."""
        return self.blank.volume - sum(removed_volume(c, self.blank) for c in self.cuts)

    @property
    def mass(self) -> float:
        """Kg."""
        return self.volume * float(self.material.density) / 1e9

    @property
    def finished(self) -> tuple[float, float, float]:
        """Length, width, thickness once the ends are trimmed, mm."""
        trimmed = sum(c.length for c in self.cuts if isinstance(c, Trim))
        return (self.blank.length - trimmed, self.blank.width, self.blank.thickness)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slide:
    """Along a unit direction of the world, through `travel` mm from shut."""

    direction: Vector
    travel: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """About a line of the world through `point` along the unit `axis`, `angle` deg from shut.

    Right-handed about the axis; the line is where it stands when everything is shut.
    """

    point: Vector
    axis: Vector
    angle: float


Step = Slide | Turn


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Parts that move as one: a leaf with all that hangs on it, or the fixed hardware.

    `motion` is how it moves, the innermost step first: the second leaf of a bifold turns on
    the line between the leaves, then with the first leaf about the jamb. All steps go
    together from shut (0) to open (1). Without a step it stands still. What is `see_through`
    hides something that is looked for, as a case hides its shelves: pictures may ghost it. It
    is a way of showing and no part of what is made.
    """

    name: str
    placement: Placement
    parts: tuple[Part, ...]
    motion: tuple[Step, ...] = ()
    see_through: bool = dataclasses.field(default=False, metadata=CAME_LATER)

    @property
    def slide(self) -> Slide | None:
        """Its slide, where that is all it does."""
        return (
            self.motion[0] if len(self.motion) == 1 and isinstance(self.motion[0], Slide) else None
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """One position of everything that moves: how far each group is along its motion, 0 to 1."""

    name: str
    open: Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """All parts of a job where they stand, and the states that pictures and clash checks share."""

    name: str
    groups: tuple[Group, ...]
    states: tuple[State, ...]

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every part of every group."""
        return tuple(part for group in self.groups for part in group.parts)


def displaced(group: Group, state: State) -> Placement:
    """Where a group stands in a state."""
    return along(group.placement, group.motion, state.open.get(group.name, 0.0))


def along(placement: Placement, motion: tuple[Step, ...], part: float) -> Placement:
    """Where a frame stands when it has gone a part, 0 to 1, of its motion."""
    for step in motion:
        match step:
            case Slide():
                d, far = step.direction, float(step.travel) * part
                x, y, z = placement.origin
                placement = dataclasses.replace(
                    placement, origin=(x + d[0] * far, y + d[1] * far, z + d[2] * far)
                )
            case Turn():
                angle = float(step.angle) * part
                arm = _less(placement.origin, step.point)
                placement = Placement(
                    origin=_plus(step.point, turned(arm, step.axis, angle)),
                    x=turned(placement.x, step.axis, angle),
                    y=turned(placement.y, step.axis, angle),
                )
            case _:
                assert_never(step)
    return placement


def turned(vector: Vector, axis: Vector, angle: float) -> Vector:
    """A vector turned about a unit axis, right-handed, deg. Source: Rodrigues' rotation."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    x, y, z = vector
    a, b, d = axis
    dot = (a * x + b * y + d * z) * (1 - c)
    return (
        x * c + (b * z - d * y) * s + a * dot,
        y * c + (d * x - a * z) * s + b * dot,
        z * c + (a * y - b * x) * s + d * dot,
    )


def _plus(a: Vector, b: Vector) -> Vector:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def _less(a: Vector, b: Vector) -> Vector:
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def face_depth(face: Face, blank: Blank) -> float:
    """How much wood lies behind a face, mm."""
    match face:
        case "low end" | "high end":
            return blank.length
        case "low edge" | "high edge":
            return blank.width
        case "low face" | "high face":
            return blank.thickness


def face_size(face: Face, blank: Blank) -> tuple[float, float]:
    """The size of a face along u and v, mm."""
    match face:
        case "low end" | "high end":
            return (blank.width, blank.thickness)
        case "low edge" | "high edge":
            return (blank.length, blank.thickness)
        case "low face" | "high face":
            return (blank.length, blank.width)


def face_point(face: Face, blank: Blank, u: float, v: float, depth: float) -> Vector:
    """The part-frame point at (u, v) on a face, `depth` into the wood."""
    match face:
        case "low end":
            return (depth, u, v)
        case "high end":
            return (blank.length - depth, u, v)
        case "low edge":
            return (u, depth, v)
        case "high edge":
            return (u, blank.width - depth, v)
        case "low face":
            return (u, v, depth)
        case "high face":
            return (u, v, blank.thickness - depth)


def _canonical(value: Any) -> Any:
    if isinstance(value, float):
        return round(float(value), 6) + 0.0
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        fields = {
            f.name: _canonical(getattr(value, f.name))
            for f in dataclasses.fields(value)
            if not ("came later" in f.metadata and getattr(value, f.name) == f.default)
        }
        return {"is": type(value).__name__, **fields}
    if isinstance(value, Mapping):
        return {str(k): _canonical(v) for k, v in value.items()}
    if isinstance(value, (tuple, list)):
        return [_canonical(v) for v in value]
    return value


def digest(*things: Any) -> str:
    """sha256 of the canonical JSON of dataclasses and values; floats rounded to 1e-6."""
    text = json.dumps(_canonical(things), sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def shape_key(part: Part) -> str:
    """The same for two parts exactly when one solid serves for both."""
    return digest(part.material.look, part.blank, part.cuts)


SAME_SIZE = 1e-6
"""Two sizes no farther apart than this are one size, mm or deg."""


def alike(one: Any, other: Any) -> bool:
    """Whether two things of the model are the same, sizes within `SAME_SIZE` of one another.

    Unlike two digests, two sizes either side of where one is rounded are still one size: half
    of a sixty-fourth of an inch ends in the middle of a millionth of a millimetre.
    """
    if isinstance(one, float) or isinstance(other, float):
        return (
            isinstance(one, (int, float))
            and isinstance(other, (int, float))
            and abs(float(one) - float(other)) <= SAME_SIZE
        )
    if dataclasses.is_dataclass(one) and not isinstance(one, type):
        return type(one) is type(other) and all(
            alike(getattr(one, f.name), getattr(other, f.name)) for f in dataclasses.fields(one)
        )
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(alike(one[key], other[key]) for key in one)
    if isinstance(one, (tuple, list)) and isinstance(other, (tuple, list)):
        return len(one) == len(other) and all(map(alike, one, other))
    return bool(one == other)


def same_shape(one: Part, other: Part) -> bool:
    """Whether one piece serves for two parts: look, blank and cuts alike."""
    return alike(
        (one.material.look, one.blank, one.cuts), (other.material.look, other.blank, other.cuts)
    )
