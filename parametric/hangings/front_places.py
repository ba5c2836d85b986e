"""Where a case's fronts stand: its bays between partitions, and in each one front over the other.

seen from above, over the case's edges                       within its opening
side ##|  bay 1   |##|  bay 2   |##  side                    ##|gap|__A__|gap|##|gap|__B__|gap|##
  |___A___________|^|_____B_________|
  reveal       gap, its middle over the partition's
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, exceeds, named, origin_line, smallest
from parametric.hangings.flaps import FlapSide
from parametric.hangings.fronts import DOORS, BayLine, Front, FrontKind, Written
from parametric.hangings.hanging import Side
from parametric.names import join
from parametric.problems import Problem
from parametric.units import Unit, length_text
from parametric.written import Equal, Group, Parts, Rest

FrontsLie = Literal["inset", "overlay", "half overlay"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """What a case's fronts are placed by, mm: its opening, and what is chosen of gaps and edges.

    `left` and `width` are of the opening between the case's sides, `foot` and `head` its ends
    above the highest floor; `over` is how far fronts lie over a side, `over_ends` over top and
    bottom, both less than nothing where they stand within. `shared` sides are the next case's
    too. `heads` are at the left and the right of an opening under a slope; `head` is the lower.
    """

    left: Figure
    width: Figure
    foot: Figure
    head: Figure
    gap: Figure
    partition: Figure
    over: Figure
    over_ends: Figure
    inset: bool
    shared: bool
    heads: tuple[Figure, Figure] | None = None

    def head_over(self, left: Figure, width: Figure) -> Figure:
        """The head where it is lowest over a stretch of the opening, mm above the highest floor."""
        if self.heads is None:
            return self.head
        first, last = self.heads
        ends = [
            first + (last - first) * (at - self.left) / self.width for at in (left, left + width)
        ]
        return smallest(*ends)

    @property
    def between(self) -> Figure:
        """How far fronts lie over a partition, from the bay's side of it."""
        if self.inset and float(self.partition) > 0:
            return -self.gap
        return self.partition / 2 - self.gap / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontPlace:
    """One leaf of the case where it stands shut, mm; the two of a pair are two of these.

    A stretch that is left open is one too, without a leaf.

    `meets` says what stands beyond its left and its right edge.
    """

    kind: FrontKind
    bay: int
    row: int
    left: Figure
    width: Figure
    foot: Figure
    height: Figure
    hinge: Side | None
    meets: tuple[Meets, Meets]
    flap: FlapSide | None = None


Meets = Literal["side", "partition", "front", "pair"]
"""Beyond an edge: the case's side, a partition within the same opening, the next bay's front
over a partition or over none, or the other leaf of a pair."""


def share_out(room: Figure, shares: Sequence[Written]) -> tuple[Figure, ...]:
    """Sizes of a list that must add up: given ones as they are, the others share what is left."""
    left = room
    for share in shares:
        if isinstance(share, Figure):
            left = left - share
    parts = sum(float(share.count) for share in shares if isinstance(share, Parts))
    alike = sum(isinstance(share, (Equal, Rest)) for share in shares)
    found: list[Figure] = []
    for share in shares:
        match share:
            case Figure():
                found.append(share)
            case Parts():
                found.append(left * share.count / parts)
            case _:
                found.append(left / alike if alike > 1 else left)
    return tuple(found)


