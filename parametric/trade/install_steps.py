"""The order of work on site, step by step, each with what to check before the next.

It is put together by what a door has: tracks, hinges, folds, glass to put in, a foot to plane.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.door import Door, Resolved
from parametric.trade.alignment import StackUp, stack_up
from parametric.trade.brackets import BracketPlace
from parametric.trade.case_steps import BRING, fit_fronts
from parametric.trade.delivery import Delivery
from parametric.trade.glazing import PLANT, free_cell
from parametric.trade.hinge_places import HingeFixing
from parametric.trade.hinge_steps import (
    ease_edges,
    fold_together,
    hang_on_hinges,
    keep_shut,
    swing_words,
)
from parametric.trade.printed import Printed, printed
from parametric.trade.site_words import Said, datum
from parametric.trade.track_steps import GuidePlace, fix_tracks, hang_on_tracks


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjustment:
    """What can still be set on site, mm.

    `hangers` is what they must raise and lower at least, either way: a reading may be off and
    the setting too. `site_trim` was planned for the foot; `trim_allowed` is as much of it as
    leaves the house's wood over the guide groove.
    """

    hangers: Figure
    site_trim: Figure
    trim_allowed: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the work, and what to check before the next."""

    number: int
    do: str
    check: str


def order_of_work(
    resolved: Resolved,
    brackets: tuple[BracketPlace, ...],
    guides: tuple[GuidePlace, ...],
    hinges: tuple[HingeFixing, ...],
    adjustment: Adjustment,
    sent: Delivery,
) -> tuple[Step, ...]:
    """What is done in order, from measuring again to handing over."""
    said = printed(resolved)
    door, track = resolved.door, resolved.door.track
    stack = stack_up(resolved.shop.accuracy)
    foot = _plane_foot(adjustment, guides, said)
    if (case := door.hanging.case) is not None:
        return _numbered(
            [
                _measure_again(resolved, said),
                *fit_fronts(door, case, hinges, said),
                *(_glaze(door, said) if sent.glazed_on_site else ()),
                _hand_over(door, said),
            ]
        )
    return _numbered(
        [
            _measure_again(resolved, said),
            *fold_together(hinges, said),
            *(() if track is None else fix_tracks(door, track, brackets, guides, said)),
            *(hang_on_tracks(door, sent, said) if track is not None else ()),
            *hang_on_hinges(resolved, hinges, sent, stack, [] if track else foot, said),
            *(_glaze(door, said) if sent.glazed_on_site else ()),
            *(_set_hangers(door, stack, said) if track is not None else ()),
            *(foot if track else []),
            *_match_lines(door, said),
            *ease_edges(resolved, said),
            *keep_shut(door, hinges, said),
            _hand_over(door, said),
        ]
    )


def _measure_again(resolved: Resolved, said: Printed) -> Said:
    door = resolved.door
    trust = said.fine(resolved.shop.accuracy.reading)
    fits = door.written.fit == "fits"
    across = (
        f"Plumb clear width {said.wood(door.opening.clear, down=True)}"
        if fits
        else f"Widest {said.wood(door.opening.widest)}"
    )
    if door.hanging.case is not None:
        return (
            "Measure the case again: clear widths of the whole and of each bay, height, both "
            "diagonals.",
            f"{across}, its top {said.wood(door.opening.head)} over the floor, each within "
            f"{trust}. If not, stop and ask.",
        )
    jambs = ", jambs plumb and out of wind" if fits and not door.hanging.tracks else ""
    return (
        "Measure the opening again: widths, head to floor, the floor's highest point.",
        f"{across}, head {said.wood(door.opening.head)} over the high "
        f"point, each within {trust}{jambs}. If not, stop and ask.",
    )


def _glaze(door: Door, said: Printed) -> list[Said]:
    """Glass between stops, into leaves that hang."""
    clear = dict.fromkeys(
        free_cell(pane.clearances, said)
        for leaf in door.leaves
        for lite in leaf.lites
        for pane in lite.panes
    )
    planted = any(
        isinstance(lite.section, PlantedBar) for leaf in door.leaves for lite in leaf.lites
    )
    aside = ", the other leaf pushed aside" if door.hanging.passing_gap is not None else ""
    aside = ", the leaf wedged shut" if door.hanging.swings else aside
    return [
        (
            f"Glaze from the front{aside}: setting blocks at the quarter "
            "points, glass, tape, front stops pinned into the frame.",
            f"{' and '.join(clear)} free round each pane; every safety mark to be seen.",
        ),
        *(((f"{PLANT}.", "Front and back bars cover one another."),) if planted else ()),
    ]


