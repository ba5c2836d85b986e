"""What each leaf weighs as cut, part by part, beside the estimate that loads are worked from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.figures import Figure, largest, named
from parametric.model import Assembly, Part
from parametric.names import join
from parametric.resolve.door import Resolved


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafLoad:
    """kg: the parts as cut, the larger of that and the estimate, and its share on each hanger.

    `bare` is the larger of the two weights before the glass goes in: what is carried.
    `per_hanger` is None where the leaf hangs from no track.
    """

    leaf: str
    mass: Figure
    governing: Figure
    bare: Figure
    per_hanger: Figure | None


def leaf_loads(resolved: Resolved, assembly: Assembly) -> tuple[LeafLoad, ...]:
    """Two weights for every leaf; orders and loads use the larger.

    The mass is the sum of the parts as cut, stops and tenons with them, hardware without:
    what is bought weighs what its maker says.
    """
    track = resolved.door.track
    loads = []
    for leaf, group in zip(resolved.door.leaves, assembly.groups, strict=False):
        made = [part for part in group.parts if not part.supplied]
        wood = [part for part in made if part.material.look != "glass"]
        mass = _sum(join(leaf.name, "mass"), made)
        governing = _larger(join(leaf.name, "governing weight"), mass, leaf.weights.estimate)
        loads.append(
            LeafLoad(
                leaf=leaf.name,
                mass=mass,
                governing=governing,
                bare=_larger(
                    join(leaf.name, "governing weight without glass"),
                    _sum(join(leaf.name, "mass without glass"), wood),
                    leaf.weights.without_glass,
                ),
                per_hanger=None
                if track is None or leaf.hung.track is None
                else named(
                    join(leaf.name, "governing load per hanger"), governing / track.hangers, "kg"
                ),
            )
        )
    return tuple(loads)


def _sum(name: str, parts: Sequence[Part]) -> Figure:
    total = sum(part.mass for part in parts)
    return named(name, Figure(total, op="sum of the parts as cut", unit="kg"), "kg")


def _larger(name: str, mass: Figure, estimate: Figure) -> Figure:
    return named(name, largest(mass, estimate), "kg")
