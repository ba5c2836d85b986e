r"""The sheet of a raised panel: its front with the hips, and both kinds of edge at full size.

FACE  +-----------+        long edges, across the grain     ends, along the grain
| \       / |        dimensioned                       what differs
|  +-----+  |
|  |     |  |        No. Cut ...                       complete, notes
+-----------+
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Sequence
from typing import Literal

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.hatching import end_grain, long_grain
from parametric.drawing.lettering import TEXT, TITLE
from parametric.drawing.marks import caption, grain, section_end, wave
from parametric.drawing.papers import papers_and_scales, scale_words
from parametric.drawing.part_sheets.balloons import Call, balloon
from parametric.drawing.part_sheets.breaks import lie_along
from parametric.drawing.part_sheets.cross_sections import Chosen
from parametric.drawing.part_sheets.cut_list import PITCH, completeness, cut_list, printed
from parametric.drawing.part_sheets.long_part import call_section
from parametric.drawing.part_sheets.running_sizes import place_along, places_along, sizes_by_side
from parametric.drawing.part_sheets.strips import Strip, lay_strip
from parametric.drawing.part_sheets.unfolded import unfolded
from parametric.drawing.part_sheets.words import how_many, notes, scales_said
from parametric.drawing.pieces import Piece, cut_through
from parametric.drawing.plane import Box, Polygon, left_of
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column
from parametric.figures import Figure
from parametric.infill.raised_panel import RaisedPanel
from parametric.model import Part, Placement, RaisedBevel, Tongue
from parametric.trade.part_cuts import CutRow, PartCuts, Quantity, Size

_METRIC = ((5.0, 10.0), (5.0, 10.0, 20.0))
_INCH = ((4.0, 8.0), (4.0, 8.0, 16.0))
_EDGE = 6.0
_BALLOONS = 5.6
_PAST = 16.0
"""How much of the field an edge's section shows, mm."""
_FRAME = 9.0
"""How much of the frame is shown past its groove, mm."""
_LEFT = 28.0
_RIGHT = 21.0
_BARE = 8.0
"""Beside the edge that is not dimensioned, mm."""
_CALL = 11.0
"""From the panel to the far side of its section marks, mm."""
_STEP = 8.0

Run = Literal["long edges", "ends"]


def draw_panel(job: Subject, own: PartCuts, letters: Sequence[str], title: TitleBlock) -> Sheet:
    """A raised panel on the first paper and scale that hold it.

    Args:
        job: the job.
        own: the panel's cuts.
        letters: of its two sections.
        title: the title block of the group.
    """
    mark = own.part.mark
    title = dataclasses.replace(
        title,
        document=f"Part {mark}",
        second_line=f"Raised panel {mark}, {len(own.names)} off",
    )

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _draw(job, own, letters, paper, scale, block)

    return first_that_fits(
        papers_and_scales(job, mm=_METRIC, inch=_INCH),
        title,
        attempt,
        too_large=f"{mark} is past the largest sheet",
    )


def resolved_panel(job: Subject, own: PartCuts) -> RaisedPanel:
    """The panel's own numbers: the first of those that carry its mark."""
    return next(
        field.panel
        for leaf in job.resolved.door.leaves
        for field in leaf.panels
        if field.panel.name == own.part.name
    )


