"""What is bored in the boards of a case: its joints, the plates of its hinges, its shelves' pins.

Joints come first, then plates, then pins, which keep clear of both; the shelves are then put on
the pins nearest to where they were shared out.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence

from parametric.cases.boring import Bite, BoringSpec
from parametric.cases.case import Case, CaseBay, CaseBoard, Space
from parametric.cases.face_frame import FaceFrameSpec
from parametric.cases.frame_joints import FrameJoints, size_frame_joints
from parametric.cases.hinge_blocks import HingeBlocks, size_hinge_blocks
from parametric.cases.pin_rows import NoPins, PinRows, PinSpace, lying_on, pin_rows
from parametric.cases.plate_holes import PlateHoles, plate_holes
from parametric.cases.pocket_screws import PocketScrews, pocket_bites, pockets_in_face
from parametric.design import Design
from parametric.figures import Figure, exceeds, named
from parametric.hangings.hanging import Side
from parametric.hardware.cup_hinge import CupHinges
from parametric.model import Face
from parametric.names import join
from parametric.resolve.bored_case import BayPins, BoredCase, CaseJoint, SidePlates, StayHole
from parametric.resolve.case_drawer import CaseDrawer
from parametric.resolve.case_joints import (
    back_in,
    case_joints,
    dadoes_in,
    uprights,
)
from parametric.resolve.case_openings import opening_of
from parametric.resolve.case_slides import BitesOf, SlideFixing, slide_fixings
from parametric.resolve.casework import Casework
from parametric.resolve.flap_boring import flap_plates
from parametric.resolve.one_door import Door
from parametric.resolve.planned_boring import bore_planned

_FACES: tuple[Face, Face] = ("low face", "high face")


def with_boring(design: Design, casework: Casework, doors: tuple[Door, ...]) -> Casework:
    """The cabinets bored, their shelves on their pins.

    Args:
        design: the blocks.
        casework: the cabinets.
        doors: their fronts.
    """
    spec = design.block("boring")
    assert isinstance(spec, BoringSpec), "every job with a cabinet has one"
    made = [
        bore_case(
            spec,
            standing.case,
            tuple(door for door in doors if door.case == standing.name),
            [drawer for drawer in casework.drawers if drawer.case == standing.name],
        )
        for standing in casework.cases
    ]
    cases = tuple(
        dataclasses.replace(standing, case=case)
        for standing, (_, case) in zip(casework.cases, made, strict=True)
    )
    bored = tuple(
        dataclasses.replace(own, frame=_frame_joints(design, spec, standing.case))
        for standing, (own, _) in zip(casework.cases, made, strict=True)
    )
    return dataclasses.replace(casework, cases=cases, bored=bored)


def _frame_joints(design: Design, spec: BoringSpec, case: Case) -> FrameJoints | None:
    """The joints of the face frame before a case."""
    if case.frame is None:
        return None
    written = design.block("face frame", case.spec.face_frame)
    assert isinstance(written, FaceFrameSpec), "every job has one"
    return size_frame_joints(
        spec,
        case.frame,
        written.joined_by,
        name=case.name,
        centre_stiles=len(case.of_role("partition")),
    )


def bore_case(
    spec: BoringSpec, case: Case, doors: tuple[Door, ...], drawers: Sequence[CaseDrawer] = ()
) -> tuple[BoredCase, Case]:
    """A case's boring, and the case with its shelves on their pins.

    Args:
        spec: how the workshop bores.
        case: the case.
        doors: its fronts, those of each of its faces.
        drawers: its drawers.
    """
    if case.plan is None:
        bored = _bored(spec, case, doors[0] if doors else None, drawers)
    else:
        bored = bore_planned(spec, case, case.plan, doors)
    moved = {name: z for own in bored.pins for name, z in _on_pins(case, own)}
    boards = tuple(
        dataclasses.replace(board, z=moved.get(board.name, board.z)) for board in case.boards
    )
    return bored, dataclasses.replace(case, boards=boards)


def _bored(
    spec: BoringSpec, case: Case, door: Door | None, drawers: Sequence[CaseDrawer]
) -> BoredCase:
    """A square case's boring."""
    joints = tuple(case_joints(spec, case))
    plates = (*_plates(spec, case, door, joints), *flap_plates(spec, case, door, joints))
    stays = tuple(_stays(case, door, joints, plates))

    def cut(board: CaseBoard, face: Face) -> tuple[Bite, ...]:
        """What is cut and bored into a face of an upright board, but for slides and pins."""
        found = list(_taken(case, board, face, joints))
        for plate in plates:
            if (plate.board.name, plate.face) == (board.name, face):
                found += _covered_by(plate, case)
        found += [h.bite for h in stays if (h.board.name, h.face) == (board.name, face)]
        return tuple(found)

    slides = tuple(slide_fixings(spec, case, drawers, cut))
    pins = tuple(_pins(spec, case, cut, slides))
    return BoredCase(
        name=case.name,
        spec=spec,
        joints=joints,
        plates=plates,
        pins=pins,
        stays=stays,
        slides=slides,
    )


