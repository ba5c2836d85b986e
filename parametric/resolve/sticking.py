"""The moulding round a leaf's openings, and what must be so for its corners to be cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.design.leaf import LeafSpec
from parametric.figures import Figure, exceeds, named
from parametric.hangings.hanging import EdgeRebate
from parametric.model import Blank, Cut, removed_volume
from parametric.names import join
from parametric.outlines import Outline, Vertex
from parametric.problems import Problem
from parametric.profiles.kinds import StickingSpec, size_moulding
from parametric.profiles.meeting import laid
from parametric.profiles.moulding import CannotStick, Meets, Moulding
from parametric.profiles.on_rails import rail_cuts, under_outline
from parametric.profiles.on_stiles import Opening, stile_cuts
from parametric.profiles.sticking import Broad, Sticking
from parametric.resolve.rail import Rail
from parametric.units import Unit, length_text


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameSticking:
    """The moulding on the face of a leaf's frame, along every sight edge, mm.

    `reach` is how far a rail goes past either shoulder, over the stile's moulding or into the
    mitre: as far as the moulding is wide.
    """

    moulding: Moulding
    corners: Meets
    reach: Figure

    def on(self, face: Broad) -> Sticking:
        """The same on one part, by which of its sides is the face."""
        return Sticking(moulding=self.moulding, faces=(face,), meets=self.corners)


def resolve_sticking(
    spec: StickingSpec | None, leaf: LeafSpec, place: str, unit: Unit
) -> tuple[FrameSticking | None, tuple[Problem, ...]]:
    """A leaf's moulding, or why it cannot be stuck; None where its edges are square.

    Args:
        spec: the moulding as written.
        leaf: the leaf that calls it.
        place: the leaf's name.
        unit: what lengths are told in.
    """
    if spec is None:
        return None, ()
    moulding = size_moulding(spec, join(place, "sticking"), unit)
    if isinstance(moulding, CannotStick):
        return None, (
            Problem(
                code="no_such_moulding",
                level="stop",
                message=moulding.message,
                where=spec.line(moulding.key),
                about=spec.heading,
                found=moulding.found,
                allowed=moulding.allowed,
                fix=moulding.fix,
                no_size=True,
            ),
        )
    if spec.corners == "coped" and not moulding.copes:
        return None, (
            Problem(
                code="no_such_moulding",
                level="stop",
                message=f"A {moulding.name} cannot be coped: what a cope leaves in its quirk "
                "hangs on nothing.",
                where=spec.line("corners"),
                about=spec.heading,
                found="coped",
                allowed="mitred",
                fix="Write `corners: mitred`.",
                no_size=True,
            ),
        )
    found = FrameSticking(
        moulding=moulding,
        corners=spec.corners,
        reach=named(join(place, "rails past their shoulders"), moulding.width),
    )
    if not exceeds(leaf.thickness, moulding.depth):
        return None, (
            _cannot(
                leaf,
                f"The {moulding.name} is {length_text(float(moulding.depth), unit)} deep in a frame "
                f"{length_text(float(leaf.thickness), unit)} thick.",
                found=length_text(float(moulding.depth), unit),
                allowed=f"less than {length_text(float(leaf.thickness), unit)}",
                fix="Write a smaller depth, or a thicker leaf.",
            ),
        )
    return found, ()


def _cannot(leaf: LeafSpec, message: str, *, found: str, allowed: str, fix: str) -> Problem:
    return Problem(
        code="moulding_does_not_fit",
        level="stop",
        message=message,
        where=leaf.line("sticking"),
        about=leaf.heading,
        found=found,
        allowed=allowed,
        fix=fix,
        no_size=True,
    )


def sight_below(rail: Rail, left: float, right: float) -> Outline:
    """A rail's sight edge towards the opening under it, in the leaf, with the wood on its left."""
    if rail.head is not None:
        return rail.head.edge(left, right)
    return (Vertex(left, float(rail.foot)), Vertex(right, float(rail.foot)))


def sight_above(rail: Rail, left: float, right: float) -> Outline:
    """The same towards the opening over it."""
    return (Vertex(right, float(rail.top)), Vertex(left, float(rail.top)))


