"""The proposal's drawing: elevation with a side view, the doors from above shut and open.

    +--+ elevation +--+ side        chains on both sides
    ===floor=========
      floor in words
    ##---------##   shut            chains of widths under it
    ##--     --##   open            the clear way

A client's drawing has about ten sizes: those they can measure and those they asked for.
"""

from __future__ import annotations

import dataclasses

from parametric.catalog.finishes import Paint
from parametric.drawing.arrangement_elevation import draw_elevation
from parametric.drawing.arrangement_layout import GROUND, STUB, WALL, Extent, Placing, extent_of
from parametric.drawing.arrangement_plan import draw_plan
from parametric.drawing.arrangement_upright import draw_upright
from parametric.drawing.chains import FIRST, SIDES, Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.leafviews import cuts_through
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import Piece, front, pieces, silhouette
from parametric.drawing.plane import Box, around
from parametric.drawing.primitives import Label
from parametric.drawing.proposal.content import ProposalContent
from parametric.drawing.proposal.setting import (
    HEAD,
    NOTE,
    Tint,
    columns,
    lines_of,
    pitch,
    rule,
    set_lines,
    set_text,
)
from parametric.drawing.proposal.shades import mixed
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes, level_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.model import Mitre, State
from parametric.names import join
from parametric.resolve.door import Door
from parametric.trade.standing import (
    clear_stretch,
    comes_towards,
    cover_stretch,
    swept,
    way_of_edge,
    widest_open,
    width_taken,
)

_MM = (5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0)
_INCH = (4.0, 8.0, 12.0, 16.0, 20.0, 24.0, 32.0, 48.0, 64.0, 96.0)
"""Scales tried, the largest first: nobody measures on this page, so in-between ones are none the worse."""
_ABOVE = 9.0
"""Over the elevation, mm: wall over the head, and the names of the views."""
_WORDS = 14.0
"""What the values of the outermost chain take beside the elevation, mm."""
_KEY = 30.0
"""The least width, mm, in which the key to the lines is set."""
_UNDER_FLOOR = 4.0
_IN_OPENING = 1.6
"""How far behind the wall's face the clear way is said within the opening, mm on paper."""
_SAME = 1e-6
"""Sizes no farther apart than this are one size, mm."""


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class _Room:
    """What the views take beside their own sizes, mm on paper."""

    next_chain: float
    near: float
    """How far open doors come before the wall's face, mm in the model."""
    far: float
    """How far they go behind it."""

    @property
    def left(self) -> float:
        """From the page's edge to the doors."""
        return _WORDS / 2 + FIRST - 1.0 + STUB

    @property
    def right(self) -> float:
        """From the doors to the side view's own ground."""
        return STUB + FIRST - 1.0 + 2 * self.next_chain + 5.0

    def opened_high(self, extent: Extent, scale: float) -> float:
        """The plan of the open doors, from the farthest of them to the nearest."""
        return self.opened_far(extent, scale) + max(self.near, extent.off_most, 0.0) / scale

    def opened_far(self, extent: Extent, scale: float) -> float:
        """What of it lies behind the wall's face."""
        return max(_deep(extent, scale), self.far / scale + 1.0)


def draw_doors(draft: Draft, job: Subject, said: ProposalContent, box: Box) -> tuple[Tint, ...]:
    """The page's views on the largest scale at which they stand clear of one another.

    Args:
        draft: the page.
        job: the job.
        said: its words.
        box: what the page leaves between head and foot.

    Returns:
        The leaves' colour in the plans.
    """
    top = _head(draft, said, box)
    extent, room = extent_of(job), _room(job)
    scales = _MM if job.rules.unit == "mm" else _INCH
    body = Box(box.x0, box.y0, box.x1, top)
    fitting = (s for s in scales if _fits(extent, room, body, s, said))
    scale = next(fitting, scales[-1])
    spare = max(0.0, body.height - _needs(extent, room, scale))
    lines = _floor_lines(extent, scale, said)
    place = _placing(draft, extent, room, body, scale, min(spare / 4, 9.0), lines)
    _words_of_scale(draft, job, box, scale)
    return _draw(draft, job, said, extent, place, room)


def _room(job: Subject) -> _Room:
    """What open doors that swing take before and behind the wall."""
    turning = [leaf for leaf in job.resolved.door.leaves if leaf.hung.swing is not None]
    over = [swept(leaf) for leaf in turning]
    return _Room(
        next_chain=job.rules.wood.next_chain,
        near=max((-one.near for one in over), default=0.0),
        far=max((one.far for one in over), default=0.0),
    )


