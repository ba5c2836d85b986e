"""The sheets of group P, in the order they are read: stiles, rails, panels, then small parts."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from parametric.drawing.part_sheets.long_part import draw_long_part
from parametric.drawing.part_sheets.panel_sheet import draw_panel
from parametric.drawing.part_sheets.plain_boards import draw_plain_boards, fitted_on_site
from parametric.drawing.part_sheets.small_parts import draw_small_parts
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.model import Mitre, RaisedBevel, RoundArrises
from parametric.trade.paperwork import Paperwork
from parametric.trade.part_cuts import PartCuts

_LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ"
"""What sections are lettered with: I, O and Q are taken for figures."""


def draw_part_sheets(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """One sheet for every stile, rail and panel; small parts and plain boards share theirs.

    Args:
        job: the job.
        paper: its lists, with every cut of every part.
        title: the title block of the group.
    """
    long = [own for own in paper.part_cuts if _kind(own) == "long"]
    panels = [own for own in paper.part_cuts if _kind(own) == "panel"]
    small = [own for own in paper.part_cuts if _kind(own) == "small"]
    letters = section_letters()
    sheets: list[Sheet] = []
    for own in long:
        some = list(itertools.islice(letters, _most(own)))
        sheet, used = draw_long_part(job, own, paper.part_cuts, some, title)
        letters = itertools.chain(some[used:], letters)
        sheets.append(sheet)
    sheets += [draw_panel(job, own, list(itertools.islice(letters, 2)), title) for own in panels]
    if small:
        some = list(itertools.islice(letters, len(small)))
        sheets += draw_small_parts(job, small, paper.part_cuts, some, title)
    return (*sheets, *draw_plain_boards(job, title))


def section_letters() -> Iterator[str]:
    """A to Z without I, O and Q, then AA, AB."""
    yield from _LETTERS
    for first, second in itertools.product(_LETTERS, _LETTERS):
        yield first + second


def _most(own: PartCuts) -> int:
    """No part has more sections than cuts."""
    return len(own.rows)


def _kind(own: PartCuts) -> str:
    """How a part is drawn: by what is cut in it."""
    cuts = own.part.cuts
    if fitted_on_site(own.part):
        return "plain"
    if any(isinstance(cut, RaisedBevel) for cut in cuts):
        return "panel"
    if all(isinstance(cut, (Mitre, RoundArrises)) for cut in cuts):
        return "small"
    return "long"
