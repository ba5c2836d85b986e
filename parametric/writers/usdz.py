"""The model as USDZ, for a phone that can stand it in a room: one layer of text in a plain archive.

Metres, Y up, the frame of the GLB, and the same triangles. Each shape is drawn once and
every piece is an instance of it under its own name. The layer is USD text (`.usda`), so that
the same job gives the same bytes.

Leaves stand shut and nothing plays: what looks at such a file on a phone would play it again
and again, and a door that never stands still cannot be judged (common practice, no source).
How a leaf slides or turns is said in words of data for whoever opens it.

Source: the USDZ file format specification, openusd.org/release/spec_usdz.html (from
memory): a zip archive without compression or encryption, the default layer first, the
data of every file beginning at a multiple of 64 bytes.
"""

from __future__ import annotations

import json
import re
import struct
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np

from parametric.model import Assembly, Group, Part, Placement
from parametric.writers.client_page import Palette
from parametric.writers.scene_frame import (
    Floats,
    Singles,
    group_turn,
    mesh_corners,
    mesh_normals,
    part_turn,
    scene_point,
)
from parametric.writers.scene_motion import line_slide, scene_steps
from parametric.writers.usdz_finish import Finish, finish_of

if TYPE_CHECKING:
    from parametric.solids.solid_set import Solids

LAYER = "model.usda"
_ROOT = "job"
_FINISHES, _SHAPES = f"/{_ROOT}/finishes", f"/{_ROOT}/shapes"
_ALIGNED = 64
_PADDING = 0x1986
"""The tag of padding in the headers of a USDZ archive (from memory)."""
_FIRST_DAY = 0x21
"""1 January 1980, the first day an archive knows: the same job gives the same bytes."""

_CONTROL = re.compile(r"[\x00-\x1f\x7f]")


def write_usdz(assembly: Assembly, solids: Solids, palette: Palette) -> bytes:
    """The whole assembly, shut, in what is quoted.

    Prims go by plain names; `displayName` holds the name in full, `customData` the mark
    and noun of a piece and how a leaf moves: the axis and travel (metres) of one that slides,
    else the steps of its `motion` in words of JSON, as `scene_motion` says them.

    Args:
        assembly: the job's parts.
        solids: their solids.
        palette: what may be chosen; what is shown first is worn.
    """
    return archive({LAYER: _layer(assembly, solids, palette).encode()})


def archive(files: dict[str, bytes]) -> bytes:
    """A USDZ archive of files with plain names, in the order given."""
    body, central = bytearray(), bytearray()
    for name, data in files.items():
        at, called = len(body), name.encode("ascii")
        extra = _padding(at + 30 + len(called))
        head = struct.pack(
            "<5H3I2H",
            *(10, 0, 0, 0, _FIRST_DAY),
            *(zlib.crc32(data), len(data), len(data)),
            *(len(called), len(extra)),
        )
        body += b"PK\3\4" + head + called + extra + data
        central += b"PK\1\2" + struct.pack("<H", 10) + head[:-2] + struct.pack("<H", 0)
        central += struct.pack("<3H2I", 0, 0, 0, 0, at) + called
    count = len(files)
    end = struct.pack("<4H2IH", 0, 0, count, count, len(central), len(body), 0)
    return bytes(body + central + b"PK\5\6" + end)


def _padding(at: int) -> bytes:
    """What stands between a header that would end at a place and its data."""
    short = -at % _ALIGNED
    if short == 0:
        return b""
    if short < 4:  # a tag and a size take four
        short += _ALIGNED
    return struct.pack("<2H", _PADDING, short - 4) + bytes(short - 4)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Names:
    """Plain names for the children of one prim, each used once."""

    taken: set[str] = field(default_factory=set)

    def plain(self, name: str) -> str:
        """Letters, digits and underlines, the first no digit."""
        bare = re.sub(r"[^0-9A-Za-z]+", "_", name).strip("_") or "piece"
        bare = f"_{bare}" if bare[0].isdigit() else bare
        found, n = bare, 1
        while found in self.taken:
            n += 1
            found = f"{bare}_{n}"
        self.taken.add(found)
        return found


def _layer(assembly: Assembly, solids: Solids, palette: Palette) -> str:
    from parametric.solids.mesh import mesh_of  # the kernel is loaded here and not before

    finishes: dict[tuple[str, Finish], str] = {}
    shapes: dict[str, str] = {}
    drawn: list[str] = []
    dressed: list[str] = []
    shape_names, finish_names = _Names(), _Names()
    group_names = _Names(taken={"finishes", "shapes"})
    groups: list[str] = []
    for group in assembly.groups:
        piece_names = _Names()
        pieces: list[str] = []
        for part in filter(solids.shows, group.parts):
            key = solids.key(part)
            if key not in shapes:
                shapes[key] = shape_names.plain(f"{part.mark} {part.noun}")
                mesh = mesh_of(solids.of(part))
                drawn += _shape(
                    shapes[key], mesh_corners(mesh), mesh_normals(mesh), mesh.triangles.ravel()
                )
            wears = (part.material.name, finish_of(part, palette))
            if wears not in finishes:
                finishes[wears] = finish_names.plain(part.material.name)
                dressed += _material(finishes[wears], wears[1])
            own = piece_names.plain(part.name.removeprefix(f"{group.name} / "))
            pieces += _piece(own, part, shapes[key], finishes[wears])
        groups += _prim(
            "def Xform",
            group_names.plain(group.name),
            [f"displayName = {_text(group.name)}", *_moves(group)],
            [*_stands(group.placement, group_turn(group.placement)), *pieces],
        )
    head = [
        "#usda 1.0",
        "(",
        '    customLayerData = { string creator = "stilewright" }',
        f'    defaultPrim = "{_ROOT}"',
        "    metersPerUnit = 1",
        '    upAxis = "Y"',
        ")",
        "",
    ]
    whole = _prim(
        "def Xform",
        _ROOT,
        [f"displayName = {_text(assembly.name)}"],
        [
            *_prim("def Scope", "finishes", [], dressed),
            *_prim("class Scope", "shapes", [], drawn),
            *groups,
        ],
    )
    return "\n".join([*head, *whole, ""])


