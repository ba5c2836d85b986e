"""How the grain of a piece of timber is imagined: one recipe for the page and for pictures.

A log is put round every piece: its heart lies beside it, its years are rings about the heart,
so that faces show cathedrals, edges straight lines and ends rings, all of one tree. Every
number is by eye, no source. Lengths mm, x along the piece; pairs of numbers that are not
said otherwise are how fast the noise runs along the piece and across it, a mm.
"""

from __future__ import annotations

from dataclasses import dataclass

Pair = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Grain:
    """The recipe's numbers."""

    # where the heart of the tree lies: its y from here to there, its z as far below the piece
    heart_across: Pair = (-20.0, 130.0)
    heart_below: Pair = (28.0, 120.0)
    taper: float = 0.012
    start: float = 4000.0
    # slow bends of the trunk: how far, and the noise they follow
    bends: tuple[tuple[float, float, float], ...] = ((26.0, 0.0016, 0.006), (5.0, 0.006, 0.02))
    bent: Pair = (0.7, 0.5)
    # a year is from .75 to 1.25 of the usual ring
    ring_least: float = 0.75
    ring_spread: float = 0.5
    ring_noise: float = 0.05
    # late wood darkens from here to there in the year, and ends at once
    late: Pair = (0.25, 0.93)
    late_end: float = 0.94
    late_mean: float = 0.42
    late_fades: Pair = (0.35, 1.1)
    # how dark a good year's late wood is
    year: Pair = (0.44, 0.40)
    fibre: Pair = (0.018, 1.7)
    fibre_fades: Pair = (0.5, 1.6)
    fibre_depth: float = 0.34
    broad: Pair = (0.0011, 0.012)
    broad_depth: float = 0.5
    ground: float = 0.12
    pore: Pair = (0.05, 2.6)
    pore_from: Pair = (0.66, 0.80)
    pore_early: Pair = (0.15, 0.45)
    pore_fades: Pair = (0.4, 1.2)
    fleck: tuple[float, float, float] = (0.02, 0.16, 0.5)
    fleck_from: Pair = (0.74, 0.86)
    # a panel's boards: another tree in each, heart up and heart down in turn, a line between
    board_step: float = 0.3819
    board_turned: float = 40.0
    line: float = 0.35
    # what tone, pores and flecks do to the colour and the sheen
    tone: float = 1.25
    board_tone: float = 0.16
    pore_dark: float = 0.55
    fleck_light: Pair = (1.12, 0.5)
    rough: Pair = (0.10, 0.20)
    # under paint: tone along and across the piece, and the line where rail meets stile
    paint: tuple[float, float, float] = (0.018, 0.009, 0.09)
    joint: float = 0.30


GRAIN = Grain()
