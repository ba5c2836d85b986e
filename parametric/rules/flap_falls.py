"""A flap comes down by itself, or traps fingers, as any flap does.

Why: the weight of a flap is on a hand or a head before anybody has thought of it.
Example: a lift-up flap whose struts take over at 14 deg falls shut from any angle below that.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hardware.gas_strut import GasStruts
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.trade.case_names import begun
from parametric.trade.printed import weight
from parametric.trade.site_words import leaf_names


def flap_falls(job: Checked) -> Iterator[Problem]:
    """Caution, always, where there is a flap; those that move alike are told together."""
    lots: dict[str, list[Leaf]] = {}
    for leaf in job.leaves:
        if leaf.hung.flap is not None:
            lots.setdefault(_how(job, leaf), []).append(leaf)
    for how, leaves in lots.items():
        names = leaf_names([leaf.name for leaf in leaves])
        yield Problem(
            code="flap_falls",
            level="caution",
            message=f"{begun(names)} {how}",
            where=job.door.written.here,
            about=leaves[0].name,
            found="falling flap, finger trap",
            allowed="held whenever it moves",
            fix="Tell the client, above all where there are children; try the stays every year, "
            "and change them when a flap sinks.",
        )


def _how(job: Checked, leaf: Leaf) -> str:
    flap = leaf.hung.flap
    assert flap is not None, "asked only of flaps"
    if flap.side == "bottom":
        heavy = weight(leaf.weights.estimate, job.design.unit)
        return (
            f"weighs {heavy} and drops open when it is let go: hold it down to its stays. Fingers "
            "can be caught at its hinge edge and in its stays, and nobody sits or climbs on it."
        )
    sized = None if leaf.stays is None else leaf.stays.sized
    over = sized.takes_over if isinstance(sized, GasStruts) else None
    when = (
        "falls shut when it is let go"
        if over is None
        else (f"falls shut from below about {float(over):.0f} deg, and above that rises by itself")
    )
    return (
        f"{when}: heads and hands out of its way. Fingers can be caught along its edges and at "
        "its struts."
    )
