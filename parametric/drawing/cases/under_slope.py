r"""A case whose top slopes, as its views show it: the angle, and what lies past an upright cut.

 _________            the case falls away from the viewer: the under face of its top comes down
|     |   |           to the side beyond; rising, its outer face stands over what is cut
|=====|   |
"""

from __future__ import annotations

import math

from parametric.cases.case import CaseBox
from parametric.cases.slope import Slope
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import degrees
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Polygon, rectangle
from parametric.drawing.primitives import Arc, Label, Stroke
from parametric.drawing.sheet import View
from parametric.hangings.hanging import Side

_RADIUS = 16.0
"""Of the arc that an angle is told on, mm on paper."""
_PAST = 2.0


def beyond(box: CaseBox, at: float, looks: Side) -> tuple[Polygon, ...]:
    """The side of a case past an upright cut, and what is seen of its top: (y, z) in the case.

    Args:
        box: the case.
        at: where it is cut, from its left, mm.
        looks: the way one looks.
    """
    deep, slope = float(box.depth), box.slope
    if slope is None:
        return (rectangle(0.0, 0.0, deep, float(box.height)),)
    end = float(box.width) if looks == "right" else 0.0
    here, there = float(slope.outer(at)), float(slope.outer(end))
    found = rectangle(0.0, 0.0, deep, max(here, there))
    if there > here:
        return (found,)
    under = float(slope.under(end))
    return found, ((0.0, under), (deep, under))


def draw_slope(draft: Draft, view: View, slope: Slope) -> None:
    """How far a case's top is off the level: an arc from a level line at its higher end."""
    falls = float(slope.angle) < 0
    corner = (0.0, float(slope.left)) if falls else (float(slope.width), float(slope.right))
    x, y = view.at(corner)
    way, angle = (1.0 if falls else -1.0), abs(float(slope.angle))
    turn, out = math.radians(angle / 2), _RADIUS + _PAST
    level, middle = x + way * out, y - TEXT / 2
    places = [
        (x + way * out * math.cos(turn), middle - out * math.sin(turn)),
        (level, y + 1.0),
        (level + way * 3.0, middle),
    ]
    start, end = (-angle, 0.0) if falls else (180.0, 180.0 + angle)
    draft.add(
        Stroke(layer="dims", points=((x, y), (level, y)), view=view.name),
        Arc(layer="dims", centre=(x, y), radius=_RADIUS, start=start, end=end, view=view.name),
    )
    draft.add_first(
        [
            Label(text=degrees(angle), at=at, anchor="left" if falls else "right", view=view.name)
            for at in places
        ]
    )
