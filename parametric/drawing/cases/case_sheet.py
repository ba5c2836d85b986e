"""One kind of case a sheet: its boards from the front, cut upright and cut level, and their list.

heights |  from the front  |  height     upright, seen from the side     level, from above
up to   |__________________|             ______________________          |#|_________|#|
faces     widths                          depth, back                     widths, back
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass, replace

from parametric.drawing.cases.case_words import case_items
from parametric.drawing.cases.from_front import draw_cabinets
from parametric.drawing.cases.under_slope import beyond, draw_slope
from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.column import WIDTH, list_width, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TITLE, width
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.pieces import Piece, leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.printing import Rule
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.trade.case_kinds import CaseKind, Level, behind_the_back, levels

_MM: Scales = ((5.0, 10.0, 20.0), (5.0, 10.0, 20.0))
_INCH: Scales = ((8.0, 12.0, 16.0, 24.0), (8.0, 12.0, 16.0, 24.0))
_SIDE = 6.0
_CAPTION = 9.0
_JOG = 5.0
"""From a case to the heights of its level boards, mm on paper."""
_APART = 9.0
_CUT = 0.4
"""Where in its bay, and in its space, a case is cut, as a part."""
_SAME = 1e-6


def draw_case(job: Subject, kind: CaseKind, title: TitleBlock) -> Sheet:
    """A kind of case on the first paper and scale that it stands clear on."""
    parts = next(g for g in job.assembly.groups if g.name == kind.first.name).parts
    shown = _Shown(
        kind=kind,
        pieces=leaf_pieces([p for p in parts if p.noun != "dowel"], kind.first.name),
        heights=_heights(kind),
    )

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _attempt(job, shown, paper, scale, block)

    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    large = f"{kind.first.name} is past the largest sheet"
    return first_that_fits(options, title, attempt, too_large=large)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """What the sheet shows: a kind of case, its boards, the heights at its left and its right."""

    kind: CaseKind
    pieces: tuple[Piece, ...]
    heights: tuple[tuple[Level, ...], tuple[Level, ...]]


def _heights(kind: CaseKind) -> tuple[tuple[Level, ...], tuple[Level, ...]]:
    """Level boards by the side their heights are told at: those of the right only where they differ."""
    middle = float(kind.first.case.box.width) / 2
    left: dict[int, Level] = {}
    right: dict[int, Level] = {}
    every = levels(kind.first)
    for level in every:
        board = level.board
        reaches = board.x < middle - _SAME
        own = left if reaches else right
        own.setdefault(round(float(level.up) * 1000), level)
    beside = tuple(level for up, level in right.items() if up not in left)
    return tuple(left.values()), beside


def _attempt(
    job: Subject, shown: _Shown, paper: Paper, scale: float, title: TitleBlock
) -> Sheet | None:
    rule, frame, block = job.rules.wood, paper.frame, title_block_box(paper, title)
    box, step = shown.kind.first.case.box, job.rules.wood.next_chain
    wide, high, deep = (float(v) / scale for v in (box.width, box.highest, box.depth))
    says = [_words(shown, own, rule) for own in shown.heights]
    lanes = [_JOG + max(map(width, own)) + 2.0 if own else 0.0 for own in says]
    under = FIRST + step + 4.0
    front = frame.x0 + _SIDE + lanes[0] + (0.0 if box.slope is None else FIRST + 4.0)
    side = front + wide + lanes[1] + FIRST + step * (2 if box.kick_high else 1) + _APART
    plan = side + deep + _APART + 6.0
    right = plan + wide + _APART
    foot = frame.y0 + 5.0 + under
    top = frame.y1 - 5.5 - _CAPTION
    if (
        right > frame.x1 - list_width(job.rules.unit) - 6.0
        or foot + high > top
        or foot + deep > top
    ):
        return None
    draft = Draft(paper)
    words = scale_words(scale, job.rules.unit)
    draw_frame(draft, dataclasses.replace(title, scale=words))
    base = top - high
    views = (
        draft.view("from the front", scale, (front, base)),
        draft.view("cut upright", scale, (side + (0.0 if job.third_angle else deep), base)),
        draft.view("cut level", scale, (plan, top - deep)),
    )
    _front(draft, shown, views[0], lanes, rule, step)
    _upright(draft, shown, views[1], rule, step, third_angle=job.third_angle)
    _level(draft, shown, views[2], rule)
    names = (f"From the front  {words}", "Cut upright", "Cut level")
    for name, view, x in zip(names, views, (front, side, plan), strict=True):
        draft.add(Label(text=name, at=(x, top + 3.5), height=TITLE, weight="bold", view=view.name))
    list_wide = list_width(job.rules.unit)
    left = frame.x1 - 5.5 - list_wide
    column = Box(left, block.y1 + 4.0, left + list_wide, frame.y1 - 6.0)
    # Under the level cut there is room for what the column cannot hold.
    spare = top - deep - under - 8.0
    beside = Box(plan - 4.0, frame.y0 + 6.0, min(plan - 4.0 + WIDTH, block.x0 - 4.0), spare)
    boxes = [column] + ([beside] if beside.width >= WIDTH - 1e-6 else [])
    left_over = place_items(draft, case_items(job, shown.kind), boxes)
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(dataclasses.replace(title, scale=words))


def _words(shown: _Shown, own: Sequence[Level], rule: Rule) -> list[str]:
    """What is said of each height: the number, and the mark of its board."""
    marks = _marks(shown)
    return [f"{rule.dimension(one.up)}  {marks[one.board.name]}" for one in own]


def _marks(shown: _Shown) -> dict[str, str]:
    return {piece.part.name: piece.part.mark for piece in shown.pieces}


def _front(
    draft: Draft, shown: _Shown, view: View, lanes: Sequence[float], rule: Rule, step: float
) -> None:
    """Boards from the front, heights of the level ones, what the bays leave clear, the whole."""
    case = shown.kind.first.case
    box = case.box
    draw_cabinets(draft, view, shown.pieces)
    marks = _marks(shown)
    low, wide = view.y(0.0), float(box.width)
    edges = [(float(bay.left), float(bay.left + bay.width), bay.width) for bay in case.bays]
    stops: list[Stop] = []
    links: list[Link | None] = []
    for left, right, clear in edges:
        links += [None] if stops else []
        stops += [Stop(at=left, foot=low), Stop(at=right, foot=low)]
        links.append(Link(figure=clear, rule=rule))
    line = low - FIRST + 1.0
    chains = [
        Chain(view=view, axis="across", line=line, stops=tuple(stops), links=tuple(links)),
        Chain(
            view=view,
            axis="across",
            line=line - step,
            stops=(Stop(at=0.0, foot=low), Stop(at=wide, foot=low)),
            links=(Link(figure=box.width, rule=rule),),
        ),
    ]
    at = view.x(wide) + lanes[1] + FIRST - 1.0
    edge = view.x(wide)
    if box.kick_high is not None:
        kick = (Stop(at=0.0, foot=edge), Stop(at=float(box.kick_high), foot=edge))
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=at,
                stops=kick,
                links=(Link(figure=box.kick_high, rule=rule),),
            )
        )
        at += step
    chains.append(_whole(view, at, edge, box.high_at("right"), rule))
    if box.slope is not None:
        # its lines begin past the heights of level boards
        past = view.x(0.0) - lanes[0]
        chains.append(_whole(view, past - FIRST + 1.0, past, box.high_at("left"), rule))
    place_chains(draft, chains)
    if box.slope is not None:
        draw_slope(draft, view, box.slope)
    for own, start, way in (
        (shown.heights[0], view.x(0.0), -1.0),
        (shown.heights[1], view.x(wide), 1.0),
    ):
        if own:
            places = [
                Place(
                    at=float(one.up),
                    figure=one.up,
                    start=start,
                    words=marks[one.board.name],
                    rule=rule,
                )
                for one in own
            ]
            place_ordinates(draft, view, "up", places, start + way * _JOG)


def _whole(view: View, line: float, edge: float, high: Figure, rule: Rule) -> Chain:
    """From the case's foot to its top at one side."""
    stops = (Stop(at=0.0, foot=edge), Stop(at=float(high), foot=edge))
    return Chain(
        view=view, axis="up", line=line, stops=stops, links=(Link(figure=high, rule=rule),)
    )


