"""The language as JSON Schema 2020-12, for editors: only what this version builds."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from parametric.catalog.defaults import DEFAULTS
from parametric.design.language import (
    BLANK_ALLOWED,
    KINDS,
    NEWEST,
    ONCE,
    OPTION_TAKES,
    OWN_NAMES,
    PLAIN,
    RECORD_SPECS,
)
from parametric.design.leaf import INFILLS, RAILS, Band
from parametric.design.options import LONGEST
from parametric.written import Group, spoken

_DEFS = "#/$defs/{model}"
_DATE = "[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])"

BAND_NOT_BUILT: tuple[str, ...] = ("of",)
"""Keys of a leaf's list that `check` answers as not built yet."""


def schema() -> dict[str, Any]:
    """The schema of design files, house files and files of records.

    A file with a survey is a design, and its blocks are asked for whatever the tool has no
    habit for, unless they are like another. A house may hold that too: `check` is then
    content, and is the one to believe.
    """
    defs: dict[str, Any] = {}
    properties: dict[str, Any] = {
        "stilewright": {"const": NEWEST, "description": "the version of the language"},
        "job": {"type": ["string", "number"], "description": "the name of the job"},
        "units": {"enum": ["mm", "inch"], "description": "what a bare number is in"},
        "revisions": _each(
            "^[A-Z]{1,2}$",
            _line(f"^{_DATE} +\\S", "a date and a reason: 2026-11-19 lock rail raised"),
        ),
        "accepted": _each(
            "",
            _line(
                f"^\\S{{1,8}} {_DATE}, +\\S", "initials date, reason: JM 2026-11-20, client told"
            ),
        ),
        "as built": _each("", {"type": ["string", "number"], "description": "as measured"}),
        "cut": {"type": "array", "items": {"type": "string"}},
    }
    patterns: dict[str, Any] = {}
    whole: dict[str, Any] = {}
    for kind, by_word in KINDS.items():
        shapes = [_shape(spec, defs) for spec in by_word.values()]
        _place(kind, shapes[0] if len(shapes) == 1 else {"anyOf": shapes}, properties, patterns)
        needs = [need for word, spec in by_word.items() for need in _needs(kind, word, spec)]
        if "kind" not in DEFAULTS.get(kind, ()):
            needs.append({"if": {"not": {"required": ["like"]}}, "then": {"required": ["kind"]}})
        headings = _headings(kind, but=OWN_NAMES.get(kind, ()))
        whole |= {headings: {"allOf": needs}} if needs else {}
    for kind, spec in PLAIN.items():
        _place(kind, _shape(spec, defs, blank=kind in BLANK_ALLOWED), properties, patterns)
        needs = _needs(kind, None, spec)
        whole |= {_headings(kind): needs[0]} if needs else {}
    patterns["^option [A-Z]$"] = _option(patterns)
    for kind, group in RECORD_SPECS.items():
        properties[kind] = _shape(group, defs, must=True)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Design file and house file of stilewright",
        "type": "object",
        "required": ["stilewright", "units"],
        "properties": properties,
        "patternProperties": patterns,
        "additionalProperties": False,
        "if": {"not": {"propertyNames": {"not": {"pattern": _headings("survey")}}}},
        "then": {"patternProperties": whole},
        "$defs": dict(sorted(defs.items())),
    }


def _needs(kind: str, word: str | None, spec: type[Group]) -> list[dict[str, Any]]:
    """What a block of a design must hold: every key that nobody else has a value for."""
    habits = {*DEFAULTS.get(kind, ()), *DEFAULTS.get(f"{kind} {word}", ())}
    keys = [
        key
        for name, field in spec.model_fields.items()
        if field.is_required() and (key := spoken(name)) not in habits
    ]
    own: dict[str, Any] = {"not": {"required": ["like"]}}
    if word is not None:
        own |= {"properties": {"kind": {"const": word}}}
        # a block that says no kind is of the usual one, where there is one
        usual = DEFAULTS.get(kind, {}).get("kind")
        own |= {} if usual is not None and usual.text == word else {"required": ["kind"]}
        keys = [key for key in keys if key != "kind"]
    return [{"if": own, "then": {"required": keys}}] if keys else []


