r"""What closes a run to walls, ceiling and floor that are not true: fillers and plinth.

seen from the front, at the left wall; each is scribed on site
      wall                      blank = most to be seen + spare
     \    |~~~~|                visible = from the case to the wall, place by place
      \   |~~~~| case
       \  |~~~~|
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.figures import Figure, largest, named, smallest
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Filler:
    """A filler, or a plinth's boards: what is seen of it by place, and what it is made as, mm."""

    name: str
    seen: Mapping[str, Figure]
    least: Figure
    most: Figure
    blank: Figure


def size_filler(name: str, seen: Mapping[str, Figure], spare: Figure) -> Filler:
    """A filler between a true edge and one that is not.

    Args:
        name: its name (`run / left filler`).
        seen: how wide it must be at each place, mm.
        spare: added over the widest place, to be scribed away, mm.
    """
    shown = {place: named(join(name, f"seen {place}"), width) for place, width in seen.items()}
    most = named(join(name, "most to be seen"), largest(*shown.values()))
    return Filler(
        name=name,
        seen=shown,
        least=named(join(name, "least to be seen"), smallest(*shown.values())),
        most=most,
        blank=named(join(name, "width of its blank"), most + spare),
    )
