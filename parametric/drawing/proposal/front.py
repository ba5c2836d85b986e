"""The doors from the front in colour, where no picture is: wall, floor and light by eye, doors true.

Every outline of the doors is the elevation's own. Light falls from the upper left, as a
draughtsman shades; the room about the doors is scenery.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence

from parametric.catalog.finishes import ClearGlass, ClearTimber, Paint, VeiledGlass
from parametric.catalog.room import ROOM
from parametric.drawing.pieces import (
    Piece,
    front,
    high_face_in_front,
    shown_in_front,
    silhouette,
)
from parametric.drawing.plane import Box, Polygon, around, cut_path, is_box, rectangle
from parametric.drawing.proposal.content import Dress
from parametric.drawing.proposal.front_room import INK, FrontRoom
from parametric.drawing.proposal.setting import Tint
from parametric.drawing.proposal.shades import darker, lighter, mixed
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes
from parametric.drawing.subject import Subject
from parametric.model import Mitre, RaisedBevel

_DOORS = 0.70
"""How much of the picture's height the doors take."""
_FLOOR = 0.185
"""How far up the floor begins."""
_BESIDE = 330.0
"""Wall on either side at least, mm."""


def front_tints(job: Subject, dress: Dress, box: Box) -> tuple[Tint, ...]:
    """The picture, filling a box; nothing of it lies outside.

    Args:
        job: the job.
        dress: what its doors wear.
        box: mm on paper.
    """
    door = job.resolved.door
    leaves = leaf_boxes(door)
    left, right = leaves[0].x0, leaves[-1].x1
    top = max(leaf.y1 for leaf in leaves)
    scale = max(top / (_DOORS * box.height), (right - left + 2 * _BESIDE) / box.width)
    view = View(
        name="front",
        scale=scale,
        origin=(
            box.centre[0] - (left + right) / 2 / scale,
            box.y0 + _FLOOR * box.height,
        ),
    )
    room = FrontRoom(door, box, view)
    return (*room.tints(), *_Doors(job, dress, room).tints(), *room.before_doors())


class _Doors:
    """The doors on their way."""

    def __init__(self, job: Subject, dress: Dress, room: FrontRoom) -> None:
        self.job, self.room = job, room
        self.painter = Painter(job.shut, dress, room.view, room.box)

    def tints(self) -> Iterator[Tint]:
        """Tracks, then leaf by leaf from the wall outwards, each with its shadow on the last."""
        door = self.job.resolved.door
        boxes = [self.room.on_paper(box) for box in leaf_boxes(door)]
        if not self.room.in_wall:
            yield from self.painter.painted(self.tracks())
        order = sorted(range(len(boxes)), key=lambda n: float(door.hanging.planes[n]))
        for rank, index in enumerate(order):
            if rank:
                yield from self.room.cast(boxes[index], boxes[order[rank - 1]])
            own = door.leaves[index].name
            yield from self.painter.painted(p for p in self.job.shut if p.group == own)

    def tracks(self) -> Iterator[Piece]:
        """What they hang from."""
        return (p for p in self.job.shut if p.group == "tracks")


def painted_after(piece: Piece) -> tuple[float, int]:
    """What comes before and after in a picture: the far before the near; what runs on into
    another before that: bars behind the frame, rails with their tenons in the stiles.
    """
    noun = piece.part.noun
    return (-front(piece), 0 if noun.endswith("bar") else 2 if noun.endswith("stile") else 1)


