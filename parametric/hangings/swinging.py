"""Leaves that swing: the line they turn about, how far they stand in the way, how they move.

seen from above, hinged on the left, opening towards the viewer

jamb |gap|________leaf________|      the pin stands in the middle of the gap,
      (o)                            proud of the knuckle face
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, exceeds, named, plain
from parametric.hangings.closing_arc import bevel_across, closing_gap
from parametric.hangings.hanging import DoorBlock, Side
from parametric.model import Turn
from parametric.names import join
from parametric.problems import Problem

Opens = Literal["towards you", "away from you"]

RIGHT_ANGLE = 90.0
"""A leaf is shown and proved open at a right angle to its opening, deg."""


MOST_BEVEL = 20.0
"""A closing edge planed to more than this is a slip of the pen, deg; 2 to 5 are usual. Common
practice, no source."""


def bevel_faults(door: DoorBlock, bevel: Figure) -> tuple[Problem, ...]:
    """A closing edge that nobody would plane so."""
    if not exceeds(bevel, MOST_BEVEL):
        return ()
    return (
        Problem(
            code="bevel_too_steep",
            level="stop",
            message=f"An edge bevel of {plain(bevel)} degrees is more than anybody planes.",
            where=door.line("edge bevel"),
            about=door.heading,
            found=f"{plain(bevel)} deg",
            allowed=f"0 to {plain(MOST_BEVEL)} deg",
            fix="Write 2 to 5 deg, or 0 deg for a square edge.",
            unreadable=True,
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Swing:
    """How one leaf swings, mm and deg.

    `plane` is the middle of the leaf off the wall face; `in_the_way` how much of the opening
    the open leaf takes up; `reach` how far it comes out of the knuckle face's plane; `needs`
    the least gap that lets its closing edge by.
    """

    plane: Figure
    knuckles: Literal["front", "back"]
    turn: Turn
    angle: Figure
    in_the_way: Figure
    reach: Figure
    needs: Figure


def swing_of(
    *,
    name: str,
    hinge_side: Side,
    opens: Opens,
    left: Figure,
    width: Figure,
    thickness: Figure,
    gap: Figure,
    pin_out: Figure,
    wall: Figure | None,
    bevel: Figure | None = None,
    pin_beside: Figure | None = None,
    plane: Figure | None = None,
) -> Swing:
    """How a leaf swings, hung flush with the side of the wall it opens to unless it is said.

    Args:
        name: `leaf A`.
        hinge_side: the edge it is hung by.
        opens: seen from the front.
        left: its left edge from the left edge of the opening, mm.
        width: of the leaf, mm.
        thickness: of the leaf, mm.
        gap: between its hinge edge and the jamb, mm.
        pin_out: the pin's middle proud of the knuckle face, mm.
        wall: thickness of the wall, mm; None where it was not measured.
        bevel: of the edge that closes, deg; None for a square one.
        pin_beside: the pin's middle beyond the hinge edge, mm, less than nothing within the leaf;
            None in the middle of the gap.
        plane: the middle of the leaf off the wall face, mm, outwards positive; None where it
            is flush with the side that it opens to.

    Source: geometry of the turn about the pin; flush with the face that it opens to, common
    practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    towards = opens == "towards you"
    half = thickness / 2
    beside = gap / 2 if pin_beside is None else pin_beside
    off_jamb = gap / 2 if pin_beside is None else gap - pin_beside
    if plane is None:
        plane = -half if towards or wall is None else half - wall
    plane = at("middle off the wall face", plane)
    pin_x = at(
        "pin from the left of the opening",
        left - beside if hinge_side == "left" else left + width + beside,
    )
    pin_y = -float(plane) - float(half + pin_out) if towards else float(half + pin_out - plane)
    clockwise = (hinge_side == "left") == towards
    angle = at("opens by", RIGHT_ANGLE, "deg")
    return Swing(
        plane=plane,
        knuckles="front" if towards else "back",
        turn=Turn(
            point=(pin_x, pin_y, 0.0),
            axis=(0.0, 0.0, 1.0),
            angle=-float(angle) if clockwise else float(angle),
        ),
        angle=angle,
        in_the_way=at("stands in the way when open", off_jamb + pin_out + thickness),
        reach=at("reach when open", pin_out + beside + width),
        needs=closing_gap(
            width=width,
            thickness=thickness,
            pin_out=pin_out,
            pin_beside=beside,
            name=join(name, "gap that the closing edge needs"),
            bevel=None
            if bevel is None
            else bevel_across(thickness, bevel, join(name, "bevel across the edge")),
        ),
    )
