"""The arrangement: the leaves shut in their measured opening, cut level and cut upright.

       B             B-B
  +----------+      |wall
  |          |      | leaves      tables,
A | elevation| A    |             warnings,
  |          |      |             notes
  ===floor====    =floor=  datum
       B
  ####----####   plan A-A       title block
  |- widths -|
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.arrangement_elevation import (
    draw_elevation,
    elevation_chains,
    mark_sections,
    name_leaves,
)
from parametric.drawing.arrangement_layout import STUB, Extent, Placing, extent_of, place
from parametric.drawing.arrangement_plan import draw_plan, plan_chains, plan_ordinates
from parametric.drawing.arrangement_upright import draw_datum, draw_upright, upright_words
from parametric.drawing.arrangement_words import revisions_note, sheet_items
from parametric.drawing.chains import place_chains
from parametric.drawing.column import place_items
from parametric.drawing.details import Called
from parametric.drawing.details.calls import draw_calls, number_calls, sheets_in_words
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame
from parametric.drawing.lettering import TITLE
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.sheet import Paper, Revision, Sheet, TitleBlock
from parametric.drawing.subject import Subject

_MM: Scales = ((10.0, 20.0), (10.0, 20.0, 50.0))
_INCH: Scales = ((12.0, 16.0), (12.0, 16.0, 24.0, 48.0))
_CASE_MM: Scales = ((5.0, 10.0, 20.0), (5.0, 10.0, 20.0, 50.0))
_CASE_INCH: Scales = ((8.0, 12.0, 16.0), (8.0, 12.0, 16.0, 24.0, 48.0))
"""Cases are smaller than doorways."""


def draw_arrangement(job: Subject, title: TitleBlock, called: Sequence[Called] = ()) -> Sheet:
    """The whole arrangement on the first paper and scale on which everything stands clear.

    Args:
        job: the job.
        title: what the title block says.
        called: the details of the job, which the sheet calls where they are.
    """
    extent = extent_of(job)

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        placing = place(paper, scale, extent, block)
        if placing is None:
            return None
        # What the block has no room for stands in the notes: the first sheet has them all.
        block = dataclasses.replace(block, earlier_at="in the notes")
        return _draw(job, extent, placing, block, called, title.revisions[: block.earlier])

    large = f"an opening {extent.x1 - extent.x0:.0f} wide is past the largest sheet"
    small = job.resolved.door.hanging.case is not None
    mm, inch = (_CASE_MM, _CASE_INCH) if small else (_MM, _INCH)
    options = papers_and_scales(job, mm=mm, inch=inch)
    return first_that_fits(options, title, attempt, too_large=large)


def _draw(
    job: Subject,
    extent: Extent,
    placing: Placing,
    title: TitleBlock,
    called: Sequence[Called],
    earlier: Sequence[Revision],
) -> Sheet:
    draft = Draft(placing.paper)
    scale = scale_words(placing.scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scale)
    draw_frame(draft, title)
    elevation = draw_elevation(draft, job, placing, extent)
    plan = draw_plan(draft, job, placing, extent)
    upright = draw_upright(draft, job, placing, extent)
    draw_calls(draft, called, "plan", plan)
    draw_calls(draft, called, "section", upright)
    words_at = placing.section_right - STUB + 6.0
    chains = elevation_chains(job, elevation, extent)
    mark_sections(draft, job, elevation, extent, chains)
    draw_datum(draft, job, elevation, upright, extent, words_at)
    place_chains(draft, chains)
    place_chains(draft, plan_chains(job, plan, extent))
    plan_ordinates(draft, job, plan, extent)
    _captions(draft, placing, extent, scale)
    upright_words(draft, job, upright, extent, words_at + 3.0)
    unsaid = (
        *number_calls(draft, called, "plan", plan, sheets_said=True),
        *number_calls(draft, called, "section", upright, sheets_said=True),
    )
    name_leaves(draft, job, elevation)
    items = sheet_items(job, sheets_in_words(unsaid), revisions_note(earlier))
    left_over = place_items(draft, items, placing.columns)
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(title)


def _captions(draft: Draft, placing: Placing, extent: Extent, scale: str) -> None:
    """Names over the views, and beside the plan."""
    top = placing.elevation[1] + extent.high / placing.scale
    left = placing.elevation[0] + extent.x0 / placing.scale
    right = placing.elevation[0] + extent.x1 / placing.scale
    # Where the scale finds no room beside the name, the title block says it of every view.
    over = tuple(
        _title(name, (x, top + row), anchor)
        for name in (f"Front elevation  {scale}", "Front elevation")
        for row in (2.6, 9.6)
        for x, anchor in _along(left, right)
    )
    x, aside = placing.upright[0], -3.0 if extent.third_angle else 3.0
    away: Anchor = "left" if extent.third_angle else "right"
    beside: tuple[tuple[float, float, Anchor], ...] = (
        (0.0, 1.8, "centre"),
        (aside, 1.8, away),
        (0.0, 8.0, "centre"),
    )
    upright = tuple(
        _title(name, (x + off, top + extent.wall_over + up), anchor)
        for name in (f"B-B  {scale}", "B-B")
        for off, up, anchor in beside
    )
    draft.add_first(over)
    draft.add_first(upright)
    below = placing.plan[1] - placing.paper.frame.y0
    draft.add_first_clear(
        [
            (
                _title(f"A-A  {scale}", (right + aside, placing.plan[1] - down)),
                Label(text="plan section", at=(right + aside, placing.plan[1] - down - 4.8)),
                Label(
                    text="at the openings",
                    at=(right + aside, placing.plan[1] - down - 8.9),
                ),
            )
            for aside in (14.0, 38.0)
            for down in (18.0, 16.0, 14.0, 12.0, 21.0, 24.0, 27.0, 10.0, 8.0)
            if down + 10.0 < below
        ],
        "A-A",
    )


def _along(left: float, right: float) -> tuple[tuple[float, Anchor], ...]:
    """Where a caption may stand along its view."""
    return ((left, "left"), (right, "right"), ((left + right) / 2, "centre"))


def _title(text: str, at: Point, anchor: Anchor = "left") -> Label:
    return Label(text=text, at=at, height=TITLE, weight="bold", anchor=anchor)
