"""One door resolved: the opening, the hanging, the leaves and their hardware."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, largest, named
from parametric.hangings import DoorSpec
from parametric.hangings.case_fronts import CaseFronts, LeafStay
from parametric.hangings.hanging import EdgeRole, Fittings, Hanging, Site, Stock
from parametric.hardware.guide import GuideSpec
from parametric.hardware.handle import HandleSpec
from parametric.hardware.hinge import HingeBlock
from parametric.hardware.hinge_kinds import (
    HINGE_KINDS,
    HingeSpec,
    least_gap_of,
    pin_beside_of,
    pin_out_of,
)
from parametric.hardware.lock import LOCK_KINDS, LockBlock, LockSpec
from parametric.hardware.pivot import PivotSpec
from parametric.hardware.pull import PullSpec
from parametric.hardware.stay_kinds import STAY_KINDS, StaySpec
from parametric.hardware.track import Track, TrackSpec, size_track
from parametric.infill.glass import GlassSpec
from parametric.infill.panel import PanelBlock
from parametric.infill.panel_kinds import PANEL_KINDS, PanelSpec
from parametric.joints.joint import JointBlock
from parametric.joints.joint_kinds import JOINT_KINDS, JointSpec
from parametric.model import Placement
from parametric.names import join, leaf_letter
from parametric.problems import Problem, stops
from parametric.profiles.kinds import STICKING_KINDS, StickingSpec
from parametric.profiles.moulding import StickingBlock
from parametric.resolve.calls import called
from parametric.resolve.head import curves_over
from parametric.resolve.hung_sizes import impossible_sizes
from parametric.resolve.leaf import Leaf, LeafParts, resolve_leaf
from parametric.resolve.lite import Sizes
from parametric.resolve.one_size import sizes_in_common
from parametric.resolve.opening import Opening
from parametric.resolve.written_sizes import zero_sizes

AS_MEASURED = Placement()
"""Where the frame of a door stands that is the room's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Door:
    """A door with no choice left.

    `stands` is where its frame stands in the room; `case` the case whose fronts it is, "" for
    a door in a wall; `place` what tells it from the other doors of the job (`door study`), ""
    where there is no other.
    """

    name: str
    written: DoorSpec
    survey: SurveySpec
    opening: Opening
    hanging: Hanging
    leaves: tuple[Leaf, ...]
    track: Track | None
    """What its leaves hang from; None where none of them slides."""
    gaps: tuple[tuple[str, Figure], ...]
    """Gap under the shut leaves at each place the floor was measured."""
    stands: Placement = AS_MEASURED
    case: str = ""
    place: str = ""

    def told(self, words: str) -> str:
        """Words about this door, with its place before them where it is one of several."""
        return f"{self.place[0].upper()}{self.place[1:]}: {words}" if self.place else words


