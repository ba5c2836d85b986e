r"""The sheet of a raised panel: its front with the hips, and both kinds of edge at full size.

FACE  +-----------+        long edges, across the grain     ends, along the grain
| \       / |        dimensioned                       what differs
|  +-----+  |
|  |     |  |        No. Cut ...                       complete, notes
+-----------+
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TITLE
from parametric.drawing.marks import grain, section_end
from parametric.drawing.papers import papers_and_scales
from parametric.drawing.part_sheets.balloons import Call, balloon
from parametric.drawing.part_sheets.breaks import lie_along
from parametric.drawing.part_sheets.cross_sections import Chosen
from parametric.drawing.part_sheets.cut_list import PITCH, completeness, cut_list
from parametric.drawing.part_sheets.long_part import call_section
from parametric.drawing.part_sheets.panel_edges import PAST, Run, draw_edge, profile
from parametric.drawing.part_sheets.running_sizes import place_along, places_along, sizes_by_side
from parametric.drawing.part_sheets.strips import Strip, lay_strip
from parametric.drawing.part_sheets.unfolded import unfolded
from parametric.drawing.part_sheets.words import how_many, notes, scales_said
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column
from parametric.infill.raised_panel import RaisedPanel
from parametric.model import RaisedBevel, Tongue
from parametric.trade.part_cuts import PartCuts

_METRIC = ((5.0, 10.0), (5.0, 10.0, 20.0))
_INCH = ((4.0, 8.0), (4.0, 8.0, 16.0))
_EDGE = 6.0
_BALLOONS = 5.6
_LEFT = 28.0
_RIGHT = 21.0
_BARE = 8.0
"""Beside the edge that is not dimensioned, mm."""
_CALL = 11.0
"""From the panel to the far side of its section marks, mm."""


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
        for leaf in job.resolved.leaves
        for field in leaf.panels
        if field.panel.name == own.part.name and isinstance(field.panel, RaisedPanel)
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
    outline = profile(own.part, float(panel.bevel_run) + PAST)
    shown = float(panel.bevel_run) + PAST
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
    runs: tuple[Run, Run] = ("long-grain edges", "end-grain edges")
    at = right
    lows = []
    for run, letter, wide in zip(runs, letters, widths, strict=False):
        margin = _LEFT if run == "long-grain edges" else _BARE
        lows.append(draw_edge(draft, job, own, panel, outline, run, letter, (at + margin, low)))
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
    return TableItem(
        title="Tongue in its groove, long-grain edges",
        columns=(
            Column(head="When", width=38.0),
            Column(head="Engages", width=20.0, anchor="right"),
        ),
        rows=tuple(
            (when, job.fine(value))
            for when, value in (
                ("driest", panel.engagement_dry),
                ("as made", panel.engagement_made),
                ("dampest", panel.engagement_damp),
                ("the groove is deep", panel.groove_depth),
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
