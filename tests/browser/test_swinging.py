"""Doors that swing and fold on the client's page: held and brought along their way, by hand and key.

Where a leaf is comes out of the scene itself and is held against `model.along`.
"""

from __future__ import annotations

import dataclasses
import json
import math
from itertools import product
from typing import Any

import pytest

from parametric.model import Group, Vector, along
from parametric.writers.html import write_html
from tests.browser.conftest import DRAWING, QUICK, say_yes
from tests.browser.swinging import CLEAR, swinging_glb, swinging_html, swinging_page
from tests.browser.test_preview_controls import AXE, broken_rules
from tests.solids.swinging import FOLDING, HALVES, HINGED, NAMES, swinging

pytestmark = [pytest.mark.browser, pytest.mark.kernel]

PHONE, DESK = (390, 844), (1000, 700)


def group(name: str, leaf: str) -> Group:
    return next(group for group in swinging(name).groups if group.name == leaf)


def designed(name: str, leaf: str, point: Vector, part: float) -> Vector:
    """Where the model has a point of a leaf's own frame, mm in the world."""
    made = group(name, leaf)
    return along(made.placement, made.motion, part).point(point)


def stands(seen, leaf: str, point: Vector) -> Vector:
    """Where the picture has it, mm in the world."""
    x, y, z = seen.page.evaluate(f"stilewright.at({leaf!r}, {list(point)})")
    return (x, -z, y)


def opened(seen, leaf: str = "leaf A") -> float:
    return float(seen.page.evaluate(f"stilewright.open({leaf!r})"))


def screen(seen, point: Vector) -> tuple[float, float]:
    """Where a point of the world is on the screen, px."""
    x, y = seen.page.evaluate(f"stilewright.seen({list(point)})")
    box = seen.page.locator("#canvas").bounding_box()
    return (box["x"] + x, box["y"] + y)


def keyed(seen, leaf: str, *keys: str) -> None:
    seen.page.focus(f'[data-leaf="{leaf}"]')
    for key in keys:
        seen.page.keyboard.press(key)


def at_rest(seen) -> None:
    """Nothing moves: places on the screen then stay where they are."""
    seen.still()


@pytest.mark.parametrize("name", NAMES)
def test_leaves_go_where_the_model_has_them(page_at, name):
    """Every corner of each leaf at shut, ten degrees, half a turn more, open: 0.05 mm."""
    seen = page_at(swinging_html(name), DESK, **QUICK)
    tried = set()
    for key in ("Home", "PageUp", "PageUp", "PageUp", "PageUp", "ArrowUp", "End"):
        for made in swinging(name).groups:
            keyed(seen, made.name, key)
        for made in swinging(name).groups:
            part = opened(seen, made.name)
            tried.add(round(part, 3))
            for corner in product((0.0, 480.0), (0.0, 40.0), (0.0, 985.0)):
                assert stands(seen, made.name, corner) == pytest.approx(
                    designed(name, made.name, corner, part), abs=0.05
                )
    assert {0.0, 1.0} < tried
    assert seen.errors == []


def test_keys_turn_a_leaf_by_degrees(page_at):
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    bar = seen.page.locator('[data-leaf="leaf A"]')
    assert float(bar.get_attribute("aria-valuemax")) == 95
    steps = (
        ("ArrowRight", 1, "1 degrees open"),
        ("ArrowUp", 2, "2 degrees open"),
        ("PageUp", 12, "12 degrees open"),
        ("ArrowLeft", 11, "11 degrees open"),
        ("PageDown", 1, "1 degrees open"),
        ("PageDown", 0, "Shut"),
        ("End", 95, "95 degrees open"),
        ("ArrowRight", 95, "95 degrees open"),
        ("Enter", 0, "Shut"),
        ("Enter", 95, "95 degrees open"),
        ("Home", 0, "Shut"),
    )
    for key, degrees, said in steps:
        keyed(seen, "leaf A", key)
        assert opened(seen) * 95 == pytest.approx(degrees, abs=1e-6), key
        assert float(bar.get_attribute("aria-valuenow")) == pytest.approx(degrees, abs=0.05)
        assert bar.get_attribute("aria-valuetext") == said


