"""The leaves' sheets: twins on one datum with the story stick between them, and their section.

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
from parametric.drawing.column import place_items
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
from parametric.drawing.leaf_chains import (
    bottom_chains,
    draw_handle_middle,
    left_chains,
    pull_chain,
    stick_places,
)
from parametric.drawing.leaf_head import draw_arch
from parametric.drawing.leaf_layout import (
    ALONE,
    MARK,
    LeafExtent,
    LeafPlacing,
    leaf_extent,
    place_leaves,
    stile_widths,
)
from parametric.drawing.leaf_views import (
    draw_leaf,
    draw_section,
    leaf_groups,
    mark_parts,
    mark_section,
    name_bevels,
    name_leaf,
)
from parametric.drawing.leaf_words import leaf_items
from parametric.drawing.lettering import TITLE
from parametric.drawing.match_marks import draw_slices
from parametric.drawing.ordinates import place_ordinates, place_stick
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf

_MM: Scales = ((5.0, 10.0, 20.0), (10.0, 20.0, 50.0))
_INCH: Scales = ((8.0, 12.0, 16.0), (8.0, 12.0, 16.0, 24.0))
"""The largest is for low leaves."""
_NAMED = 8
"""The most leaves of which a title block says that they are as one that is drawn."""


def leaf_sets(job: Subject) -> tuple[tuple[int, ...], ...]:
    """Which leaves share a sheet: two neighbours whose rails stand at the same heights.

    One that another serves has none.
    """
    leaves = job.resolved.door.leaves
    served = {letter for others in job.alike.values() for letter in others}
    found: list[tuple[int, ...]] = []
    for index, leaf in enumerate(leaves):
        if leaf.letter in served:
            continue
        if found and len(found[-1]) == 1 and _one_datum(leaves[found[-1][0]], leaf):
            found[-1] = (*found[-1], index)
        else:
            found.append((index,))
    return tuple(found)


def _one_datum(first: Leaf, second: Leaf) -> bool:
    """Whether one story stick serves both."""

    def heights(leaf: Leaf) -> tuple[float, ...]:
        bands = (float(size) for band in leaf.bands for size in (band.foot, band.height))
        return tuple(round(size, 3) for size in (*bands, float(leaf.trim)))

    return heights(first) == heights(second)


def draw_leaves(
    job: Subject, title: TitleBlock, called: Sequence[Called] = ()
) -> tuple[Sheet, ...]:
    """One leaf or two a sheet, each on the first paper and scale on which all stands clear.

    Args:
        job: the job.
        title: what the title blocks say.
        called: the details of the job, which the first sheet calls where they are.
    """
    return tuple(
        _draw_set(job, chosen, title, called if number == 0 else ())
        for number, chosen in enumerate(leaf_sets(job))
    )


def _draw_set(
    job: Subject, chosen: tuple[int, ...], title: TitleBlock, called: Sequence[Called]
) -> Sheet:
    leaves = [job.resolved.door.leaves[index] for index in chosen]
    extent = leaf_extent(job, leaves)
    letters = " and ".join(leaf.letter for leaf in leaves)
    line = f"Leaves {letters} on one datum" if len(leaves) > 1 else f"Leaf {letters}"
    others = [
        f"{_said(job.alike[one.letter])} as {one.letter}"
        for one in leaves
        if job.alike.get(one.letter)
    ]
    title = dataclasses.replace(title, second_line="; ".join((line, *others)))

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        placing = place_leaves(paper, scale, extent, block)
        return None if placing is None else _draw(job, chosen, extent, placing, block, called)

    large = f"leaves of {extent.width:.0f} × {extent.height:.0f} are past the largest sheet"
    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    return first_that_fits(options, title, attempt, too_large=large)


def _said(letters: Sequence[str]) -> str:
    """`B, C and D`; of more than the title block holds, how many."""
    if len(letters) > _NAMED:
        return f"{letters[0]}, {letters[1]} and {len(letters) - 2} more"
    return " and ".join([", ".join(letters[:-1]), letters[-1]] if letters[:-1] else letters)


def _draw(
    job: Subject,
    chosen: tuple[int, ...],
    extent: LeafExtent,
    placing: LeafPlacing,
    title: TitleBlock,
    called: Sequence[Called],
) -> Sheet:
    draft = Draft(placing.paper)
    scale = scale_words(placing.scale, job.rules.unit)
    title = dataclasses.replace(title, scale=scale)
    draw_frame(draft, title)
    groups = [leaf_groups(job)[index] for index in chosen]
    places = [placing.left] if placing.right is None else [placing.left, placing.right]
    views = [
        draft.view(f"leaf {leaf.letter}", placing.scale, at)
        for (leaf, _), at in zip(groups, places, strict=True)
    ]
    (leaf, _), left = groups[0], views[0]
    # The face stands away from the elevation in first angle, towards it in third.
    back = 0.0 if job.third_angle else extent.thickness / placing.scale
    face = (placing.section[0] + back, placing.section[1])
    section = draft.view("section C-C", placing.scale, face)
    drawn = [
        draw_leaf(draft, own, group, view) for (own, group), view in zip(groups, views, strict=True)
    ]
    for (own, group), view in zip(groups, views, strict=True):
        draw_slices(draft, job, own, group, view)
    for (own, _), view in zip(groups, views, strict=True):
        draw_handle_middle(draft, own, view)
    draw_calls(draft, called, "leaf", left)
    mark_section(draft, job, leaf, left, "C")
    draw_section(draft, job, drawn[0], leaf, section)
    _captions(draft, [own for own, _ in groups], extent, placing, scale)
    first = left.y(-extent.trim) - MARK - FIRST + 3.0
    place_chains(draft, [*left_chains(job, leaf, left, extent)])
    place_chains(draft, bottom_chains(job, leaf, left, first))
    if extent.second_below:
        place_chains(draft, bottom_chains(job, groups[1][0], views[1], first))
    if len(views) > 1:
        place_stick(
            draft,
            left,
            stick_places(job, leaf),
            from_x=left.x(extent.width),
            to_x=views[1].x(0.0),
            zero_words="datum",
        )
    else:
        edge = left.x(extent.width)
        alone = [dataclasses.replace(p, start=edge) for p in stick_places(job, leaf)]
        place_ordinates(draft, left, "up", alone, edge + ALONE / 2)
    for index, ((own, _), view) in enumerate(zip(groups, views, strict=True)):
        pull_chain(draft, job, own, view)
        alike = index > 0 and other_hand(leaf, own)
        draw_arch(draft, job, own, view, sizes=not alike)
    # After chains and heights: a call has many places, an extension line has one.
    number_calls(draft, called, "leaf", left, sheets_said=False)
    told: set[str] = set()
    for index, ((own, _), view, parts) in enumerate(zip(groups, views, drawn, strict=True)):
        name_leaf(draft, job, own, chosen[index], view)
        mark_parts(draft, parts, view, told)
        name_bevels(draft, own, view)
    columns = placing.columns
    listed = draw_index(draft, called, placing.under)
    if listed is not None:
        columns = tuple(_over(column, listed) for column in columns)
    elif placing.under.width >= extent.column and placing.under.height > 20.0:
        columns = (*columns, placing.under)
    note = sheets_in_words(called) if listed is None else ""
    left_over = place_items(draft, leaf_items(job, chosen, note), columns)
    if not called and chosen[0] == 0:
        draw_enlarged(draft, leaf, drawn[0], left, placing.under, "D", job.rules.unit)
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


_OVER_INDEX = 3.0
"""Between the list of details and lists over it, mm."""


def _over(column: Box, listed: Box) -> Box:
    """A column of lists, that ends over the list of details where that stands under it."""
    if listed.x1 < column.x0 or listed.x0 > column.x1:
        return column
    return Box(column.x0, max(column.y0, listed.y1 + _OVER_INDEX), column.x1, column.y1)


def _captions(
    draft: Draft,
    leaves: Sequence[Leaf],
    extent: LeafExtent,
    placing: LeafPlacing,
    scale: str,
) -> None:
    """Names over the views, the twin's with what it differs in."""
    top = placing.left[1] + (extent.height + extent.trim) / placing.scale + 2.8
    middle = placing.section[0] + extent.thickness / placing.scale / 2
    places_of = [placing.left] if placing.right is None else [placing.left, placing.right]
    names: list[tuple[str, float, Anchor]] = [
        (f"Leaf {leaf.letter}, front  {scale}", at[0], "left")
        for leaf, at in zip(leaves, places_of, strict=True)
    ]
    names.append((f"C-C  {scale}", middle, "centre"))
    for index, (text, x, anchor) in enumerate(names):
        rows = (8.6, 13.0, 17.0) if anchor == "centre" else (0.0, 6.4)
        places = [_title(text, (x, top + row), anchor) for row in rows]
        if anchor == "centre":
            # Beside its head, where the sheet ends over it; the title block says its scale.
            half = extent.thickness / placing.scale / 2
            places.append(_title("C-C", (x + half + 2.6, top - 8.0), "left"))
            # Lists that stand beside the section are lettered later: its name keeps off them.
            aside = [_title(text, (x + half, top + row), "right") for row in rows]
            places = [
                place
                for place in (*places, *aside)
                if not any(place.box.meets(column) for column in placing.columns)
            ] or places
        else:
            places.append(_title(text, (x + 30.0, top), anchor))
        found = draft.add_first(places)
        words = "" if index != 1 or len(leaves) < 2 else _differs(*leaves)
        if words:
            box = found.box
            beside = [
                Label(text=words, at=(box.x1 + 3.0, box.y0 + 0.9)),
                Label(text=words, at=(box.x0, found.at[1] + 5.2)),
            ]
            draft.add_first(beside)


def _differs(leaf: Leaf, twin: Leaf) -> str:
    """What sets a twin apart: its pull, or that it is the other hand; "" where more does."""
    if leaf.pulls and stile_widths(leaf) == stile_widths(twin):
        return f"as {leaf.letter} but for the pull"
    return f"as {leaf.letter}, other hand" if other_hand(leaf, twin) else ""


def other_hand(leaf: Leaf, twin: Leaf) -> bool:
    """Whether a leaf is another one's mirror image, so far as its stiles and edges go."""
    roles = (leaf.hung.left_edge, leaf.hung.right_edge)
    turned = (twin.hung.right_edge, twin.hung.left_edge)
    return stile_widths(leaf) == stile_widths(twin)[::-1] and roles == turned


def _title(text: str, at: Point, anchor: Anchor) -> Label:
    return Label(text=text, at=at, height=TITLE, weight="bold", anchor=anchor)
