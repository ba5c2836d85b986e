"""The install sheet: where everything is fixed, what is behind it, and what is done in order.

Heights are from the highest point of the floor under the door, which is the datum.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.figures import Figure, largest, named, smallest
from parametric.hangings.hanging import HungLeaf
from parametric.names import join
from parametric.resolve.door import Door, Resolved
from parametric.trade.alignment import StackUp, stack_up
from parametric.trade.brackets import BracketPlace, PullOut, bracket_places, pull_outs
from parametric.trade.cautions import GLASS, LOCAL, ON_SITE, OVERHEAD, Cautions, lifting
from parametric.trade.delivery import Delivery
from parametric.trade.install_steps import (
    Adjustment,
    GuidePlace,
    Step,
    behind,
    datum,
    order_of_work,
    screw_words,
    tools,
)
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import Printed, printed, weight


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightLine:
    """One height above the datum, mm; None where a data sheet must add to it: `rule` says how."""

    what: str
    height: Figure | None
    rule: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackFixing:
    """One track, mm: its leaves, its middle off the wall (behind it when negative), its left
    end from the opening's left edge.
    """

    track: str
    leaf: str
    off_wall: Figure
    left_end: Figure
    length: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class InstallSheet:
    """Everything the fitter needs on one sheet. Lengths mm."""

    datum: str
    heights: tuple[HeightLine, ...]
    tracks: tuple[TrackFixing, ...]
    brackets: tuple[BracketPlace, ...]
    pulls: tuple[PullOut, ...]
    behind: str
    board: Figure | None
    screw: Figure | None
    screw_words: str
    guides: tuple[GuidePlace, ...]
    gaps: tuple[tuple[str, Figure], ...]
    clear_way: Figure
    alignment: StackUp
    adjustment: Adjustment
    glazing_on_site: bool
    glazing_because: str
    steps: tuple[Step, ...]
    tools: tuple[str, ...]
    hold: tuple[str, ...]
    cautions: Cautions


def install_sheet(resolved: Resolved, loads: tuple[LeafLoad, ...], sent: Delivery) -> InstallSheet:
    """Fixings, order of work and adjustment of a door.

    Args:
        resolved: the design's numbers.
        loads: its weights; the larger of the two governs.
        sent: the delivery, which says whether the glass goes in on site.
    """
    door, shop, said = resolved.door, resolved.shop, printed(resolved)
    brackets = bracket_places(door)
    guides = _guides(door)
    adjustment = _adjustment(door, shop)
    heaviest = max((load.governing for load in loads), key=float)
    return InstallSheet(
        datum=datum(door),
        heights=_heights(door),
        tracks=_tracks(door),
        brackets=brackets,
        pulls=pull_outs(door, loads),
        behind=behind(door, said) if door.track is not None else "",
        board=None
        if door.opening.board is None
        else named("board over fixing", door.opening.board),
        screw=None if door.track is None else door.track.fixing_depth,
        screw_words="" if door.track is None else screw_words(door, door.track, said),
        guides=guides,
        gaps=door.gaps,
        clear_way=door.hanging.clear_way,
        alignment=stack_up(shop.accuracy),
        adjustment=adjustment,
        glazing_on_site=sent.glazed_on_site,
        glazing_because=sent.because,
        steps=order_of_work(resolved, brackets, guides, adjustment, sent),
        tools=tools(resolved, sent),
        hold=_hold(door, brackets, said),
        cautions=(
            *lifting(_people(sent), weight(heaviest, said.unit)),
            *(OVERHEAD if door.hanging.tracks else ()),
            *ON_SITE,
            *(GLASS if sent.glazed_on_site else ()),
            LOCAL,
        ),
    )


def _people(sent: Delivery) -> int:
    """The most that any piece takes, glazed."""
    return max(int(item.people_glazed or item.people) for item in sent.items)


def _heights(door: Door) -> tuple[HeightLine, ...]:
    hanging, leaf = door.hanging, door.leaves[0]
    top = named("top of the leaves above the floor", hanging.floor_gap + hanging.leaf_height)
    head = HeightLine(what="head of the opening", height=door.opening.head, rule="as surveyed")
    lines = [
        HeightLine(what="foot of the leaves", height=hanging.floor_gap, rule="the floor gap"),
        head,
        HeightLine(what="top of the leaves", height=top, rule="floor gap and leaf height"),
    ]
    if hanging.tracks:
        lines.append(
            HeightLine(
                what="bracket screws",
                height=None if hanging.on_wall else door.opening.head,
                rule="the top of the leaves, and what the track's data sheet gives from a leaf's "
                "top to the screw, hangers in the middle of their thread"
                if hanging.on_wall
                else "up into the head",
            )
        )
    if leaf.pulls:
        pull = leaf.pulls[0].pull
        lines.append(
            HeightLine(
                what="middle of the pulls",
                height=named("pulls above the floor", pull.up + hanging.floor_gap),
                rule="as set in the leaves",
            )
        )
    if leaf.guide is not None:
        lines.append(
            HeightLine(what="floor guides", height=None, rule="on the floor where they stand")
        )
    return tuple(sorted(lines, key=lambda line: float(line.height or top)))


def _tracks(door: Door) -> tuple[TrackFixing, ...]:
    return tuple(
        TrackFixing(
            track=line.word,
            leaf=" and ".join(leaf.name for leaf in door.leaves if leaf.hung.track == index),
            off_wall=line.plane,
            left_end=named(f"{line.word} track / left end", line.left),
            length=line.length,
        )
        for index, line in enumerate(door.hanging.tracks)
    )


def _guides(door: Door) -> tuple[GuidePlace, ...]:
    """Where a leaf stands wherever it is: the middle of what it covers both shut and open."""
    hanging = door.hanging
    shared = None
    if len(door.leaves) == 2 and hanging.overlap is not None:
        shared = named(
            "floor guides / from the opening's left edge", hanging.lefts[1] + hanging.overlap / 2
        )
    return tuple(
        GuidePlace(
            leaf=leaf.name,
            from_opening=_always_under(leaf.hung) if shared is None else shared,
            off_wall=leaf.hung.plane,
        )
        for leaf in door.leaves
        if leaf.guide is not None and leaf.hung.travel is not None
    )


def _always_under(hung: HungLeaf) -> Figure:
    """The middle of the strip of floor that a sliding leaf never leaves."""
    assert hung.travel is not None
    open_left = hung.left + hung.travel
    low = largest(hung.left, open_left)
    high = smallest(hung.left + hung.width, open_left + hung.width)
    return named(join(hung.name, "floor guide / from the opening's left edge"), (low + high) / 2)


def _adjustment(door: Door, shop: Shop) -> Adjustment:
    leaf = door.leaves[0]
    over = leaf.wood_over_guide
    return Adjustment(
        hangers=named(
            "hanger adjustment each way",
            named("reading accuracy", shop.accuracy.reading)
            + named("hanging accuracy", shop.accuracy.hanging),
        ),
        site_trim=leaf.site_trim,
        trim_allowed=named(
            "site trim allowed",
            leaf.site_trim
            if over is None
            else largest(
                Figure(0.0),
                smallest(
                    leaf.site_trim,
                    over - named("wood kept over the guide", shop.limits.below_guide),
                ),
            ),
        ),
    )


def _hold(door: Door, brackets: tuple[BracketPlace, ...], said: Printed) -> tuple[str, ...]:
    """What must be settled before a hole is drilled."""
    points = []
    if door.hanging.tracks and door.hanging.on_wall:
        points.append(
            "Take the distance from a leaf's top to the bracket's screw off the track's data "
            "sheet, and write the height of the screws on this sheet."
        )
    if door.hanging.tracks and door.opening.fixing != "solid timber":
        points.append(f"Behind the wall: {behind(door, said)}.")
    missed = [place for place in brackets if place.off_stud is not None]
    if missed:
        farthest = max((p.off_stud for p in missed if p.off_stud is not None), key=float)
        points.append(
            f"Brackets stand up to {said.wood(farthest)} from a stud's middle: move them to "
            "studs, no farther apart than drawn, or fix a header first."
        )
    if door.track is not None and door.track.carries is None:
        points.append("See the rating of the hangers on their data sheet before they are hung on.")
    return tuple(points)
