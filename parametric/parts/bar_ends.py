"""Ends of bars that follow a curve."""

from __future__ import annotations

from parametric.outlines import Outline, Vertex, backwards
from parametric.parts.rebates import tidy


def beyond(chain: tuple[Vertex, ...], length: float) -> Outline:
    """What lies past a curve that runs across a bar, up to the end of its blank."""
    first, last = chain[0], chain[-1]
    return tidy((Vertex(length, first.y), Vertex(length, last.y), *backwards(chain)))
