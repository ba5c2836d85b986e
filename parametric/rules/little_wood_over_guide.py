"""The floor guide's groove comes too near the lowest tenon slots, above all after planing on site.

Why: the wood between groove and slot holds the foot of the joint together.
Example: slots from 40, groove 18 deep, 15 planed off on site: 7 is left.
Source: common practice, no source; the least is the house's `below guide`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked


def little_wood_over_guide(job: Checked) -> Iterator[Problem]:
    """Stop when groove and slot meet; caution below the house's least after full site trim."""
    for leaf in job.leaves:
        yield from _in(job, leaf)


def _in(job: Checked, leaf: Leaf) -> Iterator[Problem]:
    if leaf.guide is None or leaf.wood_over_guide is None:
        return
    least = job.shop.limits.below_guide
    left = leaf.wood_over_guide_after_site_trim
    assert left is not None
    meets = float(leaf.wood_over_guide) <= 0
    if not meets and not exceeds(least, left):
        return
    yield Problem(
        code="little_wood_over_guide",
        level="stop" if meets else "caution",
        message=(
            f"The guide groove is {job.size(leaf.guide.depth)} deep and the lowest slots start "
            f"{job.size(leaf.rails[-1].slots[0].low)} up: they meet."
            if meets
            else f"{job.size(leaf.wood_over_guide)} of wood stands between the guide groove and "
            f"the lowest slots; a further {job.size(leaf.site_trim)} planed off on site leaves "
            f"{job.size(left)}."
        ),
        where=leaf.written.line("site trim"),
        about="wood over the guide groove",
        found=job.size(left),
        allowed=f"{job.size(least)} or more",
        fix="Plane off less on site, keep the slots farther from the foot (`off end`), or make "
        "the groove shallower.",
    )
