"""The track's brackets: where they stand, and what pulls at one of them.

section                 |wall
   track      ___bracket|=o  screw
    |        /          |  ^
    v leaf              |  | bearing below the screw
    <---- off the wall ->|
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import GRAVITY
from parametric.figures import Figure, largest, named
from parametric.hardware.track import Track
from parametric.names import join
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.loads import LeafLoad


@dataclass(frozen=True, slots=True, kw_only=True)
class BracketPlace:
    """One bracket of every track, mm: from the track's left end and from the opening's left edge.

    `off_stud` is how far the nearest stud's middle is; None where the wall has none to meet.
    """

    number: int
    from_end: Figure
    from_opening: Figure
    off_stud: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PullOut:
    """What one bracket is pulled by, kN, with one hanger right under it.

    On the wall the load hangs out from it and levers the screw; under a head it pulls
    straight down. `pull` is by the estimate, `governing` by the larger weight. None where
    the bearing below the screw is not known.
    """

    track: str
    off_wall: Figure
    bearing: Figure | None
    pull: Figure | None
    governing: Figure | None


def bracket_places(door: Door) -> tuple[BracketPlace, ...]:
    """One at each end and none farther apart than the track says; none without a track."""
    track = door.track
    if track is None:
        return ()
    line = door.hanging.tracks[0]
    pitch = named("bracket pitch", line.length / (track.brackets - 1))
    left = line.left
    studs = [s for s in door.survey.studs or () if isinstance(s, Figure)]
    places = []
    for number in range(int(track.brackets)):
        place = f"bracket {number + 1}"
        across = named(join(place, "from the opening's left edge"), left + number * pitch)
        off = None
        if studs and door.opening.fixing == "studs":
            nearest = min(studs, key=lambda stud: abs(float(stud) - float(across)))
            off = named(
                join(place, "to the nearest stud"), largest(nearest - across, across - nearest)
            )
        places.append(
            BracketPlace(
                number=number + 1,
                from_end=named(join(place, "from the track's left end"), number * pitch),
                from_opening=across,
                off_stud=off,
            )
        )
    return tuple(places)


def pull_outs(door: Door, loads: tuple[LeafLoad, ...]) -> tuple[PullOut, ...]:
    """For each track, its heaviest leaf's share on one hanger right under one bracket.

    Source: moments about the bracket's foot, load x off the wall = pull x bearing (statics).
    """
    track = door.track
    if track is None:
        return ()
    bearing = track.written.bearing
    arm = None if bearing is None else named("bearing below the bracket's screw", bearing)
    found = []
    for index, line in enumerate(door.hanging.tracks):
        hung = [
            (load.per_hanger, _by_estimate(leaf, load, track))
            for leaf, load in zip(door.leaves, loads, strict=True)
            if leaf.hung.track == index and load.per_hanger is not None
        ]
        if not hung:
            continue
        governing, estimate = max(hung, key=lambda pair: float(pair[0]))
        place, plane = f"{line.word} track", line.plane
        pulls: list[Figure | None] = []
        for quantity, mass in (
            ("pull at a bracket", estimate),
            ("governing pull at a bracket", governing),
        ):
            down = mass * GRAVITY / 1000
            if not door.hanging.on_wall:
                pulls.append(named(join(place, quantity), down, "kN"))
            elif arm is None:
                pulls.append(None)
            else:
                pulls.append(named(join(place, quantity), down * plane / arm, "kN"))
        found.append(
            PullOut(track=line.word, off_wall=plane, bearing=arm, pull=pulls[0], governing=pulls[1])
        )
    return tuple(found)


def _by_estimate(leaf: Leaf, load: LeafLoad, track: Track) -> Figure:
    """What one hanger carries of the estimate, kg; of folding leaves as it does of the larger weight."""
    if leaf.hung.swing is None or load.per_hanger is None:
        return track.load_per_hanger
    return load.per_hanger * (leaf.weights.estimate / load.governing)
