"""A line of the door that says nothing beside another: a rebate's width where stiles butt.

Why: whoever wrote both meant one of them; the tool cannot know which, and goes by the other.
Example: `meeting rebate: 12` with `meeting stiles: butt` steps no edge.
Source: common practice, no source. What a house file has for every job is no contradiction.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked


def word_says_nothing(job: Checked) -> Iterator[Problem]:
    """Caution, for each line that the design writes in vain."""
    written = job.door.written
    for key, because in written.unused.items():
        if written.origin(key) in ("assumed", "house", "catalogue"):
            continue
        yield Problem(
            code="word_says_nothing",
            level="caution",
            message=f'"{key}" says nothing here, for the door has {because}: nothing is made by '
            "that line.",
            where=written.line(key),
            about=f"{key} that says nothing",
            found=f"`{key}`",
            allowed=because,
            fix=f"Take the line `{key}` out, or change {because}.",
        )
