"""The cut list by section and by door, and the rough sizes that it is sawn from."""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Mapping

from parametric.drawing.bench.flow import Band, Block, Column, Line, flow
from parametric.drawing.bench.saying import Numbers, numbers
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.names import short
from parametric.trade.cutlist import CutRow, cut_list, of_timber
from parametric.trade.milling import TrialPiece, trial_stock
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import several

_SIZES = (
    Column(head="Length", anchor="right"),
    Column(head="Width", anchor="right"),
    Column(head="Thick", anchor="right"),
)


ROUGH = "Rough blanks"
"""The title of the table of rough sizes."""


def cut_list_sheets(
    job: Subject, title: TitleBlock, paper: Paperwork | None
) -> tuple[tuple[str, tuple[Sheet, ...]], ...]:
    """The pages by what they are for: by section with the rough sizes, and by door."""
    say = numbers(job)
    unit = job.rules.unit_words
    by_section = _titled(
        title,
        "Cut list by section",
        f"length along the grain × width × thickness, before trim; sizes in {unit}",
    )
    by_door = _titled(
        title,
        "Cut list by door" if job.resolved.casework is None else "Cut list by cabinet and front",
        f"length along the grain × width × thickness, before trim; sizes in {unit}",
    )
    rough = [] if paper is None else _rough(say, paper)
    return (
        ("cut list", flow(job, by_section, [*_by_section(job, say, _glued(say, paper)), *rough])),
        ("by door", flow(job, by_door, _by_door(job, say))),
    )


def _titled(title: TitleBlock, document: str, second_line: str) -> TitleBlock:
    return dataclasses.replace(title, document=document, second_line=second_line)


def _sizes(say: Numbers, row: CutRow) -> tuple[str, str, str]:
    down = row.noun in PANEL_NOUNS
    return (
        say.wood(row.length, down=down),
        say.wood(row.width, down=down),
        say.wood(row.thickness, down=down),
    )


# --- by section ----------------------------------------------------------------------------


def _section_order(row: CutRow) -> tuple[float, float, float, str]:
    """By thickness, then width, then length, the large ones first."""
    return (-float(row.thickness), -float(row.width), -float(row.length), row.mark)


def _glued(say: Numbers, paper: Paperwork | None) -> dict[str, str]:
    """What is said of panels that are not sawn from one board of timber, by mark."""
    glue_ups = () if paper is None else paper.panel_glue_ups
    sawn = {
        row.mark: f"{row.note}{'; ' if row.note else ''}from {several(int(lot.sheets), 'sheet')} {say.say.wood(lot.sheet_length)} × "
        f"{say.say.wood(lot.sheet_width)}"
        for lot in (() if paper is None else paper.boards)
        for row in lot.pieces
    }
    return sawn | {
        one.mark: f"glued from {several(int(one.boards), 'board')}: its own sheet"
        for one in glue_ups
        if int(one.boards) > 1
    }


def _by_section(job: Subject, say: Numbers, glued: Mapping[str, str]) -> list[Block]:
    """One table for each timber; a band for each thickness, in it by width and length."""
    rows = sorted(of_timber(cut_list(job.assembly)), key=_section_order)
    blocks = []
    for timber in dict.fromkeys(row.material for row in rows):
        own = [row for row in rows if row.material == timber]
        lines: list[Line | Band] = []
        totals = []
        for thick in dict.fromkeys(round(float(row.thickness), 6) for row in own):
            group = [row for row in own if round(float(row.thickness), 6) == thick]
            words = say.wood(group[0].thickness, down=group[0].noun in PANEL_NOUNS)
            lines.append(Band(text=f"{words} thick"))
            lines += [
                Line(
                    cells=(
                        row.mark,
                        row.noun,
                        str(row.number),
                        *_sizes(say, row),
                        "; ".join(filter(None, (glued.get(row.mark), row.note))),
                    )
                )
                for row in group
            ]
            totals.append(f"{words} thick: {several(sum(r.number for r in group), 'piece')}")
        count = several(sum(row.number for row in own), "piece")
        blocks.append(
            Block(
                title=timber[:1].upper() + timber[1:],
                columns=(
                    Column(head="Mark", weight="bold"),
                    Column(head="Part"),
                    Column(head="No.", anchor="right"),
                    *_SIZES,
                    Column(head="", gives=True),
                ),
                lines=tuple(lines),
                foot=(f"Total {count}. {'; '.join(totals)}.",),
            )
        )
    return blocks


