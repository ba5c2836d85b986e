"""Shaped parts as drawn: an arched rail is bounded by its arch, its curve measured, its ends true.

Of the Mill Lane study, brief G4: a chord of 50-3/4 in. with a rise of 6 has a radius of
(50.75^2 + 4 x 6^2) / (8 x 6) = 56.658; at the meeting stile, 4-9/16 from the middle, the arc is
sqrt(56.658^2 - 4.5625^2) - 50.658 = 5.816 high.
"""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from parametric.drawing import Drawings
from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Dimension, Leader
from parametric.drawing.finished_outline import (
    cut_off,
    finished_outline,
    finished_outlines,
    opened_edges,
    through_cuts,
)
from parametric.drawing.plane import Box, around
from parametric.drawing.primitives import Arc, Label, Stroke
from parametric.drawing.sheet import Sheet
from parametric.model import (
    Blank,
    Cut,
    Groove,
    Making,
    Material,
    Mitre,
    Part,
    Placement,
    Shaped,
    Trim,
)
from parametric.outlines import Outline, Vertex, area_of, bounds_of, rectangle
from tests.drawing.sheets import drawn

INCH = 25.4
BY = Making(by="router")
LONG, WIDE, THICK = 300.0, 120.0, 40.0


def piece(*cuts: Cut) -> Part:
    return Part(
        name="leaf A / rail",
        noun="rail",
        mark="R1",
        material=Material(name="oak", look="timber", density=720),
        blank=Blank(length=LONG, width=WIDE, thickness=THICK),
        placement=Placement(),
        cuts=cuts,
    )


def shaped(face: str, outline: Outline, depth: float = THICK, surface: float = 0.0) -> Shaped:
    return Shaped(name="shape", face=face, outline=outline, depth=depth, surface=surface, making=BY)  # type: ignore[arg-type]


HALF_DISC: Outline = (Vertex(100, 0), Vertex(160, 0, 1.0))
"""r 30 out of the low edge."""


@pytest.mark.parametrize(
    ("cuts", "left"),
    [
        ((), LONG * WIDE),
        # a half disc out of an edge, from either side
        ((shaped("low face", HALF_DISC),), LONG * WIDE - math.pi * 30**2 / 2),
        ((shaped("high face", HALF_DISC),), LONG * WIDE - math.pi * 30**2 / 2),
        # two that adjoin one another, the whole of one end, and a corner
        (
            (
                shaped("low face", rectangle(0, 0, 20, 50)),
                shaped("high face", rectangle(0, 50, 20, WIDE)),
                shaped("low face", (Vertex(250, 0), Vertex(LONG, 0), Vertex(LONG, 60))),
            ),
            LONG * WIDE - 20 * WIDE - 50 * 60 / 2,
        ),
        # what stops within the wood changes no outline
        ((shaped("low face", HALF_DISC, 39.0),), LONG * WIDE),
        ((shaped("low face", HALF_DISC, THICK, surface=5.0),), LONG * WIDE),
        # trimmed, mitred and cut
        (
            (
                Trim(name="t", end="low end", length=10, making=BY),
                Mitre(name="m", end="high end", keeps="low edge", making=BY),
                shaped("low face", HALF_DISC),
            ),
            (LONG - 10) * WIDE - WIDE**2 / 2 - math.pi * 30**2 / 2,
        ),
        # shoulders 15 deep over rebates of 25 from behind leave nothing of the 40
        (
            (
                Groove(
                    name="g", face="high face", u0=0, u1=LONG, v=10, width=20, depth=25, making=BY
                ),
                shaped("low face", rectangle(0, 0, 30, 20), 15.0),
            ),
            LONG * WIDE - 30 * 20,
        ),
    ],
)
def test_what_is_left_of_a_face(cuts: tuple[Cut, ...], left: float) -> None:
    part = piece(*cuts)
    assert sum(map(area_of, finished_outlines(part))) == pytest.approx(left, rel=1e-12)
    assert area_of(finished_outline(part)) == pytest.approx(left, rel=1e-12)


def test_a_hole_runs_the_other_way_round() -> None:
    """R 8 in the middle: the rectangle is whole, the hole is a loop of its own, clockwise."""
    hole = (Vertex(150, 52, 1.0), Vertex(150, 68, 1.0))
    loops = finished_outlines(piece(shaped("high face", hole)))
    assert sorted(map(area_of, loops)) == pytest.approx([-math.pi * 8**2, LONG * WIDE])


def test_a_piece_that_is_cut_in_two_has_two_outlines() -> None:
    loops = finished_outlines(piece(shaped("high face", rectangle(100, 0, 120, WIDE))))
    assert sorted(bounds_of(loop) for loop in loops) == [(0, 0, 100, WIDE), (120, 0, LONG, WIDE)]


def test_what_is_cut_off_is_drawn_once() -> None:
    """Of the blank's outline, 60 of the low edge is gone; it is opened there and nowhere else."""
    part = piece(shaped("high face", HALF_DISC))
    assert cut_off(part) == (((100, 0), (160, 0)),)
    assert opened_edges(part) == {"low edge"}
    assert len(through_cuts(part)) == 1
    # the arc of the outline goes round the other way about the waste
    bulges = [vertex.bulge for vertex in finished_outline(part)]
    assert sorted(bulges) == pytest.approx([-1.0, 0, 0, 0, 0, 0])


# --- the arched rail ------------------------------------------------------------------------

CHORD = 50.75
RADIUS = (CHORD**2 + 4 * 6**2) / (8 * 6)
MEETING = 4.5625
RIGHT = math.sqrt(RADIUS**2 - MEETING**2) - (RADIUS - 6)


