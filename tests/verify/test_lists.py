"""Lists and numbers that are not those of the parts."""

from __future__ import annotations

import json
from typing import Any

import pytest

from parametric.pack.numbers import numbers
from parametric.pack.verifying.figures_file import check_figures
from parametric.pack.verifying.lists import CUT_LIST, GLASS, check_lists
from parametric.trade.cutlist import cut_list
from parametric.trade.glass import glass_order
from parametric.trade.paperwork import paperwork
from parametric.trade.tables import cut_table, glass_table
from parametric.writers.csv import write_csv
from parametric.writers.json import write_json
from tests.verify.larch_hill import job, known


def files() -> dict[str, bytes]:
    made = job()
    assert made.resolved is not None
    assert made.assembly is not None
    unit, shop = made.resolved.design.unit, made.resolved.shop
    cut = cut_table(cut_list(made.assembly), unit, shop)
    glass = glass_table(glass_order(made.resolved, made.assembly), unit, shop)
    return {
        CUT_LIST: write_csv(cut.header, cut.rows),
        GLASS: write_csv(glass.header, glass.rows),
    }


def spoiled(path: str, old: str, new: str) -> str:
    whole = files()
    text = whole[path].decode()
    assert old in text, old
    changed = {**whole, path: text.replace(old, new, 1).encode()}
    return "\n".join(check_lists(changed, known()).faults)


def test_sound_lists_pass() -> None:
    verdict = check_lists(files(), known())
    assert verdict.faults == ()
    assert verdict.looked_at["panes"] == 1


@pytest.mark.parametrize(
    ("path", "old", "new", "says"),
    [
        (CUT_LIST, "784.5,120", "785.5,120", "R1: length is listed 785.5, the part has 784.500"),
        (CUT_LIST, "784.5,120", "784,120", "R1: length is listed 784"),
        (CUT_LIST, "784.5,120", "long,120", "which is no length"),
        (CUT_LIST, "803.5", "804", "P1: width is listed 804, the part has 803.533"),
        (CUT_LIST, "R3,lock rail,2", "R3,lock rail,1", "R3: 1 off are listed, there are 2"),
        (CUT_LIST, "R3,lock rail", "R9,lock rail", "R9: there is no such piece"),
        (CUT_LIST, "R3,lock rail", "R2,lock rail", "R2: is listed twice"),
        (CUT_LIST, "R3,lock rail", "R2,lock rail", "R3: is missing"),
        (CUT_LIST, "tulipwood", "white oak", "is of white oak, the part of tulipwood"),
        (GLASS, "778.5,515", "515,778.5", "G1: width is listed 515"),
        (GLASS, "6.01", "6.03", "G1: 6.03 kg are listed, the pane has 6.014"),
        (GLASS, "G1,4", "G1,2", "G1: 2 off are listed, there are 4"),
    ],
)
def test_a_wrong_list(path: str, old: str, new: str, says: str) -> None:
    assert says in spoiled(path, old, new)


def test_a_list_too_few() -> None:
    for path in (CUT_LIST, GLASS):
        left = {p: d for p, d in files().items() if p != path}
        assert check_lists(left, known()).faults == (f"{path} is missing",)


def figures(change: Any) -> tuple[str, ...]:
    made = job()
    assert made.resolved is not None
    assert made.assembly is not None
    content = numbers(
        made.resolved,
        made.loads,
        made.assembly,
        made.problems,
        paper=paperwork(made.resolved, made.assembly, made.loads),
        fingerprint=known().fingerprint,
        verification={},
    )
    read = json.loads(write_json(content))
    change(read)
    return check_figures(json.dumps(read).encode(), known()).faults


def test_numbers() -> None:
    assert figures(dict) == ()
    assert any("is missing" in f for f in figures(lambda c: c["figures"].pop(7)))
    assert any("not" in f for f in figures(lambda c: c["figures"][7].update(value=1.0)))
    assert any("is in kg" in f for f in figures(lambda c: c["figures"][0].update(unit="kg")))
    assert any(
        "no number of the design" in f for f in figures(lambda c: c["figures"][3].update(name="x"))
    )
    assert any("R1" in f for f in figures(lambda c: c["parts"][2].update(blank=[1, 2, 3])))
    assert any("not the pieces" in f for f in figures(lambda c: c["parts"][2].update(count=1)))
    assert check_figures(b"{}", known()).faults[0].startswith("numbers.json cannot be read back")
    assert check_figures(b"[", known()).faults[0].startswith("numbers.json cannot be read back")
