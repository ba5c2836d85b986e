"""A run along a wall: cabinets, fillers, a space left free, what goes over it and what is under it.

Walls: left at 0, 3, 5 from the foot up, right at 3640, 3634, 3641. Plumb clear width 3634 - 5 =
3629, from 5. Given: 20 + 600 + 600 + 20 + 40 = 1280; the two that share have (3629 - 1280)/2.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Part

DESIGN = Path(__file__).with_name("kitchen.yaml")
SINK = (3629 - 1280) / 2


def job_of(folder: Path, *changes: tuple[str, str]) -> Job:
    text = DESIGN.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return check(path, user_house=False)


@pytest.fixture(scope="module")
def parts() -> dict[str, Part]:
    job = check(DESIGN, user_house=False)
    assert job.assembly is not None
    (group,) = (g for g in job.assembly.groups if g.name == "run")
    return {part.name: part for part in group.parts}


def test_it_adds_up_to_the_wall() -> None:
    job = check(DESIGN, user_house=False)
    assert job.resolved is not None
    assert job.resolved.casework is not None
    (run,) = job.resolved.casework.runs
    widths = [float(width) for width in run.across.widths]
    assert widths == pytest.approx([20, 600, 600, SINK, 20, SINK, 40])
    assert sum(widths) == pytest.approx(3629)
    lefts = [float(left) for left in run.across.lefts]
    assert lefts == pytest.approx([5, 25, 625, 1225, 1225 + SINK, 1245 + SINK, 1245 + 2 * SINK])
    assert [case.name for case in job.resolved.casework.cases] == [
        "cabinet bank",
        "cabinet sink 1",
        "cabinet sink 2",
    ]


def test_the_counter_goes_over_fillers_and_the_space(parts: dict[str, Part]) -> None:
    """120 + 720 = 840 up. There the left wall stands at 3*840/1194 + ..., measured half way up
    2388/2: it is farthest in at the counter's top, 880: 3*880/1194 = 2.2111. The right wall runs
    from 3640 to 3634 at 1194: at 880 it is at 3640 - 6*880/1194 = 3635.5779.
    """
    counter = parts["run / counter"]
    assert counter.placement.origin == pytest.approx((3 * 880 / 1194, -20, 840))
    assert float(counter.blank.length) == pytest.approx(3640 - 6 * 880 / 1194 - 3 * 880 / 1194)
    assert float(counter.blank.width) == 560 + 20
    left = parts["run / left filler"]
    assert float(left.blank.length) == 720
    assert left.placement.origin[2] == 120


def test_a_filler_between_two_cabinets_is_a_part(parts: dict[str, Part]) -> None:
    filler = parts["run / filler 1"]
    assert (float(filler.blank.length), float(filler.blank.width)) == (720, 20)
    assert filler.placement.origin == pytest.approx((1225 + SINK, 0, 120))


def test_the_plinth_stops_at_the_space(parts: dict[str, Part]) -> None:
    """Two: under 600 from 25, and under 2 x 1174.5 + 20 from 1225; blanks 125 + 6."""
    first, second = parts["run / plinth / part 1 / front"], parts["run / plinth / part 2 / front"]
    assert (float(first.blank.length), float(first.blank.width)) == (600, 131)
    assert first.placement.origin[0] == 25
    assert float(second.blank.length) == pytest.approx(2 * SINK + 20)
    assert second.placement.origin[0] == 1225


@pytest.mark.parametrize(
    ("old", "new", "code", "says"),
    [
        (
            "- space: 600",
            "- space: rest",
            "shares_mixed",
            '"rest" stands beside "equal"; nothing says which takes what is left.',
        ),
        (
            "- cabinet bank: 600\n    - space: 600\n",
            "- space: 600\n    - cabinet bank: 600\n",
            "filler_beside_space",
            "A filler stands beside no cabinet, and nothing is there to fix it to.",
        ),
        # 3629 - 20 - 600 - 20 - 40 = 2949, and 4000 is more: nothing is left for the cabinets.
        (
            "- space: 600",
            "- space: 4000",
            "run_does_not_add_up",
            "The wall is 3629, and nothing of it is left for a cabinet of the run.",
        ),
    ],
)
def test_what_cannot_be(tmp_path: Path, old: str, new: str, code: str, says: str) -> None:
    job = job_of(tmp_path, (old, new))
    assert [(p.code, p.message) for p in job.problems if p.level == "stop"] == [(code, says)]
