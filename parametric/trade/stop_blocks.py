"""The stop-block list: where along each piece its cuts lie, from every end one can measure from.

|<- from the foot ->|                 |<--- from the top --->|
|===================(      slot      )=======================|
^ blank's foot  ^ datum: the finished foot
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, named, plain
from parametric.model import Assembly, Face, Groove, Mitre, Part, Pocket, Slot, Trim, Vector
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.machine_work import face_word, stopped

Hand = Literal["left", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """From one place to another along a piece, mm."""

    low: Figure
    high: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Blocks:
    """Stop blocks for one hand of a stopped groove, mm from the middle of the cutter or blade.

    With the face on the fence and the cut edge down, `end` lies to the operator's `hand`.
    Fed from right to left: the piece drops in against the right block and stops at the left.
    `between` is how long a fence they need.
    """

    end: str
    hand: Hand
    right_block: Figure
    left_block: Figure
    between: Figure
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StopLine:
    """Where one cut lies along its pieces, mm; pieces of several marks that share it together.

    `datum` is the word for the leaf's own zero, `from_datum` the cut from there;
    `from_low` and `from_high` are from either end of the blank's face, with its words.
    `covers` are the part and the place of each cut in it, as in the milling list.
    """

    marks: tuple[str, ...]
    nouns: tuple[str, ...]
    faces: tuple[str, ...]
    cut: str
    number: int
    names: tuple[str, ...]
    datum: str
    from_datum: Span
    low_word: str
    high_word: str
    from_low: Span
    from_high: Span
    centre: Figure
    blocks: tuple[Blocks, ...]
    covers: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthStop:
    """One stop of the crosscut saw, mm: everything that is cut to this length together.

    Mitred pieces are measured over the points.
    """

    length: Figure
    over_points: bool
    pieces: tuple[tuple[str, str, int], ...]
    number: Figure
    spares: int


Found = tuple[Part, int, Slot | Groove | Pocket]


def stop_list(resolved: Resolved, assembly: Assembly) -> tuple[StopLine, ...]:
    """Every slot, stopped groove and pocket along its piece, from the foot up."""
    feet = {rail.name: rail.foot for leaf in resolved.leaves for rail in leaf.rails}
    lines: dict[tuple[object, ...], list[Found]] = {}
    for group in assembly.groups:
        for part in group.parts:
            for index, cut in enumerate(() if part.supplied else part.cuts):
                if not isinstance(cut, (Slot, Groove, Pocket)) or _runs_through(cut, part):
                    continue
                low, high = span(cut)
                ends = cut.face in ("low end", "high end")
                key = (
                    part.mark if ends else "",
                    round(float(part.blank.length), 6),
                    "ends" if ends else face_word(part, cut.face) if _edge(cut.face) else "faces",
                    cut.name,
                    round(float(low), 6),
                    round(float(high), 6),
                    round(float(feet.get(part.name, 0.0)), 6),
                )
                lines.setdefault(key, []).append((part, index, cut))
    return tuple(_line(found, feet) for found in lines.values())


def _edge(face: Face) -> bool:
    return face in ("low edge", "high edge")


def _runs_through(cut: Slot | Groove | Pocket, part: Part) -> bool:
    return isinstance(cut, Groove) and not stopped(cut, part)


def span(cut: Slot | Groove | Pocket) -> tuple[float, float]:
    """Where a cut begins and ends along its face's first axis, mm."""
    match cut:
        case Slot() | Groove():
            return cut.u0, cut.u1
        case Pocket():
            return cut.u - cut.length / 2, cut.u + cut.length / 2


def _line(found: list[Found], feet: Mapping[str, Figure]) -> StopLine:
    part, _, cut = found[0]
    ends = cut.face in ("low end", "high end")
    low, high = span(cut)
    whole = part.blank.width if ends else part.blank.length
    zero, datum = _datum(part, ends, feet)
    middle = (low + high) / 2
    marks = tuple(dict.fromkeys(p.mark for p, _, _ in found))
    place = join(
        "stop blocks", f"{' '.join(marks)} {cut.name.replace(',', '')} {plain(middle + zero)}"
    )

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    low_face: Face = "low edge" if ends else "low end"
    high_face: Face = "high edge" if ends else "high end"
    return StopLine(
        marks=marks,
        nouns=tuple(dict.fromkeys(p.noun for p, _, _ in found)),
        faces=tuple(dict.fromkeys(face_word(p, c.face) for p, _, c in found)),
        cut=cut.name,
        number=len(found),
        names=tuple(dict.fromkeys(p.name for p, _, _ in found)),
        datum=datum,
        from_datum=Span(
            low=at("low from datum", low + zero), high=at("high from datum", high + zero)
        ),
        low_word=face_word(part, low_face),
        high_word=face_word(part, high_face),
        from_low=Span(low=at("low from low end", low), high=at("high from low end", high)),
        from_high=Span(
            low=at("low from high end", whole - low), high=at("high from high end", whole - high)
        ),
        centre=at("middle from low end", middle),
        blocks=tuple(_blocks(found, place)) if isinstance(cut, Groove) else (),
        covers=tuple((p.name, index) for p, index, _ in found),
    )


