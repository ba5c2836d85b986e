"""A length as the client's page prints it: the job's own rounding, fractions set as fractions."""

from __future__ import annotations

import re

from parametric.figures import Figure
from parametric.resolve.door import Resolved
from parametric.trade.tables import fine, wood
from parametric.units import INCH, Unit, mm_text
from parametric.writers.client_page import Amount

_THIN = "\u2009"
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)-)?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)")


def page_text(text: str, unit: Unit) -> str:
    """`33-17/32` with a thin space and a fraction's own bar, and its unit; `852` as it is.

    Example:
        >>> page_text("852", "mm"), page_text("5", "inch")
        ('852', '5″')
    """
    if unit == "mm":
        return text.replace("-", "\u2212")

    def barred(found: re.Match[str]) -> str:
        whole = f"{found['whole']}{_THIN}" if found["whole"] else ""
        return f"{whole}{found['top']}\u2044{found['bottom']}"

    return f"{_FRACTION.sub(barred, text)}\u2033"


def wood_amount(resolved: Resolved, figure: Figure, name: str = "") -> Amount:
    """A size of wood or of the site under its figure's name."""
    unit = resolved.design.unit
    text = page_text(wood(figure, unit, resolved.shop), unit)
    return Amount(figure=name or figure.name or "", text=text)


def true_amount(resolved: Resolved, figure: Figure) -> Amount:
    """A thickness as the callipers say it: hundredths of a mm, thousandths of an inch."""
    if resolved.design.unit == "mm":
        return Amount(figure=figure.name or "", text=mm_text(float(figure), 0.01))
    return Amount(figure=figure.name or "", text=f"{float(figure) / float(INCH):.3f}\u2033")


def glass_amount(resolved: Resolved, figure: Figure, *, down: bool = False) -> Amount:
    """A size of glass, a pane's own never rounded up."""
    unit = resolved.design.unit
    text = page_text(fine(figure, unit, resolved.shop, down=down), unit)
    return Amount(figure=figure.name or "", text=text)
