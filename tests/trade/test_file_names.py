"""Names of folders and files are safe on every file system."""

from __future__ import annotations

import re
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.trade.file_names import file_stem, slug


@pytest.mark.parametrize(
    ("job", "name"),
    [
        ("Larch Hill reading room", "larch-hill-reading-room"),
        ("  Mill Lane: study (rev. B)  ", "mill-lane-study-rev-b"),
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\Jobs\\7", "c-jobs-7"),
        ("Bücherei Straße Łódź", "bucherei-strasse-łodz"),
        ("書斎の引き戸", "書斎の引き戸"),
        ("बैठक का दरवाज़ा", "बैठक-का-दरवाज़ा"),
        ("Дверь № 5", "дверь-no-5"),
        ("🚪 hall 🚪", "hall"),
        ("🚪🚪", "job"),
        ("", "job"),
        ("...", "job"),
        ("CON", "con-job"),
        ("lpt1.", "lpt1-job"),
        ("5' 6-1/2\" x 7½", "5-6-1-2-x-71-2"),
        ("a\x00b\nc\u202egpj", "a-b-c-gpj"),
        ("word " * 40, "-".join(["word"] * 16)),
    ],
)
def test_slug(job: str, name: str) -> None:
    assert slug(job) == unicodedata.normalize("NFKC", name)


@given(st.text())
def test_a_slug_is_safe_and_settled(job: str) -> None:
    name = slug(job)
    assert 1 <= len(name.encode()) <= 84
    assert not re.search(r'[\s<>:"/\\|?*.\x00-\x1f\x7f]', name)
    assert name.strip("-") == name
    assert name == name.casefold()
    assert slug(name) == name


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("S1 stile, with pull inner edge", "S1-stile-with-pull-inner-edge"),
        ("door Łódź / leaf A front", "door-Łodz-leaf-A-front"),
        ("door кухня / leaf A front", "door-кухня-leaf-A-front"),
        ("AUX", "AUX-piece"),
        ("§", "piece"),
    ],
)
def test_file_stem(text: str, name: str) -> None:
    assert file_stem(text) == name


@given(st.text())
def test_a_file_name_and_a_folder_name_differ_in_capitals_only(text: str) -> None:
    stem = file_stem(text)
    assert not re.search(r'[\s<>:"/\\|?*.\x00-\x1f\x7f]', stem)
    assert file_stem(stem) == stem
