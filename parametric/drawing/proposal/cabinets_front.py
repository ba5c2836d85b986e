"""Cabinets from the front in colour, where no picture is: the room as measured, its light by eye."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.room import GRAIN_OF_FLOOR, ROOM
from parametric.drawing.cases.room import Room
from parametric.drawing.pieces import Piece, front, silhouette
from parametric.drawing.plane import Box
from parametric.drawing.proposal.content import Dress
from parametric.drawing.proposal.front import Painter, painted_after
from parametric.drawing.proposal.front_room import INK, boards, daylight
from parametric.drawing.proposal.setting import Tint
from parametric.drawing.proposal.shades import darker, lighter, mixed
from parametric.drawing.sheet import View

_HIGH = 0.74
"""How much of the picture's height the room takes, floor to ceiling."""
_FLOOR = 0.15
"""How far up the floor begins."""
_BESIDE = 260.0
"""Wall on either side at least, mm."""
_DEEP = 60.0
"""What lies farther behind the foremost than this is in the shade of what is before it, mm."""


def cabinets_tints(room: Room, dress: Dress, box: Box) -> tuple[Tint, ...]:
    """The picture, filling a box; nothing of it lies outside.

    Args:
        room: the room with its cabinets.
        dress: what they wear.
        box: mm on paper.
    """
    seen = room.box
    scale = max(
        (seen.y1 - seen.y0) / (_HIGH * box.height),
        (seen.x1 - seen.x0 + 2 * _BESIDE) / box.width,
    )
    view = View(
        name="front",
        scale=scale,
        origin=(
            box.centre[0] - (seen.x0 + seen.x1) / 2 / scale,
            box.y0 + _FLOOR * box.height - seen.y0 / scale,
        ),
    )
    painter = Painter(room.pieces, dress, view, box)
    return (*_about(room, view, box), *_pieces(room, painter))


def _about(room: Room, view: View, box: Box) -> Iterator[Tint]:
    """Wall and floor, daylight, and the space that the cabinets stand in, dim at its back."""
    wall, near = ROOM.plaster.colour, GRAIN_OF_FLOOR.early
    yield Tint(
        points=box.polygon,
        colour=lighter(wall, 0.42),
        toward=((box.x0, box.y1), (box.x1, box.y0 + 0.3 * box.height), darker(wall, 0.07)),
    )
    inner = view.path(room.floor_line)
    line = [(box.x0, inner[0][1]), *inner, (box.x1, inner[-1][1])]
    yield Tint(
        points=(*line, (box.x1, box.y0), (box.x0, box.y0)),
        colour=mixed(near, wall, 0.30),
        toward=((box.x0, line[0][1]), (box.x0, box.y0), darker(near, 0.10)),
    )
    yield from boards(box, view, line)
    yield from daylight(box)
    space = view.path((*room.left_wall, *room.ceiling_line[1:-1], *reversed(room.right_wall)))
    yield Tint(points=space, colour=darker(wall, 0.06))
    yield Tint(points=(*space, space[0]), colour=INK, alpha=0.5, width=0.2)


def _pieces(room: Room, painter: Painter) -> Iterator[Tint]:
    """Everything from the far to the near; what lies deep stands in the shade."""
    foremost = min(front(piece) for piece in room.pieces)
    for index, piece in enumerate(sorted(room.pieces, key=painted_after)):
        if piece.part.noun == "counter":
            yield from _counter(piece, painter)
            continue
        yield from painter.piece(piece, index)
        if front(piece) - foremost > _DEEP:
            outline = painter.view.path(silhouette(piece))
            yield Tint(points=outline, colour=INK, alpha=0.16)


def _counter(piece: Piece, painter: Painter) -> Iterator[Tint]:
    """A counter is not of the cabinets' finish."""
    outline = painter.view.path(silhouette(piece))
    yield Tint(points=outline, colour=lighter(ROOM.shelf.colour, 0.25))
    yield painter.edge(outline)
