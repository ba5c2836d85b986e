"""Steps and cautions, 5 high: the page that follows a set-up, and all cautions on one."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.bench.saying import broken
from parametric.drawing.bench.set_up import PITCH, Row, draw_triangle
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import BENCH
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject

_GUTTER = 10.0
_INDENT = 11.0
_TRIANGLE = 16.0
_BETWEEN = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """One step or one caution; `head` stands before it: a number, set-ups, or nothing."""

    text: str
    head: str = ""
    caution: bool = False


def paragraphs(
    rows: Sequence[Row], steps: Sequence[str], cautions: Sequence[str]
) -> tuple[Paragraph, ...]:
    """What of the foot found no room, the steps in order, the cautions."""
    return (
        *(Paragraph(text=row.text, head=row.head) for row in rows),
        *(Paragraph(text=step, head=str(n)) for n, step in enumerate(steps, 1)),
        *(Paragraph(text=caution, caution=True) for caution in cautions),
    )


def words_sheets(
    job: Subject, title: TitleBlock, codes: Sequence[str], parts: Sequence[Paragraph]
) -> tuple[Sheet, ...]:
    """Paragraphs down two columns, on as many pages as they take.

    Args:
        job: for its paper.
        title: the pages' heading in its `document`.
        codes: the number of each page in turn; the last serves for all further ones.
        parts: in the order they are read.
    """
    title = dataclasses.replace(title, scale="no scale")
    sheets: list[Sheet] = []
    waiting = list(parts)
    while waiting or not sheets:
        draft = Draft(bench_paper(job, lying=True))
        code = codes[min(len(sheets), len(codes) - 1)] if codes else ""
        body = draw_page(draft, title, number=code)
        across = (body.width - _GUTTER) / 2
        for column in range(2):
            x = body.x0 + column * (across + _GUTTER)
            y = body.y1
            while waiting:
                tall = _height(waiting[0], across)
                if y - tall < body.y0 - 1e-9 and y < body.y1:
                    break
                _draw(draft, waiting.pop(0), Box(x, y - tall, x + across, y))
                y -= tall + _BETWEEN
        middle = body.x0 + across + _GUTTER / 2
        draft.line("table", (middle, body.y0), (middle, body.y1))
        sheets.append(draft.sheet(title))
    return tuple(sheets)


def _lines(part: Paragraph, across: float) -> tuple[list[str], list[str]]:
    """Heading lines, where the head is longer than a number, and the text's."""
    if part.caution:
        heads = broken(part.head, across - _TRIANGLE, BENCH, "bold") if part.head else []
        return heads, broken(part.text, across - _TRIANGLE, BENCH)
    if len(part.head) > 2:
        return [part.head], broken(part.text, across - _INDENT, BENCH)
    return [], broken(part.text, across - _INDENT, BENCH)


def _height(part: Paragraph, across: float) -> float:
    heads, lines = _lines(part, across)
    tall = (len(heads) + len(lines)) * PITCH
    return max(tall, 12.5) if part.caution else tall


def _draw(draft: Draft, part: Paragraph, box: Box) -> None:
    heads, lines = _lines(part, box.width)
    indent = _TRIANGLE if part.caution else _INDENT
    y = box.y1 - BENCH - 1.2
    if part.caution:
        draw_triangle(draft, (box.x0 + 0.5, box.y1 - 12.0))
    elif part.head and not heads:
        draft.add(Label(text=part.head, at=(box.x0, y), height=BENCH, weight="bold"))
    for line in heads:
        x = box.x0 + (indent if part.caution else 0.0)
        draft.add(Label(text=line, at=(x, y), height=BENCH, weight="bold"))
        y -= PITCH
    for line in lines:
        draft.add(Label(text=line, at=(box.x0 + indent, y), height=BENCH))
        y -= PITCH


def all_cautions(found: Sequence[tuple[str, Sequence[str]]]) -> tuple[Paragraph, ...]:
    """Every caution once, before it the set-ups it is for.

    Args:
        found: the number of each set-up with its cautions.
    """
    codes: dict[str, list[str]] = {}
    for code, cautions in found:
        for caution in cautions:
            own = codes.setdefault(caution, [])
            if code not in own:
                own.append(code)
    return tuple(
        Paragraph(text=caution, head=", ".join(own), caution=True)
        for caution, own in sorted(codes.items(), key=lambda one: -len(one[1]))
    )
