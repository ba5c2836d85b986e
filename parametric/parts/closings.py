"""What closes cabinets to a room that is not true: face frames, fillers, plinths, counters.

Each is made with spare and scribed on site to the line that was measured:

    ____________________
   |  made    .'        |     .' the wall as it was measured
   |        .'   kept   |
   |______.'____________|
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence

from parametric.cases.run_edges import Filler
from parametric.cases.slope import Slope
from parametric.figures import Figure
from parametric.model import Group, Material, Part
from parametric.names import join
from parametric.parts.corner_plinths import planned_plinth
from parametric.parts.counters import own_counter, run_counter, to_the_walls
from parametric.parts.face_frames import frame_parts
from parametric.parts.plinths import plinth_parts
from parametric.parts.raked_fillers import filler_between, wall_filler
from parametric.parts.room_boards import room_board, sheet_of
from parametric.parts.scribing import scribe_cuts
from parametric.parts.sloping import filler_cuts, filler_placement
from parametric.resolve.casework import Casework, Edges, StandingCase, StandingRun
from parametric.resolve.room_lines import Point, between, level_line, wall_line


def closing_groups(casework: Casework) -> list[Group]:
    """A group for each run, and for each cabinet that has something of the kind."""
    groups: list[Group] = []
    for run in casework.runs:
        parts = (*_run_parts(run, casework), *run_counter(run, casework), *_cornice(run))
        if parts:
            groups.append(Group(name=run.name, placement=run.stands, parts=parts))
    own = dict(casework.edges)
    bored = {case.name: case.frame for case in casework.bored}
    for standing in casework.cases:
        parts = (
            *frame_parts(standing, bored.get(standing.name)),
            *own_counter(standing),
            *planned_plinth(standing, casework),
        )
        if edges := own.get(standing.name):
            parts += (*_top_of(standing, edges),)
        if parts:
            name = join(standing.name, "closings")
            groups.append(Group(name=name, placement=standing.room, parts=parts))
    return groups


def _top_of(standing: StandingCase, edges: Edges) -> Iterator[Part]:
    """The filler over a cabinet in no run."""
    if edges.top is None:
        return
    left = float(standing.left)
    sheet = sheet_of(standing.board.name, float(standing.board.density))
    slope = standing.case.box.slope
    if slope is not None:
        foot = float(standing.case.box.foot + slope.left)
        yield _along_slope(standing, slope, edges.top, sheet, (left, standing.front, foot))
        return
    yield from _top_filler(
        edges.top.name,
        sheet,
        edges.top.blank,
        standing.case.box.thickness,
        (left, left + float(standing.case.box.width)),
        standing.front,
        float(standing.top),
        level_line(standing.opening, "ceiling"),
    )


def _along_slope(
    standing: StandingCase,
    slope: Slope,
    filler: Filler,
    sheet: Material,
    at: tuple[float, float, float],
) -> Part:
    """A filler on a top that slopes, from end to end of it, square to it; `at` is its left end."""
    thick = standing.case.box.thickness
    size = (slope.length(filler.most), filler.blank, thick)
    board = room_board(filler.name, "top filler", sheet, size, at, "facing, level")
    x, y, z = at
    stands = filler_placement(slope, float(filler.most), (x, y + float(thick), z))
    long, wide, deep = (float(v) for v in size)
    cuts = tuple(filler_cuts(slope, (long, wide, deep), float(filler.most)))
    return dataclasses.replace(board, placement=stands, cuts=cuts)


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
        scribe_cuts("high face", line, False, float(blank), float(thickness)),
    )


def _run_parts(run: StandingRun, casework: Casework) -> Iterator[Part]:
    """Fillers at the walls and the ceiling, a plinth, a counter.

    Args:
        run: where it stands.
        casework: its cabinets.
    """
    tops = (casework.case(run.cases[0]).top, casework.case(run.cases[-1]).top)
    sheet = sheet_of(run.board.name, float(run.board.density))
    foot, head, t = float(run.foot), float(run.head), run.thickness
    edges = run.edges
    counter = Figure(0.0) if run.spec.counter is None else run.spec.counter
    raked = casework.case(run.cases[0]).case.box.slope is not None
    for word, filler, over in (("left", edges.left, tops[0]), ("right", edges.right, tops[1])):
        if filler is None:
            continue
        if raked:
            yield wall_filler(run, word, filler, sheet)
            continue
        top = over - counter
        x = float(run.left - filler.blank) if word == "left" else float(run.right)
        wall = between(wall_line(run.opening, word), foot, float(top))
        line = [(z - foot, across - x) for z, across in wall]
        cuts = scribe_cuts("low face", line, word == "left", float(filler.blank), float(t))
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
        if raked:
            yield filler_between(run, casework, number, (begins, wide), sheet)
            continue
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
        yield from plinth_parts(run, casework, sheet)


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
