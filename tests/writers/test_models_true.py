"""Models in the right size, the right way up and the right way round, by readers of other people.

The sizes are the figures of numbers.json, with their sums. What must not be mirrored is
seen on a pair in which nothing is even, by points in the wood and points in its hollows.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
import pytest

from parametric.job import Job, check
from parametric.pack.numbers import figures
from parametric.solids.solid_set import Solids
from parametric.writers.client_page import Palette
from tests.readers.models import Point, Read, Step, box_of, glb_read, usdz_read
from tests.solids.models import HAND_MADE, assembly_of, solids_of
from tests.whole.test_build import INCH_TWIN

pytestmark = pytest.mark.kernel

FORMATS = ("glb", "step", "usdz")
NEAR = {"glb": 1e-3, "step": 1e-3, "usdz": 1e-3}
"""mm: single precision in metres keeps a ten-thousandth; gmsh widens a box by as much."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("models")


@pytest.fixture(scope="module", params=["mm", "inch"])
def job(request: pytest.FixtureRequest, folder: Path, project: Path) -> Job:
    """The worked example and its twin in inches, whose models are in the same units."""
    design = project / "examples/larch-hill-reading-room/design.yaml"
    if request.param == "inch":
        design = folder / "design.yaml"
        design.write_text(INCH_TWIN, encoding="utf-8")
    return check(design, user_house=False)


def read(kind: str, assembly: object, solids: Solids, folder: Path) -> Read:
    """The model of a job as somebody else's program reads it."""
    from parametric.model import Assembly
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step
    from parametric.writers.usdz import write_usdz

    assert isinstance(assembly, Assembly)
    path = folder / f"model.{kind}"
    match kind:
        case "glb":
            return glb_read(write_glb(assembly, solids))
        case "step":
            path.write_bytes(write_step(assembly, solids))
            return Step(path=path)
        case _:
            path.write_bytes(write_usdz(assembly, solids, Palette()))
            return usdz_read(path)


@cache
def solids_for(design: str) -> Solids:
    from parametric.solids.solid_set import build_solids

    made = check(Path(design), user_house=False).assembly
    assert made is not None
    return build_solids(made.parts)


@pytest.mark.parametrize("kind", FORMATS)
def test_extents_are_the_figures(kind: str, job: Job, tmp_path: Path) -> None:
    """Larch Hill, mm: leaf A from -50 to 974.5, leaf B from 854.5 to 1879, both 12 to 2114 up.

    Across: left edge, left edge + width; together the cover, 1929, over the opening of
    1829 with 50 to spare each side. Up: floor gap 12, + leaf height 2102 = 2114, which is
    the head at the highest floor 2069 + lap 45. Away: the middle of the leaf is 86 (34)
    before the wall, so its faces are at -106 and -66 (-54 and -14).
    """
    assert job.resolved is not None
    assert job.assembly is not None
    solids = solids_for(str(job.path))
    model = read(kind, job.assembly, solids, tmp_path)
    of = {name: float(figure) for name, figure in figures(job.resolved, job.loads).items()}
    planes = {"leaf A": "outer track off the wall", "leaf B": "inner track off the wall"}
    foot = of["floor gap"]
    for leaf, plane in planes.items():
        left, width = of[f"{leaf} / left edge"], of[f"{leaf} / width"]
        thick = of[f"{leaf} / thickness"]
        wanted = (
            (left, -of[plane] - thick / 2, foot),
            (left + width, -of[plane] + thick / 2, foot + of[f"{leaf} / height"]),
        )
        assert box_of(model, f"{leaf} / ") == pytest.approx(np.array(wanted), abs=NEAR[kind])
    leaves = box_of(model, "leaf ")
    assert leaves[1][0] - leaves[0][0] == pytest.approx(of["cover"], abs=NEAR[kind])
    assert leaves[0][0] < 0 < of["largest width"] < leaves[1][0]
    lapped = of["head height at the highest floor"] + of["head lap"]
    assert leaves[1][2] == pytest.approx(lapped, abs=NEAR[kind])
    for track in ("outer track", "inner track"):
        box = model.boxes[f"tracks / {track}"]
        assert box[1][0] - box[0][0] == pytest.approx(of["track length"], abs=NEAR[kind])
        assert (box[0][1] + box[1][1]) / 2 == pytest.approx(
            -of[f"{track} off the wall"], abs=NEAR[kind]
        )
        assert box[0][2] > leaves[1][2]
    # the room sees the left leaf at its left, in front of the other
    front, back = box_of(model, "leaf A / "), box_of(model, "leaf B / ")
    assert front[0][0] < back[0][0]
    assert front[1][1] < back[0][1] < 0


