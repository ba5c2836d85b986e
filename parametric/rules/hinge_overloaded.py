"""The leaf is too heavy for its hinges, or has fewer than its height asks for.

Why: a hinge that tears out drops a leaf on somebody; too few let it sag until it binds.
Example: 16 kg on three hinges of 4.5 kg is 5.3 each; four carry 4 each. A leaf 1601 high takes
four where one of 1600 takes three: 1 mm less saves one.
Source: statics; ratings are the supplier's, the steps the house's.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.trade.printed import several, weight, weight_limit

_NEAR = 5.0
"""A step passed by no more is worth a word, mm. Common practice, no source."""


def hinge_overloaded(job: Checked) -> Iterator[Problem]:
    """Stop over the rating, caution for too few, a note for what a little less height would save."""
    told: set[tuple[str, str]] = set()
    for problem in (*_rated(job), *_counted(job), *_just_passed(job)):
        if (problem.code, problem.message) not in told:
            told.add((problem.code, problem.message))
            yield problem


def _rated(job: Checked) -> Iterator[Problem]:
    unit = job.design.unit
    for leaf, load in zip(job.leaves, job.loads, strict=True):
        for hung, on in zip(leaf.hinges, load.on_hinges, strict=True):
            if on.rating is None or not exceeds(on.share, on.rating):
                continue
            one = "The lower pivot" if hung.hinges.kind == "pivot" else "Each hinge"
            yield Problem(
                code="hinge_overloaded",
                level="stop",
                message=f"{one} would carry {weight(on.share, unit)} and is rated for "
                f"{weight_limit(on.rating, unit)}.",
                where=hung.hinges.written.line(
                    "carries" if hung.hinges.written.carries is not None else "set carries"
                ),
                about=on.share.name or "",
                found=weight(on.share, unit),
                allowed=weight_limit(on.rating, unit),
                fix="Choose heavier hinges, more of them, or a lighter leaf.",
            )


def _counted(job: Checked) -> Iterator[Problem]:
    for leaf in job.leaves:
        for hung in leaf.hinges:
            hinges = hung.hinges
            if not isinstance(hinges, (ButtHinges, CupHinges)):
                continue
            counted, written = hinges.counted, hinges.written
            if counted.past is not None and counted.by != "written":
                yield Problem(
                    code="leaf_above_the_steps",
                    level="stop",
                    message=f"A leaf {_long(job, leaf)} is above the last step for "
                    f"hinges, {job.size(counted.past)}: how many it takes is not known.",
                    where=written.line("steps"),
                    about=hinges.count.name or "",
                    found=_long(job, leaf),
                    allowed=f"up to {job.size(counted.past)}",
                    fix="Write another step, or `count`.",
                )
            # too few for the weight are overloaded, and that is told above
            asked = counted.by_height
            if counted.by == "written" and asked is not None and exceeds(asked, hinges.count):
                yield Problem(
                    code="too_few_hinges",
                    level="caution",
                    message=f"{int(hinges.count)} hinges are written for a leaf "
                    f"{_long(job, leaf)}; its {_of(leaf)} asks for {int(asked)}.",
                    where=written.line("count"),
                    about="too few hinges",
                    found=f"{int(hinges.count)}",
                    allowed=f"{int(asked)} or more",
                    fix=f"Write `count: {int(asked)}`, or leave it to the steps.",
                )


def _long(job: Checked, leaf: Leaf) -> str:
    """How long the edge is that it hangs by."""
    return (
        f"{job.size(leaf.height)} high"
        if leaf.hung.flap is None
        else f"{job.size(leaf.width)} wide"
    )


def _of(leaf: Leaf) -> str:
    return "height" if leaf.hung.flap is None else "width"


def _just_passed(job: Checked) -> Iterator[Problem]:
    """What a little less height would save, over all leaves that it is so with."""
    alike: dict[tuple[str, int, int, str], list[ButtHinges | CupHinges]] = {}
    for leaf in job.leaves:
        for hung in leaf.hinges:
            hinges = hung.hinges
            if not isinstance(hinges, (ButtHinges, CupHinges)) or leaf.hung.flap is not None:
                continue
            saving = hinges.counted.saving
            if saving is not None and not exceeds(saving.over, _NEAR):
                words = (job.size(leaf.height), job.fine(saving.over))
                key = (words[0], int(hinges.count), int(saving.saved), words[1])
                alike.setdefault(key, []).append(hinges)
    for (height, count, saved, over), found in alike.items():
        first = found[0]
        saving = first.counted.saving
        assert saving is not None
        whole = "" if len(found) == 1 else f", {saved * len(found)} in all"
        yield Problem(
            code="hinge_step_just_passed",
            level="note",
            message=f"A leaf {height} high takes {count} hinges: {over} less, and it would save "
            f"{several(saved, 'hinge')} a leaf{whole}.",
            where=first.written.line("steps"),
            about=first.count.name or "",
            found=height,
            allowed=f"{job.size(saving.step)} or less for {count - saved}",
        )
