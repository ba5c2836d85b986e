"""Rails with a curved underside at full size, seen from the face.

+--------------------------+   a rectangle of the blank from shoulder to shoulder
|                  __..--''|   dashed: how far the glass rebate reaches, from the back
|          __..--''////////|   heavy: the curve; the hatched side is waste
| __..--''/////////        |
+''------------------------+   the springing line, which is the blank's lower edge
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.full_size.arcs import ROOM, arc_table, arc_words
from parametric.drawing.full_size.outlines import STRIP
from parametric.drawing.full_size.template import Laid, Opening, Template, height_of_words
from parametric.drawing.full_size.tiles import GRID
from parametric.drawing.layers import Layer
from parametric.drawing.plane import Box, Point
from parametric.drawing.sheet import TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Table
from parametric.figures import Figure
from parametric.outlines import Outline, edges, moved, turned_over
from parametric.parts.rebates import between, rail_chain, under
from parametric.resolve.head import LeafHead
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Rebate
from parametric.resolve.rail import Rail

_BESIDE, _LINE = 14.4, 8.0
"""Paper at either end, mm, for a row of dimensions: no more, so that the first tile reaches
from there to the second column of register crosses, the first of which is at the shoulder.
"""
_UNDER, _OVER = 30.0, 12.0
_INSET = 8.0
_CLEAR = 10.0
"""From a column of register crosses to words, mm."""
_LEAST = 0.05
"""A curve that stands no higher over the springing at a shoulder springs there, mm."""
_DIGITS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Arched:
    """A rail with its curves in its own frame: from its left shoulder, from the springing line."""

    leaf: Leaf
    rail: Rail
    head: LeafHead
    mark: str
    curve: Outline
    rebate: Rebate | None
    rebated: Outline | None

    @property
    def long(self) -> float:
        return float(self.rail.length)

    @property
    def shapes(self) -> tuple[Outline, ...]:
        """What must be the same for one template to serve."""
        inner = () if self.rebated is None else (between(self.curve, self.rebated),)
        return (under(self.curve), *inner)


def rail_templates(job: Subject, title: TitleBlock) -> Iterator[Template]:
    """One for each different curve; for its mirror image the same one is turned over."""
    found: dict[tuple[object, ...], list[tuple[_Arched, bool]]] = {}
    for own in _arched(job):
        size = (round(own.long, _DIGITS), round(float(own.rail.height), _DIGITS))
        drawn = (*size, _key(own.shapes))
        over = (*size, _key(tuple(turned_over(o, across=own.long) for o in own.shapes)))
        if drawn not in found and over in found:
            found[over].append((own, True))
        else:
            found.setdefault(drawn, []).append((own, False))
    for uses in found.values():
        yield _template(job, title, uses)


def _arched(job: Subject) -> Iterator[_Arched]:
    marks = {part.name: part.mark for part in job.assembly.parts}
    for leaf in job.resolved.leaves:
        for rail in leaf.rails:
            if rail.head is None:
                continue
            rebate = next(
                (lite.rebate for lite in leaf.lites if lite.rebate and lite.top == rail.foot), None
            )
            yield _Arched(
                leaf=leaf,
                rail=rail,
                head=rail.head,
                mark=marks[rail.name],
                curve=_from_shoulder(rail, rail_chain(leaf, rail, rail.head)),
                rebate=rebate,
                rebated=None
                if rebate is None
                else _from_shoulder(
                    rail, rail_chain(leaf, rail, rail.head, out=float(rebate.frame))
                ),
            )


def _from_shoulder(rail: Rail, chain: Outline) -> Outline:
    """A curve of the rail's blank, from its left shoulder."""
    return moved(chain, -float(rail.shoulders[0]), 0.0)


def _key(shapes: tuple[Outline, ...]) -> tuple[object, ...]:
    """Some outlines by their edges, wherever they begin."""
    return tuple(
        tuple(
            sorted(
                tuple(round(value, _DIGITS) + 0.0 for value in (a.x, a.y, a.bulge, b.x, b.y))
                for a, b in edges(shape)
            )
        )
        for shape in shapes
    )


def _template(job: Subject, title: TitleBlock, uses: list[tuple[_Arched, bool]]) -> Template:
    own = uses[0][0]
    long, tall = own.long, float(own.rail.height)
    rule = job.rules.fine
    words = _words(job, uses, title)
    table = arc_table(own.curve, rule)
    room = _words_in(own, words, table)
    outside = room.x0 > long
    right = room.x1 + 2.0 if outside else long + _BESIDE
    low = min(-_UNDER, room.y0 - 4.0)
    return Template(
        view=f"template of {own.mark}",
        document="Rail template",
        second_line="Underside of "
        + ", ".join(
            dict.fromkeys(f"{use.mark}{' turned over' if turned else ''}" for use, turned in uses)
        ),
        plate=Box(-_BESIDE, low, right, tall + _OVER),
        openings=(Opening(outline=under(own.curve), waste="inside", cut=own.curve),),
        lines=tuple(_lines(own)),
        curves=() if own.rebated is None else (("hidden", own.rebated),),
        crosses=(
            Laid(at=(0.0, tall), words=("left shoulder",)),
            Laid(at=(long, tall), words=("right shoulder",)),
            Laid(at=(0.0, 0.0), words=("springing line",)),
            Laid(at=(long, 0.0), words=("springing line",)),
        ),
        chains=lambda view: _chains(job, own, view),
        words=words,
        words_in=room,
        table=table,
        grain="across",
        cross=(0.0, 0.0),
    )


