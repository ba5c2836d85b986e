"""A case cannot be tipped up where it is to stand: its corner meets the ceiling.

Why: a case that is made as high as the room allows does not come upright in it, and that is found
out with four people under it.
Example: a case 2273 x 580 has a diagonal of 2345.8; over a plinth of 80 there is 2303, over the floor
2383: it is stood up on the floor and lifted 80.
Source: geometry: the diagonal of a box turned about an edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_loads import CaseLoad
from parametric.trade.case_names import begun, together
from parametric.trade.tipping import StandingUp


def cannot_be_stood_up(cases: CheckedCases) -> Iterator[Problem]:
    """Caution with the order that works, once for cases that are alike."""
    trust, size = 2 * cases.job.shop.accuracy.reading, cases.job.size
    alike: dict[tuple[str, ...], list[CaseLoad]] = {}
    for load in cases.loads:
        up = load.up
        if up is None or (up.order == "where it stands" and not exceeds(trust, up.spare)):
            continue
        sizes = (size(up.height), size(up.diagonal), size(up.on_side), size(up.base))
        alike.setdefault((up.order, load.standing.on, *sizes), []).append(load)
    for loads in alike.values():
        up = loads[0].up
        assert up is not None
        yield _problem(cases, loads, up)


def _problem(cases: CheckedCases, loads: list[CaseLoad], up: StandingUp) -> Problem:
    fine, names = cases.job.fine, [load.standing.name for load in loads]
    back, side, base = fine(up.diagonal), fine(up.on_side), fine(up.base)
    over_base, over_floor = fine(up.over_base), fine(up.over_floor)
    first, it = loads[0].standing, "it" if len(loads) == 1 else "each"
    under = f"on {first.on}" if first.on else "on the plinth" if base != "0" else "where it stands"
    tall = f"tipped up {under}, its corner rises {back}, and the ceiling is {over_base} over that"
    highest = "Where the ceiling is highest" if first.opening.slopes else "Over the floor"
    lift = "walk it in" if base == "0" else f"lift it {base}"
    found, allowed = back, over_base
    match up.order:
        case "where it stands":
            message = (
                f"tipped up, its corner clears the ceiling by {fine(up.spare)} only: less than two "
                "readings of the tape are trusted to."
            )
            fix = "Measure the ceiling again over the case."
        case "on the floor, then lifted":
            message = f"{tall}. {highest} there is {over_floor}, which is enough."
            fix = f"Stand {it} up on the floor, then {lift}; or build it in place."
        case "from its side, where it stands":
            message = f"{tall}. Tipped up from its side it rises {side} only."
            fix = f"Bring {it} in on its side and tip it up from there; or build it in place."
        case "from its side on the floor, then lifted":
            message = (
                f"{tall}. {highest} there is {over_floor}, and tipped up from its side it rises "
                f"{side} only."
            )
            fix = f"Tip {it} up from its side on the floor, then {lift}; or build it in place."
        case "not at all":
            least = back if up.diagonal <= up.on_side else side
            message = (
                f"it cannot be stood up under this ceiling: its corner rises {least}, and the ceiling "
                f"is {over_floor} over the floor."
            )
            lower = "" if up.tallest is None else f" Of this depth {fine(up.tallest)} high goes up."
            found, allowed, fix = least, over_floor, f"Build it in place, or make it in two.{lower}"
        case _:
            assert_never(up.order)
    return Problem(
        code="cannot_be_stood_up",
        level="caution",
        message=f"{begun(together(names))}: {message}",
        where=first.case.spec.here,
        about=f"{names[0]} stood up",
        found=found,
        allowed=allowed,
        fix=fix,
    )
