"""The boards of a case as parts: what is let into what, and where each stands.

A side, seen from inside the case; its front edge is below:

        u along the grain, up the case ->
     ______________________________________
    |  :  |                          |  :  |
    |--:--|--------------------------|--:--|  groove for the back, from end to end
    |  :  |                          |  :  |
    |  :  |                          |  :  |  dadoes for bottom and top, but for the groove
    |_____|__________________________|__:__|
    kick
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.cases.back import Back
from parametric.cases.case import OF_THE_BACK, Case, CaseBoard, Lies
from parametric.cases.slope import Slope
from parametric.figures import exceeds
from parametric.model import (
    Blank,
    Cut,
    Face,
    Groove,
    Group,
    Making,
    Material,
    Part,
    Placement,
    RoundArrises,
    Shaped,
)
from parametric.names import join
from parametric.outlines import rectangle
from parametric.parts.behind_frames import behind_frame
from parametric.parts.case_boring import bored
from parametric.parts.case_drawers import case_runners
from parametric.parts.case_tenons import loose_tenons
from parametric.parts.planned import banded_edges, outline_cuts, planned_faces, planned_placement
from parametric.parts.services import service_cuts
from parametric.parts.sloping import back_cuts, top_cuts, top_placement, upright_cuts
from parametric.resolve.bored_case import BoredCase
from parametric.resolve.case_joints import levels, met
from parametric.resolve.casework import Casework, StandingCase

MILLED = Making(by="router", tool="straight cutter")
BOUGHT = Making(by="bench", tool="as it is bought")
NOTCHED = Making(by="saw", tool="jigsaw or bandsaw to the line, then trimmed flush")
_SAME = 1e-6

WAYS: Mapping[Lies, tuple[tuple[float, float, float], tuple[float, float, float]]] = {
    "upright": ((0.0, 0.0, 1.0), (0.0, 1.0, 0.0)),
    "level": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    "facing": ((0.0, 0.0, 1.0), (1.0, 0.0, 0.0)),
    "facing, level": ((1.0, 0.0, 0.0), (0.0, 0.0, 1.0)),
    "inwards": ((0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "sloping": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
}
"""Which way a board's length and its width run in the case's frame; a sloping top is turned besides."""


def case_groups(casework: Casework) -> list[Group]:
    """A group for each case, where it stands."""
    return [
        Group(
            name=standing.name,
            placement=standing.stands,
            parts=(
                *case_parts(standing, bored_in),
                *loose_tenons(standing.case, bored_in),
                *behind_frame(standing, bored_in),
                *hanging_rails(standing),
                *case_runners(casework, standing.name),
            ),
            see_through=True,
        )
        for standing, bored_in in zip(casework.cases, casework.bored, strict=True)
    ]


def case_parts(standing: StandingCase, bored_in: BoredCase) -> tuple[Part, ...]:
    """Every board of a case, in the case's frame."""
    case = standing.case
    sheet = Material(name=standing.board.name, look="board", density=float(standing.board.density))
    thin = sheet
    if standing.back_board is not None:
        density = float(standing.back_board.density)
        thin = Material(name=standing.back_board.name, look="board", density=density)
    return tuple(
        Part(
            name=board.name,
            noun=_noun(board),
            mark="X" if board.role in OF_THE_BACK else "C",
            material=thin if board.role in OF_THE_BACK else sheet,
            blank=Blank(length=board.length, width=board.width, thickness=board.thickness),
            placement=_placement(case, board),
            cuts=(*_cuts(case, board), *bored(bored_in, board)),
            faces=_faces(case, board),
            banded=("low edge",) if board.banded else (),
            banded_edges=banded_edges(board),
        )
        for board in case.boards
    )


RAIL = Material(name="hanging rail", look="metal", density=0.0)
RAIL_ACROSS, RAIL_DOWN = 25.0, 60.0
"""A hanging rail's diameter, and its middle below what is over it, mm. Common practice, no source."""


def hanging_rails(standing: StandingCase) -> Iterator[Part]:
    """A rail in every space that clothes hang in: bought, shown where it stands."""
    case = standing.case
    number = 0
    for bay in case.bays:
        for space in bay.spaces:
            if space.what != "hanging":
                continue
            number += 1
            half = RAIL_ACROSS / 2
            yield Part(
                name=join(case.name, f"hanging rail {number}"),
                noun="hanging rail",
                mark="K",
                material=RAIL,
                blank=Blank(length=bay.width, width=RAIL_ACROSS, thickness=RAIL_ACROSS),
                placement=Placement(
                    origin=(
                        float(bay.left),
                        float(case.behind + case.front_back) / 2 - half,
                        float(space.head) - RAIL_DOWN - half,
                    )
                ),
                cuts=(RoundArrises(name="round", radius=half, making=BOUGHT),),
                supplied=True,
            )


def _noun(board: CaseBoard) -> str:
    """What the shop calls it: a left side is not a right one."""
    word = board.name.rsplit(" / ", 1)[-1]
    if board.shown:
        return f"{word}, finished outside"
    return word if board.role in ("side", "stretcher") else board.role


def _placement(case: Case, board: CaseBoard) -> Placement:
    """Where its low corner stands; an upright board's thickness runs to the left of its frame."""
    if case.box.slope is not None and board.lies == "sloping":
        return top_placement(case.box.slope, board)
    if case.plan is not None:
        return planned_placement(board, WAYS[board.lies])
    along, across = WAYS[board.lies]
    x, y, z = board.x, board.y, board.z
    if board.lies == "upright":
        x += float(board.thickness)
    if board.lies == "facing, level":
        y += float(board.thickness)
    return Placement(origin=(x, y, z), x=along, y=across)


