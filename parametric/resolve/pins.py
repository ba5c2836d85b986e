"""Pins: numbers the maker holds to a value. They are compared, never made to come true."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.figures import Figure, origin_line
from parametric.names import match, nearest_name
from parametric.problems import Problem
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
                    message=f"{hits[0]} is pinned at {_show(pinned, unit)} but works out at "
                    f"{_show(worked_out, unit)}, {_show(abs(apart), unit)} "
                    f"{'more' if apart > 0 else 'less'}.",
                    where=origin_line(pinned),
                    about=hits[0],
                    found=_show(worked_out, unit),
                    allowed=_show(pinned, unit),
                    fix=f"Take the pin away, or change what it follows from: "
                    f"`stilewright explain` shows the sum of {hits[0]}.",
                )
            )
    return tuple(problems)


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


def _show(value: float, unit: Unit) -> str:
    return length_text(float(value), unit)
