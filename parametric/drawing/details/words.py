"""What details print in words: from the job's own figures, to its own steps."""

from __future__ import annotations

from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.units import mm_text


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
