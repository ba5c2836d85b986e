"""A rail held at a line of the room: a neighbouring door's rail, a chair rail."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.figures import collect, leaves
from parametric.job import check
from parametric.trade.paperwork import paperwork
from tests.design.written_files import changed

LARCH_HILL = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"
FIXING = "  board over fixing: 12.5"
LOCK, PANEL = "- lock rail: 150", "- panel: 460"


def held(folder: Path, by: str, up: str = "905") -> Path:
    """Larch Hill with its lock rail at the neighbour's, its panel taking what is left."""
    path = folder / "design.yaml"
    text = changed(
        LARCH_HILL.read_text(encoding="utf-8"),
        (FIXING, f"{FIXING}\n  lines: {{hall door lock rail: {up}, chair rail: not measured}}"),
        (LOCK, f"- {{lock rail: 150, {by}}}"),
        (PANEL, "- panel: rest"),
    )
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("key", "foot"),
    [
        # the line is 905 above the highest floor, the leaf's foot 12 above it: 905 - 12 = 893
        ("top", 893 - 150),
        ("bottom", 893),
        ("centre", 893 - 150 / 2),
    ],
)
def test_the_rail_stands_level_with_the_line(tmp_path: Path, key: str, foot: float) -> None:
    resolved = check(held(tmp_path, f"{key}: hall door lock rail")).resolved
    assert resolved is not None
    for leaf in resolved.door.leaves:
        rail = next(band for band in leaf.bands if band.noun == "lock rail")
        panel, lite = leaf.bands[-2], leaf.bands[-4]
        assert float(rail.foot) == pytest.approx(foot, abs=1e-9)
        # the bottom rail is 240; above, 2102 less the rail's top and rails of 120 and 90 is halved
        assert float(panel.height) == pytest.approx(foot - 240, abs=1e-9)
        assert float(lite.height) == pytest.approx((2102 - foot - 150 - 120 - 90) / 2, abs=1e-9)
        readings = {figure.name: figure.origin for figure in leaves(rail.foot)}
        assert readings["lines / hall door lock rail"] == "measured"
    assert "leaf B / hall door lock rail" in collect(resolved.door)


def test_the_fitter_is_told(tmp_path: Path) -> None:
    job = check(held(tmp_path, "top: hall door lock rail"))
    assert job.resolved is not None
    assert job.assembly is not None
    told = [
        (step.do, step.check)
        for step in paperwork(job.resolved, job.assembly, job.loads).install.steps
        if "hall door lock rail" in step.do
    ]
    assert told == [
        (
            "Level across with a laser: the upper edge of the lock rail and the hall door lock "
            "rail.",
            "hall door lock rail 905 above the highest point of the floor under the door, at the "
            "right, no step to be seen.",
        )
    ]


@pytest.mark.parametrize(
    ("by", "up", "code", "says"),
    [
        (
            "top: hall dor lock rail",
            "905",
            "unknown_name",
            'The survey has no line called "hall dor lock rail". Did you mean "hall door lock '
            'rail"?',
        ),
        (
            "centre: chair rail",
            "905",
            "line_not_measured",
            'The lock rail is held at "chair rail", which was not measured.',
        ),
        (
            # 5 - 12 = -7 above the foot, -7 - 150 = -157 below the rail, less the bottom rail's 240
            "top: hall door lock rail",
            "5",
            "no_size_left",
            "The leaf A / panel would be -397 high: the lock rail, held at -7 above the leaf's "
            "foot, leaves -157 below it, and the given lines there add to 240.",
        ),
        (
            # 2400 - 12 = 2388; 2102 - 2388 = -286 above the rail, (-286 - 120 - 90) / 2 = -248
            "top: hall door lock rail",
            "2400",
            "no_size_left",
            "The leaf A / lite 1 would be -248 high: the lock rail, held at 2388 above the leaf's "
            "foot, leaves -286 above it, and the given lines there add to 210.",
        ),
    ],
)
def test_what_cannot_be(tmp_path: Path, by: str, up: str, code: str, says: str) -> None:
    path = held(tmp_path, by, up)
    (stop,) = (p for p in check(path).problems if p.level == "stop")
    assert (stop.code, stop.message) == (code, says)
    lines = path.read_text(encoding="utf-8").splitlines()
    assert stop.where is not None
    assert by in lines[stop.where.line - 1]


def test_a_doubt_about_the_line_is_a_caution(tmp_path: Path) -> None:
    job = check(held(tmp_path, "top: hall door lock rail", "about 905"))
    (doubt,) = (p for p in job.problems if p.code == "reading_doubted")
    assert doubt.about == "lines / hall door lock rail"
