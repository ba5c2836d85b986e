"""A drawing as plain SVG, for a page: lines in the page's own ink, letters in its own font."""

from __future__ import annotations

from typing import assert_never
from xml.sax.saxutils import escape

from parametric.drawing.fractions import BAR, Run, set_stacked
from parametric.drawing.layers import PENS, Layer
from parametric.drawing.lettering import type_size
from parametric.drawing.plane import Box, Point, Polygon, arc_points, around_boxes
from parametric.drawing.primitives import Anchor, Arc, Circle, Fill, Label, Primitive, Stroke, reach
from parametric.drawing.sheet import Sheet, primitives

_MARGIN = 2.0
_ANCHOR: dict[Anchor, str] = {"left": "start", "centre": "middle", "right": "end"}


def write_svg(sheet: Sheet) -> str:
    """The elements of a sheet, as large as they are; a unit is a millimetre of paper.

    Colour and font are the page's: `currentColor`, and the family it already carries. A sheet
    of one view says where the model's zero lies and how many mm of it one of paper is, so that
    a page can point at a place of the job.
    """
    parts = [part for element in sheet.elements for part in primitives(element)]
    box = around_boxes(reach(part) for part in parts).grown(_MARGIN)
    groups: dict[Layer, list[str]] = {}
    for part in sorted(parts, key=lambda p: PENS[p.layer].order):
        groups.setdefault(part.layer, []).append(_drawn(part, box))
    body = "".join(_group(layer, drawn) for layer, drawn in groups.items())
    title = escape(sheet.title.title)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" '
        f'viewBox="0 0 {_n(box.width)} {_n(box.height)}"{_model_at(sheet, box)}>'
        f"<title>{title}</title>{body}</svg>"
    )


def _model_at(sheet: Sheet, box: Box) -> str:
    if len(sheet.views) != 1:
        return ""
    view = sheet.views[0]
    x, y = _at(view.origin, box)
    return f' data-zero="{x} {y}" data-mm="{_n(view.scale)}"'


def _group(layer: Layer, drawn: list[str]) -> str:
    pen = PENS[layer]
    dash = f' stroke-dasharray="{" ".join(_n(d) for d in pen.dash)}"' if pen.dash else ""
    cap = "butt" if pen.dash else "round"
    return (
        f'<g fill="none" stroke="currentColor" stroke-width="{_n(pen.width)}" '
        f'stroke-linecap="{cap}" stroke-linejoin="round"{dash}>{"".join(drawn)}</g>'
    )


def _drawn(part: Primitive, box: Box) -> str:
    match part:
        case Stroke():
            return f'<path d="{_path(part.points, part.closed, box)}"/>'
        case Fill():
            path = _path(part.points, True, box)
            return f'<path d="{path}" fill="currentColor" stroke="none"/>'
        case Circle():
            x, y = _at(part.centre, box)
            return f'<circle cx="{x}" cy="{y}" r="{_n(part.radius)}"/>'
        case Arc():
            points = arc_points(part.centre, part.radius, part.start, part.end, 0.5)
            return f'<path d="{_path(points, False, box)}"/>'
        case Label():
            return _letters(part, box)
        case _:
            assert_never(part)


def _letters(label: Label, box: Box) -> str:
    x, y = _at(label.at, box)
    turn = f' transform="rotate(-90 {x} {y})"' if label.turned else ""
    weight = ' font-weight="700"' if label.weight == "bold" else ""
    if label.stacked:
        return _stacked(label, box, turn, weight)
    size = _n(type_size(label.height, label.weight))
    return (
        f'<text x="{x}" y="{y}" font-size="{size}"{weight} fill="currentColor" stroke="none" '
        f'text-anchor="{_ANCHOR[label.anchor]}"{turn}>{escape(label.text)}</text>'
    )


def _stacked(label: Label, box: Box, turn: str, weight: str) -> str:
    """Whole number and numerals as one text, the bars over it; said aloud as it is written."""
    whole = set_stacked(label.text, label.height, label.weight)
    back = {"left": 0.0, "centre": whole.ink.width / 2, "right": whole.ink.width}[label.anchor]
    left, base = label.at[0] - back - box.x0, box.y1 - label.at[1]
    spans, bars = [], []
    for part in whole.parts:
        for run in (part,) if isinstance(part, Run) else (part.top, part.bottom):
            size = _n(type_size(run.height, label.weight))
            spans.append(
                f'<tspan x="{_n(left + run.along)}" y="{_n(base - run.up)}" '
                f'font-size="{size}">{escape(run.text)}</tspan>'
            )
        if not isinstance(part, Run):
            y = _n(base - part.up)
            bars.append(f"M{_n(left + part.start)} {y}L{_n(left + part.end)} {y}")
    lines = f'<path d="{"".join(bars)}" stroke-width="{_n(BAR)}"/>' if bars else ""
    return (
        f'<g role="img" aria-label="{escape(label.text, {chr(34): "&quot;"})}"{turn}>'
        f'<text{weight} fill="currentColor" stroke="none" xml:space="preserve">'
        f"{''.join(spans)}</text>{lines}</g>"
    )


def _path(points: Polygon, closed: bool, box: Box) -> str:
    steps = "L".join(" ".join(_at(point, box)) for point in points)
    return f"M{steps}{'Z' if closed else ''}"


def _at(point: Point, box: Box) -> tuple[str, str]:
    """A point of the paper in the picture, whose y runs down."""
    return _n(point[0] - box.x0), _n(box.y1 - point[1])


def _n(value: float) -> str:
    """Hundredths of a millimetre, without trailing noughts."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
