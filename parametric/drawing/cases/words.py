"""Tables, cautions and notes of an arrangement of cabinets, worked out from the job by rule."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from parametric.cases.case import Space
from parametric.drawing.arrangement_words import ON_ARRANGEMENT, ON_CABINETS, said
from parametric.drawing.cases.plan_words import counter_joints
from parametric.drawing.cases.room import Room
from parametric.drawing.cases.scribe_words import scribed_in
from parametric.drawing.column import Item, Sentences, TableItem
from parametric.drawing.leaf_views import degrees
from parametric.drawing.printing import Rule
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, holds, table_height
from parametric.figures import Figure, doubtful
from parametric.hangings.hanging import HungSide
from parametric.problems import stops
from parametric.resolve.casework import StandingCase
from parametric.trade.case_names import begun, together
from parametric.trade.printed import weight_cell, weight_head

UP = ("bottom", "middle", "top")
ACROSS = ("left", "middle", "right")


def room_items(job: Subject, room: Room) -> list[Item]:
    """The column of the arrangement, in the order it is read."""
    return [
        Sentences(
            title="This cannot be made as it stands",
            kind="warning",
            texts=tuple(said(p) for p in stops(job.problems)),
            framed=True,
        ),
        *_measured(job, room),
        _scribed(job, room),
        *_closed(job, room),
        Sentences(
            title="Notes",
            kind="numbered",
            texts=(
                *_notes(room, job.rules.arrangement),
                *_frames(job, room),
                *counter_joints(job, {run.name for run in room.runs}),
                *cabinet_notes(job),
            ),
        ),
    ]


def _cell(job: Subject, value: Figure | None) -> str:
    """A size as printed, a star on a reading in doubt, a dash where there is none."""
    if value is None:
        return "–"
    return job.wood(value) + (" *" if doubtful(value) else "")


def _table(
    job: Subject,
    title: str,
    heads: Sequence[str],
    rows: Iterable[Sequence[str]],
    *,
    first: float = 30.0,
    width: float = 84.0,
) -> TableItem:
    """Names at the left, sizes at the right; nothing when there are no rows."""
    each = (width - first) / (len(heads) - 1)
    columns = (
        Column(head=heads[0], width=first),
        *(Column(head=head, width=each, anchor="right") for head in heads[1:]),
    )
    return listed(job, title, columns, rows)


def listed(
    job: Subject,
    title: str,
    columns: Sequence[Column],
    rows: Iterable[Sequence[str]],
    *,
    most: float = 0.0,
) -> TableItem:
    """A table whose columns take what stands in them; it is left out where there are no rows.

    Args:
        job: the job.
        title: over it.
        columns: with the widths that they share.
        rows: what stands in it.
        most: how wide it may grow where they do not hold it, mm.
    """
    body = tuple(tuple(row) for row in rows)
    height = table_height(job.rules.unit)
    shares = fitted(columns, body, height, most=most) if body else tuple(columns)
    return TableItem(title=title, columns=shares, rows=body, height=height)


def _readings(job: Subject, of: Mapping[str, Figure], places: Sequence[str]) -> list[str]:
    return [_cell(job, of.get(place)) for place in places]


def _measured(job: Subject, room: Room) -> list[Item]:
    """The walls off the plumb line, floor and ceiling above the highest floor."""
    opening = room.opening
    right = {place: opening.lean[place] + wide for place, wide in opening.widths.items()}
    rows = [
        ("Width", *_readings(job, opening.widths, UP)),
        ("Left wall", *_readings(job, opening.lean, UP)),
        ("Right wall", *_readings(job, right, UP)),
    ]
    level = [
        ("Ceiling", *_readings(job, opening.ceiling, ACROSS)),
        ("Floor", *_readings(job, opening.floor, ACROSS)),
    ]
    return [
        _table(job, "As measured, walls from the plumb line", ("Up the wall", *UP), rows),
        _table(job, "", ("Above the highest floor", *ACROSS), level),
    ]


def _scribed(job: Subject, room: Room) -> TableItem:
    """What is seen of fillers, and what comes off wall stiles, at the wall's readings."""
    rows = []
    for one in scribed_in(room):
        word = "seen" if one.filler else "scribe off"
        rows.append(
            (
                f"{one.meets.split()[0].capitalize()} {one.noun}, {word}",
                *_readings(job, one.readings, UP),
                job.wood(one.blank),
            )
        )
    heads = ("At the wall's readings", *UP, "blank")
    return _table(job, "Scribed to the walls", heads, rows, first=36.0)


