"""Layers: what a line means, how wide it is drawn and in which order.

Widths follow the ratio 1 : 2 : 4 with a lighter line for hatching. Names are the same
in every file format.

Source: ISO 128-2 (line groups and their ratio), from memory; layer names are our own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

Layer = Literal[
    "sheet_frame",
    "sheet_thin",
    "cut_heavy",
    "cut",
    "edge",
    "edge_fine",
    "hidden",
    "centre",
    "adjacent",
    "datum",
    "hatch",
    "breaks",
    "dims",
    "dim_ticks",
    "section_marks",
    "text",
    "table",
    "warning",
]

Dash = tuple[float, ...]
_CHAIN: Dash = (7.0, 1.0, 0.6, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """How a layer is drawn.

    Args:
        width: mm on paper.
        dash: drawn and left-out lengths in turn, mm on paper; empty is a full line.
        order: what is drawn later lies over what is drawn earlier.
        crosses_text: an overlap of this layer with a text is no fault.
    """

    width: float
    order: int
    dash: Dash = ()
    crosses_text: bool = False


PENS: Mapping[Layer, Pen] = MappingProxyType(
    {
        "hatch": Pen(width=0.13, order=0, crosses_text=True),
        "edge_fine": Pen(width=0.18, order=1),
        "hidden": Pen(width=0.18, order=1, dash=(1.8, 0.9)),
        "centre": Pen(width=0.18, order=1, dash=_CHAIN),
        "adjacent": Pen(width=0.18, order=1, dash=(5.0, 0.9, 0.6, 0.9, 0.6, 0.9)),
        "breaks": Pen(width=0.18, order=1),
        "sheet_thin": Pen(width=0.18, order=1, crosses_text=True),
        "table": Pen(width=0.18, order=1, crosses_text=True),
        "datum": Pen(width=0.25, order=1, dash=_CHAIN),
        "edge": Pen(width=0.35, order=2),
        "cut": Pen(width=0.5, order=3),
        "cut_heavy": Pen(width=0.7, order=3),
        "sheet_frame": Pen(width=0.7, order=3),
        "section_marks": Pen(width=0.5, order=3),
        "dims": Pen(width=0.18, order=4),
        "dim_ticks": Pen(width=0.35, order=4),
        "warning": Pen(width=0.35, order=4),
        "text": Pen(width=0.18, order=5),
    }
)
