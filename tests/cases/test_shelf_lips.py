"""Lips under shelves: where each is, what it is cut from, and that it is in nothing's way."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Part
from parametric.trade.cutlist import cut_list

BOOKCASE = Path(__file__).parents[1] / "rules/bookcase.yaml"
IN = 25.4


def bookcase(tmp_path: Path, old: str = "", new: str = "") -> Job:
    text = BOOKCASE.read_text(encoding="utf-8")
    assert old in text
    path = tmp_path / "design.yaml"
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return check(path, user_house=False)


def parts_of(job: Job) -> dict[str, Part]:
    assert job.assembly is not None, [p.message for p in job.problems]
    return {part.name: part for part in job.assembly.parts}


def box(part: Part) -> tuple[tuple[float, float], ...]:
    """What a part's blank takes up in its case, by x, y and z."""
    blank = part.blank
    corners = [
        part.placement.point((u, v, w))
        for u in (0.0, float(blank.length))
        for v in (0.0, float(blank.width))
        for w in (0.0, float(blank.thickness))
    ]
    return tuple((min(axis), max(axis)) for axis in zip(*corners, strict=True))


def test_each_lies_under_the_front_of_its_shelf(tmp_path: Path) -> None:
    """3/4 x 1-1/2, as long as the shelf: 44-1/2 less 1/16 at each end."""
    parts = parts_of(bookcase(tmp_path))
    for number in (1, 2, 3):
        shelf, lip = parts[f"cabinet / shelf {number}"], parts[f"cabinet / shelf {number} / lip"]
        assert lip.blank.length == shelf.blank.length == pytest.approx(44.375 * IN)
        (x0, x1), (y0, y1), (z0, z1) = box(lip)
        (sx0, sx1), (sy0, sy1), (sz0, _) = box(shelf)
        assert (x0, x1) == pytest.approx((sx0, sx1))
        assert (y0, y1) == pytest.approx((sy0, sy0 + 0.75 * IN))
        assert (z0, z1) == pytest.approx((sz0 - 1.5 * IN, sz0))
        assert sy1 - sy0 == pytest.approx(10 * IN)


def test_it_is_in_nothing_s_way(tmp_path: Path) -> None:
    boxes = [box(part) for part in parts_of(bookcase(tmp_path)).values()]
    for one, other in combinations(boxes, 2):
        assert any(
            a1 <= b0 + 1e-6 or b1 <= a0 + 1e-6
            for (a0, a1), (b0, b1) in zip(one, other, strict=True)
        )


def test_it_is_of_timber_and_on_the_cut_list(tmp_path: Path) -> None:
    job = bookcase(tmp_path, "  lip: 3/4", "  lip timber: white oak\n  lip: 3/4")
    lips = [part for part in parts_of(job).values() if part.noun == "shelf lip"]
    assert {(part.material.name, part.material.look) for part in lips} == {("white oak", "timber")}
    assert len({part.mark for part in lips}) == 1
    assert job.assembly is not None
    (row,) = (row for row in cut_list(job.assembly) if row.noun == "shelf lip")
    assert row.number == 3


def test_a_timber_that_nobody_knows_is_answered_on_its_line(tmp_path: Path) -> None:
    job = bookcase(tmp_path, "  lip: 3/4", "  lip timber: whit oak\n  lip: 3/4")
    (found,) = (p for p in job.problems if p.code == "unknown_name")
    assert found.message == 'No timber is called "whit oak". Did you mean "white oak"?'
    assert found.fix.startswith("Write `lip timber: white oak`.")
    assert found.where is not None
    assert found.where.line == 25


def test_without_a_lip_there_is_none(tmp_path: Path) -> None:
    parts = parts_of(bookcase(tmp_path, "  lip: 3/4 x 1-1/2\n"))
    assert not any(part.noun == "shelf lip" for part in parts.values())
