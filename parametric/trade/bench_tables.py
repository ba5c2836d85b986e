"""The bench's lists as rows for a program: order of work, milling, stops, cut list by door.

The numbers are those of the printed sheets, one row to a line that is ticked there.
"""

from __future__ import annotations

from collections import Counter

from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.model import Assembly
from parametric.trade.bench_order import shop_order
from parametric.trade.cutlist import cut_list, of_timber
from parametric.trade.milling import Run, Setting
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed
from parametric.trade.router_setups import stops_of
from parametric.trade.tables import Table


def order_table(paper: Paperwork, assembly: Assembly) -> Table:
    """What is done in which order, at which set-up, to which pieces."""
    return Table(
        header=("step", "work", "set-up", "pieces"),
        rows=tuple(
            (str(number), step.work, step.code, " ".join(step.marks))
            for number, step in enumerate(shop_order(paper, assembly), 1)
        ),
    )


def milling_table(paper: Paperwork, said: Printed) -> Table:
    """Every setting with its numbers, a row for each mark that runs at it."""
    return Table(
        header=(
            "set-up",
            "work",
            "machine",
            "when",
            "tool",
            "cutter",
            "from",
            "fence to middle",
            "depth",
            "steps",
            "mark",
            "part",
            "into",
            "pieces",
            "cuts",
            "test pieces",
        ),
        rows=tuple(
            _milling(setting, run, said) for setting in paper.milling for run in setting.runs
        ),
    )


def _milling(setting: Setting, run: Run, said: Printed) -> tuple[str, ...]:
    def size(value: float | None) -> str:
        return "" if value is None else said.setting(value)

    return (
        setting.code,
        setting.title,
        setting.by,
        setting.when,
        setting.tool,
        size(setting.cutter),
        setting.fence_from,
        " then ".join(said.setting(value) for value in setting.fence),
        size(setting.depth),
        "" if setting.depth_passes is None else str(int(setting.depth_passes)),
        run.mark,
        run.noun,
        run.face,
        str(run.pieces),
        str(run.cuts),
        str(int(setting.spares)),
    )


def stop_table(paper: Paperwork, said: Printed) -> Table:
    """Where every cut lies along its piece, from either end of the blank and in the leaf."""
    codes = {
        cut: setting.code
        for setting in paper.milling
        if setting.kind != "squaring"
        for line in stops_of(setting, paper.stops)
        for cut in line.covers
    }
    return Table(
        header=(
            "set-up",
            "marks",
            "cut",
            "into",
            "number",
            "low end",
            "from it",
            "to",
            "middle",
            "high end",
            "from it",
            "to",
            "datum",
            "from it",
            "to",
        ),
        rows=tuple(
            (
                codes.get(line.covers[0], ""),
                " ".join(line.marks),
                line.cut,
                " and ".join(line.faces),
                str(line.number),
                line.low_word,
                said.fine(line.from_low.low),
                said.fine(line.from_low.high),
                said.fine(line.centre),
                line.high_word,
                said.fine(line.from_high.low),
                said.fine(line.from_high.high),
                line.datum,
                said.fine(line.from_datum.low),
                said.fine(line.from_datum.high),
            )
            for line in paper.stops
        ),
    )


def block_table(paper: Paperwork, said: Printed) -> Table:
    """The stop blocks of every stopped groove, for either hand."""
    return Table(
        header=("marks", "cut", "end", "at the", "left block", "right block", "pieces"),
        rows=tuple(
            (
                " ".join(line.marks),
                line.cut,
                block.end,
                block.hand,
                said.wood(block.left_block),
                said.wood(block.right_block),
                "; ".join(block.names),
            )
            for line in paper.stops
            for block in line.blocks
        ),
    )


def length_table(paper: Paperwork, said: Printed) -> Table:
    """Every stop of the crosscut saw, and what is cut to it."""
    return Table(
        header=("length", "over the points", "pieces", "test pieces", "marks"),
        rows=tuple(
            (
                said.wood(stop.length, down=any(noun in PANEL_NOUNS for _, noun, _ in stop.pieces)),
                "yes" if stop.over_points else "no",
                str(int(stop.number)),
                str(stop.spares),
                " ".join(mark for mark, _, _ in stop.pieces),
            )
            for stop in paper.lengths
        ),
    )


def by_door_table(assembly: Assembly, said: Printed) -> Table:
    """What of the cut list goes into each leaf."""
    rows = {row.mark: row for row in of_timber(cut_list(assembly))}
    found = []
    for group in assembly.groups:
        number = Counter(p.mark for p in group.parts if p.mark in rows and not p.supplied)
        for mark, count in number.items():
            row = rows[mark]
            down = row.noun in PANEL_NOUNS
            found.append(
                (
                    group.name,
                    mark,
                    row.noun,
                    str(count),
                    *(
                        said.wood(size, down=down)
                        for size in (row.length, row.width, row.thickness)
                    ),
                    row.material,
                )
            )
    return Table(
        header=("door", "mark", "part", "no.", "length", "width", "thick", "timber"),
        rows=tuple(found),
    )
