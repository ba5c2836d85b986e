"""The sheet of leaves that turn: how they open, where their hinges are, what is cut for one.

plan of the open leaves            table of hinges
hinge edge, foot at the left       what each carries
one hinge's cut, full size         notes
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from typing import assert_never

from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.details.words import scales_said
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.hardware.one_hinge import draw_one_hinge, hinge_cuts, one_hinge_height
from parametric.drawing.hardware.swing import draw_swing, swing_size
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import caption
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label
from parametric.drawing.shaped import flattened
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.figures import Figure
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.pivot import Pivots
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungHinges
from parametric.trade.printed import weight_cell

_MM: Scales = ((10.0, 20.0), (10.0, 20.0, 50.0))
_INCH: Scales = ((12.0, 16.0, 24.0), (12.0, 16.0, 24.0, 48.0))
_WIDE = 118.0
"""The column of table and notes, mm."""
_EDGE = 7.0
_STRIP = 40.0
"""What a hinge edge takes up, mm on paper."""


def draw_hinges(job: Subject, title: TitleBlock) -> tuple[Sheet, ...]:
    """One sheet where a leaf turns about an upright line, else none."""
    if not job.resolved.door.hanging.swings:
        return ()

    def attempt(size: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _draw(job, size, scale, block)

    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    wide = float(job.resolved.door.opening.widest)
    large = f"an opening {wide:.0f} wide is past the largest sheet"
    return (first_that_fits(options, title, attempt, too_large=large),)


def hung_leaves(job: Subject) -> list[tuple[Leaf, HungHinges]]:
    """Every upright edge that carries hinges, leaf by leaf; flaps have a sheet of their own."""
    return [
        (leaf, hung)
        for leaf in job.resolved.door.leaves
        for hung in leaf.hinges
        if leaf.hung.flap is None
    ]


def _draw(job: Subject, size: Paper, scale: float, title: TitleBlock) -> Sheet | None:
    frame, block = size.frame, title_block_box(size, title)
    wide, tall = swing_size(job, scale)
    edges = _differing(job)
    column = frame.x1 - 5.5 - _WIDE
    left = frame.x0 + _EDGE
    longest = max((float(leaf.height) / scale for leaf, _, _ in edges), default=0.0)
    strips = sum(_strip(leaf, hung, scale) for leaf, hung, _ in edges)
    cut = next(((leaf, hung) for leaf, hung, _ in edges if one_hinge_height(hung)), None)
    one = one_hinge_height(cut[1]) if cut else 0.0
    if left + max(wide, longest + 24.0) > column - 6.0:
        return None
    spare = frame.height - 2 * _EDGE - tall - strips - one
    if spare < 0:
        return None
    air = min(spare / (2 + len(edges)), 12.0)
    draft = Draft(size)
    scales = (scale, 1.0) if cut else (scale,)
    title = dataclasses.replace(title, scale=scales_said(job, scales))
    draw_frame(draft, title)
    y = frame.y1 - _EDGE - tall
    draw_swing(draft, job, (left, y), scale)
    for leaf, hung, same in edges:
        y -= air + _strip(leaf, hung, scale)
        _draw_edge(draft, job, leaf, hung, (left + 8.0, y), scale, same)
    if cut:
        draw_one_hinge(draft, job, *cut, (left + 12.0, y - air - one))
    room = Box(column, block.y1 + 5.0, column + _WIDE, frame.y1 - _EDGE)
    left_over = place_items(draft, _items(job), (room,))
    draft.unplaced += [getattr(item, "title", "") for item in left_over]
    return draft.sheet(title)


def _differing(job: Subject) -> list[tuple[Leaf, HungHinges, str]]:
    """The hinge edges that are not alike, each with the letters of those that are as it is."""
    found: list[tuple[Leaf, HungHinges, list[str]]] = []
    for leaf, hung in hung_leaves(job):
        for other, own, letters in found:
            if _places(hung) == _places(own) and float(leaf.height) == float(other.height):
                letters.append(leaf.letter)
                break
        else:
            found.append((leaf, hung, []))
    return [
        (leaf, hung, f"; leaf {' and '.join(dict.fromkeys(letters))} alike" if letters else "")
        for leaf, hung, letters in found
    ]


def _places(hung: HungHinges) -> tuple[float, ...]:
    return tuple(round(float(place.centre), 3) for place in hung.hinges.places)


# --- the hinge edge ------------------------------------------------------------------------


def _draw_edge(
    draft: Draft,
    job: Subject,
    leaf: Leaf,
    hung: HungHinges,
    at: Point,
    scale: float,
    same: str,
) -> None:
    """A leaf's hinge edge lying, foot at the left: what is cut in it, and running sizes to its ends.

    Of cup hinges it is the back of the stile, which alone they are bored in.
    """
    deep, high, back = _shown(leaf, hung), float(leaf.height), _in_the_back(hung)
    view = draft.view(f"hinge edge of {leaf.name}, {hung.side}", scale, (at[0], at[1] + 13.0))
    outline = Box(0.0, 0.0, high, deep)
    draft.path("edge", view.path(outline.polygon), view.name, closed=True)
    trim = float(leaf.trim)
    # Seen from the back, foot at the left, the right edge of a leaf lies uppermost.
    turned = back and hung.side == "right"
    for cut in hinge_cuts(job, leaf, hung):
        if back or "edge" in cut.face:
            points = [(u - trim, deep - v if turned else v) for u, v in flattened(cut.outline)]
            draft.path("edge_fine", view.path(tuple(points)), view.name, closed=True)
    over = view.y(deep) + 1.0
    rule = job.rules.wood
    zero = Place(at=0.0, figure=Figure(0.0, "foot"), start=over, rule=rule)
    places = [
        Place(at=float(figure), figure=figure, start=over, words=words, rule=rule)
        for place in hung.hinges.places
        for figure, words in _marked(hung, place.low, place.centre, place.high)
    ]
    top = Place(at=high, figure=leaf.height, start=over, words="top", rule=rule)
    place_ordinates(draft, view, "across", [zero, *places, top], over + 5.0)
    face = Label(text="foot", at=(view.x(0.0) - 1.4, view.y(deep / 2) - TEXT / 2), anchor="right")
    draft.add(face)
    words = f"{scale_words(scale, job.rules.unit)}, seen square on{same}"
    named = "back of the hinge stile" if back else "hinge edge"
    caption(draft, (view.x(0.0), at[1] + 5.4), f"Leaf {leaf.letter}, {named}", words)


def _in_the_back(hung: HungHinges) -> bool:
    return isinstance(hung.hinges, CupHinges)


def _shown(leaf: Leaf, hung: HungHinges) -> float:
    """How deep the lying picture is: the edge, or the back of the stile, mm."""
    stile = leaf.left_stile if hung.side == "left" else leaf.right_stile
    return float(stile if _in_the_back(hung) else leaf.thickness)


def _strip(leaf: Leaf, hung: HungHinges, scale: float) -> float:
    """What the lying picture takes up with its words, mm on paper."""
    return _STRIP + (_shown(leaf, hung) - float(leaf.thickness)) / scale


def _marked(
    hung: HungHinges, low: Figure, centre: Figure, high: Figure
) -> list[tuple[Figure, str]]:
    """What the bench marks of a hinge: both ends of a flap, else its middle."""
    if isinstance(hung.hinges, ButtHinges):
        return [(low, ""), (high, "")]
    return [(centre, "")]


# --- table and notes -----------------------------------------------------------------------


def _items(job: Subject) -> list[Item]:
    return [
        *_tables(job),
        *_loads(job),
        Sentences(title="Notes", kind="numbered", texts=_notes(job)),
    ]


def _tables(job: Subject) -> list[Item]:
    """Every hinge of the edges that differ: its middle, its ends, where it goes in the jamb."""
    height = table_height(job.rules.unit)
    wood = job.wood
    found: list[Item] = []
    for leaf, hung, same in _differing(job):
        rows = []
        for index, place in enumerate(hung.hinges.places):
            jamb = ("", "")
            to_jamb = leaf.hung.edge(hung.side) == "hinge"
            if to_jamb and isinstance(hung.hinges, ButtHinges):
                own = hung.hinges.jamb[index]
                jamb = (f"{wood(own.low)} – {wood(own.high)}", "")
                if own.below_head is not None:
                    jamb = (jamb[0], wood(own.below_head))
            name = place.name.rpartition(" / ")[2].removesuffix(" hinge")
            rows.append(
                (name, wood(place.centre), f"{wood(place.low)} – {wood(place.high)}", *jamb)
            )
        columns = (
            Column(head="Hinge", width=18.0),
            Column(head="Middle", width=18.0, anchor="right"),
            Column(head="From – to", width=30.0, anchor="right"),
            Column(head="Jamb, over the floor", width=32.0, anchor="right"),
            Column(head="Under the head", width=20.0, anchor="right"),
        )
        kept = [i for i in range(5) if i < 3 or any(row[i] for row in rows)]
        own_rows = tuple(tuple(row[i] for i in kept) for row in rows)
        found.append(
            TableItem(
                title=f"Hinges of leaf {leaf.letter}, from the finished foot{same}",
                columns=fitted([columns[i] for i in kept], own_rows, height),
                rows=own_rows,
                height=height,
            )
        )
    return found


def _loads(job: Subject) -> list[Item]:
    """What the hinges carry, leaf by leaf."""
    unit = job.rules.unit
    rows = []
    for leaf, hung in hung_leaves(job):
        load = hung.hinges.load
        rated = "not known" if load.rating is None else weight_cell(load.rating, unit)
        cells = (weight_cell(v, unit) for v in (load.weight, load.share, load.pull))
        rows.append((leaf.letter, f"{int(hung.hinges.count)}", *cells, rated))
    columns = (
        Column(head="Leaf", width=11.0, anchor="centre"),
        Column(head="No.", width=9.0, anchor="right"),
        Column(head="Leaf weighs", width=24.0, anchor="right"),
        Column(head="Each carries", width=24.0, anchor="right"),
        Column(head="Pull, top", width=24.0, anchor="right"),
        Column(head="Rated, each", width=26.0, anchor="right"),
    )
    if not rows:
        return []
    height = table_height(unit)
    return [
        TableItem(
            title=f"Loads, {'kg' if unit == 'mm' else 'lb (kg)'}",
            columns=fitted(columns, rows, height),
            rows=tuple(rows),
            height=height,
        )
    ]


def _notes(job: Subject) -> tuple[str, ...]:
    """What the pictures cannot say."""
    door, hanging = job.resolved.door, job.resolved.door.hanging
    hung = hung_leaves(job)
    notes = []
    if hung:
        notes += _of_kind(job, hung)
    if hanging.travel_gap is not None:
        notes.append(
            f"Floor: {job.wood(hanging.floor_gap)} under the shut leaves where it is highest there; "
            f"{job.wood(hanging.travel_gap, down=True)} where it is highest in the swing."
        )
    elif hanging.case is None:
        notes.append("The floor in the swing was not measured: measure it before the leaf is hung.")
    if not all(isinstance(one.hinges, CupHinges) for _, one in hung):
        notes.append(
            "Pins of one leaf stand on one upright line: a leaf whose pins do not binds or falls shut."
        )
    if door.opening.fixing in ("not known", "board only"):
        what = "jambs are" if hanging.case is None else "case is"
        notes.append(f"What the {what} made of is not known: open up before screws are ordered.")
    return tuple(notes)


def _of_kind(job: Subject, hung: Sequence[tuple[Leaf, HungHinges]]) -> list[str]:
    """How one hinge is let in, by its kind."""
    hinges = hung[0][1].hinges
    match hinges:
        case ButtHinges():
            mortise = hinges.mortise
            corners = (
                "corners chopped square"
                if mortise.squared
                else f"corners of radius {job.fine(mortise.corner)}"
            )
            notes = [
                f"Mortises {job.fine(mortise.length)} × {job.fine(mortise.width)}, "
                f"{job.fine(mortise.depth)} deep, {corners}; open at the face with the knuckle. "
                "Cut in the glued and trimmed leaf.",
                "Try one hinge of the lot first: sizes here are its data sheet's or callipers'.",
            ]
            if hinges.screw is not None:
                far = hinges.screw.from_far_face
                kept = (
                    "" if far is None else f"; the far row leaves {job.fine(far)} to the far face"
                )
                notes.append(
                    f"Screws {job.fine(hinges.screw.thick)} × {job.fine(hinges.screw.long)}{kept}. "
                    f"Pilots in the leaf Ø{job.fine(hinges.screw.pilot)}, as deep as the screw."
                )
            else:
                notes.append(
                    "Pilots for the screws that come with them: "
                    f"{float(hinges.pilot_share):.2g} of a screw's thickness in the leaf."
                )
            return notes
        case CupHinges():
            return [
                f"Cups Ø{job.fine(hinges.cup)}, {job.fine(hinges.depth)} deep, their middle "
                f"{job.fine(hinges.boring)} from the leaf's edge, in the back; "
                f"{job.fine(hinges.behind)} of wood is left behind them."
            ]
        case Pivots():
            return ["Pivots by their data sheet; bores on the ends of the hinge stile's own sheet."]
        case _:
            assert_never(hinges)
