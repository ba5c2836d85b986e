"""The order of work for cabinets: from the plinth to the client's hand, each step with its check."""

from __future__ import annotations

from parametric.drawing.orders.letterhead import headed
from parametric.drawing.papers import bench_paper
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Field, Fields, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.case_fitting import CaseFitting
from parametric.trade.paperwork import Paperwork

_FITTERS = (
    *("cannot_be_stood_up", "may_tip_over", "fingers_at_hinges"),
    *("flap_falls", "flap_has_no_stay", "lid_falls"),
)
"""Problems of the design that the fitter meets again on site."""


def draw_cabinets(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """What to bring, what to take care of, and the steps; nothing in a job without cabinets."""
    fitting = paper.fitting
    if fitting is None:
        return ()
    told = dict.fromkeys(p.message for p in job.problems if p.code in _FITTERS)
    return run_on(
        bench_paper(job),
        headed(title, "Cabinets", "Tick each step when its check holds.", job),
        [
            Points(title="Bring", mark="box", texts=fitting.bring),
            Points(title="Taking care", mark="warning", texts=(*told, *fitting.cautions)),
            _steps(fitting),
            *_scribed(job, paper),
            Fields(rows=((Field(name="Fitted by", share=1.4), Field(name="Date")),)),
        ],
    )


def _steps(fitting: CaseFitting) -> Ruled:
    return Ruled(
        title="Step by step",
        columns=(
            Heading(text="no.", anchor="right"),
            Heading(text="do", least=86.0),
            Heading(text="check", least=60.0, grows=True),
        ),
        rows=tuple(Row(cells=(str(step.number), step.do, step.check)) for step in fitting.steps),
        ticks=("",),
    )


def _scribed(job: Subject, paper: Paperwork) -> list[Ruled]:
    """What is seen of every piece that closes to the room, or what comes off it, place by place."""
    tables = []
    for title, upright, places in (
        ("To the walls", True, ("foot", "middle", "top")),
        ("To ceiling and floor", False, ("left", "middle", "right")),
    ):
        rows = []
        for one in paper.scribed:
            if one.upright == upright:
                found = {at.where: at.seen if one.filler else at.off for at in one.at}
                sizes = [found.get(place) for place in places]
                said = ["–" if size is None else job.rules.site.text(size) for size in sizes]
                word = "seen" if one.filler else "comes off"
                rows.append(Row(cells=(one.name, word, *said, job.rules.site.text(one.blank))))
        if rows:
            tables.append(
                Ruled(
                    title=title,
                    columns=(
                        Heading(text="piece", grows=True),
                        Heading(text="what"),
                        *(Heading(text=place, anchor="right") for place in places),
                        Heading(text="made", anchor="right"),
                    ),
                    rows=tuple(rows),
                    ticks=("fitted",),
                    foot=("To be expected: scribe each to the room itself, and try it.",),
                )
            )
    return tables
