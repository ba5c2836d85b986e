"""How the leaves open, seen from above: shut, open in thin line, and the way their edges go.

     wall |_____A_____||_____B_____| wall
          |  .        ||        .  |
          |     .     ||     .     |    room
          |________.  ||  .________|

Every leaf is drawn by its motion alone, so one that turns, slides or does both needs nothing
of its own here.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.draft import Draft
from parametric.drawing.layers import Layer
from parametric.drawing.plane import Box, Point, Polygon, around
from parametric.drawing.primitives import Circle
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.site import hung_by, jambs_at, level_cut
from parametric.figures import Figure
from parametric.model import State, Turn
from parametric.resolve.door import Door
from parametric.resolve.footprint import footprint
from parametric.resolve.leaf import Leaf

_STEPS = 48
"""A way is drawn through so many places; a quarter turn of a door is then true within 0.1 mm."""
_MARK = 1.5
"""Half a mark on paper, mm."""
_SAME = 0.05
"""A width found in the drawing is the one that is printed when it is no farther off, mm."""


def open_state(door: Door) -> State:
    """The state in which the most of the door is open; of several the last."""
    found = door.hanging.states[0]
    for state in door.hanging.states:
        if sum(state.open.values()) >= sum(found.open.values()):
            found = state
    return found


def stands(leaf: Leaf, state: State) -> Polygon:
    """A leaf's outline from above in a state: X and Y, the room at the foot."""
    return footprint(leaf, state.open.get(leaf.name, 0.0))


def way_of_edge(leaf: Leaf, state: State) -> Polygon:
    """The way that the leaf's free edge goes from shut to a state: of its corner that goes farthest."""
    part = state.open.get(leaf.name, 0.0)
    if part == 0.0 or leaf.hung.swing is None:
        return ()
    places = [footprint(leaf, part * i / _STEPS) for i in range(_STEPS + 1)]
    free = (1, 2) if hung_by(leaf.hung) == "left" else (0, 3)
    ways = [tuple(place[corner] for place in places) for corner in free]
    return max(ways, key=_length)


def _length(way: Sequence[Point]) -> float:
    return sum(math.dist(a, b) for a, b in itertools.pairwise(way))


def swing_box(door: Door) -> Box:
    """All the ground that the leaves pass over as they open, X and Y, mm."""
    state = open_state(door)
    points = [
        point
        for leaf in door.leaves
        for i in range(_STEPS + 1)
        for point in footprint(leaf, state.open.get(leaf.name, 0.0) * i / _STEPS)
    ]
    return around(points)


def draw_leaves_open(
    draft: Draft, view: View, door: Door, *, shut: Layer | None, pins: bool
) -> None:
    """The leaves in thin line where they stand open, the way they went, and what they turn about.

    Args:
        draft: the sheet.
        view: seen from above.
        door: the door.
        shut: the layer of the shut leaves' outlines; None where they are drawn already.
        pins: mark the lines that leaves turn about.
    """
    state = open_state(door)
    for leaf in door.leaves:
        if shut is not None:
            draft.path(shut, view.path(footprint(leaf, 0.0)), view.name, closed=True)
        if state.open.get(leaf.name, 0.0) == 0.0:
            continue
        draft.path("edge_fine", view.path(stands(leaf, state)), view.name, closed=True)
        if len(leaf.hung.motion) > 1:
            # Leaves that fold are seen on their way too.
            half = footprint(leaf, state.open[leaf.name] / 2)
            draft.path("adjacent", view.path(half), view.name, closed=True)
        way = way_of_edge(leaf, state)
        if way:
            draft.path("hidden", view.path(way), view.name)
    if not pins:
        return
    for x, y in pin_places(door):
        centre = view.at((x, y))
        draft.add(Circle(layer="edge_fine", centre=centre, radius=0.9, view=view.name))


def pin_places(door: Door) -> tuple[Point, ...]:
    """The upright lines of the world that leaves turn about, X and Y, each once."""
    found = [
        (float(step.point[0]), float(step.point[1]))
        for leaf in door.leaves
        for step in leaf.hung.motion
        if isinstance(step, Turn) and leaf.hung.flap is None
    ]
    return tuple(dict.fromkeys(found))


