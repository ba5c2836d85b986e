"""What a client must know of leaves that swing: the room they take, and the floor on their way."""

from __future__ import annotations

from types import MappingProxyType

from parametric.figures import collect
from parametric.names import join
from parametric.pack.door_words import door_names, filled, in_words, towards
from parametric.pack.page_lengths import wood_amount
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.standing import clear_stretch, first_to_open, outer_corner, swept
from parametric.writers.client_page import Chalk, Fact, said
from parametric.writers.page_words import FACT_WORDS

_OVER_FLOOR = 6.0
"""How far over the highest floor a line along it is drawn, mm."""


def room_to_swing(resolved: Resolved) -> Fact | None:
    """How far they come into the room, and into which; seen on the one that comes farthest."""
    door = resolved.door
    reach, into = door.hanging.reach, towards(door)
    if reach is None or into is None:
        return None
    names = door_names(door)
    leaf = max(door.leaves, key=_beyond)
    half = float(leaf.thickness) / 2
    face = -float(leaf.hung.plane) + (-half if into else half)
    opened = MappingProxyType({one.name: 1.0 for one in door.leaves})
    # in the middle of the way, where no open door hides it
    x = sum(clear_stretch(door, opened)) / 2
    end = face + (-float(reach) if into else float(reach))
    amount = wood_amount(resolved, reach)
    way = "towards" if into else "away"
    note = [FACT_WORDS[f"{way} {names.one}"]]
    first = first_to_open(door)
    if first is not None:
        which = names.which[door.leaves.index(first)]
        note.append(FACT_WORDS["first"].format(in_words(which)))
    return Fact(
        key="swing",
        label=FACT_WORDS["fold" if names.moves == "fold" else "swing"],
        value=filled(FACT_WORDS[f"{way} value"], amount),
        note=said("".join(note)),
        chalk=(Chalk(start=(x, face, _OVER_FLOOR), end=(x, end, _OVER_FLOOR), text=amount.text),),
        opened=opened,
    )


def _beyond(leaf: Leaf) -> float:
    """How far a leaf comes out of the plane it shuts in."""
    over, y = swept(leaf), -float(leaf.hung.plane)
    return round(max(y - over.near, over.far - y), 3)


def swinging_gap(resolved: Resolved) -> Fact | None:
    """The least gap over the floor on their way, or that nobody has measured there."""
    door = resolved.door
    hanging = door.hanging
    slides = not hanging.swings
    if hanging.case is not None:
        return None
    if slides and (hanging.travel_gap is None or hanging.travel_gap >= hanging.floor_gap):
        return None
    names = door_names(door)
    one = names.one
    label = FACT_WORDS[f"gap swinging {one}"]
    opened = MappingProxyType({leaf.name: 1.0 for leaf in door.leaves})
    if hanging.travel_gap is None:
        return Fact(
            key="swinging gap",
            label=label,
            value=said(FACT_WORDS["not known"]),
            note=said(FACT_WORDS[f"floor not known {one}"]),
        )
    least = wood_amount(resolved, hanging.travel_gap)
    rise = collect(hanging)[join(door.place, "floor in the travel")]
    leaf = min(door.leaves, key=lambda one: float(one.hung.foot))
    x, y = outer_corner(leaf, 1.0)
    foot = float(leaf.hung.foot)
    risen = wood_amount(resolved, rise)
    return Fact(
        key="swinging gap",
        label=label,
        value=filled(FACT_WORDS["gap swinging value"], least),
        note=filled(FACT_WORDS[f"floor in the way {one}"], risen)
        if float(rise) > 0
        else said(FACT_WORDS[f"floor level {one}"]),
        chalk=(
            Chalk(
                start=(x, y, foot - float(hanging.travel_gap)),
                end=(x, y, foot),
                text=least.text,
                aside=(110.0, 90.0),
            ),
        ),
        opened=opened,
    )
