"""What leaves that turn hang by: hinges by size and number, or pivots, and what keeps them shut."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.figures import exceeds
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.hinge_kinds import AnyHinges
from parametric.hardware.pivot import Pivots
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted
from parametric.trade.hinge_places import hung_edges
from parametric.trade.loads import LeafLoad, OnHinges
from parametric.trade.printed import Printed, weight, weight_limit


def hardware_for_hinges(
    resolved: Resolved, loads: tuple[LeafLoad, ...], said: Printed
) -> Iterator[HardwareItem]:
    """One line for every size of hinge; nothing where no leaf is hinged."""
    carried = {own.hinges: own for load in loads for own in load.on_hinges}
    lots: dict[tuple[str, str], list[AnyHinges]] = {}
    on_jambs: set[str] = set()
    for _, hung, on in (edge for door in resolved.doors for edge in hung_edges(door)):
        lots.setdefault((hung.hinges.kind, _size(hung.hinges, said)), []).append(hung.hinges)
        if on == "jamb":
            on_jambs.add(hung.hinges.name)
    for index, ((_, size), hinges) in enumerate(lots.items()):
        number = hinges[0].count
        for more in hinges[1:]:
            number = number + more.count
        what = _word(hinges[0])
        each = max((carried[own.name] for own in hinges), key=lambda own: float(own.share))
        yield HardwareItem(
            what=what,
            number=counted(f"{what}s" if len(lots) == 1 else f"{what}s {index + 1}", number),
            unit="off",
            size=f"{size}{_maker(hinges[0])}",
            length=None,
            known_by=DESIGN,
            asked=f"{_rating(each, said)}; {_with(hinges[0], on_jambs, said)}",
        )


def _word(hinges: AnyHinges) -> str:
    match hinges:
        case ButtHinges():
            return "butt hinge"
        case CupHinges():
            return "cup hinge"
        case Pivots():
            return "pivot"
        case _:
            assert_never(hinges)


def _size(hinges: AnyHinges, said: Printed) -> str:
    match hinges:
        case ButtHinges():
            return (
                f"{said.fine(hinges.mortise.length)} long, flap {said.fine(hinges.flap)} wide × "
                f"{said.fine(hinges.written.thick)} thick, knuckle {said.fine(hinges.knuckle)}, "
                f"{_corners(hinges, said)}"
            )
        case CupHinges():
            return (
                f"cup {said.fine(hinges.cup)} across × {said.fine(hinges.depth)} deep, "
                f"{said.fine(hinges.from_edge)} from the edge"
            )
        case Pivots():
            return f"top and bottom, pin {said.fine(hinges.width)} × {said.fine(hinges.depth)}"
        case _:
            assert_never(hinges)


def _corners(hinges: ButtHinges, said: Printed) -> str:
    corner = hinges.mortise.corner
    return "square corners" if float(corner) == 0 else f"corners of radius {said.fine(corner)}"


def _maker(hinges: AnyHinges) -> str:
    mark = hinges.written.maker_mark
    return f", {mark}" if mark else ""


def _rating(own: OnHinges, said: Printed) -> str:
    """What one must carry, beside what is written of it."""
    pull = f"{weight(own.pull, said.unit)} sideways at the top one"
    # a flap pulls none of its hinges aside
    aside = exceeds(own.pull, 0.0)
    if own.rating is None:
        needs = f"rated {weight(own.share, said.unit)} each or more"
        return f"{needs}, and {pull}" if aside else needs
    carries = (
        f"rated {weight_limit(own.rating, said.unit)} each as written, and carries "
        f"{weight(own.share, said.unit)}"
    )
    return f"{carries}, {pull}" if aside else carries


def _with(hinges: AnyHinges, on_jambs: set[str], said: Printed) -> str:
    """The screws."""
    if isinstance(hinges, ButtHinges) and hinges.screw is not None:
        thick, long = (said.fine(size) for size in (hinges.screw.thick, hinges.screw.long))
        return f"with screws {thick} × {long} for leaf and jamb, every hole filled"
    stud = "; the top one's long enough to hold past the jamb" if hinges.name in on_jambs else ""
    return f"with the screws its maker sends, every hole filled{stud}"
