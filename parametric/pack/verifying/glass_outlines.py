"""Outlines of shaped panes against the panes themselves: what a glazier's machine would cut.

The file must hold one closed outline on its layer, at 0;0 and in millimetres, and nothing
else that could be cut; seen from the front as the first pane of its size stands. What is
asked is worked out from the pane as a part: its rectangle, what is cut off it, and where it
stands in its leaf.

Source: the published DXF reference. LWPOLYLINE: 8 layer, 10/20 corner, 42 bulge, 70 bit 1
closed, 38 elevation, 210/220/230 direction; TEXT: 1 words; `$INSUNITS` 4 is the millimetre.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping, Sequence

from parametric.model import Part, Shaped
from parametric.pack.verifying.dxf_tags import DxfFile, Record, UnreadableError, read_dxf
from parametric.pack.verifying.known import Known, Verdict, in_file
from parametric.pack.verifying.outlines import Edge, Outline, closed_outline

NEAR = 1e-5
"""Nearer than this is the same place, mm: coordinates are written to 1e-6."""
SAME_BULGE = 1e-9
_PRINTED = 0.0051
"""Sizes in words are printed to a hundredth, mm."""
_PATH = re.compile(r"order/glass-(?P<mark>.+)\.dxf")
_LAYER, _WORDS = "glass", "notes"
_N = r"(\d+(?:\.\d+)?)"


def outline_paths(files: Mapping[str, bytes]) -> dict[str, str]:
    """The files of outlines by the mark that their names say."""
    return {found["mark"]: path for path in files if (found := _PATH.fullmatch(path))}


def shaped_panes(known: Known) -> dict[str, list[Part]]:
    """The panes that are no rectangle, by their mark."""
    return {
        mark: parts
        for mark, parts in known.made().items()
        if parts[0].material.look == "glass" and _cuts(parts[0])
    }


def check_glass_outlines(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold every outline against the panes of its mark.

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    asked, there = shaped_panes(known), outline_paths(files)
    faults = [f"order/glass-{mark}.dxf is missing" for mark in asked if mark not in there]
    for mark, path in there.items():
        if mark not in asked:
            faults.append(f"{path}: {mark} is no shaped pane")
            continue
        try:
            faults += in_file(path, _file(read_dxf(files[path]), mark, asked[mark]))
        except (UnreadableError, ValueError) as error:
            faults.append(f"{path}: cannot be read back: {error}")
    return Verdict(looked_at={"outlines": len(there)}, faults=tuple(faults))


def _cuts(part: Part) -> list[Shaped]:
    """What is cut off a pane; both its broad faces are read from the same corner."""
    broad = ("low face", "high face")
    return [cut for cut in part.cuts if isinstance(cut, Shaped) and cut.face in broad]


# --- what is asked -------------------------------------------------------------------------


def _from_front(part: Part, u: float, v: float) -> tuple[float, float]:
    """A place on a pane's broad face, across and up from the low left corner of its rectangle."""
    xs, ys = part.placement.x, part.placement.y
    corners = [
        (a, b) for a in (0.0, float(part.blank.length)) for b in (0.0, float(part.blank.width))
    ]

    def at(a: float, b: float) -> tuple[float, float]:
        return (a * xs[0] + b * ys[0], a * xs[2] + b * ys[2])

    low = [min(at(*corner)[axis] for corner in corners) for axis in (0, 1)]
    x, y = at(u, v)
    return (x - low[0], y - low[1])


def _new_edges(part: Part) -> list[Edge]:
    """The edges that are cut, seen from the front and as the pane runs round them: not those
    that are left of its rectangle.
    """
    found = []
    length, width = float(part.blank.length), float(part.blank.width)
    xs, ys = part.placement.x, part.placement.y
    # x and y of the part turn clockwise where they are seen from behind
    mirrored = xs[0] * ys[2] - xs[2] * ys[0] < 0
    for cut in _cuts(part):
        corners = [(float(v.x), float(v.y), v.bulge) for v in cut.outline]
        for (au, av, bulge), (bu, bv, _) in zip(corners, [*corners[1:], corners[0]], strict=True):
            on_rim = any(
                abs(au - side) < NEAR and abs(bu - side) < NEAR for side in (0.0, length)
            ) or any(abs(av - side) < NEAR and abs(bv - side) < NEAR for side in (0.0, width))
            if bulge == 0 and on_rim:
                continue
            a, b = _from_front(part, au, av), _from_front(part, bu, bv)
            # what is cut off runs against the pane along the edge that they share
            found.append(Edge(a, b, -bulge) if mirrored else Edge(b, a, -bulge))
    return found


def _alike(edges: Sequence[Edge], others: Sequence[Edge]) -> bool:
    return len(edges) == len(others) and all(
        any(_same(edge, other) for other in others) for edge in edges
    )


def _same(a: Edge, b: Edge) -> bool:
    return (
        math.dist(a.a, b.a) <= NEAR
        and math.dist(a.b, b.b) <= NEAR
        and abs(a.bulge - b.bulge) <= max(SAME_BULGE, NEAR / max(math.dist(a.a, a.b), NEAR))
    )


# --- what is there -------------------------------------------------------------------------