def _closed(job: Subject, room: Room) -> list[Item]:
    """Plinths and top fillers, by place across."""
    rows = []
    several = sum(edges.top is not None for edges in room.edges) > 1
    for edges in room.edges:
        over = f"Over {case_words(edges.name)}, seen" if several else "Top filler, seen"
        for word, closing in ((over, edges.top), ("Plinth, high", edges.plinth)):
            if closing is not None:
                sizes = _readings(job, closing.seen, ACROSS)
                rows.append((word, *sizes, job.wood(closing.blank)))
    heads = ("Closed to the room", *ACROSS, "blank")
    return [_table(job, "", heads, rows, first=36.0)]


def _notes(room: Room, rule: Rule) -> tuple[str, ...]:
    """Facts in shop words, each from a number of the job."""
    notes = ["All heights from the datum: the highest point of the floor."]
    if scribed_in(room):
        notes.append(
            "The walls are drawn as measured. Both are measured from a plumb line at the foot of "
            "the left wall."
        )
        notes.append(
            "The chain of widths is read where the room is narrowest; a blank is as wide as the "
            "most that is seen, and its spare."
        )
    turning = [front for front in room.fronts if front.leaf.hinges]
    if turning:
        notes.append("Thin lines on a front meet at the edge it is hinged by.")
    notes += sloping_notes(room.cases, rule)
    if room.flaps:
        notes.append("Open flaps in thin line where they are cut, in dashes on the plan.")
    readings = (*room.opening.widths.values(), *room.opening.heights.values())
    if any(doubtful(value) for value in readings):
        notes.append("* a reading in doubt: measure again before anything is cut.")
    return tuple(notes)


def _frames(job: Subject, room: Room) -> Iterator[str]:
    """What each face frame must reach: the walls where they lie farthest back."""
    for case in room.cases:
        frame = case.case.frame
        if frame is not None:
            yield (
                f"From wall to wall {job.wood(frame.between)} at the widest: the face frame of "
                f"{case.name} is made {job.wood(frame.width)} wide, to be scribed at both."
            )


def sloping_notes(cases: Sequence[StandingCase], rule: Rule) -> list[str]:
    """How tops lie that follow the ceiling, those that lie alike together."""
    alike: dict[tuple[str, str], list[str]] = {}
    for case in cases:
        slope = case.case.box.slope
        if slope is not None:
            lies = degrees(abs(float(slope.angle))), rule.text(slope.gap)
            alike.setdefault(lies, []).append(case.name)
    return [
        f"{begun(together(names))}: {'tops follow' if len(names) > 1 else 'the top follows'} the "
        f"ceiling, {angle} off the level, {gap} under it, plumb."
        for (angle, gap), names in alike.items()
    ]


def cautions(job: Subject) -> tuple[str, ...]:
    """What the client or the fitter must know of cabinets; what is said of several alike, once."""
    codes = ON_ARRANGEMENT | ON_CABINETS
    found = [said(p) for p in job.problems if p.level == "caution" and p.code in codes]
    return tuple(dict.fromkeys(found))


def cabinet_notes(job: Subject) -> tuple[str, ...]:
    """What is only told of cabinets: weights, scribes, what is held to a wall or a counter."""
    return tuple(said(p) for p in job.problems if p.level == "note" and p.code in ON_CABINETS)


def fronts_table(job: Subject, room: Room) -> TableItem:
    """Every front by its letter: which cabinet, how it opens, its size."""
    rows = []
    for front in room.fronts:
        leaf = front.leaf
        size = " × ".join(job.wood(v) for v in (leaf.width, leaf.height, leaf.thickness))
        side: HungSide | None = leaf.hung.side_of("hinge")
        if leaf.hung.flap is not None:
            side = leaf.hung.flap.side
        opens = side or ("draws out" if leaf.hung.motion else "fixed")
        rows.append((leaf.letter, case_words(front.door.case), opens, size))
    columns = (
        Column(head="Front", width=11.0, anchor="centre"),
        Column(head="Cabinet", width=22.0),
        Column(head="Hinges", width=16.0),
        Column(head="Width × height × thick", width=35.0, anchor="right"),
    )
    return listed(job, "Fronts", columns, rows)


