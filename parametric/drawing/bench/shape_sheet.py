"""The set-up sheet of a cut to an outline: a curved edge, a notch, a cheek, an edge planed to a bevel."""

from __future__ import annotations

import math
from collections.abc import Mapping

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import Sketch, sketch
from parametric.drawing.bench.words import deep, faces_row, heading, pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point, around
from parametric.drawing.shaped import flattened
from parametric.drawing.subject import Subject
from parametric.model import Face, Shaped, face_depth, face_size
from parametric.outlines import HALF, arc_of, area_of, bounds_of, edges
from parametric.trade.milling import Setting
from parametric.trade.shaped_sizes import Slant, curve_of, is_rectangle, slant_of

_SEEN: Mapping[Face, str] = {
    "low end": "end",
    "high end": "end",
    "low edge": "edge",
    "high edge": "edge",
    "low face": "face",
    "high face": "face",
}
_SAME = 1e-3
_MOST_SIZES = 4
"""More than these are read off the parts' own sheets alone."""
_LEAST = 24.0
"""How much of a face is shown round a small outline at least, mm."""


def shape_sheet(job: Subject, say: Numbers, setting: Setting) -> SetUp:
    """What is taken away, on its face; what is alike in all that run is a number of the sheet."""
    cuts = _cuts(job, setting)
    first = cuts[0]
    part, _ = part_of(job, setting)
    bevel, slant = _bevel(first), slant_of(first, part.blank)
    keys: list[Key] = []
    if setting.cutter is not None:
        keys.append(Key(number=say.set_to(setting.cutter), name="cutter, or a smaller one"))
    if bevel is not None:
        keys += [
            Key(letter="a", number=say.degrees(bevel), name="out of square"),
            Key(letter="b", number=say.set_to(_extents(first)[0]), name="off the far side"),
        ]
    elif slant is not None and slant.tilted:
        keys += [
            Key(letter="a", number=say.degrees(slant.tilt), name=_tilted(slant)),
            Key(letter="b", number=say.set_to(slant.along), name="the longer side is longer by"),
        ]
    elif slant is not None:
        keys.append(Key(number=say.degrees(slant.angle), name="off square"))
        keys += _sizes(say, cuts)
    else:
        curve = curve_of(first, part.blank)
        if curve is not None and curve.wide is not None:
            keys.append(Key(number=say.set_to(curve.wide), name="wide, gauged from the curve"))
        keys += _sizes(say, cuts)
    through = abs(float(first.depth - first.surface) - face_depth(first.face, part.blank)) < _SAME
    if setting.depth is not None and bevel is None and not (slant and slant.tilted):
        words = "through the whole thickness" if through else deep(say, setting)
        keys.append(Key(number=say.set_to(setting.depth), name=words))
    alike = len({_rounded(cut) for cut in cuts}) == 1
    on_site = setting.when == "on site"
    sizes = [] if alike or on_site else _sizes_by_mark(job, say, setting)
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=tuple(keys),
        rows=(
            pieces_row(say, setting),
            faces_row(setting),
            *sizes,
            Row(
                head="Marked",
                text="from the room itself, the piece held plumb or level; its sheet says what to expect"
                if on_site
                else "where its part's own sheet says"
                if alike
                else "each from its part's own sheet"
                if sizes
                else "each from its part's own sheet: the outlines are not all alike",
            ),
            Row(head="Guide", text=_guide(setting, first, slant)),
            Row(head="Check with", text=_check(setting, first, slant)),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _picture(
            draft, box, job, setting, lettered=any(key.letter for key in keys)
        ),
        seen=f"On its {_SEEN[first.face]}; what is taken away is black",
    )


def _cuts(job: Subject, setting: Setting) -> list[Shaped]:
    """Every cut of the setting, as its parts have it."""
    parts = {part.name: part for part in job.assembly.parts}
    found = [parts[name].cuts[index] for run in setting.runs for name, index in run.covers]
    return [cut for cut in found if isinstance(cut, Shaped)]


def _sizes_by_mark(job: Subject, say: Numbers, setting: Setting) -> list[Row]:
    """Along × across of each mark's rectangles; what is no rectangle goes by its part's sheet."""
    parts = {part.name: part for part in job.assembly.parts}
    sizes: dict[tuple[str, str], tuple[list[float], list[float], list[str]]] = {}
    others: list[str] = []
    for run in setting.runs:
        for name, index in run.covers:
            cut, mark = parts[name].cuts[index], run.mark or run.noun
            assert isinstance(cut, Shaped)
            own = others
            if is_rectangle(cut.outline):
                long, wide = _extents(cut)
                lot = (say.set_to(long), say.set_to(wide))
                longs, wides, own = sizes.setdefault(lot, ([], [], []))
                longs.append(long)
                wides.append(wide)
            if mark not in own:
                own.append(mark)
    if not sizes or len(sizes) > _MOST_SIZES:
        return []
    lots = [
        said("{} × {}: {}", say.set_to(*longs), say.set_to(*wides), ", ".join(own))
        for longs, wides, own in sizes.values()
    ]
    shaped = [f"to their outlines: {', '.join(others)}"] if others else []
    return [Row(head="Sizes", text=said("along × across {}", listed([*lots, *shaped], "; ")))]


