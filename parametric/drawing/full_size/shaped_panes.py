"""Panes that are no rectangle, at full size, for the glazier to cut and the bench to try.

+-----------------------+
|        .---------.    |   outside the outline is waste: it is the glass itself, its
|     .-'          |    |   clearance taken off; no line of the frame is drawn, so that
|    |   FRONT     |    |   what is seen through is never taken for the glass
|    +-------------+    |
+-----------------------+
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.full_size.arcs import ROOM, arc_table, arc_words, top_of
from parametric.drawing.full_size.outlines import STRIP
from parametric.drawing.full_size.pages import boards_of, in_tiles, whole
from parametric.drawing.full_size.template import Laid, Opening, Template, height_of_words
from parametric.drawing.full_size.tiles import GRID, Board
from parametric.drawing.lettering import printable
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.figures import exceeds
from parametric.infill.glass import Pane
from parametric.outlines import SAME, Outline, backwards
from parametric.trade.glass import GlassRow, PaneTemplate
from parametric.trade.glazing import grid_words
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed

_ROUND = 16.0
"""How much paper is cut out round a pane, mm: its strip of waste, and a row of dimensions."""
_NEXT = 10.0
_INSET = 14.0
_FIRST = 90.0
"""Words that begin here, mm, or a column of crosses further on, suit the tiles."""
_BESIDE = 10.0
"""From a column of register crosses to the words beside it, mm."""


def draw_glass_templates(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Each shaped size on a page of its own, in the order of the glass order."""
    return whole(job, _boards(job, paper, title))


def draw_glass_templates_tiled(
    job: Subject, paper: Paperwork, title: TitleBlock
) -> tuple[Sheet, ...]:
    """The same on plain paper."""
    return in_tiles(job, _boards(job, paper, title))


def _boards(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Board, ...]:
    return boards_of(job, _templates(job, paper, title), title)


def _templates(job: Subject, paper: Paperwork, title: TitleBlock) -> Iterator[Template]:
    panes = {
        pane.name: pane
        for leaf in job.resolved.leaves
        for lite in leaf.lites
        for pane in lite.panes
    }
    for row in paper.glazing.rows:
        if row.template is not None:
            yield _template(job, paper, row, row.template, panes[row.names[0]], title)


def curve_of(outline: Outline) -> Outline:
    """The upper edge of a pane from left to right: all but its foot and its two upright edges."""
    feet = [i for i, vertex in enumerate(outline) if abs(vertex.y) < SAME]
    right = max(feet, key=lambda i: outline[i].x)
    turned = (*outline[right + 1 :], *outline[:right])
    curve = tuple(vertex for vertex in turned if vertex.y > SAME)
    return backwards((*curve[:-1], curve[-1]._replace(bulge=0.0)))


def _template(
    job: Subject,
    paper: Paperwork,
    row: GlassRow,
    shape: PaneTemplate,
    pane: Pane,
    title: TitleBlock,
) -> Template:
    wide, tall = float(pane.width), float(pane.height)
    curve = curve_of(shape.outline)
    rule = job.rules.fine
    words = _words(job, paper, row, shape, curve, title)
    table = arc_table(curve, rule)
    level = min(float(edge) for edge in shape.edges)
    need = height_of_words(words, table, ROOM, face=True)
    left = _left_of_words(wide)
    inside = left >= _INSET and level - 2 * _INSET >= need
    crowned = exceeds(pane.height, max(shape.edges, key=float))
    out = wide + _ROUND + _NEXT * (2 if crowned else 1)
    if inside:
        room = Box(left, _INSET, left + ROOM, _INSET + need + (level - 2 * _INSET - need) / 2)
        right, low = out, 0.0
    else:
        room = Box(out, min(0.0, tall - need), out + ROOM, tall)
        right, low = out + ROOM + 4.0, room.y0
    return Template(
        view=f"glass template {row.mark}",
        document="Glass template",
        second_line=f"Pane {row.mark}, {row.number} off"
        + (f", {len(shape.turned_over)} turned over" if shape.turned_over else ""),
        plate=Box(-_ROUND - _NEXT, low - _ROUND - _NEXT, right, tall + _ROUND),
        openings=(Opening(outline=shape.outline, waste="outside"),),
        crosses=(
            Laid(at=(0.0, 0.0), words=("low left corner",)),
            Laid(at=(wide, 0.0), words=("low right corner",)),
        ),
        chains=lambda view: _chains(job, pane, shape, curve, view, crowned=crowned),
        words=words,
        words_in=room,
        table=table,
        face="FRONT",
        cross=(room.x0 - _BESIDE, -_ROUND - _NEXT + 5.0),
    )