def _head(draft: Draft, said: ProposalContent, box: Box) -> float:
    y = set_text(draft, said.drawing_head, box, box.y1, HEAD, weight="bold")
    y = set_text(draft, said.drawing_under, columns(box, 0, 5), y, NOTE, layer="table")
    rule(draft, box, y - 1.2)
    return y - 1.2


def _words_of_scale(draft: Draft, job: Subject, box: Box, scale: float) -> None:
    words = scale_words(scale, job.rules.unit)
    y = box.y1 - pitch(HEAD)
    at = (box.x1 - width(words, NOTE), y)
    set_lines(draft, [words], at, NOTE, layer="table")


def _deep(extent: Extent, scale: float) -> float:
    return max(WALL, -extent.off_least / scale + 3.0)


def _plan_high(extent: Extent, scale: float) -> float:
    """A plan from the far side of its wall to the nearest face of its doors."""
    return _deep(extent, scale) + max(extent.off_most, 0.0) / scale


def _needs(extent: Extent, room: _Room, scale: float) -> float:
    chains = FIRST + (extent.plan_chains - 1) * room.next_chain
    return (
        _ABOVE
        + extent.wall_over
        + (extent.high - extent.low) / scale
        + GROUND
        + _UNDER_FLOOR
        + pitch(NOTE) * 2
        + 2 * pitch(NOTE)
        + _plan_high(extent, scale)
        + room.opened_high(extent, scale)
        + chains
        + FIRST
        + 10.0
    )


def _fits(extent: Extent, room: _Room, body: Box, scale: float, said: ProposalContent) -> bool:
    side = _deep(extent, scale) + max(extent.off_most, 0.0) / scale + 2 * STUB
    across = room.left + (extent.x1 - extent.x0) / scale + room.right + side
    if across > body.width:
        return False
    more = (_floor_lines(extent, scale, said) - 1) * pitch(NOTE)
    return _needs(extent, room, scale) + more <= body.height


def _floor_lines(extent: Extent, scale: float, said: ProposalContent) -> int:
    """How many lines the words about the floor take under the doors."""
    return len(lines_of(said.floor, (extent.x1 - extent.x0) / scale, NOTE))


def _placing(
    draft: Draft,
    extent: Extent,
    room: _Room,
    body: Box,
    scale: float,
    air: float,
    lines: int,
) -> Placing:
    """Views from the head down; what the width leaves over goes half to each side."""
    side = _deep(extent, scale) + max(extent.off_most, 0.0) / scale + STUB
    across = room.left + (extent.x1 - extent.x0) / scale + room.right + side
    x = body.x0 + room.left + max(0.0, (body.width - across) / 2) - extent.x0 / scale
    y = body.y1 - _ABOVE - air * 0.6 - extent.wall_over - extent.high / scale
    section = x + extent.x1 / scale + room.right
    leaves = max(extent.off_most, 0.0) / scale + STUB
    deep = _deep(extent, scale)
    floor = y + extent.low / scale - GROUND
    plan = floor - _UNDER_FLOOR - (2 + lines) * pitch(NOTE) - air - deep
    return Placing(
        paper=draft.paper,
        scale=scale,
        elevation=(x, y),
        plan=(x, plan),
        upright=(section + (leaves if extent.third_angle else deep), y),
        section_right=section + side,
        columns=(),
    )


def _draw(
    draft: Draft, job: Subject, said: ProposalContent, extent: Extent, place: Placing, room: _Room
) -> tuple[Tint, ...]:
    elevation = draw_elevation(draft, job, place, extent)
    upright = draw_upright(draft, job, place, extent)
    shut = draw_plan(draft, job, place, extent)
    chains = _elevation_chains(job, elevation, extent, room)
    under = _plan_chains(job, shut, extent, room, said)
    lowest = min(chain.line for chain in under)
    open_y = lowest - 4.0 - pitch(NOTE) - room.opened_far(extent, place.scale) - 3.0
    opened = dataclasses.replace(job, shut=pieces(job.assembly, _open_state(job)))
    apart = dataclasses.replace(place, plan=(place.plan[0], open_y))
    ajar = draw_plan(draft, opened, apart, extent, name="plan, open")
    _draw_ways(draft, job, ajar)
    clear = _clear_way(job, ajar, extent)
    place_chains(draft, chains)
    place_chains(draft, under)
    place_chains(draft, [clear, *_reach(job, ajar, extent)])
    _floor_words(draft, said, elevation, extent)
    _names(draft, said, place, extent, elevation, upright)
    for words, view, deep in (
        (said.shut, shut, _deep(extent, place.scale)),
        (said.opened, ajar, room.opened_far(extent, place.scale)),
    ):
        y = view.y(deep * place.scale) + 1.2 + pitch(NOTE)
        set_lines(draft, [words], (view.x(extent.x0) - STUB, y), NOTE, layer="table")
    _key(draft, said, extent, shut)
    return (
        *_tinted_front(job, elevation, said),
        *_tinted(job, shut, said),
        *_tinted(opened, ajar, said),
    )


