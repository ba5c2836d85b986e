"""A case with drawers tips over when they stand open, and nothing but its fixing holds it.

Why: children climb on drawers; every year some of them are killed under furniture.
Example: a case of 70 kg with three full drawers out stands by a factor of 1.5, with a child of 60 lb
on one of them by 0.9: over it goes.
Source: statics on a hard floor, and the scope of 16 CFR 1261 (ASTM F2057-23): clothing storage that
stands free, 27 in high, 30 lb and 3.2 ft3 or more. It defers to local codes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.catalog.case_facts import CHILD, TIPPING_RULE
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_fitting import FIXED_INTO
from parametric.trade.case_loads import CaseLoad
from parametric.trade.case_names import begun, listed, together
from parametric.trade.printed import several, weight


def may_tip_over(cases: CheckedCases) -> Iterator[Problem]:
    """Caution, once for the cases of a run with drawers that the rule would speak of, or that tip.

    A note under a counter, which is screwed to all of them and ties them together.
    """
    runs: dict[tuple[str, bool], list[tuple[CaseLoad, float, float]]] = {}
    for load in cases.loads:
        tips, standing = load.tips, load.standing
        if tips is None or tips.all_open is None or tips.leant_on is None:
            continue
        if (load.drawers and load.in_the_rule) or tips.all_open < 1:
            place = standing.run or standing.name
            firm = (load, float(tips.all_open), float(tips.leant_on))
            runs.setdefault((place, standing.counter is not None), []).append(firm)
    for (_, tied), found in runs.items():
        names = [load.standing.name for load, _, _ in found]
        load, all_open, leant_on = min(found, key=lambda one: min(one[1:]))
        who = "It" if len(names) == 1 else begun(load.standing.name)
        yield Problem(
            code="may_tip_over",
            level="note" if tied else "caution",
            message=f"{begun(together(names))} must be fixed to the wall before anything is opened. "
            f"{who} {_how(cases, load)} {TIPPING_RULE} speaks of clothes storage that "
            "stands free; what is fixed to the building is out of it. Local codes come first.",
            where=load.standing.case.spec.here,
            about=f"{names[0]} may tip over",
            found=f"with all open it {_stands(all_open)}, leant on it {_stands(leant_on)}",
            allowed="fixed to the wall",
            fix="Until then open one drawer at a time, empty. Fix each to its neighbours and to the "
            f"wall, {FIXED_INTO[load.standing.opening.fixing]}.",
        )


def _how(cases: CheckedCases, load: CaseLoad) -> str:
    """How firmly one stands by itself, with everything open and with a child on the worst of it."""
    tips, unit = load.tips, cases.job.design.unit
    assert tips is not None
    assert tips.all_open is not None
    assert tips.leant_on is not None
    opens = [
        several(number, word)
        for number, word in (
            (load.doors, "door"),
            (load.flaps, "flap"),
            (load.drawers, "full drawer"),
        )
        if number
    ]
    return (
        f"weighs {weight(load.weight, unit)}: loose, with {listed(opens)} open it "
        f"{_stands(tips.all_open)}, and with a child of {weight(CHILD, unit)} on {tips.worst} it "
        f"{_stands(tips.leant_on)}."
    )


def _stands(factor: float) -> str:
    """Rounded down: nobody is told that what goes over stands."""
    return (
        f"stands by a factor of {math.floor(float(factor) * 10) / 10:.1f}"
        if factor >= 1
        else "goes over"
    )
