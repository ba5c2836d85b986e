"""The STEP file, read back by the kernel, by a reader of its syntax, and by another build of the kernel.

The kernel gives names, colours, places and volumes; steputils knows nothing of geometry and
counts what the text says; gmsh, in a process of its own, weighs the whole.
"""

from __future__ import annotations

import io
import json
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from parametric.model import Assembly, Group, Part, Placement
from tests.solids.models import HAND_MADE, NAMES, assembly_of, solids_of
from tests.solids.pair import ASH, made

pytestmark = pytest.mark.kernel


@dataclass(frozen=True, kw_only=True)
class Occurrence:
    """One placed thing as the kernel reads it: its own name, its product's, and what it is."""

    name: str
    product: str
    depth: int
    volume: float
    centre: tuple[float, float, float]
    colour: tuple[float, float, float, float] | None


@pytest.fixture(scope="module", params=NAMES)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(scope="module")
def written(name: str) -> bytes:
    from parametric.writers.step import write_step

    return write_step(assembly_of(name), solids_of(name))


def read_by_kernel(data: bytes, folder: Path) -> list[Occurrence]:
    """Every occurrence below the root, in order, with places and sizes in the world."""
    from OCP.STEPCAFControl import STEPCAFControl_Reader
    from OCP.TCollection import TCollection_ExtendedString
    from OCP.TDF import TDF_LabelSequence
    from OCP.TDocStd import TDocStd_Document
    from OCP.XCAFDoc import XCAFDoc_DocumentTool

    path = folder / "model.step"
    path.write_bytes(data)
    document = TDocStd_Document(TCollection_ExtendedString("XmlOcaf"))
    reader = STEPCAFControl_Reader()
    reader.SetColorMode(True)
    reader.SetNameMode(True)
    reader.ReadFile(str(path))
    assert reader.Transfer(document)
    shapes = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    roots = TDF_LabelSequence()
    shapes.GetFreeShapes(roots)
    assert roots.Length() == 1
    return list(_walk(roots.Value(1), shapes, document, None, 0))


def _walk(label: Any, shapes: Any, document: Any, where: Any, depth: int) -> Iterator[Occurrence]:
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps
    from OCP.Quantity import Quantity_ColorRGBA, Quantity_TOC_sRGB
    from OCP.TDF import TDF_Label, TDF_LabelSequence
    from OCP.TopLoc import TopLoc_Location
    from OCP.XCAFDoc import XCAFDoc_ColorSurf, XCAFDoc_DocumentTool

    product = TDF_Label()
    if not shapes.GetReferredShape_s(label, product):
        product = label
    where = (where or TopLoc_Location()).Multiplied(shapes.GetLocation_s(label))
    properties = GProp_GProps()
    shape = shapes.GetShape_s(product)
    BRepGProp.VolumeProperties_s(shape.Moved(where), properties)
    colours = XCAFDoc_DocumentTool.ColorTool_s(document.Main())
    colour, found = Quantity_ColorRGBA(), None
    if colours.GetColor(shape, XCAFDoc_ColorSurf, colour):
        found = (*colour.GetRGB().Values(Quantity_TOC_sRGB), colour.Alpha())
    yield Occurrence(
        name=_name(label),
        product=_name(product),
        depth=depth,
        volume=properties.Mass(),
        centre=properties.CentreOfMass().Coord(),
        colour=found,
    )
    below = TDF_LabelSequence()
    if shapes.IsAssembly_s(product):
        shapes.GetComponents_s(product, below)
    for i in range(1, below.Length() + 1):
        yield from _walk(below.Value(i), shapes, document, where, depth + 1)


def _name(label: Any) -> str:
    from OCP.TDataStd import TDataStd_Name

    name = TDataStd_Name()
    assert label.FindAttribute(TDataStd_Name.GetID_s(), name)
    return str(name.Get().ToExtString())


def centre_of(part: Part, group: Group, name: str) -> tuple[float, float, float]:
    """Where a part's middle of mass is in the world, from its solid in its own frame."""
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(solids_of(name).of(part), properties)
    return group.placement.point(part.placement.point(properties.CentreOfMass().Coord()))


