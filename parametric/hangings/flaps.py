"""Flaps of a case: how one turns about its level edge, towards the room and up or down.

seen from the left, the room at the left

lift-up, by its top            drop-down, by its bottom
 ____________(o)                       | shut
 open         | shut                   |
              |                        |
              |             ___open___(o)
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, cosine, exceeds, named, sine
from parametric.model import Turn
from parametric.names import join

FlapSide = Literal["top", "bottom"]
"""The level edge that a flap turns about: it lifts up by its top, and drops down by its bottom."""
LEVEL = 90.0
"""A flap that nothing holds is shown and proved open at a right angle, deg."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HungFlap:
    """How a leaf hangs that turns about a level edge, mm and deg.

    `line` is what it turns about, above the highest floor: the corner of its face at the hinge
    edge. `angle` is how far it opens, `reach` how far it then stands out before its own face,
    `tip` where its free edge is then, above the highest floor.
    """

    side: FlapSide
    angle: Figure
    line: Figure
    reach: Figure
    tip: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class FlapWay:
    """How a flap hangs, and the turn that opens it."""

    hung: HungFlap
    turn: Turn


def flap_way(
    leaf: str,
    side: FlapSide,
    *,
    foot: Figure,
    height: Figure,
    face_out: Figure,
    opens: Figure | None,
) -> FlapWay:
    """How a flap turns about the corner of its face at its hinge edge.

    Args:
        leaf: `leaf A`.
        side: the edge it turns about.
        foot: of the leaf, above the highest floor, mm.
        height: of the leaf, mm.
        face_out: how far its face stands before the case's front, mm.
        opens: how far it is held open, deg; None where nothing holds it.

    Cup hinges move on links; the corner stands for them, as it does for a door on cups. Source:
    geometry.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(leaf, quantity), value, unit)

    angle = at("opens by", LEVEL if opens is None else opens, "deg")
    line = at("turns about, above the floor", foot + height if side == "top" else foot)
    out = height if exceeds(angle, LEVEL) else height * sine(angle)
    fallen = height * cosine(angle)
    return FlapWay(
        hung=HungFlap(
            side=side,
            angle=angle,
            line=line,
            reach=at("reach when open", out),
            tip=at(
                "free edge when open, above the floor",
                line - fallen if side == "top" else line + fallen,
            ),
        ),
        turn=Turn(
            point=(0.0, -float(face_out), float(line)),
            axis=(1.0, 0.0, 0.0),
            angle=-float(angle) if side == "top" else float(angle),
        ),
    )
