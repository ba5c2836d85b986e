"""Bored boards read back: sound files pass; a hole that is moved, left out, doubled or too deep is found."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable

import pytest

from parametric.cnc.operations import Operation
from parametric.cnc.setups import set_ups
from parametric.model import Assembly, Cut, Drilled
from parametric.outlines import moved
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from parametric.pack.verifying.rebuilt import check_cutting
from tests.verify.bored import assembly, known
from tests.verify.lopsided import cutting, written

Files = dict[str, bytes]
FACE = "C1-side-high-face.dxf"


def faults(files: Files) -> tuple[str, ...]:
    return check_cutting(files, known()).faults


def one(found: tuple[str, ...], *words: str) -> None:
    """Some fault says all these words."""
    assert any(all(word in fault for word in words) for fault in found), found


def redrawn(change: Callable[[tuple[Operation, ...]], tuple[Operation, ...]]) -> Files:
    set_up = next(s for s in set_ups(assembly()) if s.file == FACE)
    changed = dataclasses.replace(set_up, operations=change(set_up.operations))
    return {**cutting(assembly()), f"cnc/{FACE}": written(changed)}


def test_sound_files_pass() -> None:
    """23 pins, 2 and 3 x 2 screws, 1 cable hole, 4 and 3 dowels, 1 hole: 40; 6 by the bench."""
    verdict = check_cutting(cutting(assembly()), known())
    assert verdict.faults == ()
    assert verdict.looked_at["outlines"] == 40
    assert verdict.looked_at["saw and bench cuts"] == 2


def test_a_hole_left_out_is_found() -> None:
    one(faults(redrawn(lambda ops: ops[:7] + ops[8:])), "pin holes", "is missing")


def test_a_hole_drawn_twice_is_found() -> None:
    one(faults(redrawn(lambda ops: (*ops, ops[7]))), "doubled")


def test_a_hole_a_tenth_off_is_found() -> None:
    def shift(ops: tuple[Operation, ...]) -> tuple[Operation, ...]:
        off = dataclasses.replace(ops[7], outline=moved(ops[7].outline, 0.1, 0.0))
        return (*ops[:7], off, *ops[8:])

    one(faults(redrawn(shift)), "pin holes", "lies at")


def test_a_hole_too_deep_is_found() -> None:
    def deepen(ops: tuple[Operation, ...]) -> tuple[Operation, ...]:
        return (*ops[:7], dataclasses.replace(ops[7], depth=14.0), *ops[8:])

    one(faults(redrawn(deepen)), "pin holes", "14 deep")


@pytest.mark.parametrize(
    ("was", "said"),
    [
        ("5 holes", "4 holes"),
        ("every 96", "every 95"),
        ("8 dia", "9 dia"),
        ("96 along", "96 across"),
    ],
)
def test_a_row_that_the_list_tells_otherwise_is_found(was: str, said: str) -> None:
    files = cutting(assembly())
    path = "cnc/saw-and-bench-work.csv"
    files[path] = files[path].replace(was.encode(), said.encode())
    one(faults(files), "C1", "dowel holes")


def altered(change: Callable[[Drilled], Cut]) -> Assembly:
    """The boards with their first row of pins bored otherwise."""
    group = assembly().groups[0]
    side, shelf = group.parts
    first = side.cuts[0]
    assert isinstance(first, Drilled)
    changed = dataclasses.replace(side, cuts=(change(first), *side.cuts[1:]))
    return dataclasses.replace(
        assembly(), groups=(dataclasses.replace(group, parts=(changed, shelf)),)
    )


@pytest.mark.kernel
def test_models_of_bored_boards_pass() -> None:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    solids = build_solids(assembly().parts)
    assert check_glb(write_glb(assembly(), solids), known()).faults == ()
    assert check_step(write_step(assembly(), solids), known()).faults == ()


@pytest.mark.kernel
@pytest.mark.parametrize(
    "change",
    [
        # from the other end of the row it would be the same
        lambda cut: dataclasses.replace(cut, u=cut.u + 5),
        lambda cut: dataclasses.replace(cut, pitch=31.5, u=cut.u + 2.75),
        lambda cut: dataclasses.replace(cut, face="low face"),
    ],
    ids=["along", "another pitch about the same middle", "the other face"],
)
def test_models_bored_otherwise_are_found(change: Callable[[Drilled], Cut]) -> None:
    """Each has the volume of the part; the middle of it is the same in the second."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    wrong = altered(change)
    solids = build_solids(wrong.parts)
    assert check_glb(write_glb(wrong, solids), known()).faults
    assert check_step(write_step(wrong, solids), known()).faults
