"""How far the rails of two leaves may end up out of line: the small errors, added up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.catalog.shop import Accuracy
from parametric.figures import Figure, named, root


@dataclass(frozen=True, slots=True, kw_only=True)
class StackUp:
    """Rail alignment between two neighbouring leaves, plus or minus mm.

    Each leaf brings its marking, its slots and the slip of its clamps; their hangers are
    set once against each other. `worst` is everything the wrong way at once, `likely` the
    root of the sum of squares, `likely_together` the same with both leaves marked from one
    stick, where marking cancels. `governing` is what this shop's way of marking gives.
    """

    marking: Figure
    slot: Figure
    clamping: Figure
    hanging: Figure
    worst: Figure
    likely: Figure
    likely_together: Figure
    marked: Literal["together", "singly"]
    governing: Figure


def stack_up(accuracy: Accuracy) -> StackUp:
    """Add the four up three ways.

    Source: independent errors add by their squares (statistics of small errors).
    """
    marking = named("marking accuracy", accuracy.marking)
    slot = named("machine accuracy", accuracy.slot)
    clamping = named("clamping accuracy", accuracy.clamping)
    hanging = named("hanging accuracy", accuracy.hanging)
    squares = slot * slot + clamping * clamping
    likely = named(
        "rail alignment / likely", root(2 * (marking * marking + squares) + hanging * hanging)
    )
    together = named("rail alignment / marked together", root(2 * squares + hanging * hanging))
    return StackUp(
        marking=marking,
        slot=slot,
        clamping=clamping,
        hanging=hanging,
        worst=named("rail alignment / worst", 2 * (marking + slot + clamping) + hanging),
        likely=likely,
        likely_together=together,
        marked=accuracy.marked,
        governing=named(
            "rail alignment / expected", together if accuracy.marked == "together" else likely
        ),
    )