@pytest.mark.parametrize("name", NAMES)
def test_the_clear_way_is_what_was_worked_by_hand(page_at, name):
    seen = page_at(swinging_html(name), DESK, **QUICK)
    assert seen.clear() == "Shut"
    for made in swinging(name).groups:
        keyed(seen, made.name, "End")
    # the strip says halves of a millimetre
    assert float(seen.clear()) == pytest.approx(CLEAR[name], abs=0.25)


def dragged(seen, name: str, leaf: str, point: Vector, parts: list[float]) -> None:
    """Take hold of a point of a shut leaf and bring it to where the model has it at each part."""
    mouse = seen.page.mouse
    mouse.move(*screen(seen, designed(name, leaf, point, opened(seen, leaf))))
    mouse.down()
    for part in parts:
        mouse.move(*screen(seen, designed(name, leaf, point, part)))
        seen.wait(f"Math.abs(stilewright.open({leaf!r}) - {part}) < 0.01")


def let_go(seen) -> None:
    seen.page.wait_for_timeout(150)  # held still, so that it is not thrown
    seen.page.mouse.up()


def test_a_hinged_leaf_comes_with_the_mouse_along_its_arc(page_at):
    """The point that is held stays under the mouse; near its ends the leaf goes there, else it stays.

    95 deg: a leaf let go with less than 6 deg to go, 0.063 of its way, goes on to the end.
    """
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    at_rest(seen)
    point = (700.0, 0.0, 1200.0)
    dragged(seen, HINGED, "leaf A", point, [0.2, 0.4, 0.6])
    at = screen(seen, stands(seen, "leaf A", point))
    under = screen(seen, designed(HINGED, "leaf A", point, 0.6))
    assert math.dist(at, under) < 2
    let_go(seen)
    assert opened(seen) == pytest.approx(0.6, abs=0.01)
    dragged(seen, HINGED, "leaf A", (300.0, 0.0, 1500.0), [0.8, 0.95])
    let_go(seen)
    seen.wait("stilewright.open('leaf A') === 1")
    # open past a right angle it is its back that is seen
    dragged(seen, HINGED, "leaf A", (700.0, 40.0, 1200.0), [0.7, 0.4, 0.2, 0.05])
    let_go(seen)
    seen.wait("stilewright.open('leaf A') === 0")
    assert seen.clear() == "Shut"
    assert seen.errors == []


def test_a_leaf_comes_with_a_finger_too(open_page):
    """By touch events of the browser's own, along the arc, from the sofa's side."""
    seen = open_page(swinging_html(HINGED), PHONE, **QUICK, has_touch=True)
    at_rest(seen)
    session = seen.page.context.new_cdp_session(seen.page)
    point = (650.0, 0.0, 1300.0)

    def touch(kind: str, part: float | None) -> None:
        points: list[dict[str, Any]] = []
        if part is not None:
            x, y = screen(seen, designed(HINGED, "leaf A", point, part))
            points = [{"x": x, "y": y}]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    touch("touchStart", 0.0)
    for part in (0.25, 0.5, 0.75):
        touch("touchMove", part)
        seen.wait(f"Math.abs(stilewright.open('leaf A') - {part}) < 0.02")
    seen.page.wait_for_timeout(150)
    touch("touchEnd", None)
    assert opened(seen) == pytest.approx(0.75, abs=0.02)
    assert seen.errors == []


