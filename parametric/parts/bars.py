"""Glazing bars that carry the glass: rebated from the back, half-lapped, tongued into the frame.

A bar's end, seen from the side; the leaf's front is below.

        |~~~~~~~~~~~~|  web, and the tongue that runs on from it into the frame's lip
    ____|____________|
    |                |  face of the bar, shouldered where the daylight ends
    |________________|

The tongue lies behind half of the lip, so that nothing of it is seen from the front. Bars
cross in a half-lap within their front part: level bars keep the front of it, upright ones
the back, and the level bar's web is cut for the upright one's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.figures import Figure, largest
from parametric.hangings.hanging import Side
from parametric.model import Blank, Cut, Face, Groove, Making, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import Outline, Vertex, backwards, rectangle
from parametric.parts.bar_ends import beyond
from parametric.parts.full_bars import full_bar_parts, rail_mortises, stile_mortises
from parametric.parts.lying import LEVEL, RIGHT, UP, UPRIGHT
from parametric.parts.planted_bars import planted_parts
from parametric.parts.rebates import between, rail_chain, tidy
from parametric.resolve.bar_places import Bar, RebatedBar
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite, Rebate
from parametric.resolve.rail import Rail

SAWN = Making(by="saw", tool="tenoning jig or hand saw, to a knife line")
CHOPPED = Making(by="bench", tool="tenon saw and chisel, to the bar's own end")
FITTED = Making(by="bench", tool="saw and file, to the template of the arch")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Held:
    """What a rebated bar is cut by: the frame's rebate and its own section."""

    rebate: Rebate
    section: RebatedBar


def bar_parts(leaf: Leaf) -> tuple[Part, ...]:
    """Every bar, lite by lite: uprights first, then level ones from the top; planted ones last."""
    rebated = (
        _upright(leaf, lite, held, bar) if bar.upright else _level(leaf, lite, held, bar)
        for lite, held in _rebated(leaf)
        for bar in lite.bars
    )
    return (*rebated, *full_bar_parts(leaf), *planted_parts(leaf))


def _rebated(leaf: Leaf) -> Iterator[tuple[Lite, _Held]]:
    """The lites whose bars are rebated as the frame is."""
    for lite in leaf.lites:
        if lite.rebate is not None and isinstance(lite.section, RebatedBar):
            yield lite, _Held(rebate=lite.rebate, section=lite.section)


def lip(leaf: Leaf, rebate: Rebate) -> Figure:
    """The wood before a tongue that is never seen: half of the part before the rebate, mm."""
    return (leaf.thickness - rebate.depth) / 2


def stile_notches(leaf: Leaf, side: Side, face: Face) -> Iterator[Shaped]:
    """A stile's notches for the tongues of level bars, from its glass rebate into the lip."""
    width = leaf.left_stile if side == "left" else leaf.right_stile
    for lite, held in _rebated(leaf):
        rebate, web = held.rebate, held.section.rebate
        for bar in lite.bars:
            if bar.upright:
                continue
            low = float(bar.low + web + leaf.trim)
            high = float(bar.high - web + leaf.trim)
            yield Shaped(
                name="notch for a bar",
                face=face,
                outline=rectangle(low, float(width - rebate.frame), high, float(width)),
                surface=rebate.depth,
                depth=leaf.thickness - lip(leaf, rebate),
                making=CHOPPED,
            )
    yield from stile_mortises(leaf)


def rail_notches(leaf: Leaf, rail: Rail) -> Iterator[Shaped]:
    """A rail's notches for the tongues of upright bars; under an arch they follow its curve."""
    for lite, held in _rebated(leaf):
        rebate, web = held.rebate, held.section.rebate
        for bar in lite.bars:
            if not bar.upright:
                continue
            x0 = float(bar.low + web)
            x1 = float(bar.high - web)
            for outline in _notch_outlines(leaf, rail, lite, rebate, (x0, x1)):
                yield Shaped(
                    name="notch for a bar",
                    face="low face",
                    outline=outline,
                    surface=rebate.depth,
                    depth=leaf.thickness - lip(leaf, rebate),
                    making=CHOPPED,
                )
    yield from rail_mortises(leaf, rail)


def _notch_outlines(
    leaf: Leaf, rail: Rail, lite: Lite, rebate: Rebate, span: tuple[float, float]
) -> Iterator[Outline]:
    left, deep = float(leaf.left_stile), float(rebate.frame)
    if lite.foot == rail.top:
        high = float(rail.height)
        yield rectangle(span[0] - left, high - deep, span[1] - left, high)
    if lite.top == rail.foot and rail.head is None:
        yield rectangle(span[0] - left, 0.0, span[1] - left, deep)
    if lite.top == rail.foot and rail.head is not None:
        yield between(
            rail_chain(leaf, rail, rail.head, span=span),
            rail_chain(leaf, rail, rail.head, out=deep, span=span),
        )


