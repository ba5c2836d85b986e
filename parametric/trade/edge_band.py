"""How much edge band is ordered: every banded edge of every board, and what is lost at its ends.

band  ____________________________  runs past both ends and is trimmed: the spare
|____________________________|  edge of the board
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.figures import Figure, named, plain
from parametric.model import Assembly, Part
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
    lots: dict[tuple[str, float], dict[tuple[str, str], list[Part]]] = {}
    for part in assembly.parts:
        lot = (part.material.name, round(float(part.blank.thickness), 6))
        for edge in (*part.banded, *(cut.name for cut in part.banded_edges)):
            lots.setdefault(lot, {}).setdefault((part.mark, edge), []).append(part)
    return tuple(
        _band(shop, board, edges)
        for (board, _), edges in sorted(lots.items(), key=lambda lot: (-lot[0][1], lot[0][0]))
    )


def _band(shop: Shop, board: str, edges: dict[tuple[str, str], list[Part]]) -> EdgeBand:
    first = next(iter(edges.values()))[0]
    thickness = Figure(first.blank.thickness)
    place = join("edge band", f"{board} {plain(thickness)} mm")
    found = tuple(
        BandedEdge(
            mark=mark,
            noun=parts[0].noun,
            edge=_word(parts[0], edge),
            number=len(parts),
            length=named(join(place, f"{mark} {edge}"), _long(parts[0], edge)),
        )
        for (mark, edge), parts in edges.items()
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


def banded_words(part: Part) -> tuple[str, ...]:
    """What the shop calls each edge of a part that wears a band."""
    edges = (*part.banded, *(edge.name for edge in part.banded_edges))
    return tuple(_word(part, edge) for edge in edges)


def _word(part: Part, edge: str) -> str:
    return next((word for face, word in part.faces.items() if face == edge), edge)


def _long(part: Part, edge: str) -> Figure:
    """How long an edge is: along the board, across its end, or along what it was cut to."""
    cut = {one.name: one.length for one in part.banded_edges}
    along = edge in ("low edge", "high edge")
    return Figure(cut.get(edge, part.blank.length if along else part.blank.width))
