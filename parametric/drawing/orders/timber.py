"""The timber order: for the yard that saws it, and for whoever picks the boards."""

from __future__ import annotations

from parametric.drawing.orders.letterhead import headed, letterhead
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Block, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.order_tables import (
    board_table,
    timber_table,
    timber_totals,
    up_to_tenth,
)
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed, several
from parametric.trade.tables import Table

_BLANKS = (
    Heading(text="mark"),
    Heading(text="part"),
    Heading(text="pieces", anchor="right"),
    Heading(text="blanks", anchor="right"),
    Heading(text="rough length", anchor="right"),
    Heading(text="rough width", anchor="right"),
    Heading(text="picked, notes", grows=True, least=24.0),
)


def draw_timber_order(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Rough blanks lot by lot, what each lot comes to, what the wood must be like."""
    order, said = paper.timber, printed(job.resolved)
    blanks, totals = timber_table(order, said), timber_totals(order, said)
    return run_on(
        bench_paper(job),
        headed(title, "Timber order", "Length along the grain. Rough sizes, before planing.", job),
        [
            letterhead(job),
            *([_totals(totals)] if order.lots else []),
            *_sheets(board_table(paper.boards, said)),
            *_bands(paper, said),
            Points(title="What is asked", mark="number", texts=_asked(paper)),
            *_lots(blanks),
        ],
    )


def _totals(table: Table) -> Ruled:
    """The lots and their sum, cubic metres and board feet."""
    waste, moisture = table.rows[0][-2:]
    return Ruled(
        title="Please supply",
        columns=(
            Heading(text="timber", grows=True),
            *(
                Heading(text=head.replace("m3", "m³"), anchor="right")
                for head in table.header[1:-2]
            ),
        ),
        rows=tuple(Row(cells=row[:-2], ticked=row[0] != "all") for row in table.rows),
        ticks=("",),
        foot=(
            f"Waste of {waste} % is in cubic metres and board feet, and in no length or width. "
            f"Moisture {moisture} % when it comes to the bench.",
        ),
    )


def _sheets(table: Table) -> list[Block]:
    """The sheets that panels are sawn from, and the pieces of each."""
    lots: dict[tuple[str, ...], list[Row]] = {}
    for row in table.rows:
        lots.setdefault(row[:5], []).append(Row(cells=row[5:]))
    return [
        Ruled(
            title=f"{board.capitalize()} {thick} thick: {several(int(sheets), 'sheet')} "
            f"{long} × {wide}",
            columns=(
                Heading(text="mark"),
                Heading(text="part", grows=True),
                *(Heading(text=head, anchor="right") for head in table.header[7:]),
            ),
            rows=tuple(rows),
            ticks=("",),
            foot=(
                "Finished sizes, length along the grain; as many sheets as the cutting plan saws up "
                "beside what is in stock. Dry, flat, both faces alike.",
            ),
        )
        for (board, thick, long, wide, sheets), rows in lots.items()
    ]


def _bands(paper: Paperwork, said: Printed) -> list[Block]:
    """The edges that are banded, and how much band they take."""
    return [
        Ruled(
            title=f"Edge band for {band.board} {said.wood(band.thickness)} thick: "
            f"{up_to_tenth(band.order)} m",
            columns=(
                Heading(text="mark"),
                Heading(text="part", grows=True),
                Heading(text="edge"),
                Heading(text="edges", anchor="right"),
                Heading(text="length", anchor="right"),
            ),
            rows=tuple(
                Row(cells=(one.mark, one.noun, one.edge, str(one.number), said.wood(one.length)))
                for one in band.edges
            ),
            foot=(
                f"{float(band.net):.2f} m of edges and {float(band.spare):g} % of spare, which is "
                "trimmed off at the ends. Wider than the board is thick, planed flush after.",
            ),
        )
        for band in paper.edge_bands
    ]


def _asked(paper: Paperwork) -> tuple[str, ...]:
    order = paper.timber
    thick = [lot for lot in order.lots if lot.sawn_class is None]
    points = [
        f"Dried to {float(order.moisture):g} %, measured in the middle of a board that was cut "
        "through. Stacked in the shop before it is cut.",
        "Straight grain in stiles and rails: no knot, wane, shake or short grain near an end. "
        "Boards long enough for the longest blank of their lot, and as wide as the widest.",
    ]
    if any(glue_up.boards for glue_up in paper.panel_glue_ups):
        points.append(
            "Boards of one panel from one log where there is, alike in colour; no more than one "
            "board of a panel with its heart near the face."
        )
    if any(blank.noun == "loose tenon" for lot in order.lots for blank in lot.blanks):
        points.append(
            "Loose tenons from the same timber, straight-grained; off-cuts of the frame serve "
            "where they are long enough."
        )
    if thick:
        points.append("No board is sawn so thick: what is marked laminate is glued up of two.")
    return tuple(points)


def _lots(table: Table) -> list[Block]:
    """One table a lot, with a box a line to pick by."""
    lots: dict[tuple[str, str, str], list[Row]] = {}
    for row in table.rows:
        note = row[9]
        said = (f"{note[:1].upper()}{note[1:]}.",) if note else ()
        lots.setdefault((row[0], row[1], row[2]), []).append(Row(cells=(*row[3:9], ""), under=said))
    every = tuple(row for rows in lots.values() for row in rows)
    return [
        Ruled(
            title=f"{timber.capitalize()} {sawn}, planed to {planed}",
            columns=_BLANKS,
            rows=tuple(rows),
            ticks=("",),
            fit_to=every,
        )
        for (timber, planed, sawn), rows in lots.items()
    ]
