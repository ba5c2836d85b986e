"""Timber on lengths: which rough blanks are crosscut from which of the yard's lengths.

Only of a timber whose lengths are written (`timber NAME: {lengths: [...]}`). Blanks of one
lot and one rough width are one section; offcuts in stock go first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.catalog.shop import Offcut
from parametric.design.design import Design
from parametric.design.settings import TimberSpec
from parametric.figures import Figure, named, plain
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.stock.bars import BarPiece, BarPlan, BarStock, plan_bars
from parametric.trade.timber import RoughBlank, TimberLot, TimberOrder

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class BarLot:
    """Blanks of one timber, planed thickness and rough width, mm, and the bars they come from.

    `bought` is how much length the plan buys.
    """

    timber: str
    thickness: Figure
    width: Figure
    lengths: tuple[Figure, ...]
    kerf: Figure
    bought: Figure
    plan: BarPlan


def bar_order(resolved: Resolved, order: TimberOrder) -> tuple[BarLot, ...]:
    """Every section of the timbers that come in lengths, as the timber order has them."""
    kerf = named("saw kerf", resolved.shop.saw.kerf)
    stock = list(resolved.shop.offcuts)
    found = []
    for lot in order.lots:
        lengths = _lengths(resolved.design, lot.timber)
        if not lengths:
            continue
        for width, blanks in sorted(_sections(lot).items(), reverse=True):
            fits = [one for one in stock if _serves(one, lot, width)]
            # an offcut serves the widest blanks that it holds, and no others
            stock = [one for one in stock if one not in fits]
            found.append(_lot(lot, blanks, lengths, fits, kerf))
    return tuple(found)


def _lengths(design: Design, timber: str) -> tuple[Figure, ...]:
    block = design.block("timber", timber) or design.block("timber")
    lengths = block.lengths if isinstance(block, TimberSpec) else None
    return tuple(sorted(set(lengths or ()), reverse=True))


def _sections(lot: TimberLot) -> dict[float, list[RoughBlank]]:
    sections: dict[float, list[RoughBlank]] = {}
    for blank in lot.blanks:
        sections.setdefault(round(float(blank.width), 6), []).append(blank)
    return sections


def _serves(offcut: Offcut, lot: TimberLot, width: float) -> bool:
    return (
        offcut.material == lot.timber
        and offcut.thickness >= lot.thickness - _SAME
        and offcut.width >= width - _SAME
    )


def _lot(
    lot: TimberLot,
    blanks: Sequence[RoughBlank],
    lengths: tuple[Figure, ...],
    offcuts: Sequence[Offcut],
    kerf: Figure,
) -> BarLot:
    width = blanks[0].width
    place = join("bars", f"{lot.timber} {plain(lot.thickness)} x {plain(width)} mm")
    counts: dict[float, int] = {}
    for one in offcuts:
        counts[float(one.length)] = counts.get(float(one.length), 0) + 1
    pieces = [
        BarPiece(mark=blank.mark, length=float(blank.length), count=int(blank.number))
        for blank in blanks
    ]
    plan = plan_bars(
        pieces,
        [
            *(BarStock(length=length, count=count) for length, count in counts.items()),
            *(BarStock(length=float(length)) for length in lengths),
        ],
        kerf=float(kerf),
    )
    bought = Figure(
        plan.bought * plan.step,
        op="length of the cutting plan for",
        args=(*(blank.length for blank in blanks), *lengths, kerf),
    )
    return BarLot(
        timber=lot.timber,
        thickness=lot.thickness,
        width=named(join(place, "rough width"), width),
        lengths=lengths,
        kerf=kerf,
        bought=named(join(place, "length bought"), bought),
        plan=plan,
    )
