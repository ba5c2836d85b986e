"""The pieces that close cabinets to the room: face frames, fillers, plinths, cornices, counters."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.model import Assembly, Part
from parametric.resolve.door import Resolved


def closings_of(resolved: Resolved, assembly: Assembly) -> Iterator[Part]:
    """Those that the shop makes: neither a leaf's nor a case's, nor bought."""
    if resolved.casework is None:
        return
    own = {case.name for case in resolved.casework.cases}
    own |= {leaf.name for leaf in resolved.leaves}
    own |= {drawer.name for drawer in resolved.casework.drawers}
    for group in assembly.groups:
        if group.name not in own:
            yield from (part for part in group.parts if not part.supplied)
