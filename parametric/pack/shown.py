"""What the client's page shows of a job, whatever kind it is: what moves, what it stands in, what is said."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.writers.client_page import Doorway, Fact, Niche, PageLeaf, Saying, Scenery

Flat = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """The part of `PreviewPage` that doors and cabinets have each in their own way."""

    subtitle: str
    leaves: tuple[PageLeaf, ...]
    opening: tuple[Flat, ...]
    floor: tuple[Flat, ...]
    wall: float
    way: Flat
    clear_way: float | None
    top: float
    facts: tuple[Fact, ...]
    thing: Saying
    ticks: tuple[Saying, ...]
    scenery: Scenery
    drawing: str
    all_open: bool
    niche: Niche | None = None
    doorways: tuple[Doorway, ...] = ()
