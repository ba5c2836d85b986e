"""Cabinets that are over-full, at odds with themselves, misspelt or impossible.

Each is a starter with a few lines changed. Of each: what `check` says, on which line of the file, at
which level, and the exit status. Sums stand beside the row, mm. At the end random edits: whatever
is written, the answer is numbers or a sentence.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from typer.testing import CliRunner

from parametric.cli import app
from parametric.design.starters import templates
from parametric.job import check
from parametric.problems import exit_status, stops

EXAMPLES = Path(__file__).parents[2] / "examples"
HOUSE = Path(__file__).parents[2] / "examples/house.yaml"


class Bad(NamedTuple):
    """A starter, what is changed in it, and the one stop that must be said.

    `at` begins the line to point at, as it is written.
    """

    starter: str
    lines: tuple[tuple[str, str], ...]
    at: str
    code: str
    says: str
    exit_status: int = 1


ALL: tuple[Bad, ...] = (
    # 2207 - 60 - 2400 is less than nothing.
    Bad(
        "wardrobe",
        (("cabinet hanging: equal", "cabinet hanging: 1200"),) * 2,
        "- cabinet drawers: equal",
        "run_does_not_add_up",
        "The wall is 2207, and nothing of it is left for a cabinet of the run.",
    ),
    # 2207 - 60 = 2147 = 3 * 715 + 2
    Bad(
        "wardrobe",
        (("- filler: at least 30", "- filler: 30"),) * 2,
        "run:",
        "run_does_not_add_up",
        "The run leaves 2 of the wall's 2207 over, and no filler takes it.",
    ),
    # 3124 - 60 - 600 - 800 - 600 - 700 = 364
    Bad(
        "kitchen run",
        (("filler: at least 30", "filler: 30"),) * 2
        + (("cabinet stores: rest", "cabinet stores: 700"),),
        "- cabinet stores: 700",
        "run_does_not_add_up",
        "The run leaves 364 of the wall's 3124 over, and no filler takes it.",
    ),
    # 20 + 450 + 2000 + 450 + 20 - 1841 = 1099
    Bad(
        "desk",
        (("space: rest", "space: 2000"),),
        "- cabinet cupboard: 450",
        "run_does_not_add_up",
        "The run is 1099 longer than the wall's 1841, fillers at their least.",
    ),
    Bad(
        "wardrobe",
        (("cabinet hanging: equal", "cabinet hanging: rest"),) * 2,
        "- cabinet hanging: rest",
        "rest_twice",
        '"rest" takes what is left, and only one line can; write "equal" on each.',
        2,
    ),
    Bad(
        "wardrobe",
        (("cabinet drawers: equal", "cabinet drawers: rest"),),
        "- cabinet drawers: rest",
        "shares_mixed",
        '"rest" stands beside "equal"; nothing says which takes what is left.',
        2,
    ),
    Bad(
        "wardrobe",
        (("cabinet drawers: equal", "cabinet drawers: 2 parts"),),
        "- cabinet drawers: 2 parts",
        "shares_mixed",
        "Parts stand beside equal or rest; they never mix.",
        2,
    ),
    Bad(
        "wardrobe",
        (("- cabinet drawers: equal", "- cabinet drawer: equal"),),
        "- cabinet drawer: equal",
        "unknown_name",
        'run uses "cabinet drawer", but there is no block "cabinet drawer".',
        2,
    ),
    Bad(
        "wardrobe",
        (("- cabinet drawers: equal", "- cabinet: equal"),),
        "- cabinet: equal",
        "unknown_name",
        "A run's line calls a cabinet by its heading: `- cabinet base: 600`.",
        2,
    ),
    Bad(
        "desk",
        (("- space: rest", "- spce: rest"),),
        "- spce: rest",
        "unknown_key",
        'No such thing as "spce" in the list of run. Did you mean "space"?',
        2,
    ),
    Bad(
        "wardrobe",
        (("  plinth: 80 ", "  plnth: 80 "),),
        "plnth: 80",
        "unknown_key",
        'No such thing as "plnth" in run (line 32). Did you mean "plinth"?',
        2,
    ),
    Bad(
        "alcove pair",
        (("stands on: base left", "stands on: bse left"),),
        "stands on: bse left",
        "unknown_name",
        'cabinet shelves left stands on "bse left", but there is no "cabinet bse left". Did you '
        'mean "base left"?',
        2,
    ),
    Bad(
        "alcove pair",
        (("stands on: base left", "stands on: shelves left"),),
        "stands on: shelves left",
        "stands_on_itself",
        "cabinet shelves left stands on what stands on it.",
        2,
    ),
    Bad(
        "bookcase",
        (("  left to right: ", "  shelves: 2\n  left to right: "),),
        "shelves: 2",
        "two_lists",
        'cabinet has bays; "shelves" is said of each bay, not beside them.',
        2,
    ),
    # 200 shelves, and a pin every 32 of some 400 less 64 at either end
    Bad(
        "wall cupboard",
        (("  shelves: 1", "  shelves: 200"),),
        "shelves: 200",
        "no_pins",
        "cabinet has fewer heights for pins, 8, than shelves, 200: not every shelf has something to "
        "lie on.",
    ),
    Bad(
        "base cupboard",
        (("- bay: equal", "- bay drawer: equal"),),
        "- bay drawer: equal",
        "unknown_name",
        'cabinet uses "bay drawer", but there is no block "bay drawer".',
        2,
    ),
    Bad(
        "pantry tower",
        (("- shelf space: rest", "- shelf spce: rest"),),
        "- shelf spce: rest",
        "unknown_key",
        'No such thing as "shelf spce" in the list of cabinet. Did you mean "shelf space"?',
        2,
    ),
    Bad(
        "base cupboard",
        (("- door: rest", "- flap: rest"),),
        "- flap: rest",
        "missing_key",
        "A flap says by which edge it hangs: it lifts up by its top, and drops down by its bottom.",
        2,
    ),
    Bad(
        "base cupboard",
        (("fronts: overlay ", "fronts: overlaid "),),
        "fronts: overlaid",
        "unknown_word",
        '"overlaid" is not a way for fronts to lie. Did you mean "overlay"?',
        2,
    ),
    Bad(
        "base cupboard",
        (("corners: dowel", "corners: glue"),),
        "corners: glue",
        "corners_hold_nothing",
        "cabinet is glued at its corners, with nothing let in: a butt does not hold.",
        2,
    ),
    Bad(
        "vanity",
        (("  counter: 30\n", ""),),
        "cut out: 480 x 340",
        "contradicts",
        "cabinet: a cut-out is cut through a counter, and there is none.",
        2,
    ),
    Bad(
        "window seat",
        (("  lid: 24", "  counter: 30\n  lid: 24"),),
        "lid: 24",
        "contradicts",
        "cabinet has a lid and a counter; only one can lie on it.",
        2,
    ),
    Bad(
        "pantry tower",
        (("- door pair: rest", "- fixed front: rest"),),
        "- drawer: 160",
        "drawer_shut_in",
        "cabinet has a drawer behind a front that does not open.",
        2,
    ),
    Bad(
        "bookcase",
        (("kick: 70 x 20 ", "kick: 70 x 400 "),),
        "kick: 70 x 400",
        "no_size",
        "cabinet: the kick is as deep as the case.",
    ),
    Bad(
        "bookcase",
        (("kick: 70 x 20 ", "kick: 2100 x 20 "),),
        "height: 2040",
        "no_size",
        "cabinet is 2040 in height, and its own boards take all of that.",
    ),
    Bad(
        "bookcase",
        (("  width: 1240", "  width: 30"),),
        "width: 30",
        "no_size",
        "cabinet is 30 in width, and its own boards take all of that.",
    ),
    # 18 - 16 = 2
    Bad(
        "bookcase",
        (("  dado: 6 ", "  dado: 16 "),),
        "dado: 16",
        "dado_too_deep",
        "cabinet: boards let in 16 leave 2 of its sides.",
    ),
    # 18 - 2 * 9 = 0
    Bad(
        "bookcase",
        (("  dado: 6 ", "  dado: 9 "),),
        "dado: 9",
        "dadoes_meet",
        "cabinet: fixed shelves let in 9 from both sides at one height leave 0 of the partition "
        "between them.",
    ),
    Bad(
        "wardrobe",
        (("  groove: 8 ", "  groove: 15 "),),
        "groove: 15",
        "groove_through",
        "cabinet hanging 1: the back's groove is 15 deep in a board of 18.",
    ),
    Bad(
        "bookcase",
        (("  height: 2040 ", "  # height: 2040 "),),
        "cabinet:",
        "no_height",
        "cabinet says neither how high it is nor what closes it to the ceiling.",
    ),
    # 2397 - 2500 - 30 = -133
    Bad(
        "wardrobe",
        (("  plinth: 80 ", "  plinth: 2500 "),),
        "top filler: at least 30",
        "no_size",
        "What is under cabinet hanging 1 and over it leaves -133 of the room's height for it.",
    ),
    # 1450 + 720 = 2170 of 2391; 2000 + 720 = 2720
    Bad(
        "wall cupboard",
        (("above floor: 1450", "above floor: 2000"),),
        "cabinet:",
        "cabinet_in_the_wall",
        "Cabinet stands 329 in the ceiling.",
    ),
    # 580 - 12 - 8 = 560
    Bad(
        "wardrobe",
        (("set back: 5 ", "depth: 700 "),),
        "depth: 700",
        "shelf_too_deep",
        "cabinet drawers: its shelves are 700 deep, and it has room for 560.",
    ),
    Bad(
        "base cupboard",
        (("counter: 40 ", "counter: 0 "),),
        "counter: 0",
        "no_size",
        "cabinet: its counter is 0 thick.",
    ),
    Bad(
        "vanity",
        (("cut out: 480 x 340", "cut out: 1200 x 340"),),
        "cut out: 1200 x 340",
        "cut_out_too_large",
        "cabinet: the cut-out is 1200 long, and the case under it 900.",
    ),
    # Ceiling 2414 over the highest floor, less 100 and 40: 2274 high, 2238 inside. Drawers of 160,
    # 200 and 2400 under a board of 18 are 2778: 540 too much.
    Bad(
        "pantry tower",
        (("- drawer: 240", "- drawer: 2400"),),
        "- drawer: 2400",
        "spaces_do_not_add_up",
        "cabinet: the spaces inside take 540 more than its height.",
    ),
    # 2238 - 1000 - 18 - 160 - 200 - 240 = 620
    Bad(
        "pantry tower",
        (("- shelf space: rest", "- shelf space: 1000"),),
        "- shelf space: 1000",
        "spaces_do_not_add_up",
        "cabinet: the spaces inside leave 620 of its height over.",
    ),
    # 860 - 100 less a reveal of 1.5 above and below is 757; less one gap of 3: 754.
    Bad(
        "base cupboard",
        (("- drawer: 150", "- drawer: 900"),),
        "- drawer: 900",
        "fronts_do_not_add_up",
        "Your fronts add to 900; the case has 754 for them, gaps taken off. So they are 146 too much.",
    ),
    Bad(
        "base cupboard",
        (("- drawer: 150\n    - door: rest", "- drawer: 150\n    - door: 100"),),
        "- door: 100",
        "fronts_do_not_add_up",
        "Your fronts add to 250; the case has 754 for them, gaps taken off. So 504 is left over.",
    ),
)


@pytest.mark.parametrize("one", ALL, ids=lambda one: f"{one.starter}: {one.code}")
def test_the_right_sentence_line_level_and_exit(
    tmp_path: Path, one: Bad, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = (templates() / f"{one.starter}.yaml").read_text(encoding="utf-8")
    for old, new in one.lines:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    (found,) = stops(job.problems)
    assert (found.code, found.message) == (one.code, one.says)
    assert found.where is not None
    line = text.splitlines()[found.where.line - 1].strip()
    assert line.startswith(one.at), line
    assert found.fix
    assert job.exit_status == exit_status(job.problems) == one.exit_status
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", str(tmp_path))
    ran = CliRunner().invoke(app, ["check", path.name])
    assert ran.exit_code == one.exit_status
    assert f"stop    {one.says}" in ran.output


LINES = {
    name: (EXAMPLES / f"{name}/design.yaml").read_text(encoding="utf-8").splitlines()
    for name in ("fen-road-wardrobe", "quarry-street-alcove")
}
VALUES = [
    "0",
    "-3",
    "1",
    "9999",
    "rest",
    "equal",
    "2 parts",
    "at least 5",
    "none",
    "x",
    "",
    "{}",
    "[]",
]


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    st.sampled_from(sorted(LINES)),
    st.lists(
        st.tuples(st.integers(0, 200), st.sampled_from(["drop", "value", "double", "swap"])),
        min_size=1,
        max_size=2,
    ),
    st.sampled_from(VALUES),
)
def test_whatever_is_written_there_is_an_answer(
    tmp_path_factory: pytest.TempPathFactory,
    name: str,
    edits: list[tuple[int, str]],
    value: str,
) -> None:
    lines = list(LINES[name])
    for at, how in edits:
        index = at % len(lines)
        key, colon, _ = lines[index].partition(":")
        match how:
            case "drop":
                del lines[index]
            case "value" if colon:
                lines[index] = f"{key}: {value}"
            case "double":
                lines.insert(index, lines[index])
            case _:
                lines[index - 1], lines[index] = lines[index], lines[index - 1]
    path = tmp_path_factory.mktemp("edited") / "design.yaml"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    job = check(path, house=HOUSE, user_house=False)
    for problem in stops(job.problems):
        assert problem.message
        assert problem.fix
