"""Pieces of one shape: which lie turned in their leaf, which are alike on both sides, which mirror.

Turning a piece about its length changes its face for its back. It is then another piece,
unless every cut goes over into a cut when it is mirrored in the middle of its thickness.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from typing import assert_never

from parametric.model import (
    Blank,
    Cut,
    Face,
    Groove,
    Island,
    Mitre,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    Shaped,
    Slot,
    Tongue,
    Trim,
    digest,
)
from parametric.outlines import turned_upside_down

_OTHER_SIDE: Mapping[Face, Face] = {"low face": "high face", "high face": "low face"}


def mirrored(cut: Cut, blank: Blank) -> Cut | None:
    """The cut mirrored in the middle of the thickness; None for one that knows a single face."""
    match cut:
        case Shaped() if cut.face in _OTHER_SIDE:
            return dataclasses.replace(cut, face=_OTHER_SIDE[cut.face])
        case Shaped():
            over = turned_upside_down(cut.outline, up=float(blank.thickness))
            return dataclasses.replace(cut, outline=over)
        case Slot() | Groove() | Pocket() if cut.face in _OTHER_SIDE:
            return dataclasses.replace(cut, face=_OTHER_SIDE[cut.face])
        case Slot() | Groove() | Pocket():
            return dataclasses.replace(cut, v=blank.thickness - cut.v)
        case Island():
            other = "high face" if cut.face == "low face" else "low face"
            return dataclasses.replace(cut, face=other)  # type: ignore[arg-type]
        case Trim() | Mitre() | RoundArrises() | RoundCorners():
            return cut
        case RaisedBevel() | Tongue():
            return None
        case _:
            assert_never(cut)


def alike_both_sides(part: Part) -> bool:
    """True when the piece is the same with its face for its back."""
    return mirrors(part, part)


def mirrors(part: Part, other: Part) -> bool:
    """True when one piece is the other mirrored in the middle of its thickness."""
    turned = [mirrored(cut, part.blank) for cut in part.cuts]
    return digest(part.blank) == digest(other.blank) and _keys(turned) == _keys(other.cuts)


def lies_turned(part: Part, twin: Part) -> bool:
    """True when a twin looks to the front with the side that is the first one's back."""
    sides: tuple[Face, ...] = ("low face", "high face")
    return any(part.faces.get(side) != twin.faces.get(side) for side in sides)


def _keys(cuts: Sequence[Cut | None]) -> list[str]:
    return sorted(digest(cut) for cut in cuts)
