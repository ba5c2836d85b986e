"""The client's page of several doors: each where it stands, and what is said of each under its name."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree

import pytest

from parametric.pack.preview import preview_page
from parametric.parts import make_parts
from parametric.trade.loads import leaf_loads
from parametric.writers.client_page import PreviewPage, plain
from tests.several.test_doors import two

DRAWN = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 200"><path d="M0 0"/></svg>',
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 120"><path d="M1 1"/></svg>',
)


def page_of(kind: str) -> tuple[PreviewPage, PreviewPage]:
    """A starter's own page, and that of the same door twice in one job."""
    alone, both = two(kind)
    pages = []
    for resolved, drawn in ((alone, DRAWN[:1]), (both, DRAWN)):
        made = make_parts(resolved)
        pages.append(
            preview_page(
                resolved,
                leaf_loads(resolved, made),
                fingerprint="0" * 64,
                elevations=drawn,
                assembly=made,
            )
        )
    return pages[0], pages[1]


@pytest.mark.parametrize("kind", ["hinged pair", "bypass", "bifold", "dutch", "pocket"])
def test_each_door_stands_where_its_parts_do(kind: str) -> None:
    _, both = two(kind)
    groups = {group.name: group for group in make_parts(both).groups}
    alone, page = page_of(kind)
    assert len(page.leaves) == 2 * len(alone.leaves)
    for leaf in page.leaves:
        group = groups[leaf.name]
        assert leaf.motion == group.motion
        assert (leaf.x, leaf.front, leaf.foot) == pytest.approx(group.placement.origin)
    far = both.doors[1].stands.origin[0]
    assert page.opening == alone.opening
    assert page.openings_beside == (tuple((pytest.approx(x + far), z) for x, z in alone.opening),)
    assert alone.openings_beside == ()


def test_what_is_said_of_each_is_under_its_name() -> None:
    alone, page = page_of("hinged pair")
    labels = [fact.label for fact in alone.facts]
    assert [fact.label for fact in page.facts] == [
        *(f"Door study: {label}" for label in labels),
        *(f"Door hall: {label}" for label in labels),
    ]
    assert plain(page.thing) == (
        f"Door study: {plain(alone.thing)}; Door hall: {plain(alone.thing)}"
    )
    said = [plain(tick) for tick in page.ticks]
    own = [plain(tick) for tick in alone.ticks if "sample" not in plain(tick)]
    assert said[: 2 * len(own)] == [
        *(f"Door study: {tick}" for tick in own),
        *(f"Door hall: {tick}" for tick in own),
    ]
    # what is so of all of them is ticked once
    assert sum("sample" in tick for tick in said) == 1
    assert page.clear_way is None


def test_their_drawings_stand_side_by_side_at_one_scale() -> None:
    """100 x 200 and 60 x 120, feet on one line: the second 80 lower, 200 / 25 = 8 apart."""
    _, page = page_of("hinged pair")
    drawing = ElementTree.fromstring(page.elevation_svg)
    assert drawing.get("viewBox") == "0 0 168.00 200.00"
    places = [[float(one.get(k, "")) for k in ("x", "y", "width", "height")] for one in drawing]
    assert places == [[0, 0, 100, 200], [108, 80, 60, 120]]
