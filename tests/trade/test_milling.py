"""Every cut at one setting, every setting true to its cuts; stops from every end."""

from __future__ import annotations

import pytest

from parametric.job import Job
from parametric.model import Groove, Slot
from parametric.trade.milling import Setting
from parametric.trade.paperwork import Paperwork
from parametric.trade.router_setups import stops_of
from tests.trade.conftest import Edited, paper_of


def titled(paper: Paperwork, title: str) -> Setting:
    (found,) = (setting for setting in paper.milling if setting.title == title)
    return found


def test_every_cut_has_its_setting(job: Job, paper: Paperwork) -> None:
    """A tongue is two settings, a squared groove a cut and a chisel: nothing else is twice."""
    assert job.assembly is not None
    asked = {
        (part.name, index)
        for part in job.assembly.parts
        if not part.supplied and part.material.look != "glass"
        for index in range(len(part.cuts))
    }
    covered: dict[tuple[str, int], set[str]] = {}
    for setting in paper.milling:
        for run in setting.runs:
            for cut in run.covers:
                assert setting.kind not in covered.setdefault(cut, set())
                covered[cut].add(setting.kind)
    assert set(covered) == asked
    twice = {frozenset(kinds) for kinds in covered.values() if len(kinds) > 1}
    assert twice == {frozenset({"tongue", "back rebate"}), frozenset({"groove", "squaring"})}


def test_settings_of_larch_hill(paper: Paperwork) -> None:
    """Marks at each setting, and how many cuts: 40 slots, 8 grooves, 4 pockets of each sort."""
    found = {s.title: (s.by, s.marks, int(s.cuts), s.passes, int(s.spares)) for s in paper.milling}
    assert found == {
        "loose-tenon slots": ("router", ("S1", "S2", "R1", "R2", "R3", "R4"), 40, 1, 1),
        "panel groove": ("router", ("S1", "S2", "R3", "R4"), 8, 2, 1),
        "square the ends of the panel groove": ("bench", ("S1", "S2"), 8, 1, 0),
        "bevel": ("saw", ("P1",), 8, 1, 1),
        "tongue face side": ("saw", ("P1",), 8, 1, 1),
        "tongue back rebate": ("saw", ("P1",), 8, 1, 1),
        "mitre both ends": ("saw", ("L1", "L2"), 64, 1, 1),
        "edges rounded to the slot": ("bench", ("T1",), 80, 1, 1),
        "trim the ends": ("saw", ("leaf A", "leaf B"), 4, 1, 1),
        "floor guide groove": ("bench", ("leaf A", "leaf B"), 2, 2, 1),
        "pull flange pocket": ("router", ("leaf A", "leaf B"), 4, 1, 1),
        "pull body pocket": ("router", ("leaf A", "leaf B"), 4, 1, 1),
    }
    order = [s.when for s in paper.milling]
    assert order == sorted(order, key=["before glue-up", "after glue-up", "on site"].index)
    slots = titled(paper, "loose-tenon slots")
    assert {run.mark: run.pieces for run in slots.runs} == {
        "S1": 2,
        "S2": 2,
        "R1": 2,
        "R2": 2,
        "R3": 2,
        "R4": 2,
    }
    assert slots.fence_from == "face"
    assert [float(f) for f in slots.fence] == [20.0]


@pytest.mark.parametrize("title", ["panel groove", "floor guide groove"])
def test_passes_of_a_cutter_make_the_whole_groove_and_no_more(paper: Paperwork, title: str) -> None:
    setting = titled(paper, title)
    assert setting.cutter is not None
    assert setting.width is not None
    half = float(setting.cutter) / 2
    left, right = float(setting.fence[0]) - half, float(setting.fence[-1]) + half
    assert right - left == pytest.approx(float(setting.width))
    assert (left + right) / 2 == pytest.approx(20.0)
    steps = [b - a for a, b in zip(setting.fence, setting.fence[1:], strict=False)]
    assert all(0 < step <= float(setting.cutter) for step in steps)


def test_wide_groove_takes_three_passes(edited: Edited) -> None:
    """14 wide with a 6: ceil((14 - 6)/6) + 1 = 3, each (14 - 6)/2 = 4 on."""
    paper = paper_of(edited(("groove: 9 x 18, cutter: 6", "groove: 14 x 18, cutter: 6")))
    guide = titled(paper, "floor guide groove")
    assert guide.passes == 3
    assert [float(f) for f in guide.fence] == pytest.approx([16.0, 20.0, 24.0])


def test_stops_of_the_stiles(paper: Paperwork) -> None:
    """From the finished foot 40 / 158 / 754 / 1385 / 2011; 12 more from the blank's foot.

    From its top: 2126 - 12 - 40 = 2074 and so on.
    """
    slots = [s for s in paper.stops if s.marks == ("S1", "S2") and s.cut.startswith("slot")]
    lows = [40, 158, 754, 1385, 2011]
    assert [float(s.from_datum.low) for s in slots] == lows
    assert [float(s.from_datum.high) for s in slots] == [low + 62 for low in lows]
    assert [float(s.from_low.low) for s in slots] == [low + 12 for low in lows]
    assert [float(s.from_high.low) for s in slots] == [2126 - 12 - low for low in lows]
    assert [float(s.from_high.high) for s in slots] == [2126 - 12 - low - 62 for low in lows]
    assert {(s.low_word, s.high_word, s.number) for s in slots} == {("foot", "top", 4)}


