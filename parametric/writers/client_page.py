"""What the client's page is told of a job: numbers with their names, words, choices."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal

from parametric.catalog.finishes import (
    CLEAR_TIMBERS,
    GLASSES,
    METALS,
    PAINTS,
    ClearTimber,
    Glass,
    Metal,
    Paint,
)
from parametric.model import Placement, Slide, State, Step, Turn, along

Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLeaf:
    """A leaf as the page moves it. Lengths mm, in the world's frame.

    `name` is the model's node; `label` what the client is told it is ("Left door, in
    front"). `x` is its left outer edge when shut, `foot` its finished bottom, `front` the
    y of its front face (less than 0 when it hangs before the wall). `motion` is how it opens,
    as the model's `Group` has it. `goes_with` is the first of the leaves that open only
    together, itself among them; nothing where it opens alone. `after` is the leaf that it laps
    and that must be as far open as it is; `behind` those that must be wide open before it comes
    out, as the doors before an inner drawer. `along` is which way its width runs, seen from above:
    along another wall it is another. `pull` is the pull's centre from the left outer edge
    and `pull_up` above the highest floor.
    """

    name: str
    label: str
    width: float
    height: float
    x: float
    foot: float
    front: float
    thickness: float
    motion: tuple[Step, ...]
    goes_with: str = ""
    after: str = ""
    behind: tuple[str, ...] = ()
    along: tuple[float, float] = (1.0, 0.0)
    pull: float | None = None
    pull_up: float | None = None

    def across(self, part: float) -> tuple[float, float]:
        """How far it reaches across the opening when it has gone a part, 0 to 1, of its way."""
        corners = [
            along(
                Placement(origin=(self.x + x, self.front + y, self.foot)), self.motion, part
            ).origin[0]
            for x in (0.0, self.width)
            for y in (0.0, self.thickness)
        ]
        return min(corners), max(corners)


def go_together(
    motions: Mapping[str, tuple[Step, ...]], states: tuple[State, ...]
) -> Mapping[str, str]:
    """For each leaf by name the first of those that can only open with it; nothing where none can.

    Leaves that fold on one another come to rest by one and the same last step, about the jamb
    that carries them all, and no state has them apart. Halves of a door share their hinge
    line too, but some state has one of them open alone; and what only slides is tied to nothing.
    """
    ways = {
        name: (motion[-1], *(state.open.get(name, 0.0) for state in states))
        if motion and isinstance(motion[-1], Turn)
        else ()
        for name, motion in motions.items()
    }
    same = {name: [one for one, way in ways.items() if way == ways[name]] for name in ways}
    return {
        name: all_[0] if len(all_) > 1 and any(ways[name][1:]) else ""
        for name, all_ in same.items()
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A number of the job, as printed, under the name that `explain` and numbers.json know."""

    figure: str
    text: str


Saying = tuple[str | Amount, ...]
"""Words with the numbers in them told apart."""


def said(*pieces: str | Amount) -> Saying:
    """A saying; empty pieces are left out."""
    return tuple(piece for piece in pieces if piece != "")


