"""A case resolved: the box of boards, its bays, and where everything in it stands. Lengths mm.

The case's own frame: x right from the outer face of its left side, y from the front edges of its
boards backwards, z up from its own foot.

        ______________________ top, or two stretchers
       |    |     |     |    |
  side |    | bay | bay |    | side      partition between two bays
       |____|_____|_____|____|
       |______bottom_________|
       |  |    kick       |  |           kick: cut out of the sides, a board behind it
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.cases.back import Back
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.face_frame import FaceFrame
from parametric.cases.plan_shape import CasePlan, PlanSide, Point, SideWord
from parametric.cases.slope import Slope, Under, size_slope
from parametric.figures import Figure, named
from parametric.hangings.hanging import Side
from parametric.names import join

Role = Literal[
    "side",
    "bottom",
    "top",
    "stretcher",
    "partition",
    "fixed shelf",
    "shelf",
    "back",
    "cover strip",
    "kick board",
    "packing",
]
OF_THE_BACK: tuple[Role, ...] = ("back", "cover strip")
"""What is sawn from the back's own board."""
Lies = Literal["upright", "level", "facing", "facing, level", "inwards", "sloping"]
"""How a board lies: `upright` a side (grain up, its face to left and right), `level` a shelf,
`facing` a back (grain up, its face to the front), `facing, level` a kick board, `inwards` a
plinth's cross piece (grain from front to back, on edge), `sloping` a top along its slope."""


