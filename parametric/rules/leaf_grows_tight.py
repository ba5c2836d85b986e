"""A leaf grows so wide in the dampest season that its gaps all but close.

Why: stiles move across their grain; a leaf between jambs then rubs, and somebody planes it.
Example: two flat-sawn oak stiles of 4-1/2 grow 2 x 4.5 x 0.00365 x 4 = 0.131 from 6 to 10 %;
a hinge gap of 3/32 and half a meeting gap of 1/8 are 0.156, and 0.025 is left.
Source: movement, Wood Handbook (FPL-GTR-190) eq. 13-2; the least gap is common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.swinging import LEAST_SEASON_GAP
from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import printed
from parametric.trade.seasons import leaf_seasons


def leaf_grows_tight(job: Checked) -> Iterator[Problem]:
    """Caution below the least gap; the gaps are the leaf's own and its share of the meeting gap."""
    said, moisture = printed(job.resolved), job.shop.moisture
    leaves = {leaf.name: leaf for leaf in job.door.leaves}
    for season in leaf_seasons(job.resolved):
        if not exceeds(LEAST_SEASON_GAP, season.left):
            continue
        leaf = leaves[season.leaf]
        left = (
            f"{said.gauge(season.left)} of them is left"
            if exceeds(season.left, 0.0)
            else f"it binds by {said.gauge(-season.left)}"
        )
        quarter = (
            "quarter-sawn stiles move about half as much; " if leaf.written.sawn == "flat" else ""
        )
        yield Problem(
            code="leaf_grows_tight",
            level="caution",
            message=f"The {leaf.written.sawn}-sawn stiles of a leaf grow {said.gauge(season.growth)} "
            f"together when the timber goes from {float(moisture.made):g} to "
            f"{float(moisture.dampest):g} %; its gaps are {said.gauge(season.room)}, and {left}.",
            where=leaf.written.line("sawn"),
            about="gaps in the dampest season",
            found=said.gauge(season.left),
            allowed=f"{said.gauge(LEAST_SEASON_GAP)} or more",
            fix=f"Hang the leaves with the timber in the middle of its year; {quarter}or make the "
            "gaps wider.",
        )
