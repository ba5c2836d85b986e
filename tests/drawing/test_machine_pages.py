"""Pages of the machine's set-ups: what an operator reads off them against the files and hand sums."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.cnc.bench_work import bench_work
from parametric.cnc.setups import SetUp, set_ups
from parametric.drawing import Drawings, draw
from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.machine.pages import draw_machine_pages
from parametric.drawing.machine.work import MachineWork
from parametric.drawing.numbering import numbered
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import subject
from parametric.job import Job, check
from parametric.outlines import bounds_of
from parametric.pack.machine_pictures import machine_work
from parametric.trade.paperwork import paperwork
from parametric.trade.printed import printed
from parametric.writers.pdf import write_pdf
from tests.invariants.designs import bypass_designs
from tests.whole.test_build import INCH_TWIN

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/larch-hill-reading-room/design.yaml"
STARTER = ROOT / "templates/bypass.yaml"


def worked(job: Job) -> tuple[tuple[SetUp, ...], MachineWork]:
    assert job.assembly is not None
    assert job.resolved is not None
    shop = job.resolved.shop
    found = set_ups(job.assembly, shop.router.cutters, shop.layers)
    return found, machine_work(job.assembly, found, printed(job.resolved).fine)


def drawn(job: Job) -> Drawings:
    assert job.assembly is not None
    assert job.resolved is not None
    return draw(
        job.resolved,
        job.assembly,
        job.loads,
        job.problems,
        mark="0123-4567",
        paper=paperwork(job.resolved, job.assembly, job.loads),
        machine=worked(job)[1],
    )


def pages(job: Job) -> tuple[Sheet, ...]:
    return next(own.sheets for own in drawn(job).sets if own.file == "cnc/set-ups")


def alone(job: Job) -> tuple[Sheet, ...]:
    """The pages without the rest of the drawings."""
    assert job.assembly is not None
    assert job.resolved is not None
    title = TitleBlock(
        owner="",
        document="",
        title=job.resolved.job,
        second_line="",
        drawn="",
        approved="",
        date="",
        scale="",
        sizes="mm",
        number="",
        revision="A",
        fingerprint="0123-4567",
    )
    what = subject(job.resolved, job.assembly, job.loads, job.problems)
    return numbered(draw_machine_pages(what, worked(job)[1], title))


@cache
def larch_hill() -> tuple[Job, tuple[SetUp, ...], MachineWork, tuple[Sheet, ...]]:
    job = check(DESIGN, user_house=False)
    return (job, *worked(job), pages(job))


def texts(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


def test_a_page_a_file_in_the_order_of_the_files_and_the_work_by_hand_last() -> None:
    _, found, _, sheets = larch_hill()
    assert len(found) == 16
    for number, (one, sheet) in enumerate(zip(found, sheets, strict=False), 1):
        said = texts(sheet)
        assert f"CNC {number}" in said
        assert any(one.file in text for text in said), one.file
        assert all(any(piece in text for text in said) for piece in one.names)
        assert {op.layer for op in one.operations} <= set(said)
    assert {sheet.title.document for sheet in sheets[16:]} == {"Saw and bench work"}


def test_sound_on_paper() -> None:
    _, _, _, sheets = larch_hill()
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    assert all(sheet.paper.width > sheet.paper.height for sheet in sheets)


def test_every_cut_has_its_number_and_stands_where_its_file_has_it() -> None:
    """Each edge of each cut is a running size of the whole view, and its outline true to scale."""
    _, found, work, sheets = larch_hill()
    for one, shown, sheet in zip(found, work.set_ups, sheets, strict=False):
        view = sheet.view("whole")
        rings = [e for e in sheet.elements if isinstance(e, Circle) and e.view == "whole"]
        assert len(rings) == len(one.operations)
        running = {
            axis: {
                round(o.value, 6)
                for o in sheet.elements
                if isinstance(o, Ordinate) and o.view == "whole" and o.axis == axis
            }
            for axis in ("across", "up")
        }
        for op, cut in zip(one.operations, shown.cuts, strict=True):
            x0, y0, x1, y1 = bounds_of(op.outline)
            assert {round(x0, 6), round(x1, 6)} <= running["across"]
            assert {round(y0, 6), round(y1, 6)} <= running["up"]
            assert (float(cut.length), float(cut.width)) == pytest.approx((x1 - x0, y1 - y0))
            on_paper = (view.x(x0), view.y(y0), view.x(x1), view.y(y1))
            assert any(
                (
                    min(p[0] for p in e.points),
                    min(p[1] for p in e.points),
                    max(p[0] for p in e.points),
                    max(p[1] for p in e.points),
                )
                == pytest.approx(on_paper, abs=0.02)
                for e in sheet.elements
                if getattr(e, "layer", "") == "edge" and getattr(e, "view", "") == "whole"
            )


def test_zero_can_be_set_and_the_first_piece_checked() -> None:
    """The blank both ways, and the first cut from the datum: 52 + 62 and 14 + 12 on the stile."""
    _, _, _, sheets = larch_hill()
    sized = [e for e in sheets[0].elements if isinstance(e, Dimension)]
    whole = {e.text for e in sized if e.view == "whole"}
    assert whole == {"2126", "40"}
    first = {(e.axis, e.text) for e in sized if e.view == "first cut"}
    assert first == {("across", "52"), ("across", "62"), ("up", "14"), ("up", "12")}
    leaf = [e for e in sheets[12].elements if isinstance(e, Dimension)]
    # 60 - 42.6 / 2 = 38.7 from the left edge
    assert {e.text for e in leaf if e.view == "first cut"} == {"38.7", "42.6", "160.6"}


@pytest.mark.parametrize(
    ("page", "layer", "passes"),
    [
        # half the cutter's diameter a pass: 46 / 6 = 7.7, 14 / 4 = 3.5, 14.2 / 3 = 4.7, 1.5 / 3
        (0, "slot_d46", 8),
        (0, "groove_d14", 4),
        (12, "pocket_d14.2", 5),
        (12, "pocket_d1.5", 1),
    ],
)
def test_passes(page: int, layer: str, passes: int) -> None:
    _, _, work, _ = larch_hill()
    (tool,) = (t for t in work.set_ups[page].tools if t.layer == layer)
    assert int(tool.passes) == passes


def test_a_groove_wider_than_its_cutter_takes_two_side_by_side() -> None:
    """8.2 with an 8: (8.2 - 8) / 8 up to 1, and one: 2."""
    _, _, work, sheets = larch_hill()
    (groove,) = (t for t in work.set_ups[0].tools if t.layer == "groove_d14")
    assert int(groove.across) == 2
    assert "2 passes side by side." in texts(sheets[0])


def test_where_clamps_may_stand_on_a_stile() -> None:
    """Cuts 52 to 114 and so on with a cutter of 12, the groove 238 to 726 with one of 8.

    Clear: 0 to 52 - 12 = 40; 828 + 12 = 840 to 1397 - 12 = 1385; 1459 + 12 = 1471 to 2023 - 12.
    Between 114 + 12 and 170 - 12 there are only 32.
    """
    _, _, work, _ = larch_hill()
    spans = [(float(a), float(b)) for a, b in work.set_ups[0].clear]
    assert spans == [(0, 40), (840, 1385), (1471, 2011)]


def test_how_a_piece_lies_on_all_six_sides() -> None:
    _, _, work, sheets = larch_hill()
    lies = work.set_ups[0].lies
    assert (lies.up, lies.down) == ("inner edge", "outer edge")
    assert (lies.left, lies.right) == ("foot", "top")
    assert {lies.near, lies.away} == {"face", "back"}
    assert "leaf B / right stile lies turned: y from the face" in texts(sheets[0])


def test_saw_and_bench_work_is_listed_whole() -> None:
    job, _, work, sheets = larch_hill()
    assert job.assembly is not None
    listed = bench_work(job.assembly)
    assert len(work.by_hand) == len(listed) == 16
    said = " ".join(text for sheet in sheets[16:] for text in texts(sheet))
    for mark, count in Counter(cut.mark for cut in listed).items():
        rows = sum(texts(sheet).count(mark) for sheet in sheets[16:])
        assert rows == count, mark
    for words in ("Trim 12 off the foot", "r 4, 14 deep", "Bevel all round", "r 6"):
        assert words in said


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler-utils is not installed")
def test_the_pdf_reads_as_text(tmp_path: Path) -> None:
    _, found, _, sheets = larch_hill()
    path = tmp_path / "set-ups.pdf"
    path.write_bytes(write_pdf(sheets))
    run = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    )
    by_page = run.stdout.split("\f")
    for number, one in enumerate(found, 1):
        assert re.search(rf"CNC\s+{number}\b", by_page[number - 1])
        assert one.file in by_page[number - 1]


@pytest.mark.parametrize("text", [INCH_TWIN, STARTER.read_text("utf-8")], ids=["inch", "starter"])
def test_other_jobs_are_sound_on_paper(text: str, tmp_path: Path) -> None:
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    sheets = pages(check(path, user_house=False))
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []


def test_an_inch_job_says_both(tmp_path: Path) -> None:
    """1-13/16 in is 46.0375 mm: the layer says it whole, the table to a thousandth."""
    path = tmp_path / "design.yaml"
    path.write_text(INCH_TWIN, encoding="utf-8")
    said = texts(pages(check(path, user_house=False))[0])
    assert "slot_d46.0375" in said
    assert any("In inches: cutter 1/2, 1-13/16 deep" in text for text in said)


@settings(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(bypass_designs())
def test_random_designs_are_sound_on_paper(tmp_path: Path, text: str) -> None:
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    if job.exit_status == 0:
        assert [str(f) for sheet in alone(job) for f in audit(sheet)] == []
