"""The wall before anything hangs on it: the opening as measured, the line, every bracket.

0  386 ...        running from the opening's left edge
|   |   |   |
===o===o===o===o===  2114   the line to mark
+-----------+     2069   head
|  (leaves  |
|   dashed) |
___+___________+___  0      datum: the highest floor
-9          0             the floor from the datum
"""

from __future__ import annotations

import dataclasses

from parametric.drawing.case import case_from_front
from parametric.drawing.dimensions import Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.lettering import width
from parametric.drawing.marks import datum, leaf_letter_mark
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.plane import Box, around
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.site import floor_at
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.resolve.opening import PLACES_ACROSS
from parametric.trade.hinge_places import HingeFixing
from parametric.trade.installing import InstallSheet
from parametric.trade.site_words import by_data_sheet

STUB = 6.0
"""How much floor is drawn beyond the leaves, mm on paper."""
GROUND = 3.0
DATUM = "datum: the highest floor"
READINGS = 7.5
"""What the floor's readings take under the ground, mm."""
OVER = 6.0
"""From the line to mark up to where running sizes begin, mm."""
TO_NUMBERS = 5.0
"""From where a running size begins to its number, mm."""


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """What a view of the wall must show, mm: across from the opening's left edge, and up."""

    x0: float
    x1: float
    low: float
    high: float


def span_of(job: Subject) -> Span:
    """The opening and the leaves over it."""
    door = job.resolved.door
    boxes = [leaf_box(leaf) for leaf in door.leaves]
    outline = around(door.opening.outline())
    tracks = door.hanging.tracks
    return Span(
        x0=min(outline.x0, *(box.x0 for box in boxes), *(float(line.left) for line in tracks)),
        x1=max(
            outline.x1,
            *(box.x1 for box in boxes),
            *(float(line.left + line.length) for line in tracks),
        ),
        low=min(z for _, z in door.opening.floor_line()),
        high=max(*(box.y1 for box in boxes), float(door.opening.head)),
    )


def site_rule(job: Subject) -> Rule:
    """Sizes as the list of fixings prints them; in inches each wears its mark."""
    return job.rules.site


def line_height(job: Subject) -> float:
    """Where the brackets are set out along: the top of the leaves, or the head they hang under."""
    door = job.resolved.door
    if by_data_sheet(door):
        return float(door.hanging.floor_gap + door.hanging.leaf_height)
    return float(door.opening.head)


def height_places(job: Subject, install: InstallSheet, start: float) -> list[Place]:
    """Every height that is known, from the datum."""
    rule = site_rule(job)
    hanging = job.resolved.door.hanging
    on_wall = bool(hanging.tracks) and by_data_sheet(job.resolved.door)
    places = [Place(at=0.0, figure=Figure(0.0, "datum"), start=start, words=DATUM, rule=rule)]
    seen: set[float] = set()
    for line in install.heights:
        if line.height is None or float(line.height) in seen:
            continue
        seen.add(float(line.height))
        marked = on_wall and line.what.startswith("top of the lea")
        words = f"{line.what}: mark this line" if marked else line.what
        places.append(
            Place(at=float(line.height), figure=line.height, start=start, words=words, rule=rule)
        )
    for hinges in _alike(install):
        up = hinges[0].above_floor
        places.append(
            Place(
                at=float(up),
                figure=up,
                start=start,
                words=f"{_hinge_words(hinges)}, {_up_the_leaf(job, hinges)} up the leaf",
                rule=rule,
            )
        )
    return places


def _alike(install: InstallSheet) -> list[list[HingeFixing]]:
    """Hinges at one height, from the top down."""
    lots: dict[float, list[HingeFixing]] = {}
    for hinge in install.hinges:
        lots.setdefault(round(float(hinge.above_floor), 6), []).append(hinge)
    return [lots[height] for height in sorted(lots, reverse=True)]


def _hinge_words(hinges: list[HingeFixing]) -> str:
    words = dict.fromkeys(hinge.word for hinge in hinges)
    more = "s" if len(hinges) > 1 else ""
    return " and ".join(f"{word}{more}" for word in words)


def _up_the_leaf(job: Subject, hinges: list[HingeFixing]) -> str:
    """From each leaf's own foot, which is what its stile is marked from."""
    rule = site_rule(job)
    return " and ".join(dict.fromkeys(rule.dimension(hinge.from_foot) for hinge in hinges))


