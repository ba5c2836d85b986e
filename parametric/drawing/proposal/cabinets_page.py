"""The proposal's drawing of the cabinets in one room: from the front, cut upright, from above.

    +--+--+--+  heights on both sides   +-+  cut through
    |  |  |  |                          | |
    ===floor==                          ===  depth
      floor in words
    ##--------##  from above            widths under it

What is measured, and how it is shared out, is the arrangement's own: the same chains as there.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.cases.chains import (
    depth_chain,
    height_chains,
    over_chains,
    width_chains,
    widths_over,
    widths_under,
)
from parametric.drawing.cases.cut_views import draw_plan, draw_upright, name_places
from parametric.drawing.cases.from_front import (
    draw_cabinets,
    draw_hinge_sides,
    draw_surround,
    letter_fronts,
)
from parametric.drawing.cases.layout import PLAN_FIRST, STUB, Placing
from parametric.drawing.cases.room import Room
from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import width
from parametric.drawing.pieces import Piece, front, silhouette
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.proposal.content import DrawingWords, ProposalContent
from parametric.drawing.proposal.drawing_page import (
    ABOVE,
    INCH_SCALES,
    MM_SCALES,
    draw_head,
    draw_key,
    words_of_scale,
)
from parametric.drawing.proposal.setting import NOTE, Tint, lines_of, pitch, set_lines, set_text
from parametric.drawing.proposal.washes import glass_wash, wood_wash
from parametric.drawing.subject import Subject
from parametric.trade.along_wall import tiers

_WORDS = 5.0
"""What the values of the outermost chain take beside it, mm."""
_FLOOR = 4.0
"""How much floor is shown before what stands foremost, mm on paper."""
_APART = 8.0
"""From the last chain of the elevation to the side view."""
_UNDER_SIDE = PLAN_FIRST + 6.0
"""What the depth takes under the side view."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Room:
    """A room, and what stands beside its own sizes, mm on paper."""

    room: Room
    step: float
    under: float
    over: float
    own: DrawingWords

    @property
    def chains(self) -> float:
        """From the walls to the outermost chain of heights and past its values."""
        return FIRST - 1.0 + self.step + _WORDS

    def wide(self, scale: float) -> float:
        """The elevation with its walls."""
        return (self.room.box.x1 - self.room.box.x0) / scale + 2 * STUB

    def high(self, scale: float) -> float:
        """The elevation with floor and ceiling."""
        return (self.room.box.y1 - self.room.box.y0) / scale + 2 * STUB

    def behind(self, scale: float) -> float:
        """From the front edges to the far side of the wall."""
        return float(self.room.depth) / scale + STUB

    def out(self, scale: float) -> float:
        """From the front edges to the floor's end before them."""
        return max(0.0, -self.room.out) / scale + _FLOOR

    def across(self, scale: float) -> float:
        """All of it from left to right."""
        side = self.behind(scale) + self.out(scale)
        return self.wide(scale) + 2 * self.chains + _APART + side

    def lines(self, scale: float) -> int:
        """How many lines the words about the floor take."""
        return len(lines_of(self.own.floor, self.wide(scale), NOTE)) if self.own.floor else 0

    def upper(self, scale: float) -> float:
        """From the head to what stands under the elevation."""
        said = max(self.lines(scale) * pitch(NOTE) + 1.0, _UNDER_SIDE)
        return ABOVE + self.over + self.high(scale) + said

    def needs(self, scale: float) -> float:
        """All of it from head to foot."""
        plan = pitch(NOTE) + 2.0 + self.behind(scale) + self.out(scale)
        return self.upper(scale) + 3.0 + plan + PLAN_FIRST + self.under + 5.0


def draw_cabinets_page(
    draft: Draft, job: Subject, room: Room, said: ProposalContent, own: DrawingWords, box: Box
) -> tuple[Tint, ...]:
    """The page's views on the largest scale at which they stand clear of one another.

    Args:
        draft: the page.
        job: the job.
        room: the room that is drawn.
        said: the proposal's words.
        own: those of this room's drawing.
        box: what the page leaves between head and foot.

    Returns:
        The cabinets' colour in the elevation.
    """
    top = draw_head(draft, said, own, box)
    rule = job.rules.arrangement
    step = rule.next_chain
    over = FIRST + step * (widths_over(room) - 1) + _WORDS if widths_over(room) else 0.0
    shown = _Room(
        room=room,
        step=step,
        under=widths_under(room, step - 1.0),
        over=over,
        own=own,
    )
    scales = MM_SCALES if job.rules.unit == "mm" else INCH_SCALES
    high = top - box.y0
    fitting = (s for s in scales if shown.across(s) <= box.width and shown.needs(s) <= high)
    scale = next(fitting, scales[-1])
    words_of_scale(draft, job, box, scale)
    spare = max(0.0, high - shown.needs(scale))
    placing = _placing(
        draft, job, shown, box, top - min(spare / 3, 8.0), scale, min(spare / 3, 9.0)
    )
    return _draw(draft, job, shown, said, placing)


