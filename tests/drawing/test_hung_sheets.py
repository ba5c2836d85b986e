"""Sheets of doors of every kind: nothing overlaps, chains close, what turns turns about its pin."""

from __future__ import annotations

import itertools
import math
import re
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from parametric.drawing import Drawings
from parametric.drawing.arrangement_swing import (
    clear_between,
    open_state,
    pin_places,
    stands,
    swing_box,
    way_of_edge,
)
from parametric.drawing.details.arch_set_out import arch_set_out
from parametric.drawing.details.meeting_stiles import face_edges, meeting_pair
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.plane import around, swollen, without_spikes
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Sheet, primitives
from parametric.drawing.site import clear_of_bars, hung_words, leaf_boxes
from parametric.drawing.subject import Subject, subject
from parametric.drawing.tables import Table
from parametric.job import Job, check
from parametric.problems import stops
from parametric.resolve.door import Door
from tests.drawing.sheets import ROOT, drawn, larch_hill
from tests.hangings.doors import KINDS, written

MILL_LANE = ROOT / "examples/mill-lane-study/design.yaml"
SHOWN = (
    "sliding right",
    "biparting",
    "bypass of three",
    "pocket left",
    "hinged right away",
    "hinged pair",
    "rebated pair",
    "pair with astragal",
    "dutch",
    "unequal pair",
    "bifold four both",
)
"""One of each kind, and what differs within one."""
SHOWN_IN_INCHES = ("bypass of three", "unequal pair", "dutch", "bifold four both")


@cache
def drawings_of(kind: str, unit: str = "mm") -> Drawings:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(in_unit(written(kind), unit))
        return drawn(path)


def in_unit(text: str, unit: str) -> str:
    """A design in millimetres, read as inches: every size says that it is in mm."""
    if unit == "mm":
        return text
    head, rest = text.split("units: mm", 1)
    sized = re.sub(r"(?<![\w.-])(\d+)(?! deg| part|\w)(?=[ ,}\]\n]|$)", r"\1 mm", rest)
    return f"{head}units: inch" + re.sub(r"leaves: (\d) mm", r"leaves: \1", sized)


@cache
def job_of(kind: str) -> Job:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(written(kind))
        return check(path, user_house=False)


def door_of(kind: str) -> Door:
    job = job_of(kind)
    assert job.resolved is not None, job.problems
    return job.resolved.door


@cache
def mill_lane() -> Drawings:
    return drawn(MILL_LANE)


@cache
def mill_lane_job() -> Subject:
    job = check(MILL_LANE, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    return subject(job.resolved, job.assembly, job.loads, job.problems)


def sheet_of(drawings: Drawings, document: str) -> Sheet:
    return next(s for s in drawings.sheets if s.title.document == document)


def texts(sheet: Sheet) -> list[str]:
    return [p.text for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


def dimensions(sheet: Sheet, view: str) -> list[Dimension]:
    return [e for e in sheet.elements if isinstance(e, Dimension) and e.view == view]


# Nothing overlaps -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "unit"),
    [*((kind, "mm") for kind in SHOWN), *((kind, "inch") for kind in SHOWN_IN_INCHES)],
)
def test_sheets_of_each_kind_come_clean_out_of_the_audit(kind: str, unit: str) -> None:
    found = drawings_of(kind, unit)
    assert not found.findings
    assert len(found.sets[0].sheets) >= 5


def test_the_study_comes_clean_out_of_the_audit() -> None:
    assert not mill_lane().findings


# A chain closes ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "kind", ["hinged pair", "unequal pair", "rebated pair", "hinged right away"]
)
def test_widths_close_from_jamb_to_jamb(kind: str) -> None:
    """Gap, leaf, gap, leaf, gap add up to the plumb clear width, 1524 by the survey."""
    sizes = dimensions(sheet_of(drawings_of(kind), "Arrangement"), "plan A-A")
    clear = next(d for d in sizes if "clear" in d.after)
    inner = [d for d in sizes if d is not clear]
    assert clear.value == pytest.approx(1524.0)
    assert sum(d.value for d in inner) == pytest.approx(1524.0, abs=1e-6)
    assert len({round(d.a[1], 3) for d in inner}) == 1, "on one line"


