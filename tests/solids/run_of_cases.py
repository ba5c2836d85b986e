"""A run of base cases made by hand: to see how solids, models and the client's page grow.

Each case: two sides, top, bottom, back, three shelves, two doors of five pieces over its upper
part and two drawers of six below. Frames as the tool's: x right, y away from the viewer from the
front edges of the boards, z up. Lengths in mm.
"""

from __future__ import annotations

from parametric.model import (
    Assembly,
    End,
    Face,
    Groove,
    Group,
    Material,
    Part,
    Placement,
    Slide,
    Slot,
    State,
    Turn,
    Vector,
)
from parametric.parts.assembly import marked
from tests.solids.pair import AWAY, LEFT, RIGHT, ROUTER, SAW, UP, at, made

WIDE, HIGH, DEEP, BOARD = 600.0, 1400.0, 560.0, 18.0
PLINTH = 100.0
BACK, GROOVE, BACK_IN = 8.0, 8.0, 20.0
THICK, STILE = 22.0, 70.0
REVEAL, GAP = 1.5, 3.0
DRAWER, DRAWN = 220.0, 450.0
PANEL, PANEL_IN = 9.0, 8.0
BOX_SIDE, BOX_HIGH, BOX_LONG, RUNNER = 15.0, 160.0, 500.0, 12.7
BOTTOM, BOTTOM_IN = 9.0, 7.0

SHEET = Material(name="birch plywood", look="board", density=680)
TULIP = Material(name="tulipwood", look="timber", density=455)

INTO: Vector = (0.0, -1.0, 0.0)


def run_of_cases(count: int, *, unlike: bool = False) -> Assembly:
    """So many cases in a row, each with its doors and drawers; `unlike`, each 1 wider than the last."""
    groups: list[Group] = []
    left = 0.0
    for number in range(1, count + 1):
        wide = WIDE + (number - 1 if unlike else 0)
        groups.append(_case(f"cabinet {number}", left, wide))
        groups += [
            _door(f"leaf {number} left", left, wide, hung="left"),
            _door(f"leaf {number} right", left, wide, hung="right"),
            *(_drawer(f"leaf {number} drawer {k}", left, wide, k) for k in (1, 2)),
        ]
        left += wide
    moving = [group.name for group in groups if group.motion]
    return Assembly(
        name=f"Run of {count}",
        groups=tuple(marked(groups)),
        states=(
            State(name="shut", open=dict.fromkeys(moving, 0.0)),
            State(name="open", open=dict.fromkeys(moving, 1.0)),
        ),
    )


def _groove(
    face: Face, length: float, v: float, width: float, deep: float, start: float = 0.0
) -> Groove:
    """A groove along a piece, through both ends or stopped as far from either."""
    return Groove(
        name="groove",
        face=face,
        u0=start,
        u1=length - start,
        v=v,
        width=width,
        depth=deep,
        making=SAW,
        corner=3.0 if start else 0.0,
        squared=start > 0,
    )


def _case(name: str, left: float, case: float) -> Group:
    inside, back = case - 2 * BOARD, BACK_IN + BACK / 2

    def board(
        called: str, size: tuple[float, float, float], grooved: Face | None = None, v: float = 0.0
    ) -> Part:
        cuts = () if grooved is None else (_groove(grooved, size[0], v, BACK, GROOVE),)
        *_, noun = (word for word in called.split() if not word.isdigit())
        letter = "X" if noun == "back" else "C"
        return made(f"{name} / {called}", letter, noun, size, *cuts, material=SHEET)

    tall, flat, shelf = (HIGH, DEEP, BOARD), (inside, DEEP, BOARD), (inside - 1, DEEP - 60.0, BOARD)
    behind = (HIGH - 2 * BOARD + 2 * GROOVE - 2, inside + 2 * GROOVE - 2, BACK)
    floor = 2 * (DRAWER + GAP) + BOARD
    pitch = (HIGH - BOARD - floor) / 4
    return Group(
        name=name,
        placement=Placement(origin=(left, 0.0, PLINTH)),
        parts=(
            at(board("left side", tall, "high face", back), (0.0, DEEP, 0.0), UP, INTO),
            at(board("right side", tall, "high face", DEEP - back), (case, 0.0, 0.0), UP, AWAY),
            at(board("bottom", flat, "high face", DEEP - back), (BOARD, 0.0, 0.0), RIGHT, AWAY),
            at(
                board("top", flat, "low face", DEEP - back), (BOARD, 0.0, HIGH - BOARD), RIGHT, AWAY
            ),
            at(
                board("back", behind),
                (BOARD - GROOVE + 1 + behind[1], DEEP - BACK_IN, BOARD - GROOVE + 1),
                UP,
                LEFT,
            ),
            *(
                at(
                    board(f"shelf {k}", shelf),
                    (BOARD + 0.5, 30.0, floor + (k - 1) * pitch),
                    RIGHT,
                    AWAY,
                )
                for k in (1, 2, 3)
            ),
        ),
        see_through=True,
    )


