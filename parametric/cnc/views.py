"""What the cutter sees: from a face's own (u, v) to the x and y of a machine file.

A file is seen from above the cutter, so x goes right, y goes up and x × y points out of
the wood. On a part x is always u (along the length; on an end, across the width), and
it is y that turns between a face and the one opposite, which is what the wood does when
it is rolled over about its length:

    face         out of    x in       y in         the lower left corner of the
                 the wood  the part   the part     blank, and what lies along y = 0
    high face    +z        +x         +y           low end, low edge
    low face     -z        +x         -y           low end, high edge
    low edge     -y        +x         +z           low end, low face
    high edge    +y        +x         -z           low end, high face
    high end     +x        +y         +z           low edge, low face
    low end      -x        +y         -z           low edge, high face

On a glued leaf, x runs from the left edge as seen from above that face and y up from
the finished foot; the back is the leaf turned over about its upright axis.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.model import Blank, Face, Placement, Vector, face_point, face_size
from parametric.outlines import Outline, Vertex

Side = Literal["front", "back"]

_SQUARE = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """Where u = v = 0 of a face lies in the file, and which way u and v go there."""

    origin: tuple[float, float]
    u: tuple[float, float]
    v: tuple[float, float]

    def place(self, u: float, v: float) -> tuple[float, float]:
        """A point of the face, in the file."""
        return (
            self.origin[0] + u * self.u[0] + v * self.v[0],
            self.origin[1] + u * self.u[1] + v * self.v[1],
        )

    def outline(self, on_face: Outline) -> Outline:
        """An outline on the face, in the file, counter-clockwise again.

        Where v turns over, the picture is that of a mirror: the way round is reversed,
        and each bulge goes with its edge and keeps its sign.
        """
        turned = self.u[0] * self.v[1] - self.u[1] * self.v[0]
        placed = [Vertex(*self.place(p.x, p.y), p.bulge) for p in on_face]
        if turned > 0:
            return tuple(placed)
        back = placed[::-1]
        bulges = [p.bulge for p in back[1:] + back[:1]]
        return tuple(p._replace(bulge=b) for p, b in zip(back, bulges, strict=True))


def part_view(face: Face, blank: Blank) -> View:
    """The view of one face of a blank, by the table above."""
    _, high = face_size(face, blank)
    match face:
        case "high face" | "low edge" | "high end":
            return View(origin=(0.0, 0.0), u=(1.0, 0.0), v=(0.0, 1.0))
        case "low face" | "high edge" | "low end":
            return View(origin=(0.0, high), u=(1.0, 0.0), v=(0.0, -1.0))


def along_foot(face: Face) -> Face:
    """The face that lies along y = 0 of a part's file."""
    match face:
        case "high face":
            return "low edge"
        case "low face":
            return "high edge"
        case "low edge" | "high end":
            return "low face"
        case "high edge" | "low end":
            return "high face"


def along_left(face: Face) -> Face:
    """The face that lies along x = 0 of a part's file."""
    match face:
        case "high face" | "low face" | "low edge" | "high edge":
            return "low end"
        case "low end" | "high end":
            return "low edge"


def outward(face: Face) -> Vector:
    """The direction out of the wood, in the part."""
    match face:
        case "low end":
            return (-1.0, 0.0, 0.0)
        case "high end":
            return (1.0, 0.0, 0.0)
        case "low edge":
            return (0.0, -1.0, 0.0)
        case "high edge":
            return (0.0, 1.0, 0.0)
        case "low face":
            return (0.0, 0.0, -1.0)
        case "high face":
            return (0.0, 0.0, 1.0)


def leaf_side(face: Face, placement: Placement) -> Side | None:
    """Which side of the leaf a part's face belongs to; None when it looks another way."""
    x, y, z = placement.direction(outward(face))
    if abs(x) > _SQUARE or abs(z) > _SQUARE:
        return None
    return "front" if y < 0 else "back"


def leaf_view(
    side: Side,
    face: Face,
    blank: Blank,
    placement: Placement,
    left: float,
    right: float,
    foot: float,
) -> View:
    """The view of one side of a leaf, for what is measured on one face of one of its parts.

    Args:
        side: the side looked at.
        face: the part's face that lies in it.
        blank: the part's blank.
        placement: the part's place in the leaf.
        left: the leaf's left edge in the leaf's own frame, mm.
        right: its right edge, mm.
        foot: its finished foot, mm.
    """

    def place(u: float, v: float) -> tuple[float, float]:
        x, _, z = placement.point(face_point(face, blank, u, v, 0.0))
        return (x - left if side == "front" else right - x, z - foot)

    x0, y0 = place(0.0, 0.0)
    xu, yu = place(1.0, 0.0)
    xv, yv = place(0.0, 1.0)
    return View(origin=(x0, y0), u=(xu - x0, yu - y0), v=(xv - x0, yv - y0))
