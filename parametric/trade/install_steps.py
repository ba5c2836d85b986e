"""The order of work on site, step by step, each with what to check before the next."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from parametric.figures import Figure
from parametric.hardware.track import Track
from parametric.resolve.door import Door, Resolved
from parametric.trade.alignment import stack_up
from parametric.trade.brackets import BracketPlace
from parametric.trade.delivery import Delivery
from parametric.trade.printed import Printed, printed

BY_SUPPLIER = "by supplier"


@dataclass(frozen=True, slots=True, kw_only=True)
class GuidePlace:
    """Where one floor guide stands, mm: from the opening's left edge, and off the wall."""

    leaf: str
    from_opening: Figure
    off_wall: Figure


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
    adjustment: Adjustment,
    sent: Delivery,
) -> tuple[Step, ...]:
    """What is done in order, from measuring again to handing over."""
    said = printed(resolved)
    door, hanging = resolved.door, resolved.door.hanging
    stack = stack_up(resolved.shop.accuracy)
    gaps = ", ".join(f"{place} {said.wood(gap)}" for place, gap in door.gaps)
    track = door.track
    steps = [
        _measure_again(resolved, said),
        *(() if track is None else _fix_tracks(door, track, brackets, guides, said)),
        *(_hang_on_tracks(door, sent, said) if hanging.tracks else ()),
        *(_glaze(door, said) if sent.glazed_on_site else ()),
    ]
    if hanging.tracks:
        steps.append(
            (
                "Set the hangers: rails of both leaves in one line, meeting stiles plumb, feet "
                "level.",
                f"Gap under the leaves: {gaps}. Rails in line within "
                f"{said.fine(stack.governing)}, {said.fine(stack.worst)} at the very worst.",
            )
        )
    if float(adjustment.trim_allowed) > 0:
        steps.append(
            (
                "Plane the foot only if it must be"
                f": {said.wood(adjustment.trim_allowed, down=True)} at most"
                + (", or too little wood is left over the guide's groove" if guides else "")
                + ". Coat it again.",
                "Guides still run free, nothing scrapes." if guides else "Nothing scrapes.",
            )
        )
    steps.append(_hand_over(door, said))
    return _numbered(steps)


_Said = tuple[str, str]


def _measure_again(resolved: Resolved, said: Printed) -> _Said:
    door = resolved.door
    trust = said.fine(resolved.shop.accuracy.reading)
    across = (
        f"Widest {said.wood(door.opening.widest)}"
        if door.written.fit == "covers"
        else f"Plumb clear width {said.wood(door.opening.clear, down=True)}"
    )
    return (
        "Measure the opening again: widths, head to floor, the floor's highest point.",
        f"{across}, head {said.wood(door.opening.head)} over the high "
        f"point, each within {trust}. If not, stop and ask.",
    )


def _fix_tracks(
    door: Door,
    track: Track,
    brackets: tuple[BracketPlace, ...],
    guides: tuple[GuidePlace, ...],
    said: Printed,
) -> list[_Said]:
    """The line, the brackets, the tracks from the wall outwards, the guides."""
    hanging, opening = door.hanging, door.opening
    top = hanging.floor_gap + hanging.leaf_height
    where = "off the wall" if hanging.on_wall else "behind the wall's face"
    pitch = brackets[1].from_end
    inwards = sorted(hanging.tracks, key=lambda line: float(line.plane))
    places = [said.site(abs(float(line.plane))) for line in inwards]
    hang = f"Hang the {inwards[0].word} track {places[0]} {where}" + "".join(
        f", then the {line.word} {place}"
        for line, place in zip(inwards[1:], places[1:], strict=True)
    )
    apart = [
        said.site(abs(float(b.plane) - float(a.plane))) for a, b in itertools.pairwise(inwards)
    ]
    steps = [
        (
            _line(door, said, top),
            "Both ends from the same level; the floor is not level, the line is.",
        ),
        (
            f"Set out {len(brackets)} brackets a track, the first and last at the track's ends, "
            f"{said.site(pitch)} apart. Drill one, and see what is behind.",
            "The bit brings out wood from behind the board, not dust alone."
            if opening.fixing == "solid timber"
            else f"Behind the board: {opening.fixing}. If the bit finds anything else, stop and ask.",
        ),
        (
            f"Fix the brackets: screws {screw_words(door, track, said)}. {hang}.",
            "Level end to end."
            if not apart
            else f"Level end to end; {', '.join(dict.fromkeys(apart))} between their "
            "middles at both ends.",
        ),
    ]
    if guides:
        off = " and ".join(said.site(abs(float(guide.off_wall))) for guide in guides)
        steps.append(
            (
                f"Fix a floor guide under each leaf, {said.site(guides[0].from_opening)} from the "
                f"opening's left edge, {off} {where}.",
                "Each stands plumb under its track.",
            )
        )
    return steps


