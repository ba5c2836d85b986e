"""Set-up sheets of grooves: the passes across, and the stop blocks of a stopped one.

Seen along the feed, the piece's face against the fence; under a hand router with its edge up.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import (
    deep,
    faces_row,
    heading,
    pieces_row,
    when_words,
)
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Fill
from parametric.drawing.subject import Subject
from parametric.model import Groove
from parametric.trade.milling import Setting
from parametric.trade.stop_blocks import Blocks, StopLine

_CORNER = 1e-3
"""A cut no farther from a corner than this takes the corner away, mm."""
_SPARE = 24.0
"""How much of a piece is shown beyond a cut, mm."""


def groove_sheet(job: Subject, say: Numbers, setting: Setting, lines: Sequence[StopLine]) -> SetUp:
    """A groove along an edge, in as many passes across as it takes."""
    assert setting.depth is not None
    assert setting.width is not None
    number = len(setting.fence)
    cutter = (
        []
        if setting.cutter is None
        else [Key(letter="a", number=say.set_to(setting.cutter), name="cutter")]
    )
    if setting.cutter is None:
        width_of = "dado set, width" if setting.by == "saw" else "cutter, as wide as the groove"
        cutter = [Key(letter="a", number=say.set_to(setting.width), name=width_of)]
    passes = [
        Key(
            letter="b" if index == 0 else "c",
            number=say.set_to(value),
            name=f"{setting.fence_from} to the {_tool(setting)}'s middle"
            + (f", pass {index + 1}" if number > 1 else ""),
        )
        for index, value in enumerate(setting.fence[:2])
    ]
    shift = (
        []
        if setting.shift is None
        else [
            Key(
                number=say.set_to(setting.shift),
                name=said(
                    "offset, by feeler; {} passes make it {} wide",
                    str(number),
                    say.set_to(setting.width),
                ),
            )
        ]
    )
    width = (
        ()
        if setting.cutter is None or shift
        else (
            Row(
                head="Check with",
                text=said("groove {} wide on the test piece", say.set_to(setting.width)),
            ),
        )
    )
    further = (
        ()
        if number <= 2
        else (
            Row(
                head="Passes",
                text=said(
                    "then {}", listed([say.set_to(value) for value in setting.fence[2:]], " and ")
                ),
            ),
        )
    )
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            *cutter,
            *passes,
            *shift,
            Key(
                letter=_depth_letter(setting),
                number=say.set_to(setting.depth),
                name=deep(say, setting),
            ),
        ),
        rows=(
            pieces_row(say, setting),
            *((faces_row(setting),) if setting.by != "bench" else ()),
            *_between(lines),
            *further,
            *_pass_order(setting, lines),
            *_hold(setting),
            *width,
        ),
        # The first caution of a stopped cut is on the sheets of its blocks.
        warning=setting.cautions[1 if lines else 0],
        picture=lambda draft, box: _groove_picture(draft, job, box, setting),
        seen="Along the feed, the foot shown up"
        if setting.by == "bench"
        else "Along the feed, back down"
        if _broad(job, setting)
        else "Along the feed, cut edge down",
    )


def _between(lines: Sequence[StopLine]) -> tuple[Row, ...]:
    """Which pieces stop short; all others run from end to end."""
    if not lines:
        return ()
    marks = ", ".join(dict.fromkeys(mark for line in lines for mark in line.marks))
    return (Row(head="Along", text=f"{marks} between stop blocks, next sheets; others end to end"),)


def _pass_order(setting: Setting, lines: Sequence[StopLine]) -> tuple[Row, ...]:
    """Depth before width: a fence that is moved back and forth never comes back alike."""
    if len(setting.fence) < 2:
        return ()
    hands = {block.hand for line in lines for block in line.blocks}
    sheets = ", by both sheets of blocks" if len(hands) > 1 else ""
    return (Row(head="Order", text=f"pass 1 to full depth in all{sheets}; then pass 2 alike"),)


def _hold(setting: Setting) -> tuple[Row, ...]:
    """A glued leaf does not stand on its head under a router: the router comes to its foot."""
    if setting.by != "bench":
        return ()
    return (
        Row(
            head="Hold",
            text="leaf flat, face up, its foot just over the bench's end; under the back a block "
            "flush with the foot carries the base; one at the exit",
        ),
    )


def _depth_letter(setting: Setting) -> str:
    """After the letters of one pass, or of two."""
    return "d" if len(setting.fence) > 1 else "c"


def _tool(setting: Setting) -> str:
    return "cutter" if setting.by != "saw" else "dado set"


def _broad(job: Subject, setting: Setting) -> bool:
    """Whether it is run in a broad face, that face down and an edge to the fence."""
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    return isinstance(cut, Groove) and "face" in cut.face


def _groove_picture(draft: Draft, job: Subject, box: Box, setting: Setting) -> None:
    """Cut edge down on a table; up, under a hand router, on the foot of a glued leaf."""
    assert setting.depth is not None
    assert setting.width is not None
    part, _ = part_of(job, setting)
    broad = _broad(job, setting)
    thick = float(part.blank.width if broad else part.blank.thickness)
    wide, depth = float(setting.width), float(setting.depth)
    cutter = float(setting.cutter if setting.cutter is not None else setting.width)
    first, last = float(setting.fence[0]), float(setting.fence[-1])
    middle = (first + last) / 2
    up = setting.by == "bench"
    sign = -1.0 if up else 1.0
    tall, fence, deep_down = depth + _SPARE, 20.0, 11.0
    if broad:
        tall = float(part.blank.thickness)

    # Along the feed the fence stands to the right of the piece.
    def m(*points: Point) -> list[Point]:
        return [(-x, sign * y) for x, y in points]

    low, high = sorted((-deep_down * sign, tall * sign))
    inner = Box(
        box.x0 + (22.0 if broad else 0.0),
        box.y0 + (2.0 if up else 25.0 if len(setting.fence) > 1 else 15.0),
        box.x1,
        box.y1 - (25.0 if up else 2.0),
    )
    extent = Box(-thick - 14.0, low, fence, high)
    own = sketch(draft, inner, extent)
    a, b = middle - wide / 2, middle + wide / 2
    # A rebate takes one of the piece's own corners away.
    near: list[Point] = [(0.0, 0.0), (a, 0.0)] if a > _CORNER else []
    far: list[Point] = [(b, 0.0), (thick, 0.0)] if b < thick - _CORNER else []
    a, b = (a if near else 0.0), (b if far else thick)
    piece: list[Point] = [(0.0, tall), *near, (a, depth), (b, depth), *far, (thick, tall)]
    own.wood(m(*piece), broken=True)
    own.line("cut_heavy", *m(*piece))
    if broad:
        own.line("cut_heavy", *m((0.0, tall), (thick, tall)))
    else:
        own.torn(*m((0.0, tall), (thick, tall)))
    own.fence(
        m(
            (-fence, tall * 0.9),
            (0.0, tall * 0.9),
            (0.0, 0.0 if not up else -5.0),
            (-fence, 0.0 if not up else -5.0),
        )
    )
    for index, place in enumerate(dict.fromkeys((last, first))):
        outline = m(
            (place - cutter / 2, -deep_down),
            (place + cutter / 2, -deep_down),
            (place + cutter / 2, depth),
            (place - cutter / 2, depth),
        )
        if index or len(setting.fence) == 1:
            own.blade(outline)
        else:
            own.outline(outline, "hidden")
    if not up:
        edges = (first - cutter / 2, last + cutter / 2)
        own.line("cut_heavy", *m((-fence, 0.0), (edges[0], 0.0)))
        own.line("cut_heavy", *m((edges[1], 0.0), (thick + 12.0, 0.0)))
    # The outer size first: beside a groove near the edge the inner one finds its letter a place.
    if len(setting.fence) > 1:
        second = float(setting.fence[1])
        own.span(m((0.0, -deep_down), (second, -deep_down)), "c", out=(0.0, -sign * 16.0))
    own.span(m((0.0, -deep_down), (first, -deep_down)), "b", out=(0.0, -sign * 5.0), feet=True)
    own.span(m((thick, 0.0), (thick, depth)), _depth_letter(setting), out=(-8.0, 0.0))
    own.span(
        m((first - cutter / 2, depth), (first + cutter / 2, depth)), "a", out=(0.0, sign * 5.0)
    )
    x = own.at(m((0.0, 0.0))[0])[0]
    if broad:
        cx, cy = own.at(m((thick / 2, tall))[0])
        own.face([(cx + over, cy - 4.6) for over in (0.0, 14.0, -14.0)])
    else:
        own.face(
            [
                (x - over, own.at(m((0.0, (depth + tall) / 2))[0])[1] + up_by)
                for over in (4.4, 7.0)
                for up_by in (0.0, 4.0, -4.0, 8.0, -8.0)
            ],
            turned=90,
        )
    left = own.at(m((thick, 0.0))[0])[0]
    own.feed_away(
        [
            (left + over, own.at(m((0.0, 0.0))[0])[1] - sign * (8.0 + drop))
            for drop in (0.0, 6.0, 12.0)
            for over in (-18.0, -26.0, -10.0, -34.0, -42.0)
        ]
    )


# --- stop blocks ---------------------------------------------------------------------------


def blocks_sheet(
    job: Subject, say: Numbers, setting: Setting, line: StopLine, block: Blocks
) -> SetUp:
    """Where the blocks are clamped for a stopped groove, for one hand of its pieces."""
    return SetUp(
        title=f"Stop blocks: {line.cut} in {', '.join(line.marks)}, {block.end} at the {block.hand}",
        under=f"{', '.join(line.faces)} down on the table, face to the fence · "
        f"sizes in {job.rules.unit_words}",
        keys=(
            Key(
                letter="a",
                number=say.wood(block.left_block),
                name=f"left block, from the {_tool(setting)}'s middle",
            ),
            Key(
                letter="b",
                number=say.wood(block.right_block),
                name=f"right block, from the {_tool(setting)}'s middle",
            ),
        ),
        rows=(
            Row(
                head="Run",
                text=f"{', '.join(_coded(job, block))}; the test piece first",
            ),
            Row(
                head="Order",
                text="drop in against the right block, feed to the left; stop the router by foot "
                "or helper, lift off when it stands",
            ),
            Row(
                head="Fence",
                text=said("{} between the blocks, its ends supported", say.wood(block.between)),
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _blocks_picture(draft, job, box, block),
        seen="As you stand at the fence, the back to you; dashed: where it ends, and the groove",
        wide=True,
    )


def _coded(job: Subject, block: Blocks) -> Iterator[str]:
    """`leaf A left stile (S1)`."""
    marks = {part.name: part.mark for part in job.assembly.parts}
    return (f"{name.replace(' / ', ' ')} ({marks[name]})" for name in block.names)


def _blocks_picture(draft: Draft, job: Subject, box: Box, block: Blocks) -> None:
    """Lengths to scale, heights on paper: the fence behind, the table in front."""
    part = next(p for p in job.assembly.parts if p.name == block.names[0])
    long, high = float(part.blank.length), float(part.blank.width)
    right, left = float(block.right_block), float(block.left_block)
    inner = Box(box.x0 + 9.0, box.y0, box.x1 - 9.0, box.y1)
    own = sketch(draft, inner, Box(-left, 0.0, right, high))
    scale, zero = own.view.scale, own.view.origin[0]
    tall = min(16.0, max(high / scale, 11.0))
    base = box.y0 + 20.0
    top = base + tall

    def x(value: float) -> float:
        return zero + value / scale

    def fill(x0: float, y0: float, x1: float, y1: float) -> None:
        draft.add(Fill(layer="cut_heavy", points=Box(x0, y0, x1, y1).polygon, view=own.view.name))

    fill(x(-left) - 7.0, top + 1.2, x(right) + 7.0, top + 5.0)
    fill(x(-left) - 6.0, base, x(-left), top)
    fill(x(right), base, x(right) + 6.0, top)
    own.outline_paper(Box(x(right - long), base, x(right), top).polygon, "cut_heavy")
    own.outline_paper(Box(x(-left), base - 0.0, x(long - left), top - 1.6).polygon, "hidden")
    own.outline_paper(Box(x(0.0), base, x(right + left - long), base + 3.0).polygon, "hidden")
    draft.line("cut_heavy", (x(-left) - 7.0, base), (x(right) + 7.0, base))
    draft.add(
        Fill(
            layer="cut",
            points=((x(0.0), base - 0.3), (x(0.0) - 2.4, base - 5.0), (x(0.0) + 2.4, base - 5.0)),
            view=own.view.name,
        )
    )
    y = base - 9.0
    draft.line("dims", (x(0.0), base - 5.0), (x(0.0), y - 1.6))
    for value, name in ((-left, "a"), (right, "b")):
        draft.line("dims", (x(value), base), (x(value), y - 1.6))
        a, b = (x(0.0), y), (x(value), y)
        own.arrow(a, b)
        own.arrow(b, a)
        middle = (a[0] + b[0]) / 2
        own.letter(name, [(middle + over, y - 5.6) for over in (0.0, 12.0, -12.0)])
    feed = top + 11.0
    own.feed((x(0.0) + 16.0, feed), (x(0.0) - 16.0, feed))
    end = x(right) - 12.0 if block.hand == "right" else x(right - long) + 12.0
    sign = -1.0 if block.hand == "right" else 1.0
    middle = (base + top) / 2
    own.word(
        block.end,
        [(end + sign * over, middle + up) for over in (0.0, 5.0, 10.0, 20.0) for up in (0.0, 1.5)]
        + [(end + sign * over, feed) for over in (0.0, 10.0, -10.0)],
    )
