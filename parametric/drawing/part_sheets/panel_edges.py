"""The edges of a raised panel at full size: bevel, tongue and the groove that it floats in."""

from __future__ import annotations

import itertools
from typing import Literal

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import end_grain, long_grain
from parametric.drawing.lettering import TEXT, TITLE
from parametric.drawing.marks import caption, wave
from parametric.drawing.papers import scale_words
from parametric.drawing.part_sheets.cut_list import printed
from parametric.drawing.pieces import Piece, cut_through
from parametric.drawing.plane import Polygon, left_of
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.infill.raised_panel import RaisedPanel
from parametric.model import Part, Placement, RaisedBevel, Tongue
from parametric.trade.cut_quantities import Quantity
from parametric.trade.part_cuts import CutRow, PartCuts, Size

PAST = 16.0
"""How much of the field an edge's section shows, mm."""
_FRAME = 9.0
"""How much of the frame is shown past its groove, mm."""
_STEP = 8.0

Run = Literal["long-grain edges", "end-grain edges"]


def profile(part: Part, right: float) -> Polygon:
    """The edge of the panel cut across: out from the edge, and up from the back."""
    stands = Placement(x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0))
    cut = cut_through(
        Piece(part=part, group="", stands=stands), "level", float(part.blank.length) / 2
    )
    assert cut is not None
    return left_of(cut.outline, right)


def draw_edge(
    draft: Draft,
    job: Subject,
    own: PartCuts,
    panel: RaisedPanel,
    outline: Polygon,
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
        outline: of the edge, from `profile`.
        run: which edges: the first is dimensioned, the second where it differs.
        letter: of the section.
        at: where the edge of the wood and the top of what is drawn lie on paper.
    """
    thick = float(panel.thickness)
    base = at[1] - 5.0 - (2 * _STEP + 10.0) - thick
    view = draft.view(f"{own.part.mark} {letter}-{letter}", 1.0, (at[0], base))
    region = (view.path(outline),)
    wood = (
        end_grain(region, view.name, "below", 2.4, 60.0)
        if run == "long-grain edges"
        else long_grain(region, view.name, "across", 1.7)
    )
    draft.add(wood)
    right = max(x for x, _ in outline)
    for a, b in zip(outline, (*outline[1:], outline[0]), strict=True):
        if not (abs(a[0] - right) < 1e-6 and abs(b[0] - right) < 1e-6):
            draft.add(Stroke(layer="cut_heavy", points=view.path((a, b)), view=view.name))
    wave(draft, view.at((right, 0.0)), view.at((right, thick)), view.name, amplitude=0.9)
    engages = panel.engagement_made if run == "long-grain edges" else panel.end_engagement
    _groove(draft, view, panel, engages)
    tip = float(panel.back_rebate + panel.tongue_thickness)
    mouth = tip - float(panel.tongue_thickness) / 2 + float(panel.groove_width) / 2 + _FRAME
    chains = [_level(view, engages, (0.0, float(engages)), (tip, mouth), 0, thick, job.rules.fine)]
    if run == "long-grain edges":
        _before_tongue(draft, view, own)
        chains += _sizes(view, own, thick, right, job)
    place_chains(draft, chains)
    if run == "long-grain edges":
        _angle(draft, view, own, job)
    name = "across the grain" if run == "long-grain edges" else "along the grain"
    low = base - 6.0 - TITLE
    caption(
        draft,
        (at[0], low),
        f"{letter}-{letter}  {scale_words(1.0, job.rules.unit)}",
        f"{run}, cut {name}{', other sizes alike' if run == 'end-grain edges' else ''}",
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
