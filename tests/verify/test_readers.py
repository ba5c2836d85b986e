"""The readers against figures worked by hand and against other readers."""

from __future__ import annotations

import io
import math

import ezdxf
import numpy as np
import pytest

from parametric.catalog.layer_names import OURS
from parametric.model import Vector
from parametric.pack.verifying.bench_words import Said, read_words, volume_said
from parametric.pack.verifying.dxf_tags import UnreadableError, read_dxf
from parametric.pack.verifying.expected import centre_of_volume
from parametric.pack.verifying.glb_file import read_glb
from parametric.pack.verifying.machine_file import read_machine_file
from parametric.pack.verifying.outlines import Edge, Outline, closed_outline, doubled
from parametric.pack.verifying.printed import lengths_in
from parametric.pack.verifying.step_file import StepFile, spelled
from tests.verify.lopsided import assembly, cutting
from tests.verify.models import glb, step

BULGE = math.tan(math.pi / 8)


def rounded(length: float, width: float, corner: float, x: float, y: float) -> Outline:
    """A rounded rectangle centred on x;y, its corners quarter arcs."""
    x0, x1, y0, y1 = x - length / 2, x + length / 2, y - width / 2, y + width / 2
    return closed_outline(
        [
            (x0 + corner, y0, 0.0),
            (x1 - corner, y0, BULGE),
            (x1, y0 + corner, 0.0),
            (x1, y1 - corner, BULGE),
            (x1 - corner, y1, 0.0),
            (x0 + corner, y1, BULGE),
            (x0, y1 - corner, 0.0),
            (x0, y0 + corner, BULGE),
        ]
    )


def test_outlines_of_the_pull_as_worked_by_hand() -> None:
    """160.6 x 42.6 with r 6.3 is 160.6*42.6 - (4 - pi)*6.3**2 = 6807.5 mm2, and 150.6 x 32.6 with
    r 3.3 is 4900.2; both are centred on 60, 988.
    """
    for size, area in (((160.6, 42.6, 6.3), 6807.5), ((150.6, 32.6, 3.3), 4900.2)):
        outline = rounded(*size, x=60.0, y=988.0)
        assert outline.area == pytest.approx(area, abs=0.05)
        assert outline.middle == pytest.approx((60.0, 988.0), abs=1e-9)
        assert outline.smallest_corner == pytest.approx(size[2])
        low, high = (60 - size[0] / 2, 988 - size[1] / 2), (60 + size[0] / 2, 988 + size[1] / 2)
        assert outline.bounds == pytest.approx((*low, *high))


def test_a_circle_of_two_halves() -> None:
    """A radius of 5 about 3;4: area 25 pi, reaching 5 every way."""
    circle = closed_outline([(8.0, 4.0, 1.0), (-2.0, 4.0, 1.0)])
    assert circle.area == pytest.approx(25 * math.pi)
    assert circle.middle == pytest.approx((3.0, 4.0))
    assert circle.bounds == pytest.approx((-2.0, -1.0, 8.0, 9.0))
    assert circle.edges[0].radius == pytest.approx(5.0)


def test_a_half_disc() -> None:
    """Its middle is 4 r / 3 pi from the chord (a handbook value)."""
    half = closed_outline([(6.0, 0.0, 1.0), (-6.0, 0.0, 0.0)])
    assert half.area == pytest.approx(math.pi * 18)
    assert half.middle == pytest.approx((0.0, 4 * 6 / (3 * math.pi)))


def test_lines_that_share_a_length_are_doubled_and_those_that_meet_are_not() -> None:
    square = closed_outline([(0, 0, 0), (10, 0, 0), (10, 10, 0), (0, 10, 0)])
    beside = closed_outline([(10, 2, 0), (20, 2, 0), (20, 8, 0), (10, 8, 0)])
    apart = closed_outline([(10.1, 2, 0), (20, 2, 0), (20, 8, 0), (10.1, 8, 0)])
    corner = closed_outline([(10, 10, 0), (20, 10, 0), (20, 20, 0), (10, 20, 0)])
    assert list(doubled([square, beside], 1e-4))
    assert not list(doubled([square, apart], 1e-4))
    assert not list(doubled([square, corner], 1e-4))
    arc = Outline((Edge((0, 0), (2, 0), 0.5),))
    assert list(doubled([arc, Outline((Edge((2, 0), (0, 0), -0.5),))], 1e-4))
    assert not list(doubled([arc, Outline((Edge((0, 0), (2, 0), -0.5),))], 1e-4))


def test_machine_files_as_another_reader_has_them() -> None:
    """Vertices, layers and elevations as ezdxf reads them."""
    for path, data in cutting().items():
        if not path.endswith(".dxf"):
            continue
        mine = read_machine_file(path, data, OURS)
        assert mine.faults == ()
        other = ezdxf.read(io.StringIO(data.decode())).modelspace().query("LWPOLYLINE")
        cuts = [e for e in other if e.dxf.layer not in ("stock", "datum")]
        assert [t.layer for t in mine.taken] == [e.dxf.layer for e in cuts]
        assert [t.floor for t in mine.taken] == [-e.dxf.elevation for e in cuts]
        for taken, entity in zip(mine.taken, cuts, strict=True):
            corners = [(e.a[0], e.a[1], e.bulge) for e in taken.outline.edges]
            assert corners == [tuple(p) for p in entity.get_points("xyb")]


def test_tags_that_are_none() -> None:
    for data in (b"1\n", b"x\ny\n", b"\xff\xfe\n", b"0\nEOF\n"):
        with pytest.raises(UnreadableError):
            read_dxf(data)


