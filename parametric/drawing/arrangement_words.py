"""Tables, warnings and notes of an arrangement, worked out from the job by rule."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from parametric.drawing.arrangement_swing import (
    clear_way_chain,
    draw_leaves_open,
    jambs,
    mark_clear_way,
    reach_chain,
    swing_box,
)
from parametric.drawing.case import case_from_above
from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.column import Item, Picture, Sentences, TableItem
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Point, rectangle
from parametric.drawing.revised import named_on_stamp
from parametric.drawing.sheet import Revision
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.figures import Figure, doubtful
from parametric.problems import Problem, stops
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.printed import weight_cell, weight_head
from parametric.trade.standing import comes_towards

ON_ARRANGEMENT = frozenset(
    {
        "uneven_floor_gap",
        "fingers_between_leaves",
        "fingers_at_hinges",
        "fingers_where_leaves_shut",
        "floor_rises_in_travel",
        "leaf_meets_something",
        "hanger_rating_unknown",
        "fixing_not_known",
        "reading_doubted",
        "sides_not_measured",
        "glass_not_safety",
        "heavy_leaf",
        "pin_differs",
    }
)
"""Problems that the client or the fitter must know; the rest go to the bench, on the leaf's sheet."""

ON_FLAPS = frozenset(
    {
        "flap_and_front_meet",
        "flap_falls",
        "flap_has_no_stay",
        "flap_springs_open",
        "strut_too_strong",
        "strut_too_weak",
    }
)
"""Problems of flaps and what holds them: on their own sheet, and for the client and the fitter."""
ON_CABINETS = ON_FLAPS | frozenset(
    {
        "cannot_be_stood_up",
        "case_cannot_be_brought_in",
        "cabinet_in_the_wall",
        "cabinets_overlap",
        "fronts_meet_at_corner",
        "gap_beside_case",
        "heavy_case",
        "lid_falls",
        "may_tip_over",
        "scribes_differ",
        "shelf_below_the_standard",
        "shelf_not_for_books",
        "shelf_sags",
        "shelf_sags_nearly",
        "slides_overloaded",
    }
)
"""Problems of cabinets, for the client and the fitter."""
ON_CASE = frozenset(
    {
        "back_in_pieces",
        "board_measured_wrong",
        "board_not_measured",
        "bores_meet",
        "end_splits",
        "joint_meets",
        "joint_short",
        "no_pins",
        "no_room_in_the_back",
        "pins_left_out",
        "pins_shallow",
        "plate_meets",
        "plate_past_back",
        "plate_through",
        "plates_shallow",
        "screws_covered",
    }
)
"""Problems of a case's boards, for the bench: on the sheet of the case."""

_UP = ("top", "middle", "bottom")
_ACROSS = ("left", "middle", "right")
_KEY_STUB = 250.0


def sheet_items(job: Subject, *more: str) -> list[Item]:
    """The column in the order it is read; `more` are notes of the sheet itself."""
    return [
        *_stops(job),
        *_moved(job),
        _widths(job),
        _heights(job),
        _leaves(job),
        Sentences(title="For the client to know", kind="warning", texts=_cautions(job)),
        Sentences(title="Notes", kind="numbered", texts=(*_notes(job), *filter(None, more))),
        _key_plan(job),
    ]


def revisions_note(revisions: Sequence[Revision]) -> str:
    """The revisions that the title block has no room for, in one note; "" for none."""
    told = "; ".join(f"{r.letter}, {r.date}, {r.change}" for r in revisions)
    return f"Earlier revisions: {told}." if told else ""


def said(problem: Problem) -> str:
    """A problem as a sheet says it."""
    return problem.message


def _moved(job: Subject) -> list[Item]:
    """What moved since the design was signed, value by value, from what to what: all that the
    stamp of the title block cannot hold.
    """
    approved = job.resolved.design.records.approved
    if approved is None or job.moved is None:
        return []
    causes = job.moved.causes
    if len(causes) == 1 and named_on_stamp(approved.revision, causes[0]) is not None:
        return []
    more = len(causes) - _MOST_MOVED
    texts = [f"{cause[:1].upper()}{cause[1:]}." for cause in causes[:_MOST_MOVED]]
    if more > 0:
        texts[-1] += f" {more} more moved: `stilewright compare` tells all."
    title = f"Changed since revision {approved.revision} was approved"
    return [Sentences(title=title, kind="warning", texts=tuple(texts))]


