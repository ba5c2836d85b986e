"""Chains of a leaf's sheet: heights and hinges at its left, widths under it, the story stick's places."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.chains import FIRST, SIDES, Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Axis
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_layout import LeafExtent
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.ordinates import Place
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite

_FAR = "between hinges"


@dataclass(frozen=True, slots=True, kw_only=True)
class Grip:
    """What a leaf is opened by: its middle from the left edge and the foot, and from the edge
    nearest to it, mm; `half` is how far it reaches up and down.
    """

    word: str
    side: Side
    across: Figure
    up: Figure
    from_edge: Figure
    half: float


def grip_of(leaf: Leaf) -> Grip | None:
    """Its pull, else its bar handle or knob; None without either."""
    if leaf.pulls:
        hung = leaf.pulls[0]
        return Grip(
            word="pull",
            side=hung.side,
            across=hung.across,
            up=hung.pull.up,
            from_edge=hung.pull.from_edge,
            half=float(hung.pull.flange_length) / 2,
        )
    if (handle := leaf.handle) is None:
        return None
    return Grip(
        word="handle" if handle.kind == "bar" else "knob",
        side=handle.side or "left",
        across=handle.x,
        up=handle.up,
        from_edge=handle.from_edge if handle.side else handle.x,
        half=float(handle.across if handle.level else handle.apart + handle.across) / 2,
    )


_PAST_GRIP = 2.0
"""How far the middle lines of a handle pass it, mm on paper."""


def draw_handle_middle(draft: Draft, leaf: Leaf, view: View) -> None:
    """The middle lines of its bar handle or knob, which its places are told to."""
    handle = leaf.handle
    if handle is None or leaf.pulls:
        return
    (x0, y0), (x1, y1) = handle.holes[0], handle.holes[-1]
    past, x, y = _PAST_GRIP * view.scale, float(handle.x), float(handle.up)
    for a, b in (
        ((float(x0) - past, y), (float(x1) + past, y)),
        ((x, float(y0) - past), (x, float(y1) + past)),
    ):
        draft.line("centre", view.at(a), view.at(b), view.name)


def left_chains(job: Subject, leaf: Leaf, view: View, extent: LeafExtent) -> list[Chain]:
    """Bands, then the pull, then the whole with its trims, then the blank."""
    wood = job.rules.wood
    edge = view.x(0.0)
    lines = [edge - FIRST - extent.next_chain * level for level in range(extent.chains_left)]
    bands = leaf.bands[::-1]
    heights = [float(bands[0].foot), *(float(band.top) for band in bands)]
    chains = [
        chain
        for lite in leaf.lites
        if lite.bars and (chain := bars_chain(job, lite, view, "up", lines[0], edge))
    ]
    level = 1 if any(lite.bars for lite in leaf.lites) else 0
    chains.append(
        Chain(
            view=view,
            axis="up",
            line=lines[level],
            stops=tuple(
                Stop(at=h, foot=lines[0], inner=True) if level else Stop(at=h, foot=edge)
                for h in heights
            ),
            links=tuple(Link(figure=band.height, rule=wood) for band in bands),
        )
    )
    inner = lines[level]
    level += 1
    if leaf.hinges and leaf.hung.flap is None:
        # The ends of every hinge, as they are marked; the chain closes from foot to top.
        places = leaf.hinges[0].hinges.places[::-1]
        ends: list[Figure] = [end for place in places for end in (place.low, place.high)]
        stops_up = [0.0, *(float(end) for end in ends), float(leaf.height)]
        sizes = leaf.hinges[0].chain
        named, word = _named(job, sizes, view)
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=lines[level],
                stops=tuple(
                    Stop(at=at, foot=inner, inner=True)
                    if index in (0, len(stops_up) - 1)
                    else Stop(at=at, foot=edge)
                    for index, at in enumerate(stops_up)
                ),
                links=tuple(
                    Link(
                        figure=size,
                        after=word if index == named else "",
                        rule=wood,
                    )
                    for index, size in enumerate(sizes)
                ),
            )
        )
        level += 1
    grip = grip_of(leaf)
    if grip is not None:
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=lines[level],
                stops=(
                    Stop(at=0.0, foot=inner, inner=True),
                    Stop(at=float(grip.up), foot=edge),
                ),
                links=(Link(figure=grip.up, after=grip.word, rule=wood),),
            )
        )
        level += 1
    trim, height = float(leaf.trim), float(leaf.height)
    whole: tuple[Link | None, ...] = (Link(figure=leaf.height, rule=wood),)
    stops: tuple[Stop, ...] = (
        Stop(at=0.0, foot=lines[level - 1], inner=True),
        Stop(at=height, foot=inner, inner=True),
    )
    if trim > 0:
        off = Link(figure=leaf.trim, rule=wood)
        stops = (Stop(at=-trim, foot=edge), *stops, Stop(at=height + trim, foot=edge))
        whole = (off, *whole, off)
    chains.append(Chain(view=view, axis="up", line=lines[level], stops=stops, links=whole))
    if trim > 0:
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=lines[level + 1],
                stops=(
                    Stop(at=-trim, foot=lines[level], inner=True),
                    Stop(at=height + trim, foot=lines[level], inner=True),
                ),
                links=(Link(figure=leaf.stile_blank, after="blank", rule=wood),),
            )
        )
    return chains


def _named(job: Subject, sizes: tuple[Figure, ...], view: View) -> tuple[int, str]:
    """Which link of a chain of hinges is named: where there is most room for words, between two
    of them; else the first hinge.
    """
    most = max(range(2, len(sizes) - 2, 2), key=lambda index: float(sizes[index]))
    said = width(f"{job.rules.wood.dimension(sizes[most])} {_FAR}", TEXT) + SIDES
    return (most, _FAR) if float(sizes[most]) / view.scale >= said else (1, "hinge")


def _flap_chain(job: Subject, leaf: Leaf, view: View, line: float) -> Chain:
    """The hinges of a flap from its left end to its right, as they are marked."""
    hinges = leaf.hinges[0]
    sizes, foot = hinges.chain, view.y(0.0)
    ends = [float(end) for place in hinges.hinges.places for end in (place.low, place.high)]
    named, word = _named(job, sizes, view)
    return Chain(
        view=view,
        axis="across",
        line=line,
        stops=tuple(Stop(at=at, foot=foot) for at in (0.0, *ends, float(leaf.width))),
        links=tuple(
            Link(figure=size, after=word if index == named else "", rule=job.rules.wood)
            for index, size in enumerate(sizes)
        ),
    )


def bars_chain(
    job: Subject, lite: Lite, view: View, axis: Axis, line: float, foot: float
) -> Chain | None:
    """A divided opening pane by pane, up or across: daylight and bars; None where no bar parts it
    that way. Bars are all of one width: the first one's stands for all.
    """
    wood, upright = job.rules.wood, axis == "across"
    bars = sorted((b for b in lite.bars if b.upright == upright), key=lambda b: float(b.low))
    if not bars or lite.cell is None or lite.section is None:
        return None
    day = lite.cell[0 if upright else 1]
    start = float(bars[0].low - day)
    places = [start]
    links: list[Link | None] = []
    for index, bar in enumerate(bars):
        places += [float(bar.low), float(bar.high)]
        face = Link(figure=lite.section.face, rule=wood) if index == 0 else None
        links += [Link(figure=day, rule=wood), face]
    places.append(float(bars[-1].high + day))
    links.append(Link(figure=day, rule=wood))
    return Chain(
        view=view,
        axis=axis,
        line=line,
        stops=tuple(Stop(at=at, foot=foot) for at in places),
        links=tuple(links),
    )


def bottom_chains(job: Subject, leaf: Leaf, view: View, first: float) -> list[Chain]:
    """Panes and bars where there are any, the hinges of a flap; stile, shoulder, stile; then the
    whole width.
    """
    wood = job.rules.wood
    foot = view.y(-float(leaf.trim))
    panes: list[Chain] = []
    for lite in leaf.lites:
        chain = bars_chain(job, lite, view, "across", first, view.y(0.0))
        # Twins one over another have the same columns: the widths are said once.
        if chain is not None and not panes:
            panes.append(chain)
    inner = bool(panes)
    if inner:
        first -= wood.next_chain
    if leaf.hinges and leaf.hung.flap is not None:
        panes.append(_flap_chain(job, leaf, view, first))
        inner, first = True, first - wood.next_chain
    left, shoulder = float(leaf.left_stile), float(leaf.shoulder)
    stops = (0.0, left, left + shoulder, float(leaf.width))
    feet = (foot, view.y(0.0), view.y(0.0), foot)
    return [
        *panes,
        Chain(
            view=view,
            axis="across",
            line=first,
            stops=tuple(
                Stop(at=at, foot=first + wood.next_chain, inner=True)
                if inner and f == feet[1]
                else Stop(at=at, foot=f)
                for at, f in zip(stops, feet, strict=True)
            ),
            links=(
                Link(figure=leaf.left_stile, rule=wood),
                Link(figure=leaf.shoulder, rule=wood),
                Link(figure=leaf.right_stile, rule=wood),
            ),
        ),
        Chain(
            view=view,
            axis="across",
            line=first - wood.next_chain,
            stops=(
                Stop(at=0.0, foot=first, inner=True),
                Stop(at=float(leaf.width), foot=first, inner=True),
            ),
            links=(Link(figure=leaf.width, rule=wood),),
        ),
    ]


_OFF_HEIGHTS = 3.4
"""What a value beside a leaf keeps from the heights of its rails there, mm on paper."""


def pull_chain(draft: Draft, job: Subject, leaf: Leaf, view: View) -> None:
    """How far the middle of its pull or handle is from the leaf's edge, over it or under it."""
    grip = grip_of(leaf)
    if grip is None:
        return
    link = Link(figure=grip.from_edge, rule=job.rules.wood)
    edge = 0.0 if grip.side == "left" else float(leaf.width)
    options = []
    for end, way in ((grip.half, 1.0), (-grip.half, -1.0)):
        end_y = view.y(float(grip.up) + end)
        for off in (5.0, 8.0, 11.0):
            stops = sorted(
                (Stop(at=edge, foot=None), Stop(at=float(grip.across), foot=end_y)),
                key=lambda stop: stop.at,
            )
            options.append(
                Chain(
                    view=view,
                    axis="across",
                    line=end_y + way * off,
                    stops=tuple(stops),
                    links=(link,),
                )
            )
    # A value too wide for its link stands beside the leaf, among the heights of its rails.
    heights = [view.y(float(figure)) for figure in _edges_up(leaf)]
    options.sort(key=lambda chain: any(abs(chain.line - y) < _OFF_HEIGHTS for y in heights))
    middle = view.x((edge + float(grip.across)) / 2)
    for chain in options:
        label = Label(text=link.text, at=(middle, chain.line + 0.8), anchor="centre")
        if draft.free(label.box):
            place_chains(draft, [chain])
            return
    place_chains(draft, options[:1])


def _edges_up(leaf: Leaf) -> list[Figure]:
    """The heights of every edge of a rail and of a level bar, from the finished foot."""
    bands = leaf.bands[::-1]
    return [
        bands[0].foot,
        *(band.top for band in bands),
        *(
            edge
            for lite in leaf.lites
            for bar in lite.bars
            if not bar.upright
            for edge in (bar.low, bar.high)
        ),
    ]


def stick_places(job: Subject, leaf: Leaf) -> list[Place]:
    """Every edge of a rail and of a level bar, from the finished foot."""
    figures = _edges_up(leaf)
    return [
        Place(at=float(figure), figure=figure, start=0.0, rule=job.rules.wood) for figure in figures
    ]
