"""A stopped groove at the end where it comes nearest to a slot: from the edge, and cut on its middle.

inner edge      section
|  __  |      |___|####
| |  | |          |####   groove
|  --  |      |___|####   its end
|  __  |      |_______|#  slot
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.joint_places import GrooveEnd, tightest_groove_end
from parametric.drawing.details.words import at_scale
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import wave
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box, Polygon, arc_points, cut_path
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf

_PAST = 26.0
"""How much is shown past the rail's edge and past the slot, mm."""
_BACK = 22.0
"""How much wood is shown behind the slot, mm."""
_BETWEEN = 26.0
"""From the edge to the section beside it, mm on paper."""


def stopped_groove(job: Subject) -> Detail | None:
    """The critical end of a panel groove in the first leaf's left stile; None without one."""
    leaf, group = leaf_groups(job)[0]
    stile = group.parts[0]
    found = tightest_groove_end(leaf, stile)
    if found is None:
        return None
    low_end = found.end == "low"
    line, thick = float(leaf.left_stile), float(leaf.thickness)
    rail_edge = float(found.field.foot if low_end else found.field.top)
    if low_end:
        low, high = float(found.slot.low) - _PAST * 0.6, rail_edge + _PAST
    else:
        low, high = rail_edge - _PAST, float(found.slot.high) + _PAST * 0.6
    deep = float(leaf.joint.mortise_depth)
    window = Box(line - min(deep + _BACK, line - 3.0), low, line + 60.0, high)
    draft = board()
    scale = detail_scale(thick + window.width, window.height)
    edge_view = draft.view(
        "stopped groove, inner edge", scale, (ORIGIN[0], ORIGIN[1] - low / scale)
    )
    right = edge_view.x(thick) + _BETWEEN
    section = draft.view(
        "stopped groove, section", scale, (right - window.x0 / scale, edge_view.origin[1])
    )
    seen = window._replace(y0=max(window.y0, 0.0), y1=min(window.y1, float(leaf.height)))
    _edge(draft, edge_view, leaf, found, seen)
    pieces = leaf_pieces(group.parts[:1], group.name)
    cuts = cut_in_window(pieces, "flat", thick / 2, window)
    draw_cut(draft, section, cuts, window, Looks())
    rail = (
        (section.x(line) - 3.0, section.y(rail_edge)),
        (section.x(line) + 16.0, section.y(rail_edge)),
    )
    draft.line("adjacent", *rail, section.name)
    draft.add(
        Label(
            text="edge of the rail",
            at=(rail[1][0] + 1.4, rail[1][1] - TEXT / 2),
            view=section.name,
        )
    )
    _ramp(draft, section, job, leaf, found, window)
    _places(draft, edge_view, job, found)
    _words(draft, section, job, leaf, found)
    by = "routed" if found.groove.ramp == 0 else "run on the saw"
    return finished(
        draft,
        "stopped groove",
        f"Stopped groove, {'foot' if low_end else 'top'} end",
        f"{at_scale(job, scale)}, inner edge of the stile, and cut on the "
        f"middle of its thickness. {by.capitalize()}; every such end alike.",
        Call(
            on="leaf",
            by="ring",
            box=Box(line - deep, min(found.at, rail_edge) - 30.0, line + 20.0, rail_edge + 30.0),
        ),
    )


def _edge(draft: Draft, view: View, leaf: Leaf, found: GrooveEnd, window: Box) -> None:
    """The stile's inner edge with the groove and the slot in it."""
    thick = float(leaf.thickness)
    for x in (0.0, thick):
        draft.line("edge", view.at((x, window.y0)), view.at((x, window.y1)), view.name)
    tall = float(leaf.height)
    for y in (window.y0, window.y1):
        ends = (view.at((0.0, y)), view.at((thick, y)))
        if 0.0 < y < tall:
            wave(draft, *ends, view.name, 0.7)
        else:
            draft.line("edge", *ends, view.name)
    middle, half = thick / 2, float(leaf.joint.mortise_width) / 2
    slot = _round_ends(middle, half, float(found.slot.low), float(found.slot.high))
    draft.path("edge", view.path(slot), view.name, closed=True)
    for path, fine in _groove_outlines(found, middle, window):
        draft.path("edge_fine" if fine else "edge", view.path(path), view.name)
    draft.line(
        "centre",
        (view.x(middle), view.y(window.y0) - 2.5),
        (view.x(middle), view.y(window.y1) + 2.5),
        view.name,
    )
    draft.add(
        Label(
            text="inner edge",
            at=(view.x(middle), view.y(window.y1) + 4.0),
            anchor="centre",
            view=view.name,
        )
    )


def _round_ends(middle: float, half: float, low: float, high: float) -> Polygon:
    return (
        *arc_points((middle, high - half), half, 0.0, 180.0, 0.5),
        *arc_points((middle, low + half), half, 180.0, 360.0, 0.5),
    )


def _groove_outlines(
    found: GrooveEnd, middle: float, window: Box
) -> Iterator[tuple[Polygon, bool]]:
    """The groove's sides and end; the end a cutter leaves is fine where it is chopped square."""
    groove = found.groove
    half, corner = float(groove.width) / 2, min(float(groove.corner), float(groove.width) / 2)
    up = found.end == "low"
    way = 1.0 if up else -1.0
    far = window.y1 if up else window.y0
    end = found.at
    x0, x1 = middle - half, middle + half
    square = ((x0, far), (x0, end), (x1, end), (x1, far))
    rounded = (
        (x0, far),
        *(
            (x, end + way * y)
            for x, y in (
                *(
                    (x0 + corner + cx, corner + cy)
                    for cx, cy in arc_points((0.0, 0.0), corner, 180.0, 270.0, 0.4)
                ),
                *(
                    (x1 - corner + cx, corner + cy)
                    for cx, cy in arc_points((0.0, 0.0), corner, 270.0, 360.0, 0.4)
                ),
            )
        ),
        (x1, far),
    )
    if corner <= 0:
        yield square, False
    elif groove.squared:
        yield square, False
        yield rounded[1:-1], True
    else:
        yield rounded, False


def _ramp(
    draft: Draft, view: View, job: Subject, leaf: Leaf, found: GrooveEnd, window: Box
) -> None:
    """What a dado blade would leave past the stop: dashed where the groove is routed instead."""
    sawn = float(found.groove.ramp) > 0
    if not sawn and not _warned(job):
        return
    radius = float(found.groove.ramp) or float(found.field.blade) / 2
    deep = float(found.groove.depth)
    if deep >= radius:
        return
    line = float(leaf.left_stile)
    way = -1.0 if found.end == "low" else 1.0
    run = math.sqrt(2 * radius * deep - deep**2)
    # The blade's middle stands off the edge, level with the stop.
    arc = [
        (line - deep + radius - math.sqrt(radius**2 - t**2), found.at + way * t)
        for t in (run * i / 24 for i in range(25))
    ]
    for part in cut_path(arc, (window.polygon,)):
        draft.path("edge" if sawn else "hidden", view.path(part), view.name)


def _warned(job: Subject) -> bool:
    """Whether the job was told what the saw would do."""
    return any(p.code == "sawn_groove_meets_slot" for p in job.problems)


def _places(draft: Draft, view: View, job: Subject, found: GrooveEnd) -> None:
    """Heights from the finished foot; the stile's own sheet owns them."""
    wood = job.rules.wood
    low_end = found.end == "low"
    rail = found.field.foot if low_end else found.field.top
    end = found.field.groove_low if low_end else found.field.groove_high
    figures = [rail, found.slot.low, found.slot.high]
    if abs(float(end) - found.at) < 1e-6:
        figures.append(end)
    start = view.x(0.0)
    place_ordinates(
        draft,
        view,
        "up",
        [Place(at=float(f), figure=f, start=start, rule=wood, reference=True) for f in figures],
        start - 9.0,
    )


def _words(draft: Draft, view: View, job: Subject, leaf: Leaf, found: GrooveEnd) -> None:
    line, deep = float(leaf.left_stile), float(found.groove.depth)
    low_end = found.end == "low"
    way = -1.0 if low_end else 1.0
    slot = (float(found.slot.low) + float(found.slot.high)) / 2
    if float(found.groove.ramp) == 0 and _warned(job):
        field = found.field
        to = job.fine(field.ramp_low if low_end else field.ramp_high)
        radius = float(field.blade) / 2
        t = min(0.45 * float(field.ramp), abs(found.at - slot) * 0.6)
        x = line - deep + radius - math.sqrt(radius**2 - t**2)
        say(
            draft,
            view.at((x, found.at + way * t)),
            "arrow",
            (
                f"dashed: what the {job.wood(field.blade)} dado set would",
                f"leave. It ramps to {to}, into the slot",
                "of the tenon: rout this groove.",
            ),
            fan((1.0, -0.2), (1.0, 0.3)),
            view.name,
        )
    say(
        draft,
        view.at((line - float(leaf.joint.mortise_depth) * 0.62, slot - way * -6.0)),
        "dot",
        (f"slot of the tenon, {job.wood(leaf.joint.mortise_depth)} deep",),
        fan((1.0, 0.35 * way), (1.0, -0.35 * way)),
        view.name,
    )
    say(
        draft,
        view.at((line - deep, found.at - way * 14.0)),
        "arrow",
        (
            f"groove {job.fine(found.groove.depth)} deep",
            *(("ends chopped square",) if found.groove.squared else ()),
        ),
        fan((1.0, 0.5), (1.0, 0.0)),
        view.name,
    )