def test_rail_slots_stand_at_the_height_of_their_stiles(paper: Paperwork) -> None:
    heights = {float(s.from_datum.low) for s in paper.stops if s.cut == "slot, tenon in stile"}
    assert heights == {40, 158, 754, 1385, 2011}
    lock = next(s for s in paper.stops if s.marks == ("R3",))
    # 754 - 700 from the lower edge, 150 - 54 - 62 = 34 left over it.
    assert (float(lock.from_low.low), float(lock.from_high.high)) == (54, 34)
    assert lock.faces == ("left end", "right end")


def test_stop_blocks_of_the_panel_groove(paper: Paperwork) -> None:
    """Groove 238 to 726 on the blank, cutter 8: its middle goes from 242 to 722.

    Foot to the right, fed from right to left, the cutter begins at the groove's upper end:
    722 from the foot's block; it ends 2126 - 242 = 1884 from the top's.
    """
    (line,) = (s for s in paper.stops if s.cut == "panel groove")
    assert (float(line.from_datum.low), float(line.from_datum.high)) == (226, 714)
    hands = {b.hand: (float(b.right_block), float(b.left_block)) for b in line.blocks}
    assert hands == {"right": (722, 1884), "left": (1884, 722)}
    by_hand = {b.hand: set(b.names) for b in line.blocks}
    # Face on the fence, inner edge down: the left stile's foot comes to the right.
    assert by_hand == {
        "right": {"leaf A / left stile", "leaf B / left stile"},
        "left": {"leaf A / right stile", "leaf B / right stile"},
    }
    for right, left in hands.values():
        assert right + left - 2126 == 726 - 238 - 8


def test_stops_belong_to_their_setting(paper: Paperwork) -> None:
    slots = titled(paper, "loose-tenon slots")
    lines = stops_of(slots, paper.stops)
    assert sum(line.number for line in lines) == int(slots.cuts) == 40
    panel, guide = paper.grooves
    assert [line.cut for line in panel.stops] == ["panel groove"]
    assert guide.stops == ()


def test_sawn_groove_stops_where_the_blade_is_deepest(edited: Edited) -> None:
    """A dado blade's middle goes from end to end of the full depth: no half cutter is taken off."""
    job = edited(("groove by: router", "groove by: saw"))
    assert job.assembly is not None
    assert job.resolved is not None
    paper = paper_of(job)
    (line,) = (s for s in paper.stops if s.cut == "panel groove")
    assert {(float(b.right_block), float(b.left_block)) for b in line.blocks} == {
        (726, 2126 - 238),
        (2126 - 238, 726),
    }
    groove = titled(paper, "panel groove")
    assert (groove.by, groove.passes, groove.cutter) == ("saw", 1, None)


def test_lengths_are_cut_together(paper: Paperwork) -> None:
    found = {(float(s.length), s.over_points): (s.pieces, int(s.number)) for s in paper.lengths}
    assert found == {
        (2126.0, False): ((("S1", "stile with pull", 2), ("S2", "stile", 2)), 4),
        (784.5, False): (
            (
                ("R1", "top rail", 2),
                ("R2", "dividing rail", 2),
                ("R3", "lock rail", 2),
                ("R4", "bottom rail", 2),
            ),
            8,
        ),
        (784.5, True): ((("L1", "stop across", 16),), 16),
        (521.0, True): ((("L2", "stop upright", 16),), 16),
        (90.0, False): ((("T1", "loose tenon", 20),), 20),
    }


def test_every_place_along_a_piece_is_that_of_its_cut(job: Job, paper: Paperwork) -> None:
    """Each line's spans, added to one another, are the blank's whole length or width."""
    assert job.assembly is not None
    parts = {part.name: part for part in job.assembly.parts}
    for line in paper.stops:
        for name, index in line.covers:
            part = parts[name]
            cut = part.cuts[index]
            if isinstance(cut, Slot | Groove):
                assert float(line.from_low.low) == pytest.approx(float(cut.u0))
                assert float(line.from_low.high) == pytest.approx(float(cut.u1))
            whole = part.blank.width if "end" in line.faces[0] else part.blank.length
            for side in ("low", "high"):
                both = getattr(line.from_low, side) + getattr(line.from_high, side)
                assert float(both) == pytest.approx(float(whole))


def test_cautions_go_with_the_work(paper: Paperwork) -> None:
    for setting in paper.milling:
        said = " ".join(setting.cautions)
        if setting.by == "saw":
            assert "riving knife" in said
        if setting.by == "router":
            assert "against the rotation" in said
        assert said
    assert "lowered on the running cutter" in " ".join(titled(paper, "panel groove").cautions)
