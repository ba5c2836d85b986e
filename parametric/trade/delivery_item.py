"""One row of the van's list, and how many people its piece takes."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.bench import ONE_PERSON_SPAN
from parametric.figures import Figure, largest, named, smallest, whole_up


@dataclass(frozen=True, slots=True, kw_only=True)
class DeliveryItem:
    """One kind of piece: sizes mm, kg each (None where its maker says), people to each.

    `glazed` is what a leaf weighs once its glass is in, `people_glazed` how many then hold it.
    """

    what: str
    mark: str
    number: int
    sizes: tuple[Figure, ...]
    weight: Figure | None
    glazed: Figure | None
    people: Figure
    people_glazed: Figure | None
    handling: str


def people_for(name: str, weight: Figure, one_person: Figure, area: Figure | None = None) -> Figure:
    """How many lift a piece: by its weight, and two at least when it is too large to steer alone.

    Source: the house's `one person`; the size is common practice, no source.
    """
    by_weight = whole_up(weight / named("one person", one_person, "kg"))
    if area is None:
        return named(name, by_weight, "")
    by_size = smallest(Figure(2, unit=""), whole_up(area / ONE_PERSON_SPAN))
    return named(name, largest(by_weight, by_size), "")
