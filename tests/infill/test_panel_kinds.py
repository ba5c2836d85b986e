"""Panels of sheet material and flat ones of timber: sizes, seasons, weights and what is ordered.

The sums are worked by hand beside each number. Movement: Wood Handbook (FPL-GTR-190) ch. 13
eq. 13-2; white oak flat-sawn 0.00365 per 1 %, table 13-5.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.catalog.boards import Board
from parametric.figures import Figure
from parametric.infill.board_panel import BoardPanel, BoardPanelSpec, size_board_panel
from parametric.infill.flat_panel import FlatPanel
from parametric.job import Job, check
from parametric.model import Groove, Shaped
from parametric.trade.paperwork import paperwork
from tests.infill.filled import filled

BOARD = "kind: board, thickness: 9, groove: 9 x 12, clearance: 1"
FLAT = "kind: flat, thickness: 12, groove: 12.2 x 15, clearance: 1"


def job_of(folder: Path, panel: str, *blocks: str) -> Job:
    path = folder / "design.yaml"
    path.write_text(filled(panel, *blocks), encoding="utf-8")
    return check(path, user_house=False)


def resolved_panels(job: Job) -> list[object]:
    assert job.resolved is not None, [p.message for p in job.problems]
    return [field.panel for leaf in job.resolved.door.leaves for field in leaf.panels]


@pytest.mark.parametrize(
    ("unit", "opening", "groove", "clearance", "size"),
    [
        # An inset cupboard door in inches: 21.0625 - 2*2.25 + 2*0.375 - 2*0.0625 = 17.1875 wide,
        # 23.3125 - 2*2.25 + 2*0.375 - 2*0.0625 = 19.4375 high.
        (25.4, (16.5625, 18.8125), (0.25, 0.375), 0.0625, (17.1875, 19.4375)),
        # A tall wardrobe door in mm: 391.5 - 2*80 + 2*10 - 2 = 249.5, 1015 + 2*10 - 2 = 1033.
        (1.0, (231.5, 1015.0), (9.0, 10.0), 1.0, (249.5, 1033.0)),
    ],
)
def test_a_board_is_its_opening_and_its_grooves_less_a_clearance_each(
    unit: float,
    opening: tuple[float, float],
    groove: tuple[float, float],
    clearance: float,
    size: tuple[float, float],
) -> None:
    spec = BoardPanelSpec.model_construct(
        kind="board",
        board="fibreboard",
        thickness=Figure(groove[0] * unit),
        grain="upright",
        groove=(Figure(groove[0] * unit), Figure(groove[1] * unit)),
        groove_by="router",
        clearance=Figure(clearance * unit),
        end_clearance=None,
    )
    board = _board(750.0)
    panel = size_board_panel(
        spec,
        name="leaf A / panel",
        opening_width=Figure(opening[0] * unit),
        opening_height=Figure(opening[1] * unit),
        frame=Figure(22.0),
        board=board,
    )
    assert float(panel.width) == pytest.approx(size[0] * unit)
    assert float(panel.height) == pytest.approx(size[1] * unit)
    assert float(panel.engagement_dry) == float(panel.engagement_damp)
    # (249.5 * 1033 * 9) * 750 / 10**9 = 1.74 kg; two panels 3.48.
    if unit == 1.0:
        assert 2 * float(panel.weight) == pytest.approx(3.48, abs=0.005)


def _board(density: float) -> Board:
    return Board(
        name="fibreboard",
        density=Figure(density, unit="kg/m3"),
        sheet_length=Figure(2440.0),
        sheet_width=Figure(1220.0),
        source="as written",
    )


def test_a_board_panel_in_a_door(tmp_path: Path) -> None:
    upper, lower = resolved_panels(job_of(tmp_path, BOARD))
    assert isinstance(upper, BoardPanel)
    assert isinstance(lower, BoardPanel)
    # The leaf is 864 - 2.5 - 3 = 858.5 wide and 2039 - 3 - 10 = 2026 high; between the stiles
    # 858.5 - 2*115 = 628.5: the panels are 628.5 + 2*(12 - 1) = 650.5 wide, the lower one
    # 560 + 22 = 582 high, the upper 2026 - 115 - 190 - 560 - 220 + 22 = 963.
    assert (float(upper.width), float(upper.height)) == (650.5, 963.0)
    assert (float(lower.width), float(lower.height)) == (650.5, 582.0)
    assert not upper.moves
    assert float(upper.movement) == 0.0
    # In the middle of a frame of 44, a board of 9 lies (44 - 9)/2 = 17.5 behind the face.
    assert float(upper.field_below_face) == 17.5


def test_a_flat_panel_floats_as_a_raised_one_does(tmp_path: Path) -> None:
    upper, _ = resolved_panels(job_of(tmp_path, FLAT))
    assert isinstance(upper, FlatPanel)
    # (628.5 + 2*15 - 2*1) / (1 + 0.00365*(11 - 8)) = 656.5 / 1.01095 = 649.389.
    assert float(upper.width) == pytest.approx(649.389, abs=0.001)
    # At 6 % it keeps (649.389*(1 - 0.0073) - 628.5)/2 = 8.074 each side; 941 + 2*14 high.
    assert float(upper.engagement_dry) == pytest.approx(8.074, abs=0.001)
    assert float(upper.height) == 969.0
    assert float(upper.movement) == pytest.approx(649.389 * 0.00365 * 5, abs=0.001)
    assert float(upper.field_below_face) == 16.0


def test_a_board_that_is_named_or_not_takes_its_own_facts(tmp_path: Path) -> None:
    own = job_of(tmp_path, BOARD, "board: {density: 700 kg/m3, sheet: 2500 x 1250}")
    (upper, _) = resolved_panels(own)
    assert isinstance(upper, BoardPanel)
    assert upper.material.name == "plywood"
    # 963 * 650.5 * 9 * 700 / 10**9 = 3.947 kg.
    assert float(upper.weight) == pytest.approx(3.947, abs=0.001)
    named = job_of(tmp_path, f"{BOARD}, board: birch ply", "board birch ply: {density: 680 kg/m3}")
    assert not [p.message for p in named.problems if p.level == "stop"]
    odd = job_of(tmp_path, f"{BOARD}, board: plywod")
    assert [p.message for p in odd.problems if p.level == "stop"] == [
        'No board is called "plywod". Did you mean "plywood"?'
    ]


def test_boards_are_ordered_by_the_sheet_and_never_from_the_timber_yard(tmp_path: Path) -> None:
    job = job_of(tmp_path, BOARD)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    (lot,) = paper.boards
    # Two strips of 650.5 are 1301 and more than 1220, but 963 + 3.2 + 582 is less than 2440.
    assert int(lot.sheets) == 1
    assert {row.mark for row in lot.pieces} == {"P1", "P2"}
    assert not {"P1", "P2"} & {b.mark for one in paper.timber.lots for b in one.blanks}
    assert not paper.panel_glue_ups
    short = job_of(tmp_path, BOARD, "board: {sheet: 1500 x 1220}")
    assert short.resolved is not None
    assert short.assembly is not None
    # 963 + 3.2 + 582 = 1548.2 is longer than 1500: a second strip, and a second sheet for it.
    (lot,) = paperwork(short.resolved, short.assembly, short.loads).boards
    assert int(lot.sheets) == 2


def test_a_flat_panel_is_glued_up_and_its_boards_are_ordered(tmp_path: Path) -> None:
    job = job_of(tmp_path, FLAT)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    glued = {one.mark: one for one in paper.panel_glue_ups}
    # (649.4 + 6) / 140 = 4.7: five boards.
    assert {mark: int(one.boards) for mark, one in glued.items()} == {"P1": 5, "P2": 5}
    assert not paper.boards


@pytest.mark.parametrize("panel", [BOARD, FLAT])
def test_grooves_take_the_panel_with_its_clearance(tmp_path: Path, panel: str) -> None:
    job = job_of(tmp_path, panel)
    assert job.assembly is not None
    parts = {part.name: part for part in job.assembly.parts}
    stile = parts["leaf A / left stile"]
    grooves = sorted((c for c in stile.cuts if isinstance(c, Groove)), key=lambda g: g.u0)
    for field, groove in zip(
        sorted(job.resolved.door.leaves[0].panels, key=lambda f: f.foot),  # type: ignore[union-attr]
        grooves,
        strict=True,
    ):
        made = parts[field.name]
        left = stile.placement.origin[0] + float(stile.blank.width) - float(groove.depth)
        # The panel's edge stands clear of the groove's bottom by its clearance as made.
        edge = min(
            made.placement.origin[0],
            made.placement.origin[0] - float(made.blank.width),
        )
        room = (float(field.width) + 2 * float(groove.depth) - float(field.panel.width)) / 2
        assert edge - left == pytest.approx(room)
        assert float(made.blank.thickness) <= float(groove.width)


TONGUED = (
    "kind: flat, thickness: 20, groove: 10.2 x 15, clearance: 1, tongue: 10 x 17, back rebate: 4"
)


def test_a_flat_panel_is_rebated_to_its_tongue(tmp_path: Path) -> None:
    job = job_of(tmp_path, TONGUED)
    upper, _ = resolved_panels(job)
    assert isinstance(upper, FlatPanel)
    # 44/2 + 10/2 + 4 - 20 = 11 below the face.
    assert float(upper.field_below_face) == 11.0
    assert job.assembly is not None
    made = next(part for part in job.assembly.parts if part.name == upper.name)
    long, wide = float(upper.along), float(upper.across)
    # 4 comes off the back and 20 - 10 - 4 = 6 off the face, 17 in from every edge.
    field = (long - 34) * (wide - 34)
    assert made.volume == pytest.approx(long * wide * 20 - 10 * (long * wide - field))
    assert float(upper.volume) == pytest.approx(made.volume)
    assert {(c.face, float(c.depth)) for c in made.cuts if isinstance(c, Shaped)} == {
        ("low face", 4.0),
        ("high face", 6.0),
    }
    assert job.resolved is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    # 17 - (649.389 - 628.5)/2 = 6.6 of the tongue shows beside each stile, 17 - 14 = 3 at a rail.
    assert any("6.6 and 3" in step for step in paper.leaf_glue_ups[0].steps)


@pytest.mark.parametrize(
    ("panel", "code"),
    [
        # 10 + 11 = 21 of a panel 20 thick.
        (TONGUED.replace("back rebate: 4", "back rebate: 11"), "panel_cannot_be_cut"),
        (TONGUED.replace("tongue: 10 x", "tongue: 20 x"), "panel_cannot_be_cut"),
        # In the dampest season it goes 14 in, as at its ends, and 1 is to spare: 15.
        (TONGUED.replace("10 x 17", "10 x 14.5"), "tongue_too_short"),
        (TONGUED.replace("10 x 17", "10.5 x 17"), "tongue_too_thick"),
    ],
)
def test_a_tongue_that_cannot_be(tmp_path: Path, panel: str, code: str) -> None:
    job = job_of(tmp_path, panel)
    assert code in {p.code for p in job.problems if p.level == "stop"}


def test_a_tongue_at_its_limit(tmp_path: Path) -> None:
    """All of the front is tongue: 10 + 10 = 20; and 15 is long enough."""
    job = job_of(tmp_path, TONGUED.replace("10 x 17, back rebate: 4", "10 x 15, back rebate: 10"))
    assert not [p.message for p in job.problems if p.level == "stop"]


@pytest.mark.kernel
@pytest.mark.parametrize("panel", [BOARD, FLAT, TONGUED])
def test_panels_stand_in_their_grooves_and_take_no_wood(tmp_path: Path, panel: str) -> None:
    """Volumes close, nothing overlaps; a panel's edge is its clearance from the groove's bottom."""
    from parametric.solids.clash import clashes
    from parametric.solids.shape import part_solid, volume
    from parametric.solids.solid_set import build_solids

    job = job_of(tmp_path, panel)
    assert job.assembly is not None
    for part in job.assembly.parts:
        if part.noun.endswith("panel"):
            assert volume(part_solid(part)) == pytest.approx(part.volume, rel=1e-6)
    solids = build_solids(job.assembly.parts)
    assert clashes(job.assembly, job.assembly.states[0], solids) == ()
