"""The rebate that glass lies in: along stiles and straight rails, and round an arched rail.

All from the back of the leaf. A stile's rebate stops at both ends and is chopped square; a
rail's runs out at its ends, behind the shoulders.
"""

from __future__ import annotations

from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.model import Cut, Face, Groove, Making, Shaped
from parametric.names import join
from parametric.outlines import Outline, Vertex, backwards, no_short_edges
from parametric.parts.lying import rail_blank, rail_left
from parametric.profiles.on_rails import under_outline
from parametric.resolve.head import LeafHead
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite, Rebate
from parametric.resolve.panel_field import PanelField, largest_that_fits
from parametric.resolve.rail import Rail

ARCH = Making(by="router", tool="straight cutter against a template")


def rebated(leaf: Leaf) -> tuple[Lite, ...]:
    """The lites whose glass lies in a rebate."""
    return tuple(lite for lite in leaf.lites if lite.rebate is not None)


def rebate_making(leaf: Leaf, rebate: Rebate) -> Making:
    """By the router, with the largest cutter that it admits."""
    return Making(
        by="router",
        cutter=largest_that_fits(leaf.cutters, rebate.frame),
        tool="straight cutter",
    )


def stile_rebate(leaf: Leaf, lite: Lite, rebate: Rebate, side: Side, face: Face) -> Groove:
    """Along a stile's inner edge, a rebate's width past the lite at either end."""
    width = leaf.left_stile if side == "left" else leaf.right_stile
    making = rebate_making(leaf, rebate)
    return Groove(
        name="glass rebate",
        face=face,
        u0=lite.foot - rebate.frame + leaf.trim,
        u1=rebate_top(leaf, lite, rebate, side) + leaf.trim,
        v=width - rebate.frame / 2,
        width=rebate.frame,
        depth=rebate.depth,
        corner=(making.cutter or 0.0) / 2,
        squared=True,
        making=making,
    )


def rebate_top(leaf: Leaf, lite: Lite, rebate: Rebate, side: Side) -> float:
    """How far up a stile its rebate runs: under a curve, to where the rail's rebate is highest there."""
    if lite.head is None:
        return lite.top + rebate.frame
    inner = leaf.left_stile if side == "left" else leaf.width - leaf.right_stile
    outer = inner - rebate.frame if side == "left" else inner + rebate.frame
    low, high = (outer, inner) if side == "left" else (inner, outer)
    return lite.head.most(
        low, high, join(lite.name, f"rebate in the {side} stile to"), out=rebate.frame
    )


def rail_rebates(leaf: Leaf, rail: Rail) -> tuple[Cut, ...]:
    """Along each straight edge of a rail that glass stands against, from shoulder to shoulder."""
    cuts: list[Cut] = []
    for lite in rebated(leaf):
        assert lite.rebate is not None
        rebate = lite.rebate
        if lite.top == rail.foot and rail.head is not None:
            cuts.append(_round_the_arch(leaf, rail, rail.head, rebate))
        elif lite.top == rail.foot:
            cuts.append(_along(leaf, rail, rebate, rebate.frame / 2))
        if lite.foot == rail.top:
            cuts.append(_along(leaf, rail, rebate, rail.height - rebate.frame / 2))
    return tuple(cuts)


def _along(leaf: Leaf, rail: Rail, rebate: Rebate, v: Figure) -> Groove:
    low, high = rail.shoulders
    return Groove(
        name="glass rebate",
        face="low face",
        u0=low,
        u1=high,
        v=v,
        width=rebate.frame,
        depth=rebate.depth,
        making=rebate_making(leaf, rebate),
    )


def arch_cut(leaf: Leaf, rail: Rail, head: LeafHead) -> Shaped:
    """The underside of an arched rail, through its whole thickness."""
    chain = rail_chain(leaf, rail, head)
    return Shaped(
        name="arched underside",
        face="high face",
        outline=under(chain)
        if leaf.sticking is None
        else under_outline(chain, rail_blank(leaf, rail)),
        depth=leaf.thickness,
        making=ARCH,
    )


def rail_chain(
    leaf: Leaf,
    rail: Rail,
    head: LeafHead,
    *,
    out: float = 0.0,
    span: tuple[float, float] | None = None,
) -> tuple[Vertex, ...]:
    """The curve, or the one `out` outside it, in the rail's own frame from left to right."""
    shoulder, foot = float(leaf.left_stile), float(rail.foot)
    left = rail_left(leaf, rail)
    x0, x1 = span if span is not None else (shoulder, shoulder + float(rail.length))
    return tuple(Vertex(v.x - left, v.y - foot, v.bulge) for v in head.edge(x0, x1, out=out))


def under(chain: tuple[Vertex, ...], level: float = 0.0) -> Outline:
    """What lies between a curve and a level line below it."""
    first, last = chain[0], chain[-1]
    return tidy((Vertex(first.x, level), Vertex(last.x, level), *backwards(chain)))


def over(chain: tuple[Vertex, ...], level: float) -> Outline:
    """What lies between a curve and a level line above it."""
    first, last = chain[0], chain[-1]
    return tidy(
        (*chain[:-1], Vertex(last.x, last.y), Vertex(last.x, level), Vertex(first.x, level))
    )


def between(low: tuple[Vertex, ...], high: tuple[Vertex, ...]) -> Outline:
    """What lies between two curves over the same stretch."""
    return tidy((*low[:-1], Vertex(low[-1].x, low[-1].y), *backwards(high)))


def tidy(vertices: tuple[Vertex, ...]) -> Outline:
    """Without corners that lie on the next one, as where a curve springs from the blank's corner."""
    return tuple(no_short_edges(list(vertices)))


def groove_round_the_arch(leaf: Leaf, rail: Rail, head: LeafHead, field: PanelField) -> Shaped:
    """The panel's groove in an arched underside, in the middle of the rail's thickness."""
    panel = field.panel
    front = (leaf.thickness - panel.groove_width) / 2
    return Shaped(
        name="panel groove",
        face="low face",
        outline=between(
            rail_chain(leaf, rail, head),
            rail_chain(leaf, rail, head, out=float(panel.groove_depth)),
        ),
        surface=front,
        depth=front + panel.groove_width,
        making=Making(by="bench", tool="slot cutter, its bearing on the curve"),
    )


def _round_the_arch(leaf: Leaf, rail: Rail, head: LeafHead, rebate: Rebate) -> Shaped:
    return Shaped(
        name="glass rebate",
        face="low face",
        outline=between(
            rail_chain(leaf, rail, head),
            rail_chain(leaf, rail, head, out=float(rebate.frame)),
        ),
        depth=rebate.depth,
        making=rebate_making(leaf, rebate),
    )
