"""A drawer box as written: its sizes, what it runs on, and how its corners are joined.

A block for each thing that a box runs on, because each asks for other sizes.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from parametric.figures import Figure, exceeds, plain
from parametric.loaded import Load
from parametric.written import Block, Count, Length, LengthPair, Mass, Name, Words, refuse

LEAST_STEP = 5.0
"""mm. Tails, fingers, dowels or lengths nearer than this are a slip of the pen; no source."""


def _step(length: Figure) -> Figure:
    if exceeds(LEAST_STEP, length):
        raise refuse(
            "step_too_small",
            '"{key}" says how far apart things are, or how wide: 5 mm at least.',
            found=plain(length),
            allowed="5 mm or more",
        )
    return length


Step = Annotated[Length, AfterValidator(_step)]
"""How far apart equal things are, or how wide: never so small that there is no end of them."""

CornerWord = Literal["half-blind dovetail", "through dovetail", "box", "rebate", "dowel", "screw"]
Slope = Literal["1 in 6", "1 in 7", "1 in 8"]


class CornerBlock(Block):
    """How the corners of a box are joined; each joint reads its own sizes of these."""

    joint: CornerWord
    back_joint: CornerWord | None = Field(
        default=None, description="of the back corners, where it is not that of the front ones"
    )
    slope: Slope
    tails: Count | None = Field(default=None, description="on a corner, when it is said")
    tails_every: Step = Field(description="about how far apart tails are, when not counted")
    pin: Length = Field(description="a pin's narrow side; half of it at either edge")
    lap: Length | None = Field(
        default=None, description="left before a half-blind tail: a third of the front if not said"
    )
    finger: Step = Field(description="about how wide the fingers of a box joint are")
    rebate: Length | None = Field(
        default=None, description="depth, into the side: half of the side if not said"
    )
    dowel: LengthPair = Field(description="thick x long")
    screw: LengthPair = Field(description="thick x long")
    fixings_every: Step = Field(description="dowels or screws of a corner, apart at most")
    fixings_in: Length = Field(
        description="the outermost ones, from the bottom's groove and the top"
    )


class DrawerBlock(CornerBlock):
    """What is written of every drawer box."""

    kind: str
    sides: Length = Field(description="thickness")
    ends: Length | None = Field(
        default=None, description="thickness of the box's front and back, if not that of the sides"
    )
    height: Length | None = Field(default=None, description="all the room there is if not said")
    length: Length | None = Field(default=None, description="the longest that fits if not said")
    below: Length = Field(description="from the foot of its opening to the box")
    above: Length = Field(description="room it needs above it, to be lifted in and out")
    behind: Length = Field(description="room it needs behind it")
    bottom: Length = Field(description="thickness")
    bottom_board: Name
    bottom_groove: Length = Field(description="depth")
    bottom_clearance: Length = Field(description="at each edge")
    bottom_up: Length = Field(description="from the low edge of the box to the groove")
    bottom_span: Count = Field(description="times its thickness that a bottom may be wide")
    load: Load = Field(description="what lies in it, over the bottom or along its width")
    draws_out: Length | None = None
    timber: Name | None = None
    board: Name | None = None
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


class SideSlidesSpec(DrawerBlock):
    """A box between two slides, one on each side of it."""

    kind: Literal["side slides"]
    slides: Length = Field(description="room for one, each side")
    lengths_every: Step = Field(description="slides are sold in lengths so far apart")
    carries: Mass | None = None


class UnderSlidesSpec(DrawerBlock):
    """A box over two slides that hide beneath it; their data sheet says nearly all."""

    kind: Literal["under slides"]
    inside_less: Length = Field(description="the box is narrower inside than its opening by this")
    thickest_side: Length = Field(description="that the slides take")
    back_notch: LengthPair = Field(description="wide x high, in the low corners of the back")
    lengths_every: Step = Field(description="slides are sold in lengths so far apart")
    carries: Mass | None = None


class WoodenRunnersSpec(DrawerBlock):
    """A box whose sides run on strips of wood in the case."""

    kind: Literal["wooden runners"]
    beside: Length = Field(description="room each side")
    runner: LengthPair = Field(description="wide x thick")
    kicker: LengthPair | None = Field(
        default=None, description="wide x thick, above the sides, so that it cannot tip"
    )
    kicker_gap: Length = Field(description="between a kicker and the sides under it")
    set_back: Length = Field(description="of the runners, from the front edges of the case")


DrawerSpec = SideSlidesSpec | UnderSlidesSpec | WoodenRunnersSpec

DRAWER_KINDS: Mapping[str, type[DrawerBlock]] = MappingProxyType(
    {
        "side slides": SideSlidesSpec,
        "under slides": UnderSlidesSpec,
        "wooden runners": WoodenRunnersSpec,
    }
)
