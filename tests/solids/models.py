"""The two assemblies that solids and their writers are tried on, each built once."""

from __future__ import annotations

import functools
from pathlib import Path
from typing import TYPE_CHECKING

from parametric.job import check
from parametric.model import Assembly
from tests.solids.pair import pair

if TYPE_CHECKING:
    from parametric.solids.solid_set import Solids

HAND_MADE, READING_ROOM = "hand-made pair", "reading room"
NAMES = (HAND_MADE, READING_ROOM)


@functools.cache
def assembly_of(name: str) -> Assembly:
    """A pair whose every part is written down in `pair`, or the worked example's."""
    if name == HAND_MADE:
        return pair()
    design = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"
    made = check(design, user_house=False).assembly
    assert made is not None
    return made


@functools.cache
def solids_of(name: str) -> Solids:
    """Its solids."""
    from parametric.solids.solid_set import build_solids

    return build_solids(assembly_of(name).parts)