def _open_state(job: Subject) -> State:
    """With the doors as far out of the way as the clear way is promised."""
    return widest_open(job.resolved.door)


def _draw_ways(draft: Draft, job: Subject, view: View) -> None:
    """The way of each leaf's free edge as it swings, and where it stands shut."""
    for leaf in job.resolved.door.leaves:
        if leaf.hung.swing is None:
            continue
        draft.path("edge_fine", view.path(way_of_edge(leaf)), view.name)


def _reach(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """How far they come into the room."""
    door = job.resolved.door
    reach, leaf = door.hanging.reach, door.leaves[-1]
    if reach is None:
        return []
    into = comes_towards(leaf)
    half = float(leaf.thickness) / 2
    face = -float(leaf.hung.plane) + (-half if into else half)
    end = face - float(reach) if into else face + float(reach)
    edge = view.x(width_taken(leaf, 1.0)[1])
    low, high = sorted(((face, view.x(extent.x1) + STUB), (end, edge)))
    return [
        Chain(
            view=view,
            axis="up",
            line=view.x(extent.x1) + STUB + FIRST - 3.0,
            stops=(Stop(at=low[0], foot=low[1]), Stop(at=high[0], foot=high[1])),
            links=(Link(figure=reach, rule=job.rules.wood),),
        )
    ]


def _elevation_chains(job: Subject, view: View, extent: Extent, room: _Room) -> list[Chain]:
    """Left: gap and leaf. Right: gap and lap; the pull; the opening's height."""
    door, wood = job.resolved.door, job.rules.wood
    hanging, opening = door.hanging, door.opening
    left, right = view.x(extent.x0) - STUB, view.x(extent.x1) + STUB
    boxes = leaf_boxes(door)
    top = max(box.y1 for box in boxes)
    leaf_right = view.x(boxes[-1].x1)
    last_at, last_gap = door.gaps[-1]
    floors = {place: float(z) for place, z in opening.floor.items()}
    chains = [_column(job, view, left)]
    line = right + FIRST - 1.0
    over = _over_leaves(job)
    low, high = sorted((extent.head, top))
    stops = [Stop(at=low, foot=leaf_right)]
    links: list[Link | None] = []
    if over is not None:
        stops.append(Stop(at=high, foot=leaf_right))
        links.append(Link(figure=over, rule=wood))
    if len(door.gaps) > 1:
        floor = Stop(at=floors[last_at], foot=right)
        stops = [floor, Stop(at=extent.foot, foot=leaf_right), *stops]
        links = [Link(figure=last_gap, rule=wood), None, *links]
    if links:
        chains.append(
            Chain(view=view, axis="up", line=line, stops=tuple(stops), links=tuple(links))
        )
    last = door.leaves[-1]
    if last.pulls:
        up = job.figures[join(last.name, "pull", "height above the floor")]
        line += room.next_chain
        at = view.x(float(hanging.lefts[-1]) + float(last.pulls[0].across))
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=line,
                stops=(Stop(at=0.0, foot=right), Stop(at=float(up), foot=at + 1.2)),
                links=(Link(figure=up, rule=wood),),
            )
        )
    chains.append(
        Chain(
            view=view,
            axis="up",
            line=line + room.next_chain,
            stops=(Stop(at=0.0, foot=right), Stop(at=extent.head, foot=leaf_right)),
            links=(Link(figure=opening.head, rule=wood),),
        )
    )
    return chains


def _over_leaves(job: Subject) -> Figure | None:
    """What lies between the head of the leaves and that of the opening; None where nothing is
    to be seen of it.
    """
    hanging = job.resolved.door.hanging
    if hanging.head_gap is not None:
        return hanging.head_gap
    return job.figures.get("head lap" if hanging.on_wall else "track allowance")


