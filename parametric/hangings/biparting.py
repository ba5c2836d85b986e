"""Two leaves on one track line that part in the middle and slide away from one another.

seen from above, shut
wall ======|                         |=======
   <- - |____A____|gap|____B____| - ->
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
from parametric.written import Length


class BipartingSpec(FaceHungSpec):
    """Two leaves that part, as written."""

    kind: Literal["biparting"]
    hung: Literal["on the wall"]
    meeting_gap: Length

    @property
    def leaf_count(self) -> int:
        """Two."""
        return 2

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """They meet in the middle; their other edges stay over the wall."""
        return (("back", "meeting"), ("meeting", "back"))

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Each leaf covers half, less half the gap; it has slid clear when its meeting edge is at its own side."""
        face = over_the_face(self, site, stock, fittings)
        between = named("meeting gap", self.meeting_gap)
        width = named("leaf width", (face.cover - between) / 2)
        lefts = (
            named(join(stock[0].name, "left edge"), -face.lap),
            named(join(stock[1].name, "left edge"), -face.lap + width + between),
        )
        far = width - face.lap
        travels = (
            named(join(stock[0].name, "travel"), -far),
            named(join(stock[1].name, "travel"), far),
        )
        sides: tuple[Side, Side] = ("right", "left")
        return Hanging(
            kind=self.kind,
            on_wall=True,
            cover=face.cover,
            leaf_width=width,
            leaf_height=face.height,
            floor_gap=face.floor_gap,
            head_above_foot=face.head_above_foot,
            leaves=tuple(
                HungLeaf(
                    letter=stock[i].letter,
                    block=self.leaf_blocks[i],
                    width=width,
                    height=face.height,
                    left=lefts[i],
                    foot=face.floor_gap,
                    plane=face.plane,
                    left_edge=self.roles()[i][0],
                    right_edge=self.roles()[i][1],
                    motion=(Slide(direction=(1.0, 0.0, 0.0), travel=travels[i]),),
                    pull_side=sides[i],
                    travel=travels[i],
                    track=0,
                )
                for i in range(2)
            ),
            tracks=(
                TrackLine(
                    word="single",
                    plane=face.plane,
                    left=named("track begins at", lefts[0] - far),
                    length=named("track length", face.cover + 2 * far),
                ),
            ),
            states=states_of(
                {
                    "shut": {},
                    "left leaf open": {0: 1.0},
                    "half open": {0: 0.5, 1: 0.5},
                    "open": {0: 1.0, 1: 1.0},
                },
                stock,
            ),
            clear_way=named("clear way", site.narrowest),
            across=(
                Span(what="leaf", name=stock[0].name, size=width),
                Span(what="gap", name="meeting gap", size=between),
                Span(what="leaf", name=stock[1].name, size=width),
            ),
            wall_gap=face.wall_gap,
            stack_lap=face.stack_lap,
            meeting_gap=between,
            travel_gap=face.travel_gap,
            meeting="butt",
        )
