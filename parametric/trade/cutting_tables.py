"""Cutting plans as people and programs read them: every cut, every bar, what is left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from parametric.catalog.shop import Shop
from parametric.trade.bar_order import BarLot
from parametric.trade.cutting_steps import SHEET, cut_steps, gives, numbers, pieces_on
from parametric.trade.matched_blanks import MatchedBlank
from parametric.trade.printed import Printed, several
from parametric.trade.sheet_order import BoardLot
from parametric.trade.stock.bars import SawnBar
from parametric.trade.stock.blanks import in_order
from parametric.trade.stock.sheet_plan import SawnSheet, SheetStock, kept
from parametric.trade.tables import Table


def proof_words(lot: BoardLot) -> str:
    """How many sheets are bought, and whether fewer would do: `6. Fewer cannot hold them: ...`."""
    plan, used = lot.plan, any(sheet.stock.count is not None for sheet in lot.plan.sheets)
    beside = "beside the offcuts, " if used else ""
    proof = plan.proof
    asks = several_hundredths(proof.asks, "sheet")
    match proof.by:
        case "nothing":
            ground = "nothing is wanted"
        case "size":
            ground = f"{beside}without a gap, saw cuts and all, they fill {asks}"
        case "scales":
            ground = f"{beside}by how few lie side by side and end to end they ask for {asks}"
        case "patterns":
            ground = f"{beside}mixed in every way that a sheet can be cut they ask for {asks}"
        case "every pattern":
            ground = f"every way to cut {several(proof.least - 1, 'sheet')} was tried"
        case _:
            assert_never(proof.by)
    if not plan.bought:
        return "None is bought: the offcuts in stock hold everything."
    if not plan.proved:
        doubt = _between(proof.least, plan.bought - 1)
        return (
            f"Not known of {doubt}: no such plan was found, and no proof that there is none. "
            f"Fewer than {proof.least} cannot hold them; {ground}."
        )
    if plan.bought == 1:
        return "One is needed."
    return f"No: fewer than {plan.bought} cannot hold them; {ground}."


def bar_proof_words(lot: BarLot, said: Printed) -> str:
    """How much length is bought, and whether less would do."""
    plan = lot.plan
    if not plan.bought:
        return "nothing bought, the offcuts in stock hold everything"
    proof = plan.proof
    one = len(lot.lengths) == 1
    bought = several(plan.bought, "bar") if one else f"{said.wood(lot.bought)} of length"
    asks = several_hundredths(proof.asks, "bar") if one else said.up(proof.asks * plan.step)
    match proof.by:
        case "nothing":
            ground = "nothing is wanted"
        case "size":
            ground = f"end to end with their saw cuts they take {asks}"
        case "patterns":
            ground = f"mixed in every way that a bar can be cut they ask for {asks}"
        case "every pattern" | "scales":
            ground = "every way to cut a bar was tried"
        case _:
            assert_never(proof.by)
    if not plan.proved:
        least = several(proof.least, "bar") if one else said.wood(proof.least * plan.step)
        return f"{bought} bought; less than {least} cannot hold them: {ground}"
    return f"{bought} bought, and less cannot hold them: {ground}"


def several_hundredths(value: float, one: str) -> str:
    """`5.34 sheets`: rounded up, since what it stands for is no less."""
    up = -(-round(value * 1e6) // 10_000) / 100
    return f"{up:g} {one if up == 1 else one + 's'}"


def _between(low: int, high: int) -> str:
    return str(low) if low == high else f"{low} to {high}"


def counted(sheets: Sequence[SawnSheet]) -> Iterator[tuple[str, SawnSheet]]:
    """Every layout with the numbers of its sheets, counted through: `1`, `2 to 4`."""
    number = 1
    for sheet in sheets:
        last = number + sheet.times - 1
        yield _between(number, last), sheet
        number = last + 1


def sheet_name(stock: SheetStock, said: Printed) -> str:
    """`sheet 2440 x 1220`, `offcut 800 x 600`: long x wide."""
    word = "sheet" if stock.count is None else "offcut"
    return f"{word} {said.wood(stock.length)} x {said.wood(stock.width)}"


def cutting_table(lots: Sequence[BoardLot], said: Printed) -> Table:
    """Every cut of every sheet in the order it is made."""
    return Table(
        header=(
            *("board", "thick", "grain", "whole sheet", "no.", "from", "trim"),
            *("cut alike", "cuts", "way", "fence at", "cut in", "gives"),
        ),
        rows=tuple(
            (
                lot.board,
                said.wood(lot.thickness, down=True),
                "none" if lot.turned else "along",
                _whole_sheet(lot, said),
                number,
                sheet_name(sheet.stock, said),
                said.fine(sheet.stock.trim),
                str(sheet.times),
                *row,
            )
            for lot in lots
            for number, sheet in counted(lot.plan.sheets)
            for row in cut_rows(sheet, said)
        ),
    )


def _whole_sheet(lot: BoardLot, said: Printed) -> str:
    """What the trim leaves of one that is bought."""
    long, wide = (float(size) - 2 * float(lot.trim) for size in (lot.sheet_length, lot.sheet_width))
    return f"{said.wood(long)} x {said.wood(wide)}"


def cut_rows(sheet: SawnSheet, said: Printed) -> Iterator[tuple[str, str, str, str, str]]:
    """Cut, way, fence, in what, what it gives; of a sheet that is one piece, that."""
    if not sheet.cuts:
        yield "", "none", "", SHEET, ", ".join(mark for mark, _ in pieces_on(sheet))
    for step in cut_steps(sheet):
        yield numbers(step), step.way, said.setting(step.at), step.of, gives(step)


def bar_table(lots: Sequence[BarLot], said: Printed) -> Table:
    """Every bar with its pieces in the order they are cut."""
    return Table(
        header=("timber", "planed to", "rough width", "from", "cut alike", "pieces", "left"),
        rows=tuple(
            (
                lot.timber,
                said.wood(lot.thickness),
                said.wood(lot.width),
                bar_name(bar, said),
                str(bar.times),
                bar_pieces(bar, said),
                said.wood(bar.left, down=True),
            )
            for lot in lots
            for bar in lot.plan.bars
        ),
    )


def bar_name(bar: SawnBar, said: Printed) -> str:
    """`bar 3000`, `offcut 950`."""
    return f"{'bar' if bar.stock.count is None else 'offcut'} {said.wood(bar.stock.length)}"


def bar_pieces(bar: SawnBar, said: Printed) -> str:
    """`S1 2101, 2 R3 640`: in the order they are cut."""
    runs: list[tuple[str, float, int]] = []
    for piece in bar.pieces:
        if runs and runs[-1][:2] == (piece.mark, piece.length):
            runs[-1] = (piece.mark, piece.length, runs[-1][2] + 1)
        else:
            runs.append((piece.mark, piece.length, 1))
    return ", ".join(
        f"{count} {mark} {said.wood(length)}" if count > 1 else f"{mark} {said.wood(length)}"
        for mark, length, count in runs
    )


def offcuts_table(boards: Sequence[BoardLot], bars: Sequence[BarLot], said: Printed) -> Table:
    """What is left and worth keeping; the last cell stands under `offcuts` in a house file."""
    return Table(
        header=("material", "wide", "thick", "long", "number", "as written under offcuts"),
        rows=tuple(
            (
                material,
                _exact(wide, said),
                _exact(thick, said),
                _exact(long, said),
                str(number),
                f"{material}: [{', '.join([_written(wide, thick, long, said)] * number)}]",
            )
            for material, wide, thick, long, number in _left(boards, bars, said.shop)
        ),
    )


def offcut_lines(
    boards: Sequence[BoardLot], bars: Sequence[BarLot], said: Printed
) -> tuple[str, ...]:
    """The same as lines of a house file, one for each material."""
    lines: dict[str, list[str]] = {}
    for material, wide, thick, long, number in _left(boards, bars, said.shop):
        lines.setdefault(material, []).extend([_written(wide, thick, long, said)] * number)
    return tuple(f"{material}: [{', '.join(sizes)}]" for material, sizes in lines.items())


def _left(
    boards: Sequence[BoardLot], bars: Sequence[BarLot], shop: Shop
) -> Iterator[tuple[str, float, float, float, int]]:
    wide, long = shop.blanks.keep_offcut
    for lot in boards:
        for rest, number in kept(lot.plan.sheets, long, wide):
            yield lot.board, rest.width, lot.thickness, rest.length, number
    for own in bars:
        for bar in own.plan.bars:
            if bar.left >= long - 1e-6 and own.width >= wide - 1e-6:
                yield own.timber, own.width, own.thickness, bar.left, bar.times


def _written(wide: float, thick: float, long: float, said: Printed) -> str:
    """Wide x thick x long, each with its unit: a house file may be in another than the job."""
    unit = " mm" if said.unit == "mm" else '"'
    return " x ".join(f"{_exact(size, said)}{unit}" for size in (wide, thick, long))


def _exact(size: float, said: Printed) -> str:
    """Never larger than it is."""
    return said.wood(size, down=True)


def given(lot: BoardLot, sheet: SawnSheet) -> str:
    """`2 C1 side, 1 C4 shelf`: what comes off a sheet."""
    nouns = {row.mark: row.noun for row in lot.pieces}
    return ", ".join(f"{count} {mark} {nouns[mark]}" for mark, count in pieces_on(sheet))


def matched_words(one: MatchedBlank, kerf: float, said: Printed) -> str:
    """How a set's blank is marked and kept, and what of its figure is lost against what is hidden."""
    marks = ", ".join(piece.mark for piece in in_order(one.piece.rows))
    end, top = ("foot", "top") if one.of.way == "up" else ("left", "top")
    hidden = sorted(float(row.hidden) for row in one.rows[1:] if row.hidden is not None)
    lost = ""
    if hidden:
        low, high = said.wood(hidden[0]), said.wood(hidden[-1])
        lost = (
            f" A saw cut takes {said.setting(kerf)} of the figure where frames and gap hide "
            f"{low if low == high else f'{low} to {high}'}."
        )
    return (
        f"{one.name.capitalize()}: triangle over the blank before it is sawn apart, its point to "
        f"the {top}; {marks} follow from the {end}.{lost}"
    )
