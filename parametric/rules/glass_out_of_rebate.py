"""Glass is thicker than its rebate is deep, or does not reach into it.

Why: what stands out of the rebate is knocked, and no compound covers its edge; a pane with no
bite falls out.
Example: a pane of 6 on tape of 1 needs a rebate 7 deep; a rebate that reaches 3 into the frame
holds nothing of a pane cut 3 short all round.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def glass_out_of_rebate(job: Checked) -> Iterator[Problem]:
    """Stop; the first pane of a lite speaks for those like it."""
    for leaf in job.leaves:
        for lite in leaf.lites:
            rebate, pane = lite.rebate, lite.pane
            if rebate is None:
                continue
            needed = pane.thickness + pane.tape
            if exceeds(needed, rebate.depth):
                yield Problem(
                    code="glass_out_of_rebate",
                    level="stop",
                    message=f"Glass and its bed are {job.fine(needed)} thick and the rebate is "
                    f"{job.fine(rebate.depth)} deep: the glass stands out of it.",
                    where=origin_line(rebate.depth),
                    about=rebate.depth.name or "",
                    found=job.fine(rebate.depth),
                    allowed=f"{job.fine(needed)} or more",
                    fix="Cut the rebate deeper (`rebate depth`), or take thinner glass.",
                )
            least = min((one.bite for one in lite.panes), key=float)
            if float(least) <= 0:
                yield Problem(
                    code="glass_without_bite",
                    level="stop",
                    message="The rebate reaches no farther than the glass is cut short by "
                    f"({job.fine(pane.clearance)}): nothing holds it.",
                    where=origin_line(pane.clearance),
                    about=least.name or "",
                    found=job.fine(least),
                    allowed="more than 0",
                    fix="Cut the rebates wider (`frame rebate`, `muntin rebate`), or make the "
                    "clearance smaller.",
                )
