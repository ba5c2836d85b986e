"""One page with several pairs of doors: each chosen, seen, read, measured and said yes to."""

from __future__ import annotations

import gzip
import json
import re
import shutil
from pathlib import Path

import pytest

from parametric.commands import receive
from parametric.job import Built
from parametric.model import displaced
from parametric.pack.numbers import figures
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.paperwork import paperwork
from tests.browser.conftest import DRAWING, QUICK, say_yes
from tests.browser.test_preview_controls import AXE, broken_rules
from tests.options.larch_hill_two_ways import A_THIRD, HOUSE, TWO_WAYS, checked, written
from tests.options.page_of import page_of

PHONE, DESK = (390, 844), (1440, 900)

pytestmark = [pytest.mark.browser, pytest.mark.kernel]


@pytest.fixture(scope="module")
def built(larch_hill_two_ways) -> Built:
    return larch_hill_two_ways


@pytest.fixture(scope="module")
def data(built) -> bytes:
    return Path(built.folder, "client/preview.html").read_bytes()


@pytest.fixture(scope="module")
def three_ways(tmp_path_factory) -> bytes:
    return page_of(checked(written(tmp_path_factory.mktemp("three"), TWO_WAYS + A_THIRD)))


@pytest.fixture
def two_ways(page_at, data):
    """The page with option A shown, however the last test left it."""

    def at(size=PHONE, **more):
        seen = page_at(data, size, **(more or QUICK))
        choose(seen, "A")
        return seen

    return at


def choose(seen, letter: str) -> None:
    seen.page.check(f'[name="option"][value="{letter}"]')
    seen.wait(
        f"JSON.parse('\"{letter}\"') === document.querySelector('[name=option]:checked').value"
    )
    if seen.page.evaluate("document.documentElement.dataset.picture") == "round":
        wanted = "true" if letter == "A" else "false"
        seen.wait(f"stilewright.shown().some((n) => n.includes('dividing rail')) === {wanted}")


def marks(built) -> dict[str, str]:
    return {o.letter: fingerprint(o.resolved, o.assembly) for o in built.job.options}


def said(seen) -> dict[str, str]:
    """The rows of Sizes, by what they are called."""
    rows = seen.page.locator("#sizes .facts li").evaluate_all(
        "all => all.map(li => [li.querySelector('span').textContent, li.textContent])"
    )
    return dict(rows)


def test_by_mouse_the_doors_sizes_drawing_and_mark_become_those_of_the_option(two_ways, built):
    seen = two_ways()
    own = marks(built)
    choices = seen.page.locator("#options label").all_inner_texts()
    assert choices == ["A two lites", "B one tall lite"]
    before = seen.page.inner_html("#drawing")
    assert "Four panes, each 778.5 wide and 515 high" in said(seen)["Glass"]
    seen.page.click("#options label >> nth=1")
    seen.wait("!stilewright.shown().some((n) => n.includes('dividing rail'))")
    assert "Two panes, each 778.5 wide and 1126 high" in said(seen)["Glass"]
    assert "35.3 kg" in said(seen)["Weight of each door"]
    assert mark(own["B"]) in (seen.page.text_content("#foot") or "")
    assert "option B" in (seen.page.text_content("#foot") or "")
    assert mark(own["B"]) in (seen.page.text_content("#yes .summary") or "")
    assert "B, one tall lite" in (seen.page.text_content("#yes .summary") or "")
    assert seen.page.inner_html("#drawing") != before
    seen.page.click("#options label >> nth=0")
    seen.wait("stilewright.shown().some((n) => n.includes('dividing rail'))")
    assert seen.page.inner_html("#drawing") == before
    assert mark(own["A"]) in (seen.page.text_content("#foot") or "")
    assert seen.errors == []


