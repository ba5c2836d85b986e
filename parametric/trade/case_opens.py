"""What opens of a case, as it weighs on it: doors, flaps on their stays, drawers full of clothes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.figures import Figure, named, sine
from parametric.names import join
from parametric.resolve.case_drawer import CaseDrawer
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.leaf import Leaf
from parametric.trade.tip_over import Opens, clothes_in


def what_opens(
    casework: Casework,
    standing: StandingCase,
    fronts: Sequence[tuple[Leaf, Figure]],
    foot: Figure,
) -> Iterator[Opens]:
    """Its doors, its flaps, its drawers, and those behind its doors.

    Args:
        casework: all cabinets and their drawers.
        standing: the case.
        fronts: its leaves with what they weigh, kg.
        foot: how far behind its front edges its foot line lies, mm.
    """
    leaves = {leaf.name: leaf for leaf, _ in fronts}
    for leaf, weight in fronts:
        proud = _proud(standing, leaf)
        out = None
        if leaf.hung.flap is not None:
            out = leaf.height * sine(leaf.hung.flap.angle)
        elif leaf.hung.swing is not None:
            out = leaf.width
        if out is not None:
            yield Opens(
                name=leaf.name,
                weight=weight,
                shut=-proud - foot,
                ahead=foot + proud + out / 2,
                edge=foot + proud + out,
            )
    for drawer in casework.drawers:
        if drawer.case == standing.name:
            yield _drawer(standing, drawer, leaves.get(drawer.leaf), foot)


def _proud(standing: StandingCase, leaf: Leaf) -> Figure:
    """How far the middle of a front's thickness stands before the case's front edges, mm."""
    plane, frame = leaf.hung.plane, standing.case.frame
    name = join(standing.name, leaf.name, "before the front edges")
    return named(name, plane if frame is None else plane + frame.thickness)


def _drawer(standing: StandingCase, drawer: CaseDrawer, front: Leaf | None, foot: Figure) -> Opens:
    """A drawer drawn out as far as it goes, full of clothes to the top of its sides.

    One behind a door has no front of its own.
    """
    box = drawer.box
    clothes = clothes_in(
        join(box.name, "clothes in it"),
        width=box.between,
        height=box.height,
        length=box.length - 2 * box.end,
    )
    full = named(join(box.name, "weight with clothes"), box.weight + clothes, "kg")
    weight, moment, edge = full, full * (drawer.y + box.length / 2), box.draws_out - drawer.y
    if front is not None:
        own, proud = front.weights.estimate, _proud(standing, front)
        weight, moment, edge = full + own, moment - own * proud, box.draws_out + proud
    behind = named(join(box.name, "middle behind the front edges when shut"), moment / weight)
    return Opens(
        name=drawer.leaf or drawer.name,
        weight=named(join(box.name, "weight with its front and clothes"), weight, "kg"),
        shut=behind - foot,
        ahead=box.draws_out - behind + foot,
        edge=edge + foot,
    )
