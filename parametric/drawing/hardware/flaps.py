"""The sheet of a flap: cut upright shut, how it opens, where its stays are screwed, what they hold.

reach                         seen from the left, in third angle from the right; the case
.____________(o)__________         round the flap's own space is cut
open        .| shut
arc    .   |    o on the case
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cases.case import Case, Space
from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.column import place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.hardware.flap_words import flap_items
from parametric.drawing.marks import caption
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.pieces import CutPiece, leaf_pieces
from parametric.drawing.plane import Box, Point, Polygon
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.hangings.flaps import LEVEL, HungFlap
from parametric.hardware.stay import NoPlace, turned_by
from parametric.hardware.stay_kinds import Stays
from parametric.model import Placement
from parametric.resolve.casework import StandingCase
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door
from parametric.units import mm_text

_MM: Scales = ((5.0, 10.0), (5.0, 10.0, 20.0))
_INCH: Scales = ((4.0, 8.0, 12.0), (8.0, 12.0, 24.0))
_WIDE = 118.0
"""The column of tables and notes, mm."""
_EDGE = 7.0
_ROUND = 70.0
"""How much of the case is shown over and under the flap's own space, mm."""
_BESIDE, _OVER, _UNDER = 32.0, 22.0, 30.0
"""What chains and words take beside, over and under the view, mm on paper."""
_STEPS = 45
_FIXING = 1.1
"""The ring round a fixing, mm on paper."""


def draw_flaps(job: Subject, door: Door, title: TitleBlock) -> tuple[Sheet, ...]:
    """A sheet for every flap of one case that differs from the others; none without.

    Args:
        job: the whole job, cabinets and all.
        door: the fronts of the case.
        title: what the title blocks say alike.
    """
    casework = job.resolved.casework
    if casework is None or not door.hanging.flaps:
        return ()
    standing = casework.case(door.case)
    return tuple(_sheet(job, standing, lot, title) for lot in _lots(door.leaves))


