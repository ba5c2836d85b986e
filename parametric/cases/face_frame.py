"""A face frame: solid timber before a case, made to the walls on either side and scribed to them.

seen from the front
   wall  ________________________________________  wall
    |~~~|      rail                              |~~|
    |~~~|________________________________________|~~|     ~ what is scribed away: the wall leans
    |~~~|                  |c|                   |~~|
    |~~~|   opening        |c|     opening       |~~|     c centre stile
    |~~~|__________________|c|___________________|~~|
    |~~~|________________________________________|~~|
      wall stile: shows at least what is asked for, where the wall stands out most
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, largest, named, smallest
from parametric.hangings.hanging import Side
from parametric.names import join
from parametric.written import Block, Length, Name

FrameJoint = Literal["pocket screw", "dowel", "loose tenon"]
"""What holds a rail to a stile."""


class FaceFrameSpec(Block):
    """A face frame as written."""

    timber: Name | None = None
    thickness: Length
    wall_stiles: Length = Field(description="least to show of each once it is scribed")
    centre_stiles: Length = Field(description="between two bays")
    rails: Length
    scribe: Length = Field(description="spare beyond the widest point of each wall")
    joined_by: FrameJoint = Field(description="how rails meet stiles; pockets open behind")


@dataclass(frozen=True, slots=True, kw_only=True)
class Scribe:
    """What is scribed off one wall stile, mm, by place up the wall; and what it is made as."""

    side: Side
    edge: Figure
    """Where the made edge stands, from the left foot of the opening."""
    away: tuple[tuple[str, Figure], ...]
    blank: Figure
    """Width of the stile as it is made."""
    shows: Figure
    """What is seen of it where it is narrowest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceFrame:
    """A face frame resolved, mm, from the left foot of the opening."""

    thickness: Figure
    left: Scribe
    right: Scribe
    between: Figure
    """From wall to wall where each lies farthest back: what the frame must reach."""
    width: Figure
    """As made, edge to edge."""
    opening_left: Figure
    opening: Figure
    centre_stile: Figure
    rail: Figure


def size_face_frame(
    spec: FaceFrameSpec,
    *,
    name: str,
    left_wall: tuple[tuple[str, Figure], ...],
    right_wall: tuple[tuple[str, Figure], ...],
) -> FaceFrame:
    """Size a face frame between two walls that are not plumb.

    Args:
        spec: the frame as written.
        name: what its numbers begin with (`cabinet base`).
        left_wall: the left wall by place, from the left foot of the opening, mm.
        right_wall: the right wall, likewise.

    The made edge stands `scribe` beyond the wall's farthest point, so that nothing is short
    anywhere; the stile is wide enough to show `wall stiles` where the wall stands out most.
    """
    place = join(name, "face frame")

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    lefts, rights = [x for _, x in left_wall], [x for _, x in right_wall]
    left_out, left_in = smallest(*lefts), largest(*lefts)
    right_out, right_in = largest(*rights), smallest(*rights)
    left_edge = at("left edge", left_out - spec.scribe)
    right_edge = at("right edge", right_out + spec.scribe)
    left_away = tuple(
        (where, at(f"scribed off at the left {where}", x - left_edge)) for where, x in left_wall
    )
    right_away = tuple(
        (where, at(f"scribed off at the right {where}", right_edge - x)) for where, x in right_wall
    )
    shows = at("wall stile shows", spec.wall_stiles)
    left_blank = at("left wall stile width", shows + (left_in - left_edge))
    right_blank = at("right wall stile width", shows + (right_edge - right_in))
    width = at("width", right_edge - left_edge)
    opening = at("opening", width - left_blank - right_blank)
    centre = at("centre stile width", spec.centre_stiles)
    return FaceFrame(
        thickness=at("thickness", spec.thickness),
        left=Scribe(side="left", edge=left_edge, away=left_away, blank=left_blank, shows=shows),
        right=Scribe(
            side="right", edge=right_edge, away=right_away, blank=right_blank, shows=shows
        ),
        between=at("widest between the walls", right_out - left_out),
        width=width,
        opening_left=at("left of the opening", left_edge + left_blank),
        opening=opening,
        centre_stile=centre,
        rail=at("rail height", spec.rails),
    )
