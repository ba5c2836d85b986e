"""Colours beside one another: lighter, darker, and between two."""

from __future__ import annotations


def mixed(colour: str, other: str, share: float) -> str:
    """A colour with a share, 0 to 1, of another; both as `#98a48c`."""
    pairs = zip(_levels(colour), _levels(other), strict=True)
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in pairs)


def lighter(colour: str, share: float) -> str:
    """Towards white."""
    return mixed(colour, "#ffffff", share)


def darker(colour: str, share: float) -> str:
    """Towards black."""
    return mixed(colour, "#000000", share)


def _levels(colour: str) -> tuple[int, int, int]:
    return (int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16))
