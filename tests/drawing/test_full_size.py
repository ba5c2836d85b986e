"""The story stick, the templates and their check bars measured in the files that are printed."""

from __future__ import annotations

import dataclasses
import io
import math
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path

import ezdxf
import pytest
from hypothesis import HealthCheck, given, settings

from parametric.drawing.audit import audit
from parametric.drawing.full_size.outlines import (
    STRIP,
    polygon,
    rounded,
    waste_strip,
)
from parametric.drawing.full_size.story_stick import draw_story_stick, draw_story_stick_tiles
from parametric.drawing.full_size.templates import draw_templates, draw_templates_tiled
from parametric.drawing.labels import draw_labels
from parametric.drawing.page import FOOT
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.job import check
from parametric.outlines import Outline
from parametric.problems import stops
from parametric.trade.paperwork import Paperwork
from parametric.trade.story_stick import story_sticks
from parametric.writers.dxf_sheets import write_dxf
from parametric.writers.pdf import write_pdf
from tests.drawing.full_size import Line, Page, arched, made, pages
from tests.drawing.sheets import LARCH_HILL
from tests.invariants.designs import bypass_designs
from tests.whole.test_build import INCH_TWIN

Draw = Callable[[Subject, Paperwork, TitleBlock], tuple[Sheet, ...]]
FULL_SIZE: tuple[Draw, ...] = (
    draw_story_stick,
    draw_story_stick_tiles,
    draw_templates,
    draw_templates_tiled,
)
EVERY: tuple[Draw, ...] = (*FULL_SIZE, draw_labels)


@cache
def reading_room() -> tuple[Subject, Paperwork, TitleBlock]:
    return made(LARCH_HILL)


@cache
def inch_twin() -> tuple[Subject, Paperwork, TitleBlock]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(INCH_TWIN, encoding="utf-8")
        return made(path)


