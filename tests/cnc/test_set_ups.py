"""Brief G1's router work, worked by hand: which files there are and what is in them."""

from __future__ import annotations

import dataclasses
import math

import pytest

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp, notes, place_notes
from parametric.cnc.operations import Operation
from parametric.cnc.setups import SetUp, set_ups
from parametric.cnc.tool_list import TOOL_LIST_HEADER, tool_list
from parametric.model import Assembly, Groove, Making, Part, Pocket, Slot
from parametric.outlines import HALF, bounds_of, rounded_rectangle
from tests.cnc.pieces import ODD, ROUTER, SIX, odd_block, odd_pocket, reading_room


def by_file(assembly: Assembly) -> dict[str, SetUp]:
    return {s.file: s for s in set_ups(assembly)}


def middle(operation: Operation) -> tuple[float, float]:
    x0, y0, x1, y1 = bounds_of(operation.outline)
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def size(operation: Operation) -> tuple[float, float]:
    x0, y0, x1, y1 = bounds_of(operation.outline)
    return (x1 - x0, y1 - y0)


def test_one_file_for_each_part_type_and_face_then_the_leaves() -> None:
    runs = {name: s.count for name, s in by_file(reading_room()).items()}
    assert runs == {
        "S1-stile-with-pull-inner-edge.dxf": 2,
        "S2-stile-inner-edge.dxf": 2,
        "R4-bottom-rail-low-end.dxf": 2,
        "R4-bottom-rail-high-end.dxf": 2,
        "R4-bottom-rail-upper-edge.dxf": 2,
        "leaf-A-front.dxf": 1,
        "leaf-A-back.dxf": 1,
        "leaf-B-front.dxf": 1,
        "leaf-B-back.dxf": 1,
    }


def test_a_stile_on_its_edge() -> None:
    set_up = by_file(reading_room())["S2-stile-inner-edge.dxf"]
    assert (set_up.length, set_up.width, set_up.thickness) == (2126, 40, 120)
    slots = [o for o in set_up.operations if o.kind == "slot"]
    # centres 71, 189, 785, 1416, 2042 from the finished foot, 12 more from the blank's
    assert [middle(o) for o in slots] == [(83, 20), (201, 20), (797, 20), (1428, 20), (2054, 20)]
    assert {size(o) for o in slots} == {(62, 12)}
    assert {(o.layer, o.depth, o.cutter, o.corner) for o in slots} == {("slot_d46", 46, 12, 6)}
    # round ended: two half circles and two straights
    assert all([v.bulge for v in o.outline].count(HALF) == 2 for o in slots)
    (groove,) = (o for o in set_up.operations if o.kind == "groove")
    # y 226 to 714 on the leaf, 12 more on the blank; centred in 40, 8.2 wide
    assert bounds_of(groove.outline) == pytest.approx((238, 15.9, 726, 24.1))
    assert (groove.layer, groove.cutter, groove.corner) == ("groove_d14", 8, 4)
    assert groove.note == "round ends r 4 are chopped square at the bench"


def test_a_through_groove_ends_at_the_blank_with_square_open_ends() -> None:
    set_up = by_file(reading_room())["R4-bottom-rail-upper-edge.dxf"]
    (groove,) = set_up.operations
    # 20 -+ 8.2 / 2 across, the whole 784.5 along, counter-clockwise
    corners = ((0, 24.1), (0, 15.9), (784.5, 15.9), (784.5, 24.1))
    assert [(v.x, v.y) for v in groove.outline] == [pytest.approx(c) for c in corners]
    assert {v.bulge for v in groove.outline} == {0}
    assert (groove.corner, groove.cutter) == (0, 8)
    assert groove.note == "open at both ends: run the cutter past"


