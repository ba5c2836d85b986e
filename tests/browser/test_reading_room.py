"""The page that a whole build writes for Larch Hill, against the build's own numbers."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from parametric.job import Built, build
from parametric.model import displaced

pytestmark = [pytest.mark.browser, pytest.mark.kernel]


@pytest.fixture(scope="module")
def built(reading_room, tmp_path_factory) -> Built:
    pack = tmp_path_factory.mktemp("packs") / "larch-hill"
    done = build(reading_room, out=pack, user_house=False)
    assert done.folder is not None
    return done


@pytest.fixture(scope="module")
def data(built) -> bytes:
    return Path(built.folder, "client", "preview.html").read_bytes()


@pytest.mark.parametrize("size", [(390, 844), (1440, 900)], ids=["phone", "desk"])
def test_it_opens_within_the_budget(open_page, data, size):
    seen = open_page(data, size)
    seen.still()
    assert seen.errors == []
    assert len(seen.requests) == 1
    figures = seen.page.evaluate("stilewright.figures()")
    assert figures["calls"] <= 250
    assert figures["triangles"] <= 150_000
    assert len(data) <= 1_500_000


def test_every_leaf_stands_where_the_states_say(open_page, built, data):
    """In each state of all shut or wide open leaves, the scene's node is at the part's place."""
    seen = open_page(data, reduced_motion="reduce")
    slides = {g.name: g for g in built.job.assembly.groups if g.slide is not None}
    tried = 0
    for state in built.job.assembly.states:
        if set(state.open.values()) - {0.0, 1.0}:
            continue
        for name, group in slides.items():
            right = float(group.slide.travel) * group.slide.direction[0] > 0
            opened = state.open.get(name, 0.0) == 1.0
            seen.page.focus(f'[data-leaf="{name}"]')
            seen.page.keyboard.press("End" if opened == right else "Home")
            wanted = displaced(group, state).origin[0]
            assert seen.where(name) == pytest.approx(wanted, abs=0.1), (state.name, name)
            tried += 1
    assert tried >= 2 * len(slides)


def test_the_clear_way_on_the_strip_is_that_of_numbers_json(open_page, built, data):
    numbers = json.loads(Path(built.folder, "numbers.json").read_text())
    figures = {figure["name"]: figure["value"] for figure in numbers["figures"]}
    seen = open_page(data, reduced_motion="reduce")
    assert seen.clear() == "Shut"
    seen.page.focus('[data-leaf="leaf A"]')
    seen.page.keyboard.press("End")
    assert float(seen.clear()) == figures["clear way"] == 852.0
    foot = seen.page.text_content("#foot") or ""
    assert f"{numbers['fingerprint'][:4]}-{numbers['fingerprint'][4:8]}".upper() in foot
