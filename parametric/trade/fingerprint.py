"""The fingerprint: one digest of everything that changes a made or a visible thing.

Not in it: rates, notes, records, revision letters, provenance, how a cut is worded, or which
groups a picture may ghost. Two designs with one fingerprint make the same doors.
"""

from __future__ import annotations

import dataclasses
from typing import Any

from parametric.model import Assembly, Group, Making, Part, digest
from parametric.resolve.door import Resolved

_LATER = ("relief",)


def fingerprint(resolved: Resolved, assembly: Assembly) -> str:
    """sha256, hex, of parts, places, motion, opening and finish; floats rounded to 1e-6 mm."""
    openings = [(door.opening.outline(), door.opening.floor_line()) for door in resolved.doors]
    groups = [
        (group.name, group.placement, _motion(group), [_made(part) for part in group.parts])
        for group in assembly.groups
    ]
    finish = resolved.finish
    look = (finish.kind, finish.colour or "") if finish is not None else None
    # Of one door as it stands, so that what was signed of a single door is still the same.
    where = openings[0] if len(openings) == 1 else (openings,)
    return digest(assembly.name, groups, *where, look)


def mark(full: str) -> str:
    """The first eight hex digits as people read them: `7C1F-04AB`."""
    return f"{full[:4]}-{full[4:8]}".upper()


def _motion(group: Group) -> Any:
    """How a group moves, so that what was signed while leaves could only slide is still the same."""
    return group.motion[0] if len(group.motion) == 1 else (group.motion or None)


def _made(part: Part) -> list[Any]:
    return [
        part.name,
        part.mark,
        part.material.name,
        part.material.look,
        part.blank,
        part.placement,
        [_cut(cut) for cut in part.cuts],
        *([list(part.banded)] if part.banded else []),
        *([part.matched] if part.matched is not None else []),
        *([list(part.banded_edges)] if part.banded_edges else []),
    ]


def _cut(cut: Any) -> list[Any]:
    """A cut's kind and numbers, how and when it is made; not what it is called.

    A number that came after designs were signed counts only where it takes wood away.
    """
    numbers = [
        value
        for field in dataclasses.fields(cut)
        if field.name not in ("name", "making")
        and (
            (value := getattr(cut, field.name))
            or (field.name not in _LATER and "came later" not in field.metadata)
        )
    ]
    making: Making = cut.making
    return [type(cut).__name__, numbers, making.by, making.when, making.cutter]
