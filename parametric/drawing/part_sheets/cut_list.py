"""The list of a part's cuts, a row a cut, and the small table that says it is complete.

Both are counted: what is here is read off the rows and balloons that were drawn, what is
needed off the part.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import get_args

from parametric.drawing.lettering import TEXT, width
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, Table
from parametric.model import Making
from parametric.trade.cut_quantities import Quantity
from parametric.trade.part_cuts import CutRow, PartCuts, Said, Size

PITCH = 5.0
_AIR = 3.4
_ORDER: tuple[Quantity, ...] = get_args(Quantity)
_HEADS: dict[Quantity, str] = {"across": "centre across", "narrow": "narrow side"}


def cut_list(job: Subject, own: PartCuts, at: tuple[float, float], title: str) -> Table:
    """Every cut of a part; `at` is the left end of the list's top rule."""
    used = {degree.quantity for row in own.rows for degree in row.degrees}
    quantities = [quantity for quantity in _ORDER if quantity in used]
    late = any(_when(row.cut.making) for row in own.rows)
    heads = ["No.", "Cut", "Into", *(_HEADS.get(q, q) for q in quantities), "With"]
    heads += ["When"] if late else []
    rows = [
        (
            str(row.number),
            row.cut.name,
            row.into,
            *(cell(job, row, quantity) for quantity in quantities),
            made_with(job, row.cut.making),
            *((_when(row.cut.making),) if late else ()),
        )
        for row in own.rows
    ]
    left = {0: "centre", 1: "left", 2: "left"}
    last = heads.index("With")
    columns = tuple(
        Column(
            head=head,
            width=max(width(head, TEXT, "bold"), *(width(row[i]) for row in rows)) + _AIR,
            anchor=left.get(i, "left" if i >= last else "right"),  # type: ignore[arg-type]
        )
        for i, head in enumerate(heads)
    )
    return Table(at=at, columns=columns, rows=tuple(rows), title=title, pitch=PITCH)


def cell(job: Subject, row: CutRow, quantity: Quantity) -> str:
    """One degree of a cut as the list prints it; empty where the cut has none."""
    degree = next((d for d in row.degrees if d.quantity == quantity), None)
    match degree:
        case None:
            return ""
        case Said():
            return degree.words
        case Size():
            return " ".join(w for w in (degree.before, printed(job, degree), degree.after) if w)


def printed(job: Subject, size: Size) -> str:
    """A number of a cut as printed."""
    if size.figure.unit == "deg":
        return f"{float(size.figure):.1f}".removesuffix(".0") + "°"
    rule = job.rules.fine if size.fine else job.rules.wood
    return rule.dimension(size.figure)


def made_with(job: Subject, making: Making) -> str:
    """Which machine, and the cutter where one is named."""
    return making.by if making.cutter is None else f"{making.by}, Ø{job.fine(making.cutter)}"


def _when(making: Making) -> str:
    return "" if making.when == "before glue-up" else making.when


def completeness(
    own: PartCuts,
    listed: Table,
    ballooned: Sequence[int],
    sides: tuple[int, int],
    sections: tuple[int, int],
) -> tuple[tuple[tuple[str, str, str], ...], frozenset[int]]:
    """Rows of the table: what is asked, what is here, what is needed; and which are wrong.

    Args:
        own: the cuts.
        listed: the list as drawn.
        ballooned: the numbers of the balloons as drawn.
        sides: sides with a cut that are drawn, and how many there are.
        sections: kinds of cut that a section shows, and how many there are.
    """
    need = len(own.part.cuts)
    degrees = sum(len(row.degrees) for row in own.rows)
    made = next(i for i, column in enumerate(listed.columns) if column.head == "With")
    filled = sum(bool(text) for row in listed.rows for text in row[3:made])
    lines = [
        ("Cuts in the list", len(listed.rows), need),
        ("Cuts with a balloon", len(set(ballooned)), need),
        ("Places and sizes in the list", filled, degrees),
        ("Sides with cuts drawn", *sides),
    ]
    if sections[1]:
        lines.append(("Kinds of cut measured across", *sections))
    rows = tuple((what, str(here), str(needed)) for what, here, needed in lines)
    wrong = frozenset(i for i, (_, here, needed) in enumerate(lines) if here != needed)
    return rows, wrong