def _taken(
    case: Case, upright: CaseBoard, face: Face, joints: Sequence[CaseJoint]
) -> tuple[Bite, ...]:
    """What is cut and bored into one face of an upright board, in the case."""
    return (
        *dadoes_in(case, upright, face),
        *back_in(case, upright, face),
        *(
            bite
            for joint in joints
            if (joint.into, joint.looks) == (upright.name, face)
            for bite in joint.own
        ),
        *_pockets_in(upright, face, joints),
    )


def _pockets_in(upright: CaseBoard, face: Face, joints: Sequence[CaseJoint]) -> Iterator[Bite]:
    """The pockets of screws at the ends of an upright board itself."""
    for joint in joints:
        if (joint.board, joint.hidden) == (upright.name, face) and isinstance(
            joint.held, PocketScrews
        ):
            yield from pocket_bites(
                joint.held,
                pockets_in_face(joint.held, joint.at, joint.hidden),
                low=upright.z,
                high=upright.z + float(upright.length),
                front=upright.y,
            )


def _from_behind(
    spec: BoringSpec, board: CaseBoard, face: Face, joints: Sequence[CaseJoint], deep: Figure
) -> Iterator[Bite]:
    """What joints cut into the other face of a board, where it reaches holes so deep from this one."""
    for joint in joints:
        if joint.into != board.name or joint.looks == face:
            continue
        if exceeds(joint.reach + deep + spec.behind, board.thickness):
            yield from joint.own


def _beside(case: Case, x: float, side: Side) -> tuple[CaseBoard, Face]:
    """The upright board to the left or the right of a place, and its face there."""
    if side == "left":
        return [board for board in uprights(case) if board.x < x][-1], "low face"
    return next(board for board in uprights(case) if board.x > x), "high face"


# --- hinge plates --------------------------------------------------------------------------


def _plates(
    spec: BoringSpec, case: Case, door: Door | None, joints: Sequence[CaseJoint]
) -> Iterator[SidePlates]:
    """Two holes at each cup, in the board that the leaf hangs on, or in blocks behind a face frame."""
    if door is None:
        return
    proud = Figure(0.0) if case.frame is None else case.frame.thickness
    hung = []
    for leaf in door.leaves:
        middle = float(case.opening.left + leaf.hung.left + leaf.hung.width / 2)
        for own in leaf.hinges:
            if isinstance(own.hinges, CupHinges) and (own.side == "left" or own.side == "right"):
                ups = [leaf.hung.foot + p.centre - case.box.foot for p in own.hinges.places]
                hung.append((leaf, ups, *_beside(case, middle, own.side)))
    found = [
        (
            plate_holes(
                spec,
                name=join(leaf.name, "hinge plates"),
                hinges=ups,
                lie=case.spec.fronts,
                front=leaf.thickness,
                set_back=-proud if case.frame is not None else 0.0,
                both_faces=board.thickness
                if {face for *_, other, face in hung if other is board} == set(_FACES)
                and case.frame is None
                else None,
            ),
            board,
            face,
        )
        for leaf, ups, board, face in hung
    ]
    for plates, board, face in found:
        every = (
            bite for own, where, at in found if (where, at) == (board, face) for bite in own.bites
        )
        blocks = _blocks(spec, case, plates, board, face)
        yield SidePlates(
            plates=plates,
            board=board,
            face=face,
            depth=case.behind,
            taken=(
                *(
                    ()
                    if blocks is not None and blocks.in_board is None
                    else (
                        *_taken(case, board, face, joints),
                        *_from_behind(spec, board, face, joints, plates.deep),
                    )
                ),
                *every,
            ),
            blocks=blocks,
            crossing=() if blocks is None else tuple(_crossing(case, board)),
        )


def _crossing(case: Case, board: CaseBoard) -> Iterator[Bite]:
    """Level boards that end at an upright one, from its front edge backwards."""
    low, high = board.x, board.x + float(board.thickness)
    for other in case.boards:
        if other.lies != "level" or other.role == "shelf":
            continue
        if other.x <= high + 1e-6 and other.x + float(other.length) >= low - 1e-6:
            yield Bite(
                name=other.name,
                low=other.z,
                high=other.z + float(other.thickness),
                near=other.y,
                far=other.y + float(other.width),
            )


def _blocks(
    spec: BoringSpec, case: Case, plates: PlateHoles, board: CaseBoard, face: Face
) -> HingeBlocks | None:
    """What stands before a board that a face frame stands in from; None where none does."""
    if case.frame is None:
        return None
    if face == "low face":
        bay = next(b for b in case.bays if float(b.left) > board.x)
        gap = opening_of(case, bay)[0] - bay.left
    else:
        bay = [b for b in case.bays if float(b.left) < board.x][-1]
        gap = bay.left + bay.width - opening_of(case, bay)[1]
    if not exceeds(gap, 0.5):
        return None
    packed = [
        (one.z, one.z + float(one.length))
        for one in case.of_role("packing")
        if abs(one.x - (board.x + board.thickness)) < 1e-6
        or abs(one.x + one.thickness - board.x) < 1e-6
    ]
    return size_hinge_blocks(
        spec, plates, gap=gap, board=board.thickness, depth=case.behind, packed=packed
    )


