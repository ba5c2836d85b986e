"""The glue-up sheet of a drawer's box, from above: sides, ends, the bottom in its grooves, clamps."""

from __future__ import annotations

from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box
from parametric.drawing.subject import Subject
from parametric.names import SEPARATOR
from parametric.trade.drawer_glue_ups import DrawerGlueUp
from parametric.trade.printed import several

_CLAMP = 11.0
"""Length of a clamp's arrow on paper, mm."""


def drawer_sheet(job: Subject, say: Numbers, one: DrawerGlueUp) -> SetUp:
    """Boxes glued up alike: clamps, sizes outside, diagonals, the minutes there are."""
    box, others = one.box, one.boxes[1:]
    return SetUp(
        title=f"Glue-up: {several(len(one.boxes), 'drawer box', 'drawer boxes')}",
        under=f"{', '.join(one.marks)} · sizes in {job.rules.unit_words}",
        keys=(
            Key(
                letter="a",
                number=say.wood(box.width, *(o.width for o in others)),
                name="over the sides",
            ),
            Key(
                letter="b",
                number=say.wood(box.length, *(o.length for o in others)),
                name="long outside",
            ),
            Key(
                letter="c",
                number=say.wood(one.diagonal),
                name=said("both diagonals, alike within {}", say.fine(one.diagonals_differ)),
            ),
            Key(
                number=say.count(one.clamps),
                after="clamps",
                name="two at the front and two at the back, over cauls",
            ),
            Key(number=say.count(one.minutes), after="minutes", name="open time of the glue"),
        ),
        rows=(
            Row(head="Make", text=listed([own.name.replace(SEPARATOR, " ") for own in one.boxes])),
            Row(head="Dry", text="the bottom: no glue in its grooves"),
            Row(head="Check", text="two straight edges over the sides: no twist"),
        ),
        warning=one.cautions[0],
        picture=lambda draft, room: _picture(draft, room, one),
        seen="From above; arrows are clamps",
    )


def _picture(draft: Draft, room: Box, one: DrawerGlueUp) -> None:
    box = one.box
    wide, long = float(box.width), float(box.length)
    side, end = float(box.side), float(box.end)
    inner = Box(room.x0 + _CLAMP + 2.0, room.y0 + 12.0, room.x1 - _CLAMP - 12.0, room.y1 - 2.0)
    own = sketch(draft, inner, Box(0.0, 0.0, wide, long), largest=2.0)
    for x in (0.0, wide - side):
        own.wood([(x, 0.0), (x + side, 0.0), (x + side, long), (x, long)], ends=False)
        own.outline([(x, 0.0), (x + side, 0.0), (x + side, long), (x, long)], "cut")
    for y in (0.0, long - end):
        own.outline([(side, y), (wide - side, y), (wide - side, y + end), (side, y + end)], "cut")
    left, low = (wide - float(box.bottom_width)) / 2, (long - float(box.bottom_length)) / 2
    own.outline(
        [(left, low), (wide - left, low), (wide - left, long - low), (left, long - low)], "hidden"
    )
    own.line("centre", (0.0, 0.0), (wide, long))
    own.line("centre", (0.0, long), (wide, 0.0))
    for y in (end / 2, long - end / 2):
        here, there = own.at((0.0, y)), own.at((wide, y))
        own.arrow((here[0] - _CLAMP, here[1]), here, "cut_heavy")
        own.arrow((there[0] + _CLAMP, there[1]), there, "cut_heavy")
    own.span(((0.0, 0.0), (wide, 0.0)), "a", out=(0.0, -6.0))
    own.span(((wide, 0.0), (wide, long)), "b", out=(_CLAMP + 4.0, 0.0))
    x, y = own.at((wide * 0.75, long * 0.75))
    own.letter("c", [(x - 8.0, y + 3.0), (x + 8.0, y - 3.0), (x, y + 8.0)], target=(x, y))
