"""A hinged pair: two leaves hung to the jambs, meeting in the middle.

seen from above, shut
jamb |hinge gap|__leaf A__|meeting gap|__leaf B__|hinge gap| jamb
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import Figure, named
from parametric.hangings.hanging import (
    Clearance,
    DoorBlock,
    EdgeRole,
    Fittings,
    Hanging,
    HungLeaf,
    Side,
    Site,
    Span,
    Stock,
    states_of,
)
from parametric.hangings.swinging import Opens, swing_of
from parametric.names import leaf_letter
from parametric.written import Angle, Equal, Length, Parts, Rest, Share


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
    meeting_stiles: Literal["butt"]

    @property
    def leaf_count(self) -> int:
        """Two."""
        return 2

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
            widths = (left, right)
        case Figure() as left, Equal() | Rest():
            widths = (left, room - left)
        case Equal() | Rest(), Figure() as right:
            widths = (room - right, right)
        case _:
            widths = (room / 2, room / 2)
    if abs(float(widths[0]) - float(widths[1])) < SAME_WIDTH:
        return (named("leaf width", widths[0]),) * 2
    return (named("left leaf width", widths[0]), named("right leaf width", widths[1]))


def _size(
    spec: HingedPairSpec, site: Site, stock: tuple[Stock, ...], fittings: Fittings
) -> Hanging:
    assert fittings.pin_out is not None
    gap = named("hinge gap", spec.hinge_gap)
    between = named("meeting gap", spec.meeting_gap)
    head_gap, floor_gap = named("head gap", spec.head_gap), named("floor gap", spec.floor_gap)
    room = named("width for the leaves", site.clear - 2 * gap - between)
    widths = leaf_widths(spec, room)
    height = named("leaf height", site.head - head_gap - floor_gap)
    lefts = (
        named("leaf A / left edge", site.clear_left + gap),
        named("leaf B / left edge", site.clear_left + gap + widths[0] + between),
    )
    bevel = named("edge bevel", spec.edge_bevel, "deg")
    planed = bevel if float(bevel) else None
    hinges: tuple[Side, Side] = ("left", "right")
    swings = tuple(
        swing_of(
            name=f"leaf {leaf_letter(i)}",
            hinge_side=hinges[i],
            opens=spec.opens,
            left=lefts[i],
            width=widths[i],
            thickness=stock[i].thickness,
            gap=gap,
            pin_out=fittings.pin_out,
            wall=site.wall,
            bevel=planed,
        )
        for i in range(2)
    )
    leaves = tuple(
        HungLeaf(
            letter=leaf_letter(i),
            block=spec.leaf_blocks[i],
            width=widths[i],
            height=height,
            left=lefts[i],
            foot=floor_gap,
            plane=swings[i].plane,
            left_edge=spec.roles()[i][0],
            right_edge=spec.roles()[i][1],
            motion=(swings[i].turn,),
            pull_side="right" if i == 0 else "left",
            swing=swings[i].angle,
            knuckles=swings[i].knuckles,
            left_bevel=planed if i == 1 else None,
            right_bevel=planed if i == 0 else None,
        )
        for i in range(2)
    )
    first = 0 if spec.first_to_open == "left" else 1
    only = f"{spec.first_to_open} leaf open"
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
            2,
        ),
        clear_way=named("clear way", site.clear - swings[0].in_the_way - swings[1].in_the_way),
        across=(
            Span(what="gap", name="left hinge gap", size=gap),
            Span(what="leaf", name="leaf A", size=widths[0]),
            Span(what="gap", name="meeting gap", size=between),
            Span(what="leaf", name="leaf B", size=widths[1]),
            Span(what="gap", name="right hinge gap", size=gap),
        ),
        head_gap=head_gap,
        meeting_gap=between,
        hinge_gap=gap,
        travel_gap=None
        if site.rise is None
        else named("floor gap in the travel", floor_gap - site.rise),
        reach=max((swing.reach for swing in swings), key=float),
        meeting=spec.meeting_stiles,
        clearances=tuple(
            Clearance(
                where=f"meeting gap beside leaf {leaf_letter(i)}",
                key="meeting gap",
                has=between,
                needs=swings[i].needs,
            )
            for i in range(2)
        ),
    )
