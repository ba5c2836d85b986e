"""Twins from the front with every mark, and their section, with their chains."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from typing import Literal

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import Way, grain, leaf_letter_mark, section_end
from parametric.drawing.pieces import Piece, leaf_pieces, silhouette
from parametric.drawing.plane import Box, Point, Polygon, around, edges, inside
from parametric.drawing.primitives import Label
from parametric.drawing.seen_and_cut import (
    cuts_through,
    draw_cuts,
    draw_glass_strokes,
    draw_linework,
    front_linework,
    openings,
)
from parametric.drawing.sheet import Element, View
from parametric.drawing.site import clear_of_bars, hung_words
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.hardware.hinge import HingePlace
from parametric.joints.stub_tenon import StubTenon
from parametric.model import Group, Part, Shaped, Trim
from parametric.parts.drawer import of_a_box
from parametric.resolve.leaf import Leaf
from parametric.units import mm_text

_KNUCKLE = 0.9
"""How far a hinge's knuckle is drawn past the leaf's edge, mm on paper: by the supplier, no size."""
_RAIL_PLACES = (
    *((0.5, 0.5), (0.4, 0.5), (0.6, 0.5), (0.3, 0.5), (0.7, 0.5)),
    *((0.25, 0.88), (0.12, 0.75), (0.4, 0.9), (0.6, 0.9), (0.75, 0.88), (0.88, 0.75)),
    *((0.5, 0.85), (0.5, 0.15), (0.2, 0.85), (0.8, 0.15)),
)
_GRAIN_LEAST = 18.0
"""The lowest opening on paper, mm, whose panel wears the arrow of its grain."""

_LETTER = 1.4
"""Half of a section's letter and its air, mm on paper."""


def leaf_groups(job: Subject) -> list[tuple[Leaf, Group]]:
    """Each leaf with its own parts: the box behind a drawer's front is drawn part by part."""
    groups = {group.name: group for group in job.assembly.groups}
    return [
        (leaf, dataclasses.replace(own, parts=tuple(p for p in own.parts if not of_a_box(p))))
        for leaf in job.resolved.door.leaves
        for own in (groups[leaf.name],)
    ]


def draw_leaf(draft: Draft, leaf: Leaf, group: Group, view: View) -> tuple[Piece, ...]:
    """One leaf from the front: tenons and guide groove dashed, trims as they come off the saw."""
    pieces = leaf_pieces(group.parts, group.name)
    work = front_linework(pieces, pieces)
    for piece in pieces:
        if piece.part.noun == "loose tenon":
            for a, b in edges(silhouette(piece)):
                work.line("hidden", a, b)
    for a, b in _stub_tenons(leaf):
        work.line("hidden", a, b)
    if leaf.guide is not None:
        deep = float(leaf.guide.depth)
        work.line("hidden", (0.0, deep), (float(leaf.width), deep))
    draw_linework(draft, view, work)
    draw_glass_strokes(draft, view, pieces, pieces)
    for piece in pieces:
        for box in _horns(piece):
            outline = view.path(box.polygon)
            draft.path("adjacent", outline, view.name, closed=True)
    for hung in leaf.hinges:
        if leaf.hung.flap is not None:
            _flap_knuckles(draft, view, leaf, hung.hinges.places)
            continue
        edge = 0.0 if hung.side == "left" else float(leaf.width)
        out = -_KNUCKLE * view.scale if hung.side == "left" else _KNUCKLE * view.scale
        for place in hung.hinges.places:
            x0, x1 = sorted((edge, edge + out))
            knuckle = Box(x0, float(place.low), x1, float(place.high))
            draft.path("adjacent", view.path(knuckle.polygon), view.name, closed=True)
    return pieces


def _flap_knuckles(draft: Draft, view: View, leaf: Leaf, places: Sequence[HingePlace]) -> None:
    """Where the hinges of a flap stand, past the edge that it hangs by."""
    top = leaf.hung.flap is not None and leaf.hung.flap.side == "top"
    edge = float(leaf.height) if top else 0.0
    ends = sorted((edge, edge + (1.0 if top else -1.0) * _KNUCKLE * view.scale))
    for place in places:
        knuckle = Box(float(place.low), ends[0], float(place.high), ends[1])
        draft.path("adjacent", view.path(knuckle.polygon), view.name, closed=True)


