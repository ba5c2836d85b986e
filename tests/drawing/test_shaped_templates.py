"""Templates of shaped panes and arched rails, measured in the files that are printed.

Mill Lane by hand, in inches, from `tests/scenarios/test_mill_lane.py`: the hinge pane 10.5313
wide, its edges 15.1761 and 19.2429 high, under a radius of 56.9701; the rail 20.8125 long and
10.316 high, its curve of 56.6576 up to 5.816 at the meeting stile.
"""

from __future__ import annotations

import io
import math
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import NamedTuple

import ezdxf
import pdfplumber
import pytest

from parametric.drawing.audit import audit
from parametric.drawing.full_size.arcs import arc_table, arc_words
from parametric.drawing.full_size.outlines import STRIP, chords, polygon, waste_strip
from parametric.drawing.full_size.shaped_panes import (
    curve_of,
    draw_glass_templates,
    draw_glass_templates_tiled,
)
from parametric.drawing.full_size.templates import draw_templates, draw_templates_tiled
from parametric.drawing.orders.glass import draw_glass_order
from parametric.drawing.primitives import Arc, Label
from parametric.drawing.printing import MM
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import Subject, subject
from parametric.figures import Figure
from parametric.job import check
from parametric.outlines import Vertex, backwards
from parametric.shapes.elliptical import elliptical
from parametric.shapes.segmental import segmental
from parametric.trade.order_tables import glass_gate_table, glazing_table
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import printed
from parametric.writers.dxf_sheets import write_dxf
from parametric.writers.pdf import write_pdf
from tests.drawing.full_size import POINTS, arched, made, pages
from tests.drawing.test_full_size_tiles import laid
from tests.scenarios.test_mill_lane import (
    BAR_OUT,
    CHORD,
    GLASS_RADIUS,
    HIGH,
    INCH,
    MEETING,
    OPENING,
    RADIUS,
    TOP_RAIL,
    arc,
)
from tests.shapes.mill_lane import HEADS, MILL_LANE, with_head

Job = tuple[Subject, Paperwork, TitleBlock]
Draw = Callable[[Subject, Paperwork, TitleBlock], tuple[Sheet, ...]]
EVERY: tuple[Draw, ...] = (
    draw_glass_templates,
    draw_glass_templates_tiled,
    draw_templates,
    draw_templates_tiled,
    draw_glass_order,
)
DRAWN = (
    "half round over each leaf",
    "pointed, one pane wide",
    "elliptical over the pair",
    "raked over the pair",
)
FAR, NEAR = CHORD / 2 + 0.375 - 0.0625, BAR_OUT - 0.3125 + 0.0625
LOW_EDGE, HIGH_EDGE = (HIGH + 0.25 + arc(x, GLASS_RADIUS) for x in (FAR, NEAR))


@cache
def mill_lane() -> Job:
    return made(MILL_LANE)


