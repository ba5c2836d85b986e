"""One part's solid: its rough shape less its cuts, checked against its numbers."""

from __future__ import annotations

import dataclasses
from typing import Any, TypeVar

from OCP.BRep import BRep_Tool
from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.BRepTools import BRepTools_ReShape
from OCP.GProp import GProp_GProps
from OCP.ShapeUpgrade import ShapeUpgrade_UnifySameDomain
from OCP.TopAbs import TopAbs_EDGE, TopAbs_INTERNAL, TopAbs_SHELL, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_ListOfShape

from parametric.model import Blank, Cut, Moulded, Part, Shaped
from parametric.outlines import Vertex
from parametric.solids.rough import rough_shape, trimmed
from parametric.solids.tools import OVER, Sunk, cutting_tools

_FARTHER = 1.3 * OVER
"""How far a moulding's tool stands proud where the kernel fails at the usual tools, mm."""
VOLUME_TRUST = 1e-6
"""How far a solid's volume may be from the part's, relative."""

_Numbers = TypeVar("_Numbers", Blank, Cut)


class WrongSolidError(Exception):
    """The kernel's solid is not what the part's numbers say: a fault of ours, not of the design."""


def part_solid(part: Part) -> TopoDS_Solid:
    """The solid of a part in the part's own frame, mm.

    All cutting tools go in one boolean. The kernel can give back an uncut body without
    a word, so what comes back is checked. Where a moulding's tools touch one another along a
    curve it may fail at them together; they are then cut one after another, as at the bench,
    and at last with tools that run on a little farther, whose ends meet nothing there.

    Raises:
        WrongSolidError: not one valid closed solid, or not of the part's volume.
        ValueError: the part's cuts are not made on one part.
    """
    moulded = any(isinstance(cut, Moulded) for cut in part.cuts)
    fault = ""
    for together, over in ((True, OVER), (False, OVER), (True, _FARTHER)):
        pieces = solids_in(_cut(part, together=together, over=over))
        fault = _fault_among(pieces, part)
        if not fault:
            return pieces[0]
        if not moulded:
            break
    raise WrongSolidError(f"{part.name}: {fault}")


def _fault_among(pieces: list[TopoDS_Solid], part: Part) -> str:
    if len(pieces) != 1:
        return f"the cuts leave {len(pieces)} pieces"
    return fault_of(pieces[0], part.volume)


def shape_with_stops(part: Part) -> TopoDS_Shape | None:
    """What a part's cuts leave when they cannot all be made, for a model not for making.

    Cuts may meet, part the piece, or take all of it (None). Then no sum gives the volume;
    it is held between the sum, in which wood taken twice counts twice, and the blank.

    Raises:
        WrongSolidError: not valid, not closed, or outside those bounds.
    """
    shape = _cut(part)
    pieces = solids_in(shape)
    if not pieces:
        return None
    for piece in pieces:
        fault = unsound(piece)
        if fault:
            raise WrongSolidError(f"{part.name}: {fault}")
    left, allowed = sum(map(volume, pieces)), VOLUME_TRUST * part.blank.volume
    if not part.volume - allowed <= left <= part.blank.volume + allowed:
        raise WrongSolidError(
            f"{part.name}: {left:.3f} mm3 are left of {part.blank.volume:.3f}, "
            f"not what its cuts can leave"
        )
    return pieces[0] if len(pieces) == 1 else shape


def _cut(part: Part, *, together: bool = True, over: float = OVER) -> TopoDS_Shape:
    blank = _plain(part.blank)
    cuts = tuple(_plain(cut) for cut in part.cuts)
    wood = trimmed(blank, cuts)
    tools = [
        tool
        for cut in cuts
        if isinstance(cut, Sunk)
        for tool in cutting_tools(cut, blank, wood, over)
    ]
    body = rough_shape(blank, cuts)
    if not tools:
        return body
    if together:
        left = cut_away(body, tools)
    else:
        left = body
        for tool in tools:
            left = cut_away(left, [tool])
    return _without_seams(left) if any(isinstance(cut, (Shaped, Moulded)) for cut in cuts) else left


def _without_seams(body: TopoDS_Shape) -> TopoDS_Shape:
    """The same body with faces that go on in one another made one: a shoulder is one face,
    however many cuts have made it.

    Where a bead's round touches the edge that it runs along, the kernel may leave a second line
    upon the edge, which bounds nothing; it goes too.
    """
    joining = ShapeUpgrade_UnifySameDomain(body, True, True, False)
    joining.Build()
    whole = joining.Shape()
    without = BRepTools_ReShape()
    lines = TopExp_Explorer(whole, TopAbs_EDGE)
    while lines.More():
        if lines.Current().Orientation() == TopAbs_INTERNAL:
            without.Remove(lines.Current())
        lines.Next()
    return without.Apply(whole)


def cut_away(body: TopoDS_Shape, tools: list[TopoDS_Shape]) -> TopoDS_Shape:
    """A body less all its cutting tools, in one boolean."""
    bodies, cutters = TopTools_ListOfShape(), TopTools_ListOfShape()
    bodies.Append(body)
    for tool in tools:
        cutters.Append(tool)
    operation = BRepAlgoAPI_Cut()
    operation.SetArguments(bodies)
    operation.SetTools(cutters)
    operation.SetToFillHistory(False)
    operation.Build()
    if not operation.IsDone():
        raise WrongSolidError("the kernel could not make the cuts")
    return operation.Shape()


def solids_in(shape: TopoDS_Shape) -> list[TopoDS_Solid]:
    """Every solid in a shape."""
    found = []
    explorer = TopExp_Explorer(shape, TopAbs_SOLID)
    while explorer.More():
        found.append(TopoDS.Solid_s(explorer.Current()))
        explorer.Next()
    return found


def volume(shape: TopoDS_Shape) -> float:
    """mm3; negative for a body inside out."""
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, properties)
    return float(properties.Mass())


def fault_of(solid: TopoDS_Solid, expected: float) -> str:
    """What is wrong with a solid that should have the volume `expected` mm3; "" when nothing is."""
    if fault := unsound(solid):
        return fault
    if not measures(solid, expected):
        return f"the solid has {volume(solid):.3f} mm3, the part {expected:.3f}"
    return ""


def unsound(solid: TopoDS_Solid) -> str:
    """What keeps a solid from being one valid closed body; "" when nothing does."""
    if not BRepCheck_Analyzer(solid).IsValid():
        return "the solid is not valid"
    shells = TopExp_Explorer(solid, TopAbs_SHELL)
    count = 0
    while shells.More():
        count += 1
        if not BRep_Tool.IsClosed_s(shells.Current()):
            return "the solid is not closed"
        shells.Next()
    if count != 1:
        return f"the solid has {count} skins"
    return ""


def measures(solid: TopoDS_Solid, expected: float) -> bool:
    """Whether a solid has the volume `expected` mm3, within `VOLUME_TRUST`."""
    return abs(volume(solid) - expected) <= VOLUME_TRUST * expected


def _plain(thing: _Numbers) -> _Numbers:
    """The same blank or cut in bare floats, so that no sum in here is remembered."""
    bare: dict[str, Any] = {
        field.name: float(value)
        for field in dataclasses.fields(thing)
        if isinstance(value := getattr(thing, field.name), float)
    }
    if isinstance(thing, Shaped):
        corners = ((float(v.x), float(v.y), float(v.bulge)) for v in thing.outline)
        bare["outline"] = tuple(Vertex(*corner) for corner in corners)
    return dataclasses.replace(thing, **bare)