def _draw(
    job: Subject,
    own: PartCuts,
    letters: Sequence[str],
    paper: Paper,
    scale: float,
    title: TitleBlock,
) -> Sheet | None:
    frame, part = paper.frame, unfolded(own.part)
    panel = resolved_panel(job, own)
    profile = _profile(own.part, float(panel.bevel_run) + _PAST)
    shown = float(panel.bevel_run) + _PAST
    widths = (_LEFT + shown + _RIGHT, max(_BARE + shown + 4.0, 90.0))
    down = frame.y1 - 4.0 - 9.5
    base = down - part.width / scale
    left = frame.x0 + _EDGE + _CALL
    right = frame.x1 - _EDGE - sum(widths)
    lie = lie_along(
        (0.0, part.length), [], [], scale=scale, left=left, room=right - left - _CALL - 12.0
    )
    if lie is None or lie.breaks or base < frame.y0 + 20.0:
        return None
    said = scales_said(job, (scale, 1.0))
    draft = Draft(paper)
    title = dataclasses.replace(title, scale=said)
    draw_frame(draft, title)
    strip = lay_strip(draft, part, "face", lie, base)
    sizes = sizes_by_side(own, part, ["face"]).get("face", [])
    place_along(draft, strip, places_along(strip, sizes, job.rules), 4.4)
    line = lie.right + _CALL + 5.0
    rule = job.rules.wood
    up = Chain(
        view=strip.views[0],
        axis="up",
        line=line,
        stops=(Stop(at=0.0, foot=lie.right), Stop(at=part.width, foot=lie.right)),
        links=(Link(figure=own.width, rule=rule),),
    )
    place_chains(draft, [up])
    ballooned = _balloons(draft, own, strip, part.width)
    middle = strip.at((part.length / 2, part.width / 2))
    view = strip.views[0].name
    places = (middle, (lie.left + 8.0, base - 18.0))
    draft.add_first(
        [
            Label(
                text="FACE",
                at=(x, y + 4.0),
                height=TITLE,
                anchor="centre",
                weight="bold",
                view=view,
            )
            for x, y in places
        ]
    )
    draft.add_first_clear(
        [grain((x, y - 4.0), "across", view, far) for far in (14.0, 8.0) for x, y in places],
        "grain",
    )
    low = frame.y1 - 4.0
    runs: tuple[Run, Run] = ("long edges", "ends")
    at = right
    lows = []
    for run, letter, wide in zip(runs, letters, widths, strict=False):
        margin = _LEFT if run == "long edges" else _BARE
        lows.append(_edge(draft, job, own, panel, profile, run, letter, (at + margin, low)))
        at += wide
    _call(draft, strip, part.length, part.width, letters)
    words_top = min(lows) - 4.0
    listed = cut_list(job, own, (right, words_top - 5.0), f"Every cut in {own.part.mark}")
    if listed.box.x1 > frame.x1 - 2.0:
        listed = dataclasses.replace(listed, at=(frame.x1 - _EDGE - listed.width, listed.at[1]))
    draft.add(listed)
    rows, wrong = completeness(own, listed, ballooned, (1, 1), (0, 0))
    items: list[Item] = [
        TableItem(
            title="Complete when",
            columns=(
                Column(head="Checked", width=50.0),
                Column(head="here", width=12.0, anchor="right"),
                Column(head="needed", width=16.0, anchor="right"),
            ),
            rows=rows,
            wrong=wrong,
            pitch=PITCH,
        ),
        _engagement(job, panel),
        Sentences(
            title="Notes",
            kind="numbered",
            texts=(f"{how_many(own)}.", *notes(job, own, part, ()), *_said(job, panel)),
        ),
    ]
    block = title_block_box(paper, title)
    top = listed.box.y0 - 5.0
    start = min(listed.at[0], right)
    columns = [
        Box(start, frame.y0 + 4.0, block.x0 - 6.0, top),
        Box(block.x0, block.y1 + 4.0, frame.x1 - _EDGE, top),
    ]
    left_over = place_items(draft, items, [box for box in columns if box.width > 70.0])
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


def _balloons(draft: Draft, own: PartCuts, strip: Strip, width: float) -> list[int]:
    """Balloons beside the left edge, each level with the place on its cut that it points at."""
    found = []
    for row, share in zip(own.rows, (0.58, 0.74), strict=False):
        cut = row.cut
        assert isinstance(cut, (RaisedBevel, Tongue))
        inset = float(cut.run) * 0.6 if isinstance(cut, RaisedBevel) else float(cut.length) / 2
        target = strip.at((inset, width * share))
        call = Call(number=row.number, target=target, view=strip.views[0].name)
        balloon(draft, call, (strip.lie.left - _BALLOONS, target[1]))
        found.append(row.number)
    return found


def _call(draft: Draft, strip: Strip, length: float, width: float, letters: Sequence[str]) -> None:
    """Both section lines, each across the edges that it shows."""
    chosen = Chosen(
        letter=letters[0], runs=((length * 0.2, length * 0.4), (0.0, length)), cuts=(), shows=()
    )
    call_section(draft, chosen, strip)
    y = strip.base + width * 0.3 / strip.lie.scale
    for x, way in ((strip.lie.left - 6.4, "left"), (strip.lie.right + 6.4, "right")):
        section_end(draft, (x, y), outwards=way, looks="up", letter=letters[1])  # type: ignore[arg-type]


def _engagement(job: Subject, panel: RaisedPanel) -> TableItem:
    said = job.fine
    return TableItem(
        title="Tongue in its groove, long edges",
        columns=(
            Column(head="When", width=30.0),
            Column(head="Engages", width=20.0, anchor="right"),
            Column(head="Free behind", width=26.0, anchor="right"),
        ),
        rows=tuple(
            (when, said(value), said(panel.groove_depth - value))
            for when, value in (
                ("driest", panel.engagement_dry),
                ("as made", panel.engagement_made),
                ("dampest", panel.engagement_damp),
            )
        ),
        pitch=PITCH,
    )


