"""Nothing overlaps, in any state; what should touch touches; and a planted clash is found."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from parametric.model import Assembly, Group, Part, Placement, State
from tests.solids.models import HAND_MADE, NAMES, READING_ROOM, assembly_of, solids_of
from tests.solids.pair import made, pair

pytestmark = pytest.mark.kernel

SHUT = State(name="shut", open={})


def moved(assembly: Assembly, name: str, by: tuple[float, float, float]) -> Assembly:
    """The assembly with one part shifted in its group's frame."""

    def shift(part: Part) -> Part:
        if part.name != name:
            return part
        x, y, z = part.placement.origin
        origin = (x + by[0], y + by[1], z + by[2])
        return replace(part, placement=replace(part.placement, origin=origin))

    groups = tuple(
        replace(group, parts=tuple(map(shift, group.parts))) for group in assembly.groups
    )
    return replace(assembly, groups=groups)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_overlaps_in_any_state(name: str) -> None:
    from parametric.solids.clash import clashes_in_all_states

    assembly = assembly_of(name)
    assert len(assembly.states) >= 3
    assert clashes_in_all_states(assembly, solids_of(name)) == ()


def test_a_tenon_too_far_in_is_found_with_the_wood_it_takes() -> None:
    """The slot is 24 deep and the tenon reaches 22 in: 5 to the left puts it 3 into the stile.

    Section 30 x 10 with round edges: 20 * 10 + pi * 5^2 = 278.54 mm2; times 3.
    """
    from parametric.solids.clash import clashes

    assembly = moved(pair(), "leaf A / bottom rail / left tenon", (-5.0, 0.0, 0.0))
    (found,) = clashes(assembly, SHUT, solids_of(HAND_MADE))
    assert {found.a, found.b} == {"leaf A / left stile", "leaf A / bottom rail / left tenon"}
    assert found.volume == pytest.approx(3 * (20 * 10 + math.pi * 25), rel=1e-6)


def test_leaves_that_meet_only_on_the_way_are_found_in_that_state() -> None:
    """Leaf A's pull, brought 13.5 out of the back of its stile, is in leaf B's way at half open.

    Turned through the leaf it would stand from 40 to 53.5 back; leaf B begins 52 back, so the
    body (12 of it below the flange) goes 1.5 into leaf B wherever they pass each other.
    """
    from parametric.solids.clash import clashes_in_all_states

    assembly = moved(pair(), "leaf A / pull", (0.0, 40.0, 0.0))
    found = clashes_in_all_states(assembly, solids_of(HAND_MADE))
    assert {(c.a, c.state) for c in found} == {("leaf A / pull", "half"), ("leaf A / pull", "open")}
    assert all(c.b.startswith("leaf B / ") for c in found)


def test_turned_parts_and_small_bites_are_measured_exactly() -> None:
    """A 20 cube on its edge, its lowest edge 0.1 into a slab: a prism 0.1 high, 0.2 wide, 20 long."""
    from parametric.solids.clash import clashes
    from parametric.solids.solid_set import build_solids

    half = math.sqrt(0.5)
    slab = made("slab", "X1", "slab", (100.0, 100.0, 10.0))
    cube = replace(
        made("cube", "X2", "cube", (20.0, 20.0, 20.0)),
        placement=Placement(origin=(40.0, 50.0, 9.9), x=(1.0, 0.0, 0.0), y=(0.0, half, half)),
    )
    both = Assembly(
        name="two blocks",
        groups=(Group(name="blocks", placement=Placement(), parts=(slab, cube)),),
        states=(SHUT,),
    )
    solids = build_solids(both.parts)
    (found,) = clashes(both, SHUT, solids)
    assert found.volume == pytest.approx(0.1 * 0.2 / 2 * 20, rel=1e-6)
    assert clashes(moved(both, "cube", (0.0, 0.0, 0.1 + 1e-7)), SHUT, solids) == ()


def test_overlap_agrees_with_a_second_geometry_kernel() -> None:
    """The shared wood of a displaced panel and its frame, by mesh booleans (manifold3d)."""
    import trimesh

    from parametric.solids.clash import clashes, standing
    from parametric.solids.mesh import mesh_of

    assembly = moved(pair(), "leaf A / panel", (4.0, 0.3, 2.0))
    solids = solids_of(HAND_MADE)
    found = {frozenset((c.a, c.b)): c.volume for c in clashes(assembly, SHUT, solids)}
    assert len(found) >= 3

    def mesh(name: str) -> trimesh.Trimesh:
        piece = next(p for p in standing(assembly, SHUT) if p.part.name == name)
        triangles = mesh_of(solids.of(piece.part))
        corners = [piece.placement.point(tuple(c)) for c in triangles.corners]
        return trimesh.Trimesh(corners, triangles.triangles)

    for names, volume in found.items():
        a, b = (mesh(name) for name in sorted(names))
        shared = trimesh.boolean.intersection([a, b], engine="manifold")
        assert shared.volume == pytest.approx(volume, rel=1e-3, abs=0.01), names


