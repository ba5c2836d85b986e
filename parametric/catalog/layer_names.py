"""How a workshop's machine wants the layers of a machine file named.

A name is the kind of cut, its depth and, where wanted, its cutter, each said in the
workshop's own words: `pocket_d14.2`, or `12-tasche-14p2`. What is built here reads back in
one way only; how long a name may get and what may stand in it is checked as it is read.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Said = Literal["kind", "depth", "cutter"]
CutKind = Literal["slot", "pocket", "groove", "bore", "cut_through"]

LONGEST = 31
"""Letters in a layer name that every reader of DXF takes.

Source: symbol names before extended names came with R2000, published DXF reference, from
memory.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerNames:
    """The words of layer names, what stands between them, and in what order.

    The depth and the diameter of the cutter are in mm. What goes right through has no
    depth in its name.
    """

    order: tuple[Said, ...] = ("kind", "depth")
    between: str = "_"
    depth_mark: str = "d"
    cutter_mark: str = "c"
    decimal_sign: str = "."
    slot: str = "slot"
    pocket: str = "pocket"
    groove: str = "groove"
    bore: str = "bore"
    through: str = "cut_through"
    stock: str = "stock"
    datum: str = "datum"
    notes: str = "notes"

    def word(self, kind: CutKind) -> str:
        """The workshop's word for a kind of cut."""
        return self.through if kind == "cut_through" else str(getattr(self, kind))


OURS = LayerNames()
"""What the tool takes where no house file says otherwise."""
