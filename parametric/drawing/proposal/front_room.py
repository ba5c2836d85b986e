"""The room about the doors seen from the front: wall, daylight, skirting, floor, and shadows."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

from parametric.catalog.room import CASING, GRAIN_OF_FLOOR, ROOM
from parametric.drawing.plane import Box, Point
from parametric.drawing.proposal.setting import Tint
from parametric.drawing.proposal.shades import darker, lighter, mixed
from parametric.drawing.sheet import View
from parametric.drawing.site import floor_at, leaf_boxes
from parametric.resolve.door import Door
from parametric.trade.surround import goes_into_wall, surround

_SKIRTING = 95.0
"""How high the skirting that is pictured is, mm: scenery."""
_SOFT = 7
"""Steps of a soft edge."""
_WALL = 130.0
"""How thick the wall is taken to be, mm: nothing of its depth is seen from the front."""
_FLUSH = 1.0
"""Doors no farther behind the wall's face take no shade from it, mm."""
INK = "#18211f"


class FrontRoom:
    """One room, filling a box on paper; nothing of it lies outside."""

    def __init__(self, door: Door, box: Box, view: View) -> None:
        self.door, self.box, self.view = door, box, view
        self.leaves = leaf_boxes(door)
        self.about = surround(door, _WALL)
        self.in_wall = goes_into_wall(door)

    def tints(self) -> Iterator[Tint]:
        """From the far to the near."""
        yield from self.room()
        yield from daylight(self.box)
        yield from self.behind_doors()

    @property
    def taken(self) -> tuple[float, float]:
        """What of the wall the doors or their opening take, mm in the model."""
        if self.door.hanging.on_wall:
            return self.leaves[0].x0, self.leaves[-1].x1
        if self.about is not None:
            return self.about.reach
        outline = [x for x, _ in self.door.opening.outline()]
        return min(outline), max(outline)

    def on_paper(self, box: Box) -> Box:
        """A box of the model on paper."""
        return Box(*self.view.at((box.x0, box.y0)), *self.view.at((box.x1, box.y1)))

    def room(self) -> Iterator[Tint]:
        """Wall, floor with its boards, skirting."""
        box, view = self.box, self.view
        wall = ROOM.plaster.colour
        yield Tint(
            points=box.polygon,
            colour=lighter(wall, 0.42),
            toward=((box.x0, box.y1), (box.x1, box.y0 + 0.3 * box.height), darker(wall, 0.07)),
        )
        ends = tuple((x - view.origin[0]) * view.scale for x in (box.x0, box.x1))
        inner = [x for x, _ in self.door.opening.floor_line() if ends[0] < x < ends[1]]
        line = [view.at((x, floor_at(self.door, x))) for x in (ends[0], *inner, ends[1])]
        floor = (*line, (box.x1, box.y0), (box.x0, box.y0))
        near = GRAIN_OF_FLOOR.early
        yield Tint(
            points=floor,
            colour=mixed(near, wall, 0.30),
            toward=((box.x0, line[0][1]), (box.x0, box.y0), darker(near, 0.10)),
        )
        yield from boards(box, view, line)
        yield from self.skirting(line)

    def skirting(self, line: Sequence[Point]) -> Iterator[Tint]:
        """It stands on the floor as that runs, and stops at the doors."""
        high = _SKIRTING / self.view.scale
        left, right = (self.view.x(x) for x in self.taken)
        clear = 0.9 if self.about is None else 0.0
        for x0, x1 in ((self.box.x0, left - clear), (right + clear, self.box.x1)):
            if x1 <= x0:
                continue
            stops = [x0, *(x for x, _ in line if x0 < x < x1), x1]
            low = [(x, _height_on(line, x)) for x in stops]
            face = (*low, *((x, y + high) for x, y in reversed(low)))
            colour = ROOM.trim.colour
            yield Tint(points=face, colour=lighter(colour, 0.30))
            for up, shade, wide in (
                (0.0, 0.34, 0.35),
                (high, 0.22, 0.12),
                (high * 0.82, 0.12, 0.1),
            ):
                edge = tuple((x, y + up) for x, y in low)
                yield Tint(points=edge, colour=INK, alpha=shade, width=wide)

    def behind_doors(self) -> Iterator[Tint]:
        """What the doors throw on wall and floor; behind those that hang inside it, their opening."""
        reach = 42.0 / self.view.scale
        if not self.door.hanging.on_wall:
            yield from self.reveal()
            return
        if self.door.hanging.case is not None:
            yield from self.casings()
        for leaf in (self.on_paper(b) for b in self.leaves):
            moved = Box(leaf.x0 + reach * 0.5, leaf.y0, leaf.x1 + reach, leaf.y1 - reach * 0.6)
            yield from self.soft(moved, reach, 0.030)
        yield from self.on_floor()

    def on_floor(self) -> Iterator[Tint]:
        """The shade under the doors."""
        x0, x1 = self.view.x(self.leaves[0].x0), self.view.x(self.leaves[-1].x1)
        foot, floor = self.view.y(self.leaves[0].y0), self.view.y(0.0)
        for n in range(_SOFT * 3):
            deep = (n + 1) ** 1.5 * 2.4 / self.view.scale
            yield self.clipped(Box(x0 + 0.1 * n, floor - deep, x1 + 0.22 * n, foot), 0.024)

    def reveal(self) -> Iterator[Tint]:
        """The opening as it was measured, dim behind the doors."""
        hole = self.view.path(self.door.opening.outline())
        yield Tint(points=hole, colour="#59615f")
        yield Tint(points=hole, colour=INK, alpha=0.7, width=0.25)
        yield from self.on_floor()
        if not self.in_wall:
            yield from self.casings()

    def casings(self) -> Iterator[Tint]:
        """The casings round hung doors, lit from the upper left, with their shade on the wall."""
        if self.about is None:
            return
        trim = ROOM.trim.colour
        deep = CASING.thick / self.view.scale
        left, right = (self.view.x(x) for x in self.about.reach)
        low = self.view.y(min(z for _, z in self.door.opening.floor_line()))
        top = self.view.y(max(z for piece in self.about.casing for _, z in piece.outline))
        for n in range(_SOFT):
            out = deep * 2.2 * (n + 1) / _SOFT
            yield self.clipped(Box(left + out * 0.3, low, right + out, top - out * 0.4), 0.022)
        # left, head, right; of a case its bottom too
        shades = [lighter(trim, light) for light in (0.42, 0.30, 0.16, 0.24)]
        for piece, colour in zip(self.about.casing, shades, strict=False):
            points = self.view.path(
                tuple((x, max(z, floor_at(self.door, x))) for x, z in piece.outline)
            )
            yield Tint(points=points, colour=colour)
            yield Tint(points=(*points, points[0]), colour=INK, alpha=0.30, width=0.12)

    def before_doors(self) -> Iterator[Tint]:
        """What the wall throws on doors that hang inside it: along the head and the left jamb.

        Of doors that go into the wall it covers the edges.
        """
        back = min(-float(leaf.hung.plane + leaf.thickness / 2) for leaf in self.door.leaves)
        if self.in_wall:
            yield from self.casings()
        if self.door.hanging.on_wall or back < _FLUSH:
            return
        outline = self.view.path(self.door.opening.outline())
        x0, x1 = min(x for x, _ in outline), max(x for x, _ in outline)
        low, top = min(y for _, y in outline), max(y for _, y in outline)
        for n in range(_SOFT):
            deep = 0.55 * (n + 1)
            yield self.clipped(Box(x0, top - deep * 1.5, x1, top), 0.055)
            yield self.clipped(Box(x0, low, x0 + deep, top), 0.045)

    def cast(self, leaf: Box, beneath: Box) -> Iterator[Tint]:
        """What a leaf in front throws on the one behind it."""
        between = self.door.hanging.passing_gap
        if between is None:
            return
        reach = 3.2 * float(between) / self.view.scale + 0.6
        for n in range(_SOFT):
            x1 = min(leaf.x1 + reach * (n + 1) / _SOFT, beneath.x1)
            if x1 > leaf.x0:
                across = Box(max(leaf.x0, beneath.x0), beneath.y0, x1, beneath.y1)
                yield Tint(points=across.polygon, colour=INK, alpha=0.062)

    def soft(self, box: Box, reach: float, alpha: float) -> Iterator[Tint]:
        """A shadow with a soft edge."""
        for n in range(_SOFT):
            yield self.clipped(box.grown(reach * (n / (_SOFT - 1) - 0.5)), alpha)

    def clipped(self, box: Box, alpha: float, colour: str = INK) -> Tint:
        """A shade inside the picture."""
        inside = Box(
            max(box.x0, self.box.x0),
            max(box.y0, self.box.y0),
            min(box.x1, self.box.x1),
            min(box.y1, self.box.y1),
        )
        return Tint(points=inside.polygon, colour=colour, alpha=alpha)