def _left_of_words(wide: float) -> float:
    """Where words in a pane begin: in its middle, or beside it where the first column of tiles
    then has two columns of register crosses.
    """
    middle = (wide - ROOM) / 2
    steps = range(math.ceil((wide - _INSET - ROOM - _FIRST) / GRID))
    places = [_FIRST + GRID * step for step in steps]
    return min(places, key=lambda place: abs(place - middle), default=middle)


def _words(
    job: Subject,
    paper: Paperwork,
    row: GlassRow,
    shape: PaneTemplate,
    curve: Outline,
    title: TitleBlock,
) -> tuple[str, ...]:
    """What the glazier must read from the template itself."""
    rule, order = job.rules.fine, paper.glazing
    drawn = [name for name in row.names if name not in shape.turned_over]
    thick = printed(job.resolved).thick(row.nominal, row.thickness, row.unit)
    turned = (f"TURN OVER for {', '.join(shape.turned_over)}",) if shape.turned_over else ()
    return (
        f"Glass {row.mark}",
        f"{row.called}, {thick} thick, {row.number} off",
        *((f"Spacer bars {grid}",) if (grid := grid_words(row, printed(job.resolved))) else ()),
        f"As drawn, seen from the front: {', '.join(drawn)}",
        *turned,
        *arc_words(curve, rule, corner="the low left corner", level="the foot"),
        "The outline is the finished glass. Cut to it: it has its clearance. Its sizes are "
        f"rounded down; {shape.outline_file} has them in full.",
        f"Tolerance each way {rule.dimension(order.tolerance)}. {_sentence(order.edges)}",
        title.title,
        "  ".join(word for word in (title.number, title.fingerprint) if word)
        or printable(job.resolved.job),
    )


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."


def _chains(
    job: Subject, pane: Pane, shape: PaneTemplate, curve: Outline, view: View, *, crowned: bool
) -> list[Chain]:
    """Width below, the left and the right edge beside it; the highest beyond, where no edge is it."""
    rule = job.rules.glass
    wide = float(pane.width)
    strip = STRIP + 1.0
    foot, left, right = view.y(0.0) - strip, view.x(0.0) - strip, view.x(wide) + strip
    level = Chain(
        view=view,
        axis="across",
        line=view.y(0.0) - _ROUND,
        stops=(Stop(at=0.0, foot=foot), Stop(at=wide, foot=foot)),
        links=(Link(figure=pane.width, rule=rule),),
    )
    chains = [level]
    for edge, line, reach in (
        (shape.edges[0], view.x(0.0) - _ROUND, left),
        (shape.edges[1], view.x(wide) + _ROUND, right),
    ):
        stops = (Stop(at=0.0, foot=reach), Stop(at=float(edge), foot=reach))
        chains.append(
            Chain(
                view=view, axis="up", line=line, stops=stops, links=(Link(figure=edge, rule=rule),)
            )
        )
    if crowned:
        top = top_of(curve)[0]
        stops = (
            Stop(at=0.0, foot=right),
            Stop(at=float(pane.height), foot=view.x(top) + strip),
        )
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=view.x(wide) + _ROUND + _NEXT,
                stops=stops,
                links=(Link(figure=pane.height, rule=rule, after="highest"),),
            )
        )
    return chains
