"""What the file of a shaped pane's outline says of it: all in millimetres, as the file is."""

from __future__ import annotations

import textwrap

from parametric.infill.glass import SpacerGrid
from parametric.trade.glass import GlassRow, PaneTemplate
from parametric.trade.glazing import GlazingOrder
from parametric.trade.printed import Printed
from parametric.units import mm_text

_STEP = 0.01
_LONGEST = 100
"""Letters in a line; readers of DXF may cut off what is longer than 255."""


def outline_words(
    order: GlazingOrder, row: GlassRow, shape: PaneTemplate, said: Printed, title: str
) -> tuple[str, ...]:
    """Line by line, the size first.

    Args:
        order: tolerance and edges, alike for all.
        row: the size.
        shape: its outline.
        said: how the design prints lengths.
        title: the job with its revision and fingerprint.
    """
    left, right = shape.edges
    turned = len(shape.turned_over)
    drawn = f"{row.number - turned} as drawn, {turned} turned over" if turned else "as drawn"
    lines = [
        f"{row.mark}: {row.number} off, {row.name} {mm(row.thickness)} thick; {drawn}",
        f"unit mm, seen from the front: {mm(row.width)} wide, {mm(row.height)} at its highest, "
        f"left edge {mm(left)}, right edge {mm(right)}",
        f"finished glass, clearance taken off; tolerance each way {mm(order.tolerance)}; "
        f"{order.edges}",
    ]
    if row.grid is not None:
        lines.append(f"spacer bars {_grid(row.grid)}")
    if said.unit == "inch":
        sizes = " x ".join(said.fine(size, down=True) for size in (row.width, row.height))
        lines.append(
            f"in inches, rounded down: {sizes}, "
            f"{said.thick(row.nominal, row.thickness, row.unit)} thick"
        )
    return tuple(row for line in (*lines, title) for row in textwrap.wrap(line, _LONGEST))


def _grid(grid: SpacerGrid) -> str:
    places = [
        f"{way} at {', '.join(mm(at) for at in middles)} from the {edge} edge"
        for way, middles, edge in (
            ("upright", grid.uprights, "left"),
            ("level", grid.levels, "lower"),
        )
        if middles
    ]
    return f"{'; '.join(places)}, to their middles; {mm(grid.most)} wide at most"


def mm(value: float) -> str:
    """A length to a hundredth of a millimetre."""
    return mm_text(float(value), _STEP)
