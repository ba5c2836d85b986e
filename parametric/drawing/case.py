"""The case that fronts hang on, which stands already: its sides, ends and partitions, in each view.

from the front              seen from above, cut
 ______________             |#|        |#|        |#|    # board, cut
| .----  ----. |            front edges at the face, the rest of it broken off behind
| |    ||    | |
| '----  ----' |
"""

from __future__ import annotations

import itertools

from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board
from parametric.drawing.marks import wave
from parametric.drawing.plane import Box, Polygon, outside_all, rectangle
from parametric.drawing.sheet import View
from parametric.hangings.hanging import Case
from parametric.resolve.door import Door

_DOTS = 1.1
"""From one dot of cut board to the next, mm on paper."""


def case_outline(door: Door) -> Box | None:
    """The case seen from the front, in the world's X and Z; None round doors of another kind."""
    case = door.hanging.case
    if case is None:
        return None
    edge = float(case.edge)
    across = [x for x, _ in door.opening.outline()]
    foot = 0.0 if door.opening.foot is None else float(door.opening.foot)
    return Box(
        min(across) - edge,
        max(0.0, foot - edge),
        max(across) + edge,
        float(door.opening.head) + edge,
    )


def case_from_front(draft: Draft, view: View, door: Door, covers: list[Polygon]) -> None:
    """Its outside, the foot of its opening and its partitions, where no front covers them."""
    case, outside = door.hanging.case, case_outline(door)
    if case is None or outside is None:
        return
    outline = door.opening.outline()
    lines = [*itertools.pairwise((*outside.polygon, outside.polygon[0])), (outline[-1], outline[0])]
    foot, head = outline[0][1], float(door.opening.head)
    for left, right in _partitions(case):
        lines += [((x, foot), (x, head)) for x in (left, right)]
    for a, b in lines:
        for p, q in outside_all(a, b, covers):
            draft.line("edge_fine", view.at(p), view.at(q), view.name)


def case_from_above(
    draft: Draft, view: View, door: Door, sides: tuple[float, float], deep: float
) -> None:
    """Its sides and partitions cut, `deep` mm of them behind their front edges."""
    case = door.hanging.case
    if case is None:
        return
    edge = float(case.edge)
    left, right = sides
    for x0, x1 in ((left - edge, left), (right, right + edge), *_partitions(case)):
        _cut(draft, view, rectangle(x0, 0.0, x1, deep))
        wave(draft, view.at((x0, deep)), view.at((x1, deep)), view.name)


def case_from_the_side(
    draft: Draft, view: View, door: Door, faces: tuple[float, float], floor: float
) -> None:
    """Its top and its bottom cut between the front edges and where they are broken off.

    Args:
        draft: the sheet.
        view: the upright section.
        door: the door.
        faces: the front edges and the broken end, across the section, mm.
        floor: under it, mm.
    """
    case, outside = door.hanging.case, case_outline(door)
    if case is None or outside is None:
        return
    x0, x1 = sorted(faces)
    head, foot = float(door.opening.head), outside.y0 + float(case.edge)
    for low, high in ((head, outside.y1), (max(floor, outside.y0), foot)):
        _cut(draft, view, rectangle(x0, low, x1, high))
        wave(draft, view.at((faces[1], low)), view.at((faces[1], high)), view.name)
    draft.line("edge_fine", view.at((faces[0], foot)), view.at((faces[0], head)), view.name)


def _partitions(case: Case) -> list[tuple[float, float]]:
    return [(float(left), float(left + case.partition)) for left in case.partitions]


def _cut(draft: Draft, view: View, outline: Polygon) -> None:
    on_paper = view.path(outline)
    draft.path("cut", on_paper, view.name, closed=True)
    draft.add(board((on_paper,), view.name, _DOTS))
