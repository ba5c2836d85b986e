"""What cannot be of a drawer box, or is too little: its room, its bottom, its corners, its runners."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_corners import (
    BoxCorner,
    Corner,
    DovetailCorner,
    DowelCorner,
    RebateCorner,
    ScrewCorner,
    in_one_finger,
    in_one_tail,
)
from parametric.cases.drawer_written import SideSlidesSpec, UnderSlidesSpec, WoodenRunnersSpec
from parametric.catalog.shop import Limits
from parametric.figures import Figure, exceeds, origin_line
from parametric.model import alike
from parametric.problems import Level, Problem

Said = Callable[[float], str]
"""How a length is said, in the design's unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Look:
    """A box, the workshop's limits, and how lengths are said."""

    box: DrawerBox
    limits: Limits
    said: Said

    def problem(
        self,
        code: str,
        message: str,
        blame: Figure,
        *,
        allowed: str,
        fix: str,
        level: Level = "stop",
        no_size: bool = False,
    ) -> Problem:
        """One problem, at the line of the size to blame."""
        return Problem(
            code=code,
            level=level,
            message=message,
            where=origin_line(blame) or self.box.written.here,
            about=blame.name or self.box.name,
            found=self.said(blame),
            allowed=allowed,
            fix=fix,
            no_size=no_size,
        )


def drawer_faults(box: DrawerBox, limits: Limits, said: Said) -> Iterator[Problem]:
    """Every fault of a drawer box.

    Args:
        box: the box.
        limits: what the workshop will not go below.
        said: how a length is said.

    Source: geometry; what is too little, common practice, no source.
    """
    look = _Look(box=box, limits=limits, said=said)
    yield from _room(look)
    yield from _bottom(look)
    alike_ones = alike(dataclasses.replace(box.back, name=box.front.name), box.front)
    both = (("corners", box.front),) if alike_ones else ()
    for where, corner in both or (("front corners", box.front), ("back corners", box.back)):
        yield from _corner(look, corner, where)
    yield from _runs_on(look)


def _room(look: _Look) -> Iterator[Problem]:
    """Wider, higher or longer than its opening: a stop. Less room than it needs: a caution."""
    box, said = look.box, look.said
    if exceeds(0.0, box.room_beside):
        yield look.problem(
            "drawer_does_not_fit",
            f"The {box.name} is {said(box.width)} wide and its opening {said(box.clear_width)}.",
            box.width,
            allowed=f"less than {said(box.clear_width)}",
            fix="Write what the slides' data sheet says.",
        )
    for room, least, size, clear, word, key in (
        (box.room_above, box.least_above, box.height, box.clear_height, "high", "height"),
        (box.room_behind, box.least_behind, box.length, box.clear_depth, "long", "length"),
    ):
        where = "above it" if word == "high" else "behind it"
        most = size + room - least
        if exceeds(0.0, room):
            stands = f", {said(box.foot)} up" if word == "high" else ""
            yield look.problem(
                "drawer_does_not_fit",
                f"The {box.name} is {said(size)} {word}{stands}, and its opening has "
                f"{said(clear)}: {said(-room)} too much.",
                size,
                allowed=f"{said(most)} or less",
                fix=f"Make `{key}` smaller.",
            )
        elif exceeds(least, room):
            yield look.problem(
                "drawer_has_little_room",
                f"The {box.name} has {said(room)} {where}; it needs {said(least)}.",
                size,
                allowed=f"{said(most)} or less",
                fix=f"Make `{key}` smaller.",
                level="caution",
            )


