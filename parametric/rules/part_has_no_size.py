"""A part, or a cut in one, comes to zero or less.

Why: nothing can be made of it, and nothing is written, not even when asked for.
Example: stiles of 600 on a leaf 1024.5 wide leave rails of -175.5.
Source: arithmetic.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator

from parametric.figures import Figure, leaves
from parametric.model import Drilled, Making, Part
from parametric.outlines import bounds_of
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.checked_cases import CheckedCases

_MAY_BE_NOTHING = frozenset(
    {"surface", "corner", "u0", "u", "v", "back", "slope", "ramp", "relief"}
) | {"path", "start", "end"}


def part_has_no_size(job: Checked) -> Iterator[Problem]:
    """Stop, once for each type of part of a door."""
    yield from _told(job.assembly.parts, job)


def case_part_has_no_size(cases: CheckedCases) -> Iterator[Problem]:
    """The same of what stands still in a job: cases and what closes them."""
    fronts = {leaf.name for leaf in cases.job.resolved.leaves}
    still = (group for group in cases.job.assembly.groups if group.name not in fronts)
    yield from _told((part for group in still for part in group.parts), cases.job)


def _told(parts: Iterable[Part], job: Checked) -> Iterator[Problem]:
    seen: set[str] = set()
    for part in parts:
        if part.mark in seen:
            continue
        for what, value in _sizes(part):
            if float(value) > 0:
                continue
            seen.add(part.mark)
            cause = _cause(value)
            yield Problem(
                code="part_has_no_size",
                level="stop",
                message=f"The {part.name} would be {job.fine(value)} in {what}"
                + (
                    f", because of the {cause.name} of {job.fine(cause)}."
                    if cause is not None
                    else "."
                ),
                where=cause.where if cause is not None else None,
                about=part.name,
                found=job.fine(value),
                allowed="more than 0",
                fix="Look at that line again."
                if cause is not None
                else "Look at the sizes around it.",
                no_size=True,
            )
            break


def _sizes(part: Part) -> Iterator[tuple[str, float]]:
    for what in ("length", "width", "thickness"):
        yield what, getattr(part.blank, what)
    for cut in part.cuts:
        for field in dataclasses.fields(cut):
            value = getattr(cut, field.name)
            if isinstance(value, (str, bool, Making)) or field.name in _MAY_BE_NOTHING:
                continue
            if isinstance(cut, Drilled) and cut.count == 1 and field.name == "pitch":
                continue
            if isinstance(value, tuple):
                x0, y0, x1, y1 = bounds_of(value)
                yield f"width of its {cut.name}", x1 - x0
                yield f"height of its {cut.name}", y1 - y0
                continue
            yield f"{field.name} of its {cut.name}", value


def _cause(value: float) -> Figure | None:
    """The written number most likely wrong: one that is 0, else the largest that was chosen."""
    if not isinstance(value, Figure):
        return None
    written = [leaf for leaf in leaves(value) if leaf.where is not None and leaf.name]
    nothing = [leaf for leaf in written if float(leaf) == 0]
    if float(value) == 0 and nothing:
        return nothing[0]
    choices = [leaf for leaf in written if leaf.origin != "measured"] or written
    return max(choices, key=float, default=None)
