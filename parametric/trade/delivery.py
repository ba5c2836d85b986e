"""What goes on the van: pieces, sizes, kilograms, and how many people each takes."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from parametric.cases.drawer import DrawerBox
from parametric.figures import Figure, exceeds, named
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.case_delivery import case_items
from parametric.trade.case_loads import CaseLoad
from parametric.trade.cautions import GLASS, Cautions, lifting
from parametric.trade.delivery_item import DeliveryItem, people_for
from parametric.trade.glass import glass_order
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import weight, weight_limit
from parametric.units import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivery:
    """The list; `weight` kg is of all that we know the weight of.

    `on_site` are the leaves whose glass travels beside them, `because` why. `largest` is the
    piece that must go through every door and round every turn on the way.
    """

    items: tuple[DeliveryItem, ...]
    weight: Figure
    largest: DeliveryItem
    on_site: frozenset[str]
    because: str
    cautions: Cautions

    @property
    def glazed_on_site(self) -> bool:
        """Whether the glass of any leaf goes in on site."""
        return bool(self.on_site)


def delivery(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    hardware: tuple[HardwareItem, ...],
    cases: tuple[CaseLoad, ...] = (),
) -> Delivery:
    """Cases, leaves, panes and their stops, tracks, the box of hardware, the finish to touch up.

    Every weight of ours is the larger of the estimate and the sum of the parts as cut.
    """
    one_person = resolved.shop.limits.one_person
    by_name = {load.leaf: load for load in loads}
    casework = resolved.casework
    boxes = {d.leaf: d.box for d in casework.drawers} if casework is not None else {}
    leaves = [
        _leaf(leaf, by_name[leaf.name], one_person, boxes.get(leaf.name))
        for leaf in resolved.leaves
    ]
    made = [*leaves, *case_items(cases, assembly, resolved)]
    where = [_glazed_where(resolved.of(door), by_name) for door in resolved.doors]
    on_site = frozenset(name for one in where for name in one.on_site)
    items = [*made, *(_glass(resolved, assembly, on_site) if on_site else ())]
    known = [
        Figure(item.number, unit="") * each
        for item in items
        if (each := item.weight if item.what in on_site or item.glazed is None else item.glazed)
        is not None
    ]
    total = known[0]
    for more in known[1:]:
        total = total + more
    items += _bought(resolved, assembly, hardware)
    heaviest = max((_heaviest(item) for item in made), key=float)
    return Delivery(
        items=tuple(items),
        weight=named("delivery / weight", total, "kg"),
        largest=max(made, key=lambda piece: float(piece.sizes[0] * piece.sizes[1])),
        on_site=on_site,
        because=_told_of_doors(resolved, [one.because for one in where]),
        cautions=(
            *lifting(_people(made), weight(heaviest, resolved.design.unit)),
            *(GLASS if any(leaf.lites for leaf in resolved.leaves) else ()),
        ),
    )


def _people(items: list[DeliveryItem]) -> int:
    """As many as the heaviest takes, glazed."""
    return max(int(item.people_glazed or item.people) for item in items)


def _heaviest(item: DeliveryItem) -> Figure:
    """What a piece of ours weighs where it is heaviest."""
    found = item.weight if item.glazed is None else item.glazed
    assert found is not None, "what we make is weighed"
    return found


def _told_of_doors(resolved: Resolved, because: list[str]) -> str:
    """What is so of every door once; else of each what is so of it."""
    if len(set(because)) <= 1:
        return because[0] if because else "There is no glass."
    told = zip(resolved.doors, because, strict=True)
    return " ".join(door.told(why) for door, why in told)


class _Glazed(NamedTuple):
    """The leaves of a door whose glass goes in on site, and why it does or does not."""

    on_site: tuple[str, ...]
    because: str


def _glazed_where(resolved: Resolved, loads: Mapping[str, LeafLoad]) -> _Glazed:
    """Where one door's glass goes in: on site where that lets one person carry a leaf."""
    one_person, unit = resolved.shop.limits.one_person, resolved.design.unit
    own = [loads[leaf.name] for leaf in resolved.leaves]
    glazed = [leaf for leaf in resolved.leaves if leaf.lites]
    bedded = any(
        pane.stops is None for leaf in glazed for lite in leaf.lites for pane in lite.panes
    )
    heavy = any(exceeds(load.governing, one_person) for load in own)
    on_site = bool(glazed) and heavy and not bedded
    heaviest = max((load.governing for load in own), key=float)
    if bedded:
        items = [_leaf(leaf, loads[leaf.name], one_person) for leaf in resolved.leaves]
        return _Glazed((), _bedded(heaviest, unit, _people(items)))
    return _Glazed(
        tuple(leaf.name for leaf in glazed) if on_site else (),
        _because(bool(glazed), on_site, heaviest, one_person, unit),
    )


def _because(glazed: bool, on_site: bool, heaviest: Figure, one_person: Figure, unit: Unit) -> str:
    if not glazed:
        return "There is no glass."
    limit = f"{weight_limit(one_person, unit)} for one person"
    if on_site:
        return (
            f"A glazed leaf is {weight(heaviest, unit)}, over {limit}: the glass goes in on site."
        )
    return f"A glazed leaf is {weight(heaviest, unit)}, within {limit}: it is glazed in the shop."


