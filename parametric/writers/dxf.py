"""DXF files: an empty document, its bytes, and one machine file for each set-up.

Release R2010, millimetres. The bytes depend on the content and on nothing else: the
library's own time stamps and identifiers are held at fixed values while it writes.
"""

from __future__ import annotations

import io

import ezdxf
from ezdxf import units
from ezdxf.document import CREATED_BY_EZDXF, Drawing
from ezdxf.layouts import Modelspace

from parametric.cnc.notes import NARROW, Stamp, notes, place_notes
from parametric.cnc.setups import SetUp
from parametric.outlines import Outline, Vertex, rectangle

_PLACES = 6
"""Coordinates are written to a nanometre, far below any machine and free of binary dust."""
_DATUM = 10.0
_STYLE = {"stock": (8, 35), "datum": (1, 25), "notes": (7, 18)}
_COLOUR = {"slot": 5, "pocket": 3, "groove": 4, "bore": 6, "cut_through": 1}
"""Index colours by operation, so that depths tell apart at a glance; by layer throughout."""
_CUT_WEIGHT = 25


def new_document() -> Drawing:
    """An empty R2010 document in millimetres."""
    document = ezdxf.new("R2010", units=units.MM)
    document.header["$MEASUREMENT"] = 1
    return document


def deterministic_bytes(document: Drawing) -> bytes:
    """The document as a file, the same bytes for the same content at any time, in any process.

    The library has one switch for fixed dates and identifiers; it is set while this
    document is written and put back as it was.
    """
    _settle_classes(document)
    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        stream = io.StringIO(newline="")
        # the mark of the moment the document was opened is replaced by a fixed one
        document.ezdxf_metadata()[CREATED_BY_EZDXF] = "stilewright"
        document.write(stream)
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before
    written: bytes = document.encode(stream.getvalue())
    return written


def _settle_classes(document: Drawing) -> None:
    """Declare the kinds of object in use in order of their names.

    The library declares them as they come out of a set, whose order follows the hash seed
    of the process; what is declared before keeps its place.
    """
    for name in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(name)


def write_cnc_dxf(set_up: SetUp, stamp: Stamp) -> bytes:
    """The machine file of one set-up.

    Closed polylines with true arcs, each at minus its depth on the layer that names it;
    the stock's outline, the datum's mark in its lower left corner, and the notes.
    """
    document = new_document()
    space = document.modelspace()
    stock, datum, words = (getattr(set_up.layers, own) for own in _STYLE)
    for name, (colour, weight) in zip((stock, datum, words), _STYLE.values(), strict=True):
        document.layers.add(name, color=colour, lineweight=weight)
    for operation in set_up.operations:
        if operation.layer not in document.layers:
            colour = _COLOUR[operation.kind]
            document.layers.add(operation.layer, color=colour, lineweight=_CUT_WEIGHT)
        _draw(space, operation.outline, operation.layer, depth=operation.depth)
    _draw(space, rectangle(0.0, 0.0, set_up.length, set_up.width), stock)
    side = min(_DATUM, set_up.width / 5, set_up.length / 5)
    _draw(space, datum_mark(side), datum)
    block = place_notes(set_up, notes(set_up, stamp), side)
    height = round(block.height, _PLACES)
    for row, (x, y) in zip(block.rows, block.feet, strict=True):
        foot = (round(x, _PLACES), round(y, _PLACES))
        as_lettered = {"layer": words, "insert": foot, "width": NARROW}
        space.add_text(row, height=height, dxfattribs=as_lettered)
    _frame(document, space, set_up)
    return deterministic_bytes(document)


def datum_mark(side: float) -> Outline:
    """An arrowhead inside the stock whose point stands on the datum."""
    return (Vertex(0.0, 0.0), Vertex(side, side / 3), Vertex(side / 3, side))


def _draw(space: Modelspace, outline: Outline, layer: str, depth: float = 0.0) -> None:
    space.add_lwpolyline(
        [(round(v.x, _PLACES), round(v.y, _PLACES), v.bulge) for v in outline],
        format="xyb",
        close=True,
        dxfattribs={"layer": layer, "elevation": round(-depth, _PLACES) + 0.0},
    )


def _frame(document: Drawing, space: Modelspace, set_up: SetUp) -> None:
    """Extents of the piece, and a first view of the whole of it."""
    length, width = round(set_up.length, _PLACES), round(set_up.width, _PLACES)
    space.reset_extents((0.0, 0.0, 0.0), (length, width, 0.0))
    # the library takes a corner at 0;0 for one that was never set: say it in the header too
    document.header["$EXTMIN"], document.header["$EXTMAX"] = (0.0, 0.0, 0.0), (length, width, 0.0)
    space.reset_limits((0.0, 0.0), (length, width))
    tall = 1.05 * max(width, length / 1.6)
    document.set_modelspace_vport(height=tall, center=(length / 2, width / 2))