def head_places(job: Subject, install: InstallSheet, start: float) -> list[Place]:
    """The hinges' middles down from the jamb's head; none where no jamb carries any."""
    rule = site_rule(job)
    on_jambs = [hinges for hinges in _alike(install) if hinges[0].on == "jamb"]
    if not on_jambs:
        return []
    head = Place(
        at=float(job.resolved.door.opening.head),
        figure=Figure(0.0, "jamb's head"),
        start=start,
        words="head, down",
        rule=rule,
    )
    return [
        head,
        *(
            Place(
                at=float(hinges[0].above_floor),
                figure=hinges[0].from_head,
                start=start,
                rule=rule,
                down=True,
            )
            for hinges in on_jambs
        ),
    ]


def bracket_places_on(
    job: Subject, install: InstallSheet, start: float, zero: float
) -> list[Place]:
    """Every bracket's middle from the opening's left edge, and that edge.

    Args:
        job: its unit.
        install: the brackets.
        start: where their lines begin, mm on paper.
        zero: where the edge's line begins.
    """
    rule = site_rule(job)
    edge = Place(
        at=0.0, figure=Figure(0.0, "opening's left edge"), start=zero, words="edge", rule=rule
    )
    brackets = [
        Place(at=float(own.from_opening), figure=own.from_opening, start=start, rule=rule)
        for own in install.brackets
    ]
    # A bracket on the edge is the edge's own number.
    return [edge, *(place for place in brackets if abs(place.at) > 1e-9)]


def words_wide(places: list[Place]) -> float:
    """The widest of some running sizes with its words, mm; 0 without any."""
    return max((width(place.text) for place in places), default=0.0)


def draw_wall(draft: Draft, view: View, job: Subject, install: InstallSheet, span: Span) -> None:
    """Opening, floor, the leaves that will hang, the line to mark, brackets, all sizes."""
    door = job.resolved.door
    outline = door.opening.outline()
    draft.path("edge", view.path(outline), view.name)
    case_from_front(draft, view, door, [])
    _floor(draft, view, job, span)
    _leaves(draft, view, job)
    level = view.y(line_height(job))
    if door.hanging.tracks and by_data_sheet(door):
        line = door.hanging.tracks[0]
        left, right = view.x(float(line.left)), view.x(float(line.left + line.length))
        draft.line("cut", (left, level), (right, level), view.name)
    if install.brackets:
        start = level + OVER
        places = bracket_places_on(job, install, start, start)
        place_ordinates(draft, view, "across", places, start + TO_NUMBERS)
        _brackets(draft, view, job, install, level)
    _hinges(draft, view, job, install)
    side = view.x(span.x1) + STUB
    place_ordinates(draft, view, "up", height_places(job, install, side), side + TO_NUMBERS)
    down = head_places(job, install, view.x(span.x0) - STUB)
    if down:
        place_ordinates(draft, view, "up", down, view.x(span.x0) - STUB - TO_NUMBERS)


def _hinges(draft: Draft, view: View, job: Subject, install: InstallSheet) -> None:
    """Each hinge as long as it is, on the edge that it hangs, its middle across it."""
    leaves = {leaf.name: leaf_box(leaf) for leaf in job.resolved.door.leaves}
    for hinge in install.hinges:
        box = leaves[hinge.leaf]
        x = view.x(box.x0 if hinge.side == "left" else box.x1)
        low, high = view.y(float(hinge.low)), view.y(float(hinge.high))
        draft.add(Stroke(layer="cut_heavy", points=((x, low), (x, high)), view=view.name))
        middle = view.y(float(hinge.above_floor))
        draft.line("centre", (x - 2.2, middle), (x + 2.2, middle), view.name)


def _floor(draft: Draft, view: View, job: Subject, span: Span) -> None:
    """The floor as measured, its readings from the datum under it."""
    door, rule = job.resolved.door, site_rule(job)
    left, right = span.x0 - STUB * view.scale, span.x1 + STUB * view.scale
    inner = [x for x, _ in door.opening.floor_line() if left < x < right]
    line = [view.at((x, floor_at(door, x))) for x in (left, *inner, right)]
    draft.path("cut", tuple(line), view.name)
    deep = [(x, y - GROUND) for x, y in reversed(line)]
    draft.add(wall(((*line, *deep),), view.name))
    draft.line("datum", view.at((left, 0.0)), (view.x(span.x1) + STUB, view.y(0.0)), view.name)
    datum(draft, (view.x(left) + 1.8, view.y(0.0)), "", view.name)
    under = view.y(span.low) - GROUND - 1.6
    read = [(p, door.opening.floor[p]) for p in PLACES_ACROSS if p in door.opening.floor]
    for (x, z), (place, figure) in zip(door.opening.floor_line(), read, strict=True):
        text = f"{rule.dimension(figure)}  {place}"
        label = Label(
            text=text,
            at=(max(view.x(x), draft.paper.frame.x0 + width(text) / 2 + 1.0), under - 4.0),
            anchor="centre",
            layer="dims",
            view=view.name,
            stacked=rule.stacked,
        )
        draft.add(
            Ordinate(
                figure=figure.name or "",
                value=float(figure),
                text=text,
                rule=rule,
                axis="up",
                zero=(x, 0.0),
                point=(x, z),
                lines=((view.at((x, z)), (view.x(x), under)),),
                label=label,
                view=view.name,
            )
        )


