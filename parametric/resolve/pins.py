"""Pins: numbers the maker holds to a value. They are compared, never made to come true."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from parametric.figures import Figure, origin_line
from parametric.names import match, nearest_name
from parametric.problems import Problem
from parametric.resolve.pin_ways import ways_to
from parametric.units import Unit, length_text


def compare_pins(
    pins: Mapping[str, Figure], figures: Mapping[str, Figure], unit: Unit
) -> tuple[Problem, ...]:
    """Each pin against the number of that name; a difference is a stop, an unknown name too."""
    problems = []
    for written, pinned in pins.items():
        hits = match(written, figures)
        if len(hits) != 1:
            problems.append(_unknown(written, pinned, hits, figures))
            continue
        worked_out = figures[hits[0]]
        apart = float(worked_out - pinned)
        if abs(apart) > 1e-6:
            problems.append(
                Problem(
                    code="pin_disagrees",
                    level="stop",
                    message=f"{hits[0]} is pinned at {_exactly(pinned, unit)} but works out at "
                    f"{_exactly(worked_out, unit)}, {_exactly(abs(apart), unit)} "
                    f"{'more' if apart > 0 else 'less'}.",
                    where=origin_line(pinned),
                    about=hits[0],
                    found=_exactly(worked_out, unit),
                    allowed=_exactly(pinned, unit),
                    fix=_choices(written, worked_out, pinned, unit),
                )
            )
    return tuple(problems)


MOST_WAYS = 3
"""Lengths that are offered to be changed; `explain` shows the rest."""


def _choices(written: str, worked_out: Figure, pinned: Figure, unit: Unit) -> str:
    """What would settle it: no pin, another, or another length somewhere behind the sum."""
    ways = [way for way in ways_to(worked_out, float(pinned)) if _can_be_written(way.then, unit)]
    offered = [
        f"make the {way.name} {_exactly(way.then, unit)} in place of {_exactly(way.now, unit)} "
        f"(line {way.where.line})"
        for way in ways[:MOST_WAYS]
    ]
    if _can_be_written(worked_out, unit):
        offered.append(f"pin {written} at {_exactly(worked_out, unit)}")
    alone = "" if ways else "; no one length would do it alone"
    if len(offered) < 2:
        offered.append("take the pin away")
    said = ", or ".join(offered)
    return f"{said[0].upper()}{said[1:]}{alone}. `stilewright explain` shows the sum."


def _can_be_written(value: float, unit: Unit) -> bool:
    """Whether a length in hundredths of a millimetre, or sixty-fourths of an inch, says it truly."""
    steps = float(value) / (25.4 / 64 if unit == "inch" else 0.01)
    return abs(steps - round(steps)) < 1e-5


def _exactly(value: float, unit: Unit) -> str:
    return length_text(float(value), unit, Fraction(1, 64) if unit == "inch" else Fraction(1, 100))


def _unknown(
    written: str, pinned: Figure, hits: tuple[str, ...], figures: Mapping[str, Figure]
) -> Problem:
    if hits:
        message = f'"{written}" may mean {" or ".join(hits[:4])}. Say which.'
    else:
        near = nearest_name(written, figures)
        message = f'No number is called "{written}".' + (f' Did you mean "{near}"?' if near else "")
    return Problem(
        code="unknown_name",
        level="stop",
        message=message,
        where=origin_line(pinned),
        about="pinned",
        found=written,
        allowed="a name that `stilewright explain` lists",
        fix="Use the name as `stilewright explain` prints it.",
        unreadable=True,
    )