def _column(job: Subject, view: View, left: float) -> Chain:
    """The gap under the leaf at the left and its height; the leaf over it, where one stands there."""
    door, wood = job.resolved.door, job.rules.wood
    first_at, first_gap = door.gaps[0]
    boxes = leaf_boxes(door)
    edge = min(box.x0 for box in boxes)
    own = [n for n, box in enumerate(boxes) if abs(box.x0 - edge) < _SAME]
    stops = [Stop(at=float(door.opening.floor[first_at]), foot=left)]
    links: list[Link | None] = [Link(figure=first_gap, rule=wood)]
    for n in sorted(own, key=lambda n: boxes[n].y0):
        if len(links) > 1:
            links.append(None)
        foot = view.x(boxes[n].x0)
        stops += [Stop(at=boxes[n].y0, foot=foot), Stop(at=boxes[n].y1, foot=foot)]
        links.append(Link(figure=door.leaves[n].height, rule=wood))
    return Chain(
        view=view,
        axis="up",
        line=left - FIRST + 1.0,
        stops=tuple(stops),
        links=tuple(links),
    )


def _plan_chains(
    job: Subject, view: View, extent: Extent, room: _Room, said: ProposalContent
) -> list[Chain]:
    """A door; the opening and what the doors lap it by; all of them."""
    door, wood = job.resolved.door, job.rules.wood
    hanging, opening = door.hanging, door.opening
    boxes = leaf_boxes(door)
    front = view.y(-extent.off_most)
    lines = [front - FIRST - room.next_chain * n for n in range(extent.plan_chains)]
    chains = [
        Chain(
            view=view,
            axis="across",
            line=lines[0],
            stops=(Stop(at=boxes[n].x0, foot=front), Stop(at=boxes[n].x1, foot=front)),
            links=(Link(figure=door.leaves[n].width, rule=wood),),
        )
        for n in _told_apart(door)
    ]
    lapped = job.figures.get("side lap") if hanging.on_wall else None
    if lapped is not None:
        lap = Link(figure=lapped, rule=wood)
        face = view.y(0.0)
        chains.append(
            Chain(
                view=view,
                axis="across",
                line=lines[1],
                stops=(
                    Stop(at=boxes[0].x0, foot=lines[0], inner=True),
                    Stop(at=0.0, foot=face),
                    Stop(at=float(opening.widest), foot=face),
                    Stop(at=boxes[-1].x1, foot=front),
                ),
                links=(lap, _said(job, view, opening.widest, said.opening), lap),
            )
        )
    gapped = bool(hanging.across) and hanging.across[0].what == "gap"
    ends = cover_stretch(door) if gapped else (boxes[0].x0, boxes[-1].x1)
    feet = (lines[-2], lines[-2] if hanging.on_wall else front)
    if gapped:
        feet = (view.y(0.0), view.y(0.0))
    chains.append(
        Chain(
            view=view,
            axis="across",
            line=lines[-1],
            stops=tuple(
                Stop(at=at, foot=foot, inner=not gapped)
                for at, foot in zip(ends, feet, strict=True)
            ),
            links=(_said(job, view, hanging.cover, said.plumb if gapped else said.over_all),),
        )
    )
    return chains


def _said(job: Subject, view: View, figure: Figure, words: str) -> Link:
    """A size with its words, as far as there is room for them."""
    link = Link(figure=figure, after=words, rule=job.rules.wood)
    room = float(figure) / view.scale - 2 * SIDES
    return link if width(link.text, TEXT) <= room else dataclasses.replace(link, after="")


def _told_apart(door: Door) -> tuple[int, ...]:
    """The leaves whose widths are said: the first, or every one where they differ."""
    first = door.leaves[0]
    if all(abs(float(leaf.width - first.width)) < _SAME for leaf in door.leaves):
        return (0,)
    return tuple(range(len(door.leaves)))


