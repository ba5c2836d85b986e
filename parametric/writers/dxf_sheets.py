"""A sheet as a DXF drawing: every view at full size in model space, the sheet as a paper layout.

Model space is millimetres of the thing itself, the views standing side by side with their
zero on y = 0, so any length can be measured. A layout holds frame, title block and tables
on the true paper, and a window on each view at its scale. A dimension is a real one: its
measurement is its value, and its picture is the one on the sheet.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, assert_never

from ezdxf.document import Drawing
from ezdxf.enums import MTextEntityAlignment, TextEntityAlignment
from ezdxf.layouts import BlockLayout, Modelspace, Paperspace

from parametric.drawing.dimensions import Dimension
from parametric.drawing.fractions import NUMERAL, Run, set_stacked
from parametric.drawing.layers import PENS, Layer
from parametric.drawing.lettering import TEXT, font_file
from parametric.drawing.plane import Box, Point, Polygon, around_boxes
from parametric.drawing.primitives import (
    Anchor,
    Arc,
    Circle,
    Fill,
    Label,
    Primitive,
    Stroke,
    reach,
)
from parametric.drawing.sheet import Element, Sheet, View, primitives
from parametric.units import INCH
from parametric.writers.dxf import deterministic_bytes, new_document

_PLACES = 6
_APART = 500.0
"""Between two views in model space, mm."""
_WINDOW = "windows"
_OWNER = "STILEWRIGHT"
"""Whose extended data it is: a dimension says the name of the number it prints, a window the
name of its view and where that view's zero lies along x in model space."""
_LINETYPES: dict[Layer, str] = {
    "hidden": "sheet_hidden",
    "centre": "sheet_centre",
    "datum": "sheet_centre",
    "adjacent": "sheet_adjacent",
}
_ALIGN: dict[Anchor, TextEntityAlignment] = {
    "left": TextEntityAlignment.LEFT,
    "centre": TextEntityAlignment.CENTER,
    "right": TextEntityAlignment.RIGHT,
}
_USER_PLACED = 128
"""The bit of a dimension's type that says its text was put where it is."""
_LOCKED = 16384
"""The bit of a viewport's flags that keeps its scale."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """How paper becomes the coordinates of a space: from a paper origin, by a scale, to a place."""

    origin: Point = (0.0, 0.0)
    scale: float = 1.0
    to: Point = (0.0, 0.0)

    def point(self, p: Point) -> Point:
        """A point on paper, in the space."""
        return (
            round((p[0] - self.origin[0]) * self.scale + self.to[0], _PLACES) + 0.0,
            round((p[1] - self.origin[1]) * self.scale + self.to[1], _PLACES) + 0.0,
        )

    def length(self, value: float) -> float:
        """A length on paper, in the space."""
        return round(value * self.scale, _PLACES)


def write_dxf(sheet: Sheet) -> bytes:
    """One sheet as a drawing, R2010, mm.

    Returns:
        The file; the same bytes for the same sheet in any process.
    """
    document = new_document()
    # Dashes are scaled line by line, so that they look alike in model space and on paper.
    document.header["$PSLTSCALE"] = 0
    document.header["$LWDISPLAY"] = 1
    document.appids.add(_OWNER)
    _styles(document, {view.scale for view in sheet.views})
    space = document.modelspace()
    layout = _layout(document, sheet)
    across, tall = 0.0, (0.0, 0.0)
    for view in sheet.views:
        own = [e for e in sheet.elements if e.view == view.name]
        box = around_boxes(reach(p) for e in own for p in primitives(e))
        left, low, high = (
            (at - zero) * view.scale
            for at, zero in zip(
                (box.x0, box.y0, box.y1), (view.origin[0], *(view.origin[1],) * 2), strict=True
            )
        )
        frame = Frame(origin=view.origin, scale=view.scale, to=(across - left, 0.0))
        _draw_all(document, space, own, frame, view)
        _window(layout, box.grown(1.0), frame, view)
        across += box.width * view.scale + _APART
        tall = (min(tall[0], low), max(tall[1], high))
    paper = [e for e in sheet.elements if e.view == ""]
    _draw_all(document, layout, paper, Frame(), None)
    document.layouts.delete("Layout1")
    _extents(document, (max(across - _APART, 1.0), tall[0], tall[1]))
    return deterministic_bytes(document)


def _extents(document: Drawing, size: tuple[float, float, float]) -> None:
    """What model space holds, and a first view of the whole of it."""
    width, low, high = (round(value, _PLACES) for value in size)
    space = document.modelspace()
    # Written by hand: ezdxf takes extents from the origin for none at all.
    document.header["$EXTMIN"], document.header["$EXTMAX"] = (0.0, low, 0.0), (width, high, 0.0)
    space.reset_limits((0.0, low), (width, high))
    height = 1.05 * max(high - low, width / 1.6, 1.0)
    document.set_modelspace_vport(height=height, center=(width / 2, (low + high) / 2))


def _styles(document: Drawing, scales: Iterable[float]) -> None:
    """Layers, line types, lettering, and one dimension style for each scale."""
    for name, weight in (("stilewright", "regular"), ("stilewright-bold", "bold")):
        document.styles.add(name, font=font_file(weight).name)  # type: ignore[arg-type]
    for layer, line_type in _LINETYPES.items():
        if line_type not in document.linetypes:
            dash = PENS[layer].dash
            pattern = [sum(dash), *(d if i % 2 == 0 else -d for i, d in enumerate(dash))]
            document.linetypes.add(line_type, pattern)
    for layer, pen in PENS.items():
        added = document.layers.add(layer, color=7, lineweight=round(pen.width * 100))
        if layer in _LINETYPES:
            added.dxf.linetype = _LINETYPES[layer]
    document.layers.add(_WINDOW, color=8, lineweight=13).dxf.plot = 0
    for scale in sorted(scales):
        style: Any = document.dimstyles.new(_dimstyle(scale))
        settings = {
            "dimtxsty": "stilewright",
            "dimtxt": TEXT,
            "dimscale": scale,
            "dimlfac": 1.0,
            "dimexo": 1.2,
            "dimexe": 1.6,
            "dimgap": 0.8,
            "dimtsz": 0.9,
            "dimasz": 2.3,
            "dimtad": 1,
            "dimtih": 0,
            "dimtoh": 0,
            "dimdec": 1,
            "dimzin": 8,
            "dimdsep": ord("."),
            "dimtmove": 2,
            "dimlunit": 2,
        }
        for name, value in settings.items():
            style.dxf.set(name, value)


def _dimstyle(scale: float) -> str:
    return f"sheet_1_{scale:g}".replace(".", "_")


def _layout(document: Drawing, sheet: Sheet) -> Paperspace:
    name = sheet.name.translate({ord(sign): "-" for sign in '<>/\\":;?*|,=`'})
    layout = document.layouts.new(name)
    layout.page_setup(
        size=(sheet.paper.width, sheet.paper.height), margins=(0, 0, 0, 0), units="mm"
    )
    return layout


def _window(layout: Paperspace, box: Box, frame: Frame, view: View) -> None:
    """A window on a view: the same box, on paper and in model space."""
    window = layout.add_viewport(
        center=box.centre,
        size=(box.width, box.height),
        view_center_point=frame.point(box.centre),
        view_height=box.height * view.scale,
    )
    window.dxf.layer = _WINDOW
    window.dxf.flags |= _LOCKED
    window.set_xdata(_OWNER, [(1000, view.name), (1040, round(frame.to[0], _PLACES))])


def _draw_all(
    document: Drawing,
    space: Modelspace | Paperspace,
    elements: Iterable[Element],
    frame: Frame,
    view: View | None,
) -> None:
    for element in elements:
        if isinstance(element, Dimension) and view is not None:
            _dimension(document, space, element, frame, view)
        else:
            for part in primitives(element):
                _draw(space, part, frame)


def _draw(space: Modelspace | Paperspace | BlockLayout, part: Primitive, frame: Frame) -> None:
    attributes: dict[str, Any] = {"layer": part.layer}
    if isinstance(part, (Stroke, Circle, Arc)) and part.layer in _LINETYPES and frame.scale != 1:
        attributes["ltscale"] = frame.scale
    match part:
        case Stroke() if len(part.points) == 2:
            a, b = part.points
            space.add_line(frame.point(a), frame.point(b), dxfattribs=attributes)
        case Stroke():
            space.add_lwpolyline(
                [frame.point(p) for p in part.points], close=part.closed, dxfattribs=attributes
            )
        case Circle():
            space.add_circle(
                frame.point(part.centre), frame.length(part.radius), dxfattribs=attributes
            )
        case Arc():
            space.add_arc(
                frame.point(part.centre),
                frame.length(part.radius),
                round(part.start, _PLACES),
                round(part.end, _PLACES),
                dxfattribs=attributes,
            )
        case Fill():
            _fill(space, part.points, frame, attributes)
        case Label():
            _letter(space, part, frame, attributes)
        case _:
            assert_never(part)


def _fill(
    space: Modelspace | Paperspace | BlockLayout,
    points: Polygon,
    frame: Frame,
    attributes: dict[str, Any],
) -> None:
    if len(points) == 3:
        space.add_solid([frame.point(p) for p in points], dxfattribs=attributes)
        return
    hatch = space.add_hatch(color=7, dxfattribs=attributes)
    hatch.paths.add_polyline_path([frame.point(p) for p in points], is_closed=True)


def _letter(
    space: Modelspace | Paperspace | BlockLayout,
    label: Label,
    frame: Frame,
    attributes: dict[str, Any],
) -> None:
    attributes["style"] = "stilewright" if label.weight == "regular" else "stilewright-bold"
    stacked = _stacked_text(label) if label.stacked else label.text
    if stacked != label.text:
        _letter_stacked(space, label, stacked, frame, attributes)
        return
    text = space.add_text(
        label.text,
        height=frame.length(label.height),
        rotation=label.turned,
        dxfattribs=attributes,
    )
    text.set_placement(frame.point(label.at), align=_ALIGN[label.anchor])


def _stacked_text(label: Label) -> str:
    r"""A text with its fractions as the file's own stacks: `29 {\H0.75x;\S13/16;} pull`."""
    return "".join(
        part.text
        if isinstance(part, Run)
        else f"{' ' if part.joint else ''}{{\\H{NUMERAL:g}x;\\S{part.top.text}/{part.bottom.text};}}"
        for part in set_stacked(label.text, label.height, label.weight).parts
    )


