"""One machine file read back, and every way in which it breaks the contract by itself.

The contract: millimetres, said in the header and in words; closed outlines of straight
lines and true arcs, counter-clockwise, none doubled, none crossing; the layer names the
kind and the depth, and lies at that depth; the stock drawn from 0;0 with the datum's mark
on it; the piece, the face up, the cutters and what lies along both axes said in words.

Source: the published DXF reference. LWPOLYLINE: 8 layer, 38 elevation, 70 bit 1 closed,
90 corners, 10/20 corner, 42 bulge, 210/220/230 direction; TEXT: 1 words; `$INSUNITS` 4 is
the millimetre, `$MEASUREMENT` 1 is metric; a layer is off when its colour (62) is
negative, frozen when bit 1 of its flags (70) is set.

Which words name which layer is the workshop's own choice, and part of what is known.
"""

from __future__ import annotations

import dataclasses
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from parametric.catalog.layer_names import LayerNames
from parametric.pack.verifying.dxf_tags import DxfFile, Record, UnreadableError, read_dxf
from parametric.pack.verifying.layers_read import layer_pattern, read_layer
from parametric.pack.verifying.outlines import (
    Bounds,
    Outline,
    Point,
    closed_outline,
    crosses,
    doubled,
    holds,
)

NEAR = 1e-4
"""Nearer than this is the same place, mm: coordinates are written to 1e-6."""
PRINTED = 6e-4
"""Depths and sizes in words are printed to a thousandth, mm."""

