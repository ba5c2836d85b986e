"""The foot of a leaf on its guide, cut upright: groove, gap, and what site work may take off."""

from __future__ import annotations

import dataclasses

from parametric.drawing.chains import Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.plane import Box, rectangle
from parametric.drawing.sheet import View
from parametric.drawing.site import floor_at, upright_cut
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf
from parametric.trade.paperwork import Paperwork

_ASIDE = 14.0
"""How much floor is shown beside the leaf, mm."""
_GROUND = 4.0
"""How deep the floor is hatched, mm on paper."""
_OVER = 16.0
"""How much is shown over the foot of the lowest slot, mm."""


def floor_guide(job: Subject, paper: Paperwork) -> Detail | None:
    """The foot of the leaf that the arrangement's section cuts; None where no guide runs in it."""
    door = job.resolved.door
    index = -1 if job.third_angle else 0
    leaf = door.leaves[index]
    guide = leaf.guide
    if guide is None:
        return None
    side = -1.0 if job.third_angle else 1.0
    plane = side * float(door.hanging.planes[index])
    half, gap = float(leaf.thickness) / 2, float(door.hanging.floor_gap)
    slot = float(leaf.rails[-1].slots[0].low)
    window = Box(plane - half - 30.0, -30.0, plane + half + 30.0, gap + slot + _OVER)
    draft = board()
    scale = detail_scale(2 * (half + _ASIDE), window.y1)
    view = draft.view("floor guide", scale, (ORIGIN[0] - plane / scale, ORIGIN[1]))
    at = upright_cut(door, third_angle=job.third_angle)
    pieces = [p for p in job.shut if p.group == leaf.name]
    cuts = [
        dataclasses.replace(c, outline=tuple((side * off, z) for off, z in c.outline))
        for c in cut_in_window(pieces, "upright", at, _anywhere(window))
    ]
    draw_cut(draft, view, cuts, window, Looks())
    _slot(draft, view, leaf, plane, gap, window)
    _floor(draft, view, plane, half)
    _guide(draft, view, leaf, plane, gap)
    trim = float(leaf.site_trim)
    if trim > 0:
        y = view.y(gap + trim)
        ends = (view.x(plane - half) - 3.0, view.x(plane + half) + 6.0)
        draft.line("adjacent", (ends[0], y), (ends[1], y), view.name)
    _chains(draft, view, job, leaf, plane, half, gap)
    _words(draft, view, job, paper, leaf, plane, half, gap)
    gaps = [job.wood(value) for _, value in door.gaps]
    under = f"; the gap runs {', '.join(gaps)}" if len(set(gaps)) > 1 else ""
    return finished(
        draft,
        "floor guide",
        "Guide in the foot",
        f"{at_scale(job, scale)}, cut upright. Floor drawn where it is highest{under}.",
        Call(
            on="section",
            by="ring",
            box=Box(plane - half, floor_at(door, at), plane + half, gap + slot),
        ),
    )


def _anywhere(window: Box) -> Box:
    """The heights of a window, however far off the wall: a mirrored view cuts before it turns."""
    return Box(-9e3, window.y0, 9e3, window.y1)


def _slot(draft: Draft, view: View, leaf: Leaf, plane: float, gap: float, window: Box) -> None:
    """The lowest slot in the rail's end, beyond the cut."""
    half = float(leaf.joint.mortise_width) / 2
    foot = gap + float(leaf.rails[-1].slots[0].low)
    points = (
        (plane - half, window.y1 - 1.0),
        (plane - half, foot),
        (plane + half, foot),
        (plane + half, window.y1 - 1.0),
    )
    draft.path("hidden", view.path(points), view.name)


def _floor(draft: Draft, view: View, plane: float, half: float) -> None:
    ends = (plane - half - _ASIDE, plane + half + _ASIDE)
    a, b = view.at((ends[0], 0.0)), view.at((ends[1], 0.0))
    draft.line("cut", a, b, view.name)
    draft.add(wall(((a, b, (b[0], b[1] - _GROUND), (a[0], a[1] - _GROUND)),), view.name, 1.8))
    draft.reserve(Box(a[0], a[1] - _GROUND, b[0], b[1]))