_MIDDLE: dict[Anchor, MTextEntityAlignment] = {
    "left": MTextEntityAlignment.MIDDLE_LEFT,
    "centre": MTextEntityAlignment.MIDDLE_CENTER,
    "right": MTextEntityAlignment.MIDDLE_RIGHT,
}


def _letter_stacked(
    space: Modelspace | Paperspace | BlockLayout,
    label: Label,
    text: str,
    frame: Frame,
    attributes: dict[str, Any],
) -> None:
    """A plain TEXT cannot stack; the stack stands about the middle of the whole number."""
    x, y = label.at
    half = label.height / 2
    middle = (x, y + half) if label.turned == 0 else (x - half, y)
    made = space.add_mtext(
        f"\\A1;{text}", dxfattribs={**attributes, "char_height": frame.length(label.height)}
    )
    made.set_location(
        frame.point(middle),
        rotation=label.turned,
        attachment_point=_MIDDLE[label.anchor],
    )


def _dimension(
    document: Drawing,
    space: Modelspace | Paperspace,
    dimension: Dimension,
    frame: Frame,
    view: View,
) -> None:
    """A real dimension with the sheet's own picture of it as its block."""
    d = dimension
    to_model = Frame(to=(frame.to[0], frame.to[1]))
    made = space.add_linear_dim(
        base=frame.point(d.b),
        p1=to_model.point(d.p1),
        p2=to_model.point(d.p2),
        angle=0 if d.axis == "across" else 90,
        text=_text(d),
        dimstyle=_dimstyle(view.scale),
        override=_rounding(d),
        dxfattribs={"layer": "dims"},
    )
    made.commit()
    entity = made.dimension
    entity.set_xdata(_OWNER, [(1000, d.figure)])
    block = document.blocks.new_anonymous_block(type_char="D")
    for part in primitives(d):
        _draw(block, part, frame)
    entity.dxf.geometry = block.name
    entity.dxf.actual_measurement = round(d.value, _PLACES)
    entity.dxf.text_midpoint = frame.point(d.label.box.centre)
    entity.dxf.dimtype |= _USER_PLACED


