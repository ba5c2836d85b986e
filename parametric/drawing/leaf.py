"""The leaf's sheet: twins on one datum with the story stick between them, and their section.

  C                                   C-C
+-----+  2102   +-----+                |      cut list
|  A  |  1982   |  B  |                |      checks
|     |   ...   |     |                |      warnings
+-----+  0      +-----+                |      notes
|-| |-|
|-----|                                    title block
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.column import WIDTH, place_items
from parametric.drawing.details import Called
from parametric.drawing.details.calls import (
    draw_calls,
    draw_index,
    number_calls,
    sheets_in_words,
)
from parametric.drawing.draft import Draft
from parametric.drawing.enlarged import draw_enlarged
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame
from parametric.drawing.leaf_layout import (
    MARK,
    LeafExtent,
    LeafPlacing,
    leaf_extent,
    place_leaves,
)
from parametric.drawing.leaf_views import (
    bottom_chains,
    draw_leaf,
    draw_section,
    leaf_groups,
    left_chains,
    mark_parts,
    mark_section,
    name_leaf,
    pull_chain,
    stick_places,
)
from parametric.drawing.leaf_words import leaf_items
from parametric.drawing.lettering import TITLE
from parametric.drawing.ordinates import place_stick
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject

_MM: Scales = ((5.0, 10.0, 20.0), (10.0, 20.0, 50.0))
_INCH: Scales = ((8.0, 12.0, 16.0), (8.0, 12.0, 16.0, 24.0))
"""The largest is for low leaves."""


def draw_leaves(job: Subject, title: TitleBlock, called: Sequence[Called] = ()) -> Sheet:
    """Both leaves on the first paper and scale on which everything stands clear.

    Args:
        job: the job.
        title: what the title block says.
        called: the details of the job, which the sheet calls where they are.
    """
    extent = leaf_extent(job)

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        placing = place_leaves(paper, scale, extent, block)
        return None if placing is None else _draw(job, extent, placing, block, called)

    large = f"leaves of {extent.width:.0f} × {extent.height:.0f} are past the largest sheet"
    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    return first_that_fits(options, title, attempt, too_large=large)


def _draw(
    job: Subject,
    extent: LeafExtent,
    placing: LeafPlacing,
    title: TitleBlock,
    called: Sequence[Called],
) -> Sheet:
    draft = Draft(placing.paper)
    scale = scale_words(placing.scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scale)
    draw_frame(draft, title)
    (leaf, group), (twin, twin_group) = leaf_groups(job)
    left = draft.view(f"leaf {leaf.letter}", placing.scale, placing.left)
    right = draft.view(f"leaf {twin.letter}", placing.scale, placing.right)
    # The face stands away from the elevation in first angle, towards it in third.
    back = 0.0 if job.third_angle else extent.thickness / placing.scale
    face = (placing.section[0] + back, placing.section[1])
    section = draft.view("section C-C", placing.scale, face)
    pieces = draw_leaf(draft, leaf, group, left)
    twin_pieces = draw_leaf(draft, twin, twin_group, right)
    draw_calls(draft, called, "leaf", left)
    mark_section(draft, job, leaf, left, "C")
    draw_section(draft, job, pieces, leaf, section)
    _captions(draft, job, extent, placing, scale)
    first = left.y(-extent.trim) - MARK - FIRST + 3.0
    place_chains(draft, [*left_chains(job, leaf, left, extent)])
    place_chains(draft, bottom_chains(job, leaf, left, first))
    for own, view in ((leaf, left), (twin, right)):
        pull_chain(draft, job, own, view)
    # After the chains: a call has many places, an extension line has one.
    number_calls(draft, called, "leaf", left, sheets_said=False)
    place_stick(
        draft,
        left,
        stick_places(job, leaf),
        from_x=left.x(extent.width),
        to_x=right.x(0.0),
        zero_words="datum",
    )
    for index, (own, view, parts) in enumerate(((leaf, left, pieces), (twin, right, twin_pieces))):
        name_leaf(draft, job, own, index, view)
        mark_parts(draft, parts, view, small_too=index == 0)
    columns = placing.columns
    listed = draw_index(draft, called, placing.under)
    if not listed and placing.under.width >= WIDTH and placing.under.height > 20.0:
        columns = (*columns, placing.under)
    note = "" if listed else sheets_in_words(called)
    left_over = place_items(draft, leaf_items(job, note), columns)
    if not called:
        draw_enlarged(draft, leaf, pieces, left, placing.under, "D", job.rules.unit)
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


def _captions(
    draft: Draft, job: Subject, extent: LeafExtent, placing: LeafPlacing, scale: str
) -> None:
    """Names over the views, the twin's with what it differs in."""
    top = placing.left[1] + (extent.height + extent.trim) / placing.scale + 2.8
    leaf, twin = job.resolved.door.leaves
    middle = placing.section[0] + extent.thickness / placing.scale / 2
    names: tuple[tuple[str, float, Anchor], ...] = (
        (f"Leaf {leaf.letter}, front  {scale}", placing.left[0], "left"),
        (f"Leaf {twin.letter}, front  {scale}", placing.right[0], "left"),
        (f"C-C  {scale}", middle, "centre"),
    )
    for text, x, anchor in names:
        rows = (8.6, 13.0, 17.0) if anchor == "centre" else (0.0, 6.4)
        places = [_title(text, (x, top + row), anchor) for row in rows]
        if anchor == "centre":
            # Beside its head, where the sheet ends over it; the title block says its scale.
            half = extent.thickness / placing.scale / 2
            places.append(_title("C-C", (x + half + 2.6, top - 8.0), "left"))
        else:
            places.append(_title(text, (x + 30.0, top), anchor))
        found = draft.add_first(places)
        if twin.letter in text and leaf.pulls:
            box = found.box
            words = "as A but for the pull"
            beside = [
                Label(text=words, at=(box.x1 + 3.0, box.y0 + 0.9)),
                Label(text=words, at=(box.x0, found.at[1] + 5.2)),
            ]
            draft.add_first(beside)


def _title(text: str, at: Point, anchor: Anchor) -> Label:
    return Label(text=text, at=at, height=TITLE, weight="bold", anchor=anchor)
