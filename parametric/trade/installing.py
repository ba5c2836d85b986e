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
from parametric.resolve.leaf import Leaf
from parametric.trade.alignment import StackUp, stack_up
from parametric.trade.brackets import BracketPlace, PullOut, bracket_places, pull_outs
from parametric.trade.case_steps import BEFORE
from parametric.trade.cautions import (
    GLASS,
    HINGING,
    LETTING_IN,
    LOCAL,
    ON_SITE,
    OVERHEAD,
    Cautions,
    lifting,
)
from parametric.trade.delivery import Delivery
from parametric.trade.flap_steps import flap_cautions
from parametric.trade.hinge_places import HingeFixing, hinge_fixings
from parametric.trade.hinge_steps import swing_words
from parametric.trade.install_steps import Adjustment, Step, order_of_work, tools
from parametric.trade.loads import LeafLoad
from parametric.trade.lock_places import strike_places
from parametric.trade.printed import Printed, printed, weight
from parametric.trade.seasons import leaf_seasons
from parametric.trade.site_words import by_data_sheet, datum, edge_gaps, gap_words, leaf_names
from parametric.trade.track_steps import GuidePlace, behind, screw_words


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
    """Everything the fitter needs on one sheet. Lengths mm.

    `stop_lines` are the faces of hinged leaves from the wall's face: what they lie flush with,
    and where their stops stand. `place` is the door it is of, "" where there is only one.
    """

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
    hinges: tuple[HingeFixing, ...]
    edge_gaps: tuple[tuple[str, Figure], ...]
    travel_gap: Figure | None
    stop_lines: tuple[tuple[str, Figure], ...]
    gaps: tuple[tuple[str, Figure], ...]
    clear_way: Figure | None
    alignment: StackUp
    adjustment: Adjustment
    glazing_on_site: bool
    glazing_because: str
    on_a_case: bool
    steps: tuple[Step, ...]
    tools: tuple[str, ...]
    hold: tuple[str, ...]
    cautions: Cautions
    place: str = ""


def install_sheet(resolved: Resolved, loads: tuple[LeafLoad, ...], sent: Delivery) -> InstallSheet:
    """Fixings, order of work and adjustment of one door.

    Args:
        resolved: the design's numbers, of that door alone.
        loads: its weights; the larger of the two governs.
        sent: its delivery, which says whether the glass goes in on site.
    """
    door, shop, said = resolved.door, resolved.shop, printed(resolved)
    brackets = bracket_places(door)
    guides, hinges = _guides(door), hinge_fixings(door)
    adjustment = _adjustment(door, shop)
    heaviest = max((load.governing for load in loads), key=float)
    return InstallSheet(
        datum=datum(door),
        heights=_heights(door, said),
        tracks=_tracks(door),
        brackets=brackets,
        pulls=pull_outs(door, loads),
        behind=behind(door, said) if door.hanging.tracks else "",
        board=None
        if door.opening.board is None
        else named("board over fixing", door.opening.board),
        screw=None if door.track is None else door.track.fixing_depth,
        screw_words="" if door.track is None else screw_words(door, door.track, said),
        guides=guides,
        hinges=hinges,
        edge_gaps=edge_gaps(door),
        travel_gap=door.hanging.travel_gap if door.hanging.swings else None,
        stop_lines=_stop_lines(door),
        gaps=door.gaps,
        clear_way=door.hanging.clear_way,
        alignment=stack_up(shop.accuracy),
        adjustment=adjustment,
        glazing_on_site=sent.glazed_on_site,
        glazing_because=sent.because,
        on_a_case=door.hanging.case is not None,
        steps=order_of_work(resolved, brackets, guides, hinges, adjustment, sent),
        tools=tools(resolved, sent),
        hold=_hold(resolved, loads, brackets, said),
        cautions=(
            *lifting(_people(sent), weight(heaviest, said.unit)),
            *(OVERHEAD if door.hanging.tracks else ()),
            *(HINGING if hinges else ()),
            *flap_cautions(door.leaves),
            *(LETTING_IN if _let_in(door, hinges) else ()),
            *ON_SITE,
            *(GLASS if sent.glazed_on_site or (hinges and _glazed(door)) else ()),
            LOCAL,
        ),
        place=door.place,
    )


def _let_in(door: Door, hinges: tuple[HingeFixing, ...]) -> bool:
    """Whether edge tools or long screws go into what hinges hang on; into a case only for flaps."""
    if door.hanging.case is None:
        return bool(hinges)
    return any(hinge.seat is not None for hinge in hinges)


def _people(sent: Delivery) -> int:
    """The most that any piece takes, glazed."""
    return max(int(item.people_glazed or item.people) for item in sent.items)


def _stop_lines(door: Door) -> tuple[tuple[str, Figure], ...]:
    """Where the two faces of hinged leaves stand; leaves alike share a line."""
    found: dict[tuple[str, float], Figure] = {}
    if door.hanging.case is not None:
        return ()
    for leaf in door.leaves:
        if leaf.hung.side_of("hinge") is None or leaf.hung.knuckles is None:
            continue
        half = leaf.thickness / 2
        front, back = leaf.hung.plane + half, leaf.hung.plane - half
        opens, far = (front, back) if leaf.hung.knuckles == "front" else (back, front)
        for words, off in (("leaves, the face they open to", opens), ("leaves, their stops", far)):
            key = (words, round(float(off), 6))
            found.setdefault(key, named(f"{leaf.name} / {words.partition(', ')[2]}", off))
    return tuple((words, figure) for (words, _), figure in found.items())


