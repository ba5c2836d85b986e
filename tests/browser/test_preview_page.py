"""client/preview.html in a real browser, opened from disk with the network off."""

from __future__ import annotations

import re

import numpy as np
import pytest

from parametric.pack.slips import read_slip
from parametric.writers.client_page import plain
from parametric.writers.html import write_html
from tests.browser.conftest import DRAWING, QUICK, say_yes
from tests.browser.standin import TRAVEL, standin_glb, standin_page

pytestmark = pytest.mark.browser

PHONE, LYING, DESK = (390, 844), (844, 390), (1440, 900)
SMALL = (640, 620)  # enough to judge by, little enough to draw by processor
# where the groups of the model stand when shut, from the left edge of the opening
SHUT = {"leaf A": -50.0, "leaf B": 854.5}


@pytest.fixture(scope="module")
def data() -> bytes:
    return write_html(standin_page(), standin_glb())


@pytest.mark.parametrize("size", [PHONE, LYING, DESK], ids=["phone", "lying", "desk"])
def test_it_opens_alone_and_draws_the_doors(open_page, data, size):
    seen = open_page(data, size)
    seen.still()
    assert seen.errors == []
    assert len(seen.requests) == 1
    assert seen.requests[0].startswith("file:")
    figures = seen.page.evaluate("stilewright.figures()")
    assert 0 < figures["calls"] <= 250
    assert 0 < figures["triangles"] <= 150_000
    # nothing runs over the side of the screen
    assert seen.page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    # the doors are there: their grey-green is the commonest colour of the middle third
    screen = seen.pixels()
    picture = seen.page.locator("#picture").bounding_box()
    middle = screen[
        int(picture["height"] * 0.35) : int(picture["height"] * 0.75),
        int(picture["width"] * 0.4) : int(picture["width"] * 0.6),
    ]
    red, green, blue = middle[..., 0], middle[..., 1], middle[..., 2]
    assert ((green > red) & (red > blue) & (green > 110)).mean() > 0.3


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_job_mark_and_sizes_are_said(page_at, data, size):
    seen = page_at(data, size, **QUICK)
    assert seen.page.inner_text("h1") == "Larch Hill reading room"
    if size == PHONE:
        assert not seen.page.is_visible("#sizes")
    seen.page.click("#tab-sizes")
    assert seen.page.is_visible("#sizes")
    foot = seen.page.inner_text("#foot")
    assert "Revision A" in foot
    assert "7C1F-04AB" in foot
    assert "Made with stilewright" in foot
    labels = seen.page.locator(".facts li > * > span").all_inner_texts()
    values = seen.page.locator(".facts b").all_inner_texts()
    assert dict(zip(labels, values, strict=True)) == {
        fact.label: plain(fact.value) for fact in standin_page().facts
    }
    if size == PHONE:
        tray = seen.page.locator("#drawer").bounding_box()
        picture = seen.page.locator("#picture").bounding_box()
        assert picture["y"] + picture["height"] <= tray["y"] + 2  # the doors stay uncovered
        assert tray["height"] <= 0.43 * PHONE[1] + 1
        assert not seen.page.is_visible("#plan")
        seen.page.keyboard.press("Escape")
        assert not seen.page.is_visible("#sizes")
        assert seen.page.is_visible("#plan")


@pytest.mark.parametrize("size", [PHONE, LYING, DESK], ids=["phone", "lying", "desk"])
def test_nothing_lies_on_the_picture_but_the_title(page_at, data, size):
    """Day and evening are chosen in the dock, whatever is open; the picture stays whole."""
    seen = page_at(data, size, **QUICK)
    for tab in ("stand", "finish"):
        seen.page.click(f"#tab-{tab}")
        picture = seen.page.locator("#picture").bounding_box()
        hour = seen.page.locator("#hour").bounding_box()
        assert seen.page.is_visible("[data-set=evening]")
        beside = hour["x"] >= picture["x"] + picture["width"]
        below = hour["y"] >= picture["y"] + picture["height"]
        assert beside or below


def luminance(colour) -> np.ndarray:
    """WCAG 2.2's relative luminance of sRGB, 0 to 255."""
    c = np.asarray(colour) / 255
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4) @ [
        0.2126,
        0.7152,
        0.0722,
    ]