@pytest.mark.parametrize("kind", ["hinged pair", "dutch"])
def test_heights_close_from_floor_to_head(kind: str) -> None:
    """At the left 2078 was read from head to floor: 19 under the leaf, the leaf, 3 over it."""
    sizes = dimensions(sheet_of(drawings_of(kind), "Arrangement"), "front elevation")
    left = min(d.a[0] for d in sizes)
    chain = [d for d in sizes if d.a[0] == left]
    assert sum(d.value for d in chain) == pytest.approx(2078.0, abs=1e-6)


def test_a_leafs_hinge_chain_closes_on_its_height() -> None:
    sizes = dimensions(sheet_of(drawings_of("hinged pair"), "Leaves"), "leaf A")
    own = [d for d in sizes if "hinge" in d.figure or "hinge" in d.after]
    assert sum(d.value for d in own) == pytest.approx(
        float(door_of("hinged pair").leaves[0].height), abs=1e-6
    )
    assert len(own) == 7, "three hinges, and what is below, between and above them"


# Leaves that turn -------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["hinged left", "hinged right away", "hinged pair", "dutch"])
def test_an_edge_goes_on_a_circle_about_its_pin(kind: str) -> None:
    door = door_of(kind)
    state = open_state(door)
    for leaf in door.leaves:
        way = way_of_edge(leaf, state)
        nearest = min(
            pin_places(door), key=lambda pin: abs(math.dist(pin, way[0]) - float(leaf.width))
        )
        radii = [math.dist(nearest, point) for point in way]
        assert max(radii) - min(radii) < 1e-6
        # Its farthest corner: across the width and half the gap, and through the thickness and
        # the pin's stand-out, by Pythagoras.
        hinges = leaf.hinges[0].hinges
        across = float(leaf.width + hinges.pin_beside)
        through = float(leaf.thickness + hinges.pin_out)
        assert radii[0] == pytest.approx(math.hypot(across, through), abs=1e-6)


def test_what_stays_free_between_open_leaves_is_the_clear_way() -> None:
    """Each leaf at a right angle takes half its gap, the pin's stand-out and its thickness."""
    door = door_of("hinged pair")
    between = clear_between(door)
    assert between is not None
    hinges = door.leaves[0].hinges[0].hinges
    taken = float(hinges.pin_beside + hinges.pin_out + door.leaves[0].thickness)
    assert between[1] - between[0] == pytest.approx(1524.0 - 2 * taken, abs=1e-6)
    printed = next(
        d
        for d in dimensions(sheet_of(drawings_of("hinged pair"), "Arrangement"), "leaves open")
        if d.after == "clear way"
    )
    assert printed.value == pytest.approx(float(door.hanging.clear_way))


@pytest.mark.parametrize(
    ("kind", "side"), [("hinged left", -1.0), ("hinged right away", 1.0), ("hinged pair away", 1.0)]
)
def test_leaves_swing_to_the_side_they_open_to(kind: str, side: float) -> None:
    """The room is at the foot of the plan, Y less than nothing."""
    door = door_of(kind)
    box = swing_box(door)
    reach = float(door.leaves[0].width)
    assert (box.y1 if side > 0 else -box.y0) > 0.9 * reach
    assert (-box.y0 if side > 0 else box.y1) < 0.2 * reach
    word = "opens away" if side > 0 else "opens to you"
    assert {hung_words(door, i)[1] for i in range(len(door.leaves))} == {word}


