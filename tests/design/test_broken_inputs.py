"""Designs that cannot be made, and files that are no designs: said in words, and nothing written."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from typer.testing import CliRunner

from parametric.cli import app
from parametric.design.survey import SurveySpec
from parametric.job import build, check
from parametric.problems import exit_status, stops
from tests.design.written_files import PLAIN, changed, loaded

Lines = tuple[tuple[str, str], ...]

WIDTHS = "widths: {top: 1826, middle: 1824, bottom: 1829}"
HEIGHTS = "{left: 2078, middle: 2074, right: 2069}"

# Each with its exit status and how the answer begins.
STOPPED: dict[str, tuple[Lines, int, str]] = {
    "the diagonals contradict the sides": (
        (
            (
                WIDTHS,
                "widths: {middle: 900}\n  left side: plumb\n  right side: plumb\n"
                "  diagonals: {rising right: 2203, rising left: 2193}",
            ),
            (HEIGHTS, "{middle: 2000}"),
        ),
        1,
        "The diagonals disagree by 10. That needs both sides leaning 12.2 the same way, or one "
        "side 24.1, but you wrote plumb. Measure the 2203 again.",
    ),
    "bands that fall short": (
        (
            ("- lite: equal", "- lite: 521"),
            ("- lite: equal", "- lite: 521"),
            ("panel: 460", "panel: 438"),
        ),
        1,
        "Your rails and openings add to 2080; the door is 2102. 22 is unallocated: make one line "
        '"rest", or add 22 to the panel, or to the bottom rail.',
    ),
    "a groove as wide as its frame": (
        (("thickness: 40", "thickness: 18"), ("groove: 8.2 x 14", "groove: 14 x 14")),
        1,
        "The groove is 14 wide in an 18 frame and leaves 2 each side; at least 5 is needed.",
    ),
    "a slot through the stile": (
        (("stiles: 120", "stiles: 40"),),
        1,
        "The slot comes out of the far edge of the stile by 6",
    ),
    "a key misspelt": (
        (("stiles: 120", "stlies: 120"),),
        2,
        'No such thing as "stlies" in leaf (line 24). Did you mean "stiles"?',
    ),
    "a unit that cannot be": (
        (("units: mm", "units: inch"), ("stiles: 120", "stiles: 592.1")),
        2,
        "592.1 inches is 49 feet. Did you mean 592.1 mm?",
    ),
}

# A size of nothing, or less: the part and the number that brought it about are named.
NO_SIZE: dict[str, tuple[Lines, tuple[str, ...]]] = {
    "a panel of no thickness": ((("thickness: 28", "thickness: 0"),), ("panel", "thickness")),
    "a pane of no thickness": ((("thickness: 6,", "thickness: 0,"),), ("glass", "thickness")),
    "a bevel of no run": ((("bevel run: 75", "bevel run: 0"),), ("panel", "bevel run")),
    # 120 + 90 + 150 + 1600 + 240 = 2200; (2102 - 2200) / 2 = -49
    "no room for the lites": ((("panel: 460", "panel: 1600"),), ("lite 1", "-49", "the panel")),
    # 1024.5 grows with the overlap: (1929 + 600) / 2 - 2 * 640 = -15.5
    "no room for the rails": (
        (("stiles: 120", "stiles: 640"), ("overlap: stile", "overlap: 600")),
        ("rail", "-15.5", "stile"),
    ),
}


def design(folder: Path, reading_room: Path, lines: Lines) -> Path:
    path = folder / "design.yaml"
    path.write_text(changed(reading_room.read_text(encoding="utf-8"), *lines), encoding="utf-8")
    return path


@pytest.mark.parametrize("broken", STOPPED.values(), ids=STOPPED)
def test_nothing_is_written(
    tmp_path: Path, project: Path, reading_room: Path, broken: tuple[Lines, int, str]
) -> None:
    lines, status, says = broken
    path = design(tmp_path, reading_room, lines)
    built = build(
        path, out=tmp_path / "pack", house=project / "examples/house.yaml", user_house=False
    )
    assert built.exit_status == status
    assert built.folder is None
    assert any(p.message.startswith(says) for p in stops(built.job.problems))
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("broken", NO_SIZE.values(), ids=NO_SIZE)
def test_nothing_at_all_of_a_size_that_is_none(
    tmp_path: Path, project: Path, reading_room: Path, broken: tuple[Lines, tuple[str, ...]]
) -> None:
    lines, names = broken
    path = design(tmp_path, reading_room, lines)
    built = build(
        path,
        out=tmp_path / "pack",
        house=project / "examples/house.yaml",
        user_house=False,
        with_stops=True,
    )
    assert built.exit_status == 1
    stopped = [p for p in stops(built.job.problems) if p.no_size]
    assert stopped
    assert all(p.where is not None for p in stopped)
    assert any(all(name in p.message for name in names) for p in stopped)
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    ("lines", "code", "level", "says"),
    [
        (
            (("grain: upright", "grain: level"),),
            "panel_moves_upright",
            "note",
            "The panel's grain lies level, so it moves 7 up and down over the year, in a height "
            "of 482; upright it would move 11.7 across.",
        ),
        (
            (("kind: toughened", "kind: ordinary"),),
            "glass_not_safety",
            "caution",
            "Glass in a door: safety glass unless a 76 ball cannot pass. Your pane is 778.5 × 515.",
        ),
        (
            (
                ("kind: toughened", "kind: ordinary"),
                ("finish:", "accepted: {glass not safety: 'JM 2026-11-20, client told'}\nfinish:"),
            ),
            "glass_not_safety",
            "caution",
            "Glass in a door: safety glass unless a 76 ball cannot pass. Your pane is 778.5 × 515. "
            "Accepted by JM 2026-11-20: client told.",
        ),
        (
            # Made as damp as its room becomes, the panel is as wide as its grooves allow:
            # 784.5 + 2*14 - 2*1 = 810.5, and at 14 % (810.5*(1 - 4*0.00289) - 784.5)/2 = 8.3 holds.
            (
                (
                    "timber tulipwood:",
                    "moisture: {made: 18 %, driest: 14 %, dampest: 18 %}\ntimber tulipwood:",
                ),
            ),
            "moisture_out_of_range",
            "caution",
            "18 % is outside 6 to 14 %, where the movement figures hold; is the timber dry?",
        ),
    ],
)
def test_what_is_only_said(
    tmp_path: Path,
    project: Path,
    reading_room: Path,
    lines: Lines,
    code: str,
    level: str,
    says: str,
) -> None:
    path = design(tmp_path, reading_room, lines)
    job = check(path, house=project / "examples/house.yaml", user_house=False)
    assert job.exit_status == 0
    said = [p.message for p in job.problems if (p.code, p.level) == (code, level)]
    assert said
    assert all(message.startswith(says) for message in said)


INCH = """\
stilewright: 1
units: inch
survey: {widths: {middle: WIDTH}, heights: {middle: 79}}
door: {kind: bypass}
leaf:
  timber: ash
  thickness: 1-5/8
  stiles: 4
  top to bottom: [top rail: 4, panel: rest, bottom rail: 8]
