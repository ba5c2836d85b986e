"""Steps on site for leaves that turn on hinges: offered up, marked, let in, hung, eased, kept shut."""

from __future__ import annotations

from parametric.figures import Figure, named, tangent
from parametric.hangings.hanging import Side
from parametric.names import join
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.alignment import StackUp
from parametric.trade.delivery import Delivery
from parametric.trade.hinge_places import HingeFixing, Seat
from parametric.trade.lock_places import opens_second, strike_places
from parametric.trade.printed import Printed
from parametric.trade.seasons import leaf_seasons
from parametric.trade.site_words import Said, gap_words, leaf_names


def fold_together(hinges: tuple[HingeFixing, ...], said: Printed) -> list[Said]:
    """Leaves that are hung to one another, before any of them hangs."""
    folds = [hinge for hinge in hinges if hinge.on != "jamb"]
    if not folds:
        return []
    pairs = dict.fromkeys((hinge.leaf, hinge.on, hinge.face) for hinge in folds)
    joined = "; ".join(
        f"{leaf_names([one, other])}, knuckles on the {face}" for one, other, face in pairs
    )
    ups = ", ".join(dict.fromkeys(said.fine(hinge.from_foot) for hinge in folds))
    return [
        (
            f"On trestles, feet in one line, hinge the leaves to one another: {joined}. Middles "
            f"{ups} up from the foot.",
            "Each pair folds flat and opens to one plane; feet in one line.",
        )
    ]


def hang_on_hinges(
    resolved: Resolved,
    hinges: tuple[HingeFixing, ...],
    sent: Delivery,
    stack: StackUp,
    foot: list[Said],
    said: Printed,
) -> list[Said]:
    """From the opening to leaves that hang and stay where they are left; none at no jamb.

    `foot` is planed while the leaf is only wedged.
    """
    door = resolved.door
    own = [hinge for hinge in hinges if hinge.on == "jamb"]
    if not own:
        return []
    named_ones = {hinge.leaf for hinge in own}
    leaves = sorted(
        (leaf for leaf in door.leaves if leaf.name in named_ones),
        key=lambda leaf: float(leaf.hung.foot),
    )
    return [
        _offer_up(door, leaves, sent, said),
        *foot,
        _mark(own, said),
        *seats(own, said),
        _hang(door, leaves, sent, said),
        *_meet(door, leaves, stack, said),
    ]


def _offer_up(door: Door, leaves: list[Leaf], sent: Delivery, said: Printed) -> Said:
    gap, head = door.hanging.hinge_gap, door.hanging.head_gap
    off = [] if gap is None else [f"{said.fine(gap)} off its hinge jamb"]
    off += [] if head is None else [f"{said.fine(head)} under the head"]
    foot = said.wood(min((leaf.hung.foot for leaf in leaves), key=float))
    hands = max(int(item.people_glazed or item.people) for item in sent.items)
    who = f"{hands} people: offer" if hands > 1 else "Offer"
    each = " one after the other" if len(leaves) > 1 else ""
    split = door.hanging.split_gap
    over = "" if split is None else f"; the upper leaf packed {said.fine(split)} off the lower"
    return (
        f"{who} up {leaf_names([leaf.name for leaf in leaves])}{each}: wedged {foot} over the "
        f"high point of the floor, {' and '.join(off)}{over}. Where a jamb is not straight, scribe the "
        "leaf and plane it to the jamb before a hinge is let in.",
        "Gaps even from end to end; the leaf lies flush with its jamb at head and foot, not in "
        "wind.",
    )


def _mark(hinges: list[HingeFixing], said: Printed) -> Said:
    """The two measures of one place, from both ends: neither may be got from the other."""
    lots: dict[tuple[str, str], list[str]] = {}
    for leaf in dict.fromkeys(hinge.leaf for hinge in hinges):
        places = [hinge for hinge in hinges if hinge.leaf == leaf]
        down = ", ".join(said.fine(hinge.from_head) for hinge in places)
        up = ", ".join(said.fine(hinge.from_foot) for hinge in places)
        lots.setdefault((down, up), []).append(leaf)
    several = len(lots) > 1
    downs = "; ".join(
        f"{leaf_names(names)} {down}" if several else down for (down, _), names in lots.items()
    )
    ups = "; ".join(
        f"{leaf_names(names)} {up}" if several else up for (_, up), names in lots.items()
    )
    return (
        "Knife the hinges' ends from the leaf on to the jamb while it stands wedged. Middles down "
        f"from the jamb's head: {downs}.",
        f"Up from the leaf's foot: {ups}. Where the two do not meet, believe neither: measure "
        "again.",
    )


def seats(hinges: list[HingeFixing], said: Printed) -> list[Said]:
    """The mortises of flaps, cut where they were marked; none for hinges that are bored."""
    seats = dict.fromkeys(hinge.seat for hinge in hinges if hinge.seat is not None)
    if not seats:
        return []
    sizes = "; ".join(seat_words(seat, said) for seat in seats)
    return [
        (
            f"Cut the jambs' mortises: {sizes}; gauge from the face that the leaf opens to, and "
            "chop to the knife line.",
            "Each flap lies flush and without rocking; too deep is packed with card or veneer, "
            "never left to bend the flap.",
        )
    ]