def _said(job: Subject, panel: RaisedPanel) -> tuple[str, ...]:
    grain = "upright" if panel.grain == "upright" else "level"
    return (
        f"In the leaf the grain stands {grain}; the field stands "
        f"{job.fine(panel.field_below_face)} below the frame's face.",
        f"The bevel is cut from the outline as it is: hips run at 45° from the corners. Fillet "
        f"{job.fine(panel.fillet)}.",
        "Cut end-grain edges first, then long-grain edges. No glue in the groove.",
    )


def _profile(part: Part, right: float) -> Polygon:
    """The edge of the panel cut across: out from the edge, and up from the back."""
    stands = Placement(x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0))
    cut = cut_through(
        Piece(part=part, group="", stands=stands), "level", float(part.blank.length) / 2
    )
    assert cut is not None
    return left_of(cut.outline, right)


def _edge(
    draft: Draft,
    job: Subject,
    own: PartCuts,
    panel: RaisedPanel,
    profile: Polygon,
    run: Run,
    letter: str,
    at: tuple[float, float],
) -> float:
    """One edge at full size with the groove round its tongue; returns how far down it reaches.

    Args:
        draft: the sheet.
        job: the job.
        own: the panel's cuts.
        panel: its numbers.
        profile: the outline of the edge.
        run: which edges: the first is dimensioned, the second where it differs.
        letter: of the section.
        at: where the edge of the wood and the top of what is drawn lie on paper.
    """
    thick = float(panel.thickness)
    base = at[1] - 5.0 - (2 * _STEP + 10.0) - thick
    view = draft.view(f"{own.part.mark} {letter}-{letter}", 1.0, (at[0], base))
    region = (view.path(profile),)
    wood = (
        end_grain(region, view.name, "below", 2.4, 60.0)
        if run == "long edges"
        else long_grain(region, view.name, "across", 1.7)
    )
    draft.add(wood)
    right = max(x for x, _ in profile)
    for a, b in zip(profile, (*profile[1:], profile[0]), strict=True):
        if not (abs(a[0] - right) < 1e-6 and abs(b[0] - right) < 1e-6):
            draft.add(Stroke(layer="cut_heavy", points=view.path((a, b)), view=view.name))
    wave(draft, view.at((right, 0.0)), view.at((right, thick)), view.name, amplitude=0.9)
    engages = panel.engagement_made if run == "long edges" else panel.end_engagement
    _groove(draft, view, panel, engages)
    tip = float(panel.back_rebate + panel.tongue_thickness)
    mouth = tip - float(panel.tongue_thickness) / 2 + float(panel.groove_width) / 2 + _FRAME
    chains = [_level(view, engages, (0.0, float(engages)), (tip, mouth), 0, thick, job.rules.fine)]
    if run == "long edges":
        _before_tongue(draft, view, own)
        chains += _sizes(view, own, thick, right, job)
    place_chains(draft, chains)
    if run == "long edges":
        _angle(draft, view, own, job)
    name = "across the grain" if run == "long edges" else "along the grain"
    low = base - 6.0 - TITLE
    caption(
        draft,
        (at[0], low),
        f"{letter}-{letter}  {scale_words(1.0, job.rules.unit)}",
        f"{run}, cut {name}{', other sizes alike' if run == 'ends' else ''}",
    )
    return low - 5.0


def _groove(draft: Draft, view: View, panel: RaisedPanel, engages: float) -> None:
    """The frame's groove round the tongue: what stays empty behind it is seen white."""
    middle = float(panel.back_rebate) + float(panel.tongue_thickness) / 2
    half, mouth = float(panel.groove_width) / 2, float(engages)
    bottom = mouth - float(panel.groove_depth)
    low, high = middle - half, middle + half
    lines = (
        ((mouth, high + _FRAME), (mouth, high), (bottom, high), (bottom, low), (mouth, low)),
        ((mouth, low), (mouth, low - 4.0)),
    )
    for points in lines:
        draft.add(Stroke(layer="adjacent", points=view.path(points), view=view.name))


