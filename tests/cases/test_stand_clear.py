"""Cabinets as solids: valid, of their parts' volumes, and clear of one another in every state."""

from __future__ import annotations

import pytest

from parametric.design.starters import templates
from parametric.job import check


@pytest.mark.kernel
@pytest.mark.parametrize(
    "starter", ["alcove pair", "kitchen run", "pantry tower", "under stair", "window seat"]
)
def test_nothing_overlaps_in_any_state(starter: str) -> None:
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = check(templates() / f"{starter}.yaml", user_house=False)
    assert job.assembly is not None, [problem.message for problem in job.problems]
    assert {"shut", "open"} <= {state.name for state in job.assembly.states}
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()
