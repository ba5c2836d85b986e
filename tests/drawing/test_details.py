"""Details: what each must show, that each is cut true, called once, and there only with its thing."""

from __future__ import annotations

import math
import re
import tempfile
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.drawing import Drawings
from parametric.drawing.details import Details, draw_details
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.frame import title_block_box
from parametric.drawing.lettering import TITLE
from parametric.drawing.pieces import cut_through, leaf_pieces
from parametric.drawing.plane import Polygon, edges
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.sheet import Hatch, Sheet, primitives
from parametric.drawing.subject import Subject, subject
from parametric.job import check
from parametric.problems import stops
from parametric.trade.paperwork import Paperwork, paperwork
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill
from tests.invariants.designs import bypass_designs
from tests.whole.test_build import INCH_TWIN

ALL = (
    "panel in the stile",
    "glass in its stops",
    "loose tenon",
    "stopped groove",
    "pull pockets",
    "floor guide",
    "head and track",
    "passing leaves",
)


def job_of(path: Path) -> tuple[Subject, Paperwork]:
    job = check(path, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    own = subject(job.resolved, job.assembly, job.loads, job.problems)
    return own, paperwork(job.resolved, job.assembly, job.loads)


def details_of(path: Path) -> Details:
    job, paper = job_of(path)
    return draw_details(job, paper, larch_hill().sheets[0].title, first_sheet=3)


@cache
def larch_hill_details() -> Details:
    return details_of(LARCH_HILL)


def written(text: str, folder: Path) -> Path:
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def detail_sheets(drawings: Drawings) -> list[Sheet]:
    return [s for s in drawings.sheets if s.title.document == "Details"]


def sized(view: str) -> set[str]:
    return {
        e.text
        for sheet in larch_hill_details().sheets
        for e in sheet.elements
        if isinstance(e, (Dimension, Ordinate)) and e.view == view
    }


# What each must show ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("view", "numbers"),
    [
        # Engages (803.53 - 784.5)/2 = 9.5 in a groove of 14; the field 20 + 4 + 5 - 28 = 1 below.
        ("panel in the stile", {"9.5", "(14)", "(15)", "(75)", "(28)", "1"}),
        # A stop of 12 bites 12 - 3 = 9; through 40: 1, 14.5, tape 1.5, 6, tape 1.5, 14.5, 1.
        ("glass in its stops", {"9", "3", "(12)", "1", "(14.5)", "(6)"}),
        # Free behind the tenon 46 - 90/2 = 1; the groove's bottom at 240 - 14 = 226, slot to 220.
        ("loose tenon", {"1", "(90)", "(46)", "6", "(14)"}),
        ("stopped groove, inner edge", {"(240)", "(226)", "(220)", "(158)"}),
        # 160 + 2 x 0.3, 150 + 2 x 0.3; 42 + 2 x 0.3, 32 + 2 x 0.3, 14 + 0.2.
        ("pull, from the face", {"(160.6)", "(150.6)"}),
        ("pull, section", {"(42.6)", "(32.6)", "(1.5)", "(14.2)"}),
        ("floor guide", {"(12)", "(18)", "15"}),
        ("head and track", {"(45)", "12.5", "0", "(34)", "(86)"}),
        # Behind the inner leaf 34 - 20 = 14; between the leaves 52 - 40 = 12.
        ("passing leaves", {"(120) overlap", "14", "12", "(40)"}),
    ],
)
def test_a_detail_shows_its_numbers(view: str, numbers: set[str]) -> None:
    assert sized(view) == numbers


def test_what_is_left_over_is_said_and_not_dimensioned() -> None:
    """Between the pulls 40 - 2 x 14.2 = 11.6; over the guide 40 - 18 = 22, after trimming 22 - 15 = 7."""
    said = " ".join(
        part.text
        for sheet in larch_hill_details().sheets
        for e in sheet.elements
        for part in primitives(e)
        if isinstance(part, Label)
    )
    assert "11.6 of wood is left between" in said
    assert "22 of wood up to" in said
    assert "7 would be left" in said
    assert "engages 7.2 at 6 %, 13 at 11 %" in said
    assert "174.6, into the slot" in said
    assert not {"11.6", "22", "7"} & {n.strip("()") for view in ALL for n in sized(view)}


def test_drawn_length_times_scale_and_what_a_break_leaves_out_is_the_value() -> None:
    broken = set()
    count = 0
    for sheet in larch_hill_details().sheets:
        for d in sheet.elements:
            if not isinstance(d, Dimension):
                continue
            which = 0 if d.axis == "across" else 1
            paper = abs(d.b[which] - d.a[which]) * sheet.view(d.view).scale
            assert paper + d.left_out == pytest.approx(d.value, abs=1e-6), d
            printed = float(d.text.split()[0].strip("()"))
            assert printed == pytest.approx(d.value, abs=0.25 + 1e-9)
            count += 1
            if d.left_out:
                broken.add(d.view)
    assert broken == {"pull, from the face"}
    assert count >= 25


