"""One kind of case a sheet: its boards from the front, cut upright and cut level, and their list.

heights |  from the front  |  height     upright, seen from the side     level, from above
up to   |__________________|             ______________________          |#|_________|#|
faces     widths                          depth, back                     widths, back

A low case has its level cut under the front instead, where it then stands at a larger scale.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass, replace

from parametric.cases.case import Case
from parametric.drawing.cases.case_words import case_items
from parametric.drawing.cases.from_front import draw_cabinets
from parametric.drawing.cases.under_slope import beyond, draw_slope
from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.column import WIDTH, list_width, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TEXT, TITLE, width
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.pieces import Piece, leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.printing import Rule
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.set_out import letter_corners, setting_out_of
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
_MARKED = (0.72, 0.62, 0.82, 0.3, 0.4, 0.2, 0.9)
"""How far up a board its mark may stand, as parts of its length."""
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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spots:
    """Where the views begin, mm on paper: the left of each, the foot of what stands upright and
    of the level cut, where captions stand, and what is left over for lists.
    """

    lefts: tuple[float, float, float]
    base: float
    plan_foot: float
    captions: tuple[float, float]
    spare: Box


def _attempt(
    job: Subject, shown: _Shown, paper: Paper, scale: float, title: TitleBlock
) -> Sheet | None:
    rule = job.rules.wood
    says = [_words(shown, own, rule) for own in shown.heights]
    lanes = [_JOG + max(map(width, own)) + 2.0 if own else 0.0 for own in says]
    block = title_block_box(paper, title)
    list_wide = list_width(job.rules.unit)
    left = paper.frame.x1 - 5.5 - list_wide
    column = Box(left, block.y1 + 4.0, left + list_wide, paper.frame.y1 - 6.0)
    tried = (
        _spots(shown, paper, block, column.x0 - 0.5, lanes, scale, rule.next_chain, under=under)
        for under in (False, True)
    )
    spots = next((one for one in tried if one is not None), None)
    if spots is None:
        return None
    draft = Draft(paper)
    words = scale_words(scale, job.rules.unit)
    title = dataclasses.replace(title, scale=words)
    draw_frame(draft, title)
    front, side, plan = spots.lefts
    before, back = (v / scale for v in _deep(shown.kind.first.case))
    upright = before if job.third_angle else back
    views = (
        draft.view("from the front", scale, (front, spots.base)),
        draft.view("cut upright", scale, (side + upright, spots.base)),
        draft.view("cut level", scale, (plan, spots.plan_foot + before)),
    )
    _front(draft, shown, views[0], lanes, rule, rule.next_chain)
    _upright(draft, shown, views[1], rule, rule.next_chain, third_angle=job.third_angle)
    _level(draft, shown, views[2], rule)
    shape = setting_out_of(job, [shown.kind.first.name])
    seen = shown.kind.first.case.plan
    if shape is not None and seen is not None:
        corners = [views[2].at(point) for point in seen.outline]
        draft.path("edge_fine", tuple(corners), views[2].name, closed=True)
        letter_corners(draft, shape, corners, views[2].name, inwards=False)
    upper, lower = spots.captions
    names = (
        (f"From the front  {words}", front, upper),
        ("Cut upright", side, upper),
        ("Cut level", plan, lower),
    )
    for view, (name, x, y) in zip(views, names, strict=True):
        draft.add(Label(text=name, at=(x, y), height=TITLE, weight="bold", view=view.name))
    boxes = [column] + ([spots.spare] if spots.spare.width >= WIDTH - 1e-6 else [])
    left_over = place_items(draft, case_items(job, shown.kind), boxes)
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(title)


def _spots(
    shown: _Shown,
    paper: Paper,
    block: Box,
    end: float,
    lanes: Sequence[float],
    scale: float,
    step: float,
    *,
    under: bool,
) -> _Spots | None:
    """Stand the three views on a paper, the level cut beside the others or under the front; None
    where they do not fit left of `end`.
    """
    box, frame = shown.kind.first.case.box, paper.frame
    wide, high = float(box.width) / scale, float(box.highest) / scale
    deep = sum(_deep(shown.kind.first.case)) / scale
    chains = FIRST + step * (2 if box.kick_high else 1) + 4.0
    front = frame.x0 + _SIDE + lanes[0] + (0.0 if box.slope is None else FIRST + 4.0)
    side = front + wide + lanes[1] + FIRST + step * (2 if box.kick_high else 1) + _APART
    top, foot = frame.y1 - 5.5 - _CAPTION, frame.y0 + 5.0
    beside = side + deep + _APART + 6.0
    base = top - high
    if under:
        caption = base - chains - _CAPTION
        plan = (front, caption - 3.5 - deep)
        right, lowest = side + deep + _APART, plan[1] - FIRST - 4.0
        spare = Box(beside, foot + 1.0, min(beside + WIDTH, block.x0 - 4.0), top)
    else:
        caption = top + 3.5
        plan = (beside, top - deep)
        right, lowest = beside + wide + _APART, min(base, plan[1]) - chains
        # Under the level cut there is room for what the column cannot hold.
        low = plan[0] - 4.0
        spare = Box(low, foot + 1.0, min(low + WIDTH, block.x0 - 4.0), plan[1] - chains - 8.0)
    if right > end or lowest < foot:
        return None
    return _Spots(
        lefts=(front, side, plan[0]),
        base=base,
        plan_foot=plan[1],
        captions=(top + 3.5, caption),
        spare=spare,
    )


def _deep(case: Case) -> tuple[float, float]:
    """How far a case comes before its left side's front edge, and back from there, mm."""
    if case.plan is None:
        return 0.0, float(case.box.depth)
    return -min(0.0, *(y for _, y in case.plan.outline)), float(case.box.depth)


