"""How few would do, and how that is known."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, Self

Ground = Literal["nothing", "size", "scales", "patterns", "every pattern"]
"""Nothing is wanted; size: lengths or areas, the kerf in them, added up; scales: lengths and
widths counted by what can lie beside and behind them; patterns: no mix of cuttings, even cut
half a time, does with less; every pattern: all cuttings were tried in whole numbers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """Fewer than `least` cannot do; `asks` is what the count came to before it was rounded up."""

    least: int
    asks: float
    by: Ground

    @classmethod
    def of(cls, bound: Fraction, by: Ground) -> Self:
        """Rounded up without a tolerance: the bound is exact."""
        return cls(least=math.ceil(bound), asks=float(bound), by=by)
