"""Cases on the van: each made up, its loose shelves beside it, and what closes it to the room."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from parametric.figures import Figure, named
from parametric.model import Assembly, Part
from parametric.names import join, short
from parametric.resolve.door import Resolved
from parametric.trade.case_loads import CaseLoad
from parametric.trade.closings import closings_of
from parametric.trade.delivery_item import DeliveryItem, people_for
from parametric.trade.tipping import Order


def case_items(
    cases: Sequence[CaseLoad], assembly: Assembly, resolved: Resolved
) -> Iterator[DeliveryItem]:
    """A row for each case, for its loose shelves, and for every kind of piece that closes them.

    Args:
        cases: what each of them weighs.
        assembly: their parts.
        resolved: the job.
    """
    one_person = resolved.shop.limits.one_person
    own = {load.standing.name for load in cases}
    for load in cases:
        yield _case(load)
    loose = [
        part
        for group in assembly.groups
        if group.name in own
        for part in group.parts
        if part.noun.startswith("shelf")
    ]
    for alike in _by_mark(loose):
        yield _piece(alike, one_person, "in a stack, faces together, tied")
    for alike in _by_mark(closings_of(resolved, assembly) if cases else ()):
        yield _piece(alike, one_person, "flat, blanketed; long ones tied in bundles")


def _by_mark(parts: Iterable[Part]) -> Iterable[list[Part]]:
    found: dict[str, list[Part]] = {}
    for part in parts:
        found.setdefault(part.mark, []).append(part)
    return found.values()


def _case(load: CaseLoad) -> DeliveryItem:
    box = load.standing.case.box
    return DeliveryItem(
        what=load.standing.name,
        mark="",
        number=1,
        sizes=(box.width, box.highest, box.depth),
        weight=load.carried,
        glazed=None,
        people=load.people,
        people_glazed=None,
        handling="on its back, without fronts and loose shelves, a rail across its front; "
        + _comes_to_stand(load),
    )


def _comes_to_stand(load: CaseLoad) -> str:
    if load.up is not None:
        return _UP[load.up.order]
    return "lifted to its place on the wall" if load.hangs else "carried in upright"


_UP: dict[Order, str] = {
    "where it stands": "tipped up where it stands",
    "on the floor, then lifted": "tipped up on the floor, then lifted or walked to its place",
    "from its side, where it stands": "brought in on its side and tipped up from there",
    "from its side on the floor, then lifted": "tipped up from its side on the floor, then lifted",
    "not at all": "it cannot be tipped up in the room: in parts, built in place",
}


def _piece(alike: Sequence[Part], one_person: Figure, handling: str) -> DeliveryItem:
    first = alike[0]
    sizes = [
        size if isinstance(size, Figure) else Figure(size)
        for size in (first.blank.length, first.blank.width, first.blank.thickness)
    ]
    name = join("delivery", first.mark)
    weight = Figure(max(part.mass for part in alike), op="sum of the parts as cut", unit="kg")
    weight = named(join(name, "weight"), weight, "kg")
    face = named(join(name, "face"), sizes[0] * sizes[1] / 1e6, "m2")
    return DeliveryItem(
        what=short(first.noun),
        mark=first.mark,
        number=len(alike),
        sizes=tuple(sizes),
        weight=weight,
        glazed=None,
        people=people_for(join(name, "people"), weight, one_person, face),
        people_glazed=None,
        handling=handling,
    )
