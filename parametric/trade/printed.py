"""How a job's sizes are said in a sentence: the unit of the design, the steps of the house."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from parametric.catalog.shop import Shop
from parametric.figures import Figure
from parametric.loaded import is_over
from parametric.resolve.door import Resolved
from parametric.trade.tables import fine, thick, wood
from parametric.units import (
    FOOT,
    FORCE,
    INCH,
    LOAD_ALONG,
    LOAD_OVER,
    POUND,
    Unit,
    inch_text,
    length_text,
    mm_text,
)


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

    def thick(
        self, nominal: float, true: float, build: tuple[float, float, float] | None = None
    ) -> str:
        """The thickness of glass: `1/4 (0.226 true)`, `4 / 12 / 4 (20)`."""
        return thick(nominal, true, self.unit, self.shop, build)

    def site(self, value: float) -> str:
        """A place on a wall or a floor, as a tape is read there."""
        return length_text(float(value), self.unit, self.shop.paper.site_step(self.unit))

    def gauge(self, value: float) -> str:
        """A setting or a gauge that the rule cannot read: twentieths of a mm, thousandths of an inch."""
        if self.unit == "mm":
            return mm_text(float(value), 0.05)
        return f"{float(value) / float(INCH):.3f}"

    def setting(self, value: float) -> str:
        """What a machine is set to: the fine step where the number lies on it, else as a gauge."""
        if self.unit == "mm":
            return self.gauge(value)
        step = float(INCH) * float(self.shop.paper.fine_step(self.unit))
        on_step = abs(float(value) / step - round(float(value) / step)) < 1e-6
        return self.fine(value) if on_step else self.gauge(value)

    def error(self, value: float) -> str:
        """How far out something may be: hundredths of a mm, thousandths of an inch."""
        if self.unit == "mm":
            return f"{float(value):.2f}"
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


def pounds(value: float) -> str:
    """A weight, kg, in pounds: whole ones, below ten to the tenth."""
    lb = float(value) / float(POUND)
    return f"{lb:.0f}" if lb >= _TENTHS_BELOW else f"{lb:.1f}"


_TENTHS_BELOW = 9.95


def weight(value: float, unit: Unit) -> str:
    """A weight, kg, as a person reads it who reads sizes in this unit.

    Example:
        >>> weight(23.7, "mm"), weight(23.7, "inch"), weight(3.4, "inch")
        ('23.7 kg', '52 lb (23.7 kg)', '7.5 lb (3.4 kg)')
    """
    return f"{kg(value)} kg" if unit == "mm" else f"{pounds(value)} lb ({kg(value)} kg)"


def weight_limit(value: float, unit: Unit) -> str:
    """A weight that somebody set or a maker rates, kg, as it was written.

    Example:
        >>> weight_limit(25, "mm"), weight_limit(27.2155422, "inch")
        ('25 kg', '60 lb (27.2 kg)')
    """
    if unit == "mm":
        return f"{float(value):g} kg"
    return f"{pounds(value)} lb ({float(kg(value)):g} kg)"


def weight_cell(value: float, unit: Unit) -> str:
    """The same in a column under `weight_head`: `52 (23.7)`."""
    return kg(value) if unit == "mm" else f"{pounds(value)} ({kg(value)})"


def weight_head(unit: Unit) -> str:
    """What a column of weights is headed."""
    return "kg" if unit == "mm" else "lb (kg)"


def force(value: float, unit: Unit) -> str:
    """A force, N, as struts are sold by it.

    Example:
        >>> force(120, "mm"), force(120, "inch")
        ('120 N', '27 lbf (120 N)')
    """
    newtons = f"{float(value):.0f} N"
    return newtons if unit == "mm" else f"{float(value) / float(_LBF):.0f} lbf ({newtons})"


def moment(value: float, unit: Unit) -> str:
    """A moment, N m, its size alone.

    Example:
        >>> moment(-3.564, "mm"), moment(-3.564, "inch")
        ('3.6 N m', '31.5 in lbf (3.6 N m)')
    """
    metric = f"{abs(float(value)):.1f} N m"
    if unit == "mm":
        return metric
    return f"{abs(float(value)) * 1000 / float(_LBF * INCH):.1f} in lbf ({metric})"


_LBF = FORCE.sizes["lbf"]


def load_text(load: Figure, unit: Unit) -> str:
    """What a shelf bears, as it would be written in a design of this unit.

    Example:
        >>> load_text(Figure(29.7633, unit="kg/m"), "inch"), load_text(Figure(73.2, unit="kg/m2"), "mm")
        ('20 lb/ft', '73 kg/m2')
    """
    if unit == "mm":
        return f"{_short(float(load))} {load.unit}"
    written = "lb/ft2" if is_over(load) else "lb/ft"
    measure = LOAD_OVER if is_over(load) else LOAD_ALONG
    return f"{_short(float(load) / float(measure.sizes[written]))} {written}"


def _short(value: float) -> str:
    """Two figures and more, no trailing nought: nobody weighs what will stand on a shelf."""
    return f"{value:.0f}" if value >= _TENTHS_BELOW else f"{value:.1f}".removesuffix(".0")


def sag_text(sag: Figure, unit: Unit) -> str:
    """The most a shelf may sag, mm to the metre, as it would be written in a design of this unit.

    Example:
        >>> sag_text(Figure(2.604167), "inch"), sag_text(Figure(2.604167), "mm")
        ('1/32 in per foot', '2.6 mm per metre')
    """
    if unit == "mm":
        return f"{_short(float(sag))} mm per metre"
    in_a_foot = float(sag) * float(FOOT) / 1000
    steps = in_a_foot / float(INCH) * 64
    if abs(steps - round(steps)) < _ON_STEP and round(steps) > 0:
        return f"{inch_text(in_a_foot, Fraction(1, 64))} in per foot"
    return f"{in_a_foot / float(INCH):.3f} in per foot"


_ON_STEP = 1e-3


def several(count: int, one: str, more: str = "") -> str:
    """`1 leaf`, `2 leaves`."""
    return f"{count} {one if count == 1 else more or one + 's'}"