def test_it_comes_after_where_it_would_jump(open_page):
    """With time to move: a leaf that the mouse asks far along its way gets there without a leap."""
    seen = open_page(swinging_html(HINGED), (640, 480), scale=0.25)
    at_rest(seen)
    point = (700.0, 0.0, 1200.0)
    places = [screen(seen, designed(HINGED, "leaf A", point, part)) for part in (0.0, 0.7)]
    mouse = seen.page.mouse
    mouse.move(*places[0])
    mouse.down()
    # read as often as the page is drawn, for the test itself may look too late
    seen.page.evaluate(
        """() => {
          window.way = [];
          const look = () => { way.push(stilewright.open('leaf A')); requestAnimationFrame(look); };
          requestAnimationFrame(look);
        }"""
    )
    mouse.move(*places[1])
    seen.wait("Math.abs(stilewright.open('leaf A') - 0.7) < 0.01")
    let_go(seen)
    assert opened(seen) == pytest.approx(0.7, abs=0.01)
    way = seen.page.evaluate("way")
    assert any(0.01 < part < 0.6 for part in way), way
    assert way == sorted(way)


def test_a_tap_swings_it_open_and_shut(open_page):
    seen = open_page(swinging_html(HINGED), (640, 480), scale=0.25)
    at_rest(seen)
    point = (400.0, 0.0, 1200.0)
    seen.page.mouse.click(*screen(seen, designed(HINGED, "leaf A", point, 0.0)))
    assert opened(seen) < 0.9  # a door takes its time
    seen.wait("stilewright.open('leaf A') === 1")
    seen.page.locator('[data-leaf="leaf A"]').click()
    seen.wait("stilewright.open('leaf A') === 0")


def test_the_bar_is_dragged_along_the_arc_of_the_plan(page_at):
    """The end of the bar at the free edge is taken to where the plan has it half way open."""
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    ends = """() => {
      const bar = document.querySelector('[data-leaf="leaf A"]');
      const {x, y} = document.getElementById('plan').getBoundingClientRect();
      const turn = Number(/rotate\\((.*)rad\\)/.exec(bar.style.transform)?.[1] ?? 0);
      const [left, top, wide] = ['left', 'top', 'width'].map((k) => parseFloat(bar.style[k]));
      return [left + x + Math.cos(turn) * wide * 0.95, top + 22 + y + Math.sin(turn) * wide * 0.95];
    }"""
    keyed(seen, "leaf A", "PageUp", "PageUp", "PageUp", "PageUp")
    half = seen.page.evaluate(ends)
    keyed(seen, "leaf A", "Home")
    shut = seen.page.evaluate(ends)
    assert half[1] > shut[1] + 20  # it comes out of the wall on the plan
    mouse = seen.page.mouse
    mouse.move(*shut)
    mouse.down()
    mouse.move((shut[0] + half[0]) / 2, (shut[1] + half[1]) / 2)
    mouse.move(*half)
    mouse.up()
    assert opened(seen) * 95 == pytest.approx(40, abs=1)


def test_folding_leaves_go_together_whichever_is_held(page_at):
    seen = page_at(swinging_html(FOLDING), DESK, **QUICK)
    at_rest(seen)
    keyed(seen, "leaf B", "PageUp")
    assert opened(seen, "leaf A") == opened(seen, "leaf B") == pytest.approx(10 / 88)
    keyed(seen, "leaf A", "Home")
    assert opened(seen, "leaf B") == 0
    # the free edge of the second leaf, drawn to the left
    dragged(seen, FOLDING, "leaf B", (470.0, 0.0, 1100.0), [0.3, 0.6])
    let_go(seen)
    assert opened(seen, "leaf A") == opened(seen, "leaf B") == pytest.approx(0.6, abs=0.01)
    assert seen.errors == []


def test_halves_open_each_alone(page_at):
    seen = page_at(swinging_html(HALVES), DESK, **QUICK)
    rows = seen.page.locator("#plan .bar").evaluate_all("all => all.map((e) => e.style.top)")
    assert len(set(rows)) == 2  # each can be taken hold of
    keyed(seen, "leaf A", "End")
    assert (opened(seen, "leaf A"), opened(seen, "leaf B")) == (1, 0)
    assert seen.page.text_content("#state") == "Open: no way through yet"
    keyed(seen, "leaf B", "End")
    assert float(seen.clear()) == pytest.approx(CLEAR[HALVES], abs=0.25)


