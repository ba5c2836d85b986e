"""Bored rows in machine files: a circle each, none doubled, on the layer of its depth; else at the bench."""

from __future__ import annotations

import io

import ezdxf
import pytest

from parametric.cnc.bench_work import bench_work
from parametric.cnc.setups import SetUp, set_ups
from parametric.cnc.tool_list import tool_list, tool_uses
from parametric.model import Making
from parametric.outlines import bounds_of
from parametric.pack.verifying.bench_words import read_words, said_of
from tests.readers.cnc_dxf import read
from tests.verify.bored import assembly, side
from tests.verify.lopsided import written


def set_up(word: str) -> SetUp:
    return next(s for s in set_ups(assembly()) if s.file == f"C1-side-{word}.dxf")


def middles(found: SetUp, layer: str) -> list[tuple[float, float]]:
    boxes = [bounds_of(op.outline) for op in found.operations if op.layer == layer]
    return sorted((round((x0 + x1) / 2, 6), round((y0 + y1) / 2, 6)) for x0, y0, x1, y1 in boxes)


def test_every_hole_of_a_row_is_one_circle() -> None:
    """12 from 101 at y 37 and 11 at y 261, 32 apart; x, y as u, v on a high face."""
    found = middles(set_up("high-face"), "bore_d13")
    wanted = [(101 + 32 * n, 37.0) for n in range(12)] + [(101 + 32 * n, 261.0) for n in range(11)]
    assert found == sorted(wanted)


def test_a_low_face_is_seen_turned_over() -> None:
    """Of 310 of width, v 80, 151 and 222 lie 230, 159 and 88 up: y = 310 - v."""
    found = middles(set_up("low-face"), "bore_d6")
    assert found == [(620.0, 88.0), (620.0, 159.0), (620.0, 230.0)]


def test_an_end_is_bored_across_its_width() -> None:
    """On the low end x is the width, and y the thickness the other way: 18 - 7.5 = 10.5."""
    assert middles(set_up("low-end"), "bore_d24") == [(44.0 + 64 * n, 10.5) for n in range(4)]


@pytest.mark.parametrize("word", ["high-face", "low-face", "low-end"])
def test_other_readers_find_closed_circles(word: str) -> None:
    one = set_up(word)
    data = written(one)
    read(data)  # breaks no rule of the contract
    drawn = ezdxf.read(io.StringIO(data.decode("ascii"))).modelspace().query("LWPOLYLINE")
    holes = [line for line in drawn if line.dxf.layer.startswith(("bore", "cut_through"))]
    assert len(holes) == len(one.operations)
    for line in holes:
        assert line.closed
        # two half turns: the bulge of half a circle is the tangent of a quarter of 180 degrees
        assert [bulge for *_, bulge in line.get_points("xyb")] == pytest.approx([1.0, 1.0])


def test_a_bit_is_as_wide_as_its_hole() -> None:
    uses = {use.layer: use for use in tool_uses(set_up("high-face"))}
    assert (uses["bore_d13"].cutter, uses["bore_d13"].count) == (5.0, 23)
    assert (uses["bore_d11"].cutter, uses["bore_d11"].count) == (4.5, 2)
    assert uses["cut_through"].note == "22 dia"


def test_a_named_cutter_runs_round_a_wide_hole() -> None:
    import dataclasses

    part = side()
    cable = next(c for c in part.cuts if c.name == "cable hole")
    milled = dataclasses.replace(cable, making=Making(by="router", cutter=8.0))
    group = assembly().groups[0]
    whole = dataclasses.replace(
        assembly(),
        groups=(dataclasses.replace(group, parts=(dataclasses.replace(part, cuts=(milled,)),)),),
    )
    (row,) = tool_list(set_ups(whole))
    assert row[5:8] == ("cut_through", 8.0, 18.0)


def test_what_the_bench_bores_is_said_and_read_back() -> None:
    found = {cut.cut: cut for cut in bench_work(assembly())}
    row, one = found["dowel holes"], found["catch"]
    assert row.what == (
        "bore 5 holes 8 dia, the first at 70; 10, then every 96 along, 21 deep, in the high edge"
    )
    assert one.what == "bore 1 hole 10 dia at 330; 150, 9 deep, in the low face"
    cuts = {cut.making.by + cut.name: cut for cut in side().cuts}
    assert read_words(row.what) == said_of(side(), cuts["benchdowel holes"])
    assert read_words(one.what) == said_of(side(), cuts["routercatch"])
    # 5 x pi x 4^2 x 21
    assert row.removes == pytest.approx(5278, abs=1)
