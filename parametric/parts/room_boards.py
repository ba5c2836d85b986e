"""Boards that stand in a room rather than in a case: fillers, plinths, counters, frames."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.cases.case import Lies
from parametric.cases.plan_boards import turned_points
from parametric.figures import named
from parametric.model import Blank, Cut, Face, Material, Part, Placement
from parametric.names import join
from parametric.parts.cases import FOOT_UP, WAYS
from parametric.parts.planned import turned_way


def room_board(
    name: str,
    noun: str,
    material: Material,
    size: tuple[float, float, float],
    at: tuple[float, float, float],
    lies: Lies,
    cuts: Sequence[Cut] = (),
    supplied: bool = False,
    turn: float = 0.0,
) -> Part:
    """One board where it stands, x from the left foot of the opening.

    Args:
        name: its name.
        noun: what the shop calls it.
        material: what it is made of.
        size: length along the grain, width, thickness, mm.
        at: its low corner in the room, mm.
        lies: which way it lies.
        cuts: what is cut into it.
        supplied: whether it is bought to size.
        turn: how far it is turned about its low corner, deg, round to the left from above.
    """
    length, width, thickness = size
    x, y, z = at
    if lies == "facing, level":
        (dx, dy), *_ = turned_points([(0.0, float(thickness))], turn)
        x, y = x + dx, y + dy
    along, across = (turned_way(way, turn) for way in WAYS[lies])
    return Part(
        name=name,
        noun=noun,
        mark="Y",
        material=material,
        blank=Blank(
            length=named(join(name, "length"), length),
            width=named(join(name, "width"), width),
            thickness=thickness,
        ),
        placement=Placement(origin=(float(x), float(y), float(z)), x=along, y=across),
        cuts=tuple(cuts),
        faces=_faces(lies),
        supplied=supplied,
    )


def _faces(lies: Lies) -> dict[Face, str]:
    """What the shop calls its sides."""
    match lies:
        case "facing":
            return {**FOOT_UP, "low face": "front"}
        case "facing, level":
            return {"high face": "front"}
        case "level":
            return {"high face": "upper face"}
        case _:
            return {"low face": "front"}


def sheet_of(name: str, density: float) -> Material:
    """Sheet material of that name and density, kg/m3."""
    return Material(name=name, look="board", density=density)
