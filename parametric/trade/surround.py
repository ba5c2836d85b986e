"""What is pictured round an opening that doors are hung in: its lining, the stop behind them, casings.

It is scenery, as the skirting is: hung doors have a frame about them that stands already, and a
picture without it would float. Nothing of it is made or sold.

seen from above
 casing |####|                wall
 =======|lining |  stop
        |       |__|____leaf____
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.room import CARCASS, CASING
from parametric.hangings.hanging import Case
from parametric.resolve.door import Door
from parametric.trade.standing import comes_towards

Point = tuple[float, float]
_BURIED = 10.0
"""How far its feet run on into the floor, mm."""
_WITHIN = 0.2
"""How far the lining stands in from the wall's own reveal, mm, so that it is what is seen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prism:
    """A piece of it: an outline seen from the front, X and Z, from one Y to another, mm."""

    outline: tuple[Point, ...]
    near: float
    far: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Surround:
    """All of it; `casing` is what is seen of it from the front: left, head and right, and of a
    case its bottom.
    """

    lining: tuple[Prism, ...]
    casing: tuple[Prism, ...]
    beyond: tuple[Prism, ...]

    @property
    def reach(self) -> tuple[float, float]:
        """From the left of it to the right, mm."""
        across = [x for piece in self.casing for x, _ in piece.outline]
        return min(across), max(across)

    @property
    def pieces(self) -> tuple[Prism, ...]:
        """Every piece."""
        return (*self.lining, *self.casing, *self.beyond)


def surround(door: Door, wall: float) -> Surround | None:
    """What stands round doors that swing within their opening, or that go into the wall beside
    it; None round any other.

    Args:
        door: the door.
        wall: how thick its wall is pictured, mm.
    """
    hanging = door.hanging
    if hanging.case is not None:
        return _case(door, hanging.case)
    if hanging.on_wall:
        return None
    outline = door.opening.outline()
    if goes_into_wall(door):
        face = (0.0, CASING.wide)
        return Surround(
            lining=(),
            casing=_round(outline, *face, -CASING.thick, 0.0),
            beyond=_round(outline, *face, wall, wall + CASING.thick),
        )
    if not hanging.swings:
        return None
    stop = None if hanging.head_gap is None else _stop(door, wall)
    face = (CASING.back, CASING.back + CASING.wide)
    return Surround(
        lining=(
            *_round(outline, -_WITHIN, CASING.lining, 0.0, wall),
            *(() if stop is None else _round(outline, -CASING.stop, 0.0, *stop)),
        ),
        casing=_round(outline, *face, -CASING.thick, 0.0),
        beyond=_round(outline, *face, wall, wall + CASING.thick),
    )


def _case(door: Door, case: Case) -> Surround:
    """A case's sides, ends, partitions, back and plinth: it stands, and its fronts hang on it."""
    across = [x for x, _ in door.opening.outline()]
    left, right, edge = min(across), max(across), float(case.edge)
    foot = 0.0 if door.opening.foot is None else float(door.opening.foot)
    head, low = float(door.opening.head), max(0.0, foot - edge)
    boards = [
        (left - edge, low, left + _WITHIN, head + edge),
        (left, head - _WITHIN, right, head + edge),
        (right - _WITHIN, low, right + edge, head + edge),
    ]
    if foot > low:
        boards.append((left, low, right, foot + _WITHIN))
    between = [(float(at), foot, float(at + case.partition), head) for at in case.partitions]
    deep, back = CARCASS.deep, CARCASS.deep - CARCASS.back

    def stood(x0: float, z0: float, x1: float, z1: float, near: float = -_WITHIN) -> Prism:
        return Prism(outline=((x0, z0), (x1, z0), (x1, z1), (x0, z1)), near=near, far=deep)

    return Surround(
        lining=(
            *(stood(*board) for board in between),
            stood(left - edge, low, right + edge, head + edge, near=back),
            *(() if low == 0.0 else (stood(left, -_BURIED, right, low, near=CARCASS.plinth_in),)),
        ),
        casing=tuple(stood(*board) for board in boards),
        beyond=(),
    )


def goes_into_wall(door: Door) -> bool:
    """Whether what is in the opening is wider than it is: it slides within the wall."""
    return not door.hanging.on_wall and float(door.hanging.cover) > float(door.opening.clear) + 1.0


def _stop(door: Door, wall: float) -> tuple[float, float] | None:
    """The two faces of what the leaves shut against, on the side that they do not open to."""
    leaf = door.leaves[0]
    half, y = float(leaf.thickness) / 2, -float(leaf.hung.plane)
    if comes_towards(leaf):
        near, far = y + half, min(y + half + CASING.stop_wide, wall)
    else:
        near, far = max(y - half - CASING.stop_wide, 0.0), y - half
    return (near, far) if near < far else None


def _round(
    outline: tuple[Point, ...], inner: float, outer: float, near: float, far: float
) -> tuple[Prism, ...]:
    """Left, head and right, mitred at the corners, between two distances outside the opening."""
    within, without = _off(outline, inner), _off(outline, outer)
    half = len(outline) // 2
    return tuple(
        Prism(outline=(*within[a:b], *reversed(without[a:b])), near=near, far=far)
        for a, b in ((0, half), (half - 1, half + 1), (half, len(outline)))
    )


def _off(outline: tuple[Point, ...], by: float) -> tuple[Point, ...]:
    """The opening's line moved outwards, its feet run on."""
    half = len(outline) // 2
    moved = []
    for index, (x, z) in enumerate(outline):
        left = index < half
        across = x - by if left else x + by
        if index in (half - 1, half):
            moved.append((across, z + by))
        elif index in (0, len(outline) - 1):
            moved.append((across, z - _BURIED))
        else:
            moved.append((across, z))
    return tuple(moved)
