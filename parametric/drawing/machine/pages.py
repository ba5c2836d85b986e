"""One page for each set-up of the machine, and what is left for saw and bench.

+---------------------------------------------------------------+
| CNC 3  S1 stile with pull, inner edge up                       |
|        S1-stile-with-pull-inner-edge.dxf, run twice            |
+---------------------------------------------------------------+
|   the whole piece from above, with its datum                  |
+---------------------------+-----------------------------------+
|   the first cut, large    |  lies, pieces, tools, cautions    |
+---------------------------+-----------------------------------+
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.machine.first_cut import draw_first_cut, first_cut_window
from parametric.drawing.machine.views import draw_whole, legible, scales_that_fit
from parametric.drawing.machine.work import ByHand, MachineSetUp, MachineTool, MachineWork
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Block, Points, block_height, draw_block, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.figures import plain
from parametric.trade.cautions import LOCAL, SAW
from parametric.trade.printed import several

_LONG = 3.2
"""A piece so many times as long as it is wide lies across the whole page."""
_TRIES = 3
"""A picture is drawn so many scales smaller at most, to leave room for all words."""
_AIR = 5.0
_BETWEEN = 4.0
_WORDS = 0.35
"""The share of a page that words take beside a piece that stands high."""
_TOOLS = 0.6
"""The share of the words that the list of tools takes, and what stands under it."""
_FIRST = 0.42
"""The share that the first cut takes under a long piece."""
_PROVE = (
    "Prove the program in the air first; then cut one piece and check it by the sizes here "
    "before the rest.",
    "Hold-down, extraction, eyes and ears before the spindle starts; hands off the bed while it "
    "runs.",
)


def draw_machine_pages(job: Subject, work: MachineWork, title: TitleBlock) -> tuple[Sheet, ...]:
    """A page a set-up, in the order of their files, then the work that no file makes."""
    return (
        *(_page(job, set_up, title) for set_up in work.set_ups),
        *_by_hand(job, work, title),
    )


def _page(job: Subject, set_up: MachineSetUp, title: TitleBlock) -> Sheet:
    own = dataclasses.replace(
        title,
        document=f"{set_up.title}: {set_up.lies.up} up",
        second_line=f"{set_up.file}, run on {several(len(set_up.names), 'piece')}",
    )
    first: Draft | None = None
    for smaller in range(_TRIES):
        draft = Draft(bench_paper(job, lying=True))
        body = draw_page(draft, own, number=f"CNC {set_up.number}")
        if float(set_up.length) > _LONG * float(set_up.width):
            _across(draft, job, set_up, body, smaller)
        else:
            _beside(draft, job, set_up, body, smaller)
        if not draft.unplaced:
            return draft.sheet(own)
        first = first or draft
    assert first is not None
    return first.sheet(own)


def _across(draft: Draft, job: Subject, set_up: MachineSetUp, body: Box, smaller: int) -> None:
    """A long piece over the whole page, the first cut and the words under it."""
    scale = _scale(draft, job, set_up, body, smaller)
    if scale is None:
        return
    taken = draw_whole(draft, job, set_up, body, scale)
    under = Box(body.x0, body.y0, body.x1, taken.y0 - _AIR)
    left = under.x0
    below: tuple[Box, ...] = ()
    if not legible(set_up, scale):
        left = under.x0 + under.width * _FIRST
        room = Box(under.x0, under.y0, left - _AIR, under.y1)
        low = _first(draft, job, set_up, room)
        below = (Box(room.x0, room.y0, room.x1, low - _AIR),)
    middle = left + (under.x1 - left) * _TOOLS
    halves = (
        Box(left, under.y0, middle - _AIR / 2, under.y1),
        Box(middle + _AIR / 2, under.y0, under.x1, under.y1),
    )
    _words(draft, job, set_up, (*halves, *below))


def _scale(
    draft: Draft, job: Subject, set_up: MachineSetUp, room: Box, smaller: int
) -> float | None:
    """The largest scale that fits, or so many steps below it; None, and said, where there is none."""
    scales = scales_that_fit(set_up, job, room)
    if smaller < len(scales):
        return scales[smaller]
    draft.unplaced.append("the picture of the set-up")
    return None


def _beside(draft: Draft, job: Subject, set_up: MachineSetUp, body: Box, smaller: int) -> None:
    """A piece that is as high as it is long at the left, the first cut beside it, then the words."""
    edge = body.x1 - body.width * _WORDS
    room = Box(body.x0, body.y0, edge - _AIR, body.y1)
    scale = _scale(draft, job, set_up, room, smaller)
    if scale is None:
        return
    taken = draw_whole(draft, job, set_up, room, scale)
    below: tuple[Box, ...] = ()
    if not legible(set_up, scale):
        right = Box(taken.x1 + _AIR, room.y0, room.x1, room.y1)
        under = Box(room.x0, room.y0, room.x1, taken.y0 - _AIR)
        own = under if first_cut_window(set_up, job, right) is None else right
        low = _first(draft, job, set_up, own)
        below = (Box(own.x0, own.y0, own.x1, low - _AIR),)
    _words(draft, job, set_up, (Box(edge, body.y0, body.x1, body.y1), *below))


def _first(draft: Draft, job: Subject, set_up: MachineSetUp, room: Box) -> float:
    """The first cut, large; returns how far down it reaches."""
    shown = first_cut_window(set_up, job, room)
    if shown is None:
        draft.unplaced.append("the first cut, large")
        return room.y1
    return draw_first_cut(draft, job, set_up, room, shown)


def _words(draft: Draft, job: Subject, set_up: MachineSetUp, columns: Sequence[Box]) -> None:
    """Tools first, then how it lies and what it is run on; the columns are filled in turn."""
    waiting: list[Block] = [
        _tools(job, set_up.tools),
        _lies(job, set_up),
        _pieces(set_up),
        *_clamps(job, set_up),
        Points(title="", mark="warning", texts=(*_upright(job, set_up), *_PROVE)),
    ]
    left: list[Box] = []
    for box in columns:
        y = box.y1
        while waiting and block_height(waiting[0], box.width) <= y - box.y0 + 1e-9:
            y = draw_block(draft, waiting.pop(0), Box(box.x0, box.y0, box.x1, y)) - _BETWEEN
        left.append(Box(box.x0, box.y0, box.x1, y))
    for block in waiting:
        # what follows no column may still stand under one that another block ended
        own = next((b for b in left if block_height(block, b.width) <= b.y1 - b.y0 + 1e-9), None)
        if own is None:
            draft.unplaced.append(type(block).__name__)
            continue
        y = draw_block(draft, block, own) - _BETWEEN
        left[left.index(own)] = Box(own.x0, own.y0, own.x1, y)


def _tools(job: Subject, tools: Sequence[MachineTool]) -> Ruled:
    rows = []
    for tool in tools:
        wide = f"{int(tool.across)} passes side by side" if tool.across > 1 else ""
        notes = [note for note in (_in_inches(job, tool), wide, tool.note) if note]
        rows.append(
            Row(
                cells=(
                    _in_ranges(tool.cuts),
                    tool.layer,
                    _of_file(tool.cutter),
                    _of_file(tool.depth),
                    str(int(tool.passes)),
                    _of_file(tool.corner) if tool.corner > 0 else "",
                ),
                under=tuple(f"{note[:1].upper()}{note[1:]}." for note in notes),
                ticked=False,
            )
        )
    return Ruled(
        title="Tools",
        columns=(
            Heading(text="cuts"),
            Heading(text="layer", grows=True),
            Heading(text="cutter", anchor="right"),
            Heading(text="deep", anchor="right"),
            Heading(text="passes", anchor="right"),
            Heading(text="corner r", anchor="right"),
        ),
        rows=tuple(rows),
        foot=("Cutter, depth and corner in mm as the file has them.",),
        height=TEXT,
    )


def _in_ranges(numbers: Sequence[int]) -> str:
    """`1, 3 to 6, 9`: three or more that follow each other from and to."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(
        f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs
    )


