"""The USDZ: its bytes by the published specification, its scene by OpenUSD itself.

Source of the archive's rules: openusd.org, USDZ file format specification: a zip archive,
no compression and no encryption, the default layer the first file, the data of every file
at a multiple of 64 bytes; APPNOTE.TXT of the zip format for the headers (both from memory).
OpenUSD (usd-core) opens the stage, composes it and runs all its own validators.
"""

from __future__ import annotations

import io
import json
import os
import struct
import subprocess
import sys
import zipfile
import zlib
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh

from parametric.catalog.finishes import CLEAR_TIMBERS, GLASSES, METALS, PAINTS
from parametric.model import Assembly, Group, Placement, Slide
from parametric.writers.client_page import Palette
from tests.solids.models import HAND_MADE, NAMES, assembly_of, solids_of
from tests.solids.pair import ASH, made

pytestmark = pytest.mark.kernel


@pytest.fixture(scope="module", params=NAMES)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@cache
def written(name: str) -> bytes:
    from parametric.writers.usdz import write_usdz

    return write_usdz(assembly_of(name), solids_of(name), Palette())


def opened(data: bytes, folder: Path) -> Any:
    from pxr import Usd

    # OpenUSD keeps a layer by its path, so each has a path of its own
    path = folder / f"{zlib.crc32(data):08x}.usdz"
    path.write_bytes(data)
    return Usd.Stage.Open(str(path))


# --- the archive ---------------------------------------------------------------------------


def test_the_archive_is_what_the_specification_asks(name: str) -> None:
    """By its bytes: signatures, method 0, no flags, sizes and sum before the data, 64 bytes."""
    data = written(name)
    signature, _, flags, method, _, _, crc, packed, full, called, extra = struct.unpack_from(
        "<4s5H3I2H", data
    )
    assert (signature, flags, method) == (b"PK\3\4", 0, 0)
    assert data[30 : 30 + called] == b"model.usda"
    begins = 30 + called + extra
    assert begins % 64 == 0
    layer = data[begins : begins + full]
    assert packed == full == len(layer)
    assert crc == zlib.crc32(layer)
    assert layer.startswith(b"#usda 1.0\n")
    # a header field is a tag, a size and that many bytes
    tag, size = struct.unpack_from("<2H", data, 30 + called)
    assert size == extra - 4
    assert tag == 0x1986
    directory = begins + full
    assert data[directory : directory + 4] == b"PK\1\2"
    end = len(data) - 22
    assert struct.unpack_from("<4s4H2IH", data, end) == (
        b"PK\5\6",
        *(0, 0, 1, 1),
        *(end - directory, directory, 0),
    )


@pytest.mark.parametrize("length", range(1, 70))
def test_every_name_and_length_is_aligned(length: int) -> None:
    """Three files, their names and contents of any length: read by the standard library."""
    from parametric.writers.usdz import archive

    files = {
        "a" * length + ".usda": b"x" * length,
        "b.png": b"y" * (3 * length + 1),
        "c.png": b"",
    }
    data = archive(files)
    with zipfile.ZipFile(io.BytesIO(data)) as found:
        assert found.testzip() is None
        assert found.namelist() == list(files)
        for info in found.infolist():
            assert found.read(info) == files[info.filename]
            assert info.compress_type == zipfile.ZIP_STORED
            at = info.header_offset
            called, extra = struct.unpack_from("<2H", data, at + 26)
            assert (at + 30 + called + extra) % 64 == 0
            assert extra == 0 or extra >= 4


def test_two_processes_write_the_same_bytes() -> None:
    """Neither clock nor hash order."""
    code = (
        "import hashlib, sys\n"
        "from parametric.writers.client_page import Palette\n"
        "from parametric.writers.usdz import write_usdz\n"
        "from tests.solids.models import HAND_MADE, assembly_of, solids_of\n"
        "data = write_usdz(assembly_of(HAND_MADE), solids_of(HAND_MADE), Palette())\n"
        "print(hashlib.sha256(data).hexdigest())\n"
    )
    digests = {
        subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            text=True,
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    }
    assert len(digests) == 1


# --- the scene -----------------------------------------------------------------------------


def test_openusd_has_nothing_against_it(name: str, tmp_path: Path) -> None:
    """Every validator that comes with it, those for packages, stages, shapes and shading among them."""
    from pxr import UsdValidation

    stage = opened(written(name), tmp_path)
    validators = UsdValidation.ValidationRegistry().GetOrLoadAllValidators()
    names = {validator.GetMetadata().name for validator in validators}
    assert {
        "usdUtilsValidators:UsdzPackageValidator",
        "usdUtilsValidators:RootPackageValidator",
        "usdGeomValidators:StageMetadataChecker",
        "usdShadeValidators:MaterialBindingApiAppliedValidator",
        "usdValidation:CompositionErrorTest",
    } <= names
    found = UsdValidation.ValidationContext(validators).Validate(stage)
    assert [error.GetErrorAsString() for error in found] == []


