"""A DXF file taken apart into its sections and records, by its group codes.

Source: the published DXF reference. In its text form a code stands on one line and the
code's value on the next; code 0 begins a record, codes from 1000 up are extended data.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

Tag = tuple[int, str]


class UnreadableError(Exception):
    """A file of the pack that cannot be taken apart at all."""


@dataclass(frozen=True, slots=True)
class Record:
    """One entity, table entry or the like: its kind and its tags in the order of the file."""

    kind: str
    tags: tuple[Tag, ...]

    def all(self, code: int) -> tuple[str, ...]:
        """Every value under a code."""
        return tuple(value for found, value in self.tags if found == code)

    def text(self, code: int, default: str = "") -> str:
        """The first value under a code."""
        return next((value for found, value in self.tags if found == code), default)

    def number(self, code: int, default: float = 0.0) -> float:
        """The first value under a code, as a number."""
        found = self.text(code)
        return float(found) if found else default

    def whole(self, code: int, default: int = 0) -> int:
        """The first value under a code, as a whole number."""
        found = self.text(code)
        return int(found) if found else default

    def point(self, code: int) -> tuple[float, float]:
        """A point whose x stands under a code and whose y under that code plus 10."""
        return (self.number(code), self.number(code + 10))

    def corners(self) -> list[tuple[float, float, float]]:
        """The corners of a polyline: x, y and the bulge of the edge that follows."""
        found: list[tuple[float, float, float]] = []
        for code, value in self.tags:
            if code == 10:
                found.append((float(value), math.nan, 0.0))
            elif code == 20 and found:
                found[-1] = (found[-1][0], float(value), found[-1][2])
            elif code == 42 and found:
                found[-1] = (*found[-1][:2], float(value))
        return found

    def extended(self, owner: str) -> tuple[Tag, ...]:
        """The extended data that one program has left on a record."""
        found: list[Tag] = []
        inside = False
        for code, value in self.tags:
            if code == 1001:
                inside = value == owner
            elif inside and code >= 1000:
                found.append((code, value))
        return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class DxfFile:
    """The header's variables, the tables' entries, the entities, and those of each block."""

    header: Mapping[str, tuple[str, ...]]
    tables: tuple[Record, ...]
    entities: tuple[Record, ...]
    blocks: Mapping[str, tuple[Record, ...]]

    def variable(self, name: str) -> str:
        """The first value of a header variable, "" when it is not there."""
        values = self.header.get(name, ())
        return values[0] if values else ""


def read_dxf(data: bytes) -> DxfFile:
    """Take a DXF file in text form apart.

    Raises:
        UnreadableError: it is not one.
    """
    sections: dict[str, list[Tag]] = {}
    current: list[Tag] | None = None
    pending = False
    for code, value in _tags(data):
        if pending:
            current = sections.setdefault(value, [])
            pending = False
        elif (code, value) == (0, "SECTION"):
            pending = True
        elif (code, value) == (0, "ENDSEC"):
            current = None
        elif current is not None:
            current.append((code, value))
    if "ENTITIES" not in sections:
        raise UnreadableError("there is no section of entities")
    return DxfFile(
        header=_header(sections.get("HEADER", [])),
        tables=tuple(_records(sections.get("TABLES", []))),
        entities=tuple(_records(sections["ENTITIES"])),
        blocks=_blocks(sections.get("BLOCKS", [])),
    )


def _tags(data: bytes) -> Iterator[Tag]:
    try:
        lines = data.decode("utf-8").splitlines()
    except UnicodeDecodeError as error:
        raise UnreadableError(f"it is not text: {error}") from None
    if len(lines) % 2:
        raise UnreadableError("a code stands without its value")
    for code, value in zip(lines[::2], lines[1::2], strict=True):
        try:
            yield int(code), value.strip()
        except ValueError:
            raise UnreadableError(f"{code!r} is no group code") from None


def _records(tags: list[Tag]) -> Iterator[Record]:
    kind = ""
    held: list[Tag] = []
    for code, value in tags:
        if code == 0:
            if kind:
                yield Record(kind, tuple(held))
            kind, held = value, []
        else:
            held.append((code, value))
    if kind:
        yield Record(kind, tuple(held))


def _header(tags: list[Tag]) -> dict[str, tuple[str, ...]]:
    header: dict[str, tuple[str, ...]] = {}
    name = ""
    for code, value in tags:
        if code == 9:
            name = value
            header[name] = ()
        elif name:
            header[name] = (*header[name], value)
    return header


def _blocks(tags: list[Tag]) -> dict[str, tuple[Record, ...]]:
    blocks: dict[str, list[Record]] = {}
    name = ""
    for record in _records(tags):
        if record.kind == "BLOCK":
            name = record.text(2)
            blocks[name] = []
        elif record.kind == "ENDBLK":
            name = ""
        elif name:
            blocks[name].append(record)
    return {name: tuple(records) for name, records in blocks.items()}
