"""Drawer boxes as drawn: clean sheets, balloons beside stacked cuts, tails told by both widths."""

from __future__ import annotations

import functools

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.part_sheets.balloons import RADIUS
from parametric.drawing.part_sheets.long_part import draw_long_part
from parametric.drawing.part_sheets.stacks import stacked
from parametric.drawing.part_sheets.unfolded import unfolded
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.sheet import Sheet, primitives
from parametric.trade.part_cuts import PartCuts, Said, part_cuts
from tests.cases.drawers import JOINTS, assembly_of, box_of
from tests.drawing.test_drilled_sheets import LETTERS, job, title


@functools.cache
def cuts(joint: str, kind: str = "side slides", unit: str = "mm") -> tuple[PartCuts, ...]:
    box = box_of(joint=joint, kind=kind, unit="inch" if unit == "inch" else "mm")
    return part_cuts(assembly_of(box))


def sheets(joint: str, kind: str, unit: str) -> list[Sheet]:
    every = cuts(joint, kind, unit)
    return [draw_long_part(job(unit), own, every, LETTERS, title(unit))[0] for own in every]


def own(joint: str, noun: str) -> PartCuts:
    return next(one for one in cuts(joint) if one.part.noun == noun)


def texts(sheet: Sheet) -> list[str]:
    return [p.text for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("joint", JOINTS)
def test_the_sheets_of_a_box_are_clean(joint: str, unit: str) -> None:
    for kind in ("side slides", "under slides"):
        for sheet in sheets(joint, kind, unit):
            assert audit(sheet) == ()
            assert sheet.unplaced == ()


def test_a_pin_is_told_by_both_its_widths() -> None:
    """12.5 wide at the shoulder and 10 at the end of the side, 32 from one to the next."""
    rows = own("half-blind dovetail", "drawer side").rows
    spaces = [row for row in rows if row.cut.name == "space for a pin"]
    found = [row for row in spaces if row.size("narrow") is not None][:4]
    assert [float(row.size("across") or 0) for row in found] == [32, 64, 96, 128]
    assert {(float(row.size("width") or 0), float(row.size("narrow") or 0)) for row in found} == {
        (12.5, 10.0)
    }
    assert "narrow side" in texts(sheets("half-blind dovetail", "side slides", "mm")[0])


def test_many_fingers_wear_their_balloons_in_two_columns() -> None:
    """Eight of 6.7 are more than 160 at 1:5, 32: they stand in turn at 9 and at 15.7 from the end."""
    front = own("box", "drawer box front")
    sheet = draw_long_part(job("mm"), front, cuts("box"), LETTERS, title("mm"))[0]
    numbers = {str(row.number) for row in front.rows if row.cut.name == "between fingers"}
    columns = sorted(
        {round(e.centre[0], 1) for e in rings(sheet) if e.centre[1] > sheet.paper.frame.y0}
    )
    assert len(numbers) == 16
    assert len([x for x in columns if x < columns[0] + 7]) == 2


def rings(sheet: Sheet) -> list[Circle]:
    return [
        p
        for e in sheet.elements
        for p in primitives(e)
        if isinstance(p, Circle) and p.radius == RADIUS
    ]


def test_tails_wear_their_balloons_beside_the_end() -> None:
    """Six spaces before and six behind; of the front's five sockets its drawn ends show all."""
    side = own("half-blind dovetail", "drawer side")
    found = stacked(side, unfolded(side.part), ())
    assert {end: len(rows) for end, rows in found.items()} == {"left": 6, "right": 6}
    front = own("half-blind dovetail", "drawer box front")
    assert stacked(front, unfolded(front.part), ("left", "right")) == {}


@pytest.mark.parametrize(
    ("joint", "noun", "ends"),
    [
        ("dowel", "drawer side", "open"),
        ("rebate", "drawer side", "open"),
        ("rebate", "drawer box front", "open"),
        ("box", "drawer side", "open"),
        ("half-blind dovetail", "drawer box front", "open"),
        ("through dovetail", "drawer side", "squared"),
        ("box", "drawer box front", "squared"),
        ("half-blind dovetail", "drawer side", "squared one end, one open"),
    ],
)
def test_a_groove_is_open_where_the_wood_is_gone(joint: str, noun: str, ends: str) -> None:
    """Into a rebate, a socket or between fingers it runs out; in a tail or a finger it stops."""
    row = next(r for r in own(joint, noun).rows if r.cut.name == "bottom groove")
    degree = next(d for d in row.degrees if d.quantity == "ends")
    assert (degree.words if isinstance(degree, Said) else degree.after) == ends
