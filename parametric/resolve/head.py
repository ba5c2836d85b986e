"""The curve over an opening of a leaf, where one leaf sees it.

One curve may span a pair: each leaf then has its own piece of it, and both pieces are of one
arc. x runs from the leaf's left outer edge, y from its finished foot.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.figures import Figure, named
from parametric.hangings.hanging import Hanging
from parametric.names import join
from parametric.outlines import Vertex
from parametric.problems import Problem
from parametric.resolve.calls import called
from parametric.shapes.arch import ArchSpec, CannotArch, head_curve
from parametric.shapes.curve import HeadCurve, area_under, beside, height_at, highest, part_of
from parametric.units import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafHead:
    """A piece of a curve over one leaf's opening, mm.

    `left` is the curve's left springing point from the leaf's left edge, which lies in the
    other leaf where the curve spans a pair. `at_left`, `at_right` are its heights above the
    springing at the two sides of the opening; `crown` the most within it; `springing` the
    springing line above the leaf's foot.
    """

    curve: HeadCurve
    left: Figure
    at_left: Figure
    at_right: Figure
    crown: Figure
    area: Figure
    springing: Figure

    def height(self, x: float, name: str, *, out: float = 0.0) -> Figure:
        """Above the leaf's foot at x, on the curve or on the one `out` outside it."""
        curve = beside(self.curve, out) if float(out) else self.curve
        return named(name, self.springing + height_at(curve, x - self.left, name))

    def most(self, x0: float, x1: float, name: str, *, out: float = 0.0) -> Figure:
        """The highest above the leaf's foot between two places."""
        curve = beside(self.curve, out) if float(out) else self.curve
        top = highest(curve, x0 - self.left, x1 - self.left, name)
        return named(name, self.springing + top)

    def inside(self, by: float) -> LeafHead:
        """The curve that runs `by` inside this one, mm."""
        return dataclasses.replace(self, curve=beside(self.curve, -by))

    def edge(self, x0: float, x1: float, *, out: float = 0.0) -> tuple[Vertex, ...]:
        """The curve between two places as an open chain from left to right, in the leaf."""
        curve = beside(self.curve, out) if float(out) else self.curve
        dx, dy = float(self.left), float(self.springing)
        chain = part_of(curve, float(x0) - dx, float(x1) - dx)
        return tuple(Vertex(v.x + dx, v.y + dy, v.bulge) for v in chain)


@dataclass(frozen=True, slots=True, kw_only=True)
class Over:
    """A curve and where it springs, before the springing line's height is known."""

    curve: HeadCurve
    left: Figure
    at_left: Figure
    at_right: Figure
    crown: Figure
    area: Figure

    def at(self, springing: Figure) -> LeafHead:
        """The same, at its height."""
        return LeafHead(
            curve=self.curve,
            left=self.left,
            at_left=self.at_left,
            at_right=self.at_right,
            crown=self.crown,
            area=self.area,
            springing=springing,
        )


def curves_over(
    design: Design, hanging: Hanging, leaves: Sequence[LeafSpec]
) -> tuple[tuple[Over | None, ...], tuple[Problem, ...]]:
    """The curve under the arched rails of each leaf of a door, None where all are straight."""
    found: list[Over | None] = []
    problems: list[Problem] = []
    for index, leaf in enumerate(leaves):
        line = next((b for b in leaf.top_to_bottom if b.underside == "arch"), None)
        spec = called(design, leaf, "arch", ArchSpec) if line is not None else None
        if line is None or spec is None:
            found.append(None)
            continue
        over = _over(spec, hanging, leaves, index, design.unit)
        if isinstance(over, CannotArch):
            problems.append(
                Problem(
                    code="no_such_arch",
                    level="stop",
                    message=over.message,
                    where=spec.line(over.key),
                    about=spec.heading,
                    found=over.found,
                    allowed=over.allowed,
                    fix=over.fix,
                    no_size=True,
                )
            )
            found.append(None)
        else:
            found.append(over)
    return tuple(found), tuple(problems)


def _over(
    spec: ArchSpec, hanging: Hanging, leaves: Sequence[LeafSpec], index: int, unit: Unit
) -> Over | CannotArch:
    hung = hanging.leaves[index]
    first = hanging.leaves[0] if spec.across == "pair" else hung
    last = hanging.leaves[-1] if spec.across == "pair" else hung
    first_stile = leaves[hanging.leaves.index(first)].stile_widths(
        (first.left_edge, first.right_edge)
    )[0]
    last_stile = leaves[hanging.leaves.index(last)].stile_widths((last.left_edge, last.right_edge))[
        1
    ]
    place = "arch" if spec.across == "pair" else join(hung.name, "arch")
    springs = named(join(place, "left springing"), first.left + first_stile)
    ends = named(join(place, "right springing"), last.left + last.width - last_stile)
    curve = head_curve(spec, named(join(place, "span"), ends - springs), place, unit)
    if isinstance(curve, CannotArch):
        return curve
    own = leaves[index].stile_widths((hung.left_edge, hung.right_edge))
    left = named(join(hung.name, "arch springs at"), springs - hung.left)
    low = named(join(hung.name, "left of the opening"), own[0] - left)
    high = named(join(hung.name, "right of the opening"), hung.width - own[1] - left)
    at_left = height_at(curve, low, join(hung.name, "arch height at the left stile"))
    at_right = height_at(curve, high, join(hung.name, "arch height at the right stile"))
    return Over(
        curve=curve,
        left=left,
        at_left=at_left,
        at_right=at_right,
        crown=highest(curve, low, high, join(hung.name, "arch over the opening")),
        area=named(join(hung.name, "area under the arch"), area_under(curve, low, high), "mm2"),
    )
