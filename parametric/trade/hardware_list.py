"""What is bought for the job beside timber, glass and finish: how many, how long, and by whom known.

What the design does not say is not made up: it is `by supplier`, with what is asked of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.catalog.bench import (
    BLOCK_LENGTH,
    BLOCKS_A_PANE,
    PIN_FROM_MITRE,
    PIN_LENGTH,
    PIN_PITCH,
)
from parametric.figures import Figure, named, whole_up
from parametric.hardware.track import Track
from parametric.infill.glass import Pane, Stops
from parametric.names import join
from parametric.resolve.door import Door, Resolved
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import Printed, printed, weight, weight_limit


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareItem:
    """One line: `number` of it in `unit`; `size` in words; `length` mm where one is cut or least.

    `known_by` says whether this design fixes it, or the supplier does; `asked` is what the
    supplier's must then do.
    """

    what: str
    number: Figure
    unit: str
    size: str
    length: Figure | None
    known_by: str
    asked: str


DESIGN = "design"
SUPPLIER = "by supplier"


def hardware_list(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[HardwareItem, ...]:
    """Track, brackets and their screws, hangers, guides, pulls, then what the glass takes."""
    said = printed(resolved)
    return (*_track(resolved, loads, said), *_in_leaves(resolved, said), *_glazing(resolved, said))


def _count(what: str, value: float) -> Figure:
    return named(join("hardware", what), value, "")


def _whole(value: int) -> Figure:
    return Figure(value, unit="")


def _track(
    resolved: Resolved, loads: tuple[LeafLoad, ...], said: Printed
) -> Iterator[HardwareItem]:
    door = resolved.door
    track = door.track
    shares = [load.per_hanger for load in loads if load.per_hanger is not None]
    if track is None or not shares:
        return
    line, overlap = door.hanging.tracks[0], door.hanging.overlap
    tracks = _count("tracks", _whole(len(door.hanging.tracks)))
    heaviest = max(shares, key=float)
    rating = (
        f"{weight_limit(track.carries, said.unit)} each as written, and carries "
        f"{weight(heaviest, said.unit)}"
        if track.carries is not None
        else f"{weight(heaviest, said.unit)} each or more, with the margin its maker asks"
    )
    maker = track.written.maker_mark or ""
    yield HardwareItem(
        what="track",
        number=tracks,
        unit="off",
        size=f"{said.wood(line.length)} long{', ' + maker if maker else ''}",
        length=line.length,
        known_by=DESIGN,
        asked=_track_places(door, track, said) if door.hanging.on_wall else "",
    )
    brackets = _count("brackets", tracks * track.brackets)
    yield HardwareItem(
        what="track bracket",
        number=brackets,
        unit="off",
        size=f"{int(track.brackets)} a track, {said.wood(track.written.brackets_every)} apart "
        "at most",
        length=None,
        known_by=SUPPLIER,
        asked="the track's own; its thickness goes on to the screw",
    )
    yield _screw(door, track, brackets, said)
    hangers = _count("hangers", _whole(len(shares)) * track.hangers)
    yield HardwareItem(
        what="hanger",
        number=hangers,
        unit="off",
        size=f"{int(track.hangers)} a leaf",
        length=None,
        known_by=SUPPLIER,
        asked=f"rated {rating}; for a leaf "
        f"{said.wood(door.leaves[0].thickness)} thick; with the screws its maker sends",
    )
    yield HardwareItem(
        what="track stop",
        number=_count("track stops", 2 * tracks),
        unit="off",
        size="one at each end of a track",
        length=None,
        known_by=SUPPLIER,
        asked="the track's own; so that no leaf leaves it",
    )
    if door.leaves[0].guide is not None:
        groove = door.leaves[0].guide
        yield HardwareItem(
            what="floor guide",
            number=_count("floor guides", _whole(len(door.leaves))),
            unit="off",
            size="one under each leaf, in the middle of the overlap",
            length=None,
            known_by=SUPPLIER,
            asked=f"runs in a groove {said.fine(groove.width)} wide × {said.fine(groove.depth)} "
            "deep"
            + ("" if overlap is None else f"; no longer than the overlap of {said.wood(overlap)}"),
        )


def _track_places(door: Door, track: Track, said: Printed) -> str:
    """Where the tracks on a wall stand: the first from the wall, the others from that."""
    first = said.wood(door.hanging.tracks[0].plane)
    apart = track.written.spacing
    if len(door.hanging.tracks) == 1 or apart is None:
        return f"middle {first} off the wall"
    return f"outer middle {first} off the wall, tracks {said.wood(apart)} apart"


def _screw(door: Door, track: Track, brackets: Figure, said: Printed) -> HardwareItem:
    depth, fixing = track.fixing_depth, door.opening.fixing
    into = {
        "solid timber": "into solid timber",
        "studs": "into the middle of a stud, or into a header screwed to every stud",
        "masonry": "with the anchor its maker names for that masonry and that pull",
    }.get(fixing, "only once it is known what is behind")
    if depth is None:
        size, known = "length not known: the board over the fixing was not measured", SUPPLIER
    else:
        size, known = (
            f"at least {said.up(depth)} and the bracket's thickness",
            DESIGN if fixing in ("solid timber", "studs") else SUPPLIER,
        )
    return HardwareItem(
        what="bracket screw",
        number=_count("bracket screws", brackets),
        unit="off",
        size=size,
        length=depth,
        known_by=known,
        asked=f"{into}; one a bracket at least, diameter and head as the bracket's maker says",
    )


def _in_leaves(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    pulls = [hung.pull for leaf in resolved.door.leaves for hung in leaf.pulls]
    if not pulls:
        return
    pull = pulls[0]
    yield HardwareItem(
        what="recessed pull",
        number=_count("pulls", _whole(sum(len(p.faces) for p in pulls))),
        unit="off",
        size=f"body {said.fine(pull.body_length)} × {said.fine(pull.body_width)} × "
        f"{said.fine(pull.body_depth)}, flange {said.fine(pull.flange_length)} × "
        f"{said.fine(pull.flange_width)} × {said.fine(pull.flange_depth)}",
        length=None,
        known_by=DESIGN,
        asked="measure the real one before its pocket is cut",
    )


def _glazing(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    panes = [lite.pane for leaf in resolved.door.leaves for lite in leaf.lites]
    if not panes:
        return
    first = panes[0]
    if float(first.tape) > 0:
        run = named(
            join("hardware", "glazing tape"), _added([_edges(p) for p in panes]) / 1000, "m"
        )
        yield HardwareItem(
            what="glazing tape",
            number=run,
            unit="m",
            size=f"{said.fine(first.tape)} thick, {said.fine(first.bite, down=True)} wide at most",
            length=None,
            known_by=DESIGN,
            asked="the run of every pane's edges, both faces, nothing over; paint-safe",
        )
    yield HardwareItem(
        what="setting block",
        number=_count("setting blocks", _whole(len(panes)) * BLOCKS_A_PANE),
        unit="off",
        size=f"{said.fine(first.clearance)} thick, {said.fine(first.thickness)} wide, "
        f"{said.up(BLOCK_LENGTH)} long or more",
        length=BLOCK_LENGTH,
        known_by=DESIGN,
        asked="under each pane at the quarter points",
    )
    stops = [pane.stops for pane in panes if pane.stops is not None]
    if not stops:
        return
    pins = _count("glass stop pins", _added([_pins(own) for own in stops]))
    yield HardwareItem(
        what="glass stop pin",
        number=pins,
        unit="off",
        size=f"{said.fine(PIN_LENGTH * stops[0].width)} long",
        length=named(join("hardware", "pin length"), PIN_LENGTH * stops[0].width),
        known_by=DESIGN,
        asked=f"both faces; {said.fine(PIN_FROM_MITRE)} from each point, "
        f"{said.fine(PIN_PITCH, down=True)} apart at most, driven into the frame and never towards the glass",
    )


def _edges(pane: Pane) -> Figure:
    """Both faces, all four edges, mm."""
    return 2 * 2 * (pane.width + pane.height)


def _pins(stops: Stops) -> Figure:
    """Pins of a pane: two stops each way on each of two faces."""
    return 2 * (2 * _along(stops.across) + 2 * _along(stops.up))


def _along(stop: Figure) -> Figure:
    """Pins in one stop; one at each end, and no gap wider than the pitch."""
    between = stop - 2 * PIN_FROM_MITRE
    return whole_up(between / PIN_PITCH) + 1 if float(between) > 0 else Figure(1, unit="")


def _added(values: list[Figure]) -> Figure:
    total = values[0]
    for value in values[1:]:
        total = total + value
    return total
