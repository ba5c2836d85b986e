"""Every machine file of whole jobs, opened by two readers that are not ours: GDAL and ezdxf.

GDAL reads the file by its own driver (gdal-bin, `ogr2ogr`); what it finds is counted, measured
and painted. ezdxf audits it, and paints it by its drawing add-on.
"""

from __future__ import annotations

import io
import itertools
import json
import math
import shutil
import subprocess
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from ezdxf.addons.drawing import Frontend, RenderContext, layout
from ezdxf.addons.drawing.svg import SVGBackend

from parametric.cnc.notes import Stamp, notes, place_notes
from parametric.cnc.setups import SetUp, set_ups
from parametric.job import check
from parametric.outlines import bounds_of
from parametric.writers.dxf import write_cnc_dxf
from tests.whole.test_build import INCH_TWIN

ROOT = Path(__file__).parents[2]
STAMP = Stamp(job="a job", fingerprint="0123-4567", revision="B")
JOBS = ("larch hill", "relieved", "inch twin", "starter")
needs_gdal = pytest.mark.skipif(shutil.which("ogr2ogr") is None, reason="gdal-bin is not installed")


@cache
def made(job: str) -> dict[str, tuple[SetUp, bytes]]:
    """The files of a job as its pack has them."""
    larch_hill = (ROOT / "examples/larch-hill-reading-room/design.yaml").read_text("utf-8")
    text = {
        "larch hill": larch_hill,
        "relieved": larch_hill.replace("cutter: 6}\nfinish", "cutter: 8}\nfinish")
        + "router: {inside corners: relieve}\n",
        "inch twin": INCH_TWIN,
        "starter": (ROOT / "templates/bypass.yaml").read_text("utf-8"),
    }[job]
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "design.yaml")
        path.write_text(text, encoding="utf-8")
        found = check(path, user_house=False)
    assert found.exit_status == 0, found.problems
    assert found.assembly is not None
    assert found.shop is not None
    ups = set_ups(found.assembly, found.shop.router.cutters, found.shop.layers)
    return {one.file: (one, write_cnc_dxf(one, STAMP)) for one in ups}


def test_how_many_files_each_job_has() -> None:
    """Two stiles, each rail's two ends, the grooved edges of rails, two faces of two leaves."""
    counts = {job: len(made(job)) for job in JOBS}
    assert counts["larch hill"] == counts["relieved"] == 2 + 8 + 2 + 4
    assert all(count >= 9 for count in counts.values())


def features(data: bytes, folder: Path) -> list[dict[str, Any]]:
    """What GDAL finds in a file, as GeoJSON features."""
    source = folder / "file.dxf"
    source.write_bytes(data)
    run = subprocess.run(
        ["ogr2ogr", "-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=7", "/vsistdout/", str(source)],
        capture_output=True,
        text=True,
        check=True,
    )
    return list(json.loads(run.stdout)["features"])


@needs_gdal
@pytest.mark.parametrize("job", JOBS)
def test_gdal_counts_the_same_entities_on_the_same_layers(job: str, tmp_path: Path) -> None:
    for set_up, data in made(job).values():
        found = features(data, tmp_path)
        layers = Counter(one["properties"]["Layer"] for one in found)
        side = min(10.0, set_up.width / 5, set_up.length / 5)
        rows = place_notes(set_up, notes(set_up, STAMP), side).rows
        wanted = Counter(op.layer for op in set_up.operations)
        assert layers == wanted + Counter({"stock": 1, "datum": 1, "notes": len(rows)})
        document = ezdxf.read(io.StringIO(data.decode()))
        assert len(found) == len(document.modelspace())
        said = [one["properties"]["Text"] for one in found if one["properties"]["Layer"] == "notes"]
        assert said == list(rows)


