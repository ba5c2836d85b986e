"""Drawer boxes glued up: what is done in order, the diagonals they must show, clamps over cauls.

from above                 clamps press the sides home
  |  |      back      |  |
->|  |________________|  |<-
  |  |  bottom, dry   |  |
->|  |________________|  |<-
  |  |      front     |  |
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_corners import (
    BoxCorner,
    Corner,
    DovetailCorner,
    DowelCorner,
    RebateCorner,
    ScrewCorner,
)
from parametric.catalog.bench import BOX_CLAMPS, BOX_DIAGONALS
from parametric.figures import Figure, hypot, named
from parametric.model import Assembly
from parametric.names import SEPARATOR, join
from parametric.resolve.door import Resolved
from parametric.trade.cautions import GLUE
from parametric.trade.printed import Printed, printed


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerGlueUp:
    """Boxes glued up alike, mm: `boxes` are all of them, the first drawn and measured.

    `marks` are those of their pieces.
    """

    boxes: tuple[DrawerBox, ...]
    marks: tuple[str, ...]
    diagonal: Figure
    diagonals_differ: Figure
    clamps: Figure
    minutes: Figure
    steps: tuple[str, ...]
    cautions: tuple[str, ...]

    @property
    def box(self) -> DrawerBox:
        """The first of them."""
        return self.boxes[0]


def drawer_glue_ups(resolved: Resolved, assembly: Assembly) -> tuple[DrawerGlueUp, ...]:
    """Every box of a job's drawers; those of the same pieces together.

    Args:
        resolved: the job's numbers.
        assembly: its parts.

    Source: order and clamps are common practice, no source; the diagonal is Pythagoras.
    """
    casework = resolved.casework
    if casework is None:
        return ()
    marks: dict[str, list[str]] = {}
    for part in assembly.parts:
        if not part.supplied:
            marks.setdefault(part.name.rpartition(SEPARATOR)[0], []).append(part.mark)
    lots: dict[tuple[str, ...], list[DrawerBox]] = {}
    for drawer in casework.drawers:
        own = tuple(dict.fromkeys(marks[drawer.box.name]))
        lots.setdefault(own, []).append(drawer.box)
    return tuple(_lot(resolved, own, tuple(boxes)) for own, boxes in lots.items())


def _lot(resolved: Resolved, marks: tuple[str, ...], boxes: tuple[DrawerBox, ...]) -> DrawerGlueUp:
    box = boxes[0]
    diagonal = named(join(box.name, "glue-up", "diagonal"), hypot(box.width, box.length))
    return DrawerGlueUp(
        boxes=boxes,
        marks=marks,
        diagonal=diagonal,
        diagonals_differ=BOX_DIAGONALS,
        clamps=BOX_CLAMPS,
        minutes=named("glue minutes", resolved.shop.clamps.glue_minutes, "min"),
        steps=_steps(printed(resolved), box, diagonal),
        cautions=GLUE,
    )


def _steps(said: Printed, box: DrawerBox, diagonal: Figure) -> tuple[str, ...]:
    words = dict.fromkeys((_glued(box.front), _glued(box.back)))
    planed = isinstance(box.front, (DovetailCorner, BoxCorner)) or isinstance(
        box.back, (DovetailCorner, BoxCorner)
    )
    return (
        "Dry first, the bottom in its grooves: corners home, edges flush, the bottom free to move.",
        *(f"{word[:1].upper()}{word[1:]}; none in the grooves." for word in words),
        "Both sides on the front, the bottom into its grooves from behind, then the back.",
        f"Clamp over cauls clear of the joints' ends; diagonals {said.wood(diagonal)}, alike within "
        f"{said.fine(BOX_DIAGONALS)}; flat on a true board.",
        *(
            ("When set, plane the joints flush; the sides must not come out wider.",)
            if planed
            else ()
        ),
        f"Over the sides {said.wood(box.width)}: measure it against the case before the next.",
    )


def _glued(corner: Corner) -> str:
    """Where the glue goes."""
    match corner:
        case DovetailCorner():
            return "glue on the pins and in the sockets' sides, thin on end grain"
        case BoxCorner():
            return "glue on the sides of every finger"
        case RebateCorner():
            return "glue in the rebates, and on the ends first to seal them"
        case DowelCorner():
            return "glue in the holes, dowels into the ends first"
        case ScrewCorner():
            return "glue on the ends; clamp, drill, screw"
        case _:
            assert_never(corner)
