"""Doors in which every two choices that go together stand together at least once.

The list is fixed; `test_it_is_pairwise` works out that it is whole.
"""

from __future__ import annotations

from typing import NamedTuple


class Case(NamedTuple):
    """One door: how it hangs, what fills it, its head, what it hangs and shuts by."""

    hanging: str
    infill: str
    head: str
    hinge: str
    opens: str
    units: str
    fittings: str


FACTORS: dict[str, tuple[str, ...]] = {
    "hanging": (
        "sliding",
        "biparting",
        "bypass",
        "three that pass",
        "pocket",
        "hinged",
        "pair",
        "rebated pair",
        "pair with astragal",
        "bifold of two",
        "bifold of four",
        "dutch",
    ),
    "infill": (
        "panel",
        "lite in stops",
        "lite in a rebate",
        "divided lite",
        "divided lite over a panel",
    ),
    "head": ("straight", "segmental", "half round", "pointed", "elliptical", "raked"),
    "hinge": ("none", "butt", "cup", "pivot"),
    "opens": ("towards you", "away from you", "slides"),
    "units": ("mm", "inch"),
    "fittings": ("bare", "pull", "lock"),
}

CASES: tuple[Case, ...] = (
    Case("pair", "lite in a rebate", "pointed", "pivot", "towards you", "mm", "lock"),
    Case("dutch", "divided lite", "pointed", "cup", "away from you", "inch", "bare"),
    Case("bypass", "lite in a rebate", "raked", "none", "slides", "inch", "pull"),
    Case("bifold of two", "panel", "straight", "butt", "slides", "mm", "bare"),
    Case("hinged", "divided lite over a panel", "segmental", "butt", "towards you", "inch", "lock"),
    Case(
        "pair with astragal",
        "divided lite over a panel",
        "elliptical",
        "cup",
        "away from you",
        "mm",
        "pull",
    ),
    Case("rebated pair", "lite in stops", "straight", "pivot", "towards you", "inch", "pull"),
    Case("biparting", "divided lite over a panel", "half round", "none", "slides", "mm", "bare"),
    Case("three that pass", "divided lite", "segmental", "none", "slides", "mm", "pull"),
    Case("pair", "divided lite", "half round", "butt", "away from you", "inch", "lock"),
    Case(
        "pair with astragal", "divided lite", "elliptical", "pivot", "towards you", "inch", "bare"
    ),
    Case("hinged", "lite in a rebate", "raked", "pivot", "away from you", "mm", "bare"),
    Case("dutch", "panel", "straight", "cup", "towards you", "inch", "lock"),
    Case("pocket", "lite in stops", "straight", "none", "slides", "mm", "bare"),
    Case("bifold of four", "divided lite over a panel", "pointed", "butt", "slides", "mm", "pull"),
    Case("rebated pair", "lite in a rebate", "segmental", "butt", "away from you", "inch", "bare"),
    Case("dutch", "lite in a rebate", "half round", "cup", "towards you", "mm", "pull"),
    Case("sliding", "lite in a rebate", "elliptical", "none", "slides", "mm", "bare"),
    Case("pair", "panel", "straight", "pivot", "away from you", "inch", "pull"),
    Case("pair", "divided lite over a panel", "raked", "cup", "towards you", "mm", "bare"),
    Case("hinged", "lite in stops", "straight", "cup", "away from you", "inch", "lock"),
    Case("bifold of four", "lite in a rebate", "straight", "none", "slides", "inch", "bare"),
    Case("pair with astragal", "divided lite", "raked", "butt", "towards you", "inch", "lock"),
    Case("bifold of two", "lite in a rebate", "pointed", "none", "slides", "inch", "pull"),
    Case("bypass", "divided lite", "straight", "none", "slides", "mm", "bare"),
    Case(
        "rebated pair",
        "divided lite over a panel",
        "half round",
        "pivot",
        "away from you",
        "mm",
        "bare",
    ),
    Case("biparting", "divided lite over a panel", "straight", "none", "slides", "inch", "pull"),
    Case("sliding", "panel", "straight", "none", "slides", "inch", "pull"),
    Case("pocket", "divided lite over a panel", "segmental", "none", "slides", "inch", "pull"),
    Case("hinged", "divided lite", "elliptical", "butt", "towards you", "mm", "pull"),
    Case("three that pass", "lite in a rebate", "pointed", "none", "slides", "inch", "bare"),
    Case("dutch", "lite in a rebate", "segmental", "butt", "towards you", "mm", "lock"),
    Case(
        "pair with astragal", "lite in a rebate", "segmental", "cup", "away from you", "mm", "lock"
    ),
    Case("rebated pair", "divided lite", "raked", "cup", "away from you", "inch", "bare"),
    Case("dutch", "lite in stops", "straight", "butt", "away from you", "inch", "pull"),
    Case("sliding", "divided lite over a panel", "segmental", "none", "slides", "mm", "bare"),
    Case("pair with astragal", "lite in stops", "straight", "butt", "away from you", "mm", "bare"),
    Case("dutch", "divided lite", "elliptical", "butt", "towards you", "inch", "lock"),
    Case("biparting", "lite in a rebate", "segmental", "none", "slides", "mm", "bare"),
    Case("bifold of two", "divided lite", "half round", "none", "slides", "mm", "pull"),
    Case("bifold of four", "divided lite", "elliptical", "butt", "slides", "inch", "bare"),
    Case("pocket", "lite in a rebate", "half round", "none", "slides", "inch", "bare"),
    Case("sliding", "divided lite", "raked", "none", "slides", "mm", "pull"),
    Case("biparting", "divided lite", "elliptical", "none", "slides", "mm", "pull"),
    Case("three that pass", "divided lite over a panel", "raked", "none", "slides", "mm", "pull"),
    Case("pocket", "divided lite", "pointed", "none", "slides", "inch", "pull"),
    Case("bifold of two", "divided lite over a panel", "segmental", "butt", "slides", "mm", "bare"),
    Case("three that pass", "lite in stops", "straight", "none", "slides", "mm", "pull"),
    Case("bypass", "divided lite over a panel", "segmental", "none", "slides", "inch", "pull"),
    Case("hinged", "lite in a rebate", "half round", "pivot", "towards you", "inch", "pull"),
    Case("hinged", "divided lite", "segmental", "pivot", "away from you", "mm", "bare"),
    Case("three that pass", "divided lite", "half round", "none", "slides", "inch", "bare"),
    Case("rebated pair", "divided lite", "pointed", "butt", "away from you", "mm", "bare"),
    Case("bifold of four", "lite in a rebate", "segmental", "butt", "slides", "mm", "bare"),
    Case("pocket", "divided lite", "raked", "none", "slides", "inch", "pull"),
    Case(
        "pair", "divided lite over a panel", "elliptical", "pivot", "away from you", "inch", "lock"
    ),
    Case("pair", "lite in stops", "straight", "pivot", "away from you", "mm", "pull"),
    Case("pair", "divided lite over a panel", "segmental", "butt", "away from you", "inch", "bare"),
    Case(
        "pair with astragal",
        "divided lite over a panel",
        "pointed",
        "butt",
        "away from you",
        "inch",
        "bare",
    ),
    Case("hinged", "panel", "straight", "pivot", "towards you", "inch", "lock"),
    Case("bifold of four", "lite in stops", "straight", "butt", "slides", "inch", "pull"),
    Case("rebated pair", "divided lite", "elliptical", "cup", "towards you", "mm", "pull"),
    Case("dutch", "lite in a rebate", "raked", "cup", "away from you", "inch", "bare"),
    Case("sliding", "divided lite over a panel", "half round", "none", "slides", "mm", "bare"),
    Case("hinged", "divided lite over a panel", "pointed", "pivot", "towards you", "inch", "lock"),
    Case("biparting", "divided lite over a panel", "pointed", "none", "slides", "inch", "pull"),
    Case("biparting", "divided lite", "raked", "none", "slides", "inch", "bare"),
    Case("pair with astragal", "divided lite", "half round", "butt", "away from you", "mm", "bare"),
    Case("bypass", "divided lite", "pointed", "none", "slides", "mm", "pull"),
    Case("bifold of two", "divided lite", "elliptical", "butt", "slides", "inch", "bare"),
    Case("bypass", "panel", "straight", "none", "slides", "mm", "pull"),
    Case("sliding", "divided lite over a panel", "pointed", "none", "slides", "mm", "pull"),
    Case("pocket", "lite in a rebate", "elliptical", "none", "slides", "mm", "pull"),
    Case("rebated pair", "panel", "straight", "cup", "away from you", "mm", "bare"),
    Case("bypass", "divided lite over a panel", "half round", "none", "slides", "mm", "pull"),
    Case("bifold of two", "lite in a rebate", "raked", "none", "slides", "mm", "bare"),
    Case("pair with astragal", "panel", "straight", "pivot", "towards you", "mm", "lock"),
    Case("bifold of four", "divided lite", "raked", "none", "slides", "mm", "bare"),
    Case("bifold of four", "panel", "straight", "none", "slides", "inch", "bare"),
    Case("bypass", "lite in a rebate", "elliptical", "none", "slides", "mm", "pull"),
    Case("biparting", "lite in stops", "straight", "none", "slides", "mm", "pull"),
    Case("bifold of four", "divided lite", "half round", "butt", "slides", "inch", "bare"),
    Case("sliding", "lite in stops", "straight", "none", "slides", "mm", "pull"),
    Case("three that pass", "divided lite", "elliptical", "none", "slides", "mm", "bare"),
    Case("bifold of two", "lite in stops", "straight", "none", "slides", "inch", "pull"),
    Case("biparting", "panel", "straight", "none", "slides", "inch", "pull"),
    Case("three that pass", "panel", "straight", "none", "slides", "mm", "bare"),
    Case("bypass", "lite in stops", "straight", "none", "slides", "mm", "bare"),
    Case("pocket", "panel", "straight", "none", "slides", "mm", "bare"),
)