FOOT_UP: Mapping[Face, str] = {"low end": "foot", "high end": "top"}
"""The ends of a board that stands upright."""
EDGES: Mapping[Face, str] = {"low edge": "front edge", "high edge": "back edge"}
"""The edges of a board that lies from front to back."""


def _faces(case: Case, board: CaseBoard) -> dict[Face, str]:
    if case.plan is not None:
        return planned_faces(case.plan, board)
    match board.lies:
        case "upright":
            inner = "inside" if board.name.endswith("left side") else "outside"
            outer = "outside" if inner == "inside" else "inside"
            if board.role == "partition":
                inner, outer = "right face", "left face"
            return {**FOOT_UP, **EDGES, "low face": inner, "high face": outer}
        case "level" | "sloping":
            return {**EDGES, "high face": "upper face", "low face": "under face"}
        case "facing":
            sides: dict[Face, str] = {"low edge": "left edge", "high edge": "right edge"}
            return {**FOOT_UP, **sides, "low face": "inside"}
        case "inwards":
            return {}
        case "facing, level":
            return {"high face": "front"}


def _cuts(case: Case, board: CaseBoard) -> Iterator[Cut]:
    if case.plan is not None:
        yield from outline_cuts(board)
        return
    if case.box.slope is not None:
        yield from _to_the_slope(case.box.slope, board)
    match board.role:
        case "side":
            yield from _side(case, board)
        case "partition":
            yield from _dadoes(case, board, "low face")
            yield from _dadoes(case, board, "high face")
        case "bottom":
            yield from _for_the_back(case, board, "high face", 0.0)
        case "top" if board.lies != "sloping":
            yield from _for_the_back(case, board, "low face", 0.0)
        case "back":
            yield from service_cuts(case, board)
        case "stretcher":
            if board.y > _SAME:
                yield from _for_the_back(case, board, "low face", board.y)
        case _:
            return


def _to_the_slope(slope: Slope, board: CaseBoard) -> Iterator[Cut]:
    """What is sawn off a board that a sloping top lies on, or off the top."""
    match board.role:
        case "side" | "partition":
            yield from upright_cuts(slope, board)
        case "back":
            yield from back_cuts(slope, board)
        case "top":
            yield from top_cuts(slope, board)
        case _:
            return


def _side(case: Case, board: CaseBoard) -> Iterator[Cut]:
    """Kick, groove for the back, dadoes."""
    face: Face = "low face" if board.x < _SAME else "high face"
    box = case.box
    if box.kick_high is not None and box.kick_deep is not None:
        yield Shaped(
            name="kick",
            face=face,
            outline=rectangle(0.0, 0.0, float(box.kick_high), float(box.kick_deep)),
            depth=board.thickness,
            making=NOTCHED,
        )
    yield from _for_the_back(case, board, face, 0.0)
    yield from _dadoes(case, board, face)


def _dadoes(case: Case, board: CaseBoard, face: Face) -> Iterator[Cut]:
    """What level boards are let into in one face of an upright one; nothing where they butt."""
    box = case.box
    if float(box.let_in) <= _SAME:
        return
    for level in levels(case):
        if met(case, level, board) not in (("low end", face), ("high end", face)):
            continue
        z0, z1 = level.z - board.z, level.z - board.z + float(level.thickness)
        y0, y1 = level.y, level.y + float(level.width)
        beside = _beside_the_groove(case.back, y0, y1) if board.role == "side" else [(y0, y1)]
        for a, b in beside:
            yield Shaped(
                name=f"dado for the {_noun(level)}",
                face=face,
                outline=rectangle(z0, a, z1, b),
                depth=box.let_in,
                making=MILLED,
            )
        if board.role == "side":
            yield from _under_the_groove(case, level, face)


def _under_the_groove(case: Case, level: CaseBoard, face: Face) -> Iterator[Cut]:
    """Where the groove for the back crosses a dado that is deeper, and takes only the top of it."""
    back, band, let_in = case.back, _band(case.back), case.box.let_in
    end = level.y + float(level.width)
    if back is None or band is None or not level.y < band[0] < end:
        return
    if exceeds(let_in, back.groove):
        yield Shaped(
            name=f"dado for the {_noun(level)}, under the groove",
            face=face,
            outline=rectangle(
                level.z, band[0], level.z + float(level.thickness), min(band[1], end)
            ),
            surface=back.groove,
            depth=let_in,
            making=MILLED,
        )


def _band(back: Back | None) -> tuple[float, float] | None:
    """Where the back is let in, from the front edges, mm."""
    if back is None or back.held == "planted":
        return None
    return float(back.front), float(back.front + back.thickness)


def _beside_the_groove(back: Back | None, y0: float, y1: float) -> list[tuple[float, float]]:
    """A stretch from front to back without what the groove takes already."""
    band = _band(back)
    if band is None:
        return [(y0, y1)]
    kept = [(y0, min(y1, band[0])), (max(y0, band[1]), y1)]
    return [(a, b) for a, b in kept if b - a > _SAME]


def _for_the_back(case: Case, board: CaseBoard, face: Face, y: float) -> Iterator[Cut]:
    """A groove or a rebate along the whole board, for the back."""
    back = case.back
    band = _band(back)
    if back is None or band is None:
        return
    if back.held == "groove":
        yield Groove(
            name="groove for the back",
            face=face,
            u0=0.0,
            u1=float(board.length),
            v=(band[0] + band[1]) / 2 - y,
            width=float(back.thickness),
            depth=float(back.groove),
            making=MILLED,
        )
        return
    yield Shaped(
        name="rebate for the back",
        face=face,
        outline=rectangle(0.0, band[0] - y, float(board.length), float(board.width)),
        depth=back.groove,
        making=MILLED,
    )
