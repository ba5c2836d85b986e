"""Where twins and their section stand on a leaf's sheet: a pure function of sizes and paper."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.chains import FIRST
from parametric.drawing.column import GUTTER, WIDTH
from parametric.drawing.frame import title_block_box
from parametric.drawing.plane import Box, Point
from parametric.drawing.sheet import Paper, TitleBlock
from parametric.drawing.subject import Subject

STICK = 24.0
"""Between the twins: the column of heights with a line to each."""
CLOSE = 5.5
VALUE = 3.6
"""A chain's value beside its line."""
MARK = 7.0
"""A section mark between a leaf and its chains."""
HEAD_ROW = 9.0
SECTION_GAP = 9.0
NOTES_GAP = 6.0
_WIDER = 30.0
"""How much wider than usual the only column of notes may be, mm."""
_OVER_BLOCK = 2.5
"""From the title block to the foot of the section over it, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafExtent:
    """What the views must show, mm: a leaf's size, its trims, its thickness; levels of chains."""

    width: float
    height: float
    trim: float
    thickness: float
    chains_left: int
    next_chain: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafPlacing:
    """A layout that fits."""

    paper: Paper
    scale: float
    left: Point
    right: Point
    section: Point
    columns: tuple[Box, ...]
    under: Box


def leaf_extent(job: Subject) -> LeafExtent:
    """Measure the twins for their sheet."""
    leaf = job.resolved.door.leaves[0]
    trims = float(leaf.trim) > 0
    return LeafExtent(
        width=float(leaf.width),
        height=float(leaf.height),
        trim=float(leaf.trim),
        thickness=float(leaf.thickness),
        chains_left=2 + (1 if leaf.pulls else 0) + (1 if trims else 0),
        next_chain=job.rules.wood.next_chain,
    )


def place_leaves(
    paper: Paper, scale: float, extent: LeafExtent, title: TitleBlock
) -> LeafPlacing | None:
    """Stand two twins, their section and a column of lists on a paper; None when they do not fit."""
    frame, block = paper.frame, title_block_box(paper, title)
    wide, tall = extent.width / scale, extent.height / scale
    horn = extent.trim / scale
    left_x = frame.x0 + CLOSE + VALUE + FIRST + extent.next_chain * (extent.chains_left - 1)
    right_x = left_x + wide + STICK
    section_x = right_x + wide + SECTION_GAP
    section_right = section_x + extent.thickness / scale
    column_left = frame.x1 - 5.5 - WIDTH
    if section_right + NOTES_GAP > column_left:
        return None
    below = CLOSE + 1.5 + extent.next_chain + FIRST + MARK - 2.0 + horn
    foot = frame.y0 + below
    spare = frame.y1 - 2.0 - HEAD_ROW - horn - tall - foot
    if spare < 0:
        return None
    foot += spare * 0.5
    if section_right > block.x0 - 4.0:
        # The section stands over the title block, clear of it; it has no horns.
        foot = max(foot, block.y1 + _OVER_BLOCK)
        if foot + tall + horn + HEAD_ROW + 2.0 > frame.y1:
            return None
    columns = []
    at = column_left
    while at > section_right + NOTES_GAP:
        columns.append(Box(at, block.y1 + 3.5, at + WIDTH, frame.y1 - 5.0))
        at -= WIDTH + GUTTER
    columns.reverse()
    if len(columns) == 1:
        # Half a column beside the only one would stay empty: the notes run longer lines.
        spare = min(column_left - section_right - 2 * NOTES_GAP, _WIDER)
        if spare > _WIDER / 2:
            columns = [Box(column_left - spare, columns[0].y0, columns[0].x1, columns[0].y1)]
    # Under the right twin there are no chains.
    under = Box(right_x, frame.y0 + 6.0, block.x0 - 4.0, foot - horn - 4.0)
    return LeafPlacing(
        paper=paper,
        scale=scale,
        left=(left_x, foot),
        right=(right_x, foot),
        section=(section_x, foot),
        columns=tuple(columns),
        under=under,
    )