SpaceUse = Literal["shelves", "open", "drawers", "inner drawer", "hanging", "equipment"]
"""What a space is for: `drawers` have their own fronts, an `inner drawer` is behind a door."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseBoard:
    """One board of a case: its size, and the low corner where it stands in the case's frame.

    `length` is along the grain, `x` and `y` stand in the case's frame whatever its turn. `banded` says whether its front edge wears an edge band, `shown`
    that its outside is seen and finished as the fronts are.
    """

    name: str
    role: Role
    lies: Lies
    length: Figure
    width: Figure
    thickness: Figure
    x: float
    y: float
    z: float
    banded: bool = False
    shown: bool = False
    turn: float = 0.0
    """How far it is turned from a board of a square case, deg, round to the left from above."""
    outline: tuple[Point, ...] = ()
    """What it is cut to, from its low corner: on its face where it lies level, on its low end where
    it stands; nothing where it is a rectangle."""
    sides: tuple[PlanSide, ...] = ()
    """Of one that lies level and is cut to a shape: its sides as those of its case go round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Space:
    """One space of a bay, mm from the case's foot; `what` is in it.

    `floored` says that a fixed shelf is under it.
    """

    what: SpaceUse
    foot: Figure
    head: Figure
    shelves: int = 0
    floored: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseBay:
    """One bay: its clear left and width, and its spaces from the foot up."""

    number: int
    left: Figure
    width: Figure
    spaces: tuple[Space, ...]

    def space_at(self, up: float) -> Space:
        """The space at a height above the case's foot, mm."""
        return next(s for s in self.spaces if float(s.foot) <= up <= float(s.head))


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontOpening:
    """What the fronts hang in or over, in the case's frame but for heights, which are the floor's."""

    left: Figure
    width: Figure
    foot: Figure
    head: Figure
    edge: Figure
    partition: Figure
    heads: tuple[Figure, Figure] | None = None
    """At its left and its right, where the top slopes; `head` is then the lower."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnedFront:
    """One front of such a case: what its fronts hang in or over, and where that frame stands.

    `at` is the left end of the front's line in the case's frame, `turn` how far the line is turned
    from the case's, deg, round to the left; `opening.left` counts from there. `arm` is "" where it is the only one.
    `hinged` is the side that its doors hang on, None where the design says.
    """

    arm: str
    word: SideWord
    at: Point
    turn: float
    opening: FrontOpening
    hinged: Side | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseBox:
    """The outside of a case and what is between its boards."""

    name: str
    width: Figure
    height: Figure
    depth: Figure
    thickness: Figure
    let_in: Figure
    foot: Figure
    """Its own foot above the highest floor."""
    clear_width: Figure
    bottom: Figure
    """The upper face of its bottom, from its own foot."""
    top: Figure
    """The under face of its top."""
    clear_height: Figure
    kick_high: Figure | None
    kick_deep: Figure | None
    slope: Slope | None = None
    """Of a top that follows a sloping ceiling; `height`, `top` and what is clear are then the least."""

    @property
    def highest(self) -> Figure:
        """Its height outside, where a top that slopes is highest."""
        slope = self.slope
        return self.height if slope is None else max(slope.left, slope.right, key=float)

    def high_at(self, side: Side) -> Figure:
        """Its height outside at its left or its right."""
        if self.slope is None:
            return self.height
        return self.slope.left if side == "left" else self.slope.right

    def top_over(self, left: float, right: float) -> Figure:
        """The under face of the top where it is lowest over a stretch, from its own foot, mm."""
        return self.top if self.slope is None else self.slope.lowest(left, right)


def size_box(
    spec: CabinetSpec,
    *,
    name: str,
    width: Figure,
    height: Figure,
    foot: Figure,
    thickness: Figure,
    frame: FaceFrame | None,
    under: Under | None = None,
) -> CaseBox:
    """The box of boards.

    Args:
        spec: the cabinet as written.
        name: of this one (`cabinet outer 1`).
        width: outside, mm.
        height: outside, kick and all, mm.
        foot: its foot above the highest floor, mm.
        thickness: of its boards as measured, mm.
        frame: the face frame before it, whose rail hides the bottom's edge.
        under: where a top that follows a slope ends.

    Without a face frame the bottom lies on the kick; behind one its upper face is level with
    that of the bottom rail. Source: common practice, no source.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    thick = at("board", thickness)
    wide, high = at("width", width), at("height", height)
    kick = None if spec.kick is None else at("kick", spec.kick[0])
    raised = Figure(0.0) if kick is None else kick
    bottom = raised + thick if frame is None else raised + frame.rail
    up = at("bottom's upper face", bottom)
    slope = None
    if under is not None:
        slope = size_slope(name=name, under=under, width=wide, thickness=thick)
    low = high - thick if slope is None else slope.lowest(0.0, wide)
    top = at("top's under face", low)
    return CaseBox(
        name=name,
        width=wide,
        height=high,
        depth=at("depth", spec.depth),
        thickness=thick,
        let_in=at("let in", spec.dado),
        foot=at("foot", foot),
        clear_width=at("clear width", wide - 2 * thick),
        bottom=up,
        top=top,
        clear_height=at("clear height", top - up),
        kick_high=kick,
        kick_deep=None if spec.kick is None else at("kick, deep", spec.kick[1]),
        slope=slope,
    )


def front_opening(box: CaseBox, frame: FaceFrame | None, frame_left: Figure) -> FrontOpening:
    """What a case's fronts hang in or over: the box itself, or the face frame before it.

    Args:
        box: the case.
        frame: the face frame, if there is one.
        frame_left: where the left of its opening stands in the case's frame, mm.
    """
    if frame is None:
        return FrontOpening(
            left=box.thickness,
            width=box.clear_width,
            foot=named(join(box.name, "foot of its opening"), box.foot + box.bottom),
            head=named(join(box.name, "head of its opening"), box.foot + box.top),
            edge=box.thickness,
            partition=box.thickness,
            heads=_heads(box),
        )
    kick = Figure(0.0) if box.kick_high is None else box.kick_high
    foot = named(join(box.name, "foot of its opening"), box.foot + kick + frame.rail)
    head = named(join(box.name, "head of its opening"), box.foot + box.height - frame.rail)
    return FrontOpening(
        left=frame_left,
        width=frame.opening,
        foot=foot,
        head=head,
        edge=frame.rail,
        partition=frame.centre_stile,
    )


def _heads(box: CaseBox) -> tuple[Figure, Figure] | None:
    """The under face of a top that slopes, at the left and the right of the box's opening."""
    if box.slope is None:
        return None
    left, right = (
        named(
            join(box.name, f"head of its opening at the {side}"),
            box.foot + box.slope.under(float(at)),
        )
        for side, at in (("left", box.thickness), ("right", box.width - box.thickness))
    )
    return left, right


