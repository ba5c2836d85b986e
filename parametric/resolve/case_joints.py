"""Where the boards of a case stand on one another, and what is bored for that in both of them."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.boring import Bite, BoringSpec, too_near
from parametric.cases.butt_joints import (
    CarcassScrews,
    Dowels,
    InEnd,
    OnFace,
    bites_of,
    size_carcass_screws,
    size_dowels,
)
from parametric.cases.case import Case, CaseBoard
from parametric.cases.case_tenons import Tenons, size_tenons, tenon_bites
from parametric.cases.fixings import Joint
from parametric.cases.pocket_screws import BroadFace, PocketScrews, screw_bites, size_pocket_screws
from parametric.figures import Figure, named
from parametric.model import End, Face
from parametric.names import join
from parametric.resolve.bored_case import CaseJoint, Held

_SAME = 1e-6
"""mm."""
_LEVEL = ("bottom", "top", "stretcher", "fixed shelf")


def uprights(case: Case) -> tuple[CaseBoard, ...]:
    """Its sides and partitions, from the left."""
    found = (*case.of_role("side"), *case.of_role("partition"))
    return tuple(sorted(found, key=lambda board: board.x))


def levels(case: Case) -> tuple[CaseBoard, ...]:
    """What lies level between them and is held by them; a top that slopes lies over them."""
    return tuple(b for b in case.boards if b.role in _LEVEL and b.lies == "level")


def case_joints(spec: BoringSpec, case: Case) -> Iterator[CaseJoint]:
    """Level boards between upright ones, and partitions between level ones."""
    for level in levels(case):
        for upright in uprights(case):
            if (found := met(case, level, upright)) is not None:
                yield from _level_joint(spec, case, level, upright, *found)
    for partition in case.of_role("partition"):
        for level in levels(case):
            yield from _standing_joint(spec, case, partition, level)


def dadoes_in(case: Case, upright: CaseBoard, face: Face) -> Iterator[Bite]:
    """What level boards are let into in one face of an upright one, in the case."""
    if float(case.box.let_in) <= _SAME:
        return
    for level in levels(case):
        found = met(case, level, upright)
        if found is not None and found[1] == face:
            yield Bite(
                name=f"the dado for the {_word(level)}",
                low=level.z,
                high=level.z + float(level.thickness),
                near=level.y,
                far=level.y + float(level.width),
            )


def back_in(case: Case, upright: CaseBoard, face: Face) -> Iterator[Bite]:
    """What the back is let into in the inner face of a side, in the case."""
    back = case.back
    inner: Face = "low face" if upright.x < _SAME else "high face"
    if back is None or back.held == "planted" or (upright.role, face) != ("side", inner):
        return
    groove = float(back.front + back.thickness)
    yield Bite(
        name=f"the {back.held} for the back",
        low=upright.z,
        high=upright.z + float(upright.length),
        near=float(back.front),
        far=groove if back.held == "groove" else float(case.box.depth),
    )


def _kick_in(case: Case, upright: CaseBoard) -> Iterator[Bite]:
    """What the kick takes off the foot of a side, in the case."""
    high, deep = case.box.kick_high, case.box.kick_deep
    if high is not None and deep is not None and upright.role == "side":
        yield Bite(name="the kick", low=0.0, high=float(high), near=0.0, far=float(deep))


def _word(board: CaseBoard) -> str:
    return board.name.rsplit(" / ", 1)[-1]


def met(case: Case, level: CaseBoard, upright: CaseBoard) -> tuple[End, Face] | None:
    """Which end of a level board stands against, or in, which face of an upright one."""
    let_in = float(case.box.let_in)
    low, high = level.z, level.z + float(level.thickness)
    if min(high, upright.z + float(upright.length)) - max(low, upright.z) <= _SAME:
        return None
    if abs(upright.x + float(upright.thickness) - let_in - level.x) < _SAME:
        return "low end", "low face"
    if abs(upright.x + let_in - level.x - float(level.length)) < _SAME:
        return "high end", "high face"
    return None


def _level_joint(
    spec: BoringSpec, case: Case, level: CaseBoard, upright: CaseBoard, end: End, face: Face
) -> Iterator[CaseJoint]:
    let_in = case.box.let_in
    name = join(level.name, "left end" if end == "low end" else "right end")
    taken = tuple(back_in(case, upright, face))
    middle = named(join(name, "middle"), level.z - upright.z + level.thickness / 2)

    def held_clear_of(bites: tuple[Bite, ...]) -> Held | None:
        joint = Joint(
            name=name,
            length=level.width,
            end=level.thickness,
            face=upright.thickness - let_in if let_in > _SAME else upright.thickness,
            # of two boards on either side of a partition the right one's fixings stand farther back
            staggered=upright.role == "partition" and end == "low end",
            both_faces=upright.role == "partition",
            taken=tuple((bite.near - level.y, bite.far - level.y) for bite in bites),
        )
        return _held(spec, case, joint, let_in=let_in > _SAME)

    held = held_clear_of(taken)
    if held is None:
        return
    kick = tuple(_kick_in(case, upright))
    if any(too_near(one, kick, spec.web) for one in _own(held, middle + upright.z, level.y)):
        taken = (*taken, *kick)
        held = held_clear_of(taken) or held
    yield CaseJoint(
        held=held,
        board=level.name,
        at=InEnd(end=end),
        into=upright.name,
        on=OnFace(face=_bored_from(held, face), up=middle, front=level.y - upright.y),
        looks=face,
        hidden=_hidden(level),
        end=level.thickness,
        own=_own(held, middle + upright.z, level.y),
        taken=taken,
        covered=_covered(case, upright, face, middle + upright.z, held),
    )


def _covered(case: Case, upright: CaseBoard, face: Face, up: float, held: Held) -> str:
    """The board whose end stands on the other side of an upright one, where screws go in."""
    if not isinstance(held, CarcassScrews):
        return ""
    head = float(held.head) / 2
    for level in levels(case):
        found = met(case, level, upright)
        over = level.z - head < up < level.z + float(level.thickness) + head
        if found is not None and found[1] != face and over:
            return level.name.removeprefix(f"{case.name} / ")
    return ""


def _standing_joint(
    spec: BoringSpec, case: Case, partition: CaseBoard, level: CaseBoard
) -> Iterator[CaseJoint]:
    """A partition's end on the face of a board below or above it."""
    if not level.x < partition.x < level.x + float(level.length):
        return
    end: End
    face: Face
    if abs(level.z + float(level.thickness) - partition.z) < _SAME:
        end, face, word = "low end", "high face", "foot"
    elif abs(partition.z + float(partition.length) - level.z) < _SAME:
        end, face, word = "high end", "low face", "head"
    else:
        return
    near = max(partition.y, level.y)
    far = min(partition.y + float(partition.width), level.y + float(level.width))
    if far - near <= _SAME:
        return
    name = join(partition.name, f"{word} at the {_word(level)}")
    joint = Joint(
        name=name,
        length=named(join(name, "length"), far - near),
        end=partition.thickness,
        face=level.thickness,
        shared=level.role == "stretcher",
    )
    held = _held(spec, case, joint, let_in=False)
    if held is None:
        return
    middle = named(join(name, "middle"), partition.x - level.x + partition.thickness / 2)
    yield CaseJoint(
        held=held,
        board=partition.name,
        at=InEnd(end=end, front=near - partition.y),
        into=level.name,
        on=OnFace(face=_bored_from(held, face), up=middle, front=near - level.y),
        looks=face,
        hidden=_hidden(partition),
        end=partition.thickness,
        own=_own(held, middle, near),
    )


