"""Group C: every room with its cabinets, then every kind of case."""

from __future__ import annotations

import dataclasses

from parametric.drawing.cases.arrangement import draw_room
from parametric.drawing.cases.case_sheet import draw_case
from parametric.drawing.cases.inside import draw_inside
from parametric.drawing.cases.room import Room, rooms
from parametric.drawing.cases.scribing import draw_scribing
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.case_kinds import CaseKind, case_kinds
from parametric.trade.case_names import begun, together


def draw_casework(job: Subject, title: TitleBlock) -> tuple[Sheet, ...]:
    """Every sheet of a job's cabinets; none where there are none.

    Args:
        job: the job.
        title: what the title block says.
    """
    casework = job.resolved.casework
    if casework is None:
        return ()

    def titled(document: str, second: str) -> TitleBlock:
        return dataclasses.replace(title, document=document, second_line=second)

    sheets: list[Sheet] = []
    found = rooms(job)
    for room in found:
        where = _where(room) if len(found) > 1 else ""
        sheets += [
            draw_room(job, room, titled("Cabinets", f"In their room{where}")),
            draw_inside(job, room, titled("Cabinets open", f"Fronts off: what is inside{where}")),
            *draw_scribing(job, room, titled("Scribing", f"To walls, ceiling and floor{where}")),
        ]
    for kind in case_kinds(casework.cases, job.assembly):
        sheets.append(draw_case(job, kind, titled("Case", _which(kind))))
    return tuple(sheets)


def _where(room: Room) -> str:
    """Which of several rooms, by the name of its survey."""
    name = room.name.removeprefix("survey").strip()
    return f", {name}" if name else ""


def _which(kind: CaseKind) -> str:
    return f"{begun(together([case.name for case in kind.cases]))}, {len(kind.cases)} off"