@pytest.mark.parametrize(
    ("text", "unit", "values"),
    [
        ("1829 opening, largest of three", "mm", [1829.0]),
        ("784.5", "mm", [784.5]),
        ("72-1/32 cover", "inch", [72.03125 * 25.4]),
        ("3/4", "inch", [19.05]),
        ("6' 3-1/2\"", "inch", [75.5 * 25.4]),
        ("-1/8", "inch", [-3.175]),
        (r"29\S13/16;", "inch", [29.8125 * 25.4]),
        (r"\A1;45", "mm", [45.0]),
        ("pull", "mm", []),
    ],
)
def test_printed_lengths(text: str, unit: str, values: list[float]) -> None:
    assert lengths_in(text, unit) == pytest.approx(values)  # type: ignore[arg-type]


def test_words_of_the_bench_as_worked_by_hand() -> None:
    """A blank of 720 x 110 x 45: 9 off its end is 9*110*45 = 44550 mm3; a mitre 110*110/2*45;
    a groove 9 wide and 18 deep across 110 is 17820; rounding r 6 takes (4 - pi)*36*720.
    """
    part = assembly().groups[0].parts[0]
    for text, volume in (
        ("trim 9 off the foot", 44550.0),
        ("mitre the low end at 45 degrees, the low edge keeping its length", 272250.0),
        (
            "groove 9 wide, 0 to 110, centre across 26, 18 deep from 14 below the blank, in the top",
            17820.0,
        ),
        (
            "slot 12 wide, 40 to 102, centre across 20, 46 deep, in the face",
            50 * 12 * 46 + math.pi * 36 * 46,
        ),
        (
            "pocket 160.6 x 42.6, corners r 6.3, centred on 60; 988, 1.5 deep, in the face",
            6807.492 * 1.5,
        ),
        ("round the four long edges, r 6", (4 - math.pi) * 36 * 720),
        ("round the four corners, r 6", (4 - math.pi) * 36 * 45),
    ):
        said = read_words(text)
        assert said is not None, text
        assert volume_said(said, part.blank, (said,), 0.0) == pytest.approx(volume, rel=1e-6)
    assert read_words("take it off") is None
    assert read_words("trim 9 off the foot") == Said(kind="trim", sizes=(9.0,), faces=("foot",))


def test_words_of_the_raised_panel_as_worked_by_hand() -> None:
    """Larch Hill's panel, 803.53 x 485 x 28: what bevel and tongue leave is 9 323 220 mm3."""
    from parametric.model import Blank

    blank = Blank(length=485.0, width=803.53, thickness=28.0)
    bevel = read_words("bevel all round the face: 75 in, from 15 thick at the edge to 26.5")
    tongue = read_words("tongue all round: 8 thick, 15 long, 5 off the back")
    assert bevel is not None
    assert tongue is not None
    both = (bevel, tongue)
    taken = sum(volume_said(said, blank, both, 0.0) for said in both)
    assert blank.volume - taken == pytest.approx(9_323_220, rel=2e-5)


@pytest.mark.kernel
def test_middles_of_parts_as_the_kernel_has_them() -> None:
    """The centre of mass of each solid of the lopsided leaf."""
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    from tests.verify.models import solids

    for part in assembly().parts:
        properties = GProp_GProps()
        BRepGProp.VolumeProperties_s(solids().of(part), properties)
        centre: Vector = properties.CentreOfMass().Coord()
        assert centre_of_volume(part) == pytest.approx(centre, abs=1e-6), part.name


@pytest.mark.kernel
def test_glb_as_another_reader_has_it() -> None:
    """Names, bounds and volumes of the meshes as trimesh reads them."""
    import trimesh

    mine = read_glb(glb())
    scene = trimesh.load(io.BytesIO(glb()), file_type="glb")
    nodes = {node.name: node for node in mine.nodes if node.mesh is not None}
    assert set(nodes) == set(scene.graph.nodes_geometry)
    for name, node in nodes.items():
        matrix, geometry = scene.graph[name]
        assert node.mesh is not None
        skin = mine.skins[node.mesh]
        assert np.allclose(matrix, node.matrix, atol=1e-9)
        assert np.allclose(
            scene.geometry[geometry].bounds * 1000,
            [skin.corners.min(axis=0), skin.corners.max(axis=0)],
            atol=1e-4,
        )


@pytest.mark.kernel
def test_step_as_the_kernel_has_it() -> None:
    """Volume and middle of each solid as they come out of the file, and by the kernel."""
    from parametric.pack.verifying.step_file import products
    from parametric.pack.verifying.step_solids import measure

    file = StepFile(step().decode())
    parts = {f"{part.mark} {part.noun}": part for part in assembly().parts}
    seen = 0
    for product in products(file).values():
        for number in product.solids:
            part = parts[product.name]
            solid = measure(file, number)
            assert solid.volume == pytest.approx(part.volume, rel=1e-5)
            assert solid.middle == pytest.approx(centre_of_volume(part), abs=2e-3)
            seen += 1
    assert seen == len(parts)


def test_strings_of_a_step_file() -> None:
    r"""ISO 10303-21: a doubled quote, and letters beyond ASCII by their numbers."""
    assert spelled("'the maker''s'") == "the maker's"
    assert spelled(r"'t\X2\00FC\X0\r'") == "tür"
    # A backslash itself is doubled, and what follows it is no escape.
    assert spelled(r"'a\\X2\\b'") == r"a\X2\b"
