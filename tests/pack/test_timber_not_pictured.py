"""A timber that no palette has is shown as wood, and never in a paint."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.catalog.finishes import CLEAR_TIMBERS, PAINTS, PLAIN_WOOD, ClearTimber, Paint
from parametric.design.starters import templates
from parametric.job import check
from parametric.pack.preview import palette
from parametric.writers.client_page import Palette


def shown(folder: Path, *lines: tuple[str, str]) -> Palette:
    text = (templates() / "hinged.yaml").read_text(encoding="utf-8")
    for old, new in lines:
        assert old in text
        text = text.replace(old, new)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    assert job.resolved is not None
    return palette(job.resolved)


@pytest.mark.parametrize("finish", ["kind: oil", "kind: varnish"])
def test_clear_finish_on_a_timber_of_no_palette(tmp_path: Path, finish: str) -> None:
    found = shown(tmp_path, ("timber: white oak", "timber: tulipwood"), ("kind: oil", finish))
    assert found.wood_shown == PLAIN_WOOD
    assert isinstance(found.wood_shown, ClearTimber)
    assert found.named_wood == f"tulipwood, {finish.removeprefix('kind: ')}"
    assert found.quoted_wood == ()
    assert found.timbers == (*CLEAR_TIMBERS, PLAIN_WOOD)


def test_a_timber_that_is_known_looks_like_itself(tmp_path: Path) -> None:
    found = shown(tmp_path)
    assert (found.wood, found.quoted_wood, found.named_wood) == ("white oak", ("white oak",), "")
    assert found.timbers == CLEAR_TIMBERS


def test_under_paint_no_timber_shows(tmp_path: Path) -> None:
    found = shown(
        tmp_path, ("timber: white oak", "timber: tulipwood"), ("kind: oil", "kind: paint")
    )
    assert isinstance(found.wood_shown, Paint)
    assert found.quoted_wood == tuple(paint.key for paint in PAINTS)
    assert found.timbers == CLEAR_TIMBERS