def _hang_on_tracks(door: Door, sent: Delivery, said: Printed) -> list[_Said]:
    """The leaf nearest the wall first."""
    hanging = door.hanging
    order = sorted(
        (leaf for leaf in door.leaves if leaf.hung.track is not None),
        key=lambda leaf: float(leaf.hung.plane),
    )
    words = [hanging.tracks[leaf.hung.track or 0].word for leaf in order]
    named_once = f"Hang {order[0].name} on the {words[0]} track" + "".join(
        f", {leaf.name} on the {word}" for leaf, word in zip(order[1:], words[1:], strict=True)
    )
    stopped = any(lite.pane.stops is not None for leaf in order for lite in leaf.lites)
    first = "Back stops and their tape in first. " if stopped else ""
    passing = hanging.passing_gap
    return [
        (
            f"{first}{named_once}, unglazed." if sent.glazed_on_site else f"{named_once}.",
            "Each runs free."
            if passing is None
            else f"{said.wood(passing)} between the leaves all the way.",
        )
    ]


def _glaze(door: Door, said: Printed) -> list[_Said]:
    """Glass into leaves that hang."""
    panes = [lite.pane for leaf in door.leaves for lite in leaf.lites]
    aside = ", the other leaf pushed aside" if door.hanging.passing_gap is not None else ""
    return [
        (
            f"Glaze from the front{aside}: setting blocks at the quarter "
            "points, glass, tape, front stops pinned into the frame.",
            f"{said.fine(panes[0].clearance)} free round each pane; every safety mark to be seen.",
        )
    ]


def _hand_over(door: Door, said: Printed) -> _Said:
    """The last step: every way that a leaf moves is tried, then the client is shown."""
    hanging = door.hanging
    clear = f"Clear way {said.wood(hanging.clear_way, down=True)}"
    shown = "Show the client, hand over the care sheet."
    if hanging.tracks:
        every = "both leaves" if len(door.leaves) == 2 else "every leaf"
        passing = "; nothing stands out where they pass" if hanging.passing_gap is not None else ""
        return (
            f"Run {every} to both ends, lock every screw, set the track stops.",
            f"{clear}; no leaf leaves its track{passing}. {shown}",
        )
    return ("Open and shut every leaf all the way.", f"{clear}; nothing scrapes. {shown}")


def _numbered(steps: list[tuple[str, str]]) -> tuple[Step, ...]:
    return tuple(
        Step(number=number, do=do, check=check) for number, (do, check) in enumerate(steps, 1)
    )


def tools(resolved: Resolved, sent: Delivery) -> tuple[str, ...]:
    """What the fitter brings."""
    box = [
        "long level or cross-line laser, water level for the two ends",
        "tape, square, plumb line, pencil, masking tape",
        "cable and pipe detector, drill, bits for pilot and clearance holes, driver",
        "two steady platforms, blankets, two battens, wedges",
    ]
    if sent.glazed_on_site:
        box.append("cut-proof gloves, suction cups, setting blocks, tape, pins, pin punch")
    if any(float(leaf.site_trim) > 0 for leaf in resolved.door.leaves):
        box.append("plane or tracked saw for the foot, finish to coat it again")
    box.append("eye protection, dust mask, vacuum")
    return tuple(box)


def _line(door: Door, said: Printed, top: Figure) -> str:
    """The first line on the wall, and how far it runs."""
    hanging = door.hanging
    line = hanging.tracks[0]
    left, right = line.left, line.left + line.length
    begins = (
        f"{said.site(-left)} left of the opening's left edge"
        if float(left) < 0
        else f"{said.site(left)} right of the opening's left edge"
    )
    level = f"{said.site(top)} over {datum(door)}" if hanging.on_wall else "along the head"
    what = "the top of the leaves" if hanging.on_wall else "the middle of each track"
    return (
        f"Mark a level line {level}: {what}. It runs from {begins} to {said.site(right)} right "
        "of it."
    )


def datum(door: Door) -> str:
    """Where all heights are measured from."""
    high = [place for place, below in door.opening.floor.items() if float(below) == 0.0]
    where = f", at the {' and '.join(high)}" if high and len(high) < 3 else ""
    return f"the highest point of the floor under the door{where}"


def behind(door: Door, said: Printed) -> str:
    """What the brackets are fixed to, as surveyed."""
    fixing = {
        "solid timber": "solid timber the whole length of the head: fix anywhere along it",
        "studs": "studs: fix into their middles only, or to a header screwed to every stud",
        "masonry": "masonry: anchors their maker names for it",
        "board only": "board only: it holds nothing",
        "not known": "not known: open up or drill before anything is fixed",
    }[door.opening.fixing]
    board = door.opening.board
    return fixing if board is None else f"{fixing}; behind {said.fine(board)} of board"


def screw_words(door: Door, track: Track, said: Printed) -> str:
    """How long a bracket's screw must be, as far as it is known."""
    if door.opening.fixing == "masonry":
        return "by the anchor's maker, for the pull at a bracket"
    depth = track.fixing_depth
    if depth is None:
        return "not known until the board over the fixing is measured"
    return f"at least {said.up(depth)} and the bracket's thickness ({BY_SUPPLIER})"
