"""client/preview.html as a file: whole, the same every time, and proof against odd names."""

from __future__ import annotations

import base64
import dataclasses
import gzip
import hashlib
import os
import re
import subprocess
import sys

import pytest

from parametric.catalog.finishes import Paint
from parametric.model import Slide, Turn
from parametric.writers.client_page import Fact, Palette, said
from parametric.writers.html import widest_clear_way, write_html
from parametric.writers.page_words import MOVED_WORDS, ONE_WORDS, WORDS
from tests.browser.standin import standin_glb, standin_page
from tests.browser.swinging import CLEAR, swinging_html, swinging_page
from tests.solids.swinging import HINGED, NAMES, solids_of, swinging


@pytest.fixture(scope="module")
def page() -> str:
    return write_html(standin_page(), standin_glb()).decode()


def test_two_processes_write_the_same_bytes():
    program = (
        "import hashlib;from parametric.writers.html import write_html;"
        "from tests.browser.standin import standin_glb, standin_page;"
        "print(hashlib.sha256(write_html(standin_page(), standin_glb())).hexdigest())"
    )
    digests = {
        subprocess.run(
            [sys.executable, "-c", program],
            env=os.environ | {"PYTHONHASHSEED": seed},
            check=True,
            capture_output=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(digests) == 1


def test_the_file_is_small_enough_to_mail(page):
    """The budget: 1.5 MB, 500 kB packed."""
    assert len(page.encode()) <= 1_500_000
    assert len(gzip.compress(page.encode(), mtime=0)) <= 500_000


def test_only_the_one_script_may_run_and_nothing_may_be_fetched(page):
    (policy,) = re.findall(r'Content-Security-Policy" content="(.*?)"', page)
    rules = dict(rule.split(" ", 1) for rule in policy.split("; "))
    assert rules["default-src"] == "'none'"
    assert "connect-src" not in rules
    assert "img-src" not in rules
    (script,) = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    assert rules["script-src"] == f"'sha256-{digest}'"
    # addresses stand in words (licences, standards' names) but never where one is fetched
    head = page[: page.index("<body>")]
    assert not re.search(r"(?:src|href)=[\"']?(?!data:)[a-z]+:", head, re.IGNORECASE)
    assert not re.search(r"url\((?!data:)", head)


def test_the_page_carries_the_notices_of_what_it_holds(page):
    (notice,) = re.findall(r"<!--(.*?)-->", page, re.DOTALL)
    assert "Permission is hereby granted" in notice
    assert "SIL Open Font License" in notice


def test_the_words_are_there_before_the_script_runs(page):
    body = re.sub(r"<script.*?</script>", "", page[page.index("<body>") :], flags=re.DOTALL)
    for word in ("Larch Hill reading room", "Revision A", "7C1F-04AB", "21</span> left"):
        assert word in body
    assert WORDS["made with"] in body
    assert "<svg xmlns" in body


def test_clear_way_of_g1():
    """1824 - (1024.5 - (1929 - 1824)/2) = 852: both leaves at one side."""
    assert widest_clear_way(standin_page()) == pytest.approx(852, abs=1e-9)


def test_a_page_that_contradicts_its_job_is_refused():
    with pytest.raises(ValueError, match="clear"):
        write_html(standin_page(clear_way=851.0), standin_glb())


def test_a_model_of_other_leaves_is_refused():
    with pytest.raises(ValueError, match="leaves"):
        write_html(standin_page(), standin_glb(travel=900.0))
    one = standin_page()
    renamed = dataclasses.replace(one.leaves[0], name="leaf C")
    with pytest.raises(ValueError, match="leaf C"):
        write_html(dataclasses.replace(one, leaves=(renamed, one.leaves[1])), standin_glb())


@pytest.mark.parametrize(
    "svg",
    [
        '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><foreignObject/></svg>',
        "<p>no drawing</p>",
    ],
)
def test_a_drawing_that_is_more_than_a_drawing_is_refused(svg):
    with pytest.raises(ValueError, match="elevation"):
        write_html(standin_page(elevation_svg=svg), standin_glb())


def test_a_colour_that_is_not_one_is_refused():
    bad = (Paint(key="lichen", name="Lichen", colour="red;}", rough=0.4),)
    with pytest.raises(ValueError, match="hex"):
        write_html(standin_page(palette=Palette(paints=bad)), standin_glb())


HOSTILE = (
    "\"Larch\" & 'Hill' <b>",
    "</script><script>window.bad=1</script>",
    "</title></style><img src=x onerror=window.bad=1>",
    "{{model}} {{script}}",
    "<!-- --> ]]>",
)


@pytest.mark.parametrize("name", HOSTILE)
def test_no_name_becomes_markup(name):
    """Wherever a name stands, every sign that opens or closes markup is written as a reference."""
    facts = (Fact(label=name, value=said(name), note=said(name)),)
    leaves = tuple(dataclasses.replace(leaf, label=name) for leaf in standin_page().leaves)
    plain = write_html(
        standin_page(facts=(Fact(label="x", value=said("x"), note=said("x")),)), standin_glb()
    )
    page = write_html(
        standin_page(
            job=name,
            subtitle=name,
            maker=name,
            revision=name,
            mark=name,
            facts=facts,
            leaves=leaves,
        ),
        standin_glb(name=name),
    )
    assert page.count(b"<") == plain.count(b"<")
    assert page.count(b">") == plain.count(b">")


def test_fractions_are_set_as_fractions():
    facts = (Fact(label="Each door", value=said("40\u20095\u204416\u2033")),)
    page = write_html(standin_page(facts=facts), standin_glb()).decode()
    assert '40\u2009<span class="fraction">5\u204416</span>\u2033' in page


def test_letters_that_no_file_can_hold_are_shown_as_missing():
    page = write_html(standin_page(job="half a \ud83d sign"), standin_glb())
    assert b"half a &#55357; sign" in page


TURNED = Turn(point=(1.5, -6.0, 0.0), axis=(0.0, 0.0, 1.0), angle=-95.0)


@pytest.mark.kernel
@pytest.mark.parametrize(
    "motion",
    [
        (dataclasses.replace(TURNED, angle=-94.99),),
        (dataclasses.replace(TURNED, angle=95.0),),
        (dataclasses.replace(TURNED, point=(1.6, -6.0, 0.0)),),
        (TURNED, Slide(direction=(0.0, 0.0, 1.0), travel=0.1)),
        (),
    ],
)
def test_a_model_that_swings_otherwise_is_refused(motion):
    from parametric.writers.glb import write_glb

    page, made = swinging_page(HINGED), swinging(HINGED)
    assert page.leaves[0].motion == (TURNED,)
    assert write_html(page, write_glb(made, solids_of(HINGED)))
    group = dataclasses.replace(made.groups[0], motion=motion)
    other = write_glb(dataclasses.replace(made, groups=(group,)), solids_of(HINGED))
    with pytest.raises(ValueError, match="leaf A"):
        write_html(page, other)


@pytest.mark.kernel
@pytest.mark.parametrize("name", NAMES)
def test_the_clear_way_of_leaves_that_turn(name):
    """By hand in `tests.browser.swinging`; leaves that go together are never tried apart."""
    assert widest_clear_way(swinging_page(name)) == pytest.approx(CLEAR[name], abs=1e-3)


@pytest.mark.kernel
def test_what_the_doors_do_is_said_by_how_they_move():
    assert [swinging_page(name).moves for name in NAMES] == ["swing", "fold", "swing"]
    assert standin_page().moves == "slide"
    for name in NAMES:
        body = re.sub(r"<script.*?</script>", "", swinging_html(name).decode(), flags=re.DOTALL)
        page = swinging_page(name)
        words = (ONE_WORDS if len(page.leaves) == 1 else MOVED_WORDS)[page.moves]
        assert words["canvas"] in body
