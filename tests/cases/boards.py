"""Boring to try: the tool's own habits, with what a test writes over them; and boards to bore."""

from __future__ import annotations

from typing import Literal

from parametric.cases.boring import BoringSpec
from parametric.catalog.defaults import DEFAULTS
from parametric.figures import Figure, Where
from parametric.model import Blank, Cut, Drilled, Material, Part, Placement, Vector, face_point
from parametric.written import Text

WHERE = Where("design.yaml", 7)
BOARD = Material(name="plywood", look="board", density=650)
Lies = Literal["upright", "level"]
_WAYS: dict[Lies, tuple[Vector, Vector]] = {
    "upright": ((0.0, 0.0, 1.0), (0.0, 1.0, 0.0)),
    "level": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
}


def boring(**keys: object) -> BoringSpec:
    """A block as written; every key of its own stands in line 7 of design.yaml."""
    texts = {
        key: Text(str(habit.text), origin="assumed", source=habit.source)
        for key, habit in DEFAULTS["boring"].items()
    }
    written = {k.replace("_", " "): Text(str(v), where=WHERE) for k, v in keys.items()}
    return BoringSpec.model_validate({**texts, **written})


def mm(value: float) -> Figure:
    return Figure(value, where=Where("design.yaml", 3))


def board(name: str, lies: Lies, size: Vector, low: Vector, *cuts: Cut) -> Part:
    """A board in its case: an upright one's thickness runs to the left of its own frame.

    `low` is the corner of it that is lowest, leftmost and nearest the front.
    """
    length, width, thickness = size
    x, y = _WAYS[lies]
    left = low[0] + thickness if lies == "upright" else low[0]
    return Part(
        name=name,
        noun=name,
        mark="C1",
        material=BOARD,
        blank=Blank(length=length, width=width, thickness=thickness),
        placement=Placement(origin=(left, low[1], low[2]), x=x, y=y),
        cuts=cuts,
    )


def ends_of(part: Part, cut: Drilled) -> list[tuple[Vector, Vector]]:
    """Of each hole where its axis begins and ends, in the case."""

    def at(u: float, v: float, depth: float) -> Vector:
        point = face_point(cut.face, part.blank, u, v, depth)
        x, y, z = part.placement.point(point)
        return (round(x, 6), round(y, 6), round(z, 6))

    return [(at(u, v, float(cut.surface)), at(u, v, float(cut.depth))) for u, v in cut.places]
