"""A leaf meets the casing, the skirting, a switch or a radiator on its way.

Why: it is found out when the door hangs, and then the wall or the door is spoilt.
Example: a leaf that passes the wall with 14 behind it does not pass a skirting 18 thick.
Source: geometry: the leaf's rectangle against the thing's, every 2 mm of the way.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.sweeping import Met, meetings


def leaf_meets_something(job: Checked) -> Iterator[Problem]:
    """Stop where it meets it shut or sliding; caution where it only opens less far."""
    for met in meetings(job.door):
        turns = met.leaf.hung.swing is not None and met.part > 0
        yield from _stopped_short(met) if turns else _in_the_way(job, met)
    for thing in job.door.survey.in_the_way or ():
        missing = [
            word
            for word, value in (
                ("how far it stands from the opening", thing.from_left),
                ("how high it stands", thing.height),
                ("how far it stands out", thing.stands_out),
            )
            if not isinstance(value, Figure)
        ]
        if missing:
            yield Problem(
                code="leaf_meets_something",
                level="caution",
                message=f"Whether a leaf clears the {thing.what} is not known: "
                f"{' and '.join(missing)} was not measured.",
                where=job.door.survey.line("in the way"),
                about=f"{thing.what} in the way",
                found="not measured",
                allowed="measured, or known to be clear",
                fix="Measure it and write it under `in the way`.",
            )


def _in_the_way(job: Checked, met: Met) -> Iterator[Problem]:
    thing, hung = met.thing, met.leaf.hung
    behind = hung.plane - met.leaf.thickness / 2
    way = "shut" if met.part == 0 else "as it slides"
    yield Problem(
        code="leaf_meets_something",
        level="stop",
        message=f"L{met.leaf.name[1:]} meets the {thing.what} {way}: it passes the wall with "
        f"{job.size(behind)} behind it, and the {thing.what} stands out {job.size(thing.out)}.",
        where=thing.where,
        about=f"{met.leaf.name} meets the {thing.what}",
        found=job.size(thing.out),
        allowed=f"{job.size(behind)} or less",
        fix=f"Set the track farther off the wall, or take the {thing.what} off where the leaf "
        "passes.",
    )


def _stopped_short(met: Met) -> Iterator[Problem]:
    thing, swing = met.thing, met.leaf.hung.swing
    assert swing is not None
    opens = int(float(swing) * met.part)
    when = f"when it has opened {opens} deg of {float(swing):g}" if opens else "as soon as it opens"
    yield Problem(
        code="leaf_meets_something",
        level="caution",
        message=f"L{met.leaf.name[1:]} meets the {thing.what} {when}.",
        where=thing.where,
        about=f"{met.leaf.name} meets the {thing.what}",
        found=f"{opens} deg",
        allowed=f"{float(swing):g} deg",
        fix=f"Move the {thing.what}, hang the leaf on the other side, or stop it before it gets "
        "there.",
    )
