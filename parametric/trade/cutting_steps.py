"""A cutting plan at the saw: what is cut from what, with the fence where, and what it gives.

Cuts that follow one another with the fence left where it stands are one step.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.trade.stock.sheet_plan import Area, SawnSheet, SheetCut
from parametric.trade.stock.spots import Way

SHEET = "sheet"
STRIP = "strip"
REST = "rest"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutStep:
    """Cuts from `first` to `last`: the way, the fence in mm, from what, and what each gives.

    What lies past the last of them, and is a piece as it lies, is given by it too.
    """

    first: int
    last: int
    way: Way
    at: float
    of: str
    gives: tuple[str, ...]


def cut_steps(sheet: SawnSheet) -> tuple[CutStep, ...]:
    """Every cut of a sheet in its turn."""
    steps: list[CutStep] = []
    before: SheetCut | None = None
    for cut in sheet.cuts:
        gives = _given(sheet, cut)
        if before is not None and cut.of == before.second and _alike(cut, before):
            last = steps[-1]
            steps[-1] = CutStep(
                first=last.first,
                last=cut.number,
                way=cut.way,
                at=cut.at,
                of=last.of,
                gives=(*last.gives, *gives),
            )
        else:
            of = _from(sheet, cut)
            n = cut.number
            steps.append(CutStep(first=n, last=n, way=cut.way, at=cut.at, of=of, gives=gives))
        before = cut
    return tuple(steps)


def _alike(cut: SheetCut, before: SheetCut) -> bool:
    return cut.way == before.way and abs(cut.at - before.at) < 1e-6


def _given(sheet: SawnSheet, cut: SheetCut) -> tuple[str, ...]:
    past = [sawn.piece.mark for sawn in (*sheet.blanks, *sheet.pieces) if sawn.area == cut.second]
    return (_what(sheet, cut.first), *past)


def _what(sheet: SawnSheet, area: Area) -> str:
    """A part by the mark of its piece, a set's blank by its name, or as what is still to be cut."""
    for blank in sheet.blanks:
        if blank.area == area:
            return blank.piece.mark
    for sawn in sheet.pieces:
        if sawn.area == area:
            return sawn.piece.mark
    return REST if area in sheet.rests else STRIP


def _from(sheet: SawnSheet, cut: SheetCut) -> str:
    """What a cut is made in: the sheet, the part that a cut gave, or what lay past that cut."""
    if cut.of == sheet.whole:
        return SHEET
    for earlier in sheet.cuts:
        if earlier.first == cut.of:
            return f"part {earlier.number}"
        if earlier.second == cut.of:
            return f"past {earlier.number}"
    raise AssertionError("a cut is made in what no cut gave")


def numbers(step: CutStep) -> str:
    """`3`, `3 to 5`."""
    return str(step.first) if step.first == step.last else f"{step.first} to {step.last}"


def gives(step: CutStep) -> str:
    """`C1`, `3 C1`, `C1, 2 C2`: marks in the order they come, each once."""
    return ", ".join(
        f"{step.gives.count(one)} {one}" if step.gives.count(one) > 1 else one
        for one in dict.fromkeys(step.gives)
    )


def pieces_on(sheet: SawnSheet) -> Iterator[tuple[str, int]]:
    """The marks on a sheet, and how often each."""
    marks = [sawn.piece.mark for sawn in sheet.pieces]
    for mark in dict.fromkeys(marks):
        yield mark, marks.count(mark)
