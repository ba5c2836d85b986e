"""The edge a leaf is hung by, cut level with its jamb: the gap, the pin, the hinge let in."""

from __future__ import annotations

from typing import assert_never

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.surround import draw_jamb
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Circle
from parametric.drawing.sheet import View
from parametric.drawing.site import hung_by, jambs_at, leaf_boxes, level_cut
from parametric.drawing.subject import Subject
from parametric.hangings.hanging import Side
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.hinge_kinds import AnyHinges
from parametric.hardware.pivot import Pivots
from parametric.model import Turn
from parametric.resolve.leaf import Leaf

_STILE, _JAMB = 58.0, 34.0
"""How much of stile and of jamb is shown, mm."""
_PAST = 16.0
"""How much jamb is shown past the leaf's thickness, mm."""


def hung_leaf(job: Subject) -> tuple[Leaf, Side] | None:
    """The first leaf that turns about an edge beside a jamb, and that edge."""
    for leaf in job.resolved.door.leaves:
        side = hung_by(leaf.hung)
        if leaf.hung.swing is not None and side is not None and leaf.hung.edge(side) == "hinge":
            return leaf, side
    return None


def pin_of(leaf: Leaf) -> Point | None:
    """The line a leaf turns about, seen from above, X and Y; None where it does not turn."""
    return next(
        ((float(s.point[0]), float(s.point[1])) for s in leaf.hung.motion if isinstance(s, Turn)),
        None,
    )


def hinge_jamb(job: Subject) -> Detail | None:
    """The hung edge and the jamb beside it; None where no leaf is hung to a jamb."""
    door = job.resolved.door
    found, gap = hung_leaf(job), door.hanging.hinge_gap
    if found is None or gap is None or (door.hanging.case is not None and door.hanging.on_wall):
        return None
    leaf, side = found
    box = leaf_boxes(door)[door.leaves.index(leaf)]
    way = 1.0 if side == "left" else -1.0
    edge = box.x0 if side == "left" else box.x1
    jamb = edge - way * float(gap)
    front = -float(leaf.hung.plane) - float(leaf.thickness) / 2
    back = front + float(leaf.thickness)
    stile = float(leaf.left_stile if side == "left" else leaf.right_stile)
    shown = min(_STILE, stile - 6.0)
    x0, x1 = sorted((jamb - way * _JAMB, edge + way * shown))
    window = Box(x0, front - 60.0, x1, back + 60.0)
    draft = board()
    scale = detail_scale(window.width, back - front + 2 * _PAST)
    view = draft.view("hinge jamb", scale, (ORIGIN[0] - jamb / scale, ORIGIN[1]))
    face = min(0.0, front)
    low, high = sorted((jamb, jamb - way * _JAMB))
    hinges = _butts(leaf, side)
    flaps = None if hinges is None else _flaps(leaf, hinges, (jamb, edge, way), (front, back))
    draw_jamb(
        draft,
        view,
        job,
        Box(low, face, high, back + _PAST),
        inner=jamb,
        let_in=None if flaps is None else flaps[0],
    )
    at = _cut_at(job, leaf, hinges)
    name = f"{leaf.name} / {side} stile"
    pieces = [p for p in job.shut if p.part.name == name]
    cuts = cut_in_window(pieces, "level", at, window)
    draw_cut(draft, view, cuts, window, Looks(letters={name: leaf.letter}))
    # a cup hinge moves on links and has no pin to show
    pin = None if isinstance(leaf.hinges[0].hinges, CupHinges) else pin_of(leaf)
    for a, b in flaps or ():
        flap = Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))
        draft.path("adjacent", view.path(flap.polygon), view.name, closed=True)
    if pin is not None:
        _pin(draft, view, pin, _radius(leaf.hinges[0].hinges))
    _chains(draft, view, job, leaf, (jamb, edge, way), (front, back), pin)
    lean = max(abs(a - b) for a, b in zip(jambs_at(door, at), _plumb(job), strict=True))
    measured = (
        f" The jamb is drawn plumb; here it stands up to {job.wood(lean)} farther off."
        if lean >= 0.25
        else ""
    )
    return finished(
        draft,
        "hinge jamb",
        "Hinge side and jamb",
        f"{at_scale(job, scale)}, plan section"
        + (" through a hinge" if hinges is not None else "")
        + f", shut, face below.{measured}",
        Call(
            on="plan",
            by="ring",
            box=Box(min(jamb, edge) - 10.0, front, max(jamb, edge) + 10.0, back),
        ),
    )