def _text(dimension: Dimension) -> str:
    """The measurement stands for itself, words round it; what a break shortens is written out."""
    if dimension.left_out:
        return dimension.text
    value = "(<>)" if dimension.reference else "<>"
    exact = _in_brackets(dimension)
    return " ".join(word for word in (dimension.before, value, exact, dimension.after) if word)


def _in_brackets(dimension: Dimension) -> str:
    """The decimal that follows a fraction which is not exact."""
    rule, value = dimension.rule, dimension.value
    return rule.dimension(value).removeprefix(rule.text(value)).strip()


def _rounding(dimension: Dimension) -> dict[str, Any]:
    """Printed to the rule's step, in its unit; extension lines only where the sheet has them."""
    rule = dimension.rule
    settings: dict[str, Any] = {
        "dimse1": 1 if dimension.feet[0] is None else 0,
        "dimse2": 1 if dimension.feet[1] is None else 0,
        "dimrnd": float(rule.step),
    }
    if rule.unit == "inch":
        feet = "'" in rule.text(dimension.value)
        settings |= {
            "dimlfac": 1 / float(INCH),
            "dimlunit": _FEET_AND_INCHES if feet else _INCHES,
            "dimfrac": _LEVEL_BAR,
            "dimtfac": NUMERAL,
            "dimdec": rule.step.denominator.bit_length() - 1,
            "dimzin": _NO_NOUGHT_FEET,
        }
        if rule.marked and not feet:
            settings["dimpost"] = '<>"'
    return settings


_INCHES, _FEET_AND_INCHES = 5, 4
"""DIMLUNIT: fractional, architectural."""
_LEVEL_BAR = 0
"""DIMFRAC: stacked, the bar level."""
_NO_NOUGHT_FEET = 3
"""DIMZIN: no feet where there are none, inches always."""
