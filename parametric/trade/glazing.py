"""What goes with the glass order: tolerance, corners, and the opening to measure before it is sent.

A toughened pane cannot be cut again. The opening is measured after glue-up, and the order
goes out when every opening is at least what its pane needs.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import CLEARANCE_KEPT, GLASS_TOLERANCE
from parametric.catalog.glass_facts import SAFETY_KINDS, SAFETY_MARK
from parametric.figures import Figure, hypot, largest, named, smallest
from parametric.infill.glass import Pane
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.resolve.lite import Lite
from parametric.trade.cautions import GLASS, Cautions
from parametric.trade.glass import GlassRow, glass_order
from parametric.trade.printed import Printed, printed

PLANT = (
    "Plant the bars on the clean glass: the front ones first, the back ones over them, seen square "
    "through the pane"
)
"""How bars come on to a pane that stands in its place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningToMeasure:
    """Where one pane goes, mm: what it should measure, and the least that still takes its pane.

    Between stops that is the lite; in a rebate, from rebate to rebate. A shaped pane is tried
    with its template, cut out of paper: `tried`, and of its sizes only the width is measured.

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
    tried: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GlazingOrder:
    """The glass order with all that the glazier asks: panes, tolerance mm, corners, the gate.

    Each row says its own template. `stamp` says where the maker's mark goes, so that no stop
    and no rebate covers it.
    """

    rows: tuple[GlassRow, ...]
    tolerance: Figure
    corners: str
    edges: str
    openings: tuple[OpeningToMeasure, ...]
    gate: str
    stamp: str
    safety: str
    cautions: Cautions


def glazing_order(resolved: Resolved, assembly: Assembly) -> GlazingOrder:
    """All panes, and all openings in which they are to stand."""
    rows = glass_order(resolved, assembly)
    marks = {name: row.mark for row in rows for name in row.names}
    openings = tuple(
        _opening(lite, pane, marks[pane.name])
        for leaf in resolved.leaves
        for lite in leaf.lites
        for pane in lite.panes
    )
    safe = any(row.kind in SAFETY_KINDS for row in rows)
    return GlazingOrder(
        rows=rows,
        tolerance=GLASS_TOLERANCE,
        corners="square",
        edges="arrises taken off all round",
        openings=openings,
        gate=_gate(openings, stopped=_stopped(resolved)),
        stamp=_stamp(resolved) if safe else "",
        safety=SAFETY_MARK if safe else "Not safety glass: see the caution on the sheet.",
        cautions=GLASS if rows else (),
    )


def template_words(row: GlassRow) -> str:
    """What the order says of the full-size drawing of a size of pane."""
    return "none: every pane is a rectangle" if row.template is None else row.template.words


def free_cell(clearances: tuple[Figure, Figure], said: Printed) -> str:
    """What is free at a pane's edges, in a column: `3`, or at its sides x at foot and head."""
    across, up = (said.fine(one) for one in clearances)
    return across if across == up else f"{across} x {up}"


def free_words(cell: str) -> str:
    """The same in a sentence: `3 free all round`."""
    across, _, up = cell.partition(" x ")
    return (
        f"{across} free at the sides, {up} at foot and head" if up else f"{across} free all round"
    )


def grid_words(row: GlassRow, said: Printed) -> str:
    """Where the bars between the panes of a unit stand, as the order says it; "" where none do."""
    grid = row.grid
    if grid is None:
        return ""
    places = [
        f"{way} at {', '.join(said.fine(at) for at in middles)} from the {edge} edge"
        for way, middles, edge in (
            ("upright", grid.uprights, "left"),
            ("level", grid.levels, "lower"),
        )
        if middles
    ]
    return (
        f"{'; '.join(places)}, to their middles, seen from the front; "
        f"{said.fine(grid.most, down=True)} wide at most"
    )


def corner_words(order: GlazingOrder, row: GlassRow) -> str:
    """How the corners of a size of pane are left."""
    return order.corners if row.template is None else "as the outline has them"


def _opening(lite: Lite, pane: Pane, mark: str) -> OpeningToMeasure:
    """What is measured for one pane."""
    spare = GLASS_TOLERANCE + 2 * pane.clearance * CLEARANCE_KEPT
    if pane.stops is not None:
        name = lite.name if len(lite.panes) == 1 else pane.name
        width, height = pane.stops.across, pane.stops.up
    else:
        name = pane.name
        width = named(join(name, "between the rebates"), pane.width + 2 * pane.clearances[0])
        height = named(join(name, "rebate to rebate"), pane.height + 2 * pane.clearances[1])
    least_width = named(join(name, "least width"), pane.width + spare)
    least_height = named(join(name, "least height"), pane.height + spare)
    return OpeningToMeasure(
        lite=name,
        pane=pane.name,
        mark=mark,
        width=width,
        height=height,
        least_width=least_width,
        least_height=least_height,
        diagonals=named(
            join(name, "diagonals may differ"), _slant(width, height, least_width, least_height)
        ),
        tried=pane.outline is not None,
    )


def _stopped(resolved: Resolved) -> bool:
    """Whether a shaped pane stands between stops."""
    return any(
        pane.stops is not None and pane.outline is not None
        for leaf in resolved.leaves
        for lite in leaf.lites
        for pane in lite.panes
    )


def _gate(openings: tuple[OpeningToMeasure, ...], *, stopped: bool) -> str:
    """What must be found before the order goes out."""
    square = (
        "Measure every opening after glue-up, both ways and both diagonals. Order only when "
        "none is under its least size; if one is, work the pane out again."
    )
    if not any(opening.tried for opening in openings):
        return square
    return (
        f"{square} For a shaped pane cut its template out of the paper and lay it in its "
        f"{'opening' if stopped else 'rebate'}, "
        "turned over where it says so: it must show the clearance all round."
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
    lites = [lite for leaf in resolved.leaves for lite in leaf.lites]
    covered = max((_covered(lite, pane) for lite in lites for pane in lite.panes), key=float)
    what = "stops cover" if all(lite.rebate is None for lite in lites) else "rebates cover"
    return (
        "Mark in the low left corner seen from the front, upright, and clear of the "
        f"{said.up(covered)} at each edge that the {what}."
    )


def _covered(lite: Lite, pane: Pane) -> Figure:
    """The most of a pane's edge that is not seen."""
    return pane.bite if lite.rebate is None else lite.rebate.frame - pane.clearance
