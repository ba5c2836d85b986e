"""How a number reaches paper: in which unit, and to which step."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from parametric.catalog.shop import Shop
from parametric.units import (
    Unit,
    decimal_inch_text,
    inch_text,
    length_text,
    long_inch_text,
    read_length,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule of printing: a unit, and a step in that unit.

    In inches only: `feet` says lengths over six feet in feet and inches, as arrangements do;
    `marked` puts the inch mark on every value, as site sheets do; `decimals` follows a
    dimension that falls on no step with its decimal in brackets, as what a machine is set
    to must. `down` prints a dimension to the step below, as glass is ordered: a pane that is
    too large does not go in.
    """

    unit: Unit
    step: Fraction
    feet: bool = False
    marked: bool = False
    decimals: bool = False
    down: bool = False

    def text(self, value: float, *, down: bool = False) -> str:
        """A length, mm, as printed."""
        if self.unit == "inch" and self.feet and not down:
            text = long_inch_text(value, self.step)
        else:
            text = length_text(value, self.unit, self.step, down=down)
        needs_mark = self.marked and self.unit == "inch" and not text.endswith('"')
        return f'{text}"' if needs_mark else text

    def dimension(self, value: float) -> str:
        """A length, mm, as a dimension prints it: `10-17/32 (10.534)` where no step is exact."""
        text = self.text(value, down=self.down)
        if self.unit == "mm" or self.down or not self.decimals:
            return text
        exact = decimal_inch_text(value)
        return (
            text if decimal_inch_text(float(self._nearest(value))) == exact else f"{text} ({exact})"
        )

    def _nearest(self, value: float) -> Fraction:
        """The step nearest a length, mm."""
        return read_length(inch_text(value, self.step), "inch")

    @property
    def stacked(self) -> bool:
        """Whether its fractions are lettered one numeral over the other."""
        return self.unit == "inch"

    @property
    def next_chain(self) -> float:
        """From one chain of dimensions to the next, mm: stacked fractions stand taller."""
        return 9.0 if self.stacked else 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """How a job's sheets print lengths: wood, and the finer step of pockets and glass.

    `arrangement` is for the sheets that show where it goes, `site` for those that are read
    there with a tape in hand.
    """

    wood: Rule
    fine: Rule
    arrangement: Rule
    site: Rule

    @property
    def glass(self) -> Rule:
        """The finer step, rounded down."""
        return replace(self.fine, down=True)

    @property
    def unit(self) -> Unit:
        """The unit of every sheet of the job."""
        return self.wood.unit

    @property
    def unit_words(self) -> str:
        """What the title block says of the unit."""
        return "mm" if self.wood.unit == "mm" else "inches"


def printing_rules(shop: Shop, unit: Unit) -> Rules:
    """The shop's steps for a design in one unit."""
    step, fine = shop.paper.wood_step(unit), shop.paper.fine_step(unit)
    return Rules(
        wood=Rule(unit=unit, step=step),
        fine=Rule(unit=unit, step=fine, decimals=True),
        arrangement=Rule(unit=unit, step=step, feet=True),
        site=Rule(unit=unit, step=shop.paper.site_step(unit), marked=True),
    )


MM = Rule(unit="mm", step=Fraction(1, 2))
"""Whole and half millimetres."""
