"""The hardware order: what the design fixes, what the supplier must answer, and the finish."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.orders.letterhead import headed, letterhead, weighed
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Block, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.trade.cautions import LOCAL
from parametric.trade.hardware_item import DESIGN, SUPPLIER
from parametric.trade.order_tables import finish_table, hardware_table
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, kg, printed, weight_head

_TITLES = {
    DESIGN: "Sizes known from the design",
    SUPPLIER: "By supplier: what is sent must do this",
}


def draw_hardware_order(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """All that is bought beside timber and glass, weights beside ratings, litres of finish."""
    said = printed(job.resolved)
    return run_on(
        bench_paper(job),
        headed(title, "Hardware order", _units(paper, said), job),
        [
            letterhead(job),
            *_items(paper, said),
            *([_carried(paper, said)] if paper.carried else []),
            *([_by_hinges(paper, said)] if paper.carried_by_hinges else []),
            *(
                _data_sheets(paper, place)
                for place in dict.fromkeys(own.place for own in paper.data_sheets)
            ),
            *([_finish(paper)] if paper.finish.coats else []),
            Points(
                title="",
                mark="warning",
                texts=(*paper.finish.cautions, LOCAL),
            ),
        ],
    )


def _units(paper: Paperwork, said: Printed) -> str:
    pull = ", pull in kN" if any(one.pulls for one in paper.installs) else ""
    return f"Weights in {weight_head(said.unit)}{pull}."


def _items(paper: Paperwork, said: Printed) -> list[Block]:
    """First what the design knows, then what the supplier must know."""
    rows = hardware_table(paper.hardware, said).rows
    blocks: list[Block] = []
    for known_by, title in _TITLES.items():
        own = [row for row in rows if row[5] == known_by]
        if not own:
            continue
        blocks.append(
            Ruled(
                title=title,
                columns=(
                    Heading(text="item"),
                    Heading(text="number", anchor="right"),
                    Heading(text="size", grows=True),
                ),
                rows=tuple(
                    Row(cells=(what, _count(number, unit), size), under=_sentence(asked))
                    for what, number, unit, size, _, _, asked in own
                ),
                ticks=("",),
                under_from=0,
            )
        )
    return blocks


def _count(number: str, unit: str) -> str:
    return number if unit == "off" else f"{number} {unit}"


def _sentence(asked: str) -> tuple[str, ...]:
    return (f"{asked[:1].upper()}{asked[1:]}.",) if asked else ()


def _carried(paper: Paperwork, said: Printed) -> Ruled:
    """Each leaf's weight on its hangers, beside what they carry."""
    return _borne(
        "hangers",
        said,
        [
            _Borne(leaf=own.leaf, mass=own.mass, by=own.hangers, loads=(own.each,), rated=own.rated)
            for own in paper.carried
        ],
    )


def _by_hinges(paper: Paperwork, said: Printed) -> Ruled:
    """Each leaf's weight on its hinges, and how hard the top one is pulled, beside the rating."""
    return _borne(
        "hinges",
        said,
        [
            _Borne(
                leaf=own.leaf,
                mass=own.mass,
                by=own.hinges,
                loads=(own.each, own.pull),
                rated=own.rated,
            )
            for own in paper.carried_by_hinges
        ],
        also=("top one, sideways",),
        foot=" Sideways: the leaf's weight times half its width, over the hinges' spread.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Borne:
    """A leaf, what it weighs, how many bear it, and what comes on each, kg."""

    leaf: str
    mass: Figure
    by: Figure
    loads: tuple[Figure, ...]
    rated: Figure | None


def _borne(
    by: str, said: Printed, leaves: list[_Borne], also: tuple[str, ...] = (), foot: str = ""
) -> Ruled:
    """What bears each leaf: how many, what comes on each, what each carries, a box for the rating.

    Args:
        by: what bears it, in the plural.
        said: how weights are printed.
        leaves: one line each.
        also: headings of further loads.
        foot: what those are.
    """

    def kilos(figure: Figure) -> str:
        return weighed(figure, kg(figure), said.unit)

    return Ruled(
        title=f"What {by} carry, {weight_head(said.unit)}",
        columns=(
            Heading(text="leaf", grows=True),
            Heading(text="it weighs", anchor="right"),
            Heading(text=by, anchor="right"),
            *(Heading(text=word, anchor="right") for word in ("on each", *also)),
            Heading(text="each carries", anchor="right"),
            Heading(text="rating read", box=True, least=24.0),
        ),
        rows=tuple(
            Row(
                cells=(
                    own.leaf,
                    kilos(own.mass),
                    str(int(own.by)),
                    *(kilos(load) for load in own.loads),
                    "not written" if own.rated is None else kilos(own.rated),
                    "",
                )
            )
            for own in leaves
        ),
        air=1.0,
        foot=(f"Weights are the larger of the estimate and the sum of the parts, glass in.{foot}",),
    )


def _data_sheets(paper: Paperwork, place: str) -> Ruled:
    """What to read off data sheets for one door before anything is bought."""
    return Ruled(
        title="Read off the data sheets before it is bought" + (f", {place}" if place else ""),
        columns=(
            Heading(text="of"),
            Heading(text="what"),
            Heading(text="this design needs", grows=True),
            Heading(text="read", box=True, least=26.0),
        ),
        rows=tuple(
            Row(cells=(own.of, own.what, own.needed, ""))
            for own in paper.data_sheets
            if own.place == place
        ),
        ticks=("",),
    )


def _finish(paper: Paperwork) -> Ruled:
    """Litres to buy."""
    rows = finish_table(paper.finish).rows
    spare = "" if paper.finish.spare is None else f", {float(paper.finish.spare):g} % spare in it"
    return Ruled(
        title="Finish",
        columns=(
            Heading(text="product", grows=True),
            Heading(text="kind"),
            Heading(text="colour", box=True, least=30.0),
            Heading(text="m²", anchor="right"),
            Heading(text="coats", anchor="right"),
            Heading(text="m² a litre", anchor="right"),
            Heading(text="litres", anchor="right"),
        ),
        rows=tuple(Row(cells=row[:7]) for row in rows),
        ticks=("",),
        air=1.0,
        foot=(
            f"Both faces less the glass, and the outer edges{spare}. How far a litre goes is the "
            "tin's to say.",
        ),
    )
