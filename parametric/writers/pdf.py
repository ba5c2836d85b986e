"""Sheets as one PDF: true scale, our own fonts only, the same bytes every time."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple, assert_never

from reportlab.lib.colors import HexColor
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from parametric.drawing.fractions import BAR, Run, set_stacked
from parametric.drawing.layers import PENS, Layer, Pen
from parametric.drawing.lettering import Weight, font_file, type_size
from parametric.drawing.plane import Polygon
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Primitive, Stroke
from parametric.drawing.sheet import Sheet, primitives

MM = 72.0 / 25.4
"""Points in a millimetre."""
_WEIGHTS: tuple[Weight, ...] = ("regular", "bold")


class Ink(NamedTuple):
    """The colours of a layer's lines and letters, as `#2340b8`."""

    line: str
    letter: str


_BLACK = Ink("#000000", "#000000")


def write_pdf(sheets: Sequence[Sheet]) -> bytes:
    """One page and one outline entry for each sheet, in the order given.

    Args:
        sheets: at least one; each page has the size of its own paper.

    Returns:
        The file; two calls with the same sheets give the same bytes.
    """
    stream = io.BytesIO()
    canvas = open_canvas(stream, sheets[0])
    for index, sheet in enumerate(sheets):
        open_page(canvas, sheet, index, sheet.name)
        draw_sheet(canvas, sheet)
        canvas.showPage()
    canvas.showOutline()
    canvas.save()
    return stream.getvalue()


def open_canvas(stream: io.BytesIO, first: Sheet) -> Any:
    """A file for sheets: our fonts, no clock, and the names that the first sheet says."""
    for weight in _WEIGHTS:
        pdfmetrics.registerFont(TTFont(_font(weight), str(font_file(weight))))
    canvas = Canvas(
        stream,
        pagesize=_points(first),
        invariant=1,
        pageCompression=1,
        initialFontName=_font("regular"),
        lang="en-GB",
    )
    canvas.setTitle(first.title.title)
    canvas.setAuthor(first.title.owner)
    canvas.setSubject(f"{first.title.number} {first.title.fingerprint}")
    canvas.setCreator("stilewright")
    return canvas


def open_page(canvas: Any, sheet: Sheet, index: int, name: str) -> None:
    """A page of the sheet's own paper, with its entry in the outline."""
    canvas.setPageSize(_points(sheet))
    key = f"sheet-{index + 1}"
    canvas.bookmarkPage(key)
    canvas.addOutlineEntry(name, key, level=0)


def _font(weight: Weight) -> str:
    return f"stilewright-{weight}"


def _points(sheet: Sheet) -> tuple[float, float]:
    return (sheet.paper.width * MM, sheet.paper.height * MM)


def draw_sheet(canvas: Any, sheet: Sheet, inks: Mapping[Layer, Ink] | None = None) -> None:
    """Lines first, layer by layer, then white behind masked texts, then all texts.

    Args:
        canvas: an open page.
        sheet: what is drawn.
        inks: the colours of its layers; without them all is black.
    """
    parts = [part for element in sheet.elements for part in primitives(element)]
    canvas.saveState()
    canvas.scale(MM, MM)
    canvas.setLineJoin(1)
    drawn: Pen | None = None
    for part in sorted(
        (p for p in parts if not isinstance(p, Label)), key=lambda p: PENS[p.layer].order
    ):
        pen = PENS[part.layer]
        if pen is not drawn:
            _take(canvas, pen)
            if inks is not None:
                colour = inks.get(part.layer, _BLACK).line
                canvas.setStrokeColor(HexColor(colour))
                canvas.setFillColor(HexColor(colour))
            drawn = pen
        _draw(canvas, part)
    labels = [p for p in parts if isinstance(p, Label)]
    canvas.setFillGray(1)
    for label in labels:
        if label.mask:
            box = label.box.grown(0.5)
            canvas.rect(box.x0, box.y0, box.width, box.height, stroke=0, fill=1)
    canvas.setFillGray(0)
    for label in labels:
        if inks is not None:
            canvas.setFillColor(HexColor(inks.get(label.layer, _BLACK).letter))
        _draw(canvas, label)
    canvas.restoreState()


def _take(canvas: Any, pen: Pen) -> None:
    canvas.setLineWidth(pen.width)
    canvas.setDash(list(pen.dash), 0)
    canvas.setLineCap(0 if pen.dash else 1)


def _draw(canvas: Any, part: Primitive) -> None:
    match part:
        case Stroke():
            canvas.drawPath(_path(canvas, part.points, part.closed), stroke=1, fill=0)
        case Fill():
            canvas.drawPath(_path(canvas, part.points, True), stroke=0, fill=1)
        case Circle():
            canvas.circle(*part.centre, part.radius, stroke=1, fill=0)
        case Arc():
            x, y = part.centre
            path = canvas.beginPath()
            path.arc(
                x - part.radius,
                y - part.radius,
                x + part.radius,
                y + part.radius,
                part.start,
                part.end - part.start,
            )
            canvas.drawPath(path, stroke=1, fill=0)
        case Label():
            _letter(canvas, part)
        case _:
            assert_never(part)


def _path(canvas: Any, points: Polygon, closed: bool) -> Any:
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.close()
    return path


def _letter(canvas: Any, label: Label) -> None:
    canvas.saveState()
    canvas.translate(*label.at)
    canvas.rotate(label.turned)
    if label.stacked:
        _letter_stacked(canvas, label)
    else:
        canvas.setFont(_font(label.weight), type_size(label.height, label.weight))
        write = {
            "left": canvas.drawString,
            "centre": canvas.drawCentredString,
            "right": canvas.drawRightString,
        }[label.anchor]
        write(0, 0, label.text)
    canvas.restoreState()


_UNSEEN = 3
"""The way of lettering that leaves no ink."""


def _letter_stacked(canvas: Any, label: Label) -> None:
    """A line of text with its fractions stacked, which is still read and copied as it is said.

    The whole says what it stands for (ISO 32000-1, 14.9.4, replacement text), and for
    readers that do not ask, the strokes of the fraction are there without ink.
    """
    whole = set_stacked(label.text, label.height, label.weight)
    wide = whole.ink.width
    canvas.translate({"left": 0.0, "centre": -wide / 2, "right": -wide}[label.anchor], 0)
    said = "FEFF" + label.text.encode("utf-16-be").hex().upper()
    canvas.addLiteral(f"/Span <</ActualText <{said}>>> BDC")
    for part in whole.parts:
        if isinstance(part, Run):
            _run(canvas, part, label.weight)
            continue
        small = part.top.height
        if part.joint:
            joint = Run(text=part.joint, along=part.start - small, up=0.0, height=small)
            _run(canvas, joint, label.weight, _UNSEEN)
        _run(canvas, part.top, label.weight)
        stroke = Run(text="/", along=part.end - small, up=part.up, height=small)
        _run(canvas, stroke, label.weight, _UNSEEN)
        _run(canvas, part.bottom, label.weight)
        canvas.rect(part.start, part.up - BAR / 2, part.end - part.start, BAR, stroke=0, fill=1)
    canvas.addLiteral("EMC")


def _run(canvas: Any, run: Run, weight: Weight, mode: int = 0) -> None:
    canvas.setFont(_font(weight), type_size(run.height, weight))
    canvas.drawString(run.along, run.up, run.text, mode=mode or None)