def test_by_keyboard_and_it_is_said_to_those_who_listen(two_ways):
    """A radio group of the platform: one stop of Tab, arrows choose (ARIA practices, from memory)."""
    seen = two_ways()
    seen.page.evaluate("document.activeElement.blur()")
    seen.page.keyboard.press("Tab")
    while not seen.page.evaluate("document.activeElement.matches('[name=\"option\"]')"):
        seen.page.keyboard.press("Tab")
    assert seen.page.evaluate("document.activeElement.value") == "A"
    seen.page.keyboard.press("ArrowRight")
    seen.wait("!stilewright.shown().some((n) => n.includes('dividing rail'))")
    seen.wait("document.getElementById('told').textContent === 'B, one tall lite: shown now'")
    assert seen.page.evaluate("document.activeElement.value") == "B"
    seen.page.keyboard.press("ArrowLeft")
    seen.wait("stilewright.shown().some((n) => n.includes('dividing rail'))")
    group = seen.page.get_by_role("group", name="Which of these doors")
    assert group.get_by_role("radio").count() == 2


def test_doors_stay_as_far_open_and_the_clear_way_is_that_of_the_option(two_ways, built):
    seen = two_ways()
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert seen.clear() == "852"
    stood = seen.where("leaf A")
    choose(seen, "B")
    assert seen.clear() == "852"
    assert seen.where("leaf A") == pytest.approx(stood, abs=0.1)
    other = built.job.others[0].assembly
    (slides,) = (g for g in other.groups if g.name == "leaf A")
    shut = next(s for s in other.states if s.name == "shut")
    # the strip's bar takes hold of option B's own leaf
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("Home")
    assert seen.clear() == "Shut"
    assert seen.where("leaf A") == pytest.approx(displaced(slides, shut).origin[0], abs=0.1)


def test_every_number_of_the_other_option_is_a_figure_of_its_own(two_ways, built):
    """As for the pack's own doors: each number stands under its figure's name and is its value."""
    seen = two_ways()
    choose(seen, "B")
    other = built.job.others[0]
    paper = paperwork(other.resolved, other.assembly, other.loads)
    known = figures(other.resolved, other.loads, paper)
    shown = seen.page.locator("[data-figure]").evaluate_all(
        "all => all.map(e => [e.dataset.figure, e.textContent])"
    )
    assert len(shown) >= 20
    for name, text in shown:
        figure = known[name]
        step = 0.1 if "glass" in name or figure.unit == "kg" else 0.5
        assert float(text.removesuffix(" kg")) == pytest.approx(float(figure), abs=step / 2 + 1e-6)


def test_a_size_that_is_lit_stays_lit_as_it_is_in_the_other_option(two_ways):
    seen = two_ways()
    seen.page.click("#tab-sizes")
    seen.page.click('#sizes .facts button:has-text("Glass")')
    assert "515" in (seen.page.text_content("#chalk") or "")
    choose(seen, "B")
    assert "1126" in (seen.page.text_content("#chalk") or "")
    pressed = seen.page.locator('#sizes [aria-pressed="true"]')
    assert pressed.count() == 1
    assert "Glass" in pressed.inner_text()
    seen.page.click("#tab-sizes")


def test_saying_yes_to_one_option_is_received_as_that_option(two_ways, built, tmp_path):
    seen = two_ways()
    choose(seen, "B")
    say_yes(seen)
    assert "You said yes to revision B, option B: one tall lite" in seen.page.inner_text(
        "#done-head"
    )
    # what was said yes to is no longer what is shown: it is taken back, and said so
    choose(seen, "A")
    assert seen.page.is_hidden("#done")
    assert "Taken back" in (seen.page.text_content("#told") or "")
    choose(seen, "B")
    assert seen.page.locator('[name="tick"]:checked').count() >= 1  # as they were left
    seen.page.click("#say")
    with seen.page.expect_download() as waited:
        seen.page.click("#save")
    slip = tmp_path / "slip.txt"
    waited.value.save_as(slip)
    assert "Option: B, one tall lite\n" in slip.read_text("utf-8")
    design = tmp_path / "design.yaml"
    shutil.copy(built.job.path, design)
    got = receive(slip, design, user_house=False, house=HOUSE)
    assert [p.message for p in got.problems] == []
    assert (got.approved, got.option, got.fingerprint) == (True, "B", marks(built)["B"])
    assert checked(design).letter == "B"


def test_what_was_said_is_not_talked_over_by_doors_that_did_not_move(two_ways):
    """The strip speaks 0.7 s after the doors come to rest; another pair hung shut has not moved."""
    seen = two_ways()
    choose(seen, "B")
    seen.page.wait_for_timeout(1000)
    assert "one tall lite: shown now" in (seen.page.text_content("#told") or "")
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    seen.wait("document.getElementById('told').textContent.includes('852')")


