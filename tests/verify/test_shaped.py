"""Shaped cuts read back: sound files pass, and a wrong outline is found by its shape alone."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable

import pytest

from parametric.cnc.operations import Operation
from parametric.cnc.setups import set_ups
from parametric.model import Assembly, Blank, Cut, Part, Shaped
from parametric.outlines import Outline, Vertex, turned_over, turned_upside_down
from parametric.pack.verifying.boxes import finished_box
from parametric.pack.verifying.fronts import leaf_fronts
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from parametric.pack.verifying.rebuilt import check_cutting
from tests.verify.arched import (
    LEANING,
    LONG,
    THICK,
    UNDER,
    WAVE,
    WIDE,
    assembly,
    between,
    height,
    known,
)
from tests.verify.lopsided import EARLY, LATE, cutting, written

Files = dict[str, bytes]
ARCH, REBATE = "R1-top-rail-high-face.dxf", "R1-top-rail-low-face.dxf"
FRONT, LEAF_BACK, EDGE = "leaf-A-front.dxf", "leaf-A-back.dxf", "S1-post-high-edge.dxf"


def faults(files: Files) -> tuple[str, ...]:
    return check_cutting(files, known()).faults


def one(found: tuple[str, ...], *words: str) -> None:
    """Some fault says all these words."""
    assert any(all(word in fault for word in words) for fault in found), found


def redrawn(file: str, change: Callable[[Operation], Operation]) -> Files:
    """The files of the leaf, one of them with its operations changed and written anew."""
    set_up = next(s for s in set_ups(assembly()) if s.file == file)
    changed = tuple(change(op) for op in set_up.operations)
    return {
        **cutting(assembly()),
        f"cnc/{file}": written(dataclasses.replace(set_up, operations=changed)),
    }


def reshaped(file: str, change: Callable[[Outline], Outline]) -> Files:
    return redrawn(file, lambda op: dataclasses.replace(op, outline=change(op.outline)))


def altered(name: str, change: Callable[[Shaped], Cut]) -> Assembly:
    """The leaf with one of its shaped cuts made otherwise."""

    def of(part: Part) -> Part:
        cuts = tuple(
            change(c) if c.name == name and isinstance(c, Shaped) else c for c in part.cuts
        )
        return dataclasses.replace(part, cuts=cuts)

    whole = assembly()
    groups = tuple(
        dataclasses.replace(group, parts=tuple(of(part) for part in group.parts))
        for group in whole.groups
    )
    return dataclasses.replace(whole, groups=groups)


def test_sound_files_pass() -> None:
    verdict = check_cutting(cutting(assembly()), known())
    assert verdict.faults == ()
    # arch and rebate of the rail, the wave of the post's edge, both sides of the glued leaf
    assert {name for name in cutting(assembly()) if name.endswith(".dxf")} == {
        f"cnc/{name}" for name in (ARCH, REBATE, EDGE, FRONT, LEAF_BACK)
    }
    assert verdict.looked_at["outlines"] == 5


def test_a_flatter_arch_between_the_same_ends() -> None:
    one(
        faults(reshaped(ARCH, lambda o: tuple(v._replace(bulge=v.bulge * 0.9) for v in o))),
        ARCH,
        "arched underside of leaf A / top rail",
        "mm2 of outline",
    )


def test_an_arch_turned_end_for_end() -> None:
    """The same box and the same area; its middle is at the other end."""
    one(faults(reshaped(ARCH, lambda o: turned_over(o, across=LONG))), ARCH, "at the wrong end")


def test_a_back_drawn_as_the_front_sees_it() -> None:
    """The rebate is cut from the back: not turned over, it lies along the wrong edge."""
    one(
        faults(reshaped(REBATE, lambda o: turned_upside_down(o, up=110.0))),
        REBATE,
        "glass rebate of leaf A / top rail",
        "lies at",
    )


def test_a_shape_with_the_same_box_area_and_middle() -> None:
    """A housing that leans the other way differs in nothing but where its corners are."""
    box = (min(v.x for v in LEANING), max(v.x for v in LEANING))
    over = reshaped(FRONT, lambda o: turned_upside_down(o, up=2 * 120.0 - 2 * 9.0))
    assert box == (90, 150)
    found = faults(over)
    one(found, FRONT, "housing of leaf A / post", "is another shape")
    assert len(found) == 1


def test_an_arc_drawn_as_chords() -> None:
    def chords(outline: Outline) -> Outline:
        made: list[Vertex] = []
        for vertex, following in zip(outline, (*outline[1:], outline[0]), strict=True):
            made.append(vertex._replace(bulge=0.0))
            if vertex.bulge == 1.0:  # the half turn as two chords
                middle = ((vertex.x + following.x) / 2, (vertex.y + following.y) / 2)
                half = (following.y - vertex.y) / 2
                made.append(Vertex(middle[0] + half, middle[1]))
        return tuple(made)

    one(faults(reshaped(EDGE, chords)), EDGE, "wave of leaf A / post", "mm2 of outline")


@pytest.mark.parametrize(
    ("moved", "by"),
    [({0}, (0.0, -0.2)), ({4, 5}, (0.2, 0.0)), ({1, 2}, (0.1, 0.0))],
    ids=["one corner", "a side", "the knoll"],
)
def test_corners_out_of_place(moved: set[int], by: tuple[float, float]) -> None:
    def shift(outline: Outline) -> Outline:
        return tuple(
            v._replace(x=v.x + by[0], y=v.y + by[1]) if i in moved else v
            for i, v in enumerate(outline)
        )

    one(faults(reshaped(LEAF_BACK, shift)), LEAF_BACK, "trough of leaf A / post")


def test_a_cutter_too_large_between_two_arcs() -> None:
    found = faults(redrawn(REBATE, lambda op: dataclasses.replace(op, cutter=10.0)))
    one(found, REBATE, "a cutter of 10 does not go where 9.5 fits")


def test_a_cutter_larger_than_an_open_shape_is_wide() -> None:
    """The arch is open below: what does not go between its box does go past its edge."""
    found = faults(redrawn(ARCH, lambda op: dataclasses.replace(op, cutter=70.0)))
    assert not any("does not go" in fault for fault in found)


BENCH = "cnc/saw-and-bench-work.csv"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        # a shoulder a tenth longer, a tongue a tenth deeper
        ("take out 0 to 9 along, 0 to 8 across", "take out 0 to 9.1 along, 0 to 8 across", "9.1"),
        ("8 to 14 across, 13 deep", "8 to 14 across, 13.1 deep", "13.1"),
        # the bevel leans otherwise; the curve of the bar's end goes the other way; its radius
        ("2.358; 0", "3.358; 0", "3.358"),
        ("330; 14 hollow 0.335", "330; 14 bulging 0.335", "0.335"),
        ("(r 16.938)", "(r 61.938)", "61.938"),
    ],
)
def test_a_number_said_wrong(old: str, new: str, says: str) -> None:
    files = cutting(assembly())
    text = files[BENCH].decode()
    assert old in text, text
    found = faults({**files, BENCH: text.replace(old, new, 1).encode()})
    one(found, BENCH, "says", says)


def test_a_corner_left_out_of_the_words() -> None:
    files = cutting(assembly())
    text = files[BENCH].decode()
    assert "0; 0, 2.358; 0, 0; 45, 616 deep" in text, text
    spoiled = text.replace("0; 0, 2.358; 0, 0; 45, 616 deep", "0; 0, 2.358; 0, 616 deep")
    one(faults({**files, BENCH: spoiled.encode()}), BENCH, "long bevel of S1")


# --- solids ---------------------------------------------------------------------------------


def models(whole: Assembly) -> tuple[bytes, bytes]:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    solids = build_solids(whole.parts)
    return write_step(whole, solids), write_glb(whole, solids)


@pytest.mark.kernel
def test_sound_models_pass() -> None:
    step, glb = models(assembly())
    assert check_step(step, known()).faults == ()
    assert check_glb(glb, known()).faults == ()


@pytest.mark.kernel
@pytest.mark.parametrize(
    ("name", "mark", "outline"),
    [
        ("arched underside", "R1", tuple(v._replace(bulge=v.bulge * 0.95) for v in UNDER)),
        ("glass rebate", "R1", between(0, LONG, 10.5)),
        # the same box, area and middle: only its corners and its walls are elsewhere
        ("housing", "S1", turned_upside_down(LEANING, up=80.0)),
        ("trough", "S1", turned_over(tuple(v._replace(x=v.x + 300) for v in WAVE), across=680)),
    ],
)
def test_a_wrong_shape_in_the_solids_is_found(name: str, mark: str, outline: Outline) -> None:
    step, glb = models(altered(name, lambda c: dataclasses.replace(c, outline=outline)))
    one(check_step(step, known()).faults, f"{mark} ")
    one(check_glb(glb, known()).faults, f"mesh of {mark}")


# --- fronts ---------------------------------------------------------------------------------


def test_a_front_is_wanted_as_far_as_there_is_face() -> None:
    """The rail stands 80 to 480 across, 700 to 810 up; its face begins where the arch ends."""
    fronts = {front.part.name: front.sides for front in leaf_fronts(assembly().groups[0])}
    rail = {
        tuple(sorted((round(x, 3), round(z, 3)) for x, z in side))
        for side in fronts["leaf A / top rail"]
    }
    left, right = round(700 + height(0), 3), round(700 + height(LONG), 3)
    assert rail == {
        # the bevel of its upper edge lies behind its face; nothing is left at its lower edge
        ((80.0, 810.0), (480.0, 810.0)),
        ((80.0, left), (80.0, 810.0)),
        ((480.0, right), (480.0, 810.0)),
    }
    bar = {
        tuple(sorted((round(x, 3), round(z, 3)) for x, z in side))
        for side in fronts["leaf A / bar"]
    }
    # turned end for end, 100 to 430 across; 9 of its face is cut back to the shoulder at the
    # right, and at the left 3 at most of the tongue goes to a curve
    assert ((421.0, 300.0), (421.0, 322.0)) not in bar
    assert {((421.0, 300.0), (421.0, 308.0)), ((421.0, 308.0), (421.0, 314.0))} <= bar
    assert not any(max(a[0], b[0]) > 421.0 for a, b in bar)


def test_a_shape_that_comes_to_a_point_is_on_the_list_and_in_no_file() -> None:
    """Two arcs that meet at an apex: no cutter reaches it, so the list has it, as made by router."""
    arched = Shaped(
        name="housing",
        face="low face",
        outline=(Vertex(100, 0), Vertex(180, 0, 0.2), Vertex(140, 60, 0.2)),
        depth=7.0,
        making=LATE,
    )
    whole = altered("housing", lambda _: arched)
    pointed = dataclasses.replace(known(), assembly=whole)
    files = cutting(whole)
    assert f"cnc/{FRONT}" not in files
    assert check_cutting(files, pointed).faults == ()
    text = files[BENCH].decode()
    assert "140; 60 bulging" in text
    lost = "\r\n".join(line for line in text.split("\r\n") if "140; 60 bulging" not in line)
    one(check_cutting({**files, BENCH: lost.encode()}, pointed).faults, "housing of S1 is missing")


def test_a_rail_under_a_half_round_reaches_as_far_down_as_its_points() -> None:
    """A half circle as wide as the rail: its ends are knife edges, and its box the whole blank."""
    half = Shaped(
        name="arched underside",
        face="high face",
        outline=(Vertex(0, 0), Vertex(200, 0, 1.0)),
        depth=THICK,
        making=EARLY,
    )
    rail = dataclasses.replace(
        assembly().groups[0].parts[1],
        blank=Blank(length=200.0, width=WIDE + 40, thickness=THICK),
        cuts=(half,),
    )
    assert finished_box(rail) == ((0, 0, 0), (200, WIDE + 40, THICK))
    # the arched rail of the leaf begins where its arch is lowest, at its right end
    low, high = finished_box(assembly().groups[0].parts[1])
    assert low == (0, pytest.approx(height(LONG)), 0)
    assert high == (LONG, WIDE, THICK)
