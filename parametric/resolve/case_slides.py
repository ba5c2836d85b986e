"""Where the slides of a case's drawers are screwed: into which boards, through which packing."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.cases.boring import Bite, BoringSpec
from parametric.cases.case import Case, CaseBoard
from parametric.cases.drawer_written import WoodenRunnersSpec
from parametric.cases.slide_screws import PACKING_WIDE, SlideScrews, in_two, size_slide_screws
from parametric.figures import Figure, exceeds, largest, named, smallest
from parametric.hangings.hanging import Side
from parametric.model import Face
from parametric.names import join
from parametric.resolve.case_drawer import CaseDrawer

_SAME = 1e-6
_SIDES: tuple[Side, Side] = ("left", "right")
BitesOf = Callable[[CaseBoard, Face], tuple[Bite, ...]]
"""What is cut into a face of a board already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlideFixing:
    """One slide: its screws, the board that it stands before, the packing between them, mm.

    `in_board` is how deep the screws go into the board, None where they stop in the packing;
    `x` and `foot` are where the packing begins in the case, `y` where the slide does, `long` its
    length.
    """

    name: str
    drawer: str
    side: Side
    board: CaseBoard
    face: Face
    screws: SlideScrews
    pack: Figure | None
    in_pack: Figure
    in_board: Figure | None
    x: float
    y: float
    foot: Figure
    long: Figure
    taken: tuple[Bite, ...]


def slide_fixings(
    spec: BoringSpec, case: Case, drawers: Sequence[CaseDrawer], cut: BitesOf
) -> Iterator[SlideFixing]:
    """Both slides of every drawer that runs on some.

    Args:
        spec: how the workshop bores.
        case: the case.
        drawers: its drawers.
        cut: what is cut into its boards already.
    """
    for drawer in drawers:
        if isinstance(drawer.box.written, WoodenRunnersSpec):
            continue
        sides = [(side, *_beside(case, drawer, side)) for side in _SIDES]
        taken = tuple(bite for _, board, _, _ in sides for bite in _on_either_face(board, cut))
        screws = size_slide_screws(
            spec,
            drawer.box,
            front=named(join(drawer.name, "slides", "begin"), Figure(drawer.y)),
            low=drawer.z,
            taken=taken,
        )
        for side, board, face, gap in sides:
            name = join(drawer.name, f"{side} slide")
            pack = named(join(name, "packing thickness"), gap) if exceeds(gap, _SAME) else None
            most = board.thickness - spec.behind
            if board.role == "partition":
                most = most / 2
            in_pack, in_board = Figure(0.0), smallest(screws.deep, most)
            beyond: Figure | None = in_board
            if pack is not None:
                in_pack, beyond = in_two(screws, pack, most, spec.behind)
            yield SlideFixing(
                name=name,
                drawer=drawer.name,
                side=side,
                board=board,
                face=face,
                screws=screws,
                pack=pack,
                in_pack=in_pack,
                in_board=None
                if beyond is None
                else named(join(name, "screw hole in the board"), beyond),
                x=board.x + float(board.thickness) if side == "left" else board.x - float(gap),
                y=drawer.y,
                # a slide beneath a box stands low: its packing goes no lower than its room
                foot=named(
                    join(name, "packing foot"),
                    largest(screws.up - PACKING_WIDE / 2, drawer.z - drawer.box.foot),
                ),
                long=drawer.box.length,
                taken=tuple(cut(board, face)),
            )


def _on_either_face(board: CaseBoard, cut: BitesOf) -> Iterator[Bite]:
    yield from cut(board, "low face")
    yield from cut(board, "high face")


def _beside(
    case: Case, drawer: CaseDrawer, side: Literal["left", "right"]
) -> tuple[CaseBoard, Face, Figure]:
    """The upright board nearest to a slide, the face that looks at it, and how far off that is."""
    up = drawer.z + float(drawer.box.height) / 2
    beside = [
        board
        for board in case.boards
        if board.lies == "upright"
        and board.role in ("side", "partition", "packing")
        and board.z - _SAME <= up <= board.z + float(board.length) + _SAME
    ]
    left = drawer.x - float(drawer.box.room_beside)
    right = drawer.x + float(drawer.box.width + drawer.box.room_beside)
    if side == "left":
        found = [b for b in beside if b.x + float(b.thickness) <= left + _SAME]
        board = max(found, key=lambda b: b.x + float(b.thickness))
        return board, "low face", left - board.x - board.thickness
    found = [b for b in beside if b.x >= right - _SAME]
    board = min(found, key=lambda b: b.x)
    return board, "high face", Figure(board.x - right)
