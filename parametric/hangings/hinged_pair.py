"""A hinged pair: two leaves hung to the jambs, meeting in the middle.

seen from above, shut
jamb |hinge gap|__leaf A__|meeting gap|__leaf B__|hinge gap| jamb
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, assert_never

from parametric.figures import Figure, named
from parametric.hangings.closing_arc import bevel_across
from parametric.hangings.hanging import (
    Clearance,
    DoorBlock,
    EdgeRebate,
    EdgeRole,
    Fittings,
    Hanging,
    HungLeaf,
    Side,
    Site,
    Span,
    Stock,
    Strip,
    states_of,
)
from parametric.hangings.swinging import Opens, bevel_faults, swing_of
from parametric.names import join
from parametric.problems import Problem
from parametric.written import Angle, Equal, Length, LengthPair, Parts, Rest, Share


class HingedPairSpec(DoorBlock):
    """Two leaves that meet, as written."""

    kind: Literal["hinged pair"]
    opens: Opens
    hinge_gap: Length
    head_gap: Length
    meeting_gap: Length
    edge_bevel: Angle
    left_leaf: Share
    right_leaf: Share
    first_to_open: Side
    meeting_stiles: Literal["butt", "rebated", "astragal"]
    meeting_rebate: Length
    astragal: LengthPair

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs on hinges."""
        return ("hinge",)

    @property
    def leaf_count(self) -> int:
        """Two."""
        return 2

    @property
    def unused(self) -> Mapping[str, str]:
        """A butt has no step and no strip; a stepped edge is not planed."""
        by = f"`meeting stiles: {self.meeting_stiles}`"
        match self.meeting_stiles:
            case "butt":
                keys: tuple[str, ...] = ("meeting rebate", "astragal")
            case "rebated":
                keys = ("astragal", "edge bevel")
            case "astragal":
                keys = ("meeting rebate",)
            case _:
                assert_never(self.meeting_stiles)
        return dict.fromkeys(keys, by)

    def faults(self) -> tuple[Problem, ...]:
        """A bevel that is no bevel; a share of one leaf that the other has no part in."""
        return (*bevel_faults(self, self.edge_bevel), *self._shares())

    def _shares(self) -> tuple[Problem, ...]:
        if isinstance(self.left_leaf, Parts) == isinstance(self.right_leaf, Parts):
            return ()
        by_parts, other = (
            ("left leaf", "right leaf")
            if isinstance(self.left_leaf, Parts)
            else ("right leaf", "left leaf")
        )
        return (
            Problem(
                code="shares_do_not_match",
                level="stop",
                message=f"The {by_parts} takes parts and the {other} does not: parts of what?",
                where=self.line(by_parts),
                about=self.heading,
                found=f"parts of the {by_parts} alone",
                allowed="parts of both, a width of one, or neither",
                fix=f"Write the {other} in parts too, or the {by_parts} as a width.",
                unreadable=True,
            ),
        )

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """Hung at the jambs, meeting in the middle."""
        return (("hinge", "meeting"), ("meeting", "hinge"))

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Both leaves within the plumb clear width."""
        return _size(self, site, stock, fittings)


SAME_WIDTH = 1e-6
"""Two leaves no farther apart than this are one width, mm."""


def leaf_widths(spec: HingedPairSpec, room: Figure) -> tuple[Figure, Figure]:
    """How the two leaves share what the gaps leave them."""
    match spec.left_leaf, spec.right_leaf:
        case Parts(count=left), Parts(count=right):
            widths = (room * left / (left + right), room * right / (left + right))
        case Figure() as left, Figure() as right:
            widths = (named("left leaf", left), named("right leaf", right))
        case Figure() as left, Equal() | Rest():
            widths = (named("left leaf", left), room - named("left leaf", left))
        case Equal() | Rest(), Figure() as right:
            widths = (room - named("right leaf", right), named("right leaf", right))
        case _:
            widths = (room / 2, room / 2)
    if abs(float(widths[0]) - float(widths[1])) < SAME_WIDTH:
        return (named("leaf width", widths[0]),) * 2
    return (named("left leaf width", widths[0]), named("right leaf width", widths[1]))


AIR_IN_REBATE = 0.5
"""Of the gap between two edges, what is left between their stepped faces. Common practice, no source."""


def _first(spec: HingedPairSpec) -> int:
    return 0 if spec.first_to_open == "left" else 1


def _meeting(index: int) -> Side:
    return "right" if index == 0 else "left"


def _over(spec: HingedPairSpec, index: int) -> Literal["front", "back"]:
    """The face that a leaf's overlap leaves standing: that of the leaf that opens first leads."""
    leading = spec.opens == "towards you"
    return "front" if (index == _first(spec)) == leading else "back"


def _rebates(
    spec: HingedPairSpec, index: int, leaf: Stock, overlap: Figure, between: Figure
) -> tuple[EdgeRebate, ...]:
    if spec.meeting_stiles != "rebated":
        return ()
    return (
        EdgeRebate(
            edge=_meeting(index),
            face="back" if _over(spec, index) == "front" else "front",
            width=overlap,
            depth=named(
                join(leaf.name, "rebate depth"),
                leaf.thickness / 2 + between * AIR_IN_REBATE / 2,
            ),
        ),
    )


