"""Where the wood between a rail's shoulders begins and ends, by sums of its own."""

from __future__ import annotations

from parametric.model import Moulded, Part, Shaped

_SAME = 1e-6


def between_shoulders(part: Part, wood: tuple[float, float]) -> tuple[float, float]:
    """Where the wood in the middle of a part's thickness begins and ends along it, mm.

    Args:
        part: the part.
        wood: where it begins and ends once its ends are trimmed, mm.
    """
    low, high = wood
    if not any(isinstance(cut, Moulded) for cut in part.cuts):
        return low, high  # tails, fingers and rebates at an end are no shoulders
    long, wide = float(part.blank.length), float(part.blank.width)
    half = float(part.blank.thickness) / 2
    for cut in part.cuts:
        if isinstance(cut, Moulded):
            ends = {round(corner.x, 6) for corner in cut.path}
            far = max(float(corner.x) for corner in cut.section)
            low = max(low, far) if ends == {0.0} else low
            high = min(high, long - far) if ends == {round(long, 6)} else high
        if isinstance(cut, Shaped) and "face" in cut.face and cut.surface < half < cut.depth:
            us = [float(corner[0]) for corner in cut.outline]
            if max(float(corner[1]) for corner in cut.outline) < wide - _SAME:
                continue
            low = max(low, max(us)) if min(us) < _SAME and max(us) < long - _SAME else low
            high = min(high, min(us)) if max(us) > long - _SAME and min(us) > _SAME else high
    return low, high
