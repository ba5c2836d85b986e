"""The ends of a part, each beside the end of the face that it shares an edge with."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.finished_outline import not_left
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.part_sheets.balloons import Call, place_beside
from parametric.drawing.part_sheets.cross_sections import drawn_rule, on_end
from parametric.drawing.part_sheets.cut_shapes import lines_of, own_side, target
from parametric.drawing.part_sheets.running_sizes import zero_ring
from parametric.drawing.part_sheets.shaped_cuts import Bow
from parametric.drawing.part_sheets.strips import Strip
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.pieces import Piece, cut_through
from parametric.drawing.plane import Polygon, edges
from parametric.drawing.primitives import Arc, Label, Stroke
from parametric.drawing.printing import Rules
from parametric.drawing.sheet import View
from parametric.model import Drilled, Groove, Placement, Pocket, Shaped, Slot
from parametric.outlines import Outline, Vertex, bounds_of
from parametric.trade.part_cuts import CutRow, PartCuts, Size

_INSIDE = 1e-4
"""An end is looked at a hair inside the wood, mm."""
_FIRST = 6.5
"""From an end to its first dimension, mm on paper."""
APART = 9.4
"""Between an end and the face it folds out from, mm on paper."""
NUMBERS = 4.0
"""From an end to its running sizes, mm on paper."""
_NAME = 9.0
"""From the last dimension under an end to below its name, mm on paper."""


def lay_end(draft: Draft, part: Unfolded, side: Side, face: Strip) -> View:
    """Draw an end beside the face, at the face's height and scale."""
    scale = face.lie.scale
    wide = part.thickness / scale
    x = face.lie.left - APART - wide if side == "left" else face.lie.right + APART
    view = draft.view(f"{part.part.mark} {part.word(side)}", scale, (x, face.base))
    box = ((0.0, 0.0), (part.thickness, 0.0), (part.thickness, part.width), (0.0, part.width))
    left = _wood_at(part, side) or box
    draft.add(Stroke(layer="edge", points=view.path(left), closed=True, view=view.name))
    for off in not_left(_outline(box), (_outline(left),)):
        draft.add(Stroke(layer="adjacent", points=view.path(off), view=view.name))
    for cut in part.part.cuts:
        for line in lines_of(cut, part):
            if line.side == side and own_side(cut, part) == side:
                if isinstance(line, Bow):
                    draft.add(_arc(line, view))
                    continue
                draft.add(
                    Stroke(
                        layer=line.layer,
                        points=view.path(line.points),
                        closed=line.closed,
                        view=view.name,
                    )
                )
    return view


def _wood_at(part: Unfolded, side: Side) -> Polygon:
    """What is left of an end that shapes run out of, as the end shows it; empty where none does."""
    shapes = [cut for cut in part.part.cuts if isinstance(cut, Shaped) and "face" in cut.face]
    low, high = part.foot, part.foot + part.length
    at = low + _INSIDE if side == "left" else high - _INSIDE
    if not any(bounds_of(cut.outline)[0] < at < bounds_of(cut.outline)[2] for cut in shapes):
        return ()
    stands = Placement(x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0))
    cut = cut_through(Piece(part=part.part, group="", stands=stands), "level", at)
    assert cut is not None
    ring = tuple(part.place(side, (at, y, z)) for y, z in cut.outline)
    turned = sum(a[0] * b[1] - b[0] * a[1] for a, b in edges(ring))
    return ring if turned > 0 else ring[::-1]


def _outline(ring: Polygon) -> Outline:
    return tuple(Vertex(x, y) for x, y in ring)


def _arc(bow: Bow, view: View) -> Arc:
    return Arc(
        layer=bow.layer,
        centre=view.at(bow.centre),
        radius=bow.radius / view.scale,
        start=bow.start,
        end=bow.end,
        view=view.name,
    )


def name_end(draft: Draft, part: Unfolded, side: Side, view: View) -> None:
    """What the shop calls an end, under it and under what is measured there."""
    middle, low = view.x(part.thickness / 2), view.y(0.0)
    places = [(middle, low - drop) for drop in (4.4, 8.4, 12.4, 17.0, 21.0, 25.0, 29.0)]
    draft.add_first([Label(text=part.word(side), at=place, anchor="centre") for place in places])


def balloon_end(
    draft: Draft, own: PartCuts, part: Unfolded, side: Side, view: View
) -> tuple[int, ...]:
    """Balloons between an end and the face, each level with its cut; returns their numbers."""
    calls = [
        Call(number=row.number, target=view.at(target(row.cut, part)), view=view.name)
        for row in own.rows
        if own_side(row.cut, part) == side
    ]
    x = view.x(part.thickness) + APART / 2 if side == "left" else view.x(0.0) - APART / 2
    return place_beside(draft, calls, x)


