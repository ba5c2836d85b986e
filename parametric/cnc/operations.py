"""One cut as the router makes it: a closed outline, a depth and a cutter.

The outline is the finished edge, never the path of the cutter. A groove that runs out of
the blank, or out to a line where the piece is trimmed or shouldered, has a square open end there: the
outline stops at the end of the groove and the operator runs the cutter past it. A groove
that stops has the round ends the cutter leaves; if they are to be square they are chopped
at the bench, which the set-up says and the list of bench work counts. A shape that lies
along the edge of the wood is open there.
"""

from __future__ import annotations

import dataclasses
import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.catalog.layer_names import OURS, CutKind, LayerNames
from parametric.cnc.cutter_fits import Edge, fits, smallest_corner, square_between, walls
from parametric.cnc.layer_names import layer_name
from parametric.cnc.outlines import relieved_rectangle
from parametric.figures import plain
from parametric.model import (
    Blank,
    Cut,
    Drilled,
    Face,
    Groove,
    Pocket,
    Shaped,
    Slot,
    face_depth,
    face_size,
)
from parametric.outlines import Bounds, Outline, Radii, Vertex, bounds_of, rounded_rectangle
from parametric.trade.groove_ends import runs_out
from parametric.trade.moulded_runs import wood_along

Boxed = Slot | Pocket | Groove
Routed = Boxed | Shaped | Drilled

_SAME = 1e-6
"""mm, a nanometre: nearer than this is the same place."""
_PLACES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Operation:
    """One outline of a machine file.

    `outline` is in the file's x and y, `depth` from the surface of the stock. `corner`
    is the smallest inside corner, mm; 0 when every corner is open. `note` says what the
    operator must do beyond following the outline.
    """

    name: str
    kind: CutKind
    outline: Outline
    depth: float
    cutter: float
    corner: float
    part: str
    note: str = ""
    layers: LayerNames = OURS
    row: str = ""
    """The same for all holes of one bored row, and for none besides; empty for all other cuts."""

    @property
    def layer(self) -> str:
        """The layer it is drawn on: what it is, and how deep, mm."""
        return layer_name(self.layers, self.kind, self.depth, self.cutter)


def depth_text(depth: float) -> str:
    """A depth or diameter as layers and lists print it, to a thousandth of a millimetre."""
    return plain(round(float(depth), _PLACES))


def routed(cut: Cut) -> Routed | None:
    """The cut, when a router can make it from a flat outline and a depth; else None.

    A groove with ramps was stopped on the saw, whatever made it.
    """
    match cut:
        case Slot() | Pocket() | Shaped() | Drilled():
            return cut
        case Groove():
            return None if cut.ramp else cut
        case _:
            return None


def _wood_along(face: Face, blank: Blank, cuts: Sequence[Cut]) -> tuple[float, float]:
    """Where the wood of a face begins and ends along u once the ends are trimmed or shouldered, mm."""
    low, high = 0.0, float(face_size(face, blank)[0])
    if face not in ("low end", "high end"):
        low, high = wood_along(blank, cuts)
    return low, high


def squaring(cut: Groove, blank: Blank, cuts: Sequence[Cut]) -> float:
    """The wood left in the round ends of a groove that is to be square, mm3."""
    if not cut.squared:
        return 0.0
    stopped = runs_out(cut, blank, cuts).count(False)
    return stopped * (4 - math.pi) / 2 * float(cut.corner) ** 2 * float(cut.depth - cut.surface)


def bounds_on_face(cut: Boxed | Shaped) -> Bounds:
    """The box of a cut in its face's own u and v, mm."""
    match cut:
        case Slot() | Groove():
            half = float(cut.width) / 2
            return (float(cut.u0), float(cut.v) - half, float(cut.u1), float(cut.v) + half)
        case Pocket():
            u, v = float(cut.u), float(cut.v)
            along, across = float(cut.length) / 2, float(cut.width) / 2
            return (u - along, v - across, u + along, v + across)
        case Shaped():
            return bounds_of(cut.outline)


