"""An outline without holes as triangles, for pictures."""

from __future__ import annotations

from collections.abc import Sequence

Flat = tuple[float, float]


def triangles_of(outline: Sequence[Flat]) -> list[tuple[int, int, int]]:
    """An outline without holes, counter-clockwise, as triangles: one corner cut off after the other.

    Source: Meisters, Polygons have ears, American Mathematical Monthly 82 (1975), from memory.
    """
    left = list(range(len(outline)))
    found = []
    while len(left) > 3:
        ear = next(
            (
                k
                for k in range(len(left))
                if _is_ear(outline, left[k - 1], left[k], left[(k + 1) % len(left)], left)
            ),
            0,  # corners in one line: whichever goes, nothing is lost
        )
        found.append((left[ear - 1], left[ear], left[(ear + 1) % len(left)]))
        del left[ear]
    return [*found, (left[0], left[1], left[2])]


def _is_ear(outline: Sequence[Flat], a: int, b: int, c: int, left: list[int]) -> bool:
    """Whether the corner between two others can be cut off: it turns out, and nothing lies in it."""
    one, two, three = outline[a], outline[b], outline[c]
    if twice_area(one, two, three) <= 0:
        return False
    return not any(
        min(twice_area(one, two, p), twice_area(two, three, p), twice_area(three, one, p)) > 0
        for p in (outline[i] for i in left if i not in (a, b, c))
    )


def twice_area(a: Flat, b: Flat, c: Flat) -> float:
    """Twice the area of a triangle; more than 0 where it turns to the left."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
