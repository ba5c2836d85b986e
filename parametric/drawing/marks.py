"""Marks on a drawing: datum, section ends, leaf letters, grain, travel, captions, leaders."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, TITLE, width
from parametric.drawing.plane import Box, Point, spread
from parametric.drawing.primitives import (
    Anchor,
    Circle,
    Fill,
    Label,
    Stroke,
    arrowhead,
)
from parametric.drawing.sheet import Element, Projection

Way = Literal["left", "right", "up", "down"]
_STEPS: dict[Way, Point] = {
    "left": (-1.0, 0.0),
    "right": (1.0, 0.0),
    "up": (0.0, 1.0),
    "down": (0.0, -1.0),
}
_ONE_LETTER = 5.0
"""No letter of a section is wider, mm."""
LEADER_PITCH = 1.6
"""Line to line of a leader's words, in heights of capitals."""
_LEADER_SHIFTS = (0.0, -1.5, -3.0, -4.5, -6.0, -8.0, -10.0, 2.0, 4.0)
"""How far a stack of words may stand from the middle of what it points at, mm; nearest first."""


def datum(draft: Draft, at: Point, words: str, view: str = "") -> None:
    """The triangle that stands on the line heights are read from, and its name."""
    x, y = at
    corners = ((x, y), (x - 1.6, y + 2.8), (x + 1.6, y + 2.8))
    draft.add(
        Fill(layer="dims", points=((x, y), (x - 1.6, y + 2.8), (x, y + 2.8)), view=view),
        Stroke(layer="edge_fine", points=corners, closed=True, view=view),
        Label(text=words, at=(x + 2.6, y + 0.9), weight="bold", view=view),
    )


def section_end(draft: Draft, at: Point, *, outwards: Way, looks: Way, letter: str) -> None:
    """One end of a section line: a heavy stroke, an arrow the way one looks, the letter.

    Args:
        draft: the sheet.
        at: the outer end of the stroke, mm on paper.
        outwards: which way the section line leaves the view here.
        looks: the way the section is seen.
        letter: the section's letter.
    """
    ox, oy = _STEPS[outwards]
    lx, ly = _STEPS[looks]
    x, y = at
    stem = (x - ox * 1.2, y - oy * 1.2)
    tip = (stem[0] + lx * 5.0, stem[1] + ly * 5.0)
    # the second letter of AA stands farther from the stroke
    more = max(0.0, width(letter, TITLE, "bold") - _ONE_LETTER) / 2
    letter_at = (x - lx * (3.2 + more) - ox * 2.2, y - ly * 3.2 - oy * 2.2)
    draft.add(
        Stroke(layer="section_marks", points=((x - ox * 5.0, y - oy * 5.0), at)),
        Stroke(layer="edge", points=(stem, (stem[0] + lx * 3.0, stem[1] + ly * 3.0))),
        Fill(layer="dims", points=arrowhead(tip, stem, 2.6, 0.75)),
        Label(
            text=letter,
            at=(letter_at[0], letter_at[1] - TITLE / 2),
            height=TITLE,
            anchor="centre",
            weight="bold",
        ),
    )


def short_section(
    draft: Draft, ends: tuple[float, float], y: float, letter: str, view: str
) -> None:
    """A section through one small place, seen from above: a short stroke at each end, a letter."""
    left, right = ends
    for x in ends:
        draft.add(
            Stroke(layer="section_marks", points=((x - 1.4, y), (x + 1.4, y)), view=view),
            Stroke(layer="edge", points=((x, y), (x, y - 3.0)), view=view),
            Fill(layer="dims", points=arrowhead((x, y - 4.6), (x, y), 2.4, 0.7), view=view),
        )
    places = [
        Label(text=letter, at=(lx, ly - TEXT / 2), anchor="centre", weight="bold", view=view)
        for lx, ly in (
            (left - 3.2, y),
            (right + 3.2, y),
            (left, y + 2.6),
            (right, y + 2.6),
        )
    ]
    draft.add_first(places)


_SMALL_RING = 2.2
"""The ring of a small letter, mm on paper."""


def leaf_letter_mark(
    letter: str, words: Sequence[str], at: Point, view: str, *, small: bool = False
) -> list[Element]:
    """A leaf's letter in a ring, words under it; `at` is the ring's middle.

    A `small` one stands in what is too low for the other: a drawer front's panel or rail.
    """
    x, y = at
    radius, height = (_SMALL_RING, TEXT) if small else (4.0, TITLE)
    found: list[Element] = [
        Circle(layer="edge", centre=at, radius=radius, view=view),
        Label(
            text=letter,
            at=(x, y - height / 2),
            height=height,
            anchor="centre",
            weight="bold",
            view=view,
        ),
    ]
    for i, line in enumerate(words):
        base = y - 4.0 - 1.2 - TEXT - i * TEXT * LEADER_PITCH
        found.append(Label(text=line, at=(x, base), anchor="centre", view=view))
    return found


def travel(at: Point, way: Way, view: str, length: float = 25.0) -> list[Element]:
    """The arrow of the way a leaf moves, about its middle."""
    x, y = at
    step = _STEPS[way][0]
    tip, tail = (x + step * length / 2, y), (x - step * length / 2, y)
    return [
        Stroke(layer="edge", points=(tail, (tip[0] - step * 3.0, y)), view=view),
        Fill(layer="dims", points=arrowhead(tip, tail, 3.4, 0.9), view=view),
    ]


