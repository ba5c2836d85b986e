"""What every way to hang a door comes to: leaves where they stand shut, and how they move.

Nothing after the sizes asks which kind a door is. It asks what there is: tracks or none,
hinges or none, edges that meet, laps over the opening or gaps within it.

seen from above, shut                                 edges
jamb|<gap>|_leaf A_|<meeting gap>|_leaf B_|<gap>|jamb  hinge .. meeting  meeting .. hinge
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, named
from parametric.hangings.flaps import FlapSide, HungFlap
from parametric.model import State, Step
from parametric.problems import Problem
from parametric.units import Unit
from parametric.written import Block, Group, Length, Name, Pins

Side = Literal["left", "right"]
HungSide = Side | FlapSide
"""The edge of a leaf that hinges carry it by."""
EdgeRole = Literal["free", "hinge", "closing", "back", "meeting", "fold", "pivot"]
"""What an upright edge of a leaf does: `free` slides past or over everything; `hinge` and
`pivot` carry the leaf; `closing` meets a jamb and `back` is the other edge of a leaf that
slides; `meeting` is the next leaf's edge; `fold` is hung to the next leaf."""
Fit = Literal["covers", "fits"]
LeafCall = Name | tuple[Name, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """The numbers of a measured opening that a door is sized from, mm.

    `widest`, `narrowest`: of the readings; `clear`, `clear_left`: the plumb clear width and
    where it begins; `head`: above the highest floor; `foot`: how high above it the opening
    begins; `wall`: its thickness; `rise`: how far the floor rises in the travel of the leaves
    above the floor under the shut door; `heads`: at its left and its right, of a head that
    slopes, whose `head` is the lower.
    """

    widest: Figure
    narrowest: Figure
    clear: Figure
    clear_left: Figure
    head: Figure
    foot: Figure
    wall: Figure | None
    rise: Figure | None
    heads: tuple[Figure, Figure] | None = None

    def gap_in_travel(self, floor_gap: Figure) -> Figure | None:
        """What is left of the gap under the leaves on their way, mm; None where nobody measured."""
        if self.rise is None:
            return None
        return named("floor gap in the travel", floor_gap - self.rise)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A leaf as far as its door's sizes ask: its letter, and what it is made of, mm."""

    letter: str
    thickness: Figure
    left_stile: Figure
    right_stile: Figure

    @property
    def name(self) -> str:
        """`leaf A`."""
        return f"leaf {self.letter}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fittings:
    """The places that hardware asks for, mm: tracks off the wall and apart, a hinge's pin.

    `pin_out` is how far the middle of a hinge's pin stands proud of the leaf's knuckle face;
    `pin_beside` how far beyond the leaf's hinge edge, None in the middle of the gap there;
    `pivot_in` how far a pivot stands in from the end of its leaf, None where no pivot says it;
    `least_gap` what a hinge's data sheet asks for beside the leaf's hinge edge.
    """

    off_wall: Figure | None = None
    spacing: Figure | None = None
    pin_out: Figure | None = None
    pin_beside: Figure | None = None
    pivot_in: Figure | None = None
    least_gap: Figure | None = None
    flaps_open: tuple[Figure | None, ...] = ()
    """How far each leaf is held open by its stay, deg, in the order of the leaves; None where it
    is no flap, or nothing holds it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRebate:
    """A step along one whole edge of a leaf, taken from its front or back, mm.

    Where two leaves overlap: one has it on the back, the other on the front. `width` is
    measured in from the edge, `depth` through the thickness.
    """

    edge: Literal["left", "right", "foot", "top"]
    face: Literal["front", "back"]
    width: Figure
    depth: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A strip planted on the front or back of a leaf over the gap at one upright edge, mm."""

    edge: Side
    face: Literal["front", "back"]
    width: Figure
    thickness: Figure
    over: Figure
    """How far it stands past the leaf's own edge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HungLeaf:
    """One leaf where it stands shut, mm.

    `left` is its left edge from the left edge of the opening; `foot` its foot above the
    highest floor; `plane` the middle of its thickness from the wall face, outwards positive;
    `travel` how far it slides, right positive; `swing` how far it turns about an upright line,
    deg; `flap` how it does about a level one. `knuckles` says on which face its hinges'
    knuckles stand. A bevel is planed off an edge's far side.
    """

    letter: str
    block: str | None
    width: Figure
    height: Figure
    left: Figure
    foot: Figure
    plane: Figure
    left_edge: EdgeRole
    right_edge: EdgeRole
    motion: tuple[Step, ...]
    pull_side: Side | None
    """The stile that a pull is let into; None on a front that is drawn out by a knob or its edge."""
    travel: Figure | None = None
    swing: Figure | None = None
    track: int | None = None
    knuckles: Literal["front", "back"] | None = None
    left_bevel: Figure | None = None
    right_bevel: Figure | None = None
    hinged: tuple[tuple[HungSide, Literal["front", "back"]], ...] = ()
    """The edges that carry hinges, each with the face its knuckles stand on."""
    lock_edge: Side | None = None
    """The edge that a lock is let into, if the door has one."""
    strike_edge: Side | None = None
    """The edge that the strike of the other leaf's lock is let into."""
    seen_height: Figure | None = None
    """What stands above the leaf below it, where it laps that one."""
    rebates: tuple[EdgeRebate, ...] = ()
    strip: Strip | None = None
    stacked: bool = False
    """Others may stand over or under it, each with its own share of the height."""
    flap: HungFlap | None = None

    @property
    def name(self) -> str:
        """`leaf A`."""
        return f"leaf {self.letter}"

    def edge(self, side: HungSide) -> EdgeRole:
        """What an edge does; of the level ones, those of a flap."""
        match side:
            case "left":
                return self.left_edge
            case "right":
                return self.right_edge
            case "top" | "bottom":
                if self.flap is None:
                    return "free"
                return "hinge" if self.flap.side == side else "closing"

    @property
    def turns(self) -> bool:
        """Whether it turns as it opens, about an upright line or a level one."""
        return self.swing is not None or self.flap is not None

    def bevel(self, side: Side) -> Figure | None:
        """The bevel of the left or the right edge, deg."""
        return self.left_bevel if side == "left" else self.right_bevel

    def side_of(self, role: EdgeRole) -> Side | None:
        """The side whose edge does this; None where none does. The left where both do."""
        if self.left_edge == role:
            return "left"
        return "right" if self.right_edge == role else None


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackLine:
    """One track: what it is called, its middle off the wall face, where it begins, its length, mm."""

    word: str
    plane: Figure
    left: Figure
    length: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """One stretch of a chain of sizes that add up: a gap, a lap or a leaf, mm.

    `past` is what a leaf covers alone, where another lies over or under a part of it.
    """

    what: Literal["gap", "lap", "leaf"]
    name: str
    size: Figure
    past: Figure | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """A gap that an edge must pass as it turns: what there is, what the turn needs, mm.

    `key` is the word in the door's block that says the gap.
    """

    where: str
    key: str
    has: Figure
    needs: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """The case that fronts are hung to, which stands before they are made, mm.

    `gap` is between the fronts, `edge` how thick its sides, its top and its bottom are seen from the front; `partitions`
    are the left edges of what stands between its bays, each of the same `partition`.
    """

    gap: Figure
    edge: Figure
    partition: Figure
    partitions: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """A door resolved: how its leaves stand, move and share the opening. Lengths mm.

    `cover` is what the leaves cover or fill; `across` adds up to it from left to right, but
    for the overlaps that leaves share. `head_gap` and `meeting_gap` are None where leaves lap.
    `passing_gap` is between leaves that pass; `wall_gap` behind the leaf nearest the wall (in
    an opening, before the outermost). `stack_lap` is how far a leaf laps the wall each side
    where the opening is narrowest. `reach` is how far into the room leaves come when they open.
    """

    kind: str
    on_wall: bool
    cover: Figure
    leaf_width: Figure
    leaf_height: Figure
    floor_gap: Figure
    head_above_foot: Figure
    leaves: tuple[HungLeaf, ...]
    tracks: tuple[TrackLine, ...]
    states: tuple[State, ...]
    clear_way: Figure | None
    """What open leaves leave to walk through; None where nobody does."""
    across: tuple[Span, ...]
    overlap: Figure | None = None
    passing_gap: Figure | None = None
    wall_gap: Figure | None = None
    stack_lap: Figure | None = None
    head_gap: Figure | None = None
    meeting_gap: Figure | None = None
    hinge_gap: Figure | None = None
    lock_gap: Figure | None = None
    fold_gap: Figure | None = None
    split_gap: Figure | None = None
    jamb_gap: Figure | None = None
    pocket: Figure | None = None
    """How deep the pocket in the wall must be, from the side of the opening."""
    travel_gap: Figure | None = None
    """Least gap over the floor anywhere in the travel; None where the floor there is not known."""
    reach: Figure | None = None
    meeting: Literal["butt", "rebated", "astragal"] | None = None
    meeting_rebate: Figure | None = None
    planed_gap: Figure | None = None
    """The meeting gap on the face that bevels are planed off; None between square edges."""
    clearances: tuple[Clearance, ...] = ()
    case: Case | None = None
    """What the leaves are fronts of, where they hang in or over a case."""

    @property
    def lefts(self) -> tuple[Figure, ...]:
        """The leaves' left edges when shut."""
        return tuple(leaf.left for leaf in self.leaves)

    @property
    def planes(self) -> tuple[Figure, ...]:
        """The middles of the leaves off the wall face."""
        return tuple(leaf.plane for leaf in self.leaves)

    @property
    def swings(self) -> bool:
        """Whether any leaf turns about an upright line as it opens."""
        return any(leaf.swing is not None for leaf in self.leaves)

    @property
    def turns(self) -> bool:
        """Whether any leaf turns as it opens, about an upright line or a level one."""
        return any(leaf.turns for leaf in self.leaves)

    @property
    def flaps(self) -> bool:
        """Whether any leaf turns about a level line."""
        return any(leaf.flap is not None for leaf in self.leaves)


class DoorBlock(Block):
    """A door as written: what every kind has."""

    kind: str
    in_: Name | None = None
    leaf: LeafCall | None = None
    floor_gap: Length
    track: Name | None = None
    guide: Name | None = None
    hinge: Name | None = None
    pull: Name | None = None
    lock: Name | None = None
    finish: Name | None = None
    pinned: Pins | None = None

    @property
    def fit(self) -> Fit:
        """Whether it covers its opening or fits inside it."""
        return "fits"

    @property
    def needs(self) -> tuple[str, ...]:
        """The blocks of hardware that it cannot do without."""
        return ()

    @property
    def hangs_on(self) -> tuple[str, ...] | None:
        """The kinds of hinge that can carry it; None for any."""
        return None

    @property
    def asks_of_track(self) -> tuple[str, ...]:
        """Keys of the track's block that it cannot be sized without."""
        return ()

    @property
    def leaf_count(self) -> int:
        """How many leaves it has."""
        return 1

    @property
    def leaf_blocks(self) -> tuple[str | None, ...]:
        """The leaf block of each leaf, None for the unnamed one."""
        if isinstance(self.leaf, tuple):
            return tuple(str(name) for name in self.leaf)
        return (None if self.leaf is None else str(self.leaf),) * self.leaf_count

    def faults(self) -> tuple[Problem, ...]:
        """What cannot be, whatever the opening: a leaf alone that should pass another."""
        return ()

    def misfits(self, site: Site, unit: Unit) -> tuple[Problem, ...]:
        """What cannot be in this opening: fronts that add up to more than there is."""
        del site, unit
        return ()

    def callers(self) -> tuple[Group, ...]:
        """Lines of its lists that may call a leaf of their own."""
        return ()

    @property
    def unused(self) -> Mapping[str, str]:
        """Keys that say nothing here, each with the words written beside them that make it so."""
        return {}

    def leaves_called(self) -> tuple[Problem, ...]:
        """A list of leaves names one for each."""
        if not isinstance(self.leaf, tuple) or len(self.leaf) == self.leaf_count:
            return ()
        return (
            Problem(
                code="leaves_do_not_match",
                level="stop",
                message=f'"leaf" names {len(self.leaf)} leaves, and {self.heading} has '
                f"{self.leaf_count}.",
                where=self.line("leaf"),
                about=self.heading,
                found=f"{len(self.leaf)} names",
                allowed=f"{self.leaf_count} names, from the left, or one for all",
                fix="Name one for each leaf, or one for all.",
                unreadable=True,
            ),
        )

    def roles(self) -> tuple[tuple[EdgeRole, EdgeRole], ...]:
        """What each leaf's left and right edge does, by which its stiles are looked up."""
        return (("free", "free"),) * self.leaf_count

    @abstractmethod
    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Size the door from the measured opening.

        Args:
            site: the opening.
            stock: one a leaf, from the left.
            fittings: what its hardware asks for.
        """


def states_of(
    names: Mapping[str, Mapping[int, float]], stock: tuple[Stock, ...]
) -> tuple[State, ...]:
    """States by name; each says how far the leaves of these numbers are open, the rest shut.

    Leaves are numbered within their door, from 0, as `stock` has them.
    """
    return tuple(
        State(
            name=name,
            open={leaf.name: float(far.get(i, 0.0)) for i, leaf in enumerate(stock)},
        )
        for name, far in names.items()
    )
