"""Drawer boxes as solids: of their volume, within their blanks, nothing overlaps, joints meet."""

from __future__ import annotations

import math

import pytest

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_written import DRAWER_KINDS
from parametric.model import Drilled, Groove, Part, Shaped, removed_volume
from parametric.parts.drawer import drawer_parts
from tests.cases.drawers import JOINTS, SHUT, assembly_of, box_of, part_of

FRAME = ("left side", "right side", "box front", "box back")


def frame(box: DrawerBox) -> list[Part]:
    return [part_of(box, name) for name in FRAME]


def loose(part: Part) -> float:
    """What its grooves, holes and notches take: all that no other board fills."""
    return sum(
        float(removed_volume(cut, part.blank))
        for cut in part.cuts
        if isinstance(cut, (Groove, Drilled))
        or (isinstance(cut, Shaped) and cut.name == "notch for a slide")
    )


@pytest.mark.parametrize("high", [90, 100, 123, 160, 240])
@pytest.mark.parametrize("kind", DRAWER_KINDS)
@pytest.mark.parametrize("joint", JOINTS)
def test_what_a_joint_takes_of_one_board_another_fills(joint: str, kind: str, high: float) -> None:
    """Four boards and what is cut in them besides are one ring: outside less inside, times height."""
    box = box_of(joint=joint, kind=kind, height=high, high=300, ends=18)
    wide, long = float(box.width), float(box.length)
    inside = float(box.between) * (long - 2 * 18)
    boards = sum(part.volume + loose(part) for part in frame(box))
    assert boards == pytest.approx((wide * long - inside) * high, rel=1e-9)


@pytest.mark.kernel
@pytest.mark.parametrize("kind", DRAWER_KINDS)
@pytest.mark.parametrize("joint", JOINTS)
def test_a_box_goes_together(joint: str, kind: str) -> None:
    """`build_solids` holds every solid to its part's volume, and to one valid closed body."""
    from parametric.solids.clash import clashes, touching
    from parametric.solids.solid_set import build_solids

    assembly = assembly_of(box_of(joint=joint, kind=kind))
    solids = build_solids(assembly.parts)
    assert clashes(assembly, SHUT, solids) == ()
    for end in ("box front", "box back"):
        near = touching(assembly, SHUT, solids, f"leaf E / drawer / {end}")
        assert {"leaf E / drawer / left side", "leaf E / drawer / right side"} <= set(near)
    bottom = "leaf E / drawer / bottom"
    boards = {f"leaf E / drawer / {name}" for name in FRAME}
    assert set(touching(assembly, SHUT, solids, bottom)) == boards


@pytest.mark.kernel
@pytest.mark.parametrize(("high", "deep", "ends"), [(60, 12, 12), (90, 7, 18), (241, 7, 20)])
@pytest.mark.parametrize("joint", JOINTS)
def test_low_and_high_boxes_go_together(joint: str, high: int, deep: int, ends: int) -> None:
    from parametric.solids.clash import clashes
    from parametric.solids.solid_set import build_solids

    box = box_of(
        joint=joint, height=high, high=300, ends=ends, bottom=6, bottom_groove=min(deep, 6)
    )
    assembly = assembly_of(box)
    solids = build_solids(assembly.parts)
    assert clashes(assembly, SHUT, solids) == ()


def contact(box: DrawerBox, one: str, other: str) -> float:
    from parametric.solids.clash import contact_area, standing
    from parametric.solids.solid_set import build_solids

    assembly = assembly_of(box)
    solids = build_solids(assembly.parts)
    found = {piece.part.name.rpartition(" / ")[2]: piece for piece in standing(assembly, SHUT)}
    return contact_area(found[one], found[other], solids)


TAIL_ROOT, TAIL_TIP, PIN_ROOT = 32 - 13.75, 22.0, 13.75


@pytest.mark.kernel
def test_through_tails_touch_all_round() -> None:
    """Five tails of 15 in boards of 15, 1 in 8: ten flanks of hypot(15, 1.875) x 15; shoulders on

    five pins of 13.75 x 15; the ends of the front in five sockets, each a trapezium of 18.25 and 22
    over 15, less what the bottom's groove takes of the side there: 7 long, 9 wide.
    """
    flanks = 10 * math.hypot(15, 1.875) * 15
    shoulders = 5 * PIN_ROOT * 15
    floors = 5 * 15 * (TAIL_ROOT + TAIL_TIP) / 2 - 7 * 9
    found = contact(box_of(joint="through dovetail"), "left side", "box front")
    assert found == pytest.approx(flanks + shoulders + floors, rel=1e-6)


@pytest.mark.kernel
def test_half_blind_tails_also_touch_the_lap() -> None:
    """Tails 10 long: flanks hypot(10, 1.25) x 15; pins 12.5; sockets of 19.5 and 22 over 10, less

    the groove, which runs out through the tail: 10 x 9 of the floor, and 7 x 9 of the 22 x 15 that
    the lowest tail has against the lap.
    """
    flanks = 10 * math.hypot(10, 1.25) * 15
    shoulders = 5 * 12.5 * 15
    floors = 5 * 10 * (19.5 + 22) / 2 - 10 * 9
    laps = 5 * 22 * 15 - 7 * 9
    found = contact(box_of(joint="half-blind dovetail"), "right side", "box front")
    assert found == pytest.approx(flanks + shoulders + floors + laps, rel=1e-6)


