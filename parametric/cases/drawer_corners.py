"""How a drawer's sides meet its front and back: one set of numbers for both members of a corner.

Each joint says how far the end board goes into the side (`reach`), and how far the side stops
short of the box's outer face (`lap`). Tails and fingers are as many as hold the bottom's groove
whole, so that it shows at no joint.

dovetail, the side from outside        box joint         rebate, from above     dowel, screw
  ____ top                              ____               ____________          ____________
 |__   half pin                        |   _|             | |   front           |    |  front
 |  |_____                             |  |_              | |____________       |    |_________
 |   tail  |--- front                  |   _|             |  ____|              |    |
 |   _____|    pin between             |  |_              | |                   |    |
 |__|                                  |____|             |_| side              |____| side
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.cases.drawer_written import CornerBlock, CornerWord
from parametric.catalog.screw_holes import LEAD_IN_DENSE, LEAD_IN_LIGHT, ROOT
from parametric.figures import Figure, exceeds, largest, named, whole_up
from parametric.names import join

PIECES_OF_LAP = 3
"""A half-blind tail leaves a third of the front before it. Common practice, no source."""
DEEP_IN_SIDE = Figure(
    2 / 3,
    "part of a side that a dowel goes into",
    origin="catalogue",
    unit="",
    source="common practice, no source",
)
GLUE_ROOM = Figure(
    2.0, "room for glue past a dowel", origin="catalogue", source="common practice, no source"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveBand:
    """Where the bottom's groove lies up the box, how wide and how deep it is, mm."""

    low: Figure
    high: Figure
    width: Figure
    depth: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class DovetailCorner:
    """Tails on the side, pins on the end board, mm.

    `pitch` from middle to middle of the pins; `tail_tip` a tail's wide side, at the end of the
    side; `pin` a pin's narrow side there, and `pin_root` its wide one. The first and the last pin
    are halves, at the edges.
    """

    kind: Literal["half-blind dovetail", "through dovetail"]
    name: str
    lap: Figure
    reach: Figure
    tail: Figure
    """How long the tails are."""
    count: Figure
    pitch: Figure
    tail_tip: Figure
    tail_root: Figure
    pin: Figure
    pin_root: Figure
    slope: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxCorner:
    """Equal square fingers, mm: an odd number, the side's at both edges."""

    name: str
    lap: Figure
    reach: Figure
    count: Figure
    finger: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class RebateCorner:
    """The end board let into a rebate across the inside of the side, mm: `reach` deep."""

    name: str
    lap: Figure
    reach: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class DowelCorner:
    """The end board butted against the side, with dowels, mm; places up from the low edge."""

    name: str
    lap: Figure
    reach: Figure
    places: tuple[Figure, ...]
    pitch: Figure
    thick: Figure
    long: Figure
    in_side: Figure
    in_end: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewCorner:
    """The end board butted against the side, screwed through it, mm."""

    name: str
    lap: Figure
    reach: Figure
    places: tuple[Figure, ...]
    pitch: Figure
    thick: Figure
    long: Figure
    pilot: Figure
    in_end: Figure


Corner = DovetailCorner | BoxCorner | RebateCorner | DowelCorner | ScrewCorner


