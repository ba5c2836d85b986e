"""The care sheet: one page that stays with whoever lives with the doors."""

from __future__ import annotations

from parametric.drawing.lettering import TEXT, printable
from parametric.drawing.orders.letterhead import headed, shown, weighed
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Block, Field, Fields, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.names import SEPARATOR
from parametric.trade.care import ReplacementPane
from parametric.trade.glazing import free_words
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed, weight_head
from parametric.trade.site_tables import pane_table

_YEARS = 5


def draw_care(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Upkeep, what moves with the seasons, every pane so that it can be ordered again."""
    said, kept = printed(job.resolved), paper.care
    maker = job.resolved.shop.maker
    cabinets, doors = job.resolved.casework is not None, bool(job.resolved.walls)
    kept_well = "doors and cabinets" if cabinets and doors else "cabinets" if cabinets else "doors"
    return run_on(
        bench_paper(job),
        headed(title, f"Looking after your {kept_well}", "Keep this page.", job),
        [
            Points(title="Through the year", mark="none", texts=kept.upkeep),
            Points(title="What moves with the seasons", mark="none", texts=kept.seasons),
            _checks(paper),
            *_panes(paper, said),
            Points(title="Taking care", mark="warning", texts=kept.cautions),
            Fields(
                rows=(
                    (
                        Field(name="Made by", value=printable(maker.name)),
                        Field(name="Telephone", value=printable(maker.phone)),
                        Field(name="Fitted on" if cabinets else "Hung on"),
                    ),
                )
            ),
        ],
    )


def _checks(paper: Paperwork) -> Ruled:
    """What is looked at once a year, with boxes for the years."""
    return Ruled(
        title="Once a year, with the date",
        columns=(
            Heading(text="", grows=True),
            *(Heading(text="", box=True, least=13.0) for _ in range(_YEARS)),
        ),
        rows=tuple(Row(cells=(check, *("",) * _YEARS)) for check in paper.care.checks),
        height=TEXT,
        air=2.6,
    )


def _panes(paper: Paperwork, said: Printed) -> list[Block]:
    """The panes as they were ordered, and how one is changed."""
    rows = []
    table = pane_table(paper.care, said)
    divided = _places_by_mark(paper.care.panes)
    told: set[str] = set()
    for row, pane in zip(table.rows, paper.care.panes, strict=True):
        mark, place, kind, wide, high, thick, kg, category, *held = row
        if mark in told:
            continue
        if mark in divided:
            told.add(mark)
            place = divided[mark]
        heavy = weighed(pane.weight, kg, said.unit)
        rows.append(
            Row(
                cells=(mark, place, kind, wide, high, thick, heavy, category),
                under=(_under(*held),),
            )
        )
    foot = (
        ["A 2.1 is in leaf A the second row from the top, the first pane from the left."]
        if divided
        else []
    )
    # What is said of most panes is said once, under the table.
    unders = [row.under for row in rows]
    for most in sorted(set(unders), key=lambda under: (-unders.count(under), unders.index(under)))[
        :1
    ]:
        rows = [Row(cells=row.cells) if row.under == most else row for row in rows]
        foot = [*most, *foot]
    return [
        Ruled(
            title="If a pane breaks",
            columns=(
                Heading(text="mark"),
                Heading(text="where", grows=True),
                Heading(text="kind"),
                Heading(text="width", anchor="right"),
                Heading(text="height", anchor="right"),
                Heading(text="thick", anchor="right"),
                Heading(text=weight_head(said.unit), anchor="right"),
                Heading(text="class", anchor="right"),
            ),
            rows=tuple(rows),
            foot=tuple(foot),
            height=TEXT,
        ),
        Points(title="", mark="number", texts=paper.care.replacing),
    ]


def _places_by_mark(panes: tuple[ReplacementPane, ...]) -> dict[str, str]:
    """Where the panes of divided lites stand that are alike: `A 2.1 2.2, B 2.1 2.2`."""
    found: dict[str, dict[str, list[str]]] = {}
    for pane in panes:
        leaf, *places = pane.name.removeprefix("leaf ").split(SEPARATOR)
        numbers = [place.split(" ")[1] for place in places if place.startswith(("row ", "pane "))]
        if numbers:
            found.setdefault(pane.mark, {}).setdefault(leaf, []).append(".".join(numbers))
    return {
        mark: ", ".join(f"{leaf} {' '.join(places)}" for leaf, places in leaves.items())
        for mark, leaves in found.items()
    }


def _under(corners: str, clearance: str, tape: str, stop: str, outline: str, bars: str) -> str:
    taped = f"tape {tape} thick" if tape != "0" else "no tape"
    held = f"stops {shown(stop)}" if stop else "bedded in a rebate"
    shape = f" Not a rectangle: cut to {outline}." if outline else ""
    grid = f" Spacer bars {bars}." if bars else ""
    return f"Corners {corners}. {free_words(clearance)}, {taped}, {held}.{shape}{grid}"