def _extents(cut: Shaped) -> tuple[float, float]:
    x0, y0, x1, y1 = bounds_of(cut.outline)
    return x1 - x0, y1 - y0


def _rounded(cut: Shaped) -> tuple[float, ...]:
    return tuple(round(size, 6) for size in sorted(_extents(cut)))


def _bevel(cut: Shaped) -> float | None:
    """The angle of an edge planed to a bevel, deg; None for any other outline."""
    if "end" not in cut.face or len(cut.outline) != 3:
        return None
    off, deep_by = _extents(cut)
    return math.degrees(math.atan2(off, deep_by))


def _curved(cut: Shaped) -> bool:
    return any(vertex.bulge for vertex in cut.outline)


def _sizes(say: Numbers, cuts: list[Shaped]) -> list[Key]:
    """Length and width where all are alike and square, the radius where they follow one arc."""
    first = cuts[0]
    across = _bore(first)
    if across is not None:
        return [Key(letter="a", number=say.set_to(across), name="across: the bit")]
    corner = _recess(first)
    if corner is not None and len({_rounded(cut) for cut in cuts}) == 1:
        long, wide = _extents(first)
        return [
            Key(letter="a", number=say.set_to(long), name="along the piece"),
            Key(letter="b", number=say.set_to(wide), name="across it"),
            Key(number=say.set_to(corner), name="radius in its corners"),
        ]
    if _curved(first):
        radii = {
            round(arc.radius, 2): arc.radius
            for cut in cuts
            for a, b in edges(cut.outline)
            if (arc := arc_of(a, b)) is not None
        }
        if len(radii) == 1:
            return [Key(letter="a", number=say.set_to(next(iter(radii.values()))), name="radius")]
        return []
    if len({_rounded(cut) for cut in cuts}) > 1:
        narrow = [min(_extents(cut)) for cut in cuts if is_rectangle(cut.outline)]
        alike = len(narrow) == len(cuts) and max(narrow) - min(narrow) < _SAME
        name = "in from the end or the edge, all alike"
        return [Key(number=say.set_to(*narrow), name=name)] if alike else []
    long, wide = _extents(first)
    return [
        Key(letter="a", number=say.set_to(long), name="along the piece"),
        Key(letter="b", number=say.set_to(wide), name="across it"),
    ]


def _bore(cut: Shaped) -> float | None:
    """How wide a round bore is, mm; None for any other outline."""
    if len(cut.outline) != 2 or any(abs(v.bulge - HALF) > _SAME for v in cut.outline):
        return None
    return _extents(cut)[0]


def _recess(cut: Shaped) -> float | None:
    """The radius in the corners of a rectangle with round ones, mm; None for another outline.

    Source: a square of the radius less a quarter of its circle is what each corner lacks.
    """
    arcs = [arc for a, b in edges(cut.outline) if (arc := arc_of(a, b)) is not None]
    if not arcs or _bore(cut) is not None or len({round(arc.radius, 3) for arc in arcs}) > 1:
        return None
    radius = arcs[0].radius
    long, wide = _extents(cut)
    lacks = (4 - math.pi) * radius * radius
    same = abs(long * wide - lacks - area_of(cut.outline)) < _SAME
    return radius if same and 2 * radius < min(long, wide) + _SAME else None


def _tilted(slant: Slant) -> str:
    """How the blade stands to a bevelled end."""
    return "the blade tilted, the board on end" if slant.on_end else "the blade tilted, off square"


def _guide(setting: Setting, cut: Shaped, slant: Slant | None) -> str:
    if setting.when == "on site":
        return "a scribing block as wide as the widest gap, its pencil along the wall"
    if slant is not None and slant.on_end:
        return "on end against a tall fence, its face in a carriage that cannot tip"
    if slant is not None and slant.tilted:
        return "square to the edge; the stop at the longer side, which each part's sheet names"
    if slant is not None:
        return "a straightedge from mark to mark on both edges; the waste side marked"
    if _bore(cut) is not None:
        return "a drill in its stand or guide, square to the face, the middle pricked"
    if _bevel(cut) is not None:
        return "a line gauged along the far side; planed down to it, the near arris left"
    if _curved(cut) and _recess(cut) is None:
        return "the template of the curve, held with its face to the face of the piece"
    if "dado set" in setting.tool and "clamped fence" in setting.tool:
        return "edge along the clamped fence, the set buried in it; press over the field only"
    if "dado set" in setting.tool:
        return "the end to a stop, the shoulder cut last; passes side by side clear the rest"
    return {
        "router": "fence or straight edge on the line, blocks at both ends",
        "saw": "knife lines on both sides, the waste side marked",
        "bench": "knife lines on both sides, the waste side marked",
    }[setting.by]


