"""What flaps need of the gaps over and under them, to turn past what is there.

______________        the free edge's inner corner runs on a circle about the corner of the
gap   |   front    |        face at the hinge edge, and needs what that stands out past the flap's
| flap  ..'  |        height; the hinge edge what its hinges' data sheet asks for
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.figures import Figure, named
from parametric.hangings.closing_arc import closing_gap
from parametric.hangings.front_places import FrontPlace, Measures
from parametric.hangings.hanging import Clearance, Stock
from parametric.names import join


def flap_clearances(
    places: Sequence[FrontPlace],
    measures: Measures,
    stock: Sequence[Stock],
    least: Figure | None,
) -> tuple[Clearance, ...]:
    """Of every flap at its free edge, and at its hinges; where nothing is beyond, nothing is needed.

    Args:
        places: every leaf of the case.
        measures: what they are placed by.
        stock: one a leaf.
        least: what the hinges' data sheet asks for at the hinge edge, mm; None where it says none.
    """
    found = []
    for place, leaf in zip(places, stock, strict=True):
        if place.flap is None:
            continue
        over, under = _beside(place, places, -1), _beside(place, places, 1)
        at_hinges, at_edge = (over, under) if place.flap == "top" else (under, over)
        if measures.inset or at_edge is not None:
            found.append(
                Clearance(
                    where=f"front gap at the free edge of {leaf.name}",
                    key="front gap",
                    has=measures.gap,
                    needs=closing_gap(
                        width=place.height,
                        thickness=leaf.thickness,
                        pin_out=0.0,
                        pin_beside=0.0,
                        name=join(leaf.name, "gap that the free edge needs"),
                    ),
                )
            )
        if least is not None and (measures.inset or at_hinges is not None):
            shared = at_hinges is not None and at_hinges.flap not in (None, place.flap)
            found.append(
                Clearance(
                    where=f"front gap at the hinges of {leaf.name}",
                    key="front gap",
                    has=measures.gap,
                    needs=named(
                        join(leaf.name, "gap that its hinges need"), 2 * least if shared else least
                    ),
                )
            )
    return tuple(found)


def _beside(place: FrontPlace, places: Sequence[FrontPlace], way: int) -> FrontPlace | None:
    """The front of the next row up, or down, of the same bay; None where none is."""
    row = place.row + way
    return next((one for one in places if (one.bay, one.row) == (place.bay, row)), None)
