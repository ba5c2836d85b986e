"""Bypass doors: leaves on parallel tracks that pass one another.

seen from above, shut                wall face
=====================================---------
          |____B____|                 inner track
|____A____|                           outer track
0                        cover
"""

from __future__ import annotations

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
from parametric.model import Slide
from parametric.names import leaf_letter
from parametric.problems import Problem
from parametric.written import Count, Length


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

    @property
    def fit(self) -> Fit:
        """Over the face of the wall it covers; in the opening it fits."""
        return "covers" if self.hung == "on the wall" else "fits"

    @property
    def needs(self) -> tuple[str, ...]:
        """It hangs from tracks."""
        return ("track",)

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

    def faults(self) -> tuple[Problem, ...]:
        """One leaf has none to pass; more than two wait for a later version."""
        count = self.leaf_count
        if count == 2:
            return ()
        if count > 2:
            return (
                Problem(
                    code="not_built_yet",
                    level="stop",
                    message=f"A bypass door of {count} leaves cannot be built by this version yet.",
                    where=self.line("leaves"),
                    about="leaves",
                    found="leaves",
                    allowed="2",
                    fix="Take it out, or wait for a version that builds it.",
                ),
            )
        return (
            Problem(
                code="too_few_leaves",
                level="stop",
                message='One leaf has none to pass. Did you mean "kind: sliding"?'
                if count == 1
                else "A door has at least one leaf.",
                where=self.line("leaves"),
                about=self.heading,
                found=f"{count}",
                allowed="2",
                fix="Write `leaves: 2`, or `kind: sliding`.",
                unreadable=True,
            ),
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
    thickness = stock[0].thickness
    cover = cover_width(spec, site.widest, site.clear)
    overlap = overlap_width(spec, stock[0].right_stile)
    width = leaf_width(cover, overlap, spec.leaves)
    height = leaf_height(spec, site.head)
    floor_gap = named("floor gap", spec.floor_gap)
    if on_wall:
        outer = named("outer track off the wall", fittings.off_wall)
        apart = named("track spacing", fittings.spacing)
        inner = named("inner track off the wall", outer - apart)
        left = named("leaf A / left edge", -named("side lap", spec.side_lap))
        lap = named("lap each side where narrowest", (cover - site.narrowest) / 2)
        clear_way = named("clear way", site.narrowest - (width - lap))
    else:
        # Inside the opening the planes lie behind the wall face, so they count negative.
        half = thickness / 2
        apart = named("track spacing", thickness + named("between leaves", spec.between_leaves))
        outer = named(
            "outer track off the wall", -(named("beside leaves", spec.beside_leaves) + half)
        )
        inner = named("inner track off the wall", outer - apart)
        left = named("leaf A / left edge", site.clear_left)
        lap = named("lap each side where narrowest", 0.0)
        clear_way = named("clear way", cover - width)
    lefts = (left, named("leaf B / left edge", left + cover - width))
    travels = (named("leaf A / travel", cover - width), named("leaf B / travel", -(cover - width)))
    length = named("track length", cover)
    planes, roles = (outer, inner), spec.roles()
    return Hanging(
        kind=spec.kind,
        on_wall=on_wall,
        cover=cover,
        overlap=overlap,
        leaf_width=width,
        leaf_height=height,
        floor_gap=floor_gap,
        head_above_foot=named("head above the foot", site.head - floor_gap),
        passing_gap=named("gap between passing leaves", apart - thickness),
        wall_gap=named(
            "gap behind the inner leaf" if on_wall else "gap before the outer leaf",
            inner - thickness / 2 if on_wall else -outer - thickness / 2,
        ),
        leaves=tuple(
            HungLeaf(
                letter=leaf_letter(i),
                block=spec.leaf_blocks[i],
                width=width,
                height=height,
                left=lefts[i],
                foot=floor_gap,
                plane=planes[i],
                left_edge=roles[i][0],
                right_edge=roles[i][1],
                motion=(Slide(direction=(1.0, 0.0, 0.0), travel=travels[i]),),
                pull_side="left" if i == 0 else "right",
                travel=travels[i],
                track=i,
            )
            for i in range(2)
        ),
        tracks=tuple(
            TrackLine(word=word, plane=plane, left=left, length=length)
            for word, plane in zip(("outer", "inner"), planes, strict=True)
        ),
        states=states_of(
            {
                "shut": {},
                "half open, left leaf": {0: 0.5},
                "half open, both passing": {0: 0.5, 1: 0.5},
                "open to the left": {1: 1.0},
                "open to the right": {0: 1.0},
            },
            2,
        ),
        clear_way=clear_way,
        stack_lap=lap,
        travel_gap=None
        if site.rise is None
        else named("floor gap in the travel", floor_gap - site.rise),
        across=tuple(
            Span(what="leaf", name=f"leaf {leaf_letter(i)}", size=width) for i in range(2)
        ),
    )
