r"""Cabinets from the front, in their room as it was measured: nothing made plumb that is not.

\______ceiling______/
 \ ______ ______   |
  ||  .' |'.    |~~|      fronts wear the lines of their hinge side, and their letter;
  ||.'___|__'.__|~~|      with the fronts off, shelves, partitions and drawer boxes are seen
  |____plinth______|
~~~~~floor~~~~~~~~~~~
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.arrangement_elevation import draw_swing
from parametric.drawing.cases.room import Front, Room
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import leaf_letter_mark
from parametric.drawing.pieces import Piece
from parametric.drawing.plane import Polygon
from parametric.drawing.primitives import Circle, Label, reach
from parametric.drawing.seen_and_cut import draw_glass_strokes, draw_linework, front_linework
from parametric.drawing.sheet import Element, View
from parametric.trade.along_wall import tiers

_ALONG = (0.5, 0.62, 0.38, 0.72, 0.28, 0.8, 0.2)
"""Where in a front its letter may stand, as parts of its height and of its width."""


def draw_cabinets(draft: Draft, view: View, pieces: Sequence[Piece]) -> None:
    """Pieces as they are seen from the front, nearer ones before those behind."""
    draw_linework(draft, view, front_linework(pieces, pieces))
    draw_glass_strokes(draft, view, pieces, pieces)


def draw_surround(draft: Draft, view: View, room: Room, stub: float) -> None:
    """Walls, floor and ceiling as measured, `stub` mm of paper of them hatched."""
    box = room.box
    deep = stub * view.scale
    x0, z0, x1, z1 = box.x0 - deep, box.y0 - deep, box.x1 + deep, box.y1 + deep
    left, right = room.left_wall, room.right_wall
    floor, ceiling = room.floor_line, room.ceiling_line
    strips: tuple[Polygon, ...] = (
        (*left, (x0, left[-1][1]), (x0, left[0][1])),
        (*right, (x1, right[-1][1]), (x1, right[0][1])),
        (*((x, z0) for x in (x0, x1)), (x1, floor[-1][1]), *reversed(floor), (x0, floor[0][1])),
        (
            *((x, z1) for x in (x0, x1)),
            (x1, ceiling[-1][1]),
            *reversed(ceiling),
            (x0, ceiling[0][1]),
        ),
    )
    for line in (left, right, ceiling, floor):
        draft.path("cut", view.path(line), view.name)
    for strip in strips:
        draft.add(wall((view.path(strip),), view.name))


def draw_plumb_line(draft: Draft, view: View, room: Room) -> None:
    """The plumb line from the left foot, that both walls were measured from."""
    low, high = room.left_wall[0][1], room.left_wall[-1][1]
    draft.line("datum", view.at((0.0, low)), view.at((0.0, high)), view.name)


def draw_clear_width(draft: Draft, view: View, room: Room) -> None:
    """Where the room is narrowest, plumb, beside what stands over the lowest cabinets."""
    low = float(room.opening.clear_left)
    for tier in tiers(room.cases)[1:]:
        foot, top = min(float(c.case.box.foot) for c in tier), max(float(c.top) for c in tier)
        for x in (low, low + float(room.opening.clear)):
            draft.line("adjacent", view.at((x, foot)), view.at((x, top)), view.name)


def draw_hinge_sides(draft: Draft, view: View, fronts: Sequence[Front]) -> None:
    """The two thin lines of every front that turns, meeting at its hinges."""
    for front in (one for one in fronts if one.is_seen):
        draw_swing(draft, view, front.leaf, front.box)


def letter_fronts(draft: Draft, view: View, fronts: Sequence[Front]) -> None:
    """Each front's letter in a ring; small in a front too low for the other."""
    for front in (one for one in fronts if one.is_seen):
        options: list[list[Element]] = []
        box = front.box
        for small in (False, True):
            for up in _ALONG:
                for across in _ALONG:
                    at = view.at((box.x0 + across * box.width, box.y0 + up * box.height))
                    options.append(
                        leaf_letter_mark(front.leaf.letter, (), at, view.name, small=small)
                    )
        options += [[_bare(front, view, up)] for up in _ALONG]
        over = _bare(front, view, 0.5, mask=True)
        # a front that is lower than a ring and full of lines has its letter on white
        if not any(_clear(draft, group) for group in options) and draft.off_other_texts(over.box):
            draft.add(over)
            continue
        draft.add_first_clear(options, f"leaf {front.leaf.letter}")


def _clear(draft: Draft, group: Sequence[Element]) -> bool:
    """Whether a mark stands clear."""
    return all(draft.free(reach(part)) for part in group if isinstance(part, (Label, Circle)))


def _bare(front: Front, view: View, up: float, *, mask: bool = False) -> Label:
    """A front's letter without a ring."""
    x, y = view.at((front.box.centre[0], front.box.y0 + up * front.box.height))
    return Label(
        text=front.leaf.letter,
        at=(x, y - TEXT / 2),
        anchor="centre",
        weight="bold",
        view=view.name,
        mask=mask,
    )
