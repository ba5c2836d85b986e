"""Group C: every room with its cabinets."""

from __future__ import annotations

import dataclasses

from parametric.drawing.cases.arrangement import draw_room
from parametric.drawing.cases.inside import draw_inside
from parametric.drawing.cases.room import rooms
from parametric.drawing.cases.scribing import draw_scribing
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject


def draw_casework(job: Subject, title: TitleBlock) -> tuple[Sheet, ...]:
    """Every sheet of a job's cabinets; none where there are none.

    Args:
        job: the job.
        title: what the title block says; its document is that of the arrangement.
    """
    sheets: list[Sheet] = []
    for room in rooms(job):

        def titled(document: str, second: str) -> TitleBlock:
            return dataclasses.replace(title, document=document, second_line=second)

        sheets.append(draw_room(job, room, titled(title.document, "Cabinets in their room")))
        sheets.append(draw_inside(job, room, titled("Cabinets", "Fronts off: what is inside")))
        sheets += draw_scribing(job, room, titled("Scribing", "To walls, ceiling and floor"))
    return tuple(sheets)