def _bottom(look: _Look) -> Iterator[Problem]:
    """The bottom's groove and how far it holds; a bottom too thin for its width."""
    box, said, least = look.box, look.said, look.limits
    for word, thick in (("sides are", box.side), ("front and back are", box.end)):
        wall = thick - box.groove.depth
        if not exceeds(wall, 0.0):
            yield look.problem(
                "drawer_groove_comes_through",
                f"The groove for the bottom is {said(box.groove.depth)} deep, and the {word} "
                f"{said(thick)} thick: it comes through.",
                box.groove.depth,
                allowed=f"{said(thick - least.groove_wall)} or less",
                fix="Make `bottom groove` less deep, or the boards thicker.",
            )
        elif exceeds(least.groove_wall, wall):
            yield look.problem(
                "drawer_groove_leaves_little",
                f"The groove for the bottom leaves {said(wall)} of the {word.partition(' are')[0]}; "
                f"{said(least.groove_wall)} is better.",
                box.groove.depth,
                allowed=f"{said(thick - least.groove_wall)} or less",
                fix="Make `bottom groove` less deep, or the boards thicker.",
                level="caution",
            )
        if word == "sides are" and float(box.side) == float(box.end):
            break
    held = (box.bottom_width - box.between) / 2
    if not exceeds(held, 0.0):
        yield look.problem(
            "drawer_bottom_falls_out",
            f"The bottom stands {said(held)} in its grooves: it falls out.",
            box.bottom_width,
            allowed=f"{said(least.engagement)} or more in each groove",
            fix="Make `bottom groove` deeper, or `bottom clearance` smaller.",
        )
    elif exceeds(least.engagement, held):
        yield look.problem(
            "drawer_bottom_barely_held",
            f"The bottom stands {said(held)} in its grooves; {said(least.engagement)} is better.",
            box.bottom_width,
            allowed=f"{said(least.engagement)} or more in each groove",
            fix="Make `bottom groove` deeper, or `bottom clearance` smaller.",
            level="caution",
        )
    if exceeds(box.groove.high, box.height):
        yield look.problem(
            "drawer_groove_comes_through",
            f"The groove for the bottom ends {said(box.groove.high)} up, and the box is "
            f"{said(box.height)} high.",
            box.groove.low,
            allowed=f"{said(box.height - box.groove.width)} or less",
            fix="Make `bottom up` smaller, or the box higher.",
        )
    elif exceeds(least.groove_wall, box.groove.low):
        yield look.problem(
            "drawer_groove_leaves_little",
            f"Under the bottom's groove {said(box.groove.low)} is left; the drawer hangs by it, and "
            f"{said(least.groove_wall)} is better.",
            box.groove.low,
            allowed=f"{said(least.groove_wall)} or more",
            fix="Make `bottom up` larger.",
            level="caution",
        )
    narrower = min(box.bottom_width, box.bottom_length)
    most = box.bottom_thickness * box.written.bottom_span
    if exceeds(narrower, most):
        yield look.problem(
            "drawer_bottom_thin",
            f"A bottom {said(box.bottom_thickness)} thick and {said(narrower)} across sags; it "
            f"serves up to {said(most)}.",
            box.bottom_thickness,
            allowed=f"{said(narrower / box.written.bottom_span)} or more",
            fix="Make `bottom` thicker, or glue a bearer under its middle.",
            level="caution",
        )


def _corner(look: _Look, corner: Corner, where: str) -> Iterator[Problem]:
    match corner:
        case DovetailCorner():
            yield from _dovetails(look, corner, where)
        case BoxCorner():
            if not in_one_finger(corner.finger, look.box.groove):
                yield look.problem(
                    "drawer_groove_in_two_fingers",
                    f"At the {where} fingers are {look.said(corner.finger)} wide, and the "
                    f"bottom's groove, {look.said(look.box.groove.low)} to "
                    f"{look.said(look.box.groove.high)} up, lies in two of them: it would show.",
                    look.box.groove.low,
                    allowed="a groove within one finger",
                    fix="Change `finger` or `bottom up`.",
                )
        case RebateCorner():
            yield from _rebate(look, corner, where)
        case DowelCorner() | ScrewCorner():
            yield from _fixings(look, corner, where)
        case _:
            assert_never(corner)


def _dovetails(look: _Look, corner: DovetailCorner, where: str) -> Iterator[Problem]:
    box, said = look.box, look.said
    if not exceeds(corner.tail, 0.0):
        yield look.problem(
            "drawer_tails_have_no_wood",
            f"At the {where} the lap is {said(corner.lap)} of {said(box.end)}: nothing is "
            "left for tails.",
            corner.lap,
            allowed=f"about a third of {said(box.end)}",
            fix="Make `lap` smaller.",
            no_size=True,
        )
    elif not exceeds(corner.tail_root, 0.0):
        yield look.problem(
            "drawer_tails_have_no_wood",
            f"At the {where} {int(corner.count)} tails stand {said(corner.pitch)} apart, and "
            f"a pin is {said(corner.pin_root)} wide at its widest: nothing is left of the tails.",
            corner.pitch,
            allowed=f"more than {said(corner.pin_root)}",
            fix="Write fewer `tails`, or a narrower `pin`.",
            no_size=True,
        )
    elif not in_one_tail(corner.pitch, corner.pin_root, box.groove):
        yield look.problem(
            "drawer_groove_not_in_a_tail",
            f"At the {where} the bottom's groove, {said(box.groove.low)} to "
            f"{said(box.groove.high)} up, does not lie in one tail: it would show.",
            box.groove.low,
            allowed=f"{said(corner.pin_root / 2)} to "
            f"{said(corner.pitch - corner.pin_root / 2 - box.groove.width)}",
            fix="Change `bottom up`, `tails` or `pin`.",
        )
    elif exceeds(box.groove.depth, corner.tail):
        yield look.problem(
            "drawer_tails_short",
            f"At the {where} the tails are {said(corner.tail)} long, and the bottom's groove "
            f"{said(box.groove.depth)} deep: the bottom's corner meets the lap.",
            corner.tail,
            allowed=f"{said(box.groove.depth)} or more",
            fix="Make `lap` smaller, or `bottom groove` less deep.",
        )


