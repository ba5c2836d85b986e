"""The layer names of a workshop taken apart again: what kind of cut, how deep, which cutter."""

from __future__ import annotations

import re
from dataclasses import dataclass

from parametric.catalog.layer_names import LayerNames

_DIGITS = r"[0-9]+"


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerSaid:
    """What the name of a layer says; `depth` is None of a cut right through, mm."""

    kind: str
    depth: float | None
    cutter: float | None


def layer_pattern(names: LayerNames) -> str:
    """An expression, without groups, that fits every name of a layer of cuts."""
    sunk = _joined(names, "(?:" + "|".join(map(re.escape, _sunk(names))) + ")", through=False)
    return f"(?:{sunk}|{_joined(names, re.escape(names.through), through=True)})"


def read_layer(name: str, names: LayerNames) -> LayerSaid | None:
    """What a layer's name says, None when it is none of this workshop's."""
    kinds = {word: kind for kind, word in _kinds(names)}
    for word, kind in kinds.items():
        through = kind == "cut_through"
        found = re.fullmatch(_joined(names, re.escape(word), through=through, keep=True), name)
        if found is not None:
            said = found.groupdict()
            return LayerSaid(
                kind=kind,
                depth=_mm(said.get("depth"), names),
                cutter=_mm(said.get("cutter"), names),
            )
    return None


def _kinds(names: LayerNames) -> tuple[tuple[str, str], ...]:
    return (
        ("slot", names.slot),
        ("pocket", names.pocket),
        ("groove", names.groove),
        ("bore", names.bore),
        ("cut_through", names.through),
    )


def _sunk(names: LayerNames) -> list[str]:
    return [word for kind, word in _kinds(names) if kind != "cut_through"]


def _joined(names: LayerNames, word: str, *, through: bool, keep: bool = False) -> str:
    """The parts of a name in their order; the sizes as named groups when they are wanted."""
    size = f"{_DIGITS}(?:{re.escape(names.decimal_sign)}{_DIGITS})?"
    marks = {"depth": names.depth_mark, "cutter": names.cutter_mark}
    parts = []
    for part in names.order:
        if part == "kind":
            parts.append(word)
        elif part == "cutter" or not through:
            parts.append(re.escape(marks[part]) + (f"(?P<{part}>{size})" if keep else size))
    return re.escape(names.between).join(parts)


def _mm(text: str | None, names: LayerNames) -> float | None:
    return None if text is None else float(text.replace(names.decimal_sign, "."))
