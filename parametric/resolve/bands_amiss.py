"""Bands of a leaf that do not come out: what is too much or too little, and what would mend it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.design.leaf import RAILS, LeafSpec, PinKey
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, origin_line
from parametric.problems import Problem
from parametric.units import Unit, length_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """How the sizes of one leaf are told.

    `whole` is what its height is called; `crown` how far an arched rail is higher than it is
    written, mm, as often as `arched` says.
    """

    unit: Unit
    whole: str = "the door"
    crown: Figure | None = None
    arched: int = 0

    def size(self, value: float) -> str:
        """A length in the design's unit."""
        return length_text(float(value), self.unit)

    @property
    def with_crown(self) -> str:
        """That an arch is in a sum, where one is."""
        if self.crown is None or not self.arched:
            return ""
        which = "each arched rail" if self.arched > 1 else "the arched rail"
        return f" ({which} is {self.size(self.crown)} higher at the stiles)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A rail held at a height: by its middle, its upper or its lower edge, mm above the finished foot.

    `said` is the height as the maker writes it, None where the survey does.
    """

    rail: WrittenBand
    key: PinKey
    height: Figure
    said: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A held rail, the side of it that is shared out, and whether the other side gives way.

    `over` is the held rail that the side above it ends at, if there is one.
    """

    held: Held
    side: Literal["above", "below"]
    other_gives: bool
    over: Held | None = None


def does_not_add(
    zone: Sequence[WrittenBand], room: Figure, left: float, leaf: LeafSpec, told: Told
) -> Problem:
    """Bands that are all given must add to the height, to the last bit of wood."""
    total, amount = told.size(float(room) - left), told.size(abs(left))
    infill = [line.kind for line in zone if line.kind not in RAILS]
    rails = [line.kind for line in zone if line.kind in RAILS]
    first = infill[-1] if infill else rails[0]
    second = next((r for r in reversed(rails) if r != first), first)
    if left > 0:
        outcome = f"{amount} is unallocated"
        change, to = f"add {amount}", "to"
    else:
        outcome = f"That is {amount} too much"
        change, to = f"take {amount}", "off"
    # A sum with an arch in it is no round number: no other line can be written to fill it.
    or_else = "" if told.with_crown else f", or {change} {to} the {first}, or {to} the {second}"
    return Problem(
        code="bands_do_not_add_up",
        level="stop",
        message=f"Your rails and openings add to {total}{told.with_crown}; {told.whole} is "
        f'{told.size(room)}. {outcome}: make one line "rest"{or_else}.',
        where=leaf.line("top to bottom"),
        about=leaf.heading,
        found=total,
        allowed=told.size(room),
        fix="Make one line `rest`" + (f", or {change} {to} the {first}." if or_else else "."),
    )


def held_fast(
    zone: Sequence[WrittenBand], room: Figure, left: float, pin: Beside, told: Told
) -> Problem:
    """A held rail, and on one side of it nothing that gives way."""
    held, side = pin.held, pin.side
    line, key, at = held.rail, held.key, told.size(held.height)
    return Problem(
        code="pin_has_no_room",
        level="stop",
        message=f'The {line.kind} cannot be held at {at}: nothing {side} it is "equal" or "rest". '
        "Free one size.",
        where=line.line(key),
        about=line.kind,
        found=f"{told.size(float(room) - left)} {side} it",
        allowed=told.size(room),
        fix=_ways_out(zone, left, pin, told)
        if zone
        else f"Put an opening {side} it, or take the pin away.",
    )


def _ways_out(zone: Sequence[WrittenBand], left: float, pin: Beside, told: Told) -> str:
    """What would let the rail be held: a line that gives, one of another size, another height."""
    amount = told.size(abs(left))
    given = {line.kind: line.size for line in zone if isinstance(line.size, Figure)}
    ways = ["make one line there `rest`"]
    ways += [
        f"write `{kind}: {told.size(float(size) + left)}` there"
        for kind, size in reversed(given.items())
        if float(size) + left > 0
    ][:2]
    up = left if pin.side == "above" else -left
    if pin.other_gives and pin.held.said is not None:
        ways.append(f"hold it at `{pin.held.key}: {told.size(float(pin.held.said) + up)}`")
    ways.append("take the pin away")
    return (
        f"What is written there is {amount} too {'little' if left > 0 else 'much'}: "
        f"{', '.join(ways[:-1])}, or {ways[-1]}."
    )


def nothing_beside(
    name: str, share: Figure, given: float, room: Figure, pin: Beside, told: Told
) -> Problem:
    """A held rail stands so near an end, or another held rail, that what lies there has no height."""
    held, side = pin.held, pin.side
    rail, way = held.rail.kind, "lower" if side == "above" else "higher"
    less = ", or make a given line there smaller" if given else ""
    limit = float(held.height) + (float(room) - given) * (1 if side == "above" else -1)
    edge = f"{'below' if side == 'above' else 'above'} {told.size(limit)}"
    place, other = f"{side} it", ""
    if pin.over is not None:
        over, most = pin.over, float(pin.over.height) + given - float(room)
        place = f"between it and the {over.rail.kind}, held at {told.size(over.height)}"
        other = f", or the {over.rail.kind} higher, above {told.size(most)}"
    return Problem(
        code="no_size_left",
        level="stop",
        message=f"The {name} would be {told.size(share)} high: the {rail}, held at "
        f"{told.size(held.height)} above the leaf's foot, leaves {told.size(room)} {place}"
        + (f", and the given lines there add to {told.size(given)}." if given else "."),
        where=held.rail.line(held.key),
        about=name,
        found=told.size(share),
        allowed="more than 0",
        fix=f"Hold the {rail} {way}, {edge}{other}{less}.",
        no_size=True,
    )


def nothing_left(
    line: WrittenBand,
    name: str,
    share: Figure,
    given: float,
    room: Figure,
    leaf: LeafSpec,
    told: Told,
) -> Problem:
    """The given lines use up all the height: the flexible one comes out zero or less."""
    largest_given = max(
        (b for b in leaf.top_to_bottom if isinstance(b.size, Figure)),
        key=lambda b: float(b.size) if isinstance(b.size, Figure) else 0.0,
        default=line,
    )
    size = largest_given.size
    return Problem(
        code="no_size_left",
        level="stop",
        message=f"The {name} would be {told.size(share)} high: the given lines already add to "
        f"{told.size(given)}{told.with_crown} of {told.whole}'s {told.size(room)}. The "
        f"largest of them is the {largest_given.kind}.",
        where=origin_line(size) if isinstance(size, Figure) else line.here,
        about=name,
        found=told.size(share),
        allowed="more than 0",
        fix=f"Make the {largest_given.kind} or another given line smaller"
        + ("." if told.whole == "the door" else f", or give {told.whole} more of the height."),
        no_size=True,
    )
