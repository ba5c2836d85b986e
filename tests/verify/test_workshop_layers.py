"""Machine files on layers of a workshop's own names, read back by those names and no others."""

from __future__ import annotations

import dataclasses

import pytest

from parametric.catalog.layer_names import LayerNames
from parametric.cnc.bench_work import bench_work
from parametric.cnc.setups import set_ups
from parametric.cnc.tool_list import (
    BENCH_LIST_HEADER,
    TOOL_LIST_HEADER,
    bench_list,
    tool_list,
)
from parametric.pack.verifying.rebuilt import check_cutting
from parametric.writers.csv import write_csv
from tests.verify.lopsided import assembly, known, written

THEIRS = LayerNames(
    order=("cutter", "kind", "depth"),
    between="-",
    depth_mark="",
    cutter_mark="dia",
    decimal_sign="p",
    slot="mortise",
    groove="dado",
    through="Durch",
    stock="blank",
    datum="zero",
    notes="words",
)


def files(names: LayerNames) -> dict[str, bytes]:
    found = set_ups(assembly(), (), names)
    return {
        **{f"cnc/{one.file}": written(one) for one in found},
        "cnc/tool-list.csv": write_csv(TOOL_LIST_HEADER, tool_list(found)),
        "cnc/saw-and-bench-work.csv": write_csv(
            BENCH_LIST_HEADER, bench_list(bench_work(assembly()))
        ),
    }


def faults(data: dict[str, bytes], names: LayerNames) -> str:
    return "\n".join(check_cutting(data, dataclasses.replace(known(), layers=names)).faults)


def test_sound_by_their_own_names() -> None:
    assert faults(files(THEIRS), THEIRS) == ""


def test_not_sound_by_any_others() -> None:
    assert "cannot be read back" in faults(files(THEIRS), known().layers)
    told = dataclasses.replace(THEIRS, slot="slit")
    assert "layer dia6-mortise-31 says no kind of cut and no depth" in faults(files(THEIRS), told)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (b"dia6-mortise-31", b"dia6-mortise-13", "lies 31 deep, and its name says 13"),
        (b"dia6-mortise-31", b"dia4-mortise-31", "the words say a cutter of 6"),
        (b"\nzero\n", b"\nnull\n", "the datum is marked 0 times"),
    ],
)
def test_seeded(old: bytes, new: bytes, says: str) -> None:
    data = files(THEIRS)
    path = next(p for p, d in data.items() if old in d and p.endswith("inner-edge.dxf"))
    assert says in faults({**data, path: data[path].replace(old, new)}, THEIRS)
