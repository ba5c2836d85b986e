"""Every two choices together: each door is worked out, built solid and opened without a clash.

Solids are valid, closed and of their numbers' volume (`part_solid` raises otherwise), lie inside
their blanks, share no wood in any state, and rails lie flat against stiles.
"""

from __future__ import annotations

import itertools

import pytest
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib

from parametric.job import Job, check
from parametric.model import Part
from parametric.solids.clash import clashes_in_all_states, contact_area, standing
from parametric.solids.solid_set import Solids, build_solids
from tests.pairwise.cases import CASES, FACTORS, Case
from tests.pairwise.written import written

pytestmark = pytest.mark.kernel


def goes_together(a: str, x: str, b: str, y: str) -> bool:
    """Whether some door of the list shows two choices together."""
    return any(getattr(case, a) == x and getattr(case, b) == y for case in CASES)


def possible(case: Case) -> bool:
    """What cannot be together is no door: slides have no hinges, stops follow no curve, steps take no pins."""
    swings = case.hanging in ("hinged", "pair", "rebated pair", "pair with astragal", "dutch")
    folds = case.hanging in ("bifold of two", "bifold of four")
    if swings != (case.opens != "slides"):
        return False
    hinges = ("butt", "cup", "pivot") if swings else ("none", "butt") if folds else ("none",)
    if case.hinge not in hinges:
        return False
    if case.fittings == "lock" and (not swings or case.hanging == "rebated pair"):
        return False
    if case.head != "straight" and case.infill in ("panel", "lite in stops"):
        return False
    if case.hanging == "dutch" and case.hinge == "pivot":
        return False
    return not (case.hanging == "dutch" and case.infill == "divided lite over a panel")


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
    stiles = [piece for piece in shut if piece.part.mark.startswith("S")]
    for rail in (piece for piece in shut if piece.part.mark.startswith("R")):
        own = [s for s in stiles if s.group == rail.group]
        touched = [s.part.name for s in own if contact_area(rail, s, solids) > 100.0]
        assert len(touched) == 2, (rail.part.name, touched)


def _inside_its_blank(part: Part, solids: Solids) -> None:
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solids.of(part), box, False, False)
    x0, y0, z0, x1, y1, z1 = box.Get()
    size = (part.blank.length, part.blank.width, part.blank.thickness)
    near = 1e-4
    assert min(x0, y0, z0) > -near, part.name
    for far, most in zip((x1, y1, z1), size, strict=True):
        assert far < float(most) + near, part.name
