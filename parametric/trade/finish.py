"""What goes on the wood: its area and the litres to buy."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.model import Assembly, Part
from parametric.names import join
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.cautions import DUST, OILY_RAGS, SOLVENTS, Cautions
from parametric.trade.closings import closings_of
from parametric.trade.glue_up import first_coats


@dataclass(frozen=True, slots=True, kw_only=True)
class Coat:
    """One product: coats of it, what a litre covers in m2, the litres to buy."""

    product: str
    coats: Figure
    covers: Figure
    litres: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishOrder:
    """The finish of the job: `area` m2 is both faces of its leaves less the glass, and their edges.

    `spare` is in %. `steps` are how it goes on. No coats when the wood stays bare.
    """

    kind: str
    colour: str
    area: Figure
    spare: Figure | None
    coats: tuple[Coat, ...]
    steps: tuple[str, ...]
    cautions: Cautions


def finish_order(resolved: Resolved, assembly: Assembly) -> FinishOrder:
    """Litres by area, coats and coverage, with the spare.

    Only paint has a primer: varnish and oil are their own first coat.

    Source: area x coats / coverage is arithmetic; coverage is the tin's.
    """
    area = painted_area(resolved.leaves, closings_of(resolved, assembly))
    finish = resolved.finish
    if finish is None or finish.kind == "none":
        return FinishOrder(
            kind="none", colour="", area=area, spare=None, coats=(), steps=(), cautions=()
        )
    spare = named("finish spare", finish.spare, "%")
    products = [("top coat", finish.top_coats, finish.top_coat_covers)]
    if finish.kind == "paint":
        products.insert(0, ("primer", finish.primer_coats, finish.primer_covers))
    else:
        products = [(finish.kind, finish.top_coats, finish.top_coat_covers)]
    return FinishOrder(
        kind=finish.kind,
        colour=finish.colour or "",
        area=area,
        spare=spare,
        coats=tuple(_coat(*product, area, spare) for product in products),
        steps=_steps(resolved),
        cautions=(*SOLVENTS, *(OILY_RAGS if finish.kind == "oil" else ()), *DUST),
    )


def painted_area(leaves: tuple[Leaf, ...], closings: Iterable[Part] = ()) -> Figure:
    """Both faces of every leaf less what is open in its lites, and the four outer edges, m2.

    Of what closes cabinets to the room one face and the edges; the boards of cases come finished.
    Raised panels are counted flat; what their bevels add the spare covers.
    """
    areas = []
    for leaf in leaves:
        face = leaf.width * leaf.height
        for lite in leaf.lites:
            face = face - lite.width * lite.height
            if lite.head is not None:
                face = face - lite.head.area
            if lite.bars and lite.bar_area is not None:
                face = face + lite.bar_area
        edges = 2 * (leaf.width + leaf.height) * leaf.thickness
        areas.append(named(join(leaf.name, "finished area"), (2 * face + edges) / 1e6, "m2"))
    for part in closings:
        if part.noun in _BARE:
            continue
        long, wide, thick = (float(side) for side in part.finished)
        area = Figure((long * wide + 2 * (long + wide) * thick) / 1e6, unit="m2")
        areas.append(named(join(part.name, "finished area"), area, "m2"))
    total = areas[0] if areas else Figure(0.0, unit="m2")
    for area in areas[1:]:
        total = total + area
    return named("finished area", total, "m2")


_BARE = ("plinth cross piece", "counter")
"""What is never seen, and what comes with its surface."""


def _coat(product: str, coats: Figure, covers: Figure, area: Figure, spare: Figure) -> Coat:
    number = named(join("finish", f"{product} coats"), coats, "")
    goes = named(join("finish", f"{product} covers"), covers, "m2/litre")
    litres = area * number / goes * (1 + spare / 100)
    return Coat(
        product=product,
        coats=number,
        covers=goes,
        litres=named(join("finish", f"{product} litres"), litres, "litre"),
    )


def _steps(resolved: Resolved) -> tuple[str, ...]:
    leaves = resolved.leaves
    steps = [
        "The same coats on both faces and all four edges, the top and the foot too: bare wood on "
        "one side takes up water and bows the leaf.",
    ]
    if any(leaf.guide is not None for leaf in leaves):
        steps.append("The floor guide's groove gets its first coat and no more.")
    if any(door.hanging.turns for door in resolved.doors):
        steps.append(
            "Hinge and lock mortises get their first coat and no more; hinges come off before the "
            "coats go on. What the coats add at every edge comes off the gaps."
        )
    moving = [field for leaf in leaves for field in leaf.panels if field.panel.moves]
    if moving:
        assert resolved.finish is not None
        edges = "tongues" if any(field.panel.tongue for field in moving) else "edges"
        steps[:0] = [
            f"Each panel gets {first_coats(resolved.finish.kind)} before its leaf is glued up; the "
            "rest of the coats go on with the leaf.",
            f"Its {edges} get one thin coat and no more: they were gauged for it, and must slide.",
        ]
    panes = [pane for leaf in leaves for lite in leaf.lites for pane in lite.panes]
    if any(pane.stops is not None for pane in panes):
        steps.append("Glass stops are finished loose, on three sides and the ends.")
    if any(isinstance(lite.section, PlantedBar) for leaf in leaves for lite in leaf.lites):
        steps.append(
            "Planted bars are finished loose, on three sides and the ends: nothing on the side that "
            "is bedded."
        )
    if any(pane.stops is None for pane in panes):
        steps.append(
            "Glass rebates are sealed before the glass is bedded; the last coat runs a hair on to "
            "the glass, over the compound when it has its skin."
        )
    if any(float(leaf.site_trim) > 0 for leaf in leaves):
        steps.append("Coat the foot again where it is planed on site.")
    return tuple(steps)
