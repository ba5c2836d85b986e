"""The orders as people and programs read them: one table to each supplier."""

from __future__ import annotations

from parametric.figures import exceeds
from parametric.trade.edge_band import EdgeBand
from parametric.trade.finish import FinishOrder
from parametric.trade.glazing import GlazingOrder, corner_words, grid_words, template_words
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.printed import Printed
from parametric.trade.sheet_order import BoardLot
from parametric.trade.tables import Table, glass_table
from parametric.trade.timber import TimberOrder
from parametric.units import mm_text


def timber_table(order: TimberOrder, said: Printed) -> Table:
    """Every rough blank, by timber and planed thickness."""
    return Table(
        header=(
            "timber",
            "planed to",
            "sawn",
            "mark",
            "part",
            "pieces",
            "no.",
            "rough length",
            "rough width",
            "note",
        ),
        rows=tuple(
            (
                lot.timber,
                said.wood(lot.thickness),
                lot.sawn_class or "laminate",
                blank.mark,
                blank.noun,
                str(blank.pieces),
                str(int(blank.number)),
                said.wood(blank.length),
                said.wood(blank.width),
                blank.note,
            )
            for lot in order.lots
            for blank in lot.blanks
        ),
    )


def timber_totals(order: TimberOrder, said: Printed) -> Table:
    """What each lot comes to with the waste, in cubic metres and board feet; then all of it."""
    rows = [
        (
            lot.timber,
            said.wood(lot.thickness),
            lot.sawn_class or "laminate",
            said.wood(lot.longest),
            said.wood(lot.widest),
            f"{float(lot.volume):.4f}",
            f"{float(lot.sawn_volume):.4f}",
            f"{float(lot.board_feet):.1f}",
            f"{float(order.waste):g}",
            f"{float(order.moisture):g}",
        )
        for lot in order.lots
    ]
    rows.append(
        (
            "all",
            "",
            "",
            "",
            "",
            f"{float(order.volume):.4f}",
            f"{float(order.sawn_volume):.4f}",
            f"{float(order.board_feet):.1f}",
            f"{float(order.waste):g}",
            f"{float(order.moisture):g}",
        )
    )
    return Table(
        header=(
            "timber",
            "planed to",
            "sawn",
            "longest",
            "widest",
            "m3 planed",
            "m3 sawn",
            "board feet",
            "waste in it %",
            "moisture %",
        ),
        rows=tuple(rows),
    )


def board_table(lots: tuple[BoardLot, ...], said: Printed) -> Table:
    """Every piece that is sawn from a sheet, with how many sheets all of its kind take."""
    return Table(
        header=(
            "board",
            "thick",
            "sheet long",
            "sheet wide",
            "sheets",
            "mark",
            "part",
            "pieces",
            "length",
            "width",
        ),
        rows=tuple(
            (
                lot.board,
                said.wood(lot.thickness, down=True),
                said.wood(lot.sheet_length),
                said.wood(lot.sheet_width),
                str(int(lot.sheets)),
                row.mark,
                row.noun,
                str(row.number),
                said.wood(row.length, down=True),
                said.wood(row.width, down=True),
            )
            for lot in lots
            for row in lot.pieces
        ),
    )


def edge_band_table(bands: tuple[EdgeBand, ...], said: Printed) -> Table:
    """Every kind of edge that is banded; then how much band that is, and how much is ordered."""
    rows: list[tuple[str, ...]] = []
    for band in bands:
        place = (band.board, said.wood(band.thickness))
        rows += [
            (*place, one.mark, one.noun, one.edge, str(one.number), said.wood(one.length), "", "")
            for one in band.edges
        ]
        number = str(sum(one.number for one in band.edges))
        net, order = f"{float(band.net):.2f}", up_to_tenth(band.order)
        rows.append((*place, "all", "", "", number, "", net, order))
    return Table(
        header=(
            "board",
            "thick",
            "mark",
            "part",
            "edge",
            "edges",
            "length",
            "metres of edge",
            "metres to order",
        ),
        rows=tuple(rows),
    )


def hardware_table(items: tuple[HardwareItem, ...], said: Printed) -> Table:
    """Everything that is bought; runs in metres are rounded up to the tenth."""
    return Table(
        header=("what", "number", "counted in", "size", "length", "known by", "asked"),
        rows=tuple(
            (
                item.what,
                _number(item),
                item.unit,
                item.size,
                "" if item.length is None else said.up(item.length),
                item.known_by,
                item.asked,
            )
            for item in items
        ),
    )


def _number(item: HardwareItem) -> str:
    if item.unit == "off":
        return str(int(item.number))
    return up_to_tenth(item.number)


def up_to_tenth(value: float) -> str:
    """A run that is bought, to the tenth above: what is ordered is never less than what is needed."""
    up = mm_text(value, 0.1, down=True)
    return up if float(up) >= float(value) - 1e-9 else mm_text(float(up) + 0.1, 0.1)


def finish_table(order: FinishOrder) -> Table:
    """Each product with its litres, the spare in them."""
    return Table(
        header=(
            "product",
            "kind",
            "colour",
            "m2",
            "coats",
            "m2 per litre",
            "litres",
            "spare in it %",
        ),
        rows=tuple(
            (
                coat.product,
                order.kind,
                order.colour,
                f"{float(order.area):.2f}",
                str(int(coat.coats)),
                f"{float(coat.covers):g}",
                f"{float(coat.litres):.2f}",
                "" if order.spare is None else f"{float(order.spare):g}",
            )
            for coat in order.coats
        ),
    )


def glazing_table(order: GlazingOrder, said: Printed) -> Table:
    """The glass order, with the tolerance, corners and template that the glazier asks for."""
    panes = glass_table(order.rows, said.unit, said.shop)
    tolerance = said.fine(order.tolerance)
    return Table(
        header=(*panes.header, "tolerance each way", "corners", "edges", "template", "spacer bars"),
        rows=tuple(
            (
                *row,
                tolerance,
                corner_words(order, own),
                order.edges,
                template_words(own),
                grid_words(own, said),
            )
            for row, own in zip(panes.rows, order.rows, strict=True)
        ),
    )


TRIED = "template"
"""In place of a height that no rule measures."""


def _least(said: Printed, least: float, drawn: float) -> str:
    """Rounded up; but where it is just what is drawn, as that is printed."""
    same = not exceeds(drawn, least) and not exceeds(least, drawn)
    return said.fine(drawn) if same else said.up(least)


def glass_gate_table(order: GlazingOrder, said: Printed) -> Table:
    """Every opening to measure before the glass is ordered, with room to write."""
    return Table(
        header=(
            "opening",
            "pane",
            "width drawn",
            "height drawn",
            "least width",
            "least height",
            "diagonals may differ",
            "measured width",
            "measured height",
        ),
        rows=tuple(
            (
                opening.lite,
                opening.mark,
                said.fine(opening.width),
                TRIED if opening.tried else said.fine(opening.height),
                _least(said, opening.least_width, opening.width),
                "" if opening.tried else _least(said, opening.least_height, opening.height),
                "" if opening.tried else said.fine(opening.diagonals, down=True),
                "",
                "",
            )
            for opening in order.openings
        ),
    )
