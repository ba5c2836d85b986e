"""Saw, tenons, glue-up, finish: what changes when the design or the house does."""

from __future__ import annotations

import pytest

from parametric.trade.paperwork import Paperwork
from tests.trade.conftest import Edited, paper_of


def test_blade_leans_away_from_the_fence(paper: Paperwork, edited: Edited) -> None:
    (left,) = paper.panel_saw
    assert (left.tilts_to, left.fence_side) == ("left", "right")
    (right,) = paper_of(edited(("finish: {", "saw: {tilts: right}\nfinish: {"))).panel_saw
    assert (right.tilts_to, right.fence_side) == ("right", "left")
    for set_up in (left, right):
        assert "away from the fence" in set_up.steps[0]
        assert set_up.edges[0].edges == "end grain"
        said = " ".join(set_up.cautions)
        for word in ("tall fence", "comb", "push block", "riving knife", "dust"):
            assert word in said


def test_tongue_and_rebate_make_the_section(paper: Paperwork) -> None:
    """Face down 15, back down 5: 28 - 15 - 5 = 8 is left."""
    (set_up,) = paper.panel_saw
    face, back = set_up.tongue
    assert (face.down, back.down) == ("face", "back")
    # 28 - 15 = 13 = 5 + 8 over the face side; 13 - 5 = 8, the tongue, over both.
    assert (float(face.left), float(back.left)) == (28 - 15, 8)


def test_fillet_deeper_than_the_kerf_is_scored_first(edited: Edited) -> None:
    (shallow,) = paper_of(edited()).panel_saw
    assert not any("score" in step for step in shallow.steps)
    deep = paper_of(edited(("fillet: 1.5", "fillet: 4.5")))
    assert any("score the field 4.5 deep" in step for step in deep.panel_saw[0].steps)


def test_panel_without_back_rebate_has_one_setting_for_its_tongue(edited: Edited) -> None:
    paper = paper_of(
        edited(("back rebate: 5", "back rebate: 0"), ("thickness: 28", "thickness: 24"))
    )
    (set_up,) = paper.panel_saw
    assert [(one.down, float(one.blade_height)) for one in set_up.tongue] == [("face", 16.0)]


def test_caul_lets_clamps_stand_wider(edited: Edited) -> None:
    """2 x (134.9 + 50) = 369.8; ceil(510 / 369.8) + 1 = 3."""
    paper = paper_of(edited(("finish: {", "clamps: {caul: 50}\nfinish: {")))
    (glued,) = paper.panel_glue_ups
    assert float(glued.spacing) == pytest.approx(369.84, abs=0.005)
    assert int(glued.clamps) == 3


def test_too_few_clamps_are_said(edited: Edited, paper: Paperwork) -> None:
    assert not any("shop owns" in c for g in paper.leaf_glue_ups for c in g.cautions)
    few = paper_of(edited(("finish: {", "clamps: {owned: 4}\nfinish: {")))
    assert "5 clamps are needed and the shop owns 4." in few.leaf_glue_ups[0].cautions
    assert not any("shop owns" in c for c in few.panel_glue_ups[0].cautions)


def test_panel_is_never_glued(paper: Paperwork) -> None:
    assert any("no glue in its grooves" in step for step in paper.leaf_glue_ups[0].steps)
    # 15 less (803.53 - 784.5) / 2 in each stile is 5.5; less (485 - 460) / 2 in each rail 2.5.
    assert any(
        "of its tongue shows, beside each stile and at each rail, 5.5 and 2.5" in step
        for step in paper.leaf_glue_ups[0].steps
    )


@pytest.mark.parametrize(
    ("kind", "products", "rags"),
    [
        ("paint", ["primer", "top coat"], False),
        ("varnish", ["varnish"], False),
        ("oil", ["oil"], True),
        ("none", [], False),
    ],
)
def test_finish_by_kind(edited: Edited, kind: str, products: list[str], rags: bool) -> None:
    """Oil alone sets rags alight, and only paint has a primer."""
    order = paper_of(edited(("finish: {kind: paint", f"finish: {{kind: {kind}"))).finish
    assert [coat.product for coat in order.coats] == products
    assert any("Rags" in caution for caution in order.cautions) == rags
    assert float(order.area) == pytest.approx(5.8444, abs=5e-5)


def test_marked_singly_governs_by_all_errors(edited: Edited) -> None:
    stack = paper_of(edited(("finish: {", "accuracy: {marked: singly}\nfinish: {"))).alignment
    assert float(stack.governing) == float(stack.likely)


def test_milling_list_and_saw_set_up_agree(paper: Paperwork) -> None:
    """One is made from the part's cuts, the other from the panel's numbers."""
    (set_up,) = paper.panel_saw
    depths = {s.kind: float(s.depth) for s in paper.milling if s.by == "saw" and s.depth}
    face, back = set_up.tongue
    assert depths["bevel"] == float(set_up.blade_height)
    assert depths["tongue"] == float(face.blade_height)
    assert depths["back rebate"] == float(back.blade_height)


def test_strips_hold_every_tenon_and_the_spare(paper: Paperwork) -> None:
    """20 x (90 + 25) = 2300 ordered: 2 strips of 1150; 1150 / (90 + 3.2) = 12 tenons each."""
    (tenon,) = paper.loose_tenons
    assert (int(tenon.strips), float(tenon.strip_length)) == (2, 1150)
    assert int(tenon.strips) * (1150 // (90 + 3.2)) >= int(tenon.tenons) + int(tenon.spare_tenons)
    assert paper.milling[0].code == "M1"
    assert paper.milling[0].kind == "edges"


def test_panel_boards_are_planed_thicker_than_the_panel(edited: Edited, paper: Paperwork) -> None:
    """28 + 2; with 6 more than the panel 34 no longer planes from 6/4 (33.3): 8/4."""
    (glued,) = paper.panel_glue_ups
    assert (float(glued.planed), float(glued.thickness)) == (30, 28)
    lots = {float(lot.thickness): lot.sawn_class for lot in paper.timber.lots}
    assert lots[30.0] == "6/4"
    thicker = paper_of(edited(("track:", "blanks: {panel planing: 6}\ntrack:")))
    (glued,) = thicker.panel_glue_ups
    assert float(glued.planed) == 34
    lots = {float(lot.thickness): lot.sawn_class for lot in thicker.timber.lots}
    assert lots[34.0] == "8/4"


def test_a_bare_panel_is_gauged_with_its_groove(edited: Edited) -> None:
    """Without a finish the groove itself goes: 8.2; with one, less a coat on either side."""
    bare = paper_of(edited(("finish: {kind: paint", "finish: {kind: none")))
    (saw,) = bare.panel_saw
    assert float(next(g.go for g in saw.gauges if g.what == "tongue")) == pytest.approx(8.2)
