"""What a run stands on: a plinth scribed and levelled, or legs set to the floor as it was measured."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.cases.plan_shape import FRONTS
from parametric.figures import Figure, named
from parametric.model import Blank, Making, Material, Part, Placement, RoundArrises
from parametric.names import join
from parametric.parts.corner_plinths import goes_on
from parametric.parts.room_boards import room_board
from parametric.parts.scribing import scribe_cuts
from parametric.resolve.casework import Casework, StandingCase, StandingRun
from parametric.resolve.room_lines import along, between, level_line

CROSS_EVERY = 600.0
"""Cross pieces of a plinth are no farther apart than this, mm. Common practice, no source."""
_SAME = 1e-6
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
        faces = _past_its_neighbours(run, casework, left, right)
        yield from _stretch(run, sheet, join(plinth.name, word), (left, right), faces)
    for name in run.cases:
        if run.spec.levelled_by == "legs":
            yield from _legs(run, casework.case(name))


def _past_its_neighbours(
    run: StandingRun, casework: Casework, left: Figure, right: Figure
) -> tuple[Figure, Figure]:
    """A stretch's ends, to where its face meets that of a plinth that turns away beside it, mm."""
    back = run.spec.plinth_back
    for case in casework.cases:
        plan = case.case.plan
        if plan is None or run.name not in (case.run, case.returns_in):
            continue
        if case.returns_in == run.name:
            if float(left) == min(float(begins) for begins, _ in run.stretches):
                left = left - goes_on(plan, "right side", back)
            continue
        if abs(float(case.left - right)) < _SAME:
            right = right + goes_on(plan, "left side", back)
        if abs(float(case.left + case.case.box.width - left)) < _SAME:
            left = left - goes_on(plan, "right side", back)
    return left, right


def _stretch(
    run: StandingRun,
    sheet: Material,
    name: str,
    under: tuple[Figure, Figure],
    face: tuple[Figure, Figure],
) -> Iterator[Part]:
    """Front and back scribed to the floor, cross pieces between them as low as the floor is high.

    Args:
        run: where it stands.
        sheet: what it is made of.
        name: its name.
        under: left and right of the cases over it, mm.
        face: left and right of its front, mm.
    """
    plinth = run.edges.plinth
    assert plinth is not None
    t = float(run.thickness)
    left, right, foot = float(under[0]), float(under[1]), float(run.foot)
    low = foot - float(plinth.blank)
    floor = level_line(run.opening, "floor")
    front = run.front + float(run.spec.plinth_back)
    back = run.front + float(run.depth) - t
    legs = run.spec.levelled_by == "legs"
    both = (("front", front, face), ("back", back, under))
    for side, y, (begins, ends) in both[:1] if legs else both:
        at = float(begins)
        line = [(x - at, z - low) for x, z in between(floor, at, float(ends))]
        yield room_board(
            join(name, side),
            f"plinth {side}",
            sheet,
            (ends - begins, plinth.blank, run.thickness),
            (at, y, low),
            "facing, level",
            scribe_cuts("high face", line, True, float(plinth.blank), t),
        )
    if legs:
        return
    # clear of a neighbour's front that ends under them
    left, right = max(left, float(face[0])), min(right, float(face[1]))
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
    floor = level_line(run.opening, "floor")
    for number, (across, y) in enumerate(_legs_stand(run, standing), 1):
        x = float(standing.left) + across
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


def _legs_stand(run: StandingRun, standing: StandingCase) -> Iterator[tuple[float, float]]:
    """Where a case's legs stand from its left and its front edges: of one with a plan, in its corners."""
    box, plan = standing.case.box, standing.case.plan
    front = float(run.spec.plinth_back + run.thickness) + LEG_ACROSS
    if plan is not None:
        sides = [side.word for side in plan.sides]
        yield from plan.within({word: front if word in FRONTS else LEG_IN for word in sides})
        return
    wide = float(box.width) - 2 * LEG_IN
    each = max(2, math.ceil(wide / LEGS_APART) + 1)
    for y in (front, float(box.depth) - LEG_IN):
        for place in range(each):
            yield LEG_IN + wide * place / (each - 1), y