def _option(patterns: Mapping[str, Any]) -> dict[str, Any]:
    """What differs in an option: its blocks may hold any of their keys, but no other opening."""
    words = {"type": "string", "description": "words"}
    blocks = {_headings(kind): patterns[_headings(kind)] for kind in OPTION_TAKES}
    doors = blocks[_headings("door")]
    kinds = [
        {**kind, "properties": {k: v for k, v in kind["properties"].items() if k != "in"}}
        for kind in doors.get("anyOf", [doors])
    ]
    return {
        "type": "object",
        "description": "another way to make the doors: the blocks and keys that differ",
        "required": ["called"],
        "properties": {
            "called": words | {"maxLength": LONGEST, "description": "what the client knows it by"},
            "like": {"type": "string", "pattern": "^[B-Z]$", "description": "another option"},
            "note": words,
        },
        "patternProperties": blocks | {_headings("door"): {**doors, "anyOf": kinds}},
        "additionalProperties": False,
    }


def _line(pattern: str, description: str) -> dict[str, Any]:
    return {"type": "string", "pattern": pattern, "description": description}


def _each(key: str, value: dict[str, Any]) -> dict[str, Any]:
    """Entries under any key, or under keys of one pattern."""
    if not key:
        return {"type": "object", "additionalProperties": value}
    return {"type": "object", "patternProperties": {key: value}, "additionalProperties": False}


def _place(
    kind: str, shape: dict[str, Any], properties: dict[str, Any], patterns: dict[str, Any]
) -> None:
    """A block by its heading: once, or with a name after it."""
    if kind in ONCE:
        properties[kind] = shape
    else:
        patterns[_headings(kind)] = shape


def _headings(kind: str, *, but: Sequence[str] = ()) -> str:
    """The headings of a kind; without the names of kinds that a block of that name need not say."""
    own = f"(?! ({'|'.join(map(re.escape, but))})$)" if but else ""
    return _everywhere(f"^{re.escape(kind)}{own}( .+)?$")


def _shape(
    spec: type[Group], defs: dict[str, Any], *, must: bool = False, blank: bool = False
) -> dict[str, Any]:
    """A Spec's keys; `blank` lets each be left empty."""
    whole = spec.model_json_schema(by_alias=True, ref_template=_DEFS)
    for name, inner in whole.pop("$defs", {}).items():
        defs[name] = _plain(inner, must=True)
        if name == Band.__name__:
            defs[name] = _one_thing_a_line(defs[name])
    shape: dict[str, Any] = _plain(whole, must=must)
    if blank:
        shape["properties"] = {
            key: {"anyOf": [value, {"type": "null"}]} for key, value in shape["properties"].items()
        }
    return shape


def _one_thing_a_line(band: dict[str, Any]) -> dict[str, Any]:
    """A line of a leaf's list names one rail or one infill, and nothing that waits yet."""
    properties = {k: v for k, v in band["properties"].items() if k not in BAND_NOT_BUILT}
    one = [{"required": [thing]} for thing in (*RAILS, *INFILLS)]
    return {**band, "properties": properties, "oneOf": one}


def _plain(node: Any, *, must: bool) -> Any:
    """Without what only the reader's own classes mean: titles, nulls, defaults."""
    if isinstance(node, list):
        return [_plain(item, must=must) for item in node]
    if not isinstance(node, dict):
        return node
    choices = node.get("anyOf")
    if isinstance(choices, list):
        kept = [choice for choice in choices if choice != {"type": "null"}]
        beside = {key: value for key, value in node.items() if key != "anyOf"}
        node = {**kept[0], **beside} if len(kept) == 1 else {**beside, "anyOf": kept}
    made: dict[str, Any] = {}
    for key, value in node.items():
        if key == "properties":
            made[key] = {name: _plain(inner, must=must) for name, inner in value.items()}
        elif key == "required" and not must:
            continue
        elif key == "pattern":
            made[key] = _everywhere(value)
        elif key == "enum" and "true" in value:
            # an editor reads the word as YAML's own truth; here it is a kind of bar
            made["enum"] = [*value, True]
        elif key == "type" and "true" in node.get("enum", ()):
            continue
        elif key not in ("title", "default"):
            made[key] = _plain(value, must=must)
    return made


def _everywhere(pattern: str) -> str:
    r"""A pattern without the escapes that editors' own regular expressions refuse, such as `\ `."""
    return re.sub(r"\\([ #&~-])", r"\1", pattern)