def _guide(draft: Draft, view: View, leaf: Leaf, plane: float, gap: float) -> None:
    """The supplied guide, no more than a box: it stands on the floor and runs in the groove."""
    guide = leaf.guide
    assert guide is not None
    half, top = float(guide.width) * 0.36, gap + float(guide.depth) * 0.8
    outline = rectangle(plane - half, 0.0, plane + half, top)
    draft.path("adjacent", view.path(outline), view.name, closed=True)
    low, high = view.y(0.0) - _GROUND - 2.0, view.y(gap + float(guide.depth)) + 5.0
    draft.line("centre", (view.x(plane), low), (view.x(plane), high), view.name)


def _chains(
    draft: Draft, view: View, job: Subject, leaf: Leaf, plane: float, half: float, gap: float
) -> None:
    wood, fine = job.rules.wood, job.rules.fine
    guide, door = leaf.guide, job.resolved.door
    assert guide is not None
    left, right = view.x(plane - half), view.x(plane + half)
    floor = view.x(plane - half - _ASIDE)
    chains = [
        chain(
            view,
            "up",
            floor - 8.0,
            (
                (0.0, floor),
                (gap, left),
                (gap + float(guide.depth), view.x(plane - float(guide.width) / 2)),
            ),
            (
                reference(door.hanging.floor_gap, wood) if gap > 0 else None,
                reference(guide.depth, fine),
            ),
        )
    ]
    trim = float(leaf.site_trim)
    if trim > 0:
        chains.append(
            chain(
                view,
                "up",
                view.x(plane + half + _ASIDE) + 5.0,
                ((gap, right), (gap + trim, right + 6.0)),
                (Link(figure=leaf.site_trim, rule=wood),),
            )
        )
    place_chains(draft, chains)


def _words(
    draft: Draft,
    view: View,
    job: Subject,
    paper: Paperwork,
    leaf: Leaf,
    plane: float,
    half: float,
    gap: float,
) -> None:
    guide = leaf.guide
    assert guide is not None
    over, after = leaf.wood_over_guide, leaf.wood_over_guide_after_site_trim
    deep, wide = float(guide.depth), float(guide.width)
    slot = gap + float(leaf.rails[-1].slots[0].low)
    say(
        draft,
        view.at((plane + wide * 0.36, gap * 0.5)),
        "arrow",
        ("guide by the supplier,", "on the floor"),
        fan((1.0, -0.5), (-1.0, -0.5)),
        view.name,
    )
    say(
        draft,
        view.at((plane - wide / 2, gap + deep * 0.75)),
        "arrow",
        (
            f"groove {job.fine(guide.width)} wide, cutter Ø{job.fine(guide.cutter)},",
            f"{int(guide.passes)} {'pass' if int(guide.passes) == 1 else 'passes'}; after trimming",
        ),
        fan((-1.0, 0.5), (-1.0, 0.9)),
        view.name,
    )
    if over is not None and over > 0:
        say(
            draft,
            view.at((plane + half * 0.45, (gap + deep + slot) / 2)),
            "dot",
            (f"{job.wood(over)} of wood up to", "the slot of the tenon"),
            fan((1.0, 0.5), (1.0, 0.9)),
            view.name,
        )
    trim = float(leaf.site_trim)
    if trim > 0 and after is not None:
        allowed = paper.install.adjustment.trim_allowed
        say(
            draft,
            (view.x(plane + half) + 4.0, view.y(gap + trim)),
            "arrow",
            (
                "site trim, from the foot:",
                f"{job.wood(after)} would be left;",
                f"no more than {job.wood(allowed, down=True)}",
            )
            if allowed < leaf.site_trim
            else ("site trim, from the foot:", f"{job.wood(after)} are left"),
            fan((1.0, 0.3), (1.0, -0.3)),
            view.name,
        )
