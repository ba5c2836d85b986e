"""Which two leaves are drawn where they pass: neighbours on tracks beside one another, at the wall."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.drawing.details.passing_leaves import shown_pair
from tests.hangings.doors import job_of


@pytest.mark.parametrize(
    ("door", "first"),
    [
        ("leaves: 2", 0),
        ("leaves: 2\ntracks: [back, front]", 0),
        # A and B pass on front and middle; the gap at the wall is behind C, on the back track
        ("leaves: 3\ntracks: [front, middle, back]", 1),
        ("leaves: 4\ntracks: [front, middle, back, front]", 1),
        # C on the front passes the back by two: B, on the middle, has A at the back beside it
        ("leaves: 3\ntracks: [back, middle, front]", 0),
        # in the opening the gap at the wall's face is before the outermost leaf
        ("leaves: 3\nhung: in the opening\ntracks: [back, middle, front]", 1),
        ("leaves: 3\nhung: in the opening\ntracks: [front, middle, back]", 0),
    ],
)
def test_the_pair_that_is_shown(door: str, first: int, tmp_path: Path) -> None:
    job = job_of(f"kind: bypass\n{door}", tmp_path)
    assert job.resolved is not None
    assert shown_pair(job.resolved.door) == slice(first, first + 2)
