"""What the makers of track, hangers, guides and hinges must be asked, or their data sheets read for.

The design says what it needs; the sheet says what there is; both stand side by side.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from parametric.figures import Figure, exceeds
from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.lid_stay import LidStays
from parametric.hardware.stay import NoPlace
from parametric.hardware.track import Track
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.hinge_places import hung_edges, seat_of
from parametric.trade.hinge_steps import seat_words
from parametric.trade.installing import InstallSheet
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import Printed, force, printed, weight


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """One leaf on its hangers, kg: what it weighs, what each of them then carries.

    `rated` is what the maker says that a hanger carries; None where the design does not.
    """

    leaf: str
    mass: Figure
    hangers: Figure
    each: Figure
    rated: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedByHinges:
    """One leaf on the hinges of one of its edges, kg: its weight, down on each, sideways on the top.

    `rated` is what the maker says that one carries; None where the design does not.
    """

    leaf: str
    mass: Figure
    hinges: Figure
    each: Figure
    pull: Figure
    rated: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ToRead:
    """One thing to read off a data sheet: of what, which value, what this design needs of it.

    `place` is the door that needs it, "" where there is only one.
    """

    of: str
    what: str
    needed: str
    place: str = ""


def carried(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[Carried, ...]:
    """Each leaf's weight shared over its hangers, beside what they are rated for."""
    tracks = {leaf.name: door.track for door in resolved.doors for leaf in door.leaves}
    return tuple(
        Carried(
            leaf=load.leaf,
            mass=load.governing,
            hangers=load.hangers or track.hangers,
            each=load.per_hanger,
            rated=track.carries,
        )
        for load in loads
        if load.per_hanger is not None and (track := tracks[load.leaf]) is not None
    )


def carried_by_hinges(loads: tuple[LeafLoad, ...]) -> tuple[CarriedByHinges, ...]:
    """Each leaf's weight shared over its hinges, beside what they are rated for."""
    return tuple(
        CarriedByHinges(
            leaf=load.leaf,
            mass=load.governing,
            hinges=own.count,
            each=own.share,
            pull=own.pull,
            rated=own.rating,
        )
        for load in loads
        for own in load.on_hinges
    )


def to_read(
    resolved: Resolved, loads: tuple[LeafLoad, ...], install: InstallSheet
) -> tuple[ToRead, ...]:
    """All of one door that must agree with the design before a hole is drilled."""
    said, door = printed(resolved), resolved.door
    track = door.track
    found = (
        *(() if track is None else _hangers(door, track, loads, install, said)),
        *(() if track is None else _track(door, track, install, said)),
        *_guide(door, said),
        *_hinge(door, loads, said),
        *dict.fromkeys(_stay(door, said)),
    )
    return tuple(dataclasses.replace(one, place=door.place) for one in found)


def _hangers(
    door: Door,
    track: Track,
    loads: tuple[LeafLoad, ...],
    install: InstallSheet,
    said: Printed,
) -> Iterator[ToRead]:
    hung = [load for load in loads if load.per_hanger is not None]
    worst = max((load.per_hanger for load in hung if load.per_hanger is not None), key=float)
    heaviest = max((load.governing for load in hung), key=float)
    yield ToRead(of="hanger", what="carries, each", needed=f"{weight(worst, said.unit)} or more")
    yield ToRead(
        of="hanger",
        what="heaviest leaf of the set",
        needed=f"{weight(heaviest, said.unit)} or more, on {int(track.hangers)} hangers",
    )
    yield ToRead(
        of="hanger",
        what="thickness of leaf it takes",
        needed=said.wood(door.leaves[0].thickness),
    )
    yield ToRead(
        of="hanger",
        what="height adjustment, either way",
        needed=f"{said.up(install.adjustment.hangers)} or more",
    )