def _stub_tenons(leaf: Leaf) -> Iterator[tuple[Point, Point]]:
    """The outlines of the rails' tenons behind the stiles' faces, less what their grooves take."""
    joint = leaf.joint
    if not isinstance(joint, StubTenon):
        return
    long = float(joint.length)
    left, right = float(leaf.left_stile), float(leaf.width - leaf.right_stile)
    for rail in leaf.rails:
        low, high = (float(at) for at in rail.between_grooves)
        for line, end in ((left, left - long), (right, right + long)):
            yield (end, low), (end, high)
            yield from (((line, y), (end, y)) for y in (low, high) if 0.0 < y < float(leaf.height))


def _horns(piece: Piece) -> Iterator[Box]:
    """What is trimmed off a part's ends, as boxes in the elevation."""
    blank = piece.part.blank
    whole = around(
        (p[0], p[2])
        for p in (
            piece.stands.point((x, y, 0.0))
            for x in (0.0, float(blank.length))
            for y in (0.0, float(blank.width))
        )
    )
    kept = around(silhouette(piece))
    if any(isinstance(cut, Trim) for cut in piece.part.cuts):
        yield Box(whole.x0, whole.y0, whole.x1, kept.y0)
        yield Box(whole.x0, kept.y1, whole.x1, whole.y1)


# --- marks ---------------------------------------------------------------------------------


def mark_parts(draft: Draft, pieces: Sequence[Piece], view: View, once: set[str]) -> None:
    """Every part that is made wears its mark; each type of stop, bar and tenon once on a sheet.

    Args:
        draft: the sheet.
        pieces: the parts of one leaf.
        view: the leaf from the front.
        once: the marks that the sheet has, added to here.
    """
    crowded: set[str] = set()
    for piece in pieces:
        part = piece.part
        if part.supplied:
            continue
        outline = view.path(silhouette(piece))
        if not (part.noun == "loose tenon" or part.noun.startswith("stop") or part.mark[0] == "B"):
            once.add(part.mark)
            place = draft.first_free(tuple(_mark_places(part, outline, view)))
            if place is not None:
                draft.add(place)
            elif not _call_small(draft, part, outline, view):
                draft.unplaced.append(part.mark)
        elif part.mark not in once and _call_small(draft, part, outline, view):
            once.add(part.mark)
            crowded.discard(part.mark)
        elif part.mark not in once:
            crowded.add(part.mark)
    draft.unplaced += sorted(crowded)
    once |= crowded


def _mark_places(part: Part, outline: Polygon, view: View) -> Iterator[Label]:
    """Where a mark may stand in its own part, the usual place first."""
    box = around(outline)
    shares = {
        "S": ((0.5, 0.8), (0.5, 0.62), (0.5, 0.3), (0.5, 0.5)),
        "P": ((0.5, 0.27), (0.5, 0.35), (0.3, 0.5), (0.7, 0.5), (0.2, 0.6), (0.5, 0.7)),
        "G": ((0.34, 0.36), (0.25, 0.5), (0.5, 0.25), (0.5, 0.12), (0.2, 0.88), (0.5, 0.88)),
    }.get(part.mark[0], _RAIL_PLACES)
    for across, up in shares:
        at = (box.x0 + box.width * across, box.y0 + box.height * up - TEXT / 2)
        place = Label(text=part.mark, at=at, anchor="centre", weight="bold", view=view.name)
        # on wood: over a curve it is at the top of its rail
        if all(inside(corner, (outline,)) for corner in place.box.polygon):
            yield place
    if box.height > box.width:
        for _, up in shares:
            yield Label(
                text=part.mark,
                at=(box.centre[0] + TEXT / 2, box.y0 + box.height * up),
                anchor="centre",
                turned=90,
                weight="bold",
                view=view.name,
            )