def _set_hangers(door: Door, stack: StackUp, said: Printed) -> list[Said]:
    """Leaves in one line with one another, or a leaf alone level."""
    gaps = ", ".join(f"{place} {said.wood(gap)}" for place, gap in door.gaps)
    if len(door.leaves) == 1:
        return [
            (
                "Set the hangers: the leaf plumb and its foot level.",
                f"Gap under the leaf: {gaps}.",
            )
        ]
    both = "both leaves" if len(door.leaves) == 2 else "all leaves"
    meeting = door.hanging.meeting_gap
    meets = "" if meeting is None else f" {said.fine(meeting)} where leaves meet."
    return [
        (
            f"Set the hangers: rails of {both} in one line, meeting stiles plumb, feet level.",
            f"Gap under the leaves: {gaps}.{meets} Rails in line within "
            f"{said.fine(stack.governing)}, {said.fine(stack.worst)} at the very worst.",
        )
    ]


def _match_lines(door: Door, said: Printed) -> list[Said]:
    """Rails that are held at a line of the room: a neighbour's rail, a chair rail."""
    edges = {"centre": "middle", "top": "upper edge", "bottom": "lower edge"}
    held = [
        (leaf, band, edges[pin[0]], str(pin[1]))
        for leaf in door.leaves
        for band in leaf.bands
        if (pin := band.written.pin) is not None and not isinstance(pin[1], Figure)
    ]
    rows = dict.fromkeys((band.noun, edge, line) for _, band, edge, line in held)
    if not rows:
        return []
    heights = {str(line): up for line, up in (door.survey.lines or {}).items()}
    return [
        (
            "Level across with a laser: "
            + ", ".join(f"the {edge} of the {noun} and the {line}" for noun, edge, line in rows)
            + ".",
            "; ".join(
                f"{line} {said.wood(up)} above {datum(door)}"
                for line in dict.fromkeys(line for _, _, line in rows)
                if isinstance(up := heights[line], Figure)
            )
            + ", no step to be seen.",
        )
    ]


def _plane_foot(
    adjustment: Adjustment, guides: tuple[GuidePlace, ...], said: Printed
) -> list[Said]:
    if float(adjustment.trim_allowed) <= 0:
        return []
    return [
        (
            "Plane the foot only if it must be"
            f": {said.wood(adjustment.trim_allowed, down=True)} at most"
            + (", or too little wood is left over the guide's groove" if guides else "")
            + ". Coat it again.",
            "Guides still run free, nothing scrapes." if guides else "Nothing scrapes.",
        )
    ]


def _hand_over(door: Door, said: Printed) -> Said:
    """The last step: every way that a leaf moves is tried, then the client is shown."""
    hanging = door.hanging
    if hanging.clear_way is None:
        return (
            "Open and shut every front all the way, one by one and all together.",
            "Nothing scrapes; the gaps are alike. Show the client, hand over the care sheet.",
        )
    clear = f"Clear way {said.wood(hanging.clear_way, down=True)}"
    shown = "Show the client, hand over the care sheet."
    if hanging.tracks and not hanging.swings:
        every = {1: "the leaf", 2: "both leaves"}.get(len(door.leaves), "every leaf")
        passing = "; nothing stands out where they pass" if hanging.passing_gap is not None else ""
        return (
            f"Run {every} to both ends, lock every screw, set the track stops.",
            f"{clear}; no leaf leaves its track{passing}. {shown}",
        )
    if hanging.tracks:
        return (
            "Fold the leaves open and shut all the way, lock every screw, set the track stops.",
            f"{clear}; no pin leaves its track. {swing_words(door, said)} {shown}",
        )
    return (
        "Open and shut every leaf all the way.",
        f"{clear}; nothing scrapes. {swing_words(door, said)} {shown}",
    )


def _numbered(steps: list[tuple[str, str]]) -> tuple[Step, ...]:
    return tuple(
        Step(number=number, do=do, check=check) for number, (do, check) in enumerate(steps, 1)
    )


def tools(resolved: Resolved, sent: Delivery) -> tuple[str, ...]:
    """What the fitter brings."""
    door = resolved.door
    if door.hanging.case is not None:
        return (*BRING, "eye protection, dust mask, vacuum")
    hinged = any(leaf.hinges for leaf in door.leaves)
    tracks = bool(door.hanging.tracks)
    box = [
        "long level or cross-line laser, water level for the two ends"
        if tracks
        else "long level or cross-line laser, long straight edge",
        "tape, square, plumb line, pencil, masking tape",
    ]
    if tracks:
        box += [
            "cable and pipe detector, drill, bits for pilot and clearance holes, driver",
            "two steady platforms, blankets, two battens, wedges",
        ]
    else:
        box.append("blankets, two battens, wedges and packers, a lifter for the foot")
    if hinged:
        box += [
            "marking knife, marking gauge, square, mallet, sharp chisels, hinge template and router",
            "drill, bits for pilot holes, hand screwdriver; card and veneer to pack a flap",
            "plane for edges, scriber, finish to coat them again",
        ]
    if sent.glazed_on_site:
        box.append("cut-proof gloves, suction cups, setting blocks, tape, pins, pin punch")
    if any(float(leaf.site_trim) > 0 for leaf in door.leaves):
        box.append("plane or tracked saw for the foot, finish to coat it again")
    box.append("eye protection, dust mask, vacuum")
    return tuple(box)
