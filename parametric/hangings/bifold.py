r"""Bifold doors: leaves hung to one another that fold against a jamb, hung from a head track.

seen from above, half folded to the left        P the pivot, G a pin in the track, both in the
                                                middle of the leaf's thickness, as far in from
jamb  P-----------track--------G                the end of each leaf
       \            /                           K the line of the hinges, proud of the face that
        \   A    B /                            closes on the other
         \        /
             K        towards the viewer

P K and K G are alike, so that G stays in the track while both leaves turn alike. In a longer
chain every second leaf carries a pin; hinges lie on either face in turn.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, hypot, named
from parametric.hangings.hanging import (
    Clearance,
    DoorBlock,
    EdgeRole,
    Fittings,
    Hanging,
    HungLeaf,
    Side,
    Site,
    Span,
    Stock,
    TrackLine,
    states_of,
)
from parametric.hangings.swinging import RIGHT_ANGLE
from parametric.model import Turn, Vector
from parametric.names import join
from parametric.problems import Problem
from parametric.written import Count, Length

MOST_IN_A_CHAIN = 6
"""Leaves folding to one side; more hang on too few pins. Common practice, no source."""


class BifoldSpec(DoorBlock):
    """Leaves that fold, as written."""

    kind: Literal["bifold"]
    leaves: Count
    folds_to: Literal["left", "right", "both"]
    jamb_gap: Length
    fold_gap: Length
    meeting_gap: Length
    track_allowance: Length
    pivot_in: Length = Field(description="pivot and track pin, in from the end of their leaf")

    @property
    def leaf_count(self) -> int:
        """As many as are written."""
        return int(self.leaves)

    @property
    def chains(self) -> tuple[int, int]:
        """How many leaves fold to the left and to the right."""
        count = self.leaf_count
        if self.folds_to == "both":
            return (count // 2, count // 2)
        return (count, 0) if self.folds_to == "left" else (0, count)

    @property
    def unused(self) -> Mapping[str, str]:
        """Leaves that all fold to one side meet no others."""
        return {} if self.folds_to == "both" else {"meeting gap": f"`folds to: {self.folds_to}`"}

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """A pivot at the jamb, folds between, and an edge that meets a jamb or the other chain."""
        left, right = self.chains
        free: EdgeRole = "meeting" if left and right else "closing"
        chain: list[tuple[EdgeRole, EdgeRole]] = [
            ("pivot" if i == 0 else "fold", free if i == left - 1 else "fold") for i in range(left)
        ]
        chain += [
            (free if i == 0 else "fold", "pivot" if i == right - 1 else "fold")
            for i in range(right)
        ]
        return tuple(chain)

    def faults(self) -> tuple[Problem, ...]:
        """Leaves fold in twos, and to both sides in twos on each."""
        count = self.leaf_count
        both = self.folds_to == "both"
        least = 4 if both else 2
        if count % 2 == 0 and least <= count <= MOST_IN_A_CHAIN * (2 if both else 1):
            if both and count % 4:
                return (self._fault("Each side folds in twos", count, "4, 8 or 12"),)
            return ()
        if both:
            said = "Folding to both sides takes an even number of leaves"
            return (self._fault(said, count, "4, 8 or 12"),)
        return (self._fault("Leaves fold in twos", count, "2, 4 or 6"),)

    def _fault(self, said: str, count: int, allowed: str) -> Problem:
        return Problem(
            code="leaves_do_not_fold",
            level="stop",
            message=f"{said}; you wrote {count}.",
            where=self.line("leaves"),
            about=self.heading,
            found=str(count),
            allowed=allowed,
            fix=f"Write {allowed}.",
            unreadable=True,
        )

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Leaves alike within the plumb clear width, under the head track."""
        return _size(self, site, stock, fittings)


