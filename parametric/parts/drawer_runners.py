"""Wooden runners, kickers and guides as parts, in the frame of their opening.

The frame: x to the right from the left of the opening, y back from the front edges of the case,
z up from the foot of the opening. Behind a face frame the case's sides stand outside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from parametric.cases.drawer_runners import DrawerRunners, Strip
from parametric.model import Blank, Face, Part, Placement
from parametric.names import join
from parametric.parts.drawer import BACK, FORWARD, HERE, LEFT, MARK, UP, box_stuff, stands

_FLAT: Mapping[Face, str] = {
    "low end": "front end",
    "high end": "back end",
    "low face": "underside",
    "high face": "upper side",
}
_ON_EDGE: Mapping[Face, str] = {
    "low end": "front end",
    "high end": "back end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "outside",
    "high face": "inside",
}


def runner_parts(runners: DrawerRunners, *, at: Placement = HERE) -> tuple[Part, ...]:
    """Left and right of each: runners, guides, kickers."""
    strips = (runners.runner, runners.guide, runners.kicker)
    return tuple(
        _strip(runners, strip, side, at)
        for strip in strips
        if strip is not None
        for side in ("left", "right")
    )


def _strip(
    runners: DrawerRunners, strip: Strip, side: Literal["left", "right"], at: Placement
) -> Part:
    """A strip lies flat against the side of the case; a guide stands on edge there."""
    on_edge, left = strip.word == "guide", side == "left"
    pack, front, foot = float(runners.pack), float(runners.set_back), float(strip.foot)
    case_side = -pack if left else float(runners.clear_width) + pack
    if on_edge:
        back = front + float(runners.length)
        origin = (case_side, front if left else back, foot)
        placement = stands(at, origin, BACK if left else FORWARD, UP)
    else:
        right = case_side + float(strip.width) if left else case_side
        placement = stands(at, (right, front, foot), BACK, LEFT)
    ends: Mapping[Face, str] = (
        {"low end": "back end", "high end": "front end"} if on_edge and not left else {}
    )
    return Part(
        name=join(runners.name, f"{side} {strip.word}"),
        noun=f"drawer {strip.word}",
        mark=MARK,
        material=box_stuff(runners.stuff),
        blank=Blank(length=runners.length, width=strip.width, thickness=strip.thickness),
        placement=placement,
        faces={**(_ON_EDGE if on_edge else _FLAT), **ends},
    )