@pytest.mark.parametrize("hour", ["day", "evening"])
def test_the_job_is_read_on_the_wall(page_at, data, hour):
    """WCAG 2.2, 1.4.3: 4.5 to 1 between the words and the wall under them, at its worst tenth."""
    seen = page_at(data, DESK, **QUICK)
    seen.page.click(f"[data-set={hour}]")
    seen.still()
    inks = [
        [int(v) for v in re.findall(r"[0-9]+", colour)[:3]]
        for colour in seen.page.evaluate(
            "['#title h1', '#title p'].map(s => getComputedStyle(document.querySelector(s)).color)"
        )
    ]
    box = seen.page.locator("#title").bounding_box()
    seen.page.evaluate("document.getElementById('title').style.visibility = 'hidden'")
    wall = seen.pixels()[
        int(box["y"]) : int(box["y"] + box["height"]), int(box["x"]) : int(box["x"]) + 330
    ]
    seen.page.evaluate("document.getElementById('title').style.visibility = ''")
    ground = np.percentile(luminance(wall.reshape(-1, 3)), 10)
    for ink in inks:
        dark, light = sorted((float(luminance(ink)), float(ground)))
        assert (light + 0.05) / (dark + 0.05) >= 4.5, (hour, ink)


def test_keys_move_a_leaf_by_what_they_say(page_at, data):
    seen = page_at(data, PHONE, **QUICK)
    bar = seen.page.locator('[data-leaf="leaf A"]')
    bar.focus()
    steps = (
        ("ArrowRight", 10.0),
        ("ArrowUp", 20.0),
        ("PageUp", 120.0),
        ("ArrowLeft", 110.0),
        ("PageDown", 10.0),
        ("End", TRAVEL),
        ("ArrowRight", TRAVEL),  # no farther than its stop
        ("Home", 0.0),
        ("Enter", TRAVEL),
        ("Enter", 0.0),
        ("PageDown", 0.0),
    )
    for key, moved in steps:
        seen.page.keyboard.press(key)
        assert seen.where("leaf A") == pytest.approx(SHUT["leaf A"] + moved, abs=0.1), key
        assert float(bar.get_attribute("aria-valuenow")) == pytest.approx(moved, abs=0.1)
    assert bar.get_attribute("aria-valuetext") == "Shut"
    assert seen.where("leaf B") == pytest.approx(SHUT["leaf B"], abs=0.1)
    # the other leaf opens to the left: its value is 0 at its left stop, where it is open
    other = seen.page.locator('[data-leaf="leaf B"]')
    assert float(other.get_attribute("aria-valuenow")) == pytest.approx(TRAVEL)
    other.focus()
    seen.page.keyboard.press("PageDown")
    assert seen.where("leaf B") == pytest.approx(SHUT["leaf B"] - 100, abs=0.1)
    assert other.get_attribute("aria-valuetext") == "100 millimetres open"


def test_the_clear_way_is_the_jobs(page_at, data):
    seen = page_at(data, PHONE, **DRAWING)
    assert seen.clear() == "Shut"
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert seen.clear() == f"{standin_page().clear_way:g}" == "852"
    # 300 short of its stop the leaf still laps the other by 120 - ... : the gap is
    # left of it, from the jamb at 2.5 to its edge at -50 + 604.5: 552
    for _ in range(3):
        seen.page.keyboard.press("PageDown")
    assert seen.clear() == "552"
    seen.page.keyboard.press("Home")
    seen.page.focus('[data-leaf="leaf B"]')
    seen.page.keyboard.press("Home")
    assert seen.clear() == "852"


def brass(seen, screen) -> float:
    """The middle column of the leftmost pull: the only bright brass at the height of a hand."""
    box = seen.page.locator("#picture").bounding_box()
    band = screen[int(box["height"] * 0.45) : int(box["height"] * 0.62), : int(box["width"])]
    yellow = (band[..., 0] - band[..., 2] > 60).sum(axis=0) > 15
    first = int(yellow.argmax())
    last = first + int((~yellow[first:]).argmax()) - 1
    assert last > first, "no pull to be seen"
    return (first + last) / 2