def _slot(face: End, *, deep: float = 20.0) -> Slot:
    return Slot(
        name=f"{face} slot",
        face=face,
        u0=15.0,
        u1=STILE - 15,
        v=THICK / 2,
        width=8.0,
        depth=deep,
        making=ROUTER,
    )


def _door(name: str, left: float, case: float, *, hung: str) -> Group:
    foot = PLINTH + REVEAL + 2 * (DRAWER + GAP)
    wide, high = (case - 2 * REVEAL - GAP) / 2, PLINTH + HIGH - REVEAL - foot
    x = left + REVEAL + (0.0 if hung == "left" else wide + GAP)
    pin = x if hung == "left" else x + wide

    def stile(side: str, inner: Face) -> Part:
        slots = (
            Slot(
                name=f"slot {u0:g}",
                face=inner,
                u0=u0,
                u1=u0 + STILE - 30,
                v=THICK / 2,
                width=8.0,
                depth=30.0,
                making=ROUTER,
            )
            for u0 in (15.0, high - STILE + 15)
        )
        groove = _groove(inner, high, THICK / 2, PANEL, PANEL_IN, start=STILE - PANEL_IN)
        return made(
            f"{name} / {side} stile",
            "S",
            "stile",
            (high, STILE, THICK),
            groove,
            *slots,
            material=TULIP,
        )

    def rail(which: str, inner: Face) -> Part:
        size = (wide - 2 * STILE, STILE, THICK)
        groove = _groove(inner, size[0], THICK / 2, PANEL, PANEL_IN)
        ends = (_slot("low end"), _slot("high end"))
        return made(f"{name} / {which} rail", "R", "rail", size, groove, *ends, material=TULIP)

    panel = made(
        f"{name} / panel",
        "P",
        "panel",
        (high - 2 * STILE + 2 * PANEL_IN - 2, wide - 2 * STILE + 2 * PANEL_IN - 2, PANEL),
        material=SHEET,
    )
    return Group(
        name=name,
        placement=Placement(origin=(x, -THICK, foot)),
        parts=(
            at(stile("left", "low edge"), (STILE, THICK, 0.0), UP, LEFT),
            at(stile("right", "high edge"), (wide, THICK, 0.0), UP, LEFT),
            at(rail("bottom", "high edge"), (STILE, THICK, 0.0), RIGHT, UP),
            at(rail("top", "low edge"), (STILE, THICK, high - STILE), RIGHT, UP),
            at(
                panel,
                (wide - STILE + PANEL_IN - 1, (THICK + PANEL) / 2, STILE - PANEL_IN + 1),
                UP,
                LEFT,
            ),
        ),
        motion=(
            Turn(
                point=(pin, -THICK, 0.0),
                axis=(0.0, 0.0, 1.0),
                angle=-90.0 if hung == "left" else 90.0,
            ),
        ),
        see_through=True,
    )


def _drawer(name: str, left: float, case: float, place: int) -> Group:
    foot = PLINTH + REVEAL + (place - 1) * (DRAWER + GAP)
    wide = case - 2 * REVEAL
    over = BOARD + RUNNER - REVEAL  # from the front's end to the box
    box = case - 2 * BOARD - 2 * RUNNER
    between = box - 2 * BOX_SIDE
    sunk = BOTTOM_IN - 0.5

    def piece(
        called: str, noun: str, size: tuple[float, float, float], grooved: Face | None = None
    ) -> Part:
        cuts = () if grooved is None else (_groove(grooved, size[0], 15.0, BOTTOM, BOTTOM_IN),)
        return made(f"{name} / drawer / {called}", "W", noun, size, *cuts, material=SHEET)

    side, end = (BOX_LONG, BOX_HIGH, BOX_SIDE), (between, BOX_HIGH, BOX_SIDE)
    y, z = THICK, 30.0
    return Group(
        name=name,
        placement=Placement(origin=(left + REVEAL, -THICK, foot)),
        parts=(
            at(
                made(f"{name} / front", "F", "front", (wide, DRAWER, THICK), material=TULIP),
                (0.0, THICK, 0.0),
                RIGHT,
                UP,
            ),
            at(piece("left side", "drawer side", side, "high face"), (over, y, z), AWAY, UP),
            at(
                piece("right side", "drawer side", side, "low face"),
                (over + box - BOX_SIDE, y, z),
                AWAY,
                UP,
            ),
            at(
                piece("front", "drawer front", end, "low face"),
                (over + BOX_SIDE, y + BOX_SIDE, z),
                RIGHT,
                UP,
            ),
            at(
                piece("back", "drawer back", end, "high face"),
                (over + BOX_SIDE, y + BOX_LONG, z),
                RIGHT,
                UP,
            ),
            at(
                piece(
                    "bottom",
                    "drawer bottom",
                    (between + 2 * sunk, BOX_LONG - 2 * BOX_SIDE + 2 * sunk, BOTTOM),
                ),
                (over + BOX_SIDE - sunk, y + BOX_SIDE - sunk, z + 15.0 - BOTTOM / 2),
                RIGHT,
                AWAY,
            ),
        ),
        motion=(Slide(direction=INTO, travel=DRAWN),),
        see_through=True,
    )
