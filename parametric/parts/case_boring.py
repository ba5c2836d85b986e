"""What is bored in each board of a case: joints, hinge plates and pins, as its cuts."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import assert_never

from parametric.cases.boring import IN_FACE
from parametric.cases.butt_joints import (
    CarcassScrews,
    Dowels,
    dowels_in_end,
    dowels_in_face,
    screws_in_end,
    screws_in_face,
)
from parametric.cases.case import CaseBoard
from parametric.cases.case_tenons import Tenons, tenons_in_end, tenons_in_face
from parametric.cases.fixings import TooShort
from parametric.cases.pin_rows import PinRows, line_cuts, pin_cuts
from parametric.cases.plate_holes import plate_cuts
from parametric.cases.pocket_screws import PocketScrews, pockets_in_face
from parametric.cases.slide_screws import slide_cut
from parametric.model import Cut, Drilled
from parametric.resolve.bored_case import BoredCase, CaseJoint, StayHole


def bored(case: BoredCase, board: CaseBoard) -> Iterator[Cut]:
    """Every hole and slot of one board.

    Args:
        case: what is bored in its case.
        board: the board.
    """
    for joint in case.joints:
        yield from _joint(joint, board.name)
    for own in case.plates:
        if own.board.name == board.name:
            front = board.y if own.front is None else own.front
            foot = 0.0 if board.lies == "level" else board.z
            plates = own.plates
            if own.blocks is not None:
                if own.blocks.in_board is None:
                    continue
                plates = dataclasses.replace(
                    plates, deep=own.blocks.in_board, heights=own.blocks.heights
                )
            yield from plate_cuts(plates, face=own.face, foot=foot, front=front)
    for slide in case.slides:
        if slide.board.name == board.name and slide.in_board is not None:
            yield slide_cut(
                slide.screws,
                face=slide.face,
                foot=board.z,
                front=board.y,
                deep=slide.in_board,
            )
    for hole in case.stays:
        if hole.board.name == board.name:
            yield _stay(hole)
    for pins in case.pins:
        if isinstance(pins.rows, PinRows) and pins.boards:
            for lined in pins.boards:
                if lined.board.name == board.name:
                    yield from line_cuts(pins.rows, lined.lines, face=lined.face, foot=board.z)
        elif isinstance(pins.rows, PinRows):
            # a bay looks at the right face of the board on its left
            if pins.left.name == board.name:
                yield from pin_cuts(pins.rows, face="low face", foot=board.z, front=board.y)
            if pins.right.name == board.name:
                yield from pin_cuts(pins.rows, face="high face", foot=board.z, front=board.y)


def _stay(hole: StayHole) -> Drilled:
    """The pilot of a stay, in an upright board."""
    return Drilled(
        name="stay fixing",
        face=hole.face,
        u=hole.up - hole.board.z,
        v=hole.back - hole.board.y,
        diameter=hole.across,
        depth=hole.deep,
        making=IN_FACE,
    )


def _joint(joint: CaseJoint, board: str) -> Iterator[Cut]:
    """What one joint takes from a board."""
    match joint.held:
        case Dowels():
            if joint.into == board:
                yield from dowels_in_face(joint.held, joint.on)
            if joint.board == board and not joint.clamped:
                yield from dowels_in_end(joint.held, joint.at)
        case CarcassScrews():
            if joint.into == board:
                yield from screws_in_face(joint.held, joint.on)
            if joint.board == board and not joint.clamped:
                yield from screws_in_end(joint.held, joint.at)
        case Tenons():
            if joint.into == board:
                yield from tenons_in_face(joint.held, joint.on)
            if joint.board == board:
                yield from tenons_in_end(joint.held, joint.at)
        case PocketScrews():
            if joint.board == board:
                yield pockets_in_face(joint.held, joint.at, joint.hidden)
        case TooShort():
            return
        case _:
            assert_never(joint.held)
