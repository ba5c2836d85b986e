"""What glass takes beside itself: tape, setting blocks, pins for stops, compound and points for
rebates, what planted bars are bedded on.

Panes that are set alike share a line; a job may hold glass in two ways.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

from parametric.catalog.bench import (
    BLOCK_LENGTH,
    BLOCKS_A_PANE,
    PIN_FROM_MITRE,
    PIN_LENGTH,
    PIN_PITCH,
)
from parametric.catalog.swinging import POINT_PITCH
from parametric.figures import Figure, named, whole_up
from parametric.infill.glass import Pane, Stops
from parametric.names import join
from parametric.outlines import length_of
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.door import Resolved
from parametric.resolve.lite import Lite
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted, whole
from parametric.trade.printed import Printed

_One = TypeVar("_One")


def hardware_for_glass(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """All of it, for every pane of every leaf."""
    panes = [pane for leaf in resolved.leaves for lite in leaf.lites for pane in lite.panes]
    yield from _tape(panes, said)
    yield from _blocks(panes, said)
    yield from _pins([pane.stops for pane in panes if pane.stops is not None], said)
    yield from _bar_beds([lite for leaf in resolved.leaves for lite in leaf.lites], said)
    yield from _bedding([pane for pane in panes if pane.stops is None], said)


def _alike(things: Iterable[_One], by: Callable[[_One], object]) -> list[list[_One]]:
    """Things in lots that share what `by` says, in the order in which they come."""
    lots: dict[object, list[_One]] = {}
    for thing in things:
        lots.setdefault(by(thing), []).append(thing)
    return list(lots.values())


def _lot(what: str, lots: list[list[_One]], index: int) -> str:
    """The name of a number, told apart where there are several lots."""
    return what if len(lots) == 1 else f"{what} {index + 1}"


def _tape(panes: list[Pane], said: Printed) -> Iterator[HardwareItem]:
    taped = [pane for pane in panes if float(pane.tape) > 0]
    lots = _alike(taped, lambda pane: (float(pane.tape), float(pane.bite)))
    for index, lot in enumerate(lots):
        first = lot[0]
        run = _added([_edges(pane) * (1 if pane.stops is None else 2) for pane in lot])
        faces = "the face it is bedded on" if first.stops is None else "both faces"
        yield HardwareItem(
            what="glazing tape",
            number=named(join("hardware", _lot("glazing tape", lots, index)), run / 1000, "m"),
            unit="m",
            size=f"{said.fine(first.tape)} thick, {said.fine(first.bite, down=True)} wide at most",
            length=None,
            known_by=DESIGN,
            asked=f"the run of every pane's edges, {faces}, nothing over; paint-safe",
        )


def _blocks(panes: list[Pane], said: Printed) -> Iterator[HardwareItem]:
    lots = _alike(panes, lambda pane: (float(pane.clearances[1]), float(pane.thickness)))
    for index, lot in enumerate(lots):
        first = lot[0]
        yield HardwareItem(
            what="setting block",
            number=counted(_lot("setting blocks", lots, index), whole(len(lot)) * BLOCKS_A_PANE),
            unit="off",
            size=f"{said.fine(first.clearances[1])} thick, {said.fine(first.thickness)} wide, "
            f"{said.up(BLOCK_LENGTH)} long or more",
            length=BLOCK_LENGTH,
            known_by=DESIGN,
            asked="under each pane at the quarter points",
        )


def _pins(stops: list[Stops], said: Printed) -> Iterator[HardwareItem]:
    lots = _alike(stops, lambda own: float(own.width))
    for index, lot in enumerate(lots):
        length = PIN_LENGTH * lot[0].width
        yield HardwareItem(
            what="glass stop pin",
            number=counted(
                _lot("glass stop pins", lots, index), _added([_pins_of(own) for own in lot])
            ),
            unit="off",
            size=f"{said.fine(length)} long",
            length=named(join("hardware", _lot("pin length", lots, index)), length),
            known_by=DESIGN,
            asked=f"both faces; {said.fine(PIN_FROM_MITRE)} from each point, "
            f"{said.fine(PIN_PITCH, down=True)} apart at most, driven into the frame and never "
            "towards the glass",
        )


def _bar_beds(lites: list[Lite], said: Printed) -> Iterator[HardwareItem]:
    """Tape or adhesive under planted bars: uprights whole, level ones between them, both faces."""
    planted = [(lite, lite.section) for lite in lites if isinstance(lite.section, PlantedBar)]
    lots = _alike(planted, lambda one: (float(one[1].tape), float(one[1].face)))
    for index, lot in enumerate(lots):
        section = lot[0][1]
        taped = float(section.tape) > 0
        what = "bar tape" if taped else "adhesive for bars"
        run = _added([_bar_run(lite, own) for lite, own in lot])
        yield HardwareItem(
            what=what,
            number=named(join("hardware", _lot(what, lots, index)), run / 1000, "m"),
            unit="m",
            size=f"{said.fine(section.tape)} thick, {said.fine(section.face, down=True)} wide at most"
            if taped
            else f"under bars {said.fine(section.face)} wide",
            length=None,
            known_by=DESIGN,
            asked="the run of every planted bar, both faces, nothing over; for glass and for "
            "finished wood, and for the edge seal where the glass is a unit",
        )


def _bar_run(lite: Lite, section: PlantedBar) -> Figure:
    uprights = [bar for bar in lite.bars if bar.upright]
    return 2 * _added(
        [
            bar.end - bar.start
            if bar.upright
            else bar.end - bar.start - len(uprights) * section.face
            for bar in lite.bars
        ]
    )


def _bedding(panes: list[Pane], said: Printed) -> Iterator[HardwareItem]:
    """Panes in rebates: bedded and faced with compound, held by points until it sets."""
    if not panes:
        return
    yield HardwareItem(
        what="glazing compound",
        number=named(
            join("hardware", "glazing compound"), _added([_edges(p) for p in panes]) / 1000, "m"
        ),
        unit="m",
        size="the run of every pane's edges: "
        + (
            "a fillet over the glass, which lies on its tape"
            if any(float(pane.tape) > 0 for pane in panes)
            else "a bed under the glass and a fillet over it"
        ),
        length=None,
        known_by=DESIGN,
        asked="what its maker names for sealed timber, for indoors, and for this glass; ask the "
        "maker of laminated glass first",
    )
    yield HardwareItem(
        what="glazing point",
        number=counted("glazing points", _added([_points_of(pane) for pane in panes])),
        unit="off",
        size=f"{said.fine(POINT_PITCH, down=True)} apart at most",
        length=None,
        known_by=DESIGN,
        asked="two a side at least, pressed into the rebate flat on the glass, under the compound",
    )


def _edges(pane: Pane) -> Figure:
    """Once round a pane, mm: along its true outline where it is shaped."""
    if pane.outline is None:
        return 2 * (pane.width + pane.height)
    return Figure(length_of(pane.outline), op="length of the outline", args=pane.edges)


def _pins_of(stops: Stops) -> Figure:
    """Pins of a pane: two stops each way on each of two faces; under a curve one along it."""
    if stops.arch is not None:
        runs = (stops.across, stops.arch.along, stops.arch.left_up, stops.arch.right_up)
        return 2 * _added([_along(run) for run in runs])
    return 2 * (2 * _along(stops.across) + 2 * _along(stops.up))


def _along(stop: Figure) -> Figure:
    """Pins in one stop; one at each end, and no gap wider than the pitch."""
    between = stop - 2 * PIN_FROM_MITRE
    return whole_up(between / PIN_PITCH) + 1 if float(between) > 0 else Figure(1, unit="")


def _points_of(pane: Pane) -> Figure:
    """Points on the four sides of a pane, of the rectangle that a shaped one is cut from."""
    sides = (pane.width, pane.width, pane.height, pane.height)
    return _added([whole_up(side / POINT_PITCH) + 1 for side in sides])


def _added(values: list[Figure]) -> Figure:
    total = values[0]
    for value in values[1:]:
        total = total + value
    return total
