"""What can be chosen, stood at, cut and measured on the client's page, by finger and by key."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from parametric.writers.client_page import OwnPlace
from parametric.writers.html import write_html
from tests.browser.conftest import DRAWING, QUICK, say_yes
from tests.browser.standin import LAP, STILE, WIDTH, standin_glb, standin_page

pytestmark = pytest.mark.browser

PHONE = (390, 844)
AXE = Path(__file__).resolve().parents[2] / "web/node_modules/axe-core/axe.min.js"


@pytest.fixture(scope="module")
def data() -> bytes:
    return write_html(standin_page(), standin_glb())


@contextmanager
def redrawn(seen) -> Iterator[None]:
    """What is done within is done, and in a picture begun after it, before anything is looked at.

    The page wakes as soon as it is touched; one that is at rest again has drawn its last.
    """
    yield
    count = seen.page.evaluate("stilewright.figures().drawn")
    rest = "document.documentElement.hasAttribute('data-still')"
    seen.wait(f"stilewright.figures().drawn > {count + 1} || {rest}")


def test_every_finish_glass_metal_and_light_is_worn_once(page_at, data):
    """Each changes the picture, within the budget of calls, and none complains."""
    seen = page_at(data, (360, 420), **QUICK)
    seen.page.click("#tab-finish")
    chips = {
        name: seen.page.locator(f'input[name="{name}"]').evaluate_all(
            "all => all.map(e => e.value)"
        )
        for name in ("wood", "glass", "metal")
    }
    assert {name: len(keys) for name, keys in chips.items()} == {"wood": 10, "glass": 4, "metal": 3}
    tried = 0
    before = None
    for hour in ("evening", "day"):
        seen.page.click(f"[data-set={hour}]")
        for name, keys in chips.items():
            for key in keys:
                chip = f'input[name="{name}"][value="{key}"]'
                if not seen.page.is_checked(chip):
                    with redrawn(seen):
                        seen.page.check(chip, force=True)
                assert seen.page.evaluate("stilewright.figures().calls") <= 250
                tried += 1
        now = seen.pixels()[:150].mean()
        assert before is None or now > before + 20  # a day is brighter than an evening
        before = now
    assert tried == 34
    assert seen.errors == []


def test_what_differs_from_the_quote_is_said(page_at, data):
    palette = standin_page().palette
    seen = page_at(data, PHONE, **DRAWING)
    assert not palette.quoted_wood  # the stand-in names nothing: all is to be agreed
    seen.page.click("#tab-yes")
    assert "to be agreed" in seen.page.inner_text("#in-finish")
    assert not seen.page.is_visible("#differs")


def test_a_size_is_chalked_where_it_is_and_walked_to(page_at, data):
    """The door's width: the line runs from edge to edge of leaf A in the picture."""
    seen = page_at(data, PHONE, **QUICK)
    seen.page.click("#tab-sizes")
    with redrawn(seen):
        seen.page.click('[data-fact="0"]')
    a = seen.page.evaluate(f"stilewright.seen([{-LAP}, -106, 2000])")
    b = seen.page.evaluate(f"stilewright.seen([{WIDTH - LAP}, -106, 2000])")
    path = seen.page.locator("#chalk path.line").get_attribute("d") or ""
    (x0, _), (x1, _) = (map(float, p.split(",")) for p in path[1:].split("M")[0].split("L"))
    assert (x0, x1) == (pytest.approx(a[0], abs=0.5), pytest.approx(b[0], abs=0.5))
    assert seen.page.locator("#chalk text").text_content() == "1024.5"
    seen.page.click('[data-fact="2"]')
    seen.wait("document.documentElement.hasAttribute('data-away')")  # the eye stoops to a foot
    words = "[...document.querySelectorAll('#chalk text')].map(t => t.textContent).join()"
    assert seen.page.evaluate(words) == "21"
    seen.wait(f"{words} === '12'")  # and then to the other
    seen.page.click('[data-fact="2"]')
    assert seen.page.locator("#chalk *").count() == 0


