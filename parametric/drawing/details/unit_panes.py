"""An insulated unit in a section: its two panes are cut, the space between them is not."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.drawing.pieces import CutPiece, Plane
from parametric.drawing.plane import Box, around
from parametric.resolve.lite import Lite


def unit_panes(cuts: Iterable[CutPiece], lite: Lite, plane: Plane) -> tuple[CutPiece, ...]:
    """Cut pieces as they are, but a unit as the two panes it is made of.

    Args:
        cuts: what a section meets, the face below it or to its left.
        lite: the opening whose glass is among it.
        plane: how it is cut.
    """
    names = {pane.name for pane in lite.panes}
    if lite.pane.unit is None:
        return tuple(cuts)
    front, _, back = (float(size) for size in lite.pane.unit)
    found: list[CutPiece] = []
    for cut in cuts:
        if cut.piece.part.name not in names:
            found.append(cut)
            continue
        box = around(cut.outline)
        boxes = (
            (
                Box(box.x0, box.y0, box.x1, box.y0 + front),
                Box(box.x0, box.y1 - back, box.x1, box.y1),
            )
            if plane == "level"
            else (
                Box(box.x0, box.y0, box.x0 + front, box.y1),
                Box(box.x1 - back, box.y0, box.x1, box.y1),
            )
        )
        found += [dataclasses.replace(cut, outline=one.polygon) for one in boxes]
    return tuple(found)
