"""Offcuts of a timber stand in the workshop, and no plan uses them.

Why: bars are only planned where somebody wrote in which lengths the timber is bought; without
them nothing says what an offcut would save, and it stays in its corner.
Example: `offcuts: {white oak: [150 x 52 x 1210]}` and no `lengths` under `timber white oak`.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.design.settings import TimberSpec
from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import several


def offcuts_not_planned(job: Checked) -> Iterator[Problem]:
    """Note each timber of the job that has offcuts and no lengths."""
    used = {part.material.name for part in job.assembly.parts if part.material.look == "timber"}
    stock = job.shop.offcuts
    for name in dict.fromkeys(one.material for one in stock if one.material in used):
        written = job.design.block("timber", name) or job.design.block("timber")
        if isinstance(written, TimberSpec) and written.lengths:
            continue
        own = [one for one in stock if one.material == name]
        yield Problem(
            code="offcuts_not_planned",
            level="note",
            message=f"{several(len(own), 'offcut')} of {name} in stock: none is planned for, since "
            f"no lengths are written that {name} is bought in.",
            where=origin_line(own[0].length),
            about="offcuts",
            found=several(len(own), "offcut"),
            allowed=f"timber {name}: {{lengths: [...]}}",
            fix=f"Write the yard's lengths, timber {name}: {{lengths: [2400, 3000]}}; or look "
            "through the offcuts before you buy.",
        )
