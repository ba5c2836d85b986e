"""A drawer of a case where it stands: its box, and what it runs on."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_runners import DrawerRunners
from parametric.figures import Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseDrawer:
    """A drawer's box: `x`, `y`, `z` of its low corner in its case's frame, mm; `z` is over the case's
    foot.

    `leaf` is its front; an inner drawer, behind a door, has none of its own: "". `pack` is how far
    the sides of its bay stand back from what it must pass through, each; `runners` what it runs on
    where that is strips of wood, which stay in the case.
    """

    case: str
    leaf: str
    box: DrawerBox
    x: Figure
    y: float
    z: Figure
    pack: Figure
    runners: DrawerRunners | None = None

    @property
    def name(self) -> str:
        """`leaf E / drawer`, or `cabinet robe / drawer 1`."""
        return self.box.name
