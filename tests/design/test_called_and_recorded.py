"""What a design calls from its house, what its records speak of, and numbers of nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/larch-hill-reading-room/design.yaml"
HOUSE = ROOT / "examples/house.yaml"


def checked(folder: Path, *changes: tuple[str, str], house: str = "", more: str = "") -> Job:
    """Larch Hill with some of its text changed, beside a house with more in it."""
    text = DESIGN.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    (folder / "design.yaml").write_text(text + more, encoding="utf-8")
    (folder / "house.yaml").write_text(HOUSE.read_text(encoding="utf-8") + house, encoding="utf-8")
    return check(folder / "design.yaml", house=folder / "house.yaml", user_house=False)


@pytest.mark.parametrize(
    ("house", "call", "needs"),
    [
        ("panel x: {thickness: 9}\n", ("leaf:\n", "leaf:\n  panel: x\n"), '"kind"'),
        ("glass x: {clearance: 9}\n", ("leaf:\n", "leaf:\n  glass: x\n"), '"kind"'),
        ("track x: {bearing: 9}\n", ("door:\n", "door:\n  track: x\n"), '"off wall"'),
        ("guide x: {cutter: 6}\n", ("door:\n", "door:\n  guide: x\n"), '"groove"'),
    ],
)
def test_half_a_block_of_the_house_is_a_habit_until_it_is_called(
    tmp_path: Path, house: str, call: tuple[str, str], needs: str
) -> None:
    assert checked(tmp_path, house=house).exit_status == 0
    job = checked(tmp_path, call, house=house)
    assert job.exit_status == 2
    assert any(needs in p.message and p.where is not None for p in job.problems)


def test_likes_without_end_are_answered(tmp_path: Path) -> None:
    chain = "".join(f"glass a{n}: {{like: a{n + 1}}}\n" for n in range(1500))
    job = checked(tmp_path, ("leaf:\n", "leaf:\n  glass: a0\n"), more=chain + "glass a1500: {}\n")
    assert job.exit_status == 2
    assert any("deep" in p.message for p in job.problems)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            ("timber tulipwood: {density: 480 kg/m3}", "timber tulipwood: {density: 0 kg/m3}"),
            "of 0",
        ),
        (
            ("timber tulipwood:", "shop: {print to: 0}\ntimber tulipwood:"),
            "finer than anything a shop reads",
        ),
        (("timber tulipwood:", "router: {cutters: [0]}\ntimber tulipwood:"), "more than 0"),
    ],
)
def test_a_nothing_that_would_divide_is_answered(
    tmp_path: Path, change: tuple[str, str], says: str
) -> None:
    job = checked(tmp_path, change)
    assert job.exit_status == 2
    assert any(says in p.message for p in job.problems), [p.message for p in job.problems]


def test_a_reading_of_nothing_is_told_once(tmp_path: Path) -> None:
    job = checked(tmp_path, ("middle: 1824", "middle: 0"))
    assert [(p.code, p.no_size) for p in job.problems] == [("no_size", True)]
    assert "width middle is 0" in job.problems[0].message


def test_a_rail_of_nothing_points_at_its_line(tmp_path: Path) -> None:
    job = checked(tmp_path, ("- dividing rail: 90", "- dividing rail: 0"))
    found = next(p for p in job.problems if p.code == "part_has_no_size")
    assert found.no_size
    assert found.where is not None
    line = (tmp_path / "design.yaml").read_text(encoding="utf-8").splitlines()[found.where.line - 1]
    assert "dividing rail: 0" in line


@pytest.mark.parametrize(
    ("record", "near"),
    [
        ("as built:\n  A lock rial: 784\n", "leaf A / lock rail"),
        ("cut: [A lock rial]\n", "leaf A / lock rail"),
    ],
)
def test_records_of_what_is_not_there(tmp_path: Path, record: str, near: str) -> None:
    job = checked(tmp_path, more=record)
    assert job.exit_status == 2
    (found,) = (p for p in job.problems if p.level == "stop")
    assert f'Did you mean "{near}' in found.message


def test_records_of_what_is_there(tmp_path: Path) -> None:
    record = "as built:\n  A lite 1 glass width: 778\ncut: [A left stile, B lock rail]\n"
    assert checked(tmp_path, more=record).exit_status == 0


def test_a_pin_with_a_slip_in_its_name_is_answered_with_the_nearest(tmp_path: Path) -> None:
    job = checked(tmp_path, ("door:\n", "door:\n  pinned: {lock rial height: 150}\n"))
    assert job.exit_status == 2
    assert any('Did you mean "leaf A / lock rail / height"?' in p.message for p in job.problems)
