"""Where the walls that hold cabinets stand: apart, or one going on from another round a corner.

seen from above; cabinets stand before each wall, y is into it

    wall ______________________  the next, right of it, turns 90 deg
                              |
                              |   its x runs on from the corner
                              v
"""

from __future__ import annotations

import math

from parametric.design.survey import SurveySpec
from parametric.figures import Figure
from parametric.model import Placement
from parametric.resolve.opening import Opening

BETWEEN_ROOMS = 600.0
"""Between two openings that hold cabinets and were surveyed apart, mm. By eye, no source."""
SQUARE = 90.0


class Rooms:
    """Each wall's own frame among all that is made: x along it from its left foot, y into it."""

    def __init__(self, begins: float) -> None:
        """`begins` is how far right the first of them may, mm."""
        self._next = begins
        self._frames: dict[str, Placement] = {}

    def of(self, survey: SurveySpec) -> Placement:
        """The frame of a wall that was given a place."""
        return self._frames[survey.heading]

    def apart(self, survey: SurveySpec, opening: Opening) -> None:
        """A wall of its own, to the right of those before it."""
        self._frames[survey.heading] = Placement(origin=(self._next, 0.0, 0.0))
        self._next += float(opening.widest) + BETWEEN_ROOMS

    def turn(
        self,
        survey: SurveySpec,
        opening: Opening,
        other: SurveySpec,
        beside: Opening,
        depth: Figure,
    ) -> None:
        """A wall that goes on from another's end, round an inside corner.

        Args:
            survey: of this wall.
            opening: the same, worked out.
            other: of the wall it goes on from.
            beside: the same, worked out.
            depth: from every frame's origin to its wall, mm.
        """
        first = self._frames[other.heading]
        turn = math.radians(180 - float(survey.turns if survey.turns is not None else SQUARE))
        cos, sin = _tidy(math.cos(turn)), _tidy(math.sin(turn))
        deep = float(depth)
        if survey.right_of is not None:
            corner = (float(beside.widest), deep)
            along, into = (cos, -sin), (sin, cos)
            begins = corner
        else:
            corner = (0.0, deep)
            along, into = (cos, sin), (-sin, cos)
            wide = float(opening.widest)
            begins = (corner[0] - wide * along[0], corner[1] - wide * along[1])
        origin = (begins[0] - deep * into[0], begins[1] - deep * into[1], 0.0)
        self._frames[survey.heading] = Placement(
            origin=first.point(origin),
            x=first.direction((along[0], along[1], 0.0)),
            y=first.direction((into[0], into[1], 0.0)),
        )
        if survey.right_of is not None:
            self._next += float(opening.widest)


def _tidy(value: float) -> float:
    """A square corner is square to the last bit."""
    return round(value) + 0.0 if abs(value - round(value)) < 1e-12 else value
