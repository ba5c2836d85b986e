"""Where the fixings of a joint stand along it: dowels, tenons and screws, in equal steps.

front
|-e-o----o----o----o--|       e from the front edge, steps that are whole numbers of the pitch
|-e-o----o----o--o |::|       moved, or one fewer, where something is cut there already
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.boring import BoringSpec
from parametric.figures import Figure, exceeds, named, whole_down, whole_up
from parametric.names import join

_STEP = 1.0
"""Fixings are moved by whole millimetres to clear what is cut: a rule reads them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixings:
    """Where fixings stand along a joint, mm: the first from the front edge of the boards."""

    name: str
    first: Figure
    count: Figure
    pitch: Figure

    @property
    def places(self) -> tuple[float, ...]:
        """Each of them, from the front edge."""
        return tuple(map(float, self.figures))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """The same with their sums."""
        return tuple(
            self.first + n * self.pitch if n else self.first for n in range(int(self.count))
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TooShort:
    """A joint too short for its fixings, mm: two dowels or screws, or one tenon."""

    name: str
    has: Figure
    needs: Figure
    one: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A joint before it is bored, mm: `length` along it, and the two boards' thicknesses.

    The end of the one stands on the face of the other. `staggered` moves its fixings back by
    half a step, where another board stands on the other side of the same place. `both_faces` says
    that the face's board may be cut from its other face at the same place. `shared` says that
    others hold the same end too, so that one fixing is enough where there is no room for two.
    `taken` is what is cut along it already, from and to, from the front edge of the boards.
    """

    name: str
    length: Figure
    end: Figure
    face: Figure
    staggered: bool = False
    both_faces: bool = False
    shared: bool = False
    taken: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """Places before they are named: the first, how many, how far apart, mm."""

    first: Figure
    count: Figure
    pitch: Figure


def fixings(spec: BoringSpec, joint: Joint, across: Figure) -> Fixings | TooShort:
    """Where dowels or screws stand along a joint: equal steps, each a whole number of the pitch.

    Args:
        spec: how the workshop bores.
        joint: the joint.
        across: the widest hole of a fixing, mm.

    Of the distances from two thirds to four thirds of what is asked, the one that leaves least
    behind the last; of equals the nearest to what is asked, then the closer. A joint too short
    for the edge distance has two in its middle, one step apart, with twice their width of wood
    beside them. Common practice, no source.
    """
    step, edge = spec.pitch, spec.dowel_from_edge
    room = joint.length - 2 * edge
    aside = step / 2 if joint.staggered else Figure(0.0)
    least = 2 * across
    if not exceeds(step, room):
        row = _shared_out(spec, room, edge + aside if joint.staggered else edge)
        return _named(joint, _clear(spec, joint, row, across, least, fewest=2))
    beside = (joint.length - step) / 2
    if not exceeds(least, beside):
        first = beside + aside if joint.staggered else beside
        row = _Row(first=first, count=_times(2), pitch=step)
        return _named(joint, _clear(spec, joint, row, across, least, fewest=2))
    if joint.shared and not exceeds(least, joint.length / 2):
        row = _Row(first=joint.length / 2, count=_times(1), pitch=step)
        return _named(joint, _clear(spec, joint, row, across, least, fewest=1))
    return TooShort(name=joint.name, has=joint.length, needs=step + 4 * across)


def slots_along(
    spec: BoringSpec, joint: Joint, *, long: Figure, wide: Figure
) -> Fixings | TooShort:
    """Where the slots of loose tenons stand along a joint, by the rule for dowels.

    Args:
        spec: how the workshop bores.
        joint: the joint.
        long: a slot, along the joint, mm.
        wide: a slot, mm.

    Steps leave a web between two slots. One tenon does not turn as one dowel does, so a joint too
    short for two has one in its middle, with twice its thickness of wood at either end of the
    slot. Common practice, no source.
    """
    edge = spec.dowel_from_edge
    room = joint.length - 2 * edge
    steps = int(whole_up((long + spec.web) / spec.pitch))
    least = long / 2 + 2 * wide
    if exceeds(least, joint.length / 2):
        return TooShort(name=joint.name, has=joint.length, needs=2 * least, one=True)
    if exceeds(steps * spec.pitch, room) or exceeds(least, edge):
        row = _Row(first=joint.length / 2, count=_times(1), pitch=spec.pitch)
    else:
        row = _shared_out(spec, room, edge, fewest_steps=steps)
    return _named(joint, _clear(spec, joint, row, long, least, fewest=1))


def _shared_out(spec: BoringSpec, room: Figure, first: Figure, *, fewest_steps: int = 1) -> _Row:
    """As many as the room between the edge distances takes, at about what is asked."""
    step = spec.pitch
    asked = float(spec.dowel_pitch) / float(step)
    most = int(whole_down(room / step))
    tried = [
        n
        for n in range(fewest_steps, most + 1)
        if n / asked + 1e-9 >= 2 / 3 and n / asked <= 4 / 3 + 1e-9
    ]

    def left(steps: int) -> float:
        each = steps * float(step)
        return float(room) - int(float(room) / each + 1e-9) * each

    # slots asked for closer than they may stand are as close as they may
    usual = fewest_steps if 1 < fewest_steps > asked else most
    steps = min(tried, key=lambda n: (round(left(n), 6), abs(n - asked), n), default=usual)
    pitch = steps * step
    return _Row(first=first, count=whole_down(room / pitch) + 1, pitch=pitch)


def _clear(
    spec: BoringSpec, joint: Joint, row: _Row, long: Figure, least: Figure, *, fewest: int
) -> _Row:
    """A row with a web of wood to what is cut along its joint already.

    Moved along as little as may be; where that clears nothing, without its last. Where nothing
    does it stays as it was, and is told.
    """

    def free(first: float, count: int) -> bool:
        half, web = float(long) / 2, float(spec.web) - 1e-6
        places = [first + n * float(row.pitch) for n in range(count)]
        return not any(
            max(low - (at + half), at - half - high) < web
            for at in places
            for low, high in joint.taken
        )

    reach = range(-int(joint.length), int(joint.length) + 1)
    for fewer in range(int(row.count) - fewest + 1):
        count = int(row.count) - fewer
        far = float(row.first) + (count - 1) * float(row.pitch)
        for moved in sorted(reach, key=lambda by: (abs(by), by)):
            by = moved * _STEP
            inside = float(row.first) + by >= float(least) - 1e-6
            if moved and not (inside and far + by <= float(joint.length - least) + 1e-6):
                continue
            if free(float(row.first) + by, count):
                first = row.first + by if moved else row.first
                many = row.count - fewer if fewer else row.count
                return _Row(first=first, count=many, pitch=row.pitch)
    return row


def _times(many: int) -> Figure:
    return Figure(many, unit="")


def _named(joint: Joint, row: _Row) -> Fixings:
    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(joint.name, quantity), value, unit)

    return Fixings(
        name=joint.name,
        first=at("first", row.first),
        count=at("count", row.count, ""),
        pitch=at("apart", row.pitch),
    )
