r"""A STEP file taken apart: its statements, and what the products and their pieces are.

Source: ISO 10303-21 (clear text encoding of the exchange structure), from memory: one
statement ends in a semicolon; `#n = TYPE(...)`, or several types in brackets; `$` is
nothing, `.X.` a word, a quote or `\` inside a string is doubled, and `\X2\...\X0\` holds
letters beyond ASCII by their numbers.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.pack.verifying.dxf_tags import UnreadableError


@dataclass(frozen=True, slots=True)
class Ref:
    """A reference to another statement."""

    number: int


@dataclass(frozen=True, slots=True)
class Word:
    """A word between points: `.T.`, `.MILLI.`."""

    text: str


@dataclass(frozen=True, slots=True)
class Typed:
    """A value with its type: `LENGTH_MEASURE(1.)`, or a whole statement."""

    kind: str
    values: tuple[object, ...]


_STATEMENT = re.compile(r"\s*((?:[^;']|'(?:[^']|'')*')*);")
_RECORD = re.compile(r"#(\d+)\s*=\s*(.*)", re.DOTALL)
_TOKEN = re.compile(
    r"(?P<sign>[(),$*])|#(?P<ref>\d+)|(?P<number>[-+]?\d+\.?\d*(?:[Ee][-+]?\d+)?)"
    r"|(?P<string>'(?:[^']|'')*')|\.(?P<word>\w+)\.|(?P<name>[A-Z]\w*)"
)


class StepFile:
    """The statements of a STEP file, each taken apart when it is asked for."""

    def __init__(self, text: str) -> None:
        """Find the statements.

        Raises:
            UnreadableError: there is no data in it.
        """
        self._raw: dict[int, str] = {}
        self._known: dict[int, tuple[Typed, ...]] = {}
        header, data, rest = text.partition("DATA;")
        if not header.lstrip().startswith("ISO-10303-21;") or not data:
            raise UnreadableError("it has no section of data")
        for found in _STATEMENT.finditer(rest):
            record = _RECORD.match(found[1])
            if record is not None:
                self._raw[int(record[1])] = record[2]
            elif found[1].strip() == "ENDSEC":
                break

    def numbers(self, kind: str) -> Iterator[int]:
        """The statements that begin with a type, in the order of the file."""
        for number, text in self._raw.items():
            if text.startswith(kind) and text[len(kind) :].lstrip().startswith("("):
                yield number

    def holding(self, kind: str) -> Iterator[int]:
        """The statements of several types that one of them is."""
        for number, text in self._raw.items():
            if text.startswith("(") and kind in text:
                yield number

    def kinds(self, number: int) -> tuple[Typed, ...]:
        """Every type of a statement with its values."""
        known = self._known.get(number)
        if known is None:
            if number not in self._raw:
                raise UnreadableError(f"#{number} is nowhere")
            known = self._known[number] = _parsed(self._raw[number])
        return known

    def of(self, reference: object, kind: str = "") -> Typed:
        """The statement that is referred to; of several types, the one asked for.

        Raises:
            UnreadableError: it is not of that kind.
        """
        if not isinstance(reference, Ref):
            raise UnreadableError(f"a reference was expected, not {reference!r}")
        for typed in self.kinds(reference.number):
            if kind in ("", typed.kind):
                return typed
        raise UnreadableError(f"#{reference.number} is no {kind}")


def _parsed(text: str) -> tuple[Typed, ...]:
    """A statement taken apart."""
    tokens = [(kind, found[kind]) for found in _TOKEN.finditer(text) if (kind := found.lastgroup)]
    at = 0

    def typed() -> Typed:
        nonlocal at
        kind, name = tokens[at]
        if kind != "name":
            raise UnreadableError(f"a type was expected in {text[:60]!r}")
        at += 1
        return Typed(name, tuple(listed()))

    def listed() -> list[object]:
        nonlocal at
        if tokens[at][1] != "(":
            raise UnreadableError(f"a bracket was expected in {text[:60]!r}")
        at += 1
        values: list[object] = []
        while tokens[at] != _CLOSED:
            if tokens[at] == _COMMA:
                at += 1
            else:
                values.append(value())
        at += 1
        return values

    def value() -> object:
        nonlocal at
        kind, word = tokens[at]
        if kind == "name":
            return typed()
        if word == "(":
            return listed()
        at += 1
        match kind:
            case "ref":
                return Ref(int(word))
            case "number":
                return float(word)
            case "string":
                return spelled(word)
            case "word":
                return Word(word)
        return None

    try:
        if tokens[0] != _OPEN:
            return (typed(),)
        at = 1
        several = []
        while tokens[at] != _CLOSED:
            several.append(typed())
        return tuple(several)
    except IndexError:
        raise UnreadableError(f"{text[:60]!r} is cut off") from None


_OPEN, _CLOSED, _COMMA = ("sign", "("), ("sign", ")"), ("sign", ",")


def spelled(literal: str) -> str:
    """A string as people read it."""
    text = literal[1:-1].replace("\n", "").replace("''", "'")
    if "\\" not in text:
        return text
    return _ESCAPED.sub(_letters, text)


_ESCAPED = re.compile(
    r"\\(?:X2\\(?P<two>[0-9A-F]*)\\X0\\|X4\\(?P<four>[0-9A-F]*)\\X0\\|(?P<itself>\\))"
)


def _letters(found: re.Match[str]) -> str:
    if found["two"] is not None:
        return bytes.fromhex(found["two"]).decode("utf-16-be")
    if found["four"] is not None:
        return bytes.fromhex(found["four"]).decode("utf-32-be")
    return "\\"


# --- products and pieces -------------------------------------------------------------------

Vector = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Axes:
    """A place: its origin, its z and its x."""

    origin: Vector
    z: Vector
    x: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Product:
    """One product: its definition's number, its name, the solids it is made of."""

    definition: int
    name: str
    solids: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Occurrence:
    """One piece: its name, the product it is, the product it stands in, and where there."""

    name: str
    product: int
    whole: int
    place: Axes


