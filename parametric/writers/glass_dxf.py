"""The outline of a shaped pane as a DXF file for the glazier's cutting table.

One closed polyline with true arcs, millimetres, its low left corner at 0;0, seen from the
front: the finished glass. Its mark stands in it and its words under it, on a layer of their
own, so that nothing is cut that is not glass.
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.outlines import Outline, bounds_of
from parametric.writers.dxf import deterministic_bytes, new_document

GLASS, NOTES = "glass", "notes"
_PLACES = 6
_MARK, _WORDS = 12.0, 4.0
"""Heights of the mark and of the words, mm."""
_BELOW = 8.0
_PITCH = 1.7


def write_glass_dxf(outline: Outline, mark: str, words: Sequence[str]) -> bytes:
    """The outline of one size of pane.

    Args:
        outline: counter-clockwise, mm.
        mark: of the size.
        words: what is said of it, line by line.

    Returns:
        The file; the same bytes for the same pane in any process.
    """
    document = new_document()
    space = document.modelspace()
    document.layers.add(GLASS, color=5, lineweight=35)
    document.layers.add(NOTES, color=7, lineweight=18)
    space.add_lwpolyline(
        [(round(v.x, _PLACES) + 0.0, round(v.y, _PLACES) + 0.0, v.bulge) for v in outline],
        format="xyb",
        close=True,
        dxfattribs={"layer": GLASS},
    )
    x0, y0, x1, y1 = (round(value, _PLACES) + 0.0 for value in bounds_of(outline))
    low = y0 - _BELOW
    for row in words:
        low -= _WORDS * _PITCH
        foot = {"layer": NOTES, "insert": (x0, round(low, _PLACES))}
        space.add_text(row, height=_WORDS, dxfattribs=foot)
    inside = (round((x0 + x1) / 2, _PLACES), round(y0 + 0.3 * (y1 - y0), _PLACES))
    space.add_text(mark, height=_MARK, dxfattribs={"layer": NOTES, "insert": inside})
    # the extents are those of the glass: the library takes a corner at 0;0 for one never set
    document.header["$EXTMIN"], document.header["$EXTMAX"] = (x0, y0, 0.0), (x1, y1, 0.0)
    space.reset_extents((x0, y0, 0.0), (x1, y1, 0.0))
    space.reset_limits((x0, y0), (x1, y1))
    tall = 1.05 * max(y1 - low, (x1 - x0) / 1.6)
    document.set_modelspace_vport(height=tall, center=((x0 + x1) / 2, (low + y1) / 2))
    return deterministic_bytes(document)
