"""A door resolved: the opening, the hanging, the leaves and their hardware."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.design.settings import FinishSpec
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, collect, largest, named
from parametric.hangings import DoorSpec
from parametric.hangings.bypass import Bypass, size_bypass
from parametric.hardware.guide import GuideSpec
from parametric.hardware.pull import PullSpec
from parametric.hardware.track import Track, TrackSpec, size_track
from parametric.infill.glass import GlassSpec
from parametric.infill.raised_panel import RaisedPanelSpec
from parametric.joints.loose_tenon import LooseTenonSpec
from parametric.names import leaf_letter
from parametric.problems import Problem, stops
from parametric.resolve.calls import called
from parametric.resolve.leaf import Leaf, LeafParts, Side, resolve_leaf
from parametric.resolve.opening import Opening, resolve_opening
from parametric.resolve.pins import compare_pins
from parametric.resolve.written_sizes import zero_sizes
from parametric.units import length_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Door:
    """A door with no choice left."""

    name: str
    written: DoorSpec
    survey: SurveySpec
    opening: Opening
    hanging: Bypass
    leaves: tuple[Leaf, ...]
    track: Track
    gaps: tuple[tuple[str, Figure], ...]
    """Gap under the shut leaves at each place the floor was measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Resolved:
    """The whole design, resolved; `job` is named as papers and files name it."""

    job: str
    design: Design
    shop: Shop
    door: Door
    finish: FinishSpec | None


def resolve(design: Design, shop: Shop) -> tuple[Resolved | None, tuple[Problem, ...]]:
    """Resolve the design's door; None when a stop leaves no size to go on with."""
    name, spec = design.doors[0]
    survey = design.block("survey", spec.in_)
    assert isinstance(survey, SurveySpec)
    opening, found = resolve_opening(
        survey, shop, fit="covers" if spec.hung == "on the wall" else "fits", unit=design.unit
    )
    problems = list(found)
    if opening is None:
        return None, tuple(problems)
    door, more = _resolve_door(design, shop, name, spec, survey, opening)
    problems += more
    if door is None:
        return None, tuple(problems)
    resolved = Resolved(
        job=design.titled,
        design=design,
        shop=shop,
        door=door,
        finish=called(design, spec, "finish", FinishSpec),
    )
    known = collect(resolved.door)
    for pins in (spec.pinned, door.leaves[0].written.pinned):
        problems += compare_pins(pins or {}, known, design.unit)
    return resolved, tuple(problems)


def _resolve_door(
    design: Design, shop: Shop, name: str, spec: DoorSpec, survey: SurveySpec, opening: Opening
) -> tuple[Door | None, list[Problem]]:
    blocks, leaf_spec = _blocks(design, spec)
    track_spec = called(design, spec, "track", TrackSpec)
    assert track_spec is not None
    nothing = list(
        zero_sizes(
            (
                ("leaf", leaf_spec),
                ("panel", blocks.panel),
                ("glass", blocks.glass),
                ("joint", blocks.joint),
                ("track", track_spec),
                ("guide", blocks.guide),
                ("pull", blocks.pull),
            )
        )
    )
    if nothing:
        return None, nothing
    hanging = size_bypass(
        spec,
        widest=opening.widest,
        narrowest=opening.narrowest,
        clear=opening.clear,
        clear_left=opening.clear_left,
        head=opening.head,
        stile=named("stile width", leaf_spec.stiles),
        thickness=named("leaf thickness", leaf_spec.thickness),
        off_wall=track_spec.off_wall,
        spacing=track_spec.spacing,
    )
    absurd = _no_size(hanging, design)
    if absurd:
        return None, absurd
    leaves: list[Leaf] = []
    problems: list[Problem] = []
    sides: tuple[Side, ...] = ("left", "right")
    for index, side in enumerate(sides):
        leaf, found = resolve_leaf(
            design,
            shop,
            blocks,
            letter=leaf_letter(index),
            width=hanging.leaf_width,
            height=hanging.leaf_height,
            floor_gap=hanging.floor_gap,
            pull_side=None if blocks.pull is None else side,
        )
        # Twins share every line of the file: one of them says what is wrong for both.
        problems += found if not problems else ()
        if leaf is not None:
            leaves.append(leaf)
    if stops(problems):
        return None, problems
    heaviest = largest(*(leaf.weights.estimate for leaf in leaves))
    track = size_track(
        track_spec,
        length=hanging.track_length,
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


def _blocks(design: Design, spec: DoorSpec) -> tuple[LeafParts, LeafSpec]:
    """The blocks the door and its leaf call; the reader has seen that they are there."""
    leaf = called(design, spec, "leaf", LeafSpec)
    assert leaf is not None
    joint = called(design, leaf, "joint", LooseTenonSpec)
    assert joint is not None
    nouns = {band.kind for band in leaf.top_to_bottom}
    return (
        LeafParts(
            leaf=leaf,
            joint=joint,
            panel=called(design, leaf, "panel", RaisedPanelSpec) if "panel" in nouns else None,
            glass=called(design, leaf, "glass", GlassSpec) if "lite" in nouns else None,
            guide=called(design, spec, "guide", GuideSpec),
            pull=called(design, spec, "pull", PullSpec),
        ),
        leaf,
    )


def _no_size(hanging: Bypass, design: Design) -> list[Problem]:
    """A leaf of zero or negative size, before anything is built on it."""
    found = []
    for figure, cause in (
        (hanging.leaf_width, "the opening's widths, the laps and the overlap"),
        (hanging.leaf_height, "the opening's heights, the head lap and the floor gap"),
    ):
        if float(figure) <= 0:
            found.append(
                Problem(
                    code="no_size",
                    level="stop",
                    message=f"The {figure.name} comes to {length_text(float(figure), design.unit)}. "
                    f"It follows from {cause}.",
                    about=figure.name or "",
                    found=length_text(float(figure), design.unit),
                    allowed="more than 0",
                    fix="Look at those lines again.",
                    no_size=True,
                )
            )
    return found