def products(file: StepFile) -> dict[int, Product]:
    """Every product by the number of its definition."""
    shapes = _shapes(file)
    found = {}
    for number in file.numbers("PRODUCT_DEFINITION"):
        definition = file.of(Ref(number))
        formation = file.of(definition.values[2])
        product = file.of(formation.values[2], "PRODUCT")
        found[number] = Product(
            definition=number,
            name=str(product.values[1]),
            solids=shapes.get(number, ()),
        )
    return found


def _shapes(file: StepFile) -> dict[int, tuple[int, ...]]:
    """The solids of each product definition."""
    found: dict[int, tuple[int, ...]] = {}
    for number in file.numbers("SHAPE_DEFINITION_REPRESENTATION"):
        shape, drawn = file.of(Ref(number)).values
        definition = file.of(shape, "PRODUCT_DEFINITION_SHAPE").values[2]
        items = file.of(drawn).values[1]
        if isinstance(definition, Ref) and isinstance(items, list):
            found[definition.number] = tuple(
                item.number
                for item in items
                if isinstance(item, Ref) and file.of(item).kind == "MANIFOLD_SOLID_BREP"
            )
    return found


def occurrences(file: StepFile) -> list[Occurrence]:
    """Every piece of every assembly with its place in it."""
    found = []
    for number in file.numbers("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION"):
        relation, shape = file.of(Ref(number)).values
        moved = file.of(relation, "REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION").values[0]
        _, _, start, end = file.of(moved, "ITEM_DEFINED_TRANSFORMATION").values
        usage = file.of(
            file.of(shape, "PRODUCT_DEFINITION_SHAPE").values[2], "NEXT_ASSEMBLY_USAGE_OCCURRENCE"
        )
        whole, product = usage.values[3], usage.values[4]
        if not isinstance(whole, Ref) or not isinstance(product, Ref):
            raise UnreadableError("a piece stands in nothing")
        if axes(file, start) != Axes(origin=(0, 0, 0), z=(0, 0, 1), x=(1, 0, 0)):
            raise UnreadableError(f"{usage.values[1]}: is placed from elsewhere than its own zero")
        found.append(
            Occurrence(
                name=str(usage.values[1]),
                product=product.number,
                whole=whole.number,
                place=axes(file, end),
            )
        )
    return found


def axes(file: StepFile, reference: object) -> Axes:
    """A place."""
    _, origin, z, x = file.of(reference, "AXIS2_PLACEMENT_3D").values
    return Axes(origin=vector(file, origin), z=vector(file, z), x=vector(file, x))


def vector(file: StepFile, reference: object) -> Vector:
    """A point or a direction."""
    values = file.of(reference).values[1]
    if not isinstance(values, list) or len(values) != 3:
        raise UnreadableError("a point without three numbers")
    x, y, z = (float(v) for v in values)
    return (x, y, z)


def length_units(file: StepFile) -> Sequence[str]:
    """The unit of every length in the file, such as `MILLI METRE`."""
    found: Mapping[str, None] = {}
    for number in file.holding("LENGTH_UNIT"):
        kinds = {typed.kind: typed.values for typed in file.kinds(number)}
        if "SI_UNIT" in kinds:
            words = [v.text for v in kinds["SI_UNIT"] if isinstance(v, Word)]
            found = {**found, " ".join(words): None}
        else:
            found = {**found, " ".join(sorted(kinds)): None}
    return list(found)
