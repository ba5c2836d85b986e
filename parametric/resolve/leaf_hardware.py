"""What hangs, shuts and opens one leaf: its hinges, its lock, its pulls, where they stand on it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.catalog.shop import Shop
from parametric.figures import Figure, named
from parametric.hangings.hanging import Hanging, HungLeaf, HungSide, Side
from parametric.hardware.handle import Handle, HandleSpec, size_handle
from parametric.hardware.hinge import HungEdge
from parametric.hardware.hinge_kinds import AnyHinges, HingeSpec, size_hinges
from parametric.hardware.lock import Lock, LockSpec, size_lock
from parametric.hardware.pull import Pull, PullSpec, size_pull
from parametric.model import Slide
from parametric.names import join
from parametric.resolve.leaf_weight import Weights


@dataclass(frozen=True, slots=True, kw_only=True)
class HungHinges:
    """The hinges at one edge of a leaf, and the face their knuckles stand on.

    `chain` is from the foot to the top: what is below a hinge, its length, and so on, mm; of a
    flap from its left end to its right.
    """

    side: HungSide
    face: Literal["front", "back"]
    hinges: AnyHinges
    chain: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HungPull:
    """A pull on one stile: which, and where its centre is from the leaf's left edge, mm."""

    side: Side
    across: Figure
    pull: Pull


def leaf_hinges(
    spec: HingeSpec | None,
    hung: HungLeaf,
    hanging: Hanging,
    thickness: Figure,
    weights: Weights,
    shop: Shop,
    density: Figure,
) -> tuple[HungHinges, ...]:
    """The hinges at each edge that carries any; a leaf between two others has them at both."""
    if spec is None or not hung.hinged:
        return ()
    gap = hanging.fold_gap if hanging.hinge_gap is None else hanging.hinge_gap
    assert gap is not None, "what hangs on hinges has a gap there"
    found: list[HungHinges] = []
    for side, face in hung.hinged:
        place = hung.name if len(hung.hinged) == 1 else join(hung.name, f"{side} edge")
        level = side in ("top", "bottom")
        long = hung.width if level else hung.height
        edge = HungEdge(
            leaf=place,
            height=long,
            width=hung.height if level else hung.width,
            thickness=thickness,
            gap=gap,
            foot=hung.foot,
            head_gap=hanging.head_gap,
            weight=weights.estimate,
            cutters=shop.router.cutters,
            density=density,
            level=level,
        )
        hinges = size_hinges(spec, edge)
        found.append(
            HungHinges(
                side=side,
                face=face,
                hinges=hinges,
                chain=_level_chain(hinges, place, long)
                if level
                else _hinge_chain(hinges, place, long),
            )
        )
    return tuple(found)


def _hinge_chain(hinges: AnyHinges, place: str, height: Figure) -> tuple[Figure, ...]:
    """From the foot to the top of the leaf, hinge by hinge, as they are marked."""
    chain: list[Figure] = []
    at: Figure | None = None
    for one in reversed(hinges.places):
        word = one.name.rpartition(" / ")[2]
        below = one.low if at is None else one.low - at
        chain += [
            named(join(place, f"below the {word}"), below),
            named(join(one.name, "length"), one.high - one.low),
        ]
        at = one.high
    top = height if at is None else height - at
    return (*chain, named(join(place, "above the top hinge"), top))


def _level_chain(hinges: AnyHinges, place: str, width: Figure) -> tuple[Figure, ...]:
    """From the left end of a flap to its right, hinge by hinge, as they are marked."""
    chain: list[Figure] = []
    at = Figure(0.0)
    for one in hinges.places:
        word = one.name.rpartition(" / ")[2]
        chain += [
            named(join(place, f"left of the {word}"), one.low - at),
            named(join(one.name, "length"), one.high - one.low),
        ]
        at = one.high
    return (*chain, named(join(place, "right of the right hinge"), width - at))


def _beside(hung: HungLeaf, height: Figure) -> bool:
    """Whether a height above the floor is this leaf's; of leaves one over the other it is one's."""
    if not hung.stacked:
        return True
    return float(hung.foot) <= float(height) <= float(hung.foot + hung.height)


def leaf_lock(spec: LockSpec | None, hung: HungLeaf, thickness: Figure, shop: Shop) -> Lock | None:
    """The lock let into one of its edges, if it has one."""
    if spec is None or hung.lock_edge is None or not _beside(hung, spec.height):
        return None
    return size_lock(
        spec,
        leaf=hung.name,
        foot=hung.foot,
        thickness=thickness,
        cutters=shop.router.cutters,
        bevel=hung.bevel(hung.lock_edge),
    )


def leaf_pulls(
    spec: PullSpec | None,
    hung: HungLeaf,
    width: Figure,
    thickness: Figure,
    shop: Shop,
) -> tuple[HungPull, ...]:
    """The pull on the stile that opens it, if it has one."""
    side = hung.pull_side
    if spec is None or side is None or not _beside(hung, spec.height):
        return ()
    name = join(hung.name, "pull")
    pull = size_pull(
        spec,
        place=name,
        floor_gap=hung.foot,
        thickness=thickness,
        cutters=shop.router.cutters,
        relieve=shop.router.inside_corners == "relieve",
    )
    across = pull.from_edge if side == "left" else width - pull.from_edge
    return (
        HungPull(
            side=side,
            across=named(join(name, "centre from the left edge"), across),
            pull=pull,
        ),
    )


def leaf_handle(
    spec: HandleSpec | None, hung: HungLeaf, width: Figure, height: Figure
) -> Handle | None:
    """The bar or knob that opens it, if it has one."""
    drawer = any(isinstance(step, Slide) for step in hung.motion) and hung.stacked
    level = drawer or hung.flap is not None
    if spec is None or (hung.pull_side is None and not level):
        return None
    return size_handle(
        spec,
        leaf=hung.name,
        foot=hung.foot,
        width=width,
        height=height,
        side=None if level else hung.pull_side,
        flap=None if hung.flap is None else hung.flap.side,
    )
