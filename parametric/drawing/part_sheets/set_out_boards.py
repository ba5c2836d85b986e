"""On the sheet of a board that is cut to a shape: letters at its corners, and how they are set out."""

from __future__ import annotations

from parametric.drawing.column import Item, Sentences
from parametric.drawing.draft import Draft
from parametric.drawing.part_sheets.strips import Strip
from parametric.drawing.part_sheets.unfolded import Unfolded
from parametric.drawing.set_out import (
    diagonals_said,
    letter_corners,
    set_out_table,
    setting_out_of,
)
from parametric.drawing.subject import Subject
from parametric.trade.part_cuts import PartCuts, face_name


def letter_board(draft: Draft, job: Subject, own: PartCuts, part: Unfolded, face: Strip) -> None:
    """The corners of the board by their letters; nothing on a rectangle.

    Args:
        draft: the sheet.
        job: the job.
        own: the board's cuts.
        part: it, unfolded.
        face: where its face is drawn.
    """
    shape = setting_out_of(job, own.names)
    if shape is None:
        return
    places = [
        face.at(part.on_face("high face", *corner.point, 0.0, "face")) for corner in shape.corners
    ]
    letter_corners(draft, shape, places, face.views[0].name, inwards=True)


def shape_items(job: Subject, own: PartCuts) -> list[Item]:
    """The table of its corners, and its diagonals; nothing of a rectangle."""
    shape = setting_out_of(job, own.names)
    if shape is None:
        return []
    low = face_name(own.part, "low edge")
    return [
        set_out_table(job, shape, "Setting out", low=low),
        Sentences(title="Check", kind="numbered", texts=(diagonals_said(job, shape),)),
    ]
