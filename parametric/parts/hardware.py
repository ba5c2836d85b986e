"""Pulls as display bodies, each in its pocket."""

from __future__ import annotations

from parametric.hardware.pull import Pull, pull_blank, pull_shape
from parametric.model import Material, Part, Placement
from parametric.names import join
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungPull

METAL = Material(name="metal", look="metal", density=0.0)


def pull_parts(leaf: Leaf) -> tuple[Part, ...]:
    """One pull for each face that is pocketed, its flange flush with the face."""
    return tuple(_pull(leaf, hung, face) for hung in leaf.pulls for face in hung.pull.faces)


def _pull(leaf: Leaf, hung: HungPull, face: str) -> Part:
    pull = hung.pull
    foot = float(pull.up - pull.flange_length / 2)
    half = float(pull.flange_width / 2)
    across = float(hung.across)
    return Part(
        name=join(leaf.name, f"{face} pull"),
        noun="pull",
        mark="U",
        material=METAL,
        blank=pull_blank(pull),
        placement=_front(pull, across + half, foot)
        if face == "front"
        else Placement(
            origin=(across - half, float(leaf.thickness - pull.body_depth), foot),
            x=(0.0, 0.0, 1.0),
            y=(1.0, 0.0, 0.0),
        ),
        cuts=pull_shape(pull),
        supplied=True,
    )


def _front(pull: Pull, right: float, foot: float) -> Placement:
    return Placement(
        origin=(right, float(pull.body_depth), foot), x=(0.0, 0.0, 1.0), y=(-1.0, 0.0, 0.0)
    )
