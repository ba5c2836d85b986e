"""The cutting tool of each cut that is taken out of the rough shape.

A tool stands `OVER` proud of every face it comes in or out through, as a cutter does,
so that no face of a tool lies in a face of the wood.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import assert_never

from OCP.TopoDS import TopoDS_Shape

from parametric.model import (
    Blank,
    Drilled,
    Face,
    Groove,
    Island,
    Moulded,
    Placement,
    Pocket,
    ScrewPocket,
    Shaped,
    Slot,
    Vector,
    face_depth,
    face_point,
    face_size,
)
from parametric.outlines import Outline, Vertex, edges
from parametric.solids.moulding import swept
from parametric.solids.outline import (
    SAME,
    flat,
    lines_and_arcs,
    prism,
    ramped,
    rounded_rectangle,
)

OVER = 1.0
"""mm"""
TOUCH = 1e-6
"""Nearer to an edge of the wood than this is on it, mm."""

Single = Slot | Pocket | Groove | Island | Shaped | Moulded
"""Cuts of one body."""
Sunk = Single | Drilled | ScrewPocket
"""Cuts that are taken out of the rough shape by a boolean."""


def cutting_tools(
    cut: Sunk, blank: Blank, wood: tuple[float, float], over: float = OVER
) -> list[TopoDS_Shape]:
    """The bodies that a cut takes away: one for each hole of a row, two for each screw pocket, one for
    every other cut.

    The arguments are those of `cutting_tool`.
    """
    if isinstance(cut, Drilled):
        plane, inwards = _outside(cut.face, blank)
        half = cut.diameter / 2
        through = cut.depth >= _last_of(cut.face, blank, wood) - SAME
        far = _times(inwards, OVER + cut.depth + (OVER if through else 0.0))
        return [
            prism(
                flat(
                    plane,
                    rounded_rectangle(plane, (u - half, v - half), (u + half, v + half), half),
                ),
                far,
            )
            for u, v in cut.places
        ]
    if isinstance(cut, ScrewPocket):
        return [tool for v in cut.places for tool in _pocket_and_pilot(cut, v, blank)]
    return [cutting_tool(cut, blank, wood, over)]


def _pocket_and_pilot(cut: ScrewPocket, v: float, blank: Blank) -> Iterator[TopoDS_Shape]:
    """A pocket from outside the face to its floor, and its pilot from there until out of the end."""
    angle = math.radians(cut.angle)
    low = cut.end == "low end"
    u = cut.mouth if low else blank.length - cut.mouth
    enters = face_point(cut.face, blank, u, v, 0.0)
    _, inwards = _outside(cut.face, blank)
    ahead = -1.0 if low else 1.0
    axis = (ahead * math.cos(angle), 0.0, inwards[2] * math.sin(angle))
    half, pin = cut.wide / 2, cut.pilot / 2
    before = (half * math.cos(angle) + OVER) / math.sin(angle)
    past = cut.along + pin * math.tan(angle) + OVER
    for radius, begins, ends in (
        (half, -before, cut.deep),
        # from within the pocket, so that no face of the one lies in a face of the other
        (pin, cut.deep - min(OVER, cut.deep / 2), past),
    ):
        x, y, z = enters
        origin = (x + axis[0] * begins, y, z + axis[2] * begins)
        plane = Placement(origin=origin, x=(0.0, 1.0, 0.0), y=(-axis[2], 0.0, axis[0]))
        ring = rounded_rectangle(plane, (-radius, -radius), (radius, radius), radius)
        yield prism(flat(plane, ring), _times(axis, ends - begins))


def cutting_tool(
    cut: Single, blank: Blank, wood: tuple[float, float], over: float = OVER
) -> TopoDS_Shape:
    """The body that a cut takes away, overrunning wherever the cut is open.

    Args:
        cut: the cut, in plain floats.
        blank: its part's blank.
        wood: where the wood begins and ends along x, after trimming, mm.
        over: how far a moulding's tool stands proud and goes on past its ends, mm.
    """
    plane, inwards = _outside(cut.face, blank)
    match cut:
        case Slot():
            low = (cut.u0, cut.v - cut.width / 2)
            high = (cut.u1, cut.v + cut.width / 2)
            outline = rounded_rectangle(plane, low, high, cut.width / 2)
        case Pocket():
            low = (cut.u - cut.length / 2, cut.v - cut.width / 2)
            high = (cut.u + cut.length / 2, cut.v + cut.width / 2)
            low, high = _overrun(low, high, cut.corner, _wood_of_face(cut.face, blank, wood))
            outline = rounded_rectangle(plane, low, high, cut.corner, cut.relief)
        case Groove() if cut.ramp > 0:
            return _sawn_groove(cut, blank)
        case Groove():
            corner = 0.0 if cut.squared else cut.corner
            low = (cut.u0, cut.v - cut.width / 2)
            high = (cut.u1, cut.v + cut.width / 2)
            low, high = _overrun(low, high, corner, _wood_of_face(cut.face, blank, wood))
            outline = rounded_rectangle(plane, low, high, corner)
        case Island():
            length, width = blank.length, blank.width
            outline = rounded_rectangle(plane, (-OVER, -OVER), (length + OVER, width + OVER), 0.0)
            low = ((length - cut.length) / 2, (width - cut.width) / 2)
            high = ((length + cut.length) / 2, (width + cut.width) / 2)
            left = rounded_rectangle(plane, low, high, cut.corner)
            return prism(flat(plane, outline, hole=left), _times(inwards, OVER + cut.depth))
        case Shaped():
            return _shaped(cut, blank, wood)
        case Moulded():
            return _moulded(cut, blank, over)
        case _:
            assert_never(cut)
    through = cut.depth >= face_depth(cut.face, blank) - SAME
    far = OVER + cut.depth + (OVER if through else 0.0)
    return prism(flat(plane, outline), _times(inwards, far))


def _shaped(cut: Shaped, blank: Blank, wood: tuple[float, float]) -> TopoDS_Shape:
    """What is inside an outline, run out past every edge of the face that it lies along."""
    surface, inwards = _outside(cut.face, blank)
    begins, ends = cut.surface, cut.depth
    # what stood before a cut in an edge is gone, level or planed to a bevel
    if begins <= SAME or cut.face in ("low edge", "high edge"):
        begins = -OVER
    if ends >= _last_of(cut.face, blank, wood) - SAME:
        ends += OVER
    origin = face_point(cut.face, blank, 0.0, 0.0, begins)
    plane = Placement(origin=origin, x=surface.x, y=surface.y)
    outline = _run_out(cut.outline, *_wood_of_face(cut.face, blank, wood))
    return prism(flat(plane, lines_and_arcs(plane, outline)), _times(inwards, ends - begins))


def _moulded(cut: Moulded, blank: Blank, over: float) -> TopoDS_Shape:
    """A run of moulding, its section run out past the face, the edge, and the other face."""
    surface, _ = _outside(cut.face, blank)
    origin = face_point(cut.face, blank, 0.0, 0.0, 0.0)
    thick = float(face_depth(cut.face, blank))
    section = _run_out(cut.section, (0.0, 0.0), (math.inf, thick))
    face = Placement(origin=origin, x=surface.x, y=surface.y)
    return swept(cut, face, section, over)


def _last_of(face: Face, blank: Blank, wood: tuple[float, float]) -> float:
    """How deep the wood goes behind a face, once the ends are trimmed."""
    if face == "low end":
        return wood[1]
    return blank.length - wood[0] if face == "high end" else float(face_depth(face, blank))


def _run_out(outline: Outline, low: tuple[float, float], high: tuple[float, float]) -> Outline:
    """The outline with each of its edges that lies along the face's own edge moved out past it.

    A corner of the face is gone round outside, so that no side of the tool lies in a side of
    the wood.
    """

    def normals(x: float, y: float) -> list[tuple[float, float]]:
        found = [(-1.0, 0.0)] if abs(x - low[0]) <= TOUCH else []
        found += [(1.0, 0.0)] if abs(x - high[0]) <= TOUCH else []
        found += [(0.0, -1.0)] if abs(y - low[1]) <= TOUCH else []
        return found + ([(0.0, 1.0)] if abs(y - high[1]) <= TOUCH else [])

    def along(a: Vertex, b: Vertex) -> tuple[float, float] | None:
        if a.bulge:
            return None
        shared = [n for n in normals(a.x, a.y) if n in normals(b.x, b.y)]
        return shared[0] if shared else None

    made: list[Vertex] = []
    for (before, here), (_, after) in zip(
        [(outline[i - 1], outline[i]) for i in range(len(outline))], edges(outline), strict=True
    ):
        came, goes = along(before, here), along(here, after)
        if came is None and goes is None:
            made.append(here)
            continue
        outs = normals(here.x, here.y)
        out = Vertex(
            here.x + OVER * sum(n[0] for n in outs), here.y + OVER * sum(n[1] for n in outs)
        )
        if came is not None and goes is not None:
            made.append(out)
        elif came is not None:
            made += [out, here]
        else:
            made += [Vertex(here.x, here.y), out]
    return tuple(made)


def _sawn_groove(cut: Groove, blank: Blank) -> TopoDS_Shape:
    """A groove stopped on the saw: drawn from the side, with the blade's ramps."""
    surface, inwards = _outside(cut.face, blank)
    origin = face_point(cut.face, blank, 0.0, cut.v - cut.width / 2, 0.0)
    side = Placement(origin=origin, x=surface.x, y=inwards)
    outline = ramped(side, cut.u0, cut.u1, cut.depth, cut.ramp, OVER)
    return prism(flat(side, outline), _times(surface.y, cut.width))


