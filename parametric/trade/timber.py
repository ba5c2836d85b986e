"""The timber order: one rough blank for every part, by timber and thickness.

finished |==============|          a glued panel is ordered as its boards,
rough   |================|         as wide as the stock there is
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from parametric.catalog.lumber import board_feet, sawn_for
from parametric.catalog.shop import Blanks
from parametric.figures import Figure, exceeds, largest, named, plain, smallest
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cutlist import CutRow, cut_list, of_solid
from parametric.trade.glue_up import PanelGlueUp, panel_glue_ups
from parametric.trade.printed import Printed, printed, several
from parametric.trade.router_setups import LooseTenonSetUp, loose_tenon_set_ups


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughBlank:
    """One line of the order: so many blanks, rough length x rough width, mm.

    `pieces` are the parts they become; more blanks than pieces are the boards of a glued
    panel. `note` says what the yard or the saw must know.
    """

    mark: str
    noun: str
    pieces: int
    number: Figure
    length: Figure
    width: Figure
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberLot:
    """All blanks of one timber that are planed to one `thickness`; a panel's boards to their own.

    `volume` is m3 of the blanks at their planed thickness with the waste, `sawn_volume`
    the same at the sawn thickness of the class; `board_feet` are of the sawn class. The
    class is None when the thickness is more than any board planes to.
    """

    timber: str
    thickness: Figure
    sawn_class: str | None
    sawn: Figure
    blanks: tuple[RoughBlank, ...]
    longest: Figure
    widest: Figure
    face: Figure
    volume: Figure
    sawn_volume: Figure
    board_feet: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberOrder:
    """Every lot; `waste` % is in all volumes; `moisture` % is what it must come to the bench at."""

    lots: tuple[TimberLot, ...]
    waste: Figure
    moisture: Figure
    volume: Figure
    sawn_volume: Figure
    board_feet: Figure


def timber_order(resolved: Resolved, assembly: Assembly) -> TimberOrder:
    """What to ask the yard for, thickest first.

    Every blank is a part's length and width with the house's allowances; the order is
    their sum with the house's waste, which the spare of each setting comes out of too.

    Source: allowances and waste are the house's; board feet as in the catalogue.
    """
    blanks = resolved.shop.blanks
    waste = named("waste on timber", blanks.waste, "%")
    boards = {glue_up.mark: glue_up for glue_up in panel_glue_ups(resolved, assembly)}
    said = printed(resolved)
    strips = {
        mark: _strip_words(tenon, said)
        for tenon in loose_tenon_set_ups(resolved, assembly)
        for mark in tenon.marks
    }
    lots: dict[tuple[str, float], list[CutRow]] = {}
    for row in of_solid(cut_list(assembly)):
        planed = _planed(row, boards.get(row.mark))
        lots.setdefault((row.material, round(float(planed), 6)), []).append(row)
    found = tuple(
        _lot(timber, rows, blanks, waste, boards, strips, said)
        for (timber, _), rows in sorted(lots.items(), key=lambda lot: (lot[0][0], -lot[0][1]))
    )
    return TimberOrder(
        lots=found,
        waste=waste,
        moisture=named("moisture made", resolved.shop.moisture.made, "%"),
        volume=named("timber order / volume", _sum(lot.volume for lot in found), "m3"),
        sawn_volume=named(
            "timber order / sawn volume", _sum(lot.sawn_volume for lot in found), "m3"
        ),
        board_feet=named(
            "timber order / board feet", _sum(lot.board_feet for lot in found), "board feet"
        ),
    )


def _lot(
    timber: str,
    rows: list[CutRow],
    blanks: Blanks,
    waste: Figure,
    boards: dict[str, PanelGlueUp],
    strips: dict[str, str],
    said: Printed,
) -> TimberLot:
    thickness = _planed(rows[0], boards.get(rows[0].mark))
    place = join("timber order", f"{timber} {plain(thickness)} mm")
    kind = sawn_for(thickness)
    thick = named(join(place, "thickness"), thickness)
    sawn = named(join(place, "sawn thickness"), thick if kind is None else kind.rough)
    rough = tuple(
        _blank(row, blanks, boards.get(row.mark), strips.get(row.mark, row.note), said)
        for row in rows
    )
    face = named(
        join(place, "face of the blanks"), _sum(b.number * b.length * b.width for b in rough), "mm2"
    )
    with_waste = 1 + waste / 100
    return TimberLot(
        timber=timber,
        thickness=thick,
        sawn_class=None if kind is None else kind.name,
        sawn=sawn,
        blanks=rough,
        longest=named(join(place, "longest blank"), largest(*(b.length for b in rough))),
        widest=named(join(place, "widest blank"), largest(*(b.width for b in rough))),
        face=face,
        volume=named(join(place, "volume"), face * thick / 1e9 * with_waste, "m3"),
        sawn_volume=named(join(place, "sawn volume"), face * sawn / 1e9 * with_waste, "m3"),
        board_feet=named(
            join(place, "board feet"), board_feet(face, sawn) * with_waste, "board feet"
        ),
    )


def _blank(
    row: CutRow, blanks: Blanks, glued: PanelGlueUp | None, words: str, said: Printed
) -> RoughBlank:
    place = join("timber order", f"{row.mark} {row.noun}")
    over_length = named("blank over length", blanks.length)
    over_width = named("blank over width", blanks.width)
    pieces = Figure(row.number, unit="")
    if glued is None:
        number, width, note = pieces, row.width + over_width, words
    else:
        number = pieces * glued.boards
        width = smallest(glued.stock, glued.board_width + over_width)
        note = f"boards of a panel, which is planed to {said.wood(glued.thickness)} when glued"
        if exceeds(over_width, glued.jointing):
            note += "; pick them straight, little is left for jointing"
    return RoughBlank(
        mark=row.mark,
        noun=row.noun,
        pieces=row.number,
        number=named(join(place, "blanks"), number, ""),
        length=named(join(place, "rough length"), row.length + over_length),
        width=named(join(place, "rough width"), width),
        note=note,
    )


def _planed(row: CutRow, glued: PanelGlueUp | None) -> float:
    """What its blanks are planed to, mm: boards of a panel lose more once they are glued."""
    return row.thickness if glued is None else glued.planed


def _strip_words(tenon: LooseTenonSetUp, said: Printed) -> str:
    """Single tenons are too short to plane."""
    number = several(int(tenon.strips), "strip")
    return f"sawn and planed as {number}, {said.wood(tenon.strip_length)} long, the spare in them"


def _sum(values: Iterable[Figure]) -> Figure:
    total: Figure | None = None
    for value in values:
        total = value if total is None else total + value
    return Figure(0.0) if total is None else total
