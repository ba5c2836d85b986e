"""What each bay of a case is divided into behind its fronts: spaces, from the foot up.

seen from the front, doors off
 top ______________      Fronts say where: doors hide shelves, drawers need none between them,
    |  open        |     and a fixed shelf parts what is open from what is not.
    |==============|  <- fixed shelf: the front below laps its edge as it laps the bottom's
    |  shelves     |
    |--------------|     drawers under doors have no board between them
    |  drawers     |
    |______________| bottom
                         over and under a flap one does, its middle behind the gap
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cases.case import CaseBox, Space, SpaceUse
from parametric.cases.lines import CaseBayLine, CaseLine, InsideLine
from parametric.figures import Figure, named
from parametric.hangings.front_places import FrontPlace, share_out
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """One front of a bay, or a stretch left open: its height in the case's frame, mm."""

    what: SpaceUse
    foot: Figure
    head: Figure
    shelves: int
    flap: bool = False
    """Whether its front is one, whose hinges want a board under or over it."""


def stretches(box: CaseBox, bay: CaseBayLine, places: Sequence[FrontPlace]) -> tuple[Stretch, ...]:
    """The fronts of one bay from the top, two leaves of a pair once, as what stands behind them."""
    rows: dict[int, FrontPlace] = {}
    for place in places:
        rows.setdefault(place.row, place)
    found = []
    for row in sorted(rows):
        place = rows[row]
        line = bay.top_to_bottom[row] if bay.top_to_bottom else None
        foot = place.foot - box.foot
        found.append(
            Stretch(
                what=_behind(place),
                foot=foot,
                head=foot + place.height,
                shelves=_shelves(line),
                flap=place.kind == "flap",
            )
        )
    return tuple(found)


def _behind(place: FrontPlace) -> SpaceUse:
    match place.kind:
        case "open":
            return "open"
        case "drawer":
            return "drawers"
        case "door" | "door pair" | "fixed front" | "flap":
            return "shelves"


def _shelves(line: CaseLine | InsideLine | None) -> int:
    return 0 if line is None or line.shelves is None else int(line.shelves)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lapped:
    """How fronts meet a level board's edge, mm: `over` it, or apart from it by less than nothing."""

    over: Figure
    gap: Figure


def spaces(
    box: CaseBox,
    bay: CaseBayLine,
    fronts: Sequence[Stretch],
    lapped: Lapped,
    place: str,
    top: Figure,
) -> tuple[Space, ...]:
    """The spaces of one bay, from the foot up.

    Args:
        box: the case.
        bay: as written.
        fronts: its stretches from the top.
        lapped: how the fronts meet the edges of level boards.
        place: what the numbers begin with.
        top: what is over the bay, from the case's foot, mm.
    """
    joined = _joined(fronts)
    found: list[Space] = []
    foot, floored = box.bottom, False
    for index in range(len(joined) - 1, -1, -1):
        here = joined[index]
        if index == 0:
            head, next_foot, shelf_over = top, top, False
        else:
            head, next_foot, shelf_over = _between(box, here, joined[index - 1], lapped)
        found += _one(box, bay, here, (foot, head), floored, join(place, _name(joined, index)))
        foot, floored = next_foot, shelf_over
    return _with_bay_shelves(bay, tuple(found))


def _joined(fronts: Sequence[Stretch]) -> list[Stretch]:
    """Neighbours of one use as one: nothing stands between two drawers, or two doors.

    A flap has its space to itself: its hinges and its stays want a board of the case.
    """
    found: list[Stretch] = []
    for one in fronts:
        alike = found and found[-1].what == one.what and not (found[-1].flap or one.flap)
        if alike and one.what != "open":
            last = found[-1]
            found[-1] = Stretch(
                what=one.what, foot=one.foot, head=last.head, shelves=last.shelves + one.shelves
            )
        else:
            found.append(one)
    return found


def _name(joined: Sequence[Stretch], index: int) -> str:
    return "space" if len(joined) == 1 else f"space {index + 1}"


def _between(
    box: CaseBox, low: Stretch, high: Stretch, lapped: Lapped
) -> tuple[Figure, Figure, bool]:
    """Head of the lower space, foot of the upper, and whether a fixed shelf parts them."""
    if "open" not in (low.what, high.what):
        middle = low.head + lapped.gap / 2
        if low.flap or high.flap:
            under = middle - box.thickness / 2
            return under, under + box.thickness, True
        return middle, middle, False
    if low.what == "open":
        under = high.foot + lapped.over - box.thickness
    else:
        under = low.head - lapped.over
    return under, under + box.thickness, True


def _one(
    box: CaseBox,
    bay: CaseBayLine,
    here: Stretch,
    ends: tuple[Figure, Figure],
    floored: bool,
    place: str,
) -> Iterator[Space]:
    foot, head = named(join(place, "foot"), ends[0]), named(join(place, "head"), ends[1])
    if here.what == "drawers" or not bay.inside:
        yield Space(what=here.what, foot=foot, head=head, shelves=here.shelves, floored=floored)
        return
    lines = bay.inside
    under = [_parted(line, below) for line, below in itertools.pairwise(lines)]
    room = head - foot - sum(under) * box.thickness
    at = head
    found = []
    for number, (line, high) in enumerate(
        zip(lines, share_out(room, [line.size for line in lines]), strict=True), 1
    ):
        inner = join(place, f"inside {number}")
        top = named(join(inner, "head"), at)
        low = named(join(inner, "foot"), at - high)
        shelf = floored if number == len(lines) else under[number - 1]
        found.append(
            Space(
                what=_inside(line),
                foot=low,
                head=top,
                shelves=_shelves(line),
                floored=shelf,
            )
        )
        at = low - box.thickness if shelf and number < len(lines) else low
    yield from reversed(found)


def _parted(line: InsideLine, below: InsideLine) -> bool:
    """Whether a fixed shelf stands between two spaces: drawer over drawer needs none."""
    return not (line.space == "drawer" and below.space == "drawer")


def _inside(line: InsideLine) -> SpaceUse:
    match line.space:
        case "shelf space":
            return "shelves"
        case "hanging":
            return "hanging"
        case "drawer":
            return "inner drawer"
        case "equipment":
            return "equipment"


def _with_bay_shelves(bay: CaseBayLine, found: tuple[Space, ...]) -> tuple[Space, ...]:
    """Shelves that are said of a whole bay go where it is tallest and takes shelves."""
    if bay.shelves is None or any(space.shelves for space in found):
        return found
    takes = [i for i, space in enumerate(found) if space.what in ("shelves", "open")]
    if not takes:
        return found
    tallest = max(takes, key=lambda i: float(found[i].head - found[i].foot))
    return tuple(
        Space(
            what=space.what,
            foot=space.foot,
            head=space.head,
            shelves=int(bay.shelves) if i == tallest else 0,
            floored=space.floored,
        )
        for i, space in enumerate(found)
    )
