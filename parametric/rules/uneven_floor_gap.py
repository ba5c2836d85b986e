"""The floor is not level, so the gap under level leaves is not even.

Why: the client sees the gap every day; better told before than after.
Example: a floor that rises 9 gives 21 at one side and 12 at the other.
Source: common practice, no source; the limit is the house's `uneven gap`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked


def uneven_floor_gap(job: Checked) -> Iterator[Problem]:
    """Caution when the gap grows by more than the house lets pass."""
    gaps = job.door.gaps
    (narrow_at, narrow), (wide_at, wide) = (
        min(gaps, key=lambda g: g[1]),
        max(gaps, key=lambda g: g[1]),
    )
    rise, most = wide - narrow, job.shop.limits.uneven_gap
    # A limit of 3 is said as 1/8 where inches are read, and 1/8 must not be past 1/8.
    if not exceeds(rise, most) or job.size(rise) == job.size(most):
        return
    along = ", ".join(job.size(gap) for _, gap in gaps)
    yield Problem(
        code="uneven_floor_gap",
        level="caution",
        message=f"The gap under the shut leaves runs {along} from left to right: the floor rises "
        f"{job.size(wide - narrow)} to the {narrow_at} and the leaves hang level.",
        where=job.door.written.line("floor gap"),
        about="floor gap uneven",
        found=f"{job.size(narrow)} at the {narrow_at}, {job.size(wide)} at the {wide_at}",
        allowed=f"{job.size(job.shop.limits.uneven_gap)} difference",
        fix="Tell the client before it is made, not after.",
    )
