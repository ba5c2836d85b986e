"""How this workshop bores a case: pins, hinge plates, dowels, tenons, screws, and the wood between.

All are habits of a line of holes 32 apart, its first line 37 from the front edges; a design or a
house file may change each.

      front edge
    |  37 |        32 n         |
    |     o                     o     a height: one pin in each line, in both sides of a bay
    |     o                     o  |
    |     o                     o  | 32
    |  plate of a hinge on the front line, 32 between its two screws
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.model import Making
from parametric.written import Block, Length, LengthPair, LengthTriple

IN_FACE = Making(by="router", tool="bit in the router; else a drill, a stop and a template")
IN_END = Making(by="bench", tool="dowelling jig, bit with a stop")


Rows = Literal["shared out", "about the middle"]
"""Pins with what is over shared above and below a space, or alike above and below the middle of the
board, so that it may stand on either end."""


class BoringSpec(Block):
    """How a case is bored, as written."""

    pins: LengthPair = Field(description="across x deep")
    least_pin: Length = Field(description="least depth that a shelf's pin holds in")
    rows: Rows = Field(description="where a line of pins begins")
    pitch: Length = Field(description="from hole to hole in a line")
    from_front: Length = Field(description="from the front edges to the front line")
    from_back: Length = Field(description="least from the back line to the back")
    from_ends: Length = Field(description="least from a shelf, top or bottom to a pin")
    web: Length = Field(description="least wood between a hole and what else is cut")
    behind: Length = Field(description="least wood behind a hole")
    plate_holes: LengthPair = Field(description="across x deep")
    plate_pitch: Length = Field(description="between the two screws of a hinge's plate")
    slide_holes: LengthPair = Field(description="across x deep, of a drawer slide's screws")
    dowel: LengthPair = Field(description="thick x long")
    dowel_pitch: Length = Field(description="about so far apart, in whole steps of the pitch")
    dowel_from_edge: Length = Field(
        description="from the front edge to the first, least behind the last"
    )
    loose_tenon: LengthTriple = Field(description="thick x wide x long; slots are as wide as thick")
    tenon_play: Length = Field(description="a slot is so much longer than its tenon is wide")
    screw: LengthPair = Field(description="thick x long, of a one-piece carcass screw")
    screw_head: LengthPair = Field(description="across x deep")
    screw_pilot: Length = Field(description="across the hole that its thread cuts into")
    pocket_screw: LengthPair = Field(
        description="thick x long; where nobody says, as long as the boards let it be"
    )
    pocket: Length = Field(description="across a pocket that a screw's head sinks into")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bite:
    """What is cut into a face already, mm: up the case, and from its front edges backwards."""

    name: str
    low: float
    high: float
    near: float
    far: float


def round_bite(name: str, up: float, back: float, across: float) -> Bite:
    """A hole as a bite: the square about it."""
    half = float(across) / 2
    return Bite(
        name=name,
        low=float(up) - half,
        high=float(up) + half,
        near=float(back) - half,
        far=float(back) + half,
    )


def too_near(hole: Bite, taken: Sequence[Bite], web: float) -> Bite | None:
    """The first thing that leaves less than `web` beside a hole; a web just kept is kept."""
    least = float(web) - 1e-6
    return next(
        (
            one
            for one in taken
            if max(one.low - hole.high, hole.low - one.high) < least
            and max(one.near - hole.far, hole.near - one.far) < least
        ),
        None,
    )


def clashes(
    holes: Sequence[Bite], taken: Sequence[Bite], web: float
) -> Iterator[tuple[Bite, Bite]]:
    """Each hole that has less than `web` beside it, with what is there; a hole beside itself is none."""
    for hole in holes:
        others = [one for one in taken if one != hole]
        if (other := too_near(hole, others, web)) is not None:
            yield hole, other
