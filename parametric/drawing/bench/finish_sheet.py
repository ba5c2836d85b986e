"""The finish sheet: how much, how many coats, in which order; a picture of the build of coats."""

from __future__ import annotations

from parametric.drawing.bench.saying import Numbers, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import long_grain
from parametric.drawing.lettering import BENCH
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke
from parametric.trade.finish import Coat, FinishOrder
from parametric.trade.printed import several

_COAT = 9.5
"""A coat in the picture, mm on paper: its place, not its thickness."""


def finish_sheet(say: Numbers, order: FinishOrder) -> SetUp:
    """Area, litres of each product, and the order of the coats."""
    spare = "" if order.spare is None else said("with {} % to spare", say.plain(order.spare))
    return SetUp(
        title=f"Finish: {order.kind}" + (f", {order.colour}" if order.colour else ""),
        under="thickness of film, thinning and drying as the tin's data sheet says",
        keys=(
            Key(
                number=say.hundredths(order.area),
                after="m²",
                name="both faces less the glass, and the edges",
            ),
            *(
                Key(number=say.hundredths(coat.litres), after="L", name=_coat_words(say, coat))
                for coat in order.coats
            ),
        ),
        rows=(
            *((Row(head="Bought", text=spare),) if spare else ()),
            Row(
                head="Order",
                text="; ".join(
                    f"{coat.product}, {several(int(coat.coats), 'coat')}" for coat in order.coats
                ),
            ),
            Row(head="Between", text="let each coat dry through; rub down fine; wipe off the dust"),
        ),
        warning=order.cautions[0] if order.cautions else "",
        picture=lambda draft, box: _build(draft, box, order),
        seen="Order of the coats, not their thickness",
    )


def _coat_words(say: Numbers, coat: Coat) -> str:
    return said(
        "{}, {} {}; a litre covers {} m²",
        coat.product,
        say.count(coat.coats),
        "coat" if int(coat.coats) == 1 else "coats",
        say.plain(coat.covers),
    )


def _build(draft: Draft, box: Box, order: FinishOrder) -> None:
    """Wood below, every coat a layer on it in its turn."""
    layers = [
        f"{coat.product} {number + 1}" for coat in order.coats for number in range(int(coat.coats))
    ]
    high = min(_COAT, (box.height - 18.0) / max(1, len(layers)))
    left, right = box.x0 + 4.0, box.x1 - 8.0
    y = box.y0 + 22.0 if box.height > 18.0 + 22.0 + high * len(layers) else box.y0 + 16.0
    wood = Box(left, box.y0 + 2.0, right, y)
    draft.add(
        long_grain((wood.polygon,), "", "across", 2.1),
        Stroke(layer="cut_heavy", points=wood.polygon, closed=True),
    )
    for index, name in enumerate(layers):
        inset = index * 2.0
        coat = Box(left + inset, y, right - inset, y + high)
        draft.add(Stroke(layer="cut_heavy", points=coat.polygon, closed=True))
        draft.add(
            Label(
                text=name,
                at=(coat.centre[0], coat.centre[1] - BENCH / 2),
                height=BENCH,
                anchor="centre",
            )
        )
        y += high