def test_a_known_distance_is_measured_to_the_half_millimetre(page_at, data):
    """Between the stiles: 1024.5 - 2 x 120 = 784.5, from two touches some mm off the edges."""
    seen = page_at(data, PHONE, **QUICK)
    seen.page.click("#tab-sizes")
    seen.page.click("#measure")
    seen.still()
    box = seen.page.locator("#canvas").bounding_box()
    for x, z in ((STILE - LAP - 9, 940), (WIDTH - STILE - LAP + 9, 925)):
        at = seen.page.evaluate(f"stilewright.seen([{x}, -106, {z}])")
        seen.page.mouse.click(box["x"] + at[0], box["y"] + at[1])
    assert seen.page.locator("#chalk text").text_content() == "784.5"
    assert "784.5" in seen.page.inner_text("#measured")
    seen.page.mouse.click(box["x"] + 12, box["y"] + 60)
    assert "touch a door" in seen.page.inner_text("#measured")
    # by keys: the cross starts in the middle, Enter sets it
    seen.page.focus("#canvas")
    for key in ("Enter", "ArrowRight", "ArrowRight", "Enter"):
        seen.page.keyboard.press(key)
    assert "Measured" in seen.page.inner_text("#measured")
    seen.page.click("#tab-stand")
    assert seen.page.locator("#chalk *").count() == 0


def test_a_section_shows_each_piece_cut(page_at, data):
    """Through the glass of leaf A, timber and glass have faces; where no door is, none."""
    seen = page_at(data, (880, 420), **QUICK)
    seen.page.click("#tab-stand")
    seen.page.check("#cut")
    seen.page.evaluate(
        "at => { const e = document.getElementById('cut-at'); e.value = at;"
        "e.dispatchEvent(new Event('input')); }",
        400,
    )
    assert {"timber", "glass"} <= set(seen.page.evaluate("stilewright.caps()"))
    assert seen.page.is_visible("#cut-at")
    assert (
        seen.page.get_attribute("#cut-at", "aria-valuetext") == "400 from the left of the opening"
    )
    seen.page.evaluate("document.getElementById('cut-at').focus()")
    seen.page.keyboard.press("ArrowRight")
    assert (
        seen.page.get_attribute("#cut-at", "aria-valuetext") == "405 from the left of the opening"
    )
    seen.page.uncheck("#cut")
    assert seen.page.evaluate("stilewright.caps()") == []
    assert seen.errors == []


def test_all_places_can_be_stood_at(page_at, data):
    seen = page_at(data, (360, 480), **QUICK)
    seen.page.click("#tab-stand")
    heads = set()
    for place in ("sofa", "pull", "beyond", "facing"):
        with redrawn(seen):
            seen.page.check(f'[name="place"][value="{place}"]', force=True)
        heads.add(tuple(round(v) for v in seen.page.evaluate("stilewright.seen([0, -54, 1000])")))
        assert seen.page.evaluate("document.documentElement.hasAttribute('data-away')") == (
            place != "facing"
        )
    assert len(heads) == 4


def test_the_clients_own_places_take_the_sofas(open_page):
    """One stands as far away as was said: things at the front face (106 before the wall's) and at
    the wall's back (130 behind it) are seen as 1 / (3200 - 106) to 1 / (3200 + 130) = 1.0763.
    """
    places = (
        OwnPlace(name='the <b>"stairs"</b>', seated=False, far=3200.0, side="middle"),
        OwnPlace(name="the bench", seated=True, far=2500.0, side="left"),
    )
    page = write_html(standin_page(places=places), standin_glb())
    seen = open_page(page, (360, 480), **QUICK)
    seen.page.click("#tab-stand")
    rows = seen.page.locator("#stand .rows").first.locator("label > span").all_inner_texts()
    assert rows == [
        "Facing the doors",
        'From the <b>"stairs"</b>',
        "From the bench",
        "At the pull",
        "From the other room",
    ]
    with redrawn(seen):
        seen.page.check('[value="own 0"]', force=True)
    wide = {
        y: seen.page.evaluate(f"stilewright.seen([1500, {y}, 900])")[0]
        - seen.page.evaluate(f"stilewright.seen([300, {y}, 900])")[0]
        for y in (-106, 130)
    }
    assert wide[-106] / wide[130] == pytest.approx(3330 / 3094, abs=1e-3)
    # from the left the left door is the nearer and so the larger
    with redrawn(seen):
        seen.page.check('[value="own 1"]', force=True)
    left, middle, right = (
        seen.page.evaluate(f"stilewright.seen([{x}, -106, 900])")[0] for x in (0, 900, 1800)
    )
    assert middle - left > (right - middle) * 1.2
    assert seen.errors == []


def test_the_whole_page_by_keys_alone(open_page, data):
    """Tab reaches strip, tabs, tray and picture in this order; arrows change tabs; yes is had."""
    seen = open_page(data, PHONE, **QUICK)
    press, at = (
        seen.page.keyboard.press,
        "(({id, dataset: d}) => id || d.leaf || d.set)(document.activeElement)",
    )
    reached = []
    for _ in range(6):
        press("Tab")
        reached.append(seen.page.evaluate(at))
    assert reached == ["leaf A", "leaf B", "day", "evening", "tab-stand", "canvas"]
    seen.page.focus("#tab-stand")
    for _ in range(3):
        press("ArrowRight")
    assert seen.page.get_attribute("#tab-yes", "aria-selected") == "true"
    for _ in range(2):
        press("Tab")
        press("Space")
    press("Tab")
    seen.page.keyboard.type("Ada")
    press("Enter")
    assert seen.page.evaluate("document.activeElement.id") == "done-head"
    assert seen.page.text_content("#told") == "You said yes to revision A"
    seen.page.focus("#tab-yes")
    press("Escape")
    assert seen.page.is_visible("#plan")


