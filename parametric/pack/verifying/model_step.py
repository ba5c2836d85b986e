"""The model for other programs against the parts: products, pieces, places, units, volumes."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterator, Mapping

from parametric.model import (
    Drilled,
    Groove,
    Moulded,
    Part,
    Placement,
    Pocket,
    RoundArrises,
    Shaped,
    Slot,
    Vector,
    face_point,
)
from parametric.pack.verifying.boxes import finished_box, stands
from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.expected import centre_of_volume, in_hollow
from parametric.pack.verifying.hollows import hollows
from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.moulded_runs import in_run
from parametric.pack.verifying.step_file import (
    Axes,
    Occurrence,
    Product,
    StepFile,
    length_units,
    occurrences,
    products,
)
from parametric.pack.verifying.step_solids import Solid, measure

PLACE = 1e-4
"""mm"""
VOLUME = 2e-5
"""Relative: arcs are walked in chords of one degree."""
_BOX = 1e-2
"""mm: the chords of a round fall short of it by less."""
_MIDDLE = 2e-3
_TOUCH = 1e-4
"""mm"""


def check_step(data: bytes, known: Known) -> Verdict:
    """Hold the STEP file against the parts where they stand shut.

    Args:
        data: the file.
        known: the design.
    """
    try:
        file = StepFile(data.decode("ascii"))
        kinds = products(file)
        pieces = occurrences(file)
        units = length_units(file)
        solids = {
            product.definition: measure(file, product.solids[0])
            for product in kinds.values()
            if len(product.solids) == 1
        }
    except (UnreadableError, ValueError, IndexError) as error:
        return Verdict(looked_at={}, faults=(f"cannot be read back: {error}",))
    faults = [] if list(units) == ["MILLI METRE"] else [f"lengths are in {', '.join(units)}"]
    faults += _pieces(pieces, kinds, known)
    faults += _products(kinds, solids, known)
    return Verdict(
        looked_at={"products": len(kinds), "pieces": len(pieces), "solids measured": len(solids)},
        faults=tuple(faults),
    )


def _pieces(pieces: list[Occurrence], kinds: Mapping[int, Product], known: Known) -> Iterator[str]:
    """Every part and group is one piece of the right product, in the right whole and place."""
    counted = Counter(piece.name for piece in pieces)
    by_name = {piece.name: piece for piece in pieces}
    wanted: dict[str, tuple[str, str, Placement]] = {}
    for group in known.assembly.groups:
        wanted[group.name] = (group.name, known.assembly.name, group.placement)
        for part in group.parts:
            wanted[part.name] = (_product_name(part), group.name, part.placement)
    for name, count in sorted(counted.items()):
        if name not in wanted:
            yield f"{name}: there is no such part"
        elif count > 1:
            yield f"{name}: is there {count} times"
    for name, (product, whole, place) in wanted.items():
        piece = by_name.get(name)
        if piece is None:
            yield f"{name}: is missing"
            continue
        if kinds[piece.product].name != product:
            yield f"{name}: is a {kinds[piece.product].name}, not a {product}"
        if kinds[piece.whole].name != whole:
            yield f"{name}: stands in {kinds[piece.whole].name}, not in {whole}"
        if _off(piece.place, place) > PLACE:
            yield f"{name}: does not stand where the part stands"


def _product_name(part: Part) -> str:
    return f"{part.mark} {part.noun}"


def _off(found: Axes, wanted: Placement) -> float:
    """How far a place is off, mm; a turned axis counts by its own length of a metre."""
    far = math.dist(found.origin, _floats(wanted.origin))
    turned = max(math.dist(found.z, _floats(wanted.z)), math.dist(found.x, _floats(wanted.x)))
    return max(far, turned * 1000)


def _middle_trusted(part: Part) -> float:
    """How far off the middle may be read, mm.

    Of a bar that is round all along, the chords leave as much of its volume unread as `VOLUME`
    says, and its middle is off by that part of half its length.
    """
    round_bar = any(isinstance(cut, RoundArrises) for cut in part.cuts)
    return _MIDDLE + (VOLUME * float(part.blank.length) / 2 if round_bar else 0.0)


def _floats(v: Vector) -> Vector:
    return (float(v[0]), float(v[1]), float(v[2]))


def _products(
    kinds: Mapping[int, Product], solids: Mapping[int, Solid], known: Known
) -> Iterator[str]:
    """Each type of part is one solid of its volume, with its middle and its box."""
    types = {_product_name(part): part for part in known.assembly.parts}
    for product in kinds.values():
        part = types.get(product.name)
        if part is None:
            continue
        if len(product.solids) != 1:
            yield f"{product.name}: is made of {len(product.solids)} solids"
            continue
        solid = solids[product.definition]
        volume = float(part.volume)
        if abs(solid.volume - volume) > VOLUME * volume:
            yield f"{product.name}: {solid.volume:.0f} mm3, the part {volume:.0f}"
            continue
        off = math.dist(solid.middle, centre_of_volume(part))
        if off > _middle_trusted(part):
            yield f"{product.name}: its middle is {off:.3f} off that of the part"
        box = finished_box(part)
        apart = max(
            abs(a - b)
            for one, other in zip((solid.low, solid.high), box, strict=True)
            for a, b in zip(one, other, strict=True)
        )
        if apart > _BOX:
            yield f"{product.name}: its box is {apart:.3f} off that of the part"
        yield from (f"{product.name}: {fault}" for fault in _hollows(part, solid))


def _hollows(part: Part, solid: Solid) -> Iterator[str]:
    """The floor of every hollow has its corners where the part has them."""
    own = [
        made
        for cut in part.cuts
        if isinstance(cut, (Slot, Pocket, Groove, Drilled, Shaped))
        for made in hollows(part, cut, at_machine=False)
    ]
    runs = [cut for cut in part.cuts if isinstance(cut, Moulded)]
    for made in own:
        if made.radius_of_hole:
            u, v = made.middle
            centre = face_point(made.face, part.blank, u, v, made.floor)
            if not any(
                abs(math.dist(corner, centre) - made.radius_of_hole) <= 2 * _TOUCH
                for corner in solid.corners
            ):
                yield f"{made.cut} is no hole about {u:g};{v:g}, {made.floor:g} deep"
            continue
        for u, v in made.corners:
            point = face_point(made.face, part.blank, u, v, made.floor)
            met = any(in_hollow(part, o, point, _TOUCH) for o in own if o is not made)
            # beside a moulding that is as deep there, one floor runs on in the other
            met = met or any(in_run(part, run, point, _TOUCH) for run in runs)
            # past the wood, or where nothing is left beside it, a shape has no corner
            met = met or (made.shape is not None and not stands(part, made, (u, v)))
            if not met and not _there(point, solid):
                yield f"{made.cut} has no corner at {u:g};{v:g}, {made.floor:g} deep"


def _there(point: Vector, solid: Solid) -> bool:
    """Whether a corner lies at a point, to a ten-thousandth either way."""
    near = [[round(float(at) + d, 4) + 0.0 for d in (-_TOUCH, 0.0, _TOUCH)] for at in point]
    return any(corner in solid.corners for corner in itertools.product(*near))
