"""One language, three layers: the tool's defaults, the house file, the design; the later wins."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from parametric.catalog.defaults import BAND_DEFAULTS, DEFAULTS, INCH_DEFAULTS, Default
from parametric.design.answers import stop
from parametric.design.language import (
    DOOR_KEYS,
    KINDS,
    OWN_NAMES,
    full_heading,
    keys_of,
    split_heading,
)
from parametric.design.layer import Layer
from parametric.design.leaf import INFILLS, RAILS
from parametric.names import nearest
from parametric.problems import Problem
from parametric.units import Unit
from parametric.written import Branch, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class Layers:
    """The files of one job, the lowest first; the tool's defaults lie below them."""

    house: Layer | None
    design: Layer

    @property
    def files(self) -> tuple[Layer, ...]:
        """House, then design."""
        return (self.design,) if self.house is None else (self.house, self.design)

    def names(self, kind: str) -> tuple[str, ...]:
        """Every name a kind stands under in either file, the design's first; "" for none."""
        return tuple(dict.fromkeys(n for layer in reversed(self.files) for n in layer.names(kind)))


def merge(layers: Layers, kind: str, name: str, problems: list[Problem]) -> Branch:
    """One block out of all layers, key by key; a list is replaced whole.

    From the bottom: the tool's defaults, the house's unnamed block of the kind, the block
    it is `like`, the house's block of this name, the design's. What the block's own `kind`
    decides (`door bypass`) is filled in last, under everything that was written.
    """
    written = [*_habits(layers, kind, name), *_named(layers, kind, name, (), problems)]
    merged = Branch(full_heading(kind, name), layers.design.first)
    _put(merged, _defaults(kind, layers.design.unit))
    word = _kind_word(written, merged)
    if word is None and name in OWN_NAMES.get(kind, ()):
        word = name
        merged["kind"] = Text(word, origin="assumed")
        merged.origins["kind"] = "assumed"
    for tree in written:
        if kind in KINDS and _of_another_kind(tree, word, layers):
            continue
        _make_way(merged, tree, kind)
        _put(merged, tree, leave=_leave(tree, kind, word, layers))
        merged.here = tree.here
    if word is not None:
        below = _defaults(f"{kind} {word}", layers.design.unit)
        _put(below, merged)
        below.heading, below.here = merged.heading, merged.here
        merged = below
    if written and isinstance(other := written[-1].get("like"), Text):
        merged["like"] = other
        merged.lines["like"] = other.where
    if kind == "leaf":
        _leaf_habits(merged, layers)
    if kind in _LAID_BESIDE and isinstance(merged.get("left to right"), list):
        beside = _LAID_BESIDE[kind]
        merged["left to right"] = [beside(line, layers) for line in merged["left to right"]]
    return merged


def _bay(line: Any, layers: Layers) -> Any:
    """A line that calls a bay by its heading, with what stands in that bay laid beside its size."""
    if not isinstance(line, Branch) or "top to bottom" in line:
        return line
    called = next((key for key in line if split_heading(key, ("bay",))), None)
    if called is None or (name := called.removeprefix("bay").strip()) not in layers.names("bay"):
        return line
    whole = _renamed(line, called, "bay")
    bay = merge(layers, "bay", name, [])
    for key in bay:
        if key not in ("like", "note", *whole):
            whole[key] = bay[key]
            whole.lines[key] = bay.lines.get(key)
            whole.origins[key] = bay.origins.get(key, "assumed")
    return whole


def _cabinet(line: Any, layers: Layers) -> Any:
    """A line of a run that calls a cabinet by its heading, as its size and the name it calls."""
    if not isinstance(line, Branch):
        return line
    called = next((key for key in line if split_heading(key, ("cabinet",))), None)
    if called is None or (name := called.removeprefix("cabinet").strip()) not in layers.names(
        "cabinet"
    ):
        return line
    whole = _renamed(line, called, "cabinet")
    whole["called"] = Text(name, where=line.lines.get(called))
    return whole


def _renamed(line: Branch, called: str, word: str) -> Branch:
    """A line's keys, the one that calls a block as the word alone."""
    whole = Branch(line.heading, line.here)
    for key, value in line.items():
        own = word if key == called else key
        whole[own] = value
        whole.lines[own] = line.lines.get(key)
        whole.origins[own] = line.origins.get(key, "assumed")
    return whole


_LAID_BESIDE: Mapping[str, Callable[[Any, Layers], Any]] = MappingProxyType(
    {"door": _bay, "cabinet": _bay, "run": _cabinet}
)
"""What a line that calls a block by its heading becomes, by the kind of the list's own block."""


def _habits(layers: Layers, kind: str, name: str) -> Iterator[Branch]:
    """The house's unnamed block, which lies under every block of its kind."""
    tree = layers.house.blocks.get((kind, "")) if layers.house and name else None
    if isinstance(tree, Branch):
        yield tree


def _leaf_habits(leaf: Branch, layers: Layers) -> None:
    """A leaf's lines with what they take beside their size; its sight edges as the design has them.

    Where the design has a sticking without a name, every leaf that says nothing uses it.
    """
    if isinstance(leaf.get("top to bottom"), list):
        leaf["top to bottom"] = [_band(line) for line in leaf["top to bottom"]]
    if leaf.origins.get("sticking") == "assumed" and "" in layers.design.names("sticking"):
        for of in (leaf, leaf.lines, leaf.origins):
            del of["sticking"]


