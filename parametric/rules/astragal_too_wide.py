"""An astragal that reaches over a meeting stile onto the glass or the panel beside it.

Why: the strip is fixed to one stile and closes on the other; past either it is in the light.
Example: a strip of 400 over a gap of 3 lies (400 - 3)/2 = 198.5 on a stile of 110.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hangings.hanging import Side
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import stile_width


def astragal_too_wide(job: Checked) -> Iterator[Problem]:
    """Stop, for the narrower of the two stiles that a strip lies on."""
    hanging = job.door.hanging
    strip = next((leaf.hung.strip for leaf in job.leaves if leaf.hung.strip is not None), None)
    if strip is None or hanging.meeting_gap is None:
        return
    sides: tuple[Side, Side] = ("right", "left")
    stile = min(
        (stile_width(leaf, side) for leaf, side in zip(job.leaves, sides, strict=True)), key=float
    )
    lies = strip.width / 2 - hanging.meeting_gap / 2
    if not exceeds(lies, stile):
        return
    most = 2 * stile + hanging.meeting_gap
    yield Problem(
        code="astragal_too_wide",
        level="stop",
        message=f"The astragal of {job.fine(strip.width)} lies {job.fine(lies)} on either leaf, "
        f"and the meeting stile is {job.fine(stile)} wide: it would stand over what is beside it.",
        where=job.door.written.line("astragal"),
        about=strip.width.name or "",
        found=job.fine(strip.width),
        allowed=f"{job.fine(most)} or less",
        fix="Make the astragal narrower.",
    )