def labels(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


class Bow(NamedTuple):
    """A curve on a page, by three places on it, mm."""

    a: tuple[float, float]
    middle: tuple[float, float]
    b: tuple[float, float]

    @property
    def radius(self) -> float:
        """Of the circle through the three: the product of the sides over four times the area."""
        a, b, c = math.dist(self.a, self.b), math.dist(self.b, self.middle), math.dist(*self[:2])
        (ax, ay), (mx, my), (bx, by) = self
        area = abs((mx - ax) * (by - ay) - (bx - ax) * (my - ay)) / 2
        return a * b * c / (4 * area)


def bows(sheet: Sheet) -> list[Bow]:
    """The curves of a page as pdfplumber reads them: Bezier pieces by their ends and middle."""
    found = []
    with pdfplumber.open(io.BytesIO(write_pdf([sheet]))) as pdf:
        for page in pdf.pages:
            height = float(page.height)
            for curve in page.curves:
                ways = [step for step in curve["path"] if step[0] in ("m", "c")]
                at = ways[0][1]
                for _, one, two, end in (step for step in ways if step[0] == "c"):
                    # the middle of a cubic: an eighth of its ends, three of its handles
                    middle = tuple(
                        (p + 3 * q + 3 * r + s) / 8
                        for p, q, r, s in zip(at, one, two, end, strict=True)
                    )
                    a, m, b = (
                        (float(x) / POINTS, (height - float(y)) / POINTS)
                        for x, y in (at, middle, end)
                    )
                    found.append(Bow(a, m, b))
                    at = end
    return found


def test_the_pane_on_paper_is_as_large_as_the_glass() -> None:
    """Read from the PDF: width, both edges, the arc through its ends with its radius."""
    sheet = draw_glass_templates(*mill_lane())[0]
    (page,) = pages([sheet])
    foot = next(line for line in page.lines if line.level and _is(line.length, FAR - NEAR))
    left = next(line for line in page.lines if line.upright and _is(line.length, LOW_EDGE))
    right = next(line for line in page.lines if line.upright and _is(line.length, HIGH_EDGE))
    assert left.x0 == pytest.approx(foot.x0, abs=0.01)
    assert right.x0 == pytest.approx(foot.x1, abs=0.01)
    assert left.y0 == pytest.approx(foot.y0, abs=0.01)
    found = bows(sheet)
    ends = sorted(point for bow in found for point in (bow.a, bow.b))
    assert ends[0] == pytest.approx((left.x0, left.y1), abs=0.01)
    assert ends[-1] == pytest.approx((right.x0, right.y1), abs=0.01)
    for bow in found:
        assert bow.radius / INCH == pytest.approx(GLASS_RADIUS, rel=1e-3)


def _is(length: float, inches: float) -> bool:
    return abs(length - inches * INCH) < 0.01


def test_no_line_of_the_frame_stands_by_the_glass() -> None:
    """Daylight is 5/16 less at either edge: no upright line stands there but the glass's own."""
    sheet = draw_glass_templates(*mill_lane())[0]
    (page,) = pages([sheet])
    left = next(line for line in page.lines if line.upright and _is(line.length, LOW_EDGE))
    tall = [line for line in page.lines if line.upright and line.length > 250]
    inside = [
        line for line in tall if left.x0 + 0.1 < line.x0 < left.x0 + (FAR - NEAR) * INCH - 0.1
    ]
    assert inside == []


def test_sizes_are_rounded_down_and_the_words_are_whole() -> None:
    """10.5313 is 10-17/32; 15.1761 lies between 15-5/32 (.1563) and 15-3/16 (.1875); 19.2429
    between 19-7/32 (.2188) and 19-1/4: what is printed is never more than the glass.
    """
    sheet = draw_glass_templates(*mill_lane())[0]
    said = labels(sheet)
    assert {"10-17/32", "15-5/32", "19-7/32"} <= set(said)
    assert not {"15-3/16", "19-1/4"} & set(said)
    whole = " ".join(said)
    assert "Glass G1" in whole
    assert "toughened, 1/4 (0.226 true) thick, 2 off" in whole
    assert "seen from the front: leaf A / lite / row 1 / pane 1" in whole
    assert "TURN OVER for leaf B / lite / row 1 / pane 2" in whole
    assert "radius 56-31/32 (56.970)" in whole
    assert "25-11/16 right of the low left corner" in whole
    # HIGH + 1/4 below the springing, whose centre lies RADIUS - 6 below it: 35.674
    assert f"({RADIUS - 6 - HIGH - 0.25:.3f}) below the foot" in whole
    assert "Tolerance each way 1/16" in whole
    assert "FRONT" in said


def test_the_order_names_each_page_and_outline() -> None:
    subject, paper, title = mill_lane()
    sheets = draw_glass_templates(subject, paper, title)
    rows = glazing_table(paper.glazing, printed(subject.resolved)).rows
    told = {row[0]: row[-2] for row in rows}
    assert told["G1"] == "page 1 of glass-templates.pdf, outline glass-G1.dxf"
    assert told["G2"] == "page 2 of glass-templates.pdf, outline glass-G2.dxf"
    assert {told[mark] for mark in ("G3", "G4")} == {"none: every pane is a rectangle"}
    assert [f"Glass G{n}" in labels(sheet) for n, sheet in enumerate(sheets, 1)] == [True, True]
    ordered = " ".join(text for sheet in draw_glass_order(*mill_lane()) for text in labels(sheet))
    assert "outline glass-G2.dxf" in ordered
    assert "lay it in its rebate" in ordered


def test_the_rail_in_its_drawing() -> None:
    """Read by ezdxf: the curve and its rebate are arcs about one centre, in mm of the thing."""
    (sheet,) = draw_templates(*mill_lane())
    document = ezdxf.read(io.StringIO(write_dxf(sheet).decode("utf-8")))
    arcs = {e.dxf.layer: e for e in document.modelspace().query("ARC")}
    assert set(arcs) == {"cut", "hidden"}
    assert arcs["cut"].dxf.radius / INCH == pytest.approx(RADIUS, abs=1e-6)
    assert arcs["hidden"].dxf.radius / INCH == pytest.approx(RADIUS + 0.375, abs=1e-6)
    assert math.dist(arcs["cut"].dxf.center, arcs["hidden"].dxf.center) < 1e-4
    ends = sorted((p.x, p.y) for p in (arcs["cut"].start_point, arcs["cut"].end_point))
    # angles are written to a millionth of a degree: 0.00003 mm on this radius
    across, up = (ends[1][k] - ends[0][k] for k in (0, 1))
    assert across / INCH == pytest.approx(OPENING, abs=1e-5)
    assert up / INCH == pytest.approx(arc(MEETING), abs=1e-5)
    tall = max(
        line.dxf.end.y - ends[0][1]
        for line in document.modelspace().query("LINE")
        if line.dxf.layer == "edge" and abs(line.dxf.end.x - ends[0][0]) < 1e-3
    )
    # the cross on the upper corner reaches 4 past it
    assert tall - 4.0 == pytest.approx(TOP_RAIL * INCH, abs=1e-3)


def test_the_rail_says_where_its_centre_is_and_serves_both_hands() -> None:
    (sheet,) = draw_templates(*mill_lane())
    whole = " ".join(labels(sheet))
    assert "radius 56-21/32 (56.658)" in whole
    assert f"{CHORD / 2:g}" == "25.375"
    assert (
        "25-3/8 right of the left shoulder and 50-21/32 (50.658) below the springing line" in whole
    )
    assert "R1, leaf A" in whole
    assert "TURN OVER for R3, leaf B" in whole
    assert "glass rebate from the back, 3/8 wide" in whole
    assert whole.count("shoulder") >= 3
    assert whole.count("springing line") >= 3


@pytest.mark.parametrize("draw", [draw_templates_tiled, draw_glass_templates_tiled])
def test_tiles_meet_cross_on_cross_and_their_arcs_are_one_circle(draw: Draw) -> None:
    """Each tile is laid by two crosses or more; every arc on it then has the whole one's centre."""
    sheets = [
        s for s in draw(*mill_lane()) if "R1" in s.title.second_line or "G1" in s.title.second_line
    ]
    moves = laid(pages(sheets, words=True))
    radius = RADIUS if draw is draw_templates_tiled else GLASS_RADIUS
    centres = [
        (part.centre[0] + by[0], part.centre[1] + by[1])
        for sheet, by in zip(sheets, moves, strict=True)
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Arc) and part.layer in ("cut", "edge")
        if abs(part.radius / INCH - radius) < 1e-6
    ]
    assert len(centres) >= 3
    for centre in centres:
        assert math.dist(centre, centres[0]) < 0.02