_FARTHEST = 20
"""How many blocks may be like one another in a row; nobody can follow more."""


def _named(
    layers: Layers, kind: str, name: str, above: tuple[str, ...], problems: list[Problem]
) -> Iterator[Branch]:
    """A block's own keys in both files, each after whatever it is like."""
    for layer in layers.files:
        tree = layer.blocks.get((kind, name))
        if not isinstance(tree, Branch):
            continue
        other = tree.get("like")
        if isinstance(other, Text):
            too_far = len(above) >= _FARTHEST
            if too_far or str(other) in (*above, name) or str(other) not in layers.names(kind):
                problems.append(_no_such_like(layers, kind, tree, other, (*above, name)))
            else:
                yield from _named(layers, kind, str(other), (*above, name), problems)
        yield tree


def _no_such_like(
    layers: Layers, kind: str, tree: Branch, other: Text, seen: tuple[str, ...]
) -> Problem:
    if len(seen) > _FARTHEST:
        message = f'"{tree.heading}" is like a block that is like another, over {_FARTHEST} deep.'
        fix = "Write the keys out."
    elif str(other) in seen:
        message = f'"{tree.heading}" ends up being like itself.'
        fix = "Take one `like` away."
    else:
        near = nearest(other, [n for n in layers.names(kind) if n])
        message = f'"{tree.heading}" is like "{other}", but there is no "{kind} {other}".'
        message += f' Did you mean "{near}"?' if near else ""
        fix = f"Write `like: {near}`." if near else "Write that block, or take `like` away."
    return stop(
        "like_unknown",
        message,
        other.where,
        about=tree.heading,
        found=str(other),
        allowed=", ".join(n for n in layers.names(kind) if n and n not in seen) or "no like",
        fix=fix,
    )


def _kind_word(written: list[Branch], defaults: Branch) -> str | None:
    """The word after `kind`, from the latest layer that says one."""
    for tree in (*reversed(written), defaults):
        if isinstance(word := tree.get("kind"), Text):
            return str(word)
    return None


def _in_house(tree: Branch, layers: Layers) -> bool:
    return layers.house is not None and any(tree is b for b in layers.house.blocks.values())


def _of_another_kind(tree: Branch, word: str | None, layers: Layers) -> bool:
    """A habit of the house for flat panels says nothing about a raised one."""
    own = tree.get("kind")
    return isinstance(own, Text) and str(own) != word and _in_house(tree, layers)


def _leave(tree: Branch, kind: str, word: str | None, layers: Layers) -> tuple[str, ...]:
    """Habits of the house that are for other kinds of the block: of doors, of pulls."""
    if kind not in KINDS or not _in_house(tree, layers):
        return ()
    keys = DOOR_KEYS if kind == "door" else {w: keys_of(spec) for w, spec in KINDS[kind].items()}
    own = keys.get(word or "", ())
    return tuple(key for others in keys.values() for key in others if key not in own)


def _put(merged: Branch, tree: Branch, leave: tuple[str, ...] = ()) -> None:
    for key, value in tree.items():
        if key != "like" and key not in leave:
            merged[key] = value
            merged.lines[key] = tree.lines.get(key)
            merged.origins[key] = tree.origins.get(key, "assumed")


_SHAPES: Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]] = MappingProxyType(
    {
        "door": (("left to right",), ("top to bottom",)),
        "cabinet": (("left to right",), ("top to bottom", "inside", "shelves")),
    }
)
"""Two ways to say what stands in a block, of which it takes one: as bays, or as one bay."""


def _make_way(merged: Branch, tree: Branch, kind: str) -> None:
    """A list that is written replaces the other shape of list that lay under it, by `like` or habit."""
    one, other = _SHAPES.get(kind, ((), ()))
    for own, others in ((one, other), (other, one)):
        if not any(isinstance(tree.get(key), list) for key in own) or any(
            k in tree for k in others
        ):
            continue
        for key in others:
            for of in (merged, merged.lines, merged.origins):
                of.pop(key, None)


def _defaults(heading: str, unit: Unit) -> Branch:
    """The tool's own for a heading; a design in inches is printed on paper cut in inches."""
    tree = Branch(heading, None)
    habits = dict(DEFAULTS.get(heading, {}))
    if unit == "inch":
        habits.update(INCH_DEFAULTS.get(heading, {}))
    for key, default in habits.items():
        tree[key] = _as_written(default)
        tree.origins[key] = "assumed"
    return tree


def _as_written(default: Default) -> Any:
    if isinstance(default.text, str):
        return Text(default.text, origin="assumed", source=default.source)
    return [Text(text, origin="assumed", source=default.source) for text in default.text]


def _band(line: Any) -> Any:
    """A line of the leaf's list with what it takes beside its size when nothing is said."""
    if not isinstance(line, Branch):
        return line
    rail = any(key in RAILS for key in line)
    infill = any(key in INFILLS for key in line)
    if rail == infill:
        return line
    whole = Branch(line.heading, line.here)
    for key, default in BAND_DEFAULTS["rail" if rail else "infill"].items():
        whole[key] = _as_written(default)
        whole.origins[key] = "assumed"
    _put(whole, line)
    return whole
