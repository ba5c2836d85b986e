"""How a job's sizes are said in a sentence: the unit of the design, the steps of the house."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.resolve.door import Resolved
from parametric.trade.tables import fine, wood
from parametric.units import INCH, Unit, mm_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """Lengths in the unit of the design."""

    unit: Unit
    shop: Shop

    def wood(self, value: float, *, down: bool = False) -> str:
        """A size of wood, or of a place on site."""
        return wood(value, self.unit, self.shop, down=down)

    def fine(self, value: float, *, down: bool = False) -> str:
        """A size of a pocket, a gauge or a pane."""
        return fine(value, self.unit, self.shop, down=down)

    def gauge(self, value: float) -> str:
        """A setting or a gauge that the rule cannot read: twentieths of a mm, thousandths of an inch."""
        if self.unit == "mm":
            return mm_text(float(value), 0.05)
        return f"{float(value) / float(INCH):.3f}"

    def up(self, value: float) -> str:
        """A least size, to the fine step above: what is printed is never less than the least."""
        return fine(-float(value), self.unit, self.shop, down=True).removeprefix("-")


def printed(resolved: Resolved) -> Printed:
    """As this design says its lengths."""
    return Printed(unit=resolved.design.unit, shop=resolved.shop)


def kg(value: float) -> str:
    """A weight to the tenth."""
    return f"{float(value):.1f}"


def several(count: int, one: str, more: str = "") -> str:
    """`1 leaf`, `2 leaves`."""
    return f"{count} {one if count == 1 else more or one + 's'}"