def _rebate(look: _Look, corner: RebateCorner, where: str) -> Iterator[Problem]:
    box, said = look.box, look.said
    if not exceeds(box.side, corner.reach):
        yield look.problem(
            "drawer_rebate_comes_through",
            f"At the {where} the rebate is {said(corner.reach)} deep in a side of "
            f"{said(box.side)}: nothing is left.",
            corner.reach,
            allowed=f"less than {said(box.side)}",
            fix="Make `rebate` less deep.",
        )
    elif exceeds(box.groove.depth, corner.reach):
        yield look.problem(
            "drawer_rebate_shallow",
            f"At the {where} the rebate is {said(corner.reach)} deep, and the bottom's groove "
            f"{said(box.groove.depth)}: the bottom's corner meets the side.",
            corner.reach,
            allowed=f"{said(box.groove.depth)} or more",
            fix="Make `rebate` deeper, or `bottom groove` less deep.",
        )


def _fixings(look: _Look, corner: DowelCorner | ScrewCorner, where: str) -> Iterator[Problem]:
    box, said = look.box, look.said
    what = "dowels" if isinstance(corner, DowelCorner) else "screws"
    if exceeds(2 * corner.thick, corner.pitch):
        yield look.problem(
            "drawer_fixings_find_no_wood",
            f"At the {where} there is no room for two {what} between the bottom's groove and "
            f"the top of a box {said(box.height)} high.",
            box.height,
            allowed=f"{said(box.groove.high + 2 * box.written.fixings_in + 2 * corner.thick)} or more",
            fix="Make the box higher, `fixings in` smaller, or take another joint.",
        )
    enters = corner.long - corner.in_side if isinstance(corner, DowelCorner) else corner.in_end
    if not exceeds(enters, 0.0):
        yield look.problem(
            "drawer_fixings_find_no_wood",
            f"At the {where} {what} {said(corner.long)} long do not reach the front or back "
            f"through a side of {said(box.side)}.",
            corner.long,
            allowed=f"more than {said(box.side)}",
            fix=f"Write longer {what}.",
        )
    if exceeds(3 * corner.thick, 2 * box.end):
        yield look.problem(
            "drawer_fixings_split_the_end",
            f"At the {where} {what} {said(corner.thick)} thick go into the end of a board of "
            f"{said(box.end)}; up to {said(box.end * 2 / 3)} is usual.",
            corner.thick,
            allowed=f"{said(box.end * 2 / 3)} or less",
            fix=f"Write thinner {what}.",
            level="caution",
        )


def _runs_on(look: _Look) -> Iterator[Problem]:
    """What slides and runners ask of the box."""
    box, said, spec = look.box, look.said, look.box.written
    match spec:
        case SideSlidesSpec():
            return
        case UnderSlidesSpec():
            if exceeds(box.side, spec.thickest_side):
                yield look.problem(
                    "drawer_sides_too_thick",
                    f"The slides under the {box.name} take sides up to {said(spec.thickest_side)}, "
                    f"and they are {said(box.side)}.",
                    box.side,
                    allowed=f"{said(spec.thickest_side)} or less",
                    fix="Make the sides thinner, or write what the data sheet says.",
                )
            wide, high = spec.back_notch
            if exceeds(high, box.groove.low) or exceeds(2 * wide, box.between):
                yield look.problem(
                    "drawer_notch_too_big",
                    f"The notches in the back are {said(wide)} wide and {said(high)} high; under "
                    f"the bottom's groove there is {said(box.groove.low)}, between the sides "
                    f"{said(box.between)}.",
                    high,
                    allowed=f"{said(box.groove.low)} high or less",
                    fix="Write `bottom up` as high as the slides ask, or the notch lower.",
                )
            if isinstance(box.back, DovetailCorner):
                yield look.problem(
                    "drawer_notch_frees_a_pin",
                    f"The notches in the back cut its lowest pins off; they are {said(high)} high.",
                    high,
                    allowed="another joint at the back: `dowel`, `rebate`, `screw`",
                    fix="Write `back joint: dowel`.",
                )
        case WoodenRunnersSpec():
            wide, thick = spec.runner
            if exceeds(thick, box.foot):
                yield look.problem(
                    "runner_finds_no_room",
                    f"The runners are {said(thick)} thick and the {box.name} stands "
                    f"{said(box.foot)} over the foot of its opening.",
                    thick,
                    allowed=f"{said(box.foot)} or less",
                    fix="Write `below` as large as the runner is thick, or larger.",
                )
            if exceeds(box.room_beside + box.side, wide):
                yield look.problem(
                    "runner_too_narrow",
                    f"A side stands {said(box.room_beside)} to {said(box.room_beside + box.side)} "
                    f"off the case, and the runner is {said(wide)} wide: it runs off.",
                    wide,
                    allowed=f"{said(box.room_beside + box.side)} or more",
                    fix="Make the runner wider.",
                    level="caution",
                )
            if spec.kicker is not None and exceeds(
                spec.kicker[1] + spec.kicker_gap, box.room_above
            ):
                yield look.problem(
                    "runner_finds_no_room",
                    f"The kickers are {said(spec.kicker[1])} thick, {said(spec.kicker_gap)} over "
                    f"the sides, and there is {said(box.room_above)} above the {box.name}.",
                    spec.kicker[1],
                    allowed=f"{said(box.room_above - spec.kicker_gap)} or less",
                    fix="Make the box lower, or the kickers thinner.",
                )
        case _:
            assert_never(spec)