def grain(
    at: Point, run: Literal["across", "up"], view: str, length: float = 14.0
) -> list[Element]:
    """The half-barbed arrow of the grain, about its middle."""
    x, y = at

    def point(along: float, aside: float) -> Point:
        return (x + along, y + aside) if run == "across" else (x + aside, y + along)

    half = length / 2
    return [
        Stroke(layer="edge_fine", points=(point(-half, 0), point(half, 0)), view=view),
        Stroke(layer="edge_fine", points=(point(half, 0), point(half - 2.2, 0.8)), view=view),
        Stroke(layer="edge_fine", points=(point(-half, 0), point(2.2 - half, -0.8)), view=view),
    ]


def caption(draft: Draft, at: Point, title: str, second: str = "", anchor: Anchor = "left") -> None:
    """The name of a view and, under it, its scale and condition."""
    x, y = at
    draft.add(Label(text=title, at=at, height=TITLE, weight="bold", anchor=anchor))
    if second:
        draft.add(Label(text=second, at=(x, y - 4.6), anchor=anchor))


def leaders(
    draft: Draft,
    targets: Sequence[tuple[Point, Literal["arrow", "dot"], Sequence[str]]],
    *,
    column: float,
    view: str = "",
) -> None:
    """Words in one column beside a view, each with a line to its place; lines never cross.

    Args:
        draft: the sheet.
        targets: where each line ends, how, and its words.
        column: where the words begin, mm on paper; left of the targets when they stand there.
        view: the view the targets belong to.
    """
    ordered = sorted(targets, key=lambda t: t[0][1])
    tallest = max(len(words) for _, _, words in ordered)
    pitch = TEXT * LEADER_PITCH * tallest + 1.6
    heights = spread([target[1] for target, _, _ in ordered], pitch)

    def box(words: Sequence[str], height: float, side: float) -> Box:
        half = len(words) * TEXT * LEADER_PITCH / 2
        wide = side * max(width(line) for line in words)
        left, right = sorted((column, column + wide))
        return Box(left, height - half, right, height + half)

    def clear(shift: float) -> bool:
        return all(
            draft.free(box(words, height + shift, 1.0 if column >= target[0] else -1.0), 0.1)
            for (target, _, words), height in zip(ordered, heights, strict=True)
        )

    shift = next((s for s in _LEADER_SHIFTS if clear(s)), 0.0)
    for (target, end, words), height in zip(ordered, heights, strict=True):
        side = 1.0 if column >= target[0] else -1.0
        top = height + shift + (len(words) - 1) * TEXT * LEADER_PITCH / 2
        knee = (column - side * 3.2, top)
        landing = (column - side * 0.7, top)
        labels = tuple(
            Label(
                text=line,
                at=(column, top - TEXT / 2 - k * TEXT * LEADER_PITCH),
                anchor="left" if side > 0 else "right",
                view=view,
            )
            for k, line in enumerate(words)
        )
        draft.unplaced += [label.text for label in labels if not draft.free(label.box, 0.1)]
        draft.add(Leader(points=(target, knee, landing), end=end, labels=labels, view=view))


def wave(draft: Draft, a: Point, b: Point, view: str, amplitude: float = 0.5) -> None:
    """A broken edge: one wave from end to end."""
    far = math.dist(a, b)
    ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far
    points = []
    for i in range(25):
        t, off = far * i / 24, amplitude * math.sin(2 * math.pi * i / 24)
        points.append((a[0] + ux * t - uy * off, a[1] + uy * t + ux * off))
    draft.path("breaks", tuple(points), view)


def detail_ring(
    draft: Draft, centre: Point, radius: float, number: str, view: str, words: str = ""
) -> None:
    """A ring round a place that is drawn larger elsewhere, its number outside it."""
    draft.add(Circle(layer="edge_fine", centre=centre, radius=radius, view=view))
    text = f"{number} {words}" if words else number
    far = radius + 1.0
    wide = width(text, TEXT, "bold")
    places = []
    for degrees in (45, 135, 315, 225, 0, 180, 90, 270):
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        x = centre[0] + c * (far + wide / 2)
        y = centre[1] + s * (far + TEXT / 2) - TEXT / 2
        places.append(Label(text=text, at=(x, y), anchor="centre", weight="bold", view=view))
    draft.add_first(places)


def projection_sign(draft: Draft, at: Point, projection: Projection) -> None:
    """The cone's side and end views, 14 wide, about their middle.

    In first angle the end stands beyond the wide end of the side view, seen through it; in
    third angle it stands beside the narrow end, which it shows.

    Source: ISO 5456-2 and ASME Y14.3 (graphical symbols), from memory.
    """
    x, y = at
    side, end = (-4.0, 4.0) if projection == "first" else (4.0, -4.0)
    wide = 2.6
    narrow, broad = side - wide, side + wide
    cone = (
        (x + narrow, y - 1.15),
        (x + broad, y - 2.3),
        (x + broad, y + 2.3),
        (x + narrow, y + 1.15),
    )
    draft.add(
        Stroke(layer="edge", points=cone, closed=True),
        Circle(layer="edge", centre=(x + end, y), radius=2.3),
        Circle(layer="edge", centre=(x + end, y), radius=1.15),
        Stroke(layer="edge_fine", points=((x + side - 4.0, y), (x + side + 3.8, y))),
        Stroke(layer="edge_fine", points=((x + end - 3.2, y), (x + end + 3.2, y))),
        Stroke(layer="edge_fine", points=((x + end, y - 3.2), (x + end, y + 3.2))),
    )
