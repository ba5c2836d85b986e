"""What screw pockets draw: their mouths on the face, the pilots dashed until out of the end."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.drawing.part_sheets.shaped_cuts import Bow, Line
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.plane import Point
from parametric.model import ScrewPocket

_CORNERS = 48


def screw_pocket_lines(cut: ScrewPocket, part: Unfolded) -> Iterator[Line | Bow]:
    """The ellipse that the pocket makes of the face; on the face side the pilot; its hole in the end."""
    side = part.side(cut.face)
    angle = math.radians(float(cut.angle))
    across = float(cut.wide) / 2
    along = across / math.sin(angle)
    middle = _mouth(cut, part)
    ring = [math.tau * n / _CORNERS for n in range(_CORNERS)]
    for v in cut.places:
        points = tuple(
            part.on_face(
                cut.face, middle + along * math.cos(t), v + across * math.sin(t), 0.0, side
            )
            for t in ring
        )
        yield Line(side=side, layer="edge", points=points)
        yield from _pilot(cut, part, side, v)
        yield _out_of_the_end(cut, part, v)


def _pilot(cut: ScrewPocket, part: Unfolded, side: Side, v: float) -> Iterator[Line]:
    """Two dashed lines from the pocket's floor to the end."""
    angle = math.radians(float(cut.angle))
    floor = float(cut.mouth) - float(cut.deep) * math.cos(angle)
    for edge in (v - float(cut.pilot) / 2, v + float(cut.pilot) / 2):
        ends = tuple(
            part.on_face(cut.face, _from_end(cut, part, at), edge, 0.0, side) for at in (floor, 0.0)
        )
        yield Line(side=side, layer="hidden", points=ends, closed=False)


def _out_of_the_end(cut: ScrewPocket, part: Unfolded, v: float) -> Bow:
    """Where the pilot comes out: all but round."""
    side = part.side(cut.end)
    down = float(cut.mouth) * math.tan(math.radians(float(cut.angle)))
    w = down if cut.face == "low face" else part.thickness - down
    centre = part.on_face(cut.end, v, w, 0.0, side)
    return Bow(
        side=side, layer="edge", centre=centre, radius=float(cut.pilot) / 2, start=0.0, end=360.0
    )


def screw_pocket_target(cut: ScrewPocket, part: Unfolded) -> Point:
    """The first one, in the middle of its mouth."""
    return part.on_face(cut.face, _mouth(cut, part), float(cut.v), 0.0, part.side(cut.face))


def screw_pocket_span(cut: ScrewPocket, part: Unfolded) -> tuple[float, float]:
    """From the end to the far side of the mouths, along the part."""
    ends = (_from_end(cut, part, 0.0), _from_end(cut, part, cut.reach))
    return (min(ends) - part.foot, max(ends) - part.foot)


def _mouth(cut: ScrewPocket, part: Unfolded) -> float:
    return _from_end(cut, part, float(cut.mouth))


def _from_end(cut: ScrewPocket, part: Unfolded, off: float) -> float:
    """A place along the blank, so far from the end that the screws come out of."""
    return off if cut.end == "low end" else float(part.part.blank.length) - off
