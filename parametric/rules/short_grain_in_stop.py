"""A stop sawn from a board to a steep curve runs across the grain at its ends.

Why: a strip of wood is weak across its grain; it breaks as it is sawn, pinned, or taken out
when a pane is changed.
Example: under a half round the stop stands square to the grain at either end; under an arc of
592 that rises 122.6 it runs at 45 degrees there.
Source: common practice, no source.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator

from parametric.catalog.glass_facts import SHORT_GRAIN
from parametric.figures import origin_line
from parametric.outlines import Outline, Vertex, arc_of
from parametric.problems import Problem
from parametric.rules.checked import Checked


def short_grain_in_stop(job: Checked) -> Iterator[Problem]:
    """Caution, for the first lite of a leaf that has one."""
    for leaf in job.leaves:
        for lite in leaf.lites:
            held = lite.pane.stops
            if held is None or held.arch is None:
                continue
            steepest = _steepest(held.arch.outer)
            if steepest <= float(SHORT_GRAIN) + 1e-6:
                continue
            yield Problem(
                code="short_grain_in_stop",
                level="caution",
                message=f"The stop under the arch is sawn from a board and runs {steepest:.0f}° off "
                f"its grain at an end: {job.fine(held.width)} wide it is weak there.",
                where=origin_line(held.width),
                about="stop under an arch",
                found=f"{steepest:.0f}°",
                allowed=f"{float(SHORT_GRAIN):g}° or less",
                fix="Glue its board up from segments that follow the curve before it is sawn, or "
                "laminate it from strips; or choose a flatter arch.",
            )
            break


def _steepest(chain: Outline) -> float:
    """The greatest angle of a curve from the level, at either end of one of its pieces, deg."""
    found = []
    for a, b in itertools.pairwise(chain):
        arc = arc_of(a, b)
        if arc is None:
            found.append(math.degrees(math.atan2(abs(b.y - a.y), b.x - a.x)))
            continue
        found += [_off_level(arc.x, arc.y, end) for end in (a, b)]
    return max(found)


def _off_level(x: float, y: float, end: Vertex) -> float:
    """Of a circle about (x, y) at a point of its upper half."""
    return math.degrees(math.atan2(abs(end.x - x), end.y - y))
