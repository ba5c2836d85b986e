"""A top that follows the ceiling: its angle, the lengths under it, and that all of it fits.

The room: 2310 wide, 1985 high at the left and 640 at the right, so that the ceiling falls
1345 in 2310: tan a = 1345 / 2310, a = 30.21 deg.
"""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest

from parametric.cnc.setups import set_ups
from parametric.drawing import draw
from parametric.drawing.audit import audit
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Sheet, primitives
from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Drilled, Part, Shaped, removed_volume
from parametric.pack.machine_pictures import machine_work
from parametric.pack.numbers import figures
from parametric.problems import stops
from parametric.trade.paperwork import paperwork
from parametric.trade.printed import printed
from parametric.trade.shaped_sizes import slant_of

DESIGN = Path(__file__).parents[1] / "designs/old/version-1-rake.yaml"
FALL = 1345 / 2310
ANGLE = math.atan(FALL)


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


def test_the_angle_is_the_ceilings_own(numbers: dict[str, Figure]) -> None:
    assert numbers["cabinet low / slope of its top"] == pytest.approx(-math.degrees(ANGLE))
    assert numbers["cabinet low / slope of its top"] == pytest.approx(-30.21, abs=0.005)


def test_the_top_is_as_long_as_its_slope_and_its_plumb_ends(numbers: dict[str, Figure]) -> None:
    # 1100 / cos a = 1272.87 along the slope, and 18 tan a = 10.48 on to the longer face's end
    expected = 1100 / math.cos(ANGLE) + 18 * math.tan(ANGLE)
    assert numbers["cabinet low / top / length"] == pytest.approx(expected)
    assert expected == pytest.approx(1283.36, abs=0.005)


def test_the_sides_stop_under_the_top(numbers: dict[str, Figure]) -> None:
    # at the left the ceiling over x = 20 is 1985 - 20 FALL; less the gap 10, the plinth 50 and the
    # top's 18 / cos a plumb; the outer face is the longer one, for it falls to the right
    left = 1985 - 20 * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    assert numbers["cabinet low / left side / length"] == pytest.approx(left)
    # the right side's longer face is its inner one, 18 in from x = 1120
    right = 1985 - (1120 - 18) * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    assert numbers["cabinet low / right side / length"] == pytest.approx(right)


def test_shelves_are_shared_out_under_the_lower_end_of_their_bay(job: Job) -> None:
    assert job.assembly is not None
    shelves = [p for p in job.assembly.parts if p.name.startswith("cabinet low / bay 2 / shelf")]
    # bay 2 ends 18 before x = 1120; its bottom's upper face is at 18
    head = 1985 - (1120 - 18) * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    apart = (head - 18 - 2 * 18) / 3
    # pins from 64 over the bottom to 64 under the top, every 32, what is over shared; a shelf lies
    # 2.5 over the middle of the pins nearest to its place
    room = head - 18 - 2 * 64
    first = 18 + 64 + (room % 32) / 2
    wanted = (18 + apart, 18 + 2 * apart + 18)
    lying = [first + 32 * round((up - 2.5 - first) / 32) + 2.5 for up in wanted]
    heights = sorted(part.placement.origin[2] for part in shelves)
    assert heights == pytest.approx(lying)