def _call_small(draft: Draft, part: Part, outline: Polygon, view: View) -> bool:
    """The mark of a part too small to hold it, with a short line from it; False without room."""
    box = around(outline)
    cx, cy = box.centre
    tenon = part.noun == "loose tenon"
    starts = (
        [(box.x0 + box.width * 0.75, cy)]
        if tenon
        else [
            (box.x0 + box.width * a, box.y0 + box.height * b)
            for a, b in ((0.5, 0.5), (0.3, 0.3), (0.7, 0.7))
        ]
    )
    if part.mark[0] == "B":
        shares, level = (0.15, 0.85, 0.3, 0.7, 0.4, 0.6), box.width > box.height
        starts = [
            (box.x0 + box.width * share, cy) if level else (cx, box.y0 + box.height * share)
            for share in shares
        ]
    if any(isinstance(cut, Shaped) and cut.name == "edge to the arch" for cut in part.cuts):
        starts = [_in_a_curve(outline, box.x0 + box.width * share) for share in (0.5, 0.3, 0.7)]
    for start in starts:
        for dx, dy in ((7.0, 5.0), (7.0, -5.0), (-7.0, 5.0), (-7.0, -5.0), (9.0, 0.0), (-9.0, 0.0)):
            end = (start[0] + dx, start[1] + dy)
            side = 1.0 if dx > 0 else -1.0
            label = Label(
                text=part.mark,
                at=(end[0] + side * 0.8, end[1] - TEXT / 2),
                anchor="left" if side > 0 else "right",
                weight="bold",
                view=view.name,
            )
            knee = (end[0] - side * 1.6, end[1])
            points = (start, knee, end) if dy else (start, end)
            if draft.free(label.box) and draft.off_texts(points):
                draft.add(Leader(points=points, end="dot", labels=(label,), view=view.name))
                return True
    return False


def _in_a_curve(outline: Polygon, x: float) -> Point:
    """The middle of what an upright line meets of a piece sawn to a curve."""
    met = sorted(
        y0 + (y1 - y0) * (x - x0) / (x1 - x0)
        for (x0, y0), (x1, y1) in edges(outline)
        if min(x0, x1) <= x < max(x0, x1)
    )
    return (x, (met[-1] + met[-2]) / 2)


def name_leaf(draft: Draft, job: Subject, leaf: Leaf, index: int, view: View) -> None:
    """The leaf's letter with its track, and the way the grain of its panels runs."""
    first, how = hung_words(job.resolved.door, index)
    where = first.removesuffix(" leaf")
    middle = view.x(float(leaf.left_stile + leaf.shoulder / 2))
    options: list[list[Element]] = []
    for field in openings(leaf):
        for share in (0.62, 0.55, 0.7, 0.5):
            y = view.y(float(field.foot) + share * float(field.height))
            options += [
                leaf_letter_mark(leaf.letter, words, (middle, y), view.name)
                for words in ((f"{where}, {how}",), (where, how))
            ]
    # Where bars leave no room in the middle: between two, the lowest row first.
    options += [
        leaf_letter_mark(leaf.letter, (where, how), (view.x(float(x)), view.y(float(y))), view.name)
        for lite in leaf.lites
        if lite.cell is not None
        for row in lite.rows
        for column in reversed(lite.columns)
        for share in (0.5, 0.42, 0.6, 0.34)
        for x, y in [(column + lite.cell[0] / 2, row + share * lite.cell[1])]
    ]
    options += [
        leaf_letter_mark(leaf.letter, (), (middle, view.y(float(up))), view.name)
        for field in openings(leaf)
        for share in (0.62, 0.5, 0.75, 0.3)
        for up in [float(field.foot) + share * float(field.height)]
    ]
    # The letter alone between two bars, where no words stand.
    options += [
        leaf_letter_mark(leaf.letter, (), (view.x(float(x)), view.y(float(y))), view.name)
        for lite in leaf.lites
        if lite.cell is not None
        for row in lite.rows
        for column in reversed(lite.columns)
        for share in (0.5, 0.3, 0.7)
        for x, y in [(column + lite.cell[0] / 2, row + share * lite.cell[1])]
    ]
    options += [
        leaf_letter_mark(leaf.letter, (), (x, view.y(float(up))), view.name, small=True)
        for up in (
            *(field.foot + field.height / 2 for field in openings(leaf)),
            *(rail.foot + rail.height / 2 for rail in leaf.rails),
        )
        for x in (middle, middle + 8.0, middle - 8.0)
    ]
    draft.add_first_clear(options, f"leaf {leaf.letter}")
    for field in leaf.panels:
        run: Literal["across", "up"] = "up" if field.panel.grain == "upright" else "across"
        room = float(field.height if run == "up" else leaf.shoulder) / view.scale
        if room < _GRAIN_LEAST:
            # No arrow stands in so small a field; the cut list gives the length along the grain.
            continue
        arrows = [
            grain(
                (
                    view.x(float(leaf.left_stile) + across * float(leaf.shoulder)),
                    view.y(float(field.foot + up * field.height)),
                ),
                run,
                view.name,
                min(14.0, room * share),
            )
            for up, share in ((0.5, 0.4), (0.68, 0.25), (0.32, 0.25), (0.5, 0.2))
            for across in ((0.8, 0.2, 0.7, 0.3, 0.86, 0.14) if run == "up" else (0.5, 0.7, 0.3))
        ]
        draft.add_first_clear(arrows, f"grain of {field.name}")


