"""A contact sheet of every starter and example, each half open: `make gallery`.

The pictures are the tool's own quick ones, so that nothing but the tool itself is needed.
"""

from __future__ import annotations

import dataclasses
import math
import sys
from collections.abc import Sequence
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from parametric.catalog.room import Triple
from parametric.job import check
from parametric.pack.case_places import box_round
from parametric.pack.pictures import FACING_SHUT, HALF_OPEN, picture_scene
from parametric.pack.preview_options import Other, shown_beside
from parametric.writers.client_page import PreviewPage
from parametric.writers.picture_scene import Away, Camera, PictureScene, Shot
from parametric.writers.raster import rastered

_ROOT = Path(__file__).resolve().parents[1]
_STARTERS = (
    *("bypass", "sliding", "biparting", "pocket"),
    *("bifold", "hinged", "hinged pair", "dutch", "cabinet"),
)
_CABINETS = (
    *("wardrobe", "alcove pair", "kitchen run", "base cupboard"),
    *("wall cupboard", "pantry tower", "bookcase", "media unit"),
    *("desk", "bureau", "window seat", "vanity", "under stair", "corner cupboard"),
)
_EXAMPLES = (
    *("larch-hill-reading-room", "mill-lane-study"),
    *("fen-road-wardrobe", "quarry-street-alcove"),
)

_IN_A_ROW = 7
"""Starters of cabinets."""
_WIDE = 1600
_MARGIN, _GAP, _WORDS = 16, 12, 44
"""Round the sheet, between pictures, and beneath each for what it is called; pixels."""
_SQUARE, _BROAD = (1, 1), (3, 4)
"""Height to width of a starter's picture, and of an example's."""
_EDGE = 0.06
"""Room left round the doors, as a part of the picture."""
_ASKANCE = 0.28
"""Leaves that turn are seen from nearer to straight in front, rad: from the side they are thin."""
_FINER = 2
"""Small pictures are taken this much larger, so that bars stay clear."""
_COLOURS = 256
_PAPER, _INK, _PALE = (247, 245, 241), (38, 36, 34), (104, 99, 92)
_FONTS = _ROOT / "parametric/vendor/fonts"


def pictured(design: Path, size: tuple[int, int]) -> tuple[str, str, Image.Image]:
    """What it is, the job's name and a picture of it half open; shut where nothing opens.

    A door is called by its kind, a cabinet as its file is.

    Args:
        design: its design file; it must be one that can be made.
        size: width and height, pixels.
    """
    job = check(design, user_house=False)
    assert job.resolved is not None, job.problems
    assert job.assembly is not None, job.problems
    other = Other(resolved=job.resolved, assembly=job.assembly, loads=job.loads, problems=job.own)
    page, glb = shown_beside(other, use_cache=True)
    scene = picture_scene(page, job.assembly)
    wanted = HALF_OPEN if page.leaves else FACING_SHUT
    name = wanted.rpartition("/")[2].removesuffix(".png")
    shot = next(shot for shot in scene.shots if shot.name == name)
    still = [box_round(group) for group in job.assembly.groups if group.parts and page.cases]
    shot = dataclasses.replace(shot, camera=_framed(page, scene, shot, size[0] / size[1], still))
    taken = rastered(
        dataclasses.replace(scene, shots=(shot,)), glb, size=size, progress=lambda _: None
    )
    ((_, levels),) = taken
    kind = _called(design) if page.cases else job.resolved.design.doors[0][1].kind
    return kind, page.job, Image.fromarray(levels)


def _called(design: Path) -> str:
    """What a cabinet's starter is called, or the last word of an example's folder."""
    return design.stem if design.stem != "design" else design.parent.name.rpartition("-")[2]


