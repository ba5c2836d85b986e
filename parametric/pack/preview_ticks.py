"""What a client ticks before saying yes: those of a design's cautions that they must have seen.

Three at most, the gravest first, and the colour's sample last: a longer list is not read.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from parametric.pack.page_lengths import wood_amount
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.writers.client_page import Amount, Saying, said

MOST = 3


def ticks(resolved: Resolved, problems: tuple[Problem, ...]) -> tuple[Saying, ...]:
    """The ticks of one design.

    Args:
        resolved: its numbers.
        problems: what `check` says of it.
    """
    codes = {problem.code for problem in problems if problem.level == "caution"}
    found = [saying(resolved) for code, saying in _SAYINGS.items() if code in codes]
    sample = [] if resolved.finish is None or resolved.finish.kind == "none" else [_SAMPLE]
    return (*found[: MOST - len(sample)], *sample)


def _not_safety(_: Resolved) -> Saying:
    return said("I know that glass in these doors is not safety glass, and what that can do.")


def _uneven_gap(resolved: Resolved) -> Saying:
    words: list[str | Amount] = ["I have seen that the gap under the doors is "]
    gaps = resolved.door.gaps
    for index, (place, gap) in enumerate(gaps):
        before = "" if not index else " and " if index == len(gaps) - 1 else ", "
        words += [before, wood_amount(resolved, gap), f" {_PLACES.get(place, place)}"]
    return said(*words, ", because the floor is not level.")


def _fingers(resolved: Resolved) -> Saying:
    gap = resolved.door.hanging.passing_gap
    assert gap is not None
    return said(
        "I know that the doors pass ",
        wood_amount(resolved, gap),
        " apart and that fingers can be caught between them.",
    )


_PLACES: Mapping[str, str] = MappingProxyType(
    {"left": "at the left", "middle": "in the middle", "right": "at the right"}
)
_SAYINGS: Mapping[str, Callable[[Resolved], Saying]] = MappingProxyType(
    {
        "glass_not_safety": _not_safety,
        "fingers_between_leaves": _fingers,
        "uneven_floor_gap": _uneven_gap,
    }
)
"""By the caution's code, the gravest first."""

_SAMPLE = said("I will choose the colour from a real sample, not from a picture.")
