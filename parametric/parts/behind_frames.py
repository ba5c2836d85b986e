"""What brings a case's sides out behind a face frame, as parts: blocks for hinges, slide packing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.cases.boring import IN_FACE
from parametric.cases.hinge_blocks import block_cut
from parametric.cases.slide_screws import PACKING_WIDE
from parametric.figures import named
from parametric.model import Blank, Drilled, Face, Material, Part, Placement
from parametric.names import join
from parametric.resolve.bored_case import BoredCase
from parametric.resolve.case_slides import SlideFixing
from parametric.resolve.casework import StandingCase

_MARK = "Y"
BLOCK, PACKING = "hinge block", "slide packing"
"""What the shop calls them."""
_UPRIGHT: Mapping[Face, str] = {
    "low end": "foot",
    "high end": "top",
    "low edge": "front edge",
    "high edge": "back edge",
}
_LYING: Mapping[Face, str] = {
    "low end": "front end",
    "high end": "back end",
    "low edge": "lower edge",
    "high edge": "upper edge",
}


def behind_frame(standing: StandingCase, bored: BoredCase) -> Iterator[Part]:
    """Blocks behind hinges and packing behind slides, in the case's frame.

    Args:
        standing: the case.
        bored: what is bored in it.
    """
    wood = _stuff(standing)
    for own in bored.plates:
        blocks = own.blocks
        if blocks is None:
            continue
        thick = float(blocks.thick)
        left = own.face == "low face"
        x = own.board.x + float(own.board.thickness) if left else own.board.x - thick
        for number, up in enumerate(blocks.heights, 1):
            name = join(blocks.name, f"block {number}")
            yield Part(
                name=name,
                noun=BLOCK,
                mark=_MARK,
                material=wood,
                blank=Blank(length=blocks.long, width=blocks.wide, thickness=blocks.thick),
                placement=Placement(
                    # a frame that goes up has its thickness to the left
                    origin=(x + thick, 0.0, float(up - blocks.long / 2)),
                    x=(0.0, 0.0, 1.0),
                    y=(0.0, 1.0, 0.0),
                ),
                cuts=(block_cut(own.plates, blocks, own.face),),
                faces=_UPRIGHT,
            )
    for slide in bored.slides:
        if slide.pack is not None:
            yield _packing(slide, wood)


def _packing(slide: SlideFixing, wood: Material) -> Part:
    """A strip behind a slide, about its screws; it ends where the slide does."""
    assert slide.pack is not None
    screws = slide.screws
    begins = max(slide.y, 0.0)
    short = begins - slide.y
    face: Face = "high face" if slide.side == "left" else "low face"
    name = join(slide.name, "packing")
    length = slide.long - short if short else slide.long
    return Part(
        name=name,
        noun=PACKING,
        mark=_MARK,
        material=wood,
        blank=Blank(
            length=named(join(name, "length"), length),
            width=PACKING_WIDE,
            thickness=slide.pack,
        ),
        placement=Placement(
            origin=(slide.x, begins, float(slide.foot)),
            x=(0.0, 1.0, 0.0),
            y=(0.0, 0.0, 1.0),
        ),
        cuts=(
            Drilled(
                name="slide holes",
                face=face,
                u=screws.first - begins if begins else screws.first,
                v=screws.up - slide.foot,
                diameter=screws.across,
                depth=slide.in_pack,
                count=int(screws.count),
                pitch=screws.pitch,
                making=IN_FACE,
            ),
        ),
        faces=_LYING,
    )


def _stuff(standing: StandingCase) -> Material:
    """The frame's timber; behind no frame the case's own board."""
    if standing.frame_timber is not None:
        timber = standing.frame_timber
        return Material(name=timber.name, look="timber", density=float(timber.density))
    board = standing.board
    return Material(name=board.name, look="board", density=float(board.density))
