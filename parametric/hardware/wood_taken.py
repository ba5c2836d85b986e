"""The wood that a piece of hardware or a cut takes from a stile, as a box, and how far two keep apart."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, largest

OnFace = Literal["front", "back"]
"""The face of the leaf that something is let into, or that a hinge's knuckles stand on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """A box of wood in a stile, mm.

    `low`, `high` above the leaf's finished foot; `near`, `far` in from the stile's outer edge;
    `front`, `back` in from the leaf's front face.
    """

    name: str
    low: Figure
    high: Figure
    near: Figure
    far: Figure
    front: Figure
    back: Figure


def through(face: OnFace, deep: Figure, thickness: Figure) -> tuple[Figure, Figure]:
    """From where to where, in from the front face, something `deep` into one face reaches."""
    if face == "front":
        return Figure(0.0), deep
    return thickness - deep, thickness


def kept_apart(one: Taken, other: Taken) -> Figure:
    """The wood between two boxes: the widest of the gaps up, across and through, mm.

    Less than nothing where they share wood, by the least that either must move.
    """
    return largest(
        other.low - one.high,
        one.low - other.high,
        other.near - one.far,
        one.near - other.far,
        other.front - one.back,
        one.front - other.back,
    )
