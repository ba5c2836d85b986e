"""A stand-in for the model and the page of brief G1, made with numpy alone.

Sizes are the brief's; its shapes are plain boxes and bevels, good enough to hang, slide and
look at without the CAD kernel.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Iterable

import numpy as np

from parametric.model import Slide
from parametric.writers.client_page import (
    Amount,
    Chalk,
    Fact,
    PageLeaf,
    PreviewPage,
    Scenery,
    said,
)

WIDTH, HEIGHT, THICK = 1024.5, 2102.0, 40.0
STILE = 120.0
GAP, LAP = 12.0, 50.0
TRAVEL = 904.5  # 1929 - 1024.5
RAILS = ((0, 240), (700, 150), (1371, 90), (1982, 120))
# front faces: planes 34 and 86 off the wall (52 apart), half a thickness before each
FRONT_A, FRONT_B = -106.0, -54.0

Solid = tuple[np.ndarray, np.ndarray, np.ndarray]


def box(x0: float, x1: float, z0: float, z1: float, y0: float, y1: float) -> Solid:
    """A box in a leaf's frame (x right, y away, z up), mm."""
    low = np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]])
    return _faces([(low, z0), (low, z1)])


def frustum(
    x0: float, x1: float, z0: float, z1: float, inset: float, y0: float, y1: float
) -> Solid:
    """A raised field: from the outline at y0 to the outline less `inset` at y1."""
    outer = np.array([[x0, z0], [x1, z0], [x1, z1], [x0, z1]])
    inner = outer + inset * np.array([[1, 1], [-1, 1], [-1, -1], [1, -1]])
    back = np.insert(outer, 1, y0, axis=1)
    front = np.insert(inner, 1, y1, axis=1)
    return _quads([*_ring(back, front), front[::-1] if y1 < y0 else front])


def _faces(levels: list[tuple[np.ndarray, float]]) -> Solid:
    (a, za), (b, zb) = levels
    low, high = np.insert(a, 2, za, axis=1), np.insert(b, 2, zb, axis=1)
    return _quads([*_ring(low, high), low[::-1], high])


def _ring(low: np.ndarray, high: np.ndarray) -> list[np.ndarray]:
    return [np.array([low[i], low[(i + 1) % 4], high[(i + 1) % 4], high[i]]) for i in range(4)]


def _quads(quads: Iterable[np.ndarray]) -> Solid:
    points, normals, triangles = [], [], []
    for quad in quads:
        normal = np.cross(quad[1] - quad[0], quad[2] - quad[0])
        start = len(points) * 4
        points.append(quad)
        normals.append(np.tile(normal / np.linalg.norm(normal), (4, 1)))
        triangles.append([[start, start + 1, start + 2], [start, start + 2, start + 3]])
    return np.concatenate(points), np.concatenate(normals), np.concatenate(triangles)


def leaf_solids(pull: float) -> list[tuple[str, str, Solid]]:
    """(name, look, solid) of every part of a leaf; `pull` is its centre across."""
    inner = (STILE, WIDTH - STILE)
    parts = [
        ("left stile", "timber", box(0, STILE, 0, HEIGHT, 0, THICK)),
        ("right stile", "timber", box(WIDTH - STILE, WIDTH, 0, HEIGHT, 0, THICK)),
    ]
    for foot, wide in RAILS:
        parts.append((f"rail at {foot}", "timber", box(*inner, foot, foot + wide, 0, THICK)))
    parts.append(("panel", "timber", box(*inner, 240, 700, 16, 24)))
    for side, (y0, y1) in {"front": (12.5, 2.5), "back": (27.5, 37.5)}.items():
        parts.append((f"{side} field", "timber", frustum(*inner, 240, 700, 75, y0, y1)))
    for lite, foot in enumerate((850, 1461), start=1):
        head = foot + 521
        parts.append((f"glass {lite}", "glass", box(123, 901.5, foot + 3, head - 3, 17, 23)))
        for y0, y1 in ((3, 16), (24, 37)):
            parts += [
                (f"stop {lite}", "timber", box(*inner, foot, foot + 12, y0, y1)),
                (f"stop {lite}", "timber", box(*inner, head - 12, head, y0, y1)),
                (f"stop {lite}", "timber", box(120, 132, foot + 12, head - 12, y0, y1)),
                (f"stop {lite}", "timber", box(892.5, 904.5, foot + 12, head - 12, y0, y1)),
            ]
    parts.append(("front pull", "metal", box(pull - 21, pull + 21, 908, 1068, -0.4, 1.5)))
    return parts


