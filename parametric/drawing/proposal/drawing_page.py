"""The proposal's drawing: elevation with a side view, the doors from above shut and open.

    +--+ elevation +--+ side        chains on both sides
    ===floor=========
      floor in words
    ##---------##   shut            chains of widths under it
    ##--     --##   open            the clear way

A client's drawing has about ten sizes: those they can measure and those they asked for.
"""

from __future__ import annotations

import dataclasses

from parametric.drawing.arrangement_elevation import draw_elevation
from parametric.drawing.arrangement_layout import GROUND, STUB, WALL, Extent, Placing, extent_of
from parametric.drawing.arrangement_plan import draw_plan
from parametric.drawing.arrangement_upright import draw_upright
from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import width
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import pieces
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.proposal.content import DrawingWords, ProposalContent
from parametric.drawing.proposal.setting import (
    HEAD,
    NOTE,
    Tint,
    columns,
    lines_of,
    pitch,
    rule,
    set_lines,
    set_text,
)
from parametric.drawing.proposal.size_chains import (
    clear_way,
    draw_ways,
    elevation_chains,
    plan_chains,
    reach,
)
from parametric.drawing.proposal.washes import tinted, tinted_front
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.trade.standing import (
    swept,
    widest_open,
)

MM_SCALES = (5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0)
INCH_SCALES = (4.0, 8.0, 12.0, 16.0, 20.0, 24.0, 32.0, 48.0, 64.0, 96.0)
"""Scales tried, the largest first: nobody measures on this page, so in-between ones are none the worse."""
ABOVE = 9.0
"""Over the elevation, mm: wall over the head, and the names of the views."""
_WORDS = 14.0
"""What the values of the outermost chain take beside the elevation, mm."""
_KEY = 30.0
"""The least width, mm, in which the key to the lines is set."""
_UNDER_FLOOR = 4.0
_SAID_OVER = 4.5


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class _Room:
    """What the views take beside their own sizes, mm on paper."""

    next_chain: float
    near: float
    """How far open doors come before the wall's face, mm in the model."""
    far: float
    """How far they go behind it."""
    said_over: float
    """What the clear way takes over the wall's far side, where a track leaves it no room within."""

    @property
    def left(self) -> float:
        """From the page's edge to the doors."""
        return _WORDS / 2 + FIRST - 1.0 + STUB

    @property
    def right(self) -> float:
        """From the doors to the side view's own ground."""
        return STUB + FIRST - 1.0 + 2 * self.next_chain + 5.0

    def opened_high(self, extent: Extent, scale: float) -> float:
        """The plan of the open doors, from the farthest of them to the nearest."""
        return self.opened_far(extent, scale) + max(self.near, extent.off_most, 0.0) / scale

    def opened_far(self, extent: Extent, scale: float) -> float:
        """What of it lies behind the wall's face."""
        return max(_deep(extent, scale), self.far / scale + 1.0)


def draw_doors(
    draft: Draft, job: Subject, said: ProposalContent, own: DrawingWords, box: Box
) -> tuple[Tint, ...]:
    """The page's views on the largest scale at which they stand clear of one another.

    Args:
        draft: the page.
        job: the job, narrowed to the door that is drawn.
        said: its words.
        own: those of this door's drawing.
        box: what the page leaves between head and foot.

    Returns:
        The leaves' colour in the plans.
    """
    top = draw_head(draft, said, own, box)
    extent, room = extent_of(job), _room(job)
    scales = MM_SCALES if job.rules.unit == "mm" else INCH_SCALES
    body = Box(box.x0, box.y0, box.x1, top)
    fitting = (s for s in scales if _fits(extent, room, body, s, own))
    scale = next(fitting, scales[-1])
    spare = max(0.0, body.height - _needs(extent, room, scale))
    lines = _floor_lines(extent, scale, own)
    place = _placing(draft, extent, room, body, scale, min(spare / 4, 9.0), lines)
    words_of_scale(draft, job, box, scale)
    return _draw(draft, job, said, own, extent, place, room)


def _room(job: Subject) -> _Room:
    """What open doors that swing take before and behind the wall."""
    turning = [leaf for leaf in job.resolved.door.leaves if leaf.hung.swing is not None]
    over = [swept(leaf) for leaf in turning]
    return _Room(
        next_chain=job.rules.wood.next_chain,
        near=max((-one.near for one in over), default=0.0),
        far=max((one.far for one in over), default=0.0),
        said_over=_SAID_OVER if turning and job.resolved.door.hanging.tracks else 0.0,
    )


def draw_head(draft: Draft, said: ProposalContent, own: DrawingWords, box: Box) -> float:
    """What a drawing is of; how far down the page that comes."""
    y = set_text(draft, own.head, box, box.y1, HEAD, weight="bold")
    y = set_text(draft, said.drawing_under, columns(box, 0, 5), y, NOTE, layer="table")
    rule(draft, box, y - 1.2)
    return y - 1.2


def words_of_scale(draft: Draft, job: Subject, box: Box, scale: float) -> None:
    """The scale, at the right of the head."""
    words = scale_words(scale, job.rules.unit)
    y = box.y1 - pitch(HEAD)
    at = (box.x1 - width(words, NOTE), y)
    set_lines(draft, [words], at, NOTE, layer="table")


def _deep(extent: Extent, scale: float) -> float:
    return max(WALL, -extent.off_least / scale + 3.0)


def _plan_high(extent: Extent, scale: float) -> float:
    """A plan from the far side of its wall to the nearest face of its doors."""
    return _deep(extent, scale) + max(extent.off_most, 0.0) / scale