def _words(shown: _Shown, own: Sequence[Level], rule: Rule) -> list[str]:
    """What is said of each height: the number, and the marks of the boards at it."""
    return [f"{rule.dimension(one.up)}  {_marks_at(shown, one)}" for one in own]


def _marks_at(shown: _Shown, level: Level) -> str:
    """The mark of a level board and of others at its height, each once."""
    marks = _marks(shown)
    every = levels(shown.kind.first)
    found = (marks[one.board.name] for one in every if abs(one.up - level.up) < _SAME)
    return ", ".join(dict.fromkeys((marks[level.board.name], *found)))


def _marks(shown: _Shown) -> dict[str, str]:
    return {piece.part.name: piece.part.mark for piece in shown.pieces}


def _front(
    draft: Draft, shown: _Shown, view: View, lanes: Sequence[float], rule: Rule, step: float
) -> None:
    """Boards from the front, heights of the level ones, what the bays leave clear, the whole."""
    case = shown.kind.first.case
    box = case.box
    draw_cabinets(draft, view, shown.pieces)
    low, wide = view.y(0.0), float(box.width)
    # what is clear in one with a plan is no stretch of its front
    bays = case.bays if case.plan is None else ()
    edges = [(float(bay.left), float(bay.left + bay.width), bay.width) for bay in bays]
    stops: list[Stop] = []
    links: list[Link | None] = []
    for left, right, clear in edges:
        links += [None] if stops else []
        stops += [Stop(at=left, foot=low), Stop(at=right, foot=low)]
        links.append(Link(figure=clear, rule=rule))
    line = low - FIRST + 1.0
    chains = []
    if case.plan is None:
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
                    words=_marks_at(shown, one),
                    rule=rule,
                )
                for one in own
            ]
            place_ordinates(draft, view, "up", places, start + way * _JOG)
    _mark_uprights(draft, shown, view)


def _mark_uprights(draft: Draft, shown: _Shown, view: View) -> None:
    """The marks of what stands upright or faces the front, on or beside each."""
    case, marks = shown.kind.first.case, _marks(shown)
    high = float(case.box.height)
    for board in case.boards:
        if board.role in ("side", "partition"):
            x = view.x(board.x + float(board.thickness) / 2)
            wide = width(marks[board.name], TEXT, "bold")
            # inside of a side, beside a partition; else over its head
            inward = 1.0 if board.x < float(case.box.width) / 2 else -1.0
            off = float(board.thickness) / 2 / view.scale + 1.6 + wide / 2
            up = [view.y(board.z + share * float(board.length)) for share in _MARKED]
            places = [(x + way * off, y) for y in up for way in (inward, -inward)]
        elif board.role in ("back", "kick board"):
            wide, tall = float(board.length), float(board.width)
            if board.lies == "facing":
                wide, tall = tall, wide
            across = [view.x(board.x + share * wide) for share in (0.5, 0.35, 0.65, 0.25, 0.75)]
            places = [
                (x, view.y(board.z + share * tall) - TEXT / 2)
                for share in (0.5, *_MARKED)
                for x in across
            ]
        else:
            continue
        labels = [
            Label(text=marks[board.name], at=at, anchor="centre", weight="bold", view=view.name)
            for at in places
        ]
        inside = [one for one in labels if one.box.y1 < view.y(high)]
        draft.add_first(inside or labels)


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
    """Under the upright cut: to the back, the back, behind it; the kick; then the whole."""
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
    if case.box.kick_deep is not None:
        line = line - step if chains else line
        kick = [0.0, axis_way * float(case.box.kick_deep)]
        chains.append(_run(view, line, low, kick, [case.box.kick_deep], rule))
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
