"""A single leaf hung to one jamb.

seen from above, shut, hinged on the left
jamb |hinge gap|________A________|lock gap| jamb
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import named
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
from parametric.hangings.swinging import Opens, bevel_faults, swing_of
from parametric.names import join
from parametric.problems import Problem
from parametric.written import Angle, Length


class HingedSpec(DoorBlock):
    """One leaf hung to a jamb, as written."""

    kind: Literal["hinged"]
    opens: Opens
    hinge_side: Side
    hinge_gap: Length
    lock_gap: Length
    head_gap: Length
    edge_bevel: Angle

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs on hinges."""
        return ("hinge",)

    def faults(self) -> tuple[Problem, ...]:
        """A bevel that is no bevel."""
        return bevel_faults(self, self.edge_bevel)

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """Hung on one side, closing on the other."""
        return (("hinge", "closing"),) if self.hinge_side == "left" else (("closing", "hinge"),)

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """The leaf fits the plumb clear width, less a gap at either side."""
        assert fittings.pin_out is not None, "the reader has seen that there are hinges"
        on_left = self.hinge_side == "left"
        gap, lock = named("hinge gap", self.hinge_gap), named("lock gap", self.lock_gap)
        head_gap, floor_gap = named("head gap", self.head_gap), named("floor gap", self.floor_gap)
        width = named("leaf width", site.clear - gap - lock)
        height = named("leaf height", site.head - head_gap - floor_gap)
        left = named(join(stock[0].name, "left edge"), site.clear_left + (gap if on_left else lock))
        bevel = named("edge bevel", self.edge_bevel, "deg")
        planed = bevel if float(bevel) else None
        swing = swing_of(
            name=stock[0].name,
            hinge_side=self.hinge_side,
            opens=self.opens,
            left=left,
            width=width,
            thickness=stock[0].thickness,
            gap=gap,
            pin_out=fittings.pin_out,
            pin_beside=fittings.pin_beside,
            wall=site.wall,
            bevel=planed,
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
            leaf_height=height,
            floor_gap=floor_gap,
            head_above_foot=named("head above the foot", site.head - floor_gap),
            leaves=(
                HungLeaf(
                    letter=stock[0].letter,
                    block=self.leaf_blocks[0],
                    width=width,
                    height=height,
                    left=left,
                    foot=floor_gap,
                    plane=swing.plane,
                    left_edge=roles[0],
                    right_edge=roles[1],
                    motion=(swing.turn,),
                    pull_side="right" if on_left else "left",
                    swing=swing.angle,
                    knuckles=swing.knuckles,
                    lock_edge="right" if on_left else "left",
                    hinged=((self.hinge_side, swing.knuckles),),
                    left_bevel=None if on_left else planed,
                    right_bevel=planed if on_left else None,
                ),
            ),
            tracks=(),
            states=states_of({"shut": {}, "half open": {0: 0.5}, "open": {0: 1.0}}, stock),
            clear_way=named("clear way", site.clear - swing.in_the_way),
            across=(
                gaps[0] if on_left else gaps[1],
                Span(what="leaf", name=stock[0].name, size=width),
                gaps[1] if on_left else gaps[0],
            ),
            head_gap=head_gap,
            hinge_gap=gap,
            lock_gap=lock,
            travel_gap=site.gap_in_travel(floor_gap),
            reach=swing.reach,
            clearances=(Clearance(where="lock gap", key="lock gap", has=lock, needs=swing.needs),),
        )