def test_metres_y_up_and_shut(name: str, tmp_path: Path) -> None:
    from pxr import UsdGeom

    stage = opened(written(name), tmp_path)
    assert UsdGeom.GetStageMetersPerUnit(stage) == 1.0
    assert UsdGeom.GetStageUpAxis(stage) == "Y"
    assert stage.GetDefaultPrim().GetDisplayName() == assembly_of(name).name
    assert not stage.HasAuthoredTimeCodeRange()


def test_it_is_the_scene_of_the_glb(name: str, tmp_path: Path) -> None:
    """Piece by piece: name, parent, place in the world, triangles and extent; shapes shared alike."""
    from pxr import Usd, UsdGeom

    from parametric.writers.glb import write_glb

    glb = trimesh.load(
        io.BytesIO(write_glb(assembly_of(name), solids_of(name))), file_type="glb", process=False
    )
    stage = opened(written(name), tmp_path)
    places = UsdGeom.XformCache()
    boxes = UsdGeom.BBoxCache(Usd.TimeCode.Default(), [UsdGeom.Tokens.default_])
    pieces = {prim.GetDisplayName(): prim for prim in stage.Traverse() if prim.IsInstance()}
    assert pieces.keys() == set(glb.graph.nodes_geometry)
    shared: dict[str, set[str]] = {}
    for part, prim in pieces.items():
        place, geometry = glb.graph.get(part)
        parent = glb.graph.transforms.parents[part]
        assert prim.GetParent().GetDisplayName() == parent
        assert pytest.approx(place, abs=1e-9) == np.array(places.GetLocalToWorldTransform(prim)).T
        (mesh,) = (
            UsdGeom.Mesh(child) for child in prim.GetFilteredChildren(Usd.TraverseInstanceProxies())
        )
        held = glb.geometry[geometry]
        assert list(mesh.GetFaceVertexCountsAttr().Get()) == [3] * len(held.faces)
        assert np.array_equal(
            np.array(mesh.GetFaceVertexIndicesAttr().Get()).reshape(-1, 3), held.faces
        )
        assert np.array_equal(
            np.array(mesh.GetPointsAttr().Get()), held.vertices.astype(np.float32)
        )
        normals = np.array(mesh.GetNormalsAttr().Get())
        assert np.abs(normals - held.vertex_normals).max() < 1e-6
        assert mesh.GetNormalsInterpolation() == UsdGeom.Tokens.vertex
        shared.setdefault(prim.GetPrototype().GetName(), set()).add(geometry)
    whole = boxes.ComputeWorldBound(stage.GetDefaultPrim()).ComputeAlignedRange()
    assert [whole.GetMin(), whole.GetMax()] == pytest.approx(glb.bounds, abs=1e-6)
    # a twin is an instance: as many prototypes as shapes
    keys = {solids_of(name).key(part) for part in assembly_of(name).parts}
    assert len(stage.GetPrototypes()) == len(shared) == len(keys) < len(pieces) / 2
    assert all(len(meshes) == 1 for meshes in shared.values())


def test_pieces_keep_their_marks(name: str, tmp_path: Path) -> None:
    stage = opened(written(name), tmp_path)
    said = {
        prim.GetDisplayName(): (prim.GetCustomDataByKey("mark"), prim.GetCustomDataByKey("noun"))
        for prim in stage.Traverse()
        if prim.IsInstance()
    }
    assert said == {part.name: (part.mark, part.noun) for part in assembly_of(name).parts}


# --- finishes ------------------------------------------------------------------------------


def worn(data: bytes, folder: Path) -> dict[str, dict[str, Any]]:
    """What every piece wears, by its name: the inputs of the surface that the stage binds."""
    from pxr import Usd, UsdShade

    found = {}
    stage = opened(data, folder)
    for prim in stage.Traverse(Usd.TraverseInstanceProxies()):
        if prim.GetTypeName() == "Mesh":
            material, _ = UsdShade.MaterialBindingAPI(prim).ComputeBoundMaterial()
            surface, _, _ = material.ComputeSurfaceSource()
            assert surface.GetIdAttr().Get() == "UsdPreviewSurface"
            found[prim.GetParent().GetDisplayName()] = {
                "finish": material.GetPrim().GetDisplayName(),
                **{i.GetBaseName(): i.Get() for i in surface.GetInputs()},
            }
    return found


