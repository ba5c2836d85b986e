"""What goes with the glass order: tolerance, corners, and the opening to measure before it is sent.

A toughened pane cannot be cut again. The opening is measured after glue-up, and the order
goes out when every opening is at least what its pane needs.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import CLEARANCE_KEPT, GLASS_TOLERANCE
from parametric.catalog.glass_facts import SAFETY_KINDS, SAFETY_MARK
from parametric.figures import Figure, hypot, largest, named, smallest
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cautions import GLASS, Cautions
from parametric.trade.glass import GlassRow, glass_order
from parametric.trade.printed import printed


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningToMeasure:
    """One lite, mm: what it should measure, and the least that still takes its pane.

    The least leaves half the drawn clearance round a pane that came out at the top of its
    tolerance. `diagonals` is how far they may differ where both sizes are as drawn: what a
    size has over its least is used up once, by the size or by the slant.
    """

    lite: str
    pane: str
    mark: str
    width: Figure
    height: Figure
    least_width: Figure
    least_height: Figure
    diagonals: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class GlazingOrder:
    """The glass order with all that the glazier asks: panes, tolerance mm, corners, the gate.

    `template` is the full-size drawing of shaped panes; a rectangle needs none. `stamp` says
    where the maker's mark goes, so that no stop covers it.
    """

    rows: tuple[GlassRow, ...]
    tolerance: Figure
    corners: str
    edges: str
    template: str
    openings: tuple[OpeningToMeasure, ...]
    gate: str
    stamp: str
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
            least_width = named(join(lite.name, "least width"), pane.width + spare)
            least_height = named(join(lite.name, "least height"), pane.height + spare)
            openings.append(
                OpeningToMeasure(
                    lite=lite.name,
                    pane=pane.name,
                    mark=marks[pane.name],
                    width=lite.width,
                    height=lite.height,
                    least_width=least_width,
                    least_height=least_height,
                    diagonals=named(
                        join(lite.name, "diagonals may differ"),
                        _slant(lite.width, lite.height, least_width, least_height),
                    ),
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
        stamp=_stamp(resolved) if safe else "",
        safety=SAFETY_MARK if safe else "Not safety glass: see the caution on the sheet.",
        cautions=GLASS if rows else (),
    )


def _slant(width: Figure, height: Figure, least_width: Figure, least_height: Figure) -> Figure:
    """How far the diagonals of an opening may differ before its upright pane is pinched, mm.

    An opening that slants by s over its height has diagonals 2 x width x s / diagonal apart,
    and s comes off the width; the same holds the other way, and the smaller is taken.

    Source: difference of two squares on a parallelogram's diagonals (geometry).
    """
    over = smallest(width - least_width, height - least_height)
    return largest(Figure(0.0), 2 * smallest(width, height) * over / hypot(width, height))


def _stamp(resolved: Resolved) -> str:
    """Where the mark of a safety pane is seen when it is in."""
    said = printed(resolved)
    bite = max((t.pane.bite for leaf in resolved.door.leaves for t in leaf.lites), key=float)
    return (
        "Mark in the low left corner seen from the front, upright, and clear of the "
        f"{said.up(bite)} at each edge that the stops cover."
    )