def test_only_what_no_other_sheet_owns_stands_without_brackets() -> None:
    free = {
        d.text
        for sheet in larch_hill_details().sheets
        for d in sheet.elements
        if isinstance(d, Dimension) and not d.reference
    }
    assert free == {"9.5", "1", "9", "3", "6", "15", "12.5", "14", "12"}


# Cut true ---------------------------------------------------------------------------------------


def hatched(sheet: Sheet, view: str) -> list[tuple[float, float]]:
    """Points on the hatching of a view, in its model."""
    found = []
    own = sheet.view(view)
    for e in sheet.elements:
        if isinstance(e, Hatch) and e.view == view:
            for centre, radius, start, end in e.arcs:
                steps = max(2, math.ceil(radius * math.radians(end - start) / 0.4))
                for i in range(steps + 1):
                    a = math.radians(start + (end - start) * i / steps)
                    at = (centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a))
                    found.append(own.back(at))
            found += [own.back(p) for stroke in e.strokes for p in stroke]
    return found


def test_the_empty_bottom_of_the_groove_stays_white_and_the_tongue_does_not() -> None:
    """The groove 904.5 to 918.5, 15.9 to 24.1 deep; the tongue to 914.0, from 16 to 24."""
    sheet = larch_hill_details().sheets[0]
    points = hatched(sheet, "panel in the stile")
    void = [p for p in points if 914.1 < p[0] < 918.4 and 16.0 < p[1] < 24.0]
    tongue = [p for p in points if 905.0 < p[0] < 913.9 and 16.0 < p[1] < 24.0]
    assert void == []
    assert len(tongue) > 10


def test_the_stops_meet_on_a_mitre_that_runs_in_from_the_frame() -> None:
    """From the corner of the opening, 904.5 and 850, to the sight line 12 in and 12 up."""
    glass = next(c.detail for c in larch_hill_details().called if c.detail.kind.startswith("glass"))
    view = next(v for v in glass.views if v.name.endswith("from the face"))
    lines = [
        tuple(view.back(p) for p in e.points)
        for e in glass.elements
        if isinstance(e, Stroke) and e.view == view.name and len(e.points) == 2
    ]
    mitre = ((904.5, 850.0), (892.5, 862.0))
    near = [
        line
        for line in lines
        if all(math.dist(a, b) < 0.01 for a, b in zip(sorted(line), sorted(mitre), strict=True))
    ]
    assert len(near) == 1


def area(polygon: Polygon) -> float:
    """By the shoelace rule."""
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in edges(polygon))) / 2


def test_a_rail_cut_along_the_leaf_is_its_face_less_grooves_and_slots() -> None:
    """784.5 x 240 - 784.5 x 14 - 784.5 x 18 - 4 x 62 x 46 = 151768; the stile likewise."""
    job, _ = job_of(LARCH_HILL)
    group = job.assembly.groups[0]
    found = {
        p.part.noun: cut_through(p, "flat", 20.0) for p in leaf_pieces(group.parts, group.name)
    }
    rail, stile = found["bottom rail"], found["stile"]
    assert rail is not None
    assert stile is not None
    assert area(rail.outline) == pytest.approx(784.5 * (240 - 14 - 18) - 4 * 62 * 46)
    # 120 x 2102 - groove 488 x 14 - five slots 62 x 46 - the guide's groove 120 x 18.
    assert area(stile.outline) == pytest.approx(120 * 2102 - 488 * 14 - 5 * 62 * 46 - 120 * 18)


def test_upright_details_are_seen_from_the_side_that_the_projection_says(tmp_path: Path) -> None:
    """Off the wall to the right in first angle, 34 and 86; to the left in third, 1-1/4 and 3-3/8."""
    metric = next(
        c.detail for c in larch_hill_details().called if c.detail.kind == "head and track"
    )
    places = [e.point[0] for e in metric.elements if isinstance(e, Ordinate)]
    assert sorted(places) == pytest.approx([0.0, 34.0, 86.0])
    twin = details_of(written(INCH_TWIN, tmp_path))
    inch = next(c.detail for c in twin.called if c.detail.kind == "head and track")
    places = [e.point[0] / 25.4 for e in inch.elements if isinstance(e, Ordinate)]
    assert sorted(places) == pytest.approx([-3.375, -1.25, 0.0])


# Where they stand -------------------------------------------------------------------------------


def test_details_stand_apart_and_off_the_title_block() -> None:
    details = larch_hill_details()
    for index, sheet in enumerate(details.sheets):
        boxes = [c.detail.box for c in details.called if c.sheet == 3 + index]
        block = title_block_box(sheet.paper, sheet.title)
        for i, box in enumerate(boxes):
            assert sheet.paper.frame.holds(box)
            assert not box.meets(block)
            assert not any(box.grown(5.0).meets(other.grown(5.0)) for other in boxes[i + 1 :])