@pytest.mark.parametrize(
    ("leaf", "side", "x"),
    [
        # from the front the pull is 60 in from the left edge of A and from the right of B:
        # 1024.5 - 60 = 964.5; turned over, each changes hands
        ("A", "front", 60.0),
        ("A", "back", 964.5),
        ("B", "front", 964.5),
        ("B", "back", 60.0),
    ],
)
def test_pull_pockets_on_the_glued_leaf(leaf: str, side: str, x: float) -> None:
    set_up = by_file(reading_room())[f"leaf-{leaf}-{side}.dxf"]
    assert (set_up.length, set_up.width) == pytest.approx((1024.5, 2102))
    assert set_up.thickness == 40
    flange, body = set_up.operations
    assert (flange.layer, body.layer) == ("pocket_d1.5", "pocket_d14.2")
    # 1000 above the high floor point less the gap of 12; the pull stands upright
    assert middle(flange) == pytest.approx((x, 988))
    assert middle(body) == pytest.approx((x, 988))
    assert size(flange) == pytest.approx((42.6, 160.6))
    assert size(body) == pytest.approx((32.6, 150.6))
    # 988 -+ 150.6 / 2
    assert bounds_of(body.outline)[1::2] == pytest.approx((912.7, 1063.3))
    assert (flange.corner, body.corner) == (6.3, 3.3)


def test_what_the_router_does_not_do_is_listed() -> None:
    listed = [(c.mark, c.count, c.cut, c.by, c.what) for c in bench_work(reading_room())]
    squared = "chop the round ends square, r 4, 14 deep, in the inner edge"
    trims = [
        ("foot trim", "saw", "trim 12 off the foot"),
        ("top trim", "saw", "trim 12 off the top"),
    ]
    guide = "groove 9 wide, 0 to 784.5, centre across 20, 18 deep, in the foot edge"
    assert listed == [
        *(
            (mark, 2, *rest)
            for mark in ("S1", "S2")
            for rest in [("panel groove", "bench", squared), *trims]
        ),
        ("R4", 2, "floor guide groove", "bench", guide),
    ]


def test_every_cut_is_in_a_file_or_on_the_bench_list() -> None:
    room = reading_room()
    found, bench = set_ups(room), bench_work(room)
    for part in room.parts:
        files = [s for s in found if s.face is not None and part.name in s.names]
        leaves = [s for s in found if s.face is None]
        routed = [o.name for s in files for o in s.operations]
        routed += [o.name for s in leaves for o in s.operations if o.part == part.name]
        listed = [c.cut for c in bench if part.name in c.names and not c.what.startswith("chop")]
        assert sorted(routed + listed) == sorted(cut.name for cut in part.cuts)


def test_the_largest_cutter_that_fits_is_taken_when_none_is_named() -> None:
    wide = dataclasses.replace(odd_pocket("high face", 40.0, 25.0), making=ROUTER)
    rack = (6.0, 8.0, 12.0)
    (set_up,) = set_ups(odd_block((wide,)), rack)
    # corner 3: 2 x 3 = 6
    assert set_up.operations[0].cutter == 6
    narrow = dataclasses.replace(wide, width=5.0, corner=2.5)
    with pytest.raises(ValueError, match="at most 5 fits"):
        set_ups(odd_block((narrow,)), rack)


def test_a_cutter_too_large_for_the_corner_is_refused() -> None:
    # an 8 cutter leaves r 4, the pull's body has r 3.3
    body = Pocket(
        name="pull body",
        face="high face",
        u=150.0,
        v=45.0,
        length=150.6,
        width=32.6,
        corner=3.3,
        depth=14.2,
        making=Making(by="router", cutter=8.0),
    )
    with pytest.raises(ValueError, match=r"a cutter of 8 is small enough; at most 6\.6 fits"):
        set_ups(odd_block((body,)))


def test_a_stopped_groove_with_square_ends_is_refused() -> None:
    groove = Groove(
        name="groove",
        face="high edge",
        u0=50.0,
        u1=300.0,
        v=25.0,
        width=8.0,
        depth=10.0,
        making=SIX,
    )
    with pytest.raises(ValueError, match="square inside corners"):
        set_ups(odd_block((groove,)))


def test_a_groove_open_at_one_end_is_round_at_the_other_only() -> None:
    groove = Groove(
        name="groove",
        face="high edge",
        u0=50.0,
        u1=300.0,
        v=25.0,
        width=8.0,
        depth=10.0,
        corner=4.0,
        squared=True,
        making=SIX,
    )
    (set_up,) = set_ups(odd_block((groove,)))
    (operation,) = set_up.operations
    assert [v.bulge for v in operation.outline].count(HALF) == 1
    assert operation.note == (
        "open at one end: run the cutter past; round ends r 4 are chopped square at the bench"
    )
    (chopped,) = bench_work(odd_block((groove,)))
    # two corners of one end: (4 - pi) / 2 x 4^2 x 10
    assert chopped.removes == pytest.approx((4 - math.pi) / 2 * 16 * 10)


