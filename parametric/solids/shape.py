"""One part's solid: its rough shape less its cuts, checked against its numbers."""

from __future__ import annotations

import dataclasses
from typing import Any, TypeVar

from OCP.BRep import BRep_Tool
from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_SHELL, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_ListOfShape

from parametric.model import Blank, Cut, Part
from parametric.solids.rough import rough_shape, trimmed
from parametric.solids.tools import Sunk, cutting_tool

VOLUME_TRUST = 1e-6
"""How far a solid's volume may be from the part's, relative."""

_Numbers = TypeVar("_Numbers", Blank, Cut)


class WrongSolidError(Exception):
    """The kernel's solid is not what the part's numbers say: a fault of ours, not of the design."""


def part_solid(part: Part) -> TopoDS_Solid:
    """The solid of a part in the part's own frame, mm.

    All cutting tools go in one boolean. The kernel can give back an uncut body without
    a word, so what comes back is checked.

    Raises:
        WrongSolidError: not one valid closed solid, or not of the part's volume.
        ValueError: the part's cuts are not made on one part.
    """
    blank = _plain(part.blank)
    cuts = tuple(_plain(cut) for cut in part.cuts)
    wood = trimmed(blank, cuts)
    tools = [cutting_tool(cut, blank, wood) for cut in cuts if isinstance(cut, Sunk)]
    body = rough_shape(blank, cuts)
    solid = the_one_solid(cut_away(body, tools) if tools else body, part.name)
    fault = fault_of(solid, part.volume)
    if fault:
        raise WrongSolidError(f"{part.name}: {fault}")
    return solid


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


def the_one_solid(shape: TopoDS_Shape, name: str) -> TopoDS_Solid:
    """The only solid in a shape.

    Raises:
        WrongSolidError: there are none or several.
    """
    found = solids_in(shape)
    if len(found) != 1:
        raise WrongSolidError(f"{name}: the cuts leave {len(found)} pieces")
    return found[0]


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
    if not measures(solid, expected):
        return f"the solid has {volume(solid):.3f} mm3, the part {expected:.3f}"
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
    return dataclasses.replace(thing, **bare)
