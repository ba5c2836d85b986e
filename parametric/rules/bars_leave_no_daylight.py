"""The bars of a lite are together as wide as the lite, or wider.

Why: nothing is left to look through, and bars would lie one on another.
Example: three bars of 200 in an opening of 592, which leave -2 for each of four panes.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def bars_leave_no_daylight(job: Checked) -> Iterator[Problem]:
    """Stop, for each way that a lite is divided."""
    told: set[tuple[object, ...]] = set()
    for leaf in job.leaves:
        for lite in leaf.lites:
            if lite.cell is None or lite.section is None:
                continue
            for way, left in zip(("width", "height"), lite.cell, strict=True):
                where, amount = origin_line(lite.section.face), job.fine(left)
                # Lites alike in leaves alike are told once.
                if float(left) > 0 or (where, way, amount) in told:
                    continue
                told.add((where, way, amount))
                yield Problem(
                    code="bars_leave_no_daylight",
                    level="stop",
                    message=f"Bars {job.size(lite.section.face)} wide leave "
                    f"{amount} of {way} between them in {lite.name}.",
                    where=where,
                    about=left.name or "",
                    found=amount,
                    allowed="more than 0",
                    fix="Make the bars narrower (`muntin`), or ask for fewer panes.",
                    no_size=True,
                )
