"""Bored rows in the lists: one row of the list, one setting, their image in a mirror."""

from __future__ import annotations

import dataclasses

import pytest

from parametric.model import Blank, Drilled, Face, Part, Vector, face_point
from parametric.trade.machine_work import machine_work
from parametric.trade.milling import milling_list
from parametric.trade.part_cuts import CutRow, Said, Size, part_cuts
from parametric.trade.twins import Way, alike_both_sides, mirrored, mirrors
from tests.verify.bored import assembly, bores, side

BLANK = Blank(length=640, width=310, thickness=18)
WAYS: tuple[Way, ...] = ("length", "width", "thickness")
FACES: tuple[Face, ...] = ("low end", "high edge", "low face", "high face")


def row(name: str, holes: int) -> CutRow:
    (own,) = (one for one in part_cuts(assembly()) if one.part.mark == "C1")
    return next(
        r
        for r in own.rows
        if r.cut.name == name and isinstance(r.cut, Drilled) and r.cut.count == holes
    )


def said(found: CutRow) -> dict[str, object]:
    return {
        d.quantity: d.words if isinstance(d, Said) else round(float(d.figure), 6)
        for d in found.degrees
    }


def test_a_row_is_one_row_of_the_list() -> None:
    assert said(row("pin holes", 12)) == {
        "first at": 101,
        "holes": "12",
        "apart": 32,
        "across": 37,
        "width": 5,
        "deep": 13,
    }


def test_a_row_in_an_edge_is_measured_from_the_face() -> None:
    """V 10 above the back is 18 - 10 = 8 below the face."""
    assert said(row("dowel holes", 5))["across"] == 8


def test_one_hole_has_no_pitch_and_one_right_through_no_depth() -> None:
    found = said(row("cable hole", 1))
    assert found == {"first at": 540, "across": 200, "width": 22, "deep": "through"}


def test_the_narrow_part_of_a_step_says_where_it_begins() -> None:
    found = said(row("screw shank", 3))
    assert (found["deep"], found["begins"]) == ("through", 6)


def test_every_size_of_a_row_has_a_name_of_its_own() -> None:
    names = [
        d.figure.name
        for own in part_cuts(assembly())
        for r in own.rows
        for d in r.degrees
        if isinstance(d, Size)
    ]
    assert len(names) == len(set(names))


def middles(cut: Drilled, way: Way | None = None) -> set[Vector]:
    """The middles of the holes' mouths in the part, or their images by arithmetic."""
    size = (BLANK.length, BLANK.width, BLANK.thickness)
    points = [face_point(cut.face, BLANK, u, v, 0.0) for u, v in cut.places]
    if way is not None:
        axis = WAYS.index(way)
        points = [tuple(size[i] - p if i == axis else p for i, p in enumerate(q)) for q in points]  # type: ignore[misc]
    return {(round(x, 9), round(y, 9), round(z, 9)) for x, y, z in points}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("along", ["u", "v"])
def test_a_row_in_a_mirror(way: Way, face: Face, along: str) -> None:
    """Its holes are the images of its holes, and it still goes up from its first."""
    pitch = 3.0 if along == "v" and "face" not in face else 32.0
    cut = bores("row", face, (41, 5), (4, 9), count=4, pitch=pitch, along=along)  # type: ignore[arg-type]
    image = mirrored(cut, BLANK, way)
    assert isinstance(image, Drilled)
    assert middles(image) == middles(cut, way)
    assert (image.pitch, image.count, image.depth) == (cut.pitch, cut.count, cut.depth)
    assert mirrored(image, BLANK, way) == cut


def test_a_left_and_a_right_side_are_told_as_mirrors() -> None:
    one = side()
    cuts = tuple(mirrored(cut, one.blank, "length") for cut in one.cuts)
    assert None not in cuts
    other = dataclasses.replace(one, mark="C9", cuts=cuts)  # type: ignore[arg-type]
    assert mirrors(one, other)
    assert not mirrors(one, one)


def piece(*cuts: Drilled) -> Part:
    return dataclasses.replace(side(), cuts=cuts)


def test_holes_right_through_are_alike_on_both_sides() -> None:
    through = bores("shank", "low face", (100, 40), (5, 18))
    assert alike_both_sides(piece(through))
    assert not alike_both_sides(piece(dataclasses.replace(through, depth=17.0)))


def test_holes_at_one_distance_from_the_edge_share_a_setting() -> None:
    """12 pins at 37 are one setting of 12 strokes; 11 at 261 another."""
    settings = [s for s in milling_list(assembly()) if s.title == "pin holes"]
    assert [(float(s.fence[0]), int(s.cuts)) for s in settings] == [(37, 12), (261, 11)]
    assert {s.kind for s in settings} == {"bore"}


def test_a_row_across_bears_on_the_nearer_end() -> None:
    """The three screws stand 620 from the low end of 640: 20 from the high one."""
    head = next(cut for cut in side().cuts if cut.name == "screw head")
    ((work, _, _),) = machine_work(head, side())
    assert (work.across, work.fence_from) == (20, "high end")
