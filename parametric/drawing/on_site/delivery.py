"""The delivery list: ticked off into the van and again at the door, with hands for every piece."""

from __future__ import annotations

from parametric.drawing.orders.letterhead import headed, shown, weighed
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Field, Fields, Framed, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed, several, weight, weight_head
from parametric.trade.site_tables import delivery_table


def draw_delivery(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Pieces, sizes, kilograms with and without glass, how many hold each; the way in."""
    sent, said = paper.delivery, printed(job.resolved)
    return run_on(
        bench_paper(job),
        headed(title, "Delivery", f"Weights in {weight_head(said.unit)}, each.", job),
        [
            _way_in(paper, said),
            _pieces(paper, said),
            Points(title="", mark="warning", texts=sent.cautions),
            Fields(
                rows=(
                    (
                        Field(name="Loaded, by and when"),
                        Field(name="Received, by and when"),
                    ),
                )
            ),
        ],
    )


def _way_in(paper: Paperwork, said: Printed) -> Framed:
    """What the largest piece must pass, measured before the van is loaded."""
    piece = paper.delivery.largest
    size = " × ".join(said.wood(side) for side in piece.sizes)
    hands = several(int(piece.people), "person", "people")
    bare = " without its glass" if piece.glazed is not None else ""
    carried = (
        f"{weight(piece.weight, said.unit)}{bare}"
        if piece.weight is not None
        else "weight by supplier"
    )
    return Framed(
        title="The way in",
        parts=(
            Points(
                title="",
                mark="none",
                texts=(
                    f"The largest piece is {piece.what}: {size}, {carried}, {hands}. Carry it "
                    "upright; turn it on its long edge only where the way is low; never rest it "
                    "on a corner. Measure the way in before the van is loaded.",
                ),
            ),
            Fields(
                rows=(
                    (Field(name="Narrowest door"), Field(name="Lowest door"), Field(name="Lift")),
                    (
                        Field(name="Tightest turn, stair or passage", share=2.0),
                        Field(name="Where the van stands", share=1.6),
                    ),
                )
            ),
        ),
    )


def _pieces(paper: Paperwork, said: Printed) -> Ruled:
    """Every piece; how it travels stands under it."""
    rows, head = [], weight_head(said.unit)
    glazing = any(item.glazed is not None for item in paper.delivery.items)
    table = delivery_table(paper.delivery, said)
    for row, item in zip(table.rows, paper.delivery.items, strict=True):
        what, mark, number, size, each, people, glazed, glazed_people, handling = row
        heavy = weighed(item.weight, each, said.unit)
        heavier = weighed(item.glazed, glazed, said.unit)
        rows.append(
            Row(
                cells=(
                    *(what, mark, number, shown(size), heavy, people),
                    *((heavier, glazed_people) if glazing else ()),
                ),
                under=(f"{handling[:1].upper()}{handling[1:]}.",),
            )
        )
    return Ruled(
        title="Pieces",
        columns=(
            Heading(text="what", grows=True),
            Heading(text="mark"),
            Heading(text="no.", anchor="right"),
            Heading(text="size", anchor="right", whole=True),
            Heading(text=head, anchor="right"),
            Heading(text="people", anchor="right"),
            *(
                (
                    Heading(text=f"{head} glazed", anchor="right"),
                    Heading(text="people glazed", anchor="right"),
                )
                if glazing
                else ()
            ),
        ),
        rows=tuple(rows),
        ticks=("van", "here"),
        under_from=0,
        foot=(
            f"{weight(paper.delivery.weight, said.unit)} in all, without what a supplier weighs. "
            f"{paper.delivery.because} Write beside a piece what is damaged or missing.",
        ),
    )
