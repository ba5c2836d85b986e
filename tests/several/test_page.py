"""The client's page of several doors: each where it stands, and what is said of each under its name."""

from __future__ import annotations

import pytest

from parametric.pack.door_words import in_words
from parametric.pack.pictures import picture_scene
from parametric.pack.preview import preview_page
from parametric.parts import make_parts
from parametric.trade.loads import leaf_loads
from parametric.writers.client_page import PreviewPage, plain
from parametric.writers.picture_scene import Away
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
    study, hall = page.doorways
    assert study.opening == alone.opening
    assert hall.opening == tuple((pytest.approx(x + far), z) for x, z in alone.opening)
    assert study.way == alone.way
    assert hall.way == pytest.approx([x + far for x in alone.way])
    assert study.clear_way == hall.clear_way == alone.clear_way
    assert alone.doorways == ()


def test_what_is_said_of_each_is_under_its_name() -> None:
    alone, page = page_of("hinged pair")
    labels = [fact.label for fact in alone.facts]
    assert [fact.label for fact in page.facts] == [
        *(f"Study: {in_words(label)}" for label in labels),
        *(f"Hall: {in_words(label)}" for label in labels),
    ]
    assert plain(page.thing) == f"Study: {plain(alone.thing)}; Hall: {plain(alone.thing)}"
    said = [plain(tick) for tick in page.ticks]
    *own, sample = (plain(tick) for tick in alone.ticks)
    for door in ("Study", "Hall"):
        assert [tick for tick in said if tick.startswith(door)] == [f"{door}: {one}" for one in own]
    # what is so of all of them is ticked once
    assert said.count(sample) == 1
    assert len(said) == 2 * len(own) + 1


def test_each_has_its_own_drawing() -> None:
    _, page = page_of("hinged pair")
    assert [door.elevation_svg for door in page.doorways] == list(DRAWN)
    assert [door.at for door in page.doorways] == pytest.approx(
        [0.0, page.doorways[1].opening[0][0] - page.opening[0][0]]
    )


def test_both_are_pictured_in_one_wall_half_open_together() -> None:
    _, both = two("hinged pair")
    _, page = page_of("hinged pair")
    scene = picture_scene(page, make_parts(both))
    assert [own[0][0] for own in scene.openings] == pytest.approx(
        [door.opening[0][0] / 1000 for door in page.doorways]
    )
    (_, right), (left, _) = scene.clear
    assert left - right > 0
    half_open = next(shot for shot in scene.shots if shot.moved)
    assert sum(away != Away() for away in half_open.moved.values()) == len(page.leaves)