@pytest.mark.kernel
def test_fingers_touch_on_both_sides_and_at_their_ends() -> None:
    """15 fingers: 14 flanks of 15 x 15; 7 shoulders of the side and 8 of the front, 160/15 x 15.

    The front's groove stops 7 past the inside, in a finger of its own: the shoulder of the side
    that this finger meets has a mouth of 7 x 9 in it.
    """
    whole = 14 * 15 * 15 + (7 + 8) * 160 / 15 * 15
    found = contact(box_of(joint="box"), "left side", "box front")
    assert found == pytest.approx(whole - 7 * 9, rel=1e-6)


@pytest.mark.kernel
def test_a_rebate_touches_on_two_sides() -> None:
    """160 x 15 at the end of the front, 160 x 7.5 behind it; the front's groove, 9 wide, 7 deep,

    comes out through its end, and what is behind it has 9 x 7.5 of mouth.
    """
    found = contact(box_of(joint="rebate"), "left side", "box back")
    assert found == pytest.approx(160 * 15 + 160 * 7.5 - 9 * 7 - 9 * 7.5, rel=1e-6)


def test_sides_are_one_part_turned_about_where_both_ends_are_alike() -> None:
    marks = {p.name.rpartition(" / ")[2]: p.mark for p in assembly_of(box_of()).parts}
    assert marks["left side"] == marks["right side"]
    assert marks["box front"] == marks["box back"]
    blind = assembly_of(box_of(joint="half-blind dovetail")).parts
    marks = {p.name.rpartition(" / ")[2]: p.mark for p in blind}
    assert len({marks[name] for name in FRAME}) == 4


def test_the_box_stands_where_it_is_put() -> None:
    """Its corner at (100, 20, 300), turned a quarter to the left: what was right is back."""
    from parametric.model import Placement

    at = Placement(origin=(100.0, 20.0, 300.0), x=(0.0, 1.0, 0.0), y=(-1.0, 0.0, 0.0))
    box = box_of()
    for here, there in zip(drawer_parts(box), drawer_parts(box, at=at), strict=True):
        point = (1.0, 2.0, 3.0)
        x, y, z = here.placement.point(point)
        assert there.placement.point(point) == pytest.approx((100 - y, 20 + x, 300 + z))


def test_a_groove_without_a_cutter_that_fits_is_cut_by_hand() -> None:
    thin = part_of(box_of(joint="through dovetail", bottom=5), "left side")
    groove = next(cut for cut in thin.cuts if isinstance(cut, Groove))
    assert (groove.making.by, groove.squared) == ("bench", True)
    routed = part_of(box_of(joint="through dovetail"), "left side")
    groove = next(cut for cut in routed.cuts if isinstance(cut, Groove))
    assert (groove.making.by, groove.making.cutter) == ("router", 8.0)


def seen_from_the_front(box: DrawerBox) -> float:
    """The area of the box's faces in the plane of its front, mm2."""
    from parametric.solids.clash import standing
    from parametric.solids.placing import placed
    from parametric.solids.solid_set import build_solids

    assembly = assembly_of(box)
    solids = build_solids(assembly.parts)
    return sum(
        _facing_front(placed(solids.of(piece.part), piece.placement))
        for piece in standing(assembly, SHUT)
    )


def _facing_front(solid: object) -> float:
    """The area of the faces that lie in the plane of the box's front, y = 0, mm2."""
    from OCP.BRepAdaptor import BRepAdaptor_Surface
    from OCP.BRepGProp import BRepGProp
    from OCP.GeomAbs import GeomAbs_Plane
    from OCP.GProp import GProp_GProps
    from OCP.TopAbs import TopAbs_FACE
    from OCP.TopExp import TopExp_Explorer
    from OCP.TopoDS import TopoDS

    area = 0.0
    faces = TopExp_Explorer(solid, TopAbs_FACE)
    while faces.More():
        face = TopoDS.Face_s(faces.Current())
        surface = BRepAdaptor_Surface(face)
        if surface.GetType() == GeomAbs_Plane:
            plane = surface.Plane()
            if abs(plane.Location().Y()) < 1e-6 and abs(plane.Axis().Direction().Y()) > 1 - 1e-9:
                properties = GProp_GProps()
                BRepGProp.SurfaceProperties_s(face, properties)
                area += float(properties.Mass())
        faces.Next()
    return area


@pytest.mark.kernel
@pytest.mark.parametrize("joint", JOINTS)
def test_no_groove_shows_at_the_front_of_a_drawer_behind_a_door(joint: str) -> None:
    """Whatever the joint, the front face of the box is whole: 727.6 x 160."""
    seen = seen_from_the_front(box_of(joint=joint, planted=False))
    assert seen == pytest.approx(727.6 * 160, rel=1e-6)


@pytest.mark.kernel
def test_under_a_planted_front_a_butted_sides_groove_runs_out() -> None:
    """Two grooves of 9 x 7 are open in the front of the box; the drawer's own front covers them."""
    seen = seen_from_the_front(box_of(joint="dowel"))
    assert seen == pytest.approx(727.6 * 160 - 2 * 9 * 7, rel=1e-6)
