"""What a client ticks before saying yes: how doors swing, and cautions that they must have seen.

Which way a door opens is the dearest thing to have got wrong, so of doors that swing it comes
first. Then three at most, the gravest first, and the colour's sample last: a longer list is
not read.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from parametric.pack.door_words import door_names, filled, hung_on, in_words, towards
from parametric.pack.page_lengths import wood_amount
from parametric.pack.preview_doors import called
from parametric.problems import Problem
from parametric.resolve.door import Door, Resolved
from parametric.rules.among_doors import said_of
from parametric.trade.standing import first_to_open
from parametric.writers.client_page import Amount, Saying, said
from parametric.writers.page_words import DOOR_WORDS, TICK_WORDS

MOST = 3


def ticks(resolved: Resolved, problems: tuple[Problem, ...]) -> tuple[Saying, ...]:
    """The ticks of one design.

    Args:
        resolved: its numbers.
        problems: what `check` says of it.
    """
    sample = [] if resolved.finish is None or resolved.finish.kind == "none" else [_SAMPLE]
    most = MOST - len(sample)
    each = [
        (door, _of_door(resolved.of(door), resolved.doors, problems, most))
        for door in resolved.doors
    ]
    # what is so of all of several doors is ticked once
    of_all = [one for one in each[0][1] if len(each) > 1 and all(one in own for _, own in each)]
    told = [_told(door, one) for door, own in each for one in own if one not in of_all]
    return (*told, *of_all, *sample)


def _of_door(
    resolved: Resolved, among: tuple[Door, ...], problems: tuple[Problem, ...], most: int
) -> tuple[Saying, ...]:
    """How one door swings, and the gravest of its cautions, `most` of them."""
    codes = _codes(resolved, among, problems)
    found = [saying(resolved) for code, saying in _SAYINGS.items() if code in codes]
    return (*_swing(resolved), *found[:most])


def _codes(
    resolved: Resolved, among: tuple[Door, ...], problems: tuple[Problem, ...]
) -> frozenset[str]:
    """The cautions that are said of one door."""
    own = said_of(resolved.door, among, problems)
    codes = {problem.code for problem in own if problem.level == "caution"}
    return frozenset(codes | ({_GAP} if _swinging_gap(resolved) else set()))


def _told(door: Door, saying: Saying) -> Saying:
    """What is ticked of one of several doors, with its name before it."""
    name = called(door)
    return said(*filled(DOOR_WORDS["of one"], name, ""), *saying) if name else saying


def _swing(resolved: Resolved) -> tuple[Saying, ...]:
    """Which way they open, which first, and what they sweep over."""
    door = resolved.door
    reach, into = door.hanging.reach, towards(door)
    if reach is None or into is None:
        return ()
    names, first = door_names(door), first_to_open(door)
    aside: str = hung_on(door) if names.one == "1" else ""
    if first is not None:
        which = names.which[door.leaves.index(first)]
        aside = TICK_WORDS["first"].format(in_words(which))
    words = TICK_WORDS[f"swing {'towards' if into else 'away'} {names.one}"]
    return (filled(words, aside, wood_amount(resolved, reach)),)


def _swinging_gap(resolved: Resolved) -> bool:
    """Whether the floor rises on their way, or was not measured where they swing."""
    hanging = resolved.door.hanging
    if hanging.travel_gap is None:
        return hanging.swings and hanging.case is None
    return float(hanging.travel_gap) < float(hanging.floor_gap)


def _not_safety(resolved: Resolved) -> Saying:
    return said(TICK_WORDS[f"not safety {door_names(resolved.door).one}"])


def _gap(resolved: Resolved) -> Saying:
    """The gap under the doors, at each place and where it is least as they swing."""
    door = resolved.door
    hanging, gaps, one = door.hanging, door.gaps, door_names(door).one
    words: list[str | Amount] = [TICK_WORDS[f"gap {one}"]]
    for index, (place, gap) in enumerate(gaps):
        before = "" if not index else " and " if index == len(gaps) - 1 else ", "
        words += [before, wood_amount(resolved, gap), f" {_PLACES.get(place, place)}"]
    if not _swinging_gap(resolved):
        return said(*words, TICK_WORDS["because"])
    if hanging.travel_gap is None:
        return said(*words, TICK_WORDS[f"gap not known {one}"])
    least = wood_amount(resolved, hanging.travel_gap)
    return said(*words, *filled(TICK_WORDS[f"gap swinging {one}"], least), TICK_WORDS["because"])


def _fingers(resolved: Resolved) -> Saying:
    gap = resolved.door.hanging.passing_gap
    assert gap is not None
    return said(
        "I know that the doors pass ",
        wood_amount(resolved, gap),
        " apart and that fingers can be caught between them.",
    )


def _hinges(_: Resolved) -> Saying:
    return said(TICK_WORDS["hinges"])


_GAP = "uneven_floor_gap"
_PLACES: Mapping[str, str] = MappingProxyType(
    {"left": "at the left", "middle": "in the middle", "right": "at the right"}
)
_SAYINGS: Mapping[str, Callable[[Resolved], Saying]] = MappingProxyType(
    {
        "glass_not_safety": _not_safety,
        "fingers_between_leaves": _fingers,
        _GAP: _gap,
        "fingers_at_hinges": _hinges,
    }
)
"""By the caution's code, the gravest first."""

_SAMPLE = said("I will choose the colour from a real sample, not from a picture.")
