"""What drawers run on and are put together with: slides in pairs, dowels, screws."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_corners import DowelCorner, ScrewCorner
from parametric.cases.drawer_written import SideSlidesSpec, UnderSlidesSpec, WoodenRunnersSpec
from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted, whole
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import Printed, weight, weight_limit


@dataclass(frozen=True, slots=True, kw_only=True)
class OnSlides:
    """A drawer's box and what it weighs with its front and all that hangs on it, kg, as cut."""

    box: DrawerBox
    moved: Figure

    @property
    def carried(self) -> Figure:
        """What a pair of slides carries, kg: the drawer and what lies in it."""
        total = self.moved + self.box.contents
        return named(join(self.box.name, "carried by its slides"), total, "kg")


def on_slides(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[OnSlides, ...]:
    """The drawers behind the fronts of a job, each with what it weighs; an inner one has no front.

    Args:
        resolved: the job, or what of it was narrowed to one case's fronts.
        loads: what its leaves weigh.
    """
    casework = resolved.casework
    fronted = {door.case for door in resolved.doors}
    weighed = {load.leaf: load.mass for load in loads}
    return tuple(
        OnSlides(box=drawer.box, moved=weighed[drawer.leaf] if drawer.leaf else drawer.box.weight)
        for drawer in (() if casework is None else casework.drawers)
        if drawer.case in fronted
    )


def hardware_for_slides(drawers: Sequence[OnSlides], said: Printed) -> Iterator[HardwareItem]:
    """One line for every sort of slide, dowel and screw of a job's drawers.

    Args:
        drawers: every box with what it weighs.
        said: how the job's lengths are said.
    """
    yield from _slides(drawers, said)
    yield from _fixings(drawers, said)


def _slides(drawers: Sequence[OnSlides], said: Printed) -> Iterator[HardwareItem]:
    lots: dict[tuple[str, str], list[OnSlides]] = {}
    for own in drawers:
        size = _size(own.box, said)
        if size is not None:
            rated = _rating(own.box, said)
            lots.setdefault((size, rated), []).append(own)
    for index, ((size, rated), lot) in enumerate(lots.items(), 1):
        what = "drawer slides" if len(lots) == 1 else f"drawer slides {index}"
        most = max((own.carried for own in lot), key=float)
        carries = (
            f"{rated}, and carries {weight(most, said.unit)}"
            if rated
            else f"rated {weight(most, said.unit)} a pair or more"
        )
        yield HardwareItem(
            what="drawer slide",
            number=counted(what, whole(len(lot))),
            unit="pair",
            size=size,
            length=lot[0].box.length,
            known_by=DESIGN,
            asked=f"{carries}, drawn out with what lies in it; with the screws its maker sends",
        )


def _size(box: DrawerBox, said: Printed) -> str | None:
    """What is ordered; None on strips of wood, which are made."""
    spec = box.written
    match spec:
        case SideSlidesSpec():
            where = f"at the sides, {said.fine(box.room_beside)} each"
        case UnderSlidesSpec():
            where = f"under the box, for sides of {said.wood(box.side)}"
        case WoodenRunnersSpec():
            return None
        case _:
            assert_never(spec)
    maker = f", {spec.maker_mark}" if spec.maker_mark else ""
    return f"{said.wood(box.length)} long, {where}, draws out {said.wood(box.draws_out)}{maker}"


def _rating(box: DrawerBox, said: Printed) -> str:
    spec = box.written
    if isinstance(spec, WoodenRunnersSpec) or spec.carries is None:
        return ""
    return f"rated {weight_limit(spec.carries, said.unit)} a pair as written"


def _fixings(drawers: Sequence[OnSlides], said: Printed) -> Iterator[HardwareItem]:
    """Dowels and screws of the boxes' corners: two of each corner that is counted."""
    lots: dict[tuple[str, str], tuple[int, Figure]] = {}
    for own in drawers:
        for corner in (own.box.front, own.box.back):
            if isinstance(corner, (DowelCorner, ScrewCorner)):
                word = "dowel" if isinstance(corner, DowelCorner) else "drawer screw"
                key = word, f"{said.fine(corner.thick)} × {said.fine(corner.long)}"
                many, _ = lots.get(key, (0, corner.long))
                lots[key] = many + 2 * len(corner.places), corner.long
    words = [word for word, _ in lots]
    for index, ((word, size), (many, long)) in enumerate(lots.items(), 1):
        name = f"{word}s" if words.count(word) == 1 else f"{word}s {index}"
        yield HardwareItem(
            what=word,
            number=counted(name, whole(many)),
            unit="off",
            size=size,
            length=long,
            known_by=DESIGN,
            asked="fluted, to the holes drilled"
            if word == "dowel"
            else "countersunk, to hold in the end of a board",
        )
