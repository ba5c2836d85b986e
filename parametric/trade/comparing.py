"""Two states of a design side by side: which numbers moved, and which parts are other parts now."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any, Literal

from parametric.names import SEPARATOR
from parametric.trade.inventory import Inventory, Number, Piece
from parametric.units import INCH_STEP, Unit, inch_text, read_length

_PLACES = 6
"""A number has moved when it differs to a millionth, as in the fingerprint."""

What = Literal["mark", "material", "size", "cuts", "place", "new", "gone"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A number that moved, of one thing or alike of several: `old` or `new` None when not there."""

    names: tuple[str, ...]
    spoken: str
    old: str | None
    new: str | None
    unit: str
    written: bool

    @property
    def sentence(self) -> str:
        """`the lock rail changed from 150 to 160`."""
        if self.old is None:
            return f"{self.spoken} is new, {self.new}"
        if self.new is None:
            return f"{self.spoken} is gone, it was {self.old}"
        return f"{self.spoken} changed from {self.old} to {self.new}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartChange:
    """What became of parts of one kind, told by the mark they have now.

    `old` and `new` are words; how many there were and are, when parts came or went.
    """

    mark: str
    noun: str
    names: tuple[str, ...]
    what: What
    old: str
    new: str

    @property
    def sentence(self) -> str:
        """`the size of R3 lock rail changed from 784.5 x 150 x 40 to 784.5 x 160 x 40`."""
        kind = f"{self.mark} {self.noun}"
        match self.what:
            case "new" | "gone" if self.old == "0":
                return f"{kind} is new, {self.new} off"
            case "new" | "gone" if self.new == "0":
                return f"{kind} is gone, it was {self.old} off"
            case "new" | "gone":
                return f"{kind} was {self.old} off and is {self.new}"
            case "cuts":
                return f"the cuts of {kind} changed"
            case "place":
                return f"{kind} stands elsewhere"
            case "mark" | "material" | "size":
                return f"the {self.what} of {kind} changed from {self.old} to {self.new}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """All that differs between two states of a design: words, numbers, then parts."""

    old: str
    new: str
    words: tuple[Moved, ...]
    numbers: tuple[Moved, ...]
    parts: tuple[PartChange, ...]

    @property
    def nothing(self) -> bool:
        """Whether nothing moved."""
        return not (self.words or self.numbers or self.parts)

    @property
    def causes(self) -> tuple[str, ...]:
        """What was changed, as far as can be told: what somebody wrote, else what came of it."""
        written = [moved.sentence for moved in (*self.words, *_of(self.numbers, written=True))]
        computed = [moved.sentence for moved in _of(self.numbers, written=False)]
        materials = [part.sentence for part in self.parts if part.what == "material"]
        others = [part.sentence for part in self.parts if part.what != "material"]
        return tuple((written + materials) or computed or others)


def _of(numbers: tuple[Moved, ...], *, written: bool) -> list[Moved]:
    return [moved for moved in numbers if moved.written == written]


def compare(old: Inventory, new: Inventory) -> Changes:
    """What moved between two states of a design, in the unit of the second."""
    words = tuple(
        Moved(names=(what,), spoken=f"the {what}", old=before, new=after, unit="", written=True)
        for what in dict.fromkeys((*old.words, *new.words))
        if (before := old.words.get(what)) != (after := new.words.get(what))
    )
    numbers = tuple(_moved(old, new))
    parts = tuple(_parts(old, new))
    if not (words or numbers or parts) and old.fingerprint != new.fingerprint:
        parts = tuple(_grouped(old, new, "place"))
    return Changes(
        old=old.fingerprint, new=new.fingerprint, words=words, numbers=numbers, parts=parts
    )


# --- numbers -------------------------------------------------------------------------------


def _moved(old: Inventory, new: Inventory) -> Iterator[Moved]:
    """Numbers that moved, those of all leaves alike told once, in the order of the design."""
    names = tuple(dict.fromkeys((*new.numbers, *old.numbers)))
    alike: dict[str, list[str]] = {}
    for name in names:
        alike.setdefault(_without_leaf(name), []).append(name)
    moves: dict[tuple[str, Moved], list[str]] = {}
    for name in names:
        rest = _without_leaf(name)
        before, after = old.numbers.get(name), new.numbers.get(name)
        number = after or before
        if number is None or (before and after and _same(before, after)):
            continue
        move = Moved(
            names=(),
            spoken="",
            old=None if before is None else value_text(before, new.unit),
            new=None if after is None else value_text(after, new.unit),
            unit=new.unit if number.unit == "mm" else number.unit,
            written=number.written,
        )
        moves.setdefault((rest, move), []).append(name)
    for (rest, move), moved in moves.items():
        together = [(rest, moved)] if moved == alike[rest] else [(name, [name]) for name in moved]
        for told, own in together:
            yield replace(move, names=tuple(own), spoken=_spoken(told, move.written))


def _same(a: Number, b: Number) -> bool:
    return a.unit == b.unit and round(a.value, _PLACES) == round(b.value, _PLACES)


def _without_leaf(name: str) -> str:
    """A name without the leaf it begins with."""
    first, _, rest = name.partition(SEPARATOR)
    return rest if rest and first.startswith("leaf ") else name


def _spoken(name: str, written: bool) -> str:
    """A name as it is said: `the slot length of the joint`, `the height of lite 1 of leaf A`.

    A rail is written by its own name alone, and so it is said.
    """
    *places, quantity = name.split(SEPARATOR)
    if written and quantity == "height" and places and not places[-1].startswith("leaf "):
        places, quantity = places[:-1], places[-1]
    said = [_with_article(quantity), *(_with_article(place) for place in reversed(places))]
    return " of ".join(said)


def _with_article(place: str) -> str:
    """`the lock rail`, but `leaf A` and `lite 1`."""
    first, _, last = place.partition(" ")
    own_name = first in ("leaf", "lite", "row", "pane", "hinge") and (
        last.isdigit() or len(last) == 1
    )
    return place if own_name else f"the {place}"


def value_text(number: Number, unit: Unit) -> str:
    """A number in the unit of the design: lengths bare, exact to a ten-thousandth; else its unit."""
    if number.unit != "mm":
        value = f"{number.value:.0f}" if number.unit in ("mm2", "mm3") else _plain(number.value)
        return f"{value} {number.unit}".rstrip()
    if unit == "mm":
        return _plain(number.value)
    said = inch_text(number.value, INCH_STEP)
    exact = abs(float(read_length(said, "inch")) - number.value) < 10**-_PLACES
    return said if exact else _plain(number.value / 25.4)


def _plain(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


# --- parts ---------------------------------------------------------------------------------


def _parts(old: Inventory, new: Inventory) -> Iterator[PartChange]:
    for what in ("mark", "material", "size", "cuts", "new", "gone"):
        yield from _grouped(old, new, what)


def _grouped(old: Inventory, new: Inventory, what: What) -> Iterator[PartChange]:
    """One sort of change, parts that changed alike together."""
    groups: dict[tuple[str, str, str, str], list[str]] = {}
    for name in dict.fromkeys((*new.pieces, *old.pieces)):
        before, after = old.pieces.get(name), new.pieces.get(name)
        told = _told(before, after, what, new.unit)
        if told is None:
            continue
        piece = after or before
        assert piece is not None
        groups.setdefault((piece.mark, piece.noun, *told), []).append(name)
    for (mark, noun, was, now), names in groups.items():
        if what in ("new", "gone"):
            was, now = (str(_count(state, mark, noun)) for state in (old, new))
        yield PartChange(mark=mark, noun=noun, names=tuple(names), what=what, old=was, new=now)


def _count(state: Inventory, mark: str, noun: str) -> int:
    return sum((piece.mark, piece.noun) == (mark, noun) for piece in state.pieces.values())


def _told(
    before: Piece | None, after: Piece | None, what: What, unit: Unit
) -> tuple[str, str] | None:
    """Old and new in words; None when this did not change."""
    if before is None or after is None:
        missing: What = "new" if before is None else "gone"
        return ("", "") if what == missing else None
    match what:
        case "mark":
            was, now = f"{before.mark} {before.noun}", f"{after.mark} {after.noun}"
        case "material":
            was, now = before.material, after.material
        case "size":
            was, now = (_sizes(piece, unit) for piece in (before, after))
        case "cuts":
            was, now = before.cuts, after.cuts
        case "place":
            was, now = before.place, after.place
        case "new" | "gone":
            return None
    if was == now:
        return None
    return ("", "") if what in ("cuts", "place") else (was, now)


def _sizes(piece: Piece, unit: Unit) -> str:
    numbers = (Number(value=size, unit="mm", written=False) for size in piece.sizes)
    return " x ".join(value_text(number, unit) for number in numbers)


# --- told ----------------------------------------------------------------------------------


def changes_record(changes: Changes) -> dict[str, Any]:
    """What moved, for a program; values as printed, in the unit of the second design."""
    return {
        "old": changes.old,
        "new": changes.new,
        "words": [_moved_record(moved) for moved in changes.words],
        "figures": [_moved_record(moved) for moved in changes.numbers],
        "parts": [
            {
                "mark": part.mark,
                "noun": part.noun,
                "names": list(part.names),
                "what": part.what,
                "old": part.old or None,
                "new": part.new or None,
            }
            for part in changes.parts
        ],
    }


def _moved_record(moved: Moved) -> dict[str, Any]:
    return {
        "names": list(moved.names),
        "old": moved.old,
        "new": moved.new,
        "unit": moved.unit,
        "written": moved.written,
    }


def changes_lines(changes: Changes) -> tuple[str, ...]:
    """What moved, for people: what was changed, what follows from it, the parts."""
    if changes.nothing:
        return ("Nothing moved.",)
    sections = {
        "Changed": [
            moved.sentence for moved in (*changes.words, *changes.numbers) if moved.written
        ],
        "Follows from it": [m.sentence for m in changes.numbers if not m.written],
        "Parts": [part.sentence for part in changes.parts],
    }
    return tuple(
        line
        for heading, sentences in sections.items()
        if sentences
        for line in (heading, *(f"  {sentence}" for sentence in sentences))
    )
