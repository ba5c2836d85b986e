"""A recessed pull: its pockets from the face, broken to half their height, and cut through at 1:1."""

from __future__ import annotations

import math
from dataclasses import dataclass

from parametric.drawing.chains import FIRST, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, radius, reference, through
from parametric.drawing.draft import Draft
from parametric.drawing.layers import Layer
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.marks import wave
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import leaf_pieces, rounded
from parametric.drawing.plane import Box, Point, Polygon, arc_points, cut_path
from parametric.drawing.primitives import reach
from parametric.drawing.sheet import View, primitives
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.hardware.pull import Pull
from parametric.model import relief_inset
from parametric.resolve.leaf import Leaf

_PAST = 13.0
"""How much stile is shown past the pocket, mm."""
_BETWEEN = 12.0
"""From the elevation to the section beside it, mm on paper."""
_FRONT, _SECTION = 2.0, 1.0
_BREAK = 4.0
"""Between the two waves of a break, mm on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Break:
    """A run left out of the elevation, mm over the pull's middle: from `high` down to `low`."""

    high: float
    low: float

    @property
    def left_out(self) -> float:
        """What the drawing is shorter by."""
        return self.high - self.low - _BREAK * _FRONT

    def drawn(self, up: float) -> float:
        """Where a height is drawn."""
        return up if up >= self.high else up + self.left_out


def pull_pockets(job: Subject) -> Detail | None:
    """The first leaf's pull; None where it has none."""
    leaf, group = leaf_groups(job)[0]
    if not leaf.pulls:
        return None
    hung = leaf.pulls[0]
    pull = hung.pull
    across, half = float(hung.across), float(pull.flange_pocket_width) / 2
    stile = (0.0, float(leaf.left_stile))
    if hung.side == "right":
        stile = (float(leaf.width - leaf.right_stile), float(leaf.width))
    gap = _gap(pull)
    draft = board()
    front = draft.view("pull, from the face", _FRONT, ORIGIN)
    _front(draft, front, pull, across, stile, gap)
    _front_chains(draft, front, job, pull, across, stile, gap)
    _front_words(draft, front, job, pull, across, gap)
    right = max(reach(part).x1 for e in draft.elements for part in primitives(e))
    window = Box(
        max(stile[0] - 5.0, across - half - _PAST),
        -50.0,
        min(stile[1] + 5.0, across + half + _PAST),
        float(leaf.thickness) + 50.0,
    )
    section = draft.view(
        "pull, section",
        _SECTION,
        (right + _BETWEEN - window.x0, front.y(0.0) - float(leaf.thickness) / 2),
    )
    made = [part for part in group.parts if not part.supplied]
    cuts = cut_in_window(leaf_pieces(made, group.name), "level", float(pull.up), window)
    draw_cut(draft, section, cuts, window, Looks())
    _section_chains(draft, section, job, leaf, pull, across, window)
    return finished(
        draft,
        "pull pockets",
        "Pockets for the pull",
        f"{at_scale(job, _FRONT)} from the face, broken; {scale_words(_SECTION, job.rules.unit)} cut "
        f"level, face below. {_left(job, pull)} The pull by the supplier.",
        Call(
            on="leaf",
            by="ring",
            box=Box(
                across - half,
                float(pull.up) - float(pull.flange_length) / 2,
                across + half,
                float(pull.up) + float(pull.flange_length) / 2,
            ),
        ),
    )


def _left(job: Subject, pull: Pull) -> str:
    web = job.fine(pull.web)
    if len(pull.faces) == 2:
        return f"In both faces: {web} of wood is left between."
    return f"In the {'face' if pull.faces[0] == 'front' else 'back'} only: {web} of wood is left."


def _gap(pull: Pull) -> _Break | None:
    """The straight run under the middle, down to a little over the corners; None for a short pull."""
    low = -float(pull.body_pocket_length) / 2 + float(pull.flange_pocket_corner) + 12.0
    high = -10.0
    return _Break(high=high, low=low) if high - low > 24.0 else None


def _at(gap: _Break | None, up: float) -> float:
    return up if gap is None else gap.drawn(up)


def _front(
    draft: Draft,
    view: View,
    pull: Pull,
    across: float,
    stile: tuple[float, float],
    gap: _Break | None,
) -> None:
    """Stile and pockets from the face; heights are over the pull's middle."""
    half = float(pull.flange_pocket_length) / 2 + _PAST
    outlines: list[tuple[Layer, Polygon]] = [
        ("edge", ((stile[0], -half), (stile[0], half))),
        ("edge", ((stile[1], -half), (stile[1], half))),
    ]
    for long, wide, corner, relief in (
        (pull.flange_pocket_length, pull.flange_pocket_width, pull.flange_pocket_corner, 0.0),
        (
            pull.body_pocket_length,
            pull.body_pocket_width,
            pull.body_pocket_corner,
            float(pull.relief),
        ),
    ):
        a, b = float(wide) / 2, float(long) / 2
        ring = rounded(across - a, -b, across + a, b, float(corner))
        if relief > float(corner):
            ring = _relieved(across, a, b, float(corner), relief)
        outlines.append(("edge", (*ring, ring[0])))
    wide_open = Box(stile[0] - 99.0, -half - 1.0, stile[1] + 99.0, half + 1.0)
    parts = [wide_open]
    if gap is not None:
        parts = [wide_open._replace(y0=gap.high), wide_open._replace(y1=gap.low)]
    for layer, points in outlines:
        for part in parts:
            for path in cut_path(points, (part.polygon,)):
                drawn = tuple((x, _at(gap, y)) for x, y in path)
                draft.path(layer, view.path(drawn), view.name)
    breaks = [half, -half] if gap is None else [half, gap.high, gap.low, -half]
    for y in breaks:
        level = view.y(_at(gap, y))
        wave(draft, (view.x(stile[0]), level), (view.x(stile[1]), level), view.name, 0.9)
    low, high = view.y(_at(gap, -half)) - 3.0, view.y(half) + 3.0
    draft.line("centre", (view.x(across), low), (view.x(across), high), view.name)
    reach_out = float(pull.flange_pocket_width) / 2 + 12.0
    draft.line(
        "centre", view.at((across - reach_out, 0.0)), view.at((across + reach_out, 0.0)), view.name
    )


