"""A shelf sags farther than it may, or stays within it by a hair.

Why: a shelf that hangs is seen every day, and goes on sinking for years under what stays on it.
Example: 44-1/2 of 3/4 board, 10 deep, under 20 lb/ft sags 0.202 where 1/32 in per foot allows 0.116;
with a lip 3/4 x 1-1/2 it sags 0.112.
Source: 5 w L^4 / (384 E I), a beam on two supports; the load of a shelf that nobody speaks of is that
of ANSI/KCMA A161.1, and what books weigh is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.case_facts import BOOKS
from parametric.figures import Figure, exceeds, whole_up
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_shelves import CaseShelf
from parametric.trade.printed import load_text, sag_text
from parametric.trade.shelf_sag import CREEP, WaysOut
from parametric.units import INCH

_HAIR = 0.05
"""Of the limit. Common practice, no source: boards of one name differ by more than that."""
_LIP_STEP = {"mm": 1.0, "inch": float(INCH) / 8}
"""What a lip that is offered is rounded up to, mm. Common practice, no source."""


def shelf_sags(cases: CheckedCases) -> Iterator[Problem]:
    """Stop past a load or a limit that somebody set, caution past the tool's own or by a hair."""
    for shelf in cases.shelves:
        found = shelf.sag
        if exceeds(found.sag, found.limit):
            yield _too_far(cases, shelf)
        elif shelf.is_asked and not exceeds(found.left, _HAIR * found.limit):
            yield _by_a_hair(cases, shelf)
        if not shelf.is_asked and shelf.is_open and exceeds(BOOKS, found.carries):
            yield _no_books(cases, shelf)
        if shelf.is_asked and exceeds(found.on_test, found.test_limit):
            yield _below_the_standard(cases, shelf)


def _shelf(cases: CheckedCases, shelf: CaseShelf) -> str:
    """`A shelf of cabinet upper, 44-1/2 clear`; cases of one block alike."""
    return f"A {shelf.board.role} of {shelf.standing.case.spec.heading}, {cases.job.size(shelf.sag.span)} clear,"


def _too_far(cases: CheckedCases, shelf: CaseShelf) -> Problem:
    said, unit, found = cases.said, cases.job.design.unit, shelf.sag
    line = "load" if shelf.written.origin("load") != "assumed" else "sag"
    lip = "" if found.lip_bending is None else f" with its lip ({said.error(found.plain)} without)"
    return Problem(
        code="shelf_sags",
        level="stop" if shelf.is_asked else "caution",
        message=f"{_shelf(cases, shelf)} would sag {said.error(found.sag)}{lip} under "
        f"{load_text(shelf.written.load, unit)}; {sag_text(shelf.written.sag, unit)} allows "
        f"{said.error(found.limit)}. {CREEP}",
        where=shelf.written.line(line) if shelf.is_asked else shelf.standing.case.spec.here,
        about=f"{shelf.standing.case.spec.heading} / shelf / sag",
        found=said.error(found.sag),
        allowed=said.error(found.limit),
        fix=_ways_out(cases, shelf),
    )


def _ways_out(cases: CheckedCases, shelf: CaseShelf) -> str:
    """A lip, if it is one that takes any, a divider, more thickness, a shorter span."""
    said, ways, found = cases.said, shelf.ways, shelf.sag
    assert ways is not None, "it sags too far without a lip, if not with it"
    divided = (
        f"a divider under its middle ({said.error(ways.divided)} then)"
        if not exceeds(ways.divided, found.limit)
        else "dividers under it"
    )
    given = f"{_lip(cases, ways)}, or {divided}" if shelf.board.role == "shelf" else divided
    return (
        f"Give it {given}; or make it {said.up(ways.thickness)} thick, or its span "
        f"{said.wood(found.longest, down=True)} or less."
    )


def _lip(cases: CheckedCases, ways: WaysOut) -> str:
    """The least lip that would do, in a size that a rule can read."""
    step = _LIP_STEP[cases.job.design.unit]
    deep = Figure(float(whole_up(ways.lip / step)) * step)
    lip = f"{cases.job.size(ways.lip_thickness)} x {cases.job.size(deep)}"
    return f"a lip on edge, {lip} (`lip: {lip}` in shelf)"


def _by_a_hair(cases: CheckedCases, shelf: CaseShelf) -> Problem:
    said, unit, found = cases.said, cases.job.design.unit, shelf.sag
    lipped = found.lip_bending is not None and found.glued is not None
    lip = f" with its lip ({said.error(found.plain)} without)" if lipped else ""
    glued = (
        f" Shelf and lip are counted side by side: glued together the whole length they sag "
        f"{said.error(found.glued)}."
        if found.glued is not None
        else ""
    )
    return Problem(
        code="shelf_sags_nearly",
        level="caution",
        message=f"{_shelf(cases, shelf)} sags {said.error(found.sag)}{lip} under "
        f"{load_text(shelf.written.load, unit)}, and {said.error(found.limit)} is allowed: it passes "
        f"by {said.error(found.left)} only.{glued} {CREEP}",
        where=shelf.written.line("lip" if lipped else "load"),
        about=f"{shelf.standing.case.spec.heading} / shelf / sag left",
        found=said.error(found.sag),
        allowed=said.error(found.limit),
        fix="Make the lip deeper, and glue it on along its whole length."
        if lipped
        else "Give it a lip on edge, or a divider under its middle.",
    )


def _no_books(cases: CheckedCases, shelf: CaseShelf) -> Problem:
    unit, found = cases.job.design.unit, shelf.sag
    carries, books = load_text(found.carries, unit), load_text(BOOKS, unit)
    return Problem(
        code="shelf_not_for_books",
        level="note",
        message=f"{_shelf(cases, shelf)} carries {carries} within its sag, and books are about "
        f"{books}: what it is for is not said.",
        where=shelf.standing.case.spec.here,
        about=f"{shelf.standing.case.spec.heading} / shelf / load",
        found=carries,
        allowed=f"{books} for books",
        fix=f"Write what stands on it: `shelf: {{load: {books}}}`.",
    )


def _below_the_standard(cases: CheckedCases, shelf: CaseShelf) -> Problem:
    said, found = cases.said, shelf.sag
    return Problem(
        code="shelf_below_the_standard",
        level="note",
        message=f"{_shelf(cases, shelf)} sags {said.error(found.on_test)} under the load of the "
        f"cabinet standard, ANSI/KCMA A161.1, which allows {said.error(found.test_limit)}.",
        where=shelf.written.line("load"),
        about=f"{shelf.standing.case.spec.heading} / shelf / sag by the cabinet standard",
        found=said.error(found.on_test),
        allowed=said.error(found.test_limit),
    )
