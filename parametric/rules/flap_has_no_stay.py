"""Nothing holds a flap open.

Why: one that lifts up falls on whoever looks under it; one that drops down hangs in its hinges,
and tears them out when somebody leans on it. Example: a flap over a worktop without a strut.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hangings.case_fronts import CaseFronts
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.case_names import begun


def flap_has_no_stay(job: Checked) -> Iterator[Problem]:
    """A stop for each that lifts up, a caution for each that drops down."""
    spec = job.door.written
    if not isinstance(spec, CaseFronts):
        return
    for leaf, called in zip(job.leaves, spec.leaf_stays, strict=True):
        flap = leaf.hung.flap
        if flap is None or leaf.stays is not None or called is None:
            continue
        up = flap.side == "top"
        yield Problem(
            code="flap_has_no_stay",
            level="stop" if up else "caution",
            message=f"{begun(leaf.name)} lifts up, and nothing holds it there: it falls on a hand or "
            "a head."
            if up
            else f"{begun(leaf.name)} drops down, and nothing holds it level: it hangs in its "
            "hinges, which tear out when somebody leans on it.",
            where=called.line.here,
            about=leaf.name,
            found="no stay",
            allowed="gas struts" if up else "lid stays",
            fix=f"Write a block `stay:` with `kind: {'gas strut' if up else 'lid stay'}` and its "
            "sizes from the data sheet.",
        )