def test_a_register_cross_stands_on_the_springing_line_at_the_shoulder() -> None:
    first = draw_templates_tiled(*mill_lane())[0]
    (page,) = pages([first], words=True)
    cross = next(word for word in page.words if word.text == "A1")
    shoulder = next(
        line
        for line in page.lines
        if line.upright and abs(line.x0 - cross.x) < 5 and line.length > 90
    )
    springing = [line for line in page.lines if line.level and abs(line.y0 - shoulder.y0) < 0.01]
    assert any(line.length > 90 for line in springing)


def other(head: str, folder: Path) -> Job:
    """Mill Lane with another head, under the title of the first."""
    found = check(with_head(folder, head), user_house=False)
    assert found.resolved is not None, found.problems
    assert found.assembly is not None
    paper = paperwork(found.resolved, found.assembly, found.loads)
    whole = subject(found.resolved, found.assembly, found.loads, found.problems)
    return whole, paper, mill_lane()[2]


@pytest.mark.parametrize("draw", EVERY)
def test_mill_lane_is_drawn_without_a_finding_and_the_same_twice(draw: Draw) -> None:
    sheets = draw(*mill_lane())
    assert sheets == draw(*mill_lane())
    assert [str(finding) for sheet in sheets for finding in audit(sheet)] == []


