"""The stays of every flap of the cabinets, put where the flap and its bay of the case are."""

from __future__ import annotations

import dataclasses

from parametric.design import Design
from parametric.figures import Figure, named
from parametric.hangings.case_fronts import CaseFronts
from parametric.hangings.flaps import HungFlap
from parametric.hangings.hanging import Side
from parametric.hardware.stay import HeldFlap, NoPlace
from parametric.hardware.stay_kinds import Stays, StaySpec, size_stays
from parametric.names import join
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_stays import LeafStays, StaySide
from parametric.resolve.one_door import Door, stay_of


def with_stays(design: Design, casework: Casework, doors: tuple[Door, ...]) -> tuple[Door, ...]:
    """The doors of the job, every flap of a case with what holds it open.

    Args:
        design: the blocks.
        casework: the cabinets.
        doors: all doors; those that are no fronts of a case come back as they are.
    """
    return tuple(
        _door(design, casework.case(door.case), door) if door.case else door for door in doors
    )


def _door(design: Design, case: StandingCase, door: Door) -> Door:
    spec = door.written
    if not isinstance(spec, CaseFronts) or not any(leaf.hung.flap for leaf in door.leaves):
        return door
    leaves = []
    for leaf, called in zip(door.leaves, spec.leaf_stays, strict=True):
        stay = None if called is None else stay_of(design, called)
        flap = leaf.hung.flap
        held = leaf if stay is None or flap is None else _held(case, leaf, flap, stay)
        leaves.append(held)
    return dataclasses.replace(door, leaves=tuple(leaves))


def _held(case: StandingCase, leaf: Leaf, flap: HungFlap, stay: StaySpec) -> Leaf:
    sized = size_stays(
        stay,
        HeldFlap(
            leaf=leaf.name,
            lifts=flap.side == "top",
            width=leaf.width,
            height=leaf.height,
            thickness=leaf.thickness,
            weight=leaf.weights.estimate,
            angle=flap.angle,
            face_out=leaf.hung.plane + leaf.thickness / 2,
        ),
    )
    name = join(leaf.name, "stays")
    wide, deep = (
        named(join(name, f"pilot {word}"), size)
        for word, size in zip(("width", "depth"), stay.fixing, strict=True)
    )
    sides = () if isinstance(sized, NoPlace) else _sides(case, leaf, flap, stay, sized)
    held = LeafStays(sized=sized, written=stay, pilot=(wide, deep), sides=sides)
    return dataclasses.replace(leaf, stays=held)


def _sides(
    case: StandingCase, leaf: Leaf, flap: HungFlap, stay: StaySpec, sized: Stays
) -> tuple[StaySide, ...]:
    own, place = case.case, sized.place
    left = own.opening.left + leaf.hung.left
    bay = own.bay_at(float(left + leaf.width / 2))
    down = flap.side == "top"
    line = flap.line - own.box.foot
    found = []
    for side in _on(sized.count):
        name = join(leaf.name, f"{side} stay")
        inside = bay.left + stay.beside if side == "left" else bay.left + bay.width - stay.beside
        found.append(
            StaySide(
                name=name,
                side=side,
                across=named(join(name, "on the flap, from its left edge"), inside - left),
                up=named(
                    join(name, "on the flap, from its foot"),
                    leaf.height - place.along if down else place.along,
                ),
                case_up=named(
                    join(name, "on the case, from its foot"),
                    line - place.down if down else line + place.down,
                ),
                behind=named(join(name, "on the case, behind its front edges"), place.behind),
            )
        )
    return tuple(found)


def _on(count: Figure) -> tuple[Side, ...]:
    """A single stay stands on the right. Common practice, no source."""
    return ("left", "right") if int(count) > 1 else ("right",)