def _check(setting: Setting, cut: Shaped, slant: Slant | None) -> str:
    if setting.when == "on site":
        return "the wall: no light between; the line left, the back eased"
    if slant is not None and not slant.tilted:
        return "a tape along both edges"
    if slant is not None:
        return "a sliding bevel set to the angle, in the test piece"
    if _bevel(cut) is not None:
        return "a sliding bevel set to the angle, along the whole edge"
    if _bore(cut) is not None:
        return "the bit's own stop in waste first; the middle from both edges"
    if _curved(cut) and _recess(cut) is None:
        return "the template, and a square through the thickness"
    return (
        "the piece that goes into it"
        if setting.by == "bench" or _recess(cut) is not None
        else "a square and callipers"
    )


def _picture(draft: Draft, box: Box, job: Subject, setting: Setting, *, lettered: bool) -> None:
    """The face with the outline in it; where the piece goes on, it is torn off."""
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, Shaped)
    wide, tall = face_size(cut.face, part.blank)
    shape = around(flattened(cut.outline))
    margin = max(_LEAST, 0.35 * max(shape.width, shape.height))
    shown = Box(
        max(0.0, shape.x0 - margin),
        max(0.0, shape.y0 - margin),
        min(float(wide), shape.x1 + margin),
        min(float(tall), shape.y1 + margin),
    )
    under = 16.0 if lettered else 12.0
    inner = Box(box.x0 + 16.0, box.y0 + under, box.x1 - 16.0, box.y1 - 12.0)
    own = sketch(draft, inner, shown, largest=0.3)
    own.wood(list(shown.polygon), ends="end" in cut.face, broken=True)
    own.fence(list(flattened(cut.outline)))
    sides: tuple[tuple[Point, Point, bool], ...] = (
        ((shown.x0, shown.y0), (shown.x1, shown.y0), shown.y0 == 0.0),
        ((shown.x0, shown.y1), (shown.x1, shown.y1), shown.y1 == float(tall)),
        ((shown.x0, shown.y0), (shown.x0, shown.y1), shown.x0 == 0.0),
        ((shown.x1, shown.y0), (shown.x1, shown.y1), shown.x1 == float(wide)),
    )
    for a, b, true in sides:
        if true:
            own.line("cut_heavy", a, b)
        else:
            own.torn(a, b)
    if lettered:
        _lettered(own, cut, shape, slant_of(cut, part.blank))


def _lettered(own: Sketch, cut: Shaped, shape: Box, slant: Slant | None) -> None:
    """The letters of the sizes, beside what they measure."""
    if _bevel(cut) is not None:
        # the corner that is not on the edge: it may be planed off either of the two
        edge = min(
            (shape.x0, shape.x1), key=lambda x: sum(abs(v.x - x) > _SAME for v in cut.outline)
        )
        level = max(cut.outline, key=lambda v: abs(v.x - edge)).y
        out = (0.0, -9.0) if level <= shape.y0 + _SAME else (0.0, 9.0)
        own.span(((shape.x0, level), (shape.x1, level)), "b", out=out)
        x, y = own.at((shape.x1, shape.centre[1]))
        own.letter("a", [(x + 9.0, y), (x + 13.0, y + 6.0), (x - 9.0, y)])
        return
    if slant is not None and slant.tilted:
        own.span(((shape.x0, shape.y0), (shape.x1, shape.y0)), "b", out=(0.0, -9.0))
        x, y = own.at(shape.centre)
        own.letter("a", [(x - 12.0, y), (x + 12.0, y), (x, y + 12.0)])
        return
    if _bore(cut) is not None:
        x, y = own.at((shape.x1, shape.centre[1]))
        own.letter("a", [(x + 9.0, y), (x + 13.0, y + 6.0), (x + 9.0, y - 8.0)])
        return
    if _curved(cut) and _recess(cut) is None:
        arcs = [arc for a, b in edges(cut.outline) if (arc := arc_of(a, b)) is not None]
        if len({round(arc.radius, 2) for arc in arcs}) == 1:
            arc = arcs[0]
            angle = arc.start + arc.sweep / 2
            x, y = own.at(
                (arc.x + arc.radius * math.cos(angle), arc.y + arc.radius * math.sin(angle))
            )
            own.letter("a", [(x, y + 8.0), (x - 8.0, y + 8.0), (x + 8.0, y + 8.0)])
        return
    own.span(((shape.x0, shape.y0), (shape.x1, shape.y0)), "a", out=(0.0, -9.0))
    own.span(((shape.x1, shape.y0), (shape.x1, shape.y1)), "b", out=(9.0, 0.0))
