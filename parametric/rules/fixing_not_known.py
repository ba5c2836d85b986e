"""What lies behind the wall where the track is fixed is not known, or holds nothing.

Why: the whole door hangs on those screws.
Example: `fixing: solid timber` behind 12.5 board takes a screw of 12.5 + 38 and the bracket.
Source: common practice, no source. Defer to local codes and a licensed practice in doubt.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked


def fixing_not_known(job: Checked) -> Iterator[Problem]:
    """Caution when it is not known, stop when it is board only."""
    if not job.door.hanging.on_wall:
        return
    fixing = job.door.opening.fixing
    survey = job.door.survey
    if fixing == "not known":
        yield Problem(
            code="fixing_not_known",
            level="caution",
            message="What lies behind the wall above the opening is not known: no load of the "
            "track is promised until it is.",
            where=survey.line("fixing"),
            about="fixing not known",
            found="not known",
            allowed="solid timber, studs or masonry, seen or drilled",
            fix="Open up or drill, then write `fixing: solid timber`.",
        )
    elif fixing == "board only":
        yield Problem(
            code="fixing_not_known",
            level="stop",
            message="There is only board to fix the track to: it holds no door.",
            where=survey.line("fixing"),
            about="fixing",
            found="board only",
            allowed="solid timber, studs or masonry",
            fix="Build in a timber or a header board first, and write what it is.",
        )
