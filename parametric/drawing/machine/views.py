"""The piece as the cutter sees it: the whole of it with its datum and running sizes.

      (1)      (2)              away: face
     +--------------------------------------+
     |  (___)     ==================        |   14
foot |                                      |   26
     +--------------------------------------+
  y ^ 0  83                                2126
    +-> x    near: back
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.machine.work import Corner, MachineCut, MachineSetUp
from parametric.drawing.ordinates import Place, pitch_of, place_ordinates
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Box, Point, Polygon, arc_points, around, spread
from parametric.drawing.primitives import Circle, Fill, Label, Stroke, arrowhead
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure, named

SCALES = {
    "mm": (1.0, 2.0, 5.0, 10.0, 20.0, 25.0, 50.0),
    "inch": (1.0, 2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 32.0, 48.0),
}
_LEFT, _RIGHT, _ABOVE = 30.0, 10.0, 19.0
"""What stands round the piece, mm on paper, beside the numbers of the running sizes."""
_NUMBERS = 6.0
"""From an edge of the piece to the numbers, mm."""
_PAST = 0.8
"""How far a number under the piece may stand past its ends, mm."""
_RING = 2.4
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9)
"""Where along a cut its number is tried, in turn."""
_NEAR_EDGE = 12.0
"""A number stands over the edge of a piece for a cut no farther from it, mm on paper."""
LEGIBLE = 3.0
"""A cut narrower than this on paper is drawn again, larger, mm."""
_ZERO = named("machine datum", Figure(0.0, origin="catalogue", source="the datum"))


def margins(set_up: MachineSetUp, rule: Rule) -> tuple[float, float, float, float]:
    """What the whole view needs left, below, right and above the piece, mm on paper."""
    longest = [
        max(width(rule.dimension(f), TEXT) for f in figures)
        for figures in (_running_x(set_up), _running_y(set_up))
    ]
    return (_LEFT, _NUMBERS + longest[0] + 2.0, _NUMBERS + longest[1] + _RIGHT - 6.0, _ABOVE)


def scales_that_fit(set_up: MachineSetUp, job: Subject, room: Box) -> tuple[float, ...]:
    """The scales at which the whole piece goes into a room, the largest first."""
    left, below, right, above = margins(set_up, job.rules.fine)
    wide, high = room.width - left - right, room.height - below - above
    return tuple(
        scale
        for scale in SCALES[job.rules.unit]
        if float(set_up.length) / scale <= wide and float(set_up.width) / scale <= high
    )


def legible(set_up: MachineSetUp, scale: float) -> bool:
    """Whether every cut can be made out at a scale."""
    return all(min(cut.length, cut.width) / scale >= LEGIBLE for cut in set_up.cuts)


def draw_whole(draft: Draft, job: Subject, set_up: MachineSetUp, room: Box, scale: float) -> Box:
    """The whole piece from above, in the top left of a room; returns what it took."""
    rule = job.rules.fine
    left, below, right, above = margins(set_up, rule)
    long, wide = float(set_up.length) / scale, float(set_up.width) / scale
    low = room.y1 - above - wide
    view = draft.view("whole", scale, (room.x0 + left, low))
    piece = Box(view.x(0.0), low, view.x(set_up.length), view.y(set_up.width))
    draft.path("cut", piece.polygon, view.name, closed=True)
    for cut in set_up.cuts:
        for outline in (cut.outline, *cut.others):
            draft.path("edge", outline_on(view, outline), view.name, closed=True)
    _axes(draft, view, piece)
    places = [Place(at=float(f), figure=f, start=piece.y0, rule=rule) for f in _running_x(set_up)]
    stand = _over_piece(places, view, piece)
    place_ordinates(draft, view, "across", places, piece.y0 - _NUMBERS, stand)
    places = [Place(at=float(f), figure=f, start=piece.x1, rule=rule) for f in _running_y(set_up)]
    place_ordinates(draft, view, "up", places, piece.x1 + _NUMBERS)
    place_chains(draft, list(_overall(view, set_up, piece, rule)))
    for cut in set_up.cuts:
        box, *others = (around(outline_on(view, o)) for o in (cut.outline, *cut.others))
        draw_number(draft, cut, box, piece, view.name, others)
    _sides(draft, set_up, piece, piece.y0 - below, view.name)
    taken = Box(room.x0, piece.y0 - below, piece.x1 + right, room.y1)
    title = f"From above the cutter, {scale_words(scale, job.rules.unit)}"
    # of a narrow piece the width stands over its chain, where the title would begin
    draft.add_first(
        [
            Label(text=title, at=(x, room.y1 - TEXT * 1.12), weight="bold")
            for x in (room.x0, piece.x0)
        ]
    )
    assert long > 0
    return taken


def outline_on(view: View, outline: Sequence[Corner]) -> Polygon:
    """An outline of a file on paper, its arcs as short chords."""
    points: list[Point] = []
    for (x0, y0, bulge), (x1, y1, _) in zip(outline, [*outline[1:], outline[0]], strict=True):
        a, b = view.at((x0, y0)), view.at((x1, y1))
        points.append(a)
        if bulge:
            points += _arc(a, b, bulge)[1:-1]
    return tuple(points)


def _arc(a: Point, b: Point, bulge: float) -> Polygon:
    """Points along an arc that turns anticlockwise from a to b."""
    off = (1 / bulge - bulge) / 4
    x, y = (a[0] + b[0]) / 2 - (b[1] - a[1]) * off, (a[1] + b[1]) / 2 + (b[0] - a[0]) * off
    start = math.degrees(math.atan2(a[1] - y, a[0] - x))
    sweep = math.degrees(4 * math.atan(bulge))
    return arc_points((x, y), math.dist((x, y), a), start, start + sweep, 0.25)


def _running_x(set_up: MachineSetUp) -> tuple[Figure, ...]:
    return _once([_ZERO, *(f for cut in set_up.cuts for f in _places(cut)[0]), set_up.length])


def _running_y(set_up: MachineSetUp) -> tuple[Figure, ...]:
    return _once([_ZERO, *(f for cut in set_up.cuts for f in _places(cut)[1]), set_up.width])


def _places(cut: MachineCut) -> tuple[tuple[Figure, ...], tuple[Figure, ...]]:
    """What is said of a cut along x and along y: where it begins and ends, of holes the middles."""
    return (cut.x, cut.y) if cut.middles is None else cut.middles


def _over_piece(places: Sequence[Place], view: View, piece: Box) -> list[float]:
    """Where numbers under a piece stand, in the order of their places: hardly past its ends, where
    the axes stand at the left and the numbers of the other way at the right.
    """
    pitch = TEXT * pitch_of(places)
    stand = spread(sorted(view.x(place.at) for place in places), pitch)
    least = piece.x0 - _PAST
    for index, at in enumerate(stand):
        stand[index] = least = max(at, least)
        least += pitch
    most = piece.x1 + _PAST
    for index in reversed(range(len(stand))):
        stand[index] = most = min(stand[index], most)
        most -= pitch
    # more numbers than a narrow piece is wide go on past its right end, off the axes
    over = max(0.0, piece.x0 - _PAST - stand[0])
    return [at + over for at in stand]


def _once(figures: Iterable[Figure]) -> tuple[Figure, ...]:
    """Each place once; the first figure that has it stands for it."""
    kept: dict[float, Figure] = {}
    for figure in figures:
        kept.setdefault(round(float(figure), 6), figure)
    return tuple(kept.values())


def _overall(view: View, set_up: MachineSetUp, piece: Box, rule: Rule) -> Iterator[Chain]:
    """The blank's length above it, its width at its left."""
    yield Chain(
        view=view,
        axis="across",
        line=piece.y1 + 10.0,
        stops=(Stop(at=0.0, foot=piece.y1), Stop(at=float(set_up.length), foot=piece.y1)),
        links=(Link(figure=set_up.length, rule=rule),),
    )
    yield Chain(
        view=view,
        axis="up",
        line=piece.x0 - 22.0,
        stops=(Stop(at=0.0, foot=piece.x0), Stop(at=float(set_up.width), foot=piece.x0)),
        links=(Link(figure=set_up.width, rule=rule),),
    )


