"""What is bored in one case, as numbers: joints, hinge plates, pins, and the boards they are in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.cases.boring import Bite, BoringSpec, round_bite
from parametric.cases.butt_joints import (
    CarcassScrews,
    Dowels,
    InEnd,
    OnFace,
)
from parametric.cases.case import CaseBoard
from parametric.cases.case_tenons import Tenons
from parametric.cases.fixings import TooShort
from parametric.cases.frame_joints import FrameJoints
from parametric.cases.hinge_blocks import HingeBlocks
from parametric.cases.pin_rows import NoPins, PinRows
from parametric.cases.plate_holes import PlateHoles
from parametric.cases.pocket_screws import BroadFace, PocketScrews
from parametric.figures import Figure
from parametric.model import Face
from parametric.resolve.case_slides import SlideFixing

Held = Dowels | CarcassScrews | PocketScrews | Tenons | TooShort
"""What holds a joint, or that it is too short for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseJoint:
    """A joint: the board whose end it is, and where that stands on the face of another.

    `own` are its holes in the face that looks at the end, `taken` what else is cut there; `end`
    is the thickness of the board that is bored in its end, mm, and `hidden` the face of that
    board that is seen least, where pockets open. `covered` is the board whose end stands where
    screws go in, from the other side; empty where none does. Where it is `clamped` the end, no
    end of its blank, is bored through the other's holes when the two are put together.
    """

    held: Held
    board: str
    at: InEnd
    into: str
    on: OnFace
    looks: Face
    hidden: BroadFace
    end: Figure
    own: tuple[Bite, ...]
    taken: tuple[Bite, ...] = ()
    covered: str = ""
    clamped: bool = False

    @property
    def reach(self) -> Figure:
        """How deep it goes from the face that it looks at, mm."""
        match self.held:
            case Dowels() | Tenons():
                return self.held.in_face
            case CarcassScrews():
                return self.held.through
            case PocketScrews():
                return self.held.into
            case TooShort():
                return Figure(0.0)
            case _:
                assert_never(self.held)


@dataclass(frozen=True, slots=True, kw_only=True)
class PinBoard:
    """A board with lines of pins, mm from its own front edge."""

    board: CaseBoard
    face: Face
    lines: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BayPins:
    """The pins of one space of a bay, mm from the case's foot, and the boards they are bored in.

    `boards` are all of them where they are not a left and a right one alike.
    """

    rows: PinRows | NoPins
    low: float
    high: float
    left: CaseBoard
    right: CaseBoard
    boards: tuple[PinBoard, ...] = ()

    @property
    def a_shelf(self) -> int:
        """How many pins a shelf lies on."""
        return sum(len(own.lines) for own in self.boards) if self.boards else 4


@dataclass(frozen=True, slots=True, kw_only=True)
class SidePlates:
    """The plates of one leaf, and the board and the face that they are screwed to: an upright
    one beside a door, a level one over or under a flap.

    `taken` is what else is cut into that face; `depth` how far the board goes back inside, mm.
    """

    plates: PlateHoles
    board: CaseBoard
    face: Face
    depth: Figure
    taken: tuple[Bite, ...]
    blocks: HingeBlocks | None = None
    """What brings the board out to the edge of a face frame; the screws are in them."""
    crossing: tuple[Bite, ...] = ()
    """Boards that stand where such a block may not."""
    front: float | None = None
    """How far behind the plates' own front edge that of the board stands, mm; None: as it does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StayHole:
    """The pilot of one stay's fixing in the board beside it, mm: `up` from the case's foot and
    `back` from its front edges. `taken` is what else is cut into that face.
    """

    name: str
    board: CaseBoard
    face: Face
    up: Figure
    back: Figure
    across: Figure
    deep: Figure
    taken: tuple[Bite, ...]

    @property
    def bite(self) -> Bite:
        """What it takes of the face."""
        return round_bite(self.name, self.up, self.back, self.across)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoredCase:
    """Everything that is bored in one case."""

    name: str
    spec: BoringSpec
    joints: tuple[CaseJoint, ...]
    plates: tuple[SidePlates, ...]
    pins: tuple[BayPins, ...]
    stays: tuple[StayHole, ...] = ()
    slides: tuple[SlideFixing, ...] = ()
    frame: FrameJoints | None = None
    """The joints of the face frame before it."""
