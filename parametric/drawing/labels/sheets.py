"""Labels laid out on plain sheets, edge to edge, to be cut along the dashed lines."""

from __future__ import annotations

import dataclasses

from parametric.drawing.draft import Draft
from parametric.drawing.labels.face import SIZES, Face, Size, draw_face, faces_size, fits
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.model import Part
from parametric.trade.paperwork import Paperwork


def draw_labels(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """As many sheets as the labels take, on the paper that holds most of them."""
    faces = _faces(job, paper)
    size = faces_size(faces) or SIZES[-1]
    title = dataclasses.replace(
        title,
        document="Labels",
        second_line=f"{len(faces)} labels, {size.wide:.0f} × {size.tall:.0f} mm: "
        "cut on the dashed lines, one on each piece or bundle",
        scale="",
    )
    page = max(
        (bench_paper(job), bench_paper(job, lying=True)),
        key=lambda own: len(_places(own, title, size)),
    )
    places = _places(page, title, size)
    each = len(places)
    return tuple(
        _sheet(page, title, size, faces[start : start + each], places)
        for start in range(0, len(faces), each)
    )


def _faces(job: Subject, paper: Paperwork) -> tuple[Face, ...]:
    parts = {part.name: part for part in job.assembly.parts}
    return tuple(
        Face(label=label, size=_size(job, parts[label.names[0]])) for label in paper.labels
    )


def _size(job: Subject, part: Part) -> str:
    """As the cut list and the glass order print it: panels and panes rounded down."""
    blank = part.blank
    flat = (blank.length, blank.width)
    if part.material.look == "glass":
        said = [*(job.fine(side, down=True) for side in flat), job.fine(blank.thickness)]
    else:
        down = part.noun in PANEL_NOUNS
        said = [job.wood(side, down=down) for side in (*flat, blank.thickness)]
    return " × ".join(said)


def _places(paper: Paper, title: TitleBlock, size: Size) -> tuple[Box, ...]:
    """Where the labels of a sheet stand, row by row from the top."""
    body = draw_page(Draft(paper), title)
    columns = int(body.width // size.wide)
    rows = int(body.height // size.tall)
    return tuple(
        Box(
            body.x0 + column * size.wide,
            body.y1 - (row + 1) * size.tall,
            body.x0 + (column + 1) * size.wide,
            body.y1 - row * size.tall,
        )
        for row in range(rows)
        for column in range(columns)
    )


def _sheet(
    paper: Paper, title: TitleBlock, size: Size, faces: tuple[Face, ...], places: tuple[Box, ...]
) -> Sheet:
    draft = Draft(paper)
    draw_page(draft, title)
    used = places[: len(faces)]
    for face, box in zip(faces, used, strict=True):
        draw_face(draft, face, size, box)
        if not fits(face, size):
            draft.unplaced.append(face.label.readable)
    lines = {side for box in used for side in _sides(box)}
    for a, b in sorted(lines):
        draft.line("hidden", a, b)
    return draft.sheet(title)


def _sides(box: Box) -> tuple[tuple[tuple[float, float], tuple[float, float]], ...]:
    """The four sides of a label, each from its low end, so that neighbours share theirs."""
    x0, y0, x1, y1 = (round(value, 6) for value in box)
    return (
        ((x0, y0), (x1, y0)),
        ((x0, y1), (x1, y1)),
        ((x0, y0), (x0, y1)),
        ((x1, y0), (x1, y1)),
    )