def _size(spec: BifoldSpec, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
    assert fittings.pin_out is not None
    count, (in_left, in_right) = spec.leaf_count, spec.chains
    jamb, fold = named("jamb gap", spec.jamb_gap), named("fold gap", spec.fold_gap)
    meeting = named("meeting gap", spec.meeting_gap) if in_left and in_right else None
    gaps = [fold] * (count - 1)
    if meeting is not None:
        gaps[in_left - 1] = meeting
    total: Figure = 2 * jamb
    for gap in gaps:
        total = total + gap
    floor_gap = named("floor gap", spec.floor_gap)
    width = named("leaf width", (site.clear - total) / count)
    height = named(
        "leaf height", site.head - named("track allowance", spec.track_allowance) - floor_gap
    )
    thickness = max((one.thickness for one in stock), key=float)
    plane = named(
        "middle off the wall face", -thickness / 2 if site.wall is None else -site.wall / 2
    )
    pivot_in = named(
        "pivot from the end of the leaf",
        spec.pivot_in if fittings.pivot_in is None else fittings.pivot_in,
    )
    off = named("fold line from the middle of the leaf", thickness / 2 + fittings.pin_out)
    lefts: list[Figure] = []
    at: Figure = site.clear_left + jamb
    for i in range(count):
        lefts.append(named(join(stock[i].name, "left edge"), at))
        at = at + width + (gaps[i] if i < count - 1 else jamb)
    angle = named("leaves fold by", RIGHT_ANGLE, "deg")
    motions = _motions(spec, lefts, width, gaps, pivot_in, off, plane, float(angle))
    deep = thickness + 2 * fittings.pin_out
    ways = [
        _stack(side, length, jamb, pivot_in, thickness, deep)
        for side, length in (("left", in_left), ("right", in_right))
        if length
    ]
    stands: Figure = ways[0]
    for way in ways[1:]:
        stands = stands + way
    roles = spec.roles()
    leaves = tuple(
        HungLeaf(
            letter=stock[i].letter,
            block=spec.leaf_blocks[i],
            width=width,
            height=height,
            left=lefts[i],
            foot=floor_gap,
            plane=plane,
            left_edge=roles[i][0],
            right_edge=roles[i][1],
            motion=motions[i],
            pull_side="right" if i < in_left else "left",
            swing=angle,
            hinged=_hinged(spec, i),
            track=0,
        )
        for i in range(count)
    )
    across: list[Span] = [Span(what="gap", name="left jamb gap", size=jamb)]
    for i in range(count):
        across.append(Span(what="leaf", name=stock[i].name, size=width))
        if i < count - 1:
            word = "meeting gap" if gaps[i] is meeting else "fold gap"
            across.append(Span(what="gap", name=word, size=gaps[i]))
    across.append(Span(what="gap", name="right jamb gap", size=jamb))
    return Hanging(
        kind=spec.kind,
        on_wall=False,
        cover=named("cover", site.clear),
        leaf_width=width,
        leaf_height=height,
        floor_gap=floor_gap,
        head_above_foot=named("head above the foot", site.head - floor_gap),
        leaves=leaves,
        tracks=(
            TrackLine(
                word="head",
                plane=plane,
                left=named("track begins at", site.clear_left),
                length=named("track length", site.clear),
            ),
        ),
        states=states_of(
            {
                "shut": {},
                "half open": dict.fromkeys(range(count), 0.5),
                "open": dict.fromkeys(range(count), 1.0),
            },
            stock,
        ),
        clear_way=named("clear way", site.clear - stands),
        across=tuple(across),
        meeting_gap=meeting,
        fold_gap=fold,
        jamb_gap=jamb,
        travel_gap=site.gap_in_travel(floor_gap),
        reach=named("reach when open", width - pivot_in + plane),
        meeting=None if meeting is None else "butt",
        clearances=_clearances(
            (in_left, in_right), jamb, meeting, fold, width, thickness, pivot_in, off
        ),
    )


def _clearances(
    chains: tuple[int, int],
    jamb: Figure,
    meeting: Figure | None,
    fold: Figure,
    width: Figure,
    thickness: Figure,
    pivot_in: Figure,
    off: Figure,
) -> tuple[Clearance, ...]:
    """What a corner at the pivot needs of the jamb gap, and the last edge of a chain of its gap.

    Folding, a chain first grows longer: its hinges lie off the line of its pins, and must come
    through it. Its last corner is then as far from the pivot as hypot(A, B), where A runs
    along the track and B is all that hinges and corner stand off it. Source: geometry of a
    chain whose links turn alike.
    """
    corner = named(
        "gap that the corner at the pivot needs", hypot(pivot_in, thickness / 2) - pivot_in
    )
    found = [Clearance(where="jamb gap at the pivot", key="jamb gap", has=jamb, needs=corner)]
    pushes: list[Figure] = []
    for side, length in zip(("left", "right"), chains, strict=True):
        if not length:
            continue
        run = length * width + (length - 1) * fold - pivot_in
        aside = (2 * length - 2) * off + thickness / 2
        pushes.append(
            named(
                join("folding", f"gap that the last edge from the {side} needs"),
                hypot(run, aside) - run,
            )
        )
    if meeting is None:
        found.append(
            Clearance(
                where="jamb gap at the closing edge", key="jamb gap", has=jamb, needs=pushes[0]
            )
        )
    else:
        both = named(join("folding", "gap that both last edges need"), pushes[0] + pushes[1])
        found.append(Clearance(where="meeting gap", key="meeting gap", has=meeting, needs=both))
    return tuple(found)


def _hinged(spec: BifoldSpec, index: int) -> tuple[tuple[Side, Literal["front", "back"]], ...]:
    """A leaf's edges that are hung to a neighbour, and the face their hinges lie on.

    Counted from the jamb the first hinge lies on the back, the next on the front, and so on.
    """
    in_left, _ = spec.chains
    number = index if index < in_left else spec.leaf_count - 1 - index
    inner: Side = "right" if index < in_left else "left"
    found: list[tuple[Side, Literal["front", "back"]]] = []
    for side, role in zip(("left", "right"), spec.roles()[index], strict=True):
        if role == "fold":
            fold = number + 1 if side == inner else number
            found.append(
                (inner if side == inner else _other(inner), "back" if fold % 2 else "front")
            )
    return tuple(found)


def _other(side: Side) -> Side:
    return "left" if side == "right" else "right"


def _stack(
    side: str, length: int, jamb: Figure, pivot_in: Figure, thickness: Figure, deep: Figure
) -> Figure:
    """How much of the opening a folded chain takes up: its leaves lie hinge on hinge."""
    return named(
        join("folded", f"stack at the {side}"),
        jamb + pivot_in + thickness / 2 + (length - 1) * deep,
    )


def _motions(
    spec: BifoldSpec,
    lefts: list[Figure],
    width: Figure,
    gaps: list[Figure],
    pivot_in: Figure,
    off: Figure,
    plane: Figure,
    angle: float,
) -> list[tuple[Turn, ...]]:
    """Each leaf turns on the fold line to its neighbour nearer the jamb, then as that one does.

    Folds come towards the viewer: the first hinge lies on the back, where the faces close.
    """
    in_left, in_right = spec.chains
    count, middle = spec.leaf_count, -float(plane)
    found: list[tuple[Turn, ...]] = [()] * count
    for way, chain in ((1.0, range(in_left)), (-1.0, range(count - 1, in_left - 1, -1))):
        if not chain or (way < 0 and not in_right):
            continue
        before: tuple[Turn, ...] = ()
        for number, leaf in enumerate(chain):
            left, right = float(lefts[leaf]), float(lefts[leaf] + width)
            near = left if way > 0 else right
            if number == 0:
                turn = -way * angle
                before = (_turn((near + way * float(pivot_in), middle, 0.0), turn),)
            else:
                half = float(gaps[leaf - 1] if way > 0 else gaps[leaf]) / 2
                back = 1.0 if number % 2 else -1.0
                line = (near - way * half, middle + back * float(off), 0.0)
                before = (_turn(line, way * back * 2 * angle), *before)
            found[leaf] = before
    return found


def _turn(point: Vector, angle: float) -> Turn:
    return Turn(point=point, axis=(0.0, 0.0, 1.0), angle=angle)