def _bedded(heaviest: Figure, unit: Unit, people: int) -> str:
    """Glass in compound cannot wait for the site: it must set before the leaf is stood up."""
    hands = "one person carries" if people == 1 else f"{people} people carry"
    return (
        f"Glass is bedded in its rebates in the shop and sets there, and the leaf travels glazed: "
        f"{weight(heaviest, unit)}, {hands} it."
    )


def _leaf(
    leaf: Leaf, load: LeafLoad, one_person: Figure, box: DrawerBox | None = None
) -> DeliveryItem:
    """A leaf as it is carried: without the glass that goes in later, a drawer's with its box."""
    area = named(join(leaf.name, "face"), leaf.width * leaf.height / 1e6, "m2")
    bedded = any(pane.stops is None for lite in leaf.lites for pane in lite.panes)
    carried = load.governing if bedded else load.bare
    later = bool(leaf.lites) and not bedded
    deep = leaf.thickness
    handling = "upright on its foot, on two battens, faces blanketed; corners guarded"
    if box is not None:
        deep = named(join(leaf.name, "deep with its drawer"), leaf.thickness + box.length)
        handling = "a drawer: box and front screwed together, on its foot, the front blanketed"
    return DeliveryItem(
        what=leaf.name,
        mark="",
        number=1,
        sizes=(leaf.width, leaf.height, deep),
        weight=carried,
        glazed=load.governing if later else None,
        people=people_for(join(leaf.name, "people"), carried, one_person, area),
        people_glazed=people_for(
            join(leaf.name, "people when glazed"), load.governing, one_person, area
        )
        if later
        else None,
        handling=handling,
    )


def _glass(resolved: Resolved, assembly: Assembly, on_site: frozenset[str]) -> list[DeliveryItem]:
    """The panes and loose stops of the leaves that are glazed on site."""
    one_person = resolved.shop.limits.one_person
    groups = tuple(group for group in assembly.groups if group.name in on_site)
    assembly = dataclasses.replace(assembly, groups=groups)
    stops: dict[str, tuple[str, list[Figure], int]] = {}
    for part in assembly.parts:
        if part.mark.startswith("L"):
            blank = part.blank
            sizes = [_figure(s) for s in (blank.length, blank.width, blank.thickness)]
            noun, first, number = stops.get(part.mark, (part.noun, sizes, 0))
            stops[part.mark] = (noun, first, number + 1)
    panes = [
        DeliveryItem(
            what=row.called if row.unit is not None else f"{row.kind} glass",
            mark=row.mark,
            number=row.number,
            sizes=tuple(_figure(s) for s in (row.width, row.height, row.thickness)),
            weight=_figure(row.weight, "kg"),
            glazed=None,
            people=people_for(
                join("delivery", row.mark, "people"), _figure(row.weight, "kg"), one_person
            ),
            people_glazed=None,
            handling="on edge in a rack, cork between; never flat",
        )
        for row in glass_order(resolved, assembly)
    ]
    return [
        *panes,
        *(
            DeliveryItem(
                what=f"glass {noun}, loose",
                mark=mark,
                number=number,
                sizes=tuple(sizes),
                weight=None,
                glazed=None,
                people=Figure(1, unit=""),
                people_glazed=None,
                handling="tied in bundles, lite by lite; weighed with the leaves",
            )
            for mark, (noun, sizes, number) in stops.items()
        ),
    ]


def _figure(value: float, unit: str = "mm") -> Figure:
    return value if isinstance(value, Figure) else Figure(value, unit=unit)


def _bought(
    resolved: Resolved, assembly: Assembly, hardware: tuple[HardwareItem, ...]
) -> list[DeliveryItem]:
    marks = {
        round(float(part.blank.length), 6): part.mark
        for part in assembly.parts
        if part.noun == "track"
    }
    items = [
        DeliveryItem(
            what="track",
            mark="" if item.length is None else marks[round(float(item.length), 6)],
            number=int(item.number),
            sizes=() if item.length is None else (item.length,),
            weight=None,
            glazed=None,
            people=Figure(1, unit=""),
            people_glazed=None,
            handling="flat, not bent; weight by supplier",
        )
        for item in hardware
        if item.what == "track"
    ]
    items.append(
        DeliveryItem(
            what="box of hardware",
            mark="",
            number=1,
            sizes=(),
            weight=None,
            glazed=None,
            people=Figure(1, unit=""),
            people_glazed=None,
            handling="all else on the hardware list, counted; weight by supplier",
        )
    )
    if resolved.finish is not None and resolved.finish.kind != "none":
        items.append(
            DeliveryItem(
                what=f"{resolved.finish.kind} to touch up",
                mark="",
                number=1,
                sizes=(),
                weight=None,
                glazed=None,
                people=Figure(1, unit=""),
                people_glazed=None,
                handling="closed tin, upright",
            )
        )
    return items
