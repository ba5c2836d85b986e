"""Where drawers run in their cases: how high a box and its slides stand, how its front covers it.

front    box
|  | ____________________
|  ||                    |
|  ||- - - - - - - - - - | <- middle of its side slides, up from the case's foot
|  ||____________________| <- up, likewise
|__|      <- below it
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_written import SideSlidesSpec
from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.case_drawer import CaseDrawer
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf


@dataclass(frozen=True, slots=True, kw_only=True)
class Covers:
    """How far a front stands past the box it is planted on, mm; less than nothing where it is short."""

    below: Figure
    left: Figure
    right: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerPlace:
    """One drawer in its case, mm: `up` from the case's foot to its box's, `slides` to the screws
    of its side slides, None where it runs on others; `covers` is its front's, None without one.
    """

    case: str
    front: str
    box: DrawerBox
    up: Figure
    slides: Figure | None
    covers: Covers | None

    @property
    def called(self) -> str:
        """By its front's letter, else as it is named in its case: `drawer 1`."""
        return self.front or self.box.name.rpartition(" / ")[2]


def drawer_places(resolved: Resolved) -> tuple[DrawerPlace, ...]:
    """Every drawer of a job's cabinets, case by case from the top down.

    Source: slides near the middle of a side are common practice, no source; their data sheet wins.
    """
    casework = resolved.casework
    if casework is None:
        return ()
    leaves = {leaf.name: leaf for leaf in resolved.leaves}
    found = [_place(resolved, drawer, leaves.get(drawer.leaf)) for drawer in casework.drawers]
    order = [case.name for case in casework.cases]
    return tuple(sorted(found, key=lambda one: (order.index(one.case), -round(float(one.up), 3))))


def _place(resolved: Resolved, drawer: CaseDrawer, leaf: Leaf | None) -> DrawerPlace:
    box = drawer.box
    return DrawerPlace(
        case=drawer.case,
        front="" if leaf is None else leaf.letter,
        box=box,
        up=drawer.z,
        slides=_slides_of(resolved, drawer),
        covers=None if leaf is None else _covers(resolved, drawer, leaf),
    )


def _slides_of(resolved: Resolved, drawer: CaseDrawer) -> Figure | None:
    """Where the screws of its side slides stand: near the middle of its side, clear of what is cut."""
    casework = resolved.casework
    if casework is None or not isinstance(drawer.box.written, SideSlidesSpec):
        return None
    own = (slide for case in casework.bored for slide in case.slides)
    found = next((slide for slide in own if slide.drawer == drawer.name), None)
    return None if found is None else found.screws.up


def _covers(resolved: Resolved, drawer: CaseDrawer, leaf: Leaf) -> Covers:
    assert resolved.casework is not None, "a drawer stands in a case"
    case, box = resolved.casework.case(drawer.case).case, drawer.box
    left = drawer.x - (case.opening.left + leaf.hung.left)
    return Covers(
        below=named(join(box.name, "front below it"), drawer.z - (leaf.hung.foot - case.box.foot)),
        left=named(join(box.name, "front past it at the left"), left),
        right=named(join(box.name, "front past it at the right"), leaf.width - left - box.width),
    )
