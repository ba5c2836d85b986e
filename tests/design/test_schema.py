"""The exported schema, read by an independent validator of JSON Schema 2020-12 (jsonschema)."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from ruamel.yaml import YAML
from ruamel.yaml.constructor import SafeConstructor

from parametric.design.language import KINDS, NOT_BUILT_BLOCKS, NOT_BUILT_KEYS, ONCE, PLAIN
from parametric.design.schema import schema
from parametric.design.starters import templates
from tests.design.written_files import PLAIN as SMALLEST
from tests.design.written_files import changed


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


def test_a_moulding_named_for_its_kind_need_not_say_it(project: Path) -> None:
    text = (project / "tests/designs/old/version-1-moulded.yaml").read_text(encoding="utf-8")
    assert "sticking ovolo: {width" in text
    assert errors(as_an_editor_reads_it(text)) == []
    assert errors(as_an_editor_reads_it(text.replace("sticking ovolo:", "sticking mine:")))
    assert errors(as_an_editor_reads_it(text.replace("{width: 13", "{wide: 13")))


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


WITHOUT = [
    ("  kind: bypass\n", ""),
    ("  widths: {top: 1826, middle: 1824, bottom: 1829}\n", ""),
    ("  timber: tulipwood\n", ""),
    ("  stiles: 120\n", ""),
    ("  slot: 12 x 62 x 46               # wide x long x deep, in each of the two parts\n", ""),
    ("  bevel run: 75\n", ""),
    ("kind: toughened, ", ""),
    ("off wall: 86, ", ""),
    ("body corner: 3, ", ""),
    ("groove: 9 x 18, ", ""),
]


@pytest.mark.parametrize(("old", "new"), WITHOUT)
def test_what_nobody_else_can_say_is_asked_for(reading_room: Path, old: str, new: str) -> None:
    """`check` asks for the same, since the house of the examples holds none of it."""
    text = reading_room.read_text(encoding="utf-8")
    assert old in text
    found = errors(as_an_editor_reads_it(text.replace(old, new, 1)))
    assert len(found) == 1
    assert found[0].endswith("is a required property")


def test_what_the_tool_has_a_habit_for_is_not() -> None:
    """The smallest design that builds fits, and so does one that is like another."""
    assert errors(as_an_editor_reads_it(SMALLEST)) == []
    like = changed(SMALLEST, ("leaf:\n", "leaf short: {like: plain, stiles: 90}\nleaf plain:\n"))
    assert errors(as_an_editor_reads_it(like)) == []


def test_a_file_of_records_and_a_house_need_no_design() -> None:
    head = "stilewright: 1\nunits: mm\n"
    for text in ("cut: [A stiles]\n", "pull: {fit: 0.3}\ndoor: {floor gap: 9}\n"):
        assert errors(as_an_editor_reads_it(head + text)) == []


@pytest.mark.parametrize(
    "line",
    [
        "- {top rail: 120, lite: rest}",
        "- {tenons: 2}",
        "- {top rail: 120, underside: vault}",
        "- {lite: rest, wide: two}",
        "- {lite: rest, of: clear}",
        "- top rail",
    ],
)
def test_a_line_of_the_list_that_is_none(reading_room: Path, line: str) -> None:
    text = changed(reading_room.read_text(encoding="utf-8"), ("- top rail: 120", line))
    assert errors(as_an_editor_reads_it(text))


@pytest.mark.parametrize(
    ("record", "fits"),
    [
        ("revisions: {A: 2026-11-04 first issue}", True),
        ("revisions: {A: first issue}", False),
        ("revisions: {a: 2026-11-04 first issue}", False),
        ("accepted: {glass not safety: 'JM 2026-11-20, client told'}", True),
        ("accepted: {glass not safety: ok}", False),
        ("approved: {revision: B, fingerprint: 7C1F-04AB, by: client, date: 2026-11-20}", True),
        ("approved: {revision: B, by: client, date: 2026-11-20}", False),
    ],
)
def test_records(record: str, fits: bool) -> None:
    assert (errors(as_an_editor_reads_it(SMALLEST + record + "\n")) == []) == fits


def test_patterns_are_those_of_any_editor() -> None:
    """ECMA-262, 22.2.1: with the u flag only these signs may follow a backslash."""
    patterns: list[str] = []

    def walk(node: Any) -> None:
        if isinstance(node, dict):
            patterns.extend(node.get("patternProperties", ()))
            patterns.extend(v for k, v in node.items() if k == "pattern" and isinstance(v, str))
            for value in node.values():
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    walk(schema())
    assert len(patterns) > 20
    for pattern in patterns:
        for escaped in re.findall(r"\\(.)", pattern):
            assert escaped in "^$\\.*+?()[]{}|/dDsSwWbB", pattern


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
        for one in shape.get("anyOf", [shape]):
            assert not set(keys) & set(one["properties"])


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