def _framed(
    page: PreviewPage,
    scene: PictureScene,
    shot: Shot,
    aspect: float,
    still: Sequence[tuple[Triple, Triple]],
) -> Camera:
    """The picture's own camera, as near as shows every leaf shut and open, tracks, casings, and the
    boxes round what is `still`.
    """
    camera = shot.camera
    if any(away.turn is not None for away in shot.moved.values()):
        camera = dataclasses.replace(camera, turn=math.copysign(_ASKANCE, camera.turn))
    points: list[Triple] = [(x, up, near) for x, near, up in scene.brackets]
    points += [(x, y, near) for outline, near, _ in scene.trims for x, y in outline]
    points += [
        (x / 1000, z / 1000, -y / 1000)
        for low, high in still
        for x in (low[0], high[0])
        for y in (low[1], high[1])
        for z in (low[2], high[2])
    ]
    for leaf in page.leaves:
        shut = np.array(
            [
                (x / 1000, y / 1000, -leaf.front / 1000)
                for x in (leaf.x, leaf.x + leaf.width)
                for y in (leaf.foot, leaf.foot + leaf.height)
            ]
        )
        for corners in (shut, shot.moved.get(leaf.name, Away()).carried(shut)):
            points += [(x, y, z) for x, y, z in corners.tolist()]
    low, high = (pick(y for _, y, _ in points) for pick in (min, max))
    return next(
        found
        for far in np.arange(1.5, 20.0, 0.05)
        if _takes_in(
            found := dataclasses.replace(camera, far=float(far), centre=(low + high) / 2),
            points,
            aspect,
        )
    )


def _takes_in(camera: Camera, points: list[Triple], aspect: float) -> bool:
    """Whether all of them are in the picture with room to spare."""
    return all(
        _EDGE <= place <= 1 - _EDGE for point in points for place in camera.seen(point, aspect)
    )


def gallery(out: Path) -> None:
    """The sheet: starters of doors and of cabinets, the worked examples two in a row beneath them.

    Args:
        out: the picture to write.
    """
    starters = [_ROOT / f"templates/{kind}.yaml" for kind in _STARTERS]
    examples = [_ROOT / f"examples/{name}/design.yaml" for name in _EXAMPLES]
    cabinets = [_ROOT / f"templates/{name}.yaml" for name in _CABINETS]
    rows = (
        (starters[:4], _SQUARE),
        (starters[4:], _SQUARE),
        *((cabinets[at : at + _IN_A_ROW], _SQUARE) for at in range(0, len(cabinets), _IN_A_ROW)),
        *((examples[at : at + 2], _BROAD) for at in range(0, len(examples), 2)),
    )
    widths = [(_WIDE - 2 * _MARGIN - (len(row) - 1) * _GAP) // len(row) for row, _ in rows]
    heights = [
        wide * high // across for wide, (_, (high, across)) in zip(widths, rows, strict=True)
    ]
    sheet = Image.new("RGB", (_WIDE, sum(heights) + _WORDS * len(rows) + 2 * _MARGIN), _PAPER)
    pen = ImageDraw.Draw(sheet)
    bold, plain = (
        ImageFont.truetype(str(_FONTS / f"stilewright-{weight}.ttf"), 19)
        for weight in ("bold", "regular")
    )
    top = _MARGIN
    for (row, _), wide, high in zip(rows, widths, heights, strict=True):
        finer = _FINER if len(row) > 2 else 1
        for column, design in enumerate(row):
            kind, job, picture = pictured(design, (wide * finer, high * finer))
            sys.stdout.write(f"{kind}: {job}\n")
            left = _MARGIN + column * (wide + _GAP)
            sheet.paste(picture.resize((wide, high), Image.Resampling.LANCZOS), (left, top))
            pen.text((left + 2, top + high + 6), kind, _INK, font=bold)
            after = left + 2 + pen.textlength(f"{kind}   ", font=bold)
            if after + pen.textlength(job, font=plain) <= left + wide:
                pen.text((after, top + high + 6), job, _PALE, font=plain)
        top += high + _WORDS
    few = sheet.quantize(
        _COLOURS, method=Image.Quantize.MEDIANCUT, kmeans=1, dither=Image.Dither.NONE
    )
    few.save(out, "PNG", optimize=True)


if __name__ == "__main__":
    gallery(Path(sys.argv[1]) if len(sys.argv) > 1 else _ROOT / "docs/gallery.png")