def _datum(part: Part, ends: bool, feet: Mapping[str, Figure]) -> tuple[Figure, str]:
    """What is added to a place on the blank to give its place in the leaf, and the leaf's zero."""
    if ends and part.name in feet:
        return feet[part.name], "finished foot of the leaf"
    trimmed = Figure(0.0)
    for cut in part.cuts:
        if isinstance(cut, Trim) and cut.end == "low end":
            trimmed = trimmed - cut.length
    upright = abs(part.placement.x[2]) > 0.5
    return trimmed, "finished foot of the leaf" if upright else "left shoulder"


def _blocks(found: list[Found], place: str) -> Iterator[Blocks]:
    """Block positions for either hand.

    A cutter's middle stays half its width inside each end; a blade is at its full depth
    where its middle is, and its ramp lies beyond.
    """
    hands: dict[Hand, list[Found]] = {}
    for part, index, cut in found:
        hands.setdefault(low_end_hand(part, cut.face), []).append((part, index, cut))
    for hand, own in hands.items():
        part, _, cut = own[0]
        assert isinstance(cut, Groove)
        half = 0.0 if cut.ramp else (cut.making.cutter or cut.width) / 2
        first, last = cut.u0 + half, cut.u1 - half
        length = part.blank.length
        # Fed to the left, the cutter works from the piece's left to its right.
        right, left = (last, length - first) if hand == "right" else (length - first, last)
        yield Blocks(
            end=face_word(part, "low end"),
            hand=hand,
            right_block=named(join(place, f"right block {hand} hand"), right),
            left_block=named(join(place, f"left block {hand} hand"), left),
            between=named(join(place, f"between the blocks {hand} hand"), left + right),
            names=tuple(p.name for p, _, _ in own),
        )


def low_end_hand(part: Part, cut_face: Face) -> Hand:
    """To which hand a piece's low end lies: cut edge down on the table, face away on the fence.

    The operator's right is then the outward direction of the cut edge crossed with that of
    the front of the leaf.
    """
    y = part.placement.y
    down = y if cut_face == "high edge" else (-y[0], -y[1], -y[2])
    right = _cross(down, (0.0, -1.0, 0.0))
    along = sum(a * b for a, b in zip(part.placement.x, right, strict=True))
    return "left" if along > 0 else "right"


def _cross(a: Vector, b: Vector) -> Vector:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def length_stops(assembly: Assembly, glued: frozenset[str]) -> tuple[LengthStop, ...]:
    """Every length of timber once, longest first, with all that is cut to it.

    Args:
        assembly: the parts.
        glued: marks of panels glued from boards: too wide for a stop, sawn by their own sheet.

    Sheet material is sawn on the panel saw, to its size in the cut list.
    """
    stops: dict[tuple[float, bool], dict[str, list[Part]]] = {}
    for part in assembly.parts:
        if part.supplied or part.material.look != "timber" or part.mark in glued:
            continue
        mitred = any(isinstance(cut, Mitre) for cut in part.cuts)
        key = (round(float(part.blank.length), 6), mitred)
        stops.setdefault(key, {}).setdefault(part.mark, []).append(part)
    return tuple(
        _length_stop(mitred, marks)
        for (_, mitred), marks in sorted(stops.items(), key=lambda s: (-s[0][0], s[0][1]))
    )


def _length_stop(mitred: bool, marks: Mapping[str, list[Part]]) -> LengthStop:
    first = next(iter(marks.values()))[0]
    pieces = tuple((mark, own[0].noun, len(own)) for mark, own in marks.items())
    place = join("length stop", " ".join(marks))
    return LengthStop(
        length=named(join(place, "length"), first.blank.length),
        over_points=mitred,
        pieces=pieces,
        number=named(
            join(place, "pieces"), Figure(sum(number for _, _, number in pieces), unit=""), ""
        ),
        spares=1,
    )