def test_it_wears_what_is_quoted(tmp_path: Path) -> None:
    """Lichen is #98a48c. sRGB 0x98 = 152 / 255 = 0.5961: ((0.5961 + 0.055) / 1.055) ^ 2.4 = 0.3140."""
    from parametric.writers.usdz import write_usdz

    model = assembly_of(HAND_MADE), solids_of(HAND_MADE)
    painted = worn(write_usdz(*model, Palette()), tmp_path)
    assert painted["leaf A / left stile"]["finish"] == "Lichen"
    assert tuple(painted["leaf A / left stile"]["diffuseColor"]) == pytest.approx(
        (0.3140, 0.3712, 0.2623), abs=1e-4
    )
    assert painted["leaf A / left stile"]["roughness"] == pytest.approx(0.45)
    assert painted["leaf A / left stile"]["metallic"] == 0
    assert painted["leaf A / pull"]["finish"] == "Aged brass"
    assert painted["leaf A / pull"]["metallic"] == 1
    assert painted["tracks / front track"]["finish"] == "steel"
    for part, surface in painted.items():
        assert (surface["opacity"] < 1) == part.endswith("glass")
    assert painted["leaf A / glass"]["ior"] == pytest.approx(1.52)


def test_every_finish_can_be_worn(tmp_path: Path) -> None:
    """No two look alike, and each goes by its own name."""
    from parametric.writers.usdz import write_usdz

    model = assembly_of(HAND_MADE), solids_of(HAND_MADE)
    kinds = (
        ("wood", (*PAINTS, *CLEAR_TIMBERS), "leaf A / left stile"),
        ("glass", GLASSES, "leaf A / glass"),
        ("metal", METALS, "leaf A / pull"),
    )
    for kind, finishes, part in kinds:
        seen = set()
        for finish in finishes:
            data = write_usdz(*model, replace(Palette(), **{kind: finish.key}))
            surface = worn(data, tmp_path)[part]
            assert surface["finish"] == finish.name
            seen.add((tuple(surface["diffuseColor"]), surface["opacity"], surface["roughness"]))
        assert len(seen) == len(finishes)


# --- names and slides ----------------------------------------------------------------------


@pytest.mark.parametrize(
    "job",
    [
        'the client\'s "den" \\ study',
        "<script>alert(1)</script> & </usda>",
        "غرفة القراءة",
        "🚪 hall @ home (rear) { 2 }",
        "a\nnew line\tand a tab",
        "#usda 1.0",
    ],
)
def test_names_survive_whatever_is_in_them(job: str, tmp_path: Path) -> None:
    """As the job, a leaf and a part; what OpenUSD displays is what was given."""
    from parametric.pack.verifying.usdz_file import read_usdz
    from parametric.solids.solid_set import build_solids
    from parametric.writers.usdz import write_usdz

    pieces = (
        made(f"{job} / left", "A1", "cap", (50.0, 20.0, 10.0)),
        made(f"{job} / left!", job, job, (40.0, 20.0, 10.0), material=replace(ASH, name=job)),
        made("7", "", "", (30.0, 20.0, 10.0)),
    )
    group = Group(name=job, placement=Placement(), parts=pieces)
    assembly = Assembly(name=job, groups=(group,), states=())
    data = write_usdz(assembly, build_solids(pieces), Palette())
    stage = opened(data, tmp_path)
    root = stage.GetDefaultPrim()
    names = [p.GetDisplayName() for p in stage.Traverse() if p.IsInstance()]
    (leaf,) = (p for p in root.GetChildren() if p.GetTypeName() == "Xform")
    assert (root.GetDisplayName(), leaf.GetDisplayName()) == (job, job)
    assert names == [part.name for part in pieces]
    ours = read_usdz(data).scene
    assert [node.name for node in ours.nodes] == [job, job, *names]


def test_a_slide_askew_is_told_as_a_step(tmp_path: Path) -> None:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.usdz import write_usdz

    block = made("block", "X1", "block", (50.0, 20.0, 10.0))
    group = Group(
        name="sash",
        placement=Placement(),
        parts=(block,),
        motion=(Slide(direction=(0.6, 0.8, 0.0), travel=250.0),),
    )
    assembly = Assembly(name="window", groups=(group,), states=())
    stage = opened(write_usdz(assembly, build_solids([block]), Palette()), tmp_path)
    (sash,) = (p for p in stage.GetDefaultPrim().GetChildren() if p.GetDisplayName() == "sash")
    assert json.loads(sash.GetCustomDataByKey("motion")) == [{"slide": [0.15, 0.0, -0.2]}]


# --- in a pack -----------------------------------------------------------------------------


def test_a_pack_has_one_when_it_is_asked_for(reading_room: Path, tmp_path: Path) -> None:
    """`build --usdz`; it is read back like the rest, and stands in numbers.json."""
    from typer.testing import CliRunner

    from parametric.cli import app

    out = tmp_path / "pack"
    house = reading_room.parents[1] / "house.yaml"
    arguments = ["build", str(reading_room), "--out", str(out), "--house", str(house), "--json"]
    ran = CliRunner().invoke(app, [*arguments, "--usdz"])
    assert ran.exit_code == 0, ran.output
    verification = json.loads((out / "numbers.json").read_text())["verification"]
    assert {path.suffix for path in (out / "model").iterdir()} == {".glb", ".step", ".usdz"}
    assert verification["usdz"] == {"parts": 84, "meshes": 14, "faults": []}