def _part(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(part for part in job.assembly.parts if part.name == name)


def test_the_ends_are_bevelled_to_the_slope(job: Job) -> None:
    side = _part(job, "cabinet low / left side")
    (bevel,) = [cut for cut in side.cuts if cut.name == "end to the slope"]
    bored = sum(removed_volume(cut, side.blank) for cut in side.cuts if isinstance(cut, Drilled))
    # a wedge 18 thick and 18 tan a long, right through the depth of 300
    assert side.blank.volume - side.volume - bored == pytest.approx(
        18 * 18 * FALL / 2 * 300
        + sum(18 * 300 * 6 for cut in side.cuts if cut.name.startswith("dado") and cut is not bevel)
    )


def test_it_is_made_and_nothing_clashes(job: Job) -> None:
    from parametric.solids.clash import clashes_in_all_states, touching
    from parametric.solids.solid_set import build_solids

    assert job.assembly is not None
    # each valid, closed, and of the volume that its cuts leave, or this raises
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()
    shut = job.assembly.states[0]
    touched = touching(job.assembly, shut, solids, "cabinet low / top")
    for name in ("left side", "right side", "partition 1", "back"):
        assert f"cabinet low / {name}" in touched


def test_a_slope_is_no_fall_of_the_floor(tmp_path: Path) -> None:
    text = DESIGN.read_text(encoding="utf-8").replace("  floor: level\n", "")
    design = tmp_path / "design.yaml"
    design.write_text(text, encoding="utf-8")
    resolved = check(design, user_house=False).resolved
    assert resolved is not None
    assert resolved.casework is not None
    opening = resolved.casework.cases[0].opening
    assert {float(low) for low in opening.floor.values()} == {0.0}
    assert {place: float(up) for place, up in opening.ceiling.items()} == {
        "left": 1985,
        "right": 640,
    }


def _drawn(job: Job) -> dict[str, tuple[Sheet, ...]]:
    """Every set of sheets, each of which stands clear."""
    assert job.resolved is not None
    assert job.assembly is not None
    resolved, assembly = job.resolved, job.assembly
    paper = paperwork(resolved, assembly, job.loads)
    router, layers = resolved.shop.router, resolved.shop.layers
    work = machine_work(assembly, set_ups(assembly, router.cutters, layers), printed(resolved).fine)
    drawn = draw(
        resolved, assembly, job.loads, job.problems, mark="0123-4567", paper=paper, machine=work
    )
    for own in drawn.sets:
        assert [fault for sheet in own.sheets for fault in audit(sheet)] == [], own.file
    return {own.file: own.sheets for own in drawn.sets}


@pytest.fixture(scope="module")
def sheets(job: Job) -> dict[str, tuple[Sheet, ...]]:
    return _drawn(job)


def test_in_inches_and_deep_every_sheet_stands_clear(tmp_path: Path) -> None:
    """The same room in inches, in thirty-seconds that fall on no step, the cabinets 16 in deep."""
    text = DESIGN.read_text(encoding="utf-8").replace("units: mm", "units: inch")
    text = text.replace("depth: 300", "depth: 16")
    text = re.sub(r"(?<=: )(\d+)(?=[,}\n])", r"\1 mm", text)
    text = text.replace("depth: 16 mm", "depth: 16").replace("stilewright: 1 mm", "stilewright: 1")
    text = re.sub(r"shelves: (\d) mm", r"shelves: \1", text)
    design = tmp_path / "design.yaml"
    design.write_text(text, encoding="utf-8")
    job = check(design, user_house=False)
    assert not stops(job.problems), text
    sheets = _drawn(job)
    case = next(s for s in sheets["shop/drawings"] if s.title.document == "Case")
    assert "30.2°" in _texts(case)


def _texts(sheet: Sheet) -> list[str]:
    """Every line of text on a sheet, tables too."""
    return [
        primitive.text
        for element in sheet.elements
        for primitive in primitives(element)
        if isinstance(primitive, Label)
    ]


def _of_part(sheets: dict[str, tuple[Sheet, ...]], mark: str) -> Sheet:
    return next(s for s in sheets["shop/drawings"] if s.title.document == f"Part {mark}")


def test_every_sheet_stands_clear_and_tells_the_angle(
    sheets: dict[str, tuple[Sheet, ...]],
) -> None:
    """Atan(1345 / 2310) = 30.21 deg: on the case's sheet, its parts' and the saw's."""
    case = next(s for s in sheets["shop/drawings"] if s.title.document == "Case")
    assert "30.2°" in _texts(case)
    for mark in ("C1", "C2", "C4", "C5", "X1"):
        assert "30.2°" in _texts(_of_part(sheets, mark)), mark
    told = [" ".join(_texts(sheet)) for sheet in sheets["shop/bench"]]
    tilted = [text for text in told if "the blade tilted, off square" in text]
    # uprights, and the plumb ends of the tops
    assert len(tilted) == 2
    for text in tilted:
        assert "30.2°" in text
        # 18 tan a = 18 x 1345 / 2310 = 10.48
        assert "10.5" in text


def test_the_back_is_cut_from_its_rectangle(job: Job, sheets: dict[str, tuple[Sheet, ...]]) -> None:
    """Planted 1 in from either side, from the bottom's under face up to the top's outer face.

    At its left edge, x = 1: 1985 - 21 FALL - 10 - 50; at its right, 1098 on, 1098 FALL lower.
    """
    high = 1985 - 21 * FALL - 10 - 50
    low = high - 1098 * FALL
    back = _part(job, "cabinet low / back")
    foot = back.placement.origin[2]
    assert float(back.blank.length) + foot == pytest.approx(high)
    (cut,) = (cut for cut in back.cuts if isinstance(cut, Shaped))
    # the triangle sawn off: low at the right edge, high at both
    corners = sorted((round(x + foot, 6), y) for x, y, _ in cut.outline)
    assert [x for x, _ in corners] == pytest.approx([low, high, high])
    assert [y for _, y in corners] == pytest.approx([1098, 0, 1098])
    (shape,) = (
        element
        for sheet in sheets["shop/cutting-plan"]
        for element in sheet.elements
        if isinstance(element, Stroke)
        and element.layer == "hidden"
        and len(element.points) == 2
        and "X1" in _texts(sheet)
    )
    (x0, y0), (x1, y1) = shape.points
    # on paper at 1:15, its face up: 1098 across, 1098 FALL along
    assert abs(y1 - y0) * 15 == pytest.approx(1098)
    assert abs(x1 - x0) * 15 == pytest.approx(1098 * FALL)


def test_a_slope_past_what_a_blade_tilts_to_is_sawn_on_end(tmp_path: Path) -> None:
    """2400 to 900 in 1200: atan(1500 / 1200) = 51.34; on end the blade tilts 90 - 51.34 = 38.66."""
    text = DESIGN.read_text(encoding="utf-8").replace("bottom: 2310", "bottom: 1200")
    text = text.replace("{left: 1985, right: 640}", "{left: 2400, right: 900}")
    text = text.replace("cabinet other: {like: low, from left: 1150, width: 1100}\n", "")
    design = tmp_path / "design.yaml"
    design.write_text(text, encoding="utf-8")
    steep = check(design, user_house=False)
    side = _part(steep, "cabinet low / left side")
    (bevel,) = (cut for cut in side.cuts if cut.name == "end to the slope")
    assert bevel.making.tool == "on end at a tall fence, blade tilted 38.7°"
    assert isinstance(bevel, Shaped)
    slant = slant_of(bevel, side.blank)
    assert slant is not None
    assert slant.on_end
    assert slant.angle == pytest.approx(math.degrees(math.atan(1500 / 1200)))
    assert slant.tilt == pytest.approx(90 - 51.34, abs=0.005)


def test_it_is_put_together_and_hung_without_diagonals(
    sheets: dict[str, tuple[Sheet, ...]],
) -> None:
    """Its two heights: 1985 - 20 FALL - 60 = 1913.4 and 1985 - 1120 FALL - 60 = 1272.9."""
    texts = [" ".join(_texts(sheet)) for sheet in sheets["shop/bench"]]
    own = [text for text in texts if "Put together: cabinet low" in text]
    (sizes,) = (text for text in own if "step by step" not in text)
    assert "1913.5" in sizes
    assert "1273" in sizes
    (steps,) = (text for text in own if "step by step" in text)
    assert "on the bevelled ends" in steps
    told = " ".join(text for sheet in sheets["site/cabinets"] for text in _texts(sheet))
    assert "diagonals" not in f"{sizes} {steps} {told}"