def _cut_at(job: Subject, leaf: Leaf, hinges: ButtHinges | None) -> float:
    """The height of the cut: through the lowest butt hinge, else as the plan, else the leaf's middle."""
    if hinges is not None:
        return float(leaf.hung.foot + hinges.places[-1].centre)
    level, foot = level_cut(job.resolved.door), float(leaf.hung.foot)
    return level if 0 < level - foot < float(leaf.height) else foot + float(leaf.height) / 2


def _plumb(job: Subject) -> tuple[float, float]:
    """The sides of the plumb clear opening."""
    opening = job.resolved.door.opening
    return float(opening.clear_left), float(opening.clear_left + opening.clear)


def _butts(leaf: Leaf, side: Side) -> ButtHinges | None:
    """The butt hinges of an edge; None where it carries none or another kind."""
    found = next((one.hinges for one in leaf.hinges if one.side == side), None)
    return found if isinstance(found, ButtHinges) else None


def _flaps(
    leaf: Leaf,
    hinges: ButtHinges,
    across: tuple[float, float, float],
    through: tuple[float, float],
) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    """The mortises of both flaps, jamb first: the corner at the knuckle's face, the one inside."""
    jamb, edge, way = across
    front, back = through
    deep, wide = float(hinges.mortise.depth), float(hinges.mortise.width)
    if leaf.hung.knuckles == "back":
        start, end = back, back - wide
    else:
        start, end = front, front + wide
    return (
        ((jamb, start), (jamb - way * deep, end)),
        ((edge, start), (edge + way * deep, end)),
    )


def _radius(hinges: AnyHinges) -> float:
    """Of what is round about the pin's middle, mm: the knuckle, or the pin itself."""
    match hinges:
        case ButtHinges():
            return float(hinges.knuckle) / 2
        case Pivots():
            return float(hinges.width) / 2
        case CupHinges():
            return float(hinges.cup) / 2
        case _:
            assert_never(hinges)


def _pin(draft: Draft, view: View, pin: Point, radius: float) -> None:
    """The pin's middle: the knuckle round it, and its cross of centre lines."""
    x, y = view.at(pin)
    draft.add(Circle(layer="adjacent", centre=(x, y), radius=radius / view.scale, view=view.name))
    for dx, dy in ((9.0, 0.0), (0.0, 9.0)):
        draft.line("centre", (x - dx, y - dy), (x + dx, y + dy), view.name)


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    leaf: Leaf,
    across: tuple[float, float, float],
    through: tuple[float, float],
    pin: Point | None,
) -> None:
    """The gap on the far side from the pin; the pin off the face that its knuckle stands on."""
    jamb, edge, way = across
    front, back = through
    wood = job.rules.wood
    gap = job.resolved.door.hanging.hinge_gap
    assert gap is not None
    knuckle_front = leaf.hung.knuckles != "back"
    off = view.y(back) + FIRST + _PAST / view.scale if knuckle_front else view.y(front) - FIRST
    level = view.y(back) if knuckle_front else view.y(front)
    low, high = sorted((jamb, edge))
    chains = [
        chain(view, "across", off, ((low, level), (high, level)), (Link(figure=gap, rule=wood),))
    ]
    stile = float(leaf.left_stile if way > 0 else leaf.right_stile)
    side = view.x(edge + way * min(_STILE, stile - 6.0)) + way * 1.4
    places: list[tuple[float, float]] = [(front, side), (back, side)]
    links: list[Link | None] = [reference(leaf.thickness, wood)]
    proud = leaf.hinges[0].hinges.pin_out
    if pin is not None and float(proud) > 0:
        foot = view.x(pin[0]) + way * 10.0
        if knuckle_front:
            places.insert(0, (pin[1], foot))
            links.insert(0, Link(figure=proud, after="pin", rule=wood))
        else:
            places.append((pin[1], foot))
            links.append(Link(figure=proud, after="pin", rule=wood))
    chains.append(chain(view, "up", side + way * FIRST, places, links))
    place_chains(draft, chains)
    hinges = _butts(leaf, "left" if way > 0 else "right")
    if hinges is not None:
        deep = float(hinges.mortise.depth)
        y = (front + back) / 2
        say(
            draft,
            view.at((edge + way * deep / 2, y)),
            "dot",
            ("flaps let in flush; the mortise", "stands on the sheet of hinges"),
            fan((way * 0.6, 1.0 if knuckle_front else -1.0), (way, 1.0), (way, -1.0)),
            view.name,
        )
    if pin is not None:
        say(
            draft,
            view.at(pin),
            "dot",
            ("middle of the pin,", "in the middle of the gap")
            if float(proud) > 0
            else ("middle of the pins,", "in the leaf's ends"),
            fan((-way * 0.8, -1.0 if knuckle_front else 1.0), (way * 0.6, -1.0)),
            view.name,
        )
