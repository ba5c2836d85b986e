"""What closes cabinets to a room that is not true: face frames, fillers, plinths, counters.

Each is made with spare and scribed on site to the line that was measured:

    ____________________
   |  made    .'        |     .' the wall as it was measured
   |        .'   kept   |
   |______.'____________|
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from parametric.cases.run_edges import Filler
from parametric.figures import Figure
from parametric.model import Cut, Face, Group, Making, Material, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import Outline, Vertex
from parametric.parts.counters import own_counter, run_counter, to_the_walls
from parametric.parts.room_boards import room_board, sheet_of
from parametric.resolve.casework import Casework, Edges, StandingCase, StandingRun
from parametric.resolve.room_lines import Point, between, level_line, wall_line

SCRIBED = Making(
    by="bench", when="on site", tool="scribed to the room, then planed or sanded to it"
)
CROSS_EVERY = 600.0
"""Cross pieces of a plinth are no farther apart than this, mm. Common practice, no source."""
_SAME = 1e-6


def closing_groups(casework: Casework) -> list[Group]:
    """A group for each run, and for each cabinet that has something of the kind."""
    groups: list[Group] = []
    for run in casework.runs:
        tops = (casework.case(run.cases[0]).top, casework.case(run.cases[-1]).top)
        parts = (*_run_parts(run, tops), *run_counter(run, casework), *_cornice(run))
        if parts:
            groups.append(Group(name=run.name, placement=run.stands, parts=parts))
    own = dict(casework.edges)
    for standing in casework.cases:
        parts = (*_frame_parts(standing), *own_counter(standing))
        if edges := own.get(standing.name):
            parts += (*_top_of(standing, edges),)
        if parts:
            room = Placement(origin=(standing.stands.origin[0] - float(standing.left), 0.0, 0.0))
            groups.append(Group(name=join(standing.name, "closings"), placement=room, parts=parts))
    return groups


def _scribe(face: Face, line: Sequence[Point], low: bool, width: float, depth: float) -> list[Cut]:
    """The wood beyond a line of (u, v) on a face, to its low or its high edge; none where there is none."""
    edge = 0.0 if low else width
    kept = [(u, min(max(v, 0.0), width)) for u, v in line]
    if all(abs(v - edge) < _SAME for _, v in kept):
        return []
    (first, _), (last, _) = kept[0], kept[-1]
    if low:
        corners = [(first, 0.0), (last, 0.0), *reversed(kept)]
    else:
        corners = [*kept, (last, width), (first, width)]
    return [
        Shaped(
            name="scribed",
            face=face,
            outline=_without_doubles(corners),
            depth=depth,
            making=SCRIBED,
        )
    ]


def _without_doubles(corners: Sequence[Point]) -> Outline:
    found: list[Vertex] = []
    for u, v in corners:
        if not found or math.hypot(u - found[-1].x, v - found[-1].y) > _SAME:
            found.append(Vertex(u, v))
    if math.hypot(found[0].x - found[-1].x, found[0].y - found[-1].y) <= _SAME:
        found.pop()
    return tuple(found)


def _frame_parts(standing: StandingCase) -> Iterator[Part]:
    """Wall stiles, centre stiles between the bays, two rails."""
    frame, box = standing.case.frame, standing.case.box
    if frame is None or standing.frame_timber is None:
        return
    wood = Material(
        name=standing.frame_timber.name,
        look="timber",
        density=float(standing.frame_timber.density),
    )
    place = join(box.name, "face frame")
    kick = Figure(0.0) if box.kick_high is None else box.kick_high
    foot, high = float(box.foot + kick), box.height - kick
    y = standing.stands.origin[1] - float(frame.thickness)
    for scribe, x in (
        (frame.left, frame.left.edge),
        (frame.right, frame.right.edge - frame.right.blank),
    ):
        wall = between(wall_line(standing.opening, scribe.side), foot, foot + float(high))
        line = [(z - foot, across - float(x)) for z, across in wall]
        low = scribe.side == "left"
        cuts = _scribe("low face", line, low, float(scribe.blank), float(frame.thickness))
        yield room_board(
            join(place, f"{scribe.side} wall stile"),
            "wall stile",
            wood,
            (high, scribe.blank, frame.thickness),
            (float(x), y, foot),
            "facing",
            cuts,
        )
    between_rails = high - 2 * frame.rail
    for number, left in enumerate(standing.centre_stiles, 1):
        several = len(standing.centre_stiles) > 1
        yield room_board(
            join(place, f"centre stile {number}" if several else "centre stile"),
            "centre stile",
            wood,
            (between_rails, frame.centre_stile, frame.thickness),
            (float(left), y, foot + float(frame.rail)),
            "facing",
        )
    for word, z in (("top rail", foot + float(high - frame.rail)), ("bottom rail", foot)):
        yield room_board(
            join(place, word),
            "frame rail",
            wood,
            (frame.opening, frame.rail, frame.thickness),
            (float(frame.opening_left), y, z),
            "facing, level",
        )


def _top_of(standing: StandingCase, edges: Edges) -> Iterator[Part]:
    """The filler over a cabinet in no run."""
    if edges.top is None:
        return
    x, y, _ = standing.stands.origin
    left = float(standing.left)
    sheet = sheet_of(standing.board.name, float(standing.board.density))
    yield from _top_filler(
        edges.top.name,
        sheet,
        edges.top.blank,
        standing.case.box.thickness,
        (left, left + float(standing.case.box.width)),
        y,
        float(standing.top),
        level_line(standing.opening, "ceiling"),
    )
    del x


def _top_filler(
    name: str,
    sheet: Material,
    blank: Figure,
    thickness: Figure,
    ends: tuple[float, float],
    front: float,
    foot: float,
    ceiling: Sequence[Point],
) -> Iterator[Part]:
    left, right = ends
    line = [(x - left, z - foot) for x, z in between(ceiling, left, right)]
    yield room_board(
        name,
        "top filler",
        sheet,
        (right - left, blank, thickness),
        (left, front, foot),
        "facing, level",
        _scribe("high face", line, False, float(blank), float(thickness)),
    )


def _run_parts(run: StandingRun, tops: tuple[Figure, Figure]) -> Iterator[Part]:
    """Fillers at the walls and the ceiling, a plinth, a counter.

    Args:
        run: where it stands.
        tops: of its first and its last cabinet above the highest floor, counter and all, mm.
    """
    sheet = sheet_of(run.board.name, float(run.board.density))
    foot, head, t = float(run.foot), float(run.head), run.thickness
    edges = run.edges
    counter = Figure(0.0) if run.spec.counter is None else run.spec.counter
    for word, filler, over in (("left", edges.left, tops[0]), ("right", edges.right, tops[1])):
        if filler is None:
            continue
        top = over - counter
        x = float(run.left - filler.blank) if word == "left" else float(run.right)
        wall = between(wall_line(run.opening, word), foot, float(top))
        line = [(z - foot, across - x) for z, across in wall]
        cuts = _scribe("low face", line, word == "left", float(filler.blank), float(t))
        yield room_board(
            filler.name,
            f"{word} filler",
            sheet,
            (top - run.foot, filler.blank, t),
            (x, run.front, foot),
            "facing",
            cuts,
        )
    for number, (begins, wide) in enumerate(run.fillers_between, 1):
        yield room_board(
            join(run.name, f"filler {number}"),
            "filler",
            sheet,
            (run.head - counter - run.foot, wide, t),
            (float(begins), run.front, foot),
            "facing",
        )
    if edges.top is not None:
        yield from _top_filler(
            edges.top.name,
            sheet,
            edges.top.blank,
            t,
            to_the_walls(run, head, float(run.opening.head)),
            run.front,
            head,
            level_line(run.opening, "ceiling"),
        )
    if edges.plinth is not None:
        yield from _plinth(run, sheet)


def _cornice(run: StandingRun) -> Iterator[Part]:
    """A plain board on top of the cases, its face with their front edges."""
    high = run.spec.cornice
    if high is None:
        return
    yield room_board(
        join(run.name, "cornice"),
        "cornice",
        sheet_of(run.board.name, float(run.board.density)),
        (run.right - run.left, high, run.thickness),
        (float(run.left), run.front, float(run.head)),
        "facing, level",
    )


def _plinth(run: StandingRun, sheet: Material) -> Iterator[Part]:
    """One under everything that stands side by side."""
    plinth = run.edges.plinth
    assert plinth is not None
    for number, (left, right) in enumerate(run.stretches, 1):
        word = f"part {number}" if len(run.stretches) > 1 else ""
        yield from _plinth_part(run, sheet, plinth, join(plinth.name, word), left, right)


def _plinth_part(
    run: StandingRun, sheet: Material, plinth: Filler, name: str, begins: Figure, ends: Figure
) -> Iterator[Part]:
    """Front and back scribed to the floor, cross pieces between them as low as the floor is high."""
    t = float(run.thickness)
    left, right, foot = float(begins), float(ends), float(run.foot)
    low = foot - float(plinth.blank)
    line = [(x - left, z - low) for x, z in between(level_line(run.opening, "floor"), left, right)]
    front = run.front + float(run.spec.plinth_back)
    back = run.front + float(run.depth) - t
    for side, y in (("front", front), ("back", back)):
        yield room_board(
            join(name, side),
            f"plinth {side}",
            sheet,
            (ends - begins, plinth.blank, run.thickness),
            (left, y, low),
            "facing, level",
            _scribe("high face", line, True, float(plinth.blank), t),
        )
    count = math.ceil((right - left) / CROSS_EVERY) + 1
    long, high = back - front - t, float(plinth.least)
    for number in range(count):
        x = left + (right - left - t) * number / (count - 1)
        yield room_board(
            join(name, f"cross piece {number + 1}"),
            "plinth cross piece",
            sheet,
            (long, high, run.thickness),
            (x, front + t, foot - high),
            "inwards",
        )
