"""Edges of parts as the front shows them: x across, z up, in the frame of a leaf or of the job."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.model import Assembly, Group, Mitre, Part, Placement, RaisedBevel
from parametric.pack.verifying.expected import wood
from parametric.pack.verifying.outlines import Point

Side = tuple[Point, Point]
_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """The straight edges of one part seen from the front; `nearest` is the Y of its foremost face."""

    part: Part
    nearest: float
    sides: tuple[Side, ...]


def leaf_fronts(group: Group) -> tuple[Front, ...]:
    """The parts of one leaf in the leaf's frame."""
    return tuple(_front(part, None) for part in group.parts)


def job_fronts(assembly: Assembly) -> tuple[Front, ...]:
    """All parts of a job, shut, in the world."""
    return tuple(_front(part, group.placement) for group in assembly.groups for part in group.parts)


def foremost(fronts: Sequence[Front]) -> list[Front]:
    """The made parts that nothing stands before: those whose face is as near as any."""
    made = [front for front in fronts if not front.part.supplied]
    nearest = min(front.nearest for front in made)
    return [front for front in made if front.nearest <= nearest + _SAME]


def _front(part: Part, group: Placement | None) -> Front:
    def seen(x: float, y: float, z: float) -> tuple[float, float, float]:
        point = part.placement.point((x, y, z))
        return point if group is None else group.point(point)

    wide, thick = float(part.blank.width), float(part.blank.thickness)
    low, high = wood(part)
    nearest = min(seen(x, y, z)[1] for x in (low, high) for y in (0.0, wide) for z in (0.0, thick))
    sides: list[Side] = []
    for z in (0.0, thick):
        for a, b in _on_face(part):
            (ax, _, az), (bx, _, bz) = seen(*a, z), seen(*b, z)
            sides.append(((ax, az), (bx, bz)))
    for x in (low, high):
        for y in (0.0, wide):
            (ax, _, az), (bx, _, bz) = seen(x, y, 0.0), seen(x, y, thick)
            sides.append(((ax, az), (bx, bz)))
    return Front(part=part, nearest=nearest, sides=tuple(_with_length(sides)))


def _with_length(sides: list[Side]) -> Iterator[Side]:
    for a, b in sides:
        if abs(a[0] - b[0]) + abs(a[1] - b[1]) > _SAME:
            yield a, b


def _on_face(part: Part) -> Iterator[Side]:
    """The lines of a part's face in its own x and y: outline, and the field of a raised panel."""
    low, high = wood(part)
    wide = float(part.blank.width)
    corners = [[low, 0.0], [high, 0.0], [high, wide], [low, wide]]
    for cut in part.cuts:
        if isinstance(cut, Mitre):
            at_low, keeps_low = cut.end == "low end", cut.keeps == "low edge"
            index = {(True, True): 3, (True, False): 0, (False, True): 2, (False, False): 1}[
                at_low, keeps_low
            ]
            corners[index][0] += wide if at_low else -wide
    outline = [(x, y) for x, y in corners]
    yield from zip(outline, [*outline[1:], outline[0]], strict=True)
    for cut in part.cuts:
        if isinstance(cut, RaisedBevel):
            run = float(cut.run)
            field = [
                (low + run, run),
                (high - run, run),
                (high - run, wide - run),
                (low + run, wide - run),
            ]
            yield from zip(field, [*field[1:], field[0]], strict=True)
            yield from zip(outline, field, strict=True)