joint: {slot: 1/2 x 2-1/16 x 1-5/8, tenon: 1/2 x 2 x 3-1/8}
panel: {kind: raised, thickness: 1, tongue: 5/16 x 5/8, edge thickness: 1/2, bevel run: 2-1/2}
track: {spacing: 2-1/8, off wall: 3-1/2}
"""


@pytest.mark.parametrize("written", ["23 5/16", '23-5/16"', "23.3125 in", "23.3125", "592.1375 mm"])
def test_one_length_written_in_many_ways(tmp_path: Path, written: str) -> None:
    """23 5/16 inches are 373/16 * 25.4 = 592.1375 mm."""
    found = loaded(tmp_path, INCH.replace("WIDTH", written))
    assert found.design is not None, [p.message for p in found.problems]
    survey = found.design.block("survey")
    assert isinstance(survey, SurveySpec)
    assert survey.widths[0].reading == 592.1375


JUNK: dict[str, tuple[bytes, str]] = {
    "nothing": (b"", "no_version"),
    "a comment": (b"# to do\n", "no_version"),
    "a picture": (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x01\x00", "not_text"),
    "a page printed for paper": (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj\n", "not_text"),
    "UTF-16": ("stilewright: 1\n".encode("utf-16"), "not_text"),
    "Latin letters": ("job: Caf\u00e9\n".encode("latin-1"), "not_text"),
    "a nought byte": (b"stilewright: 1\x00\n", "not_text"),
    "too much": (b"# \n" * 400_000, "not_text"),
    "one long line": (b"a" * 190_000, "no_colon"),
    "dashes without end": (b"stilewright: 1\n" + b"- " * 90_000, "no_colon"),
    "open brackets": (b"[" * 190_000, "too_deep"),
    "open braces": (b"{a: " * 40_000, "too_deep"),
    "deep steps": ("".join(" " * n + "a:\n" for n in range(500)).encode(), "too_deep"),
    # Each line of a bomb is nine times the one before: 9^9 values, were they ever unfolded.
    "a bomb": (
        b"a: &a [x]\n"
        + b"".join(
            b"%c: &%c [%s]\n" % (n, n, b",".join([b"*%c" % (n - 1)] * 9)) for n in range(98, 107)
        ),
        "anchor",
    ),
    "a merge": (b"stilewright: 1\nleaf:\n  <<: {stiles: 3}\n", "anchor"),
    "a tag": (b"!!python/object/apply:os.system ['true']\n", "tag"),
    "two files": (b"stilewright: 1\nunits: mm\n---\nstilewright: 1\n", "several_documents"),
    "a directive": (b"%TAG ! tag:x,2000:\n---\na: 1\n", "not_yaml"),
    "a list": (b"- leaf\n- door\n", "no_colon"),
    "a word": (b"door\n", "no_colon"),
    "prose": (b"The doors are to be made of ash.\nPaint them white.\n", "no_colon"),
    "JSON": (b'{"stilewright": 1, "units": "mm"}\n', "no_door"),
    "a key of several": (b"? [a, b]\n: c\n", "not_yaml"),
    "tabs and spaces": (b"stilewright: 1\nleaf:\n \tstiles: 3\n", "tabs_and_spaces"),
    "keys twice": (b"stilewright: 1\nunits: mm\nunits: mm\n", "doubled_key"),
    "text over lines": (b"stilewright: 1\njob: |\n  one\n  two\n", "several_lines"),
}


@pytest.mark.parametrize(("content", "code"), JUNK.values(), ids=JUNK)
def test_junk_is_answered(tmp_path: Path, content: bytes, code: str) -> None:
    (tmp_path / ".git").mkdir()
    path = tmp_path / "design.yaml"
    path.write_bytes(content)
    job = check(path, user_house=False)
    assert job.exit_status == 2
    assert code in {p.code for p in job.problems}
    assert all(p.where is not None and p.where.line >= 1 for p in job.problems)
    # The same of a house file beside a sound design.
    (tmp_path / "house.yaml").write_bytes(content)
    found = loaded(tmp_path, PLAIN)
    assert found.problems == () or exit_status(found.problems) == 2
    assert code == "no_door" or stops(found.problems)


@pytest.mark.parametrize(
    ("lines", "status"),
    [((("stiles: 120", "stlies: 120"),), 2), ((("stiles: 120", "stiles: 40"),), 1)],
)
def test_the_command_says_so(
    tmp_path: Path, project: Path, reading_room: Path, lines: Lines, status: int
) -> None:
    path = design(tmp_path, reading_room, lines)
    words = ["build", str(path), "--house", str(project / "examples/house.yaml")]
    run = CliRunner().invoke(app, [*words, "--out", str(tmp_path / "pack")])
    assert run.exit_code == status
    assert isinstance(run.exception, SystemExit)
    assert "design.yaml:" in run.stdout
    assert "Nothing was written." in run.stdout
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    ("lines", "codes"),
    [
        ((("fit: 0.3", "fit: ''"),), ["not_a_length"]),
        ((("grain: upright", "grain: ''"),), ["unknown_word"]),
        ((("slot: 12 x 62 x 46", "slot: ''"),), ["wrong_sizes"]),
        ((("finish:", "router: {cutters: [six, 8]}\nfinish:"),), ["not_a_length"]),
        ((("finish:", "router: {cutters: [six]}\nfinish:"),), ["not_a_length"]),
        ((("finish:", "router: {cutters: []}\nfinish:"),), ["wrong_value"]),
    ],
)
def test_one_fault_one_answer(
    tmp_path: Path, reading_room: Path, lines: Lines, codes: list[str]
) -> None:
    job = check(design(tmp_path, reading_room, lines), user_house=False)
    assert [p.code for p in job.problems] == codes
    assert all(p.found and p.allowed and p.fix for p in job.problems)


VALUES = st.sampled_from(
    [
        *(
            "0",
            "-1",
            "1",
            "3",
            "1000",
            "12000",
            "99999",
            "0.0001",
            "1/3",
            "3/0",
            "1e3",
            "8 %",
            "0 %",
        ),
        *(
            "equal",
            "rest",
            "2 parts",
            "0 parts",
            "none",
            "about 5",
            "not measured",
            "plumb",
            "level",
        ),
        *(
            "3 x 3",
            "0 x 0",
            "1 x 2 x 3",
            "0 x 0 x 0",
            "{}",
            "[]",
            "{a: 1}",
            "[1, 2]",
            "{middle: 0}",
        ),
        *("~", "null", "true", "|", "'", '"', "&a", "*a", "!a", "-", "?", "50 kg", "0 kg", "saw"),
    ]
)


@settings(max_examples=80)
@given(data=st.data())
def test_any_value_anywhere_is_resolved_or_answered(
    project: Path, reading_room: Path, tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    """Larch Hill with values struck out for others: every number and every rule, no exception."""
    lines = reading_room.read_text(encoding="utf-8").splitlines()
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(lines) - 1))
        key, colon, _ = lines[at].rpartition(": ")
        lines[at] = f"{key}{colon}{data.draw(VALUES)}"
    path = tmp_path_factory.mktemp("values") / "design.yaml"
    path.write_text("\n".join(lines), encoding="utf-8")
    job = check(path, house=project / "examples/house.yaml", user_house=False)
    assert (job.exit_status == 0) == (not stops(job.problems))
    assert job.resolved is not None or stops(job.problems)
    assert all(p.message.endswith((".", "?")) for p in job.problems)


@given(st.text(max_size=80))
def test_any_text_after_a_sound_design_is_loaded_or_answered(
    tmp_path_factory: pytest.TempPathFactory, text: str
) -> None:
    folder = tmp_path_factory.mktemp("text")
    found = loaded(folder, PLAIN + text.encode("utf-8", "replace").decode("utf-8"))
    assert (found.design is None) == (exit_status(found.problems) != 0)
