"""A stay that cannot be screwed where it would have to be.

Why: a strut that is too long keeps the flap from shutting, one too short bends its fixings as the
flap opens. Example: a fixing that travels 62 from shut to open, and a strut of 85 stroke.
Source: geometry of the two circles about the fixing on the flap, shut and open.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from typing import assert_never

from parametric.figures import Figure, exceeds
from parametric.hardware.stay import NoPlace
from parametric.hardware.stay_kinds import Stays
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase
from parametric.resolve.footprint import overlap
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_stays import LeafStays, StaySide
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun
from parametric.trade.flap_ways import stay_ways


def stay_has_no_place(cases: CheckedCases) -> Iterator[Problem]:
    """A stop for each flap; the tightest thing first, and alone."""
    for door in cases.job.resolved.doors:
        for leaf in door.leaves:
            if leaf.stays is None or not door.case:
                continue
            if isinstance(leaf.stays.sized, NoPlace):
                yield _nowhere(cases, leaf, leaf.stays, leaf.stays.sized)
            else:
                found = _off(cases, cases.casework.case(door.case), leaf, leaf.stays)
                yield from list(found)[:1] or list(
                    _on_a_shelf(cases.casework.case(door.case), leaf, leaf.stays)
                )


def _nowhere(cases: CheckedCases, leaf: Leaf, stays: LeafStays, sized: NoPlace) -> Problem:
    said = cases.job.fine
    kind, spec = stays.written.kind, stays.written
    has, needs = said(sized.has), said(sized.needs)
    match sized.why:
        case "too long to shut":
            words = f"can be pushed in to {needs}, and {has} is left for it when the flap is shut"
            fix = "Take one with more stroke, or set its fixing on the case farther off."
        case "too short to open":
            words = f"is {has} long, and {needs} is needed when the flap is open"
            fix = "Take a longer one, or set its fixing on the flap nearer the hinge edge."
        case "travels too little":
            words = (
                f"has {needs} to push in but for its spare, and its fixing on the flap travels "
                f"{has} from shut to open"
            )
            fix = "Set its fixing on the flap farther from the hinge edge, or take less stroke."
        case "opens too far":
            words = (
                f"is {needs} long pushed out, and only {has} is between its fixings when the flap is "
                f"open by {float(spec.opens):g} deg: it opens farther"
            )
            fix = "Set its fixing on the case farther from the hinge line, or take a shorter one."
        case "holds nothing":
            words = "pulls or pushes the open flap the wrong way about its hinge line"
            fix = "Set its fixing on the case farther from the hinge line."
        case _:
            assert_never(sized.why)
    return Problem(
        code="stay_has_no_place",
        level="stop",
        message=f"{begun(leaf.name)}: its {kind} {words}.",
        where=spec.line("on case" if getattr(spec, "on_case", None) is not None else "on leaf"),
        about=sized.name,
        found=has,
        allowed=needs,
        fix=fix,
    )


def _off(
    cases: CheckedCases, standing: StandingCase, leaf: Leaf, stays: LeafStays
) -> Iterator[Problem]:
    """Fixings that find no wood: off the side of the case, past the flap's space, off its stile."""
    case, said = standing.case, cases.job.fine
    sized = stays.sized
    assert not isinstance(sized, NoPlace), "asked only of those that have a place"
    middle = float(leaf.hung.foot + leaf.height / 2 - case.box.foot)
    across = float(case.opening.left + leaf.hung.left + leaf.width / 2)
    space = case.bay_at(across).space_at(middle)
    web = stays.pilot[0] / 2 + cases.job.shop.limits.groove_wall
    for one in stays.sides:
        least_back = web if case.front_back <= 0 else case.front_back + web
        for has, low, high, where in (
            (one.behind, least_back, case.behind - web, "behind the case's front edges"),
            (one.case_up, space.foot + web, space.head - web, "up from the case's foot"),
        ):
            if exceeds(low, has) or exceeds(has, high):
                yield _told(
                    leaf,
                    stays,
                    sized,
                    one,
                    f"on the case comes {said(has)} {where}",
                    f"{said(low)} to {said(high)}",
                )
        along = sized.place.along
        if exceeds(along, leaf.height - web):
            yield _told(
                leaf,
                stays,
                sized,
                one,
                f"on the flap comes {said(along)} from its hinge edge, and it is "
                f"{said(leaf.height)} high",
                f"up to {said(leaf.height - web)}",
            )
        stile = leaf.left_stile if one.side == "left" else leaf.right_stile
        edge = one.across if one.side == "left" else leaf.width - one.across
        if exceeds(web, edge) or exceeds(edge, stile - web):
            yield _told(
                leaf,
                stays,
                sized,
                one,
                f"on the flap comes {said(edge)} from its edge, "
                f"and its stile is {said(stile)} wide",
                f"{said(web)} to {said(Figure(stile - web))}",
            )


def _on_a_shelf(standing: StandingCase, leaf: Leaf, stays: LeafStays) -> Iterator[Problem]:
    """A stay that a shelf lies in the way of; the first that it meets."""
    case, sized = standing.case, stays.sized
    assert not isinstance(sized, NoPlace), "asked only of those that have a place"
    middle = float(case.opening.left + leaf.hung.left + leaf.width / 2)
    for one, board in itertools.product(stays.sides[:1], case.boards):
        if board.lies != "level" or not board.x < middle < board.x + float(board.length):
            continue
        y0, z0 = board.y, board.z
        y1, z1 = y0 + float(board.width), z0 + float(board.thickness)
        shelf = ((y0, z0), (y1, z0), (y1, z1), (y0, z1))
        if any(exceeds(overlap(way, shelf), 0.0) for way in stay_ways(case, leaf, sized, one)):
            yield Problem(
                code="stay_meets_a_shelf",
                level="stop",
                message=f"{begun(leaf.name)}: its {sized.kind} comes through {board.name}.",
                where=stays.written.line("on leaf"),
                about=one.name,
                found=board.name,
                allowed="a way clear of shelves",
                fix="Leave the shelf out, set shelves farther back, or screw the stay elsewhere.",
            )
            return


def _told(
    leaf: Leaf, stays: LeafStays, sized: Stays, one: StaySide, where: str, allowed: str
) -> Problem:
    return Problem(
        code="stay_finds_no_wood",
        level="stop",
        message=f"{begun(leaf.name)}: the fixing of its {sized.kind} {where}; {allowed} has wood "
        "for it.",
        where=stays.written.line("on leaf"),
        about=one.name,
        found=where,
        allowed=allowed,
        fix="Set its fixing on the flap nearer the hinge edge, or write `beside` for one beside the "
        "case's side, or take another length.",
    )