def _before_tongue(draft: Draft, view: View, own: PartCuts) -> None:
    """What the tongue's cuts take of the bevelled edge."""
    tongue = next(cut for cut in own.part.cuts if isinstance(cut, Tongue))
    reach, edge = float(tongue.length), float(tongue.edge)
    shoulder = edge + float(tongue.slope) * reach
    top, under = float(tongue.back + tongue.thickness), float(tongue.back)
    for points in (
        ((0.0, top), (0.0, edge), (reach, shoulder)),
        ((0.0, under), (0.0, 0.0), (reach, 0.0)),
    ):
        draft.add(Stroke(layer="edge_fine", points=view.path(points), view=view.name))


def _row(own: PartCuts, kind: type) -> CutRow:
    return next(row for row in own.rows if isinstance(row.cut, kind))


def _figure(row: CutRow, quantity: Quantity) -> Figure:
    figure = row.size(quantity)
    assert figure is not None, quantity
    return figure


def _sizes(view: View, own: PartCuts, thick: float, right: float, job: Subject) -> list[Chain]:
    """Every number of bevel and tongue once, and the panel's thickness."""
    bevel, tongue = _row(own, RaisedBevel), _row(own, Tongue)
    run, long = _figure(bevel, "run in"), _figure(tongue, "long")
    back, thin = _figure(tongue, "off the back"), _figure(tongue, "thick")
    edge, foot = _figure(bevel, "at the edge"), _figure(bevel, "at the fillet")
    rule = job.rules.fine
    left, far = view.x(0.0), view.x(right)
    start = float(back)
    bands = Chain(
        view=view,
        axis="up",
        line=left - 15.0,
        stops=(
            Stop(at=0.0, foot=left),
            Stop(at=start, foot=left),
            Stop(at=start + float(thin), foot=left),
        ),
        links=(Link(figure=back, rule=rule), Link(figure=thin, rule=rule)),
    )
    shoulder = float(edge) + (float(foot) - float(edge)) * float(long) / float(run)
    tip = start + float(thin)
    return [
        _level(view, long, (0.0, float(long)), (tip, shoulder), 1, thick, rule),
        _level(view, run, (0.0, float(run)), (tip, thick), 2, thick, rule),
        bands,
        _upright(view, edge, left - 15.0 - _STEP, left, rule),
        _upright(view, foot, far + 7.0, view.x(float(run)), rule),
        _upright(view, own.thickness, far + 7.0 + _STEP, far, rule),
    ]


def _level(
    view: View,
    figure: Figure,
    ends: tuple[float, float],
    feet: tuple[float, float],
    level: int,
    thick: float,
    rule: Rule,
) -> Chain:
    return Chain(
        view=view,
        axis="across",
        line=view.y(thick) + 9.0 + _STEP * level,
        stops=tuple(Stop(at=at, foot=view.y(foot)) for at, foot in zip(ends, feet, strict=True)),
        links=(Link(figure=figure, rule=rule),),
    )


def _upright(view: View, figure: Figure, line: float, foot: float, rule: Rule) -> Chain:
    return Chain(
        view=view,
        axis="up",
        line=line,
        stops=(
            Stop(at=0.0, foot=view.x(0.0) if line < foot else line),
            Stop(at=float(figure), foot=foot),
        ),
        links=(Link(figure=figure, rule=rule),),
    )


def _angle(draft: Draft, view: View, own: PartCuts, job: Subject) -> None:
    """The bevel's angle, led to the bevel."""
    bevel = _row(own, RaisedBevel)
    size = next(d for d in bevel.degrees if isinstance(d, Size) and d.quantity == "angle")
    run, edge = float(_figure(bevel, "run in")), float(_figure(bevel, "at the edge"))
    foot = float(_figure(bevel, "at the fillet"))
    text = printed(job, size)
    options = []
    for share, away, lift in itertools.product(
        (0.55, 0.4, 0.7, 0.85), (-6.0, 6.0), (4.2, 7.0, 2.4, 10.0)
    ):
        target = view.at((run * share, edge + (foot - edge) * share))
        knee = (target[0] + away, view.y(float(own.thickness)) + lift)
        side = 1.0 if away > 0 else -1.0
        label = Label(
            text=text,
            at=(knee[0] + side * 1.5, knee[1] - TEXT / 2),
            anchor="left" if away > 0 else "right",
            view=view.name,
        )
        options.append((target, knee, (knee[0] + side * 0.8, knee[1]), label))
    free = next((o for o in options if draft.free(o[3].box)), None)
    if free is None:
        draft.unplaced.append(text)
    target, knee, landing, label = free or options[0]
    draft.add(Leader(points=(target, knee, landing), end="arrow", labels=(label,), view=view.name))