@pytest.mark.parametrize("head", DRAWN)
def test_other_heads_are_drawn_without_a_finding(head: str, tmp_path: Path) -> None:
    job = other(head, tmp_path)
    for draw in EVERY:
        sheets = draw(*job)
        assert sheets
        assert [str(finding) for sheet in sheets for finding in audit(sheet)] == []
    several = "radius" in labels(draw_templates(*job)[0])
    assert several == (HEADS[head][0] in ("elliptical", "pointed") and _many(head))


def _many(head: str) -> bool:
    """One leaf of a pair sees one side of a point, which is one arc."""
    shape, across = HEADS[head][:2]
    return shape == "elliptical" or across == "leaf"


def test_a_job_without_shaped_panes_has_no_such_page() -> None:
    from tests.drawing.test_full_size import reading_room

    assert draw_glass_templates(*reading_room()) == ()
    assert draw_glass_templates_tiled(*reading_room()) == ()


# Pieces as data ------------------------------------------------------------------------------


def test_the_curve_of_a_pane_runs_from_left_to_right() -> None:
    """All but its foot and its edges; also where an edge is not there at all."""
    pane = arched(500.0, 700.0, 180.0)
    curve = curve_of(pane)
    assert [(v.x, v.y) for v in curve] == [
        pytest.approx((0.0, 700.0)),
        pytest.approx((500.0, 700.0)),
    ]
    assert curve[0].bulge == pytest.approx(-180 / 250)
    # a light with two arcs that meet in a point: both, in their order
    head = (Vertex(0.0, 300.0, -0.2), Vertex(200.0, 520.0, -0.2), Vertex(400.0, 300.0))
    pointed = (Vertex(0.0, 0.0), Vertex(400.0, 0.0), *backwards(head))
    assert curve_of(pointed) == head


def test_one_arc_is_said_and_several_are_a_table() -> None:
    """Over 508 a rise of 60: radius (254^2 + 60^2) / 120 = 567.633, its centre 507.6 below."""
    one = segmental(Figure(508.0), Figure(60.0), "arch").edge
    assert arc_table(one, MM) is None
    assert arc_words(one, MM, corner="the corner", level="the foot") == (
        "One arc, radius 567.5: its centre lies 254 right of the corner and 507.5 below the foot.",
    )
    several = elliptical(Figure(508.0), Figure(120.0), "arch").edge
    table = arc_table(several, MM)
    assert table is not None
    assert len(table.rows) == len(several) - 1
    assert table.rows[-1][2:4] == ("508", "0")
    # an ellipse's arcs lie the same either way: the first and the last have one radius
    assert table.rows[0][1] == table.rows[-1][1]


def test_the_strip_lies_along_the_cut_only() -> None:
    """A piece with a curve over it: no hatch line is further than 5 from the curve, none stands
    along its sides and its foot, as they do where all of it is cut.
    """
    curve = segmental(Figure(400.0), Figure(100.0), "arch").edge
    outline = (Vertex(0.0, -50.0), Vertex(400.0, -50.0), *backwards(curve))
    strip = waste_strip(outline, "inside", curve)
    run = chords(curve)
    assert len(strip) > 50
    for line in strip:
        for point in line:
            assert min(math.dist(point, on) for on in run) < STRIP + 0.5
    assert min(y for line in strip for _, y in line) > -2 * STRIP
    everywhere = waste_strip(outline, "inside")
    assert min(y for line in everywhere for _, y in line) == pytest.approx(-50.0)
    assert polygon(outline)[0] == (0.0, -50.0)


def test_openings_of_a_divided_lite_are_measured_pane_by_pane() -> None:
    """Row 2 of the glass is 15.2335 in a rebate of 1/16 more each way: 15.3585, and as the
    tolerance of 1/16 and half the clearance need all of that, it is the least too: 15-11/32.
    """
    subject_, paper, _ = mill_lane()
    rows = {row[0]: row for row in glass_gate_table(paper.glazing, printed(subject_.resolved)).rows}
    assert len(rows) == 16
    assert rows["leaf A / lite / row 2 / pane 1"][1:7] == (
        "G3",
        "10-21/32",
        "15-11/32",
        "10-21/32",
        "15-11/32",
        "0",
    )
    assert rows["leaf B / lite / row 1 / pane 2"][1:7] == (
        "G1",
        "10-21/32",
        "template",
        "10-21/32",
        "",
        "",
    )
