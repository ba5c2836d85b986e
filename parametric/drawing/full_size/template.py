"""A template at full size, whatever its shape: outline, waste side, and how it is laid on.

+--------------------------------------+
|  x  912.7 above the foot             |   a cross at two corners is laid on known places
|  |      .--------.                   |
|  edge   |////////|     FACE          |   the hatched strip is waste
|  |      '--------'                   |
|  x                                   |
+--------------------------------------+
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.chains import Chain, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.full_size.outlines import Waste, drawn, drawn_chain, waste_strip
from parametric.drawing.full_size.tiles import Board, register
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import BENCH, PITCH, TEXT, TITLE, Weight, wrap
from parametric.drawing.marks import grain
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Hatch, Paper, TitleBlock, View
from parametric.drawing.tables import Table
from parametric.outlines import Outline

_ARM = 4.0
_AIR = 30.0
_GRAIN = 16.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One outline and the side of it that is cut away.

    With `cut`, an open chain of its edges, only that is cut: it is drawn heavy with the strip
    beside it, and the template's own lines bound the rest.
    """

    outline: Outline
    waste: Waste
    cut: Outline | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A cross that is laid on a known place, and the words for it."""

    at: Point
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """Words about a middle, one under the other, the first of them large."""

    at: Point
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Template:
    """One template, mm of the model.

    Args:
        view: its name, unlike that of any other view of its file.
        document: what it is.
        second_line: what it is for.
        plate: what is cut out of the page.
        openings: the outlines.
        lines: centre lines and edges that the template is laid to.
        curves: open chains of lines and arcs.
        crosses: at two corners or more; none on a gauge, which is laid to nothing.
        notes: words at places of their own.
        chains: its dimensions, once it stands in a view.
        words: what must be read from the template itself, the first of it bold.
        words_in: where they stand.
        table: what stands under them; its place is found with them.
        face: what is lettered large on the side that is looked at; "" where either will do.
        grain: which way the grain of the work runs; None where that is of no account.
        cross: a place that one of the register crosses lies on, where it is cut into tiles.
    """

    view: str
    document: str
    second_line: str
    plate: Box
    openings: tuple[Opening, ...]
    lines: tuple[tuple[Layer, Point, Point], ...] = ()
    curves: tuple[tuple[Layer, Outline], ...] = ()
    crosses: tuple[Laid, ...] = ()
    notes: tuple[Note, ...] = ()
    chains: Callable[[View], list[Chain]] = lambda _: []
    words: tuple[str, ...] = ()
    words_in: Box
    table: Table | None = None
    face: str = "FACE"
    grain: Literal["across", "up"] | None = None
    cross: Point | None = None


def draw_template(template: Template, title: TitleBlock) -> Board:
    """A template drawn whole, on a paper with room all round it."""
    plate = template.plate
    paper = Paper(
        name="template",
        width=plate.width + 2 * _AIR,
        height=plate.height + 2 * _AIR,
        filing=1.0,
        edge=1.0,
    )
    draft = Draft(paper)
    view = draft.view(template.view, 1.0, (_AIR - plate.x0, _AIR - plate.y0))
    area = plate.grown(0.5)
    at_cross = template.cross or (plate.x0 + 5.0, plate.y0 + 5.0)
    if template.cross is not None:
        for own in register(area, at_cross):
            draft.hold(((view.at(a), view.at(b)) for a, b in own.arms))
    draft.path("hidden", view.path(plate.polygon), view.name, closed=True)
    for opening in template.openings:
        strip = waste_strip(opening.outline, opening.waste, opening.cut)
        strokes = tuple(view.path(line) for line in strip)
        draft.add(Hatch(material="waste", strokes=strokes, view=view.name))
        if opening.cut is None:
            draft.add(*drawn(opening.outline, view))
        else:
            draft.add(*drawn_chain(opening.cut, view, "cut"))
    for layer, a, b in template.lines:
        draft.line(layer, view.at(a), view.at(b), view.name)
    for layer, chain in template.curves:
        draft.add(*drawn_chain(chain, view, layer))
    place_chains(draft, template.chains(view))
    for cross in template.crosses:
        _cross(draft, view, cross)
    for note in template.notes:
        _note(draft, view, note)
    _words(draft, view, template)
    return Board(
        sheet=draft.sheet(title),
        view=view.name,
        area=area,
        cross=at_cross,
    )


def _cross(draft: Draft, view: View, cross: Laid) -> None:
    x, y = view.at(cross.at)
    draft.add(
        Stroke(layer="edge", points=((x - _ARM, y), (x + _ARM, y)), view=view.name),
        Stroke(layer="edge", points=((x, y - _ARM), (x, y + _ARM)), view=view.name),
    )
    pitch = TEXT * PITCH
    deep = pitch * (len(cross.words) - 1)
    options = []
    corners = ((1, 1), (-1, 1), (1, -1), (-1, -1))
    # A row farther off where the arm of a register cross stands in the nearest.
    for off, (side, up) in itertools.product((1.5, 1.5 + _ARM + 1.0), corners):
        top = y + off + deep if up > 0 else y - off - TEXT
        options.append(
            [
                Label(
                    text=text,
                    at=(x + side * 1.6, top - row * pitch),
                    anchor="left" if side > 0 else "right",
                    view=view.name,
                )
                for row, text in enumerate(cross.words)
            ]
        )
    draft.add_first_clear(options, " ".join(cross.words))


def _note(draft: Draft, view: View, note: Note) -> None:
    x, y = view.at(note.at)
    for row, text in enumerate(note.words):
        y -= 0.0 if row == 0 else TEXT * PITCH
        label = Label(
            text=text,
            at=(x, y),
            height=TEXT if row else TITLE,
            anchor="centre",
            weight="regular" if row else "bold",
            view=view.name,
        )
        draft.add_first([label])


def height_of_words(words: Sequence[str], table: Table | None, room: float, *, face: bool) -> float:
    """How much room a template's words take up, one under the other, mm."""
    used = 0.0
    for index, text in enumerate(words):
        height, weight = _lettered(index)
        used += len(wrap(text, room, height, weight)) * height * PITCH + TEXT * 0.6
    if table is not None:
        used += TEXT * PITCH + table.box.height
    return used + (BENCH * PITCH if face else 0.0)


def _lettered(index: int) -> tuple[float, Weight]:
    """The first of the words is large and bold."""
    return (TITLE, "bold") if index == 0 else (TEXT, "regular")


def _words(draft: Draft, view: View, template: Template) -> None:
    """From the top of their room down; the large word and the grain under them."""
    x, y = view.at((template.words_in.x0, template.words_in.y1))
    room = template.words_in.width
    for index, text in enumerate(template.words):
        height, weight = _lettered(index)
        for line in wrap(text, room, height, weight):
            y -= height * PITCH
            draft.add_first(
                [
                    Label(
                        text=line,
                        at=(x, y),
                        height=height,
                        weight=weight,
                        view=view.name,
                    )
                ]
            )
        y -= TEXT * 0.6
    if template.table is not None:
        y -= TEXT * PITCH
        table = dataclasses.replace(template.table, at=(x, y), view=view.name)
        draft.add(table)
        y = table.box.y0
    if template.face:
        y -= BENCH * PITCH
        label = Label(text=template.face, at=(x, y), height=BENCH, weight="bold", view=view.name)
        draft.add_first([label])
        if template.grain is not None:
            middle = (label.box.x1 + 12.0, y + BENCH / 2)
            if template.grain == "up":
                middle = (label.box.x1 + 6.0, y + BENCH - _GRAIN / 2)
            draft.add(*grain(middle, template.grain, view.name, _GRAIN))