@needs_gdal
@pytest.mark.parametrize("job", JOBS)
def test_gdal_finds_the_same_extents_and_areas(job: str, tmp_path: Path) -> None:
    """GDAL makes chords of 4 degrees of its arcs: 1 - sin(4 deg) / 4 deg = 0.08 % of a sector is lost."""
    for set_up, data in made(job).values():
        rings: dict[str, list[list[tuple[float, ...]]]] = {}
        for one in features(data, tmp_path):
            if one["geometry"]["type"] == "LineString":
                ring = [tuple(point) for point in one["geometry"]["coordinates"]]
                assert ring[0] == ring[-1], "an open line"
                rings.setdefault(one["properties"]["Layer"], []).append(ring)
            elif one["geometry"]["type"] == "Polygon":
                rings.setdefault(one["properties"]["Layer"], []).append(
                    [tuple(p) for p in one["geometry"]["coordinates"][0]]
                )
        every = [p for drawn in rings.values() for ring in drawn for p in ring]
        low = (min(p[0] for p in every), min(p[1] for p in every))
        high = (max(p[0] for p in every), max(p[1] for p in every))
        assert (*low, *high) == pytest.approx((0, 0, set_up.length, set_up.width), abs=1e-6)
        drawn_cuts = 0
        for layer in {op.layer for op in set_up.operations}:
            own = [op for op in set_up.operations if op.layer == layer]
            assert len(rings[layer]) == len(own)
            for op, ring in zip(own, rings[layer], strict=True):
                drawn_cuts += 1
                xs, ys = [p[0] for p in ring], [p[1] for p in ring]
                box = (min(xs), min(ys), max(xs), max(ys))
                assert box == pytest.approx(bounds_of(op.outline), abs=2e-3 * op.corner + 1e-5)
                assert [p[2] for p in ring] == pytest.approx([-op.depth] * len(ring), abs=1e-6)
                turned = sum(4 * math.atan(v.bulge) for v in op.outline)
                round_off = 1e-3 * turned / 2 * op.corner**2 + 1e-4
                assert _area(ring) == pytest.approx(_exact_area(op.outline), abs=round_off)
        assert drawn_cuts == len(set_up.operations)


def _area(ring: list[tuple[float, ...]]) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in itertools.pairwise(ring)) / 2


def _exact_area(outline: Any) -> float:
    """The polygon of the corners and the segment on each arc's chord: r2 (t - sin t) / 2."""
    total = 0.0
    for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
        total += (a.x * b.y - b.x * a.y) / 2
        if a.bulge:
            turn = 4 * math.atan(a.bulge)
            radius = math.hypot(b.x - a.x, b.y - a.y) / 2 / math.sin(turn / 2)
            total += radius**2 * (turn - math.sin(turn)) / 2
    return total


@pytest.mark.parametrize("job", JOBS)
def test_the_librarys_audit_finds_nothing(job: str) -> None:
    for name, (_, data) in made(job).items():
        auditor = ezdxf.read(io.StringIO(data.decode())).audit()
        assert not auditor.errors, name
        assert not auditor.fixes, name


@pytest.mark.parametrize("job", JOBS)
def test_it_opens_as_a_picture(job: str) -> None:
    """Every layer is painted: as many paths in the picture as there are outlines, and the words."""
    for set_up, data in made(job).values():
        document = ezdxf.read(io.StringIO(data.decode()))
        backend = SVGBackend()
        Frontend(RenderContext(document), backend).draw_layout(document.modelspace())
        box = backend.player().bbox()
        page = layout.Page(0, 0, layout.Units.mm, margins=layout.Margins.all(0))
        picture = backend.get_string(page)
        assert picture.count("<path") >= len(set_up.operations) + 2
        assert box.has_data
        assert (box.extmin.x, box.extmin.y) == pytest.approx((0, 0), abs=1e-6)
        assert (box.extmax.x, box.extmax.y) == pytest.approx(
            (set_up.length, set_up.width), abs=1e-6
        )


@needs_gdal
@pytest.mark.skipif(shutil.which("gdal_rasterize") is None, reason="gdal-bin is not installed")
def test_gdal_paints_what_is_cut(tmp_path: Path) -> None:
    """The cuts of a stile's edge filled on a grid of 0.5 mm: as many squares as their areas hold."""
    set_up, data = made("larch hill")["S1-stile-with-pull-inner-edge.dxf"]
    cuts = [f for f in features(data, tmp_path) if f["properties"]["Layer"][:4] in ("slot", "groo")]
    for one in cuts:
        one["geometry"] = {
            "type": "Polygon",
            "coordinates": [one["geometry"]["coordinates"]],
        }
    source, target = tmp_path / "cuts.geojson", tmp_path / "cuts.asc"
    source.write_text(json.dumps({"type": "FeatureCollection", "features": cuts}))
    picture = tmp_path / "cuts.tif"
    subprocess.run(
        [
            *("gdal_rasterize", "-q", "-burn", "1", "-ot", "Byte", "-tr", "0.5", "0.5"),
            *("-te", "0", "0", f"{set_up.length:g}", f"{set_up.width:g}"),
            *(str(source), str(picture)),
        ],
        check=True,
    )
    subprocess.run(
        ["gdal_translate", "-q", "-of", "AAIGrid", str(picture), str(target)], check=True
    )
    squares = target.read_text().split("\n", 6)[-1].split().count("1")
    wanted = sum(_exact_area(op.outline) for op in set_up.operations)
    # five slots 62 x 12 with round ends and a groove 488 x 8.2: their edges are 2 x 3200 squares
    assert squares * 0.25 == pytest.approx(wanted, rel=0.02)