def _track(door: Door, track: Track, install: InstallSheet, said: Printed) -> Iterator[ToRead]:
    hanging = door.hanging
    if hanging.on_wall:
        planes = " and ".join(said.wood(abs(float(plane))) for plane in hanging.planes)
        yield ToRead(of="bracket", what="middle of the track off the wall", needed=planes)
        yield ToRead(
            of="bracket",
            what="top of the leaf up to the screw",
            needed="to be written on the install sheet",
        )
        bearing = track.written.bearing
        yield ToRead(
            of="bracket",
            what="bearing below the screw",
            needed="not written: without it the pull at a screw is not known"
            if bearing is None
            else f"{said.fine(bearing)} or more",
        )
    else:
        yield ToRead(
            of="bracket",
            what="top of the leaf up to the head",
            needed="no more than the design leaves; see the arrangement",
        )
    if track.fixing_depth is not None:
        yield ToRead(
            of="bracket",
            what="its thickness",
            needed=f"added to a screw of {said.up(track.fixing_depth)}",
        )
    pulls = [pull.governing for pull in install.pulls if pull.governing is not None]
    if pulls:
        yield ToRead(
            of="bracket",
            what="pull that its screw holds",
            needed=f"{float(max(pulls, key=float)):.3f} kN or more",
        )
    yield ToRead(
        of="bracket",
        what="how far apart at most",
        needed=f"{said.up(track.written.brackets_every)} or more",
    )


def _guide(door: Door, said: Printed) -> Iterator[ToRead]:
    groove = door.leaves[0].guide
    if groove is None:
        return
    yield ToRead(
        of="floor guide",
        what="thickness, and height in the groove",
        needed=f"under {said.fine(groove.width)}, under {said.fine(groove.depth)}",
    )
    overlap = door.hanging.overlap
    if overlap is not None:
        yield ToRead(
            of="floor guide",
            what="length along the leaf",
            needed=f"{said.wood(overlap, down=True)} or less",
        )


def _opens(leaf: Leaf) -> Figure | None:
    """How far it turns about its hinges, deg; None where it has none."""
    return leaf.hung.swing if leaf.hung.flap is None else leaf.hung.flap.angle


def _stay(door: Door, said: Printed) -> Iterator[ToRead]:
    """What stays must be; each thing once."""
    for leaf in door.leaves:
        if leaf.stays is None or isinstance(leaf.stays.sized, NoPlace):
            continue
        stays = leaf.stays.sized
        of, long = stays.kind, said.fine(stays.place.open)
        match stays:
            case GasStruts():
                pushed = f"{long}, and {said.fine(stays.pushed_in)} or less pushed in"
                yield ToRead(of=of, what="between fixings, pushed out", needed=pushed)
                holds = f"{force(stays.least, said.unit)} or more, cold and old"
                yield ToRead(of=of, what="force, each", needed=holds)
            case LidStays():
                yield ToRead(of=of, what="between fixings, taut", needed=long)
                holds = f"{weight(stays.pull, said.unit)} or more"
                yield ToRead(of=of, what="pull it is made for, each", needed=holds)
            case _:
                assert_never(stays)


def _hinge(door: Door, loads: tuple[LeafLoad, ...], said: Printed) -> Iterator[ToRead]:
    """What a hinge must do; each thing once, by the leaf that asks most of it."""
    carried = [own for load in loads for own in load.on_hinges]
    if not carried:
        return
    share = max((own.share for own in carried), key=float)
    pull = max((own.pull for own in carried), key=float)
    yield ToRead(of="hinge", what="carries, each", needed=f"{weight(share, said.unit)} or more")
    if exceeds(pull, 0.0):
        yield ToRead(
            of="hinge",
            what="holds sideways, the top one",
            needed=f"{weight(pull, said.unit)} or more, in its screws and in the jamb",
        )
    turns = max((angle for leaf in door.leaves if (angle := _opens(leaf)) is not None), key=float)
    yield ToRead(of="hinge", what="opens", needed=f"{float(turns):g} deg or more")
    for seat in dict.fromkeys(
        seat for _, hung, _ in hung_edges(door) if (seat := seat_of(hung.hinges)) is not None
    ):
        yield ToRead(of="hinge", what="flap, long × wide × thick", needed=seat_words(seat, said))
