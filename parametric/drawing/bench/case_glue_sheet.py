"""The sheet on which a case is put together: its boards from the front, clamps, diagonals, sizes."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.cases.case import CaseBox
from parametric.drawing.bench.saying import Numbers, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.draft import Draft
from parametric.drawing.pieces import leaf_pieces, silhouette
from parametric.drawing.plane import Box
from parametric.drawing.subject import Subject
from parametric.hangings.hanging import Side
from parametric.trade.case_glue_ups import CaseGlueUp
from parametric.trade.case_names import together

_CLAMP = 11.0
"""Length of a clamp's arrow on paper, mm."""
_LETTER = 10.0
"""What a size at the left takes past the clamps, mm on paper."""
_LEFT_OUT = ("shelf", "kick board", "back", "packing")
_CLAMPED = ("bottom", "top", "stretcher", "fixed shelf")


def case_glue_sheet(job: Subject, say: Numbers, one: CaseGlueUp) -> SetUp:
    """Cases put together alike: sizes outside, diagonals, the minutes there are.

    Args:
        job: the job.
        say: how its numbers are said.
        one: the cases.
    """
    box = one.first.case.box
    others = [case.case.box for case in one.cases[1:]]
    square = (
        ()
        if one.diagonal is None
        else (
            Key(
                letter="c",
                number=say.wood(one.diagonal),
                name=said(
                    "both diagonals of the back, alike within {}", say.fine(one.diagonals_differ)
                ),
            ),
        )
    )
    names = together([case.name for case in one.cases])
    return SetUp(
        title=f"Put together: {names}",
        under=f"{', '.join(one.marks)} · sizes in {job.rules.unit_words}",
        keys=(
            Key(
                letter="a",
                number=say.wood(box.width, *(other.width for other in others)),
                name="wide outside",
            ),
            *_heights(say, box, others),
            *square,
            Key(
                number=say.wood(box.depth, *(other.depth for other in others)),
                name="deep, without fronts",
            ),
            Key(number=say.count(one.minutes), after="minutes", name="open time of the glue"),
        ),
        rows=(
            Row(head="Make", text=f"{len(one.cases)} off: {names}"),
            Row(
                head="Boards", text="by their marks from the sheet of the case, front edges banded"
            ),
            Row(head="Check", text="two straight edges over the front edges: no twist"),
        ),
        warning=one.cautions[0],
        picture=lambda draft, room: _picture(draft, room, job, one),
        seen="From the front; arrows are clamps",
    )


def _heights(say: Numbers, box: CaseBox, others: Sequence[CaseBox]) -> tuple[Key, ...]:
    """How high it is; under a slope at its left, and at its right."""
    word = "high, kick and all" if box.kick_high is not None else "high"
    if box.slope is None:
        number = say.wood(box.height, *(other.height for other in others))
        return (Key(letter="b", number=number, name=word),)
    sides: tuple[tuple[str, Side], ...] = (("b", "left"), ("c", "right"))
    return tuple(
        Key(letter=letter, number=say.wood(box.high_at(side)), name=f"{word}, at its {side}")
        for letter, side in sides
    )


def _picture(draft: Draft, room: Box, job: Subject, one: CaseGlueUp) -> None:
    case, box = one.first.case, one.first.case.box
    wide, high = float(box.width), float(box.highest)
    beside = 0.0 if box.slope is None else _LETTER
    inner = Box(
        room.x0 + _CLAMP + 2.0 + beside, room.y0 + 12.0, room.x1 - _CLAMP - 12.0, room.y1 - 2.0
    )
    own = sketch(draft, inner, Box(0.0, 0.0, wide, high), largest=2.0)
    parts = next(g for g in job.assembly.groups if g.name == one.first.name).parts
    roles = {board.name: board.role for board in case.boards}
    for piece in leaf_pieces(parts, one.first.name):
        role = roles.get(piece.part.name)
        if role is None or role in _LEFT_OUT:
            continue
        own.outline(silhouette(piece), "cut")
    if one.diagonal is not None:
        own.line("centre", (0.0, 0.0), (wide, high))
        own.line("centre", (0.0, high), (wide, 0.0))
    # boards one over another, as stretchers are, take one pair of clamps
    heights = {
        round(board.z): board.z + float(board.thickness) / 2
        for board in case.boards
        if board.role in _CLAMPED and board.lies == "level"
    }
    for up in heights.values():
        here, there = own.at((0.0, up)), own.at((wide, up))
        own.arrow((here[0] - _CLAMP, here[1]), here, "cut_heavy")
        own.arrow((there[0] + _CLAMP, there[1]), there, "cut_heavy")
    own.span(((0.0, 0.0), (wide, 0.0)), "a", out=(0.0, -6.0))
    right = float(box.high_at("right"))
    own.span(((wide, 0.0), (wide, right)), "c" if box.slope else "b", out=(_CLAMP + 4.0, 0.0))
    if box.slope is not None:
        left = float(box.high_at("left"))
        own.span(((0.0, 0.0), (0.0, left)), "b", out=(-_CLAMP - 4.0, 0.0))
    if one.diagonal is not None:
        x, y = own.at((wide * 0.75, high * 0.75))
        own.letter("c", [(x - 8.0, y + 3.0), (x + 8.0, y - 3.0), (x, y + 8.0)], target=(x, y))
