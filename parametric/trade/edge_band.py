"""How much edge band is ordered: every banded edge of every board, and what is lost at its ends.

band  ____________________________  runs past both ends and is trimmed: the spare
|____________________________|  edge of the board
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.figures import Figure, named, plain
from parametric.model import Assembly, Face, Part
from parametric.names import join

_METRE = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class BandedEdge:
    """One kind of edge: the mark and the noun of its board, which edge, how many, each how long, mm."""

    mark: str
    noun: str
    edge: str
    number: int
    length: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeBand:
    """The band for one board of one thickness, mm: `net` metres of edges, `order` with the spare.

    `spare` is in %.
    """

    board: str
    thickness: Figure
    edges: tuple[BandedEdge, ...]
    net: Figure
    spare: Figure
    order: Figure


def edge_bands(shop: Shop, assembly: Assembly) -> tuple[EdgeBand, ...]:
    """Every band of a job, that of the thickest board first.

    Args:
        shop: the workshop, which knows its spare.
        assembly: all parts of the job.
    """
    lots: dict[tuple[str, float], dict[tuple[str, Face], list[Part]]] = {}
    for part in assembly.parts:
        lot = (part.material.name, round(float(part.blank.thickness), 6))
        for face in part.banded:
            lots.setdefault(lot, {}).setdefault((part.mark, face), []).append(part)
    return tuple(
        _band(shop, board, edges)
        for (board, _), edges in sorted(lots.items(), key=lambda lot: (-lot[0][1], lot[0][0]))
    )


def _band(shop: Shop, board: str, edges: dict[tuple[str, Face], list[Part]]) -> EdgeBand:
    first = next(iter(edges.values()))[0]
    thickness = Figure(first.blank.thickness)
    place = join("edge band", f"{board} {plain(thickness)} mm")
    found = tuple(
        BandedEdge(
            mark=mark,
            noun=parts[0].noun,
            edge=parts[0].faces.get(face, face),
            number=len(parts),
            length=named(join(place, f"{mark} {face}"), _long(parts[0], face)),
        )
        for (mark, face), parts in edges.items()
    )
    each = [edge.number * edge.length for edge in found]
    total = each[0]
    for more in each[1:]:
        total = total + more
    spare = named("spare on edge band", shop.blanks.edge_band_spare, "%")
    net = named(join(place, "edges"), total / _METRE, "m")
    return EdgeBand(
        board=board,
        thickness=named(join(place, "thickness"), thickness),
        edges=found,
        net=net,
        spare=spare,
        order=named(join(place, "to order"), net * (1 + spare / 100), "m"),
    )


def _long(part: Part, face: Face) -> Figure:
    """How long an edge is: along the board, or across its end."""
    along = face in ("low edge", "high edge")
    return Figure(part.blank.length if along else part.blank.width)
