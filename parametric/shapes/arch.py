"""The arch as written; provisional."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, named
from parametric.names import join
from parametric.shapes.curve import HeadCurve
from parametric.written import Block, Length


class ArchSpec(Block):
    """An arch as written."""

    shape: Literal["segmental"]
    across: Literal["leaf", "pair"]
    rise: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotArch:
    """Why there is no such arch."""

    message: str
    found: str
    allowed: str
    fix: str


def head_curve(spec: ArchSpec, span: Figure, place: str) -> HeadCurve | CannotArch:
    """The curve over a span."""
    rise = named(join(place, "rise"), spec.rise)
    radius = named(join(place, "radius"), (span * span + 4 * rise * rise) / (8 * rise))
    return HeadCurve(span=span, rise=rise, radius=radius, crown_at=span / 2)
