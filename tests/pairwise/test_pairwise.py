"""Every two choices together: each door is worked out, built solid and opened without a clash.

Solids are valid, closed and of their numbers' volume (`part_solid` raises otherwise), lie inside
their blanks, share no wood in any state; what is to touch touches within `TOUCH`, 1e-6 mm, and
what is to be clear is clear by what the design says, to 1e-3 mm.
"""

from __future__ import annotations

import itertools

import pytest
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib

from parametric.job import Job, check
from parametric.model import Part
from parametric.solids.clash import (
    TOUCH,
    Standing,
    clashes_in_all_states,
    contact_area,
    gap,
    standing,
)
from parametric.solids.solid_set import Solids, build_solids
from tests.pairwise.cases import CASES, FACTORS, Case
from tests.pairwise.written import written

pytestmark = pytest.mark.kernel


def goes_together(a: str, x: str, b: str, y: str) -> bool:
    """Whether some door of the list shows two choices together."""
    return any(getattr(case, a) == x and getattr(case, b) == y for case in CASES)


CABINETS = ("inset cabinet pair", "overlay cabinet run")
SWINGS = ("hinged", "pair", "rebated pair", "pair with astragal", "dutch")
FOLDS = ("bifold of two", "bifold of four")


def hinges_for(hanging: str) -> tuple[str, ...]:
    """What a door can hang by: slides have no hinges, overlays have cups, folds none or butts."""
    if hanging in SWINGS:
        return ("butt", "cup") if hanging == "dutch" else ("butt", "cup", "pivot")
    if hanging in FOLDS:
        return ("none", "butt")
    return {"inset cabinet pair": ("butt", "cup"), "overlay cabinet run": ("cup",)}.get(
        hanging, ("none",)
    )


def ways_for(hanging: str) -> tuple[str, ...]:
    """Which way it opens."""
    if hanging in CABINETS:
        return ("towards you",)
    return ("towards you", "away from you") if hanging in SWINGS else ("slides",)


def possible(case: Case) -> bool:
    """What cannot be together is no door: raised panels follow no curve, bars have no moulding."""
    if case.hinge not in hinges_for(case.hanging) or case.opens not in ways_for(case.hanging):
        return False
    if case.fittings == "lock" and (case.hanging not in SWINGS or case.hanging == "rebated pair"):
        return False
    if case.head != "straight" and case.infill in ("raised panel", "bars between stops"):
        return False
    barred = case.infill.startswith("divided") or "bars" in case.infill
    if barred and case.sight != "square":
        return False
    if case.hanging == "dutch" and case.infill == "divided lite over a panel":
        return False
    return case.joint == "loose tenon" or stubbed(case)


def stubbed(case: Case) -> bool:
    """Whether stub tenons can join it: panels alone, nothing curved or moulded, no stepped edge."""
    return (
        case.infill in ("raised panel", "flat panel", "board panel")
        and (case.head, case.sight) == ("straight", "square")
        and case.hanging not in ("dutch", "rebated pair")
    )


def test_it_is_pairwise() -> None:
    """Every two choices that some door can have together are together in one of the list."""
    all_doors = [Case(*choices) for choices in itertools.product(*FACTORS.values())]
    wanted = {
        (a, getattr(case, a), b, getattr(case, b))
        for case in all_doors
        if possible(case)
        for a, b in itertools.combinations(FACTORS, 2)
    }
    assert [pair for pair in sorted(wanted) if not goes_together(*pair)] == []
    assert all(possible(case) for case in CASES)


@pytest.fixture(scope="module", params=CASES, ids=lambda case: ", ".join(case))
def door(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Job:
    path = tmp_path_factory.mktemp("door") / "design.yaml"
    path.write_text(written(request.param), encoding="utf-8")
    return check(path, user_house=False)


def test_it_is_whole(door: Job) -> None:
    assert [p.message for p in door.problems if p.level == "stop"] == []
    assert door.assembly is not None
    solids = build_solids(door.assembly.parts)
    for part in {solids.key(part): part for part in door.assembly.parts}.values():
        _inside_its_blank(part, solids)
    assert clashes_in_all_states(door.assembly, solids) == ()
    shut = standing(door.assembly, door.assembly.states[0])
    for group in {piece.group for piece in shut}:
        _mated([piece for piece in shut if piece.group == group], solids)


def _mated(leaf: list[Standing], solids: Solids) -> None:
    """Shoulders on stiles, tenons in slots, panes on their beds, panels loose in their grooves.

    By hand, from the sizes in `written`: a loose tenon of 10 x 50 x 78 has round edges, so a cheek
    is flat over 50 - 10 = 40; half of it, 39, lies in either member, between two cheeks of a slot
    10 wide: 2 x 40 x 39 = 3120 mm2. A tongue of 8 in a groove of 8.2, in its middle, is 0.1 clear.
    """
    stiles = [piece for piece in leaf if piece.part.mark.startswith("S")]
    frame = [piece for piece in leaf if piece.part.mark.startswith(("S", "R"))]
    for piece in leaf:
        name = piece.part.name
        if piece.part.mark.startswith("R"):
            flat = [s for s in stiles if contact_area(piece, s, solids) > 100.0]
            assert len(flat) == 2, (name, "rail on its stiles")
        elif piece.part.noun == "loose tenon":
            in_slots = [
                area for m in _near(piece, frame) if (area := contact_area(piece, m, solids))
            ]
            assert in_slots == pytest.approx([3120.0, 3120.0], abs=0.1), (name, in_slots)
        elif piece.part.noun == "raised panel":
            gaps = [gap(piece, member, solids) for member in _near(piece, frame)]
            assert gaps == pytest.approx([0.1] * 4, abs=1e-3), (name, gaps)
        elif piece.part.material.look == "glass":
            held = [m for m in _near(piece, leaf) if contact_area(piece, m, solids) > 1.0]
            assert len(held) >= 4, (name, [m.part.name for m in held])


def _near(piece: Standing, others: list[Standing]) -> list[Standing]:
    """The others whose boxes meet its own."""
    (x0, y0, z0), (x1, y1, z1) = piece.box
    return [
        other
        for other in others
        if other is not piece
        and all(
            low < b + TOUCH and a < high + TOUCH
            for low, high, a, b in zip((x0, y0, z0), (x1, y1, z1), *other.box, strict=True)
        )
    ]


def _inside_its_blank(part: Part, solids: Solids) -> None:
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solids.of(part), box, False, False)
    x0, y0, z0, x1, y1, z1 = box.Get()
    size = (part.blank.length, part.blank.width, part.blank.thickness)
    near = 1e-4
    assert min(x0, y0, z0) > -near, part.name
    for far, most in zip((x1, y1, z1), size, strict=True):
        assert far < float(most) + near, part.name