def bay_widths(measures: Measures, bays: Sequence[BayLine]) -> tuple[Figure, ...]:
    """The clear width of each bay: what partitions leave of the opening, shared out."""
    room = room_for_bays(measures, len(bays))
    return tuple(
        named(_of(index, len(bays), "clear width of the bay"), width)
        for index, width in enumerate(share_out(room, [bay.size for bay in bays]))
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BaySpan:
    """The stretch across that one bay's fronts take, mm; `meets` is what stands beyond it."""

    left: Figure
    width: Figure
    meets: tuple[Meets, Meets]


def bay_spans(measures: Measures, bays: Sequence[BayLine]) -> tuple[BaySpan, ...]:
    """From the left; a bay that is open throughout has its stretch too."""
    found: list[BaySpan] = []
    count, start = len(bays), measures.left
    for index, opening in enumerate(bay_widths(measures, bays)):
        first, last = index == 0, index == count - 1
        over = (
            measures.over if first else measures.between,
            measures.over if last else measures.between,
        )
        beyond: Meets = "partition" if measures.inset and measures.partition > 0 else "front"
        width = named(_of(index, count, "width of the fronts"), opening + over[0] + over[1])
        found.append(
            BaySpan(
                left=start - over[0],
                width=width,
                meets=("side" if first else beyond, "side" if last else beyond),
            )
        )
        start = start + opening + measures.partition
    return tuple(found)


def place_fronts(measures: Measures, bays: Sequence[BayLine]) -> tuple[FrontPlace, ...]:
    """Every leaf, bay by bay from the left, in each from the top down, a pair from the left."""
    return tuple(place for place in front_stacks(measures, bays) if place.kind != "open")


def front_stacks(measures: Measures, bays: Sequence[BayLine]) -> tuple[FrontPlace, ...]:
    """The same with the stretches that are left open."""
    found: list[FrontPlace] = []
    heads, spans = bay_heads(measures, bays), bay_spans(measures, bays)
    for index, (bay, span, head) in enumerate(zip(bays, spans, heads, strict=True)):
        found += _stack(measures, bay, index, len(bays), span, head)
    return tuple(found)


def bay_heads(measures: Measures, bays: Sequence[BayLine]) -> tuple[Figure, ...]:
    """The head over each bay, mm above the highest floor: under a slope where it is lowest."""
    found: list[Figure] = []
    start = measures.left
    for width in bay_widths(measures, bays):
        found.append(measures.head_over(start, width))
        start = start + width + measures.partition
    return tuple(found)


def _stack(
    measures: Measures,
    bay: BayLine,
    index: int,
    count: int,
    span: BaySpan,
    head: Figure,
) -> list[FrontPlace]:
    """The fronts of one bay."""
    found: list[FrontPlace] = []
    left, width, meets = span.left, span.width, span.meets
    fronts = bay.fronts
    # one that every bay shares has one name
    name = "top of the fronts" if measures.heads is None else _of(index, count, "top of the fronts")
    top = named(name, head + measures.over_ends)
    room = room_for_fronts(measures, len(fronts), head)
    heights = share_out(room, [front.size for front in fronts])
    for row, (front, high) in enumerate(zip(fronts, heights, strict=True)):
        place = _of(index, count, f"front {row + 1}" if len(fronts) > 1 else "front")
        height = named(join(place, "height"), high)
        foot = named(join(place, "foot"), top - height)
        top = foot - measures.gap
        stands: list[tuple[Figure, Figure, Side | None, tuple[Meets, Meets]]]
        if front.kind == "door pair":
            half = named(join(place, "width of one of the pair"), (width - measures.gap) / 2)
            right = left + half + measures.gap
            stands = [(left, half, "left", (meets[0], "pair"))]
            stands += [(right, half, "right", ("pair", meets[1]))]
        else:
            stands = [(left, width, hinge_side(front, index, count), meets)]
        found += [
            FrontPlace(
                kind=front.kind,
                bay=index,
                row=row,
                left=at,
                width=wide,
                foot=foot,
                height=height,
                hinge=hinge,
                meets=beyond,
                flap=flap_side(front),
            )
            for at, wide, hinge, beyond in stands
        ]
    return found


def room_for_fronts(measures: Measures, rows: int, head: Figure) -> Figure:
    """What the gaps between them leave of the height for the fronts of one bay, to its head."""
    high = head - measures.foot + 2 * measures.over_ends
    return high - (rows - 1) * measures.gap if rows > 1 else high


def room_for_bays(measures: Measures, bays: int) -> Figure:
    """What partitions leave of the opening's width."""
    return measures.width - (bays - 1) * measures.partition if bays > 1 else measures.width


def hinge_side(front: Front, index: int, count: int) -> Side | None:
    """As it is written; else a door of the first or the last bay hangs on the case's side."""
    if front.kind not in DOORS:
        return None
    if front.hinge == "left" or front.hinge == "right":
        return front.hinge
    if count > 1 and index in (0, count - 1):
        return "left" if index == 0 else "right"
    return None


def flap_side(front: Front) -> FlapSide | None:
    """The level edge that a flap turns about; None of what is no flap, or does not say it."""
    if front.kind != "flap":
        return None
    return front.hinge if front.hinge == "top" or front.hinge == "bottom" else None


def _of(index: int, count: int, quantity: str) -> str:
    return quantity if count == 1 else join(f"bay {index + 1}", quantity)


def left_over(
    room: Figure, lines: Sequence[tuple[Written, Group]], *, what: str, gaps: str, unit: Unit
) -> tuple[Problem, ...]:
    """Lines that ask for more than there is, leave some of it over, or leave a line nothing.

    Args:
        room: for all of them, mm.
        lines: each share, and where it is written.
        what: they are, `bays`.
        gaps: what has been taken off already, `partitions`.
        unit: of the design.
    """
    given = [share for share, _ in lines if isinstance(share, Figure)]
    total = sum(float(share) for share in given)
    apart = float(room) - total
    shared = next((line for share, line in lines if not isinstance(share, Figure)), None)
    if exceeds(apart, 0.0) if shared is not None else abs(apart) <= SAME:
        return ()
    said, has = length_text(total, unit), length_text(float(room), unit)
    amount = length_text(abs(apart), unit)
    if apart > 0:
        outcome, fix = f"{amount} is left over", "Make one of them `rest`, or add it to one."
    elif shared is not None:
        outcome = "nothing is left for the rest" if apart > -SAME else f"they are {amount} too much"
        fix = "Make one of them smaller."
    else:
        outcome, fix = f"they are {amount} too much", "Make one of them `rest`, or smaller."
    where = origin_line(given[-1]) if given else (shared or lines[0][1]).here
    return (
        Problem(
            code="fronts_do_not_add_up",
            level="stop",
            message=f"Your {what} add to {said}; the case has {has} for them, {gaps} taken off. "
            f"So {outcome}.",
            where=where,
            about=what,
            found=said,
            allowed=has if shared is None else f"less than {has}",
            fix=fix,
        ),
    )


SAME = 1e-6
"""Sums no farther apart than this are the same, mm."""
