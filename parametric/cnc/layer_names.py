"""The layer of a machine file that a cut is drawn on, in the workshop's words."""

from __future__ import annotations

from parametric.catalog.layer_names import CutKind, LayerNames, Said
from parametric.figures import plain

_PLACES = 6
"""A size in a name is exact to a nanometre, so that one name is one depth."""


def layer_name(names: LayerNames, kind: CutKind, depth: float, cutter: float) -> str:
    """The name of a layer: what is cut, how deep and with what, as far as the workshop asks.

    Args:
        names: the workshop's words and their order.
        kind: what is cut.
        depth: from the surface of the stock, mm; what goes right through does not say it.
        cutter: its diameter, mm.
    """

    def number(mark: str, value: float) -> str:
        return mark + plain(round(float(value), _PLACES)).replace(".", names.decimal_sign)

    def said(part: Said) -> str:
        match part:
            case "kind":
                return names.word(kind)
            case "depth":
                return "" if kind == "cut_through" else number(names.depth_mark, depth)
            case "cutter":
                return number(names.cutter_mark, cutter)

    return names.between.join(word for part in names.order if (word := said(part)))
