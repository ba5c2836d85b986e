"""What every moulding is: the wood taken away along an edge, its sizes, and how it may meet another.

A section is seen on end: x in from the edge across the face, y from the face into the wood
(`parametric/sections.py` draws it). All lengths mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds
from parametric.outlines import Outline, Vertex, area_of, no_short_edges
from parametric.sections import Span, spans_at
from parametric.units import Unit, length_text
from parametric.written import Block

Meets = Literal["coped", "mitred"]


class StickingBlock(Block):
    """What is written of every moulding beside its sizes."""

    kind: str
    corners: Meets = Field(description="how rails end on moulded stiles")


@dataclass(frozen=True, slots=True, kw_only=True)
class Moulding:
    """A moulding as it is stuck on frame work.

    `name` is the shop's word for it and for its cutter; `width` is how far it goes in across
    the face, `depth` how far down. `copes` says whether a rail's end can be cut over it: with
    a quirk behind a bead, what would stand in the quirk hangs on nothing.
    """

    name: str
    width: Figure
    depth: Figure
    section: Outline
    copes: bool = True

    @property
    def area(self) -> float:
        """Area of the wood taken away, mm2."""
        return area_of(self.section)

    def section_at(self, depth: float) -> float:
        """How far in from the edge the wood is cut at a depth, mm; 0 below the moulding."""
        spans = spans_at(self.section, float(depth))
        return spans[-1][1] if spans else 0.0

    def spans_at(self, depth: float) -> tuple[Span, ...]:
        """From where to where the wood is cut at a depth, mm: once, or twice beside a bead."""
        return spans_at(self.section, float(depth))


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotStick:
    """Why there is no such moulding, in words for the maker; `key` is the one to look at."""

    message: str
    found: str
    allowed: str
    fix: str
    key: str


def closed(*vertices: tuple[float, float, float]) -> Outline:
    """A section from its corners and bulges, without those that fall together."""
    return tuple(no_short_edges([Vertex(float(x), float(y), b) for x, y, b in vertices]))


def refused(
    name: str, unit: Unit, *, width: float, depth: float, fillet: float = 0.0, steep: bool = True
) -> CannotStick | None:
    """What is wrong with the sizes of a moulding: none, no room beside the fillet, or undercut.

    Args:
        name: the moulding.
        unit: what lengths are told in.
        width: across the face, mm.
        depth: into the wood, mm.
        fillet: the step at both of its ends, mm.
        steep: whether it may be deeper than it is wide.
    """

    def said(value: float) -> str:
        return length_text(value, unit)

    for key, value in (("width", width), ("depth", depth)):
        if not exceeds(value, 0.0):
            return CannotStick(
                message=f"The {name} is {said(value)} in {key}.",
                found=said(value),
                allowed="more than 0",
                fix=f"Write its {key}.",
                key=key,
            )
    least = min(float(width), float(depth))
    if fillet < 0 or not exceeds(least, fillet):
        return CannotStick(
            message=f"A fillet of {said(fillet)} leaves nothing of the {name}.",
            found=said(fillet),
            allowed=f"from 0 to less than {said(least)}",
            fix="Write a smaller fillet.",
            key="fillet",
        )
    if not steep and exceeds(depth, width):
        return CannotStick(
            message=(
                f"An {name} of {said(width)} across and {said(depth)} down would be undercut: "
                "its curve would turn back under the face."
            ),
            found=said(depth),
            allowed=f"up to its width, {said(width)}",
            fix="Make it as wide as it is deep, or wider.",
            key="depth",
        )
    return None