def boards(box: Box, view: View, line: Sequence[Point]) -> Iterator[Tint]:
    """The floor's boards run towards the wall."""
    middle = box.centre[0]
    board = ROOM.board * 1000.0 / view.scale
    opens = 1.55
    count = int((box.x1 - middle) / board) + 1
    for n in range(-count, count + 1):
        x = middle + (n + 0.35) * board
        if not box.x0 < x < box.x1:
            continue
        y = _height_on(line, x)
        low = (middle + (x - middle) * opens, box.y0)
        if not box.x0 <= low[0] <= box.x1:
            edge = box.x0 if low[0] < box.x0 else box.x1
            t = (edge - x) / (low[0] - x)
            low = (edge, y + (box.y0 - y) * t)
        yield Tint(points=((x, y), low), colour="#5d4a35", alpha=0.30, width=0.14)


def daylight(box: Box) -> Iterator[Tint]:
    """A window with bars throws its light aslant on the wall."""
    wide, high, bar = box.width * 0.17, box.height * 0.225, 3.4
    lean = box.width * 0.05 / (2 * high + bar)
    for column, row in itertools.product(range(3), range(2)):
        x = box.x0 + box.width * 0.045 + column * (wide + bar)
        y = box.y0 + box.height * 0.43 + row * (high + bar)
        for n in range(_SOFT * 2):
            g = 2.4 - n * 0.36
            low, up = lean * (y - g - box.y0), lean * (y + high + g - box.y0)
            corners = (
                (x - g - low, y - g),
                (x + wide + g - low, y - g),
                (x + wide + g - up, y + high + g),
                (x - g - up, y + high + g),
            )
            yield Tint(
                points=tuple((max(px, box.x0), py) for px, py in corners),
                colour="#ffffff",
                alpha=0.05,
            )


def _height_on(line: Sequence[Point], x: float) -> float:
    """The floor line's height on paper at a place across it."""
    for (x0, y0), (x1, y1) in itertools.pairwise(line):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return line[-1][1]
