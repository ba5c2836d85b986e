"""A size that is made, or a rail held at a line of the room, rests on a reading the surveyor doubts.

Why: glass cannot be cut again, and a leaf cannot grow. Example: `bottom: about 1829`.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import doubtful, leaves
from parametric.problems import Problem
from parametric.rules.checked import Checked


def reading_doubted(job: Checked) -> Iterator[Problem]:
    """One caution for each doubted reading that a leaf's size or a held rail rests on."""
    hanging = job.door.hanging
    held = (band.foot for leaf in job.door.leaves for band in leaf.bands if band.written.pin)
    seen: set[int] = set()
    for size in (hanging.leaf_width, hanging.leaf_height, *held):
        if not doubtful(size):
            continue
        for reading in leaves(size):
            if reading.about and id(reading) not in seen:
                seen.add(id(reading))
                yield Problem(
                    code="reading_doubted",
                    level="caution",
                    message=f"The {size.name} rests on {reading.name}, which the survey gives as "
                    f"about {job.size(reading)}. Measure again before anything is cut.",
                    where=reading.where,
                    about=reading.name or "",
                    found=f"about {job.size(reading)}",
                    allowed="a reading without a doubt",
                    fix="Measure it again and take the word `about` away.",
                )
