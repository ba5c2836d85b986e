"""A drawer's box: two sides, a front, a back, the bottom in their grooves, dowels where it has them.

The box's frame: x to the right from the outside of its left side, y back from its front, z up
from its low edge.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_corners import DowelCorner
from parametric.cases.drawer_cuts import (
    Cutters,
    Member,
    back_notches,
    bottom_groove,
    end_corner,
    end_groove,
    side_corner,
    side_groove,
)
from parametric.cases.drawer_written import UnderSlidesSpec
from parametric.catalog.boards import Board
from parametric.catalog.timbers import Timber
from parametric.model import (
    Blank,
    Face,
    Making,
    Material,
    Part,
    Placement,
    RoundArrises,
    Shaped,
    Vector,
)
from parametric.names import join

MARK = "W"
HERE = Placement()
RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
BACK, FORWARD = (0.0, 1.0, 0.0), (0.0, -1.0, 0.0)
UP = (0.0, 0.0, 1.0)
DOWEL = Material(name="dowel", look="timber", density=700.0)
_SIDE: Mapping[Face, str] = {
    "low end": "front end",
    "high end": "back end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "outside",
    "high face": "inside",
}
_END: Mapping[Face, str] = {
    "low end": "left end",
    "high end": "right end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "inside",
    "high face": "outside",
}
_BOTTOM: Mapping[Face, str] = {
    "low end": "front edge",
    "high end": "back edge",
    "low edge": "right edge",
    "high edge": "left edge",
    "low face": "underside",
    "high face": "upper side",
}


def drawer_parts(
    box: DrawerBox, *, at: Placement = HERE, cutters: Cutters = ()
) -> tuple[Part, ...]:
    """The pieces of a drawer's box: left side, right side, front, back, bottom, dowels.

    Args:
        box: the box.
        at: where its frame stands.
        cutters: router cutters in the shop, diameters, mm.
    """
    return (
        _side(box, "left", at, cutters),
        _side(box, "right", at, cutters),
        _end(box, "front", at, cutters),
        _end(box, "back", at, cutters),
        _bottom(box, at),
        *_dowels(box, at),
    )


def of_a_box(part: Part) -> bool:
    """Whether it is of a drawer's box, or of what one runs on."""
    return part.mark.startswith(MARK)


def box_stuff(stuff: Timber | Board) -> Material:
    """What sides, front, back or bottom are made of."""
    look: Literal["timber", "board"] = "timber" if isinstance(stuff, Timber) else "board"
    return Material(name=stuff.name, look=look, density=stuff.density)


def _side(box: DrawerBox, word: Literal["left", "right"], at: Placement, cutters: Cutters) -> Part:
    """Left and right are one part turned about, where front and back corners are alike."""
    left = word == "left"
    low, high = (box.front, box.back) if left else (box.back, box.front)
    member = Member(
        length=float(box.side_length),
        height=float(box.height),
        thickness=float(box.side),
        other=float(box.end),
    )
    front, back = float(box.front.lap), float(box.length) - float(box.back.lap)
    return Part(
        name=join(box.name, f"{word} side"),
        noun="drawer side",
        mark=MARK,
        material=box_stuff(box.stuff),
        blank=Blank(length=box.side_length, width=box.height, thickness=box.side),
        placement=stands(
            at,
            (0.0, front, 0.0) if left else (float(box.width), back, 0.0),
            BACK if left else FORWARD,
            UP,
        ),
        cuts=(
            *side_corner(low, "low end", member),
            bottom_groove(
                box.groove,
                "high face",
                member,
                side_groove(low, box.groove, member, hidden=box.planted or not left),
                side_groove(high, box.groove, member, hidden=box.planted or left),
                cutters,
            ),
            *side_corner(high, "high end", member),
        ),
        faces=_SIDE if left else {**_SIDE, "low end": "back end", "high end": "front end"},
    )


def _end(box: DrawerBox, word: Literal["front", "back"], at: Placement, cutters: Cutters) -> Part:
    """The box's front, or its back: one part turned about where their corners are alike."""
    front = word == "front"
    corner = box.front if front else box.back
    length = box.front_length if front else box.back_length
    member = Member(
        length=float(length),
        height=float(box.height),
        thickness=float(box.end),
        other=float(box.side),
    )
    runs = end_groove(corner, box.groove)
    left = float(box.side) - float(corner.reach)
    right = left + float(length)
    return Part(
        name=join(box.name, f"box {word}"),
        noun=f"drawer box {word}",
        mark=MARK,
        material=box_stuff(box.stuff),
        blank=Blank(length=length, width=box.height, thickness=box.end),
        placement=stands(
            at,
            (left, float(box.end), 0.0)
            if front
            else (right, float(box.length) - float(box.end), 0.0),
            RIGHT if front else LEFT,
            UP,
        ),
        cuts=(
            *end_corner(corner, "low end", member),
            bottom_groove(box.groove, "low face", member, runs, runs, cutters),
            *end_corner(corner, "high end", member),
            *(() if front else _notches(box, member)),
        ),
        faces=_END if front else {**_END, "low end": "right end", "high end": "left end"},
    )


def _notches(box: DrawerBox, back: Member) -> tuple[Shaped, ...]:
    spec = box.written
    if not isinstance(spec, UnderSlidesSpec):
        return ()
    wide, high = spec.back_notch
    return back_notches(float(wide), float(high), float(box.back.reach), back)


def _bottom(box: DrawerBox, at: Placement) -> Part:
    """Loose in its grooves, as far from each edge."""
    ahead = (float(box.length) - float(box.bottom_length)) / 2
    right = (float(box.width) + float(box.bottom_width)) / 2
    return Part(
        name=join(box.name, "bottom"),
        noun="drawer bottom",
        mark=MARK,
        material=box_stuff(box.bottom_stuff),
        blank=Blank(
            length=box.bottom_length, width=box.bottom_width, thickness=box.bottom_thickness
        ),
        placement=stands(at, (right, ahead, float(box.groove.low)), BACK, LEFT),
        faces=_BOTTOM,
    )


def _dowels(box: DrawerBox, at: Placement) -> tuple[Part, ...]:
    """Each from the bottom of its hole in the side: bought, shown where they stand."""
    found = []
    for where, corner in (("front", box.front), ("back", box.back)):
        if not isinstance(corner, DowelCorner):
            continue
        middle = float(box.end) / 2
        y = middle if where == "front" else float(box.length) - middle
        for side in ("left", "right"):
            in_wood = float(box.side) - float(corner.in_side)
            x = in_wood if side == "left" else float(box.width) - in_wood - float(corner.long)
            for number, up in enumerate(corner.places, 1):
                half = float(corner.thick) / 2
                found.append(
                    Part(
                        name=join(box.name, f"{where} {side} dowel {number}"),
                        noun="dowel",
                        mark=MARK,
                        material=DOWEL,
                        blank=Blank(length=corner.long, width=corner.thick, thickness=corner.thick),
                        placement=stands(at, (x, y - half, float(up) - half), RIGHT, BACK),
                        cuts=(
                            RoundArrises(
                                name="round",
                                radius=corner.thick / 2,
                                making=Making(by="bench", tool="bought round"),
                            ),
                        ),
                        supplied=True,
                    )
                )
    return tuple(found)


def stands(at: Placement, origin: Vector, x: Vector, y: Vector) -> Placement:
    """A place in the box's frame, in the frame that the box stands in."""
    return Placement(origin=at.point(origin), x=at.direction(x), y=at.direction(y))
