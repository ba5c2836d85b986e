"""Squares of finish, by which one is told from the other; the real thing is a sample."""

from __future__ import annotations

import itertools
from typing import assert_never

from parametric.catalog.finishes import ClearGlass, ClearTimber, Metal, Paint, VeiledGlass
from parametric.drawing.plane import Box, rectangle
from parametric.drawing.proposal.content import Choice
from parametric.drawing.proposal.setting import Tint
from parametric.drawing.proposal.shades import darker, lighter

_REED = 1.3
"""From reed to reed in a square, mm: no scale."""


def swatch_tints(choice: Choice, box: Box) -> tuple[Tint, ...]:
    """A square of it."""
    match choice:
        case Paint():
            return (Tint(points=box.polygon, colour=choice.colour),)
        case ClearTimber():
            return (Tint(points=box.polygon, colour=choice.early), *_grain(choice, box))
        case Metal():
            return (
                Tint(
                    points=box.polygon,
                    colour=lighter(choice.colour, 0.30),
                    toward=((box.x0, box.y1), (box.x1, box.y0), darker(choice.colour, 0.22)),
                ),
            )
        case ClearGlass() | VeiledGlass():
            return _glass(choice, box)
        case _:
            assert_never(choice)


def _grain(wood: ClearTimber, box: Box) -> tuple[Tint, ...]:
    lines = []
    gaps = itertools.cycle((0.7, 1.2, 0.5, 1.7, 0.9))
    x = box.x0 + 0.5
    while x < box.x1 - 0.4:
        bow = min(0.5, box.x1 - 0.2 - x)
        line = ((x, box.y0), (x + bow, box.centre[1]), (x, box.y1))
        lines.append(Tint(points=line, colour=wood.late, alpha=0.55, width=0.25))
        x += next(gaps)
    return tuple(lines)


def _glass(glass: ClearGlass | VeiledGlass, box: Box) -> tuple[Tint, ...]:
    ground = Tint(
        points=box.polygon,
        colour="#f4f8f7",
        toward=((box.x0, box.y1), (box.x1, box.y0), "#cfdcd8"),
    )
    if isinstance(glass, VeiledGlass) and glass.reed:
        count = int(box.width / _REED)
        reeds = tuple(
            Tint(
                points=rectangle(x, box.y0, x + _REED / 2, box.y1),
                colour="#a9bab5",
                toward=((x, box.y0), (x + _REED / 2, box.y0), "#e6eeec"),
            )
            for x in (box.x0 + n * _REED for n in range(count))
        )
        return (ground, *reeds)
    if isinstance(glass, VeiledGlass):
        return (ground, Tint(points=box.polygon, colour="#e3ece9", alpha=0.8))
    body = Tint(points=box.polygon, colour=glass.colour, alpha=max(0.12, glass.body))
    lean = box.width * 0.35
    streak = (
        (box.x0 + 0.15 * box.width, box.y0),
        (box.x0 + 0.38 * box.width, box.y0),
        (box.x0 + 0.38 * box.width + lean, box.y1),
        (box.x0 + 0.15 * box.width + lean, box.y1),
    )
    return (ground, body, Tint(points=streak, colour="#ffffff", alpha=0.45))