def _of_file(value: float) -> str:
    """A size as the file says it, in mm."""
    return plain(round(float(value), 3))


def _in_inches(job: Subject, tool: MachineTool) -> str:
    """The same sizes on the rule of a shop that works in inches."""
    if job.rules.unit == "mm":
        return ""
    corner = f", corner r {job.fine(tool.corner)}" if tool.corner > 0 else ""
    return f"in inches: cutter {job.fine(tool.cutter)}, {job.fine(tool.depth)} deep{corner}"


def _lies(job: Subject, set_up: MachineSetUp) -> Points:
    lies, of_wood = set_up.lies, job.rules.fine.text
    return Points(
        title="How it lies",
        mark="none",
        texts=(
            f"Up: {lies.up}. Down: {lies.down}.",
            f"Left, x = 0: {lies.left}. Right: {lies.right}.",
            f"Towards you, y = 0: {lies.near}. Away: {lies.away}.",
            f"Stock {of_wood(set_up.length)} × {of_wood(set_up.width)}, "
            f"{of_wood(set_up.thickness)} thick. Zero z on the upper face.",
        ),
    )


def _pieces(set_up: MachineSetUp) -> Points:
    turned = {
        name: said for said in set_up.turned for name in set_up.names if said.startswith(name)
    }
    return Points(
        title="Run on",
        mark="box",
        texts=tuple(turned.get(name, name) for name in set_up.names),
    )