def clear_between(door: Door) -> tuple[float, float] | None:
    """Where the clear way lies across the opening when the leaves stand open; None where what is
    free there is not the clear way that was worked out.
    """
    clear_way = door.hanging.clear_way
    if clear_way is None:
        return None
    left, right = _sides(door)
    state = open_state(door)
    taken = sorted(
        (max(left, box.x0), min(right, box.x1))
        for box in (around(stands(leaf, state)) for leaf in door.leaves)
        if box.x1 > left and box.x0 < right
    )
    free: list[tuple[float, float]] = []
    at = left
    for low, high in taken:
        free.append((at, low))
        at = max(at, high)
    free.append((at, right))
    widest = max(free, key=lambda one: one[1] - one[0])
    same = abs(widest[1] - widest[0] - float(clear_way)) < _SAME
    return widest if same else None


def _sides(door: Door) -> tuple[float, float]:
    """The sides of the plumb clear opening."""
    left = float(door.opening.clear_left)
    return left, left + float(door.opening.clear)


def clear_way_chain(view: View, door: Door, line: float, rule: Rule) -> list[Chain]:
    """The clear way between the open leaves, on a line across the sheet.

    Args:
        view: seen from above.
        door: the door.
        line: the paper coordinate of its line.
        rule: how it is printed.
    """
    between, clear_way = clear_between(door), door.hanging.clear_way
    if between is None or clear_way is None:
        return []
    box = swing_box(door)
    below = line < view.y(box.y0)
    foot = view.y(box.y0 if below else box.y1)
    return [
        Chain(
            view=view,
            axis="across",
            line=line,
            stops=tuple(Stop(at=at, foot=foot) for at in between),
            links=(Link(figure=clear_way, after="clear way", rule=rule),),
        )
    ]


def mark_clear_way(draft: Draft, view: View, door: Door) -> None:
    """Short lines where the clear way begins and ends: at a jamb as it is where it is narrowest."""
    between = clear_between(door)
    if between is None:
        return
    for at in between:
        ends = (view.at((at, -_MARK * view.scale)), view.at((at, _MARK * view.scale)))
        draft.line("adjacent", *ends, view.name)


def reach_chain(view: View, door: Door, line: float, rule: Rule) -> list[Chain]:
    """How far the open leaves reach out of the plane of their knuckles, on an upright line."""
    reach = door.hanging.reach
    if reach is None:
        return []
    start = _knuckle_plane(door)
    if start is None:
        return []
    box = swing_box(door)
    end = start - float(reach) if box.y0 < start - float(reach) / 2 else start + float(reach)
    right = view.x(max(box.x1, float(door.opening.widest)))
    low, high = sorted((start, end))
    open_edge = view.x(max(p[0] for leaf in door.leaves for p in stands(leaf, open_state(door))))
    feet = {start: right, end: open_edge}
    return [
        Chain(
            view=view,
            axis="up",
            line=line,
            stops=(Stop(at=low, foot=feet[low]), Stop(at=high, foot=feet[high])),
            links=(Link(figure=reach, after="reach", rule=rule),),
        )
    ]


def _knuckle_plane(door: Door) -> float | None:
    """The Y of the face that the knuckles stand on."""
    for leaf in door.leaves:
        if leaf.hung.knuckles is None:
            continue
        half = float(leaf.thickness) / 2
        return -float(leaf.hung.plane) + (-half if leaf.hung.knuckles == "front" else half)
    return None


def jambs(door: Door) -> tuple[float, float]:
    """The sides of the opening where the plan is cut, as measured."""
    return jambs_at(door, level_cut(door))


def figure_of_turn(door: Door) -> Figure | None:
    """How far the leaves turn, where all that turn do so alike, deg."""
    turns = {float(leaf.hung.swing): leaf.hung.swing for leaf in door.leaves if leaf.hung.swing}
    return next(iter(turns.values())) if len(turns) == 1 else None
