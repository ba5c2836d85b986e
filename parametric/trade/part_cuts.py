"""Every cut of every made part as the bench reads it: where, how large, how made; a row a cut.

Places along are read from the finished foot (the finished left end of a rail), negative in
wood that is trimmed away; places across the thickness are read from the face. Each number
that a cut has of its own is one `Size` or one `Said` of its row, and no two rows share one,
so a list that prints every row once has said everything there is to say of the part.

    row  cut and what goes in it   into         from   to   across  width  deep  ends
    3    slot, tenon in lock rail  inner edge    754  816       20     12    46  r 6
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import assert_never

from parametric.figures import Figure, named, tilt
from parametric.model import (
    Assembly,
    Cut,
    Drilled,
    End,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
    face_depth,
)
from parametric.names import join
from parametric.outlines import arc_of, bounds_of, edges
from parametric.trade.cut_order import place_of
from parametric.trade.cut_quantities import Quantity
from parametric.trade.groove_ends import runs_out
from parametric.trade.moulded_runs import edge_beside, run_sizes
from parametric.trade.shaped_sizes import (
    Curve,
    bevel_of,
    curve_of,
    is_rectangle,
    narrow_side,
    slant_of,
)

_PLAIN: Mapping[Face, str] = {
    "low end": "left end",
    "high end": "right end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "back",
    "high face": "face",
}
"""What a face is called that has no word of its own, as the piece is drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """One number of a cut: mm or deg; `fine` numbers are printed to the finer step."""

    quantity: Quantity
    figure: Figure
    fine: bool = False
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """One thing about a cut that is a word and no number."""

    quantity: Quantity
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRow:
    """One cut with its number in the part, what it is, what it goes into and its degrees."""

    number: int
    cut: Cut
    into: str
    degrees: tuple[Size | Said, ...]

    def size(self, quantity: Quantity) -> Figure | None:
        """A number of the row; None where the cut has none."""
        found = (d for d in self.degrees if isinstance(d, Size) and d.quantity == quantity)
        return next((size.figure for size in found), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartCuts:
    """One type of part, the names of all that are made of it, and every cut; sizes mm.

    `part` is the first of them: the others are the same piece, however it is turned.
    """

    part: Part
    twins: tuple[Part, ...]
    rows: tuple[CutRow, ...]
    zero: Figure
    finished_length: Figure
    blank_length: Figure
    width: Figure
    thickness: Figure
    trimmed: Figure

    @property
    def names(self) -> tuple[str, ...]:
        """Every part that carries the mark."""
        return (self.part.name, *(twin.name for twin in self.twins))


def part_cuts(assembly: Assembly) -> tuple[PartCuts, ...]:
    """Every type of part that is made in the shop and has a cut, in the order of the assembly."""
    types: dict[str, list[Part]] = {}
    for part in assembly.parts:
        if not part.supplied and part.cuts and part.material.look != "glass":
            types.setdefault(part.mark, []).append(part)
    return tuple(_of_type(parts[0], tuple(parts[1:])) for parts in types.values())


def face_side(part: Part) -> Face:
    """Which side of the blank is the face; the high one where the piece has no face of its own.

    Of a board of a case it is the side that is cut, where the other is not.
    """
    if part.faces.get("low face") == "face":
        return "low face"
    cut = {
        cut.face
        for cut in part.cuts
        if isinstance(cut, Slot | Pocket | Groove | Drilled | ScrewPocket | Shaped)
    }
    turned = part.material.look == "board" and "low face" in cut and "high face" not in cut
    return "low face" if turned else "high face"


def face_name(part: Part, face: Face) -> str:
    """The shop's word for a face of a part, else what it is called as the piece is drawn."""
    return part.faces.get(face, _PLAIN[face])


def trimmed(part: Part, end: End) -> float:
    """What comes off an end after glue-up, mm."""
    own = [cut.length for cut in part.cuts if isinstance(cut, Trim) and cut.end == end]
    return sum(own[1:], own[0]) if own else 0.0


def _of_type(part: Part, twins: tuple[Part, ...]) -> PartCuts:
    def at(quantity: str, value: float) -> Figure:
        return named(join(part.mark, quantity), value)

    low, high = trimmed(part, "low end"), trimmed(part, "high end")
    blank = part.blank
    drawn = [_row(0, cut, part) for cut in part.cuts]
    order = sorted(range(len(drawn)), key=lambda i: (*place_of(drawn[i].cut, part), i))
    rows = tuple(_row(n, drawn[i].cut, part) for n, i in enumerate(order, 1))
    return PartCuts(
        part=part,
        twins=twins,
        rows=rows,
        zero=at("datum", Figure(0)),
        finished_length=at("finished length", blank.length - low - high),
        blank_length=at("blank length", blank.length),
        width=at("blank width", blank.width),
        thickness=at("blank thickness", blank.thickness),
        trimmed=at("trimmed off the foot", low),
    )


def _row(number: int, cut: Cut, part: Part) -> CutRow:
    return CutRow(
        number=number,
        cut=cut,
        into=_into(cut, part),
        degrees=tuple(_Degrees(part, number).of(cut)),
    )


def _into(cut: Cut, part: Part) -> str:
    match cut:
        case Shaped() if (bevel := bevel_of(cut, part.blank)) is not None:
            return face_name(part, bevel.edge)
        case Slot() | Pocket() | Groove() | Drilled() | Island() | Shaped():
            return face_name(part, cut.face)
        case ScrewPocket():
            return f"{face_name(part, cut.face)}, to the {face_name(part, cut.end)}"
        case Moulded():
            return f"{face_name(part, cut.face)}, {face_name(part, edge_beside(cut))}"
        case Trim() | Mitre():
            return face_name(part, cut.end)
        case RaisedBevel():
            return f"{face_name(part, 'high face')}, all round"
        case Tongue():
            return "edges, all round"
        case RoundArrises():
            return "four long edges"
        case RoundCorners():
            return "four corners"
        case _:
            assert_never(cut)


class _Degrees:
    """What is free in each kind of cut, named for one row of one part."""

    def __init__(self, part: Part, number: int) -> None:
        self._part = part
        self._place = join(part.mark, f"cut {number}")

    def of(self, cut: Cut) -> Iterator[Size | Said]:
        """Every degree of a cut, each once."""
        match cut:
            case Slot():
                yield from self._span(cut.face, cut.u0, cut.u1)
                yield self._across(cut.face, cut.v)
                yield self._size("width", cut.width)
                yield from self._depth(cut.face, cut.depth, cut.surface)
                yield self._size("ends", cut.width / 2, before="r")
            case Pocket():
                half = cut.length / 2
                yield from self._span(cut.face, cut.u - half, cut.u + half, fine=True)
                yield self._across(cut.face, cut.v)
                yield self._size("width", cut.width)
                yield from self._depth(cut.face, cut.depth, cut.surface)
                if float(cut.corner):
                    yield self._size("ends", cut.corner, before="r")
                else:
                    yield Said(quantity="ends", words="square")
            case Groove():
                yield from self._span(cut.face, cut.u0, cut.u1)
                yield self._across(cut.face, cut.v)
                yield self._size("width", cut.width)
                yield from self._depth(cut.face, cut.depth, cut.surface)
                yield self._groove_ends(cut)
            case Drilled():
                yield from self._drilled(cut)
            case ScrewPocket():
                yield from self._screw_pocket(cut)
            case Shaped():
                yield from self._shaped(cut)
            case Moulded():
                own = run_sizes(cut, self._part.blank)
                yield from self._span(cut.face, Figure(own.low), Figure(own.high))
                yield self._size("width", Figure(own.width))
                yield self._size("deep", Figure(own.depth))
                yield Said(quantity="ends", words=own.ends)
            case Trim():
                yield from self._trim(cut)
            case Mitre():
                yield from self._mitre(cut)
            case RaisedBevel():
                yield self._size("run in", cut.run)
                yield self._size("at the edge", cut.edge)
                yield self._size("at the fillet", cut.foot)
                yield Size(
                    quantity="angle",
                    figure=named(
                        join(self._place, "angle"), tilt(cut.foot - cut.edge, cut.run), "deg"
                    ),
                )
            case Tongue():
                yield self._size("thick", cut.thickness)
                yield self._size("long", cut.length)
                yield self._size("off the back", cut.back)
            case RoundArrises() | RoundCorners():
                yield self._size("round", cut.radius, before="r")
            case Island():
                yield self._size("long", cut.length)
                yield self._size("width", cut.width)
                yield self._size("deep", cut.depth)
                yield self._size("round", cut.corner, before="r")
                yield self._size("outside", cut.outer, before="r")
            case _:
                assert_never(cut)

    def _drilled(self, cut: Drilled) -> Iterator[Size | Said]:
        """The middle of the first hole; of a row how many, how far apart and which way."""
        ends = cut.face in ("low end", "high end")
        foot = 0.0 if ends else trimmed(self._part, "low end")
        yield self._size("first at", cut.u - foot)
        if cut.count > 1:
            yield Said(quantity="holes", words=str(cut.count))
            up = "" if cut.along == "u" else "across"
            yield self._size("apart", cut.pitch, after=up)
        yield self._across(cut.face, cut.v)
        yield self._size("width", cut.diameter, after="dia")
        behind = face_depth(cut.face, self._part.blank)
        deep, *begins = self._depth(cut.face, cut.depth, cut.surface)
        through = float(cut.depth) >= float(behind) - 1e-9
        yield Said(quantity="deep", words="through") if through else deep
        yield from begins

    def _screw_pocket(self, cut: ScrewPocket) -> Iterator[Size | Said]:
        """Where its axis enters the face, how it goes on from there; of a row how many, and apart."""
        length = self._part.blank.length
        at = cut.mouth if cut.end == "low end" else length - cut.mouth
        yield self._size("first at", at - trimmed(self._part, "low end"))
        if cut.count > 1:
            yield Said(quantity="holes", words=str(cut.count))
            yield self._size("apart", cut.pitch, after="across")
        yield self._across(cut.face, cut.v)
        yield self._size("width", cut.wide, after="dia")
        yield self._size("deep", cut.deep, after="along it")
        angle = named(join(self._place, "angle"), cut.angle, "deg")
        yield Size(quantity="angle", figure=angle)
        yield self._size("narrow", cut.pilot, before="pilot", after="dia")

    def _shaped(self, cut: Shaped) -> Iterator[Size | Said]:
        """A bevel by its angle, a curve by its heights; any other shape by its box."""
        bevel = bevel_of(cut, self._part.blank)
        if bevel is not None:
            yield self._size("width", Figure(bevel.inwards))
            lean = tilt(Figure(bevel.inwards), Figure(bevel.over))
            yield Size(quantity="angle", figure=named(join(self._place, "angle"), lean, "deg"))
            yield self._size("long", Figure(bevel.long))
            return
        u0, v0, u1, v1 = bounds_of(cut.outline)
        yield from self._span(cut.face, Figure(u0), Figure(u1))
        curve = curve_of(cut, self._part.blank)
        if curve is not None:
            yield from self._heights(curve)
        else:
            yield self._across(cut.face, Figure((v0 + v1) / 2))
            yield self._size("width", Figure(v1 - v0))
            narrow = narrow_side(cut.outline)
            if narrow is not None:
                yield self._size("narrow", Figure(narrow))
        behind = face_depth(cut.face, self._part.blank)
        if float(cut.depth) - float(cut.surface) >= float(behind) - 1e-9:
            yield Said(quantity="deep", words="through")
        else:
            yield from self._depth(cut.face, cut.depth, cut.surface)
        radii = [arc.radius for a, b in edges(cut.outline) if (arc := arc_of(a, b)) is not None]
        if curve is not None and not curve.radii:
            rise = abs(curve.right - curve.left)
            lean = tilt(Figure(rise), Figure(curve.high - curve.low))
            yield Size(quantity="angle", figure=named(join(self._place, "angle"), lean, "deg"))
        elif curve is not None:
            yield self._size("round", Figure(curve.radii[0]), before="r")
            if curve.radii[-1] > curve.radii[0] + 1e-6:
                yield self._size("outside", Figure(curve.radii[-1]), before="r")
        elif radii:
            yield self._size("ends", Figure(min(radii)), before="r")
        elif (slant := slant_of(cut, self._part.blank)) is not None:
            lean = tilt(Figure(slant.along), Figure(slant.across))
            yield Size(quantity="angle", figure=named(join(self._place, "angle"), lean, "deg"))
            yield Said(quantity="ends", words=_long_side(self._part, slant.long))
        else:
            square = is_rectangle(cut.outline)
            yield Said(quantity="ends", words="square" if square else "aslant")

    def _heights(self, curve: Curve) -> Iterator[Size]:
        """The heights of a curve above the low edge, and how wide the cut beside it is."""
        if curve.wide is not None:
            yield self._size("width", Figure(curve.wide))
        yield self._size("left height", Figure(curve.left))
        yield self._size("right height", Figure(curve.right))
        if curve.crowned:
            yield self._size("crown", Figure(curve.crown))

    def _size(
        self,
        quantity: Quantity,
        value: float,
        *,
        fine: bool = True,
        before: str = "",
        after: str = "",
    ) -> Size:
        figure = named(join(self._place, quantity), value)
        return Size(quantity=quantity, figure=figure, fine=fine, before=before, after=after)

    def _span(self, face: Face, low: float, high: float, *, fine: bool = False) -> Iterator[Size]:
        """From and to: along the part from its finished foot, on an end across it."""
        foot = 0.0 if face in ("low end", "high end") else trimmed(self._part, "low end")
        yield self._size("from", low - foot, fine=fine)
        yield self._size("to", high - foot, fine=fine)

    def _across(self, face: Face, v: float) -> Size:
        """The middle: in edges and ends from the face, on the broad sides from the low edge."""
        flat = face in ("low face", "high face")
        turned = not flat and face_side(self._part) == "high face"
        return self._size("across", self._part.blank.thickness - v if turned else v)

    def _depth(self, face: Face, depth: float, surface: float) -> Iterator[Size]:
        """How deep from the finished surface, and how far below it the cut begins, if it does."""
        off = trimmed(self._part, face) if face in ("low end", "high end") else 0.0
        yield self._size("deep", depth - off)
        begins = surface - off
        if abs(float(begins)) > 1e-9:
            yield self._size("begins", begins)

    def _groove_ends(self, cut: Groove) -> Size | Said:
        stopped = runs_out(cut, self._part.blank, self._part.cuts).count(False)
        open_too = "one end, one open" if stopped == 1 else ""
        if not stopped:
            return Said(quantity="ends", words="open")
        if float(cut.ramp):
            return self._size("ends", cut.ramp, before="saw r", after=open_too)
        if float(cut.corner):
            after = "squared" if cut.squared else ""
            return self._size("ends", cut.corner, before="r", after=f"{after} {open_too}".strip())
        return Said(quantity="ends", words=f"square {open_too}".strip())

    def _trim(self, cut: Trim) -> Iterator[Size]:
        if cut.end == "low end":
            yield self._size("from", Figure(0) - cut.length, fine=False)
            yield self._size("to", Figure(0), fine=False)
            return
        low, high = (trimmed(self._part, end) for end in ("low end", "high end"))
        top = self._part.blank.length - low - high
        yield self._size("from", top, fine=False)
        yield self._size("to", top + cut.length, fine=False)

    def _mitre(self, cut: Mitre) -> Iterator[Size | Said]:
        """From the point, on the edge that stays long, to where the short edge begins."""
        part = self._part
        low, high = trimmed(part, "low end"), trimmed(part, "high end")
        wide, top = part.blank.width, part.blank.length - low - high
        point = Figure(0) if cut.end == "low end" else top
        yield self._size("from", point if cut.end == "low end" else top - wide, fine=False)
        yield self._size("to", Figure(0) + wide if cut.end == "low end" else top, fine=False)
        yield Size(
            quantity="angle",
            figure=named(join(self._place, "angle"), tilt(wide, wide), "deg"),
        )
        yield Said(quantity="ends", words=_long_side(part, cut.keeps))


def _long_side(part: Part, keeps: Face) -> str:
    return f"{face_name(part, keeps)} stays long"
