"""The lip under the front edge of a case's shelves: its size, its wood, and how stiff that is.

seen on end, from the side
  front                         back
  |============shelf==============|
  |_| lip, on edge: thick x deep, glued under the front edge; the shelf keeps its whole depth
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.shelf import ShelfSpec
from parametric.catalog.stiffness import TIMBER_STIFFNESS
from parametric.catalog.timbers import TIMBERS, Timber
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.figures import Figure, named, smallest
from parametric.resolve.panel_field import resolve_timber
from parametric.resolve.stiffness import timber_stiffness


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfLip:
    """A lip as it is made, mm; `stiffness` of its wood, N/mm2."""

    thickness: Figure
    depth: Figure
    timber: Timber
    stiffness: Figure


def shelf_of(design: Design, spec: CabinetSpec) -> ShelfSpec:
    """The shelves that a cabinet calls."""
    found = design.block("shelf", None if spec.shelf is None else str(spec.shelf))
    assert isinstance(found, ShelfSpec), "every job has one"
    return found


def lip_of(design: Design, spec: CabinetSpec) -> ShelfLip | None:
    """The lip of a cabinet's shelves that can be moved; None without one."""
    written = shelf_of(design, spec)
    if written.lip is None:
        return None
    return ShelfLip(
        thickness=written.lip[0],
        depth=written.lip[1],
        timber=resolve_timber(design, _timber(design, spec)),
        stiffness=lip_stiffness(design, spec),
    )


def lip_stiffness(design: Design, spec: CabinetSpec) -> Figure:
    """How stiff the wood of a lip is, or of one that might be given, N/mm2: as written or its timber's.

    Of a timber that nobody knows so well, as little as the least stiff of those known.
    """
    written = shelf_of(design, spec)
    if written.lip_stiffness is not None:
        return written.lip_stiffness
    known = timber_stiffness(design, _timber(design, spec))
    return known or named(
        "stiffness of the least stiff timber", smallest(*TIMBER_STIFFNESS.values()), "N/mm2"
    )


def _timber(design: Design, spec: CabinetSpec) -> str:
    """The lip's own timber, else that of the cabinet's fronts, else the first of the catalogue."""
    leaf = design.block("leaf", None if spec.leaf is None else str(spec.leaf))
    own = shelf_of(design, spec).lip_timber
    fronts = leaf.timber if isinstance(leaf, LeafSpec) else None
    return str(own or fronts or next(iter(TIMBERS)))