def _leaves(draft: Draft, view: View, job: Subject) -> None:
    """Where the leaves will hang, shut: each as far as those before it leave it to be seen."""
    door = job.resolved.door
    before: list[Box] = []
    marks: list[tuple[Leaf, float, Box]] = []
    for leaf in sorted(door.leaves, key=lambda leaf: -float(leaf.hung.plane)):
        box = leaf_box(leaf)
        left, right = _seen(box, before)
        before.append(box)
        whole = (left, right) == (box.x0, box.x1)
        low, high, x0, x1 = view.y(box.y0), view.y(box.y1), view.x(left), view.x(right)
        if whole:
            draft.path("adjacent", view.path(box.polygon), view.name, closed=True)
        elif left > box.x0:
            draft.path("adjacent", ((x0, low), (x1, low), (x1, high), (x0, high)), view.name)
        else:
            draft.path("adjacent", ((x1, low), (x0, low), (x0, high), (x1, high)), view.name)
        marks.append((leaf, view.x((left + right) / 2), box))
    for leaf, x, box in marks:
        options = [
            leaf_letter_mark(leaf.letter, _hung_from(door, leaf), (x, y), view.name)
            for y in (view.y((box.y0 + box.y1) / 2) + up for up in (0.0, 12.0, -12.0, 24.0))
        ]
        draft.add_first_clear(options, f"leaf {leaf.letter}")


def leaf_box(leaf: Leaf) -> Box:
    """A leaf's outline when shut, in the world's X and Z."""
    left, foot = float(leaf.hung.left), float(leaf.hung.foot)
    return Box(left, foot, left + float(leaf.width), foot + float(leaf.height))


def _seen(box: Box, before: list[Box]) -> tuple[float, float]:
    """From where to where a leaf is seen past those that stand before it at its height."""
    left, right = box.x0, box.x1
    for other in before:
        # Leaves one over the other share no more than the step between their edges.
        if min(other.y1, box.y1) - max(other.y0, box.y0) < box.height / 2:
            continue
        if other.x0 <= left < other.x1:
            left = other.x1
        elif other.x0 < right <= other.x1:
            right = other.x0
    return left, max(left, right)


def _hung_from(door: Door, leaf: Leaf) -> tuple[str, ...]:
    """What a leaf hangs from, under its letter."""
    if leaf.hung.track is not None:
        several = len(door.hanging.tracks) > 1
        return (f"{door.hanging.tracks[leaf.hung.track].word} track" if several else "track",)
    side = leaf.hung.side_of("hinge")
    return () if side is None else (f"hung {side}",)


def _brackets(draft: Draft, view: View, job: Subject, install: InstallSheet, level: float) -> None:
    """A middle line for every bracket, its number beside it; studs as they were found."""
    for stud in job.resolved.door.survey.studs or ():
        if isinstance(stud, Figure):
            x = view.x(float(stud))
            draft.line(
                "hidden",
                (x, view.y(float(job.resolved.door.opening.head))),
                (x, level + OVER - 1.0),
                view.name,
            )
    for own in install.brackets:
        x = view.x(float(own.from_opening))
        draft.line("centre", (x, level - 3.0), (x, level + OVER), view.name)
        draft.add(Circle(layer="edge", centre=(x, level + 3.0), radius=0.9, view=view.name))
    for own in install.brackets:
        x = view.x(float(own.from_opening))
        draft.add_first(
            [
                Label(
                    text=str(own.number),
                    at=(x + aside, level + up),
                    anchor="left" if aside > 0 else "right",
                    weight="bold",
                    view=view.name,
                )
                for up in (1.6, 3.6)
                for aside in (1.6, -1.6, 2.6, -2.6, 4.0, -4.0)
            ]
        )