def _clamps(job: Subject, set_up: MachineSetUp) -> tuple[Points, ...]:
    """Where a clamp may stand: clear of each cutter by its own diameter."""
    if set_up.leaf:
        widest = max(tool.cutter for tool in set_up.tools)
        text = (
            f"Anywhere but over the cuts and {job.fine(widest)} round them: as far as the cutter "
            "is wide."
        )
    elif _stands(set_up):
        text = "On its sides, below the cutter: none on the end that is cut."
    elif set_up.clear:
        spans = ", ".join(f"{job.fine(low)} to {job.fine(high)}" for low, high in set_up.clear)
        text = f"Along x at {spans}: a cutter's diameter clear of every cut."
    else:
        text = "From the sides only: the cutter comes everywhere along x."
    return (Points(title="Clamps", mark="none", texts=(text,)),)


def _stands(set_up: MachineSetUp) -> bool:
    """Whether it is higher than it is long and wide."""
    return max(float(set_up.length), float(set_up.width)) < float(set_up.thickness)


def _upright(job: Subject, set_up: MachineSetUp) -> tuple[str, ...]:
    """A rail on its end is higher than most machines take."""
    if not _stands(set_up):
        return ()
    return (
        f"It stands {job.fine(set_up.thickness)} high: for a machine that takes a piece upright at "
        "its end. On any other, cut these by the bench sheets.",
    )


def _by_hand(job: Subject, work: MachineWork, title: TitleBlock) -> tuple[Sheet, ...]:
    own = dataclasses.replace(
        title,
        document="Saw and bench work",
        second_line="What no machine file makes, part by part in the order it is made.",
    )
    table = Ruled(
        title="",
        columns=(
            Heading(text="mark"),
            Heading(text="part"),
            Heading(text="off", anchor="right"),
            Heading(text="cut, from the low left corner of the blank's face", grows=True),
            Heading(text="by"),
            Heading(text="when"),
            Heading(text="with"),
        ),
        rows=tuple(
            Row(cells=(c.mark, c.part, str(c.count), _said(c), c.by, c.when, c.tool))
            for c in work.by_hand
        ),
        ticks=("",),
        height=TEXT,
    )
    cautions = Points(title="", mark="warning", texts=(f"{SAW[1]} {LOCAL}",))
    return run_on(bench_paper(job, lying=True), own, [table, cautions])


def _said(cut: ByHand) -> str:
    """What is cut; its name only where its own words do not begin with it."""
    same = cut.what.split()[0].casefold() == cut.cut.split()[0].casefold()
    words = cut.what if same else f"{cut.cut}: {cut.what}"
    return f"{words[:1].upper()}{words[1:]}"