def _held(spec: BoringSpec, case: Case, joint: Joint, *, let_in: bool) -> Held | None:
    """What holds it; None where glue does, or nothing that is bored.

    A dado holds a board where it is: dowels or tenons in it would hold nothing more. A partition stands on
    boards that it is not let into, however they are held.
    """
    match case.spec.held_by if let_in else case.spec.corners:
        case "dowel":
            return None if let_in else size_dowels(spec, joint)
        case "screw":
            return size_carcass_screws(spec, joint)
        case "pocket screw":
            return None if let_in else size_pocket_screws(spec, joint)
        case "loose tenon":
            return None if let_in else size_tenons(spec, joint)
        case "glue":
            return None


def _bored_from(held: Held, face: Face) -> Face:
    """Screws go in from the other side of the board."""
    if not isinstance(held, CarcassScrews):
        return face
    return "high face" if face == "low face" else "low face"


def _hidden(board: CaseBoard) -> BroadFace:
    """Where pockets are seen least: over a top, under a bottom or a shelf, on a partition's left."""
    return "high face" if board.role in ("top", "stretcher", "partition") else "low face"


def _own(held: Held, up: Figure, front: float) -> tuple[Bite, ...]:
    if isinstance(held, PocketScrews):
        return screw_bites(held, up=up, front=front)
    if isinstance(held, Tenons):
        return tenon_bites(held, up=up, front=front)
    return bites_of(held, up=up, front=front) if isinstance(held, Dowels | CarcassScrews) else ()