def _upright(
    draft: Draft, shown: _Shown, view: View, rule: Rule, step: float, *, third_angle: bool
) -> None:
    """Cut through the first bay: depths of shelves and back from the front edges."""
    case = shown.kind.first.case
    bay = case.bays[0]
    at = float(bay.left) + _CUT * float(bay.width)
    way = 1.0 if third_angle else -1.0
    for seen in beyond(case.box, at, "left" if third_angle else "right"):
        points = tuple(view.at((way * y, z)) for y, z in seen)
        draft.path("edge_fine", points, view.name, closed=len(points) > 2)
    cuts = [
        replace(cut, outline=tuple((-way * off, z) for off, z in cut.outline))
        for cut in cuts_through(shown.pieces, "upright", at)
    ]
    draw_cuts(draft, view, cuts)
    _depths(draft, shown, view, rule, step, axis_way=way)


def _depths(
    draft: Draft, shown: _Shown, view: View, rule: Rule, step: float, *, axis_way: float
) -> None:
    """Under the upright cut: to the back, the back, behind it; then the whole."""
    case = shown.kind.first.case
    sizes: list[Figure] = [case.behind] if case.back is not None else []
    if case.back is not None and case.back.held != "planted":
        sizes.append(case.back.thickness)
        rest = behind_the_back(shown.kind.first)
        sizes += [] if rest is None else [rest]
    low = view.y(0.0)
    line = low - FIRST + 1.0
    chains = []
    if len(sizes) > 1:
        at, places = 0.0, [0.0]
        for size in sizes:
            at += float(size)
            places.append(at)
        chains.append(_run(view, line, low, [axis_way * y for y in places], sizes, rule))
    ends = [0.0, axis_way * float(case.box.depth)]
    line = line - step if chains else line
    chains.append(_run(view, line, low, ends, [case.box.depth], rule))
    place_chains(draft, chains)