def corners_of(cut: Boxed, blank: Blank, cuts: Sequence[Cut]) -> Radii:
    """The corner radii of a cut's outline on its face, mm; 0 where it runs out."""
    match cut:
        case Slot():
            return (float(cut.width) / 2,) * 4
        case Pocket():
            return (float(cut.corner),) * 4
        case Groove():
            low, high = runs_out(cut, blank, cuts)
            at_low = 0.0 if low else float(cut.corner)
            at_high = 0.0 if high else float(cut.corner)
            return (at_high, at_high, at_low, at_low)


def relief_of(cut: Boxed | Shaped) -> float:
    """The radius that a pocket's corners are relieved by, mm; 0 where they are left."""
    if isinstance(cut, Pocket) and cut.relief > cut.corner + _SAME:
        return float(cut.relief)
    return 0.0


def largest_cutter(cut: Boxed, corner: float) -> float:
    """The largest cutter diameter that leaves this cut as drawn, mm."""
    u0, v0, u1, v1 = bounds_on_face(cut)
    narrowest = min(u1 - u0, v1 - v0)
    return min(narrowest, 2 * corner) if corner else narrowest


def make_operations(
    cut: Routed, blank: Blank, cuts: Sequence[Cut], part: str, cutters: Sequence[float]
) -> tuple[Operation, ...]:
    """A cut as operations, a hole each of a row; the arguments are those of `make_operation`.

    A hole is bored with a bit as wide as itself where its cut names no cutter.

    Raises:
        ValueError: as `make_operation`.
    """
    if not isinstance(cut, Drilled):
        return (make_operation(cut, blank, cuts, part, cutters),)
    wide = float(cut.diameter)
    making = dataclasses.replace(cut.making, cutter=cut.making.cutter or wide)
    bores = (
        Pocket(
            name=cut.name,
            face=cut.face,
            u=u,
            v=v,
            length=wide,
            width=wide,
            corner=wide / 2,
            depth=cut.depth,
            making=making,
            surface=cut.surface,
        )
        for u, v in cut.places
    )
    made = (make_operation(bore, blank, cuts, part, cutters) for bore in bores)
    row = f"{part}: {cut.name} in the {cut.face} at {float(cut.u)!r};{float(cut.v)!r}"
    return tuple(dataclasses.replace(one, note=f"{depth_text(wide)} dia", row=row) for one in made)


def make_operation(
    cut: Boxed | Shaped, blank: Blank, cuts: Sequence[Cut], part: str, cutters: Sequence[float]
) -> Operation:
    """A cut as an operation, its outline still in the face's own u and v.

    Args:
        cut: the cut.
        blank: the blank it is made in.
        cuts: every cut of the part, to know where its ends are trimmed.
        part: the name of the part.
        cutters: the diameters the shop owns, mm; asked when the cut names none.

    Raises:
        ValueError: no cutter can make the cut, or it lies outside the wood. The rules
            stop a design before it comes to that.
    """
    where = f"{part}: {cut.name}"
    bounds = bounds_on_face(cut)
    limits = face_size(cut.face, blank)
    thickness = float(face_depth(cut.face, blank))
    if min(bounds[:2]) < -_SAME or bounds[2] > limits[0] + _SAME or bounds[3] > limits[1] + _SAME:
        raise ValueError(f"{where} lies outside the {cut.face} of its blank")
    if not 0 < cut.depth <= thickness + _SAME:
        raise ValueError(f"{where} is {cut.depth} deep in {thickness} of wood")
    if isinstance(cut, Shaped):
        return _shaped(cut, blank, cuts, part, cutters)
    radii = corners_of(cut, blank, cuts)
    stopped = True if not isinstance(cut, Groove) else not all(runs_out(cut, blank, cuts))
    if stopped and max(radii) == 0 and not relief_of(cut):
        raise ValueError(f"{where} has square inside corners, which no router cuts")
    corner = min((r for r in radii if r > 0), default=0.0)
    relief = relief_of(cut)
    return Operation(
        name=cut.name,
        kind=_kind(cut, bounds, radii, thickness),
        outline=relieved_rectangle(bounds, corner, relief)
        if relief
        else rounded_rectangle(bounds, radii),
        depth=min(float(cut.depth), thickness),
        cutter=_cutter(cut, relief or corner, cutters, where),
        corner=relief or corner,
        part=part,
        note=_note(cut, blank, cuts),
    )


