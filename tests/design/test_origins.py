"""Every number of a design stands on the line it names, and says which layer it came from."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from parametric.design import Design, load
from parametric.design.starters import new_design, new_house
from parametric.figures import Figure
from parametric.job import check
from parametric.units import DENSITY, MASS, PERCENT, NotALength, NotAMeasure, read_length
from parametric.written import Group


def numbers(node: Any, key: str = "") -> Iterator[tuple[str, Figure]]:
    """Every Figure in a block, with the key it stands under."""
    if isinstance(node, Figure):
        yield key, node
    elif isinstance(node, Group):
        for name in type(node).model_fields:
            yield from numbers(getattr(node, name), name.rstrip("_").replace("_", " "))
    elif dataclasses.is_dataclass(node) and not isinstance(node, type):
        for field in dataclasses.fields(node):
            yield from numbers(getattr(node, field.name), key)
    elif isinstance(node, Mapping):
        for value in node.values():
            yield from numbers(value, key)
    elif isinstance(node, (tuple, list)):
        for item in node:
            yield from numbers(item, key)


def on(line: str, figure: Figure) -> bool:
    """Whether some piece of a line, read by itself, is that number."""
    bare = re.sub(r"(?:^| )#.*$", "", line)
    for piece in re.split(r"[{}\[\],:]| x ", bare):
        text = piece.strip()
        for read in (
            lambda t: float(read_length(t, "mm")),
            lambda t: float(PERCENT.read(t)),
            lambda t: float(MASS.read(t)),
            lambda t: float(DENSITY.read(t)),
            lambda t: float(t.split(" m2 per litre")[0]),
        ):
            try:
                if read(text) == figure:
                    return True
            except (NotALength, NotAMeasure, ValueError):
                continue
    return False


def check_all(design: Design, folders: dict[str, Path]) -> dict[str, int]:
    """How many numbers came from each layer; each of them looked up on its line."""
    counted: dict[str, int] = {}
    for (kind, _), block in design.blocks.items():
        for key, figure in numbers(block):
            counted[figure.origin] = counted.get(figure.origin, 0) + 1
            if figure.origin == "assumed":
                assert figure.where is None
                assert figure.source, (kind, key)
                continue
            assert figure.where is not None, (kind, key)
            lines = folders[figure.where.file].read_text(encoding="utf-8").splitlines()
            assert on(lines[figure.where.line - 1], figure), (kind, key, figure, figure.where)
            layer = "house" if figure.where.file == "house.yaml" else "design"
            measured = kind == "survey"
            assert (
                figure.origin
                == {
                    "house": "house",
                    "design": "measured" if measured else "chosen",
                }[layer]
            ), (kind, key)
    return counted


def test_larch_hill(reading_room: Path) -> None:
    design = load(reading_room, user_house=False).design
    assert design is not None
    folders = {"design.yaml": reading_room, "house.yaml": reading_room.parents[1] / "house.yaml"}
    counted = check_all(design, folders)
    # widths 3, heights 3, board over fixing 1
    assert counted["measured"] == 7
    assert counted["house"] > 40
    assert counted["chosen"] > 40
    assert counted["assumed"] > 0


@pytest.mark.parametrize("with_house", [True, False])
def test_a_starter(tmp_path: Path, with_house: bool) -> None:
    (tmp_path / ".git").mkdir()
    paths = {name: tmp_path / name for name in ("design.yaml", "house.yaml")}
    assert new_design("bypass", paths["design.yaml"]) == ()
    if with_house:
        assert new_house(paths["house.yaml"]) == ()
    design = load(paths["design.yaml"], user_house=False).design
    assert design is not None
    assert ("house" in check_all(design, paths)) == with_house


@pytest.mark.parametrize("with_house", [True, False])
def test_a_starter_is_sound(tmp_path: Path, with_house: bool) -> None:
    """A maker who copies it and measures nothing yet is stopped by nothing."""
    (tmp_path / ".git").mkdir()
    assert new_design("bypass", tmp_path / "mine.yaml") == ()
    if with_house:
        assert new_house(tmp_path / "house.yaml") == ()
    job = check(tmp_path / "mine.yaml", user_house=False)
    assert job.resolved is not None
    assert [p.message for p in job.problems if p.level == "stop"] == []
