"""Larch Hill's paper, and designs like it with some of their text changed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import Job, check
from parametric.pack.numbers import figures
from parametric.trade.paperwork import Paperwork, paperwork


def paper_of(job: Job) -> Paperwork:
    assert job.resolved is not None
    assert job.assembly is not None
    return paperwork(job.resolved, job.assembly, job.loads)


@pytest.fixture(scope="session")
def job(reading_room: Path) -> Job:
    return check(reading_room, user_house=False)


@pytest.fixture(scope="session")
def paper(job: Job) -> Paperwork:
    return paper_of(job)


@pytest.fixture(scope="session")
def numbers(job: Job, paper: Paperwork) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads, paper)


Edited = Callable[..., Job]


@pytest.fixture
def edited(reading_room: Path, project: Path, tmp_path: Path) -> Edited:
    """Larch Hill with some of its lines changed, checked with the examples' house file."""

    def change(*changes: tuple[str, str]) -> Job:
        text = reading_room.read_text(encoding="utf-8")
        for old, new in changes:
            assert old in text, old
            text = text.replace(old, new, 1)
        path = tmp_path / "design.yaml"
        path.write_text(text, encoding="utf-8")
        return check(path, house=project / "examples/house.yaml", user_house=False)

    return change
