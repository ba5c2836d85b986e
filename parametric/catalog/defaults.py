"""What the tool takes where neither the design nor the house says: the lowest of three layers.

The same blocks and keys as in a design file, as text in mm, each with where it comes from.
A block whose keys depend on its kind has a second entry under both words (`door bypass`).
Every number here is a habit that a house file may change; none is a limit of nature.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from parametric.catalog.layer_names import OURS

PRACTICE = "common practice, no source"
_HANDBOOK = (
    "Wood Handbook, FPL-GTR-190 (2010), chapter 13, moisture content of interior wood when "
    "installed: 8 % on average, single pieces 6 to 10 %, from memory"
)

_SHELVES = "ANSI/KCMA A161.1, shelves: 15 lb/ft2 for 7 days, at most 1/16 in a foot of span"
_UNDER = "common for slides under the box, their data sheet says; from memory"


class Default(NamedTuple):
    """One value as it would stand in a file, or a list of them, and where it comes from."""

    text: str | tuple[str, ...]
    source: str = PRACTICE


def _habits(**keys: str | tuple[str, ...] | Default) -> Mapping[str, Default]:
    return MappingProxyType(
        {
            key.rstrip("_").replace("_", " "): value
            if isinstance(value, Default)
            else Default(value)
            for key, value in keys.items()
        }
    )


DEFAULTS: Mapping[str, Mapping[str, Default]] = MappingProxyType(
    {
        "survey": _habits(fixing="not known"),
        "door": _habits(floor_gap="10"),
        "door bypass": _habits(
            hung="on the wall",
            leaves="2",
            overlap="stile",
            side_lap="40",
            head_lap="40",
            track_allowance="60",
            between_leaves="10",
            beside_leaves="10",
        ),
        "door sliding": _habits(hung="on the wall", side_lap="40", head_lap="40"),
        "door biparting": _habits(
            hung="on the wall", side_lap="40", head_lap="40", meeting_gap="3"
        ),
        "door pocket": _habits(
            enters_jamb="10",
            stays_in_pocket="18",
            above_head="25",
            left_out="50",
            buffer="20",
            buffer_clearance="5",
        ),
        "door bifold": _habits(
            jamb_gap="4", fold_gap="3", meeting_gap="4", track_allowance="45", pivot_in="40"
        ),
        "door hinged": _habits(
            opens="towards you", hinge_gap="2.5", lock_gap="3", head_gap="3", edge_bevel="3 deg"
        ),
        "door hinged pair": _habits(
            opens="towards you",
            hinge_gap="2.5",
            head_gap="3",
            meeting_gap="3",
            edge_bevel="3 deg",
            left_leaf="equal",
            right_leaf="equal",
            first_to_open="right",
            meeting_stiles="butt",
            meeting_rebate="12",
            astragal="40 x 12",
        ),
        "door dutch": _habits(
            opens="towards you",
            hinge_gap="2.5",
            lock_gap="3",
            head_gap="3",
            edge_bevel="3 deg",
            split_gap="3",
            split_joint="rebated",
            split_rebate="12",
        ),
        "door cabinet": _habits(
            front_gap="3", edge_reveal="1.5", case_edge="18", fronts_matched="none"
        ),
        "run": _habits(
            plinth="0", levelled_by="plinth", plinth_back="50", overhang="20", board="plywood"
        ),
        "cabinet": _habits(
            kind="frameless",
            front_gap="3",
            edge_reveal="1.5",
            fronts_matched="none",
            corners="dowel",
            dado="0",
            overhang="20",
            plinth="0",
            finished_ends="none",
            top="level",
            top_gap="10",
            board="plywood",
        ),
        "cabinet frameless": _habits(fronts="overlay"),
        "cabinet face frame": _habits(fronts="inset"),
        "back": _habits(held="groove", thickness="6", groove="6", from_back="12", clearance="1"),
        "face frame": _habits(
            thickness="20",
            wall_stiles="40",
            centre_stiles="40",
            rails="40",
            scribe="3",
            joined_by="pocket screw",
        ),
        "leaf": _habits(sawn="flat", sticking="square", trim="12", site_trim="10"),
        "sticking chamfer": _habits(corners="coped", width="8", depth="8"),
        "sticking ovolo": _habits(corners="coped", width="12", depth="10", fillet="2"),
        "sticking ogee": _habits(corners="coped", width="14", depth="10", fillet="2"),
        "sticking cove": _habits(corners="coped", width="12", depth="10", fillet="2"),
        "sticking bead": _habits(corners="mitred", round="8", quirk="2", sunk="0.5"),
        "panel": _habits(grain="upright", groove="8.2 x 14", groove_by="router", clearance="1"),
        "panel raised": _habits(back_rebate="0", fillet="0", stock="140"),
        "panel flat": _habits(back_rebate="0", stock="140"),
        "panel board": _habits(board="plywood"),
        "glass": _habits(
            held_by="stops",
            stop="12 x 14.5",
            tape="0",
            clearance="3",
            frame_rebate="10",
            rebate_depth="16",
            muntin="22",
            muntin_rebate="8",
            bars="true",
            ordered="own sizes",
            one_size_within=Default(
                "3", "common practice, no source: about twice the tolerance of cut glass"
            ),
            bar_tenon="10",
            bar_thickness="8 x 8",
            bar_tape="1",
            bar_crossings="half lapped",
        ),
        "arch": _habits(shape="segmental", across="leaf"),
        "joint": _habits(kind="loose tenon"),
        "joint loose tenon": _habits(off_groove="6", off_end="40"),
        "track": _habits(hangers="2", brackets_every="400"),
        "pull recessed": _habits(
            fit="0.3",
            extra_depth="0.2",
            stands_out="0",
            height="1000",
            from_edge="60",
            stile="outer",
            faces="front",
        ),
        "pull bar": _habits(
            holes="128",
            hole="5",
            across="12",
            stands_out="30",
            from_edge="35",
            from_end="60",
            reach="1050",
        ),
        "pull knob": _habits(
            holes="0",
            hole="5",
            across="30",
            stands_out="28",
            from_edge="35",
            from_end="60",
            reach="1050",
        ),
        "hinge butt": _habits(
            steps=Default(
                ("1524: 2", "2286: 3", "3048: 4"),
                "one for every 30 in of height: common practice, from memory",
            ),
            length="100",
            thick="2.5",
            knuckle="12",
            behind="6",
            corners="square",
            from_top="150",
            from_bottom="225",
        ),
        "hinge cup": _habits(
            steps=("900: 2", "1600: 3", "2000: 4", "2400: 5"),
            cup="35",
            cup_from_edge="5",
            depth="13",
            from_ends="100",
            pilot="2.5 x 10",
        ),
        "hinge pivot": _habits(from_edge="40"),
        "stay": _habits(opens="90 deg", beside="12", fixing="3 x 10"),
        "stay lid stay": _habits(
            behind="40",
            leant_on=Default("20 kg", "common practice, no source: an arm and what it leans with"),
        ),
        "stay gas strut": _habits(spare="5"),
        "lock": _habits(fit="0.3", extra_depth="0.5", faceplate_corner="0", height="1000"),
        "drawer": _habits(
            kind="side slides",
            sides="15",
            above="6",
            behind="3",
            bottom="9",
            bottom_board="plywood",
            bottom_groove="7",
            bottom_clearance="0.5",
            bottom_span=Default(
                "84", "common practice, no source: 6 up to 500 wide, 9 up to 750, 12 up to 1000"
            ),
            load=Default("15 lb/ft2", "ANSI/KCMA A161.1, drawers: 15 lb/ft2, drawn 25 000 times"),
            joint="dowel",
            slope="1 in 8",
            tails_every="35",
            pin="10",
            finger="10",
            dowel="8 x 30",
            screw="4 x 45",
            fixings_every="40",
            fixings_in="16",
        ),
        "drawer side slides": _habits(
            slides=Default("12.7", "half an inch, what slides of this kind take; from memory"),
            lengths_every="50",
            below="12",
            bottom_up="12",
        ),
        "drawer under slides": _habits(
            below="14",
            bottom_up=Default("13", f"{_UNDER}: 12 to 13 under the bottom"),
            inside_less=Default("42", f"{_UNDER}: 42 to 43 for sides up to 16"),
            thickest_side=Default("16", _UNDER),
            back_notch=Default("35 x 13", f"{_UNDER}: so that the runners go through"),
            lengths_every="50",
        ),
        "drawer wooden runners": _habits(
            below="20",
            bottom_up="12",
            beside="1",
            runner="30 x 20",
            kicker_gap="2",
            set_back="20",
        ),
        "finish": _habits(
            kind="none",
            primer_coats="1",
            top_coats="2",
            primer_covers="11 m2 per litre",
            top_coat_covers="12 m2 per litre",
            spare="15 %",
        ),
        "moisture": _habits(
            made=Default("8 %", _HANDBOOK), driest=Default("6 %", _HANDBOOK), dampest="11 %"
        ),
        "boring": _habits(
            pins="5 x 13",
            least_pin="7",
            rows="shared out",
            pitch="32",
            from_front="37",
            from_back="37",
            from_ends="64",
            web="5",
            behind="2",
            plate_holes="5 x 12",
            plate_pitch="32",
            slide_holes="5 x 12",
            dowel="8 x 30",
            dowel_pitch="128",
            dowel_from_edge="50",
            loose_tenon="6 x 30 x 30",
            tenon_play="2",
            screw="7 x 50",
            screw_head="10 x 4",
            screw_pilot="5",
            pocket_screw="4 x 32",
            pocket="9.5",
        ),
        "shelf": _habits(
            clearance="1",
            set_back="5",
            load=Default("15 lb/ft2", _SHELVES),
            sag=Default("1/16 in per foot", _SHELVES),
        ),
        "shop": _habits(
            bench_paper="A4",
            drawing_paper="A3",
            print_to="0.5",
            print_glass_and_pockets_to="0.1",
        ),
        "saw": _habits(blade="254", most_height="79", tilts="left", kerf="3.2", dado_set="203"),
        "router": _habits(cutters=("6", "8", "12"), inside_corners="keep"),
        "layer names": _habits(
            order=" ".join(OURS.order),
            between="underscore",
            depth_mark=OURS.depth_mark,
            cutter_mark=OURS.cutter_mark,
            decimal_sign="point",
            slot=OURS.slot,
            pocket=OURS.pocket,
            groove=OURS.groove,
            bore=OURS.bore,
            through=OURS.through,
            stock=OURS.stock,
            datum=OURS.datum,
            notes=OURS.notes,
        ),
        "clamps": _habits(owned="12", caul="0", glue_minutes="12"),
        "blanks": _habits(
            length="25",
            width="6",
            panel="6",
            panel_planing="2",
            filler="6",
            waste="25 %",
            edge_band_spare="10 %",
            sheet_trim="0",
            keep_offcut="100 x 400",
        ),
        "accuracy": _habits(
            reading="1.5",
            marking="0.3",
            slot="0.2",
            clamping="0.3",
            hanging="0.5",
            marked="together",
        ),
        "limits": _habits(
            groove_wall="5",
            engagement="5",
            tongue_spare="1",
            pocket_wall="6",
            behind_slot="10",
            below_guide="10",
            passing="6",
            uneven_gap="3",
            reach_spare="5 %",
            screw_in_timber="38",
            one_person="25 kg",
        ),
    }
)

INCH_DEFAULTS: Mapping[str, Mapping[str, Default]] = MappingProxyType(
    {
        "cabinet": _habits(front_gap="3.175", edge_reveal="1.5875"),
        "back": _habits(thickness="6.35", groove="6.35", from_back="12.7", clearance="0.79375"),
        "face frame": _habits(
            thickness="19.05",
            wall_stiles="38.1",
            centre_stiles="38.1",
            rails="38.1",
            scribe="3.175",
        ),
        "shop": _habits(
            bench_paper=Default("letter", "ASME Y14.1 (8 1/2 x 11 in), from memory"),
            drawing_paper=Default("tabloid", "ASME Y14.1, size B (11 x 17 in), from memory"),
        ),
        # cutters are sold in sixteenths there: 1/2 x 3/8 with fillets of 1/16, and so on
        "sticking chamfer": _habits(width="7.9375", depth="7.9375"),
        "sticking ovolo": _habits(width="12.7", depth="9.525", fillet="1.5875"),
        "sticking ogee": _habits(width="14.2875", depth="9.525", fillet="1.5875"),
        "sticking cove": _habits(width="12.7", depth="9.525", fillet="1.5875"),
        "sticking bead": _habits(round="7.9375", quirk="1.5875", sunk="0.396875"),
        # boards, slides and bits in fractions of an inch: sides 5/8, bottom 3/8 in grooves 1/4
        "drawer": _habits(
            sides="15.875",
            above="6.35",
            behind="3.175",
            bottom="9.525",
            bottom_groove="6.35",
            bottom_clearance="0.79375",
            tails_every="34.925",
            pin="9.525",
            finger="9.525",
            dowel="7.9375 x 31.75",
            screw="4.1656 x 44.45",
            fixings_every="38.1",
            fixings_in="15.875",
        ),
        "drawer side slides": _habits(lengths_every="50.8", below="12.7", bottom_up="12.7"),
        "drawer under slides": _habits(
            below="14.2875",
            bottom_up="12.7",
            inside_less="42.8625",
            back_notch="34.925 x 12.7",
            lengths_every="76.2",
        ),
        "drawer wooden runners": _habits(
            below="19.05",
            bottom_up="12.7",
            beside="1.5875",
            runner="31.75 x 19.05",
            kicker_gap="1.5875",
            set_back="19.05",
        ),
    }
)
"""What a design in inches takes in place of the above."""

BAND_DEFAULTS: Mapping[str, Mapping[str, Default]] = MappingProxyType(
    {
        "rail": _habits(tenons="1", underside="straight"),
        "infill": _habits(wide="1", high="1"),
    }
)
"""What a line of a leaf's list takes beside its size, for a rail and for what stands between."""