def _relieved(across: float, a: float, b: float, corner: float, relief: float) -> Polygon:
    """A pocket whose corners a larger cutter is run into on the diagonal, anticlockwise."""
    inset = relief_inset(corner, relief)
    along = math.sqrt(relief**2 - inset**2)
    turn = math.degrees(math.atan2(inset, along))
    points: list[Point] = []
    for sx, sy, start in ((1, -1, 180.0), (1, 1, 270.0), (-1, 1, 0.0), (-1, -1, 90.0)):
        centre = (across + sx * (a - inset), sy * (b - inset))
        points += arc_points(centre, relief, start + turn, start + 270.0 - turn, 0.4)
    return tuple(points)


def _front_chains(
    draft: Draft,
    view: View,
    job: Subject,
    pull: Pull,
    across: float,
    stile: tuple[float, float],
    gap: _Break | None,
) -> None:
    fine = job.rules.fine
    edge = view.x(stile[0])
    out = 0.0 if gap is None else gap.left_out
    chains = []
    for level, (long, wide) in enumerate(
        (
            (pull.body_pocket_length, pull.body_pocket_width),
            (pull.flange_pocket_length, pull.flange_pocket_width),
        )
    ):
        foot = view.x(across - float(wide) / 2)
        half = float(long) / 2
        chains.append(
            chain(
                view,
                "up",
                edge - FIRST + 2.0 - level * fine.next_chain,
                ((_at(gap, -half), foot), (half, foot)),
                (reference(long, fine, left_out=out),),
            )
        )
    place_chains(draft, chains)


def _front_words(
    draft: Draft, view: View, job: Subject, pull: Pull, across: float, gap: _Break | None
) -> None:
    """Corners, and the largest cutter that leaves them."""
    turn, relieved = 1 - 0.5**0.5, float(pull.relief) > 0
    a, b, r = (
        float(pull.flange_pocket_width) / 2,
        float(pull.flange_pocket_length) / 2,
        float(pull.flange_pocket_corner),
    )
    say(
        draft,
        view.at((across + a - r * turn, b - r * turn)),
        "arrow",
        (f"flange {radius(job, pull.flange_pocket_corner)}",),
        fan((1.0, 0.3), (1.0, 0.0)),
        view.name,
    )
    a, b, r = (
        float(pull.body_pocket_width) / 2,
        float(pull.body_pocket_length) / 2,
        float(pull.body_pocket_corner),
    )
    say(
        draft,
        view.at((across + a - r * turn, _at(gap, -b + r * turn))),
        "arrow",
        (
            f"body {radius(job, pull.body_pocket_corner)}:",
            f"cutter {through(job, pull.cutter)}{'' if relieved else ', no larger'}",
            *(("run into the corners",) if relieved else ()),
        ),
        fan((1.0, -0.2), (1.0, 0.2)),
        view.name,
    )


def _section_chains(
    draft: Draft, view: View, job: Subject, leaf: Leaf, pull: Pull, across: float, window: Box
) -> None:
    """Widths over the pocketed face, depths beside it."""
    fine = job.rules.fine
    thick = float(leaf.thickness)
    front = pull.faces[0] == "front"
    face, sign = (view.y(0.0), -1.0) if front else (view.y(thick), 1.0)
    chains = []
    for level, (wide, deep) in enumerate(
        (
            (pull.body_pocket_width, pull.flange_pocket_depth),
            (pull.flange_pocket_width, Figure(0.0)),
        )
    ):
        half = float(wide) / 2
        foot = face - sign * float(deep) / view.scale
        chains.append(
            chain(
                view,
                "across",
                face + sign * (FIRST + level * fine.next_chain),
                ((across - half, foot), (across + half, foot)),
                (reference(wide, fine),),
            )
        )
    right = view.x(window.x1) + 1.4
    for level, (deep, half) in enumerate(
        (
            (pull.flange_pocket_depth, float(pull.flange_pocket_width) / 2),
            (pull.body_pocket_depth, float(pull.body_pocket_width) / 2),
        )
    ):
        foot = view.x(across + half)
        places: list[Point] = [(0.0, right), (float(deep), foot)]
        if not front:
            places = [(thick - float(deep), foot), (thick, right)]
        chains.append(
            chain(
                view,
                "up",
                right + FIRST - 2.0 + level * fine.next_chain,
                places,
                (reference(deep, fine),),
            )
        )
    place_chains(draft, chains)