def test_glass_touches_only_what_holds_it() -> None:
    from parametric.solids.clash import touching

    held = touching(pair(), SHUT, solids_of(HAND_MADE), "leaf A / glass")
    assert held == tuple(
        f"leaf A / {side} {where} stop"
        for side in ("front", "back")
        for where in ("foot", "head", "left", "right")
    )


def test_the_reading_rooms_glass_touches_only_tape_and_stops() -> None:
    from parametric.solids.clash import touching

    assembly, solids = assembly_of(READING_ROOM), solids_of(READING_ROOM)
    panes = [part.name for part in assembly.parts if part.material.look == "glass"]
    assert len(panes) == 4
    by_name = {part.name: part for part in assembly.parts}
    for pane in panes:
        held = touching(assembly, SHUT, solids, pane)
        assert len(held) >= 2
        assert all(
            by_name[name].material.look == "tape" or "stop" in by_name[name].noun for name in held
        )


def test_gaps_and_mating_faces() -> None:
    """Distances and contact areas of the hand-made pair, from its sizes.

    Rail end on stile: 80 * 40, less the slot (22 * 10 + pi 5^2) and the groove (8.2 * 10).
    Foot stop on glass: it covers 8 of the glass, 276 long at the glass's edge and 260 at its
    own sight edge, for the mitres. Tenon in slot: two flat sides 20 wide, 22 deep.
    """
    from parametric.solids.clash import Standing, contact_area, gap, standing

    solids = solids_of(HAND_MADE)
    stands = {piece.part.name: piece for piece in standing(pair(), SHUT)}

    def two(a: str, b: str) -> tuple[Standing, Standing]:
        return stands[f"leaf A / {a}"], stands[f"leaf A / {b}"]

    slot = 22 * 10 + math.pi * 25
    end = contact_area(*two("left stile", "bottom rail"), solids)
    assert end == pytest.approx(80 * 40 - slot - 82, rel=1e-9)
    assert contact_area(*two("glass", "front foot stop"), solids) == pytest.approx(
        (276 + 260) / 2 * 8, rel=1e-9
    )
    tenon = contact_area(*two("left stile", "bottom rail / left tenon"), solids)
    assert tenon == pytest.approx(2 * 20 * 22, rel=1e-9)
    assert contact_area(*two("panel", "left stile"), solids) == 0.0

    assert gap(*two("panel", "left stile"), solids) == pytest.approx((8.2 - 8) / 2, abs=1e-9)
    assert gap(*two("glass", "left stile"), solids) == pytest.approx(2.0, abs=1e-9)
    assert gap(*two("left stile", "bottom rail"), solids) == 0.0
    passing = gap(stands["leaf A / right stile"], stands["leaf B / left stile"], solids)
    assert passing == pytest.approx(52 - 40, abs=1e-9)


def test_a_run_of_cases_is_looked_through_from_left_to_right() -> None:
    """Three cases in a row, each half a board into the next: found as by holding all against all.

    A side is 1400 x 560 x 18 with a groove 8 x 8 along it in its inner face. Half a board, 9, of
    one side lies in the other, two outer faces: 1400 * 560 * 9 mm3.
    """
    from itertools import combinations

    from parametric.solids.clash import clashes, common_volume, standing
    from parametric.solids.placing import placed
    from parametric.solids.solid_set import build_solids
    from tests.solids.run_of_cases import run_of_cases

    run = run_of_cases(3)
    closer = []
    for group in run.groups:
        number = int(group.name.split()[1])
        x, y, z = group.placement.origin
        near = replace(group.placement, origin=(x - 9.0 * number, y, z))
        closer.append(replace(group, placement=near))
    pushed = replace(run, groups=tuple(closer))
    solids = build_solids(pushed.parts)
    found = clashes(pushed, SHUT, solids)
    stands = standing(pushed, SHUT)
    plainly = [
        (a.part.name, b.part.name)
        for a, b in combinations(stands, 2)
        if all(a.box[0][i] < b.box[1][i] and b.box[0][i] < a.box[1][i] for i in range(3))
        and common_volume(
            placed(solids.of(a.part), a.placement), placed(solids.of(b.part), b.placement)
        )
        > 1e-3
    ]
    assert [(clash.a, clash.b) for clash in found] == plainly
    sides = [c.volume for c in found if "right side" in c.a and "left side" in c.b]
    assert sides == pytest.approx([1400 * 560 * 9] * 2, rel=1e-9)
    assert clashes(run, SHUT, build_solids(run.parts)) == ()