def _clear_way(job: Subject, view: View, extent: Extent) -> Chain:
    """Between the doors, or from the jamb where the opening is narrowest to the edge of them.

    Doors that swing towards the viewer leave the opening itself free to say it in.
    """
    door = job.resolved.door
    left, _ = clear_stretch(door, _open_state(job).open)
    right = left + float(door.hanging.clear_way)
    front = view.y(-extent.off_most)
    line, feet = front - FIRST + 3.0, (view.y(0.0), front)
    if any(leaf.hung.swing is not None and comes_towards(leaf) for leaf in door.leaves):
        face = view.y(0.0)
        line, feet = face + _IN_OPENING, (face, face)
    return Chain(
        view=view,
        axis="across",
        line=line,
        stops=(Stop(at=left, foot=feet[0]), Stop(at=right, foot=feet[1])),
        links=(Link(figure=door.hanging.clear_way, rule=job.rules.wood),),
    )


def _floor_words(draft: Draft, said: ProposalContent, view: View, extent: Extent) -> None:
    """Under the floor, what it does."""
    low = view.y(extent.low) - GROUND - 1.0
    box = Box(view.x(extent.x0), 0.0, view.x(extent.x1), low)
    set_text(draft, said.floor, box, low, NOTE, stacked=said.fractions)


def _names(
    draft: Draft,
    said: ProposalContent,
    place: Placing,
    extent: Extent,
    elevation: View,
    upright: View,
) -> None:
    """Over each view, what it is."""
    y = elevation.y(extent.high) + extent.wall_over + 1.4
    draft.add(Label(text=said.front, at=(elevation.x(extent.x0), y), height=NOTE, layer="table"))
    middle = (upright.x(0.0) + place.section_right) / 2
    x = min(middle, draft.paper.frame.x1 - width(said.side, NOTE) / 2)
    draft.add(Label(text=said.side, at=(x, y), height=NOTE, anchor="centre", layer="table"))


def _key(draft: Draft, said: ProposalContent, extent: Extent, view: View) -> None:
    """Beside the plan, what the lines mean; where there is no room it goes without."""
    frame = draft.paper.frame
    box = Box(view.x(extent.x1) + STUB + 7.0, frame.y0, frame.x1, 0.0)
    if box.width >= _KEY:
        y = view.y(0.0) + pitch(NOTE)
        set_text(draft, said.key, box, y, NOTE, layer="table")


def _wood_colour(said: ProposalContent) -> str:
    wood = said.dress.wood
    return wood.colour if isinstance(wood, Paint) else wood.early


def _tinted_front(job: Subject, view: View, said: ProposalContent) -> list[Tint]:
    """The leaves from the front, washed with their colour, the glass with its own."""
    wash = mixed(_wood_colour(said), "#ffffff", 0.52)
    pane = mixed(said.dress.glass.colour, "#ffffff", 0.80)
    door = job.resolved.door
    boxes = leaf_boxes(door)
    found = []
    # From the wall outwards, so that a leaf in front covers what it covers.
    for index in sorted(range(len(boxes)), key=lambda n: float(door.hanging.planes[n])):
        found.append(Tint(points=view.path(boxes[index].polygon), colour=wash))
        own = [piece for piece in job.shut if piece.group == door.leaves[index].name]
        for glass in (piece for piece in own if piece.part.material.look == "glass"):
            found.append(Tint(points=view.path(silhouette(glass)), colour=pane))
            found += [
                Tint(points=view.path(silhouette(piece)), colour=wash)
                for piece in own
                if _laps(piece, glass)
            ]
    return found


def _laps(piece: Piece, glass: Piece) -> bool:
    """Whether a piece of wood covers the edge of a pane that lies in its rebate."""
    if piece.part.material.look != "timber" or front(piece) >= front(glass):
        return False
    if any(isinstance(cut, Mitre) for cut in piece.part.cuts):
        return False
    return around(silhouette(piece)).meets(around(silhouette(glass)).grown(-_SAME))


def _tinted(job: Subject, view: View, said: ProposalContent) -> list[Tint]:
    """The leaves in a plan in the colour that they are pictured in."""
    wash = mixed(_wood_colour(said), "#ffffff", 0.35)
    outlines = []
    for cut in cuts_through(job.shut, "level", level_cut(job.resolved.door)):
        if cut.piece.part.material.look != "timber":
            continue
        outline = view.path(cut.outline)
        outlines.append(around(outline).polygon if _square(cut.piece) else outline)
    return [Tint(points=outline, colour=wash) for outline in outlines]


def _square(piece: Piece) -> bool:
    """Whether a piece stands square to the wall, so that a box about it is its own outline."""
    ways = (*piece.stands.x, *piece.stands.y)
    return all(min(abs(d), abs(1.0 - abs(d))) < _SAME for d in ways)