@pytest.mark.parametrize("kind", FORMATS)
def test_every_part_of_larch_hill_has_its_finished_size(
    kind: str, project: Path, tmp_path: Path
) -> None:
    """Length, width and thickness as the cut list has them, whichever way the part stands."""
    design = project / "examples/larch-hill-reading-room/design.yaml"
    made = check(design, user_house=False).assembly
    assert made is not None
    boxes = read(kind, made, solids_for(str(design)), tmp_path).boxes
    assert boxes.keys() == {part.name for part in made.parts}
    for part in made.parts:
        size = boxes[part.name][1] - boxes[part.name][0]
        assert sorted(size) == pytest.approx(sorted(map(float, part.finished)), abs=1e-3), part.name


IN_WOOD, IN_HOLLOW = True, False
POST = "leaf A / left stile"
POINTS: dict[Point, bool] = {
    # The leaf stands at (0, -106, 12) and is 400 x 40 x 700. The pull is let into the front of
    # the left stile, 300 up: 13.7 deep, 20.6 wide about 30 from the left edge.
    (30, -106 + 5, 12 + 300): IN_HOLLOW,
    (30, -106 + 35, 12 + 300): IN_WOOD,  # seen in a mirror front to back
    (30, -106 + 5, 12 + 400): IN_WOOD,  # seen in a mirror top to bottom
    # The panel's groove runs up the inner edge, x = 60, from 70 to 340: 8.2 wide about the
    # middle of the thickness, 10 deep.
    (60 - 5, -106 + 20, 12 + 200): IN_HOLLOW,
    (0 + 5, -106 + 20, 12 + 200): IN_WOOD,  # seen in a mirror left to right
    (60 - 5, -106 + 20, 12 + 500): IN_WOOD,  # seen in a mirror top to bottom
    # Slots 24 deep for loose tenons, 20 to 52 and 655 to 687 up: not even about the middle.
    (60 - 20, -106 + 20, 12 + 36): IN_HOLLOW,
    (60 - 20, -106 + 20, 12 + 700 - 24): IN_HOLLOW,
    (60 - 20, -106 + 20, 12 + 52 + 4): IN_WOOD,
    (60 - 20, -106 + 20, 12 + 655 - 3): IN_WOOD,
}


@pytest.mark.parametrize("kind", FORMATS)
def test_nothing_is_mirrored(kind: str, tmp_path: Path) -> None:
    """Points of the lopsided pair's left stile, and of its panel: raised towards the room."""
    model = read(kind, assembly_of(HAND_MADE), solids_of(HAND_MADE), tmp_path)
    found = model.inside(POST, POINTS)
    assert dict(zip(POINTS, found, strict=True)) == POINTS
    # The panel is 28 thick with its back 29 behind the leaf's front. 16 in from its upright
    # edge at 52 the bevel, 15 to 26.5 over 40, has left 15 + 11.5 * 16 / 40 = 19.6 of it.
    edge = (52 + 16, -106 + 29 - 24, 12 + 200)
    field = (52 + 148, -106 + 29 - 24, 12 + 200)
    at_back = (52 + 16, -106 + 29 - 8, 12 + 200)
    assert model.inside("leaf A / panel", [edge, field, at_back]) == [False, True, True]


def test_step_says_that_it_is_in_millimetres(tmp_path: Path) -> None:
    """A reader that is asked for metres finds a thousandth of every length."""
    from parametric.writers.step import write_step

    path = tmp_path / "model.step"
    path.write_bytes(write_step(assembly_of(HAND_MADE), solids_of(HAND_MADE)))
    model = Step(path=path)
    in_metres = model.boxes_in("M")
    for name, box in model.boxes.items():
        assert in_metres[name] * 1000 == pytest.approx(box, abs=1e-3), name
