"""What bored holes draw: their circles, how deep they go, and the lines that their middles stand on."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.part_sheets.shaped_cuts import Bow, Line
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.model import Drilled


def drilled_lines(cut: Drilled, part: Unfolded) -> Iterator[Line | Bow]:
    """Each hole on its own side; of those in edges and ends, how deep they go, dashed on the face."""
    side, half = part.side(cut.face), float(cut.diameter) / 2
    for u, v in cut.places:
        centre = part.on_face(cut.face, u, v, 0.0, side)
        yield Bow(side=side, layer="edge", centre=centre, radius=half, start=0.0, end=360.0)
        if side in ("face", "back"):
            continue
        start, deep = float(cut.surface), float(cut.depth)
        sides = ((u - half, start), (u - half, deep), (u + half, deep), (u + half, start))
        points = tuple(part.on_face(cut.face, at, v, down, "face") for at, down in sides)
        yield Line(side="face", layer="hidden", points=points, closed=False)


def drilled_span(cut: Drilled, part: Unfolded) -> tuple[float, float]:
    """From where to where holes in a face or an edge go along the part."""
    along, half = [u for u, _ in cut.places], float(cut.diameter) / 2
    return (min(along) - half - part.foot, max(along) + half - part.foot)


def drilled_middles(cut: Drilled, part: Unfolded, side: Side, past: float) -> Iterator[Line]:
    """The line that a row's middles stand on, and a stroke across it at each; of one hole a cross."""
    half = float(cut.diameter) / 2 + past
    places = [part.on_face(cut.face, u, v, 0.0, side) for u, v in cut.places]
    (x0, y0), (x1, y1) = places[0], places[-1]
    if abs(x1 - x0) >= abs(y1 - y0):
        yield _middle(side, (min(x0, x1) - half, y0), (max(x0, x1) + half, y0))
        for x, y in places:
            yield _middle(side, (x, y - half), (x, y + half))
        return
    yield _middle(side, (x0, min(y0, y1) - half), (x0, max(y0, y1) + half))
    for x, y in places:
        yield _middle(side, (x - half, y), (x + half, y))


def _middle(side: Side, a: tuple[float, float], b: tuple[float, float]) -> Line:
    return Line(side=side, layer="centre", points=(a, b), closed=False)