def plain(saying: Saying) -> str:
    """The same as one line of text."""
    return "".join(piece if isinstance(piece, str) else piece.text for piece in saying)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chalk:
    """One dimension line in the picture: two points of the world, mm, and what is written on it.

    `leaf` is the leaf it moves with, if any. `aside` is where the words stand off a line
    too short to carry them, mm across and up.
    """

    start: Point
    end: Point
    text: str
    leaf: str = ""
    aside: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One size in plain words, and where it is seen.

    `key` is what it is known by, whatever it is called on the page. `opened` says how far
    each leaf should stand open to show it, 0 to 1; with `walks` the eye goes to each of its
    lines in turn, since they are small or far apart.
    """

    label: str
    value: Saying
    note: Saying = ()
    chalk: tuple[Chalk, ...] = ()
    opened: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    walks: bool = False
    key: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Palette:
    """What may be chosen, and what the price is for.

    Keys of what is quoted; none of a kind means that the design names none. `pictured` is
    the key shown first. Where any paint is quoted, in a colour still to be chosen, every
    paint's key is there.
    """

    paints: tuple[Paint, ...] = PAINTS
    timbers: tuple[ClearTimber, ...] = CLEAR_TIMBERS
    glasses: tuple[Glass, ...] = GLASSES
    metals: tuple[Metal, ...] = METALS
    quoted_wood: tuple[str, ...] = ()
    quoted_glass: tuple[str, ...] = ()
    quoted_metal: tuple[str, ...] = ()
    wood: str = "lichen"
    glass: str = "clear"
    metal: str = "brass"
    named_wood: str = ""
    """The design's own name of a colour or timber that is in no palette."""

    @property
    def wood_shown(self) -> Paint | ClearTimber:
        """The paint or timber that is shown first.

        Raises:
            ValueError: it is in no list.
        """
        woods: tuple[Paint | ClearTimber, ...] = (*self.paints, *self.timbers)
        for wood in woods:
            if wood.key == self.wood:
                return wood
        message = f"the palette has no {self.wood!r} to show"
        raise ValueError(message)

    @property
    def glass_shown(self) -> Glass | None:
        """The glass that is shown first; none where the job has no choice of any."""
        return next((glass for glass in self.glasses if glass.key == self.glass), None)

    @property
    def metal_shown(self) -> Metal | None:
        """The metal of the pulls that is shown first; none where the job has no choice of any."""
        return next((metal for metal in self.metals if metal.key == self.metal), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scenery:
    """What the page draws of the site beside the opening, mm: nothing that is made or sold.

    `trims` are the pieces that stand round the opening, each its outline from the front,
    (x, z), and the y of its two faces. `brackets` are (x, y, z) of the middle of each track bracket where it meets the track,
    `skirting` its height and thickness, with the stretch (left, right) it stays out of.
    """

    skirting: tuple[float, float] = (95.0, 16.0)
    skirting_clear: tuple[float, float] = (0.0, 0.0)
    brackets: tuple[Point, ...] = ()
    trims: tuple[tuple[tuple[tuple[float, float], ...], float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """A plane piece of the room as it was measured: its corners, in the world's frame, mm.

    They run counter-clockwise for whoever sees it from within the room.
    """

    kind: Literal["wall", "floor", "ceiling"]
    corners: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Niche:
    """Where casework stands: the room's surfaces about it, leaning as they lean.

    `face` is the y of the face of the wall that it is in, `back` of the wall behind it; `head` is
    the line (x, z) in which that wall meets the room's ceiling, empty where it is not measured.
    """

    surfaces: tuple[Surface, ...]
    face: float
    back: float
    head: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPlace:
    """A place in the client's own house from which the doors are seen.

    `far` is how far from the doors, mm; `side` which side of them one stands.
    """

    name: str
    seated: bool
    far: float
    side: Literal["left", "middle", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Doorway:
    """Where one of a job's doors stands, mm in the world; as in `PreviewPage` where it is alone.

    `leaves` are the names of its own, `called` what the client calls it, `at` where the zero
    of its elevation stands across the room. `skirting_clear` is
    the stretch of wall, left and right, that skirting stays out of.
    """

    called: str
    at: float
    leaves: tuple[str, ...]
    opening: tuple[tuple[float, float], ...]
    floor: tuple[tuple[float, float], ...]
    way: tuple[float, float]
    clear_way: float | None
    skirting_clear: tuple[float, float]
    elevation_svg: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PreviewPage:
    """All that the page shows of a job but the model itself.

    `opening` runs from the foot of the left jamb up, over the head and down to the foot of
    the right, as measured; `floor` from left to right; both (x, z) in mm, never squared up.
    `way` is the clear way's left and right jamb where it is narrowest, and `clear_way` the
    most that the open leaves leave of it. `top` is the highest thing that must be seen.
    `unit` is the unit of the job's numbers. `elevation_svg` is the drawing shown until the
    picture is there, and instead of it. `ticks` are what the client must say to have
    seen; `glued` gives the boards' width of parts that are glued up, by their mark. `places`
    are the client's own, instead of a sofa that they may not have. `option` is the letter of
    the job's option that this is, and `called` what people call it, where it has several.
    `niche` is the room about casework, in the place of a wall with a room behind it. `cases`
    says that the leaves are fronts of cases, and `all_open` that all of them may stand open
    at once. `doorways` are those of a job of several doors from left to right, the first of
    which is told again as the page's own opening.
    """

    job: str
    subtitle: str
    revision: str
    mark: str
    unit: Literal["mm", "in"]
    leaves: tuple[PageLeaf, ...]
    opening: tuple[tuple[float, float], ...]
    floor: tuple[tuple[float, float], ...]
    wall: float
    way: tuple[float, float]
    clear_way: float | None
    top: float
    facts: tuple[Fact, ...]
    elevation_svg: str
    maker: str = ""
    revision_date: str = ""
    fingerprint: str = ""
    thing: Saying = ()
    ticks: tuple[Saying, ...] = ()
    palette: Palette = Palette()
    scenery: Scenery = Scenery()
    places: tuple[OwnPlace, ...] = ()
    glued: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    option: str = ""
    called: str = ""
    niche: Niche | None = None
    cases: bool = False
    all_open: bool = False
    doorways: tuple[Doorway, ...] = ()

    @property
    def moves(self) -> Literal["slide", "swing", "fold", "open"]:
        """What its leaves do; one that turns on a line that moves itself folds.

        Leaves of several doors that do not all do the same simply open.
        """
        motions = [leaf.motion for leaf in self.leaves]
        if self.doorways:
            ways = {tuple(type(step) for step in motion) for motion in motions}
            if len({way[:1] for way in ways}) > 1 or len({len(way) > 1 for way in ways}) > 1:
                return "open"
        if not any(isinstance(step, Turn) for motion in motions for step in motion):
            return "slide"
        folds = any(
            len(motion) > 1 or (motion and isinstance(motion[0], Slide)) for motion in motions
        )
        return "fold" if folds else "swing"