def size_corner(
    spec: CornerBlock,
    word: CornerWord,
    *,
    place: str,
    height: Figure,
    side: Figure,
    end: Figure,
    groove: GrooveBand,
    dense: bool,
) -> Corner:
    """A corner's numbers, named at their place (`leaf E / drawer / front corners`).

    Args:
        spec: the joints' sizes as written.
        word: which of them it is.
        place: its place.
        height: of the box, mm.
        side: thickness of the side, mm.
        end: thickness of the front or the back, mm.
        groove: of the bottom.
        dense: whether the boards are dense wood, whose screws want a wider pilot.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    match word:
        case "half-blind dovetail" | "through dovetail":
            return _dovetails(spec, word, place, height=height, side=side, end=end, groove=groove)
        case "box":
            count = at("fingers", _fingers(height, spec.finger, groove), "")
            return BoxCorner(
                name=place,
                lap=at("lap", Figure(0.0)),
                reach=at("into the side", side),
                count=count,
                finger=at("finger", height / count),
            )
        case "rebate":
            depth = side / 2 if spec.rebate is None else spec.rebate
            return RebateCorner(
                name=place, lap=at("lap", Figure(0.0)), reach=at("into the side", depth)
            )
        case "dowel":
            pitch, places = _fixings(spec, place, height=height, groove=groove)
            thick, long = at("dowel thickness", spec.dowel[0]), at("dowel length", spec.dowel[1])
            in_side = at("dowel into the side", side * DEEP_IN_SIDE)
            return DowelCorner(
                name=place,
                lap=at("lap", Figure(0.0)),
                reach=at("into the side", Figure(0.0)),
                places=places,
                pitch=pitch,
                thick=thick,
                long=long,
                in_side=in_side,
                in_end=at("dowel hole in the end", long - in_side + GLUE_ROOM),
            )
        case "screw":
            pitch, places = _fixings(spec, place, height=height, groove=groove)
            thick, long = at("screw thickness", spec.screw[0]), at("screw length", spec.screw[1])
            return ScrewCorner(
                name=place,
                lap=at("lap", Figure(0.0)),
                reach=at("into the side", Figure(0.0)),
                places=places,
                pitch=pitch,
                thick=thick,
                long=long,
                pilot=at("screw pilot", thick * ROOT * (LEAD_IN_DENSE if dense else LEAD_IN_LIGHT)),
                in_end=at("screw into the end", long - side),
            )
        case _:
            assert_never(word)


def _dovetails(
    spec: CornerBlock,
    word: Literal["half-blind dovetail", "through dovetail"],
    place: str,
    *,
    height: Figure,
    side: Figure,
    end: Figure,
    groove: GrooveBand,
) -> DovetailCorner:
    """Equal tails with equal pins between them, half a pin at either edge.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    if word == "through dovetail":
        lap = at("lap", Figure(0.0))
    else:
        lap = at("lap", end / PIECES_OF_LAP if spec.lap is None else spec.lap)
    tail = at("tail length", end - lap)
    pin = at("pin narrow side", spec.pin)
    runs = Figure(float(spec.slope.rpartition(" ")[2]), join(place, "slope 1 in"), unit="")
    pin_root = at("pin wide side", pin + 2 * tail / runs)
    written = spec.tails
    if written is None:
        written = _tails(height, spec.tails_every, pin_root, groove)
    count = at("tails", largest(Figure(1.0, unit=""), written), "")
    pitch = at("tail to tail", height / count)
    return DovetailCorner(
        kind=word,
        name=place,
        lap=lap,
        reach=at("into the side", side),
        tail=tail,
        count=count,
        pitch=pitch,
        tail_tip=at("tail wide side", pitch - pin),
        tail_root=at("tail narrow side", pitch - pin_root),
        pin=pin,
        pin_root=pin_root,
        slope=spec.slope,
    )


def _fingers(height: Figure, finger: Figure, groove: GrooveBand) -> Figure:
    """The odd number nearest to what is asked, 3 at least, of whose fingers one holds the groove.

    Where none near does, the nearest.
    """
    nearest = largest(Figure(3.0, unit=""), 2 * whole_up((height / finger - 1) / 2 - 0.5) + 1)
    for more in (0, 2, -2, 4, -4):
        count = nearest + more if more else nearest
        if count >= 3 and in_one_finger(height / count, groove):
            return count
    return nearest


def in_one_finger(finger: Figure, groove: GrooveBand) -> bool:
    """Whether one finger has the whole of the bottom's groove."""
    if float(finger) <= 0:
        return False
    low, high = float(groove.low / finger), float(groove.high / finger)
    return math.floor(low + 1e-9) == math.ceil(high - 1e-9) - 1


def _tails(height: Figure, every: Figure, pin_root: Figure, groove: GrooveBand) -> Figure:
    """The number of tails nearest to what is asked of which one holds the groove.

    Where none near does, the nearest.
    """
    nearest = largest(Figure(1.0, unit=""), whole_up(height / every - 0.5))
    for more in (0, 1, -1, 2, -2):
        count = nearest + more if more else nearest
        if count >= 1 and in_one_tail(height / count, pin_root, groove):
            return count
    return nearest


def in_one_tail(pitch: Figure, pin_root: Figure, groove: GrooveBand) -> bool:
    """Whether one tail has the whole of the bottom's groove, also where it is narrowest."""
    if float(pitch) <= 0:
        return False
    number, half = math.floor(float(groove.low / pitch) + 1e-9), pin_root / 2
    low, high = pitch * number + half, pitch * (number + 1) - half
    return not exceeds(low, groove.low) and not exceeds(groove.high, high)


def _fixings(
    spec: CornerBlock, place: str, *, height: Figure, groove: GrooveBand
) -> tuple[Figure, tuple[Figure, ...]]:
    """How far apart dowels or screws stand, and where, from over the groove to under the top."""

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    first = groove.high + spec.fixings_in
    last = height - spec.fixings_in
    gaps = at(
        "gaps between fixings",
        largest(Figure(1.0, unit=""), whole_up((last - first) / spec.fixings_every)),
        "",
    )
    pitch = at("fixing to fixing", (last - first) / gaps)
    return pitch, tuple(at(f"fixing {n + 1} up", first + pitch * n) for n in range(int(gaps) + 1))
