"""Bypass doors: leaves on parallel tracks that pass one another.

seen from above, shut                wall face
=====================================---------
          |____B____|                 inner track
|____A____|                           outer track
0                        cover
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations, pairwise
from typing import Literal

from parametric.figures import Figure, named
from parametric.hangings.hanging import (
    DoorBlock,
    EdgeRole,
    Fit,
    Fittings,
    Hanging,
    HungLeaf,
    Site,
    Span,
    Stock,
    TrackLine,
    states_of,
)
from parametric.model import Slide, State
from parametric.names import join
from parametric.problems import Problem
from parametric.written import Count, Length

TRACK_PLACES = ("front", "middle", "back")
MOST_LEAVES = 6
"""More that pass one another are a slip of the pen. Common practice, no source."""


class BypassSpec(DoorBlock):
    """A door whose leaves pass one another, as written."""

    kind: Literal["bypass"]
    leaves: Count
    hung: Literal["on the wall", "in the opening"]
    side_lap: Length
    head_lap: Length
    track_allowance: Length
    overlap: Literal["stile"] | Length
    between_leaves: Length
    beside_leaves: Length
    tracks: tuple[Literal["front", "middle", "back"], ...] | None = None

    @property
    def fit(self) -> Fit:
        """Over the face of the wall it covers; in the opening it fits."""
        return "covers" if self.hung == "on the wall" else "fits"

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs from tracks."""
        return ("track",)

    @property
    def unused(self) -> Mapping[str, str]:
        """Laps belong to leaves over the wall; what stands between and before them, to those within."""
        keys = (
            ("track allowance", "between leaves", "beside leaves")
            if self.hung == "on the wall"
            else ("side lap", "head lap")
        )
        return dict.fromkeys(keys, f"`hung: {self.hung}`")

    @property
    def asks_of_track(self) -> tuple[str, ...]:
        """Leaves pass on tracks that are so far apart."""
        return ("spacing",)

    @property
    def leaf_count(self) -> int:
        """As many as are written."""
        return int(self.leaves)

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """Meeting where they lie over one another, free at the ends."""
        last = self.leaf_count - 1
        return tuple(
            ("free" if i == 0 else "meeting", "free" if i == last else "meeting")
            for i in range(self.leaf_count)
        )

    @property
    def places(self) -> tuple[int, ...]:
        """The track of each leaf, 0 for the outermost: as written, else one and the other in turn."""
        if self.tracks is None:
            return tuple(i % 2 for i in range(self.leaf_count))
        used = [word for word in TRACK_PLACES if word in self.tracks]
        return tuple(used.index(word) for word in self.tracks)

    def faults(self) -> tuple[Problem, ...]:
        """One leaf has none to pass; neighbours on one track would meet and not pass."""
        count = self.leaf_count
        if count < 2:
            said = (
                'One leaf has none to pass. Did you mean "kind: sliding"?'
                if count == 1
                else "A door has at least one leaf."
            )
            return (
                self._fault(
                    "too_few_leaves",
                    said,
                    "leaves",
                    str(count),
                    "2",
                    "Write `leaves: 2`, or `kind: sliding`.",
                ),
            )
        if count > MOST_LEAVES:
            return (
                self._fault(
                    "too_many_leaves",
                    f"{count} leaves that pass one another are more than anybody hangs.",
                    "leaves",
                    str(count),
                    f"2 to {MOST_LEAVES}",
                    f"Write {MOST_LEAVES} or fewer.",
                ),
            )
        if self.tracks is not None and len(self.tracks) != count:
            return (
                self._fault(
                    "tracks_do_not_match",
                    f'"tracks" says where {len(self.tracks)} leaves run, and there are {count}.',
                    "tracks",
                    f"{len(self.tracks)} tracks",
                    f"{count}, one a leaf from the left",
                    "Write one for each leaf, from the left.",
                ),
            )
        if any(a == b for a, b in pairwise(self.places)):
            return (
                self._fault(
                    "neighbours_on_one_track",
                    "Two leaves beside one another run on one track: they cannot pass.",
                    "tracks",
                    ", ".join(self.tracks or ()),
                    "neighbours on different tracks",
                    "Write `tracks: [front, back, front]`, and so on.",
                ),
            )
        return ()

    def _fault(self, code: str, said: str, key: str, found: str, allowed: str, fix: str) -> Problem:
        return Problem(
            code=code,
            level="stop",
            message=said,
            where=self.line(key),
            about=self.heading,
            found=found,
            allowed=allowed,
            fix=fix,
            unreadable=True,
        )

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """A pair over the face of the wall, or inside the opening."""
        return _size(self, site, stock, fittings)


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


