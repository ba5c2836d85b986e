"""The install sheets: the wall with every place to mark, then the work in order, then the list."""

from __future__ import annotations

import dataclasses

from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.lettering import TITLE
from parametric.drawing.on_site.wall import (
    GROUND,
    OVER,
    READINGS,
    STUB,
    TO_NUMBERS,
    Span,
    bracket_places_on,
    draw_wall,
    head_places,
    height_places,
    line_height,
    span_of,
    words_wide,
)
from parametric.drawing.on_site.wall_plan import (
    draw_wall_plan,
    guide_places,
    plan_depth,
    track_places,
)
from parametric.drawing.on_site.words import draw_fixings, draw_order_of_work
from parametric.drawing.orders.letterhead import headed
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper, drawing_papers, scale_words
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.running import Field, Fields, Framed, Points, block_height, draw_block
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.installing import InstallSheet
from parametric.trade.paperwork import Paperwork

_SCALES: dict[str, tuple[float, ...]] = {
    "mm": (10.0, 20.0, 50.0),
    "inch": (12.0, 16.0, 24.0, 48.0),
}
_CAPTION = 7.0
_APART = 5.0


def draw_install(
    job: Subject, paper: Paperwork, title: TitleBlock, first_sheet: int = 1
) -> tuple[Sheet, ...]:
    """Group S, for one door: the wall, the order of work, the fixings.

    Args:
        job: the job, narrowed to the door.
        paper: its lists, likewise.
        title: what the title blocks say.
        first_sheet: the number that the sheet of the wall has in its group.
    """
    return (
        _draw_wall_sheet(job, paper.install, title),
        *draw_order_of_work(job, paper, title),
        *draw_fixings(job, paper, title, wall_sheet=first_sheet),
    )


def _draw_wall_sheet(job: Subject, install: InstallSheet, title: TitleBlock) -> Sheet:
    """The wall and its plan on the first paper and scale on which both stand clear."""
    span = span_of(job)
    unit = job.rules.unit
    titled = headed(title, "Install", _mark_what(install), job)
    titled = dataclasses.replace(titled, revisions=())

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _attempt(job, install, span, paper, scale, block)

    standing = bench_paper(job)
    options = [
        (paper, scale)
        for paper in (standing, *drawing_papers(job))
        for scale in _SCALES[unit]
        if paper is not standing or scale < _SCALES[unit][-1]
    ]
    return first_that_fits(
        options,
        titled,
        attempt,
        too_large=f"an opening {span.x1 - span.x0:.0f} wide is past the largest sheet",
    )


def _attempt(
    job: Subject,
    install: InstallSheet,
    span: Span,
    paper: Paper,
    scale: float,
    title: TitleBlock,
) -> Sheet | None:
    """The sheet at a scale; None when not even its margins fit."""
    draft = Draft(paper)
    words = scale_words(scale, job.rules.unit)
    titled = dataclasses.replace(title, scale=words)
    body = draw_page(draft, titled)
    first = _before_drilling(install)
    heights = height_places(job, install, 0.0)
    tracks = track_places(job, install, 0.0)
    brackets = bracket_places_on(job, install, 0.0, 0.0)
    guides = guide_places(job, install, 0.0)
    down = head_places(job, install, 0.0)
    left = TO_NUMBERS + words_wide(down) if down else 0.0
    wide = (span.x1 - span.x0) / scale + 2 * STUB + left
    beside = TO_NUMBERS + max(words_wide(heights), words_wide(tracks))
    if wide + beside + 1.0 > body.width:
        return None
    behind, before = plan_depth(job, scale)
    over = _CAPTION + OVER + (words_wide(brackets) + TO_NUMBERS if install.brackets else 0.0)
    elevation = (line_height(job) - span.low) / scale + GROUND + READINGS
    plan = _CAPTION + behind + before + (TO_NUMBERS + words_wide(guides) if guides else 0.0)
    # A lying sheet has the room beside the views, a standing one over them.
    lying = paper.width > paper.height
    aside = max(0.0, body.width - wide - beside - _APART) if lying else 0.0
    if lying and aside >= _LEAST_BESIDE:
        frame = Box(body.x1 - aside, body.y0, body.x1, body.y1)
        tall = over + elevation + _APART + plan
    else:
        frame = body
        tall = block_height(first, body.width) + _APART + over + elevation + _APART + plan
    if tall > body.height or block_height(first, frame.width) > frame.height:
        return None
    low = draw_block(draft, first, frame)
    top = body.y1 if frame is not body else low - _APART
    spare = min((body.height - tall) / 2, 8.0)
    x = body.x0 + 1.0 + STUB + left - span.x0 / scale
    name = f"The {'case' if install.on_a_case else 'wall'} from the front  {words}"
    draft.add(_caption(name, (body.x0, top - TITLE * 1.12)))
    line = top - over
    view = draft.view("the wall", scale, (x, line - line_height(job) / scale))
    draw_wall(draft, view, job, install, span)
    foot = view.y(span.low) - GROUND - READINGS - _APART - spare
    draft.add(_caption(f"{_floor_words(install)}  {words}", (body.x0, foot - TITLE * 1.12)))
    from_above = draft.view("the floor", scale, (x, foot - _CAPTION - behind))
    draw_wall_plan(draft, from_above, job, install, span)
    return draft.sheet(titled)


_LEAST_BESIDE = 84.0
"""What the frame of words needs beside the views of a lying sheet, mm."""


def _mark_what(install: InstallSheet) -> str:
    what = "wall" if install.tracks else "case" if install.on_a_case else "jambs"
    return f"Mark the {what} from this sheet."


def _floor_words(install: InstallSheet) -> str:
    """What the view from above shows."""
    turning = install.travel_gap is not None or bool(install.hinges)
    shown = ["tracks" if len(install.tracks) > 1 else "track", "brackets"] if install.tracks else []
    shown += ["floor guides"] if install.guides else []
    shown += ["leaves shut and open"] if turning else []
    *first, last = shown or ["the opening"]
    return f"From above: {', '.join(first)} and {last}" if first else f"From above: {last}"


def _caption(text: str, at: tuple[float, float]) -> Label:
    return Label(text=text, at=at, height=TITLE, weight="bold")


def _before_drilling(install: InstallSheet) -> Framed:
    """What must be settled first, and the one height that only the data sheet knows."""
    known = (f"Behind the wall: {install.behind}.",) if install.behind else ()
    points = tuple(dict.fromkeys((*install.hold, *known)))
    unknown = any(line.height is None and "screw" in line.what for line in install.heights)
    lines = Fields(
        rows=(
            (
                Field(name="Screws stand above the datum", share=1.5),
                Field(name="Read by", share=1.0),
            ),
        )
    )
    first = "hole is drilled" if install.tracks else "hinge is let in"
    return Framed(
        title=f"Before a {'front is hung' if install.on_a_case else first}",
        parts=(
            Points(title="", mark="box", texts=points),
            *((lines,) if unknown else ()),
        ),
    )
