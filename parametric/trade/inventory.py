"""What a design comes to: its numbers by name, its parts by name, its few facts without a number.

An inventory can be kept as plain content and read again, which is how an approved design is
remembered.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from parametric.figures import collect
from parametric.model import Assembly, Cut, Part, digest
from parametric.resolve.door import Resolved
from parametric.trade.fingerprint import fingerprint
from parametric.trade.loads import LeafLoad
from parametric.units import Unit

_FORMAT = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A named number: mm, kg, deg or as `unit` says; `written` when a person chose or measured it."""

    value: float
    unit: str
    written: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A part: its mark, what the shop calls it, its material, its blank's sizes, its cuts and edge bands."""

    mark: str
    noun: str
    material: str
    sizes: tuple[float, float, float]
    cuts: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Inventory:
    """A design as far as it is made or seen, for comparing with another state of it.

    `words` are its few facts without a number: the job's name and the finish.
    """

    fingerprint: str
    unit: Unit
    words: Mapping[str, str]
    numbers: Mapping[str, Number]
    pieces: Mapping[str, Piece]


def inventory(resolved: Resolved, assembly: Assembly, loads: tuple[LeafLoad, ...]) -> Inventory:
    """What a resolved design comes to."""
    finish = resolved.finish
    named = collect((resolved.doors, loads))
    return Inventory(
        fingerprint=fingerprint(resolved, assembly),
        unit=resolved.design.unit,
        words={
            "job": assembly.name,
            "finish": "none"
            if finish is None
            else " ".join(word for word in (finish.kind, finish.colour or "") if word),
        },
        numbers={
            name: Number(value=float(figure), unit=figure.unit, written=figure.origin != "computed")
            for name, figure in named.items()
        },
        pieces={part.name: _piece(part) for part in assembly.parts},
    )


def _piece(part: Part) -> Piece:
    blank = part.blank
    return Piece(
        mark=part.mark,
        noun=part.noun,
        material=part.material.name,
        sizes=(float(blank.length), float(blank.width), float(blank.thickness)),
        cuts=digest([*(_unnamed(cut) for cut in part.cuts), *part.banded, *part.banded_edges]),
        place=digest(part.placement),
    )


def _unnamed(cut: Cut) -> Cut:
    """A cut without its words: what it is called and which tool is named for it change nothing."""
    making = dataclasses.replace(cut.making, tool="")
    return dataclasses.replace(cut, name="", making=making)


# --- kept and read again -------------------------------------------------------------------


def kept(whole: Inventory) -> dict[str, Any]:
    """An inventory as plain content, to be written beside the design."""
    return {
        "format": _FORMAT,
        "fingerprint": whole.fingerprint,
        "units": whole.unit,
        "words": dict(whole.words),
        "figures": [
            {"name": name, "value": n.value, "unit": n.unit, "written": n.written}
            for name, n in whole.numbers.items()
        ],
        "parts": [
            {
                "name": name,
                "mark": piece.mark,
                "noun": piece.noun,
                "material": piece.material,
                "blank": list(piece.sizes),
                "cuts": piece.cuts,
                "place": piece.place,
            }
            for name, piece in whole.pieces.items()
        ],
    }


def read_kept(content: Any) -> Inventory:
    """An inventory from plain content.

    Raises:
        ValueError: it is not one, or of a later format.
    """
    try:
        if content["format"] != _FORMAT:
            raise ValueError(f"format {content['format']}")
        unit: Unit = "inch" if content["units"] == "inch" else "mm"
        return Inventory(
            fingerprint=str(content["fingerprint"]),
            unit=unit,
            words={str(what): str(word) for what, word in content["words"].items()},
            numbers={
                str(row["name"]): Number(
                    value=float(row["value"]),
                    unit=str(row["unit"]),
                    written=bool(row["written"]),
                )
                for row in content["figures"]
            },
            pieces={str(row["name"]): _read_piece(row) for row in content["parts"]},
        )
    except (KeyError, TypeError, AttributeError) as error:
        raise ValueError(f"not an inventory: {error!r}") from None


def _read_piece(row: Mapping[str, Any]) -> Piece:
    length, width, thickness = (float(size) for size in row["blank"])
    return Piece(
        mark=str(row["mark"]),
        noun=str(row["noun"]),
        material=str(row["material"]),
        sizes=(length, width, thickness),
        cuts=str(row["cuts"]),
        place=str(row["place"]),
    )
