"""What each leaf weighs as cut, part by part, beside the estimate that loads are worked from."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, largest, named
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafLoad:
    """kg: the parts as cut, the larger of that and the estimate, and its share on each hanger."""

    leaf: str
    mass: Figure
    governing: Figure
    per_hanger: Figure


def leaf_loads(resolved: Resolved, assembly: Assembly) -> tuple[LeafLoad, ...]:
    """Two weights for every leaf; orders and loads use the larger.

    The mass is the sum of the parts as cut, stops and tenons with them, hardware without:
    what is bought weighs what its maker says.
    """
    loads = []
    for leaf, group in zip(resolved.door.leaves, assembly.groups, strict=False):
        total = sum(part.mass for part in group.parts if not part.supplied)
        mass = named(
            join(leaf.name, "mass"), Figure(total, op="sum of the parts as cut", unit="kg"), "kg"
        )
        governing = named(
            join(leaf.name, "governing weight"), largest(mass, leaf.weights.estimate), "kg"
        )
        loads.append(
            LeafLoad(
                leaf=leaf.name,
                mass=mass,
                governing=governing,
                per_hanger=named(
                    join(leaf.name, "governing load per hanger"),
                    governing / resolved.door.track.hangers,
                    "kg",
                ),
            )
        )
    return tuple(loads)