def test_a_groove_stopped_on_the_saw_is_never_in_a_file() -> None:
    groove = Groove(
        name="groove",
        face="high edge",
        u0=100.0,
        u1=200.0,
        v=25.0,
        width=8.0,
        depth=10.0,
        ramp=101.5,
        making=Making(by="saw"),
    )
    assert set_ups(odd_block((groove,))) == ()
    (cut,) = bench_work(odd_block((groove,)))
    assert "ramps of a blade r 101.5" in cut.what


def test_holes_and_windows_are_named_for_what_they_are() -> None:
    hole = Pocket(
        name="hole",
        face="high face",
        u=40.0,
        v=25.0,
        length=13.0,
        width=13.0,
        corner=6.5,
        depth=12.0,
        making=SIX,
    )
    window = dataclasses.replace(hole, name="window", u=90.0, length=40.0, depth=ODD.thickness)
    (set_up,) = set_ups(odd_block((hole, window)))
    assert [(o.layer, o.depth) for o in set_up.operations] == [
        ("bore_d12", 12),
        ("cut_through", 50),
    ]
    # a hole is two half circles
    assert [v.bulge for v in set_up.operations[0].outline] == [HALF, HALF]


def test_one_cutter_a_layer() -> None:
    tight = dataclasses.replace(odd_pocket("high face", 40.0, 25.0), corner=2.0, making=ROUTER)
    wide = dataclasses.replace(odd_pocket("high face", 90.0, 25.0), making=ROUTER)
    (set_up,) = set_ups(odd_block((tight, wide)), (4.0, 6.0))
    assert [o.cutter for o in set_up.operations] == [4, 4]


def test_a_cut_outside_the_wood_is_a_fault_of_ours() -> None:
    slot = Slot(
        name="slot",
        face="high edge",
        u0=250.0,
        u1=312.0,
        v=20.0,
        width=12.0,
        depth=40.0,
        making=SIX,
    )
    with pytest.raises(ValueError, match="outside the high edge"):
        set_ups(odd_block((slot,)))


def test_one_mark_is_one_shape() -> None:
    room = reading_room()
    left, *others = room.groups[0].parts
    wrong = dataclasses.replace(left, mark="S2")
    group = dataclasses.replace(room.groups[0], parts=(wrong, *others))
    with pytest.raises(ValueError, match="mark S2 stands for"):
        set_ups(dataclasses.replace(room, groups=(group, room.groups[1])))


def test_tool_list_rows() -> None:
    rows = [
        dict(zip(TOOL_LIST_HEADER, row, strict=True)) for row in tool_list(set_ups(reading_room()))
    ]
    leaf = [row for row in rows if row["file"] == "leaf-A-front.dxf"]
    assert leaf == [
        {
            "file": "leaf-A-front.dxf",
            "part": "leaf A",
            "name": "glued leaf",
            "count": 1,
            "face up": "front",
            "layer": layer,
            "cutter diameter mm": 6,
            "depth mm": depth,
            "stock thickness mm": 40,
            "corner radius mm": corner,
            "how many": 1,
            "note": "",
            "turned pieces": "",
        }
        for layer, depth, corner in (("pocket_d1.5", 1.5, 6.3), ("pocket_d14.2", 14.2, 3.3))
    ]
    stile = {row["layer"]: row["how many"] for row in rows if row["part"] == "S1"}
    assert stile == {"slot_d46": 5, "groove_d14": 1}


