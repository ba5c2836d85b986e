"""Cabinets seen from the front as a plain drawing: every piece in outline, what is nearer over the rest.

It stands on the client's page until the picture is there, and where there can be none.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from parametric.model import Assembly, Vector
from parametric.names import join

Flat = tuple[float, float]
_ROUND = 120.0
"""Room left round it, mm."""
_CUT = "drawer"
"""What of a front's name is its box: behind it, and never drawn."""


def case_front(
    assembly: Assembly, outlines: Sequence[Sequence[Flat]], floor: Sequence[Flat]
) -> str:
    """The drawing as SVG, a millimetre to the unit, with what its places are in the job.

    Args:
        assembly: all parts, shut.
        outlines: each niche from the left foot up, over and down, mm.
        floor: the floor from left to right, mm.
    """
    pieces: list[tuple[float, list[Flat]]] = []
    for group in assembly.groups:
        for part in group.parts:
            if part.name.startswith(join(group.name, _CUT)):
                continue
            corners: list[Vector] = [
                group.placement.point(part.placement.point(local))
                for local in itertools.product(
                    (0.0, float(part.finished[0])),
                    (0.0, float(part.blank.width)),
                    (0.0, float(part.blank.thickness)),
                )
            ]
            pieces.append((min(y for _, y, _ in corners), _hull([(x, z) for x, _, z in corners])))
    pieces.sort(key=lambda piece: -piece[0])
    every = [
        *(p for outline in outlines for p in outline),
        *floor,
        *(p for _, piece in pieces for p in piece),
    ]
    left, right = min(x for x, _ in every) - _ROUND, max(x for x, _ in every) + _ROUND
    low, high = min(z for _, z in every) - _ROUND, max(z for _, z in every) + _ROUND
    drawn = "".join(_path(piece, closed=True) for _, piece in pieces)
    room = "".join(_path(line, closed=False) for line in (*outlines, floor) if line)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" '
        f'viewBox="{left:.1f} {-high:.1f} {right - left:.1f} {high - low:.1f}" '
        'data-zero="0 0" data-mm="1">'
        '<g fill="#fff" stroke="#18211f" stroke-width="3" stroke-linejoin="round">'
        f'{drawn}</g><g fill="none" stroke="#18211f" stroke-width="8">{room}</g></svg>'
    )


def _path(line: Sequence[Flat], *, closed: bool) -> str:
    points = "L".join(f"{x:.1f} {-z + 0.0:.1f}" for x, z in line)
    return f'<path d="M{points}{"Z" if closed else ""}"/>'


def _hull(points: Sequence[Flat]) -> list[Flat]:
    """The outline round points. Source: Andrew's monotone chain, 1979."""
    found = sorted({(round(x, 3), round(z, 3)) for x, z in points})

    def half(ordered: Sequence[Flat]) -> list[Flat]:
        chain: list[Flat] = []
        for p in ordered:
            while len(chain) > 1 and _turn(chain[-2], chain[-1], p) <= 0:
                chain.pop()
            chain.append(p)
        return chain[:-1]

    return [*half(found), *half(found[::-1])]


def _turn(a: Flat, b: Flat, c: Flat) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