def _strip(spec: HingedPairSpec, index: int, between: Figure) -> Strip | None:
    """The astragal: on the leaf that opens first, over the gap, half on either side of its middle."""
    if spec.meeting_stiles != "astragal" or index != _first(spec):
        return None
    wide = named("astragal width", spec.astragal[0])
    return Strip(
        edge=_meeting(index),
        face=_over(spec, index),
        width=wide,
        thickness=named("astragal thickness", spec.astragal[1]),
        over=named("astragal past the edge", wide / 2 + between / 2),
    )


def _size(
    spec: HingedPairSpec, site: Site, stock: tuple[Stock, ...], fittings: Fittings
) -> Hanging:
    assert fittings.pin_out is not None
    gap = named("hinge gap", spec.hinge_gap)
    between = named("meeting gap", spec.meeting_gap)
    head_gap, floor_gap = named("head gap", spec.head_gap), named("floor gap", spec.floor_gap)
    overlap = named("meeting rebate", spec.meeting_rebate)
    room = named("width for the leaves", site.clear - 2 * gap - between)
    if spec.meeting_stiles == "rebated":
        room = named("width for the leaves", site.clear - 2 * gap - between + overlap)
    widths = leaf_widths(spec, room)
    height = named("leaf height", site.head - head_gap - floor_gap)
    lefts = (
        named(join(stock[0].name, "left edge"), site.clear_left + gap),
        named(
            join(stock[1].name, "left edge"),
            site.clear_left + site.clear - gap - widths[1]
            if spec.meeting_stiles == "rebated"
            else site.clear_left + gap + widths[0] + between,
        ),
    )
    bevel = named("edge bevel", spec.edge_bevel, "deg")
    # A rebated edge is stepped, not planed.
    planed = bevel if float(bevel) and spec.meeting_stiles != "rebated" else None
    hinges: tuple[Side, Side] = ("left", "right")
    swings = tuple(
        swing_of(
            name=stock[i].name,
            hinge_side=hinges[i],
            opens=spec.opens,
            left=lefts[i],
            width=widths[i],
            thickness=stock[i].thickness,
            gap=gap,
            pin_out=fittings.pin_out,
            pin_beside=fittings.pin_beside,
            wall=site.wall,
            bevel=planed,
        )
        for i in range(2)
    )
    leaves = tuple(
        HungLeaf(
            letter=stock[i].letter,
            block=spec.leaf_blocks[i],
            width=widths[i],
            height=height,
            left=lefts[i],
            foot=floor_gap,
            plane=swings[i].plane,
            left_edge=spec.roles()[i][0],
            right_edge=spec.roles()[i][1],
            motion=(swings[i].turn,),
            pull_side=_meeting(i),
            swing=swings[i].angle,
            knuckles=swings[i].knuckles,
            lock_edge=_meeting(i) if i == _first(spec) else None,
            strike_edge=None if i == _first(spec) else _meeting(i),
            hinged=((hinges[i], swings[i].knuckles),),
            rebates=_rebates(spec, i, stock[i], overlap, between),
            strip=_strip(spec, i, between),
            left_bevel=planed if i == 1 else None,
            right_bevel=planed if i == 0 else None,
        )
        for i in range(2)
    )
    first = _first(spec)
    only = f"{spec.first_to_open} leaf open"
    apart = between
    if spec.meeting_stiles == "rebated":
        apart = named("gap less the overlap", between - overlap)
    return Hanging(
        kind=spec.kind,
        on_wall=False,
        cover=named("cover", site.clear),
        leaf_width=max(widths, key=float),
        leaf_height=height,
        floor_gap=floor_gap,
        head_above_foot=named("head above the foot", site.head - floor_gap),
        leaves=leaves,
        tracks=(),
        states=states_of(
            {
                "shut": {},
                only: {first: 1.0},
                "half open": {0: 0.5, 1: 0.5},
                "open": {0: 1.0, 1: 1.0},
            },
            stock,
        ),
        clear_way=named("clear way", site.clear - swings[0].in_the_way - swings[1].in_the_way),
        across=(
            Span(what="gap", name="left hinge gap", size=gap),
            Span(what="leaf", name=stock[0].name, size=widths[0]),
            Span(what="gap", name="meeting gap", size=apart),
            Span(
                what="leaf",
                name=stock[1].name,
                size=widths[1],
                past=named(f"{stock[1].name} past {stock[0].name}", widths[1] + apart)
                if float(apart) < 0
                else None,
            ),
            Span(what="gap", name="right hinge gap", size=gap),
        ),
        head_gap=head_gap,
        meeting_gap=between,
        hinge_gap=gap,
        travel_gap=site.gap_in_travel(floor_gap),
        reach=max((swing.reach for swing in swings), key=float),
        meeting=spec.meeting_stiles,
        meeting_rebate=overlap if spec.meeting_stiles == "rebated" else None,
        planed_gap=None
        if planed is None
        else named(
            "meeting gap on the planed face",
            between
            + bevel_across(stock[0].thickness, planed, join(stock[0].name, "bevel"))
            + bevel_across(stock[1].thickness, planed, join(stock[1].name, "bevel")),
        ),
        clearances=tuple(
            Clearance(
                where=f"meeting gap beside {stock[i].name}",
                key="meeting gap",
                has=between,
                needs=swings[i].needs,
            )
            for i in range(2)
        ),
    )
