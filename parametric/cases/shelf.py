"""A shelf that lies on pins, or is let in at its ends: how long, how deep, what it bears.

seen from the front                        seen on end, a lip along the front
 ||  clearance            clearance ||      front              back
 ||<>|==========shelf===========|<>||      |^|=================|
 ||<-------------clear------------>||      |_| lip: thick x deep, flush on top
"""

from __future__ import annotations

from dataclasses import dataclass

from pydantic import Field, field_validator

from parametric.figures import Figure, named
from parametric.loaded import Load, Sag, Stiffness
from parametric.names import join
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
    lip: LengthPair | None = Field(default=None, description="thick x deep")
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """One shelf, mm: `span` is clear between what it lies on, `length` what is sawn.

    `load` kg/m or kg/m2; `sag` mm to the metre of span; `lip` thick and deep.
    """

    written: ShelfSpec
    name: str
    span: Figure
    length: Figure
    depth: Figure
    thickness: Figure
    load: Figure
    sag: Figure
    lip: tuple[Figure, Figure] | None


def size_shelf(
    spec: ShelfSpec, name: str, *, clear: Figure, case_depth: Figure, board: Figure, fixed: bool
) -> Shelf:
    """A shelf between two sides.

    Args:
        spec: as written.
        name: `cabinet upper / shelf 1`.
        clear: between the sides it stands between, mm.
        case_depth: what the case has room for from front to back, mm.
        board: thickness of the case's board, mm.
        fixed: its ends touch the sides; one that can be moved clears each of them.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    clearance = at("clearance", spec.clearance)
    lip = None
    if spec.lip is not None:
        lip = (at("lip thickness", spec.lip[0]), at("lip depth", spec.lip[1]))
    return Shelf(
        written=spec,
        name=name,
        span=at("clear", clear),
        length=at("length", clear if fixed else clear - 2 * clearance),
        depth=at("depth", case_depth if spec.depth is None else spec.depth),
        thickness=at("thickness", board if spec.thickness is None else spec.thickness),
        load=at("load", spec.load, spec.load.unit),
        sag=at("sag allowed", spec.sag, spec.sag.unit),
        lip=lip,
    )
