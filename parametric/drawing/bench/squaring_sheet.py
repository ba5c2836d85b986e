"""The set-up sheet of groove ends that are squared by hand: where they are, what the chisel takes."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import faces_row, heading, run_words, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point, arc_points
from parametric.drawing.subject import Subject
from parametric.trade.milling import Setting
from parametric.trade.stop_blocks import StopLine


def squaring_sheet(
    job: Subject, say: Numbers, setting: Setting, lines: Sequence[StopLine]
) -> SetUp:
    """The round ends that the cutter left, chopped to a line."""
    assert setting.width is not None
    first, *more = lines
    assert setting.depth is not None
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(letter="a", number=say.set_to(setting.width), name="wide"),
            Key(letter="b", number=say.set_to(setting.depth), name="deep, as the cutter left it"),
            Key(
                number=say.wood(first.from_low.low),
                name=f"lower end, from the blank's {first.low_word}",
            ),
            Key(
                number=say.wood(first.from_low.high),
                name=f"upper end, from the blank's {first.low_word}",
            ),
        ),
        rows=(
            Row(
                head="Run",
                text=said(
                    "{}; {} ends",
                    listed([run_words(run) for run in setting.runs]),
                    say.count(setting.cuts),
                ),
            ),
            faces_row(setting),
            *(
                Row(
                    head="And ends",
                    text=said(
                        "{} and {} in {}",
                        say.wood(line.from_low.low),
                        say.wood(line.from_low.high),
                        ", ".join(line.marks),
                    ),
                )
                for line in more
            ),
            Row(head="Order", text="square the line with a knife; chop from it into the round"),
            Row(head="Check with", text="a try square in the end; a square stick goes home"),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _squaring_picture(draft, box, setting),
        seen="From above; below, cut through",
    )


def _squaring_picture(draft: Draft, box: Box, setting: Setting) -> None:
    """The round end inside the square one; what the chisel takes is black."""
    assert setting.width is not None
    assert setting.depth is not None
    wide, deep = float(setting.width), float(setting.depth)
    long, wall, apart = 5.0 * wide, 1.0 * wide, 1.6 * wide
    inner = Box(box.x0 + 16.0, box.y0 + 2.0, box.x1 - 14.0, box.y1 - 2.0)
    low = -apart - deep - 0.8 * wide
    own = sketch(draft, inner, Box(-wide, low, long, 2 * wall + wide), largest=0.2)
    # From above: the edge of the stile, the groove running off to the right.
    y0, y1 = wall, wall + wide
    own.wood(
        [(-wide, 0.0), (long, 0.0), (long, y1 + wall), (-wide, y1 + wall)], ends=False, broken=True
    )
    for y in (0.0, y1 + wall):
        own.line("cut_heavy", (-wide, y), (long, y))
    for x in (-wide, long):
        own.torn((x, 0.0), (x, y1 + wall))
    r = wide / 2
    middle = (y0 + y1) / 2
    own.outline([(long, y0), (0.0, y0), (0.0, y1), (long, y1)])
    for corner, start in (((0.0, y0), 180), ((0.0, y1), 90)):
        own.blade([corner, *arc_points((r, middle), r, start, start + 90, 0.2)])
    own.span(((long, y0), (long, y1)), "a", out=(8.0, 0.0))
    # Cut along the middle.
    top = -apart
    section: list[Point] = [
        (-wide, top),
        (0.0, top),
        (0.0, top - deep),
        (long, top - deep),
        (long, low),
        (-wide, low),
    ]
    own.wood(section, ends=False, broken=True)
    own.line("cut_heavy", *section[:4])
    own.line("edge", (0.0, top), (long, top))
    own.torn(section[3], section[4])
    own.torn(section[4], section[5])
    own.torn(section[5], section[0])
    own.span(((long, top), (long, top - deep)), "b", out=(8.0, 0.0))
