"""What goes with the glass order: tolerance, corners, and the opening to measure before it is sent.

A toughened pane cannot be cut again. The opening is measured after glue-up, and the order
goes out when every opening is at least what its pane needs.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import CLEARANCE_KEPT, GLASS_TOLERANCE
from parametric.catalog.glass_facts import SAFETY_KINDS, SAFETY_MARK
from parametric.figures import Figure, named
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cautions import GLASS, Cautions
from parametric.trade.glass import GlassRow, glass_order


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningToMeasure:
    """One lite, mm: what it should measure, and the least that still takes its pane.

    The least leaves half the drawn clearance round a pane that came out at the top of its
    tolerance.
    """

    lite: str
    pane: str
    mark: str
    width: Figure
    height: Figure
    least_width: Figure
    least_height: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class GlazingOrder:
    """The glass order with all that the glazier asks: panes, tolerance mm, corners, the gate.

    `template` is the full-size drawing of shaped panes; a rectangle needs none.
    """

    rows: tuple[GlassRow, ...]
    tolerance: Figure
    corners: str
    edges: str
    template: str
    openings: tuple[OpeningToMeasure, ...]
    gate: str
    safety: str
    cautions: Cautions


def glazing_order(resolved: Resolved, assembly: Assembly) -> GlazingOrder:
    """All panes, and all openings in which they are to stand."""
    rows = glass_order(resolved, assembly)
    marks = {name: row.mark for row in rows for name in row.names}
    openings = []
    for leaf in resolved.door.leaves:
        for lite in leaf.lites:
            pane = lite.pane
            spare = GLASS_TOLERANCE + 2 * pane.clearance * CLEARANCE_KEPT
            openings.append(
                OpeningToMeasure(
                    lite=lite.name,
                    pane=pane.name,
                    mark=marks[pane.name],
                    width=lite.width,
                    height=lite.height,
                    least_width=named(join(lite.name, "least width"), pane.width + spare),
                    least_height=named(join(lite.name, "least height"), pane.height + spare),
                )
            )
    safe = any(row.kind in SAFETY_KINDS for row in rows)
    return GlazingOrder(
        rows=rows,
        tolerance=GLASS_TOLERANCE,
        corners="square",
        edges="arrises taken off all round",
        template="none: every pane is a rectangle",
        openings=tuple(openings),
        gate="Measure every opening after glue-up, both ways and both diagonals. Order only when "
        "none is under its least size; if one is, work the pane out again.",
        safety=SAFETY_MARK if safe else "Not safety glass: see the caution on the sheet.",
        cautions=GLASS if rows else (),
    )
