"""Flaps on the client's page: where the picture has them, and how their bars come out on the strip."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import along
from tests.browser.conftest import QUICK
from tests.browser.designed import html_of

pytestmark = [pytest.mark.browser, pytest.mark.kernel]

RULES = Path(__file__).parents[1] / "rules"
DESK = (1000, 700)


@cache
def job_of(name: str) -> Job:
    return check(RULES / f"{name}.yaml", user_house=False)


@cache
def page_of(name: str) -> bytes:
    return html_of(job_of(name))


@pytest.mark.parametrize("name", ["lift", "bureau"])
def test_a_flap_turns_about_its_level_edge(open_page, name):
    """Opened by key: the scene has its far corner where the model does, and its bar comes nearer."""
    seen = open_page(page_of(name), DESK, **QUICK)
    seen.still()
    bar = seen.page.locator('[data-leaf="leaf A"]')
    shut = bar.bounding_box()
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    seen.still()
    assert float(seen.page.evaluate("stilewright.open('leaf A')")) == pytest.approx(1)
    assert "90" in bar.get_attribute("aria-valuetext")
    made = next(g for g in job_of(name).assembly.groups if g.name == "leaf A")
    leaf = job_of(name).resolved.leaves[0]
    for corner in ((0.0, 0.0, 0.0), (float(leaf.width), 0.0, float(leaf.height))):
        x, y, z = seen.page.evaluate(f"stilewright.at('leaf A', {list(corner)})")
        there = along(made.placement, made.motion, 1.0).point(corner)
        assert (x, -z, y) == pytest.approx(there, abs=0.01)
    opened = bar.bounding_box()
    assert opened["y"] > shut["y"] + 20
    assert opened["width"] == pytest.approx(shut["width"], abs=1)
    assert seen.errors == []
