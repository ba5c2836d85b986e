"""The back of a case: let into a groove, into a rebate, or planted on.

seen from above, at one corner
     side                  side                 side
    |    |___             |    |               |    |
    |    ____| back       |  __|____ back      |    |________
    |    |                | |               ___|____|________ back
    groove, from the back   rebate              planted
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, named
from parametric.names import join
from parametric.written import Block, Length, Name

Held = Literal["groove", "rebate", "planted"]


class BackSpec(Block):
    """A back as written."""

    held: Held = Field(description="how it is held: in a groove, in a rebate, or planted on")
    board: Name | None = None
    thickness: Length
    groove: Length = Field(description="how deep the groove or the rebate's width")
    from_back: Length = Field(description="from the groove to the back edges of the case")
    clearance: Length = Field(description="free at each edge")
    strip: Length | None = Field(
        default=None,
        description="how wide a strip is behind a joint that stands on no partition or shelf",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Back:
    """A back resolved, mm: its size, and where its front face stands from the case's front."""

    held: Held
    thickness: Figure
    groove: Figure
    clearance: Figure
    width: Figure
    height: Figure
    front: Figure
    reach: Figure
    """How far each edge stands past the clear opening."""
    room_behind: Figure
    """From its back face to the back edges of the case."""
    strip: Figure | None = None
    """How wide a strip over a joint is, where one is allowed."""


def size_back(
    spec: BackSpec,
    *,
    name: str,
    clear_width: Figure,
    clear_height: Figure,
    depth: Figure,
    edge: Figure,
) -> Back:
    """Size a back: the opening + 2 (groove - clearance), both ways.

    Args:
        spec: the back as written.
        name: of the case (`cabinet base`).
        clear_width: between the sides, mm.
        clear_height: between bottom and top, mm.
        depth: of the case, mm.
        edge: how thick sides, top and bottom are, mm: a planted back covers their edges.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, "back", quantity), value)

    thickness = at("thickness", spec.thickness)
    clearance = at("clearance", spec.clearance)
    groove = at("let in", edge if spec.held == "planted" else spec.groove)
    reach = at("past the opening at each edge", groove - clearance)
    front = back_front(spec, depth)
    return Back(
        held=spec.held,
        thickness=thickness,
        groove=groove,
        clearance=clearance,
        width=at("width", clear_width + 2 * groove - 2 * clearance),
        height=at("height", clear_height + 2 * groove - 2 * clearance),
        front=at("front face", front),
        reach=reach,
        room_behind=depth - front - thickness,
        strip=spec.strip,
    )


def back_front(spec: BackSpec, depth: Figure) -> Figure:
    """Where a back's front face stands, from the front edges of a case of this depth, mm."""
    match spec.held:
        case "groove":
            return depth - spec.from_back - spec.thickness
        case "rebate":
            return depth - spec.thickness
        case "planted":
            return depth
