"""The cut list: every part type once, with how many, at the size its blank is cut to."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from parametric.model import Assembly, Matched, Mitre, Part


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRow:
    """One line: length along the grain x width x thickness, mm, at full precision."""

    mark: str
    noun: str
    number: int
    length: float
    width: float
    thickness: float
    material: str
    look: str
    note: str
    names: tuple[str, ...]
    matched: Matched | None = None


def cut_list(assembly: Assembly) -> tuple[CutRow, ...]:
    """Everything that is made or ordered to size, by type; supplied hardware is left out."""
    types: dict[str, list[Part]] = {}
    for part in assembly.parts:
        if not part.supplied:
            types.setdefault(part.mark, []).append(part)
    return tuple(_row(mark, parts) for mark, parts in types.items())


def of_timber(rows: Iterable[CutRow]) -> tuple[CutRow, ...]:
    """What the workshop cuts."""
    return tuple(row for row in rows if row.look != "glass")


def of_solid(rows: Iterable[CutRow]) -> tuple[CutRow, ...]:
    """What is sawn from boards of timber, not from sheets."""
    return tuple(row for row in rows if row.look == "timber")


def of_sheets(rows: Iterable[CutRow]) -> tuple[CutRow, ...]:
    """What is sawn from sheets."""
    return tuple(row for row in rows if row.look == "board")


def _row(mark: str, parts: list[Part]) -> CutRow:
    first = parts[0]
    blank = first.blank
    return CutRow(
        mark=mark,
        noun=first.noun,
        number=len(parts),
        length=blank.length,
        width=blank.width,
        thickness=blank.thickness,
        material=first.material.name,
        look=first.material.look,
        note=_note(first),
        names=tuple(part.name for part in parts),
        matched=first.matched,
    )


def mitred_ends(part: Part) -> int:
    """At how many of its ends a piece is mitred."""
    return sum(isinstance(cut, Mitre) for cut in part.cuts)


def _note(part: Part) -> str:
    """What the saw bench must know beside the size, and which edges are banded then."""
    if part.matched is not None:
        return part.matched.words
    length, _, _ = part.finished
    if length != part.blank.length:
        return "trimmed after glue-up"
    if part.banded:
        edges = [part.faces.get(face, face).removesuffix(" edge") for face in part.banded]
        return f"{' and '.join(edges)} {'edge' if len(edges) == 1 else 'edges'} banded"
    match mitred_ends(part):
        case 0:
            return ""
        case 1:
            return "mitred one end"
        case _:
            return "mitred both ends"
