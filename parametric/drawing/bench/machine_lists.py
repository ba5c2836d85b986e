"""The milling list, the stop-block list and the order of work: each names a set-up by its number."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping

from parametric.drawing.bench.flow import Band, Block, Column, Line, flow
from parametric.drawing.bench.saying import Numbers, Said, listed, numbers, said
from parametric.drawing.bench.words import MACHINE
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.trade.bench_order import shop_order
from parametric.trade.milling import Setting
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import several
from parametric.trade.router_setups import stops_of
from parametric.trade.stop_blocks import LengthStop, Span, StopLine

Sheets = Mapping[str, str]
"""On which sheet each set-up and each list is, by its number or name."""


def order_sheets(
    job: Subject, title: TitleBlock, paper: Paperwork, sheets: Sheets
) -> tuple[Sheet, ...]:
    """B1: what is done in which order, at which set-up, to which pieces."""
    title = dataclasses.replace(
        title,
        document="Order of work in the shop",
        second_line="tick each step; the number of a set-up is the same on every page",
    )
    steps = shop_order(paper, job.assembly)
    every = steps[0].marks
    lines = tuple(
        Line(
            cells=(
                str(number),
                step.work,
                step.code,
                "all" if step.marks == every else in_ranges(step.marks),
                sheets.get(step.page, ""),
            )
        )
        for number, step in enumerate(steps, 1)
    )
    block = Block(
        title="",
        columns=(
            Column(head="", anchor="right"),
            Column(head="Work", gives=True),
            Column(head="Set-up", weight="bold"),
            Column(head="Pieces"),
            Column(head="Sheet", anchor="right"),
        ),
        lines=lines,
        foot=(
            "A test piece goes through every setting first. Face to the fence or the table, "
            "unless a set-up says otherwise.",
            *_carrying(paper),
            "Cautions for each set-up: "
            + (f"sheet {sheets['cautions']}." if "cautions" in sheets else "on its own sheet."),
        ),
    )
    return flow(job, title, [block])


def in_ranges(marks: tuple[str, ...]) -> str:
    """`S1, S2, R1 to R4`: three or more that follow each other are said as from and to.

    Example:
        >>> in_ranges(("S1", "S2", "R1", "R2", "R3", "R4", "leaf A"))
        'S1, S2, R1 to R4, leaf A'
    """
    runs: list[list[str]] = []
    for mark in marks:
        if runs and mark == _next(runs[-1][-1]):
            runs[-1].append(mark)
        else:
            runs.append([mark])
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def _next(mark: str) -> str:
    letter, number = mark[:1], mark[1:]
    return f"{letter}{int(number) + 1}" if number.isdigit() else ""


def _carrying(paper: Paperwork) -> tuple[str, ...]:
    """A glued leaf is turned and carried by as many people as it takes in."""
    leaves = {one.leaf for one in paper.leaf_glue_ups}
    people = max((int(p.people) for p in paper.delivery.items if p.what in leaves), default=1)
    if people < 2:
        return ()
    return (f"Once glued, {people} people turn and carry a leaf; coated, it lies on blankets.",)


# --- the milling list ----------------------------------------------------------------------


def milling_sheets(
    job: Subject, title: TitleBlock, paper: Paperwork, sheets: Sheets
) -> tuple[Sheet, ...]:
    """Every setting with what runs at it; no setting is made twice."""
    title = dataclasses.replace(
        title,
        document="Milling list",
        second_line="grouped by machine setting, in the order they are made; the numbers to set "
        "are on the set-up sheets",
    )
    lines: list[Line | Band] = []
    for setting in paper.milling:
        lines.append(_band(setting, sheets))
        lines += [
            Line(
                cells=(
                    run.mark or run.noun,
                    run.noun if run.mark else "glued up",
                    run.face,
                    str(run.pieces),
                    str(run.cuts),
                )
            )
            for run in setting.runs
        ]
    block = Block(
        title="",
        columns=(
            Column(head="Pieces", weight="bold"),
            Column(head="Part"),
            Column(head="Into", gives=True),
            Column(head="No.", anchor="right"),
            Column(head="Cuts", anchor="right"),
        ),
        lines=tuple(lines),
    )
    return flow(job, title, [block])


def _band(setting: Setting, sheets: Sheets) -> Band:
    spare = int(setting.spares if setting.trial is None else setting.trial.number)
    piece = "waste strip" if setting.kind == "trim" else "test piece"
    words = [
        f"{MACHINE[setting.by].lower()}: {setting.tool}",
        f"{several(spare, piece)} first" if spare else "no test piece",
        *([f"set-up sheet {sheets[setting.code]}"] if setting.code in sheets else []),
    ]
    return Band(text=f"{setting.code}  {setting.title}", under=listed(words, "; "))


# --- the stop-block list -------------------------------------------------------------------


def stop_sheets(job: Subject, title: TitleBlock, paper: Paperwork) -> tuple[Sheet, ...]:
    """Lengths at the crosscut saw; then where every cut lies, piece by piece."""
    say = numbers(job)
    title = dataclasses.replace(
        title,
        document="Stop-block list",
        second_line=f"from each end that one can measure from; sizes in {job.rules.unit_words}",
    )
    square = [stop for stop in paper.lengths if not stop.over_points]
    return flow(job, title, [_lengths(say, square), *_places(say, paper)], lying=True)


def _lengths(say: Numbers, stops: list[LengthStop]) -> Block:
    return Block(
        title="Crosscut saw: one stop for every length, the longest first",
        columns=(
            Column(head="Stop at", anchor="right", weight="bold"),
            Column(head="No.", anchor="right"),
            Column(head="Pieces, an offcut first", gives=True),
        ),
        lines=tuple(
            Line(
                cells=(
                    say.wood(stop.length, down=_panel(stop)),
                    say.count(stop.number),
                    ", ".join(f"{mark} × {number} {noun}" for mark, noun, number in stop.pieces),
                )
            )
            for stop in stops
        ),
    )


def _panel(stop: LengthStop) -> bool:
    return any(noun in PANEL_NOUNS for _, noun, _ in stop.pieces)


def _places(say: Numbers, paper: Paperwork) -> list[Block]:
    """A table for every kind of piece, its rows from the foot up."""
    codes = {
        cut: setting.code
        for setting in paper.milling
        for line in stops_of(setting, paper.stops)
        if setting.kind != "squaring"
        for cut in line.covers
    }
    later = {s.code for s in paper.milling if s.when != "before glue-up"}
    groups: dict[tuple[tuple[str, ...], str, bool], list[tuple[str, StopLine]]] = {}
    for line in paper.stops:
        code = codes.get(line.covers[0], "")
        kind = (line.low_word, line.high_word)
        groups.setdefault((kind, line.datum, code in later), []).append((code, line))
    return [
        _trimmed(say, own) if glued else _early(say, kind, datum, own)
        for (kind, datum, glued), own in groups.items()
    ]


def _early(
    say: Numbers, kind: tuple[str, ...], datum: str, own: list[tuple[str, StopLine]]
) -> Block:
    low, high = kind
    return Block(
        title=f"Along the blank, from {low} and from {high}"
        if low in ("foot", "left end")
        else f"On the ends, from {low} and from {high}",
        columns=(
            Column(head="Set-up", weight="bold"),
            Column(head="Piece", weight="bold"),
            Column(head="Cut", gives=True),
            Column(head="Into", gives=True),
            Column(head="No.", anchor="right"),
            Column(head=f"From {low}", anchor="right"),
            Column(head="Middle", anchor="right"),
            Column(head=f"From {high}", anchor="right"),
            Column(head=_datum(datum), anchor="right"),
        ),
        lines=tuple(
            Line(
                cells=(
                    code,
                    ", ".join(line.marks),
                    line.cut,
                    " and ".join(line.faces),
                    str(line.number),
                    _span(say, line.from_low),
                    say.wood(line.centre),
                    _span(say, line.from_high),
                    _span(say, line.from_datum),
                )
            )
            for code, line in own
        ),
    )


def _datum(datum: str) -> str:
    return "In the leaf" if datum == "finished foot of the leaf" else f"From {datum}"


def _trimmed(say: Numbers, own: list[tuple[str, StopLine]]) -> Block:
    """What is cut in the glued leaf: its ends are trimmed, so only its own zero counts."""
    return Block(
        title="On the glued leaf, after trim",
        columns=(
            Column(head="Set-up", weight="bold"),
            Column(head="Piece", weight="bold"),
            Column(head="Cut", gives=True),
            Column(head="Into", gives=True),
            Column(head="No.", anchor="right"),
            Column(head="From the finished foot", anchor="right"),
        ),
        lines=tuple(
            Line(
                cells=(
                    code,
                    ", ".join(line.marks),
                    line.cut,
                    " and ".join(line.faces),
                    str(line.number),
                    _fine_span(say, line.from_datum),
                )
            )
            for code, line in own
        ),
    )


def _span(say: Numbers, span: Span) -> Said:
    return said("{} – {}", say.wood(span.low), say.wood(span.high))


def _fine_span(say: Numbers, span: Span) -> Said:
    """A pocket is cut finer than wood is sawn."""
    return said("{} – {}", say.fine(span.low), say.fine(span.high))
