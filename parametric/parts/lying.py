"""Which way a part lies in its leaf, and what the faces of one that lies level are called."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.model import Face

RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)

LEVEL: Mapping[Face, str] = {
    "low end": "left end",
    "high end": "right end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "back",
    "high face": "face",
}
"""Rails and level bars, lengthways to the right."""