def _file(file: DxfFile, mark: str, parts: Sequence[Part]) -> Iterator[str]:
    if file.variable("$INSUNITS") != "4":
        yield f"the header's unit is {file.variable('$INSUNITS') or 'missing'}, not 4 (mm)"
    yield from _strangers(file)
    drawn = [r for r in file.entities if r.kind == "LWPOLYLINE" and r.text(8) == _LAYER]
    if len(drawn) != 1:
        yield f"{len(drawn)} outlines lie on {_LAYER}, there is 1 pane"
        return
    (record,) = drawn
    if not record.whole(70) & 1:
        yield "the outline is open"
    if (record.number(210), record.number(220), record.number(230, 1.0)) != (0.0, 0.0, 1.0):
        yield "the outline is drawn in a plane that is tilted or turned over"
    if record.number(38):
        yield f"the outline lies at {record.number(38):g}, not at 0"
    outline = _outline(record)
    yield from _shape(outline, parts[0])
    yield from _said(file, mark, parts)


def _strangers(file: DxfFile) -> Iterator[str]:
    """Whatever is no outline of glass and no word of ours, and layers that are not seen."""
    for record in file.entities:
        layer = record.text(8)
        if (record.kind, layer) not in (("LWPOLYLINE", _LAYER), ("TEXT", _WORDS)):
            yield f"a {record.kind} on layer {layer}"
        elif record.whole(67):
            yield f"a {record.kind} of layer {layer} lies on a paper layout"
    for name, records in file.blocks.items():
        for record in records:
            yield f"a {record.kind} in the block {name}"
    table = {r.text(2): r for r in file.tables if r.kind == "LAYER"}
    for layer in (_LAYER, _WORDS):
        entry = table.get(layer)
        if entry is None:
            yield f"layer {layer} is in no table"
        elif entry.whole(62, 7) < 0 or entry.whole(70) & 1:
            yield f"layer {layer} is switched off or frozen"


def _outline(record: Record) -> Outline:
    corners = record.corners()
    if len(corners) < 3:
        raise UnreadableError(f"the outline has {len(corners)} corners")
    return closed_outline(corners)


def _shape(outline: Outline, part: Part) -> Iterator[str]:
    """Area, bounds, and every edge that is no side of the pane's rectangle."""
    blank = part.blank
    across = abs(part.placement.x[0]) > 0.5
    sizes = (float(blank.length), float(blank.width))
    wide, tall = sizes if across else sizes[::-1]
    cut_off = sum(
        abs(closed_outline([(float(v.x), float(v.y), v.bulge) for v in cut.outline]).area)
        for cut in _cuts(part)
    )
    area = wide * tall - cut_off
    if abs(outline.area - area) > NEAR * (wide + tall):
        yield f"the outline holds {outline.area:.3f} mm2, the pane {area:.3f}"
    bounds = outline.bounds
    if any(abs(a - b) > NEAR for a, b in zip(bounds, (0.0, 0.0, wide, tall), strict=True)):
        told = "{:.3f};{:.3f} to {:.3f};{:.3f}".format(*bounds)
        yield f"the outline reaches from {told}, the pane from 0;0 to {wide:.3f};{tall:.3f}"
    for edge in _new_edges(part):
        if not any(_same(edge, one) for one in outline.edges):
            a, b = (f"{point[0]:.3f};{point[1]:.3f}" for point in (edge.a, edge.b))
            yield f"no edge runs from {a} to {b} with a bulge of {edge.bulge:.6f}"


def _said(file: DxfFile, mark: str, parts: Sequence[Part]) -> Iterator[str]:
    """Mark, number, thickness, how many are turned over, unit and sizes, in words."""
    rows = [r for r in file.entities if r.kind == "TEXT" and r.text(8) == _WORDS]
    rows.sort(key=lambda r: (-r.point(10)[1], r.point(10)[0]))
    words = " ".join(r.text(1) for r in rows)
    first = parts[0]
    head = re.search(rf"{re.escape(mark)}: (\d+) off, (.+?) {_N} thick", words)
    if head is None or not any(r.text(1) == mark for r in rows):
        yield f"it does not say that it is {mark}"
    else:
        if int(head[1]) != len(parts):
            yield f"{head[1]} off are said, there are {len(parts)}"
        if head[2] != first.material.name:
            yield f"{head[2]} is said, the pane is {first.material.name}"
        yield from _size("thick", float(head[3]), float(first.blank.thickness))
    edges = _new_edges(first)
    turned = sum(not _alike(_new_edges(part), edges) for part in parts)
    said = re.search(r"(\d+) turned over", words)
    if (0 if said is None else int(said[1])) != turned:
        yield f"{said[1] if said else 0} turned over are said, there are {turned}"
    size = re.search(rf"unit mm, seen from the front: {_N} wide, {_N} at its highest", words)
    if size is None:
        yield "it does not say its unit and its size"
        return
    yield from _size("wide", float(size[1]), float(first.blank.length))
    yield from _size("high", float(size[2]), float(first.blank.width))


def _size(what: str, said: float, size: float) -> Iterator[str]:
    if abs(said - size) > _PRINTED:
        yield f"{said:g} {what} is said, the pane is {size:.3f}"