def resolve_one_door(
    design: Design,
    shop: Shop,
    *,
    name: str,
    spec: DoorSpec,
    survey: SurveySpec,
    opening: Opening,
    first: int,
) -> tuple[Door | None, list[Problem]]:
    """Resolve a door that is written, or that a case's fronts come to.

    Args:
        design: the blocks that the door and its leaves call.
        shop: the workshop.
        name: what the door is called; "" for a job's only one.
        spec: the door as written.
        survey: where it goes, as measured.
        opening: the same, worked out.
        first: the number in the job of its first leaf, which gives that leaf its letter.

    Returns:
        The door, None when a stop leaves no size to go on with; and what is wrong with it.
    """
    blocks = tuple(_blocks(design, spec, leaf) for leaf in spec.leaf_blocks)
    track_spec = called(design, spec, "track", TrackSpec)
    nothing = _nothing_written(blocks, track_spec)
    if nothing:
        return None, nothing
    site = _site(opening, survey)
    if misfits := list(spec.misfits(site, design.unit)):
        return None, misfits
    stock = tuple(
        _stock(number, parts.leaf, roles)
        for number, (parts, roles) in enumerate(zip(blocks, spec.roles(), strict=True), first)
    )
    hanging = spec.size(
        site,
        stock,
        _fittings(
            track_spec,
            _hinge(design, spec),
            named("leaf thickness", blocks[0].leaf.thickness),
            _flaps_open(design, spec),
        ),
    )
    absurd = impossible_sizes(hanging, stock, spec, design.unit)
    if absurd:
        return None, list(absurd)
    curves, no_arch = curves_over(design, hanging, [parts.leaf for parts in blocks])
    if no_arch:
        return None, list(no_arch)
    problems: list[Problem] = []
    lines = {
        str(name): named(join("lines", name), up) if isinstance(up, Figure) else up
        for name, up in (survey.lines or {}).items()
    }

    def resolve_leaves(sizes: Sizes) -> list[Leaf]:
        done = []
        for hung, parts, curve in zip(hanging.leaves, blocks, curves, strict=True):
            own = dataclasses.replace(parts, sizes=sizes)
            leaf, found = resolve_leaf(design, shop, own, hung, hanging, curve, lines)
            # Leaves of one block share every line of the file: one of them says what is wrong.
            problems.extend(problem for problem in found if _new(problem, problems))
            if leaf is not None:
                done.append(leaf)
        return done

    leaves = resolve_leaves({})
    if stops(problems):
        return None, problems
    if sizes := sizes_in_common(leaves):
        # A pane's size is in the leaf's weight and in all that hangs on it: the leaf again.
        leaves = resolve_leaves(sizes)
    leaves = _with_strikes(leaves)
    track = None
    if track_spec is not None and hanging.tracks:
        heaviest = largest(*(leaf.weights.estimate for leaf in leaves))
        track = size_track(
            track_spec,
            length=hanging.tracks[0].length,
            heaviest=named("heaviest leaf", heaviest, "kg"),
            board=opening.board,
            screw=named("screw in timber", shop.limits.screw_in_timber),
        )
    gaps = tuple(
        (place, named(f"floor gap {place}", hanging.floor_gap - floor))
        for place, floor in opening.floor.items()
    )
    return (
        Door(
            name=name,
            written=spec,
            survey=survey,
            opening=opening,
            hanging=hanging,
            leaves=tuple(leaves),
            track=track,
            gaps=gaps,
        ),
        problems,
    )


def _with_strikes(leaves: list[Leaf]) -> list[Leaf]:
    """Each leaf with the lock that closes into it."""
    lock = next((leaf.lock for leaf in leaves if leaf.lock is not None), None)
    return [
        leaf if leaf.hung.strike_edge is None else dataclasses.replace(leaf, strike=lock)
        for leaf in leaves
    ]


def _new(problem: Problem, told: list[Problem]) -> bool:
    return all((problem.code, problem.where) != (one.code, one.where) for one in told)


def _site(opening: Opening, survey: SurveySpec) -> Site:
    """The opening as a door is sized from it."""
    rise, wall = survey.floor_in_travel, survey.wall
    return Site(
        widest=opening.widest,
        narrowest=opening.narrowest,
        clear=opening.clear,
        clear_left=opening.clear_left,
        head=opening.head,
        foot=named("foot of the opening", 0.0) if opening.foot is None else opening.foot,
        wall=named("thickness of the wall", wall) if isinstance(wall, Figure) else None,
        rise=named("floor in the travel", rise) if isinstance(rise, Figure) else None,
    )


def _stock(number: int, leaf: LeafSpec, roles: tuple[EdgeRole, EdgeRole]) -> Stock:
    left, right = leaf.stile_widths(roles)
    return Stock(
        letter=leaf_letter(number),
        thickness=named("leaf thickness", leaf.thickness),
        left_stile=named("stile width", left),
        right_stile=named("stile width", right),
    )


PIN_OUT = 6.0
"""Where no hinge is named, mm: half the knuckle of a butt hinge. Common practice, no source."""


def stay_of(design: Design, called_by: LeafStay) -> StaySpec | None:
    """The stay that a flap calls, of any kind; None where there is none, or it says so."""
    if called_by.name == "none":
        return None
    found = design.block("stay", called_by.name)
    assert found is None or isinstance(found, StaySpec), STAY_KINDS
    return found


