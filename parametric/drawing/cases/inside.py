"""Cabinets with their fronts off: what stands in them, bay by bay, and the lists of cabinets and fronts."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from parametric.cases.case import CaseBay
from parametric.drawing.cases.arrangement import INCH, MM
from parametric.drawing.cases.from_front import draw_cabinets, draw_surround
from parametric.drawing.cases.layout import PLAN_FIRST, STUB, Needs, Placing, place
from parametric.drawing.cases.room import Room
from parametric.drawing.cases.words import (
    cabinets_table,
    cautions,
    fronts_table,
    handles_table,
    inside_table,
    space_words,
)
from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.column import Item, Sentences, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame
from parametric.drawing.lettering import TEXT, TITLE
from parametric.drawing.linework import Linework, hide_behind
from parametric.drawing.papers import papers_and_scales, scale_words
from parametric.drawing.pieces import silhouette
from parametric.drawing.primitives import Label
from parametric.drawing.printing import Rule
from parametric.drawing.seen_and_cut import draw_linework
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.resolve.casework import StandingCase
from parametric.trade.along_wall import tiers

_UPS = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82)
"""How far up a space its words may stand, as a part of its height."""
_ACROSS = (0.5, 0.3, 0.7)
"""And how far across it, as a part of its width."""


def draw_inside(job: Subject, room: Room, title: TitleBlock) -> Sheet:
    """The elevation with the fronts off, on the first paper and scale that it stands clear on."""
    needs = Needs(
        room=room,
        lanes=(0.0, 0.0),
        heights=0,
        under=0.0,
        over=len(tiers(room.cases)) - 1,
        next_chain=job.rules.arrangement.next_chain,
        third_angle=job.third_angle,
        out=-room.front,
        views=False,
    )

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        placing = place(paper, scale, needs, block)
        return None if placing is None else _draw(job, room, placing, block)

    options = papers_and_scales(job, mm=MM, inch=INCH)
    return first_that_fits(options, title, attempt, too_large=room.too_large)


def _draw(job: Subject, room: Room, placing: Placing, title: TitleBlock) -> Sheet:
    draft = Draft(placing.paper)
    scale = scale_words(placing.scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scale)
    draw_frame(draft, title)
    view = draft.view("fronts off", placing.scale, placing.elevation)
    draw_surround(draft, view, room, STUB)
    draw_cabinets(draft, view, room.fixed)
    _behind_frames(draft, view, room)
    rule, step = job.rules.arrangement, job.rules.arrangement.next_chain
    place_chains(draft, list(_clear_widths(room, view, rule, step)))
    for case in room.cases:
        for bay in case.case.bays:
            _say(draft, view, case, bay)
    top = view.y(room.box.y1) + STUB + 2.6
    draft.add_first(
        [
            Label(
                text=f"Fronts off  {scale}",
                at=(placing.ends[0], top + up),
                height=TITLE,
                weight="bold",
            )
            for up in (0.0, 9.0, 18.0, 27.0)
        ]
    )
    items: list[Item] = [
        cabinets_table(job, room),
        inside_table(job, room),
        fronts_table(job, room),
        handles_table(job, room),
        Sentences(title="For the client to know", kind="warning", texts=cautions(job)),
    ]
    left_over = place_items(draft, items, placing.columns)
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(title)


def _behind_frames(draft: Draft, view: View, room: Room) -> None:
    """The edges of bays that a face frame hides, dashed."""
    for case in room.cases:
        if case.case.frame is None:
            continue
        frames = [p for p in room.fixed if p.part.name.startswith(f"{case.name} / face frame")]
        work = Linework()
        foot = float(case.case.box.foot)
        for bay in case.case.bays:
            low, high = foot + float(bay.spaces[0].foot), foot + float(bay.spaces[-1].head)
            for x in (float(case.left + bay.left), float(case.left + bay.left + bay.width)):
                hide_behind(
                    work, ((x, low), (x, high)), [silhouette(p) for p in frames], closed=False
                )
        draw_linework(draft, view, work)


def _clear_widths(room: Room, view: View, rule: Rule, step: float) -> Iterator[Chain]:
    """Clear widths of the bays: of the lowest cabinets under the view, of others over it."""
    low = view.y(room.box.y0) - STUB - PLAN_FIRST
    high = view.y(room.box.y1) + STUB + FIRST - 1.0
    for index, tier in enumerate(tiers(room.cases)):
        line = low if index == 0 else high + (index - 1) * step
        bays = [
            (float(case.left + bay.left), bay)
            for case in tier
            for bay in case.case.bays
            # what is clear in one with a plan is told on its own sheet
            if case.case.plan is None
        ]
        if not bays:
            continue
        stops: list[Stop] = []
        links: list[Link | None] = []
        edge = float(tier[0].case.box.foot)
        foot = view.y(edge) if index == 0 else view.y(float(tier[0].top))
        for at, bay in bays:
            if stops:
                links.append(None)
            stops += [Stop(at=at, foot=foot), Stop(at=at + float(bay.width), foot=foot)]
            links.append(Link(figure=bay.width, rule=rule))
        yield Chain(view=view, axis="across", line=line, stops=tuple(stops), links=tuple(links))


def _say(draft: Draft, view: View, case: StandingCase, bay: CaseBay) -> None:
    """What each space of a bay holds, in it."""
    left, wide = float(case.left + bay.left), float(bay.width)
    if case.case.plan is not None:
        # its right side stands before what is beyond it
        wide = min(wide, case.case.plan.front_line[1][0] - float(bay.left))
    foot = float(case.case.box.foot)
    for space in bay.spaces:
        words = space_words(space)
        low, high = foot + float(space.foot), foot + float(space.head)
        places = [
            Label(
                text=words,
                at=(view.x(left + share * wide), view.y(low + part * (high - low)) - TEXT / 2),
                anchor="centre",
                view=view.name,
            )
            for share in _ACROSS
            for part in _UPS
        ]
        draft.add_first(places)
