"""Stays too weak for a flap, or so strong that nobody shuts it.

Why: a flap that sinks comes down on a head; one that springs open hits a chin, and one that must be
hung on to be shut tears its hinges out.
Example: a flap of 4 kg, 360 high, weighs 39.2 N, and level it turns by 39.2 x 0.18 = 7.1 N m; two
struts of 40 N at a lever of 78 turn it back by 6.2: it sinks.
Source: statics, moments about the hinge line; how much in hand and how strong a pull is common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.figures import exceeds
from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.lid_stay import LidStays
from parametric.hardware.stay import NoPlace
from parametric.problems import Level, Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.trade.case_names import begun
from parametric.trade.printed import force, moment, weight, weight_limit

LEAST_IN_HAND = 1.1
"""Struts that turn the flap by less over its own moment let it sink when they are cold or old."""
MOST_PULL = 60.0
"""What is asked of an arm over the head to start a flap down, N."""


def stay_does_not_hold(job: Checked) -> Iterator[Problem]:
    """A stop for what lets the flap fall, a caution for what is close to it, or too strong."""
    for leaf in job.leaves:
        if leaf.stays is None or isinstance(leaf.stays.sized, NoPlace):
            continue
        match leaf.stays.sized:
            case GasStruts():
                yield from _struts(job, leaf, leaf.stays.sized)
            case LidStays():
                yield from _lid_stays(job, leaf, leaf.stays.sized)
            case _:
                assert_never(leaf.stays.sized)


def _struts(job: Checked, leaf: Leaf, struts: GasStruts) -> Iterator[Problem]:
    unit, many = job.design.unit, int(struts.count)
    each = f"{many} of {force(struts.force, unit)}"
    needs = force(struts.least * LEAST_IN_HAND, unit)
    both = (
        f"open, the flap turns by {moment(struts.weight_open, unit)} and they turn it back by "
        f"{moment(struts.struts_open, unit)}; shut, they "
        + ("push it open" if struts.struts_shut > 0 else "press it shut")
        + f" by {moment(struts.struts_shut, unit)}"
    )

    def told(level: Level, code: str, said: str, found: str, allowed: str, fix: str) -> Problem:
        return Problem(
            code=code,
            level=level,
            message=f"{begun(leaf.name)}: {said}: {each}; {both}.",
            where=struts.written.line("force"),
            about=struts.name,
            found=found,
            allowed=allowed,
            fix=fix,
        )

    weak = exceeds(struts.least, struts.force)
    if weak or exceeds(struts.least * LEAST_IN_HAND, struts.force):
        yield told(
            "stop" if weak else "caution",
            "strut_too_weak",
            "its struts are too weak, and it falls"
            if weak
            else "its struts have little in hand, and lose force with cold and with years",
            force(struts.force, unit),
            f"{needs} each or more",
            "Take stronger ones, or set their fixing on the flap farther from the hinge edge.",
        )
    if exceeds(struts.to_shut, MOST_PULL):
        yield told(
            "caution",
            "strut_too_strong",
            f"{force(struts.to_shut, unit)} at its free edge is needed to bring it down",
            force(struts.to_shut, unit),
            f"{force(MOST_PULL, unit)} or less",
            "Take weaker ones, or set their fixing on the flap nearer the hinge edge.",
        )
    if exceeds(struts.struts_shut + struts.weight_shut, 0.0):
        yield told(
            "caution",
            "flap_springs_open",
            "it does not stay shut by itself",
            "pushed open",
            "pressed shut",
            "Give it a catch, or set the fixing on the case farther back.",
        )


def _lid_stays(job: Checked, leaf: Leaf, stays: LidStays) -> Iterator[Problem]:
    unit = job.design.unit
    if stays.carries is None or not exceeds(stays.pull, stays.carries):
        return
    pulled = weight(stays.pull, unit)
    which = f"each of its {int(stays.count)} stays" if int(stays.count) > 1 else "its one stay"
    yield Problem(
        code="lid_stay_overloaded",
        level="stop",
        message=f"{begun(leaf.name)}: open, with {weight_limit(stays.written.leant_on, unit)} "
        f"leaning on its free edge, {which} is pulled by {pulled}, and is made for "
        f"{weight_limit(stays.carries, unit)}.",
        where=stays.written.line("carries"),
        about=stays.pull.name or stays.name,
        found=weight(stays.pull, unit),
        allowed=weight_limit(stays.carries, unit),
        fix="Take stronger ones, two in place of one, or set their fixing on the flap farther from "
        "the hinge edge.",
    )
