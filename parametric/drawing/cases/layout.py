"""Where the views of cabinets stand on a sheet: a pure function of their room and the paper.

     chains over                    what is over the first tier
A | heights | scribes | elevation | scribes | heights | A   B-B |  tables,
  |         |         |           |         |         |         |  notes
                      ==floor==                          datum
                      plan A-A                                    title block
                      widths
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.cases.room import Room
from parametric.drawing.chains import FIRST
from parametric.drawing.column import GUTTER, WIDTH
from parametric.drawing.frame import title_block_box
from parametric.drawing.lettering import width
from parametric.drawing.plane import Box, Point
from parametric.drawing.sheet import Paper, TitleBlock

STUB = 4.0
"""How much of walls, floor and ceiling is hatched, mm on paper."""
MARK = 6.5
"""What a section mark takes beside a view."""
CAPTION = 7.5
_SIDE = 5.5
"""From the frame line to the nearest thing at the left, where the centring mark reaches in."""
_CLOSE = 2.5
_VALUE = 4.0
"""What the value of the outermost chain takes past its line."""
_APART = 6.0
_FLOOR = 4.0
"""How much floor is shown before what stands foremost, mm on paper."""
_BEFORE = FIRST + 8.0
"""What the chain before the section takes, mm on paper."""
_LEADS = 7.0
PLAN_FIRST = 7.5
DATUM_WORDS = 19.0
"""The datum's name between section and column."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """What must be shown: the room, and how many chains stand on each side of it.

    `lanes` is what the words at the left and at the right wall take, `under` what the chains
    under the lowest view take, mm on paper; `out` how far anything stands before the front
    edges, mm. Without `views` the elevation stands alone.
    """

    room: Room
    lanes: tuple[float, float]
    heights: int
    under: float
    over: int
    next_chain: float
    third_angle: bool
    out: float
    views: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """A layout that fits: where each view's zero lies, where its chains and words begin, mm on
    paper, and the columns left over.

    `ends` are the left and the right end of the elevation with its walls.
    """

    paper: Paper
    scale: float
    elevation: Point
    plan: Point
    section: Point
    ends: tuple[float, float]
    chains: tuple[float, float]
    section_right: float
    columns: tuple[Box, ...]


def place(paper: Paper, scale: float, needs: Needs, title: TitleBlock) -> Placing | None:
    """Stand the views on a paper at a scale; None when they do not fit."""
    frame, block, room = paper.frame, title_block_box(paper, title), needs.room
    box = room.box
    mark = MARK + 3.5 if needs.views else 0.0
    chains = FIRST - 1.0 + needs.next_chain * (needs.heights - 1) if needs.heights else 0.0
    left = frame.x0 + _SIDE + mark + chains + _VALUE + needs.lanes[0]
    right = left + 2 * STUB + (box.x1 - box.x0) / scale
    last = right + needs.lanes[1] + chains
    behind, out = float(room.depth) / scale + STUB, needs.out / scale + _FLOOR
    # In first angle fronts stand away from the elevation, in third towards it.
    section = last + mark + (_BEFORE if needs.third_angle else _APART)
    after = 0.0 if needs.third_angle else _BEFORE - _APART
    section_right = section + behind + out + after if needs.views else last
    free = section_right + (DATUM_WORDS if needs.views else _APART)
    if free > frame.x1 - 5.5 - WIDTH:
        return None

    under = PLAN_FIRST + needs.under + _CLOSE + 1.5
    over = FIRST + needs.next_chain * (needs.over - 1) if needs.over else 0.0
    plan = under + out + behind + CAPTION if needs.views else under
    used = plan + (box.y1 - box.y0) / scale + 2 * STUB + over + CAPTION + mark
    spare = frame.height - used
    if spare < 0:
        return None
    air = min(spare * 0.5, 10.0)
    foot = frame.y0 + plan + spare - (0.0 if needs.views else air)
    plan_y = foot - air - CAPTION - behind
    y = foot + STUB - box.y0 / scale
    columns = []
    at = frame.x1 - 5.5 - WIDTH
    while at >= free:
        low = block.y1 + 4.0 if at + WIDTH > block.x0 - 4.0 else frame.y0 + 6.0
        columns.append(Box(at, low, at + WIDTH, frame.y1 - 6.0))
        at -= WIDTH + GUTTER
    return Placing(
        paper=paper,
        scale=scale,
        elevation=(left + STUB - box.x0 / scale, y),
        plan=(left + STUB - box.x0 / scale, plan_y),
        section=(section + (out if needs.third_angle else behind), y),
        ends=(left, right),
        chains=(left - needs.lanes[0] - FIRST + 1.0, right + needs.lanes[1] + FIRST - 1.0),
        section_right=section_right,
        columns=tuple(reversed(columns)),
    )


def lane(words: Sequence[str]) -> float:
    """What words beside a wall take with the line that leads from them, mm on paper."""
    return max(width(text) for text in words) + _LEADS if words else 0.0