def _rough(say: Numbers, paper: Paperwork) -> list[Block]:
    """The blanks of the timber order, a band for each lot."""
    lines: list[Line | Band] = []
    for lot in paper.timber.lots:
        sawn = f", from {lot.sawn_class} sawn" if lot.sawn_class else ""
        lines.append(Band(text=f"{lot.timber}, planed to {say.say.wood(lot.thickness)}{sawn}"))
        lines += [
            Line(
                cells=(
                    blank.mark,
                    blank.noun,
                    say.count(blank.number),
                    say.wood(blank.length),
                    say.wood(blank.width),
                    blank.note,
                )
            )
            for blank in lot.blanks
        ]
    count = sum(int(blank.number) for lot in paper.timber.lots for blank in lot.blanks)
    return [
        Block(
            title=ROUGH,
            columns=(
                Column(head="Mark", weight="bold"),
                Column(head="Part"),
                Column(head="Blanks", anchor="right"),
                Column(head="Length", anchor="right"),
                Column(head="Width", anchor="right"),
                Column(head="", gives=True),
            ),
            lines=tuple(lines),
            foot=(
                f"Total {several(count, 'blank')}.",
                "Test pieces, out of the waste that is ordered over: "
                + "; ".join(_trial(say, paper, *one) for one in trial_stock(paper.milling))
                + ".",
            ),
        )
    ]


def _trial(say: Numbers, paper: Paperwork, piece: TrialPiece, codes: tuple[str, ...]) -> str:
    """`1 of 40 × 120, 2126 long, for M2, M3`; glued, where no board is so wide."""
    size = (
        f"{say.say.wood(piece.thickness)} × {say.say.wood(piece.width)}, "
        f"{say.say.wood(piece.length)} long"
    )
    stock = next((g.stock for g in paper.panel_glue_ups if g.mark == piece.section), None)
    glued = ", glued" if stock is not None and float(piece.width) > float(stock) else ""
    return f"{int(piece.number)} of {size}{glued}, for {', '.join(codes)}"


# --- by door -------------------------------------------------------------------------------


def _by_door(job: Subject, say: Numbers) -> list[Block]:
    """Every leaf with its own pieces, and where each stands in it."""
    rows = {row.mark: row for row in of_timber(cut_list(job.assembly))}
    blocks = []
    for group in job.assembly.groups:
        own = [part for part in group.parts if part.mark in rows and not part.supplied]
        if not own:
            continue
        number = Counter(part.mark for part in own)
        names: dict[str, list[str]] = {}
        for part in own:
            names.setdefault(part.mark, []).append(part.name)
        blocks.append(
            Block(
                title=group.name[:1].upper() + group.name[1:],
                columns=(
                    Column(head="Mark", weight="bold"),
                    Column(head="Part"),
                    Column(head="No.", anchor="right"),
                    *_SIZES,
                    Column(head="Where", gives=True),
                ),
                lines=tuple(
                    Line(
                        cells=(
                            mark,
                            rows[mark].noun,
                            str(number[mark]),
                            *_sizes(say, rows[mark]),
                            where(names[mark]),
                        )
                    )
                    for mark in sorted(number, key=lambda m: _section_order(rows[m]))
                ),
                foot=(f"Total {several(len(own), 'piece')}.",),
            )
        )
    return blocks


def where(names: list[str]) -> str:
    """Places of one piece or of two; more are told apart by where they are tried."""
    if len(names) > 2:
        return "all alike"
    return " and ".join(short(name) for name in names)
