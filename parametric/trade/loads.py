"""What each leaf weighs as cut, part by part, beside the estimate that loads are worked from.

a leaf that slides      a leaf on hinges          leaves that fold, in pairs
 o       o  hangers     top  =<-- pull             (o)====K====(o)====K====(o)
[=========]              |                         pivot       pin         pin
                     bottom  =--> pull             half  a whole pair's   half
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.figures import Figure, largest, named
from parametric.hardware.track import Track
from parametric.model import Assembly, Part
from parametric.names import join
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf


@dataclass(frozen=True, slots=True, kw_only=True)
class OnHinges:
    """What the hinges at one edge of a leaf carry, kg, by the larger of its two weights.

    `share` down on each, `pull` sideways on the top one; `rating` of one, None where nobody
    wrote it.
    """

    hinges: str
    count: Figure
    share: Figure
    pull: Figure
    rating: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafLoad:
    """kg: the parts as cut, the larger of that and the estimate, and its share on each hanger.

    `bare` is the larger of the two weights before the glass goes in: what is carried.
    `per_hanger` is None where the leaf hangs from no track, and `hangers` how many it has there:
    of leaves that fold, only every second one has a pin. `on_hinges` is empty without hinges.
    """

    leaf: str
    mass: Figure
    governing: Figure
    bare: Figure
    per_hanger: Figure | None
    hangers: Figure | None = None
    on_hinges: tuple[OnHinges, ...] = ()


def leaf_loads(resolved: Resolved, assembly: Assembly) -> tuple[LeafLoad, ...]:
    """Two weights for every leaf; orders and loads use the larger.

    The mass is the sum of the parts as cut, stops and tenons with them, hardware without:
    what is bought weighs what its maker says.
    """
    parts = {group.name: group.parts for group in assembly.groups}
    return tuple(load for door in resolved.doors for load in _of_door(door, parts))


def loads_of(door: Door, loads: tuple[LeafLoad, ...]) -> tuple[LeafLoad, ...]:
    """The weights of one door's leaves, of those of the job."""
    leaves = {leaf.name for leaf in door.leaves}
    return tuple(load for load in loads if load.leaf in leaves)


def _of_door(door: Door, parts: Mapping[str, tuple[Part, ...]]) -> Iterator[LeafLoad]:
    for index, leaf in enumerate(door.leaves):
        made = [part for part in parts[leaf.name] if not part.supplied]
        wood = [part for part in made if part.material.look != "glass"]
        mass = _sum(join(leaf.name, "mass"), made)
        governing = _larger(join(leaf.name, "governing weight"), mass, leaf.weights.estimate)
        hangers, hung = _hung(door.leaves, index, governing, door.track)
        yield LeafLoad(
            leaf=leaf.name,
            mass=mass,
            governing=governing,
            bare=_larger(
                join(leaf.name, "governing weight without glass"),
                _sum(join(leaf.name, "mass without glass"), wood),
                leaf.weights.without_glass,
            ),
            per_hanger=hung,
            hangers=hangers,
            on_hinges=_on_hinges(leaf, governing),
        )


def _hung(
    leaves: tuple[Leaf, ...], index: int, governing: Figure, track: Track | None
) -> tuple[Figure | None, Figure | None]:
    """How many hangers a leaf has, and what each carries; none, where it hangs from no track.

    Source: a centred mass shares alike over its hangers; a pair of folding leaves rests alike
    on the pins at its two ends (statics).
    """
    leaf = leaves[index]
    if track is None or leaf.hung.track is None:
        return None, None
    place = join(leaf.name, "governing load per hanger")
    if leaf.hung.swing is None:
        return track.hangers, named(place, governing / track.hangers, "kg")
    number, length = _in_chain(leaves, index)
    if number % 2 == 0:
        return None, None
    shares = Figure(1.0 if number == length - 1 else 2.0, unit="")
    return Figure(1.0, unit=""), named(place, governing * shares, "kg")


def _in_chain(leaves: tuple[Leaf, ...], index: int) -> tuple[int, int]:
    """Which leaf this is, counted from its pivot, and how many fold together."""
    first = last = index
    while first > 0 and leaves[first].hung.left_edge == "fold":
        first -= 1
    while last < len(leaves) - 1 and leaves[last].hung.right_edge == "fold":
        last += 1
    from_left = leaves[first].hung.left_edge == "pivot"
    return (index - first if from_left else last - index), last - first + 1


def _on_hinges(leaf: Leaf, governing: Figure) -> tuple[OnHinges, ...]:
    """By the estimate as the hinges were sized, made larger as far as the governing weight is."""
    found = []
    for hung in leaf.hinges:
        own = hung.hinges
        more = governing / own.load.weight
        found.append(
            OnHinges(
                hinges=own.name,
                count=own.count,
                share=named(join(own.name, "governing load on each"), own.load.share * more, "kg"),
                pull=named(
                    join(own.name, "governing pull on the top hinge"), own.load.pull * more, "kg"
                ),
                rating=own.load.rating,
            )
        )
    return tuple(found)


def _sum(name: str, parts: Sequence[Part]) -> Figure:
    total = sum(part.mass for part in parts)
    return named(name, Figure(total, op="sum of the parts as cut", unit="kg"), "kg")


def _larger(name: str, mass: Figure, estimate: Figure) -> Figure:
    return named(name, largest(mass, estimate), "kg")
