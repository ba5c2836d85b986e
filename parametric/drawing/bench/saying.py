"""Numbers on their way to a bench page: each text knows which figures it prints.

A `Said` is a text to everybody else. Tables and labels carry it as they carry any text,
so a finished sheet can be asked which of the job's figures stand on it, and how.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from parametric.drawing.lettering import TEXT, Weight, wrap
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, primitives
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.trade.printed import Printed, printed


class Print(NamedTuple):
    """A figure by its name, and the words that stand for it on the page."""

    name: str
    text: str


class Said(str):
    """A text with the figures that it prints."""

    __slots__ = ("prints",)

    prints: tuple[Print, ...]

    def __new__(cls, text: str, prints: tuple[Print, ...] = ()) -> Said:
        """A text as it stands, with what it prints."""
        self = str.__new__(cls, text)
        self.prints = prints
        return self


def prints_of(text: str) -> tuple[Print, ...]:
    """The figures that a text prints; none, where it is no more than a text."""
    return text.prints if isinstance(text, Said) else ()


def said(template: str, *parts: str) -> Said:
    """A sentence with numbers in it.

    Example:
        >>> said("{} in {} steps", Said("46", (Print("depth", "46"),)), "8").prints
        (Print(name='depth', text='46'),)
    """
    return Said(template.format(*parts), tuple(p for part in parts for p in prints_of(part)))


def listed(parts: Sequence[str], between: str = ", ") -> Said:
    """Several texts in a row."""
    return said(between.join("{}" for _ in parts), *parts)


def broken(text: str, room: float, height: float = TEXT, weight: Weight = "regular") -> list[str]:
    """A text in lines that fit; the first of them answers for what all of them print."""
    lines: list[str] = [*wrap(text, room, height, weight)]
    if lines and prints_of(text):
        lines[0] = Said(lines[0], prints_of(text))
    return lines


def printed_on(sheet: Sheet) -> Iterator[Print]:
    """Every figure that a sheet prints, as often as it prints it."""
    for element in sheet.elements:
        for part in primitives(element):
            if isinstance(part, Label):
                yield from prints_of(part.text)


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """How this job's numbers are said on a bench page.

    Each takes a figure and, where others have the same value and need not be said again,
    those too.
    """

    say: Printed

    def wood(self, value: float, *same: float, down: bool = False) -> Said:
        """A size of wood."""
        return _said(self.say.wood(value, down=down), value, *same)

    def fine(self, value: float, *same: float, down: bool = False) -> Said:
        """A size of a pocket or a pane."""
        return _said(self.say.fine(value, down=down), value, *same)

    def set_to(self, value: float, *same: float) -> Said:
        """What a machine is set to: finer than a rule reads where the number asks for it."""
        return _said(self.say.setting(value), value, *same)

    def least(self, value: float, *same: float) -> Said:
        """A least size, never printed smaller than it is."""
        return _said(self.say.up(value), value, *same)

    def gauge(self, value: float, *same: float) -> Said:
        """A notch of a gauge."""
        return _said(self.say.gauge(value), value, *same)

    def error(self, value: float, *same: float) -> Said:
        """How far out something may be."""
        return _said(self.say.error(value), value, *same)

    def degrees(self, value: float, *same: float) -> Said:
        """An angle, to the tenth as a saw's scale is read."""
        return _said(f"{float(value):.1f}°", value, *same)

    def count(self, value: float, *same: float) -> Said:
        """A whole number."""
        return _said(str(round(float(value))), value, *same)

    def hundredths(self, value: float, *same: float) -> Said:
        """Square metres and litres."""
        return _said(f"{float(value):.2f}", value, *same)

    def plain(self, value: float, *same: float) -> Said:
        """What is written short: per cents, square metres a litre."""
        return _said(f"{float(value):g}", value, *same)


def _said(text: str, *values: float) -> Said:
    names = [v.name for v in values if isinstance(v, Figure) and v.name is not None]
    return Said(text, tuple(Print(name, text) for name in dict.fromkeys(names)))


def numbers(job: Subject) -> Numbers:
    """For a job."""
    return Numbers(say=printed(job.resolved))