def test_each_options_ticks_are_its_own_and_are_asked_before_yes(two_ways):
    seen = two_ways()
    seen.page.click("#tab-yes")
    for tick in seen.page.locator('[name="tick"]').all():
        tick.check()
    seen.page.fill("#who", "Ada Fenn")
    assert seen.page.is_enabled("#say")
    choose(seen, "B")
    assert seen.page.locator('[name="tick"]:checked').count() == 0
    assert seen.page.is_disabled("#say")
    assert seen.page.input_value("#who") == "Ada Fenn"


def test_not_yet_says_which_option_is_meant(two_ways, built):
    seen = two_ways()
    choose(seen, "B")
    seen.page.click("#tab-yes")
    seen.page.click("#not-yet")
    words = seen.page.inner_text("#change")
    assert f"Option B. Revision B, mark {mark(marks(built)['B'])}" in words


def test_without_webgl_the_drawing_the_sizes_and_the_yes_are_those_of_the_option(two_ways, built):
    seen = two_ways(PHONE, **DRAWING)
    before = seen.page.inner_html("#drawing")
    seen.page.click("#tab-sizes")
    seen.page.click('#sizes .facts button:has-text("Glass")')
    one = seen.page.locator("#chalk .line").evaluate_all("all => all.map(e => e.getBBox().height)")
    choose(seen, "B")
    assert seen.page.inner_html("#drawing") != before
    assert "1126" in (seen.page.text_content("#chalk") or "")
    two = seen.page.locator("#chalk .line").evaluate_all("all => all.map(e => e.getBBox().height)")
    # to scale: the pane's line grows from 515 to 1126
    assert max(two) / max(one) == pytest.approx(1126 / 515, rel=0.05)
    say_yes(seen)
    line = seen.page.input_value("#slip").strip().split("\n")[-1]
    assert json.loads(line)["fingerprint"] == marks(built)["B"]
    assert json.loads(line)["option"] == "B"
    assert seen.errors == []


@pytest.mark.parametrize("size", [PHONE, DESK, (844, 390)], ids=["phone", "desk", "lying"])
def test_the_choice_is_in_sight_and_covers_nothing(two_ways, size):
    """Above strip or tabs, each choice at least 44 px high, whichever tab is open."""
    seen = two_ways(size)
    seen.page.set_viewport_size({"width": size[0], "height": size[1]})
    for tab in (None, "sizes", "yes"):
        if tab:
            seen.page.click(f"#tab-{tab}")
        boxes = {
            part: seen.page.locator(part).bounding_box()
            for part in ("#options", "#picture", "#tabs", "#strip")
        }
        own = boxes.pop("#options")
        assert own["height"] >= 44
        for name, box in boxes.items():
            beside = (
                own["x"] + own["width"] <= box["x"] + 1
                or box["x"] + box["width"] <= own["x"] + 1
                or own["y"] + own["height"] <= box["y"] + 1
                or box["y"] + box["height"] <= own["y"] + 1
            )
            assert beside, (tab, name, own, box)
        assert own["y"] >= 0
        assert own["y"] + own["height"] <= size[1]


@pytest.mark.parametrize("more", [QUICK, DRAWING], ids=["round", "drawing"])
def test_axe_finds_nothing_in_either_option(open_page, data, more):
    if not AXE.is_file():
        pytest.skip("web/node_modules has no axe-core; npm ci in web/ brings it")
    seen = open_page(data, PHONE, bypass_csp=True, **more)
    seen.page.add_script_tag(path=str(AXE))
    for hour in ("day", "evening"):
        seen.page.click(f"[data-set={hour}]")
        for letter in "BA":
            choose(seen, letter)
            assert broken_rules(seen) == [], (hour, letter)
            for tab in ("sizes", "yes"):
                seen.page.click(f"#tab-{tab}")
                assert broken_rules(seen) == [], (hour, letter, tab)
            seen.page.keyboard.press("Escape")


def test_an_option_asked_for_before_the_first_picture_is_the_one_that_is_hung(open_page, data):
    seen = open_page(data, PHONE, until="waiting", **QUICK)
    seen.page.check('[name="option"][value="B"]')
    seen.wait("document.documentElement.dataset.picture === 'round'")
    seen.wait("!stilewright.shown().some((n) => n.includes('dividing rail'))")
    assert seen.errors == []