_MOST_MOVED = 5


def _stops(job: Subject) -> list[Item]:
    found = tuple(said(p) for p in stops(job.problems))
    return [
        Sentences(
            title="This cannot be made as it stands", kind="warning", texts=found, framed=True
        )
    ]


def _reading(job: Subject, value: Figure | None) -> str:
    """A reading as taken; one that the surveyor doubts wears a star."""
    if value is None:
        return "–"
    return job.wood(value) + (" *" if doubtful(value) else "")


def _widths(job: Subject) -> TableItem:
    widths = job.resolved.door.opening.widths
    rows = (("Width", *(_reading(job, widths.get(place)) for place in _UP)),)
    return _readings(job, "As measured", ("Opening", *_UP), rows)


def _heights(job: Subject) -> TableItem:
    opening, gaps = job.resolved.door.opening, dict(job.resolved.door.gaps)
    high = "Head to floor" if opening.foot is None else "High, within"
    rows = (
        (high, *(_reading(job, opening.heights.get(p)) for p in _ACROSS)),
        ("Gap under the leaves", *(_reading(job, gaps.get(p)) for p in _ACROSS)),
    )
    return _readings(job, "", ("Along the floor", *_ACROSS), rows)


def _readings(
    job: Subject, title: str, heads: tuple[str, ...], rows: tuple[tuple[str, ...], ...]
) -> TableItem:
    """Three readings a row; fractions of an inch take of the names' room what they need."""
    columns = (
        Column(head=heads[0], width=36.0),
        *(Column(head=word, width=16.0, anchor="right") for word in heads[1:]),
    )
    height = table_height(job.rules.unit)
    return TableItem(title=title, columns=fitted(columns, rows, height), rows=rows, height=height)


def _leaves(job: Subject) -> TableItem:
    door, unit = job.resolved.door, job.rules.unit
    loads = {load.leaf: load for load in job.loads}
    rows: list[tuple[str, ...]] = []
    for leaf in door.leaves:
        size = " × ".join(job.wood(v) for v in (leaf.width, leaf.height, leaf.thickness))
        load = loads[leaf.name]
        weights = (weight_cell(value, unit) for value in (load.governing, load.bare))
        rows.append((leaf.letter, leaf_place(door, leaf), size, *weights))
    columns = [
        Column(head="Leaf", width=10.0, anchor="centre"),
        Column(head=_place_head(door), width=13.0),
        Column(head="Width × height × thick", width=36.0, anchor="right"),
        Column(head=weight_head(unit), width=9.0, anchor="right"),
        Column(head="unglazed", width=16.0, anchor="right"),
    ]
    if unit == "inch":
        # Fractions and two weights need the room; the track stands on the leaf itself.
        rows = [row[:1] + row[2:] for row in rows]
        columns = [
            replace(column, width=column.width + 13.0 / 4)
            for index, column in enumerate(columns)
            if index != 1
        ]
    height = table_height(unit)
    return TableItem(
        title="Leaves", columns=fitted(columns, rows, height), rows=tuple(rows), height=height
    )


def leaf_place(door: Door, leaf: Leaf) -> str:
    """Where a leaf hangs, in a word: its track, or the side its hinges are on."""
    if leaf.hung.track is not None:
        return door.hanging.tracks[leaf.hung.track].word
    return (
        leaf.hung.side_of("hinge")
        or leaf.hung.side_of("pivot")
        or leaf.hung.pull_side
        or "drawn out"
    )


def _place_head(door: Door) -> str:
    """What `leaf_place` says of every leaf."""
    if door.hanging.tracks:
        return "Track"
    return "Hinges" if any(leaf.hung.side_of("hinge") for leaf in door.leaves) else "Side"


def _cautions(job: Subject) -> tuple[str, ...]:
    return tuple(said(p) for p in job.problems if p.level == "caution" and p.code in ON_ARRANGEMENT)


