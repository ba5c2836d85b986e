"""The sheet of a stile or a rail: its sides lying along the sheet, its sections, its list.

balloons, section marks
+--+ +----------------------------------------------+ +--+
|  | |  FACE                                        | |  |    the face, the ends beside it
+--+ +----------------------------------------------+ +--+
-12 0   40  102                                        running sizes
+----------------------------------------------+
+----------------------------------------------+         an edge, opened out
+-----+   +-----+   +-----+
| A-A |   | B-B |   | C-C |                                 one for each set of cuts
+-----+   +-----+   +-----+
No. Cut  Into  from  to ...                  complete, notes
title block
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Sequence

from parametric.drawing.audit import audit
from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TITLE, width
from parametric.drawing.marks import section_end
from parametric.drawing.papers import papers_and_scales, scale_words
from parametric.drawing.part_sheets import cross_sections
from parametric.drawing.part_sheets.balloons import RADIUS, place_balloons
from parametric.drawing.part_sheets.cross_sections import Chosen, Drawn
from parametric.drawing.part_sheets.curves import dimension_curves
from parametric.drawing.part_sheets.cut_list import PITCH, completeness, cut_list
from parametric.drawing.part_sheets.cut_shapes import own_side
from parametric.drawing.part_sheets.drilled_rows import dimension_rows
from parametric.drawing.part_sheets.ends import (
    balloon_end,
    below_bored_end,
    dimension_end,
    lay_end,
    measure_end,
    name_end,
)
from parametric.drawing.part_sheets.part_scales import scales_of
from parametric.drawing.part_sheets.running_sizes import (
    numbers_tall,
    place_along,
    places_along,
    sizes_by_side,
)
from parametric.drawing.part_sheets.set_out_boards import letter_board, shape_items
from parametric.drawing.part_sheets.sides_along import EDGE, ENDS, GAP, PartOnSheet, lies_of
from parametric.drawing.part_sheets.stacks import balloon_stack, stacked
from parametric.drawing.part_sheets.strips import (
    Strip,
    lay_strip,
    mark_face,
    strip_call,
    word_beside,
)
from parametric.drawing.part_sheets.unfolded import Side, unfolded
from parametric.drawing.part_sheets.words import how_many, notes, runs_said, scales_said
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column
from parametric.model import Groove, Pocket, Slot
from parametric.trade.part_cuts import PartCuts

_BALLOONS = 5.6
"""From a side to the middle of its balloons, mm."""
_ABOVE = _BALLOONS + RADIUS + 1.0
_MARKS = 8.0
"""Room for the ends of section lines between the face and its running sizes, mm."""
_DROP = 4.4
"""From a side to its running sizes, mm."""
_COLUMN = 74.0
_NARROW = 42.0
"""A column of words may be this narrow where there is no more room, mm."""
_SHARES = (0.5, 0.35, 0.65, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9)
"""Where along its run a section line is tried, in turn."""
_LETTER, _TWO_LETTERS = 4.9, 7.7
"""What the letters of a section take before its line, mm."""
_SECTION = "section "
"""What a section line without room is called among what is not placed."""


def draw_long_part(
    job: Subject,
    own: PartCuts,
    all_cuts: tuple[PartCuts, ...],
    letters: Sequence[str],
    title: TitleBlock,
) -> tuple[Sheet, int]:
    """One part on the first paper and scale that hold it; and how many letters it used.

    Args:
        job: the job.
        own: the part's cuts.
        all_cuts: those of every part, among which its mirror may be.
        letters: what its sections may be called, in order.
        title: the title block of the group.
    """
    part = unfolded(own.part)
    seen = {own_side(cut, part) for cut in own.part.cuts}
    hung_over = "over" in seen and "under" not in seen
    order: tuple[Side, ...] = (
        ("back", "over", "face", "under") if hung_over else ("over", "face", "under", "back")
    )
    sides = tuple(side for side in order if side in seen or side == "face")
    first: list[Side] = ["face", *(side for side in sides if side != "face")]
    ends = tuple(side for side in ENDS if side in seen)
    plan = PartOnSheet(
        job=job,
        own=own,
        part=part,
        all_cuts=all_cuts,
        sides=sides,
        ends=ends,
        sizes=sizes_by_side(own, part, first),
        sections=cross_sections.choose(own, part, letters),
        stacks=stacked(own, part, ends),
    )
    mark, noun = own.part.mark, own.part.noun
    title = dataclasses.replace(
        title,
        document=f"Part {mark}",
        second_line=f"{noun[0].upper()}{noun[1:]} {mark}, {len(own.names)} off",
    )

    # A broad board with cuts in both its faces has them one above the other, or, where that
    # saves a larger sheet, side by side.
    both = {"face", "back"} <= set(sides) and own.part.material.look == "board"

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        sheet = _attempt(plan, paper, scale, block)
        if not both or (sheet is not None and not audit(sheet)):
            return sheet
        return _attempt(plan, paper, scale, block, abreast=True) or sheet

    mm, inch = scales_of(own)
    sheet = first_that_fits(
        papers_and_scales(job, mm=mm, inch=inch),
        title,
        attempt,
        too_large=f"{mark} is past the largest sheet",
    )
    return sheet, len(plan.sections)


def _attempt(
    plan: PartOnSheet, paper: Paper, scale: float, title: TitleBlock, *, abreast: bool = False
) -> Sheet | None:
    sheet = _draw(plan, paper, scale, title, abreast=abreast)
    if sheet is None or not any(text.startswith(_SECTION) for text in sheet.unplaced):
        return sheet
    # Ends of section lines that find no room among the balloons stand over them.
    return _draw(plan, paper, scale, title, over=_MARKS, abreast=abreast) or sheet


def _draw(
    plan: PartOnSheet,
    paper: Paper,
    scale: float,
    title: TitleBlock,
    *,
    over: float = 0.0,
    abreast: bool = False,
) -> Sheet | None:
    """The sheet on one paper at one scale, with `over` mm more above the face; None too large.

    `abreast` has the back beside the face.
    """
    frame, part, job = paper.frame, plan.part, plan.job
    lies = lies_of(plan, frame, scale, abreast=abreast)
    drawn = [cross_sections.prepare(c, plan.own, part, job.rules) for c in plan.sections]
    if lies is None or any(lie.breaks > 4 for lie in lies.values()):
        return None
    scales = (scale, *(one.scale for one in drawn))
    title = dataclasses.replace(title, scale=scales_said(job, scales))
    draft = Draft(paper)
    draw_frame(draft, title)
    balloons: list[int] = []
    high = frame.y1 - 3.0
    # where each column of sides has come to; they stand in one unless the back is beside it
    downs = dict.fromkeys(lies.values(), high)
    strips: dict[Side, Strip] = {}
    for side in plan.sides:
        lie = lies[side]
        down = downs[lie]
        calls = [row for row in plan.own.rows if own_side(row.cut, part) == side]
        beside = plan.stacks if side == "face" else {}
        down -= _ABOVE if calls or side == "face" else 2.5
        down -= over if side == "face" else 0.0
        base = down - part.height(side) / scale
        strips[side] = strip = lay_strip(draft, part, side, lie, base)
        sizes = plan.sizes.get(side, [])
        drop = _DROP + (_MARKS if side == "face" and plan.sections else 0.0)
        place_along(draft, strip, places_along(strip, sizes, job.rules), drop)
        over_it = [row for row in calls if not any(row in rows for rows in beside.values())]
        balloons += place_balloons(
            draft,
            [strip_call(row, part, strip) for row in over_it],
            strip.top + _BALLOONS,
        )
        for end, rows in beside.items():
            balloons += balloon_stack(draft, part, strip, end, rows)
        below = drop + numbers_tall(sizes, job.rules) + 1.0 if sizes else drop - _DROP + 2.0
        downs[lie] = base - below
    down = min(downs.values())
    face = strips["face"]
    for side in plan.ends:
        view = lay_end(draft, part, side, face)
        measure_end(draft, plan.own, part, side, view, job.rules)
        dimension_end(draft, plan.own, part, side, view, job.rules)
        name_end(draft, part, side, view)
        balloons += balloon_end(draft, plan.own, part, side, view)
    for chosen in plan.sections:
        call_section(draft, chosen, face)
    dimension_curves(draft, plan.own, part, strips, job.rules)
    dimension_rows(draft, plan.own, part, strips, job.rules)
    letter_board(draft, job, plan.own, part, face)
    lettered = "face" in plan.own.part.faces.values()
    mark_face(draft, part, face, lettered=lettered)
    board = plan.own.part.material.look == "board"
    for side in plan.sides:
        # a board's face is told by its own name, where no balloons stand in the way
        named = board and not lettered and "left" not in (*plan.stacks, *plan.ends)
        if side != "face" or named:
            word_beside(draft, strips[side], part.word(side))
    down = min(down, face.base - 14.0 if plan.ends else down)
    bored = [below_bored_end(plan.own, part, side, job.rules) for side in plan.ends]
    down = min([down, *(face.base - below for below in bored)])
    stood = _place_sections(draft, plan, drawn, frame, down - 2.0)
    if stood is None:
        return None
    shown = {cross_sections.shape(row, part) for chosen in plan.sections for row in chosen.cuts}
    shown |= {
        cross_sections.shape(row, part)
        for row in plan.own.rows
        if cross_sections.on_end(row, part) and own_side(row.cut, part) in plan.ends
    }
    return _words(plan, draft, title, stood, balloons, (len(strips) + len(plan.ends), shown))


def call_section(draft: Draft, chosen: Chosen, face: Strip) -> None:
    """Both ends of a section line, above and below the face, where there is room for them."""
    places = []
    for run, stretch in itertools.product(chosen.runs, face.lie.stretches):
        low, high = max(stretch.low, run[0]), min(stretch.high, run[1])
        if high > low:
            places += [low + (high - low) * t for t in _SHARES]
    # Over the balloons where there is no room beside them, off the middle that a leader runs
    # down; at last with its arrow over an extension line.
    over = _BALLOONS + RADIUS
    spots = [(at, 0.0) for at in places] + [(at, over) for at in reversed(places)]
    tries = [(spot, crossed) for crossed in (False, True) for spot in spots]
    left = _LETTER if len(chosen.letter) == 1 else _TWO_LETTERS
    found = next((s for s, no in tries if _stands(draft, face, *s, left, crossed=no)), None)
    if found is None:
        draft.unplaced.append(f"{_SECTION}{chosen.letter}")
        found = sum(chosen.runs[0]) / 2, 0.0
    x, lift = face.lie.x(found[0]), found[1]
    top = (x, face.top + 6.4 + lift)
    section_end(draft, top, outwards="up", looks="right", letter=chosen.letter)
    section_end(draft, (x, face.base - 6.4), outwards="down", looks="right", letter=chosen.letter)


def _stands(
    draft: Draft, face: Strip, along: float, lift: float, left: float, *, crossed: bool
) -> bool:
    """Whether both ends of a section line stand clear; `crossed`: but for lines under the arrow."""
    x = face.lie.x(along)
    for y, letter in ((face.top + 0.8 + lift, 1.4), (face.base - 7.4, 0.0)):
        whole = Box(x - left, y, x + 5.2, y + 6.6)
        lettered = Box(x - left, y + letter, x - 1.5, y + letter + 5.2)
        clear = (
            draft.off_other_texts(whole) and draft.free(lettered, 0.1)
            if crossed
            else draft.free(whole, 0.1)
        )
        if not clear:
            return False
    return True


def _place_sections(
    draft: Draft, plan: PartOnSheet, drawn: Sequence[Drawn], frame: Box, top: float
) -> Box | None:
    """The sections in rows from the left; returns what they take."""
    unit = plan.job.rules.unit
    row: list[Drawn] = []
    rows = [row]
    at = frame.x0 + EDGE
    for one in drawn:
        wide = _taken(one, plan)
        if row and at + wide > frame.x1 - EDGE:
            row = []
            rows.append(row)
            at = frame.x0 + EDGE
        row.append(one)
        at += wide + GAP
    low, right = top, frame.x0
    for row in rows:
        if not row:
            continue
        above = max(one.above for one in row)
        below = max(one.below for one in row)
        foot = low - above - max(one.tall for one in row)
        if foot - below < frame.y0:
            return None
        at = frame.x0 + EDGE
        for one in row:
            corner = (at + one.left, foot)
            scale = scale_words(one.scale, unit)
            cross_sections.draw(draft, one, plan.part, corner, _section_words(one.chosen), scale)
            at += _taken(one, plan) + GAP
            right = max(right, at - GAP)
        low = foot - below
    return Box(frame.x0 + EDGE, low, right, top)


def _taken(one: Drawn, plan: PartOnSheet) -> float:
    """How wide a section stands on paper, its caption too."""
    scale = scale_words(one.scale, plan.job.rules.unit)
    letter = one.chosen.letter
    said = max(
        width(f"{letter}-{letter}  {scale}", TITLE, "bold"), width(_section_words(one.chosen))
    )
    return one.left + max(one.wide + one.right, said)


def _section_words(chosen: Chosen) -> str:
    word = "cut" if len(chosen.shows) == 1 else "cuts"
    return f"{word} {runs_said(chosen.shows)}"


def _words(
    plan: PartOnSheet,
    draft: Draft,
    title: TitleBlock,
    sections: Box,
    balloons: Sequence[int],
    drawn: tuple[int, set[cross_sections.Shape]],
) -> Sheet:
    """The list at the left, what is counted and said beside it, over the title block."""
    frame, own, part = draft.paper.frame, plan.own, plan.part
    heading = f"Every cut in {own.part.mark}; datum 0 is the finished {part.word('left')}"
    listed = cut_list(plan.job, own, (frame.x0 + EDGE, sections.y0 - 7.0), heading)
    draft.add(listed)
    if listed.box.y0 < frame.y0 + 2.0:
        draft.unplaced.append("the list of cuts")
    sides_drawn, shown = drawn
    seen = {own_side(cut, part) for cut in own.part.cuts}
    shapes = {
        cross_sections.shape(row, part)
        for row in own.rows
        if isinstance(row.cut, (Slot, Groove, Pocket))
    }
    rows, wrong = completeness(
        own,
        listed,
        balloons,
        (sides_drawn - ("face" not in seen), len(seen)),
        (len(shown & shapes), len(shapes)),
    )
    items: list[Item] = [
        *shape_items(plan.job, own),
        TableItem(
            title="Complete when",
            columns=(
                Column(head="Checked", width=50.0),
                Column(head="here", width=12.0, anchor="right"),
                Column(head="needed", width=16.0, anchor="right"),
            ),
            rows=rows,
            wrong=wrong,
            pitch=PITCH,
        ),
        Sentences(
            title="Notes",
            kind="numbered",
            texts=(f"{how_many(own)}.", *notes(plan.job, own, part, plan.all_cuts)),
        ),
    ]
    left_over = place_items(draft, items, _columns(draft, title, listed.box, sections))
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


def _columns(draft: Draft, title: TitleBlock, listed: Box, sections: Box) -> list[Box]:
    """Where words may stand: beside the list over the title block, and under the list.

    A column that clears the sections begins beside them.
    """
    frame, block = draft.paper.frame, title_block_box(draft.paper, title)
    columns = []
    end = frame.x1 - EDGE
    beside = max(listed.x1, sections.x1) + 8.0
    if end - beside >= _COLUMN:
        # Clear of the sections too, so the column begins beside them.
        columns.append(Box(beside, _floor(block, frame, end), end, sections.y1 + 1.0))
        end = beside - GAP
    at = listed.x1 + 8.0
    count = max(int((end - at + GAP) // (_COLUMN + GAP)), int(end - at >= _NARROW))
    for k in range(count):
        wide = (end - at - GAP * (count - 1)) / count
        x = at + k * (wide + GAP)
        columns.append(Box(x, _floor(block, frame, x + wide), x + wide, sections.y0 - 2.0))
    under = Box(frame.x0 + EDGE, frame.y0 + 3.0, min(listed.x1, block.x0 - 6.0), listed.y0 - 4.0)
    if under.height > 12.0:
        columns.append(under)
    return columns


def _floor(block: Box, frame: Box, right: float) -> float:
    """How far down a column may go: to the title block, or to the frame before it."""
    return (block.y1 if right > block.x0 - 2.0 else frame.y0) + 3.0