def _axes(draft: Draft, view: View, piece: Box) -> None:
    """The datum in the lower left corner, and which way x and y go from it."""
    corner = (piece.x0, piece.y0)
    draft.add(Fill(layer="dims", points=arc_points(corner, 0.9, 0, 360, 0.2), view=view.name))
    at = (corner[0] - 17.0, corner[1] - 13.0)
    draft.line("edge_fine", (at[0] + 1.2, at[1] + 1.2), (corner[0] - 0.8, corner[1] - 0.8))
    for tip in ((at[0] + 7.0, at[1]), (at[0], at[1] + 7.0)):
        draft.add(
            Stroke(layer="edge", points=(at, tip)),
            Fill(layer="dims", points=arrowhead(tip, at, 2.6, 0.7)),
        )
    draft.add(
        Label(text="x", at=(at[0] + 7.8, at[1] - 0.9), weight="bold"),
        Label(text="y", at=(at[0], at[1] + 8.6), anchor="centre", weight="bold"),
        Label(text="0;0", at=(at[0] - 1.2, at[1] - 1.0), anchor="right", weight="bold"),
    )


def draw_number(
    draft: Draft, cut: MachineCut, box: Box, piece: Box, view: str, others: Sequence[Box] = ()
) -> None:
    """A cut's number in a ring: in the cut where it has room, else beside it with a line to it.

    Args:
        draft: the page.
        cut: the cut.
        box: its own on paper.
        piece: the piece's.
        view: what it is drawn in.
        others: of the other holes of its row, beside which it may stand as well.
    """
    tried = [(box, place) for place in _number_places(box, piece)]
    tried += [(one, place) for one in others for place in _number_places(one, piece)]
    # the holes of a row leave room aslant between them
    holes = (box, *others) if cut.middles is not None else ()
    tried += [(one, place) for one in holes for place in _aslant(one)]
    for own, (x, y) in tried:
        ring = Box(x - _RING, y - _RING, x + _RING, y + _RING)
        if draft.free(ring, 0.2) and draft.off_texts(((x, y), _nearest(own, (x, y)))):
            break
    else:
        draft.unplaced.append(f"the number of cut {cut.number}")
        own, (x, y) = box, box.centre
    draft.add(
        Circle(layer="edge_fine", centre=(x, y), radius=_RING, view=view),
        Label(
            text=str(cut.number), at=(x, y - TEXT / 2), anchor="centre", weight="bold", view=view
        ),
    )
    if (x, y) != own.centre:
        # to the nearest place on the cut's box, its middle where the ring stands over it
        end = _nearest(own, (x, y))
        far = math.dist((x, y), end)
        if far > _RING + 0.3:
            step = _RING / far
            start = (x + (end[0] - x) * step, y + (end[1] - y) * step)
            draft.line("dims", start, end, view)


