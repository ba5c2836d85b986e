"""Fronts that are to be matched and cannot be, or come from several blanks.

Why: grain runs on only where one piece of one sheet is sawn apart, its grain the way that the
fronts follow one another. A sheet ends somewhere; the eye sees where the match is broken.
Example: panels of fibreboard have no grain; 3 doors 900 high, one over the other, do not come out
of a sheet 2440 long.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from parametric.catalog.boards import Board
from parametric.figures import Where
from parametric.hangings.case_fronts import CaseFronts
from parametric.problems import Problem
from parametric.resolve.matched_fronts import (
    MatchedRow,
    MatchedSet,
    Way,
    grain_of,
    matched_sets,
)
from parametric.resolve.panel_field import PanelField
from parametric.rules.checked import Checked
from parametric.trade.case_names import begun, listed
from parametric.trade.matched_blanks import matched_blanks
from parametric.trade.sheet_order import sheet_parts


def fronts_cannot_be_matched(job: Checked) -> Iterator[Problem]:
    """Stop where panels have no grain that could run on; a caution where it breaks off."""
    spec = job.door.written
    if not isinstance(spec, CaseFronts) or spec.fronts_matched == "none":
        return
    way, here = spec.fronts_matched, spec.line("fronts matched")
    wrong = next((p for _, field in job.panels if (p := _no_match(field, way, here))), None)
    wrong = wrong or _two_boards(job, here)
    if wrong is not None:
        yield wrong
        return
    sets = matched_sets(job.resolved.doors)
    if not sets:
        yield Problem(
            code="nothing_to_match",
            level="caution",
            message=f'"fronts matched: {way}" says nothing here: no two panels stand in line.',
            where=here,
            about=job.door.name,
            found=f"fronts matched: {way}",
            allowed="panels one over the other (up), or in one row (across)",
            fix="Take the line out, or match the fronts the other way.",
        )
    yield from (broken for one in sets if (broken := _breaks_off(job, one, here)))


def _no_match(field: PanelField, way: Way, here: Where | None) -> Problem | None:
    """A panel of timber, of a board without a grain, or with its grain the other way."""
    stuff, grain = field.panel.material, grain_of(way)
    if not isinstance(stuff, Board):
        message = f"{field.name} is glued up from boards of {stuff.name}, not sawn from a sheet."
        allowed = "panels of a board with a grain"
        fix = "Write `kind: board` in the panel; or take the line out and lay the boards by eye."
    elif not stuff.grain:
        message = f"The {stuff.name} of {field.name} has no grain that could run on."
        allowed = "a board with a grain"
        fix = f"Take the line out; or, where it is veneered, write board {stuff.name}: {{grain: along}}."
    elif field.panel.grain != grain:
        message = f"The grain of {field.name} is {field.panel.grain}: it does not run on {way}."
        allowed = f"grain: {grain}"
        fix = f"Write `grain: {grain}` in the panel, or match the fronts the other way."
    else:
        return None
    return Problem(
        code="fronts_cannot_be_matched",
        level="stop",
        message=f"Fronts cannot be matched {way}. {begun(message)}",
        where=here,
        about=field.name,
        found=f"fronts matched: {way}",
        allowed=allowed,
        fix=fix,
    )


def _two_boards(job: Checked, here: Where | None) -> Problem | None:
    """Panels that come out of no one sheet, whatever its size."""
    boards = {
        (field.panel.material.name, float(field.panel.thickness)): field for _, field in job.panels
    }
    if len(boards) < 2:
        return None
    said = listed(f"{name} {job.size(thick)} thick" for name, thick in sorted(boards))
    return Problem(
        code="matched_of_two_boards",
        level="stop",
        message=f"Fronts that are matched come out of one sheet; these panels are of {said}.",
        where=here,
        about=job.door.name,
        found=said,
        allowed="one board of one thickness",
        fix="Let all of these leaves call one panel, or take `fronts matched` out.",
    )


def _breaks_off(job: Checked, one: MatchedSet, here: Where | None) -> Problem | None:
    """A set that is longer or wider than a sheet, and comes out of several pieces."""
    own = [part for part in sheet_parts(job.resolved, job.assembly) if part.row.matched]
    blanks, _ = matched_blanks([one], own, float(job.shop.saw.kerf))

    def together(row: MatchedRow, after: MatchedRow) -> bool:
        return any(row in blank.rows and after in blank.rows for blank in blanks)

    ends = [row.panels[-1].name for row, after in pairwise(one.rows) if not together(row, after)]
    if not ends:
        return None
    said = f"{'over' if one.way == 'up' else 'right of'} {listed(ends)}"
    long, wide = (job.size(size) for size in (own[0].long, own[0].wide))
    return Problem(
        code="match_breaks_off",
        level="caution",
        message=f"The grain of its fronts does not run on {said}: they do not come out of "
        f"one sheet {long} x {wide}.",
        where=here,
        about=job.door.name,
        found=f"{len(one.panels)} panels",
        allowed=f"{long} x {wide} for all, the saw cuts in it",
        fix="Write the larger sheet under `board`, say so to the client, or match fewer fronts.",
    )
