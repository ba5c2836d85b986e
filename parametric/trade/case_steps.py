"""Steps on site for the fronts of a case that stands: hinges, doors, then drawer fronts in line."""

from __future__ import annotations

from parametric.hangings.hanging import Case
from parametric.hardware.hinge import HingeKind
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.flap_steps import fit_flaps
from parametric.trade.hinge_places import HingeFixing
from parametric.trade.hinge_steps import seats
from parametric.trade.printed import Printed
from parametric.trade.site_words import Said, leaf_names


def fit_fronts(
    door: Door, case: Case, hinges: tuple[HingeFixing, ...], said: Printed
) -> list[Said]:
    """All fronts of a case, doors and flaps before drawers: a drawer is lined up with what hangs
    beside it.

    Source: common practice, no source.
    """
    doors = [leaf for leaf in door.leaves if leaf.hinges and leaf.hung.flap is None]
    still = [leaf for leaf in door.leaves if not leaf.hung.motion]
    drawers = [leaf for leaf in door.leaves if not leaf.hinges and leaf.hung.motion]
    gap = said.fine(case.gap)
    return [
        *(_doors(doors, hinges, gap, said) if doors else ()),
        *fit_flaps(door.leaves, gap, said),
        *(_drawers(drawers, gap) if drawers else ()),
        *(_fixed(still, gap) if still else ()),
    ]


def _doors(
    doors: list[Leaf], hinges: tuple[HingeFixing, ...], gap: str, said: Printed
) -> list[Said]:
    kind: HingeKind = doors[0].hinges[0].hinges.kind
    lots: dict[tuple[str, str], list[str]] = {}
    for leaf in dict.fromkeys(hinge.leaf for hinge in hinges):
        own = [hinge for hinge in hinges if hinge.leaf == leaf]
        down = ", ".join(said.fine(hinge.from_head) for hinge in own)
        up = ", ".join(said.fine(hinge.from_foot) for hinge in own)
        lots.setdefault((down, up), []).append(leaf)
    downs = "; ".join(f"{leaf_names(names)} {down}" for (down, _), names in lots.items())
    ups = "; ".join(f"{leaf_names(names)} {up}" for (_, up), names in lots.items())
    plates = "Square the hinges' plates" if kind == "cup" else "Mark the hinges"
    how = (
        "cups pressed home and square, arms hooked on from the top down"
        if kind == "cup"
        else "one screw in each flap, top hinge first, then the rest by hand"
    )
    return [
        (
            f"{plates} on the case's sides and partitions, each middle down from the underside of "
            f"its top: {downs}.",
            f"Up from the door's foot: {ups}. Where the two do not meet, believe neither: measure "
            "again.",
        ),
        *seats(list(hinges), said),
        (
            f"Hang {leaf_names([leaf.name for leaf in doors])} on packers {gap} thick: {how}.",
            "Held until every hinge has all its screws; let go at any place, nothing drops.",
        ),
        (
            "Set the hinges, up and down, across, then in and out.",
            f"{gap} at every gap from end to end, rails in one line, faces in one plane.",
        ),
    ]


def _drawers(drawers: list[Leaf], gap: str) -> list[Said]:
    names = leaf_names([leaf.name for leaf in drawers])
    return [
        (
            f"Drawer fronts last, from the foot up: {names} on packers {gap} thick, taped to what "
            "is beside, two screws from within the box; draw out, look, then the other screws.",
            f"Tops and feet in line with the fronts beside, {gap} at every gap; each draws out "
            "its whole travel and past open doors.",
        )
    ]


def _fixed(fronts: list[Leaf], gap: str) -> list[Said]:
    names = leaf_names([leaf.name for leaf in fronts])
    return [
        (
            f"Fixed fronts: {names} on packers {gap} thick, screwed from within the case.",
            f"In line with the fronts beside, {gap} at every gap; no screw shows.",
        )
    ]


BEFORE: tuple[str, ...] = (
    "The case level, square and fixed to the wall: fronts show every lean of it. Drawers drawn "
    "out together can tip a case that is not.",
    "Partitions and sides where the sheet has them: the gaps stand over their middles.",
)
"""What must hold before the first hinge goes on. Common practice, no source."""

BRING: tuple[str, ...] = (
    "tape, square, long straight edge, level, pencil, masking tape",
    "packers as thick as the gap, two clamps, blankets",
    "drill, bits for pilot holes with a stop, hand screwdriver",
)
"""What the fitter brings for them."""
