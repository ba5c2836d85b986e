"""An independent reader of machine files, for the tests.

It shares nothing with the writer and uses no DXF library: it takes the group codes apart
itself, works areas by Green's theorem along the edges, and finds out what lies inside
what from the picture alone. Every rule of the contract that a file can break is a fault
here.

Source of the codes: the published DXF reference, LWPOLYLINE (8 layer, 38 elevation,
70 bit 1 closed, 90 vertices, 10/20 point, 42 bulge), TEXT (1), HEADER; `$INSUNITS` 4 is
the millimetre, `$MEASUREMENT` 1 is metric.
"""

from __future__ import annotations

import dataclasses
import itertools
import math
import re
from collections import Counter
from dataclasses import dataclass

Point = tuple[float, float]
Edge = tuple[Point, Point, float]
Box = tuple[float, float, float, float]

NEAR = 1e-5
PLAIN_LAYERS = ("stock", "datum", "notes")
NUMBER = r"\d+(?:\.\d+)?"
LAYER = re.compile(rf"(?:(?P<kind>slot|pocket|groove|bore)_d(?P<depth>{NUMBER})|cut_through)")
USE = re.compile(
    rf"(?P<layer>(?:slot|pocket|groove|bore)_d{NUMBER}|cut_through): (?P<count>\d+) off, "
    rf"cutter (?P<cutter>{NUMBER}), depth (?P<depth>{NUMBER})"
)


class Fault(Exception):  # noqa: N818 - what is wrong with the file, not with this reader
    """The file breaks the contract; the text says every way it does."""


@dataclass(frozen=True)
class Outline:
    layer: str
    elevation: float
    edges: tuple[Edge, ...]

    @property
    def area(self) -> float:
        """Signed: counter-clockwise is positive. Half the integral of x dy - y dx."""
        return sum(_swept(edge) for edge in self.edges) / 2

    @property
    def box(self) -> Box:
        points = [p for edge in self.edges for p in flattened(edge, 360)]
        xs, ys = zip(*points, strict=True)
        return (min(xs), min(ys), max(xs), max(ys))

    @property
    def polygon(self) -> list[Point]:
        return [p for edge in self.edges for p in flattened(edge, 24)[:-1]]