def _shaped(
    cut: Shaped, blank: Blank, cuts: Sequence[Cut], part: str, cutters: Sequence[float]
) -> Operation:
    """A cut of any outline: its inside corners are round, or it is open where they are."""
    where = f"{part}: {cut.name}"
    outline = tuple(Vertex(float(v.x), float(v.y), v.bulge) for v in cut.outline)
    inside = _walls(cut, blank, cuts)
    own = cut.making.cutter
    fitting = [float(c) for c in (cutters if own is None else (own,)) if fits(float(c), inside)]
    if not fitting:
        found = "no cutter of the shop" if own is None else f"a cutter of {plain(own)}"
        raise ValueError(f"{where}: {found} goes into its corners and between its sides")
    thickness = float(face_depth(cut.face, blank))
    return Operation(
        name=cut.name,
        kind="cut_through" if cut.depth >= thickness - _SAME else "pocket",
        outline=outline,
        depth=min(float(cut.depth), thickness),
        cutter=max(fitting),
        corner=smallest_corner(outline),
        part=part,
        note="open at the edge of the piece: run the cutter past"
        if len(inside) < len(outline)
        else "",
    )


def has_square_corners(cut: Shaped, blank: Blank, cuts: Sequence[Cut]) -> bool:
    """Whether a shape has an inside corner that is not round."""
    inside = _walls(cut, blank, cuts)
    return any(square_between(a, b) for a, b in itertools.permutations(inside, 2))


def _walls(cut: Shaped, blank: Blank, cuts: Sequence[Cut]) -> tuple[Edge, ...]:
    low, high = _wood_along(cut.face, blank, cuts)
    return walls(cut.outline, (low, 0.0, high, float(face_size(cut.face, blank)[1])))


def _cutter(cut: Boxed, corner: float, cutters: Sequence[float], where: str) -> float:
    limit = largest_cutter(cut, corner)
    fitting = [float(c) for c in cutters if c <= limit + _SAME]
    cutter = cut.making.cutter
    if cutter is None and fitting:
        cutter = max(fitting)
    if cutter is None or cutter > limit + _SAME:
        found = "no cutter of the shop" if cutter is None else f"a cutter of {plain(cutter)}"
        raise ValueError(f"{where}: {found} is small enough; at most {plain(limit)} fits")
    return float(cutter)


def _kind(cut: Boxed, bounds: Bounds, radii: Radii, thickness: float) -> CutKind:
    if cut.depth >= thickness - _SAME:
        return "cut_through"
    width, height = bounds[2] - bounds[0], bounds[3] - bounds[1]
    if abs(width - height) <= _SAME and abs(min(radii) * 2 - width) <= _SAME:
        return "bore"
    match cut:
        case Slot():
            return "slot"
        case Pocket():
            return "pocket"
        case Groove():
            return "groove"


def _note(cut: Boxed, blank: Blank, cuts: Sequence[Cut]) -> str:
    if relief_of(cut):
        return "run the cutter into the corners, as drawn"
    if isinstance(cut, Slot) and cut.surface:
        return f"the shoulder lies {depth_text(cut.surface)} down"
    if not isinstance(cut, Groove):
        return ""
    low, high = runs_out(cut, blank, cuts)
    notes = []
    if low or high:
        ends = "both ends" if low and high else "one end"
        notes.append(f"open at {ends}: run the cutter past")
    if cut.squared and not (low and high):
        notes.append(f"round ends r {depth_text(cut.corner)} are chopped square at the bench")
    return "; ".join(notes)
