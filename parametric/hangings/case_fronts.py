"""The fronts of one case as written: how they lie, what they leave, and what stands in each bay."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.hangings.front_places import FrontsLie, hinge_side
from parametric.hangings.fronts import HINGED, BayLine, FrontLine
from parametric.hangings.hanging import DoorBlock, EdgeRole, Fit
from parametric.written import Group, Length, Name, Rest

Matching = Literal["none", "up", "across"]
"""Which way the grain of fronts runs on: up through each bay, or across from bay to bay."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafStay:
    """The stay that a flap calls, None where it names none; `line` is where the flap is written."""

    name: str | None
    line: Group


class CaseFronts(DoorBlock):
    """The fronts of one case: what is written of them, and which leaves they come to."""

    fronts: FrontsLie = Field(description="within the case's opening, or over its edges")
    front_gap: Length = Field(description="between fronts, and round those that are inset")
    edge_reveal: Length = Field(description="what an overlay leaves to be seen of the case's edge")
    case_edge: Length = Field(description="how thick the case's sides are, seen from the front")
    partition: Length | None = Field(
        default=None, description="the same of what stands between two bays; 0 for none"
    )
    drawer_leaf: Name | None = None
    drawer_travel: Length | None = Field(default=None, description="how far drawers draw out")
    fronts_matched: Matching = Field(
        description="which way their grain runs on from one to the next; or none"
    )
    left_to_right: tuple[BayLine, ...] | None = None
    top_to_bottom: tuple[FrontLine, ...] | None = None

    @property
    def fit(self) -> Fit:
        """Inset fronts fit inside; an overlay covers."""
        return "fits" if self.fronts == "inset" else "covers"

    @property
    def needs(self) -> tuple[str, ...]:
        """Doors and flaps hang on hinges; drawers do not."""
        hung = any(front.kind in HINGED for bay in self.bays for front in bay.fronts)
        return ("hinge",) if hung else ()

    @property
    def hangs_on(self) -> tuple[str, ...] | None:
        """A butt's pin stands beside the leaf, so over an edge only an arm reaches the case.

        A flap is reckoned to turn about the corner of its face, as it does on cup hinges.
        """
        flaps = any(front.kind == "flap" for bay in self.bays for front in bay.fronts)
        return ("cup", "butt") if self.fronts == "inset" and not flaps else ("cup",)

    @property
    def bays(self) -> tuple[BayLine, ...]:
        """From the left; a case with one list from the top is one bay."""
        if self.left_to_right is not None:
            return self.left_to_right
        return (BayLine.model_construct(bay=Rest(), top_to_bottom=self.top_to_bottom or ()),)

    @property
    def leaf_count(self) -> int:
        """One for each drawer, single door, flap and fixed front, two for a pair."""
        return len(self.leaf_blocks)

    @property
    def leaf_bays(self) -> tuple[int, ...]:
        """The bay that each leaf stands in, from the left."""
        return tuple(
            index
            for index, bay in enumerate(self.bays)
            for front in bay.fronts
            for _ in range({"open": 0, "door pair": 2}.get(front.kind, 1))
        )

    @property
    def leaf_blocks(self) -> tuple[str | None, ...]:
        """By the line of each front, else the door's own, of drawers and of doors."""
        found: list[str | None] = []
        for bay in self.bays:
            for front in bay.fronts:
                if front.kind == "open":
                    continue
                drawer = front.kind == "drawer" and self.drawer_leaf is not None
                name = front.leaf or (self.drawer_leaf if drawer else self.leaf)
                twice = 2 if front.kind == "door pair" else 1
                found += [None if name is None else str(name)] * twice
        return tuple(found)

    @property
    def leaf_stays(self) -> tuple[LeafStay | None, ...]:
        """What each leaf says of its stay, in the order of the leaves; None of what is no flap."""
        found: list[LeafStay | None] = []
        for bay in self.bays:
            for front in bay.fronts:
                if front.kind == "flap":
                    name = None if front.stay is None else str(front.stay)
                    found.append(LeafStay(name=name, line=front.line))
                elif front.kind != "open":
                    found += [None] * (2 if front.kind == "door pair" else 1)
        return tuple(found)

    def callers(self) -> tuple[Group, ...]:
        """Every line."""
        return tuple(
            line for bay in self.left_to_right or () for line in (bay, *(bay.top_to_bottom or ()))
        ) + (self.top_to_bottom or ())

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """Doors hang by one edge; those of a pair meet with the other, single ones close."""
        found: list[tuple[EdgeRole, EdgeRole]] = []
        for index, bay in enumerate(self.bays):
            for front in bay.fronts:
                match front.kind:
                    case "drawer" | "fixed front" | "flap":
                        found.append(("free", "free"))
                    case "open":
                        pass
                    case "door pair":
                        found += [("hinge", "meeting"), ("meeting", "hinge")]
                    case "door":
                        on_left = hinge_side(front, index, len(self.bays)) != "right"
                        found.append(("hinge", "closing") if on_left else ("closing", "hinge"))
        return tuple(found)
