"""The first cut of a set-up drawn large: what the first piece is checked by with a rule."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.drawing.chains import SIDES, Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.machine.views import LEGIBLE, SCALES, draw_number, outline_on
from parametric.drawing.machine.work import MachineCut, MachineSetUp
from parametric.drawing.marks import wave
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Box, arc_points, around, cut_path
from parametric.drawing.primitives import Fill, Label
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure

_BEYOND = 9.0
"""What is shown past the first cut where it is drawn large, mm on paper."""
_BESIDE = {"mm": 14.5, "inch": 24.0}
_UNDER, _HEAD = 14.5, 9.0
"""What stands left of, under and above the first cut drawn large, mm on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """What is shown of the piece round its first cut: a scale, and a box of the file, mm.

    `whole` is false where the cut runs on past the box to the right, `whole_up` where it runs on
    past it upwards, as a dado does across a broad board.
    """

    scale: float
    x0: float
    y0: float
    x1: float
    y1: float
    whole: bool = True
    whole_up: bool = True


def first_cut_window(set_up: MachineSetUp, job: Subject, room: Box) -> Window | None:
    """The largest picture of the first cut that a room holds; of a long one, its beginning.

    It begins at the datum where the cut is not far from it.
    """
    cut, rule = set_up.cuts[0], job.rules.fine
    wide, high = room.width - _BESIDE[job.rules.unit] - 3.0, room.height - _UNDER - _HEAD
    found = [_window(set_up, scale) for scale in SCALES[job.rules.unit]]
    if cut.middles is not None:
        # a hole is nothing to check without the datum it is measured from
        found = [*(dataclasses.replace(one, x0=0.0, y0=0.0) for one in found), *found]
    found = [
        one
        for one in found
        if width(_title(cut, one.scale, job), weight="bold") <= room.width
        and min(cut.length, cut.width) / one.scale >= LEGIBLE
    ]
    tall_enough = [one for one in found if (one.y1 - one.y0) / one.scale <= high]
    if not tall_enough:
        # of one that is too long for the page upwards, its foot
        tall_enough = [
            dataclasses.replace(one, y1=one.y0 + high * one.scale, whole_up=False)
            for one in found
            if one.y0 + high * one.scale > float(cut.y[0]) + 2 * _BEYOND * one.scale
        ]
    for one in tall_enough:
        if (one.x1 - one.x0) / one.scale + _said_beyond(set_up, one, rule) <= wide:
            return one
    for one in tall_enough:
        # from the datum if it is that near, else from just before the cut
        for x0 in (one.x0, float(cut.x[0]) - _BEYOND * one.scale):
            x1 = x0 + wide * one.scale
            if x1 > float(cut.x[0]) + 2 * _BEYOND * one.scale:
                return dataclasses.replace(one, x0=x0, x1=x1, whole=False)
    return None


def _said_beyond(set_up: MachineSetUp, shown: Window, rule: Rule) -> float:
    """What the last value under a cut takes past the window, mm on paper: what is left to the end
    of the stock is said beside a link too short for it.
    """
    cut = set_up.cuts[0]
    if shown.x0 <= 0.0 or shown.x1 < float(set_up.length) - 1e-9:
        return 0.0
    said = width(rule.dimension(cut.beyond), TEXT)
    return 0.0 if said + SIDES <= float(cut.beyond) / shown.scale else said


def _title(cut: MachineCut, scale: float, job: Subject) -> str:
    return f"Cut {cut.number} at {scale_words(scale, job.rules.unit)}: check the first piece"


def _window(set_up: MachineSetUp, scale: float) -> Window:
    cut = set_up.cuts[0]
    spare = _BEYOND * scale
    near_left = float(cut.x[0]) <= 3 * float(cut.length) + spare
    near_foot = float(cut.y[1]) <= 3 * float(cut.width) + spare
    near_right = float(cut.beyond) / scale <= 3 * _BEYOND
    near_top = float(set_up.width - cut.y[1]) / scale <= 3 * _BEYOND
    return Window(
        scale=scale,
        x0=0.0 if near_left else float(cut.x[0]) - spare,
        y0=0.0 if near_foot else float(cut.y[0]) - spare,
        x1=float(set_up.length) if near_right else float(cut.x[1]) + spare,
        y1=float(set_up.width) if near_top else float(cut.y[1]) + spare,
    )


