"""What details print in words: from the job's own figures, to its own steps."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.chains import Link
from parametric.drawing.lettering import width
from parametric.drawing.papers import scale_words
from parametric.drawing.printing import Rule
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.units import mm_text


def reference(figure: Figure, rule: Rule, *, left_out: float = 0.0) -> Link:
    """A link in brackets, to the step alone: the sheet that owns the number has it finer."""
    return Link(
        figure=figure,
        rule=dataclasses.replace(rule, decimals=False),
        reference=True,
        left_out=left_out,
    )


def size(job: Subject, value: Figure) -> str:
    """A size that a machine is set to: in inches, its decimal too where it falls on no step."""
    return job.rules.fine.dimension(value)


def at_scale(job: Subject, scale: float) -> str:
    """A scale as a caption begins."""
    words = scale_words(scale, job.rules.unit)
    return words[0].upper() + words[1:]


def scales_said(job: Subject, scales: Sequence[float]) -> str:
    """Every scale of a sheet, where the title block has room for them."""
    words = ", ".join(scale_words(scale, job.rules.unit) for scale in scales)
    return words if width(words) <= _SCALE_ROOM else "as shown"


_SCALE_ROOM = 20.0
"""What the title block has for its scale, mm."""


def percent(value: Figure) -> str:
    """A moisture content."""
    return f"{mm_text(float(value), 0.5)} %"


def degrees(value: Figure) -> str:
    """An angle to the tenth."""
    return f"{mm_text(float(value), 0.1)}°"


def radius(job: Subject, value: Figure) -> str:
    """A radius."""
    return f"r {job.fine(value)}"


def through(job: Subject, value: Figure) -> str:
    """The size of a cutter."""
    return f"Ø{job.fine(value)}"
