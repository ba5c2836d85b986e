"""What a run stands on: a plinth scribed and levelled, or legs set to the floor as it was measured."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.cases.run_edges import Filler
from parametric.figures import Figure, named
from parametric.model import Blank, Making, Material, Part, Placement, RoundArrises
from parametric.names import join
from parametric.parts.room_boards import room_board
from parametric.parts.scribing import scribe_cuts
from parametric.resolve.casework import Casework, StandingCase, StandingRun
from parametric.resolve.room_lines import along, between, level_line

CROSS_EVERY = 600.0
"""Cross pieces of a plinth are no farther apart than this, mm. Common practice, no source."""
LEG = Material(name="adjustable leg", look="metal", density=0.0)
LEG_ACROSS, LEG_IN, LEGS_APART = 30.0, 60.0, 700.0
"""A leg's diameter, its middle in from the edges of its cabinet, and how far apart two of one row
stand at most, mm. Common practice, no source; what a leg carries stands on its data sheet."""
BOUGHT = Making(by="bench", tool="as it is bought")


def plinth_parts(run: StandingRun, casework: Casework, sheet: Material) -> Iterator[Part]:
    """One under everything that stands side by side; on legs only its front, clipped to them.

    Args:
        run: where it stands.
        casework: its cabinets.
        sheet: what it is made of.
    """
    plinth = run.edges.plinth
    assert plinth is not None
    for number, (left, right) in enumerate(run.stretches, 1):
        word = f"part {number}" if len(run.stretches) > 1 else ""
        yield from _stretch(run, sheet, plinth, join(plinth.name, word), left, right)
    if run.spec.levelled_by == "legs":
        for name in run.cases:
            yield from _legs(run, casework.case(name))


def _stretch(
    run: StandingRun, sheet: Material, plinth: Filler, name: str, begins: Figure, ends: Figure
) -> Iterator[Part]:
    """Front and back scribed to the floor, cross pieces between them as low as the floor is high."""
    t = float(run.thickness)
    left, right, foot = float(begins), float(ends), float(run.foot)
    low = foot - float(plinth.blank)
    line = [(x - left, z - low) for x, z in between(level_line(run.opening, "floor"), left, right)]
    front = run.front + float(run.spec.plinth_back)
    back = run.front + float(run.depth) - t
    legs = run.spec.levelled_by == "legs"
    for side, y in (("front", front),) if legs else (("front", front), ("back", back)):
        yield room_board(
            join(name, side),
            f"plinth {side}",
            sheet,
            (ends - begins, plinth.blank, run.thickness),
            (left, y, low),
            "facing, level",
            scribe_cuts("high face", line, True, float(plinth.blank), t),
        )
    if legs:
        return
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


def _legs(run: StandingRun, standing: StandingCase) -> Iterator[Part]:
    """Two rows under a cabinet, each leg as long as the floor asks for where it stands."""
    box = standing.case.box
    wide = float(box.width) - 2 * LEG_IN
    each = max(2, math.ceil(wide / LEGS_APART) + 1)
    floor = level_line(run.opening, "floor")
    plinth_back = float(run.spec.plinth_back + run.thickness)
    rows = (plinth_back + LEG_ACROSS, float(box.depth) - LEG_IN)
    number = 0
    for y in rows:
        for place in range(each):
            number += 1
            x = float(standing.left) + LEG_IN + wide * place / (each - 1)
            low = along(floor, x)
            name = join(standing.name, f"leg {number}")
            half = LEG_ACROSS / 2
            yield Part(
                name=name,
                noun="leg, set to length",
                mark="K",
                material=LEG,
                blank=Blank(
                    length=named(join(name, "set to"), run.foot - low),
                    width=LEG_ACROSS,
                    thickness=LEG_ACROSS,
                ),
                placement=Placement(
                    origin=(x + half, standing.front + y - half, low),
                    x=(0.0, 0.0, 1.0),
                    y=(0.0, 1.0, 0.0),
                ),
                cuts=(RoundArrises(name="round", radius=half, making=BOUGHT),),
                supplied=True,
            )