def test_lines_of_a_turning_leaf_meet_at_its_hinges() -> None:
    """Two lines a leaf, from the corners of the free edge to the middle of the hinged one."""
    sheet = sheet_of(drawings_of("hinged pair"), "Arrangement")
    view = next(v for v in sheet.views if v.name == "front elevation")
    lines = [
        e
        for e in sheet.elements
        if isinstance(e, Stroke)
        and e.view == view.name
        and e.layer == "centre"
        and len(e.points) == 2
    ]
    slanted = [
        e for e in lines if e.points[0][0] != e.points[1][0] and e.points[0][1] != e.points[1][1]
    ]
    boxes = leaf_boxes(door_of("hinged pair"))
    apexes = {(round(e.points[1][0], 3), round(e.points[1][1], 3)) for e in slanted}
    middle = (boxes[0].y0 + boxes[0].y1) / 2
    wanted = {view.at((boxes[0].x0, middle)), view.at((boxes[1].x1, middle))}
    assert apexes == {(round(x, 3), round(y, 3)) for x, y in wanted}
    assert any("chain lines: it opens towards you" in text for text in texts(sheet)) or any(
        "opens towards you" in text for text in texts(sheet)
    )


def test_a_leaf_that_folds_stands_half_open_too() -> None:
    sheet = sheet_of(drawings_of("bifold four both"), "Hinges")
    turned = [
        e
        for e in sheet.elements
        if isinstance(e, Stroke) and e.view == "plan of the open leaves" and e.closed
    ]
    folding = [leaf for leaf in door_of("bifold four both").leaves if len(leaf.hung.motion) > 1]
    assert sum(e.layer == "adjacent" for e in turned) >= len(folding) == 2


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_leaf_of_every_kind_stands_where_its_motion_takes_it(kind: str) -> None:
    """A leaf keeps its size wherever it goes: its outline from above is turned, never stretched."""
    door = door_of(kind)
    for leaf in door.leaves:
        for state in door.hanging.states:
            corners = stands(leaf, state)
            assert math.dist(corners[0], corners[1]) == pytest.approx(float(leaf.width))
            assert math.dist(corners[1], corners[2]) == pytest.approx(float(leaf.thickness))


# Doors without a track --------------------------------------------------------------------------


def test_a_door_without_a_track_has_nothing_of_one() -> None:
    said = [text for s in drawings_of("hinged pair").sets[0].sheets for text in texts(s)]
    assert not any(re.search(r"\btracks?\b(?!-guided)|hanger|bracket", text) for text in said)


def test_a_door_that_does_not_turn_has_no_sheet_of_hinges() -> None:
    assert not [s for s in larch_hill().sheets if s.title.document == "Hinges"]
    assert [s for s in drawings_of("dutch").sheets if s.title.document == "Hinges"]


# The meeting edge -------------------------------------------------------------------------------


def test_bevelled_edges_stand_wider_apart_on_the_far_face() -> None:
    """3 apart at the face; a bevel of 3 deg takes 40 tan 3 = 2.096 off each edge at the back."""
    door = door_of("hinged pair")
    pair = meeting_pair(door)
    assert pair is not None
    edges = (
        float(pair[0].hung.left + pair[0].width),
        float(pair[1].hung.left),
    )
    near = face_edges(pair, "front", edges)
    far = face_edges(pair, "back", edges)
    assert near[1] - near[0] == pytest.approx(float(door.hanging.meeting_gap or 0.0))
    off = 40.0 * math.tan(math.radians(3.0))
    assert off == pytest.approx(2.096, abs=5e-4)
    assert far[1] - far[0] == pytest.approx(near[1] - near[0] + 2 * off)


def test_rebated_edges_keep_their_gap_on_both_faces() -> None:
    door = door_of("rebated pair")
    pair = meeting_pair(door)
    assert pair is not None
    edges = (float(pair[0].hung.left + pair[0].width), float(pair[1].hung.left))
    assert edges[0] > edges[1], "one leaf reaches over the other"
    for face in ("front", "back"):
        a, b = face_edges(pair, face, edges)  # type: ignore[arg-type]
        assert b - a == pytest.approx(float(door.hanging.meeting_gap or 0.0), abs=1e-6)


# The study: arch, bars, hinges ------------------------------------------------------------------