def test_the_file_and_what_is_drawn_stay_within_the_budget(two_ways, data):
    assert len(data) <= 1_500_000
    assert len(gzip.compress(data, mtime=0)) <= 500_000
    seen = two_ways(PHONE)
    for letter in "AB":
        choose(seen, letter)
        seen.still()
        drawn = seen.page.evaluate("stilewright.figures()")
        assert drawn["calls"] <= 250
    assert len(seen.requests) == 1


def test_a_third_option_with_other_laps_no_pulls_and_bare_wood(page_at, three_ways):
    """C covers 80 past the opening for 50 and has neither pulls nor paint.

    By hand: each leaf (1829 + 160 + 120) / 2 = 1054.5 wide; its left edge at -80.
    """
    seen = page_at(three_ways, PHONE, **QUICK)
    seen.page.check('[name="option"][value="A"]')
    assert seen.page.locator('[name="metal"]').count() > 0
    seen.page.check('[name="option"][value="C"]')
    seen.wait("!stilewright.shown().some((n) => n.includes('pull'))")
    assert seen.page.locator('[name="metal"]').count() == 0
    assert seen.page.locator('[name="wood"]:checked').count() == 1
    assert "1054.5 wide" in said(seen)["Each door"]
    assert "Height of the pulls" not in said(seen)
    assert "80 each side" in said(seen)["Over the wall"]
    assert seen.where("leaf A") == pytest.approx(-80, abs=0.1)
    assert "pulls" not in seen.page.inner_text("#in-finish")
    bar = seen.page.locator('[data-leaf="leaf A"]')
    assert bar.locator("b").count() == 0
    seen.page.click("#tab-stand")
    seen.page.check("#cut")
    cut = set(seen.page.evaluate("stilewright.caps()"))
    assert {"timber", "glass"} <= cut
    seen.page.check('[name="option"][value="A"]')
    seen.wait("stilewright.shown().some((n) => n.includes('pull'))")
    assert set(seen.page.evaluate("stilewright.caps()")) >= {"timber", "glass"}
    seen.page.uncheck("#cut")
    assert seen.where("leaf A") == pytest.approx(-50, abs=0.1)
    assert seen.errors == []


def test_a_length_measured_on_the_picture_is_that_of_the_option(page_at, data):
    """Across leaf A at its lock rail and up the tall lite's stile: edges snap to the pieces."""
    seen = page_at(data, DESK, **QUICK)
    choose(seen, "B")
    seen.page.click("#tab-sizes")
    seen.still()
    box = seen.page.locator("#canvas").bounding_box()

    def touch(x: float, z: float) -> None:
        px, py = seen.page.evaluate(f"stilewright.seen([{x}, -126, {z}])")
        seen.page.mouse.click(box["x"] + px, box["y"] + py)

    seen.page.click("#measure")
    # the lite runs from 850 + 12 to 1982 + 12 above the highest floor: rails' edges beside it
    touch(460, 12 + 845)
    touch(460, 12 + 1987)
    said_ = seen.page.inner_text("#measured")
    assert float(re.findall(r"Measured: ([0-9.]+)", said_)[0]) == pytest.approx(1132, abs=1)
    choose(seen, "A")
    assert seen.page.get_attribute("#measure", "aria-pressed") == "false"


def test_what_an_option_is_called_neither_breaks_nor_injects_anything(open_page, tmp_path):
    called = '<img src=x onerror=alert(1)> "مريم" 🚪 &'
    assert len(called) <= 40
    more = TWO_WAYS.replace("one tall lite", f"'{called}'")
    page = page_of(checked(written(tmp_path, more)))
    seen = open_page(page, PHONE, **DRAWING)
    choose(seen, "B")
    assert seen.page.inner_text("#options label >> nth=1") == f"B {called}"
    assert called in seen.page.inner_text("#yes .summary") or called in (
        seen.page.text_content("#yes .summary") or ""
    )
    assert seen.page.locator("img").count() == 0
    say_yes(seen)
    assert called in seen.page.input_value("#slip").split("{")[0]
    assert seen.errors == []
    assert len(seen.requests) == 1
