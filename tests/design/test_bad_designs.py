"""Every file in tests/designs/bad is stopped where it says, by what it says, and by nothing else.

A file begins with what is wrong in it, the exit status and the sentences. `# stop here: CODE`
marks the line at fault; `# stop below: CODE` the next, `# stop on line 1: CODE` the first.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from parametric.design import load
from parametric.problems import exit_status, stops

BAD = sorted((Path(__file__).parents[1] / "designs" / "bad").glob("*.yaml"))


def marked(text: str) -> list[tuple[int, str]]:
    """Line and code of every stop that a file announces."""
    found = []
    for number, line in enumerate(text.splitlines(), 1):
        for place, code in re.findall(r"# stop (here|below|on line 1): (\w+)", line):
            found.append(({"here": number, "below": number + 1}.get(place, 1), code))
    return sorted(found)


@pytest.mark.parametrize("path", BAD, ids=lambda p: p.stem)
def test_stopped_where_it_says(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    loaded = load(path, user_house=False)
    stopped = stops(loaded.problems)
    assert sorted((p.where.line, p.code) for p in stopped if p.where) == marked(text)
    assert [p.message for p in stopped] == re.findall(r"^# says: (.*)$", text, re.MULTILINE)
    wanted = re.search(r"^# exit (\d)$", text, re.MULTILINE)
    assert wanted is not None
    assert exit_status(loaded.problems) == int(wanted[1])
    assert loaded.design is None
    assert loaded.shop is None


@pytest.mark.parametrize("path", BAD, ids=lambda p: p.stem)
def test_every_stop_is_a_whole_answer(path: Path) -> None:
    """What was found, what is allowed, what to do about it, and never the reader's own jargon."""
    for problem in load(path, user_house=False).problems:
        assert problem.where is not None
        assert problem.where.file == path.name
        assert problem.found
        assert problem.allowed
        if problem.level == "stop":
            assert problem.fix
        assert not re.search(
            r"[{}]{2}|\{(key|heading|order)\}|Text\(|Input should", problem.message
        )
        assert problem.message[-1] in ".?" or problem.message.endswith("`.")


def test_there_is_one_of_each_likely_mistake() -> None:
    """The codes that a file alone can bring about, each with a file that does."""
    tried = {code for path in BAD for _, code in marked(path.read_text(encoding="utf-8"))}
    source = Path(__file__).parents[2] / "parametric"
    written = "".join(
        p.read_text(encoding="utf-8")
        for p in (*(source / "design").glob("*.py"), source / "written.py", source / "units.py")
    )
    known = set(re.findall(r'(?:refuse|stop|NotAMeasure)\(\s*"(\w+)"', written))
    known |= set(re.findall(r'source\.file,\s*\w+(?:\.\w+)*,\s*"(\w+)"', written))
    elsewhere = {
        "file_exists",  # test_starters
        "file_not_written",
        "no_file_said",
        "too_many_words",
        "file_unreadable",  # test_loading
        "not_of_a_house",  # test_layers
        "not_a_record",  # test_records
        "record_twice",
        "not_text",  # test_reading
        "too_deep",
        "wrong_date",
    }
    assert known - tried - elsewhere == set()