def test_a_size_turns_with_its_leaf(page_at):
    """The width's line runs from edge to edge of the leaf as it stands, open as shut."""
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    seen.page.click('[data-fact="0"]')
    for key in ("Home", "PageUp", "End"):
        keyed(seen, "leaf A", key)
        seen.still()
        path = seen.page.locator("#chalk path.line").get_attribute("d") or ""
        drawn = [tuple(map(float, p.split(","))) for p in path[1:].split("M")[0].split("L")]
        for x, at in zip((0.0, 800.0), drawn, strict=True):
            world = designed(HINGED, "leaf A", (x, 0.0, 400.0), opened(seen))
            assert at == pytest.approx(
                seen.page.evaluate(f"stilewright.seen({list(world)})"), abs=1
            )


def test_what_is_measured_on_an_open_leaf_is_as_on_the_shut_one(page_at):
    """Across the board beside the stile: 800 - 60 = 740, at 40 degrees; the line turns with it."""
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    keyed(seen, "leaf A", "PageUp", "PageUp", "PageUp", "PageUp")
    seen.page.click("#measure")
    seen.still()
    for x in (66.0, 794.0):
        world = designed(HINGED, "leaf A", (x, 0.0, 900.0), opened(seen))
        seen.page.mouse.click(*screen(seen, world))
    assert "740" in seen.page.inner_text("#measured")
    before = seen.page.locator("#chalk path.line").first.get_attribute("d")
    keyed(seen, "leaf A", "PageDown")
    seen.still()
    assert seen.page.locator("#chalk path.line").first.get_attribute("d") != before
    assert seen.page.locator("#chalk text").text_content() == "740"
    seen.page.click("#measure")


def test_a_section_cuts_a_leaf_as_it_stands(page_at):
    """At 95 deg the leaf stands from -62 to 47 across: a cut at 20 goes through all its length.

    Its cut faces lie in one upright plane, from where that enters the leaf to where it leaves it.
    """
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    keyed(seen, "leaf A", "End")
    seen.page.click("#tab-stand")
    seen.page.check("#cut")
    move = (
        "at => { const e = document.getElementById('cut-at'); e.value = at;"
        "e.dispatchEvent(new Event('input')); }"
    )
    seen.page.evaluate(move, 20)
    at = float(seen.page.input_value("#cut-at"))  # the slider goes by steps of 5
    assert abs(at - 20) <= 2.5
    span = seen.page.evaluate("stilewright.cut()")["leaf A"]
    for end in ("min", "max"):
        assert span[end][0] * 1000 == pytest.approx(at, abs=0.05)
    assert span["min"][1] * 1000 == pytest.approx(12, abs=0.05)
    assert span["max"][1] * 1000 == pytest.approx(2012, abs=0.05)
    # by the leaf's four corners: where the plane, a hair aside of 20, enters and leaves it
    at = span["min"][0] * 1000
    made = group(HINGED, "leaf A")
    corners = [
        along(made.placement, made.motion, 1.0).point((x, y, 0.0))
        for x, y in ((0.0, 0.0), (800.0, 0.0), (800.0, 40.0), (0.0, 40.0))
    ]
    crossed = [
        a[1] + (b[1] - a[1]) * (at - a[0]) / (b[0] - a[0])
        for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
        if (a[0] < at) != (b[0] < at)
    ]
    assert span["max"][2] * 1000 == pytest.approx(-min(crossed), abs=0.1)
    assert span["min"][2] * 1000 == pytest.approx(-max(crossed), abs=0.1)
    seen.page.evaluate(move, 400)  # where the shut leaf was there is none now
    assert seen.page.evaluate("stilewright.cut()") == {}
    keyed(seen, "leaf A", "Home")
    span = seen.page.evaluate("stilewright.cut()")["leaf A"]
    assert (span["max"][2] - span["min"][2]) * 1000 == pytest.approx(40, abs=0.05)
    seen.page.uncheck("#cut")
    assert seen.errors == []


