"""Doors of one job told apart: a number that each of them has gets the name of its door before it.

`cover` of the doors `study` and `hall` is `door study / cover` and `door hall / cover`. What is
of a leaf has the leaf's own letter already, what the house says is of no door, and what the
cabinets hold besides their fronts is named by them.
"""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Iterator, Mapping, Set
from types import MappingProxyType
from typing import Any, TypeVar

from parametric.catalog.shop import Shop
from parametric.figures import Figure
from parametric.names import SEPARATOR, join
from parametric.resolve.casework import Casework
from parametric.resolve.one_door import Door

Tree = TypeVar("Tree")


def told_apart(
    doors: tuple[Door, ...], shop: Shop, casework: Casework | None = None
) -> tuple[Door, ...]:
    """The doors of a job, each with its place in a name; a door alone needs none.

    Args:
        doors: all of them.
        shop: the workshop, whose numbers keep their names.
        casework: the cabinets, whose numbers keep theirs.
    """
    if len(doors) == 1:
        return doors
    reached = Counter(one for door in doors for one in {id(f) for f in _figures(door)})
    common = {one for one, times in reached.items() if times > 1}
    common |= {id(figure) for figure in _figures((shop, casework))}
    placed = (
        dataclasses.replace(door, place=door.name if door.case else f"door {door.name}".rstrip())
        for door in doors
    )
    return tuple(_of_door(door, common).of(door) for door in placed)


def placed_in(tree: Tree, place: str, given: Any) -> Tree:
    """What was worked out in one place, its numbers named by it.

    Args:
        tree: a case with all its numbers.
        place: its name; what begins with it already is left.
        given: what it was worked out from, whose numbers keep their names.
    """
    return _Naming(place, set(), {id(figure) for figure in _figures(given)}).of(tree)


def named_by(door: Door, tree: Tree, shop: Shop) -> Tree:
    """What was worked out of one door, each number of it with the door's place before its name.

    Args:
        door: the door, which has a place where it is one of several.
        tree: dataclasses, tuples and mappings with figures in them.
        shop: the workshop, whose numbers keep their names, as those of the door do.
    """
    if not door.place:
        return tree
    return _of_door(door, {id(figure) for figure in _figures((door, shop))}).of(tree)


def _of_door(door: Door, common: Set[int]) -> _Naming:
    return _Naming(door.place, {leaf.name for leaf in door.leaves}, common)


def _figures(tree: Any) -> Iterator[Figure]:
    """Every figure in a tree and behind those, named or not, each once."""
    seen: set[int] = set()
    ahead = [tree]
    while ahead:
        node = ahead.pop()
        if isinstance(node, Figure):
            if id(node) not in seen:
                seen.add(id(node))
                yield node
                ahead += node.args
        else:
            ahead += _inside(node)


def _inside(node: Any) -> list[Any]:
    if dataclasses.is_dataclass(node) and not isinstance(node, type):
        return [getattr(node, field.name) for field in dataclasses.fields(node)]
    if isinstance(node, Mapping):
        return list(node.values())
    return list(node) if isinstance(node, (tuple, list)) else []


class _Naming:
    """One door made over with its place before its numbers' names; what two things share stays shared."""

    def __init__(self, place: str, leaves: Set[str], common: Set[int]) -> None:
        self._place, self._leaves, self._common = place, leaves, common
        self._made: dict[int, Any] = {}

    def of(self, node: Tree) -> Tree:
        """The same thing with names of its own."""
        if id(node) not in self._made:
            self._made[id(node)] = self._make(node)
        made: Tree = self._made[id(node)]
        return made

    def _make(self, node: Any) -> Any:
        if isinstance(node, Figure):
            return self._figure(node)
        if dataclasses.is_dataclass(node) and not isinstance(node, type):
            moved = {
                field.name: made
                for field in dataclasses.fields(node)
                if (made := self.of(was := getattr(node, field.name))) is not was
            }
            return dataclasses.replace(node, **moved) if moved else node
        if isinstance(node, Mapping):
            told = {key: self.of(value) for key, value in node.items()}
            if all(told[key] is node[key] for key in node):
                return node
            return MappingProxyType(told) if isinstance(node, MappingProxyType) else told
        if isinstance(node, tuple):
            items = [self.of(item) for item in node]
            if all(made is was for made, was in zip(items, node, strict=True)):
                return node
            return type(node)(*items) if hasattr(node, "_fields") else tuple(items)
        return node

    def _figure(self, figure: Figure) -> Figure:
        if id(figure) in self._common:
            return figure
        args = tuple(self.of(arg) for arg in figure.args)
        name = self._named(figure.name)
        if name == figure.name and all(
            now is was for now, was in zip(args, figure.args, strict=True)
        ):
            return figure
        return Figure(
            figure,
            name,
            op=figure.op,
            args=args,
            origin=figure.origin,
            unit=figure.unit,
            where=figure.where,
            source=figure.source,
            about=figure.about,
        )

    def _named(self, name: str | None) -> str | None:
        if name is None or self._told(name):
            return name
        return join(self._place, name)

    def _told(self, name: str) -> bool:
        """Whether it says already of which door it is, or of which leaf."""
        first = name.split(SEPARATOR)[0]
        return first == self._place or any(
            first == leaf or first.startswith(f"{leaf} ") for leaf in self._leaves
        )