def does_not_fit(
    sticking: FrameSticking,
    leaf: LeafSpec,
    rails: Sequence[Rail],
    stiles: tuple[Figure, Figure],
    steps: Sequence[EdgeRebate],
    unit: Unit,
) -> Iterator[Problem]:
    """What is too narrow for its mouldings, and an arch whose ends cannot be cut.

    Args:
        sticking: the moulding.
        leaf: as written, for the line to look at.
        rails: from the top.
        stiles: the left one's width and the right one's, mm.
        steps: the leaf's own rebates, at its foot or top.
        unit: what lengths are told in.
    """
    width, name = sticking.moulding.width, sticking.moulding.name
    for index, rail in enumerate(rails):
        runs = 1 if index in (0, len(rails) - 1) else 2
        whole = rail.height if rail.head is None else rail.height - rail.head.crown
        if not exceeds(whole, runs * width):
            yield _narrow(leaf, f"The {rail.noun}", name, whole, runs * width, unit)
    for side, stile in zip(("left", "right"), stiles, strict=True):
        if not exceeds(stile, width):
            yield _narrow(leaf, f"The {side} stile", name, stile, width, unit)
    for step in steps:
        if step.face == "front" and step.edge in ("foot", "top"):
            end = rails[-1] if step.edge == "foot" else rails[0]
            yield from _on_a_step(sticking, leaf, end, step, unit)
    for index, rail in enumerate(rails):
        if rail.head is not None and exceeds(rail.height - rail.head.crown, width):
            yield from _arch(sticking, leaf, rail, stiles[0], unit, topmost=index == 0)


def _narrow(
    leaf: LeafSpec, what: str, name: str, wide: Figure, taken: Figure, unit: Unit
) -> Problem:
    return _cannot(
        leaf,
        f"{what} is {length_text(float(wide), unit)} wide, and its {name} takes "
        f"{length_text(float(taken), unit)} of that.",
        found=length_text(float(wide), unit),
        allowed=f"more than {length_text(float(taken), unit)}",
        fix="Make it wider, or the moulding narrower.",
    )


def _on_a_step(
    sticking: FrameSticking, leaf: LeafSpec, rail: Rail, step: EdgeRebate, unit: Unit
) -> Iterator[Problem]:
    """A step in the face takes all of the moulding there, and leaves the rail's own alone."""
    depth = sticking.moulding.depth
    least = rail.height if rail.head is None else rail.height - rail.head.crown
    if not exceeds(step.depth, depth):
        yield _cannot(
            leaf,
            f"The {sticking.moulding.name} is {length_text(float(depth), unit)} deep, and the "
            f"leaf's rebate at its {step.edge} takes only {length_text(float(step.depth), unit)} "
            "of the face.",
            found=length_text(float(depth), unit),
            allowed=f"less than {length_text(float(step.depth), unit)}",
            fix="Write a smaller depth.",
        )
    elif not exceeds(least - step.width, sticking.moulding.width):
        yield _narrow(
            leaf,
            f"The {rail.noun} behind its rebate",
            sticking.moulding.name,
            least - step.width,
            sticking.moulding.width,
            unit,
        )


def _arch(
    sticking: FrameSticking, leaf: LeafSpec, rail: Rail, left: Figure, unit: Unit, *, topmost: bool
) -> Iterator[Problem]:
    """An arch that cannot be followed by the moulding, or whose ends cannot be cut over it."""
    try:
        _tried(sticking, rail, float(left), topmost=topmost)
    except ValueError as error:
        yield _cannot(
            leaf,
            f"The {sticking.moulding.name} cannot be run along this arch: {error}.",
            found=f"{length_text(float(sticking.moulding.width), unit)} wide, {sticking.corners}",
            allowed="a narrower moulding, or another rise",
            fix="Make the moulding narrower, or change the arch.",
        )


def _tried(sticking: FrameSticking, rail: Rail, left: float, *, topmost: bool) -> None:
    """Set out every cut of an arched rail and of both stiles under it.

    Raises:
        ValueError: one of them cannot be made.
    """
    reach, long = float(sticking.reach), float(rail.length)
    right, high = left + long, float(rail.top)
    curve = sight_below(rail, left, right)
    blank = Blank(length=long + 2 * reach, width=float(rail.height), thickness=2 * reach)
    own = ((left - reach, float(rail.foot)), (1.0, 0.0), (0.0, 1.0))
    low = laid(curve, *own)
    upper = None if topmost else laid(sight_above(rail, left, right), *own)
    under_outline(low, blank)
    cuts: list[Cut] = list(rail_cuts(sticking.on("high face"), blank, low=low, high=upper))
    stile = Blank(length=high, width=left, thickness=2 * reach)
    sill = float(rail.foot) - 4 * reach
    for origin, across in ((0.0, 1.0), (right + left, -1.0)):
        frame = ((origin, 0.0), (0.0, 1.0), (across, 0.0))
        below = laid((Vertex(right, sill), Vertex(left, sill)), *frame)
        cuts += stile_cuts(
            sticking.on("low face"),
            stile,
            edge="high edge",
            wood=(sill - 4 * reach, high),
            openings=(Opening(low=below, high=laid(curve, *frame)),),
        )
    for cut in cuts:
        removed_volume(cut, blank)
