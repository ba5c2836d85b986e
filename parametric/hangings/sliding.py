"""A single leaf that slides over the face of a wall.

seen from above, shut; it opens to the right
wall ======|            |=======
       |________A________|- - - - - - ->
       lap    opening   lap
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import named
from parametric.hangings.face_hung import FaceHungSpec, over_the_face
from parametric.hangings.hanging import (
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


class SlidingSpec(FaceHungSpec):
    """One leaf over the face of a wall, as written."""

    kind: Literal["sliding"]
    hung: Literal["on the wall"]
    opens_to: Side

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """It closes with the edge that leads when it shuts."""
        return (("closing", "back"),) if self.opens_to == "right" else (("back", "closing"),)

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """The leaf covers; it has slid clear when its closing edge is at the far side of the opening."""
        face = over_the_face(self, site, stock, fittings)
        width = named("leaf width", face.cover)
        left = named(join(stock[0].name, "left edge"), -face.lap)
        to_right = self.opens_to == "right"
        far = site.widest + face.lap
        travel = named(join(stock[0].name, "travel"), far if to_right else -far)
        roles = self.roles()[0]
        length = named("track length", width + far)
        return Hanging(
            kind=self.kind,
            on_wall=True,
            cover=face.cover,
            leaf_width=width,
            leaf_height=face.height,
            floor_gap=face.floor_gap,
            head_above_foot=face.head_above_foot,
            leaves=(
                HungLeaf(
                    letter=stock[0].letter,
                    block=self.leaf_blocks[0],
                    width=width,
                    height=face.height,
                    left=left,
                    foot=face.floor_gap,
                    plane=face.plane,
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
                    word="single",
                    plane=face.plane,
                    left=named("track begins at", left if to_right else left - far),
                    length=length,
                ),
            ),
            states=states_of({"shut": {}, "half open": {0: 0.5}, "open": {0: 1.0}}, stock),
            clear_way=named("clear way", site.narrowest),
            across=(Span(what="leaf", name=stock[0].name, size=width),),
            wall_gap=face.wall_gap,
            stack_lap=face.stack_lap,
            travel_gap=face.travel_gap,
        )