def standin_glb(name: str = "Larch Hill reading room", travel: float = TRAVEL) -> bytes:
    """The pair of leaves and their tracks, under the names and extras of the contract."""
    binary = bytearray()
    views, accessors, meshes, nodes = [], [], [], []
    looks = {"timber": 0, "glass": 1, "metal": 2, "track": 3}

    def numbers(array: np.ndarray, kind: str, component: int) -> int:
        views.append({"buffer": 0, "byteOffset": len(binary), "byteLength": array.nbytes})
        binary.extend(array.tobytes())
        item = {
            "bufferView": len(views) - 1,
            "componentType": component,
            "count": len(array),
            "type": kind,
        }
        if kind == "VEC3":
            item |= {"min": array.min(axis=0).tolist(), "max": array.max(axis=0).tolist()}
        accessors.append(item)
        return len(accessors) - 1

    def scene(points: np.ndarray) -> np.ndarray:
        return np.stack([points[:, 0], points[:, 2], -points[:, 1]], axis=1)

    def group(called: str, origin: tuple[float, float, float], parts: list, extras: dict) -> int:
        children = []
        for part, look, (points, normals, triangles) in parts:
            meshes.append(
                {
                    "primitives": [
                        {
                            "attributes": {
                                "POSITION": numbers(
                                    (scene(points) / 1000).astype("<f4"), "VEC3", 5126
                                ),
                                "NORMAL": numbers(scene(normals).astype("<f4"), "VEC3", 5126),
                            },
                            "indices": numbers(triangles.astype("<u4").ravel(), "SCALAR", 5125),
                            "material": looks[look],
                        }
                    ]
                }
            )
            nodes.append({"name": f"{called} / {part}", "mesh": len(meshes) - 1})
            children.append(len(nodes) - 1)
        x, y, z = (v / 1000 for v in origin)
        nodes.append(
            {"name": called, "translation": [x, z, -y], "children": children, "extras": extras}
        )
        return len(nodes) - 1

    def leaf(called: str, x: float, front: float, pull: float, far: float) -> int:
        extras = {"role": "leaf", "axis": "x", "travel": [0, far / 1000]}
        return group(called, (x, front, GAP), leaf_solids(pull), extras)

    top = GAP + HEIGHT + 24
    bars = [
        (f"track {i}", "track", box(-LAP, 1879, top, top + 36, front, front + THICK))
        for i, front in enumerate((FRONT_A, FRONT_B))
    ]
    children = [
        leaf("leaf A", -LAP, FRONT_A, 60, travel),
        leaf("leaf B", 1879 - WIDTH, FRONT_B, WIDTH - 60, -travel),
        group("tracks", (0, 0, 0), bars, {"role": "fixed"}),
    ]
    nodes.append({"name": name, "children": children})
    document = {
        "asset": {"version": "2.0"},
        "scene": 0,
        "scenes": [{"nodes": [len(nodes) - 1]}],
        "nodes": nodes,
        "meshes": meshes,
        "materials": [
            {"name": look, "extras": {"look": "metal" if look == "track" else look}}
            for look in looks
        ],
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": len(binary)}],
    }
    text = json.dumps(document).encode()
    text += b" " * (-len(text) % 4)
    body = struct.pack("<I", len(text)) + b"JSON" + text
    body += struct.pack("<I", len(binary)) + b"BIN\0" + bytes(binary)
    return b"glTF" + struct.pack("<II", 2, 12 + len(body)) + body


def elevation() -> str:
    """The two leaves in outline: what the drawing's own SVG will say better."""
    leaves = "".join(
        f'<rect x="{x}" y="0" width="{WIDTH}" height="{HEIGHT}"/>'
        f'<rect x="{x + STILE}" y="120" width="784.5" height="521"/>'
        f'<rect x="{x + STILE}" y="731" width="784.5" height="521"/>'
        f'<rect x="{x + STILE}" y="1402" width="784.5" height="460"/>'
        for x in (0, TRAVEL)
    )
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-40 -60 2009 2262"'
        f' data-zero="{LAP} {GAP + HEIGHT}" data-mm="1">'
        f'<g fill="none" stroke="#18211f" stroke-width="6">{leaves}</g></svg>'
    )


