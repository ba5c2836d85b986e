"""The bench's lists as rows: nothing is lost between the set-ups and the files."""

from __future__ import annotations

from collections import Counter

import pytest

from parametric.job import Job
from parametric.trade.bench_order import MITRE_ANGLE, shop_order
from parametric.trade.bench_tables import (
    block_table,
    by_door_table,
    length_table,
    milling_table,
    order_table,
    stop_table,
)
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.tables import Table


@pytest.fixture(scope="module")
def say(job: Job) -> Printed:
    assert job.resolved is not None
    return printed(job.resolved)


def named(table: Table) -> list[dict[str, str]]:
    return [dict(zip(table.header, row, strict=True)) for row in table.rows]


def test_every_table_is_square(job: Job, paper: Paperwork, say: Printed) -> None:
    assert job.assembly is not None
    for table in (
        order_table(paper, job.assembly),
        milling_table(paper, say),
        stop_table(paper, say),
        block_table(paper, say),
        length_table(paper, say),
        by_door_table(job.assembly, say),
    ):
        assert len(table.rows) > 1
        assert {len(row) for row in table.rows} == {len(table.header)}


def test_milling_has_every_run_and_its_numbers(paper: Paperwork, say: Printed) -> None:
    """40 slots; the guide in two passes: 20 - 1.5 and 20 + 1.5, 3 apart."""
    rows = named(milling_table(paper, say))
    assert len(rows) == sum(len(setting.runs) for setting in paper.milling)
    slots = [row for row in rows if row["set-up"] == "M2"]
    assert sum(int(row["cuts"]) for row in slots) == 40
    assert {
        (row["cutter"], row["fence to middle"], row["depth"], row["steps"]) for row in slots
    } == {("12", "20", "46", "8")}
    guide = [row for row in rows if row["work"] == "floor guide groove"]
    assert {row["fence to middle"] for row in guide} == {"18.5 then 21.5"}
    assert {row["part"] for row in guide} == {"leaf A", "leaf B"}
    assert all(row["test pieces"] == ("0" if row["tool"] == "chisel" else "1") for row in rows)


def test_stops_have_every_line_at_its_set_up(paper: Paperwork, say: Printed) -> None:
    table = stop_table(paper, say)
    assert len(table.rows) == len(paper.stops)
    assert {row[0] for row in table.rows} == {"M2", "M3", "M11", "M12"}
    # The slots of a stile up from the finished foot, as the brief has them.
    stile = [row[-2:] for row in table.rows if row[0] == "M2" and row[1] == "S1 S2"]
    assert stile == [
        ("40", "102"),
        ("158", "220"),
        ("754", "816"),
        ("1385", "1447"),
        ("2011", "2073"),
    ]


def test_blocks_of_a_stopped_groove_mirror_each_other(paper: Paperwork, say: Printed) -> None:
    """714 + 12 - 4 = 722 and 2126 - (226 + 12 + 4) = 1884, changed over for the other hand."""
    rows = named(block_table(paper, say))
    assert [(row["at the"], row["left block"], row["right block"]) for row in rows] == [
        ("right", "1884", "722"),
        ("left", "722", "1884"),
    ]


def test_lengths_and_doors_count_every_piece(job: Job, paper: Paperwork, say: Printed) -> None:
    """66 pieces of timber, all but the 2 glued panels to a stop; each door takes half."""
    assert job.assembly is not None
    lengths = named(length_table(paper, say))
    assert sum(int(row["pieces"]) for row in lengths) == 64
    assert [row["over the points"] for row in lengths].count("yes") == 2
    doors = Counter[str]()
    for row in named(by_door_table(job.assembly, say)):
        doors[row["door"]] += int(row["no."])
    assert doors == {"leaf A": 33, "leaf B": 33}


def test_the_order_of_work_is_one_that_can_be_worked(job: Job, paper: Paperwork) -> None:
    """Every setting once; boards are glued before their panel is sawn, leaves before their foot."""
    assert job.assembly is not None
    steps = shop_order(paper, job.assembly)
    codes = [step.code for step in steps if step.code]
    assert codes == [setting.code for setting in paper.milling]
    pages = [step.page for step in steps]
    assert pages.index("glue-up P1") < pages.index("M5")
    assert pages.index("stop blocks") < pages.index("M1") < pages.index("M2")
    assert pages.index("M1") < pages.index("glue-up leaf A") < pages.index("M9")
    assert pages.count("finish") == 2
    marks = {part.mark for part in job.assembly.parts if not part.supplied}
    timber = marks - {mark for mark in marks if mark.startswith("G")}
    assert set(steps[0].marks) == timber


def test_both_pieces_of_a_mitred_corner_are_cut_alike() -> None:
    """Two equal cuts that close a right angle: 90 / 2."""
    assert float(MITRE_ANGLE) * 2 == 90.0
