"""Numbers that know their name and how they came about.

A `Figure` is a float to everybody else. Its arithmetic builds the expression as it
goes, so the sum that `explain` prints is the sum that ran. Values are mm, deg, kg
or N; `unit` says which, and "" is a plain number.
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Mapping
from typing import Any, Literal, NamedTuple

Origin = Literal["measured", "chosen", "house", "assumed", "pinned", "catalogue", "computed"]


class Where(NamedTuple):
    """A place in a file the user can open: the file as it was named, and the line."""

    file: str
    line: int


class Figure(float):
    """A number with its name, its origin and its arithmetic.

    Leaves of the arithmetic carry `where` (file and line) or `source` (a citation);
    computed figures carry `op` and `args`. `about` marks a reading the surveyor doubts.
    """

    __slots__ = ("about", "args", "name", "op", "origin", "source", "unit", "where")

    name: str | None
    op: str | None
    args: tuple[float, ...]
    origin: Origin
    unit: str
    where: Where | None
    source: str | None
    about: bool

    def __new__(
        cls,
        value: float,
        name: str | None = None,
        *,
        op: str | None = None,
        args: tuple[float, ...] = (),
        origin: Origin = "computed",
        unit: str = "mm",
        where: Where | None = None,
        source: str | None = None,
        about: bool = False,
    ) -> Figure:
        """A written, measured or catalogued number; arithmetic makes all the others."""
        self = float.__new__(cls, value)
        self.name = name
        self.op = op
        self.args = args
        self.origin = origin
        self.unit = unit
        self.where = where
        self.source = source
        self.about = about
        return self

    def __add__(self, other: float) -> Figure:
        return Figure(float(self) + float(other), op="+", args=(self, other))

    def __radd__(self, other: float) -> Figure:
        return Figure(float(other) + float(self), op="+", args=(other, self))

    def __sub__(self, other: float) -> Figure:
        return Figure(float(self) - float(other), op="-", args=(self, other))

    def __rsub__(self, other: float) -> Figure:
        return Figure(float(other) - float(self), op="-", args=(other, self))

    def __mul__(self, other: float) -> Figure:
        return Figure(float(self) * float(other), op="*", args=(self, other))

    def __rmul__(self, other: float) -> Figure:
        return Figure(float(other) * float(self), op="*", args=(other, self))

    def __truediv__(self, other: float) -> Figure:
        return Figure(float(self) / float(other), op="/", args=(self, other))

    def __rtruediv__(self, other: float) -> Figure:
        return Figure(float(other) / float(self), op="/", args=(other, self))

    def __neg__(self) -> Figure:
        return Figure(-float(self), op="neg", args=(self,))

    def __reduce__(self) -> tuple[Any, ...]:
        return (float, (float(self),))


def named(name: str, value: float, unit: str = "mm") -> Figure:
    """Give a result its name; the arithmetic that made it is kept.

    A value that is already a named leaf or result becomes a one-step copy, so that
    `lock rail / height` can be shown to come from the line that says so.
    """
    if isinstance(value, Figure):
        if value.name is None:
            return Figure(
                value,
                name,
                op=value.op,
                args=value.args,
                origin=value.origin,
                unit=unit,
                where=value.where,
                source=value.source,
                about=value.about,
            )
        return Figure(value, name, op="same", args=(value,), origin="computed", unit=unit)
    return Figure(value, name, op="same", args=(value,), unit=unit)


def largest(*values: float) -> Figure:
    """The largest of several, remembering all of them."""
    return Figure(max(float(v) for v in values), op="largest", args=values)


def smallest(*values: float) -> Figure:
    """The smallest of several, remembering all of them."""
    return Figure(min(float(v) for v in values), op="smallest", args=values)


def hypot(a: float, b: float) -> Figure:
    """The diagonal over two sides at right angles."""
    return Figure(math.hypot(a, b), op="hypot", args=(a, b))


def root(a: float) -> Figure:
    """The square root."""
    return Figure(math.sqrt(a), op="root", args=(a,))


def square(a: float) -> Figure:
    """A length times itself."""
    return Figure(float(a) * float(a), op="square", args=(a,), unit="mm2")


def exceeds(a: float, b: float) -> bool:
    """True when a is more than b by something a shop could mean.

    Sums of fractions of an inch in binary millimetres miss their limit by a few
    billionths; a size exactly at a limit must not be called past it.
    """
    return float(a) - float(b) > 1e-6


def tilt(rise: float, run: float) -> Figure:
    """The angle in degrees whose tangent is rise over run."""
    return Figure(math.degrees(math.atan2(rise, run)), op="tilt", args=(rise, run), unit="deg")


def cosine(angle: float) -> Figure:
    """The cosine of an angle in degrees."""
    return Figure(math.cos(math.radians(angle)), op="cos", args=(angle,), unit="")


def sine(angle: float) -> Figure:
    """The sine of an angle in degrees."""
    return Figure(math.sin(math.radians(angle)), op="sin", args=(angle,), unit="")


def arc_sine(ratio: float) -> Figure:
    """The angle in degrees whose sine is the ratio."""
    return Figure(math.degrees(math.asin(ratio)), op="arc sine", args=(ratio,), unit="deg")


def tangent(angle: float) -> Figure:
    """The tangent of an angle in degrees."""
    return Figure(math.tan(math.radians(angle)), op="tan", args=(angle,), unit="")


def whole_up(value: float) -> Figure:
    """The next whole number up; exact wholes stay, whatever the last bit says."""
    return Figure(math.ceil(float(value) - 1e-9), op="whole number up from", args=(value,), unit="")


def whole_down(value: float) -> Figure:
    """The next whole number down; exact wholes stay, whatever the last bit says."""
    down = math.floor(float(value) + 1e-9)
    return Figure(down, op="whole number down from", args=(value,), unit="")


_PRECEDENCE = {"+": 1, "-": 1, "*": 2, "/": 2}
_SIGN = {"+": "+", "-": "-", "*": "*", "/": "/"}


def plain(value: float) -> str:
    """A number for a formula: up to six places, no trailing noughts."""
    text = f"{float(value):.6f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _term(value: float, names: bool, outer: int, top: bool) -> str:
    if not isinstance(value, Figure):
        return plain(value)
    if value.name is not None and not top:
        if not names:
            return plain(value)
        return f"[{value.name}]" if " / " in value.name else value.name
    if value.op is None:
        return plain(value)
    if value.op == "same":
        return _term(value.args[0], names, outer, False)
    if value.op == "neg":
        return "-" + _term(value.args[0], names, 3, False)
    rank = _PRECEDENCE.get(value.op)
    if rank is None:
        inner = ", ".join(_term(a, names, 0, False) for a in value.args)
        return f"{value.op}({inner})"
    left = _term(value.args[0], names, rank, False)
    right = _term(value.args[1], names, rank + 1, False)
    text = f"{left} {_SIGN[value.op]} {right}"
    return f"({text})" if rank < outer else text


def formula(figure: Figure) -> str | None:
    """The expression behind a figure in names, e.g. `(cover + overlap) / 2`; None for a leaf."""
    return None if figure.op is None else _term(figure, True, 0, True)


def arithmetic(figure: Figure) -> str | None:
    """The same expression in numbers, e.g. `(1929 + 120) / 2`; None for a leaf."""
    return None if figure.op is None else _term(figure, False, 0, True)


def inputs(figure: Figure) -> dict[str, Figure]:
    """The named figures one step behind this one, in reading order."""
    found: dict[str, Figure] = {}

    def walk(value: float, top: bool) -> None:
        if not isinstance(value, Figure):
            return
        if value.name is not None and not top:
            found.setdefault(value.name, value)
            return
        for arg in value.args:
            walk(arg, False)

    walk(figure, True)
    return found


def leaves(figure: Figure) -> Iterator[Figure]:
    """Every written, measured or catalogued number that a figure rests on."""
    if figure.op is None:
        yield figure
    for arg in figure.args:
        if isinstance(arg, Figure):
            yield from leaves(arg)


def origin_line(value: float) -> Where | None:
    """The line to point at for a number: its own, else that of the first written number behind it."""
    if not isinstance(value, Figure):
        return None
    if value.where is not None:
        return value.where
    return next((leaf.where for leaf in leaves(value) if leaf.where is not None), None)


def doubtful(figure: Figure) -> bool:
    """True when a reading the surveyor doubts lies anywhere behind the figure."""
    return any(leaf.about for leaf in leaves(figure))


def collect(tree: Any) -> dict[str, Figure]:
    """Every named figure in a resolved tree, and every named figure behind those.

    Walks frozen dataclasses, tuples and mappings; order is that of the tree.
    """
    found: dict[str, Figure] = {}
    seen: set[int] = set()

    def add(figure: Figure) -> None:
        if id(figure) in seen:
            return
        seen.add(id(figure))
        for arg in figure.args:
            if isinstance(arg, Figure):
                add(arg)
        if figure.name is not None:
            found.setdefault(figure.name, figure)

    def walk(node: Any) -> None:
        if isinstance(node, Figure):
            add(node)
        elif dataclasses.is_dataclass(node) and not isinstance(node, type):
            for field in dataclasses.fields(node):
                walk(getattr(node, field.name))
        elif isinstance(node, (tuple, list)):
            for item in node:
                walk(item)
        elif isinstance(node, Mapping):
            for item in node.values():
                walk(item)

    walk(tree)
    return found