def _amount(figure: str, text: str) -> Amount:
    return Amount(figure=figure, text=text)


FACTS = (
    Fact(
        label="Each door",
        value=said(_amount("leaf A / width", "1024.5"), " wide"),
        note=said(_amount("leaf A / thickness", "40"), " thick"),
        chalk=(
            Chalk(
                start=(-LAP, FRONT_A, 2000),
                end=(-LAP + WIDTH, FRONT_A, 2000),
                text="1024.5",
                leaf="leaf A",
            ),
        ),
    ),
    Fact(
        label="Clear to walk through",
        value=said(_amount("clear way", "852")),
        note=said("Both doors pushed to one side."),
        chalk=(Chalk(start=(2.5, FRONT_A, 1000), end=(854.5, FRONT_A, 1000), text="852"),),
        opened={"leaf A": 1.0, "leaf B": 0.0},
    ),
    Fact(
        label="Gap under the doors",
        value=said(
            _amount("floor gap left", "21"), " left, ", _amount("floor gap right", "12"), " right"
        ),
        note=said("Your floor rises 9 across the opening; the doors hang level."),
        chalk=(
            Chalk(start=(0, FRONT_A, -9), end=(0, FRONT_A, 12), text="21", aside=(110, 90)),
            Chalk(start=(1829, FRONT_A, 0), end=(1829, FRONT_A, 12), text="12", aside=(-110, 90)),
        ),
        walks=True,
    ),
    Fact(label="Each door weighs", value=said(_amount("leaf A / governing weight", "35.2 kg"))),
)


def standin_page(**changes: object) -> PreviewPage:
    """The page of brief G1; change a field to try another."""
    fields: dict[str, object] = {
        "job": "Larch Hill reading room",
        "subtitle": "Sliding pair",
        "revision": "A",
        "mark": "7C1F-04AB",
        "unit": "mm",
        "maker": "a maker of doors",
        "leaves": (
            PageLeaf(
                name="leaf A",
                label="Left door, in front",
                width=WIDTH,
                height=HEIGHT,
                x=-LAP,
                foot=GAP,
                front=FRONT_A,
                thickness=THICK,
                motion=(Slide(direction=(1.0, 0.0, 0.0), travel=TRAVEL),),
                pull=60.0,
                pull_up=1000.0,
            ),
            PageLeaf(
                name="leaf B",
                label="Right door, behind",
                width=WIDTH,
                height=HEIGHT,
                x=1879 - WIDTH,
                foot=GAP,
                front=FRONT_B,
                thickness=THICK,
                motion=(Slide(direction=(1.0, 0.0, 0.0), travel=-TRAVEL),),
                pull=WIDTH - 60,
                pull_up=1000.0,
            ),
        ),
        "opening": ((1.5, -9), (2.5, 1032), (1.5, 2069), (1827.5, 2069), (1826.5, 1032), (1829, 0)),
        "floor": ((0, -9), (914.5, -5), (1829, 0)),
        "wall": 130.0,
        "way": (2.5, 1826.5),
        "clear_way": 852.0,
        "top": 2174.0,
        "facts": FACTS,
        "fingerprint": "7c1f04ab" + "0" * 56,
        "revision_date": "2026-11-19",
        "thing": said("Two, ", _amount("leaf A / width", "1024.5"), " wide, sliding"),
        "ticks": (
            said("I have seen the gap of ", _amount("floor gap left", "21"), " at the left."),
            said("I will choose the colour from a real sample."),
        ),
        "scenery": Scenery(
            skirting_clear=(-LAP, 1879.0),
            brackets=tuple(
                (x, front + THICK / 2, GAP + HEIGHT)
                for front in (FRONT_A, FRONT_B)
                for x in (-40.0, 914.5, 1869.0)
            ),
        ),
        "elevation_svg": elevation(),
    }
    return PreviewPage(**(fields | changes))  # type: ignore[arg-type]
