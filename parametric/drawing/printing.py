"""How a number reaches paper: in which unit, and to which step."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from parametric.catalog.shop import Shop
from parametric.units import Unit, length_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule of printing: a unit, and a step in that unit."""

    unit: Unit
    step: Fraction

    def text(self, value: float, *, down: bool = False) -> str:
        """A length, mm, as printed."""
        return length_text(value, self.unit, self.step, down=down)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """How a job's sheets print lengths: wood, and the finer step of pockets and glass."""

    wood: Rule
    fine: Rule

    @property
    def unit_words(self) -> str:
        """What the title block says of the unit."""
        return "mm" if self.wood.unit == "mm" else "inches"


def printing_rules(shop: Shop, unit: Unit) -> Rules:
    """The shop's steps for a design in one unit."""
    return Rules(
        wood=Rule(unit=unit, step=shop.paper.wood_step(unit)),
        fine=Rule(unit=unit, step=shop.paper.fine_step(unit)),
    )


MM = Rule(unit="mm", step=Fraction(1, 2))
"""Whole and half millimetres."""