def test_a_leaf_slides_under_the_finger(page_at, data):
    """Drag leaf A by 100 pixels: its pull, seen in the pixels, goes 100 too."""
    seen = page_at(data, SMALL)
    seen.page.evaluate(
        "document.getElementById('person').checked && document.getElementById('person').click()"
    )
    seen.still()
    before = brass(seen, seen.pixels())
    mouse, up = seen.page.mouse, SMALL[1] * 0.32
    mouse.move(before + 60, up)
    mouse.down()
    for x in range(0, 101, 10):
        mouse.move(before + 60 + x, up)
    seen.page.wait_for_timeout(300)  # held still, so that it is not thrown
    mouse.move(before + 160, up)
    mouse.up()
    seen.still()
    moved = seen.where("leaf A") - SHUT["leaf A"]
    assert brass(seen, seen.pixels()) - before == pytest.approx(100, abs=2)
    assert 200 < moved < 900
    # what the strip says is that movement, less the lap of 50 + 2.5 over the jamb
    assert float(seen.clear()) == pytest.approx(moved - 52.5, abs=0.3)


def test_a_tap_opens_and_shuts(page_at, data):
    seen = page_at(data, SMALL)
    x, y = seen.page.evaluate("stilewright.seen([300, -106, 1400])")
    seen.page.mouse.click(x, y)
    seen.page.wait_for_timeout(50)
    assert seen.where("leaf A") < SHUT["leaf A"] + TRAVEL - 100  # a door takes its time
    seen.wait(f"Math.abs(stilewright.where('leaf A') - {SHUT['leaf A'] + TRAVEL}) < 0.1")
    seen.page.locator('[data-leaf="leaf A"]').click()
    seen.wait(f"Math.abs(stilewright.where('leaf A') - {SHUT['leaf A']}) < 0.1")


def test_a_bar_drags_to_scale(page_at, data):
    """The strip spans the leaves' reach and 240 of wall each side: 1929 + 480 mm."""
    seen = page_at(data, SMALL)
    plan = seen.page.locator("#plan").bounding_box()
    bar = seen.page.locator('[data-leaf="leaf B"]').bounding_box()
    x, y = bar["x"] + 60, bar["y"] + bar["height"] / 2
    seen.page.mouse.move(x, y)
    seen.page.mouse.down()
    seen.page.mouse.move(x - 40, y)
    seen.page.mouse.move(x - 120, y)
    seen.page.mouse.up()
    expected = -120 * (1929 + 480) / plan["width"]
    assert seen.where("leaf B") - SHUT["leaf B"] == pytest.approx(expected, abs=1)


def test_uprights_stay_upright_when_looking_round(page_at, data):
    """Looked at from the side the leaf's edge still stands in one column of pixels."""
    seen = page_at(data, SMALL)
    seen.page.focus("#canvas")
    for key in ("ArrowRight", "ArrowRight", "ArrowUp"):
        seen.page.keyboard.press(key)
    seen.still()
    screen = seen.pixels()
    greens = [(row[:, 1] - row[:, 2] > 22) & (row[:, 1] >= row[:, 0]) for row in screen[150:300:15]]
    lefts = [int(row.nonzero()[0][0]) for row in greens]
    assert max(lefts) - min(lefts) <= 2
    assert seen.page.locator("#title").evaluate("e => e.closest('html').hasAttribute('data-away')")


def test_without_webgl_the_drawing_stays_and_the_strip_works(page_at, data):
    seen = page_at(data, PHONE, **DRAWING)
    assert seen.errors == []
    drawing = seen.page.locator("#drawing svg").bounding_box()
    assert drawing["width"] > 200
    assert drawing["height"] > 200
    assert not seen.page.is_visible("#canvas")
    assert "cannot draw" in seen.page.inner_text("#waiting")
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert seen.clear() == "852"
    seen.page.click("#tab-sizes")
    assert seen.page.is_visible("#sizes")
    assert not seen.page.is_visible("#tab-stand")
    # a size that moves a door still does
    seen.page.click('[data-fact="1"]')
    assert seen.clear() == "852"
    say_yes(seen)
    assert "You said yes to revision A" in seen.page.inner_text("#done")