def captions(drawings: Drawings) -> dict[int, int]:
    """The number of each detail and the sheet it stands on, as lettered in the rings."""
    found: dict[int, int] = {}
    for sheet in detail_sheets(drawings):
        rings = [e for e in sheet.elements if isinstance(e, Circle) and e.radius == 4.0]
        for e in sheet.elements:
            if isinstance(e, Label) and e.height == TITLE and e.text.isdigit():
                middle = (e.at[0], e.at[1] + TITLE / 2)
                if any(math.dist(r.centre, middle) < 0.1 for r in rings):
                    assert int(e.text) not in found
                    found[int(e.text)] = sheet.title.sheet
    return found


def calls(drawings: Drawings) -> list[tuple[int, int | None]]:
    """Every number that a view calls, with the sheet where that is said."""
    found = []
    for sheet in drawings.sets[0].sheets:
        if sheet.title.document not in ("Arrangement", "Leaves"):
            continue
        for e in sheet.elements:
            if isinstance(e, Label) and e.weight == "bold" and e.view and e.height < TITLE:
                match = re.fullmatch(r"(\d+)(?: on sheet (\d+))?", e.text)
                if match:
                    found.append((int(match[1]), int(match[2]) if match[2] else None))
    return found


def called_and_present(drawings: Drawings) -> None:
    there = captions(drawings)
    asked = calls(drawings)
    assert sorted(n for n, _ in asked) == sorted(there) == list(range(1, len(there) + 1))
    for number, sheet in asked:
        assert sheet is None or there[number] == sheet


def test_every_detail_is_called_once_and_every_call_has_its_detail() -> None:
    assert [c.detail.kind for c in larch_hill_details().called] == list(ALL)
    assert len(captions(larch_hill())) == 8
    called_and_present(larch_hill())


def test_a_detail_is_there_only_with_its_thing(tmp_path: Path) -> None:
    text = LARCH_HILL.read_text(encoding="utf-8")
    glazed = text.replace("    - panel: 460\n", "    - lite: 460\n")
    assert glazed != text
    kinds = [c.detail.kind for c in details_of(written(glazed, tmp_path)).called]
    assert kinds == [k for k in ALL if k not in ("panel in the stile", "stopped groove")]

    bare = re.sub(r"(?ms)^pull: .*?\}\n", "", text)
    bare = re.sub(r"(?m)^guide: .*\n", "", bare)
    assert bare != text
    kinds = [c.detail.kind for c in details_of(written(bare, tmp_path)).called]
    assert kinds == [k for k in ALL if k not in ("pull pockets", "floor guide")]


def test_a_panel_with_its_grain_level_does_not_move_in_the_stile(tmp_path: Path) -> None:
    """Along the grain 784.5 + 2 x (14 - 1.5): it engages 12.5 in the stile, dry or damp."""
    text = LARCH_HILL.read_text(encoding="utf-8")
    level = text.replace("  grain: upright\n", "  grain: level\n")
    assert level != text
    details = details_of(written(level, tmp_path))
    first = details.called[0].detail
    assert "do not move" in first.second
    shown = {e.text for e in first.elements if isinstance(e, Dimension)}
    assert "12.5" in shown


def test_a_groove_sawn_shows_its_ramp_as_cut_and_no_sentence(tmp_path: Path) -> None:
    """Slots 60 off the groove: the ramp of 51.4 meets none, so it may be sawn, and is drawn full."""
    text = LARCH_HILL.read_text(encoding="utf-8")
    for old, new in (
        ("groove by: router", "groove by: saw"),
        ("off groove: 6 ", "off groove: 60 "),
        ("slot: 12 x 62 x 46", "slot: 12 x 30 x 46"),
        ("tenon: 12 x 60 x 90", "tenon: 12 x 28 x 90"),
    ):
        assert old in text
        text = text.replace(old, new)
    path = written(text, tmp_path)
    assert not stops(job_of(path)[0].problems)
    groove = next(c.detail for c in details_of(path).called if c.detail.kind == "stopped groove")
    words = [
        part.text for e in groove.elements for part in primitives(e) if isinstance(part, Label)
    ]
    assert not any("dashed" in word for word in words)
    curved = [e for e in groove.elements if isinstance(e, Stroke) and len(e.points) > 20]
    assert [e.layer for e in curved if e.layer in ("edge", "hidden")].count("hidden") == 0
    assert any(e.layer == "edge" and not e.closed for e in curved)


@settings(max_examples=20, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_random_jobs_call_what_they_draw(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = written(text, Path(folder))
        job = check(path, user_house=False)
        if job.resolved is None or stops(job.problems):
            return
        called_and_present(drawn(path))
