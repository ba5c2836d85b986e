"""The lists as people and programs read them: words and rounded numbers in rows.

Wood prints to the nearest step of the house; panels and glass print rounded down, since a
piece that is too large does not go in. Rounding is a rule of printing and of nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.trade.cutlist import CutRow
from parametric.trade.glass import GlassRow
from parametric.units import INCH, Unit, length_text, mm_text

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A header and its rows, as text."""

    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def wood(value: float, unit: Unit, shop: Shop, *, down: bool = False) -> str:
    """A size of wood, printed."""
    return length_text(float(value), unit, shop.paper.wood_step(unit), down=down)


def fine(value: float, unit: Unit, shop: Shop, *, down: bool = False) -> str:
    """A size of glass or of a pocket, printed."""
    return length_text(float(value), unit, shop.paper.fine_step(unit), down=down)


def thick(
    nominal: float,
    true: float,
    unit: Unit,
    shop: Shop,
    build: tuple[float, float, float] | None = None,
) -> str:
    """The thickness of glass as people say it, and the true one where that is another.

    Args:
        nominal: what it is sold as, mm.
        true: what it measures, mm.
        unit: of the design.
        shop: its steps.
        build: of an insulated unit its panes and the space between them, mm.

    Example:
        `6`, `1/4 (0.226 true)`, `4 / 12 / 4 (20)`.
    """
    same = abs(float(nominal) - float(true)) < _SAME
    measured = mm_text(float(true), 0.01) if unit == "mm" else f"{float(true) / float(INCH):.3f}"
    if build is None:
        words = fine(nominal, unit, shop)
        return words if same else f"{words} ({measured} true)"
    words = " / ".join(fine(size, unit, shop) for size in build)
    return f"{words} ({fine(nominal, unit, shop)})" if same else f"{words} ({measured} true)"


def cut_table(rows: tuple[CutRow, ...], unit: Unit, shop: Shop) -> Table:
    """Mark, part, number, length × width × thickness along the grain first, timber, note."""
    return Table(
        header=("mark", "part", "no.", "length", "width", "thick", "material", "note"),
        rows=tuple(
            (
                row.mark,
                row.noun,
                str(row.number),
                *(
                    wood(size, unit, shop, down=row.noun in PANEL_NOUNS)
                    for size in (row.length, row.width, row.thickness)
                ),
                row.material,
                row.note,
            )
            for row in rows
            if row.look != "glass"
        ),
    )


def glass_table(rows: tuple[GlassRow, ...], unit: Unit, shop: Shop) -> Table:
    """Mark, number, kind, width × height × thickness, weight, the class asked for, note."""
    return Table(
        header=("mark", "no.", "kind", "width", "height", "thick", "kg each", "class", "note"),
        rows=tuple(
            (
                row.mark,
                str(row.number),
                row.called,
                fine(row.width, unit, shop, down=True),
                fine(row.height, unit, shop, down=True),
                thick(row.nominal, row.thickness, unit, shop, row.unit),
                f"{float(row.weight):.2f}",
                row.safety_class,
                row.note,
            )
            for row in rows
        ),
    )
