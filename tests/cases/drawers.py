"""Drawer boxes to try: the tool's own habits, with what a test writes over them."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.cases.drawer import DrawerBox, size_drawer
from parametric.cases.drawer_written import DRAWER_KINDS, DrawerSpec
from parametric.catalog.boards import known_board
from parametric.catalog.defaults import DEFAULTS, INCH_DEFAULTS
from parametric.figures import Figure, Where
from parametric.model import Assembly, Group, Part, Placement, State
from parametric.parts.assembly import marked
from parametric.parts.drawer import HERE, drawer_parts
from parametric.units import Unit
from parametric.written import Text

JOINTS = ("half-blind dovetail", "through dovetail", "box", "rebate", "dowel", "screw")
CUTTERS = (Figure(6.0), Figure(8.0), Figure(12.0))
SHUT = State(name="shut", open={})
WHERE = Where("design.yaml", 7)


def spec_of(keys: Mapping[str, object], unit: Unit = "mm") -> DrawerSpec:
    """A block as written; every key of its own stands in line 7 of design.yaml."""
    habits = dict(DEFAULTS["drawer"])
    word = str(keys.get("kind", "side slides"))
    habits |= DEFAULTS[f"drawer {word}"]
    if unit == "inch":
        habits |= {**INCH_DEFAULTS["drawer"], **INCH_DEFAULTS[f"drawer {word}"]}
    texts = {
        key: Text(str(habit.text), origin="assumed", source=habit.source)
        for key, habit in habits.items()
    }
    texts |= {key: Text(str(value), where=WHERE, unit=unit) for key, value in keys.items()}
    return DRAWER_KINDS[word].model_validate({**texts, "kind": word})  # type: ignore[return-value]


def box_of(
    *,
    wide: float = 753.0,
    high: float = 196.0,
    deep: float = 562.0,
    unit: Unit = "mm",
    planted: bool = True,
    **keys: object,
) -> DrawerBox:
    """A box in an opening; without more, the wardrobe's drawer of 786 x 220."""
    written = {"height": 160, "length": 550} if unit == "mm" else {}
    board = known_board("plywood", unit)
    assert board is not None
    return size_drawer(
        spec_of({**written, **{k.replace("_", " "): v for k, v in keys.items()}}, unit),
        name="leaf E / drawer",
        clear_width=Figure(wide, where=Where("design.yaml", 3)),
        clear_height=Figure(high, where=Where("design.yaml", 4)),
        clear_depth=Figure(deep, where=Where("design.yaml", 5)),
        stuff=board,
        bottom_stuff=board,
        planted=planted,
    )


def assembly_of(box: DrawerBox, at: Placement = HERE) -> Assembly:
    """The box alone, its parts marked."""
    group = Group(
        name="drawer", placement=Placement(), parts=drawer_parts(box, at=at, cutters=CUTTERS)
    )
    return Assembly(name="a drawer", groups=tuple(marked([group])), states=(SHUT,))


def part_of(box: DrawerBox, name: str) -> Part:
    """One of its parts, by the last of its name."""
    return next(p for p in drawer_parts(box, cutters=CUTTERS) if p.name.endswith(f" / {name}"))