def test_the_study_says_every_size_of_its_leaf() -> None:
    """From the arithmetic of the brief: springing 71-1/16, top rail 10-5/16 and 4-1/2, arch
    5-13/16 at the meeting stile, daylight 9-31/32 x 14-23/32, hinges 4-1/2 long at 7 and 11.
    """
    sheet = sheet_of(mill_lane(), "Leaves")
    inches = {
        round(d.value / 25.4, 3)
        for d in sheet.elements
        if isinstance(d, Dimension) and d.view == "leaf A"
    }
    for size in (
        10.316,
        4.5,
        5.816,
        61.559,
        9.969,
        14.733,
        0.875,
        20.812,
        29.812,
        81.375,
        7.0,
        11.0,
    ):
        assert any(abs(own - size) < 1.1e-3 for own in inches), size
    heights = {round(e.value / 25.4, 3) for e in sheet.elements if isinstance(e, Ordinate)}
    assert any(abs(own - 71.059) < 1.1e-3 for own in heights)
    assert any("56-21/32" in text for text in texts(sheet)), "radius (50.75^2 + 4 6^2) / (8 6)"


def test_the_curve_is_set_out_by_the_circle() -> None:
    """Offsets by chord and sagitta: y = sqrt(r2 - (x - 25-3/8)2) - (r - 6), r = 56.6576."""
    detail = arch_set_out(mill_lane_job())
    assert detail is not None
    table = next(e for e in detail.elements if isinstance(e, Table))
    r = (50.75**2 + 4 * 6**2) / (8 * 6)
    for along, up in zip(table.rows[0][1:], table.rows[1][1:], strict=True):
        x, y = inches_of(along), inches_of(up)
        assert y == pytest.approx(math.sqrt(r * r - (x - 25.375) ** 2) - (r - 6), abs=1 / 64 + 1e-9)
    assert inches_of(table.rows[1][-1]) == 6.0


def inches_of(text: str) -> float:
    whole, _, fraction = text.rpartition("-")
    if "/" not in text:
        return float(text)
    above, below = fraction.split("/")
    return float(whole or 0) + float(above) / float(below)


def test_hinges_of_the_study_are_listed_by_their_middles() -> None:
    """72-1/8, 42-11/16 and 13-1/4 above the foot, by the brief's arithmetic."""
    said = texts(sheet_of(mill_lane(), "Hinges"))
    assert {"72-1/8", "42-11/16", "13-1/4"} <= set(said)
    assert any("5/16" in text and "swing" in text for text in joined(said))


def joined(said: list[str]) -> list[str]:
    """Neighbouring lines together, as a sentence is broken."""
    return [f"{a} {b}" for a, b in itertools.pairwise(said)]


def test_a_section_keeps_off_the_bars() -> None:
    leaf = mill_lane_job().resolved.door.leaves[0]
    for share in (0.38, 0.5, 0.62, 0.64):
        at = clear_of_bars(leaf, share)
        for bar in leaf.lites[0].bars:
            if bar.upright:
                assert not float(bar.low) <= at <= float(bar.high)


# The plane --------------------------------------------------------------------------------------


def test_a_corner_cut_away_leaves_no_spike() -> None:
    ring = ((0.0, 0.0), (10.0, 0.0), (10.0, 6.0), (10.0, 4.0), (7.0, 4.0), (7.0, 6.0), (0.0, 6.0))
    assert without_spikes(ring) == (
        (0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (7.0, 4.0), (7.0, 6.0), (0.0, 6.0),
    )  # fmt: skip


def test_a_swollen_outline_holds_its_own_edges() -> None:
    own = ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0))
    box = around(swollen(own, 0.1))
    assert box.x0 < 0.0 < 4.0 < box.x1
    assert box.y0 < 0.0 < 2.0 < box.y1


def test_designs_here_that_are_drawn_have_no_stops() -> None:
    assert not [kind for kind in SHOWN if stops(job_of(kind).problems)]
