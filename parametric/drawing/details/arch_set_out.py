"""The curve over the leaves as it is struck: span, rise, radius and centre, and offsets along it.

      ____--------____
 _--                  --_     rise
+--|--|--|--|--|--|--|---+    springing, a height every 100
           :
           + centre, below the springing
"""

from __future__ import annotations

from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_head import arched_rail
from parametric.drawing.plane import Box
from parametric.drawing.shaped import flattened
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, Table, fitted, table_height
from parametric.figures import Figure, named
from parametric.outlines import Vertex
from parametric.resolve.head import LeafHead
from parametric.resolve.leaf import Leaf
from parametric.shapes.curve import Bow, HeadCurve, height_at, part_of

_STEP_MM, _STEP_INCH = 100.0, 101.6
"""From one height to the next along the springing line, mm: 4 in where the job is in inches."""
_FLAT = 1e-6
_COLUMNS = 8
"""Heights side by side in one line of the table."""


def arch_set_out(job: Subject) -> Detail | None:
    """The curve of the first arched rail, over all the leaves that share it; None without one."""
    door = job.resolved.door
    first = next((leaf for leaf in door.leaves if arched_rail(leaf) is not None), None)
    if first is None:
        return None
    found = arched_rail(first)
    assert found is not None
    rail, head = found
    shared = _shared(job, first, head)
    # Everything from the curve's own left springing point.
    curve = head.curve
    span = float(curve.span)
    over = float(rail.top - head.springing)
    draft = board()
    scale = _scale(job, span, over)
    view = draft.view("arch", scale, ORIGIN)
    outline = tuple((x, y) for x, y in _points(curve))
    draft.path("cut_heavy", view.path(outline), view.name)
    draft.line(
        "centre", (view.x(0.0) - 3.0, view.y(0.0)), (view.x(span) + 3.0, view.y(0.0)), view.name
    )
    _rails(draft, view, first, head, shared)
    _chains(draft, view, job, curve)
    _table(draft, view, job, curve)
    box = leaf_boxes(door)[door.leaves.index(first)]
    x = box.x0 + float(first.width) / 2 - float(first.hung.left)
    call = head.springing + height_at(curve, x - head.left, "call")
    struck = _struck(job, curve)
    over_words = "both leaves" if len(shared) == 2 else f"leaf {first.letter}"
    return finished(
        draft,
        "arch",
        f"Curve over {over_words}",
        f"{at_scale(job, scale)}, from the face. {struck} Heights over the springing line, along "
        "it from the left springing point.",
        Call(
            on="leaf",
            by="ring",
            box=Box(x - 20.0, float(call) - 20.0, x + 20.0, float(call) + 20.0),
        ),
    )


def _shared(job: Subject, first: Leaf, head: LeafHead) -> list[Leaf]:
    """The leaves whose rails are cut to this one curve."""
    start = float(first.hung.left + head.left)
    shared = []
    for leaf in job.resolved.door.leaves:
        own = arched_rail(leaf)
        if own is not None and abs(float(leaf.hung.left + own[1].left) - start) < 1e-3:
            shared.append(leaf)
    return shared


def _scale(job: Subject, span: float, over: float) -> float:
    """As drawings are scaled in the job's unit, so large that it takes no more than 150 across."""
    scales = (5.0, 10.0, 20.0) if job.rules.unit == "mm" else (4.0, 8.0, 12.0, 16.0)
    return next((s for s in scales if span / s <= 150.0), max(scales[-1], detail_scale(span, over)))


def _points(curve: HeadCurve) -> tuple[tuple[float, float], ...]:
    """The open curve as points fine enough for paper, its crown among them."""
    crown, span = float(curve.crown_at), float(curve.span)
    found: list[tuple[float, float]] = []
    for x0, x1 in ((0.0, crown), (crown, span)):
        if x1 - x0 < 1e-6:
            continue
        half: tuple[Vertex, ...] = part_of(curve, x0, x1)
        closed = flattened((*half, Vertex(half[-1].x, -1.0), Vertex(half[0].x, -1.0)))
        found += [(x, y) for x, y in closed if y > -0.5]
    return tuple(dict.fromkeys(found))


