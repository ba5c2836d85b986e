"""Bypass doors: leaves on parallel tracks that pass one another.

seen from above, shut                wall face
=====================================---------
          |____B____|                 inner track
|____A____|                           outer track
0                        cover
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, named
from parametric.model import State
from parametric.names import leaf_letter
from parametric.written import Block, Count, Length, Name, Pins


class BypassSpec(Block):
    """A door whose leaves pass one another, as written."""

    kind: Literal["bypass"]
    in_: Name | None = None
    leaf: Name | None = None
    leaves: Count
    hung: Literal["on the wall", "in the opening"]
    side_lap: Length
    head_lap: Length
    floor_gap: Length
    track_allowance: Length
    overlap: Literal["stile"] | Length
    between_leaves: Length
    beside_leaves: Length
    track: Name | None = None
    guide: Name | None = None
    pull: Name | None = None
    finish: Name | None = None
    pinned: Pins | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bypass:
    """A bypass door resolved: how wide it covers, how it passes, how far it opens.

    Lengths mm. `planes` are the distances of the leaves' middles from the wall face,
    one a leaf, outwards positive; `wall_gap` is from the wall face to the leaf nearest it;
    `lefts` the leaves' left edges when shut, from the left edge of the opening; `travels`
    how far each leaf slides, right positive.
    """

    on_wall: bool
    cover: Figure
    overlap: Figure
    leaf_width: Figure
    leaf_height: Figure
    floor_gap: Figure
    head_above_foot: Figure
    passing_gap: Figure
    wall_gap: Figure
    planes: tuple[Figure, ...]
    tracks: tuple[str, ...]
    lefts: tuple[Figure, ...]
    travels: tuple[Figure, ...]
    clear_way: Figure
    stack_lap: Figure
    track_length: Figure

    def states(self) -> tuple[State, ...]:
        """The positions that previews, sheets and clash checks share."""
        a, b = (f"leaf {leaf_letter(i)}" for i in range(2))
        return (
            State(name="shut", open={a: 0.0, b: 0.0}),
            State(name="half open, left leaf", open={a: 0.5, b: 0.0}),
            State(name="half open, both passing", open={a: 0.5, b: 0.5}),
            State(name="open to the left", open={a: 0.0, b: 1.0}),
            State(name="open to the right", open={a: 1.0, b: 0.0}),
        )


def cover_width(spec: BypassSpec, widest: Figure, clear: Figure) -> Figure:
    """What the leaves together must cover: widest reading plus laps, or the clear width inside.

    Source: common practice, no source (cover from the largest, fit from the plumb clear width).
    """
    if spec.hung == "on the wall":
        return named("cover", widest + 2 * named("side lap", spec.side_lap))
    return named("cover", clear)


def overlap_width(spec: BypassSpec, stile: Figure) -> Figure:
    """How far neighbouring leaves lie over one another when shut."""
    return named("overlap", stile if isinstance(spec.overlap, str) else spec.overlap)


def leaf_width(cover: Figure, overlap: Figure, leaves: Figure) -> Figure:
    """N leaves and n - 1 equal overlaps fill the cover."""
    count = named("leaves", leaves, unit="")
    return named("leaf width", (cover + (count - 1) * overlap) / count)


def leaf_height(spec: BypassSpec, head: Figure) -> Figure:
    """From the head where the floor is highest: plus the lap over it, or less the track's room."""
    gap = named("floor gap", spec.floor_gap)
    if spec.hung == "on the wall":
        return named("leaf height", head + named("head lap", spec.head_lap) - gap)
    return named("leaf height", head - named("track allowance", spec.track_allowance) - gap)


def size_bypass(
    spec: BypassSpec,
    *,
    widest: Figure,
    narrowest: Figure,
    clear: Figure,
    clear_left: Figure,
    head: Figure,
    stile: Figure,
    thickness: Figure,
    off_wall: Figure,
    spacing: Figure,
) -> Bypass:
    """Size a pair from the measured opening and the track.

    Args:
        spec: the door as written.
        widest: largest width of the opening, mm.
        narrowest: smallest width, mm; the clear way is promised from it.
        clear: plumb clear width, mm.
        clear_left: where it begins, from the left foot of the opening, mm.
        head: head height where the floor is highest, mm.
        stile: the meeting stile's width, mm.
        thickness: leaf thickness, mm.
        off_wall: middle of the outer track from the wall face, mm.
        spacing: middle to middle of the tracks, mm.
    """
    on_wall = spec.hung == "on the wall"
    cover = cover_width(spec, widest, clear)
    overlap = overlap_width(spec, stile)
    width = leaf_width(cover, overlap, spec.leaves)
    height = leaf_height(spec, head)
    if on_wall:
        outer = named("outer track off the wall", off_wall)
        apart = named("track spacing", spacing)
        inner = named("inner track off the wall", outer - apart)
        left = named("leaf A / left edge", -named("side lap", spec.side_lap))
        lap = named("lap each side where narrowest", (cover - narrowest) / 2)
        clear_way = named("clear way", narrowest - (width - lap))
    else:
        # Inside the opening the planes lie behind the wall face, so they count negative.
        half = thickness / 2
        apart = named("track spacing", thickness + named("between leaves", spec.between_leaves))
        outer = named(
            "outer track off the wall", -(named("beside leaves", spec.beside_leaves) + half)
        )
        inner = named("inner track off the wall", outer - apart)
        left = named("leaf A / left edge", clear_left)
        lap = named("lap each side where narrowest", 0.0)
        clear_way = named("clear way", cover - width)
    return Bypass(
        on_wall=on_wall,
        cover=cover,
        overlap=overlap,
        leaf_width=width,
        leaf_height=height,
        floor_gap=named("floor gap", spec.floor_gap),
        head_above_foot=named("head above the foot", head - named("floor gap", spec.floor_gap)),
        passing_gap=named("gap between passing leaves", apart - thickness),
        wall_gap=named(
            "gap behind the inner leaf" if on_wall else "gap before the outer leaf",
            inner - thickness / 2 if on_wall else -outer - thickness / 2,
        ),
        planes=(outer, inner),
        tracks=("outer", "inner"),
        lefts=(left, named("leaf B / left edge", left + cover - width)),
        travels=(
            named("leaf A / travel", cover - width),
            named("leaf B / travel", -(cover - width)),
        ),
        clear_way=clear_way,
        stack_lap=lap,
        track_length=named("track length", cover),
    )
