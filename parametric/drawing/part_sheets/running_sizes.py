"""Running sizes of a part: along it from its finished foot, on its ends from the low edge.

A place has its number once on a sheet, on the first side that has something there.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.ordinates import Place, pitch_of, place_ordinates
from parametric.drawing.part_sheets.cut_shapes import own_side
from parametric.drawing.part_sheets.strips import Strip
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.plane import spread
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.printing import Rules
from parametric.drawing.sheet import View
from parametric.model import Drilled, Groove, Mitre, Pocket, ScrewPocket, Shaped, Slot, Trim
from parametric.trade.part_cuts import CutRow, PartCuts, Size

_ZERO_RING = 0.9
_DIGITS = 4


def sizes_by_side(
    own: PartCuts, part: Unfolded, sides: Sequence[Side]
) -> dict[Side, list[tuple[float, Size]]]:
    """The running sizes that each side prints: a place along the part, and its number.

    Args:
        own: the cuts.
        part: the part opened out.
        sides: the sides that are drawn, the face first; ends are left out.
    """
    taken: set[float] = set()
    found: dict[Side, list[tuple[float, Size]]] = {}
    for side in sides:
        for row in own.rows:
            for at, size in _along(row, part):
                if _side(row, part) == side and round(at, _DIGITS) not in taken:
                    taken.add(round(at, _DIGITS))
                    found.setdefault(side, []).append((at, size))
    # The ends of the wood go with the first side that prints anything.
    first: Side = next((side for side in sides if side in found), "face")
    whole = (
        (0.0, Size(quantity="from", figure=own.zero)),
        (part.length, Size(quantity="to", figure=own.finished_length)),
    )
    for at, size in (*whole, *(pair for row in own.rows for pair in _of_ends(row))):
        if round(at, _DIGITS) not in taken:
            taken.add(round(at, _DIGITS))
            found.setdefault(first, []).append((at, size))
    return {side: sorted(pairs, key=lambda pair: pair[0]) for side, pairs in found.items()}


def _side(row: CutRow, part: Unfolded) -> Side:
    """A cut in the left end prints how far it reaches along the face."""
    side = own_side(row.cut, part)
    return "face" if side in ("left", "right") else side


def _along(row: CutRow, part: Unfolded) -> Iterator[tuple[float, Size]]:
    cut = row.cut
    sizes = {size.quantity: size for size in row.degrees if isinstance(size, Size)}
    if isinstance(cut, (Slot, Groove, Pocket)):
        side = own_side(cut, part)
        if side == "left":
            yield float(sizes["deep"].figure), sizes["deep"]
        elif side != "right":
            for quantity in ("from", "to"):
                size = next(s for q, s in sizes.items() if q == quantity)
                yield float(size.figure), size
    elif isinstance(cut, ScrewPocket):
        size = sizes["first at"]
        yield float(size.figure), size
    elif isinstance(cut, Drilled):
        side = own_side(cut, part)
        if side != "right":
            # of a row the first hole alone: the rest go by their pitch
            size = sizes["deep" if side == "left" else "first at"]
            yield float(size.figure), size
    elif isinstance(cut, Mitre) or (isinstance(cut, Shaped) and "end" not in cut.face):
        for quantity in ("from", "to"):
            size = next(s for q, s in sizes.items() if q == quantity)
            yield float(size.figure), size


def _of_ends(row: CutRow) -> Iterator[tuple[float, Size]]:
    if isinstance(row.cut, Trim):
        for size in row.degrees:
            if isinstance(size, Size) and size.quantity in ("from", "to"):
                yield float(size.figure), size


def places_along(strip: Strip, sizes: Sequence[tuple[float, Size]], rules: Rules) -> list[Place]:
    """The running sizes as places under a strip."""
    return [
        Place(
            at=at,
            figure=size.figure,
            start=strip.base,
            rule=rules.fine if size.fine else rules.wood,
        )
        for at, size in sizes
    ]


def numbers_tall(sizes: Sequence[tuple[float, Size]], rules: Rules) -> float:
    """How far the longest number reaches down, mm on paper."""
    return max((_letters(size, rules).ink.width for _, size in sizes), default=0.0)


def _letters(size: Size, rules: Rules) -> Label:
    rule = rules.fine if size.fine else rules.wood
    return Label(text=rule.dimension(size.figure), at=(0.0, 0.0), stacked=rule.stacked)


def place_along(draft: Draft, strip: Strip, places: Sequence[Place], drop: float) -> None:
    """Running sizes under a strip, one row through all its stretches.

    Args:
        draft: the sheet.
        strip: the side they belong to.
        places: its places.
        drop: from the strip to where the numbers begin, mm.
    """
    if not places:
        return
    ordered = sorted(places, key=lambda place: place.at)
    stand = spread([strip.lie.x(p.at) for p in ordered], TEXT * pitch_of(ordered))
    for view in strip.views:
        own = [(p, x) for p, x in zip(ordered, stand, strict=True) if strip.view(p.at) is view]
        if own:
            place_ordinates(
                draft,
                view,
                "across",
                [place for place, _ in own],
                strip.base - drop,
                [x for _, x in own],
            )
    for place in ordered:
        if abs(float(place.figure)) < 1e-9:
            zero_ring(draft, strip.view(0.0), (strip.lie.x(0.0), strip.base - 1.9))


def zero_ring(draft: Draft, view: View, at: tuple[float, float]) -> None:
    """The small ring at the zero of running sizes."""
    draft.add(Circle(layer="dims", centre=at, radius=_ZERO_RING, view=view.name))
