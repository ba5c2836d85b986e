"""The model as STEP (ISO 10303-21, application protocol 214): job, leaves, named and coloured parts.

Every part type is one product with one solid (`S1 stile`); each piece of it is an
occurrence with the piece's own name (`leaf A / left stile`). Millimetres, Z up, the room at
-Y: the world's own frame. Leaves shut.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from contextlib import contextmanager

from OCP.APIHeaderSection import APIHeaderSection_MakeHeader
from OCP.BRepBuilderAPI import BRepBuilderAPI_Copy
from OCP.IFSelect import IFSelect_RetDone
from OCP.Interface import Interface_Static
from OCP.Message import Message, Message_Gravity
from OCP.Quantity import Quantity_Color, Quantity_ColorRGBA, Quantity_TOC_sRGB
from OCP.STEPCAFControl import STEPCAFControl_Controller, STEPCAFControl_Writer
from OCP.STEPControl import STEPControl_AsIs
from OCP.TCollection import TCollection_ExtendedString, TCollection_HAsciiString
from OCP.TDataStd import TDataStd_Name
from OCP.TDF import TDF_Label
from OCP.TDocStd import TDocStd_Document
from OCP.XCAFApp import XCAFApp_Application
from OCP.XCAFDoc import XCAFDoc_ColorGen, XCAFDoc_DocumentTool

from parametric.model import Assembly, Material
from parametric.solids.looks import look_of
from parametric.solids.placing import location
from parametric.solids.solid_set import Solids

NO_CLOCK = "1970-01-01T00:00:00"
"""The header must hold a time; the same design gives the same one."""

_SETTINGS = {"write.step.schema": "AP214IS", "write.step.unit": "MM", "xstep.cascade.unit": "MM"}


def write_step(assembly: Assembly, solids: Solids) -> bytes:
    """The whole assembly, shut: job, its groups, their parts."""
    document = TDocStd_Document(TCollection_ExtendedString("XmlOcaf"))
    XCAFApp_Application.GetApplication_s().InitDocument(document)
    _fill(document, assembly, solids)
    with _quiet():
        return _written(document, assembly.name)


def _fill(document: TDocStd_Document, assembly: Assembly, solids: Solids) -> None:
    shapes = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    colours = XCAFDoc_DocumentTool.ColorTool_s(document.Main())
    products: dict[tuple[str, str, str, str], TDF_Label] = {}
    taken: set[str] = set()
    job = shapes.NewShape()
    _name(job, assembly.name)
    for group in assembly.groups:
        whole = shapes.NewShape()
        _name(whole, group.name)
        for part in filter(solids.shows, group.parts):
            kind = (part.mark, part.noun, solids.key(part), part.material.name)
            if kind not in products:
                solid = solids.of(part)
                if solids.key(part) in taken:  # one shape, two part types: each has its own body
                    solid = BRepBuilderAPI_Copy(solid).Shape()
                taken.add(solids.key(part))
                products[kind] = shapes.AddShape(solid, False)
                _name(products[kind], f"{part.mark} {part.noun}")
                colours.SetColor(products[kind], _colour(part.material), XCAFDoc_ColorGen)
            piece = shapes.AddComponent(whole, products[kind], location(part.placement))
            _name(piece, part.name)
        _name(shapes.AddComponent(job, whole, location(group.placement)), group.name)
    shapes.UpdateAssemblies()


def _colour(material: Material) -> Quantity_ColorRGBA:
    look = look_of(material)
    return Quantity_ColorRGBA(Quantity_Color(*look.colour, Quantity_TOC_sRGB), look.opacity)


def _name(label: TDF_Label, name: str) -> None:
    TDataStd_Name.Set_s(label, TCollection_ExtendedString(name, True))


@contextmanager
def _quiet() -> Iterator[None]:
    """Keep the kernel's progress off standard output, where another program may be reading."""
    printers = Message.DefaultMessenger_s().Printers()
    spoken = [printers.Value(i) for i in range(printers.Lower(), printers.Upper() + 1)]
    before = [printer.GetTraceLevel() for printer in spoken]
    for printer in spoken:
        printer.SetTraceLevel(Message_Gravity.Message_Fail)
    try:
        yield
    finally:
        for printer, level in zip(spoken, before, strict=True):
            printer.SetTraceLevel(level)


def _written(document: TDocStd_Document, name: str) -> bytes:
    STEPCAFControl_Controller.Init_s()
    for setting, value in _SETTINGS.items():
        Interface_Static.SetCVal_s(setting, value)
    Interface_Static.SetIVal_s("write.surfacecurve.mode", 0)
    writer = STEPCAFControl_Writer()
    writer.SetColorMode(True)
    writer.SetNameMode(True)
    if not writer.Transfer(document, STEPControl_AsIs):
        raise RuntimeError("the kernel could not turn the model into STEP")
    header = APIHeaderSection_MakeHeader(writer.ChangeWriter().Model())
    header.SetName(TCollection_HAsciiString(name))
    header.SetDescriptionValue(1, TCollection_HAsciiString("model of the finished job, shut"))
    header.SetTimeStamp(TCollection_HAsciiString(NO_CLOCK))
    header.SetAuthorValue(1, TCollection_HAsciiString(""))
    header.SetOrganizationValue(1, TCollection_HAsciiString(""))
    header.SetAuthorisation(TCollection_HAsciiString(""))
    header.SetOriginatingSystem(TCollection_HAsciiString("stilewright"))
    stream = io.BytesIO()
    if writer.WriteStream(stream) != IFSelect_RetDone:
        raise RuntimeError("the kernel could not write the STEP file")
    return re.sub(rb"'[^']*'", _spelled, stream.getvalue())


def _spelled(literal: re.Match[bytes]) -> bytes:
    """A name as the standard spells it: on one line, letters beyond ASCII by their numbers.

    The kernel writes such letters bare, and breaks long names between the bytes of one.

    Source: ISO 10303-21, encoding of the string type (from memory).
    """
    text = literal[0].replace(b"\n", b"").decode()
    return re.sub(r"[^\x00-\x7f]+", _beyond_ascii, text).encode()


def _beyond_ascii(run: re.Match[str]) -> str:
    if all(ord(letter) <= 0xFFFF for letter in run[0]):
        return f"\\X2\\{run[0].encode('utf-16-be').hex().upper()}\\X0\\"
    return f"\\X4\\{run[0].encode('utf-32-be').hex().upper()}\\X0\\"
