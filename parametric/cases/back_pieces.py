"""A back larger than its sheet, made in pieces: where the joints stand, and what is behind them.

seen from behind
 ______________________      beside one another: the joint on the middle of a partition
|          |:|         |     one over the other: on the middle of a fixed shelf, of a case of one bay
| left     |:|   right |     anywhere else: equal pieces, and a strip over the joint behind them
| back     |:|    back |
|__________|:|_________|
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.cases.back import Back
from parametric.cases.case import CaseBay, CaseBox
from parametric.figures import Figure, exceeds

Run = Literal["beside", "over"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRoom:
    """What the trim leaves of a sheet, mm; `turns` where it has no grain to go by."""

    long: Figure
    wide: Figure
    turns: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BackPiece:
    """A piece of a back, or a strip over a joint of it, mm: its corner from the left and the foot of
    the case, its width across and its height up.
    """

    word: str
    x: Figure
    z: Figure
    width: Figure
    height: Figure
    strip: bool = False


def back_pieces(
    back: Back,
    box: CaseBox,
    partitions: Sequence[Figure],
    bays: Sequence[CaseBay],
    sheet: SheetRoom | None,
    holes: Sequence[tuple[Figure, Figure]] = (),
) -> tuple[BackPiece, ...]:
    """The back in one, where a sheet is large enough or nothing can hold a joint; else its pieces.

    Args:
        back: its size in one.
        box: the case.
        partitions: their left faces in the case, mm.
        bays: of the case, whose fixed shelves may hold a joint.
        sheet: what it is sawn from; None where nobody asks.
        holes: middles of what is cut through it, from the left and the foot of the case.
    """
    x, z = box.thickness - back.reach, box.bottom - back.reach
    whole = (BackPiece(word="back", x=x, z=z, width=back.width, height=back.height),)
    tall = back.height if box.slope is None else box.highest - z
    if sheet is None or _comes_out(back.width, tall, sheet, True):
        return whole
    half = box.thickness / 2
    on_partitions = [left + half - x for left in partitions]
    on_shelves = [space.foot - half - z for bay in bays for space in bay.spaces if space.floored]
    if joints := _joints(on_partitions, back.width, lambda w: _comes_out(w, tall, sheet)):
        return _apart(whole[0], joints, "beside")
    if box.slope is not None:
        return whole
    if len(bays) == 1 and (
        joints := _joints(on_shelves, back.height, lambda h: _comes_out(back.width, h, sheet))
    ):
        return _apart(whole[0], joints, "over")
    if back.strip is None or exceeds(back.thickness, back.room_behind):
        return whole
    for run, size, room, other, most in (
        ("beside", back.width, sheet.wide, back.height, sheet.long),
        ("over", back.height, sheet.long, back.width, sheet.wide),
    ):
        if exceeds(other, most):
            continue
        count = math.ceil(float(size) / float(room) - 1e-9)
        joints = [size * number / count for number in range(1, count)]
        along = [hole[0] - x if run == "beside" else hole[1] - z for hole in holes]
        if any(abs(float(at - joint)) < float(back.strip) for at in along for joint in joints):
            continue
        pieces = _apart(whole[0], joints, "beside" if run == "beside" else "over")
        return (*pieces, *_strips(back, box, whole[0], joints, run == "beside"))
    return whole


def _comes_out(width: Figure, height: Figure, sheet: SheetRoom, across: bool = False) -> bool:
    """Whether a sheet is large enough, its grain upright, or either way where that may be."""
    along = not (exceeds(height, sheet.long) or exceeds(width, sheet.wide))
    turned = not (exceeds(height, sheet.wide) or exceeds(width, sheet.long))
    return along or (turned and (across or sheet.turns))


def _joints(
    places: Sequence[Figure], size: Figure, comes_out: Callable[[Figure], bool]
) -> list[Figure]:
    """The fewest places that leave no piece too large, the most even of them; empty for none."""
    nothing = Figure(0.0)
    for count in range(1, len(places) + 1):
        ways = []
        for chosen in itertools.combinations(sorted(places, key=float), count):
            ends = [nothing, *chosen, size]
            sizes = [high - low for low, high in itertools.pairwise(ends)]
            if all(map(comes_out, sizes)):
                ways.append((max(map(float, sizes)), chosen))
        if ways:
            return list(min(ways, key=lambda way: way[0])[1])
    return []


def _apart(whole: BackPiece, joints: Sequence[Figure], run: Run) -> tuple[BackPiece, ...]:
    beside = run == "beside"
    ends = [Figure(0.0), *joints, whole.width if beside else whole.height]
    words = _words(len(ends) - 1, run)
    return tuple(
        BackPiece(
            word=word,
            x=whole.x + low if beside else whole.x,
            z=whole.z if beside else whole.z + low,
            width=high - low if beside else whole.width,
            height=whole.height if beside else high - low,
        )
        for word, (low, high) in zip(words, itertools.pairwise(ends), strict=True)
    )


def _words(count: int, run: Run) -> list[str]:
    """`left back`, `right back`; `lower back`, `upper back`; more are numbered."""
    if count == 2:
        return [
            f"{side} back"
            for side in (("left", "right") if run == "beside" else ("lower", "upper"))
        ]
    return [f"back {number}" for number in range(1, count + 1)]


def _strips(
    back: Back, box: CaseBox, whole: BackPiece, joints: Sequence[Figure], beside: bool
) -> list[BackPiece]:
    """A strip behind each joint, between bottom and top, or between the sides."""
    assert back.strip is not None
    wide, free = back.strip, back.clearance
    found = []
    for number, joint in enumerate(joints, 1):
        word = "cover strip" if len(joints) == 1 else f"cover strip {number}"
        if beside:
            x, z = whole.x + joint - wide / 2, box.bottom + free
            size = (wide, box.clear_height - 2 * free)
        else:
            x, z = box.thickness + free, whole.z + joint - wide / 2
            size = (box.clear_width - 2 * free, wide)
        found.append(BackPiece(word=word, x=x, z=z, width=size[0], height=size[1], strip=True))
    return found
