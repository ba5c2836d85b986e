"""Holes for the plates of cup hinges, in the case's sides: at the height of each cup, two to a plate.

overlay: on the front line                inset: behind the front that stands within the case
  side  |   37   o                          side  |thick|set back|  37   o
        |            32                           |front|        |           32
        |        o                                |     |                o
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.cases.boring import IN_FACE, Bite, BoringSpec, round_bite
from parametric.figures import Figure, named, smallest
from parametric.hangings.front_places import FrontsLie
from parametric.model import Drilled, Face
from parametric.names import join

FROM_FOOT, FROM_LEFT = "the foot of the case", "the left end of its board"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateHoles:
    """The plate holes of one leaf's hinges, mm: `heights` of the plates' middles in the case, or
    in a level board their places from its left end; `begins` says in words where they are
    measured from.

    `deep` is `asked` unless the board is too thin for that.
    """

    name: str
    heights: tuple[Figure, ...]
    line: Figure
    apart: Figure
    across: Figure
    deep: Figure
    asked: Figure
    begins: str = FROM_FOOT

    @property
    def bites(self) -> tuple[Bite, ...]:
        """Every hole, from the lowest."""
        half = self.apart / 2
        return tuple(
            round_bite(f"{self.name}, a plate's screw", up + way * half, self.line, self.across)
            for up in self.heights
            for way in (-1, 1)
        )


def plate_holes(
    spec: BoringSpec,
    *,
    name: str,
    hinges: Sequence[Figure],
    lie: FrontsLie,
    front: Figure,
    set_back: float = 0.0,
    both_faces: Figure | None = None,
    begins: str = FROM_FOOT,
) -> PlateHoles:
    """Where the plates of one leaf are screwed.

    Args:
        spec: how the workshop bores.
        name: `leaf A / hinge plates`.
        hinges: the middles of its hinges, from the case's foot or along a level board, mm.
        lie: how its front lies to the case.
        front: its thickness, mm.
        set_back: how far an inset front stands behind the case's front edges, mm; how far any
            stands before them where a face frame does, below 0.
        both_faces: thickness of a board that has plates on both of its faces, mm, so that those
            of one leaf may stand back to back with those of the other.
        begins: where the hinges are measured from, in words.

    Source: common practice, no source.
    """
    behind = spec.from_front + front if lie == "inset" else spec.from_front
    if set_back:
        behind = behind + set_back
    deep = spec.plate_holes[1]
    if both_faces is not None:
        deep = smallest(deep, (both_faces - spec.behind) / 2)
    return PlateHoles(
        name=name,
        heights=tuple(
            named(join(name, f"plate {number} {'height' if begins == FROM_FOOT else 'along'}"), up)
            for number, up in enumerate(sorted(hinges), 1)
        ),
        line=named(join(name, "line"), behind),
        apart=named(join(name, "screws apart"), spec.plate_pitch),
        across=named(join(name, "screw hole"), spec.plate_holes[0]),
        deep=named(join(name, "screw hole depth"), deep),
        asked=spec.plate_holes[1],
        begins=begins,
    )


def plate_cuts(
    plates: PlateHoles, *, face: Face, foot: float, front: float = 0.0
) -> tuple[Drilled, ...]:
    """A row of two for each plate, in a board that lies with its length up the case, or level.

    Args:
        plates: of the leaf.
        face: of the board.
        foot: how high its low end stands in the case, mm; 0 of a level board.
        front: how far behind the front edges its own stands, mm.
    """
    return tuple(
        Drilled(
            name="plate holes",
            face=face,
            u=up - plates.apart / 2 - foot,
            v=plates.line - front if front else plates.line,
            diameter=plates.across,
            depth=plates.deep,
            count=2,
            pitch=plates.apart,
            making=IN_FACE,
        )
        for up in plates.heights
    )
