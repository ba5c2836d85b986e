"""One place of a leaf cut level and drawn large: the stile, and what stands in the opening beside it."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, TITLE
from parametric.drawing.marks import short_section, wave
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import Piece
from parametric.drawing.plane import Box, left_of
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.sheet import View
from parametric.resolve.leaf import Leaf
from parametric.units import Unit

SCALE = 2.0
_BEYOND = 45.0
"""How much of the opening is shown beside the stile, mm."""
_CAPTION = 7.0
_ROOM = 10.0


def draw_enlarged(
    draft: Draft,
    leaf: Leaf,
    pieces: Sequence[Piece],
    elevation: View,
    room: Box,
    letter: str,
    unit: Unit = "mm",
) -> bool:
    """Draw it where there is room, and call it from the elevation; False where there is none.

    Args:
        draft: the sheet.
        leaf: the leaf.
        pieces: its parts in its own frame.
        elevation: the view it is called from.
        room: what is left of the sheet, mm.
        letter: the section's letter.
        unit: of the job, in whose words its scale is said.
    """
    height = _height(leaf)
    right = float(leaf.left_stile) + _BEYOND
    wide, deep = right / SCALE, float(leaf.thickness) / SCALE
    if (
        wide + _ROOM > room.width
        or deep + _CAPTION + 2.0 > room.height
        or not draft.free(room, 0.0)
    ):
        return False
    # Seen from above, the leaf's face to the foot of the sheet.
    middle = room.y0 + (room.height - deep - _CAPTION) / 2
    view = draft.view(f"section {letter}-{letter}", SCALE, (room.x0 + 2.0, middle))
    cuts = [
        dataclasses.replace(cut, outline=left_of(cut.outline, right))
        for cut in cuts_through(pieces, "level", height)
    ]
    cuts = [cut for cut in cuts if len(cut.outline) > 2]
    edge = float(leaf.left_stile)
    for y in (0.0, float(leaf.thickness)):
        # The rail below, seen past the cut.
        draft.add(
            Stroke(
                layer="edge_fine",
                points=(view.at((edge, y)), view.at((right, y))),
                view=view.name,
            )
        )
    draw_cuts(draft, view, cuts, marks=True)
    end = view.x(right) + 0.4
    wave(draft, (end, view.y(0.0) - 1.0), (end, view.y(float(leaf.thickness)) + 1.0), view.name)
    beside = next((c for c in cuts if c.piece.part.mark[0] in "GP"), None)
    if beside is not None:
        y = view.y(sum(p[1] for p in beside.outline) / len(beside.outline)) - TEXT / 2
        mark = Label(text=beside.piece.part.mark, at=(end + 1.6, y), weight="bold", view=view.name)
        if not any(
            isinstance(e, Label) and e.text == mark.text and e.view == view.name
            for e in draft.elements
        ):
            draft.add(mark)
    top = view.y(float(leaf.thickness)) + 3.6
    name = Label(
        text=f"{letter}-{letter}  {scale_words(SCALE, unit)}",
        at=(view.x(0.0), top),
        height=TITLE,
        weight="bold",
    )
    draft.add(name)
    draft.add(Label(text="seen from above, face below", at=(name.box.x1 + 3.0, top)))
    ends = (elevation.x(0.0) - 2.8, elevation.x(right) + 2.0)
    short_section(draft, ends, elevation.y(height), letter, elevation.name)
    return True


def _height(leaf: Leaf) -> float:
    """Through the pull, off its middle, where it lies beside glass; else low in a lite or a panel."""
    field = leaf.lites[-1] if leaf.lites else leaf.panels[-1]
    for hung in leaf.pulls:
        low = float(hung.pull.body_pocket_low)
        through = low + 0.25 * float(hung.pull.body_pocket_length)
        for lite in leaf.lites:
            held = lite.pane.stops.width if lite.pane.stops is not None else lite.pane.bite
            spare = 2 * float(held)
            if float(lite.foot) + spare < through < float(lite.top) - spare:
                return through
    return float(field.foot) + 0.3 * float(field.height)
