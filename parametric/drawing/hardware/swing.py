"""The plan of the leaves as they open: jambs, leaves shut and open, the arcs of their edges, the pins.

####|____A____||____B____|####
    |  .       ||       .  |
    |     .    ||    .     |   reach
    |________. ||  .________|
    |--- clear way ---|
"""

from __future__ import annotations

from parametric.drawing.arrangement_plan import wall_end
from parametric.drawing.arrangement_swing import (
    clear_way_chain,
    draw_leaves_open,
    figure_of_turn,
    jambs,
    mark_clear_way,
    pin_places,
    reach_chain,
    swing_box,
)
from parametric.drawing.case import case_from_above
from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.marks import caption, leaf_letter_mark
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import Piece
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Label
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.sheet import View
from parametric.drawing.site import level_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure, named
from parametric.parts.drawer import of_a_box
from parametric.resolve.door import Door
from parametric.resolve.footprint import footprint
from parametric.units import mm_text

_STUB, _DEEP = 9.0, 8.0
"""How much wall is shown beside the opening and behind its face, mm on paper."""
_LEAST_SWING = 100.0
"""A leaf that comes farther than this before the wall opens into the room, mm."""
_PINS = 24.0
"""What the pins' ordinates take over the wall, mm on paper."""
_UNDER = 24.0
"""What the clear way and the caption take under the open leaves, mm on paper."""
_RIGHT = 16.0
"""What the reach takes beside the wall, mm on paper."""


def swing_size(job: Subject, scale: float) -> tuple[float, float]:
    """What the plan takes across and up, mm on paper."""
    door = job.resolved.door
    box = swing_box(door)
    left, right = jambs(door)
    wide = (max(box.x1, right) - min(box.x0, left)) / scale + 2 * _STUB + _RIGHT
    wall = door.survey.wall
    over = max(float(wall) / scale if isinstance(wall, Figure) else _DEEP, box.y1 / scale)
    return wide, over + max(0.0, -box.y0) / scale + _UNDER + _PINS


def draw_swing(draft: Draft, job: Subject, at: Point, scale: float) -> None:
    """The plan; `at` is the low left corner of what it takes."""
    door, rule = job.resolved.door, job.rules.wood
    box = swing_box(door)
    left, right = jambs(door)
    x0 = min(box.x0, left) - _STUB * scale
    x1 = max(box.x1, right) + _STUB * scale
    face = at[1] + _UNDER + max(0.0, -box.y0) / scale
    view = draft.view("plan of the open leaves", scale, (at[0] - x0 / scale, face))
    wall = door.survey.wall
    deep = float(wall) if isinstance(wall, Figure) else _DEEP * scale
    case_from_above(draft, view, door, (left, right), deep)
    for inner, outer in () if door.hanging.case is not None else ((left, x0), (right, x1)):
        wall_end(draft, view, job, inner, outer, deep)
    draw_cuts(draft, view, cuts_through(_hung(job, door), "level", level_cut(door)))
    draw_leaves_open(draft, view, door, shut=None, pins=True)
    mark_clear_way(draft, view, door)
    place_chains(
        draft,
        [
            *clear_way_chain(view, door, view.y(min(box.y0, 0.0)) - FIRST + 2.0, rule),
            *reach_chain(view, door, view.x(x1) + FIRST - 3.0, rule),
        ],
    )
    _pins(draft, job, view, deep)
    _turns(draft, door, view)
    _letters(draft, door, view)
    words = f"{scale_words(scale, job.rules.unit)}, cut through the openings; open in thin line"
    caption(draft, (view.x(x0), at[1] + 5.4), "How the leaves open", words)


def _hung(job: Subject, door: Door) -> list[Piece]:
    """What is cut: of a case its fronts alone, for it stands round them as an outline."""
    leaves = {leaf.name for leaf in door.leaves}
    return [
        piece
        for piece in job.shut
        if not door.case or (piece.group in leaves and not of_a_box(piece.part))
    ]


def _pins(draft: Draft, job: Subject, view: View, deep: float) -> None:
    """Where the pins stand across the plumb clear opening, from its left side."""
    door = job.resolved.door
    start = float(door.opening.clear_left)
    over = view.y(max(deep, swing_box(door).y1)) + 2.0
    zero = Place(at=start, figure=Figure(0.0, "left side"), start=over, rule=job.rules.wood)
    end = Place(
        at=start + float(door.opening.clear),
        figure=door.opening.clear,
        start=over,
        rule=job.rules.wood,
    )
    pins = [
        Place(
            at=x,
            figure=named(f"pin {number}, from the left side", x - start),
            start=over,
            words="pin",
            rule=job.rules.wood,
        )
        for number, (x, _) in enumerate(sorted(pin_places(door)), 1)
        if start < x < end.at
    ]
    place_ordinates(draft, view, "across", [zero, *pins, end], over + 6.0)


def _turns(draft: Draft, door: Door, view: View) -> None:
    """How far the leaves turn, beside the first pin."""
    turn = figure_of_turn(door)
    pins = sorted(pin_places(door))
    if turn is None or not pins:
        return
    x, y = view.at(pins[0])
    way = -1.0 if swing_box(door).y0 < -_LEAST_SWING else 1.0
    first = next(leaf for leaf in door.leaves if leaf.hung.swing is not None)
    centre = view.x(float(first.hung.left + first.width / 2))
    aside = 1.0 if centre > x else -1.0
    places = [
        Label(
            text=f"{mm_text(float(turn), 0.1)}°",
            at=(x + aside * dx, y + way * dy),
            anchor="left" if aside > 0 else "right",
            view=view.name,
        )
        for dy in (8.0, 11.0, 14.0, 18.0, 24.0, 30.0)
        for dx in (7.0, 9.0, 12.0, 16.0, 22.0)
    ]
    draft.add_first(places)


def _letters(draft: Draft, door: Door, view: View) -> None:
    """Each leaf's letter beside its shut place; of drawers, which stand over one another, drawn out."""
    for leaf in door.leaves:
        drawn_out = door.hanging.case is not None and leaf.hung.swing is None
        corners = footprint(leaf, 1.0 if drawn_out else 0.0)
        middle = view.at(
            (
                sum(x for x, _ in corners) / len(corners),
                sum(y for _, y in corners) / len(corners),
            )
        )
        thick = float(leaf.thickness) / view.scale / 2
        options = [
            leaf_letter_mark(
                leaf.letter, (), (middle[0] + dx, middle[1] + way * (thick + 6.0)), view.name
            )
            for way in (-1.0, 1.0)
            for dx in (0.0, 8.0, -8.0, 16.0, -16.0, 24.0, -24.0, 32.0, -32.0)
        ]
        draft.add_first_clear(options, f"leaf {leaf.letter}")