def _lots(leaves: Sequence[Leaf]) -> Iterator[tuple[Leaf, ...]]:
    """Flaps that are hung, made and held alike, together."""
    lots: dict[tuple[object, ...], list[Leaf]] = {}
    for leaf in leaves:
        flap = leaf.hung.flap
        if flap is None:
            continue
        sizes = (leaf.width, leaf.height, leaf.thickness, leaf.hung.foot, flap.angle)
        places = [place.centre for own in leaf.hinges for place in own.hinges.places]
        across = [] if leaf.stays is None else [one.across for one in leaf.stays.sides]
        same = tuple(round(float(size), 3) for size in (*sizes, *places, *across))
        lots.setdefault((flap.side, leaf.written.heading, same), []).append(leaf)
    yield from (tuple(lot) for lot in lots.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """A flap with its case, and the stretch of it that is shown, in the case's frame, mm.

    `way` is 1 where the front is drawn at the left, else -1.
    """

    leaf: Leaf
    flap: HungFlap
    case: Case
    space: Space
    across: float
    out: float
    way: float

    @property
    def window(self) -> Box:
        """What is drawn, from front to back and up."""
        line, reach = float(self.flap.line - self.case.box.foot), float(self.flap.reach)
        tip = float(self.flap.tip - self.case.box.foot)
        low = min(float(self.space.foot) - _ROUND, tip - 30.0, line - 30.0)
        high = max(float(self.space.head) + _ROUND, tip + 30.0, line + 30.0)
        return Box(-reach - self.out - 10.0, low, float(self.case.box.depth), high)

    def point(self, back: float, up: float) -> Point:
        """A place of the case's frame in the view."""
        return self.way * back, up

    def of_flap(self, along: float, deep: float, angle: float) -> Point:
        """A place of the flap in the view: along from its hinge line, behind its face, turned."""
        down, into = (float(v) for v in turned_by(Figure(along), Figure(deep), angle))
        line = float(self.flap.line - self.case.box.foot)
        up = line - down if self.flap.side == "top" else line + down
        return self.point(into - self.out, up)


def _shown(job: Subject, standing: StandingCase, leaf: Leaf, flap: HungFlap) -> _Shown:
    case = standing.case
    across = float(case.opening.left + leaf.hung.left + leaf.width / 2)
    middle = float(leaf.hung.foot + leaf.height / 2 - case.box.foot)
    return _Shown(
        leaf=leaf,
        flap=flap,
        case=case,
        space=case.bay_at(across).space_at(middle),
        across=across,
        out=float(leaf.hung.plane + leaf.thickness / 2),
        way=1.0 if job.third_angle else -1.0,
    )


def _sheet(job: Subject, standing: StandingCase, lot: tuple[Leaf, ...], title: TitleBlock) -> Sheet:
    leaf = lot[0]
    assert leaf.hung.flap is not None, "only flaps are drawn"
    shown = _shown(job, standing, leaf, leaf.hung.flap)

    def attempt(size: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _draw(job, shown, lot, size, scale, block)

    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    high = shown.window.height
    return first_that_fits(
        options, title, attempt, too_large=f"a flap {high:.0f} high is past the largest sheet"
    )


def _draw(
    job: Subject,
    shown: _Shown,
    lot: tuple[Leaf, ...],
    size: Paper,
    scale: float,
    title: TitleBlock,
) -> Sheet | None:
    frame, block, window = size.frame, title_block_box(size, title), shown.window
    column = frame.x1 - 5.5 - _WIDE
    left, foot = frame.x0 + _EDGE + _BESIDE, frame.y0 + _EDGE + _UNDER
    wide, tall = window.width / scale, window.height / scale
    if left + wide + _BESIDE > column - 4.0 or foot + tall + _OVER > frame.y1 - _EDGE:
        return None
    draft = Draft(size)
    draw_frame(draft, dataclasses.replace(title, scale=scale_words(scale, job.rules.unit)))
    start = window.x0 if shown.way > 0 else -window.x1
    spare = (frame.y1 - _EDGE - _OVER - foot - tall) / 2
    origin = (left - start / scale, foot + spare - window.y0 / scale)
    view = draft.view(f"flap {shown.leaf.letter}", scale, origin)
    _case(draft, job, view, shown)
    _flap(draft, job, view, shown)
    _stays(draft, view, shown)
    place_chains(draft, list(_chains(job, view, shown)))
    _angle(draft, view, shown)
    letters = " and ".join(leaf.letter for leaf in lot)
    side = "right" if job.third_angle else "left"
    caption(
        draft,
        (left - 10.0, foot + spare - _UNDER + 4.0),
        f"Flap {letters}, cut upright, seen from the {side}",
        f"{scale_words(scale, job.rules.unit)}; shut, and open in thin line",
    )
    room = Box(column, block.y1 + 5.0, column + _WIDE, frame.y1 - _EDGE)
    items = flap_items(job, shown.case, shown.leaf, letters)
    left_over = place_items(draft, items, (room,))
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(dataclasses.replace(title, scale=scale_words(scale, job.rules.unit)))


def _case(draft: Draft, job: Subject, view: View, shown: _Shown) -> None:
    """The boards of the case round the flap, and the edges of its side beyond."""
    parts = next(g for g in job.assembly.groups if g.name == shown.case.name).parts
    pieces = leaf_pieces([p for p in parts if p.noun != "dowel"], shown.case.name)
    window, cuts = shown.window, []
    for cut in cuts_through(pieces, "upright", shown.across):
        points = [(-off, up) for off, up in cut.outline]
        ups = [min(max(up, window.y0), window.y1) for _, up in points]
        if max(ups) - min(ups) <= 0:
            continue
        outline = tuple(shown.point(back, up) for (back, _), up in zip(points, ups, strict=True))
        cuts.append(dataclasses.replace(cut, outline=outline))
    draw_cuts(draft, view, cuts)
    for back in (0.0, float(shown.case.box.depth)):
        draft.line(
            "edge_fine",
            view.at(shown.point(back, window.y0)),
            view.at(shown.point(back, window.y1)),
            view.name,
        )


def _leaf_cuts(job: Subject, shown: _Shown) -> list[CutPiece]:
    """The flap cut, shut, in the case's frame: back from its front edges, up from its foot."""
    leaf, box = shown.leaf, shown.case.box
    group = next(g for g in job.assembly.groups if g.name == leaf.name)
    stands = Placement(
        origin=(
            float(shown.case.opening.left + leaf.hung.left),
            -shown.out,
            float(leaf.hung.foot - box.foot),
        )
    )
    pieces = [
        dataclasses.replace(
            piece,
            stands=Placement(
                origin=stands.point(piece.stands.origin), x=piece.stands.x, y=piece.stands.y
            ),
        )
        for piece in leaf_pieces(group.parts, leaf.name)
    ]
    return list(cuts_through(pieces, "upright", shown.across))


def _flap(draft: Draft, job: Subject, view: View, shown: _Shown) -> None:
    """Shut with its hatching, open in thin line, and the way of its free edge."""
    line = float(shown.flap.line - shown.case.box.foot)
    angle, top = float(shown.flap.angle), shown.flap.side == "top"
    cuts = _leaf_cuts(job, shown)
    draw_cuts(
        draft,
        view,
        [
            dataclasses.replace(
                cut, outline=tuple(shown.point(-off, up) for off, up in cut.outline)
            )
            for cut in cuts
        ],
    )
    for cut in cuts:
        turned: Polygon = tuple(
            shown.of_flap(line - up if top else up - line, -off + shown.out, angle)
            for off, up in cut.outline
        )
        draft.path("edge_fine", view.path(turned), view.name, closed=True)
    high = float(shown.leaf.height)
    way = [shown.of_flap(high, 0.0, angle * step / _STEPS) for step in range(_STEPS + 1)]
    draft.path("hidden", view.path(tuple(way)), view.name)
    pin = view.at(shown.of_flap(0.0, 0.0, 0.0))
    draft.add(Circle(layer="edge_fine", centre=pin, radius=0.9, view=view.name))


def _placed(shown: _Shown) -> Stays | None:
    stays = shown.leaf.stays
    return None if stays is None or isinstance(stays.sized, NoPlace) else stays.sized


def _fixings(shown: _Shown, stays: Stays) -> tuple[Point, Point, Point]:
    """On the case, on the shut flap, on the open one."""
    place = stays.place
    line = float(shown.flap.line - shown.case.box.foot)
    down = float(place.down)
    on_case = shown.point(
        float(place.behind), line - down if shown.flap.side == "top" else line + down
    )
    deep = float(shown.leaf.thickness + place.off)
    along = float(place.along)
    return (
        on_case,
        shown.of_flap(along, deep, 0.0),
        shown.of_flap(along, deep, float(shown.flap.angle)),
    )


def _stays(draft: Draft, view: View, shown: _Shown) -> None:
    """A stay from fixing to fixing, open in full line, shut in dashes."""
    stays = _placed(shown)
    if stays is None:
        return
    on_case, shut, opened = _fixings(shown, stays)
    draft.line("edge", view.at(on_case), view.at(opened), view.name)
    draft.line("hidden", view.at(on_case), view.at(shut), view.name)
    for at in (on_case, shut, opened):
        draft.add(Circle(layer="edge_fine", centre=view.at(at), radius=_FIXING, view=view.name))


def _chains(job: Subject, view: View, shown: _Shown) -> Iterator[Chain]:
    """Reach of the open flap; its fixings from the hinge line, and from the case's front edges."""
    rule, window = job.rules.wood, shown.window
    line = float(shown.flap.line - shown.case.box.foot)
    face = shown.point(-shown.out, 0.0)[0]
    tip = shown.of_flap(float(shown.leaf.height), 0.0, float(shown.flap.angle))
    if float(shown.flap.angle) <= LEVEL:
        low, high = sorted((face, tip[0]))
        foot = view.y(window.y1)
        yield Chain(
            view=view,
            axis="across",
            line=foot + FIRST,
            stops=(
                Stop(at=low, foot=view.y(max(line, tip[1]))),
                Stop(at=high, foot=view.y(max(line, tip[1]))),
            ),
            links=(Link(figure=shown.flap.reach, after="reach", rule=rule),),
        )
    stays = _placed(shown)
    if stays is None:
        return
    on_case, shut, _ = _fixings(shown, stays)
    edge = shown.point(0.0, 0.0)[0]
    low, high = sorted((edge, on_case[0]))
    yield Chain(
        view=view,
        axis="across",
        line=view.y(window.y0) - FIRST,
        stops=(
            Stop(at=low, foot=view.y(on_case[1] if low == on_case[0] else window.y0)),
            Stop(at=high, foot=view.y(on_case[1] if high == on_case[0] else window.y0)),
        ),
        links=(Link(figure=stays.place.behind, rule=rule),),
    )
    back = view.x(shown.point(window.x1, 0.0)[0])
    behind = back + math.copysign(FIRST, back - view.x(face))
    for at, figure, off in (
        (on_case, stays.place.down, rule.next_chain),
        (shut, stays.place.along, 0.0),
    ):
        up = sorted((line, at[1]))
        yield Chain(
            view=view,
            axis="up",
            line=behind + math.copysign(off, back - view.x(face)),
            stops=tuple(
                Stop(at=one, foot=view.x(at[0]) if one == at[1] else view.x(face)) for one in up
            ),
            links=(Link(figure=figure, rule=rule),),
        )


def _angle(draft: Draft, view: View, shown: _Shown) -> None:
    """How far it opens, beside the line that it turns about."""
    pin = view.at(shown.of_flap(0.0, 0.0, 0.0))
    text = f"{mm_text(float(shown.flap.angle), 0.1)}°"
    aside = -shown.way
    down = -1.0 if shown.flap.side == "top" else 1.0
    draft.add_first(
        [
            Label(
                text=text,
                at=(pin[0] + aside * dx, pin[1] + down * dy),
                anchor="left" if aside > 0 else "right",
                view=view.name,
            )
            for dy in (8.0, 11.0, 14.0, 18.0, 24.0)
            for dx in (8.0, 11.0, 14.0, 18.0, 24.0)
        ]
    )
