"""The last of a door's sheets: where hardware goes on each leaf, in the order it is marked.

leaf A     leaf B          table of positions
(3)        (3)            notes
(2)        (2)
(1)        (1)
top, from above
foot, from below           title block
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.details.words import scales_said
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.hardware.fronts import draw_front, front_height, front_width
from parametric.drawing.hardware.strips import (
    LEFT,
    draw_foot,
    draw_top,
    foot_height,
    top_height,
)
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.resolve.leaf import Leaf
from parametric.trade.leaf_hardware import LeafHardware
from parametric.trade.paperwork import Paperwork

MOST = 6
"""As many positions as this need no sheet of their own."""
_MM: Scales = ((5.0, 10.0), (5.0, 10.0, 20.0))
_INCH: Scales = ((4.0, 8.0, 12.0), (4.0, 8.0, 12.0, 16.0))
_WIDE = 122.0
"""The column of table and notes, mm."""
_EDGE = 7.0
_RIGHT = 16.0
"""What a strip takes right of the leaf, mm."""
_BETWEEN = 22.0
_APART = 8.0
_FRONT = 4.0
"""The leaves from the front are drawn so many times smaller than the strips."""


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One kind of position on every leaf: its number, its words, where it is on each leaf."""

    number: int
    what: str
    across: tuple[str, ...]
    up: str
    middle: str


