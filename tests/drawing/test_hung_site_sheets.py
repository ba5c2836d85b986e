"""Site and order sheets of leaves that turn, fold, slide alone or stand over one another."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Ordinate
from parametric.drawing.drawings import (
    draw_care,
    draw_delivery,
    draw_hardware_order,
    draw_install,
)
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import subject
from parametric.job import Job, check
from parametric.trade.order_tables import hardware_table
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.site_tables import fixing_table, work_table
from tests.drawing.pages import read, rows_missing
from tests.drawing.sheets import ROOT, larch_hill
from tests.hangings.doors import job_of

MILL_LANE = ROOT / "examples/mill-lane-study/design.yaml"
KINDS = (
    *("hinged right away", "unequal pair", "rebated pair", "dutch", "bifold four both"),
    *("pocket left", "sliding right", "biparting", "bypass of three"),
)


def _title() -> TitleBlock:
    title = larch_hill().sheets[0].title
    return dataclasses.replace(title, revisions=(), moved="", not_approved=False)


def _sheets(job: Job) -> tuple[Mapping[str, tuple[Sheet, ...]], Paperwork, Printed]:
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    on = subject(job.resolved, job.assembly, job.loads, job.problems)
    drawn = {
        "install": draw_install(on, paper, _title()),
        "hardware": draw_hardware_order(on, paper, _title()),
        "delivery": draw_delivery(on, paper, _title()),
        "care": draw_care(on, paper, _title()),
    }
    return drawn, paper, printed(job.resolved)


@cache
def mill_lane() -> tuple[Mapping[str, tuple[Sheet, ...]], Paperwork, Printed]:
    return _sheets(check(MILL_LANE, user_house=False))


@pytest.mark.parametrize("kind", KINDS)
def test_sheets_of_every_way_to_hang_are_clean_and_whole(kind: str, tmp_path: Path) -> None:
    drawn, paper, said = _sheets(job_of(kind, tmp_path))
    for name, sheets in drawn.items():
        for sheet in sheets:
            assert [str(finding) for finding in audit(sheet)] == [], name
    pages = read(drawn["install"])
    fixings = [
        (*row[:3], row[3] if row[3] == "kN" else "", row[4])
        for row in fixing_table(paper.install, said).rows
    ]
    assert rows_missing(pages, fixings) == []
    assert rows_missing(pages, work_table(paper.install).rows) == []


def test_mill_lane_is_clean_and_whole() -> None:
    drawn, paper, said = mill_lane()
    for name, sheets in drawn.items():
        for sheet in sheets:
            assert [str(finding) for finding in audit(sheet)] == [], name
    fixings = [(*row[:3], "", row[4]) for row in fixing_table(paper.install, said).rows]
    assert rows_missing(read(drawn["install"]), fixings) == []
    hardware = [
        (row[0], row[1] if row[2] == "off" else f"{row[1]} {row[2]}", row[3], row[6])
        for row in hardware_table(paper.hardware, said).rows
    ]
    assert rows_missing(read(drawn["hardware"]), hardware) == []
    assert len(drawn["care"]) == 1


def test_hinges_stand_on_the_jambs_where_the_sums_put_them() -> None:
    """From the datum 1/2 + 72.125, 42.6875, 13.25; down from a head 82 over it."""
    drawn, _, _ = mill_lane()
    sheet = drawn["install"][0]
    scale = next(view.scale for view in sheet.views if view.name == "the wall")
    found = [
        e
        for e in sheet.elements
        if isinstance(e, Ordinate) and e.view == "the wall" and e.axis == "up"
    ]
    datum = next(e for e in found if "datum" in e.text).lines[0][0][1]
    up = {e.text: (e.lines[0][0][1] - datum) * scale / 25.4 for e in found}
    for text, height in (
        ("top hinges", 72.625),
        ("middle hinges", 43.1875),
        ("bottom hinges", 13.75),
    ):
        (at,) = (value for words, value in up.items() if text in words)
        assert at == pytest.approx(height, abs=1e-6)
    down = [e for e in found if e.value and e.figure.endswith("down from the jamb's head")]
    assert sorted(round(float(e.value) / 25.4, 4) for e in down) == [9.375, 38.8125, 68.25]


def test_nothing_of_a_track_stands_on_sheets_of_a_hinged_door() -> None:
    drawn, _, _ = mill_lane()
    for name in ("install", "hardware", "delivery", "care"):
        text = " ".join(page.text for page in read(drawn[name])).lower()
        for word in ("bracket", "hanger", "kn "):
            assert word not in text, (name, word)
