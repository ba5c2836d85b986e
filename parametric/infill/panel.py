"""What every panel is that stands in grooves: how it is written, and what it measures there.

  groove deep
|<--------->|
 _______________
|  clearance |          the frame, in its dampest season
|<->|________|____
|   |  panel          engagement: from the panel's edge to the opening
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.catalog.boards import Board
from parametric.catalog.timbers import Timber
from parametric.figures import Figure, named
from parametric.names import join
from parametric.written import Block, Length, LengthPair, Name

Grain = Literal["upright", "level"]


class PanelBlock(Block):
    """What is written of every panel. groove: wide x deep."""

    kind: str
    thickness: Length
    grain: Grain
    groove: LengthPair = Field(description="wide x deep")
    groove_by: Literal["saw", "router"]
    clearance: Length
    end_clearance: Length | None = None


class SolidPanelBlock(PanelBlock):
    """What is written beside it of a panel glued up from boards of timber."""

    timber: Name | None = None
    sawn: Literal["flat", "quarter"] | None = None
    stock: Length = Field(description="the widest board there is to glue it up from")


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelTongue:
    """What a panel is thinned to at its edges, mm: `back` is the rebate behind it."""

    thickness: Figure
    length: Figure
    back: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A panel resolved. Lengths mm; moisture in %; `across` is across the grain."""

    name: str
    grain: Grain
    groove_by: Literal["saw", "router"]
    material: Timber | Board
    groove_width: Figure
    groove_depth: Figure
    opening_across: Figure
    opening_along: Figure
    across: Figure
    along: Figure
    thickness: Figure
    movement: Figure
    engagement_dry: Figure
    engagement_made: Figure
    engagement_damp: Figure
    end_engagement: Figure

    @property
    def width(self) -> Figure:
        """Size across the leaf."""
        return self.across if self.grain == "upright" else self.along

    @property
    def height(self) -> Figure:
        """Size up the leaf."""
        return self.along if self.grain == "upright" else self.across

    @property
    def moves(self) -> bool:
        """Whether it grows and shrinks with the seasons: solid timber does, sheet material not."""
        return isinstance(self.material, Timber)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasons:
    """Moisture content of the wood when made, and over a year in its room, %."""

    made: Figure
    driest: Figure
    dampest: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class InGroove:
    """The sizes that let a solid panel move in its grooves, mm, and the grooves themselves."""

    groove_width: Figure
    groove_depth: Figure
    opening_across: Figure
    opening_along: Figure
    across: Figure
    along: Figure
    movement: Figure
    engagement_dry: Figure
    engagement_made: Figure
    engagement_damp: Figure
    end_engagement: Figure


def float_in_groove(
    spec: SolidPanelBlock,
    *,
    name: str,
    opening_width: Figure,
    opening_height: Figure,
    moves: Figure,
    seasons: Seasons,
) -> InGroove:
    """Size a solid panel so that it still has its clearance in each groove in the dampest season.

    Across the grain: (opening + 2 grooves - 2 clearances) / (1 + C (dampest - made)); along
    it wood does not move, so opening + 2 (groove - end clearance).

    Args:
        spec: the panel as written.
        name: its name (`leaf A / panel`).
        opening_width: between the stiles, mm.
        opening_height: between the rails, mm.
        moves: its timber's movement coefficient, per %.
        seasons: moisture contents, %.

    Source: movement, Wood Handbook (FPL-GTR-190) ch. 13 eq. 13-2; the rest is
    common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    upright = spec.grain == "upright"
    opening_across = at("opening across the grain", opening_width if upright else opening_height)
    opening_along = at("opening along the grain", opening_height if upright else opening_width)
    groove_width, groove_depth = (
        at("groove width", spec.groove[0]),
        at("groove depth", spec.groove[1]),
    )
    clearance = at("clearance", spec.clearance)
    ends = spec.clearance if spec.end_clearance is None else spec.end_clearance
    end_clearance = at("end clearance", ends)
    coefficient = at("movement coefficient", moves, "per %")
    made = named("moisture made", seasons.made, "%")
    driest = named("moisture driest", seasons.driest, "%")
    dampest = named("moisture dampest", seasons.dampest, "%")

    across = at(
        "size across the grain",
        (opening_across + 2 * groove_depth - 2 * clearance) / (1 + coefficient * (dampest - made)),
    )
    along = at("size along the grain", opening_along + 2 * (groove_depth - end_clearance))
    return InGroove(
        groove_width=groove_width,
        groove_depth=groove_depth,
        opening_across=opening_across,
        opening_along=opening_along,
        across=across,
        along=along,
        movement=at("seasonal movement", across * coefficient * (dampest - driest)),
        engagement_dry=at(
            "engagement at the driest",
            (across * (1 + coefficient * (driest - made)) - opening_across) / 2,
        ),
        engagement_made=at("engagement as made", (across - opening_across) / 2),
        engagement_damp=at(
            "engagement at the dampest",
            (across * (1 + coefficient * (dampest - made)) - opening_across) / 2,
        ),
        end_engagement=at("engagement at the ends", (along - opening_along) / 2),
    )
