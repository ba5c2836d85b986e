"""Sheets that show boards under a slope as if they were sawn square: found, and sound ones are not."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.drawing import draw
from parametric.job import Job, check
from parametric.model import Assembly, Shaped
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.known import Known, known_design
from tests.verify.larch_hill import sheets_as_files

DESIGN = Path(__file__).parents[1] / "designs/old/version-1-rake.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def known(job: Job) -> Known:
    assert job.resolved is not None
    assert job.assembly is not None
    return known_design(job.resolved, job.assembly, job.loads)


def faults(job: Job, known: Known, assembly: Assembly) -> list[str]:
    """What is found where the rooms are drawn from other parts than those that are made."""
    assert job.resolved is not None
    drawn = draw(job.resolved, assembly, job.loads, job.problems, mark=known.mark)
    files = sheets_as_files(drawn)
    rooms = {path: data for path, data in files.items() if path.endswith("cabinets.dxf")}
    assert rooms
    return [fault for fault in check_drawings(rooms, known).faults if "from the front" in fault]


def sawn_square(assembly: Assembly, name: str) -> Assembly:
    """The same with one board's ends square."""
    groups = []
    for group in assembly.groups:
        parts = tuple(
            dataclasses.replace(
                part, cuts=tuple(cut for cut in part.cuts if not isinstance(cut, Shaped))
            )
            if part.name == name
            else part
            for part in group.parts
        )
        groups.append(dataclasses.replace(group, parts=parts))
    return dataclasses.replace(assembly, groups=tuple(groups))


def test_what_is_drawn_as_it_is_has_no_fault(job: Job, known: Known) -> None:
    assert job.assembly is not None
    assert faults(job, known, job.assembly) == []


@pytest.mark.parametrize(
    ("board", "said"),
    [
        # 18 tan a too high at its inner face, for the slope falls to the right: 10.48
        (
            "left side",
            "a line runs from 38;50 to 38;1942.53, past the edge that ends at 38;1932.05",
        ),
        ("partition 1", "past the edge that ends at 579;1617.05"),
        ("top", "cabinet low / top is not drawn from"),
    ],
)
def test_a_board_drawn_square_is_found(job: Job, known: Known, board: str, said: str) -> None:
    assert job.assembly is not None
    found = faults(job, known, sawn_square(job.assembly, f"cabinet low / {board}"))
    assert any(said in fault for fault in found), found
