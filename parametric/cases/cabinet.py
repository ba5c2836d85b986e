"""A cabinet as written: a case of sheet material, what stands in it, and the fronts it wears."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from parametric.cases.at_least import Filling
from parametric.cases.lines import CaseBayLine, CaseLine, InsideLine
from parametric.hangings.case_fronts import Matching
from parametric.hangings.front_places import FrontsLie
from parametric.hangings.fronts import DOORS, Front, FrontKind
from parametric.written import (
    Block,
    Count,
    Group,
    Length,
    LengthPair,
    Name,
    Pins,
    Rest,
    Share,
)

CaseKind = Literal["frameless", "face frame"]
Corners = Literal["dowel", "screw", "pocket screw", "loose tenon", "glue"]
"""What holds a case's level boards to its upright ones; glue alone only where they are let in."""
Ends = Literal["none", "left", "right", "both"]
PlanKind = Literal["diagonal corner", "inside corner", "angled end"]
"""What a case is, seen from above, where it is no rectangle."""


class CabinetSpec(Block):
    """A cabinet as written."""

    kind: CaseKind
    in_: Name | None = None
    stands_on: Name | None = Field(default=None, description="a cabinet, by its name; or floor")
    above_floor: Length | None = Field(default=None, description="where one hangs on the wall")
    from_left: Length | None = Field(
        default=None, description="of one that stands in no run, from the left of the opening"
    )
    width: Share | None = None
    height: Share | None = None
    depth: Length
    plan: PlanKind | None = Field(
        default=None,
        description="of a case that stands in a corner, or whose front runs back at an angle",
    )
    right_width: Length | None = Field(
        default=None, description="of one in a corner: along the wall to the right of it"
    )
    right_depth: Length | None = Field(
        default=None, description="of its right side, where that is another than its left one's"
    )
    left_depth: Length | None = Field(
        default=None, description="of the left side of an angled end that runs back to the left"
    )
    board: Name | None = None
    back: Name | None = None
    face_frame: Name | None = None
    leaf: Name | None = None
    drawer_leaf: Name | None = None
    hinge: Name | None = None
    stay: Name | None = Field(default=None, description="what holds its flaps open")
    drawer: Name | None = None
    pull: Name | None = None
    shelf: Name | None = None
    finish: Name | None = None
    fronts: FrontsLie
    front_gap: Length = Field(description="between fronts, and round those that are inset")
    edge_reveal: Length = Field(description="what an overlay leaves to be seen of the case's edge")
    fronts_matched: Matching = Field(
        description="which way their grain runs on from one to the next; or none"
    )
    corners: Corners
    dado: Length = Field(description="how deep level boards are let into upright ones; 0 for none")
    stretchers: Length | None = Field(
        default=None, description="how wide two of them are that close the case in place of a top"
    )
    kick: LengthPair | None = Field(default=None, description="high x deep")
    counter: Length | None = Field(default=None, description="how thick the counter on it is")
    overhang: Length = Field(description="of a counter or a lid past the fronts")
    cut_out: LengthPair | None = Field(
        default=None, description="long x deep, through the middle of the counter: for a basin"
    )
    lid: Length | None = Field(
        default=None, description="how thick a lid over it is, in place of a counter"
    )
    cable_way: Length | None = Field(
        default=None, description="across a hole in the back of each space for equipment"
    )
    air: LengthPair | None = Field(
        default=None, description="long x high, two slots in the back of each of those spaces"
    )
    plinth: Length = Field(description="of a cabinet that stands on one of its own")
    top_filler: Filling | None = None
    finished_ends: Ends
    top: Literal["level", "follows rake"]
    top_gap: Length = Field(description="under a ceiling that slopes")
    left_to_right: tuple[CaseBayLine, ...] | None = None
    top_to_bottom: tuple[CaseLine, ...] | None = None
    inside: tuple[InsideLine, ...] | None = None
    shelves: Count | None = None
    pinned: Pins | None = None

    @property
    def bays(self) -> tuple[CaseBayLine, ...]:
        """From the left; a cabinet with one list, or none, is one bay."""
        if self.left_to_right is not None:
            return self.left_to_right
        bay: CaseBayLine = CaseBayLine.model_construct(
            bay=Rest(),
            top_to_bottom=self.top_to_bottom,
            inside=self.inside,
            shelves=self.shelves,
            leaf=None,
            hinge_side=None,
        )
        bay.stands_for(self)
        return (bay,)

    def fronts_of(self, bay: CaseBayLine) -> tuple[Front, ...]:
        """What stands in a bay, from the top; a bay without a list is open throughout."""
        if bay.top_to_bottom is None and bay.word == "bay":
            return (Front(kind="open", size=Rest(), leaf=None, hinge=None, line=bay),)
        return bay.fronts

    def kinds(self) -> set[FrontKind]:
        """The kinds of front that it wears."""
        return {front.kind for bay in self.bays for front in self.fronts_of(bay)}

    @property
    def held_by(self) -> Corners:
        """What holds its corners: boards that are let in need nothing more, unless it is said."""
        if self.plan is not None:
            return "screw"
        let_in = float(self.dado) > 0 and self.origin("corners") == "assumed"
        return "glue" if let_in else self.corners

    @property
    def has_fronts(self) -> bool:
        """Whether it wears any."""
        return bool(self.kinds() - {"open"})

    @property
    def has_doors(self) -> bool:
        """Whether any of them hangs on hinges."""
        return bool(self.kinds() & set(DOORS))

    @property
    def has_drawers(self) -> bool:
        """Whether anything in it draws out."""
        inner = any(line.space == "drawer" for bay in self.bays for line in bay.inside or ())
        return inner or "drawer" in self.kinds()

    def callers(self) -> tuple[Group, ...]:
        """Lines of its lists that may call a leaf of their own."""
        lines = tuple(
            line for bay in self.left_to_right or () for line in (bay, *(bay.top_to_bottom or ()))
        )
        return lines + (self.top_to_bottom or ())