def _placing(
    draft: Draft, job: Subject, shown: _Room, box: Box, top: float, scale: float, air: float
) -> Placing:
    """Views from the head down; what the width leaves over goes half to each side."""
    room, behind, out = shown.room, shown.behind(scale), shown.out(scale)
    left = box.x0 + shown.chains + max(0.0, (box.width - shown.across(scale)) / 2)
    right = left + shown.wide(scale)
    side = right + shown.chains + _APART
    high = top - ABOVE - shown.over
    plan = top - shown.upper(scale) - air - 3.0 - pitch(NOTE) - 2.0 - behind
    x = left + STUB - room.box.x0 / scale
    y = high - STUB - room.box.y1 / scale
    return Placing(
        paper=draft.paper,
        scale=scale,
        elevation=(x, y),
        plan=(x, plan),
        section=(side + (out if job.third_angle else behind), y),
        ends=(left, right),
        chains=(left - FIRST + 1.0, right + FIRST - 1.0),
        section_right=side + behind + out,
        columns=(),
    )


def _draw(
    draft: Draft, job: Subject, shown: _Room, said: ProposalContent, placing: Placing
) -> tuple[Tint, ...]:
    room, rule, scale = shown.room, job.rules.arrangement, placing.scale
    elevation = draft.view("cabinets from the front", scale, placing.elevation)
    draw_surround(draft, elevation, room, STUB)
    draw_cabinets(draft, elevation, room.pieces)
    draw_hinge_sides(draft, elevation, (*room.fronts, *room.beyond))
    plan = draft.view("plan", scale, placing.plan)
    draw_plan(draft, plan, room, STUB, named=False)
    section = draft.view("section", scale, placing.section)
    draw_upright(draft, section, room, third_angle=job.third_angle)
    place_chains(draft, height_chains(job, room, elevation, placing))
    line = elevation.y(room.box.y1) + STUB + FIRST - 1.0
    place_chains(draft, over_chains(room, elevation, line, shown.step, rule))
    under = plan.y(room.out) - PLAN_FIRST
    place_chains(draft, width_chains(room, plan, under, shown.step - 1.0, rule))
    place_chains(draft, [depth_chain(job, room, section, third_angle=job.third_angle)])
    letter_fronts(draft, elevation, (*room.fronts, *room.beyond))
    for case in tiers(room.cases)[0]:
        # a cabinet too narrow for its name goes without: its sizes stand with the others
        name = draft.first_free(name_places(plan, case))
        if name is not None:
            draft.add(name)
    left, right = placing.ends
    low = elevation.y(room.box.y0) - STUB - 1.0
    if shown.own.floor:
        words = Box(left, 0.0, right, low)
        set_text(draft, shown.own.floor, words, low, NOTE, stacked=said.fractions)
    head = elevation.y(room.box.y1) + STUB + shown.over + 1.4
    draft.add(Label(text=said.front, at=(left, head), height=NOTE, layer="table"))
    middle = (placing.section_right + section.x(0.0)) / 2
    x = min(middle, draft.paper.frame.x1 - width(said.side, NOTE) / 2)
    draft.add(Label(text=said.side, at=(x, head), height=NOTE, anchor="centre", layer="table"))
    above = placing.plan[1] + shown.behind(scale) + 1.2 + pitch(NOTE)
    set_lines(draft, [said.above], (left, above), NOTE, layer="table")
    draw_key(draft, shown.own, (right + shown.chains, plan.y(float(room.depth) / 2)))
    wood, glass = wood_wash(said), glass_wash(said)
    return tuple(
        Tint(
            points=elevation.path(silhouette(piece)),
            colour=glass if piece.part.material.look == "glass" else wood,
        )
        for piece in sorted(filter(_seen, room.pieces), key=lambda piece: -front(piece))
    )


def _seen(piece: Piece) -> bool:
    """Whether a piece takes the colour of the finish, or is glass."""
    return piece.part.material.look in ("timber", "board", "glass") and piece.part.noun != "counter"