def _size(spec: BypassSpec, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
    assert fittings.off_wall is not None
    assert fittings.spacing is not None
    on_wall = spec.hung == "on the wall"
    count, places = spec.leaf_count, spec.places
    thick = _thickest(stock, places)
    thickness = max(thick, key=float)
    cover = cover_width(spec, site.widest, site.clear)
    overlap = overlap_width(spec, stock[0].right_stile)
    width = leaf_width(cover, overlap, spec.leaves)
    height = leaf_height(spec, site.head)
    floor_gap = named("floor gap", spec.floor_gap)
    words = ("outer", "middle", "inner") if max(places) == 2 else ("outer", "inner")
    if on_wall:
        outer = named("outer track off the wall", fittings.off_wall)
        apart = named("track spacing", fittings.spacing)
        left = named(join(stock[0].name, "left edge"), -named("side lap", spec.side_lap))
        lap = named("lap each side where narrowest", (cover - site.narrowest) / 2)
    else:
        # Inside the opening the planes lie behind the wall face, so they count negative.
        half = thickness / 2
        apart = named("track spacing", thickness + named("between leaves", spec.between_leaves))
        outer = named(
            "outer track off the wall", -(named("beside leaves", spec.beside_leaves) + half)
        )
        left = named(join(stock[0].name, "left edge"), site.clear_left)
        lap = named("lap each side where narrowest", 0.0)
    planes = [outer]
    for word in words[1:]:
        planes.append(named(f"{word} track off the wall", planes[-1] - apart))
    if count == 2:
        lefts = [left, named(join(stock[1].name, "left edge"), left + cover - width)]
    else:
        lefts = [left] + [
            named(join(stock[i].name, "left edge"), left + i * (width - overlap))
            for i in range(1, count)
        ]
    travels = tuple(
        named(join(stock[i].name, "travel"), far)
        for i, far in enumerate(_travels(places, cover, width, overlap))
    )
    side_by_side = max(places.count(track) for track in places)
    stacked = width if side_by_side == 1 else side_by_side * width
    aside = _slid_for_a_way_between(lefts, travels, places, width, float(cover - stacked))
    if aside or not on_wall:
        # between two leaves that stay at the ends no lap is lost
        clear_way = named("clear way", cover - stacked)
    else:
        clear_way = named("clear way", site.narrowest - (stacked - lap))
    length = named("track length", cover)
    roles = spec.roles()
    return Hanging(
        kind=spec.kind,
        on_wall=on_wall,
        cover=cover,
        overlap=overlap,
        leaf_width=width,
        leaf_height=height,
        floor_gap=floor_gap,
        head_above_foot=named("head above the foot", site.head - floor_gap),
        passing_gap=_passing_gap(apart, thick),
        wall_gap=named(
            "gap behind the inner leaf" if on_wall else "gap before the outer leaf",
            planes[-1] - thick[-1] / 2 if on_wall else -outer - thick[0] / 2,
        ),
        leaves=tuple(
            HungLeaf(
                letter=stock[i].letter,
                block=spec.leaf_blocks[i],
                width=width,
                height=height,
                left=lefts[i],
                foot=floor_gap,
                plane=planes[places[i]],
                left_edge=roles[i][0],
                right_edge=roles[i][1],
                motion=(Slide(direction=(1.0, 0.0, 0.0), travel=travels[i]),),
                pull_side="right" if i == count - 1 else "left",
                travel=travels[i],
                track=places[i],
            )
            for i in range(count)
        ),
        tracks=tuple(
            TrackLine(word=word, plane=plane, left=left, length=length)
            for word, plane in zip(words, planes, strict=True)
        ),
        states=_states(travels, aside, stock),
        clear_way=clear_way,
        stack_lap=lap,
        travel_gap=site.gap_in_travel(floor_gap),
        across=tuple(
            Span(
                what="leaf",
                name=stock[i].name,
                size=width,
                past=named(
                    f"{stock[i].name} alone",
                    width - (overlap if i in (0, count - 1) else 2 * overlap),
                )
                if count > 2
                else None,
            )
            for i in range(count)
        ),
    )


def _thickest(stock: tuple[Stock, ...], places: tuple[int, ...]) -> tuple[Figure, ...]:
    """The thickest leaf of each track, from the outermost."""
    return tuple(
        max(
            (one.thickness for one, place in zip(stock, places, strict=True) if place == track),
            key=float,
        )
        for track in range(max(places) + 1)
    )


def _passing_gap(apart: Figure, thick: tuple[Figure, ...]) -> Figure:
    """The least air between two tracks' leaves: half of either stands in what parts the tracks."""
    least = min(pairwise(thick), key=lambda pair: -float(pair[0]) - float(pair[1]))
    if float(least[0]) == float(least[1]):
        return named("gap between passing leaves", apart - least[0])
    return named("gap between passing leaves", apart - (least[0] + least[1]) / 2)


def _slid_for_a_way_between(
    lefts: Sequence[Figure],
    travels: Sequence[Figure],
    places: tuple[int, ...],
    width: Figure,
    way: float,
) -> tuple[int, ...]:
    """The fewest leaves to slide for a way as wide as this between two others; none where none is.

    Two leaves of one track may not come to stand in one place.
    """
    count, wide = len(places), float(width)
    for moved in (
        some for number in range(1, count) for some in combinations(range(count), number)
    ):
        stands = [
            (float(lefts[i]) + (float(travels[i]) if i in moved else 0.0), places[i])
            for i in range(count)
        ]
        stands.sort()
        if any(
            one[1] == other[1] and other[0] - one[0] < wide - SAME_PLACE
            for one, other in combinations(stands, 2)
        ):
            continue
        if any(b - a - wide > way - SAME_PLACE for (a, _), (b, _) in pairwise(stands)) and way > 0:
            return moved
    return ()


def _travels(
    places: tuple[int, ...], cover: Figure, width: Figure, overlap: Figure
) -> tuple[Figure, ...]:
    """How far each leaf slides, right positive: to the right as far as its track is free.

    Leaves of one track stand side by side there. The last of each track stands there already,
    and slides to the left instead, to the one before it.
    """
    if len(places) == 2:
        return (cover - width, -(cover - width))
    found: list[Figure] = []
    for i, track in enumerate(places):
        after = places[i + 1 :].count(track)
        beside = max((j for j in range(i) if places[j] == track), default=None)
        stands = i * (width - overlap)
        free = Figure(0.0) if beside is None else beside * (width - overlap) + width
        right = cover - (after + 1) * width - stands
        found.append(right if float(right) > SAME_PLACE else free - stands)
    return tuple(found)


SAME_PLACE = 1e-6
"""A leaf that could go no farther than this stays, mm."""


def _states(
    travels: tuple[Figure, ...], aside: tuple[int, ...], stock: tuple[Stock, ...]
) -> tuple[State, ...]:
    """A pair passes either way; more leaves stand together at the right, or the rest at the left."""
    count = len(travels)
    if count == 2:
        return states_of(
            {
                "shut": {},
                "half open, left leaf": {0: 0.5},
                "half open, both passing": {0: 0.5, 1: 0.5},
                "open to the left": {1: 1.0},
                "open to the right": {0: 1.0},
            },
            stock,
        )
    rights = [i for i, travel in enumerate(travels) if float(travel) > 0]
    lefts = [i for i in range(count) if i not in rights]
    between = "middle leaf aside" if count == 3 else "open between two leaves"
    return states_of(
        {
            "shut": {},
            "half open": dict.fromkeys(rights, 0.5),
            "open to the right": dict.fromkeys(rights, 1.0),
            "last leaves to the left": dict.fromkeys(lefts, 1.0),
            **({between: dict.fromkeys(aside, 1.0)} if aside else {}),
        },
        stock,
    )
