"""The first paper and scale on which everything stands clear: a sheet grows, its text never shrinks."""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Callable, Sequence

from parametric.drawing.audit import audit
from parametric.drawing.sheet import Paper, Sheet, TitleBlock


def shorter_and_shorter(title: TitleBlock) -> tuple[TitleBlock, ...]:
    """A title block with all its revisions, then with ever fewer of them, down to the newest."""
    count = len(title.revisions)
    return tuple(
        dataclasses.replace(title, revisions=title.revisions[drop:], earlier=title.earlier + drop)
        for drop in range(max(count, 1))
    )


def newest_only(title: TitleBlock) -> TitleBlock:
    """A title block for a sheet that has no room to spare: the newest revision stands on it."""
    return shorter_and_shorter(title)[-1]


def first_that_fits(
    options: Sequence[tuple[Paper, float]],
    title: TitleBlock,
    attempt: Callable[[Paper, float, TitleBlock], Sheet | None],
    *,
    too_large: str,
) -> Sheet:
    """Try papers and scales in order; where none is without fault, take the one with the fewest.

    Args:
        options: papers and scales, the best first.
        title: its table of revisions gives up a line at a time where there is no room, down
            to the newest.
        attempt: draws one, or None when not even its margins fit.
        too_large: what to say when no attempt could be drawn at all.

    Raises:
        ValueError: the thing is larger than the largest paper at the smallest scale.
    """
    blocks = shorter_and_shorter(title)
    best: tuple[int, Sheet] | None = None
    for (paper, scale), block in itertools.product(options, blocks):
        sheet = attempt(paper, scale, block)
        if sheet is None:
            continue
        faults = len(audit(sheet))
        if faults == 0:
            return sheet
        if best is None or faults < best[0]:
            best = faults, sheet
    if best is None:
        raise ValueError(too_large)
    return best[1]
