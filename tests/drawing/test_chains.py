"""Chains of any links: no value over another, over a line, or over a neighbouring link."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from parametric.drawing.audit import audit
from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Dimension
from parametric.drawing.draft import Draft
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.papers import A3
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.figures import Figure

TITLE = TitleBlock(
    owner="", document="", title="", second_line="", drawn="", approved="", date="", scale="",
    sizes="", number="", revision="", fingerprint="",
)  # fmt: skip


def chained(lengths: list[float], axis: str, scale: float = 10.0, whole: bool = True) -> Sheet:
    """A chain of links and, outside it, their sum."""
    draft = Draft(A3)
    view = draft.view("v", scale, (150.0, 60.0))
    stops = [0.0, *itertools.accumulate(lengths)]
    line, foot = (40.0, 50.0) if axis == "across" else (120.0, 130.0)
    links = tuple(Link(figure=Figure(v, f"link {i}")) for i, v in enumerate(lengths))
    chains = [
        Chain(
            view=view,
            axis="across" if axis == "across" else "up",
            line=line,
            stops=tuple(Stop(at=s, foot=foot) for s in stops),
            links=links,
        )
    ]
    if whole:
        chains.append(
            Chain(
                view=view,
                axis="across" if axis == "across" else "up",
                line=line - 8.0,
                stops=(
                    Stop(at=0.0, foot=line, inner=True),
                    Stop(at=stops[-1], foot=line, inner=True),
                ),
                links=(Link(figure=Figure(stops[-1], "whole"), after="in all"),),
            )
        )
    place_chains(draft, chains)
    return draft.sheet(TITLE)


def found(sheet: Sheet) -> list[Dimension]:
    return [e for e in sheet.elements if isinstance(e, Dimension)]


def test_a_link_with_room_has_its_value_in_the_middle() -> None:
    """240 at 1:10 is 24 mm of paper, its value some 6 wide."""
    one = found(chained([240.0, 460.0], "across"))[0]
    assert abs(one.label.box.centre[0] - (one.a[0] + one.b[0]) / 2) < 1e-6
    assert one.tail == ()


def test_a_short_end_link_has_its_value_beyond_the_end_on_a_longer_line() -> None:
    """21 at 1:10 is 2.1 mm: no room between the strokes, and never over the neighbour."""
    first, second, _ = found(chained([21.0, 900.0], "up"))
    assert first.label.box.y1 < first.a[1] < second.label.box.y0
    assert first.tail[1][1] < first.a[1]


def test_a_short_link_between_long_ones_leaves_the_line() -> None:
    middle = found(chained([500.0, 30.0, 500.0], "across"))[1]
    assert middle.label.box.y1 < middle.a[1]
    neighbours = [d for d in found(chained([500.0, 30.0, 500.0], "across")) if d.text == "500"]
    assert all(not middle.label.box.meets(d.label.box) for d in neighbours)


def test_lines_are_drawn_once() -> None:
    """Each stop has one extension line and one stroke, however many links meet there."""
    links = found(chained([300.0, 300.0, 300.0], "across", whole=False))
    assert sum(foot is not None for d in links for foot in d.feet) == 4
    assert sum(tick for d in links for tick in d.ticks) == 4


@given(
    st.lists(st.integers(60, 2400).map(lambda n: n / 2), min_size=1, max_size=6),
    st.sampled_from(["across", "up"]),
)
def test_every_value_stands_clear_or_is_reported(lengths: list[float], axis: str) -> None:
    """The audit finds no overlap that the placing did not itself report."""
    if sum(lengths) > 2000:
        return
    sheet = chained(lengths, axis)
    if not sheet.unplaced:
        assert [str(f) for f in audit(sheet)] == []
    assert all(f.fault != "drawn length is not the value" for f in audit(sheet))


@given(st.lists(st.integers(1, 4000).map(lambda n: n / 2), min_size=1, max_size=8, unique=True))
def test_ordinates_fan_without_crossing(heights: list[float]) -> None:
    draft = Draft(A3)
    view = draft.view("v", 20.0, (60.0, 60.0))
    places = [Place(at=h, figure=Figure(h, f"height {h:g}"), start=60.0) for h in heights]
    place_ordinates(draft, view, "up", places, 70.0)
    assert [str(f) for f in audit(draft.sheet(TITLE))] == []
    lines = sorted((e.lines[0] for e in draft.elements), key=lambda p: p[0][1])  # type: ignore[union-attr]
    ends = [line[-1][1] for line in lines]
    assert ends == sorted(ends)
