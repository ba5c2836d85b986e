"""A pocket door: a leaf that slides into the thickness of the wall.

seen from above, shut; the pocket is on the right
wall ====|                 |=== pocket ================|
        [|________A________|__]                        buffer
     enters             stays in
     jamb               the pocket
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import named
from parametric.hangings.hanging import (
    DoorBlock,
    EdgeRole,
    Fittings,
    Hanging,
    HungLeaf,
    Side,
    Site,
    Span,
    Stock,
    TrackLine,
    states_of,
)
from parametric.model import Slide
from parametric.names import join
from parametric.written import Length


class PocketSpec(DoorBlock):
    """One leaf in the thickness of the wall, as written."""

    kind: Literal["pocket"]
    pocket: Side
    enters_jamb: Length
    stays_in_pocket: Length
    above_head: Length
    left_out: Length
    buffer: Length
    buffer_clearance: Length

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs from a track."""
        return ("track",)

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """It closes with the edge that enters the jamb."""
        return (("closing", "back"),) if self.pocket == "right" else (("back", "closing"),)

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """The leaf fills the clear width, enters the jamb, stays in the pocket and reaches above the head."""
        del fittings  # it hangs in the middle of the wall, wherever the track's data sheet has it
        thickness = stock[0].thickness
        to_right = self.pocket == "right"
        enters = named("enters the jamb", self.enters_jamb)
        stays = named("stays in the pocket", self.stays_in_pocket)
        out = named("left out when open", self.left_out)
        floor_gap = named("floor gap", self.floor_gap)
        width = named("leaf width", site.clear + enters + stays)
        height = named(
            "leaf height", site.head + named("above the head", self.above_head) - floor_gap
        )
        plane = named(
            "middle off the wall face", -thickness / 2 if site.wall is None else -site.wall / 2
        )
        left = named(
            join(stock[0].name, "left edge"), site.clear_left - (enters if to_right else stays)
        )
        far = site.clear - out + enters
        travel = named(join(stock[0].name, "travel"), far if to_right else -far)
        roles = self.roles()[0]
        return Hanging(
            kind=self.kind,
            on_wall=False,
            cover=named("cover", width),
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
                    plane=plane,
                    left_edge=roles[0],
                    right_edge=roles[1],
                    motion=(Slide(direction=(1.0, 0.0, 0.0), travel=travel),),
                    pull_side="left" if to_right else "right",
                    travel=travel,
                    track=0,
                ),
            ),
            tracks=(
                TrackLine(
                    word="pocket",
                    plane=plane,
                    left=named("track begins at", left if to_right else left - far),
                    length=named("track length", width + far),
                ),
            ),
            states=states_of({"shut": {}, "half open": {0: 0.5}, "open": {0: 1.0}}, stock),
            clear_way=named("clear way", site.clear - out),
            across=(Span(what="leaf", name=stock[0].name, size=width),),
            wall_gap=None
            if site.wall is None
            else named("gap beside the leaf in the wall", (site.wall - thickness) / 2),
            pocket=named(
                "depth of the pocket",
                width
                - enters
                - out
                + named("buffer", self.buffer)
                + named("buffer clearance", self.buffer_clearance),
            ),
            travel_gap=site.gap_in_travel(floor_gap),
        )
