"""Corners as solids: sound, of the parts' volume, without common wood and without a gap."""

from __future__ import annotations

import dataclasses
import math
from typing import TYPE_CHECKING, cast

import pytest

from parametric.figures import Figure
from parametric.model import Blank, Part, Shaped
from parametric.outlines import Vertex
from parametric.profiles.meeting import across
from parametric.profiles.moulding import Meets
from parametric.profiles.on_rails import rail_cuts, under_outline
from parametric.profiles.sticking import Sticking, stuck
from parametric.runs import RunEnd
from tests.profiles.corners import BY, MOULDINGS, OAK, THICK, WAYS, Corner, Head, corner
from tests.profiles.whole_frame import frame

if TYPE_CHECKING:
    from OCP.TopoDS import TopoDS_Shape

pytestmark = pytest.mark.kernel
HEADS: tuple[Head, ...] = ("straight", "springs here", "rises into it", "half round")
CLOSE = 1e-3
"""The widest gap that is no gap, mm."""


def standing(part: Part) -> TopoDS_Shape:
    """A part's solid where it stands; building it checks that it is sound and of its volume."""
    from parametric.solids.placing import placed
    from parametric.solids.shape import part_solid

    return placed(part_solid(part), part.placement)


def common(one: TopoDS_Shape, other: TopoDS_Shape) -> float:
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Common

    from parametric.solids.shape import solids_in, volume

    shared = BRepAlgoAPI_Common(one, other)
    assert shared.IsDone()
    return sum(volume(solid) for solid in solids_in(shared.Shape()))


@pytest.mark.parametrize("head", [*HEADS, "springs here, both faces"])
@pytest.mark.parametrize(("name", "meets"), WAYS)
def test_a_corner_closes(name: str, meets: Meets, head: str) -> None:
    from parametric.solids.shape import volume
    from tests.profiles.gaps import widest_gap

    shape, _, faces = head.partition(", ")
    made = corner(name, meets, cast(Head, shape), both=bool(faces))
    stile, rail = (standing(part) for part in made.members)
    for solid, part in zip((stile, rail), made.members, strict=True):
        assert volume(solid) == pytest.approx(part.volume, rel=2e-8)
    assert common(stile, rail) == 0.0
    for of, to in ((stile, rail), (rail, stile)):
        found = widest_gap(made, of, to)
        assert found.points >= 10
        assert found.faces >= 2
        assert found.widest <= CLOSE


@pytest.mark.parametrize("meets", ["coped", "mitred"])
def test_a_rail_that_stands_off_is_found(meets: Meets) -> None:
    from tests.profiles.gaps import widest_gap

    made: Corner = corner("ovolo", meets, "springs here")
    x, y, z = made.rail.placement.origin
    off = dataclasses.replace(
        made.rail, placement=dataclasses.replace(made.rail.placement, origin=(x + 0.002, y, z))
    )
    found = widest_gap(made, standing(made.stile), standing(off))
    assert 0.0015 < found.widest < 0.003


@pytest.mark.parametrize(("name", "meets"), WAYS)
def test_a_whole_frame_goes_together(name: str, meets: Meets) -> None:
    parts = frame(name, meets)
    shapes = [standing(part) for part in parts]
    for i, one in enumerate(shapes):
        for other in shapes[i + 1 :]:
            assert common(one, other) == 0.0


def test_a_stopped_run_and_a_pointed_head() -> None:
    moulding = MOULDINGS["ovolo"]
    blank = Blank(length=Figure(400.0), width=Figure(200.0), thickness=Figure(THICK))
    sticking = Sticking(moulding=moulding, faces=("high face",), meets="mitred")
    path = (Vertex(60.0, 0.0), Vertex(300.0, 0.0))
    ends = [
        dataclasses.replace(across(path, 12.0, at_start=flag), open=False) for flag in (True, False)
    ]
    piece = Part(
        name="stopped",
        noun="rail",
        mark="R",
        material=OAK,
        blank=blank,
        placement=corner("ovolo", "mitred", "straight").rail.placement,
        cuts=(stuck(sticking, "high face", path, *ends),),
    )
    # 12 x 12 less a quarter of radius 10, over 240
    assert blank.volume - piece.volume == pytest.approx((144 - 25 * math.pi) * 240, rel=1e-9)
    standing(piece)
    # two arcs of radius 260 over 376 between shoulders, meeting in a point: the run is two,
    # mitred upright over it
    radius, half = 260.0, 188.0
    rise = math.sqrt(radius**2 - (radius - half) ** 2)
    low_shoulder = Vertex(12.0, 0.0, 0.0)
    turn = math.acos((radius - half) / radius)
    bulge = -math.tan(turn / 4)
    path = (
        low_shoulder._replace(bulge=bulge),
        Vertex(200.0, rise, bulge),
        Vertex(388.0, 0.0),
    )
    blank = Blank(length=Figure(400.0), width=Figure(320.0), thickness=Figure(THICK))
    under = Shaped(
        name="under",
        face="high face",
        outline=under_outline(path, blank),
        depth=THICK,
        making=BY,
    )
    cuts = rail_cuts(sticking, blank, low=path, high=None)
    runs = [cut for cut in cuts if cut.name == "ovolo"]
    assert len(runs) == 2
    assert all(isinstance(getattr(run, side), RunEnd) for run in runs for side in ("start", "end"))
    standing(dataclasses.replace(piece, blank=blank, cuts=(under, *cuts)))