def draw_first_cut(
    draft: Draft, job: Subject, set_up: MachineSetUp, room: Box, shown: Window
) -> float:
    """The first cut large, sized from the datum: what the first piece is checked by with a rule.

    Returns how far down it reaches, mm on paper.
    """
    cut = set_up.cuts[0]
    scale, high = shown.scale, (shown.y1 - shown.y0) / shown.scale
    corner = (room.x0 + _BESIDE[job.rules.unit], room.y1 - _HEAD - high)
    origin = (corner[0] - shown.x0 / scale, corner[1] - shown.y0 / scale)
    view = draft.view("first cut", scale, origin)
    window = Box(corner[0], corner[1], view.x(shown.x1), view.y(shown.y1))
    title = _title(cut, scale, job)
    draft.add(Label(text=title, at=(room.x0, room.y1 - TEXT * 1.12), weight="bold"))
    _edges_of_stock(draft, set_up, view, shown, window)
    for outline in (one for other in set_up.cuts for one in (other.outline, *other.others)):
        ring = outline_on(view, outline)
        for run in cut_path((*ring, ring[0]), (window.grown(-1e-6).polygon,)):
            draft.path("edge", run, view.name)
    place_chains(draft, list(_of_first(view, cut, window, shown, job.rules.fine)))
    box = around(outline_on(view, cut.outline))
    seen = Box(box.x0, box.y0, min(box.x1, window.x1), min(box.y1, window.y1))
    draw_number(draft, cut, seen, window, view.name)
    return window.y0 - _UNDER


def _edges_of_stock(
    draft: Draft,
    set_up: MachineSetUp,
    view: View,
    shown: Window,
    window: Box,
) -> None:
    """Where the window ends at an edge of the stock, the edge; else a broken line."""
    corners = window.polygon
    true = (
        shown.y0 <= 0.0,
        shown.x1 >= float(set_up.length) - 1e-9,
        shown.y1 >= float(set_up.width) - 1e-9,
        shown.x0 <= 0.0,
    )
    for index, edge in enumerate(true):
        a, b = corners[index], corners[(index + 1) % 4]
        if edge:
            draft.path("cut", (a, b), view.name)
        else:
            wave(draft, a, b, view.name)
    if true[0] and true[3]:
        at = (window.x0, window.y0)
        draft.add(Fill(layer="dims", points=arc_points(at, 0.9, 0, 360, 0.2), view=view.name))


def _of_first(
    view: View, cut: MachineCut, window: Box, shown: Window, rule: Rule
) -> Iterator[Chain]:
    """From the datum to the cut and over it, both ways, as far as that is shown."""
    if cut.middles is not None:
        yield from _of_hole(view, cut.middles, window, shown, rule)
        return
    for axis, ends, size, start, whole, line, foot in (
        ("across", cut.x, cut.length, shown.x0, shown.whole, window.y0 - 10.0, window.y0),
        ("up", cut.y, cut.width, shown.y0, shown.whole_up, window.x0 - 10.0, window.x0),
    ):
        stops = [Stop(at=float(end), foot=foot) for end in ends[: 2 if whole else 1]]
        links: list[Link | None] = [Link(figure=size, rule=rule)] if whole else []
        if start <= 0.0 and float(ends[0]) > 1e-6:
            stops.insert(0, Stop(at=0.0, foot=foot))
            links.insert(0, Link(figure=ends[0], rule=rule))
        to_right = axis == "across" and whole and start > 0.0 and float(cut.beyond) > 1e-6
        if to_right and shown.x1 >= float(cut.x[1] + cut.beyond) - 1e-9:
            stops.append(Stop(at=shown.x1, foot=foot))
            links.append(Link(figure=cut.beyond, rule=rule))
        if not links:
            continue
        yield Chain(
            view=view,
            axis="across" if axis == "across" else "up",
            line=line,
            stops=tuple(stops),
            links=tuple(links),
        )


def _of_hole(
    view: View,
    middles: tuple[tuple[Figure, ...], tuple[Figure, ...]],
    window: Box,
    shown: Window,
    rule: Rule,
) -> Iterator[Chain]:
    """From the datum to the middle of a hole, both ways, as far as the datum is shown."""
    for axis, (middle, *_), start, line, foot in (
        ("across", middles[0], shown.x0, window.y0 - 10.0, window.y0),
        ("up", middles[1], shown.y0, window.x0 - 10.0, window.x0),
    ):
        if start <= 0.0:
            yield Chain(
                view=view,
                axis="across" if axis == "across" else "up",
                line=line,
                stops=(Stop(at=0.0, foot=foot), Stop(at=float(middle), foot=foot)),
                links=(Link(figure=middle, rule=rule),),
            )