def _run(
    view: View, line: float, foot: float, places: list[float], sizes: list[Figure], rule: Rule
) -> Chain:
    """A chain from place to place, read from the left whichever way it counts."""
    if places[-1] < places[0]:
        places, sizes = places[::-1], sizes[::-1]
    return Chain(
        view=view,
        axis="across",
        line=line,
        stops=tuple(Stop(at=at, foot=foot) for at in places),
        links=tuple(Link(figure=size, rule=rule) for size in sizes),
    )


def _level(draft: Draft, shown: _Shown, view: View, rule: Rule) -> None:
    """Cut level, clear of boards that lie level: sides, partitions and the back in its grooves."""
    case = shown.kind.first.case
    spaces = [space for bay in case.bays for space in bay.spaces]
    tried = [
        float(space.foot) + part * float(space.head - space.foot)
        for space in spaces
        for part in (_CUT, 0.55, 0.3, 0.7, 0.2)
    ]

    def lying(at: float) -> int:
        cut = cuts_through(shown.pieces, "level", at)
        return sum(abs(one.piece.stands.z[2]) > 0.5 for one in cut)

    at = min(tried, key=lying)
    draw_cuts(draft, view, cuts_through(shown.pieces, "level", at))
    if case.back is None:
        return
    low = view.y(0.0)
    pieces = sorted({b.x: b for b in case.of_role("back")}.values(), key=lambda b: b.x)
    ends = [pieces[0].x, *(b.x + float(b.width) for b in pieces)]
    widths = [b.width for b in pieces]
    place_chains(draft, [_run(view, low - FIRST + 1.0, low, ends, widths, rule)])
