"""The arrangement of cabinets in one room: from the front, cut level, cut upright; then fronts off."""

from __future__ import annotations

import dataclasses

from parametric.drawing.cases.chains import (
    depth_chain,
    front_chain,
    height_chains,
    middle_chains,
    over_chains,
    width_chains,
    widths_over,
    widths_under,
)
from parametric.drawing.cases.cut_views import draw_plan, draw_upright, level_of, upright_of
from parametric.drawing.cases.from_front import (
    draw_cabinets,
    draw_clear_width,
    draw_hinge_sides,
    draw_plumb_line,
    draw_surround,
    letter_fronts,
)
from parametric.drawing.cases.layout import PLAN_FIRST, STUB, Needs, Placing, lane, place
from parametric.drawing.cases.room import Room
from parametric.drawing.cases.scribe_words import draw_words, words
from parametric.drawing.cases.words import room_items
from parametric.drawing.chains import FIRST, Chain, place_chains
from parametric.drawing.column import place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame
from parametric.drawing.lettering import TITLE
from parametric.drawing.marks import Way, datum, section_end
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject

MM: Scales = ((10.0, 20.0), (10.0, 20.0, 50.0))
FROM_THE_FRONT = "cabinets from the front"
INCH: Scales = ((12.0, 16.0, 24.0), (12.0, 16.0, 24.0, 48.0))


def draw_room(job: Subject, room: Room, title: TitleBlock) -> Sheet:
    """Fronts on: the elevation, the plan under it, the section beside it, on the first that fits."""
    needs = Needs(
        room=room,
        lanes=(lane(words(job, room, "left")), lane(words(job, room, "right"))),
        heights=2,
        under=widths_under(room, job.rules.arrangement.next_chain - 1.0),
        over=widths_over(room),
        next_chain=job.rules.arrangement.next_chain,
        third_angle=job.third_angle,
        out=-room.out,
        views=True,
    )

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        placing = place(paper, scale, needs, block)
        return None if placing is None else _draw(job, room, needs, placing, block)

    options = papers_and_scales(job, mm=MM, inch=INCH)
    return first_that_fits(options, title, attempt, too_large=room.too_large)


def _draw(job: Subject, room: Room, needs: Needs, placing: Placing, title: TitleBlock) -> Sheet:
    draft = Draft(placing.paper)
    scale = scale_words(placing.scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scale)
    draw_frame(draft, title)
    front = draft.view(FROM_THE_FRONT, placing.scale, placing.elevation)
    draw_surround(draft, front, room, STUB)
    draw_cabinets(draft, front, room.pieces)
    draw_hinge_sides(draft, front, (*room.fronts, *room.beyond))
    draw_plumb_line(draft, front, room)
    draw_clear_width(draft, front, room)
    plan = draft.view("plan A-A", placing.scale, placing.plan)
    section = draft.view("section B-B", placing.scale, placing.section)
    heights = height_chains(job, room, front, placing)
    _mark_sections(draft, room, front, heights, third_angle=needs.third_angle)
    draw_plan(draft, plan, room, STUB)
    draw_upright(draft, section, room, third_angle=needs.third_angle)
    _datum(draft, section, placing)
    rule, step = job.rules.arrangement, needs.next_chain
    line = plan.y(room.out) - PLAN_FIRST
    top = front.y(room.box.y1) + STUB + FIRST - 1.0
    place_chains(draft, heights)
    place_chains(draft, over_chains(room, front, top, step, rule))
    place_chains(draft, width_chains(room, plan, line, step - 1.0, rule))
    beside = front_chain(job, room, section, third_angle=needs.third_angle)
    depth = depth_chain(job, room, section, third_angle=needs.third_angle)
    place_chains(draft, [depth, *([] if beside is None else [beside])])
    place_chains(draft, middle_chains(room, front, rule))
    draw_words(draft, job, room, front, placing)
    letter_fronts(draft, front, (*room.fronts, *room.beyond))
    _captions(draft, room, placing, scale, plan, section)
    left_over = place_items(draft, room_items(job, room), placing.columns)
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(title)


def _mark_sections(
    draft: Draft, room: Room, front: View, chains: list[Chain], *, third_angle: bool
) -> None:
    """Ends of both section lines, outside the chains."""
    y = front.y(level_of(room))
    lines = [chain.line for chain in chains]
    section_end(draft, (min(lines) - 9.8, y), outwards="left", looks="down", letter="A")
    section_end(draft, (max(lines) + 6.6, y), outwards="right", looks="down", letter="A")
    _, at = upright_of(room)
    looks: Way = "left" if third_angle else "right"
    x, box = front.x(at), room.box
    top = front.y(box.y1) + STUB + 6.2
    section_end(draft, (x, top), outwards="up", looks=looks, letter="B")
    section_end(draft, (x, front.y(box.y0) - STUB - 6.2), outwards="down", looks=looks, letter="B")


def _datum(draft: Draft, section: View, placing: Placing) -> None:
    """The highest floor, from the section to its name."""
    y, at, words = section.y(0.0), placing.section_right + 2.4, "Datum 0"
    label = Label(text=words, at=(at, y), weight="bold")
    draft.line("datum", (section.x(0.0), y), (at + label.box.width + 2.6, y))
    datum(draft, (at, y), words)


def _captions(
    draft: Draft, room: Room, placing: Placing, scale: str, plan: View, section: View
) -> None:
    """Names over the views, and under the plan."""
    top = section.y(room.box.y1) + STUB + 2.6
    left = placing.ends[0]
    draft.add_first([_title(f"Front elevation  {scale}", (left, top + up)) for up in _LIFTS])
    draft.add_first([_title(f"B-B  {scale}", (section.x(0.0) - 8.0, top + up)) for up in _LIFTS])
    beside = placing.ends[1] + 4.0
    draft.add_first(
        [
            _title(f"A-A  {scale}", (beside, plan.y(float(room.depth)) - down))
            for down in (2.0, 6.0, 10.0, 14.0)
        ]
    )


_LIFTS = (0.0, 7.0, 14.0, 21.0, 28.0)


def _title(text: str, at: tuple[float, float]) -> Label:
    return Label(text=text, at=at, height=TITLE, weight="bold")