def _prim(kind: str, name: str, said: Iterable[str], inside: Iterable[str]) -> list[str]:
    """One prim: its kind and name, what is said of it, what is in it."""
    lines = [f'{kind} "{name}"']
    if told := [f"    {line}" for line in said]:
        lines = [f"{lines[0]} (", *told, ")"]
    return [*lines, "{", *(f"    {line}" for line in inside), "}"]


def _piece(name: str, part: Part, shape: str, finish: str) -> list[str]:
    told = f"string mark = {_text(part.mark)}; string noun = {_text(part.noun)}"
    return _prim(
        "def Xform",
        name,
        [
            'prepend apiSchemas = ["MaterialBindingAPI"]',
            f"customData = {{ {told} }}",
            f"displayName = {_text(part.name)}",
            "instanceable = true",
            f"prepend references = <{_SHAPES}/{shape}>",
        ],
        [
            f"rel material:binding = <{_FINISHES}/{finish}>",
            *_stands(part.placement, part_turn(part.placement)),
        ],
    )


def _moves(group: Group) -> Iterator[str]:
    """How a leaf moves: one slide along an axis of the scene, metres from shut, or its steps."""
    if not group.motion:
        return
    slides = line_slide(group.motion)
    if slides is not None:
        axis, travel = slides
        yield f'customData = {{ string axis = "{axis}"; double travel = {_number(travel)} }}'
        return
    told = json.dumps(scene_steps(group.motion), separators=(",", ":"))
    yield f"customData = {{ string motion = {_text(told)} }}"


def _stands(placement: Placement, turn: Floats) -> list[str]:
    """A matrix as USD writes it: a point is a row before it, the last row is where it stands."""
    rows = [
        *((*(round(float(v), 9) + 0.0 for v in column), 0.0) for column in turn.T),
        (*scene_point(placement.origin), 1.0),
    ]
    matrix = ", ".join(f"({', '.join(_number(v) for v in row)})" for row in rows)
    return [
        f"matrix4d xformOp:transform = ( {matrix} )",
        'uniform token[] xformOpOrder = ["xformOp:transform"]',
    ]


def _shape(name: str, corners: Singles, normals: Singles, order: Iterable[int]) -> list[str]:
    numbers = [str(int(n)) for n in order]
    mesh = _prim(
        "def Mesh",
        "mesh",
        [],
        [
            f"float3[] extent = {_vectors(np.array([corners.min(axis=0), corners.max(axis=0)]))}",
            f"int[] faceVertexCounts = [{', '.join(['3'] * (len(numbers) // 3))}]",
            f"int[] faceVertexIndices = [{', '.join(numbers)}]",
            f"normal3f[] normals = {_vectors(normals)} (",
            '    interpolation = "vertex"',
            ")",
            f"point3f[] points = {_vectors(corners)}",
            'uniform token subdivisionScheme = "none"',
        ],
    )
    return _prim("def Xform", name, [], mesh)


def _material(name: str, finish: Finish) -> list[str]:
    surface = f"{_FINISHES}/{name}/surface.outputs:surface"
    shader = _prim(
        "def Shader",
        "surface",
        [],
        [
            'uniform token info:id = "UsdPreviewSurface"',
            f"color3f inputs:diffuseColor = ({', '.join(f'{c:.6g}' for c in finish.colour)})",
            f"float inputs:ior = {finish.ior:.6g}",
            f"float inputs:metallic = {finish.metallic:.6g}",
            f"float inputs:opacity = {finish.opacity:.6g}",
            f"float inputs:roughness = {finish.roughness:.6g}",
            "token outputs:surface",
        ],
    )
    return _prim(
        "def Material",
        name,
        [f"displayName = {_text(finish.name)}"],
        [f"token outputs:surface.connect = <{surface}>", *shader],
    )


def _vectors(rows: Singles) -> str:
    return f"[{', '.join(f'({a}, {b}, {c})' for a, b, c in _shortest(rows))}]"


def _shortest(rows: Singles) -> Iterator[list[str]]:
    """Each number with the fewest digits that give it back in single precision."""
    for row in rows:
        yield [np.format_float_positional(v, trim="-") for v in row]


def _number(value: float) -> str:
    return np.format_float_positional(value, trim="-")


def _text(words: str) -> str:
    """Words between quotes; signs that would end them or break the line are escaped."""
    escaped = words.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{_CONTROL.sub(_by_number, escaped)}"'


def _by_number(sign: re.Match[str]) -> str:
    return f"\\x{ord(sign[0]):02x}"