def _nearest(box: Box, at: Point) -> Point:
    return (min(max(at[0], box.x0), box.x1), min(max(at[1], box.y0), box.y1))


def _number_places(box: Box, piece: Box) -> Iterator[Point]:
    """In a cut, over the edge of the piece that it lies near, beside it; over any part of a long one."""
    (cx, cy), off = box.centre, _RING + 2.2
    if min(box.width, box.height) > 2 * _RING + 1.0:
        yield (cx, cy)
    over = [(cx, piece.y1 + off + 0.2)] if piece.y1 - box.y1 < _NEAR_EDGE else []
    for far in (0.0, 6.0, 12.0):
        yield from ((x + far, y) for x, y in over)
        yield from ((x - far, y) for x, y in over)
        yield from ((cx + far, box.y1 + off), (cx - far, box.y1 + off))
        yield from ((box.x1 + off + far, cy), (box.x0 - off - far, cy))
    for up in (0.0, 2 * _RING, 4 * _RING):
        for share in _SHARES:
            yield (box.x0 + box.width * share, box.y1 + off + up)


def _aslant(box: Box) -> Iterator[Point]:
    (cx, cy), off = box.centre, _RING + 1.6
    for far in (off, off + 3.0, off + 6.0, off + 10.0):
        yield from ((cx + far, cy + far), (cx - far, cy + far))
        yield from ((cx - far, cy - far), (cx + far, cy - far))


def _sides(draft: Draft, set_up: MachineSetUp, piece: Box, low: float, view: str) -> None:
    """The shop's words beside the sides of the piece, where they are free; `low` is under all sizes."""
    lies = set_up.lies
    middle = piece.centre[1] - TEXT / 2
    draft.add_first(
        [
            Label(text=lies.left, at=(piece.x0 - far, y), anchor="right", view=view)
            # past the numbers of cuts that lie along that side
            for far in (3.0, 11.0)
            for y in (middle, middle + 4.0, piece.y1 - TEXT, piece.y1 + 2.0)
        ]
        if width(lies.left) < 18.0
        else [
            Label(
                text=lies.left,
                at=(piece.x0 - far, y),
                anchor="centre",
                turned=90,
                view=view,
            )
            for far in (3.0, 6.0, 9.0)
            for y in (piece.centre[1], piece.y0 + piece.height * 0.7)
        ]
    )
    along = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1, 0.95]
    spots = [piece.x0 + piece.width * share for share in along]
    for text, heights in (
        (lies.near, (piece.y0 - 3.8, piece.y0 - 7.6, piece.y0 - 11.4, low - TEXT)),
        (lies.away, (piece.y1 + 1.6, piece.y1 + 5.4, piece.y1 + 12.6)),
    ):
        draft.add_first(
            [
                *(
                    Label(text=text, at=(x, y), anchor="centre", view=view)
                    for y in heights
                    for x in spots
                ),
                Label(text=text, at=(piece.x1 + 2.0, heights[0]), view=view),
            ]
        )