def _notes(job: Subject) -> tuple[str, ...]:
    """Facts in shop words, each from a number of the job."""
    door, hanging = job.resolved.door, job.resolved.door.hanging
    leaf = door.leaves[0]
    whose = {1: "the leaf", 2: "both leaves"}.get(len(door.leaves), "all leaves")
    if len({float(one.hung.foot) for one in door.leaves}) > 1:
        whose = "the lowest leaf"
    notes = [
        f"All heights from the datum: the finished foot of {whose}, "
        f"{job.wood(hanging.floor_gap)} above the highest floor.",
        f"Leaf sizes are finished. {_timber(job)}",
        *_opening_notes(job),
    ]
    notes += [
        said(p)
        for p in job.problems
        if p.level == "note" and p.code in ON_ARRANGEMENT - {"glass_not_safety"}
    ]
    if leaf.lites:
        pane = leaf.lites[0].pane
        notes.append(
            f"Glass {job.fine(pane.thickness)} {pane.kind}, ordered to size: "
            "it cannot be cut again."
        )
    if (
        door.track is not None
        and door.track.fixing_depth is not None
        and door.opening.fixing == "solid timber"
    ):
        notes.append(
            f"Track screws at least {job.wood(door.track.fixing_depth)} long and the "
            "thickness of the bracket: the board alone holds nothing."
        )
    if leaf.pulls:
        faces = "both faces" if len(leaf.pulls[0].pull.faces) == 2 else "the front"
        notes.append(f"Pulls in {faces} of each leaf's outer stile; placed on the leaf's sheet.")
    if any(doubtful(v) for v in (*door.opening.widths.values(), *door.opening.heights.values())):
        notes.append("* a reading in doubt: measure again before anything is cut.")
    return tuple(notes)


def _opening_notes(job: Subject) -> list[str]:
    """How the lines on turning leaves are to be read, and what the leaves are clear of."""
    door, hanging = job.resolved.door, job.resolved.door.hanging
    turning = [leaf for leaf in door.leaves if leaf.hung.swing is not None]
    if not turning:
        return []
    ways = {comes_towards(leaf) for leaf in turning}
    line = {True: "chain lines: it opens towards you", False: "dashed: it opens away from you"}
    told = "; ".join(line[way] for way in sorted(ways, reverse=True))
    notes = [f"Thin lines on a leaf meet at the edge it is hinged by; {told}."]
    gap = hanging.travel_gap
    if hanging.case is not None:
        return notes
    if any(p.code == "floor_rises_in_travel" for p in job.problems):
        return notes
    if gap is not None:
        notes.append(
            f"Where the floor stands highest in the swing, {job.wood(gap, down=True)} is left "
            "under the leaves."
        )
    else:
        notes.append("The floor in the swing was not measured: try it with a level first.")
    return notes


def _timber(job: Subject) -> str:
    leaf, finish = job.resolved.door.leaves[0], job.resolved.finish
    words = {"paint": "for paint", "varnish": "varnished", "oil": "oiled", "none": "unfinished"}
    look = words[finish.kind] if finish is not None else "unfinished"
    return f"{leaf.timber.name.capitalize()}, {look}."


def _key_plan(job: Subject) -> Picture:
    """The leaves open in plan: stacked where they pass one another, else as they stand."""
    hanging = job.resolved.door.hanging
    two = len(job.resolved.door.leaves) == 2
    if hanging.passing_gap is None or hanging.stack_lap is None or not two:
        return _open_plan(job)
    span = float(hanging.cover) + 2 * _KEY_STUB
    unit = job.rules.unit
    scales = (50.0, 100.0, 200.0) if unit == "mm" else (48.0, 96.0, 192.0)
    scale = next(s for s in scales if span / s <= 80.0)
    return Picture(
        title=f"Both leaves to the left: the clear way, plan {scale_words(scale, unit)}",
        height=20.5,
        draw=lambda draft, at: _draw_key(draft, job, at, scale),
    )


_KEY_WIDE = 80.0
_OPEN_STUB = 150.0
"""How much wall is shown beside the opening in the plan of the open leaves, mm."""
_WALL_DEEP = 3.0
"""How deep it is drawn, mm on paper."""
_UNDER = 10.5
"""What the clear way takes under the open leaves, mm on paper."""


