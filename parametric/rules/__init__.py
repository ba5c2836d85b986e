"""What every design is checked for, one file a fault."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from parametric.problems import Problem, in_order
from parametric.rules.among_doors import told_of_doors
from parametric.rules.astragal_too_wide import astragal_too_wide
from parametric.rules.back_in_pieces import back_in_pieces
from parametric.rules.bars_leave_no_daylight import bars_leave_no_daylight
from parametric.rules.bars_stand_proud import bars_stand_proud
from parametric.rules.blade_will_not_reach import blade_will_not_reach
from parametric.rules.board_larger_than_sheet import board_larger_than_sheet
from parametric.rules.board_not_measured import board_not_measured
from parametric.rules.bores_meet import bores_meet
from parametric.rules.cabinet_in_the_wall import cabinet_in_the_wall
from parametric.rules.cabinets_overlap import cabinets_overlap
from parametric.rules.cannot_be_brought_in import cannot_be_brought_in
from parametric.rules.cannot_be_stood_up import cannot_be_stood_up
from parametric.rules.case_cannot_be_bored import case_cannot_be_bored
from parametric.rules.case_cannot_be_brought_in import case_cannot_be_brought_in
from parametric.rules.case_cutter_too_big import case_cutter_too_big
from parametric.rules.checked import Checked
from parametric.rules.checked_cases import CheckedCases, cases_of
from parametric.rules.cup_at_the_edge import cup_at_the_edge
from parametric.rules.cutter_too_big import cutter_too_big
from parametric.rules.field_stands_proud import field_stands_proud
from parametric.rules.fingers_at_hinges import fingers_at_hinges
from parametric.rules.fingers_between_leaves import fingers_between_leaves
from parametric.rules.fixing_not_known import fixing_not_known
from parametric.rules.flap_falls import flap_falls
from parametric.rules.flap_has_no_stay import flap_has_no_stay
from parametric.rules.flap_hinges_do_not_fit import flap_hinges_do_not_fit
from parametric.rules.flap_meets_something import flap_meets_something
from parametric.rules.floor_rises_in_travel import floor_rises_in_travel
from parametric.rules.fronts_cannot_be_matched import fronts_cannot_be_matched
from parametric.rules.fronts_meet_at_corner import fronts_meet_at_corner
from parametric.rules.gap_beside_case import gap_beside_case
from parametric.rules.glass_clearance_too_small import glass_clearance_too_small
from parametric.rules.glass_not_safety import glass_not_safety
from parametric.rules.glass_out_of_rebate import glass_out_of_rebate
from parametric.rules.groove_leaves_no_wall import groove_leaves_no_wall
from parametric.rules.handle_does_not_fit import handle_does_not_fit
from parametric.rules.hanger_overloaded import hanger_overloaded
from parametric.rules.heavy_case import heavy_case
from parametric.rules.heavy_leaf import heavy_leaf
from parametric.rules.heel_binds import heel_binds
from parametric.rules.hinge_does_not_fit import hinge_does_not_fit
from parametric.rules.hinge_meets_rebate import hinge_meets_rebate
from parametric.rules.hinge_meets_slot import hinge_meets_slot
from parametric.rules.hinge_overloaded import hinge_overloaded
from parametric.rules.lap_takes_the_wood import lap_takes_the_wood
from parametric.rules.laps_of_unlike_leaves import laps_of_unlike_leaves
from parametric.rules.leaf_binds import leaf_binds
from parametric.rules.leaf_grows_tight import leaf_grows_tight
from parametric.rules.leaf_in_the_wall import leaf_in_the_wall
from parametric.rules.leaf_meets_something import leaf_meets_something
from parametric.rules.leaves_do_not_fill import leaves_do_not_fill
from parametric.rules.lid_falls import lid_falls
from parametric.rules.little_wood_over_guide import little_wood_over_guide
from parametric.rules.lock_does_not_fit import lock_does_not_fit
from parametric.rules.lock_meets_something import lock_meets_something
from parametric.rules.may_tip_over import may_tip_over
from parametric.rules.moisture_out_of_range import moisture_out_of_range
from parametric.rules.moulding_leaves_no_wood import moulding_leaves_no_wood
from parametric.rules.near_equal_panes import near_equal_panes
from parametric.rules.no_way_through import no_way_through
from parametric.rules.offcuts_not_planned import offcuts_not_planned
from parametric.rules.panel_cannot_be_cut import panel_cannot_be_cut
from parametric.rules.panel_larger_than_sheet import panel_larger_than_sheet
from parametric.rules.panel_moves_upright import panel_moves_upright
from parametric.rules.panel_will_not_move import panel_will_not_move
from parametric.rules.part_has_no_size import case_part_has_no_size, part_has_no_size
from parametric.rules.pocket_meets_something import pocket_meets_something
from parametric.rules.rails_out_of_line import rails_out_of_line
from parametric.rules.reading_doubted import reading_doubted
from parametric.rules.sawn_groove_meets_slot import sawn_groove_meets_slot
from parametric.rules.screws_near_edge import screws_near_edge
from parametric.rules.scribes_differ import scribes_differ
from parametric.rules.shaped_pane_needs_template import shaped_pane_needs_template
from parametric.rules.shelf_sags import shelf_sags
from parametric.rules.short_grain_in_stop import short_grain_in_stop
from parametric.rules.slides_need_packing import slides_need_packing
from parametric.rules.slides_overloaded import slides_overloaded
from parametric.rules.slot_comes_through import slot_comes_through
from parametric.rules.spacer_bar_has_no_width import spacer_bar_has_no_width
from parametric.rules.stay_does_not_hold import stay_does_not_hold
from parametric.rules.stay_has_no_place import stay_has_no_place
from parametric.rules.stops_too_deep import stops_too_deep
from parametric.rules.stub_tenon_does_not_fit import stub_tenon_does_not_fit
from parametric.rules.uneven_floor_gap import uneven_floor_gap
from parametric.rules.wall_too_thin import wall_too_thin
from parametric.rules.word_says_nothing import word_says_nothing

RULES: tuple[Callable[[Checked], Iterator[Problem]], ...] = (
    part_has_no_size,
    no_way_through,
    leaves_do_not_fill,
    wall_too_thin,
    laps_of_unlike_leaves,
    lap_takes_the_wood,
    astragal_too_wide,
    slot_comes_through,
    stub_tenon_does_not_fit,
    groove_leaves_no_wall,
    moulding_leaves_no_wood,
    panel_cannot_be_cut,
    panel_will_not_move,
    panel_larger_than_sheet,
    fronts_cannot_be_matched,
    field_stands_proud,
    stops_too_deep,
    glass_out_of_rebate,
    bars_stand_proud,
    bars_leave_no_daylight,
    spacer_bar_has_no_width,
    pocket_meets_something,
    cup_at_the_edge,
    cutter_too_big,
    sawn_groove_meets_slot,
    hanger_overloaded,
    handle_does_not_fit,
    hinge_does_not_fit,
    hinge_meets_slot,
    hinge_meets_rebate,
    screws_near_edge,
    hinge_overloaded,
    lock_does_not_fit,
    lock_meets_something,
    fixing_not_known,
    uneven_floor_gap,
    floor_rises_in_travel,
    leaf_binds,
    leaf_in_the_wall,
    heel_binds,
    leaf_grows_tight,
    leaf_meets_something,
    blade_will_not_reach,
    little_wood_over_guide,
    fingers_between_leaves,
    fingers_at_hinges,
    flap_has_no_stay,
    stay_does_not_hold,
    flap_falls,
    glass_not_safety,
    glass_clearance_too_small,
    short_grain_in_stop,
    shaped_pane_needs_template,
    near_equal_panes,
    moisture_out_of_range,
    panel_moves_upright,
    heavy_leaf,
    cannot_be_brought_in,
    rails_out_of_line,
    reading_doubted,
    word_says_nothing,
)

CASE_RULES: tuple[Callable[[CheckedCases], Iterator[Problem]], ...] = (
    case_part_has_no_size,
    cabinets_overlap,
    cabinet_in_the_wall,
    fronts_meet_at_corner,
    shelf_sags,
    cannot_be_stood_up,
    case_cannot_be_brought_in,
    may_tip_over,
    heavy_case,
    scribes_differ,
    gap_beside_case,
    slides_overloaded,
    slides_need_packing,
    case_cannot_be_bored,
    case_cutter_too_big,
    bores_meet,
    flap_hinges_do_not_fit,
    stay_has_no_place,
    flap_meets_something,
    lid_falls,
    board_not_measured,
    board_larger_than_sheet,
    back_in_pieces,
)
"""Those that look at every cabinet of a job at once."""

JOB_RULES: tuple[Callable[[Checked], Iterator[Problem]], ...] = (offcuts_not_planned,)
"""Those that look at the whole job."""


def check(job: Checked) -> tuple[Problem, ...]:
    """Every rule on every door and on the cabinets, all problems, stops first."""
    found = (
        (own.door, tuple(_once(problem for rule in RULES for problem in rule(own))))
        for own in job.each
    )
    cases = cases_of(job)
    of_cases = () if cases is None else (p for rule in CASE_RULES for p in rule(cases))
    of_the_job = (p for rule in JOB_RULES for p in rule(job))
    return in_order((*told_of_doors(found), *_once(iter(of_cases)), *of_the_job))


def _once(problems: Iterator[Problem]) -> Iterator[Problem]:
    """What is said of one leaf in the same words as of another is said once."""
    told: set[tuple[object, ...]] = set()
    for problem in problems:
        words = (problem.code, problem.level, problem.message, problem.where)
        if words not in told:
            told.add(words)
            yield problem
