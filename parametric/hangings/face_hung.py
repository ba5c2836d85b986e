"""Leaves on one track over the face of a wall: what they cover, how high they are, where they hang.

seen from the side        head |__
track  []                  wall  |   the leaf laps over the head and the sides, and clears
leaf   ||                        |   the highest floor by the floor gap
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.hangings.hanging import DoorBlock, Fit, Fittings, Site, Stock
from parametric.written import Length


class FaceHungSpec(DoorBlock):
    """A door on one track over the face of a wall, as written."""

    side_lap: Length
    head_lap: Length

    @property
    def fit(self) -> Fit:
        """It covers its opening."""
        return "covers"

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs from a track."""
        return ("track",)


@dataclass(frozen=True, slots=True, kw_only=True)
class OverTheFace:
    """What all leaves over a face have in common, mm."""

    lap: Figure
    cover: Figure
    height: Figure
    floor_gap: Figure
    plane: Figure
    wall_gap: Figure
    stack_lap: Figure
    head_above_foot: Figure
    travel_gap: Figure | None


def over_the_face(
    spec: FaceHungSpec, site: Site, stock: tuple[Stock, ...], fittings: Fittings
) -> OverTheFace:
    """Cover from the widest reading and both laps; height from the head at the highest floor.

    Source: common practice, no source (cover from the largest, fit from the plumb clear width).
    """
    assert fittings.off_wall is not None, "the reader has seen that there is a track"
    lap = named("side lap", spec.side_lap)
    floor_gap = named("floor gap", spec.floor_gap)
    cover = named("cover", site.widest + 2 * lap)
    plane = named("track off the wall", fittings.off_wall)
    thickest = max((one.thickness for one in stock), key=float)
    return OverTheFace(
        lap=lap,
        cover=cover,
        height=named("leaf height", site.head + named("head lap", spec.head_lap) - floor_gap),
        floor_gap=floor_gap,
        plane=plane,
        wall_gap=named("gap behind the leaf", plane - thickest / 2),
        stack_lap=named("lap each side where narrowest", (cover - site.narrowest) / 2),
        head_above_foot=named("head above the foot", site.head - floor_gap),
        travel_gap=site.gap_in_travel(floor_gap),
    )
