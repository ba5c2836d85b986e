"""The drawings as DXF, read back: sound, true, and read alike by a second reader."""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing

from parametric.drawing.dimensions import Dimension
from parametric.drawing.sheet import Sheet
from parametric.writers.dxf_sheets import write_dxf
from tests.drawing.sheets import larch_hill

SHEETS = (0, 1, 2)


def sheet(index: int) -> Sheet:
    return larch_hill().sheets[index]


def read(index: int) -> Drawing:
    return ezdxf.read(io.StringIO(write_dxf(sheet(index)).decode("utf-8")))


@pytest.mark.parametrize("index", SHEETS)
def test_the_audit_of_the_reader_finds_nothing(index: int) -> None:
    document = read(index)
    auditor = document.audit()
    assert auditor.errors == []
    assert document.header["$INSUNITS"] == 4
    assert document.header["$MEASUREMENT"] == 1


@pytest.mark.parametrize("index", [0, 1])
def test_each_dimension_measures_what_it_says(index: int) -> None:
    """Real DIMENSION entities: what the reader measures is the value on the sheet."""
    entities = [e for e in read(index).modelspace() if e.dxftype() == "DIMENSION"]
    wanted = [d for d in sheet(index).elements if isinstance(d, Dimension)]
    assert len(entities) == len(wanted) >= 12
    assert sorted(round(e.get_measurement(), 4) for e in entities) == sorted(
        round(d.value, 4) for d in wanted
    )
    for entity in entities:
        text = entity.dxf.text
        measured = entity.get_measurement()
        if text not in ("", "<>"):
            numbers = [w for w in text.replace("<>", f"{measured:g}").split() if w[0].isdigit()]
            assert any(float(n) == pytest.approx(measured, abs=0.25 + 1e-9) for n in numbers), text


@pytest.mark.parametrize("index", [0, 1])
def test_model_space_is_full_size(index: int) -> None:
    """Cut pieces have their own sizes in model space, whatever the scale of the sheet.

    A stile is 120 x 40 in plan, a leaf 40 x 2102 upright, a top rail 40 x 120, a stop 14.5 x 12.
    """
    sizes = set()
    for entity in read(index).modelspace().query("LWPOLYLINE"):
        points = [(float(p[0]), float(p[1])) for p in entity.get_points()]
        wide = max(x for x, _ in points) - min(x for x, _ in points)
        high = max(y for _, y in points) - min(y for _, y in points)
        sizes.add((round(wide, 3), round(high, 3)))
    expected = {(120.0, 40.0), (40.0, 2102.0)} if index == 0 else {(40.0, 120.0), (14.5, 12.0)}
    assert expected <= sizes, sorted(sizes)


@pytest.mark.parametrize("index", SHEETS)
def test_the_layout_is_the_paper(index: int) -> None:
    document = read(index)
    paper = next(layout for layout in document.layouts if not layout.is_modelspace)
    wide, high = sheet(index).paper.width, sheet(index).paper.height
    assert {paper.dxf.paper_width, paper.dxf.paper_height} == {wide, high}
    windows = [v for v in paper.query("VIEWPORT") if v.dxf.id != 1]
    assert len(windows) == len(sheet(index).views)
    for window, view in zip(windows, sheet(index).views, strict=True):
        assert window.dxf.view_height / window.dxf.height == pytest.approx(view.scale, rel=1e-6)


@pytest.mark.parametrize("index", SHEETS)
def test_a_second_reader_sees_the_same(index: int, tmp_path: Path) -> None:
    """GDAL's own DXF driver, which shares nothing with the writer's library."""
    if shutil.which("ogrinfo") is None:
        pytest.skip("gdal-bin is not installed")
    path = tmp_path / "sheet.dxf"
    path.write_bytes(write_dxf(sheet(index)))
    read_by = subprocess.run(
        ["ogrinfo", "-ro", "-so", str(path), "entities"], capture_output=True, text=True, check=True
    ).stdout
    count = re.search(r"Feature Count: (\d+)", read_by)
    assert count is not None
    if index < 2:
        assert int(count[1]) > 100
        extent = re.search(r"Extent: \((.+), (.+)\) - \((.+), (.+)\)", read_by)
        assert extent is not None
        low_x, low_y, high_x, high_y = map(float, extent.groups())
        assert high_x - low_x > 2 * 1024.5
        assert high_y - low_y > 2102


def test_nothing_follows_the_hash_seed() -> None:
    """The same bytes, PDF and DXF, in two processes that hash their words differently."""
    script = (
        "import hashlib;"
        "from tests.drawing.sheets import larch_hill;"
        "from parametric.writers.dxf_sheets import write_dxf;"
        "from parametric.writers.pdf import write_pdf;"
        "from parametric.writers.svg import write_svg;"
        "d = larch_hill();"
        "parts = [write_pdf(d.sheets), *map(write_dxf, d.sheets), *(write_svg(e).encode() for e in d.elevations)];"
        "print([hashlib.sha256(p).hexdigest() for p in parts])"
    )
    printed = set()
    for seed in ("1", "2", "12345"):
        run = subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            text=True,
            check=True,
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed},
        )
        printed.add(run.stdout)
    assert len(printed) == 1


def test_two_writings_are_the_same_bytes() -> None:
    for index in SHEETS:
        assert write_dxf(sheet(index)) == write_dxf(sheet(index))
