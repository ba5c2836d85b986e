"""Outlines of shaped panes that are not those of the panes: each spoiled in one way."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from functools import cache

import pytest

from parametric.job import Job, check
from parametric.outlines import Outline, turned_over
from parametric.pack.glass_outlines import glass_outlines
from parametric.pack.verifying.glass_outlines import check_glass_outlines
from parametric.pack.verifying.known import Known, known_design
from parametric.pack.verifying.pack import verify
from parametric.trade.glass import GlassRow, PaneTemplate
from parametric.trade.paperwork import Paperwork, paperwork
from tests.shapes.mill_lane import MILL_LANE
from tests.verify.larch_hill import known as larch_hill
from tests.writers.test_glass_dxf import STAMP, mill_lane

G1, G2 = "order/glass-G1.dxf", "order/glass-G2.dxf"
WIDE = 267.49375


@cache
def made() -> tuple[Job, Paperwork, Known]:
    job = check(MILL_LANE, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    return job, paper, known_design(job.resolved, job.assembly, job.loads)


def faults(files: dict[str, bytes]) -> str:
    return "\n".join(check_glass_outlines(files, made()[2]).faults)


def spoiled(change: Callable[[GlassRow, PaneTemplate], GlassRow]) -> dict[str, bytes]:
    """The files written anew from altered rows: whole in themselves, and wrong."""
    job, paper, _ = made()
    assert job.resolved is not None
    rows = tuple(
        row if row.template is None else change(row, row.template) for row in paper.glazing.rows
    )
    glazing = dataclasses.replace(paper.glazing, rows=rows)
    return glass_outlines(job.resolved, dataclasses.replace(paper, glazing=glazing), STAMP)


def with_outline(change: Callable[[Outline], Outline]) -> dict[str, bytes]:
    return spoiled(
        lambda row, shape: dataclasses.replace(
            row, template=dataclasses.replace(shape, outline=change(shape.outline))
        )
    )


def spoiled_text(old: str, new: str) -> dict[str, bytes]:
    text = mill_lane()[G1].decode()
    assert old in text, old
    return {**mill_lane(), G1: text.replace(old, new, 1).encode()}


def test_sound_outlines_pass() -> None:
    verdict = check_glass_outlines(mill_lane(), made()[2])
    assert verdict.faults == ()
    assert verdict.looked_at == {"outlines": 2}


def test_the_other_hand_is_found() -> None:
    """Same box, same area, same radius: only its edges stand the wrong way about."""
    found = faults(with_outline(lambda outline: turned_over(outline, across=WIDE)))
    assert found.count("no edge runs from") == 2
    assert "holds" not in found
    assert "reaches" not in found


def test_an_arc_as_its_chord_is_found() -> None:
    found = faults(with_outline(lambda outline: tuple(v._replace(bulge=0.0) for v in outline)))
    assert "no edge runs from 267.494;488.770 to 0.000;385.473 with a bulge of 0.049662" in found
    assert "holds" in found


def test_a_hollow_arc_is_found() -> None:
    found = faults(with_outline(lambda outline: tuple(v._replace(bulge=-v.bulge) for v in outline)))
    assert "no edge runs from" in found


def test_daylight_in_place_of_glass_is_found() -> None:
    """5/16 in lower and as much less radius, as what is seen under the rail would be."""
    found = faults(
        with_outline(lambda outline: tuple(v._replace(y=max(v.y - 7.9, 0.0)) for v in outline))
    )
    assert "reaches from 0.000;0.000 to 267.494;480.870, the pane from 0;0" in found


def test_inches_in_place_of_millimetres_are_found() -> None:
    found = faults(
        with_outline(lambda outline: tuple(v._replace(x=v.x / 25.4, y=v.y / 25.4) for v in outline))
    )
    assert "to 10.531;19.243" in found


def test_a_hundredth_of_a_radius_is_found() -> None:
    """The arc flatter by a thousandth of its bulge: 0.0066 at its middle."""
    found = faults(
        with_outline(lambda outline: tuple(v._replace(bulge=v.bulge * 0.999) for v in outline))
    )
    assert "no edge runs from" in found
    assert "holds" in found


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("\n  9\n$INSUNITS\n 70\n4\n", "\n  9\n$INSUNITS\n 70\n1\n", "the header's unit is 1"),
        ("\n 90\n4\n 70\n1\n", "\n 90\n4\n 70\n0\n", "the outline is open"),
        ("G1: 2 off", "G1: 4 off", "4 off are said, there are 2"),
        ("toughened glass 5.74", "toughened glass 6.35", "6.35 thick is said, the pane is 5.740"),
        ("toughened glass", "ordinary glass", "ordinary glass is said"),
        ("1 turned over", "2 turned over", "2 turned over are said, there are 1"),
        ("267.49 wide", "268.49 wide", "268.49 wide is said, the pane is 267.494"),
        ("488.77 at its", "480.77 at its", "480.77 high is said"),
        ("\nG1\n", "\nG2\n", "it does not say that it is G1"),
    ],
)
def test_words_and_header_that_are_wrong_are_found(old: str, new: str, says: str) -> None:
    assert says in faults(spoiled_text(old, new))


def test_a_stranger_on_the_layer_that_is_cut_is_found() -> None:
    text = mill_lane()[G1].decode()
    start = text.index("  0\nLWPOLYLINE\n")
    end = text.index("  0\nTEXT\n", start)
    twice = text[:end] + text[start:end] + text[end:]
    assert "2 outlines lie on glass" in faults({**mill_lane(), G1: twice.encode()})
    moved = text.replace("notes", "glass")
    assert "a TEXT on layer glass" in faults({**mill_lane(), G1: moved.encode()})


def test_files_that_are_missing_too_many_or_torn_are_found() -> None:
    files = mill_lane()
    assert faults({G1: files[G1]}) == f"{G2} is missing"
    assert "G3 is no shaped pane" in faults({**files, "order/glass-G3.dxf": files[G1]})
    assert "cannot be read back" in faults({**files, G1: files[G1][:2000]})
    changed = faults({G1: files[G2], G2: files[G1]})
    assert f"{G1}: it does not say that it is G1" in changed
    assert f"{G2}: the outline holds" in changed


def test_a_pack_with_shaped_panes_is_held_to_them_and_no_other() -> None:
    """A verdict of glass where there is such glass, and where such a file is there."""
    assert "glass" in verify(dict(mill_lane()), made()[2])
    assert "glass" not in verify({}, larch_hill())
    stray = verify({G1: mill_lane()[G1]}, larch_hill())["glass"]
    assert stray.faults == (f"{G1}: G1 is no shaped pane",)
