"""Where one leaf or two and their section stand on a sheet: a pure function of sizes and paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.chains import FIRST
from parametric.drawing.column import GUTTER, list_width
from parametric.drawing.frame import title_block_box
from parametric.drawing.plane import Box, Point
from parametric.drawing.sheet import Paper, TitleBlock
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf

STICK = 24.0
"""Between the twins: the column of heights with a line to each."""
ALONE = 16.0
"""The column of heights beside one leaf."""
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
    """What the views must show, mm: the leaves' widths, height, trims, thickness; levels of chains;
    the least width of a column of lists.

    `second_below`: the second leaf has widths of its own, with chains under it.
    """

    widths: tuple[float, ...]
    height: float
    trim: float
    thickness: float
    chains_left: int
    chains_below: int
    next_chain: float
    second_below: bool
    column: float

    @property
    def width(self) -> float:
        """Of the first leaf."""
        return self.widths[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafPlacing:
    """A layout that fits."""

    paper: Paper
    scale: float
    left: Point
    right: Point | None
    section: Point
    columns: tuple[Box, ...]
    under: Box


def leaf_extent(job: Subject, leaves: Sequence[Leaf]) -> LeafExtent:
    """Measure one leaf or two of one height for their sheet."""
    leaf = leaves[0]
    trims, bars = float(leaf.trim) > 0, any(lite.bars for lite in leaf.lites)
    flap = leaf.hung.flap is not None
    grips = bool(leaf.pulls) or leaf.handle is not None
    return LeafExtent(
        widths=tuple(float(one.width) for one in leaves),
        height=float(leaf.height),
        trim=float(leaf.trim),
        thickness=float(leaf.thickness),
        chains_left=2 + sum((grips, trims, bars, bool(leaf.hinges) and not flap)),
        chains_below=2 + bars + flap,
        next_chain=job.rules.wood.next_chain,
        second_below=len(leaves) > 1 and stile_widths(leaves[1]) != stile_widths(leaf),
        column=list_width(job.rules.unit),
    )


def stile_widths(leaf: Leaf) -> tuple[float, ...]:
    """What the chain under a leaf reads, to the micrometre: stile, shoulder, stile."""
    return tuple(
        round(float(size), 3) for size in (leaf.left_stile, leaf.shoulder, leaf.right_stile)
    )


def place_leaves(
    paper: Paper, scale: float, extent: LeafExtent, title: TitleBlock
) -> LeafPlacing | None:
    """Stand one leaf or two, their section and a column of lists on a paper; None when they do
    not fit.
    """
    frame, block = paper.frame, title_block_box(paper, title)
    wides, tall = [width / scale for width in extent.widths], extent.height / scale
    two = len(wides) > 1
    horn = extent.trim / scale
    left_x = frame.x0 + CLOSE + VALUE + FIRST + extent.next_chain * (extent.chains_left - 1)
    right_x = left_x + wides[0] + (STICK if two else ALONE)
    section_x = right_x + (wides[1] if two else 0.0) + SECTION_GAP
    section_right = section_x + extent.thickness / scale
    column_left = frame.x1 - 5.5 - extent.column
    if section_right + NOTES_GAP > column_left:
        return None
    chains = extent.next_chain * (extent.chains_below - 1)
    below = CLOSE + 1.5 + chains + FIRST + MARK - 2.0 + horn
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
        columns.append(Box(at, block.y1 + 3.5, at + extent.column, frame.y1 - 5.0))
        at -= extent.column + GUTTER
    columns.reverse()
    if len(columns) == 1:
        # Half a column beside the only one would stay empty: the notes run longer lines.
        spare = min(column_left - section_right - 2 * NOTES_GAP, _WIDER)
        if spare > _WIDER / 2:
            columns = [Box(column_left - spare, columns[0].y0, columns[0].x1, columns[0].y1)]
    # Under the right twin there are chains only where its widths are its own.
    ceiling = foot - horn - 4.0
    if extent.second_below:
        ceiling -= chains + FIRST + MARK
    under = Box(right_x, frame.y0 + 6.0, block.x0 - 4.0, ceiling)
    return LeafPlacing(
        paper=paper,
        scale=scale,
        left=(left_x, foot),
        right=(right_x, foot) if two else None,
        section=(section_x, foot),
        columns=tuple(columns),
        under=under,
    )
