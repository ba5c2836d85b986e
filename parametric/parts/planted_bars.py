"""Bars planted on both faces of a pane, and the tape that they are bedded on.

section across a crossing, front below       seen from the front, butted
 |  level bar     |   keeps the outside             |    |
 |__    ______    |                          -------|    |-------
    |__|      |___|   upright: the inside    -------|    |-------
 ==================   glass                         |    |

They end against the sight edge: of the stops, or of the frame where the glass lies in a
rebate; under a curve an upright one follows it. Front and back are laid alike, each seen
from its own side, so that a pair of one thickness is one piece made twice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Literal

from parametric.figures import Figure, named
from parametric.model import Blank, Cut, Making, Material, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import Vertex, backwards, rectangle
from parametric.parts.bar_ends import beyond
from parametric.parts.lying import LEFT, RIGHT, UP
from parametric.resolve.bar_places import Bar, PlantedBar
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite

FaceWord = Literal["front", "back"]
SAWN = Making(by="saw", tool="against a stop, to half the thickness")
FITTED = Making(by="bench", tool="saw and file, to the template of the arch")
_SIDES: tuple[FaceWord, FaceWord] = ("front", "back")
_TAPE = Material(name="glazing tape", look="tape", density=0.0)


def planted_parts(leaf: Leaf) -> Iterator[Part]:
    """Every planted bar, front ones first: uprights, then level ones from the top."""
    for lite, planted in planted_lites(leaf):
        for side in _SIDES:
            for bar in lite.bars:
                for number, ends in enumerate(_pieces(lite, planted, bar), start=1):
                    yield _piece(leaf, lite, planted, bar, side, ends, number)


def planted_tapes(leaf: Leaf) -> Iterator[Part]:
    """Tape under every planted bar: uprights whole, level ones between them."""
    for lite, planted in planted_lites(leaf):
        if float(planted.tape) == 0:
            continue
        for side in _SIDES:
            for bar in lite.bars:
                runs = [(bar.start, bar.end)] if bar.upright else _between_uprights(lite, bar)
                for number, ends in enumerate(runs, start=1):
                    yield _tape(lite, planted, bar, side, ends, number)


def planted_lites(leaf: Leaf) -> Iterator[tuple[Lite, PlantedBar]]:
    """The lites whose bars are planted."""
    for lite in leaf.lites:
        if isinstance(lite.section, PlantedBar):
            yield lite, lite.section


def _pieces(lite: Lite, planted: PlantedBar, bar: Bar) -> list[tuple[Figure, Figure]]:
    """A bar in one piece; butted, a level one in as many as the uprights make of it."""
    if bar.upright or planted.half_lapped:
        return [(bar.start, bar.end)]
    return _between_uprights(lite, bar)


def _between_uprights(lite: Lite, bar: Bar) -> list[tuple[Figure, Figure]]:
    uprights = sorted((one for one in lite.bars if one.upright), key=lambda one: float(one.low))
    starts = [bar.start, *(one.high for one in uprights)]
    ends = [*(one.low for one in uprights), bar.end]
    return list(zip(starts, ends, strict=True))


def _piece(
    leaf: Leaf,
    lite: Lite,
    planted: PlantedBar,
    bar: Bar,
    side: FaceWord,
    ends: tuple[Figure, Figure],
    number: int,
) -> Part:
    """One piece: an upright one's low face is its outer one, a level one's is bedded."""
    start, end = ends
    thick = planted.front if side == "front" else planted.back
    bed = float(planted.front_bed if side == "front" else planted.back_bed)
    outer = bed - float(thick) if side == "front" else bed + float(thick)
    pieces = len(_pieces(lite, planted, bar))
    word = f"{side} bar" if pieces == 1 else f"{side} piece {number}"
    length = named(join(bar.name, word, "length"), end - start)
    cuts: list[Cut] = []
    if planted.half_lapped:
        cuts += _laps(lite, bar, side, start, end, thick)
    if bar.upright and lite.sight is not None:
        cuts += _curved_end(lite, bar, side, start, length, thick)
    return Part(
        name=join(bar.name, word),
        noun="upright applied bar" if bar.upright else "level applied bar",
        mark="B",
        material=leaf.material,
        blank=Blank(length=length, width=planted.face, thickness=thick),
        placement=_placement(bar, side, start, end, outer if bar.upright else bed),
        cuts=tuple(cuts),
        faces={
            "low end": "foot" if bar.upright else "end",
            "high end": "top" if bar.upright else "other end",
            "low face": "face" if bar.upright else "bed",
            "high face": "bed" if bar.upright else "face",
        },
    )


def _placement(bar: Bar, side: FaceWord, start: Figure, end: Figure, depth: float) -> Placement:
    """Seen from its own side a level bar runs to the right; an upright one up, its width to the right."""
    low, high = float(bar.low), float(bar.high)
    if bar.upright:
        x = low if side == "front" else high
        return Placement(
            origin=(x, depth, float(start)), x=UP, y=RIGHT if side == "front" else LEFT
        )
    x = float(start) if side == "front" else float(end)
    return Placement(origin=(x, depth, low), x=RIGHT if side == "front" else LEFT, y=UP)


def _laps(
    lite: Lite, bar: Bar, side: FaceWord, start: Figure, end: Figure, thick: Figure
) -> Iterable[Shaped]:
    """Half the thickness at every crossing: off an upright bar's face, off a level bar's bed."""
    crossed = [one for one in lite.bars if one.upright != bar.upright]
    places = []
    for one in crossed:
        if side == "back" and not bar.upright:
            places.append((float(end - one.high), float(end - one.low)))
        else:
            places.append((float(one.low - start), float(one.high - start)))
    face = float(bar.high - bar.low)
    for u0, u1 in sorted(places):
        yield Shaped(
            name="lap",
            face="low face",
            outline=rectangle(u0, 0.0, u1, face),
            depth=thick / 2,
            making=SAWN,
        )


def _curved_end(
    lite: Lite, bar: Bar, side: FaceWord, start: Figure, length: Figure, thick: Figure
) -> Iterator[Shaped]:
    """The top of an upright bar follows the curve that it ends on."""
    assert lite.sight is not None
    low, high = float(bar.low), float(bar.high)
    edge = lite.sight.edge(low, high)
    foot = float(start)
    # u runs up and v across: to the right the curve is read as its mirror image, to the left as it is
    chain = (
        tuple(Vertex(v.y - foot, v.x - low, -v.bulge) for v in edge)
        if side == "front"
        else backwards(tuple(Vertex(v.y - foot, high - v.x, v.bulge) for v in edge))
    )
    if outline := beyond(chain, float(length)):
        yield Shaped(
            name="end to the arch", face="low face", outline=outline, depth=thick, making=FITTED
        )


def _tape(
    lite: Lite,
    planted: PlantedBar,
    bar: Bar,
    side: FaceWord,
    ends: tuple[Figure, Figure],
    number: int,
) -> Part:
    """A strip as wide as its bar, between it and the glass."""
    start, end = ends
    near = float(planted.front_bed if side == "front" else planted.back_bed)
    if not bar.upright:
        near += float(planted.tape) if side == "front" else -float(planted.tape)
    cuts: tuple[Cut, ...] = ()
    length = end - start
    if bar.upright and lite.sight is not None:
        cuts = tuple(_curved_end(lite, bar, side, start, length, planted.tape))
    return Part(
        name=join(bar.name, f"{side} tape" if bar.upright else f"{side} tape {number}"),
        noun="glazing tape",
        mark="Z",
        material=_TAPE,
        blank=Blank(length=length, width=planted.face, thickness=planted.tape),
        placement=_placement(bar, side, start, end, near),
        cuts=cuts,
        supplied=True,
    )