def partition_lefts(
    box: CaseBox, opening: FrontOpening, bay_widths: Sequence[Figure]
) -> tuple[Figure, ...]:
    """Where the left faces of the partitions stand, each in the middle of what the fronts see.

    Args:
        box: the case.
        opening: what its fronts hang in.
        bay_widths: the clear width of each bay of the fronts, mm.
    """
    found: list[Figure] = []
    at = opening.left
    for number, width in enumerate(bay_widths[:-1], 1):
        at = at + width
        left = at + opening.partition / 2 - box.thickness / 2
        found.append(named(join(box.name, f"partition {number}", "left"), left))
        at = at + opening.partition
    return tuple(found)


def bay_places(box: CaseBox, partitions: Sequence[Figure]) -> tuple[tuple[Figure, Figure], ...]:
    """The left and the clear width of each bay between the boards."""
    count = len(partitions) + 1
    lefts = [box.thickness, *(left + box.thickness for left in partitions)]
    rights = [*partitions, box.width - box.thickness]
    found = []
    for number, (left, right) in enumerate(zip(lefts, rights, strict=True), 1):
        place = box.name if count == 1 else join(box.name, f"bay {number}")
        width = box.clear_width if count == 1 else named(join(place, "clear width"), right - left)
        found.append((left, width))
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class Service:
    """What one space for equipment has in its back, mm in the case's frame; `free_area` mm2.

    `slots` are the middles of air slots (x, z), `cable` that of the way for cables.
    """

    name: str
    slots: tuple[tuple[Figure, Figure], ...]
    slot: tuple[Figure, Figure] | None
    cable: tuple[Figure, Figure] | None
    across: Figure | None
    room: tuple[Figure, Figure, Figure, Figure]
    """Left and width, foot and head of the space."""
    free_area: Figure

    @property
    def holes(self) -> tuple[tuple[Figure, Figure], ...]:
        """The middles of all that is cut through the back."""
        return self.slots if self.cable is None else (*self.slots, self.cable)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A case resolved: its box, its bays, and every board of it."""

    spec: CabinetSpec
    box: CaseBox
    back: Back | None
    frame: FaceFrame | None
    opening: FrontOpening
    bays: tuple[CaseBay, ...]
    boards: tuple[CaseBoard, ...]
    shelf_depth: Figure | None
    behind: Figure
    """Where shelves and drawers end: at the front face of the back."""
    front_back: Figure
    """Where the backs of its fronts stand, from the front edges of its boards."""
    front_out: Figure
    """Where the faces of its fronts stand, before the front edges of its boards."""
    services: tuple[Service, ...] = ()
    plan: CasePlan | None = None
    """What it is from above; None of a rectangle."""
    turned_fronts: tuple[TurnedFront, ...] = ()
    """Its fronts, where they are not in the line of its wall."""

    @property
    def name(self) -> str:
        """`cabinet outer 1`."""
        return self.box.name

    @property
    def footprint(self) -> tuple[tuple[Point, ...], ...]:
        """It from above, in its own frame, in parts without inside corners, mm."""
        if self.plan is not None:
            return self.plan.convex_parts
        wide, deep = float(self.box.width), float(self.box.depth)
        return (((0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)),)

    @property
    def around(self) -> tuple[Figure, Figure]:
        """How wide and how deep it is, seen from above: of one that is no rectangle, round it, mm."""
        return (
            (self.box.width, self.box.depth) if self.plan is None else self.plan.around(self.name)
        )

    def bay_at(self, across: float) -> CaseBay:
        """The bay at a place across, from the outside of its left side, mm."""
        return next(
            bay for bay in self.bays if float(bay.left) <= across <= float(bay.left + bay.width)
        )

    def of_role(self, role: Role) -> tuple[CaseBoard, ...]:
        """Its boards of one role."""
        return tuple(board for board in self.boards if board.role == role)