def seat_words(seat: Seat, said: Printed) -> str:
    """`4-1/2 long × 1-1/2 wide × 0.098 deep, corners square`."""
    corner = (
        "corners square"
        if float(seat.corner) == 0
        else f"corners of radius {said.fine(seat.corner)}"
    )
    return (
        f"{said.fine(seat.length)} long × {said.fine(seat.width)} wide × "
        f"{said.gauge(seat.depth)} deep, {corner}"
    )


def _hang(door: Door, leaves: list[Leaf], sent: Delivery, said: Printed) -> Said:
    names = ", then ".join(leaf.name for leaf in leaves)
    bare = ", unglazed" if sent.glazed_on_site else ""
    return (
        f"Hang {names}{bare}: on wedges, one screw in each flap, top hinge first. Look at the "
        "gaps, pack or deepen, then every screw home by hand.",
        f"Gaps {gap_words(door, said)}; pins in one plumb line; let go at any place, the leaf "
        "stays there.",
    )


def _meet(door: Door, leaves: list[Leaf], stack: StackUp, said: Printed) -> list[Said]:
    gap = door.hanging.meeting_gap
    if gap is None or len(leaves) < 2:
        return []
    return [
        (
            "Shut both leaves and look along where they meet: rails in one line, faces in one "
            "plane from head to foot. A leaf that stands out at one end is moved at its hinges "
            "across the jamb.",
            f"{said.fine(gap)} between them from head to foot. Rails in line within "
            f"{said.fine(stack.governing)}, {said.fine(stack.worst)} at the very worst.",
        )
    ]


def bevel_offset(leaf: Leaf, side: Side) -> Figure | None:
    """How far a planed edge is set back at the far face, mm."""
    bevel = leaf.hung.bevel(side)
    if bevel is None:
        return None
    return named(
        join(leaf.name, f"bevel of the {side} edge off the far side"),
        leaf.thickness * tangent(bevel),
    )


def ease_edges(resolved: Resolved, said: Printed) -> list[Said]:
    """The bevel of edges that meet or close, and what the seasons do to their gaps."""
    sides: tuple[Side, Side] = ("left", "right")
    planed = dict.fromkeys(
        f"{float(bevel):g} deg, {said.gauge(off)} off the far side"
        for leaf in resolved.door.leaves
        for side in sides
        if (bevel := leaf.hung.bevel(side)) is not None
        and (off := bevel_offset(leaf, side)) is not None
    )
    if not planed:
        return []
    seasons = leaf_seasons(resolved)
    made = resolved.shop.moisture.made
    tight = min(seasons, key=lambda season: float(season.left), default=None)
    grows = (
        ""
        if tight is None
        else f" Timber at {float(made):g} %: in the dampest season {said.gauge(tight.growth)} of a "
        f"leaf's gaps close, and {said.gauge(tight.left)} is left."
        if float(tight.left) > 0
        else f" Timber at {float(made):g} %: in the dampest season a leaf grows "
        f"{said.gauge(tight.growth)}, more than its gaps."
    )
    return [
        (
            f"Try the swing. Closing edges come planed {'; '.join(planed)}. Plane them on only "
            "where they touch, to the same bevel, and coat the bare wood again.",
            f"Nothing touches on the way.{grows}",
        )
    ]


def keep_shut(door: Door, hinges: tuple[HingeFixing, ...], said: Printed) -> list[Said]:
    """Stops, lock or latch, and bolts: fitted to leaves that hang as they will."""
    own = [leaf for leaf in door.leaves if leaf.name in {h.leaf for h in hinges if h.on == "jamb"}]
    if not own:
        return []
    thick = dict.fromkeys(said.wood(leaf.thickness) for leaf in own)
    second = opens_second(door)
    bolts = (
        f" Bolts at head and foot of {second.name}, which opens second."
        if second is not None
        else " A bolt that ties the upper leaf to the lower."
        if door.hanging.split_gap is not None
        else ""
    )
    return [
        (
            f"Leaves shut and flush, plant the stops round the opening {' and '.join(thick)} in "
            "from the face the leaves open to, a card's thickness free. "
            f"{_lock_words(door, said)}{bolts}",
            "Shuts with one finger, is held without a rattle, opens without a lift.",
        )
    ]


def _lock_words(door: Door, said: Printed) -> str:
    """Which leaf has the lock and where its strike goes, by both measures."""
    places = strike_places(door)
    if not places:
        return "Fit lock or latch by its own sheet, strike marked from the shut leaf."
    return " ".join(
        f"Fit the {place.lock.kind.removeprefix('mortise ')} in {place.leaf}, its strike in "
        + (
            f"the jamb: marked from the shut leaf, its middle {said.site(place.up)} above the "
            f"floor, {said.site(place.down)} down from the jamb's head."
            if place.into == "jamb"
            else f"{place.into}, both middles {said.site(place.up)} above the floor."
        )
        for place in places
    )


def swing_words(door: Door, said: Printed) -> str:
    """What is left over the floor, shut and in the swing."""
    shut = ", ".join(f"{place} {said.wood(gap)}" for place, gap in door.gaps)
    least = door.hanging.travel_gap
    swing = "" if least is None else f"; at least {said.wood(least)} anywhere on the way"
    whose = "leaf" if len(door.leaves) == 1 else "leaves"
    return f"Gap under the {whose}: {shut}{swing}."
