"""A dutch door: two leaves one over the other, hung to one jamb; the upper opens alone.

seen from the side, opening to the left
 upper | |          the upper leaf's lip stands before the lower's, so that it
       | |_         opens first and the lower one is held while it is shut
       |_| |  split
        _| |
 lower | | |
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from parametric.figures import Figure, named
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
    states_of,
)
from parametric.hangings.swinging import Opens, bevel_faults, swing_of
from parametric.names import join
from parametric.problems import Problem
from parametric.written import Angle, Length, Name

AIR_IN_REBATE = 0.5
"""Of the gap between two edges, what is left between their stepped faces. Common practice, no source."""


class DutchSpec(DoorBlock):
    """Two leaves one over the other, as written."""

    kind: Literal["dutch"]
    opens: Opens
    hinge_side: Side
    hinge_gap: Length
    lock_gap: Length
    head_gap: Length
    edge_bevel: Angle
    split: Length
    split_gap: Length
    split_joint: Literal["rebated"]
    split_rebate: Length
    upper_leaf: Name
    lower_leaf: Name

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs on hinges."""
        return ("hinge",)

    @property
    def leaf_count(self) -> int:
        """Two."""
        return 2

    @property
    def leaf_blocks(self) -> tuple[str | None, ...]:
        """The upper leaf's block, then the lower's."""
        return (str(self.upper_leaf), str(self.lower_leaf))

    @property
    def unused(self) -> Mapping[str, str]:
        """Its leaves are named one by one."""
        return {"leaf": "`upper leaf` and `lower leaf`"}

    def faults(self) -> tuple[Problem, ...]:
        """A bevel that is no bevel."""
        return bevel_faults(self, self.edge_bevel)

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """Both are hung on one side and close on the other."""
        roles: tuple[EdgeRole, EdgeRole] = (
            ("hinge", "closing") if self.hinge_side == "left" else ("closing", "hinge")
        )
        return (roles, roles)

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Both fit the plumb clear width; they share the height at the split."""
        assert fittings.pin_out is not None, "the reader has seen that there are hinges"
        on_left = self.hinge_side == "left"
        gap, lock = named("hinge gap", self.hinge_gap), named("lock gap", self.lock_gap)
        head_gap, floor_gap = named("head gap", self.head_gap), named("floor gap", self.floor_gap)
        split, between = named("split", self.split), named("split gap", self.split_gap)
        step = named("split rebate", self.split_rebate)
        width = named("leaf width", site.clear - gap - lock)
        left = named("left edge of the leaves", site.clear_left + (gap if on_left else lock))
        upper_foot = named(join(stock[0].name, "foot"), split + between / 2)
        heights = (
            named("upper leaf height", site.head - head_gap - upper_foot),
            named("lower leaf height", split - between / 2 + step - floor_gap),
        )
        feet = (upper_foot, floor_gap)
        bevel = named("edge bevel", self.edge_bevel, "deg")
        planed = bevel if float(bevel) else None
        swings = [
            swing_of(
                name=stock[i].name,
                hinge_side=self.hinge_side,
                opens=self.opens,
                left=left,
                width=width,
                thickness=stock[i].thickness,
                gap=gap,
                pin_out=fittings.pin_out,
                pin_beside=fittings.pin_beside,
                wall=site.wall,
                bevel=planed,
            )
            for i in range(2)
        ]
        leading = self.opens == "towards you"
        rebates = (
            EdgeRebate(
                edge="foot",
                face="back" if leading else "front",
                width=step,
                depth=self._deep(stock[0], between),
            ),
            EdgeRebate(
                edge="top",
                face="front" if leading else "back",
                width=step,
                depth=self._deep(stock[1], between),
            ),
        )
        seen = named(
            join(stock[0].name, "above the one below"),
            upper_foot + heights[0] - (floor_gap + heights[1]),
        )
        roles = self.roles()[0]
        gaps = (
            Span(what="gap", name="hinge gap", size=gap),
            Span(what="gap", name="lock gap", size=lock),
        )
        return Hanging(
            kind=self.kind,
            on_wall=False,
            cover=named("cover", site.clear),
            leaf_width=width,
            leaf_height=max(heights, key=float),
            floor_gap=floor_gap,
            head_above_foot=named("head above the foot", site.head - floor_gap),
            leaves=tuple(
                HungLeaf(
                    letter=stock[i].letter,
                    block=self.leaf_blocks[i],
                    width=width,
                    height=heights[i],
                    left=left,
                    foot=feet[i],
                    plane=swings[i].plane,
                    left_edge=roles[0],
                    right_edge=roles[1],
                    motion=(swings[i].turn,),
                    pull_side="right" if on_left else "left",
                    swing=swings[i].angle,
                    knuckles=swings[i].knuckles,
                    lock_edge="right" if on_left else "left",
                    hinged=((self.hinge_side, swings[i].knuckles),),
                    left_bevel=None if on_left else planed,
                    right_bevel=planed if on_left else None,
                    seen_height=seen if i == 0 else None,
                    rebates=(rebates[i],),
                    stacked=True,
                )
                for i in range(2)
            ),
            tracks=(),
            states=states_of(
                {"shut": {}, "upper leaf open": {0: 1.0}, "open": {0: 1.0, 1: 1.0}}, stock
            ),
            clear_way=named("clear way", site.clear - swings[0].in_the_way),
            across=(
                gaps[0] if on_left else gaps[1],
                Span(
                    what="leaf", name=f"leaves {stock[0].letter} and {stock[1].letter}", size=width
                ),
                gaps[1] if on_left else gaps[0],
            ),
            head_gap=head_gap,
            hinge_gap=gap,
            lock_gap=lock,
            split_gap=between,
            travel_gap=site.gap_in_travel(floor_gap),
            reach=swings[0].reach,
            clearances=(
                Clearance(where="lock gap", key="lock gap", has=lock, needs=swings[0].needs),
            ),
        )

    def _deep(self, leaf: Stock, between: Figure) -> Figure:
        """Half the thickness, and half of the air between the two lips."""
        return named(
            join(leaf.name, "split rebate depth"),
            leaf.thickness / 2 + between * AIR_IN_REBATE / 2,
        )