def _lines(own: _Arched) -> Iterator[tuple[Layer, Point, Point]]:
    """The blank from shoulder to shoulder, the springing line past it, the middle of the arch."""
    long, tall = own.long, float(own.rail.height)
    corners: tuple[Point, ...] = ((0.0, 0.0), (long, 0.0), (long, tall), (0.0, tall))
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        yield "edge", a, b
    yield "datum", (-_LINE, 0.0), (0.0, 0.0)
    yield "datum", (long, 0.0), (long + _LINE, 0.0)
    middle = _middle(own)
    if middle is not None:
        yield "centre", (middle, -8.0), (middle, tall + 6.0)


def _middle(own: _Arched) -> float | None:
    """Where the highest of the arch is, from the left shoulder; None where it lies in no rail."""
    at = float(own.head.left + own.head.curve.crown_at - own.leaf.left_stile)
    return at if _LEAST < at < own.long - _LEAST else None


def _words(job: Subject, uses: list[tuple[_Arched, bool]], title: TitleBlock) -> tuple[str, ...]:
    own = uses[0][0]
    rule = job.rules.fine
    rebate = own.rebate
    sizes = (
        ()
        if rebate is None
        else (
            f"Dashed: glass rebate from the back, {rule.dimension(rebate.frame)} wide, "
            f"{rule.dimension(rebate.depth)} deep.",
        )
    )
    past = (
        ()
        if not float(own.rail.reach)
        else (f"The blank goes on {rule.dimension(own.rail.reach)} past either shoulder.",)
    )
    turned = [f"{use.mark}, leaf {use.leaf.letter}" for use, over in uses if over]
    return (
        f"{own.mark}, {own.rail.noun}",
        "As drawn, seen from the face: "
        + "; ".join(f"{use.mark}, leaf {use.leaf.letter}" for use, over in uses if not over),
        *((f"TURN OVER for {'; '.join(turned)}",) if turned else ()),
        *arc_words(own.curve, rule, corner="the left shoulder", level="the springing line"),
        *sizes,
        *past,
        "The hatched side is waste. The curve is the finished edge: with a guide bush the "
        "template is cut back by half of bush less cutter.",
        title.title,
        "  ".join(word for word in (title.number, title.fingerprint) if word),
    )


def _words_in(own: _Arched, words: tuple[str, ...], table: Table | None) -> Box:
    """In the wood over the curve where there is most of it, between two columns of crosses;
    beside the rail where there is too little.
    """
    tall = float(own.rail.height)
    need = height_of_words(words, table, ROOM, face=True)
    best: tuple[float, float] | None = None
    column = 0
    while column * GRID + _CLEAR + ROOM < own.long - _INSET:
        left = column * GRID + _CLEAR
        highest = _highest(own, left, left + ROOM) + _INSET
        if tall - _INSET - highest >= need and (best is None or highest < best[0]):
            best = (highest, left)
        column += 1
    if best is not None:
        return Box(best[1], tall - _INSET - need, best[1] + ROOM, tall - _INSET)
    left = (own.long + _BESIDE) // GRID * GRID + _CLEAR
    while left < own.long + _BESIDE:
        left += GRID
    return Box(left, min(tall - need, 0.0), left + ROOM, tall)


def _highest(own: _Arched, x0: float, x1: float) -> float:
    """The highest of the curve, or of its rebate, over a stretch of the rail."""
    over = own.leaf.left_stile
    out = 0.0 if own.rebate is None else float(own.rebate.frame)
    most = own.head.most(float(over) + x0, float(over) + x1, "highest", out=out)
    return float(most - own.rail.foot)


def _chains(job: Subject, own: _Arched, view: View) -> list[Chain]:
    """Length below; at either shoulder, and in the middle of the arch, where the curve stands."""
    rule, rail, head = job.rules.fine, own.rail, own.head
    foot = view.y(0.0) - STRIP
    chains = [
        Chain(
            view=view,
            axis="across",
            line=view.y(0.0) - 16.0,
            stops=(Stop(at=0.0, foot=foot), Stop(at=own.long, foot=foot)),
            links=(Link(figure=rail.length, rule=rule),),
        )
    ]
    sides: tuple[tuple[float, float, Figure, Figure | None], ...] = (
        (0.0, -1.0, head.at_left, rail.left_end),
        (own.long, 1.0, head.at_right, rail.right_end),
    )
    for x, way, at, over in sides:
        edge = view.x(x)
        line = edge + way * _LINE
        if float(at) <= _LEAST or over is None:
            stops: tuple[Stop, ...] = (
                Stop(at=0.0, foot=edge),
                Stop(at=float(rail.height), foot=edge),
            )
            links: tuple[Link | None, ...] = (Link(figure=rail.height, rule=rule),)
        else:
            stops = tuple(
                Stop(at=place, foot=edge) for place in (0.0, float(at), float(rail.height))
            )
            links = (Link(figure=at, rule=rule), Link(figure=over, rule=rule))
        chains.append(Chain(view=view, axis="up", line=line, stops=stops, links=links))
    middle = _middle(own)
    if middle is not None:
        line = view.x(middle) + 12.0
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=line,
                stops=(Stop(at=0.0, foot=None), Stop(at=float(head.crown), foot=view.x(middle))),
                links=(Link(figure=head.crown, rule=rule),),
            )
        )
    return chains