def test_notes_say_all_that_the_operator_must_know() -> None:
    set_up = by_file(reading_room())["S1-stile-with-pull-inner-edge.dxf"]
    said = notes(set_up, Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B"))
    assert said[:7] == (
        "S1 stile, with pull, inner edge face up",
        "2 off: leaf A / left stile, leaf B / right stile",
        "unit mm, depths from the surface of the stock",
        "stock 2126 x 40, 120 thick",
        "datum 0;0 lower left: x along the length from the foot, y from the high face",
        "slot_d46: 5 off, cutter 12, depth 46, corner r 6",
        "groove_d14: 1 off, cutter 8, depth 14, corner r 4, "
        "round ends r 4 are chopped square at the bench",
    )
    assert said[-1] == "Larch Hill, 7C1F-04AB, revision B"


def test_a_turned_twin_is_told_by_its_own_words() -> None:
    """One file runs on a left and a right stile: what is the back of one is the face of the other."""
    room = reading_room()
    words = {"left": ("face", "back"), "right": ("back", "face")}

    def worded(part: Part) -> Part:
        low, high = words["left" if "left" in part.name else "right"]
        return dataclasses.replace(part, faces={**part.faces, "low face": low, "high face": high})

    groups = tuple(
        dataclasses.replace(g, parts=tuple(worded(p) for p in g.parts)) for g in room.groups
    )
    files = by_file(dataclasses.replace(room, groups=groups))
    stile = files["S1-stile-with-pull-inner-edge.dxf"]
    assert (stile.names[0], stile.y_from) == ("leaf A / left stile", "back")
    assert stile.turned == ("leaf B / right stile lies turned: y from the face",)
    said = notes(stile, Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B"))
    assert stile.turned[0] in said
    rows = [dict(zip(TOOL_LIST_HEADER, row, strict=True)) for row in tool_list([stile])]
    assert {row["turned pieces"] for row in rows} == set(stile.turned)
    assert files["R4-bottom-rail-low-end.dxf"].turned == ()


def test_a_face_without_a_free_word_of_wood_still_has_its_notes() -> None:
    """A pocket over all of a face leaves no room: the words stand over the cut."""
    pocket = dataclasses.replace(
        odd_pocket("high face", 150.0, 45.0), length=300.0, width=90.0, corner=3.0
    )
    (set_up,) = set_ups(odd_block((pocket,)))
    block = place_notes(set_up, ("pocket",), 10.0)
    assert block.rows == ("pocket",)


def test_numbers_stay_with_their_words() -> None:
    set_up = by_file(reading_room())["leaf-A-front.dxf"]
    said = notes(set_up, Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B"))
    block = place_notes(set_up, said, 10.0)
    assert len(block.rows) > len(said)
    assert " ".join(block.rows) == " ".join(said)
    assert not any(row.endswith((" r", " x", "cutter", "depth")) for row in block.rows)


def test_words_on_a_narrow_end_run_on_under_the_slot() -> None:
    """On 90 x 50 with a slot 62 x 12 at 24 to 36, 50 - 36 is left above it and 24 below."""
    slot = Slot(
        name="slot", face="low end", u0=14.0, u1=76.0, v=20.0, width=12.0, depth=46.0, making=SIX
    )
    (set_up,) = set_ups(odd_block((slot,)))
    assert (set_up.length, set_up.width) == (90, 50)
    said = notes(set_up, Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B"))
    block = place_notes(set_up, said, 10.0)
    assert block.height >= 1.4
    above = [y for _, y in block.feet if y > 36]
    below = [y for _, y in block.feet if y + block.height < 24]
    assert above
    assert below
    assert len(above) + len(below) == len(block.rows) == len(block.feet)
    words = " ".join(block.rows).replace("  |", "")
    assert "hold-down, eyes, ears" in words
    assert all(line in words for line in (*said[:6], said[-1]))


def test_no_text_is_longer_than_readers_take() -> None:
    """On 784.5 x 40 a row of letters 3 high holds 300; what is past 255 would be cut off unsaid."""
    set_up = by_file(reading_room())["R4-bottom-rail-upper-edge.dxf"]
    said = notes(set_up, Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B"))
    rows = place_notes(set_up, said, 8.0).rows
    assert len(" ".join(rows)) > 255
    assert max(map(len, rows)) <= 255


def test_outline_radii_must_fit() -> None:
    with pytest.raises(ValueError, match="do not fit"):
        rounded_rectangle((0, 0, 10, 5), (3, 3, 0, 0))


def test_two_runs_agree() -> None:
    assert set_ups(reading_room()) == set_ups(reading_room())
