"""What the hinges of a flap are screwed to: the level board over it, or under it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.cases.boring import BoringSpec
from parametric.cases.case import Case, CaseBoard
from parametric.cases.plate_holes import FROM_LEFT, plate_holes
from parametric.hangings.flaps import HungFlap
from parametric.hardware.cup_hinge import CupHinges
from parametric.model import Face
from parametric.names import join
from parametric.resolve.bored_case import CaseJoint, SidePlates
from parametric.resolve.case_joints import levels
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door


def flap_plates(
    spec: BoringSpec, case: Case, door: Door | None, joints: Sequence[CaseJoint]
) -> Iterator[SidePlates]:
    """Two holes at each cup of every flap.

    Args:
        spec: how the workshop bores.
        case: the case.
        door: its fronts; None where it has none.
        joints: what holds its boards, and is bored in their faces too.
    """
    hung = [] if door is None else [found for leaf in door.leaves if (found := _hung(case, leaf))]
    faces = [(board.name, face) for _, _, board, face in hung]
    made = []
    for leaf, hinges, board, face in hung:
        left = float(case.opening.left + leaf.hung.left) - board.x
        other: Face = "low face" if face == "high face" else "high face"
        plates = plate_holes(
            spec,
            name=join(leaf.name, "hinge plates"),
            hinges=[place.centre + left for place in hinges.places],
            lie=case.spec.fronts,
            front=leaf.thickness,
            both_faces=board.thickness if (board.name, other) in faces else None,
            begins=FROM_LEFT,
        )
        made.append((plates, board, face))
    for plates, board, face in made:
        yield SidePlates(
            plates=plates,
            board=board,
            face=face,
            depth=board.width + board.y,
            taken=(
                *(
                    bite
                    for joint in joints
                    if (joint.into, joint.looks) == (board.name, face)
                    for bite in joint.own
                ),
                *(
                    bite
                    for own, where, at in made
                    if (where, at) == (board, face)
                    for bite in own.bites
                ),
            ),
        )


def _hung(case: Case, leaf: Leaf) -> tuple[Leaf, CupHinges, CaseBoard, Face] | None:
    """A flap with its hinges, and the board and the face that they are screwed to."""
    flap, hinges = leaf.hung.flap, next((own.hinges for own in leaf.hinges), None)
    if flap is None or not isinstance(hinges, CupHinges):
        return None
    board = board_at(case, leaf, flap)
    return leaf, hinges, board, "low face" if flap.side == "top" else "high face"


def board_at(case: Case, leaf: Leaf, flap: HungFlap) -> CaseBoard:
    """The level board that a flap's hinge edge laps, or stands in front of, or beside: a top, a
    bottom or a fixed shelf, whichever has its face nearest to the hinge edge.
    """
    line = float(flap.line - case.box.foot)
    middle = float(case.opening.left + leaf.hung.left + leaf.hung.width / 2)

    def off(board: CaseBoard) -> float:
        face = board.z if flap.side == "top" else board.z + float(board.thickness)
        return abs(face - line)

    behind = (
        board
        for board in levels(case)
        if board.x < middle < board.x + float(board.length) and board.y <= float(leaf.thickness)
    )
    return min(behind, key=off)
