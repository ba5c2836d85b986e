"""The pencil of a set-up picture: wood, fence, blade and feed, true to one scale.

Fences and blocks are black, cutters and blades white, the wood hatched; every outline is
0.7 wide, since the page is read from a metre away.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.bench.set_up import LETTER_RADIUS, letter
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import end_grain, long_grain
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import BENCH
from parametric.drawing.plane import Box, Point, Polygon, around, cut_line, edges
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Stroke, Turn, arrowhead
from parametric.drawing.sheet import View

NAME = "set-up"
_ARROW = 3.4
_HALF = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class Sketch:
    """A view that is being sketched, in mm of the machine."""

    draft: Draft
    view: View

    def at(self, point: Point) -> Point:
        """On paper."""
        return self.view.at(point)

    def path(self, points: Sequence[Point]) -> Polygon:
        """On paper."""
        return self.view.path(tuple(points))

    def line(self, layer: Layer, *points: Point) -> None:
        """An open line."""
        self.draft.add(Stroke(layer=layer, points=self.path(points), view=self.view.name))

    def outline(self, points: Sequence[Point], layer: Layer = "cut_heavy") -> None:
        """A closed line."""
        self.draft.add(
            Stroke(layer=layer, points=self.path(points), view=self.view.name, closed=True)
        )

    def outline_paper(self, points: Polygon, layer: Layer) -> None:
        """A closed line on paper."""
        self.draft.add(Stroke(layer=layer, points=points, view=self.view.name, closed=True))

    def blade(self, points: Sequence[Point]) -> None:
        """A blade or a cutter: white, outlined."""
        self.outline(points)

    def fence(self, points: Sequence[Point]) -> None:
        """A fence or a block: black."""
        self.draft.add(Fill(layer="cut_heavy", points=self.path(points), view=self.view.name))

    def wood(self, points: Sequence[Point], *, ends: bool = True, broken: bool = False) -> None:
        """A piece cut across its grain, or along it; `broken` when its ends are torn off here."""
        region = (self.path(points),)
        if ends:
            self.draft.add(end_grain(region, self.view.name, "above", 1.9, 45.0))
        else:
            self.draft.add(long_grain(region, self.view.name, "across", 2.1))
        if not broken:
            self.outline(points)

    def circle(self, centre: Point, radius: float, layer: Layer = "cut_heavy") -> None:
        """A cutter seen on its end."""
        self.draft.add(
            Circle(
                layer=layer,
                centre=self.at(centre),
                radius=float(radius) / self.view.scale,
                view=self.view.name,
            )
        )

    # On paper from here on: sizes in mm of the sheet.

    def torn(self, a: Point, b: Point) -> None:
        """A wave between two points of the machine: here the piece goes on."""
        self.draft.add(
            Stroke(layer="edge", points=wave(self.at(a), self.at(b)), view=self.view.name)
        )

    def arrow(self, tail: Point, tip: Point, layer: Layer = "edge") -> None:
        """An arrow between two points on paper."""
        self.draft.line(layer, tail, tip)
        self.draft.add(Fill(layer="dim_ticks", points=arrowhead(tip, tail, _ARROW, _HALF)))

    def span(
        self,
        between: Sequence[Point],
        name: str,
        *,
        out: Point,
        feet: bool = True,
        places: Sequence[Point] = (),
    ) -> None:
        """A size between two points of the machine, lettered.

        Args:
            between: its two ends.
            name: the letter, as before its number.
            out: how far off the size stands, mm on paper.
            feet: with lines from the ends to the size.
            places: for its letter, on paper, where those beside it are taken.
        """
        pa, pb = (self.at(point) for point in between)
        qa, qb = _off(pa, out), _off(pb, out)
        if feet and out != (0.0, 0.0):
            over = math.hypot(*out)
            beyond = (out[0] / over * 1.6, out[1] / over * 1.6)
            for p, q in ((pa, qa), (pb, qb)):
                self.draft.line("dims", p, _off(q, beyond))
        ends: tuple[Point, ...] = ()
        far = math.dist(qa, qb)
        if far > 2 * _ARROW + 1.0:
            self.draft.line("dim_ticks", qa, qb)
            for tip, tail in ((qa, qb), (qb, qa)):
                self.draft.add(Fill(layer="dim_ticks", points=arrowhead(tip, tail, _ARROW, _HALF)))
        else:
            ux, uy = _unit(qa, qb)
            ends = (
                (qa[0] - ux * 8.0, qa[1] - uy * 8.0),
                (qb[0] + ux * 8.0, qb[1] + uy * 8.0),
            )
            for tip, tail in zip((qa, qb), ends, strict=True):
                self.draft.line("dim_ticks", tail, tip)
                self.draft.add(Fill(layer="dim_ticks", points=arrowhead(tip, tail, _ARROW, _HALF)))
        middle = ((qa[0] + qb[0]) / 2, (qa[1] + qb[1]) / 2)
        self.letter(name, [*_round(qa, qb, ends), *places], target=middle)

    def angle(
        self, pivot: Point, radius: float, start: float, end: float, name: str, *, past: float
    ) -> None:
        """An angle at a point of the machine, lettered; radius on paper, degrees anticlockwise."""
        centre = self.at(pivot)
        low, high = min(start, end), max(start, end)
        self.draft.add(Arc(layer="dim_ticks", centre=centre, radius=radius, start=low, end=high))
        places = []
        for more in (
            LETTER_RADIUS + 1.4,
            LETTER_RADIUS + 4.0,
            LETTER_RADIUS + 8.0,
            -LETTER_RADIUS - 1.4,
        ):
            for turn in (0.5, past, 1 - past):
                a = math.radians(start + (end - start) * turn)
                places.append(
                    (
                        centre[0] + (radius + more) * math.cos(a),
                        centre[1] + (radius + more) * math.sin(a),
                    )
                )
        self.letter(name, places)

    def letter(self, name: str, places: Sequence[Point], *, target: Point | None = None) -> None:
        """The letter in the first place that is free, else near by with a line to its target."""
        spot = next((place for place in places if self._ring_free(place)), None)
        if spot is None:
            start = target or places[0]
            spot = next((place for place in _about(start) if self._ring_free(place)), None)
            if spot is None:
                self.draft.unplaced.append(f"letter {name}")
                spot = places[0]
            elif target is not None:
                ux, uy = _unit(spot, target)
                r = LETTER_RADIUS
                self.draft.line("dims", (spot[0] + ux * r, spot[1] + uy * r), target)
        letter(self.draft, name, spot)

    def _ring_free(self, place: Point) -> bool:
        (x, y), r = place, LETTER_RADIUS
        return self.draft.free(Box(x - r, y - r, x + r, y + r), 0.2)

    def word(
        self, text: str, places: Sequence[Point], *, turned: Turn = 0, bold: bool = False
    ) -> None:
        """A word, its middle in the first place that is free, else near by."""
        labels = [
            Label(
                text=text,
                at=(x, y - BENCH / 2) if turned == 0 else (x + BENCH / 2, y),
                height=BENCH,
                anchor="centre",
                turned=turned,
                weight="bold" if bold else "regular",
                view=self.view.name,
                mask=True,
            )
            for x, y in (*places, *_about(places[0]))
        ]
        self.draft.add_first(labels)

    def face(self, places: Sequence[Point], *, turned: Turn = 0) -> None:
        """The mark that tells which side is the face."""
        self.word("FACE", places, turned=turned, bold=True)

    def feed_away(self, places: Sequence[Point]) -> None:
        """The feed, away from who looks: the tail of an arrow, and the word."""
        for x, y in (*places, *_about(places[0])):
            ring = Box(x - 3.6, y - 4.4, x + 19.5, y + 4.6)
            if self.draft.free(ring, 0.2):
                break
        else:
            self.draft.unplaced.append("feed")
            x, y = places[0]
        d = 3.4 * math.sqrt(0.5)
        self.draft.add(
            Circle(layer="cut", centre=(x, y), radius=3.4),
            Stroke(layer="cut", points=((x - d, y - d), (x + d, y + d))),
            Stroke(layer="cut", points=((x - d, y + d), (x + d, y - d))),
            Label(text="feed", at=(x + 6.0, y - BENCH / 2), height=BENCH),
        )

    def feed(self, tail: Point, tip: Point) -> None:
        """The feed along the page: a heavy arrow on paper, and the word."""
        self.draft.line("cut_heavy", tail, tip)
        self.draft.add(Fill(layer="cut_heavy", points=arrowhead(tip, tail, 6.0, 2.0)))
        mx, my = (tail[0] + tip[0]) / 2, (tail[1] + tip[1]) / 2
        self.word(
            "feed",
            [(mx, my + 5.5), (mx, my - 5.5), (mx + 13.0, my), (mx - 13.0, my), (mx + 13, my - 9)],
        )


def sketch(draft: Draft, box: Box, extent: Box, *, largest: float = 0.5) -> Sketch:
    """Open a picture: as large as an extent of the machine fits, in the middle.

    The scale is whatever fills the box, since nothing is measured off the picture: true in
    its shape, and no more is said of it.

    Args:
        draft: the page.
        box: what it may fill on paper.
        extent: what is shown, mm.
        largest: scale that may be taken; 0.5 is twice full size.
    """
    scale = max(largest, extent.width / box.width, extent.height / box.height)
    (x, y), (cx, cy) = extent.centre, box.centre
    view = draft.view(NAME, scale, (cx - x / scale, cy - y / scale))
    return Sketch(draft=draft, view=view)


def wave(a: Point, b: Point, high: float = 1.1) -> Polygon:
    """A torn edge from a to b, on paper."""
    ux, uy = _unit(a, b)
    return tuple(
        (
            a[0] + (b[0] - a[0]) * t / 24 - uy * high * math.sin(t / 24 * 2 * math.pi),
            a[1] + (b[1] - a[1]) * t / 24 + ux * high * math.sin(t / 24 * 2 * math.pi),
        )
        for t in range(25)
    )


def without(points: Polygon, hole: Polygon) -> list[tuple[Point, Point]]:
    """The sides of an outline that lie outside another: what stands when something is before it."""
    return [piece for a, b in edges(points) for piece in cut_line(a, b, (hole,), keep_inside=False)]


def spread_evenly(low: float, high: float, count: int) -> list[float]:
    """Places from one end to the other, both taken; one alone stands in the middle."""
    if count == 1:
        return [(low + high) / 2]
    return [low + (high - low) * i / (count - 1) for i in range(count)]


def _about(place: Point) -> list[Point]:
    """Places about a place, the nearest first."""
    return [
        (place[0] + r * math.cos(math.radians(a)), place[1] + r * math.sin(math.radians(a)))
        for r in (7.0, 9.0, 12.0, 15.0, 18.0, 22.0, 26.0, 30.0, 36.0)
        for a in range(0, 360, 15)
    ]


def _off(point: Point, by: Point) -> Point:
    return (point[0] + by[0], point[1] + by[1])


def _unit(a: Point, b: Point) -> Point:
    far = math.dist(a, b)
    return ((b[0] - a[0]) / far, (b[1] - a[1]) / far) if far > 1e-9 else (1.0, 0.0)


def _round(a: Point, b: Point, ends: Sequence[Point]) -> list[Point]:
    """Places for the letter of a size: beside its middle, then beyond its ends."""
    ux, uy = _unit(a, b)
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    far = math.dist(a, b)
    off = LETTER_RADIUS + 1.2
    out = 8.0 if ends else 0.0
    places = [
        (end[0] + sign * ux * (off + out), end[1] + sign * uy * (off + out))
        for end, sign in ((b, 1.0), (a, -1.0))
    ]
    beside = [
        (middle[0] + ux * s * far - uy * n, middle[1] + uy * s * far + ux * n)
        for n, s in itertools.product((off, -off, off + 4.0, -off - 4.0), (0.0, 0.25, -0.25))
    ]
    return [*places, *beside] if ends else [*beside, *places]


def extent_of(points: Sequence[Point]) -> Box:
    """The box round some points of the machine, as plain numbers."""
    return around([(float(x), float(y)) for x, y in points])
