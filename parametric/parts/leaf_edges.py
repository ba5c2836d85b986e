"""What a leaf's own edges are worked to once it is glued: bevels, steps, and strips planted over a gap."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.figures import Figure, plain
from parametric.hangings.hanging import EdgeRebate, Side
from parametric.model import Blank, Cut, Face, Making, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import Outline, Vertex, rectangle
from parametric.parts.lying import RIGHT, UP
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail

STEPPED = Making(by="bench", when="after glue-up", tool="rebate cutter along a fence, ends squared")


def stile_edges(leaf: Leaf, side: Side, front: Face, back: Face) -> tuple[Cut, ...]:
    """The cuts on one stile, whose outer edge is its low edge and whose foot is its low end."""
    return (*_steps(leaf, side, front, back), *_bevels(leaf, side, front, back))


def rail_edges(leaf: Leaf, rail: Rail) -> Iterator[Cut]:
    """The cuts on the rail at the foot or the top of a stepped leaf; its low face is the back."""
    for step in leaf.hung.rebates:
        face: Face = "high face" if step.face == "front" else "low face"
        (low, high), width = (float(at) for at in rail.shoulders), float(step.width)
        if step.edge == "foot" and rail is leaf.rails[-1]:
            yield _step(face, rectangle(low, 0.0, high, width), step)
        if step.edge == "top" and rail is leaf.rails[0]:
            top = float(rail.height)
            yield _step(face, rectangle(low, top - width, high, top), step)


def _step(face: Face, outline: Outline, step: EdgeRebate) -> Shaped:
    return Shaped(
        name=f"rebate at the {step.edge}",
        face=face,
        outline=outline,
        depth=step.depth,
        making=STEPPED,
    )


def _span(leaf: Leaf) -> tuple[float, float]:
    """Where the finished leaf begins and ends along a stile's blank."""
    return float(leaf.trim), float(leaf.trim + leaf.height)


def _steps(leaf: Leaf, side: Side, front: Face, back: Face) -> Iterator[Shaped]:
    low, high = _span(leaf)
    wide = float(leaf.left_stile if side == "left" else leaf.right_stile)
    for step in leaf.hung.rebates:
        face, width = front if step.face == "front" else back, float(step.width)
        if step.edge == side:
            yield _step(face, rectangle(low, 0.0, high, width), step)
        elif step.edge == "foot":
            yield _step(face, rectangle(low, 0.0, low + width, wide), step)
        elif step.edge == "top":
            yield _step(face, rectangle(high - width, 0.0, high, wide), step)


def _bevels(leaf: Leaf, side: Side, front: Face, back: Face) -> Iterator[Shaped]:
    """An outer edge planed out of square: full width on the knuckles' face, less on the other.

    Where the leaf is stepped at its foot or top, only the wood that the step leaves is planed.
    """
    bevel = leaf.hung.bevel(side)
    if bevel is None:
        return
    slope = math.tan(math.radians(float(bevel)))
    full = back if leaf.hung.knuckles == "back" else front
    thick = float(leaf.thickness)
    low, high = _span(leaf)
    spans = [(low, high, 0.0, thick)]
    for step in leaf.hung.rebates:
        if step.edge not in ("foot", "top"):
            continue
        begin, end, _, _ = spans[0]
        inner = begin + float(step.width) if step.edge == "foot" else begin
        outer = end - float(step.width) if step.edge == "top" else end
        gone = front if step.face == "front" else back
        deep = float(step.depth)
        left = (deep, thick) if gone == "low face" else (0.0, thick - deep)
        lip = (begin, inner) if step.edge == "foot" else (outer, end)
        spans = [(inner, outer, 0.0, thick), (*lip, *left)]
    for begin, end, z0, z1 in spans:
        yield Shaped(
            name="edge bevel",
            face="low end",
            outline=_slanted(slope, z0, z1, thick, from_low=full == "low face"),
            surface=begin,
            depth=end,
            making=Making(
                by="bench",
                when="after glue-up",
                tool=f"plane at {plain(bevel)} deg, off the far side",
            ),
        )


def _slanted(slope: float, z0: float, z1: float, thick: float, *, from_low: bool) -> Outline:
    """What is planed off between two depths: nothing at the full face, most at the other."""

    def off(z: float) -> float:
        return slope * (z if from_low else thick - z)

    corners = [
        Vertex(0.0, z0),
        *([Vertex(off(z0), z0)] if off(z0) > 1e-9 else []),
        *([Vertex(off(z1), z1)] if off(z1) > 1e-9 else []),
        Vertex(0.0, z1),
    ]
    return tuple(corners)


def strip_parts(leaf: Leaf) -> tuple[Part, ...]:
    """The strip planted over the gap at a leaf's edge, if it has one."""
    strip = leaf.hung.strip
    if strip is None:
        return ()
    wide, thick, over = (float(v) for v in (strip.width, strip.thickness, strip.over))
    left = -over if strip.edge == "left" else float(leaf.width) + over - wide
    y = -thick if strip.face == "front" else float(leaf.thickness)
    return (
        Part(
            name=join(leaf.name, "astragal"),
            noun="astragal",
            mark="E",
            material=leaf.material,
            blank=Blank(
                length=Figure(float(leaf.height)), width=strip.width, thickness=strip.thickness
            ),
            placement=Placement(origin=(left, y, 0.0), x=UP, y=RIGHT),
            faces={
                "low end": "foot",
                "high end": "top",
                "low edge": "left edge",
                "high edge": "right edge",
                "low face": "face" if strip.face == "front" else "against the leaf",
                "high face": "against the leaf" if strip.face == "front" else "face",
            },
        ),
    )
