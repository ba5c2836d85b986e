"""Heads of every shape with random sizes, for the tests of this folder."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator

from hypothesis import strategies as st

from parametric.figures import Figure
from parametric.outlines import Outline, Vertex, arc_of
from parametric.shapes.arch import ArchSpec, Shape, head_curve
from parametric.shapes.curve import HeadCurve

SHAPES: tuple[Shape, ...] = ("segmental", "half round", "pointed", "elliptical", "raked")

SHARES: dict[Shape, tuple[float, float]] = {
    "segmental": (0.02, 0.5),
    "pointed": (0.51, 2.0),
    "elliptical": (0.04, 1.2),
    "raked": (0.02, 2.0),
}
"""Rise by span that is drawn for each shape."""


def head(shape: Shape, span: float, rise: float | None, rises_to: str | None = None) -> HeadCurve:
    """The curve of a shape, by way of what a maker writes."""
    written = {"shape": shape, "across": "leaf"}
    if rise is not None:
        written["rise"] = f"{rise:.9f}"
    if rises_to is not None:
        written["rises to"] = rises_to
    found = head_curve(ArchSpec.model_validate(written), Figure(span, "span"), "arch")
    assert isinstance(found, HeadCurve), found
    return found


@st.composite
def heads(draw: st.DrawFn, shapes: tuple[Shape, ...] = SHAPES) -> HeadCurve:
    """Any head that can be, over 200 to 3000 mm."""
    shape = draw(st.sampled_from(shapes))
    span = draw(st.integers(2000, 30000)) / 10
    rise = None
    if shape != "half round":
        low, high = SHARES[shape]
        rise = round(span * draw(st.floats(low, high)), 3)
    side = draw(st.sampled_from(["left", "right"])) if shape == "raked" else None
    return head(shape, span, rise, side)


def inside(curve: HeadCurve, share: float) -> float:
    """A place of the curve, by its share of the way across."""
    return float(curve.left) + share * (float(curve.right) - float(curve.left))


def chain_edges(chain: Outline) -> list[tuple[Vertex, Vertex]]:
    """The edges of an open chain."""
    return list(itertools.pairwise(chain))


def chain_length(chain: Outline) -> float:
    """Along an open chain, by its arcs and chords alone."""
    total = 0.0
    for a, b in chain_edges(chain):
        arc = arc_of(a, b)
        total += math.dist((a.x, a.y), (b.x, b.y)) if arc is None else arc.radius * abs(arc.sweep)
    return total


def points_on(chain: Outline, count: int) -> Iterator[tuple[float, float]]:
    """Places along the edges of an open chain."""
    for a, b in chain_edges(chain):
        arc = arc_of(a, b)
        for i in range(count + 1):
            share = i / count
            if arc is None:
                yield a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)
            else:
                angle = arc.start + share * arc.sweep
                yield arc.x + arc.radius * math.cos(angle), arc.y + arc.radius * math.sin(angle)