def test_words_are_of_doors_that_swing(page_at):
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    assert "swing" in seen.page.get_attribute("#canvas", "aria-label").lower()
    for tab in ("stand", "finish", "sizes", "yes"):
        seen.page.click(f"#tab-{tab}")
        assert "slid" not in seen.page.inner_text("body").lower()


def test_at_the_pull_a_leaf_that_swings_is_shut(page_at):
    seen = page_at(swinging_html(HINGED), DESK, **QUICK)
    keyed(seen, "leaf A", "End")
    seen.page.click("#tab-stand")
    seen.page.check('[name="place"][value="pull"]', force=True)
    assert opened(seen) == 0
    seen.page.check('[name="place"][value="facing"]', force=True)


def test_without_webgl_the_plan_opens_the_doors(page_at):
    seen = page_at(swinging_html(FOLDING), PHONE, **DRAWING)
    keyed(seen, "leaf A", "End")
    assert float(seen.clear()) == pytest.approx(CLEAR[FOLDING], abs=0.25)
    turned = seen.page.locator('[data-leaf="leaf B"]').get_attribute("style") or ""
    assert "rotate(" in turned
    seen.page.click("#tab-sizes")
    seen.page.click('[data-fact="0"]')
    assert seen.page.locator("#chalk text").text_content() == "480"
    say_yes(seen)
    assert json.loads(seen.page.input_value("#slip").strip().split("\n")[-1])["fingerprint"]
    assert seen.errors == []


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("size", [PHONE, (844, 390)], ids=["phone", "lying"])
def test_the_plan_covers_nothing_and_is_not_cut_off(page_at, name, size):
    """Whatever stands open, bars stay on the strip, and the picture keeps half of the height."""
    seen = page_at(swinging_html(name), size, **QUICK)
    for key in ("Home", "End"):
        for made in swinging(name).groups:
            keyed(seen, made.name, key)
        strip = seen.page.locator("#strip").bounding_box()
        say = seen.page.locator("#strip .say").bounding_box()
        for bar in seen.page.locator("#plan .bar i").all():
            box = bar.bounding_box()
            assert box["x"] >= strip["x"] - 1
            assert box["x"] + box["width"] <= strip["x"] + strip["width"] + 1
            assert box["y"] >= say["y"] + say["height"] - 12
            assert box["y"] + box["height"] <= strip["y"] + strip["height"] + 1
    assert seen.page.locator("#picture").bounding_box()["height"] >= size[1] * 0.45


def test_axe_finds_nothing_on_a_page_of_a_door_that_swings(open_page):
    if not AXE.is_file():
        pytest.skip("web/node_modules has no axe-core; npm ci in web/ brings it")
    seen = open_page(swinging_html(HALVES), PHONE, bypass_csp=True, **QUICK)
    seen.page.add_script_tag(path=str(AXE))
    keyed(seen, "leaf A", "End")
    assert broken_rules(seen) == []


def test_a_leaf_that_another_laps_never_stands_farther_open(page_at):
    """It takes the first along as it opens; as the first shuts it is taken along."""
    page = swinging_page(HALVES)
    lower, upper = page.leaves
    lapped = (lower, dataclasses.replace(upper, after="leaf A"))
    data = write_html(dataclasses.replace(page, leaves=lapped), swinging_glb(HALVES))
    seen = page_at(data, PHONE, **DRAWING)
    told = (
        "[...document.querySelectorAll('.bar')].map(b => Number(b.getAttribute('aria-valuenow')))"
    )

    def both() -> list[float]:
        return [float(v) for v in seen.page.evaluate(told)]

    keyed(seen, "leaf A", "PageUp")
    assert both() == [10, 0]  # the first opens alone
    keyed(seen, "leaf B", "PageUp", "PageUp")
    assert both() == [20, 20]
    keyed(seen, "leaf A", "End")
    assert both() == [90, 20]
    keyed(seen, "leaf A", "Home")
    assert both() == [0, 0]
    keyed(seen, "leaf B", "End")
    assert both() == [90, 90]
    keyed(seen, "leaf B", "Home")
    assert both() == [90, 0]