def texts(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


# Check bars -----------------------------------------------------------------------------------


def bars(page: Page, points: float, *, level: bool) -> list[Line]:
    """Lines of a length in points with an end stroke of 3 mm across each end."""
    strokes = [line for line in page.lines if abs(line.length - 3.0) < 0.01 and line.level != level]

    def ended(x: float, y: float) -> bool:
        return any(
            math.dist(((s.x0 + s.x1) / 2, (s.y0 + s.y1) / 2), (x, y)) < 0.01 for s in strokes
        )

    return [
        line
        for line in page.lines
        if (line.level if level else line.upright)
        and abs(line.length * 72 / 25.4 - points) < 0.01
        and ended(line.x0, line.y0)
        and ended(line.x1, line.y1)
    ]


@pytest.mark.parametrize("draw", FULL_SIZE)
@pytest.mark.parametrize("job", [reading_room, inch_twin])
def test_every_page_has_both_check_bars_both_ways(
    job: Callable[[], tuple[Subject, Paperwork, TitleBlock]], draw: Draw
) -> None:
    """100 mm is 100 x 72 / 25.4 = 283.465 pt; 4 in is 4 x 72 = 288 pt."""
    sheets = draw(*job())
    assert sheets
    for page in pages(sheets):
        for level in (True, False):
            for points in (283.465, 288.0):
                own = bars(page, points, level=level)
                assert len(own) == 1, (points, level)
                assert own[0].width == pytest.approx(0.35, abs=0.005)
    words = ("4 in", "100 mm") if job is inch_twin else ("100 mm", "4 in")
    for sheet in sheets:
        said = sorted(
            (e for e in sheet.elements if isinstance(e, Label) and "must measure" in e.text),
            key=lambda e: (e.turned, -e.at[1], e.at[0]),
        )
        # The bar in the unit of the design stands over the other, and left of it.
        assert [e.text for e in (*said[:2], *said[2:4])] == [
            f"must measure {own}; if not, do not use" for own in (*words, *words)
        ]


def test_the_long_page_has_a_bar_of_500_and_in_inches_one_of_20() -> None:
    """500 mm is 1417.323 pt, 20 in is 1440 pt."""
    for job, points in ((reading_room, 1417.323), (inch_twin, 1440.0)):
        (page,) = pages(draw_story_stick(*job()))
        assert len(bars(page, points, level=False)) == 1


# The story stick ------------------------------------------------------------------------------

HEIGHTS = (
    -12,  # trim off the foot, and the floor where it is highest: both 12
    0,
    18,  # guide groove
    71,  # (40 + 102) / 2: a slot of 62 that stands 40 off the foot
    189,  # 240 - 14 - 6 - 62 / 2: under the groove, 6 clear of it
    226,  # 240 - 14: the panel groove's lower stop
    240,
    700,  # 240 + 460
    714,  # 700 + 14
    785,  # (714 + 6 + 850) / 2
    850,  # 700 + 150
    988,  # 1000 - 12: pull above the finished foot
    1371,  # 850 + 521
    1416,  # 1371 + 90 / 2
    1461,
    1982,  # 1461 + 521
    2042,  # 1982 + 120 / 2
    2102,
    2114,  # 2102 + 12
)
WIDTHS = (0, 120, 778.5, 784.5, 803.533, 904.5, 1024.5)
"""Glass 784.5 - 2 x 3; right shoulder 1024.5 - 120; the panel as the panel's own tests have it."""


def test_stick_lines_stand_at_datum_and_height_in_the_pdf() -> None:
    """Every line that starts at the stick's left edge, to 0.01 mm; nothing else starts there."""
    (page,) = pages(draw_story_stick(*reading_room()))
    edge = 10.0 + 25.0
    levels = sorted(
        {round(line.y0, 2) for line in page.lines if line.level and abs(line.x0 - edge) < 0.01}
    )
    datum = levels[0] + 12.0
    assert len(levels) == len(HEIGHTS)
    for level, height in zip(levels, HEIGHTS, strict=True):
        assert level - datum == pytest.approx(height, abs=0.011)
    right = edge + 60.0
    ends = sorted(
        {round(line.y0, 2) for line in page.lines if line.level and abs(line.x1 - right) < 0.01}
    )
    # Over the widths the heights run right across, but for the ticks of slots at 1416 and 2042.
    across = [h for h in HEIGHTS if h > 1024.5 + 14 and h not in (1416, 2042)]
    assert [e - datum for e in ends] == pytest.approx([*WIDTHS, *across], abs=0.011)


def test_stick_lines_stand_at_datum_and_height_in_the_dxf() -> None:
    """Model space is mm of the leaf, its finished foot on y = 0."""
    (sheet,) = draw_story_stick(*reading_room())
    document = ezdxf.read(io.StringIO(write_dxf(sheet).decode("utf-8")))
    assert document.header["$INSUNITS"] == 4
    lines = [e for e in document.modelspace() if e.dxftype() == "LINE"]
    outline = next(e for e in document.modelspace() if e.dxftype() == "LWPOLYLINE")
    edge = min(x for x, *_ in outline.get_points())
    heights = {
        round(e.dxf.start.y, 6)
        for e in lines
        if e.dxf.start.y == e.dxf.end.y and abs(min(e.dxf.start.x, e.dxf.end.x) - edge) < 1e-6
    }
    assert sorted(heights) == pytest.approx(HEIGHTS, abs=1e-5)
    (window,) = [v for v in document.layouts.get(sheet.name).viewports() if v.dxf.id != 1]
    assert window.dxf.view_height == pytest.approx(window.dxf.height)


def test_numbers_on_the_stick_and_whose_it_is() -> None:
    (sheet,) = draw_story_stick(*reading_room())
    said = texts(sheet)
    for height in HEIGHTS:
        assert str(abs(height) if height != 2114 else 12) in said
    for width in ("120", "784.5", "904.5", "1024.5", "778.5", "803.5"):
        assert width in said
    for word in ("R1", "R2", "R3", "R4", "P1", "under: blank, floor", "over: blank", "pull"):
        assert word in said
    assert "story stick, leaves A and B" in said
    assert "LH-07-F  rev. B  0123-4567" in said


def test_leaves_that_differ_get_sticks_of_their_own() -> None:
    """Twins share one; with the pull of B 25 higher there are two, and each has its own line."""
    job, paper, _ = reading_room()
    assert [s.leaves for s in paper.story_sticks] == [("A", "B")]
    door = job.resolved.door
    a, b = door.leaves
    hung = b.pulls[0]
    higher = dataclasses.replace(hung.pull, up=Figure(1013.0, "pull of B"))
    other = dataclasses.replace(b, pulls=(dataclasses.replace(hung, pull=higher),))
    resolved = dataclasses.replace(
        job.resolved, doors=(dataclasses.replace(door, leaves=(a, other)),)
    )
    sticks = story_sticks(resolved, job.assembly)
    assert [s.leaves for s in sticks] == [("A",), ("B",)]
    assert [float(m.at) for s in sticks for m in s.heights if m.kind == "pull"] == [988.0, 1013.0]


# Templates ------------------------------------------------------------------------------------


def test_pull_template_has_the_pockets_true_to_size_and_place_for_either_hand() -> None:
    """Flange 160.6 x 42.6 r 6.3, body 150.6 x 32.6 r 3.3: the pull's sizes and twice 0.3.

    Read by ezdxf: straight sides shorten by two radii, quarter circles at every corner, the
    middle 60 from the edge at x = 0 and 988 above the foot.
    """
    sheets = draw_templates(*reading_room())
    for sheet, hand in zip(sheets, (1.0, -1.0), strict=False):
        assert sheet.title.document == "Pull template"
        document = ezdxf.read(io.StringIO(write_dxf(sheet).decode("utf-8")))
        space = document.modelspace()
        arcs = [e for e in space if e.dxftype() == "ARC" and e.dxf.layer == "edge"]
        assert sorted(round(a.dxf.radius, 6) for a in arcs) == [3.3] * 4 + [6.3] * 4
        edge = next(e.dxf.start.x for e in space if e.dxftype() == "LINE" and e.dxf.layer == "cut")
        for radius, long, wide in ((6.3, 160.6, 42.6), (3.3, 150.6, 32.6)):
            own = [a for a in arcs if abs(a.dxf.radius - radius) < 1e-6]
            xs = sorted(a.dxf.center.x for a in own)
            ys = sorted(a.dxf.center.y for a in own)
            assert xs[-1] - xs[0] == pytest.approx(wide - 2 * radius, abs=1e-5)
            assert ys[-1] - ys[0] == pytest.approx(long - 2 * radius, abs=1e-5)
            assert (xs[0] + xs[-1]) / 2 - edge == pytest.approx(hand * 60.0, abs=1e-5)
            assert (ys[0] + ys[-1]) / 2 == pytest.approx(988.0, abs=1e-5)
    assert "Pockets of the pull: leaf A front, leaf B back" in texts(sheets[0])
    assert "Pockets of the pull: leaf A back, leaf B front" in texts(sheets[1])
    said = {word for text in texts(sheets[0]) for word in text.split()}
    # 988 - 150.6 / 2 and 988 + 150.6 / 2
    assert {"UP", "912.7", "1063.3", "42.6", "160.6", "32.6", "150.6", "60"} <= said


def test_gauge_notches_are_as_wide_as_their_figures() -> None:
    """15 for the edge, 0.2 either way; the groove's 8.2 less two coats of 0.04; 8 less 0.2."""
    sheet = draw_templates(*reading_room())[-1]
    assert sheet.title.document == "Notch gauges"
    (page,) = pages([sheet])
    lengths = {round(line.length, 2) for line in page.lines if line.level}
    assert {15.2, 14.8, 8.12, 7.8} <= lengths


def test_arch_is_the_circle_through_three_points() -> None:
    """500 wide, 180 of rise: radius (250^2 + 180^2) / (2 x 180) = 263.611."""
    shape = polygon(arched(500.0, 700.0, 180.0))
    assert max(y for _, y in shape) == pytest.approx(880.0, abs=0.02)
    centre = (250.0, 880.0 - 94_900 / 360)
    head = [p for p in shape if p[1] > 701.0]
    assert len(head) > 1000
    assert all(math.dist(p, centre) == pytest.approx(94_900 / 360, abs=1e-6) for p in head)


def _far(p: Point, shape: tuple[Point, ...]) -> float:
    """How far a point is from the nearest side, by the foot of the perpendicular."""
    best = math.inf
    for a, b in zip(shape, (*shape[1:], shape[0]), strict=True):
        dx, dy = b[0] - a[0], b[1] - a[1]
        long = dx * dx + dy * dy
        t = 0.0 if long == 0 else ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / long
        t = min(1.0, max(0.0, t))
        best = min(best, math.dist(p, (a[0] + t * dx, a[1] + t * dy)))
    return best


def _in(p: Point, shape: tuple[Point, ...]) -> bool:
    """By the turns of the outline about the point."""
    turn = 0.0
    for a, b in zip(shape, (*shape[1:], shape[0]), strict=True):
        one, two = (math.atan2(c[1] - p[1], c[0] - p[0]) for c in (a, b))
        turn += (two - one + math.pi) % math.tau - math.pi
    return abs(turn) > math.pi


@pytest.mark.parametrize("waste", ["inside", "outside"])
@pytest.mark.parametrize(
    "outline",
    [
        rounded(Box(0.0, 0.0, 42.6, 80.0), 6.3),
        rounded(Box(0.0, 0.0, 30.0, 40.0), 3.3, 4.0),
        arched(60.0, 40.0, 22.0),
    ],
    ids=["rounded", "relieved", "arched"],
)
def test_waste_strip_lies_on_its_side_and_is_five_wide(outline: Outline, waste: str) -> None:
    shape = polygon(outline)
    strip = waste_strip(outline, waste)  # type: ignore[arg-type]
    assert len(strip) > 30
    for a, b in strip:
        for t in (0.02, 0.5, 0.98):
            p = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)
            assert _in(p, shape) == (waste == "inside")
            assert _far(p, shape) < STRIP + 1e-6
    # Both ends of a hatch line lie on the outline, or 5 from it, or at the middle of a thin part.
    ends = [_far(p, shape) for line in strip for p in line]
    assert sum(far < 1e-6 or abs(far - STRIP) < 1e-6 for far in ends) > 0.95 * len(ends)


