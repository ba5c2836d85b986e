"""The fitter's pages of words: the order of work, then every fixing, with boxes to tick."""

from __future__ import annotations

from parametric.drawing.on_site.bracket_section import bracket_picture
from parametric.drawing.orders.letterhead import headed
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Field, Fields, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.site_tables import fixing_table, work_table


def draw_order_of_work(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Tools, cautions, then what is done in order, each step with a check before the next."""
    install = paper.install
    return run_on(
        bench_paper(job),
        headed(title, "Order of work", "Tick each step when its check holds.", job),
        [
            Points(title="Bring", mark="box", texts=install.tools),
            Points(title="Taking care", mark="warning", texts=(*_told(job), *install.cautions)),
            _steps(paper),
            Fields(rows=((Field(name="Fitted by", share=1.4), Field(name="Date")),)),
        ],
    )


_FITTERS = (
    *("fingers_between_leaves", "fingers_where_leaves_shut", "fingers_at_hinges"),
    *("uneven_floor_gap", "floor_rises_in_travel"),
    *("little_wood_over_guide", "leaf_grows_tight", "leaf_meets_something"),
)
"""Problems of the design that the fitter meets again on site."""


def _told(job: Subject) -> tuple[str, ...]:
    """What the check found that bears on the fitting, in its own words."""
    return tuple(problem.message for problem in job.problems if problem.code in _FITTERS)


def _steps(paper: Paperwork) -> Ruled:
    rows = tuple(
        Row(cells=(number, do, check)) for number, do, check in work_table(paper.install).rows
    )
    return Ruled(
        title="Step by step",
        columns=(
            Heading(text="no.", anchor="right"),
            Heading(text="do", least=86.0),
            Heading(text="check", least=60.0, grows=True),
        ),
        rows=rows,
        ticks=("",),
        foot=(paper.install.glazing_because,),
    )


def draw_fixings(
    job: Subject, paper: Paperwork, title: TitleBlock, *, wall_sheet: int
) -> tuple[Sheet, ...]:
    """Every height, place and pull as a list, to be read beside the drawing on `wall_sheet`."""
    said = printed(job.resolved)
    return run_on(
        bench_paper(job),
        headed(title, "Fixings", f"Heights from the datum, as drawn on sheet {wall_sheet}.", job),
        [
            _fixings(paper, said),
            *([bracket_picture(job, paper.install)] if paper.install.tracks else []),
            *([_pulls(paper, said)] if paper.install.pulls else []),
        ],
    )


def _fixings(paper: Paperwork, said: Printed) -> Ruled:
    rows = []
    for what, start, value, unit, note in fixing_table(paper.install, said).rows:
        number = f"{value} {unit}" if unit == "kN" else value
        rows.append(
            Row(
                cells=(what, start, number),
                under=(f"{note[:1].upper()}{note[1:]}.",) if note else (),
            )
        )
    return Ruled(
        title="Heights, places and pulls",
        columns=(
            Heading(text="what", grows=True),
            Heading(text="from"),
            Heading(text="value", anchor="right"),
        ),
        rows=tuple(rows),
        ticks=("",),
        under_from=0,
    )


def _pulls(paper: Paperwork, said: Printed) -> Ruled:
    """What pulls at one bracket: by the estimate, and by the larger weight that governs."""
    rows = tuple(
        Row(
            cells=(
                f"{pull.track} track",
                said.wood(pull.off_wall),
                "not known" if pull.bearing is None else said.fine(pull.bearing),
                "not known" if pull.pull is None else f"{float(pull.pull):.4f}",
                "not known" if pull.governing is None else f"{float(pull.governing):.4f}",
            )
        )
        for pull in paper.install.pulls
    )
    return Ruled(
        title="Pull at one bracket, one hanger right under it, kN",
        columns=(
            Heading(text="track", grows=True),
            Heading(text="off the wall", anchor="right"),
            Heading(text="bearing below the screw", anchor="right"),
            Heading(text="by the estimate", anchor="right"),
            Heading(text="by the larger weight", anchor="right"),
        ),
        rows=rows,
        foot=("Into what was surveyed only: the board alone holds nothing.",),
    )