def test_without_webgl_a_size_is_chalked_on_the_drawing(page_at, data):
    """The line of the door's width is as long as the drawn leaf; gaps are gone to in turn."""
    seen = page_at(data, PHONE, **DRAWING)
    seen.page.click("#tab-sizes")
    seen.page.click('[data-fact="0"]')
    leaf = seen.page.locator("#drawing rect").first.bounding_box()
    path = seen.page.locator("#chalk path.line").get_attribute("d") or ""
    (x0, _), (x1, _) = (map(float, p.split(",")) for p in path[1:].split("M")[0].split("L"))
    assert x0 == pytest.approx(leaf["x"], abs=1)  # a stroke is drawn about its middle
    assert x1 == pytest.approx(leaf["x"] + leaf["width"], abs=1)
    assert seen.page.locator("#chalk text").text_content() == "1024.5"
    whole = seen.page.get_attribute("#drawing svg", "viewBox")
    seen.page.click('[data-fact="2"]')
    assert seen.page.get_attribute("#drawing svg", "viewBox") != whole
    assert "21" in seen.page.locator("#chalk text").all_text_contents()
    seen.page.click('[data-fact="2"]')
    assert seen.page.get_attribute("#drawing svg", "viewBox") == whole
    assert seen.page.locator("#chalk *").count() == 0


ODD = [
    "</script><script>window.bad=1</script>",
    '"O\'Brien" & <i>daughters</i> {{data}}',
    "غرفة القراءة 5⁄16",
    "Öland 🚪 Łódź",
    "<img src=x onerror=window.bad=1>",
]


@pytest.mark.parametrize("name", ODD)
def test_odd_names_are_shown_as_they_are(open_page, name):
    page = standin_page(job=name, subtitle=name, maker=name, revision=name, mark=name)
    # the first with its model drawn, the others as the drawing, which opens at once
    more = QUICK if name == ODD[0] else DRAWING
    seen = open_page(write_html(page, standin_glb(name=name)), PHONE, **more)
    assert seen.page.inner_text("h1") == name
    assert name in seen.page.title()
    assert name in (seen.page.text_content("#foot") or "")
    assert seen.page.evaluate("typeof window.bad") == "undefined"
    assert seen.page.locator("h1 *").count() == 0
    assert seen.errors == []
    assert len(seen.requests) == 1


def test_an_inch_job_speaks_in_inches(open_page):
    """852 mm = 33.543 in = 33 17/32 (17.4 thirty-seconds, to the nearest)."""
    seen = open_page(
        write_html(standin_page(unit="in"), standin_glb()),
        PHONE,
        **DRAWING,
    )
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert seen.clear() == "33\u200917\u204432\u2033"
    assert seen.page.locator("#state .fraction").inner_text() == "17\u204432"


def test_yes_is_said_sent_and_read_back(page_at, data, tmp_path):
    """The slip that the page saves is read by the command's own reader, word for word."""
    seen = page_at(data, PHONE, **QUICK)
    seen.page.click("#tab-finish")
    seen.page.check("[value=damson]", force=True)
    name = 'Ada "Fen" <b>O\'Neill</b> \u202eمريم 🚪'
    say_yes(seen, name)
    assert not seen.page.is_visible("#asking")
    assert "Nothing has left this device yet" in seen.page.inner_text("#done")
    with seen.page.expect_download() as waited:
        seen.page.click("#save")
    saved = tmp_path / waited.value.suggested_filename
    waited.value.save_as(saved)
    assert saved.name == "larch-hill-reading-room-A-7C1F-04AB.slip.txt"
    read, problems = read_slip(saved)
    assert problems == ()
    assert read is not None
    page = standin_page()
    assert read.slip.fingerprint == page.fingerprint
    assert read.slip.ticks == [plain(tick) for tick in page.ticks]
    assert read.slip.name == name
    assert read.slip.finish["wood"].startswith("Damson paint")
    assert read.text == seen.page.input_value("#slip")
    assert read.slip.page in data.decode()
    # a new choice takes it back: what was said yes to is no longer what is shown
    seen.page.click("#tab-finish")
    seen.page.check("[value=putty]", force=True)
    seen.page.click("#tab-yes")
    assert seen.page.is_visible("#asking")
    assert seen.errors == []
    assert len(seen.requests) == 1
