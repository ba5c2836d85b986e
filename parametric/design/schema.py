"""The language as JSON Schema 2020-12, for editors: only what this version builds."""

from __future__ import annotations

import re
from typing import Any

from parametric.design.language import (
    BLANK_ALLOWED,
    KINDS,
    NEWEST,
    ONCE,
    PLAIN,
    RECORD_SPECS,
)
from parametric.written import Group

_DEFS = "#/$defs/{model}"


def schema() -> dict[str, Any]:
    """The schema of design files and house files.

    What a block must hold is not asked for: it may come from the house file, from the
    block it is like, or from the tool. `check` asks for it.
    """
    defs: dict[str, Any] = {}
    properties: dict[str, Any] = {
        "stilewright": {"const": NEWEST, "description": "the version of the language"},
        "job": _text("the name of the job"),
        "units": {"enum": ["mm", "inch"], "description": "what a bare number is in"},
        "revisions": _each(
            "^[A-Z]{1,2}$", _text("a date and a reason: 2026-11-19 lock rail raised")
        ),
        "accepted": _each("", _text("initials date, reason: JM 2026-11-20, client told")),
        "as built": _each("", {"type": ["string", "number"], "description": "as measured"}),
        "cut": {"type": "array", "items": {"type": "string"}},
    }
    patterns: dict[str, Any] = {}
    for kind, by_word in KINDS.items():
        shapes = [_shape(spec, defs) for spec in by_word.values()]
        _place(kind, shapes[0] if len(shapes) == 1 else {"anyOf": shapes}, properties, patterns)
    for kind, spec in PLAIN.items():
        _place(kind, _shape(spec, defs, blank=kind in BLANK_ALLOWED), properties, patterns)
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
        "$defs": dict(sorted(defs.items())),
    }


def _text(description: str) -> dict[str, Any]:
    return {"type": ["string", "number"], "description": description}


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
        patterns[f"^{re.escape(kind)}( .+)?$"] = shape


def _shape(
    spec: type[Group], defs: dict[str, Any], *, must: bool = False, blank: bool = False
) -> dict[str, Any]:
    """A Spec's keys; `blank` lets each be left empty."""
    whole = spec.model_json_schema(by_alias=True, ref_template=_DEFS)
    for name, inner in whole.pop("$defs", {}).items():
        defs[name] = _plain(inner, must=True)
    shape: dict[str, Any] = _plain(whole, must=must)
    if blank:
        shape["properties"] = {
            key: {"anyOf": [value, {"type": "null"}]} for key, value in shape["properties"].items()
        }
    return shape


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
    made = {}
    for key, value in node.items():
        if key == "properties":
            made[key] = {name: _plain(inner, must=must) for name, inner in value.items()}
        elif key == "required" and not must:
            continue
        elif key not in ("title", "default"):
            made[key] = _plain(value, must=must)
    return made