def _heights(door: Door, said: Printed) -> tuple[HeightLine, ...]:
    hanging = door.hanging
    head = HeightLine(what="head of the opening", height=door.opening.head, rule="as surveyed")
    lines = [*_feet_and_tops(door), head]
    if hanging.tracks:
        lines.append(
            HeightLine(
                what="bracket screws",
                height=None if by_data_sheet(door) else door.opening.head,
                rule="the top of the leaves, and what the track's data sheet gives from a leaf's "
                "top to the screw, hangers in the middle of their thread"
                if by_data_sheet(door)
                else "up into the head",
            )
        )
    pulls = {
        round(float(hung.pull.up + leaf.hung.foot), 6): (hung.pull, leaf)
        for leaf in reversed(door.leaves)
        for hung in reversed(leaf.pulls)
    }
    for pull, leaf in pulls.values():
        one = "" if len(pulls) == 1 else f" of {leaf.name}"
        lines.append(
            HeightLine(
                what=f"middle of the pulls{one}",
                height=named(f"pulls{one} above the floor", pull.up + leaf.hung.foot),
                rule="as set in the leaves",
            )
        )
    lines += [
        HeightLine(
            what=f"middle of the strike, {place.into}", height=place.up, rule=place.rule(said)
        )
        for place in strike_places(door)
    ]
    if any(leaf.guide is not None for leaf in door.leaves):
        lines.append(
            HeightLine(what="floor guides", height=None, rule="on the floor where they stand")
        )
    top = float(hanging.floor_gap + hanging.leaf_height)
    return tuple(sorted(lines, key=lambda line: float(line.height or top)))


def _feet_and_tops(door: Door) -> list[HeightLine]:
    """Of all leaves where they are alike; else of each."""
    alike = len({(float(leaf.hung.foot), float(leaf.height)) for leaf in door.leaves}) == 1
    lines = []
    for leaf in door.leaves[:1] if alike else door.leaves:
        who = "the leaves" if alike and len(door.leaves) > 1 else leaf.name
        who = "the leaf" if len(door.leaves) == 1 else who
        foot = leaf.hung.foot
        on_floor = float(foot) == float(door.hanging.floor_gap)
        top = named(f"top of {who} above the floor", foot + leaf.height)
        rules = ("the floor gap", "floor gap and leaf height")
        if not on_floor:
            rules = ("at the split", "split and leaf height")
        if door.hanging.case is not None:
            rules = ("as the fronts stand", "foot and leaf height")
        lines += [
            HeightLine(
                what=f"foot of {who}",
                height=foot,
                rule=rules[0],
            ),
            HeightLine(
                what=f"top of {who}",
                height=top,
                rule=rules[1],
            ),
        ]
    return lines


def _tracks(door: Door) -> tuple[TrackFixing, ...]:
    return tuple(
        TrackFixing(
            track=line.word,
            leaf=leaf_names([leaf.name for leaf in door.leaves if leaf.hung.track == index]),
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
    """What the leaf with the least to spare lets be done to all."""
    return min(
        (_adjustment_of(leaf, shop) for leaf in door.leaves),
        key=lambda own: float(own.trim_allowed),
    )


def _adjustment_of(leaf: Leaf, shop: Shop) -> Adjustment:
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


def _glazed(door: Door) -> bool:
    return any(leaf.lites for leaf in door.leaves)


def _hold(
    resolved: Resolved,
    loads: tuple[LeafLoad, ...],
    brackets: tuple[BracketPlace, ...],
    said: Printed,
) -> tuple[str, ...]:
    """What must be settled before a hole is drilled or a hinge let in."""
    door = resolved.door
    points = []
    if door.hanging.tracks and by_data_sheet(door):
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
    carried = [own for load in loads for own in load.on_hinges]
    if door.hanging.case is not None:
        points += [f"Gaps to set: {gap_words(door, said)}.", *BEFORE]
    elif any(leaf.hung.side_of("hinge") is not None for leaf in door.leaves):
        points += _jambs(resolved, said)
    if any(own.rating is None for own in carried):
        points.append("See the rating of the hinges on their data sheet before they are hung on.")
    return tuple(points)


def _jambs(resolved: Resolved, said: Printed) -> list[str]:
    """What the leaves were sized for: jambs that stand, hold a screw, and timber that is dry."""
    moisture = resolved.shop.moisture
    points = [
        f"Gaps to set: {gap_words(resolved.door, said)}. {swing_words(resolved.door, said)}",
        "Jambs plumb, straight, out of wind and square to the head: the leaves were sized for "
        "jambs that are. If they are not, say so before a leaf is planed.",
        "Jambs fixed at every hinge, packed tight to something solid: a jamb that gives drops the "
        "leaf.",
    ]
    seasons = leaf_seasons(resolved)
    if seasons:
        tight = min(seasons, key=lambda season: float(season.left))
        points.append(
            f"Moisture of the leaves read and written down: they were made at "
            f"{float(moisture.made):g} %, and grow {said.gauge(tight.growth)} each by "
            f"{float(moisture.dampest):g} %. Wetter than they were made, they need less gap now."
        )
    return points
