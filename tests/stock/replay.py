"""A cutting plan carried out again by other code than made it, and what is wrong with it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from parametric.trade.stock.bars import BarPiece, BarPlan, BarStock
from parametric.trade.stock.blanks import SheetPiece
from parametric.trade.stock.sheet_plan import Area, SheetPlan, SheetStock

CLOSE = 1e-5
"""mm: sizes are whole millionths, and there are never a dozen on one sheet that are rounded."""


def near(a: float, b: float) -> bool:
    return abs(a - b) <= CLOSE


def same(a: Area, b: Area) -> bool:
    return near(a.x, b.x) and near(a.y, b.y) and near(a.length, b.length) and near(a.width, b.width)


def apart(a: Area, b: Area, kerf: float) -> bool:
    """True when a saw of that kerf goes between two pieces, along one of their sides."""
    gaps = (
        b.x - a.x - a.length,
        a.x - b.x - b.length,
        b.y - a.y - a.width,
        a.y - b.y - b.width,
    )
    return max(gaps) >= kerf - CLOSE


def faults_of_sheets(
    plan: SheetPlan,
    pieces: Sequence[SheetPiece],
    sheet: SheetStock,
    offcuts: Sequence[SheetStock],
    kerf: float,
) -> list[str]:
    """Cut every sheet as the plan says, one cut after another, and look at what there is."""
    found: list[str] = []
    made: Counter[str] = Counter()
    used: Counter[SheetStock] = Counter()
    for number, sawn in enumerate(plan.sheets, 1):
        stock = sawn.stock
        used[stock] += sawn.times
        off = stock.trim
        whole = Area(x=off, y=off, length=stock.length - 2 * off, width=stock.width - 2 * off)
        if not same(sawn.whole, whole):
            found.append(f"sheet {number} does not begin as what its trim leaves")
        there = [sawn.whole]
        for turn, cut in enumerate(sawn.cuts, 1):
            if cut.number != turn:
                found.append(f"sheet {number}: cut {cut.number} comes in place {turn}")
            if cut.of not in there:
                found.append(f"sheet {number}: cut {turn} is of something that is not there")
                continue
            there.remove(cut.of)
            of, first, second = cut.of, cut.first, cut.second
            along = (of.length, of.x, first.length, first.x)
            across = (of.width, of.y, first.width, first.y)
            (size, start, got, at), (kept, low, full, bottom) = (
                (across, along) if cut.way == "rip" else (along, across)
            )
            if not (near(at, start) and near(got, cut.at) and near(bottom, low)):
                found.append(f"sheet {number}: cut {turn} is not where its fence stands")
            if not near(full, kept):
                found.append(f"sheet {number}: cut {turn} does not go right across")
            there.append(first)
            left = size - got - kerf
            if second is None:
                if left > CLOSE or got > size - CLOSE:
                    found.append(f"sheet {number}: cut {turn} loses or gains something")
                continue
            rest, begins, other, edge = (
                (second.width, second.y, second.length, second.x)
                if cut.way == "rip"
                else (second.length, second.x, second.width, second.y)
            )
            if not (
                near(rest, left)
                and near(begins, start + got + kerf)
                and near(other, kept)
                and near(edge, low)
            ):
                found.append(f"sheet {number}: cut {turn} leaves another rest than it says")
            there.append(second)
        for sawn_piece in sawn.pieces:
            if sawn_piece.area not in there:
                found.append(f"sheet {number}: {sawn_piece.piece.mark} is not cut free")
                continue
            there.remove(sawn_piece.area)
            piece, area = sawn_piece.piece, sawn_piece.area
            sizes = (
                (piece.width, piece.length) if sawn_piece.turned else (piece.length, piece.width)
            )
            if not (near(area.length, sizes[0]) and near(area.width, sizes[1])):
                found.append(f"sheet {number}: {piece.mark} has another size")
            if sawn_piece.turned and not piece.turns:
                found.append(f"sheet {number}: {piece.mark} lies across its grain")
            made[piece.mark] += sawn.times
        for rest in sawn.rests:
            if rest not in there:
                found.append(f"sheet {number}: a rest is not there")
            else:
                there.remove(rest)
        found += [
            f"sheet {number}: {area} is forgotten"
            for area in there
            if min(area.length, area.width) > kerf + CLOSE
        ]
        areas = [one.area for one in sawn.pieces]
        found += [
            f"sheet {number}: two pieces without a kerf between"
            for i, a in enumerate(areas)
            for b in areas[:i]
            if not apart(a, b, kerf)
        ]
        found += [
            f"sheet {number}: a piece over the edge"
            for a in areas
            if a.x < off - CLOSE
            or a.y < off - CLOSE
            or a.x + a.length > stock.length - off + CLOSE
            or a.y + a.width > stock.width - off + CLOSE
        ]
    unfit = {piece.mark for piece in plan.unfit}
    wanted: Counter[str] = Counter()
    for piece in pieces:
        if piece.mark not in unfit:
            wanted[piece.mark] += piece.count
    if made != +wanted:
        found.append(f"made {dict(made)}, wanted {dict(+wanted)}")
    if used[sheet] != plan.bought:
        found.append(f"{plan.bought} sheets are bought and {used[sheet]} are used")
    found += [
        f"{used[one]} offcuts of {one} are used"
        for one in set(offcuts)
        if used[one] > sum(o.count or 0 for o in offcuts if o == one)
    ]
    return found


def faults_of_bars(
    plan: BarPlan, pieces: Sequence[BarPiece], stock: Sequence[BarStock], kerf: float
) -> list[str]:
    """Every bar added up again."""
    found: list[str] = []
    made: Counter[str] = Counter()
    bought = 0.0
    for bar in plan.bars:
        lengths = [piece.length for piece in bar.pieces]
        over = bar.stock.length - sum(lengths) - kerf * (len(lengths) - 1)
        if over < -CLOSE:
            found.append(f"{lengths} do not lie on {bar.stock.length}")
        if not near(max(0.0, over - kerf), bar.left):
            found.append(f"{bar.left} is said to be left of {lengths}")
        for piece in bar.pieces:
            made[piece.mark] += bar.times
        if bar.stock.count is None:
            bought += bar.stock.length * bar.times
    for one in stock:
        used = sum(bar.times for bar in plan.bars if bar.stock == one)
        if one.count is not None and used > one.count:
            found.append(f"{used} of {one} are used")
    wanted = Counter({p.mark: p.count for p in pieces if p.count and p not in plan.unfit})
    if made != wanted:
        found.append(f"made {dict(made)}, wanted {dict(wanted)}")
    if abs(bought - plan.bought * plan.step) > CLOSE * max(1, plan.bought):
        found.append(f"bought {bought}, said {plan.bought * plan.step}")
    return found