def draw_hardware(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """One sheet where there are more positions than the other sheets can carry, else none."""
    if _positions(job) <= MOST:
        return ()

    def attempt(size: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _draw(job, paper, size, scale, block)

    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    wide = float(job.resolved.door.leaves[0].width)
    large = f"a leaf {wide:.0f} wide is past the largest sheet"
    return (first_that_fits(options, title, attempt, too_large=large),)


def _positions(job: Subject) -> int:
    """Every hanger, pull and groove there is on the leaves."""
    door = job.resolved.door
    hangers = 0 if door.track is None else int(door.track.hangers)
    return sum(
        hangers + int(leaf.guide is not None) + sum(len(hung.pull.faces) for hung in leaf.pulls)
        for leaf in door.leaves
    )


def _draw(
    job: Subject, paper: Paperwork, size: Paper, scale: float, title: TitleBlock
) -> Sheet | None:
    frame, block = size.frame, title_block_box(size, title)
    leaves = job.resolved.door.leaves
    strips = _strips(paper, leaves)
    small = scale * _FRONT
    left = frame.x0 + _EDGE
    fronts = sum(front_width(leaf, small) for leaf in leaves) + _BETWEEN
    wide = max(LEFT + float(leaves[0].width) / scale + _RIGHT, fronts)
    column = frame.x1 - 5.5 - _WIDE
    heights = [top_height(job, leaf, scale) + foot_height(leaf, scale) for leaf, _, _ in strips]
    tall = front_height(leaves[0], small) + sum(heights) + _APART * 2 * len(strips)
    if left + wide > column - 4.0 or tall > frame.height - 2 * _EDGE:
        return None
    spare = (frame.height - 2 * _EDGE - tall) / (2 * len(strips) + 1)
    air = _APART + min(spare, 14.0)
    draft = Draft(size)
    words = scale_words(scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scales_said(job, (scale, small)))
    draw_frame(draft, title)
    marks = _marks(job, paper)
    y = frame.y1 - _EDGE - front_height(leaves[0], small)
    x = left
    for leaf, group in leaf_groups(job):
        draw_front(draft, job, leaf, group, _numbers(marks), (x, y), small)
        x += front_width(leaf, small) + _BETWEEN
    for leaf, own, same in strips:
        y -= air + top_height(job, leaf, scale)
        draw_top(draft, job, leaf, own, (left, y), scale, f"{words}, face below{same}")
        y -= air + foot_height(leaf, scale)
        draw_foot(draft, job, leaf, own, (left, y), scale, f"{words}, face above{same}")
    room = Box(column, block.y1 + 5.0, column + _WIDE, frame.y1 - _EDGE)
    left_over = place_items(draft, _items(job, marks), (room,))
    draft.unplaced += [getattr(item, "title", "") for item in left_over]
    return draft.sheet(title)


def _strips(paper: Paperwork, leaves: Sequence[Leaf]) -> list[tuple[Leaf, LeafHardware, str]]:
    """The leaves whose top and foot are drawn: twins once, and what is said of the other."""
    owned = [next(h for h in paper.leaf_hardware if h.leaf == leaf.name) for leaf in leaves]
    first = owned[0]

    def alike(other: LeafHardware) -> bool:
        pairs = ((first.first, other.first), (first.last, other.last), (first.middle, other.middle))
        return all(abs(float(a) - float(b)) < 1e-6 for a, b in pairs)

    twins = [leaf.letter for leaf, own in zip(leaves[1:], owned[1:], strict=True) if alike(own)]
    same = f"; leaf {' and '.join(twins)} alike" if twins else ""
    return [
        (leaf, own, same if index == 0 else "")
        for index, (leaf, own) in enumerate(zip(leaves, owned, strict=True))
        if index == 0 or not alike(own)
    ]


def _marks(job: Subject, paper: Paperwork) -> tuple[Mark, ...]:
    """From the foot up: the groove of the guide, the pulls, the hangers."""
    door = job.resolved.door
    leaf, wood = door.leaves[0], job.wood
    found: list[tuple[str, tuple[str, ...], str, str]] = []
    middle = wood(paper.leaf_hardware[0].middle)
    if leaf.guide is not None:
        ends = tuple("end to end" for _ in door.leaves)
        found.append(("groove for the guide", ends, wood(0.0), middle))
    if leaf.pulls:
        across = tuple(wood(own.pulls[0].across) for own in door.leaves)
        faces = {("front", "back"): "both faces", ("front",): "face", ("back",): "back"}
        where = faces[leaf.pulls[0].pull.faces]
        found.append((f"pull, {where}", across, wood(leaf.pulls[0].pull.up), ""))
    if door.track is not None:
        zones = tuple(f"{wood(own.first)} to {wood(own.last)}" for own in paper.leaf_hardware)
        hangers = f"hangers, {int(door.track.hangers)}"
        found.append((hangers, zones, wood(leaf.height), middle))
    return tuple(
        Mark(number=n, what=what, across=across, up=up, middle=off)
        for n, (what, across, up, off) in enumerate(found, 1)
    )


def _numbers(marks: Sequence[Mark]) -> dict[str, int]:
    """The number of each kind of thing, by its first word."""
    return {mark.what.split(",")[0].split()[0]: mark.number for mark in marks}


def _items(job: Subject, marks: Sequence[Mark]) -> list[Item]:
    door = job.resolved.door
    height = table_height(job.rules.unit)
    alike = _alike([tuple(m.across[i] for m in marks) for i in range(len(door.leaves))])
    rows = tuple(
        (str(m.number), m.what, *(m.across[own[0]] for own in alike), m.up, m.middle) for m in marks
    )
    columns = (
        Column(head="No.", width=8.0),
        Column(head="What", width=33.0),
        *(
            Column(
                head=f"{'Leaf' if len(own) == 1 else 'Leaves'} "
                f"{', '.join(door.leaves[i].letter for i in own)}, across",
                width=28.0 * 2 / max(2, len(alike)),
            )
            for own in alike
        ),
        Column(head="Up", width=12.0, anchor="right"),
        Column(head="In", width=13.0, anchor="right"),
    )
    return [
        TableItem(
            title="Positions on the leaves, in the order they are marked",
            columns=fitted(columns, rows, height),
            rows=rows,
            height=height,
        ),
        Sentences(title="Notes", kind="numbered", texts=_notes(job)),
    ]


def _alike(columns: Sequence[tuple[str, ...]]) -> list[list[int]]:
    """Leaves that share a column of the table: of a pair each has its own, of more those alike."""
    if len(columns) <= 2:
        return [[index] for index in range(len(columns))]
    found: dict[tuple[str, ...], list[int]] = {}
    for index, column in enumerate(columns):
        found.setdefault(column, []).append(index)
    return list(found.values())


def _notes(job: Subject) -> tuple[str, ...]:
    """What the table cannot say."""
    door = job.resolved.door
    leaf = door.leaves[0]
    notes = [
        "Across from the leaf's left edge, seen from the front; up from the finished foot; in "
        "from the face, to the middle.",
        "Hangers only where the grain of the top rail runs level and no tenon lies under them; "
        "where in that length, and on what screws, by their data sheet."
        + (
            ""
            if leaf.least_cover_at_top is None
            else f" Over the tenons {job.wood(leaf.least_cover_at_top, down=True)} of wood is left."
        ),
    ]
    if leaf.guide is not None:
        notes.append(
            "The groove for the guide is run after trimming, from the finished foot, through stiles and rail."
        )
    if leaf.pulls:
        notes.append(
            "Pockets for the pulls are cut in the glued leaf, lying flat; their sizes are on the "
            "stile's own sheet."
        )
    notes.append(
        "Brackets, tracks and the guides on the floor are set out on site: install sheet. Track "
        f"stops, {2 * len(door.hanging.tracks)}, when the leaves have run from end to end."
    )
    return tuple(notes)
