"""The order in which a part's cuts are listed: along the part, and face by face at one place."""

from __future__ import annotations

from collections.abc import Mapping
from typing import assert_never

from parametric.model import (
    Cut,
    Drilled,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
)
from parametric.outlines import bounds_of
from parametric.trade.moulded_runs import edge_beside, run_sizes

_AFTER: Mapping[Face, int] = {
    "low end": 0,
    "low edge": 1,
    "high edge": 2,
    "low face": 3,
    "high face": 4,
    "high end": 5,
}


def place_of(cut: Cut, part: Part) -> tuple[float, int]:
    """Where a cut begins along the part, and in which turn its face is read."""
    match cut:
        case Slot() | Groove() if cut.face in ("low end", "high end"):
            return _end_place(cut.face, part)
        case Slot() | Groove():
            return round(float(cut.u0), 6), _AFTER[cut.face]
        case Pocket() | Drilled() | Shaped() if cut.face in ("low end", "high end"):
            return _end_place(cut.face, part)
        case Shaped():
            return round(bounds_of(cut.outline)[0], 6), _AFTER[cut.face]
        case Moulded() if (beside := edge_beside(cut)) in ("low end", "high end"):
            return _end_place(beside, part)
        case Moulded():
            return round(run_sizes(cut, part.blank).low, 6), _AFTER[cut.face]
        case Pocket():
            return round(float(cut.u - cut.length / 2), 6), _AFTER[cut.face]
        case Drilled():
            return round(float(cut.u), 6), _AFTER[cut.face]
        case ScrewPocket():
            low = 0.0 if cut.end == "low end" else float(part.blank.length) - cut.reach
            return round(low, 6), _AFTER[cut.face]
        case Trim() if cut.end == "low end":
            return -1.0, 0
        case Trim() | Mitre():
            return _end_place(cut.end, part)
        case RaisedBevel() | Tongue() | RoundArrises() | RoundCorners() | Island():
            return 0.0, 0
        case _:
            assert_never(cut)


def _end_place(end: Face, part: Part) -> tuple[float, int]:
    low = end == "low end"
    return 0.0 if low else float(part.blank.length), _AFTER[end]
