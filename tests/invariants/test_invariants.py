"""What must be true of every design that is sound, tried on random ones."""

from __future__ import annotations

import math
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings

from parametric.job import Job, check
from parametric.model import Assembly, Part, removed_volume, same_shape
from parametric.pack.numbers import figures, part_records
from parametric.problems import stops
from parametric.resolve.door import Resolved
from parametric.trade.cutlist import cut_list
from parametric.trade.glass import glass_order
from parametric.written import Equal
from tests.invariants.designs import bypass_designs

CLOSE = 1e-9


def checked(text: str) -> Job:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        return check(path, user_house=False)


def sound(job: Job) -> tuple[Resolved, Assembly] | None:
    if stops(job.problems) or job.resolved is None or job.assembly is None:
        return None
    return job.resolved, job.assembly


@settings(max_examples=60)
@given(bypass_designs())
def test_every_design_is_answered(text: str) -> None:
    """Sound or not, a design ends in numbers or in a stop that says where and why."""
    job = checked(text)
    for problem in stops(job.problems):
        assert problem.message
        assert problem.fix
        assert not problem.unreadable, problem.message
    assert job.exit_status == (1 if stops(job.problems) else 0)


@settings(max_examples=60)
@given(bypass_designs())
def test_sizes_add_up(text: str) -> None:
    job = checked(text)
    if job.resolved is None:
        return
    hanging = job.resolved.door.hanging
    first, second = job.resolved.door.leaves
    for leaf in (first, second):
        assert math.isclose(sum(b.height for b in leaf.bands), leaf.height, abs_tol=CLOSE)
        assert math.isclose(
            leaf.left_stile + leaf.shoulder + leaf.right_stile, leaf.width, abs_tol=CLOSE
        )
    # Twins are equal and their rail lines agree.
    assert [float(b.foot) for b in first.bands] == [float(b.foot) for b in second.bands]
    assert float(first.width) == float(second.width)
    # Two leaves and one overlap fill the cover; a travel uncovers one leaf's worth.
    assert math.isclose(2 * hanging.leaf_width - hanging.overlap, hanging.cover, abs_tol=CLOSE)
    assert first.hung.travel is not None
    assert second.hung.travel is not None
    assert math.isclose(first.hung.travel, -second.hung.travel, abs_tol=CLOSE)
    # Lines that say `equal` are equal to the last bit.
    assert len({float(b.height) for b in first.bands if isinstance(b.written.size, Equal)}) <= 1


@settings(max_examples=40)
@given(bypass_designs())
def test_parts_agree_with_numbers_lists_and_one_another(text: str) -> None:
    job = checked(text)
    found = sound(job)
    if found is None:
        return
    resolved, assembly = found
    by_mark: dict[str, Part] = {}
    for part in assembly.parts:
        # Twins share a mark exactly when they share a solid.
        assert same_shape(by_mark.setdefault(part.mark, part), part)
        removed = [removed_volume(cut, part.blank) for cut in part.cuts]
        assert all(volume > 0 for volume in removed), part.name
        assert 0 < part.volume <= part.blank.volume
    made = [part for part in assembly.parts if not part.supplied]
    rows = cut_list(assembly)
    assert sorted(name for row in rows for name in row.names) == sorted(p.name for p in made)
    panes = sum(row.number for row in glass_order(resolved, assembly))
    assert panes == sum(p.material.look == "glass" for p in made)
    records = part_records(assembly)
    assert sum(record["count"] for record in records) == len(assembly.parts)
    names = figures(resolved, job.loads)
    assert not any("," in name for name in names)


@pytest.mark.kernel
@settings(max_examples=6)
@given(bypass_designs())
def test_solids_are_whole_and_clear_of_one_another(text: str) -> None:
    """Valid, closed, inside the blank, volume by formula (asserted while building), no clash."""
    found = sound(checked(text))
    if found is None:
        return
    _, assembly = found
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    solids = build_solids(assembly.parts)
    assert clashes_in_all_states(assembly, solids) == ()