# All of it ------------------------------------------------------------------------------------


@pytest.mark.parametrize("draw", EVERY)
@pytest.mark.parametrize("job", [reading_room, inch_twin])
def test_pages_are_without_a_finding_and_the_same_twice(
    job: Callable[[], tuple[Subject, Paperwork, TitleBlock]], draw: Draw
) -> None:
    sheets = draw(*job())
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    assert write_pdf(sheets) == write_pdf(draw(*job()))


@pytest.mark.parametrize("draw", EVERY)
def test_pages_that_were_changed_since_they_were_signed_say_so(draw: Draw) -> None:
    """The banner takes room from the tiles, and nothing else gives way."""
    job, paper, title = inch_twin()
    sheets = draw(job, paper, dataclasses.replace(title, not_approved=True))
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    assert all(any("NOT APPROVED" in t for t in texts(sheet)) for sheet in sheets)


@pytest.mark.parametrize("draw", EVERY)
def test_a_long_name_is_broken_and_letters_the_font_lacks_are_marked(
    draw: Draw, tmp_path: Path
) -> None:
    text = LARCH_HILL.read_text(encoding="utf-8")
    long = "Extension of the old reading room at Larch Hill, ground floor"
    for name, marked in ((long, False), ("חדר קריאה 🚪", True)):
        path = tmp_path / "design.yaml"
        path.write_text(text.replace("Larch Hill reading room", name), encoding="utf-8")
        job, paper, title = made(path)
        assert job.resolved.job == name
        assert (title.title == "…") == marked
        # What a page's foot does with a long name is the foot's own matter.
        found = [
            f
            for sheet in draw(job, paper, title)
            for f in audit(sheet)
            if f.at[1] > sheet.paper.frame.y0 + FOOT
        ]
        assert [str(f) for f in found] == []


@settings(max_examples=12, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_random_jobs_are_drawn_at_full_size_without_a_finding(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        job = check(path, user_house=False)
        if job.resolved is None or stops(job.problems):
            return
        arguments = made(path)
        found = [str(f) for draw in EVERY for s in draw(*arguments) for f in audit(s)]
        assert found == []