def _rails(
    draft: Draft,
    view: View,
    first: Leaf,
    head: LeafHead,
    shared: list[Leaf],
) -> None:
    """The leaves' edges and their tops, where the rails and stiles are."""
    zero = float(first.hung.left + head.left)
    springing = float(first.hung.foot + head.springing)
    for leaf in shared:
        left = float(leaf.hung.left) - zero
        top = float(leaf.hung.foot + leaf.height) - springing
        low = -6.0 * view.scale
        for x in (left, left + float(leaf.width)):
            draft.line("adjacent", view.at((x, low)), view.at((x, top)), view.name)
        draft.line(
            "adjacent", view.at((left, top)), view.at((left + float(leaf.width), top)), view.name
        )
        for x in (left + float(leaf.left_stile), left + float(leaf.width - leaf.right_stile)):
            draft.line("edge_fine", view.at((x, low)), view.at((x, top)), view.name)


def _chains(draft: Draft, view: View, job: Subject, curve: HeadCurve) -> None:
    """Span under the springing line, rise beside the curve."""
    wood = job.rules.wood
    span = float(curve.span)
    under = view.y(0.0) - 7.0
    crown = view.x(float(curve.crown_at))
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                under - FIRST + 2.0,
                ((0.0, under), (span, under)),
                (reference(curve.span, wood),),
            ),
            chain(
                view,
                "up",
                view.x(span) + FIRST + 8.0,
                ((0.0, view.x(span) + 3.0), (float(curve.rise), crown)),
                (reference(curve.rise, wood),),
            ),
        ],
    )


def _struck(job: Subject, curve: HeadCurve) -> str:
    """Where the trammel stands."""
    said = []
    for piece in curve.pieces:
        if not isinstance(piece, Bow):
            continue
        level = (
            "on the springing line"
            if abs(float(piece.below)) < _FLAT
            else f"{job.wood(abs(piece.below))} {'below' if float(piece.below) > 0 else 'above'} it"
        )
        said.append(f"r {job.wood(piece.radius)} about {job.wood(piece.x)} along, {level}")
    if not said:
        return "Straight."
    return f"Struck {'; '.join(said)}."


def _table(draft: Draft, view: View, job: Subject, curve: HeadCurve) -> None:
    """Heights every so far, from the left springing point to the crown; on to the end where the
    curve is not the same both ways.
    """
    step = _STEP_MM if job.rules.unit == "mm" else _STEP_INCH
    middle = float(curve.span) / 2
    same = abs(float(curve.crown_at) - middle) < _FLAT and _mirrors(curve)
    end = middle if same else float(curve.span)
    places = [i * step for i in range(int(end / step + 1e-9) + 1)]
    if end - places[-1] > 1.0:
        places.append(end)
    cells = [
        (job.wood(x), job.wood(named(f"arch / height {i}", height_at(curve, Figure(x), "y"))))
        for i, x in enumerate(places)
    ]
    rows: list[tuple[str, ...]] = []
    for start in range(0, len(cells), _COLUMNS):
        part = cells[start : start + _COLUMNS]
        part += [("", "")] * (_COLUMNS - len(part))
        rows += [("along", *(a for a, _ in part)), ("up", *(b for _, b in part))]
    height = table_height(job.rules.unit)
    columns = (
        Column(head="Offsets", width=14.0),
        *(Column(head="", width=12.5, anchor="right") for _ in range(_COLUMNS)),
    )
    at = (view.x(0.0), view.y(0.0) - 7.0 - FIRST - 10.0)
    title = "from either springing point" if same else "from the left springing point"
    table = Table(
        at=at, columns=fitted(columns, rows, height), rows=tuple(rows), title=title, height=height
    )
    draft.add(table)


def _mirrors(curve: HeadCurve) -> bool:
    """Whether it is the same from both ends."""
    span = float(curve.span)
    return all(
        abs(
            float(height_at(curve, Figure(span * share), "a"))
            - float(height_at(curve, Figure(span * (1 - share)), "b"))
        )
        < 1e-6
        for share in (0.1, 0.25, 0.4)
    )