def _flaps_open(design: Design, spec: DoorSpec) -> tuple[Figure | None, ...]:
    """How far the stay of each leaf holds it open, deg; None of what is no flap, or has none."""
    if not isinstance(spec, CaseFronts):
        return ()
    stays = [None if one is None else stay_of(design, one) for one in spec.leaf_stays]
    return tuple(None if stay is None else stay.opens for stay in stays)


def _fittings(
    track: TrackSpec | None,
    hinge: HingeSpec | None,
    thickness: Figure,
    flaps_open: tuple[Figure | None, ...],
) -> Fittings:
    """The places that the door's hardware asks for."""
    out = Figure(PIN_OUT) if hinge is None else pin_out_of(hinge, thickness)
    return Fittings(
        off_wall=None if track is None else track.off_wall,
        spacing=None if track is None else track.spacing,
        pin_out=named("pin proud of the face", out),
        pin_beside=None if hinge is None else pin_beside_of(hinge),
        pivot_in=hinge.from_edge if isinstance(hinge, PivotSpec) else None,
        least_gap=None if hinge is None else least_gap_of(hinge),
        flaps_open=flaps_open,
    )


def _hinge(design: Design, spec: DoorSpec) -> HingeSpec | None:
    """The hinges that a door calls, of any kind."""
    found = called(design, spec, "hinge", HingeBlock)
    if found is None:
        return None
    assert isinstance(found, HingeSpec), HINGE_KINDS
    return found


def _lock(design: Design, spec: DoorSpec) -> LockSpec | None:
    """The lock or latch that a door calls."""
    found = called(design, spec, "lock", LockBlock)
    if found is None:
        return None
    assert isinstance(found, LockSpec), LOCK_KINDS
    return found


def _sticking(design: Design, leaf: LeafSpec) -> StickingSpec | None:
    """The moulding that a leaf calls; None where its edges are square."""
    found = called(design, leaf, "sticking", StickingBlock)
    if found is None:
        return None
    assert isinstance(found, StickingSpec), STICKING_KINDS
    return found


def _panel(design: Design, leaf: LeafSpec) -> PanelSpec | None:
    """The panel that a leaf calls, of any kind."""
    found = called(design, leaf, "panel", PanelBlock)
    if found is None:
        return None
    assert isinstance(found, PanelSpec), PANEL_KINDS
    return found


def _nothing_written(blocks: tuple[LeafParts, ...], track: TrackSpec | None) -> list[Problem]:
    """A stop for every size of 0, each line of the file once."""
    found: list[Problem] = []
    for parts in blocks:
        for problem in zero_sizes(
            (
                ("leaf", parts.leaf),
                ("panel", parts.panel),
                ("glass", parts.glass),
                ("joint", parts.joint),
                ("track", track),
                ("guide", parts.guide),
                ("pull", parts.pull),
                ("hinge", parts.hinge),
            )
        ):
            found += [problem] if _new(problem, found) else []
    return found


def _blocks(design: Design, spec: DoorSpec, name: str | None) -> LeafParts:
    """The blocks that one leaf of the door calls; the reader has seen that they are there."""
    leaf = design.block("leaf", name)
    assert isinstance(leaf, LeafSpec), "the reader has seen that it is there"
    joint = called(design, leaf, "joint", JointBlock)
    assert isinstance(joint, JointSpec), JOINT_KINDS
    nouns = {band.kind for band in leaf.top_to_bottom}
    return LeafParts(
        leaf=leaf,
        joint=joint,
        panel=_panel(design, leaf) if "panel" in nouns else None,
        glass=called(design, leaf, "glass", GlassSpec) if "lite" in nouns else None,
        guide=called(design, spec, "guide", GuideSpec),
        pull=called(design, spec, "pull", PullSpec),
        handle=called(design, spec, "pull", HandleSpec),
        hinge=_hinge(design, spec),
        lock=_lock(design, spec),
        sticking=_sticking(design, leaf),
    )