_N = r"\d+(?:\.\d+)?"
_USE = (
    rf"(?P<layer>%s): (?P<count>\d+) off, "
    rf"cutter (?P<cutter>{_N}), depth (?P<depth>{_N})(?:, corner r (?P<corner>{_N}))?"
)
_PIECE = (
    r"^(?P<title>.+), (?P<face>[^,]+) face up (?P<count>\d+) off: (?P<names>.+?) unit mm, "
    rf"depths from the surface of the stock stock (?P<length>{_N}) x (?P<width>{_N}), "
    rf"(?P<thickness>{_N}) thick datum 0;0 lower left: x along the (?P<along>.+?) from the "
    r"(?P<x_from>.+?), y from the (?P<y_from>.+?) "
    r"(?=%s:|outlines are )"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """One outline with what it takes from the stock: from `begins` down to `floor`, mm."""

    layer: str
    kind: str
    outline: Outline
    begins: float
    floor: float

    @property
    def volume(self) -> float:
        """mm3."""
        return self.outline.area * (self.floor - self.begins)


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What the words say of one layer."""

    count: int
    cutter: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineFile:
    """One set-up as its file tells it."""

    name: str
    title: str
    names: tuple[str, ...]
    face_up: str
    x_from: str
    y_from: str
    length: float
    width: float
    thickness: float
    words: str
    uses: dict[str, Use]
    taken: tuple[Taken, ...]
    faults: tuple[str, ...]


def read_machine_file(
    name: str,
    data: bytes,
    layers: LayerNames,
    shoulders: Mapping[str, tuple[float, float, float]] = MappingProxyType({}),
) -> MachineFile:
    """Read one machine file.

    Args:
        name: of the file.
        data: what it holds.
        layers: how the workshop names layers.
        shoulders: by piece, how much of either end lies past a shoulder, and its length, mm.

    Raises:
        UnreadableError: it cannot be taken apart, draws no stock or does not say what it is.
    """
    file = read_dxf(data)
    faults = [*_units(file), *_strangers(file, layers), *_layers(file)]
    outlines = [(r, _outline(r, faults)) for r in file.entities if r.kind == "LWPOLYLINE"]
    words = _words(file, layers)
    piece = re.match(_PIECE % layer_pattern(layers), words)
    if piece is None:
        raise UnreadableError("it does not say in words which piece lies how")
    plain = (layers.stock, layers.datum, layers.notes)
    faults += _doubled(outlines, plain)
    stock = [o for r, o in outlines if r.text(8) == layers.stock]
    length, width = _stock(file, stock, piece, faults)
    thickness = float(piece["thickness"])
    _datum([o for r, o in outlines if r.text(8) == layers.datum], faults)
    uses = _uses(words, layers)
    names = tuple(n.strip() for n in piece["names"].split(","))
    low, high, long = shoulders.get(names[0], (0.0, 0.0, length))
    if abs(long - length) > NEAR:
        low = high = 0.0
    taken = _taken(
        [(r, o) for r, o in outlines if r.text(8) not in plain],
        (length, width, thickness),
        (low, 0.0, length - high, width),
        uses,
        layers,
        faults,
    )
    if int(piece["count"]) != len(names):
        faults.append(f"{piece['count']} off are said, {len(names)} pieces named")
    return MachineFile(
        name=name,
        title=piece["title"],
        names=names,
        face_up=piece["face"],
        x_from=piece["x_from"],
        y_from=piece["y_from"],
        length=length,
        width=width,
        thickness=thickness,
        words=words,
        uses=uses,
        taken=taken,
        faults=tuple(faults),
    )


def _units(file: DxfFile) -> list[str]:
    faults = []
    if file.variable("$INSUNITS") != "4":
        faults.append(f"the header's unit is {file.variable('$INSUNITS') or 'missing'}, not 4 (mm)")
    if file.variable("$MEASUREMENT") != "1":
        faults.append("the header does not say metric")
    return faults


def _strangers(file: DxfFile, layers: LayerNames) -> list[str]:
    """Everything that is no outline and no word of ours."""
    faults = []
    for record in file.entities:
        layer = record.text(8)
        known = record.kind == "LWPOLYLINE" or (record.kind == "TEXT" and layer == layers.notes)
        if not known:
            faults.append(f"a {record.kind} on layer {layer}")
        elif record.whole(67):
            faults.append(f"a {record.kind} of layer {layer} lies on a paper layout")
    for name, records in file.blocks.items():
        faults += [f"a {record.kind} in the block {name}" for record in records]
    return faults


def _layers(file: DxfFile) -> list[str]:
    """Layers that are drawn on must be there and be seen."""
    known = {r.text(2): r for r in file.tables if r.kind == "LAYER"}
    faults = []
    for layer in dict.fromkeys(r.text(8) for r in file.entities):
        entry = known.get(layer)
        if entry is None:
            faults.append(f"layer {layer} is in no table")
        elif entry.whole(62, 7) < 0 or entry.whole(70) & 1:
            faults.append(f"layer {layer} is switched off or frozen")
    return faults


def _outline(record: Record, faults: list[str]) -> Outline:
    layer = record.text(8)
    corners = record.corners()
    if len(corners) < 2:
        raise UnreadableError(f"an outline on layer {layer} has {len(corners)} corners")
    if record.whole(90) != len(corners):
        faults.append(f"{layer}: {len(corners)} corners where {record.text(90)} are said")
    if not record.whole(70) & 1:
        faults.append(f"{layer}: an outline is open")
    if (record.number(210), record.number(220), record.number(230, 1.0)) != (0.0, 0.0, 1.0):
        faults.append(f"{layer}: an outline is drawn in a plane that is tilted or turned over")
    outline = closed_outline(corners)
    if any(math.dist(edge.a, edge.b) <= NEAR for edge in outline.edges):
        faults.append(f"{layer}: two corners of an outline lie in one place")
    if outline.area <= NEAR:
        faults.append(f"{layer}: an outline runs clockwise or holds nothing")
    return outline


def _words(file: DxfFile, layers: LayerNames) -> str:
    """The notes from the top down as one line."""
    rows = [r for r in file.entities if r.kind == "TEXT" and r.text(8) == layers.notes]
    rows.sort(key=lambda r: (-r.point(10)[1], r.point(10)[0]))
    return " ".join(" ".join(r.text(1) for r in rows).replace("|", " ").split())


def _doubled(outlines: Sequence[tuple[Record, Outline]], plain: Sequence[str]) -> list[str]:
    """Edges that lie on one another: among the cuts, and on each other layer by itself."""
    sets: dict[str, list[Outline]] = {}
    for record, outline in outlines:
        layer = record.text(8)
        sets.setdefault(layer if layer in plain else "cuts", []).append(outline)
    return [
        f"{which}: a line is doubled at {x:g};{y:g}"
        for which, group in sets.items()
        for x, y in doubled(group, NEAR)
    ]


def _stock(
    file: DxfFile, drawn: Sequence[Outline], piece: re.Match[str], faults: list[str]
) -> tuple[float, float]:
    """The stock's length and width: one rectangle from 0;0, as said and as the header says."""
    if len(drawn) != 1:
        raise UnreadableError(f"the stock is drawn {len(drawn)} times")
    x0, y0, x1, y1 = drawn[0].bounds
    if max(abs(x0), abs(y0)) > NEAR:
        faults.append(f"the stock begins at {x0:g};{y0:g} and not at the datum 0;0")
    if abs(drawn[0].area - (x1 - x0) * (y1 - y0)) > NEAR * (x1 - x0):
        faults.append("the stock is no rectangle")
    length, width = x1 - x0, y1 - y0
    said = (float(piece["length"]), float(piece["width"]))
    if max(abs(said[0] - length), abs(said[1] - width)) > PRINTED:
        faults.append(f"the stock is drawn {length:g} x {width:g}, said {said[0]:g} x {said[1]:g}")
    low, high = file.header.get("$EXTMIN", ()), file.header.get("$EXTMAX", ())
    extents = [float(value) for value in (*low[:2], *high[:2])]
    if len(extents) != 4 or any(
        abs(a - b) > NEAR for a, b in zip(extents, (x0, y0, x1, y1), strict=True)
    ):
        faults.append("the header's extents are not those of the stock")
    return length, width


def _datum(drawn: Sequence[Outline], faults: list[str]) -> None:
    """One mark whose point stands on 0;0 and which lies in the lower left corner."""
    if len(drawn) != 1:
        faults.append(f"the datum is marked {len(drawn)} times")
        return
    on_it = any(math.dist(edge.a, (0.0, 0.0)) <= NEAR for edge in drawn[0].edges)
    x0, y0, _, _ = drawn[0].bounds
    if not on_it or min(x0, y0) < -NEAR:
        x, y = min((edge.a for edge in drawn[0].edges), key=lambda p: math.hypot(*p))
        faults.append(f"the datum's mark stands at {x:g};{y:g}, not at 0;0")


def _uses(words: str, layers: LayerNames) -> dict[str, Use]:
    return {
        said["layer"]: Use(
            count=int(said["count"]), cutter=float(said["cutter"]), depth=float(said["depth"])
        )
        for said in re.finditer(_USE % layer_pattern(layers), words)
    }


def _taken(
    drawn: Sequence[tuple[Record, Outline]],
    stock: tuple[float, float, float],
    wood: Bounds,
    uses: dict[str, Use],
    layers: LayerNames,
    faults: list[str],
) -> tuple[Taken, ...]:
    found: list[Taken] = []
    for record, outline in drawn:
        layer = record.text(8)
        name = read_layer(layer, layers)
        if name is None:
            faults.append(f"layer {layer} says no kind of cut and no depth")
            continue
        floor = -record.number(38)
        said = stock[2] if name.depth is None else name.depth
        if abs(said - floor) > NEAR:
            faults.append(f"{layer}: lies {floor:g} deep, and its name says {said:g}")
        if not 0 < floor <= stock[2] + PRINTED:
            faults.append(f"{layer}: is {floor:g} deep in {stock[2]:g} of wood")
        if not _inside(outline.bounds, stock):
            faults.append(f"{layer}: reaches out of the stock, to {_to(outline.bounds)}")
        found.append(
            Taken(
                layer=layer,
                kind=name.kind,
                outline=outline,
                begins=0.0,
                floor=floor,
            )
        )
    _said(found, uses, layers, wood, faults)
    return _nested(found, faults)


def _inside(bounds: Bounds, stock: tuple[float, float, float]) -> bool:
    x0, y0, x1, y1 = bounds
    return min(x0, y0) >= -NEAR and x1 <= stock[0] + NEAR and y1 <= stock[1] + NEAR


def _to(bounds: Bounds) -> str:
    return "{:g};{:g} to {:g};{:g}".format(*bounds)


def _said(
    found: Sequence[Taken],
    uses: dict[str, Use],
    layers: LayerNames,
    wood: Bounds,
    faults: list[str],
) -> None:
    """What the words say of each layer, against what is drawn on it."""
    on: dict[str, list[Taken]] = {}
    for taken in found:
        on.setdefault(taken.layer, []).append(taken)
    for layer in dict.fromkeys((*on, *uses)):
        drawn, said = on.get(layer, []), uses.get(layer)
        if said is None:
            faults.append(f"{layer}: no words say its cutter")
            continue
        named = read_layer(layer, layers)
        if named is not None and named.cutter not in (None, said.cutter):
            faults.append(f"{layer}: the words say a cutter of {said.cutter:g}")
        if said.count != len(drawn):
            faults.append(f"{layer}: {len(drawn)} drawn, {said.count} said")
        for taken in drawn:
            if abs(said.depth - taken.floor) > PRINTED:
                faults.append(
                    f"{layer}: lies {taken.floor:g} deep, and the words say {said.depth:g}"
                )
            x0, y0, x1, y1 = taken.outline.bounds
            fits = min(x1 - x0, y1 - y0)
            if taken.kind in ("pocket", "cut_through"):
                # these may have any shape, and run out of the stock
                fits = taken.outline.narrowest(wood, NEAR)
            if taken.outline.smallest_corner:
                fits = min(fits, 2 * taken.outline.smallest_corner)
            if said.cutter > fits + PRINTED:
                faults.append(
                    f"{layer}: a cutter of {said.cutter:g} does not go where {fits:g} fits"
                )


def _nested(found: Sequence[Taken], faults: list[str]) -> tuple[Taken, ...]:
    """Let each cut begin at the floor of the one it lies in; two that cross are a fault."""
    flat: list[list[Point]] = [taken.outline.flat() for taken in found]
    boxes = [taken.outline.bounds for taken in found]
    nested = []
    for i, inner in enumerate(found):
        floors = [0.0]
        for j, outer in enumerate(found):
            if i == j or not _meet(boxes[i], boxes[j]):
                continue
            inside = [holds(flat[j], point) for point in flat[i]]
            if all(inside):
                floors.append(outer.floor)
            elif i < j and (any(inside) or crosses(flat[i], flat[j])):
                around = all(holds(flat[i], point) for point in flat[j])
                if not around:
                    faults.append(f"{inner.layer} and {outer.layer} cross")
        begins = max(floors)
        if begins >= inner.floor:
            faults.append(f"{inner.layer}: lies in a cut that is already {begins:g} deep")
        nested.append(dataclasses.replace(inner, begins=begins))
    return tuple(nested)


def _meet(a: Bounds, b: Bounds) -> bool:
    return a[0] < b[2] - NEAR and b[0] < a[2] - NEAR and a[1] < b[3] - NEAR and b[1] < a[3] - NEAR