@cache
def study() -> Drawings:
    return drawn(Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml")


def sheet(mark: str) -> Sheet:
    return next(s for s in study().sheets if s.title.document == f"Part {mark}")


def view_of(found: Sheet, word: str) -> tuple[float, tuple[float, float]]:
    view = next(v for v in found.views if v.name.endswith(word))
    return view.scale, view.origin


def test_the_sums_of_the_brief() -> None:
    assert pytest.approx(56.658, abs=5e-4) == RADIUS
    assert pytest.approx(5.816, abs=5e-4) == RIGHT


def arcs(found: Sheet, view: str) -> list[Arc]:
    return [e for e in found.elements if isinstance(e, Arc) and e.view.endswith(view)]


def test_an_arched_rail_is_drawn_arched() -> None:
    found = sheet("R1")
    scale, (x, y) = view_of(found, " face")
    (arch,) = arcs(found, " face")
    assert arch.layer == "edge"
    assert arch.radius * scale == pytest.approx(RADIUS * INCH, abs=1e-6)
    ends = [
        (
            (arch.centre[0] + arch.radius * math.cos(math.radians(a)) - x) * scale,
            (arch.centre[1] + arch.radius * math.sin(math.radians(a)) - y) * scale,
        )
        for a in (arch.end, arch.start)
    ]
    long = 20.8125 * INCH
    assert ends[0] == pytest.approx((0, 0), abs=1e-6)
    assert ends[1] == pytest.approx((long, RIGHT * INCH), abs=1e-6)
    # what is cut off is dashed and dotted; nothing of the blank's low edge is drawn as an edge
    low = [
        e
        for e in found.elements
        if isinstance(e, Stroke)
        and e.view.endswith(" face")
        and e.layer in ("edge", "adjacent")
        and all(abs(p[1] - y) < 1e-6 for p in e.points)
    ]
    assert [e.layer for e in low] == ["adjacent"]
    # the back shows the arch and the rebate's arc 3/8 outside it
    radii = sorted(round(a.radius * scale / INCH, 3) for a in arcs(found, " back"))
    assert radii[0] == pytest.approx(RADIUS, abs=1e-3)
    assert radii[-1] == pytest.approx(RADIUS + 0.375, abs=1e-3)


def test_its_curve_is_measured() -> None:
    found = sheet("R1")
    heights = {
        e.figure.split(" / ")[-1]: e.value
        for e in found.elements
        if isinstance(e, Dimension) and e.view.endswith(" face")
    }
    # at the left the arch springs from the corner of the blank: there is nothing to measure
    assert heights == {"right height": pytest.approx(RIGHT * INCH)}
    texts = [e.text for e in found.elements if isinstance(e, Label)]
    leaders = [e for e in found.elements if isinstance(e, Leader) and e.view.endswith(" face")]
    words = [label.text for leader in leaders for label in leader.labels]
    assert [w for w in words if w.startswith("r ")] == ["r 56-21/32"], texts
    # its arrow stands on the arch
    (arch,) = arcs(found, " face")
    (led,) = [leader for leader in leaders if leader.labels[0].text == "r 56-21/32"]
    assert math.dist(led.points[0], arch.centre) == pytest.approx(arch.radius, abs=1e-6)


def test_the_end_of_an_arched_rail_is_as_high_as_its_wood() -> None:
    found = sheet("R1")
    scale, (x, y) = view_of(found, " right end")
    wood = next(
        e
        for e in found.elements
        if isinstance(e, Stroke) and e.closed and e.layer == "edge" and e.view.endswith("right end")
    )
    box = around(wood.points)
    assert (box.y0 - y) * scale == pytest.approx(RIGHT * INCH, abs=0.02)
    assert (box.y1 - y) * scale == pytest.approx((4.5 + RIGHT) * INCH, abs=1e-6)
    assert (box.width, box.x0 - x) == pytest.approx((1.75 * INCH / scale, 0))
    # the rebate is let into its back corner
    assert len(wood.points) == 6


def test_face_and_grain_are_marked_on_wood() -> None:
    found = sheet("R1")
    (arch,) = arcs(found, " face")
    (mark,) = [e for e in found.elements if isinstance(e, Label) and e.text == "FACE"]
    box: Box = mark.box
    assert all(math.dist(corner, arch.centre) > arch.radius for corner in box.polygon)


@pytest.mark.parametrize("mark", ["S1", "S2", "R1", "R2", "B1", "B2", "R3", "B3"])
def test_every_sheet_is_clean_and_says_every_cut(mark: str) -> None:
    found = sheet(mark)
    assert [str(f) for f in audit(found)] == []
    assert found.unplaced == ()


def test_an_edge_bevel_is_told_by_its_angle() -> None:
    """3 degrees over 1-3/4: 1.75 tan 3 = 0.0917 in."""
    words = [e.text for s in (sheet("S2"),) for t in s.elements for e in _labels(t)]
    assert "3°" in words
    assert "3/32 (.092)" in words
    assert 1.75 * math.tan(math.radians(3)) == pytest.approx(0.0917, abs=5e-5)


def _labels(element: object) -> list[Label]:
    from parametric.drawing.sheet import primitives

    return [p for p in primitives(element) if isinstance(p, Label)]  # type: ignore[arg-type]


def test_a_rail_and_its_image_are_told_apart() -> None:
    words = " ".join(e.text for t in sheet("R1").elements for e in _labels(t))
    assert "R3 is its mirror: mark both before the first cut." in words
