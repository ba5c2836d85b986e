"""Small doors made by hand that swing and fold: one leaf, two that fold, two halves.

Each leaf is 40 thick and told apart by its own sizes, with a pull near its free edge. Lengths
in mm, x from the left jamb, y away from the viewer; the pins stand 6 proud of the knuckle face,
in the middle of the gap. Turns are right-handed about z: a leaf hung on its left that comes
towards the viewer turns by less than 0.
"""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from parametric.model import Assembly, Group, Part, Placement, State, Step, Turn
from tests.solids.pair import LEFT, UP, at, made, pull

if TYPE_CHECKING:
    from parametric.solids.solid_set import Solids

THICK = 40.0
PIN = 6.0
HINGED, FOLDING, HALVES = "hinged leaf", "folding pair", "door in two halves"
NAMES = (HINGED, FOLDING, HALVES)


def board(leaf: str, width: float, height: float, pull_at: float) -> tuple[Part, ...]:
    """A stile and a board beside it, in the leaf's frame, and a pull on the front."""
    stile = made(f"{leaf} / stile", f"S{width:g}", "stile", (height, 60.0, THICK))
    rest = made(f"{leaf} / board", f"P{width:g}", "board", (height, width - 60.0, THICK))
    return (
        at(stile, (60.0, THICK, 0.0), UP, LEFT),
        at(rest, (width, THICK, 0.0), UP, LEFT),
        at(pull(f"{leaf} / pull"), (pull_at, 13.5, height / 2 - 50.0), UP, LEFT),
    )


def about(x: float, angle: float, *, away: bool = False) -> Turn:
    """A turn about an upright pin before the front faces, or behind the backs."""
    return Turn(point=(x, THICK + PIN if away else -PIN, 0.0), axis=(0.0, 0.0, 1.0), angle=angle)


def leaf(
    name: str, left: float, foot: float, size: tuple[float, float], pull_at: float, *motion: Step
) -> Group:
    """One leaf where it stands shut, flush with the wall's face."""
    return Group(
        name=name,
        placement=Placement(origin=(left, 0.0, foot)),
        parts=board(name, *size, pull_at),
        motion=motion,
    )


@functools.cache
def swinging(name: str) -> Assembly:
    """One of the three."""
    if name == HINGED:
        # 3 of gap: the pin 1.5 from the jamb; it opens past a right angle
        groups = (leaf("leaf A", 3.0, 12.0, (800.0, 2000.0), 760.0, about(1.5, -95.0)),)
        ways = {"shut": (0.0,), "half open": (0.5,), "open": (1.0,)}
    elif name == FOLDING:
        # hung on the left; the second leaf folds back on the first, on pins behind the backs
        jamb = about(1.5, -88.0)
        fold = about(505.0, 176.0, away=True)
        groups = (
            leaf("leaf A", 3.0, 10.0, (500.0, 2050.0), 40.0, jamb),
            leaf("leaf B", 507.0, 10.0, (480.0, 2050.0), 440.0, fold, jamb),
        )
        ways = {"shut": (0.0, 0.0), "half open": (0.5, 0.5), "open": (1.0, 1.0)}
    else:
        # hung on the right, opening away: the knuckles are behind
        turn = about(803.0 + 1.5, -90.0, away=True)
        groups = (
            leaf("leaf A", 3.0, 12.0, (800.0, 1000.0), 40.0, turn),
            leaf("leaf B", 3.0, 1015.0, (800.0, 985.0), 40.0, turn),
        )
        ways = {"shut": (0.0, 0.0), "upper open": (0.0, 1.0), "open": (1.0, 1.0)}
    names = [group.name for group in groups]
    states = tuple(
        State(name=state, open=dict(zip(names, far, strict=True))) for state, far in ways.items()
    )
    return Assembly(name=name, groups=groups, states=states)


@functools.cache
def solids_of(name: str) -> Solids:
    """Its solids."""
    from parametric.solids.solid_set import build_solids

    return build_solids(swinging(name).parts)