@dataclass(frozen=True)
class Removal:
    """One outline with what it takes from the stock: `floor` down from `begins`, mm."""

    layer: str
    kind: str
    begins: float
    floor: float
    area: float
    box: Box
    cutter: float
    smallest_corner: float | None

    @property
    def volume(self) -> float:
        return self.area * (self.floor - self.begins)

    @property
    def centre(self) -> Point:
        return ((self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2)


@dataclass(frozen=True)
class MachineFile:
    length: float
    width: float
    thickness: float
    words: str
    removals: tuple[Removal, ...]

    @property
    def volume(self) -> float:
        return sum(r.volume for r in self.removals)

    def on(self, layer: str) -> tuple[Removal, ...]:
        return tuple(r for r in self.removals if r.layer == layer)


def tags_of(data: bytes) -> list[tuple[int, str]]:
    lines = data.decode("utf-8").splitlines()
    if len(lines) % 2:
        raise Fault("an odd number of lines")
    return [(int(c), v) for c, v in zip(lines[::2], lines[1::2], strict=True)]


def sections_of(tags: list[tuple[int, str]]) -> dict[str, list[tuple[int, str]]]:
    sections: dict[str, list[tuple[int, str]]] = {}
    name = ""
    for (code, value), (_, following) in itertools.pairwise([*tags, (0, "")]):
        if (code, value) == (0, "SECTION"):
            name = following
            sections[name] = []
        elif (code, value) == (0, "ENDSEC"):
            name = ""
        elif name:
            sections[name].append((code, value))
    return sections


def records_of(section: list[tuple[int, str]]) -> list[list[tuple[int, str]]]:
    records: list[list[tuple[int, str]]] = []
    for tag in section:
        if tag[0] == 0:
            records.append([tag])
        elif records:
            records[-1].append(tag)
    return records


def header_of(section: list[tuple[int, str]]) -> dict[str, list[float | str]]:
    header: dict[str, list[float | str]] = {}
    name = ""
    for code, value in section:
        if code == 9:
            name = value
            header[name] = []
        elif name:
            header[name].append(value if code < 10 else float(value) if code < 80 else value)
    return header


def read(data: bytes) -> MachineFile:
    """Read one machine file and hold it against the contract.

    Raises:
        Fault: naming everything that is wrong with it.
    """
    sections = sections_of(tags_of(data))
    faults = _unit_faults(sections)
    outlines: list[Outline] = []
    words: list[str] = []
    for record in records_of(sections["ENTITIES"]):
        kind = record[0][1]
        layer = _one(record, 8)
        if (67, "1") in [(c, v.strip()) for c, v in record]:
            faults.append(f"a {kind} lies on a paper layout")
        if kind == "LWPOLYLINE":
            outlines.append(_outline(record, layer, faults))
        elif kind == "TEXT" and layer == "notes":
            words.append(_one(record, 1))
        else:
            faults.append(f"a {kind} on layer {layer}")
    for record in records_of(sections["BLOCKS"]):
        if record[0][1] not in ("BLOCK", "ENDBLK"):
            faults.append(f"a {record[0][1]} inside a block")
    faults += _doubled(outlines)
    stock = [o for o in outlines if o.layer == "stock"]
    if len(stock) != 1:
        raise Fault("; ".join([*faults, f"{len(stock)} stock outlines"]))
    text = " ".join(words)
    length, width, thickness = _stock(stock[0], sections, text, faults)
    datum = [o for o in outlines if o.layer == "datum"]
    if len(datum) != 1 or not any(math.dist(p, (0, 0)) < NEAR for p, _, _ in datum[0].edges):
        faults.append("the datum is not drawn at 0;0")
    cuts = [o for o in outlines if o.layer not in PLAIN_LAYERS]
    removals = _removals(cuts, (length, width, thickness), text, faults)
    if faults:
        raise Fault("; ".join(faults))
    return MachineFile(length, width, thickness, text, removals)


def _one(record: list[tuple[int, str]], code: int, default: str | None = None) -> str:
    found = [v for c, v in record if c == code]
    if not found and default is not None:
        return default
    if len(found) != 1:
        raise Fault(f"{record[0][1]} has {len(found)} codes {code}")
    return found[0]


def _unit_faults(sections: dict[str, list[tuple[int, str]]]) -> list[str]:
    header = header_of(sections["HEADER"])

    def number(name: str) -> int:
        values = header.get(name, ["-1"])
        return int(values[0])

    faults = []
    if number("$INSUNITS") != 4:
        faults.append(f"$INSUNITS is {number('$INSUNITS')}, not 4 (mm)")
    if number("$MEASUREMENT") != 1:
        faults.append(f"$MEASUREMENT is {number('$MEASUREMENT')}, not 1 (metric)")
    return faults


def _outline(record: list[tuple[int, str]], layer: str, faults: list[str]) -> Outline:
    points: list[Point] = []
    bulges: list[float] = []
    for code, value in record:
        if code == 10:
            points.append((float(value), math.nan))
            bulges.append(0.0)
        elif code == 20:
            points[-1] = (points[-1][0], float(value))
        elif code == 42:
            bulges[-1] = float(value)
    if int(_one(record, 90)) != len(points):
        faults.append(f"{layer}: {len(points)} vertices where {_one(record, 90)} are said")
    if not int(_one(record, 70, "0")) & 1:
        faults.append(f"{layer}: an open outline")
    following = points[1:] + points[:1]
    edges = tuple(zip(points, following, bulges, strict=True))
    if any(math.dist(a, b) < NEAR for a, b, _ in edges):
        faults.append(f"{layer}: two vertices in one place")
    outline = Outline(layer, float(_one(record, 38, "0")), edges)
    if outline.area <= NEAR:
        faults.append(f"{layer}: an outline that runs clockwise or encloses nothing")
    return outline


def arc_of(edge: Edge) -> tuple[Point, float, float, float]:
    """Centre, radius, start angle and signed sweep of a bulged edge, radians."""
    (x0, y0), (x1, y1), bulge = edge
    sweep = 4 * math.atan(bulge)
    chord = math.hypot(x1 - x0, y1 - y0)
    radius = chord / 2 / abs(math.sin(sweep / 2))
    # from the middle of the chord to the centre, to the left of a counter-clockwise arc
    off = chord / 2 / math.tan(sweep / 2)
    centre = (
        (x0 + x1) / 2 - off * (y1 - y0) / chord,
        (y0 + y1) / 2 + off * (x1 - x0) / chord,
    )
    return centre, radius, math.atan2(y0 - centre[1], x0 - centre[0]), sweep


def flattened(edge: Edge, steps: int) -> list[Point]:
    if edge[2] == 0:
        return [edge[0], edge[1]]
    (cx, cy), radius, start, sweep = arc_of(edge)
    turned = [start + sweep * i / steps for i in range(steps + 1)]
    return [(cx + radius * math.cos(a), cy + radius * math.sin(a)) for a in turned]


def _swept(edge: Edge) -> float:
    (x0, y0), (x1, y1), bulge = edge
    if bulge == 0:
        return x0 * y1 - x1 * y0
    (cx, cy), radius, _, sweep = arc_of(edge)
    return radius**2 * sweep + cx * (y1 - y0) - cy * (x1 - x0)


def _doubled(outlines: list[Outline]) -> list[str]:
    """Edges that lie on one another: among the cuts, and among the rest layer by layer."""
    faults = []
    tagged = [
        (o.layer if o.layer in PLAIN_LAYERS else "cut", o.layer, edge)
        for o in outlines
        for edge in o.edges
    ]
    for (a_set, a_layer, a), (b_set, b_layer, b) in itertools.combinations(tagged, 2):
        if a_set == b_set and _overlap(a, b):
            faults.append(f"a doubled line on {a_layer} and {b_layer} at {a[0]}")
    return faults


def _overlap(a: Edge, b: Edge) -> bool:
    if (a[2] == 0) != (b[2] == 0):
        return False
    if a[2]:
        ends = {(round(x, 4), round(y, 4)) for x, y in (a[0], a[1])}
        others = {(round(x, 4), round(y, 4)) for x, y in (b[0], b[1])}
        middle, other = flattened(a, 2)[1], flattened(b, 2)[1]
        return ends == others and math.dist(middle, other) < NEAR
    length = math.dist(a[0], a[1])
    along = ((a[1][0] - a[0][0]) / length, (a[1][1] - a[0][1]) / length)

    def aside(p: Point) -> float:
        return abs((p[0] - a[0][0]) * along[1] - (p[1] - a[0][1]) * along[0])

    def far(p: Point) -> float:
        return (p[0] - a[0][0]) * along[0] + (p[1] - a[0][1]) * along[1]

    if aside(b[0]) > NEAR or aside(b[1]) > NEAR:
        return False
    low, high = sorted((far(b[0]), far(b[1])))
    return min(high, length) - max(low, 0.0) > NEAR


def _stock(
    stock: Outline, sections: dict[str, list[tuple[int, str]]], text: str, faults: list[str]
) -> tuple[float, float, float]:
    x0, y0, length, width = stock.box
    if (x0, y0) != (0.0, 0.0) or abs(stock.area - length * width) > NEAR * length:
        faults.append(f"the stock is no rectangle from 0;0 but {stock.box}")
    header = header_of(sections["HEADER"])
    extents = (*header["$EXTMIN"][:2], *header["$EXTMAX"][:2])
    if any(abs(float(a) - b) > NEAR for a, b in zip(extents, stock.box, strict=True)):
        faults.append(f"the extents {extents} are not those of the stock {stock.box}")
    said = re.search(rf"stock ({NUMBER}) x ({NUMBER}), ({NUMBER}) thick", text)
    if said is None:
        raise Fault("; ".join([*faults, "no word of the stock"]))
    if abs(float(said[1]) - length) > 6e-4 or abs(float(said[2]) - width) > 6e-4:
        faults.append(f"the stock is said to be {said[1]} x {said[2]}, drawn {length} x {width}")
    if "unit mm" not in text:
        faults.append("the unit is not said")
    return length, width, float(said[3])


def _removals(
    cuts: list[Outline], stock: tuple[float, float, float], text: str, faults: list[str]
) -> tuple[Removal, ...]:
    length, width, thickness = stock
    said = {m["layer"]: m for m in USE.finditer(text)}
    counted = Counter(c.layer for c in cuts)
    removals = []
    for cut in cuts:
        name = LAYER.fullmatch(cut.layer)
        if name is None:
            faults.append(f"layer {cut.layer} is not named by the contract")
            continue
        depth = -cut.elevation
        by_name = thickness if name["depth"] is None else float(name["depth"])
        if abs(by_name - depth) > 6e-4:
            faults.append(f"layer {cut.layer} lies at {cut.elevation}")
        if not 0 < depth <= thickness + NEAR:
            faults.append(f"{cut.layer} is {depth} deep in {thickness}")
        x0, y0, x1, y1 = cut.box
        if min(x0, y0) < -NEAR or x1 > length + NEAR or y1 > width + NEAR:
            faults.append(f"{cut.layer} leaves the stock: {cut.box}")
        words = said.get(cut.layer)
        if words is None:
            faults.append(f"no word of {cut.layer}")
            continue
        if int(words["count"]) != counted[cut.layer]:
            faults.append(f"{cut.layer}: {words['count']} said, {counted[cut.layer]} drawn")
        if abs(float(words["depth"]) - depth) > 6e-4:
            faults.append(f"{cut.layer}: depth {words['depth']} said, {depth} drawn")
        cutter = float(words["cutter"])
        open_note = "open at" in text
        smallest = _smallest_corner(cut, cutter, (length, width), open_note, faults)
        removals.append(
            Removal(
                layer=cut.layer,
                kind=name["kind"] or "cut_through",
                begins=0.0,
                floor=depth,
                area=cut.area,
                box=cut.box,
                cutter=cutter,
                smallest_corner=smallest,
            )
        )
    if faults:
        return ()
    return _nested(cuts, removals, faults)


def _smallest_corner(
    cut: Outline, cutter: float, size: Point, open_note: bool, faults: list[str]
) -> float | None:
    """Inside corners against the cutter; a square one must be where the cut runs out."""
    radii = [arc_of(edge)[1] for edge in cut.edges if edge[2]]
    if radii and min(radii) < cutter / 2 - NEAR:
        faults.append(f"{cut.layer}: a corner of r {min(radii):.3f} for a cutter of {cutter}")
    x0, y0, x1, y1 = cut.box
    if min(x1 - x0, y1 - y0) < cutter - NEAR:
        faults.append(f"{cut.layer}: narrower than its cutter of {cutter}")
    previous = cut.edges[-1:] + cut.edges[:-1]
    for before, after in zip(previous, cut.edges, strict=True):
        if before[2] or after[2]:
            continue
        x, y = after[0]
        at_edge = min(abs(x), abs(x - size[0]), abs(y), abs(y - size[1])) < NEAR
        if not (at_edge or open_note):
            faults.append(f"{cut.layer}: a square inside corner at {x}; {y}")
    return min(radii, default=None)


def _nested(cuts: list[Outline], removals: list[Removal], faults: list[str]) -> tuple[Removal, ...]:
    """Let each cut begin at the floor of the one it lies in; two that cross are a fault."""
    polygons = [c.polygon for c in cuts]
    found = list(removals)
    for i, inner in enumerate(removals):
        around = []
        for j, outer in enumerate(removals):
            if i == j or not _boxes_meet(inner.box, outer.box):
                continue
            inside = [_inside(p, polygons[j]) for p in polygons[i]]
            if all(inside):
                around.append(outer.floor)
            elif any(inside) or _cross(polygons[i], polygons[j]):
                faults.append(f"{inner.layer} and {outer.layer} cross")
        begins = max(around, default=0.0)
        if begins >= inner.floor:
            faults.append(f"{inner.layer} lies in a cut that is already {begins} deep")
        found[i] = dataclasses.replace(inner, begins=begins)
    return tuple(found)


def _boxes_meet(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _inside(p: Point, polygon: list[Point]) -> bool:
    odd = False
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        if (y0 > p[1]) != (y1 > p[1]) and p[0] < x0 + (p[1] - y0) * (x1 - x0) / (y1 - y0):
            odd = not odd
    return odd


def _cross(a: list[Point], b: list[Point]) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    for p, q in zip(a, a[1:] + a[:1], strict=True):
        for r, s in zip(b, b[1:] + b[:1], strict=True):
            if side(p, q, r) * side(p, q, s) < 0 and side(r, s, p) * side(r, s, q) < 0:
                return True
    return False


Vec = tuple[float, float, float]


def into_part(file: MachineFile, removal: Removal, normal: Vec, along: Vec) -> tuple[Vec, Vec]:
    """The box in the part that a removal takes, from first principles.

    The cutter looks down the face's outward `normal`; the file's x is `along`, which is the
    part's length, or its width on an end; y completes a right-handed three, x × y = normal.
    The file's origin is the corner of that face furthest back along its own x and y.

    Args:
        file: the machine file.
        removal: one of its removals.
        normal: unit vector out of the wood, in the part.
        along: unit vector of the file's x, in the part.
    """
    up = _cross_product(normal, along)
    size = tuple(
        abs(along[i]) * file.length + abs(up[i]) * file.width + abs(normal[i]) * file.thickness
        for i in range(3)
    )
    origin = [size[i] if along[i] + up[i] < 0 or normal[i] > 0 else 0.0 for i in range(3)]

    def place(x: float, y: float, depth: float) -> Vec:
        return (
            origin[0] + x * along[0] + y * up[0] - depth * normal[0],
            origin[1] + x * along[1] + y * up[1] - depth * normal[1],
            origin[2] + x * along[2] + y * up[2] - depth * normal[2],
        )

    x0, y0, x1, y1 = removal.box
    a, b = place(x0, y0, removal.begins), place(x1, y1, removal.floor)
    low = tuple(min(p, q) for p, q in zip(a, b, strict=True))
    high = tuple(max(p, q) for p, q in zip(a, b, strict=True))
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def amiss(
    file: MachineFile,
    *,
    size: Vec,
    normal: Vec,
    along: Vec,
    expected: list[tuple[Vec, Vec, float]],
) -> list[str]:
    """What a file does to one face of a part that it should not, or leaves undone.

    Args:
        file: the machine file.
        size: the blank's length, width and thickness, mm.
        normal: unit vector out of the face, in the part.
        along: unit vector of the file's x, in the part.
        expected: low corner, high corner and volume of every cut in that face.
    """
    lying = (file.length, file.width, file.thickness)
    up = _cross_product(normal, along)
    standing = tuple(
        sum(abs(w[i]) * side for w, side in zip((along, up, normal), lying, strict=True))
        for i in range(3)
    )
    if any(abs(a - b) > NEAR for a, b in zip(standing, size, strict=True)):
        return [f"a blank of {standing} where the part has {size}"]
    wanted = Counter(_rounded(low, high, volume) for low, high, volume in expected)
    made = Counter(
        _rounded(*into_part(file, removal, normal, along), removal.volume)
        for removal in file.removals
    )
    return [f"not cut: {w}" for w in (wanted - made).elements()] + [
        f"cut, but not in the part: {m}" for m in (made - wanted).elements()
    ]


def _rounded(low: Vec, high: Vec, volume: float) -> tuple[tuple[float, ...], float]:
    return tuple(round(a, 3) + 0.0 for a in (*low, *high)), round(volume, 1)


def _cross_product(a: Vec, b: Vec) -> Vec:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )
