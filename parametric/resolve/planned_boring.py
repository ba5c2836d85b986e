"""What is bored in a case that is no rectangle from above: screws through sides and backs, pins, plates.

Level boards and backs are screwed from outside, through the boards they stand against; the holes
in their own edges, which are no ends of a blank once it is cut to shape, are bored through those.
Pins stand in both sides and in every back, so that a shelf lies on all of them. Lines are from
each board's own front edge; of a back, from its left end.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from parametric.cases.boring import Bite, BoringSpec
from parametric.cases.butt_joints import (
    CarcassScrews,
    InEnd,
    OnFace,
    bites_of,
    size_carcass_screws,
)
from parametric.cases.case import Case, CaseBoard, TurnedFront
from parametric.cases.fixings import Joint, TooShort
from parametric.cases.pin_rows import NoPins, PinRows, PinSpace, pin_rows
from parametric.cases.plan_boards import turned_points
from parametric.cases.plan_shape import FRONTS, SQUARE, CasePlan, Point, SideWord, meeting
from parametric.cases.plate_holes import plate_holes
from parametric.figures import Figure, named
from parametric.hardware.cup_hinge import CupHinges
from parametric.model import Face
from parametric.names import join
from parametric.resolve.bored_case import BayPins, BoredCase, CaseJoint, PinBoard, SidePlates
from parametric.resolve.one_door import Door

_LEVEL = ("bottom", "top", "fixed shelf")
_SAME = 1e-6
_BESIDE = 2.0
"""Least wood between a screw's head and where a face ends, mm. Common practice, no source."""
_MOST_APART = 600.0
"""Lines of pins along a back are no farther apart than this, mm. Common practice, no source."""


def bore_planned(spec: BoringSpec, case: Case, plan: CasePlan, doors: Sequence[Door]) -> BoredCase:
    """Such a case's boring.

    Args:
        spec: how the workshop bores.
        case: the case.
        plan: it, seen from above.
        doors: its fronts, those of each face by themselves.
    """
    joints = tuple(_joints(spec, case, plan))
    plates = tuple(_plates(spec, case, plan, doors))
    pins = tuple(_pins(spec, case, plan, joints, plates))
    return BoredCase(name=case.name, spec=spec, joints=joints, plates=plates, pins=pins)


def _walls(case: Case, plan: CasePlan) -> tuple[tuple[SideWord, CaseBoard], ...]:
    """The boards along its sides that are not fronts, as they go round."""
    boards = {board.name: board for board in case.boards}
    return tuple(
        (side.word, boards[join(case.name, side.word)])
        for side in plan.sides
        if side.word not in FRONTS
    )


def _inner(word: SideWord) -> Face:
    """The face of a side or a back that looks into the case."""
    return "high face" if word == "right side" else "low face"


def _outer(word: SideWord) -> Face:
    return "low face" if word == "right side" else "high face"


def _stretch(board: CaseBoard, ends: tuple[Point, Point]) -> tuple[float, float]:
    """Where two points lie along an upright board, from its front edge or its left end, mm."""
    low, *points = turned_points(((board.x, board.y), *ends), -board.turn)
    axis = 1 if board.lies == "upright" else 0
    a, b = sorted(point[axis] - low[axis] for point in points)
    return a, b


def _outside(board: CaseBoard, word: SideWord) -> tuple[float, float]:
    """From where to where the outer face of an upright board goes, between its bevels, mm."""
    if not board.outline:
        return 0.0, float(board.width)
    face = 0.0 if _outer(word) == "low face" else float(board.thickness)
    at = [along for along, deep in board.outline if abs(deep - face) < _SAME]
    return min(at), max(at)


def _along(plan: CasePlan, case: Case, word: SideWord, front: float = 0.0) -> tuple[Point, Point]:
    """The two ends of what is clear inside along a side; fronts are moved in by so much, mm."""
    t = float(case.box.thickness)
    inwards = {s.word: front if s.word in FRONTS else t for s in plan.sides}
    inside = plan.within(inwards)
    at = next(i for i, side in enumerate(plan.sides) if side.word == word)
    return inside[at], inside[(at + 1) % len(inside)]


def _joints(spec: BoringSpec, case: Case, plan: CasePlan) -> Iterator[CaseJoint]:
    walls = _walls(case, plan)
    for level in case.boards:
        if level.role not in _LEVEL:
            continue
        front = float(case.front_back) if level.role == "fixed shelf" else 0.0
        for word, board in walls:
            near, far = _stretch(board, _along(plan, case, word, max(front, 0.0)))
            begins, ends = _outside(board, word)
            near, far = max(near, begins), min(far, ends)
            name = join(level.name, f"at the {word}")
            up = named(join(name, "middle"), level.z - board.z + level.thickness / 2)
            joint = Joint(
                name=name,
                length=named(join(name, "length"), far - near),
                end=level.thickness,
                face=board.thickness,
            )
            held = size_carcass_screws(spec, joint)
            yield _screwed(held, level, board, OnFace(face=_outer(word), up=up, front=near), word)
    by_word = dict(walls)
    for word, into in _BACKS_IN:
        if word in by_word and into in by_word:
            found = _back_joint(spec, case, plan, (word, by_word[word]), (into, by_word[into]))
            if found is not None:
                yield found


_BACKS_IN: tuple[tuple[SideWord, SideWord], ...] = (
    ("left back", "left side"),
    ("right back", "left back"),
    ("right back", "right side"),
    ("back", "left side"),
    ("back", "right side"),
)
"""A back's upright edge, and the board that it stands against."""


def _back_joint(
    spec: BoringSpec,
    case: Case,
    plan: CasePlan,
    back: tuple[SideWord, CaseBoard],
    into: tuple[SideWord, CaseBoard],
) -> CaseJoint | None:
    """A back's end on the inner face of a side or of the other back, from foot to top.

    None where the outer face of that ends before the middle of it, as in an obtuse corner: no
    screw reaches it square, and a block is screwed inside.
    """
    (word, board), (against, other) = back, into
    t = float(case.box.thickness)
    face = plan.line(against, t)
    ends = (meeting(face, plan.line(word)), meeting(face, plan.line(word, t)))
    near, far = _stretch(other, ends)
    begins, stops = _outside(other, against)
    # the head, with a few millimetres of the face beside it
    clear = float(spec.screw_head[0]) / 2 + _BESIDE
    if not begins + clear <= (near + far) / 2 <= stops - clear:
        return None
    name = join(board.name, f"at the {against}")
    joint = Joint(
        name=name,
        length=named(join(name, "length"), board.length),
        end=board.thickness,
        face=other.thickness,
    )
    held = size_carcass_screws(spec, joint)
    up = named(join(name, "middle"), (near + far) / 2)
    return _screwed(held, board, other, OnFace(face=_outer(against), up=up, upwards=True), against)


def _screwed(
    held: CarcassScrews | TooShort, board: CaseBoard, into: CaseBoard, on: OnFace, word: SideWord
) -> CaseJoint:
    own: tuple[Bite, ...] = ()
    if isinstance(held, CarcassScrews) and not on.upwards:
        own = bites_of(held, up=on.up + into.z, front=on.front)
    return CaseJoint(
        held=held,
        board=board.name,
        at=InEnd(end="low end"),
        clamped=True,
        hidden="low face",
        into=into.name,
        on=on,
        looks=_inner(word),
        end=board.thickness,
        own=own,
    )


# --- hinge plates --------------------------------------------------------------------------