def _open_plan(job: Subject) -> Picture:
    """The leaves open, seen from above, at the largest scale the column has room for."""
    door, unit = job.resolved.door, job.rules.unit
    box = swing_box(door)
    wide = max(box.x1, float(door.opening.widest)) - min(box.x0, 0.0) + 2 * _OPEN_STUB
    scales = (10.0, 20.0, 50.0, 100.0) if unit == "mm" else (12.0, 24.0, 48.0, 96.0)
    scale = next((s for s in scales if wide / s + _REACH_WORDS <= _KEY_WIDE), scales[-1])
    over = max(_WALL_DEEP, box.y1 / scale)
    tall = over + max(0.0, -box.y0) / scale + _UNDER
    whose = "leaves" if len(door.leaves) > 1 else "leaf"
    way = "" if door.hanging.clear_way is None else ": the clear way"
    return Picture(
        title=f"The {whose} open{way}, plan {scale_words(scale, unit)}",
        height=tall,
        draw=lambda draft, at: _draw_open(draft, job, (at[0], at[1] - over), scale),
    )


_REACH_WORDS = 12.0
"""What the chain of the reach takes beside the plan, mm on paper."""


def _draw_open(draft: Draft, job: Subject, at: Point, scale: float) -> None:
    """The plan of the open leaves; `at` is where the wall's face begins at the left."""
    door, rule = job.resolved.door, job.rules.arrangement
    box = swing_box(door)
    left, right = jambs(door)
    start = min(box.x0, left) - _OPEN_STUB
    end = max(box.x1, right) + _OPEN_STUB
    view = draft.view("leaves open", scale, (at[0] + 2.0 - start / scale, at[1]))
    deep = _WALL_DEEP * scale
    case_from_above(draft, view, door, (left, right), deep)
    walls = () if door.hanging.case is not None else ((start, left), (right, end))
    for x0, x1 in walls:
        outline = view.path(rectangle(x0, 0.0, x1, deep))
        draft.path("edge", outline, view.name, closed=True)
        draft.add(wall((outline,), view.name, 1.1))
    draw_leaves_open(draft, view, door, shut="edge", pins=False)
    mark_clear_way(draft, view, door)
    line = view.y(min(box.y0, 0.0)) - 7.0
    place_chains(
        draft,
        [
            *clear_way_chain(view, door, line, rule),
            *reach_chain(view, door, view.x(end) + 6.0, rule),
        ],
    )


def _draw_key(draft: Draft, job: Subject, at: Point, scale: float) -> None:
    """The leaves stacked at the left, drawn where the opening is narrowest."""
    door, hanging = job.resolved.door, job.resolved.door.hanging
    assert hanging.clear_way is not None, "what slides over a wall is walked through"
    left = float(hanging.lefts[0])
    stack_right = left + float(hanging.leaf_width)
    jamb_right = stack_right + float(hanging.clear_way)
    jamb_left = left + (0.0 if hanging.stack_lap is None else float(hanging.stack_lap))
    start = jamb_left - _KEY_STUB
    view = draft.view("clear way", scale, (at[0] + 2.0 - start / scale, at[1] - 6.0))
    deep = 2.6 * scale
    for x0, x1 in ((start, jamb_left), (jamb_right, jamb_right + _KEY_STUB)):
        outline = view.path(rectangle(x0, 0.0, x1, deep))
        draft.path("edge", outline, view.name, closed=True)
        draft.add(wall((outline,), view.name, 1.1))
    for plane in hanging.planes:
        middle = -float(plane)
        half = float(door.leaves[0].thickness) / 2
        outline = view.path(rectangle(left, middle - half, stack_right, middle + half))
        draft.path("edge", outline, view.name, closed=True)
    lowest = view.y(-max(float(p) for p in hanging.planes)) - 1.0
    line = min(lowest, view.y(0.0)) - 7.0
    clear = Link(figure=hanging.clear_way, rule=job.rules.arrangement)
    stops_ = (
        Stop(at=stack_right, foot=lowest),
        Stop(at=jamb_right, foot=view.y(0.0)),
    )
    place_chains(draft, [Chain(view=view, axis="across", line=line, stops=stops_, links=(clear,))])
