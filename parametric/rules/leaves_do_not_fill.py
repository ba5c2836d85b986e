"""Leaves of given widths that with their gaps come to more or less than the opening they hang in.

Why: the last gap would be what is left over, and not what the design says.
Example: 700 and 700 with gaps of 2.5, 3 and 2.5 are 1408 of an opening 1559 wide: 151 is left.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure
from parametric.problems import Problem
from parametric.rules.checked import Checked


def leaves_do_not_fill(job: Checked) -> Iterator[Problem]:
    """Stop, where the leaves of a door in its opening do not fill it."""
    hanging, written = job.door.hanging, job.door.written
    if hanging.on_wall or hanging.overlap is not None or hanging.pocket is not None:
        return
    total = sum((span.size for span in hanging.across), start=Figure(0.0))
    left = hanging.cover - total
    if abs(float(left)) <= 1e-6:
        return
    amount = job.fine(abs(left))
    outcome, change = (
        (f"{amount} is left over", f"add {amount} to")
        if float(left) > 0
        else (f"that is {amount} too much", f"take {amount} off")
    )
    yield Problem(
        code="leaves_do_not_fill",
        level="stop",
        message=f"Your leaves and their gaps add to {job.fine(total)}, and the opening is "
        f'{job.fine(hanging.cover)}: {outcome}. Make one leaf "rest", or {change} one of them.',
        where=written.line("left leaf"),
        about=hanging.cover.name or "",
        found=job.fine(total),
        allowed=job.fine(hanging.cover),
        fix=f"Write `right leaf: rest`, or {change} one leaf.",
    )