def test_the_kernel_reads_back_the_job_its_leaves_and_their_parts(
    name: str, written: bytes, tmp_path: Path
) -> None:
    """Names, order, nesting, volume and place of everything; a mirrored part would be off centre."""
    from parametric.solids.looks import look_of

    assembly = assembly_of(name)
    root, *found = read_by_kernel(written, tmp_path)
    assert root.name == assembly.name
    expected = iter(found)
    for group in assembly.groups:
        leaf = next(expected)
        assert (leaf.name, leaf.product, leaf.depth) == (group.name, group.name, 1)
        for part in group.parts:
            piece = next(expected)
            assert piece.name == part.name
            assert piece.product == f"{part.mark} {part.noun}"
            assert piece.depth == 2
            assert piece.volume == pytest.approx(part.volume, rel=1e-6)
            assert piece.centre == pytest.approx(centre_of(part, group, name), abs=1e-4)
            look = look_of(part.material)
            assert piece.colour == pytest.approx((*look.colour, look.opacity), abs=1e-5)
    assert next(expected, None) is None


def test_the_text_holds_one_body_a_part_type_and_one_occurrence_a_piece(
    name: str, written: bytes
) -> None:
    """Counted by steputils, a reader of ISO 10303-21 with no geometry in it."""
    from steputils import p21

    assembly = assembly_of(name)
    step = p21.load(io.StringIO(written.decode("ascii")))
    (data,) = step.data
    simple = [i.entity for i in data.instances.values() if hasattr(i, "entity")]
    count = Counter(entity.name for entity in simple)
    types = {f"{part.mark} {part.noun}" for part in assembly.parts}
    groups = {group.name for group in assembly.groups}
    assert count["MANIFOLD_SOLID_BREP"] == len(types)
    products = [entity.params[1] for entity in simple if entity.name == "PRODUCT"]
    assert sorted(products) == sorted(types | groups | {assembly.name})
    placed = [e.params[1] for e in simple if e.name == "NEXT_ASSEMBLY_USAGE_OCCURRENCE"]
    assert sorted(placed) == sorted([*groups, *(part.name for part in assembly.parts)])
    assert count["COLOUR_RGB"] == len({part.material.look for part in assembly.parts})
    lengths = [i for i in data.instances.values() if "LENGTH_UNIT" in str(i)]
    assert lengths
    assert all(".MILLI.,.METRE." in str(i) for i in lengths)


def test_the_colour_of_wood_is_one_value(written: bytes) -> None:
    """Pale wood is sRGB 0.80 0.69 0.51: readers differ on linear or not, the file must not."""
    text = written.replace(b"\n", b"")
    colours = [
        tuple(round(float(value), 6) for value in found.split(b","))
        for found in re.findall(rb"COLOUR_RGB\('',([^)]*)\)", text)
    ]
    assert (0.8, 0.69, 0.51) in colours
    assert b"SURFACE_STYLE_TRANSPARENT(0.75)" in text  # glass covers a quarter


def references(value: Any) -> Iterator[Any]:
    """Every reference in a parameter, as steputils gives them."""
    if isinstance(value, (list, tuple)):
        for one in value:
            yield from references(one)
    elif type(value).__name__ == "Reference":
        yield value


def test_every_product_wears_its_colour_by_another_reader(name: str, written: bytes) -> None:
    """Read by steputils: the body that is styled, the product it is the shape of, the colour.

    ISO 10303-46: STYLED_ITEM has styles and an item; the colour stands at the end of a chain
    of styles. ISO 10303-41: the product of a shape is found from its definition.
    """
    from steputils import p21

    from parametric.solids.looks import look_of

    (data,) = p21.load(io.StringIO(written.decode("ascii"))).data
    entities = {ref: i.entity for ref, i in data.instances.items() if hasattr(i, "entity")}

    def first(start: Any, wanted: str) -> Any:
        """The first entity of a kind that is reached from one."""
        waiting, met = [start], set()
        while waiting:
            ref = waiting.pop(0)
            if str(ref) in met or ref not in entities:
                continue
            met.add(str(ref))
            if entities[ref].name == wanted:
                return entities[ref]
            waiting += references(entities[ref].params)
        raise AssertionError(f"no {wanted} from {start}")

    product_of = {}
    for entity in entities.values():
        if entity.name == "SHAPE_DEFINITION_REPRESENTATION":
            definition, shape = entity.params
            product = first(definition, "PRODUCT").params[1]
            for item in references(entities[shape].params[1]):
                if entities[item].name == "MANIFOLD_SOLID_BREP":
                    product_of[str(item)] = product
    worn = {}
    for entity in entities.values():
        if entity.name == "STYLED_ITEM" and str(entity.params[2]) in product_of:
            colours = [first(style, "COLOUR_RGB") for style in references(entity.params[1])]
            worn[product_of[str(entity.params[2])]] = colours[0].params[1:]
    parts = {f"{part.mark} {part.noun}": part for part in assembly_of(name).parts}
    assert worn.keys() == parts.keys()
    for product, colour in worn.items():
        assert tuple(map(float, colour)) == pytest.approx(
            look_of(parts[product].material).colour, abs=1e-5
        )


