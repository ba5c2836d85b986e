"""Bars of timber: which pieces are crosscut from which length, as a table and to scale."""

from __future__ import annotations

import functools
from collections.abc import Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.hatching import metal
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Block, Picture
from parametric.trade.bar_order import BarLot
from parametric.trade.cutting_tables import bar_name, bar_pieces, bar_proof_words
from parametric.trade.printed import Printed
from parametric.trade.stock.bars import SawnBar

_PITCH = 8.0
_TALL = 5.0
_NAMES = 34.0
_EDGE = 0.5


def bar_blocks(lots: Sequence[BarLot], said: Printed) -> list[Block]:
    """For every section its bars, drawn and listed."""
    blocks: list[Block] = []
    for lot in lots:
        size = f"{said.wood(lot.thickness)} thick, {said.wood(lot.width)} wide rough"
        bars, words = lot.plan.bars, bar_proof_words(lot, said)
        blocks += [
            Picture(
                title=f"{lot.timber.capitalize()} {size}",
                height=_PITCH * len(bars) + 1.0,
                draw=functools.partial(_draw, lot=lot, said=said),
            ),
            Ruled(
                title="",
                columns=(
                    Heading(text="from", whole=True),
                    Heading(text="cut alike", anchor="right"),
                    Heading(text="pieces in the order they are cut", grows=True),
                    Heading(text="left", anchor="right"),
                ),
                rows=tuple(
                    Row(
                        cells=(
                            bar_name(bar, said),
                            str(bar.times),
                            bar_pieces(bar, said),
                            said.wood(bar.left, down=True),
                        )
                    )
                    for bar in bars
                ),
                ticks=("",),
                foot=(f"{words[0].upper()}{words[1:]}.",),
            ),
        ]
    return blocks


def _draw(draft: Draft, box: Box, lot: BarLot, said: Printed) -> None:
    """Every bar as a strip, all to one scale."""
    longest = max(bar.stock.length for bar in lot.plan.bars)
    scale = longest / (box.width - _NAMES - _EDGE)
    y = box.y1
    for bar in lot.plan.bars:
        strip = Box(box.x0 + _NAMES, y - _TALL, box.x0 + _NAMES + bar.stock.length / scale, y)
        times = f"{bar.times} × " if bar.times > 1 else ""
        draft.add(
            Label(text=f"{times}{bar_name(bar, said)}", at=(box.x0, y - _TALL / 2 - TEXT / 2))
        )
        _draw_bar(draft, bar, strip, scale, float(lot.kerf))
        y -= _PITCH


def _draw_bar(draft: Draft, bar: SawnBar, strip: Box, scale: float, kerf: float) -> None:
    x = strip.x0
    for piece in bar.pieces:
        end = x + piece.length / scale
        label = Label(
            text=piece.mark, at=((x + end) / 2, strip.centre[1] - TEXT / 2), anchor="centre"
        )
        if label.box.width + 1.2 <= end - x:
            draft.add(label)
        if end < strip.x1 - 0.05:
            draft.add(Stroke(layer="edge", points=((end, strip.y0), (end, strip.y1))))
        x = end + kerf / scale
    if x < strip.x1 - 0.3:
        left = Box(x, strip.y0, strip.x1, strip.y1)
        draft.add(metal((left.polygon,), "", 1.5))
    draft.path("cut", strip.polygon, closed=True)
