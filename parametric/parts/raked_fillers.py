r"""Fillers of a run whose tops follow a ceiling: at the walls up to it, between cases up to their line.

seen from the front, at the left wall
 \ ceiling
 |\ \
 |#\ \ top      # filler: made as long as the ceiling is high over it, scribed to wall and ceiling
 |##|
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from parametric.cases.run_edges import Filler
from parametric.cases.slope import Slope
from parametric.figures import Figure, largest
from parametric.model import Material, Part
from parametric.names import join
from parametric.parts.room_boards import room_board
from parametric.parts.scribing import SCRIBED, scribe_cuts
from parametric.parts.sloping import raked_end
from parametric.resolve.case_edges import ceiling_over
from parametric.resolve.casework import Casework, StandingCase, StandingRun
from parametric.resolve.room_lines import Point, along, between, wall_line


def wall_filler(run: StandingRun, side: str, filler: Filler, sheet: Material) -> Part:
    """A filler at a wall, up to the ceiling.

    Args:
        run: what it closes.
        side: which wall.
        filler: its size.
        sheet: what it is made of.
    """
    foot, blank, thick = float(run.foot), filler.blank, float(run.thickness)
    left = side == "left"
    case_edge = run.left if left else run.right
    outer = case_edge - filler.most if left else case_edge + filler.most
    over = ceiling_over(run.opening, *sorted((outer, case_edge), key=float))
    high = largest(*over.values()) - run.foot
    x = float(case_edge - blank) if left else float(case_edge)
    wall = between(wall_line(run.opening, side), foot, foot + float(high))
    line = [(z - foot, across - x) for z, across in wall]
    # from the wall to the case, or from the case to the wall
    edge = float(blank) if left else 0.0
    ends = [(edge, _up(run, case_edge)), (edge, float(high))]
    shape = [*_past_the_ceiling(run, x, line), ends[1], ends[0]]
    cuts = scribe_cuts("low face", line, left, float(blank), thick)
    board = room_board(
        filler.name,
        f"{side} filler",
        sheet,
        (high, blank, run.thickness),
        (x, run.front, foot),
        "facing",
    )
    corners = [(up, across) for across, up in shape]
    top = raked_end("scribed to the ceiling", corners, thick, SCRIBED)
    return replace(board, cuts=(*cuts, *top))


def _up(run: StandingRun, x: float) -> float:
    """The ceiling over a place across, from the run's foot, mm."""
    low, high = (float(run.opening.ceiling[side]) for side in ("left", "right"))
    return low + (high - low) * float(x) / float(run.opening.widest) - float(run.foot)


def _past_the_ceiling(
    run: StandingRun, x: float, line: Sequence[Point]
) -> Iterator[tuple[float, float]]:
    """Along the wall from where a filler ends to where the ceiling meets it: (across, up).

    Args:
        run: the run.
        x: the filler's left edge in the room, mm.
        line: the wall as the filler has it, (up, across) from its foot.
    """
    top, at_top = line[-1]
    yield at_top, top
    across = at_top
    # a wall leans so little that each try is far nearer than the last
    for _ in range(8):
        across = along(line, _up(run, x + across))
    if _up(run, x + across) < top:
        yield across, _up(run, x + across)


def filler_between(
    run: StandingRun, casework: Casework, number: int, place: tuple[Figure, Figure], sheet: Material
) -> Part:
    """A filler between two cases, up to the line of their tops.

    Args:
        run: the run.
        casework: its cases.
        number: of the filler, from the left.
        place: its left in the room, and its width, mm.
        sheet: what it is made of.
    """
    begins, wide = place
    case = next(
        own
        for own in map(casework.case, run.cases)
        if abs(float(own.left + own.case.box.width - begins)) < 1e-6
        or abs(float(own.left - begins - wide)) < 1e-6
    )
    slope = case.case.box.slope
    assert slope is not None, "asked of a run under a slope"
    ends = [_top_line(case, slope, at) for at in (begins, begins + wide)]
    high = largest(*ends) - run.foot
    low, top = (float(end) - float(run.foot) for end in ends)
    corners = [(low, 0.0), (top, float(wide)), (float(high), float(wide)), (float(high), 0.0)]
    board = room_board(
        join(run.name, f"filler {number}"),
        "filler",
        sheet,
        (high, wide, run.thickness),
        (float(begins), run.front, float(run.foot)),
        "facing",
    )
    return replace(board, cuts=tuple(raked_end("end to the slope", corners, float(run.thickness))))


def _top_line(case: StandingCase, slope: Slope, x: Figure) -> Figure:
    """The outer face of a case's top, carried on to a place across, above the highest floor, mm."""
    return case.case.box.foot + slope.outer(float(x - case.left))
