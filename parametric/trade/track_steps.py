"""Steps on site for leaves that hang from tracks: the line, the brackets, the tracks, the guides."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from parametric.figures import Figure
from parametric.hardware.track import Track
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.brackets import BracketPlace
from parametric.trade.delivery import Delivery
from parametric.trade.printed import Printed
from parametric.trade.site_words import Said, by_data_sheet, datum, leaf_names

BY_SUPPLIER = "by supplier"


@dataclass(frozen=True, slots=True, kw_only=True)
class GuidePlace:
    """Where one floor guide stands, mm: from the opening's left edge, and off the wall."""

    leaf: str
    from_opening: Figure
    off_wall: Figure


def fix_tracks(
    door: Door,
    track: Track,
    brackets: tuple[BracketPlace, ...],
    guides: tuple[GuidePlace, ...],
    said: Printed,
) -> list[Said]:
    """The line, the brackets, the tracks from the wall outwards, the guides."""
    hanging, opening = door.hanging, door.opening
    top = hanging.floor_gap + hanging.leaf_height
    where = "off the wall" if hanging.on_wall else "behind the wall's face"
    pitch = brackets[1].from_end
    inwards = sorted(hanging.tracks, key=lambda line: float(line.plane))
    places = [said.site(abs(float(line.plane))) for line in inwards]
    hang = f"Hang {track_word(door, inwards[0].word)} {places[0]} {where}" + "".join(
        f", then the {line.word} {place}"
        for line, place in zip(inwards[1:], places[1:], strict=True)
    )
    apart = [
        said.site(abs(float(b.plane) - float(a.plane))) for a, b in itertools.pairwise(inwards)
    ]
    steps = [
        *_pocket(door, said),
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
        steps.append((_guides(guides, where, said), "Each stands plumb under its track."))
    return steps


def track_word(door: Door, word: str) -> str:
    """`the outer track`; `the track` where there is no other."""
    return "the track" if len(door.hanging.tracks) == 1 else f"the {word} track"


def _guides(guides: tuple[GuidePlace, ...], where: str, said: Printed) -> str:
    across = dict.fromkeys(said.site(guide.from_opening) for guide in guides)
    off = dict.fromkeys(said.site(abs(float(guide.off_wall))) for guide in guides)
    if len(across) == 1:
        return (
            f"Fix a floor guide under each leaf, {' and '.join(across)} from the opening's left "
            f"edge, {' and '.join(off)} {where}."
        )
    each = ", ".join(f"{said.site(guide.from_opening)} under {guide.leaf}" for guide in guides)
    return (
        f"Fix a floor guide under each leaf, from the opening's left edge {each}, "
        f"{' and '.join(off)} {where}."
    )


def _pocket(door: Door, said: Printed) -> list[Said]:
    """The frame in the wall stands before the wall is closed over it."""
    deep = door.hanging.pocket
    if deep is None:
        return []
    return [
        (
            f"Build the pocket: {said.up(deep)} deep from the side of the opening, clear of pipes "
            "and cables, its studs straight and out of wind. Track, buffer and a trial of the "
            "leaf come before the wall is closed.",
            "No screw that holds the wall's board is long enough to reach the leaf.",
        )
    ]


def hang_on_tracks(door: Door, sent: Delivery, said: Printed) -> list[Said]:
    """The leaf nearest the wall first; leaves that fold go up as one."""
    hung = [leaf for leaf in door.leaves if leaf.hung.track is not None]
    sliding = [leaf for leaf in hung if leaf.hung.swing is None]
    steps = _hang_sliding(door, sliding, sent, said) if sliding else []
    if len(sliding) < len(hung):
        steps.append(
            (
                "Fix the pivots' plates at foot and head of each jamb that leaves fold to, one "
                "plumb over the other, as far off the jamb as their data sheet has it.",
                "A plumb line from the upper pivot meets the lower one.",
            )
        )
        steps.append(
            (
                "Lift the leaves in folded together, two people at least: the foot pivot first, "
                "then the top one, then the pins into the track.",
                "Nobody lets go before every pin is locked; the leaves fold by hand.",
            )
        )
    return steps


def _hang_sliding(door: Door, leaves: list[Leaf], sent: Delivery, said: Printed) -> list[Said]:
    order = sorted(leaves, key=lambda leaf: float(leaf.hung.plane))
    words = dict.fromkeys(door.hanging.tracks[leaf.hung.track or 0].word for leaf in order)
    lots = [
        (
            word,
            [leaf.name for leaf in order if door.hanging.tracks[leaf.hung.track or 0].word == word],
        )
        for word in words
    ]
    (first_word, first_leaves), *others = lots
    hang = f"Hang {leaf_names(first_leaves)} on {track_word(door, first_word)}" + "".join(
        f", {leaf_names(names)} on the {word}" for word, names in others
    )
    stopped = any(
        pane.stops is not None for leaf in order for lite in leaf.lites for pane in lite.panes
    )
    first = "Back stops and their tape in first. " if stopped else ""
    passing = door.hanging.passing_gap
    return [
        (
            f"{first}{hang}, unglazed." if sent.glazed_on_site else f"{hang}.",
            "Each runs free."
            if passing is None
            else f"{said.wood(passing)} between the leaves all the way.",
        )
    ]


def _line(door: Door, said: Printed, top: Figure) -> str:
    """The first line on the wall, and how far it runs."""
    hanging = door.hanging
    line = hanging.tracks[0]
    left, right = line.left, line.left + line.length
    begins = (
        f"{said.site(-left)} left of the opening's left edge"
        if float(left) < 0
        else "the opening's left edge"
        if float(left) == 0
        else f"{said.site(left)} right of the opening's left edge"
    )
    measured = by_data_sheet(door)
    level = f"{said.site(top)} over {datum(door)}" if measured else "along the head"
    what = "the top of the leaves" if measured else "the middle of each track"
    return (
        f"Mark a level line {level}: {what}. It runs from {begins} to {said.site(right)} right "
        "of it."
    )


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