def _level(leaf: Leaf, lite: Lite, held: _Held, bar: Bar) -> Part:
    """From stile to stile; its low face is the back."""
    rebate, web = held.rebate, float(held.section.rebate)
    reach, face = rebate.frame, bar.high - bar.low
    length = bar.end - bar.start + 2 * reach
    cuts: list[Cut] = [*_bar_rebates(held, "low face", length, face)]
    cuts += _square_end(leaf, held, "high face", 0.0, float(reach), float(face))
    cuts += _square_end(leaf, held, "high face", float(length - reach), float(length), float(face))
    front = float(lip(leaf, rebate))
    for other in lite.bars:
        if not other.upright:
            continue
        x0, x1 = (float(edge - bar.start + reach) for edge in (other.low, other.high))
        cuts += [
            Shaped(
                name="lap, web",
                face="low face",
                outline=rectangle(x0 + web, web, x1 - web, float(face) - web),
                depth=rebate.depth,
                making=SAWN,
            ),
            Shaped(
                name="lap",
                face="low face",
                outline=rectangle(x0, 0.0, x1, float(face)),
                surface=rebate.depth,
                depth=leaf.thickness - front,
                making=SAWN,
            ),
        ]
    return Part(
        name=bar.name,
        noun="level glazing bar",
        mark="B",
        material=leaf.material,
        blank=Blank(length=length, width=face, thickness=leaf.thickness),
        placement=Placement(
            origin=(float(bar.start - reach), float(leaf.thickness), float(bar.low)),
            x=RIGHT,
            y=UP,
        ),
        cuts=tuple(cuts),
        faces=LEVEL,
    )


def _upright(leaf: Leaf, lite: Lite, held: _Held, bar: Bar) -> Part:
    """From rail to rail, or up to the arch; its low face is the front."""
    rebate = held.rebate
    reach, face = rebate.frame, bar.high - bar.low
    foot = bar.start - reach
    top = bar.end + reach if lite.head is None else _highest(lite, held, bar)
    length = top - foot
    cuts: list[Cut] = [*_bar_rebates(held, "high face", length, face)]
    cuts += _square_end(leaf, held, "low face", 0.0, float(reach), float(face))
    if lite.head is None:
        cuts += _square_end(
            leaf, held, "low face", float(length - reach), float(length), float(face)
        )
    else:
        cuts += _curved_end(leaf, lite, held, bar, float(foot), float(length))
    front = lip(leaf, rebate)
    for other in lite.bars:
        if other.upright:
            continue
        low, high = (float(edge - foot) for edge in (other.low, other.high))
        cuts.append(
            Shaped(
                name="lap",
                face="low face",
                outline=rectangle(low, 0.0, high, float(face)),
                depth=front,
                making=SAWN,
            )
        )
    return Part(
        name=bar.name,
        noun="upright glazing bar",
        mark="B",
        material=leaf.material,
        blank=Blank(length=length, width=face, thickness=leaf.thickness),
        placement=Placement(origin=(float(bar.low), 0.0, float(foot)), x=UP, y=RIGHT),
        cuts=tuple(cuts),
        faces=UPRIGHT,
    )


def _bar_rebates(held: _Held, back: Face, length: Figure, face: Figure) -> Iterator[Groove]:
    rebate, own = held.rebate, held.section.rebate
    for v in (own / 2, face - own / 2):
        yield Groove(
            name="glass rebate",
            face=back,
            u0=0.0,
            u1=length,
            v=v,
            width=own,
            depth=rebate.depth,
            making=Making(
                by="saw", tool="dado set, in one piece before the bars are cut to length"
            ),
        )


def _square_end(
    leaf: Leaf, held: _Held, front: Face, u0: float, u1: float, face: float
) -> Iterator[Shaped]:
    """Shoulders on both sides of the tongue, and the tongue cut back from the front."""
    rebate, web = held.rebate, float(held.section.rebate)
    before = leaf.thickness - rebate.depth
    for low, high, word, depth in (
        (0.0, web, "shoulder", before),
        (face - web, face, "shoulder", before),
        (web, face - web, "tongue, from the face", lip(leaf, rebate)),
    ):
        yield Shaped(
            name=word,
            face=front,
            outline=rectangle(u0, low, u1, high),
            depth=depth,
            making=SAWN,
        )


def _highest(lite: Lite, held: _Held, bar: Bar) -> Figure:
    """The top of a bar's blank: where its tongue reaches highest in the arched rail."""
    assert lite.head is not None
    tongue = lite.head.most(
        bar.low + held.section.rebate,
        bar.high - held.section.rebate,
        join(bar.name, "tongue to"),
        out=held.rebate.frame,
    )
    return largest(tongue, bar.end)


def _curved_end(
    leaf: Leaf, lite: Lite, held: _Held, bar: Bar, foot: float, length: float
) -> Iterator[Shaped]:
    """The same end under an arch: the shoulders follow its curve, the tongue that of its rebate."""
    assert lite.head is not None
    rebate, web = held.rebate, float(held.section.rebate)
    low, high = float(bar.low), float(bar.high)
    before = leaf.thickness - rebate.depth

    def chain(x0: float, x1: float, out: float = 0.0) -> tuple[Vertex, ...]:
        """In the bar's frame u runs up and v to the right, so a curve is read as its mirror image."""
        assert lite.head is not None
        return tuple(
            Vertex(v.y - foot, v.x - low, -v.bulge) for v in lite.head.edge(x0, x1, out=out)
        )

    for x0, x1 in ((low, low + web), (high - web, high)):
        yield Shaped(
            name="shoulder",
            face="low face",
            outline=beyond(chain(x0, x1), length),
            depth=before,
            making=FITTED,
        )
    inner = (low + web, high - web)
    end = chain(*inner, float(rebate.frame))
    if past := beyond(end, length):
        yield Shaped(
            name="tongue, end",
            face="low face",
            outline=past,
            depth=leaf.thickness,
            making=FITTED,
        )
    yield Shaped(
        name="tongue, from the face",
        face="low face",
        outline=tidy((*backwards(chain(*inner)), *end)),
        depth=lip(leaf, rebate),
        making=FITTED,
    )
