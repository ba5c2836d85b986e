"""A shelf that lies on pins, or is let in at its ends: how long, how deep, what it bears.

seen from the front                        seen on end, a lip under the front
 ||  clearance            clearance ||      front              back
 ||<>|==========shelf===========|<>||      |===================|
 ||<-------------clear------------>||      |_| lip: thick x deep
"""

from __future__ import annotations

from pydantic import Field, field_validator

from parametric.figures import Figure
from parametric.loaded import Load, Sag, Stiffness
from parametric.written import Block, Length, LengthPair, Name, refuse


class ShelfSpec(Block):
    """Shelves as written: what is left out is the case's."""

    thickness: Length | None = Field(default=None, description="the board's, where it is not said")
    depth: Length | None = Field(
        default=None, description="from front to back; the case's, where it is not said"
    )
    clearance: Length = Field(description="at each end of a shelf that can be moved")
    set_back: Length = Field(description="its front, where no depth is said, from the case's")
    load: Load
    sag: Sag
    lip: LengthPair | None = Field(
        default=None,
        description="thick x deep: a strip on edge under the front of a shelf that can be moved",
    )
    lip_timber: Name | None = None
    lip_stiffness: Stiffness | None = None

    @field_validator("lip")
    @classmethod
    def _a_lip_has_a_size(cls, lip: tuple[Figure, Figure] | None) -> tuple[Figure, Figure] | None:
        if lip is not None and min(lip) <= 0:
            raise refuse(
                "wrong_sizes",
                "A lip is thick x deep, both more than 0.",
                allowed="thick x deep: 20 x 40",
                fix="Take the lip out, or write its sizes.",
            )
        return lip