def test_the_header_names_the_tool_and_no_time(name: str, written: bytes) -> None:
    from steputils import p21

    header = p21.load(io.StringIO(written.decode("ascii"))).header
    file, time, author, organisation, _, system, _ = header["FILE_NAME"].params
    assert (file, system) == (assembly_of(name).name, "stilewright")
    assert time == "1970-01-01T00:00:00"
    assert [*author, *organisation] == ["", ""]
    assert str(header["FILE_SCHEMA"].params[0][0]).startswith("AUTOMOTIVE_DESIGN")  # AP214


def test_another_build_of_the_kernel_weighs_the_same(
    name: str, written: bytes, tmp_path: Path
) -> None:
    """Another program brings its own build, so it runs in a process of its own."""
    path = tmp_path / "model.step"
    path.write_bytes(written)
    code = (
        "import gmsh, json, sys\n"
        "gmsh.initialize()\n"
        "gmsh.option.setNumber('General.Terminal', 0)\n"
        "gmsh.option.setString('Geometry.OCCTargetUnit', 'MM')\n"
        "gmsh.model.occ.importShapes(sys.argv[1])\n"
        "gmsh.model.occ.synchronize()\n"
        "bodies = [tag for _, tag in gmsh.model.getEntities(3)]\n"
        "paths = [gmsh.model.getEntityName(3, tag) for tag in bodies]\n"
        "print(json.dumps([paths, [gmsh.model.occ.getMass(3, tag) for tag in bodies]]))\n"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code, str(path)], check=True, capture_output=True, text=True
    )
    paths, volumes = json.loads(ran.stdout)
    parts = assembly_of(name).parts
    assert volumes == pytest.approx([part.volume for part in parts], rel=1e-6)
    for path_of_names, part in zip(paths, parts, strict=True):
        assert path_of_names.endswith(f"/{part.name}/{part.mark} {part.noun}")


def test_nothing_is_said_on_standard_output(name: str, capfd: pytest.CaptureFixture[str]) -> None:
    from parametric.writers.step import write_step

    write_step(assembly_of(name), solids_of(name))
    assert capfd.readouterr() == ("", "")


def entities(data: bytes) -> Counter[str]:
    """What the file says, without the numbers by which its lines refer to one another."""
    text = re.sub(r"\s+", "", data.decode("ascii"))
    return Counter(re.sub(r"#\d+|USAGE_OCCURRENCE\('\d+'", "#", text).split(";"))


def test_two_writings_say_the_same(name: str, written: bytes) -> None:
    from parametric.writers.step import write_step

    assert entities(write_step(assembly_of(name), solids_of(name))) == entities(written)


@pytest.mark.parametrize(
    "job",
    [
        "Büro Łódź",
        "書斎の引き戸" * 12,
        "🚪 hall",
        'the client\'s "den"',
        "plain and very long " * 9,
    ],
)
def test_names_survive_in_any_script(job: str, tmp_path: Path) -> None:
    """The file itself is ASCII, as edition 2 of ISO 10303-21 asks of strings."""
    from parametric.writers.step import write_step

    assembly = replace(assembly_of(HAND_MADE), name=job.strip())
    data = write_step(assembly, solids_of(HAND_MADE))
    assert data.isascii()
    assert read_by_kernel(data, tmp_path)[0].name == job.strip()


def test_one_shape_in_two_part_types_is_two_products(tmp_path: Path) -> None:
    """Two marks, or two timbers: each keeps its own name."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.step import write_step

    walnut = replace(ASH, name="walnut")
    pieces = (
        made("left", "A1", "cap", (50.0, 20.0, 10.0)),
        made("right", "A2", "cap", (50.0, 20.0, 10.0)),
        made("top", "A1", "cap", (50.0, 20.0, 10.0), material=walnut),
    )
    group = Group(name="caps", placement=Placement(), parts=pieces)
    assembly = Assembly(name="caps of two timbers", groups=(group,), states=())
    solids = build_solids(pieces)
    assert len(solids.shapes) == 1
    _, _, *found = read_by_kernel(write_step(assembly, solids), tmp_path)
    assert [(o.name, o.product) for o in found] == [
        ("left", "A1 cap"),
        ("right", "A2 cap"),
        ("top", "A1 cap"),
    ]