def end_sizes(own: PartCuts, part: Unfolded, side: Side) -> list[Size]:
    """From and to of every cut in an end, but of those that run out of both edges."""
    found: dict[float, Size] = {}
    for row in own.rows:
        cut = row.cut
        if not isinstance(cut, (Slot, Groove, Pocket, Drilled)) or own_side(cut, part) != side:
            continue
        for size in row.degrees:
            if isinstance(size, Size) and size.quantity in ("from", "to", "first at"):
                at = round(float(size.figure), 4)
                if 0.0 < at < round(part.width, 4):
                    found.setdefault(at, size)
    return [found[at] for at in sorted(found)]


def measure_end(
    draft: Draft, own: PartCuts, part: Unfolded, side: Side, view: View, rules: Rules
) -> None:
    """Running sizes up an end from the low edge of the part."""
    sizes = end_sizes(own, part, side)
    if not sizes:
        return
    outer = view.x(0.0) if side == "left" else view.x(part.thickness)
    away = -1.0 if side == "left" else 1.0
    numbers = outer + away * NUMBERS
    places = [_place(0.0, own.zero, part, outer, rules, fine=False)]
    places += [
        _place(float(size.figure), size.figure, part, outer, rules, fine=size.fine)
        for size in sizes
    ]
    place_ordinates(draft, view, "up", places, numbers)
    zero_ring(draft, view, (outer + away * 1.9, view.y(part.rise(0.0))))


def dimension_end(
    draft: Draft, own: PartCuts, part: Unfolded, side: Side, view: View, rules: Rules
) -> None:
    """Width and middle of what is too shallow for a section, under the end's name."""
    chains: list[Chain] = []
    for size, ends in _measured_across(own, part, side):
        line = view.y(0.0) - _FIRST - rules.fine.next_chain * len(chains)
        stops = tuple(Stop(at=at, foot=view.y(0.0)) for at in sorted(ends))
        rule = drawn_rule(size, rules)
        chains.append(
            Chain(
                view=view,
                axis="across",
                line=line,
                stops=stops,
                links=(Link(figure=size.figure, rule=rule),),
            )
        )
    place_chains(draft, chains)


def below_bored_end(own: PartCuts, part: Unfolded, side: Side, rules: Rules) -> float:
    """What the sizes and the name of an end that is measured itself take below it, mm on paper."""
    if not any(_measured_here(row, part, side) for row in own.rows):
        return 0.0
    chains = sum(1 for _ in _measured_across(own, part, side))
    return _FIRST + rules.fine.next_chain * (chains - 1) + _NAME


def _measured_across(
    own: PartCuts, part: Unfolded, side: Side
) -> Iterator[tuple[Size, tuple[float, float]]]:
    """Each different width and middle across an end, and between which places it lies."""
    seen: set[float] = set()
    for row in own.rows:
        cut = row.cut
        if not _measured_here(row, part, side):
            continue
        assert isinstance(cut, (Slot, Groove, Pocket, Drilled))
        for size in row.degrees:
            if not isinstance(size, Size) or size.quantity not in ("width", "across"):
                continue
            if round(float(size.figure), 4) in seen:
                continue
            seen.add(round(float(size.figure), 4))
            half = float(cut.diameter if isinstance(cut, Drilled) else cut.width) / 2
            spread_over = (-half, half) if size.quantity == "width" else (0.0, 0.0)
            low, high = (
                part.on_face(cut.face, 0.0, float(cut.v) + off, 0.0, side)[0] for off in spread_over
            )
            if size.quantity == "across":
                high = part.thickness if side == "left" else 0.0
            yield size, (low, high)


def _measured_here(row: CutRow, part: Unfolded, side: Side) -> bool:
    """Whether a cut's width and middle are measured on this end, and in no section."""
    bored = isinstance(row.cut, Drilled)
    return (bored or on_end(row, part)) and own_side(row.cut, part) == side


def _place(
    y: float, figure: float, part: Unfolded, start: float, rules: Rules, *, fine: bool
) -> Place:
    return Place(
        at=part.rise(y),
        figure=figure,  # type: ignore[arg-type]
        start=start,
        rule=rules.fine if fine else rules.wood,
        down=part.turned,
    )


def widest_number(own: PartCuts, part: Unfolded, side: Side, rules: Rules) -> float:
    """How far what is measured on an end reaches out beside it, mm on paper."""
    rows = [
        _letters((rules.fine if size.fine else rules.wood).dimension(size.figure), rules)
        for size in end_sizes(own, part, side)
    ]
    across = [
        _letters(drawn_rule(size, rules).text(size.figure), rules)
        for row in own.rows
        if _measured_here(row, part, side)
        for size in row.degrees
        if isinstance(size, Size) and size.quantity in ("width", "across")
    ]
    return NUMBERS + max([*rows, *across]) + 1.0 if rows or across else 0.0


def _letters(text: str, rules: Rules) -> float:
    return Label(text=text, at=(0.0, 0.0), stacked=rules.wood.stacked).ink.width
