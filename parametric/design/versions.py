"""Old versions of the language, brought up to date in memory; a file is rewritten only when asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from parametric.design.language import NEWEST
from parametric.design.reading import Keys

MIGRATIONS: Mapping[int, Callable[[Keys], Keys]] = MappingProxyType({})
"""From a version to the next: what has to change in a file of that version."""


def up_to_date(keys: Keys, version: int) -> Keys:
    """A file's keys as the newest version would write them."""
    for old in range(version, NEWEST):
        keys = MIGRATIONS[old](keys)
    return keys