class Painter:
    """Pieces in colour, as they are seen from the front; `box` is the picture they stand in."""

    def __init__(self, pieces: Sequence[Piece], dress: Dress, view: View, box: Box) -> None:
        self.pieces, self.dress, self.view, self.box = pieces, dress, view, box
        self.grain = isinstance(dress.wood, ClearTimber)
        self.wood = dress.wood.colour if isinstance(dress.wood, Paint) else dress.wood.early

    def painted(self, wanted: Iterable[Piece]) -> Iterator[Tint]:
        """Pieces from the far to the near; nearer ones cover what lies behind them."""
        seen = [
            piece
            for piece in wanted
            if piece.part.noun != "loose tenon" and piece.part.material.look != "tape"
        ]
        ranked = sorted(enumerate(seen), key=lambda pair: (*painted_after(pair[1]), pair[0]))
        for index, piece in ranked:
            yield from self.piece(piece, index)

    def piece(self, piece: Piece, index: int) -> Iterator[Tint]:
        """One piece in its own colour, with its edges."""
        outline = self.view.path(silhouette(piece))
        box = around(outline)
        look = piece.part.material.look
        if piece.group == "tracks":
            if box.x0 < self.box.x0 or box.x1 > self.box.x1:
                # it ends where the picture of the next door begins
                x0, x1 = max(box.x0, self.box.x0), min(box.x1, self.box.x1)
                outline = Box(x0, box.y0, x1, box.y1).polygon
            yield Tint(
                points=outline,
                colour=lighter(ROOM.track.colour, 0.22),
                toward=((box.x0, box.y1), (box.x0, box.y0), ROOM.track.colour),
            )
            return
        if look == "glass":
            yield from self.glass(box, outline)
            return
        if look == "metal":
            yield from self.metal(piece, outline, box)
            return
        yield from self.timber(piece, outline, box, index)

    def timber(self, piece: Piece, outline: Polygon, box: Box, index: int) -> Iterator[Tint]:
        """Paint or clear wood: a board a hair lighter or darker than the next."""
        wood = self.dress.wood
        spread = 0.018 if isinstance(wood, Paint) else 0.10
        tone = spread * (((index * 7) % 5) - 2) / 2
        colour = lighter(self.wood, tone) if tone > 0 else darker(self.wood, -tone)
        if any(isinstance(cut, Mitre) for cut in piece.part.cuts):
            level = box.width > box.height
            # A stop over the glass is lit from above: its upper sides lie in the shade.
            pane = self.pane_of(piece)
            lit = box.centre[1] < pane.centre[1] if level else box.centre[0] > pane.centre[0]
            colour = lighter(colour, 0.16) if lit else darker(colour, 0.16)
            yield Tint(points=outline, colour=colour)
            yield self.edge(outline)
            return
        yield Tint(
            points=outline,
            colour=lighter(colour, 0.07),
            toward=((box.x0, box.y1), (box.x1, box.y0), darker(colour, 0.055)),
        )
        if self.grain:
            yield from self.grained(piece, outline, index)
        if any(isinstance(cut, RaisedBevel) for cut in piece.part.cuts):
            yield from self.raised(piece, outline)
        yield self.edge(outline)

    def pane_of(self, stop: Piece) -> Box:
        """The pane that a stop holds: the nearest."""
        middle = around(self.view.path(silhouette(stop))).centre
        panes = [
            around(self.view.path(silhouette(piece)))
            for piece in self.pieces
            if piece.part.material.look == "glass" and piece.group == stop.group
        ]

        def off(pane: Box) -> float:
            x = max(pane.x0 - middle[0], 0.0, middle[0] - pane.x1)
            y = max(pane.y0 - middle[1], 0.0, middle[1] - pane.y1)
            return x + y

        return min(panes, key=off)

    def edge(self, outline: Polygon) -> Tint:
        """Where one piece meets the next."""
        return Tint(points=(*outline, outline[0]), colour=INK, alpha=0.42, width=0.13)

    def raised(self, piece: Piece, outline: Polygon) -> Iterator[Tint]:
        """The four bevels of a raised panel take the light each in its own way."""
        if not high_face_in_front(piece):
            return
        field = next(
            self.view.path(shown.points)
            for shown in shown_in_front(piece)
            if shown.closed and shown.points != silhouette(piece)
        )
        outer, inner = around(outline), around(field)
        (x0, y0, x1, y1), (u0, v0, u1, v1) = outer, inner
        sides = (
            (0.15, ((x0, y1), (x1, y1), (u1, v1), (u0, v1))),
            (0.09, ((x0, y0), (x0, y1), (u0, v1), (u0, v0))),
            (-0.10, ((x1, y0), (x1, y1), (u1, v1), (u1, v0))),
            (-0.17, ((x0, y0), (x1, y0), (u1, v0), (u0, v0))),
        )
        for light, corners in sides:
            shade = "#ffffff" if light > 0 else INK
            yield Tint(points=corners, colour=shade, alpha=abs(light))
        # The frame throws a little shade along its upper and left edges.
        for n in range(4):
            deep = 0.28 * (n + 1)
            yield Tint(points=rectangle(x0, y1 - deep, x1, y1), colour=INK, alpha=0.06)
            yield Tint(points=rectangle(x0, y0, x0 + deep * 0.6, y1), colour=INK, alpha=0.05)
        yield Tint(points=(*field, field[0]), colour=INK, alpha=0.36, width=0.13)

    def grained(self, piece: Piece, outline: Polygon, index: int) -> Iterator[Tint]:
        """Fine lines along the grain, in late wood's colour, wandering a little."""
        assert isinstance(self.dress.wood, ClearTimber)
        box, square = around(outline), is_box(outline)
        upright = abs(piece.stands.x[2]) > 0.5
        long, wide = (box.height, box.width) if upright else (box.width, box.height)
        gaps = itertools.cycle((0.42, 0.66, 0.35, 0.85, 0.52))
        across = 0.2 + 0.13 * (index % 4)
        lean = 0.5 * ((index * 5) % 7 - 3) / 3
        while across < wide - 0.15:
            bow = lean * (1.0 - abs(across / wide - 0.5))
            line = []
            for t in (0.0, 0.25, 0.5, 0.75, 1.0):
                off = min(max(across + bow * (t - 0.5) * 2 * (1 - t * 0.4), 0.1), wide - 0.1)
                along = 0.06 + t * (long - 0.12)
                line.append(
                    (box.x0 + off, box.y0 + along) if upright else (box.x0 + along, box.y0 + off)
                )
            # a shaped piece has grain as far as its own edge
            for run in [tuple(line)] if square else cut_path(line, (outline,)):
                yield Tint(points=run, colour=self.dress.wood.late, alpha=0.42, width=0.13)
            across += next(gaps)

    def metal(self, piece: Piece, outline: Polygon, box: Box) -> Iterator[Tint]:
        """A pull: its flange bright, its hollow dark."""
        colour = self.dress.metal.colour
        yield Tint(
            points=outline,
            colour=lighter(colour, 0.30),
            toward=((box.x0, box.y1), (box.x1, box.y0), darker(colour, 0.28)),
        )
        for shown in shown_in_front(piece):
            ring = self.view.path(shown.points)
            if around(ring).width < box.width - 1e-6:
                yield Tint(
                    points=ring,
                    colour=darker(colour, 0.52),
                    toward=((box.x0, box.y1), (box.x0, box.y0), darker(colour, 0.12)),
                )
        yield Tint(points=(*outline, outline[0]), colour=INK, alpha=0.5, width=0.12)

    def glass(self, pane: Box, outline: Polygon) -> Iterator[Tint]:
        """A pane, and what is dimly seen through it; the frame before it covers its corners."""
        glass = self.dress.glass
        far = ROOM.far.colour
        yield Tint(
            points=outline,
            colour=lighter(far, 0.34),
            toward=((pane.x0, pane.y1), (pane.x1, pane.y0), darker(far, 0.06)),
        )
        match glass:
            case ClearGlass():
                yield from self.bookcase(pane)
                yield Tint(points=outline, colour=glass.colour, alpha=min(0.7, 0.16 + glass.body))
            case VeiledGlass() if glass.reed:
                yield Tint(points=outline, colour=glass.colour, alpha=0.45)
                x = pane.x0 + 0.35
                while x < pane.x1:
                    line = ((x, pane.y0), (x, pane.y1))
                    yield Tint(points=line, colour="#ffffff", alpha=0.5, width=0.2)
                    x += glass.reed / self.view.scale
            case VeiledGlass():
                yield Tint(points=outline, colour=glass.colour, alpha=0.78)
        # The sky in the pane, aslant; the shade of stop and rail along its head and left side.
        wide, high = pane.width, pane.height
        for start, width in ((0.16, 0.20), (0.44, 0.07)):
            x0, x1 = pane.x0 + wide * start, pane.x0 + wide * (start + width)
            lean = min(high * 0.42, wide * 0.38)
            corners = (
                (x0, pane.y0),
                (x1, pane.y0),
                (min(x1 + lean, pane.x1), pane.y1),
                (min(x0 + lean, pane.x1), pane.y1),
            )
            yield Tint(points=corners, colour="#ffffff", alpha=0.13)
        for n in range(5):
            deep = 0.30 * (n + 1)
            strip = rectangle(pane.x0, pane.y1 - deep, pane.x1, pane.y1)
            yield Tint(points=strip, colour=INK, alpha=0.07)
            strip = rectangle(pane.x0, pane.y0, pane.x0 + deep * 0.6, pane.y1)
            yield Tint(points=strip, colour=INK, alpha=0.05)

    def bookcase(self, pane: Box) -> Iterator[Tint]:
        """Shelves and the backs of books in the room beyond, pale with distance."""
        case, view = ROOM.bookcase, self.view
        pitch, board = case.pitch * 1000.0 / view.scale, case.board * 1000.0 / view.scale
        foot = view.y(case.foot * 1000.0)
        far = lighter(ROOM.far.colour, 0.22)
        shelf = 0
        for shelf in range(case.shelves + 1):
            y = foot + shelf * pitch
            low, high = max(y, pane.y0), min(y + board, pane.y1)
            if low < high:
                strip = rectangle(pane.x0, low, pane.x1, high)
                yield Tint(points=strip, colour=mixed(ROOM.shelf.colour, far, 0.45))
            if shelf < case.shelves:
                yield from self.books(pane, y + board, pitch - board, shelf, far)

    def books(self, pane: Box, y: float, room: float, shelf: int, far: str) -> Iterator[Tint]:
        """One shelf: the same books wherever it is seen through."""
        x, n = self.box.x0, _row_of_books(shelf)
        while x < pane.x1:
            n = (n * 1103 + 12345) % 65536
            wide = (18 + n % 23) / self.view.scale
            high = room * (0.62 + (n >> 3) % 29 / 100.0)
            if (n >> 5) % 9 == 0:
                x += wide * 1.6
                continue
            x0, x1 = max(x, pane.x0), min(x + wide * 0.94, pane.x1)
            y0, y1 = max(y, pane.y0), min(y + high, pane.y1)
            if x0 < x1 and y0 < y1:
                colour = ROOM.spines[(n >> 4) % len(ROOM.spines)]
                yield Tint(points=rectangle(x0, y0, x1, y1), colour=mixed(colour, far, 0.52))
            x += wide


def _row_of_books(shelf: int) -> int:
    """Where a shelf's row of books begins."""
    return ROOM.bookcase.seed * 977 + shelf * 4099
