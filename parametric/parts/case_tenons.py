"""The loose tenons of a case as parts: bought, shown where they stand in their slots."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.case import Case, CaseBoard
from parametric.cases.case_tenons import Tenons
from parametric.catalog.timbers import TIMBERS
from parametric.model import Blank, Making, Material, Part, Placement, RoundArrises
from parametric.names import join
from parametric.resolve.bored_case import BoredCase, CaseJoint

BEECH = TIMBERS["beech"]
WOOD = Material(name=BEECH.name, look="timber", density=float(BEECH.density))
"""What tenons are sold of. Common practice, no source."""
ROUNDED = Making(by="bench", tool="as they are bought")


def loose_tenons(case: Case, bored: BoredCase) -> Iterator[Part]:
    """A tenon for every slot of an end, part of it in the other board.

    Args:
        case: the case.
        bored: what is bored in it.
    """
    boards = {board.name: board for board in case.boards}
    for joint in bored.joints:
        if isinstance(joint.held, Tenons):
            yield from _of_joint(joint, joint.held, boards[joint.board])


def _of_joint(joint: CaseJoint, tenons: Tenons, board: CaseBoard) -> Iterator[Part]:
    thick, wide = float(tenons.thick), float(tenons.wide)
    into, long = float(tenons.in_face), float(tenons.long)
    upright = board.lies == "upright"
    end = board.z if upright else board.x
    if joint.at.end == "low end":
        begins = end - into
    else:
        begins = end + float(board.length) - (long - into)
    for number, place in enumerate(tenons.places.places, 1):
        y = board.y + joint.at.front + place - wide / 2
        middle = float(tenons.middle)
        name = join(tenons.places.name, f"tenon {number}")
        stands = (
            Placement(
                # a frame that goes up has its thickness to the left
                origin=(board.x + middle + thick / 2, y, begins),
                x=(0.0, 0.0, 1.0),
                y=(0.0, 1.0, 0.0),
            )
            if upright
            else Placement(origin=(begins, y, board.z + middle - thick / 2))
        )
        yield one_tenon(name, tenons, stands)


def one_tenon(name: str, tenons: Tenons, stands: Placement) -> Part:
    """One tenon: bought, shown where it stands."""
    return Part(
        name=name,
        noun="loose tenon",
        mark="T",
        material=WOOD,
        blank=Blank(length=tenons.long, width=tenons.wide, thickness=tenons.thick),
        placement=stands,
        cuts=(RoundArrises(name="edges rounded", radius=tenons.thick / 2, making=ROUNDED),),
        supplied=True,
    )