def handles_table(job: Subject, room: Room) -> TableItem:
    """Where the fronts' bar handles or knobs are, alike ones together; left out where none has one."""
    lots: dict[tuple[str, ...], list[str]] = {}
    for front in room.fronts:
        handle = front.leaf.handle
        if handle is not None:
            what = "knob" if handle.kind == "knob" else "level" if handle.level else "upright"
            apart = "–" if handle.kind == "knob" else job.fine(handle.apart)
            places = (job.wood(handle.x), job.wood(handle.up))
            lots.setdefault((what, apart, *places), []).append(front.leaf.letter)
    rows = [(", ".join(letters), *lot) for lot, letters in lots.items()]
    columns = (
        Column(head="Fronts", width=22.0),
        Column(head="Handle", width=15.0),
        Column(head="Holes apart", width=19.0, anchor="right"),
        Column(head="from left", width=15.0, anchor="right"),
        Column(head="up", width=13.0, anchor="right"),
    )
    return listed(job, "Handles, middle from the front's left edge and foot", columns, rows)


def cabinets_table(job: Subject, room: Room) -> TableItem:
    """Every cabinet: its size outside, and what it weighs as it is carried in, fronts off."""
    groups = {group.name: group for group in job.assembly.groups}
    rows = []
    for case in room.cases:
        box, size = case.case.box, outside_words(job, case)
        heavy = sum(part.mass for part in groups[case.name].parts)
        rows.append((case_words(case.name), size, weight_cell(heavy, job.rules.unit)))
        if box.slope is not None:
            rows.append(("", f"at its low end {job.wood(box.height)} high", ""))
    columns = (
        Column(head="Cabinet", width=24.0),
        Column(head="Width × height × depth", width=46.0, anchor="right"),
        Column(head=weight_head(job.rules.unit), width=14.0, anchor="right"),
    )
    return listed(job, "Cabinets, without their fronts", columns, rows)


def outside_words(job: Subject, case: StandingCase) -> str:
    """Width, height, depth; of one in a corner both widths and both depths, from the left."""
    box, plan = case.case.box, case.case.plan
    wide, deep = [box.width], [box.depth]
    if plan is not None:
        deep = [plan.side("left side").length, plan.side("right side").length]
        if plan.in_a_corner:
            wide.append(plan.side("right back").length)
    sizes = (wide, [box.highest], deep)
    return " × ".join(" / ".join(job.wood(v) for v in size) for size in sizes)


def inside_table(job: Subject, room: Room) -> TableItem:
    """Every space, clear between boards, and back from the front edges to the back."""
    rows = []
    for case in room.cases:
        for bay in case.case.bays:
            for space in bay.spaces:
                high = space.head - space.foot
                size = " × ".join(job.wood(v) for v in (bay.width, high, case.case.behind))
                name = case_words(case.name)
                several = len(case.case.bays) > 1
                rows.append(
                    (f"{name}, bay {bay.number}" if several else name, space_words(space), size)
                )
    columns = (
        Column(head="Inside", width=22.0),
        Column(head="What", width=18.0),
        Column(head="Clear w × h × d", width=44.0, anchor="right"),
    )
    title = "Inside, clear between the boards"
    table = listed(job, title, columns, rows)
    if holds(table.columns, rows, table.height):
        return table
    # what a space holds then stands under its name
    under = [line for name, what, size in rows for line in ((name, size), (f"  {what}", ""))]
    return listed(job, title, (replace(columns[0], width=40.0), columns[2]), under)


def case_words(name: str) -> str:
    """A cabinet as people call it on a sheet of cabinets: `outer 1`."""
    return name.removeprefix("cabinet ") or name


def space_words(space: Space) -> str:
    """What a space holds, in shop words."""
    several = f"{space.shelves} {'shelf' if space.shelves == 1 else 'shelves'}"
    if space.what == "shelves":
        return several if space.shelves else "no shelf"
    return f"{space.what}, {several}" if space.shelves else space.what
