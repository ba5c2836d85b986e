"""The glass order: measured first, then sent; every pane with its picture."""

from __future__ import annotations

from parametric.drawing.orders.letterhead import headed, letterhead, weighed
from parametric.drawing.orders.pane_picture import pane_picture
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Beside, Block, Field, Fields, Framed, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.cautions import LOCAL
from parametric.trade.order_tables import TRIED, glass_gate_table, glazing_table
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed, weight_head

_BESIDE = 90.0
"""What sentences need beside a picture, mm."""
_SHAPED = (
    "Shaped: the sizes are those of the rectangle it is cut from. Cut to the outline, not to them."
)
_MOST_HIGH = (70.0, 48.0, 34.0, 26.0)
"""How tall a pane is drawn, mm: large where that costs no page."""
_GRID_HIGH = 90.0
"""How tall one with the places of its spacer bars may be drawn, mm."""


def draw_glass_order(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """The order to the glazier; no sheet where the job has no glass."""
    order, said = paper.glazing, printed(job.resolved)
    if not order.rows:
        return ()
    sheet_paper = bench_paper(job)
    titled = headed(
        title,
        "Glass order",
        f"Width × height × thickness. Weights in {weight_head(said.unit)}.",
        job,
    )
    tries = [
        run_on(
            sheet_paper,
            titled,
            [
                letterhead(job),
                _gate(paper, said),
                _order(paper, said),
                *_panes(job, paper, said, sheet_paper.frame.width, most_high),
            ],
        )
        for most_high in (
            *((_GRID_HIGH,) if any(row.grid for row in order.rows) else ()),
            *_MOST_HIGH,
        )
    ]
    return min(tries, key=len)


def _panes(
    job: Subject, paper: Paperwork, said: Printed, wide: float, most_high: float
) -> tuple[Block, ...]:
    """The panes as they stand, and what the code and the glass ask; beside them where it fits."""
    order = paper.glazing
    picture, across = pane_picture(job, order.rows, said, wide, most_high)
    problems = [p for p in job.problems if p.code == "glass_not_safety"]
    asked = tuple(dict.fromkeys(p.message for p in problems if p.level != "caution"))
    warned = tuple(dict.fromkeys(p.message for p in problems if p.level == "caution"))
    unsaid = "" if problems else order.safety
    words = (
        Points(
            title="Safety glass",
            mark="none",
            texts=tuple(text for text in (*asked, order.stamp, unsaid) if text),
        ),
        Points(title="", mark="warning", texts=(*warned, *order.cautions, LOCAL)),
    )
    if across + _BESIDE <= wide:
        return (Beside(picture=picture, wide=across, parts=words),)
    return (picture, *words)


def _gate(paper: Paperwork, said: Printed) -> Framed:
    """Openings to measure in the glued-up leaves, with boxes to write them in.

    Those of a divided lite are many and have long names: only what is needed stands here, what
    is drawn on the leaf's own sheet; and the lite is not named where its leaf has only one.
    """
    order = paper.glazing
    divided = any(opening.lite == opening.pane for opening in order.openings)
    found = Heading(text="found", box=True, least=11.0 if divided else 13.5, grows=True)
    drawn = () if divided else (Heading(text="drawn", anchor="right"),)
    rows = []
    for row in glass_gate_table(order, said).rows:
        opening, pane, wide, high, least_wide, least_high, slant, *_ = row
        size = () if divided else (f"{wide} × {high}",)
        tall = TRIED if high == TRIED else least_high
        opening = opening.replace(" / lite /", " /")
        rows.append(Row(cells=(opening, pane, *size, least_wide, "", tall, "", slant, "")))
    return Framed(
        title="Measure first",
        parts=(
            Points(
                title="",
                mark="none",
                texts=(
                    order.gate,
                    "Write the smallest of three widths and of three heights. The diagonals may "
                    "differ by what the table says where both sizes are as drawn, and by nothing "
                    "where one is down to its least.",
                ),
            ),
            Ruled(
                title="",
                columns=(
                    Heading(text="opening", whole=divided),
                    Heading(text="pane"),
                    *drawn,
                    Heading(text="least width", anchor="right"),
                    found,
                    Heading(text="least height", anchor="right"),
                    found,
                    Heading(text="diagonals differ by", anchor="right"),
                    found,
                ),
                rows=tuple(rows),
                ticks=("",),
                air=1.0,
            ),
            Fields(
                rows=(
                    (
                        Field(name="Measured by", share=1.3),
                        Field(name="Date"),
                        Field(name="May be sent, signed", share=1.7),
                    ),
                )
            ),
        ),
    )


def _order(paper: Paperwork, said: Printed) -> Ruled:
    """One row a size; what is asked of it stands under its numbers."""
    table = glazing_table(paper.glazing, said)
    rows = []
    for row, pane in zip(table.rows, paper.glazing.rows, strict=True):
        mark, number, kind, wide, high, thick, kg, category, note = row[:9]
        heavy = weighed(pane.weight, kg, said.unit)
        tolerance, corners, edges, template, grid = row[9:]
        rows.append(
            Row(
                cells=(mark, number, kind, wide, high, thick, heavy, category),
                under=(
                    f"Tolerance each way {tolerance}. Corners {corners}. Edges: {edges}. "
                    f"Template {template}.",
                    f"{note[:1].upper()}{note[1:]}.",
                    *(() if pane.template is None else (_SHAPED,)),
                    *(() if pane.grid is None else (f"Spacer bars {grid}.",)),
                ),
            )
        )
    total = sum(row.number for row in paper.glazing.rows)
    return Ruled(
        title="Please supply",
        columns=(
            Heading(text="mark"),
            Heading(text="number", anchor="right"),
            Heading(text="kind", grows=True),
            Heading(text="width", anchor="right"),
            Heading(text="height", anchor="right"),
            Heading(text="thick", anchor="right"),
            Heading(text=f"{weight_head(said.unit)} each", anchor="right"),
            Heading(text="class asked", anchor="right"),
        ),
        rows=tuple(rows),
        foot=(f"{total} panes in all",),
    )