def _plates(
    spec: BoringSpec, case: Case, plan: CasePlan, doors: Sequence[Door]
) -> Iterator[SidePlates]:
    """Two holes at each cup where a side stands square to its front; else its hinges' sheet says."""
    walls = dict(_walls(case, plan))
    for turned, door in zip(case.turned_fronts, doors, strict=False):
        for leaf in door.leaves:
            for own in leaf.hinges:
                word: SideWord = "left side" if own.side == "left" else "right side"
                if not isinstance(own.hinges, CupHinges) or not _square(plan, turned, word):
                    continue
                ups = [leaf.hung.foot + p.centre - case.box.foot for p in own.hinges.places]
                yield SidePlates(
                    plates=plate_holes(
                        spec,
                        name=join(leaf.name, "hinge plates"),
                        hinges=ups,
                        lie=case.spec.fronts,
                        front=leaf.thickness,
                    ),
                    board=walls[word],
                    face=_inner(word),
                    depth=walls[word].width - case.box.thickness,
                    taken=(),
                    front=0.0,
                )


def _square(plan: CasePlan, turned: TurnedFront, word: SideWord) -> bool:
    """Whether a side ends at a front, and square to it."""
    at = next(i for i, side in enumerate(plan.sides) if side.word == turned.word)
    beside = plan.sides[at - 1 if word == "left side" else (at + 1) % len(plan.sides)]
    corner = plan.sides[at if word == "left side" else (at + 1) % len(plan.sides)].angle
    return beside.word == word and abs(float(corner) - SQUARE) < _SAME


# --- pins ----------------------------------------------------------------------------------


def _pins(
    spec: BoringSpec,
    case: Case,
    plan: CasePlan,
    joints: Sequence[CaseJoint],
    plates: Sequence[SidePlates],
) -> Iterator[BayPins]:
    """Lines at the same heights in every upright board, for each space with shelves."""
    walls = _walls(case, plan)
    spaces = [space for bay in case.bays for space in bay.spaces if space.shelves]
    for number, space in enumerate(spaces, 1):
        name = case.name if len(spaces) == 1 else join(case.name, f"shelf space {number}")
        taken = [bite for joint in joints for bite in joint.own]
        taken += [bite for own in plates for bite in own.plates.bites]
        found: list[PinBoard] = []
        first: PinRows | NoPins | None = None
        for word, board in walls:
            if "side" not in word:
                continue
            near, far = _stretch(board, _along(plan, case, word))
            rows = pin_rows(
                spec,
                PinSpace(
                    low=space.foot,
                    high=space.head,
                    depth=Figure(far - near),
                    thickness=case.box.thickness,
                    front=case.front_back if case.front_back > 0 else None,
                ),
                name=join(name, word) if first else name,
                taken=taken,
            )
            if isinstance(rows, NoPins):
                first = rows
                break
            first = first or rows
            lines = tuple(
                named(join(name, word, line), near + at)
                for line, at in (("front line", rows.front), ("back line", rows.back))
            )
            found.append(PinBoard(board=board, face=_inner(word), lines=lines))
        for word, board in walls:
            if "back" in word:
                ends = _stretch(board, _along(plan, case, word))
                lines = tuple(_lines_of_a_back(join(name, word), ends))
                found.append(PinBoard(board=board, face=_inner(word), lines=lines))
        assert first is not None, "it has two sides"
        if isinstance(first, PinRows) and len(first.heights) < space.shelves:
            has, needs = (Figure(many, unit="") for many in (len(first.heights), space.shelves))
            first = NoPins(name=name, why="few", has=has, needs=needs)
        left, right = (next(board for word, board in walls if word == w) for w in _SIDES)
        yield BayPins(
            rows=first,
            low=float(space.foot),
            high=float(space.head),
            left=left,
            right=right,
            boards=tuple(found),
        )


_SIDES: tuple[SideWord, SideWord] = ("left side", "right side")


def _lines_of_a_back(name: str, ends: tuple[float, float]) -> Iterator[Figure]:
    """Where lines of pins stand in a back: one in the middle of what is clear, or more of them."""
    near, far = ends
    many = max(1, math.ceil((far - near) / _MOST_APART - 1e-9) - 1)
    for number in range(1, many + 1):
        yield named(join(name, f"line {number}"), near + (far - near) * number / (many + 1))
