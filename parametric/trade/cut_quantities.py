"""What may be said of a cut in the list of a part: the heads of its columns."""

from __future__ import annotations

from typing import Literal

Quantity = Literal[
    "from",
    "to",
    "first at",
    "holes",
    "apart",
    "across",
    "width",
    "narrow",
    "left height",
    "right height",
    "crown",
    "deep",
    "begins",
    "ends",
    "run in",
    "at the edge",
    "at the fillet",
    "angle",
    "thick",
    "long",
    "off the back",
    "round",
    "outside",
]
"""One number or word of a cut."""
