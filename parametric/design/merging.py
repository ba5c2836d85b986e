"""One language, three layers: the tool's defaults, the house file, the design; the later wins."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from parametric.catalog.defaults import BAND_DEFAULTS, DEFAULTS, Default
from parametric.design.language import full_heading
from parametric.design.layer import Layer, stop
from parametric.design.leaf import INFILLS, RAILS
from parametric.names import nearest
from parametric.problems import Problem
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
        """Every name a kind stands under in either file; "" for the unnamed block."""
        return tuple(dict.fromkeys(n for layer in self.files for n in layer.names(kind)))


def merge(layers: Layers, kind: str, name: str, problems: list[Problem]) -> Branch:
    """One block out of all layers, key by key; a list is replaced whole.

    From the bottom: the tool's defaults, the house's unnamed block of the kind, the house's
    block of this name, the block it is `like`, its own keys. What the kind's own `kind`
    decides (`door bypass`) is filled in last, under everything that was written.
    """
    own = layers.design.blocks.get((kind, name))
    merged = Branch(full_heading(kind, name), own.here if isinstance(own, Branch) else None)
    _put(merged, _defaults(kind))
    if layers.house is not None:
        for key in dict.fromkeys(("", name)):
            below = layers.house.blocks.get((kind, key))
            if isinstance(below, Branch):
                _put(merged, below)
                merged.here = merged.here or below.here
    for tree in _with_likes(layers, kind, name, problems):
        _put(merged, tree)
    kind_word = merged.get("kind")
    if isinstance(kind_word, str):
        _put_under(merged, _defaults(f"{kind} {kind_word}"))
    if kind == "leaf" and isinstance(merged.get("top to bottom"), list):
        merged["top to bottom"] = [_band(line) for line in merged["top to bottom"]]
    return merged


def _with_likes(layers: Layers, kind: str, name: str, problems: list[Problem]) -> Iterator[Branch]:
    """The design's own block, and before it whatever it is like, the farthest first."""
    chain: list[Branch] = []
    seen: list[str] = []
    at: str | None = name
    while at is not None:
        tree = layers.design.blocks.get((kind, at))
        if tree is None and layers.house is not None and seen:
            tree = layers.house.blocks.get((kind, at))
        if not isinstance(tree, Branch):
            break
        chain.append(tree)
        seen.append(at)
        other = tree.get("like")
        if not isinstance(other, Text):
            break
        if str(other) in seen or str(other) not in layers.names(kind):
            problems.append(_no_such_like(layers, kind, tree, other, seen))
            break
        at = str(other)
    yield from reversed(chain)


def _no_such_like(layers: Layers, kind: str, tree: Branch, other: Text, seen: list[str]) -> Problem:
    if str(other) in seen:
        message = f'"{tree.heading}" ends up being like itself.'
        fix = "Take one `like` away."
    else:
        near = nearest(other, [n for n in layers.names(kind) if n])
        message = f'"{tree.heading}" is like "{other}", but there is no "{kind} {other}".'
        message += f' Did you mean "{near}"?' if near else ""
        fix = f"Write `like: {near}`." if near else "Write that block, or take `like` away."
    return stop("unknown_name", message, other.where, about=tree.heading, found=str(other), fix=fix)


def _put(merged: Branch, tree: Branch) -> None:
    for key, value in tree.items():
        if key == "like":
            continue
        merged[key] = value
        merged.lines[key] = tree.lines.get(key)
        merged.origins[key] = tree.origins.get(key, "assumed")


def _put_under(merged: Branch, tree: Branch) -> None:
    for key, value in tree.items():
        if key not in merged:
            merged[key] = value
            merged.origins[key] = "assumed"


def _defaults(heading: str) -> Branch:
    tree = Branch(heading, None)
    for key, default in DEFAULTS.get(heading, {}).items():
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
    for key, default in BAND_DEFAULTS["rail" if rail else "infill"].items():
        if key not in line:
            line[key] = _as_written(default)
            line.origins[key] = "assumed"
    return line
