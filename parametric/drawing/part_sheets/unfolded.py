"""A part opened out like a carton: each side lies beside the edge it shares with the face.

              over       the edge above the face, and the back above that when it hangs there
      left    FACE    right
              under      the edge below the face, and the back below that

Each side is drawn in two coordinates: across, to the right, and up. On the face and on all
that hangs above or below it, across runs along the part from its finished foot; beside the
ends it runs through the thickness.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.drawing.plane import Point, Polygon
from parametric.model import Face, Part, Vector, face_point
from parametric.trade.part_cuts import face_name, face_side, trimmed

Side = Literal["face", "back", "over", "under", "left", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Unfolded:
    """A part and which way up it is drawn; sizes mm.

    `turned`: the face is the blank's low side, so its high edge comes to lie below.
    """

    part: Part
    turned: bool
    foot: float
    length: float
    head: float
    width: float
    thickness: float

    def side(self, face: Face) -> Side:
        """Where a face of the blank comes to lie."""
        match face:
            case "low end":
                return "left"
            case "high end":
                return "right"
            case "low edge":
                return "over" if self.turned else "under"
            case "high edge":
                return "under" if self.turned else "over"
            case "low face":
                return "face" if self.turned else "back"
            case "high face":
                return "back" if self.turned else "face"

    def of(self, side: Side) -> Face:
        """The face of the blank that a side shows."""
        faces: tuple[Face, ...] = (
            "low end",
            "high end",
            "low edge",
            "high edge",
            "low face",
            "high face",
        )
        return next(face for face in faces if self.side(face) == side)

    def word(self, side: Side) -> str:
        """What the shop calls a side."""
        return face_name(self.part, self.of(side))

    def place(self, side: Side, point: Vector) -> Point:
        """A point of the part as a side shows it."""
        x, y, z = point
        along, rise, deep = x - self.foot, self.rise(y), self.deep(z)
        match side:
            case "face":
                return (along, rise)
            case "back":
                return (along, self.width - rise)
            case "under":
                return (along, self.thickness - deep)
            case "over":
                return (along, deep)
            case "left":
                return (self.thickness - deep, rise)
            case "right":
                return (deep, rise)

    def on_face(self, face: Face, u: float, v: float, depth: float, side: Side) -> Point:
        """A point on one face of the blank, some way into the wood, as a side shows it."""
        u, v, depth = float(u), float(v), float(depth)
        x, y, z = face_point(face, self.part.blank, u, v, depth)
        return self.place(side, (float(x), float(y), float(z)))

    def path(self, face: Face, points: Polygon, side: Side) -> Polygon:
        """Points (u, v) on the surface of a face, as a side shows them."""
        return tuple(self.on_face(face, u, v, 0.0, side) for u, v in points)

    def rise(self, y: float) -> float:
        """How far up the face a place across the width lies."""
        return self.width - y if self.turned else y

    def deep(self, z: float) -> float:
        """How far behind the face a place in the thickness lies."""
        return z if self.turned else self.thickness - z

    def cross(self, y: float, z: float) -> Point:
        """A place in a cross-section, seen towards the top end with the face up."""
        return (self.width - self.rise(y), self.thickness - self.deep(z))

    def height(self, side: Side) -> float:
        """How tall a side is drawn."""
        return self.thickness if side in ("over", "under") else self.width


def unfolded(part: Part) -> Unfolded:
    """Open a part out, its face to the viewer and its foot to the left."""
    low, high = float(trimmed(part, "low end")), float(trimmed(part, "high end"))
    blank = part.blank
    return Unfolded(
        part=part,
        turned=face_side(part) == "low face",
        foot=low,
        length=float(blank.length) - low - high,
        head=high,
        width=float(blank.width),
        thickness=float(blank.thickness),
    )