def _covered_by(plate: SidePlates, case: Case) -> tuple[Bite, ...]:
    """What plates take of a board's face: their screws, or the blocks before it."""
    if plate.blocks is None:
        return plate.plates.bites
    thick = max((float(board.thickness) for board in case.of_role("shelf")), default=0.0)
    return plate.blocks.bites(thick)


# --- stays ---------------------------------------------------------------------------------


def _stays(
    case: Case, door: Door | None, joints: Sequence[CaseJoint], plates: Sequence[SidePlates]
) -> Iterator[StayHole]:
    """A pilot for each stay of a flap, in the board beside the flap's bay."""
    for leaf in () if door is None else door.leaves:
        if leaf.stays is None:
            continue
        middle = float(case.opening.left + leaf.hung.left + leaf.hung.width / 2)
        wide, deep = leaf.stays.pilot
        for own in leaf.stays.sides:
            board, face = _beside(case, middle, own.side)
            beside = (p for p in plates if (p.board, p.face) == (board, face))
            yield StayHole(
                name=own.name,
                board=board,
                face=face,
                up=own.case_up,
                back=own.behind,
                across=wide,
                deep=deep,
                taken=(
                    *_taken(case, board, face, joints),
                    *(bite for other in beside for bite in other.plates.bites),
                ),
            )


# --- pins ----------------------------------------------------------------------------------


def _pins(
    spec: BoringSpec, case: Case, cut: BitesOf, slides: Sequence[SlideFixing]
) -> Iterator[BayPins]:
    """Rows for every space that has shelves to lie on them."""
    pinned = {bay.number for bay in case.bays if any(space.shelves for space in bay.spaces)}
    for bay in case.bays:
        place = case.name if len(case.bays) == 1 else join(case.name, f"bay {bay.number}")
        spaces = [space for space in bay.spaces if space.shelves]
        both = bool({bay.number - 1, bay.number + 1} & pinned)
        for number, space in enumerate(spaces, 1):
            name = place if len(spaces) == 1 else join(place, f"shelf space {number}")
            taken = _in_the_way(case, bay, cut, slides)
            yield _rows(spec, case, bay, space, name, both, taken)


def _in_the_way(
    case: Case, bay: CaseBay, cut: BitesOf, slides: Sequence[SlideFixing]
) -> tuple[Bite, ...]:
    """What is cut into the boards on both sides of a bay; of a partition, from both its faces."""
    found: list[Bite] = []
    for board, face in _sides(case, bay):
        for own in _FACES if board.role == "partition" else (face,):
            found += cut(board, own)
            for slide in slides:
                if (slide.board.name, slide.face) == (board.name, own) and slide.in_board:
                    found += slide.screws.bites()
    return tuple(found)


def _sides(case: Case, bay: CaseBay) -> tuple[tuple[CaseBoard, Face], tuple[CaseBoard, Face]]:
    middle = float(bay.left + bay.width / 2)
    return _beside(case, middle, "left"), _beside(case, middle, "right")


def _rows(
    spec: BoringSpec,
    case: Case,
    bay: CaseBay,
    space: Space,
    name: str,
    both_faces: bool,
    taken: Sequence[Bite],
) -> BayPins:
    (left, _), (right, _) = _sides(case, bay)
    rows = pin_rows(
        spec,
        PinSpace(
            low=space.foot,
            high=space.head,
            depth=case.behind,
            thickness=min(left.thickness, right.thickness, key=float),
            both_faces=both_faces,
            front=case.front_back if case.front_back > 0 else None,
        ),
        name=name,
        taken=taken,
        middle=_middle(left, right, name) if spec.rows == "about the middle" else None,
    )
    if isinstance(rows, PinRows) and len(rows.heights) < space.shelves:
        has, needs = (Figure(many, unit="") for many in (len(rows.heights), space.shelves))
        rows = NoPins(name=name, why="few", has=has, needs=needs)
    low, high = float(space.foot), float(space.head)
    return BayPins(rows=rows, low=low, high=high, left=left, right=right)


def _middle(left: CaseBoard, right: CaseBoard, name: str) -> Figure:
    """The middle of a bay's side, or of the board on its left, from the case's foot, mm."""
    board = right if right.role == "side" and left.role != "side" else left
    return named(join(name, "pin holes", "middle"), board.z + board.length / 2)


def _on_pins(case: Case, pins: BayPins) -> Iterator[tuple[str, float]]:
    """Each shelf of a space, and how high it lies: on the free pins nearest to its place."""
    rows = pins.rows
    if isinstance(rows, NoPins):
        return
    free = list(rows.heights)
    for shelf in sorted(case.of_role("shelf"), key=lambda board: board.z):
        if (
            pins.boards or pins.left.x < shelf.x < pins.right.x
        ) and pins.low <= shelf.z < pins.high:
            up = lying_on(free, rows.across, shelf.z)
            free.remove(up)
            yield shelf.name, up + float(rows.across) / 2
