"""The solids of many parts, each shape built once and shared by all parts that have it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from OCP.TopoDS import TopoDS_Shape, TopoDS_Solid

from parametric.model import Part, shape_key
from parametric.parts.known_shapes import KnownShapes
from parametric.solids.cache import Cache
from parametric.solids.shape import WrongSolidError, part_solid, shape_with_stops


@dataclass(frozen=True, slots=True, kw_only=True)
class Solids:
    """One solid for each distinct shape, and which shape each part has.

    In a model with stops a shape may be in several pieces, and a part of which the cuts
    leave nothing has none.
    """

    shapes: Mapping[str, TopoDS_Shape]
    keys: Mapping[str, str]
    """Shape key by part name."""

    def key(self, part: Part) -> str:
        """The shape key of a part: equal keys, same solid."""
        return self.keys[part.name]

    def shows(self, part: Part) -> bool:
        """Whether anything is left of a part; always so in a design that can be made."""
        return self.keys[part.name] in self.shapes

    def of(self, part: Part) -> TopoDS_Shape:
        """The solid of a part, in the part's frame."""
        return self.shapes[self.keys[part.name]]


def build_solids(
    parts: Iterable[Part], cache: Cache | None = None, *, with_stops: bool = False
) -> Solids:
    """The solid of every part, from the cache where it holds one.

    Args:
        parts: parts with names of their own.
        cache: solids kept between runs; None builds all of them.
        with_stops: the design has stops, so a part whose cuts cannot all be made is shown
            as far as they can (see `shape_with_stops`).

    Raises:
        WrongSolidError: a solid is not what its part's numbers say.
        ValueError: two parts have one name.
    """
    shapes: dict[str, TopoDS_Solid] = {}
    keys: dict[str, str] = {}
    known = KnownShapes()
    for part in parts:
        if part.name in keys:
            raise ValueError(f"two parts are called {part.name}")
        found = known.find(part)
        if found is not None:
            keys[part.name] = found
            continue
        key = keys[part.name] = shape_key(part)
        known.keep(part, key)
        try:
            shapes[key] = part_solid(part) if cache is None else _kept(cache, key, part)
        except WrongSolidError:
            if not with_stops:
                raise
            left = shape_with_stops(part)
            if left is not None:
                shapes[key] = left
    if cache is not None:
        cache.trim()
    return Solids(shapes=shapes, keys=keys)


def _kept(cache: Cache, key: str, part: Part) -> TopoDS_Solid:
    solid = cache.find(key, part.volume)
    if solid is None:
        solid = part_solid(part)
        cache.keep(key, solid)
    return solid