def _needs(extent: Extent, room: _Room, scale: float) -> float:
    chains = FIRST + (extent.plan_chains - 1) * room.next_chain
    return (
        ABOVE
        + extent.wall_over
        + (extent.high - extent.low) / scale
        + GROUND
        + _UNDER_FLOOR
        + pitch(NOTE) * 2
        + 2 * pitch(NOTE)
        + _plan_high(extent, scale)
        + room.opened_high(extent, scale)
        + room.said_over
        + chains
        + FIRST
        + 10.0
    )


def _fits(extent: Extent, room: _Room, body: Box, scale: float, own: DrawingWords) -> bool:
    side = _deep(extent, scale) + max(extent.off_most, 0.0) / scale + 2 * STUB
    across = room.left + (extent.x1 - extent.x0) / scale + room.right + side
    if across > body.width:
        return False
    more = (_floor_lines(extent, scale, own) - 1) * pitch(NOTE)
    return _needs(extent, room, scale) + more <= body.height


def _floor_lines(extent: Extent, scale: float, own: DrawingWords) -> int:
    """How many lines the words about the floor take under the doors."""
    return len(lines_of(own.floor, (extent.x1 - extent.x0) / scale, NOTE))


def _placing(
    draft: Draft,
    extent: Extent,
    room: _Room,
    body: Box,
    scale: float,
    air: float,
    lines: int,
) -> Placing:
    """Views from the head down; what the width leaves over goes half to each side."""
    side = _deep(extent, scale) + max(extent.off_most, 0.0) / scale + STUB
    across = room.left + (extent.x1 - extent.x0) / scale + room.right + side
    x = body.x0 + room.left + max(0.0, (body.width - across) / 2) - extent.x0 / scale
    y = body.y1 - ABOVE - air * 0.6 - extent.wall_over - extent.high / scale
    section = x + extent.x1 / scale + room.right
    leaves = max(extent.off_most, 0.0) / scale + STUB
    deep = _deep(extent, scale)
    floor = y + extent.low / scale - GROUND
    plan = floor - _UNDER_FLOOR - (2 + lines) * pitch(NOTE) - air - deep
    return Placing(
        paper=draft.paper,
        scale=scale,
        elevation=(x, y),
        plan=(x, plan),
        upright=(section + (leaves if extent.third_angle else deep), y),
        section_right=section + side,
        columns=(),
    )


def _draw(
    draft: Draft,
    job: Subject,
    said: ProposalContent,
    own: DrawingWords,
    extent: Extent,
    place: Placing,
    room: _Room,
) -> tuple[Tint, ...]:
    elevation = draw_elevation(draft, job, place, extent)
    upright = draw_upright(draft, job, place, extent)
    shut = draw_plan(draft, job, place, extent)
    chains = elevation_chains(job, elevation, extent)
    under = plan_chains(job, shut, extent, said)
    lowest = min(chain.line for chain in under)
    open_y = lowest - 4.0 - pitch(NOTE) - room.opened_far(extent, place.scale) - 3.0
    open_y -= room.said_over
    opened = dataclasses.replace(job, shut=pieces(job.assembly, widest_open(job.resolved.door)))
    apart = dataclasses.replace(place, plan=(place.plan[0], open_y))
    ajar = draw_plan(draft, opened, apart, extent, name="plan, open")
    draw_ways(draft, job, ajar)
    clear = clear_way(job, ajar, extent)
    place_chains(draft, chains)
    place_chains(draft, under)
    place_chains(draft, [*clear, *reach(job, ajar, extent)])
    _floor_words(draft, own, elevation, extent, stacked=said.fractions)
    _names(draft, said, place, extent, elevation, upright)
    for words, view, deep, over in (
        (said.shut, shut, _deep(extent, place.scale), 0.0),
        (said.opened, ajar, room.opened_far(extent, place.scale), room.said_over),
    ):
        y = view.y(deep * place.scale) + 1.2 + over + pitch(NOTE)
        set_lines(draft, [words], (view.x(extent.x0) - STUB, y), NOTE, layer="table")
    x = shut.x(extent.x1) + STUB + 7.0
    draw_key(draft, own, (x, shut.y(0.0)))
    return (
        *tinted_front(job, elevation, said),
        *tinted(job, shut, said),
        *tinted(opened, ajar, said),
    )


def _floor_words(
    draft: Draft, own: DrawingWords, view: View, extent: Extent, *, stacked: bool
) -> None:
    """Under the floor, what it does."""
    low = view.y(extent.low) - GROUND - 1.0
    box = Box(view.x(extent.x0), 0.0, view.x(extent.x1), low)
    set_text(draft, own.floor, box, low, NOTE, stacked=stacked)


def _names(
    draft: Draft,
    said: ProposalContent,
    place: Placing,
    extent: Extent,
    elevation: View,
    upright: View,
) -> None:
    """Over each view, what it is."""
    y = elevation.y(extent.high) + extent.wall_over + 1.4
    draft.add(Label(text=said.front, at=(elevation.x(extent.x0), y), height=NOTE, layer="table"))
    middle = (upright.x(0.0) + place.section_right) / 2
    x = min(middle, draft.paper.frame.x1 - width(said.side, NOTE) / 2)
    draft.add(Label(text=said.side, at=(x, y), height=NOTE, anchor="centre", layer="table"))


def draw_key(draft: Draft, own: DrawingWords, at: tuple[float, float]) -> None:
    """Beside the plan, what the lines mean; where there is no room it goes without."""
    frame = draft.paper.frame
    box = Box(at[0], frame.y0, frame.x1, 0.0)
    if box.width >= _KEY:
        set_text(draft, own.key, box, at[1] + pitch(NOTE), NOTE, layer="table")
