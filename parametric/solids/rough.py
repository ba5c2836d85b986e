"""The shape a part has before its pockets, slots and grooves: sawn, rounded or raised.

These shapes are drawn out or put together from flat faces, exactly; no boolean is needed.
"""

from __future__ import annotations

import itertools

from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox
from OCP.gp import gp_Pnt
from OCP.TopoDS import TopoDS_Shape, TopoDS_Solid

from parametric.model import (
    Blank,
    Cut,
    Mitre,
    Placement,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    Tongue,
    Trim,
    Vector,
)
from parametric.solids.outline import SAME, flat, flat_faced, polygon, prism, rounded_rectangle

Shaping = Trim | Mitre | RaisedBevel | Tongue | RoundArrises | RoundCorners
"""Cuts that give a part its rough shape; all others are taken out of it."""

ALONG_X = Placement(x=(0.0, 1.0, 0.0), y=(0.0, 0.0, 1.0))
"""The plane of the low end: u across the width, v through the thickness."""


def shaping(cuts: tuple[Cut, ...]) -> tuple[Shaping, ...]:
    """The cuts that `rough_shape` makes."""
    return tuple(cut for cut in cuts if isinstance(cut, Shaping))


def trimmed(blank: Blank, cuts: tuple[Cut, ...]) -> tuple[float, float]:
    """Where the wood begins and ends along x once the ends are trimmed, mm."""
    low = sum(cut.length for cut in cuts if isinstance(cut, Trim) and cut.end == "low end")
    high = sum(cut.length for cut in cuts if isinstance(cut, Trim) and cut.end == "high end")
    return (low, blank.length - high)


def rough_shape(blank: Blank, cuts: tuple[Cut, ...]) -> TopoDS_Shape:
    """The blank with its shaping cuts made.

    Raises:
        ValueError: the shaping cuts are of kinds that are not made on one part.
    """
    match shaping(cuts):
        case ():
            return BRepPrimAPI_MakeBox(blank.length, blank.width, blank.thickness).Solid()
        case (RoundArrises(radius=radius),):
            section = rounded_rectangle(ALONG_X, (0.0, 0.0), (blank.width, blank.thickness), radius)
            return prism(flat(ALONG_X, section), (blank.length, 0.0, 0.0))
        case (RoundCorners(radius=radius),):
            face = rounded_rectangle(Placement(), (0.0, 0.0), (blank.length, blank.width), radius)
            return prism(flat(Placement(), face), (0.0, 0.0, blank.thickness))
        case (RaisedBevel() as bevel,):
            return _ringed(blank, _panel_profile(blank, bevel, None))
        case (Tongue() as tongue,):
            return _ringed(blank, _panel_profile(blank, None, tongue))
        case (RaisedBevel() as bevel, Tongue() as tongue):
            return _ringed(blank, _panel_profile(blank, bevel, tongue))
        case sawn if all(isinstance(cut, (Trim, Mitre)) for cut in sawn):
            return _sawn(blank, cuts)
        case others:
            kinds = ", ".join(type(cut).__name__ for cut in others)
            raise ValueError(f"these cuts are not made on one part: {kinds}")


def _sawn(blank: Blank, cuts: tuple[Cut, ...]) -> TopoDS_Shape:
    """A piece sawn square or mitred at its ends."""
    x0, x1 = trimmed(blank, cuts)
    if not any(isinstance(cut, Mitre) for cut in cuts):
        return BRepPrimAPI_MakeBox(
            gp_Pnt(x0, 0.0, 0.0), gp_Pnt(x1, blank.width, blank.thickness)
        ).Solid()
    at_low_edge, at_high_edge = [x0, x1], [x0, x1]
    for cut in cuts:
        if isinstance(cut, Mitre):
            end, inwards = (0, 1.0) if cut.end == "low end" else (1, -1.0)
            shortened = at_high_edge if cut.keeps == "low edge" else at_low_edge
            shortened[end] += inwards * blank.width
    plan = polygon(
        Placement(),
        [
            (at_low_edge[0], 0.0),
            (at_low_edge[1], 0.0),
            (at_high_edge[1], blank.width),
            (at_high_edge[0], blank.width),
        ],
    )
    return prism(flat(Placement(), plan), (0.0, 0.0, blank.thickness))


def _panel_profile(
    blank: Blank, bevel: RaisedBevel | None, tongue: Tongue | None
) -> list[tuple[float, float]]:
    """A raised panel's section as (inset from the edge, height), from the back round to the field.

       field      ________  T
                 |            fillet
              .  '  foot
        .  '        bevel
     __|            shoulder
    |__   tongue
       |________    back
    """
    profile: list[tuple[float, float]] = []
    if tongue is None:
        profile += [(0.0, 0.0)]
    else:
        foot, top = tongue.back, tongue.back + tongue.thickness
        shoulder = tongue.edge + tongue.slope * tongue.length
        profile += [(tongue.length, 0.0), (tongue.length, foot), (0.0, foot)]
        profile += [(0.0, top), (tongue.length, top), (tongue.length, shoulder)]
    if bevel is not None:
        if tongue is None:
            profile += [(0.0, bevel.edge)]
        profile += [(bevel.run, bevel.foot), (bevel.run, blank.thickness)]
    distinct = profile[:1]
    for point in profile[1:]:
        before = distinct[-1]
        if abs(point[0] - before[0]) > SAME or abs(point[1] - before[1]) > SAME:
            distinct.append(point)
    if tongue is not None and tongue.back <= SAME:
        del distinct[0]  # no back rebate: the back runs out to the very edge
    return distinct


def _ringed(blank: Blank, profile: list[tuple[float, float]]) -> TopoDS_Solid:
    """A body whose every level is a rectangle parallel to the blank's edges.

    Args:
        blank: the rectangle at inset 0.
        profile: (inset, height) of each level in order, from the back to the front.
    """
    points: list[Vector] = []
    faces: list[list[list[int]]] = []
    for inset, z in profile:
        x0, x1, y0, y1 = inset, blank.length - inset, inset, blank.width - inset
        points += [(x0, y0, z), (x1, y0, z), (x1, y1, z), (x0, y1, z)]
    for i, ((inset, z), (next_inset, next_z)) in enumerate(itertools.pairwise(profile)):
        here = [4 * i + k for k in range(4)]
        there = [4 * i + 4 + k for k in range(4)]
        if abs(next_z - z) > SAME:
            for k in range(4):
                following = (k + 1) % 4
                faces.append([[here[k], here[following], there[following], there[k]]])
        elif next_inset > inset:
            faces.append([here, there[::-1]])
        else:
            faces.append([there[::-1], here])
    last = 4 * (len(profile) - 1)
    faces.append([[3, 2, 1, 0]])
    faces.append([[last, last + 1, last + 2, last + 3]])
    return flat_faced(points, faces)
