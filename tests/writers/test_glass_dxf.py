"""Outlines of shaped panes as a glazier's program reads them: by ezdxf, arcs and all.

The sizes are those of Mill Lane, worked by hand in inches in `tests/scenarios/test_mill_lane.py`.
"""

from __future__ import annotations

import io
import math
from functools import cache
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing
from ezdxf.entities import LWPolyline
from ezdxf.math import bulge_center, bulge_radius

from parametric.cnc.notes import Stamp
from parametric.job import Job, check
from parametric.pack.glass_outlines import glass_outlines
from parametric.pack.verifying.glass_outlines import check_glass_outlines
from parametric.pack.verifying.known import known_design
from parametric.trade.paperwork import paperwork
from tests.scenarios.test_mill_lane import (
    BAR_IN,
    BAR_OUT,
    CHORD,
    GLASS_RADIUS,
    HIGH,
    INCH,
    MEETING,
    RADIUS,
    WIDE,
    arc,
)
from tests.shapes.mill_lane import HEADS, MILL_LANE, with_head

STAMP = Stamp(job="Mill Lane study", fingerprint="7C1F-04AB", revision="B")
WIDTH = WIDE + 0.375 + 0.3125 - 2 * 0.0625


def outlines(job: Job) -> dict[str, bytes]:
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    return glass_outlines(job.resolved, paperwork(job.resolved, job.assembly, job.loads), STAMP)


@cache
def mill_lane() -> dict[str, bytes]:
    return outlines(check(MILL_LANE, user_house=False))


def read(data: bytes) -> tuple[Drawing, LWPolyline]:
    document = ezdxf.read(io.StringIO(data.decode("utf-8")))
    (outline,) = document.modelspace().query("LWPOLYLINE")
    assert isinstance(outline, LWPolyline)
    return document, outline


def integral(x: float) -> float:
    """Under the circle of the glass to the level of its centre, from the middle of the pair.

    Source: r2 / 2 (asin(x / r) + x / r sqrt(1 - (x / r)2)), any table of integrals.
    """
    r = GLASS_RADIUS
    return r**2 / 2 * (math.asin(x / r) + x / r * math.sqrt(1 - (x / r) ** 2))


PANES = {
    # from and to the middle of the pair: the hinge pane, whose outer edge is the far one, and
    # the middle pane
    "G1": (CHORD / 2 + 0.375 - 0.0625, BAR_OUT - 0.3125 + 0.0625),
    "G2": (BAR_IN + 0.3125 - 0.0625, MEETING - 0.375 + 0.0625),
}


@pytest.mark.parametrize("mark", PANES)
def test_the_outline_is_the_pane_worked_by_hand(mark: str) -> None:
    """Width 10.5313; edges 15.1761 and 19.2429, 19.3451 and 21.1373; radius 56.9701."""
    far, near = PANES[mark]
    assert far - near == pytest.approx(WIDTH)
    document, outline = read(mill_lane()[f"order/glass-{mark}.dxf"])
    assert outline.closed
    corners = list(outline.get_points("xyb"))
    edges = [HIGH + 0.25 + arc(x, GLASS_RADIUS) for x in (far, near)]
    asked = [(0, 0), (WIDTH, 0), (WIDTH, edges[1]), (0, edges[0])]
    assert [(x / INCH, y / INCH) for x, y, _ in corners] == [
        pytest.approx(corner, abs=1e-6) for corner in asked
    ]
    assert [bulge != 0 for _, _, bulge in corners] == [False, False, True, False]
    (x, y, bulge), end = corners[2], corners[3][:2]
    assert bulge_radius((x, y), end, bulge) / INCH == pytest.approx(GLASS_RADIUS, abs=1e-6)
    centre = bulge_center((x, y), end, bulge)
    # concentric with the arch: in the middle of the pair, its radius less its rise below the
    # springing, which stands HIGH and 1/4 above the foot of the glass
    assert centre.x / INCH == pytest.approx(far, abs=1e-6)
    assert centre.y / INCH == pytest.approx(HIGH + 0.25 - (RADIUS - 6), abs=1e-6)
    assert document.header["$INSUNITS"] == 4


@pytest.mark.parametrize("mark", PANES)
def test_it_holds_the_area_under_the_circle(mark: str) -> None:
    """By the circle's integral; and by ezdxf's own path, its arcs as chords 0.0001 off."""
    from ezdxf.path import make_path

    far, near = PANES[mark]
    below = HIGH + 0.25 - (RADIUS - 6)
    area = integral(far) - integral(near) + below * (far - near)
    _, outline = read(mill_lane()[f"order/glass-{mark}.dxf"])
    points = [(p.x, p.y) for p in make_path(outline).flattening(1e-4)]
    twice = sum(
        ax * by - bx * ay
        for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    )
    assert twice / 2 / INCH**2 == pytest.approx(area, abs=1e-4)
    assert twice > 0


def test_only_glass_lies_on_the_layer_that_is_cut() -> None:
    for mark in PANES:
        document, _ = read(mill_lane()[f"order/glass-{mark}.dxf"])
        space = document.modelspace()
        assert [e.dxftype() for e in space if e.dxf.layer == "glass"] == ["LWPOLYLINE"]
        assert {e.dxftype() for e in space if e.dxf.layer == "notes"} == {"TEXT"}
        assert {e.dxf.layer for e in space} == {"glass", "notes"}
        assert document.audit().errors == []


def test_it_says_what_it_is() -> None:
    """0.226 in is 5.7404; tolerance 1/16 in is 1.5875; two of each, one the other way about."""
    document, _ = read(mill_lane()["order/glass-G1.dxf"])
    said = [e.dxf.text for e in document.modelspace().query("TEXT")]
    whole = " ".join(said)
    assert "G1" in said
    assert "G1: 2 off, toughened glass 5.74 thick; 1 as drawn, 1 turned over" in said
    assert "unit mm, seen from the front: 267.49 wide, 488.77 at its highest" in whole
    assert "left edge 385.47, right edge 488.77" in whole
    assert "tolerance each way 1.59" in whole
    assert "in inches, rounded down: 10-17/32 x 19-7/32" in whole
    assert "Mill Lane study, 7C1F-04AB, revision B" in said
    assert max(map(len, said)) <= 100


def test_the_same_bytes_twice() -> None:
    assert outlines(check(MILL_LANE, user_house=False)) == mill_lane()


@pytest.mark.parametrize("head", HEADS)
def test_every_head_gives_outlines_that_are_its_panes(head: str, tmp_path: Path) -> None:
    """By our reader against the parts; by ezdxf, that the pane touches all sides of its box."""
    job = check(with_head(tmp_path, head), user_house=False)
    files = outlines(job)
    assert job.resolved is not None
    assert job.assembly is not None
    assert files
    known = known_design(job.resolved, job.assembly, job.loads)
    assert check_glass_outlines(files, known).faults == ()
    shape = HEADS[head][0]
    for data in files.values():
        _, outline = read(data)
        bulges = [bulge for _, _, bulge in outline.get_points("xyb")]
        assert any(bulges) == (shape != "raked")
        assert min(bulges) >= 0
        if shape == "pointed":
            assert sum(bulge > 0 for bulge in bulges) in (1, 2)
        if shape == "elliptical":
            assert sum(bulge > 0 for bulge in bulges) > 2
