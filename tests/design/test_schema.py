"""The exported schema, read by an independent validator of JSON Schema 2020-12 (jsonschema)."""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from ruamel.yaml import YAML
from ruamel.yaml.constructor import SafeConstructor

from parametric.design.language import KINDS, NOT_BUILT_BLOCKS, NOT_BUILT_KEYS, ONCE, PLAIN
from parametric.design.schema import schema
from parametric.design.starters import templates


class _Core(SafeConstructor):
    """YAML 1.2's core schema (section 10.3) has no dates; editors read them as text."""


_Core.add_constructor("tag:yaml.org,2002:timestamp", SafeConstructor.construct_yaml_str)


def as_an_editor_reads_it(text: str) -> Any:
    yaml = YAML(typ="safe", pure=True)
    yaml.Constructor = _Core
    return yaml.load(io.StringIO(text))


def errors(document: Any) -> list[str]:
    validator = jsonschema.Draft202012Validator(schema())
    return [error.message for error in validator.iter_errors(document)]


def test_it_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    assert schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_examples_and_starters_fit(project: Path) -> None:
    files = [*(project / "examples").rglob("*.yaml"), *templates().glob("*.yaml")]
    assert len(files) >= 4
    for path in files:
        assert errors(as_an_editor_reads_it(path.read_text(encoding="utf-8"))) == [], path


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("stiles: 120", "stlies: 120"),
        ("door:", "dor:"),
        ("kind: bypass", "kind: hinged"),
        ("hung: on the wall", "hung: inside"),
        ("- lite: equal", "- light: equal"),
        ("middle: 1824", "mid: 1824"),
        ("density: 480 kg/m3", "density: 480"),
        ("units: mm", "units: cm"),
        ("stilewright: 1 ", "stilewright: 2 "),
        ("leaves: 2", "leaves: two"),
        ("glass:", "cabinet base: {width: 900}\nglass:"),
    ],
)
def test_a_mistake_does_not(reading_room: Path, old: str, new: str) -> None:
    text = reading_room.read_text(encoding="utf-8")
    assert old in text
    assert errors(as_an_editor_reads_it(text.replace(old, new, 1)))


def test_named_headings_fit(reading_room: Path) -> None:
    text = reading_room.read_text(encoding="utf-8")
    assert errors(as_an_editor_reads_it(text.replace("\nleaf:", "\nleaf tall:", 1))) == []


def test_only_what_builds_is_in_it() -> None:
    exported = schema()
    patterns = " ".join(exported["patternProperties"])
    for kind in (*KINDS, *PLAIN):
        assert kind in (exported["properties"] if kind in ONCE else patterns)
    for kind in NOT_BUILT_BLOCKS:
        assert kind not in exported["properties"]
        assert f"^{kind}" not in patterns
    for kind, keys in NOT_BUILT_KEYS.items():
        shape = exported["properties"].get(kind) or exported["patternProperties"][f"^{kind}( .+)?$"]
        assert not set(keys) & set(shape["properties"])


def test_every_key_says_what_it_takes() -> None:
    """A description, a list of words, or both: what an editor shows beside the key."""
    exported = schema()

    def told(shape: dict[str, Any]) -> bool:
        if {"description", "enum", "const", "$ref"} & set(shape):
            return True
        if "anyOf" in shape:
            return all(told(choice) for choice in shape["anyOf"])
        return told(shape.get("items") or shape.get("additionalProperties") or {})

    shapes = [*exported["patternProperties"].values(), *exported["$defs"].values()]
    for shape in (s for s in shapes if "properties" in s):
        for key, value in shape["properties"].items():
            assert told(value), key
