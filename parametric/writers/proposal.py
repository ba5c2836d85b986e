"""A proposal as one PDF: colour beneath, a picture where there is one, lines and letters over it."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any

from PIL import Image
from reportlab.lib.colors import HexColor
from reportlab.lib.utils import ImageReader

from parametric.drawing.layers import PENS, Layer
from parametric.drawing.plane import Box
from parametric.drawing.proposal import ProposalPage, Tint
from parametric.writers.pdf import MM, Ink, draw_sheet, open_canvas, open_page

INK = "#18211f"
SOFT = "#48544f"
LINE = "#bcc5c1"
CHALK_LINE = "#2340b8"
"""Blue means measured, and nothing else; in grey it prints as a middle tone, so sizes have ticks."""

INKS: Mapping[Layer, Ink] = MappingProxyType(
    {layer: Ink(INK, INK) for layer in PENS}
    | {
        "dims": Ink(CHALK_LINE, CHALK_LINE),
        "dim_ticks": Ink(CHALK_LINE, CHALK_LINE),
        "table": Ink(LINE, SOFT),
        "hatch": Ink(SOFT, INK),
        "hidden": Ink(SOFT, INK),
        "centre": Ink(SOFT, INK),
        "adjacent": Ink(SOFT, INK),
    }
)


def write_proposal(
    pages: Sequence[ProposalPage], names: Sequence[str], picture: bytes | None
) -> bytes:
    """The file; two calls with the same pages give the same bytes.

    Args:
        pages: in order.
        names: what each is called in the outline.
        picture: PNG, for the page that has a place for one.
    """
    stream = io.BytesIO()
    canvas = open_canvas(stream, pages[0].sheet)
    for index, (page, name) in enumerate(zip(pages, names, strict=True)):
        open_page(canvas, page.sheet, index, name)
        if page.picture is not None and picture is not None:
            _picture(canvas, picture, page.picture)
        canvas.saveState()
        canvas.scale(MM, MM)
        canvas.setLineJoin(1)
        canvas.setLineCap(1)
        for tint in page.tints:
            _tint(canvas, tint)
        canvas.restoreState()
        draw_sheet(canvas, page.sheet, INKS)
        canvas.showPage()
    canvas.showOutline()
    canvas.save()
    return stream.getvalue()


def picture_shape(picture: bytes) -> float:
    """How wide a picture is for its height."""
    with Image.open(io.BytesIO(picture)) as image:
        return image.width / image.height


def picture_words(picture: bytes) -> str:
    """What a PNG says of itself under `Description`; nothing where it says none."""
    with Image.open(io.BytesIO(picture)) as image:
        return str(image.info.get("Description", ""))


def _picture(canvas: Any, picture: bytes, box: Box) -> None:
    """The whole of it, in a box of its own shape, as JPEG: a tenth of the bytes, no loss to be seen."""
    packed = io.BytesIO()
    with Image.open(io.BytesIO(picture)) as image:
        image.convert("RGB").save(packed, "JPEG", quality=92, subsampling=0)
    packed.seek(0)
    canvas.drawImage(
        ImageReader(packed),
        box.x0 * MM,
        box.y0 * MM,
        width=box.width * MM,
        height=box.height * MM,
    )


def _tint(canvas: Any, tint: Tint) -> None:
    canvas.saveState()
    path = canvas.beginPath()
    path.moveTo(*tint.points[0])
    for point in tint.points[1:]:
        path.lineTo(*point)
    if tint.width:
        canvas.setStrokeColor(HexColor(tint.colour))
        canvas.setStrokeAlpha(tint.alpha)
        canvas.setLineWidth(tint.width)
        canvas.drawPath(path, stroke=1, fill=0)
    elif tint.toward is None:
        path.close()
        canvas.setFillColor(HexColor(tint.colour))
        canvas.setFillAlpha(tint.alpha)
        canvas.drawPath(path, stroke=0, fill=1)
    else:
        (x0, y0), (x1, y1), colour = tint.toward
        path.close()
        canvas.clipPath(path, stroke=0, fill=0)
        canvas.linearGradient(x0, y0, x1, y1, (HexColor(tint.colour), HexColor(colour)))
    canvas.restoreState()