def _outside(face: Face, blank: Blank) -> tuple[Placement, Vector]:
    """The plane `OVER` in front of a face, with its (u, v), and the way into the wood."""
    corner = face_point(face, blank, 0.0, 0.0, 0.0)
    along_u = _from_to(corner, face_point(face, blank, 1.0, 0.0, 0.0))
    along_v = _from_to(corner, face_point(face, blank, 0.0, 1.0, 0.0))
    inwards = _from_to(corner, face_point(face, blank, 0.0, 0.0, 1.0))
    origin = face_point(face, blank, 0.0, 0.0, -OVER)
    return Placement(origin=origin, x=along_u, y=along_v), inwards


def _wood_of_face(
    face: Face, blank: Blank, wood: tuple[float, float]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The low and the high corner of a face in (u, v), after trimming."""
    u, v = face_size(face, blank)
    if face in ("low end", "high end"):
        return (0.0, 0.0), (u, v)
    return (wood[0], 0.0), (wood[1], v)


def _overrun(
    low: tuple[float, float],
    high: tuple[float, float],
    corner: float,
    wood: tuple[tuple[float, float], tuple[float, float]],
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Run an outline out past every edge of the face that it reaches, round corners and all."""
    out = OVER + corner
    (w_u0, w_v0), (w_u1, w_v1) = wood
    return (
        (
            w_u0 - out if low[0] <= w_u0 + SAME else low[0],
            w_v0 - out if low[1] <= w_v0 + SAME else low[1],
        ),
        (
            w_u1 + out if high[0] >= w_u1 - SAME else high[0],
            w_v1 + out if high[1] >= w_v1 - SAME else high[1],
        ),
    )


def _from_to(a: Vector, b: Vector) -> Vector:
    """The unit step between two points, to the nearest axis."""
    return (float(round(b[0] - a[0])), float(round(b[1] - a[1])), float(round(b[2] - a[2])))


def _times(v: Vector, far: float) -> Vector:
    return (v[0] * far, v[1] * far, v[2] * far)