def bevels(leaf: Leaf) -> list[tuple[Side, Figure]]:
    """The upright edges that are planed out of square, and by how much, deg."""
    sides: tuple[Side, Side] = ("left", "right")
    return [(side, bevel) for side in sides if (bevel := leaf.hung.bevel(side)) is not None]


def degrees(value: float) -> str:
    """An angle to the tenth."""
    return f"{mm_text(float(value), 0.1)}°"


def name_bevels(draft: Draft, leaf: Leaf, view: View) -> None:
    """The name of every bevelled edge along it, in the stile."""
    for side, bevel in bevels(leaf):
        stile = float(leaf.left_stile if side == "left" else leaf.right_stile)
        edge = 0.0 if side == "left" else float(leaf.width)
        way = 1.0 if side == "left" else -1.0
        near = min(0.28 * stile / view.scale, 3.2)
        draft.add_first(
            [
                Label(
                    text=text,
                    at=(view.x(edge) + way * in_by + TEXT / 2, view.y(float(leaf.height) * up)),
                    anchor="centre",
                    turned=90,
                    view=view.name,
                )
                for in_by in (near, 0.5 * stile / view.scale, 0.72 * stile / view.scale)
                for text in (f"this edge bevelled {degrees(bevel)}", f"bevel {degrees(bevel)}")
                for up in (0.62, 0.5, 0.4, 0.72, 0.3, 0.2)
            ]
        )


# --- section -------------------------------------------------------------------------------


def section_at(job: Subject, leaf: Leaf, scale: float) -> float:
    """Where the leaf is cut upright, from its left edge: in a pane, its letter off the lines that
    carry the sizes of bars down.
    """
    at = clear_of_bars(leaf, 0.64)
    edges = [
        float(edge)
        for lite in leaf.lites
        for bar in lite.bars
        if bar.upright
        for edge in (bar.low, bar.high)
    ]
    aside = (3.2 if job.third_angle else -3.2) * scale
    places = [at + off * scale for off in (0.0, 1.5, -1.5, 3.0, -3.0, 4.5, -4.5)]
    return next(
        (
            place
            for place in places
            if not any(min(at, place) <= edge <= max(at, place) for edge in edges)
            and all(abs(place + aside - edge) > _LETTER * scale for edge in edges)
        ),
        at,
    )


def draw_section(
    draft: Draft, job: Subject, pieces: Sequence[Piece], leaf: Leaf, view: View
) -> None:
    """The leaf cut upright, its face to the right; to the left where it is seen from the right."""
    way = -1.0 if job.third_angle else 1.0
    cuts = [
        dataclasses.replace(cut, outline=tuple((way * x, z) for x, z in cut.outline))
        for cut in cuts_through(pieces, "upright", section_at(job, leaf, view.scale))
    ]
    draw_cuts(draft, view, cuts)
    faces = sorted((-way * float(leaf.thickness), 0.0))
    top = view.y(float(leaf.height))
    thickness = Link(figure=leaf.thickness, rule=job.rules.wood)
    place_chains(
        draft,
        [
            Chain(
                view=view,
                axis="across",
                line=top + 4.6,
                stops=tuple(Stop(at=at, foot=top) for at in faces),
                links=(thickness,),
            )
        ],
    )


def mark_section(draft: Draft, job: Subject, leaf: Leaf, view: View, letter: str) -> None:
    """Both ends of the section line, between the leaf and its chains."""
    x = view.x(section_at(job, leaf, view.scale))
    trim = float(leaf.trim)
    top, low = view.y(float(leaf.height) + trim), view.y(-trim)
    looks: Way = "left" if job.third_angle else "right"
    section_end(draft, (x, top + 6.6), outwards="up", looks=looks, letter=letter)
    section_end(draft, (x, low - 6.6), outwards="down", looks=looks, letter=letter)