def test_no_control_is_smaller_than_a_finger(page_at, data):
    """WCAG 2.2, 2.5.5 target size: 44 px each way, measured on what can be hit."""
    seen = page_at(data, PHONE, **QUICK)
    small = """() => [...document.querySelectorAll('button, .chip, .rows label, .tick, .bar, #who, #cut-at')]
      .filter(e => e.getClientRects().length)
      .map(e => [e.id || e.textContent.trim(), e.getBoundingClientRect()])
      .filter(([, r]) => r.width < 43.9 || r.height < 43.9).map(([n, r]) => [n, r.width, r.height])"""
    for tab in ("stand", "finish", "sizes", "yes"):
        seen.page.click(f"#tab-{tab}")
        if tab == "stand":
            seen.page.check("#cut", force=True)
        assert seen.page.evaluate(small) == []


def test_text_at_twice_its_size_keeps_the_yes_in_reach(open_page, data):
    """WCAG 2.2, 1.4.4: text at 200 %, and nothing runs over the side."""
    seen = open_page(data, PHONE, **DRAWING)
    seen.page.evaluate("document.documentElement.style.fontSize = '212.5%'")
    seen.page.click("#tab-yes")
    for tick in seen.page.locator('[name="tick"]').all():
        tick.check()
    seen.page.fill("#who", "Ada")
    seen.page.click("#say")
    assert seen.page.is_visible("#done")
    assert seen.page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert seen.page.evaluate("document.getElementById('drawer').scrollWidth <= innerWidth")


def test_a_page_that_may_keep_nothing_works(open_page, data):
    seen = open_page(data, PHONE, **QUICK, blocked=True)
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert seen.clear() == "852"
    seen.page.mouse.click(20, 300)
    assert "gone" in (seen.page.get_attribute("#hint", "class") or "")
    assert seen.errors == []


def test_something_true_is_there_before_any_script(open_page, data, tmp_path):
    """Job and drawing stand in the page itself, so that no slow machine waits for them."""
    (tmp_path / "page.html").write_bytes(data)
    browser = open_page(data, PHONE, **DRAWING).page.context.browser
    still = browser.new_context(java_script_enabled=False, offline=True)
    page = still.new_page()
    page.goto((tmp_path / "page.html").as_uri())
    assert page.is_visible("h1")
    drawing = page.locator("svg").first.bounding_box()
    assert drawing is not None
    assert drawing["width"] > 300
    still.close()


def broken_rules(seen) -> list[object]:
    """What axe-core finds by its rules for WCAG 2.0 to 2.2, A and AA, on what is to be seen."""
    return seen.page.evaluate(
        "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']})"
        ".then(r => r.violations.map(v => [v.id, v.nodes.map(n => n.html.slice(0, 120))]))"
    )


@pytest.mark.parametrize("more", [QUICK, DRAWING], ids=["round", "drawing"])
def test_axe_finds_nothing(open_page, data, more):
    """With no tray and in every tab, shut up and filled in, by day and in the evening."""
    if not AXE.is_file():
        pytest.skip("web/node_modules has no axe-core; npm ci in web/ brings it")
    seen = open_page(data, PHONE, bypass_csp=True, **more)
    seen.page.add_script_tag(path=str(AXE))
    tabs = [
        tab for tab in ("stand", "finish", "sizes", "yes") if seen.page.is_visible(f"#tab-{tab}")
    ]
    assert len(tabs) == (3 if more is DRAWING else 4)
    for hour in ("day", "evening"):
        seen.page.click(f"[data-set={hour}]")
        assert broken_rules(seen) == [], hour
        for tab in tabs:
            seen.page.click(f"#tab-{tab}")
            if tab == "stand":
                seen.page.check("#cut", force=True)
            if tab == "sizes":
                seen.page.click('[data-fact="0"]')
            assert broken_rules(seen) == [], (tab, hour)
        seen.page.keyboard.press("Escape")
    say_yes(seen)
    for hour in ("evening", "day"):
        seen.page.click(f"[data-set={hour}]")
        assert broken_rules(seen) == [], ("said", hour)
