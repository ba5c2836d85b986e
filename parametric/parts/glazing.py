"""Panes, their tape and their mitred stops, centred in the leaf's thickness."""

from __future__ import annotations

from parametric.catalog.glass_facts import DENSITY
from parametric.figures import Figure
from parametric.infill.glass import (
    Pane,
    pane_blank,
    stop_blank,
    stop_mitres,
    tape_blank,
    tape_window,
)
from parametric.model import Material, Part, Placement
from parametric.names import join
from parametric.resolve.leaf import Leaf, Lite

TAPE = Material(name="glazing tape", look="tape", density=0.0)
RIGHT, LEFT, UP, DOWN = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)


def glazing_parts(leaf: Leaf) -> tuple[Part, ...]:
    """Glass first, then stops, then tape, lite by lite."""
    return (
        *(_glass(leaf, lite) for lite in leaf.lites),
        *(stop for lite in leaf.lites for stop in _stops(leaf, lite)),
        *(tape for lite in leaf.lites for tape in _tapes(leaf, lite)),
    )


def _glass(leaf: Leaf, lite: Lite) -> Part:
    pane = lite.pane
    return Part(
        name=pane.name,
        noun=f"{pane.kind} glass",
        mark="G",
        material=Material(name=f"{pane.kind} glass", look="glass", density=DENSITY),
        blank=pane_blank(pane),
        placement=_in_opening(leaf, lite, float(leaf.thickness / 2 + pane.thickness / 2)),
    )


def _in_opening(leaf: Leaf, lite: Lite, back: float) -> Placement:
    """A sheet the size of the pane with its back face at a depth in the leaf."""
    clearance = lite.pane.clearance
    return Placement(
        origin=(float(leaf.left_stile + clearance), back, float(lite.foot + clearance)),
        x=RIGHT,
        y=UP,
    )


def _stops(leaf: Leaf, lite: Lite) -> list[Part]:
    """Four to a face: the low edge against the frame, so the mitres run in from it."""
    pane = lite.pane
    left, right = float(leaf.left_stile), float(leaf.left_stile + lite.width)
    foot, top = float(lite.foot), float(lite.top)
    runs = (
        ("bottom", pane.stop_across, (left, foot), RIGHT, UP),
        ("top", pane.stop_across, (right, top), LEFT, DOWN),
        ("left", pane.stop_up, (left, top), DOWN, RIGHT),
        ("right", pane.stop_up, (right, foot), UP, LEFT),
    )
    stops = []
    for face, back in _stop_backs(leaf, pane):
        for word, length, (x, z), along, across in runs:
            stops.append(
                Part(
                    name=join(lite.name, f"{face} {word} stop"),
                    noun=_stop_noun(length, pane),
                    mark="L",
                    material=leaf.material,
                    blank=stop_blank(pane, length),
                    placement=Placement(origin=(x, back, z), x=along, y=across),
                    cuts=stop_mitres(),
                    faces={"low edge": "edge against the frame", "high edge": "sight edge"},
                )
            )
    return stops


def _stop_noun(length: Figure, pane: Pane) -> str:
    return "stop across" if length is pane.stop_across else "stop upright"


def _stop_backs(leaf: Leaf, pane: Pane) -> tuple[tuple[str, float], tuple[str, float]]:
    """How deep in the leaf the back of the front stops and of the back stops lies."""
    middle, half = float(leaf.thickness / 2), float(pane.thickness / 2)
    tape, deep = float(pane.tape), float(pane.stop_depth)
    return ("front", middle - half - tape), ("back", middle + half + tape + deep)


def _tapes(leaf: Leaf, lite: Lite) -> list[Part]:
    pane = lite.pane
    if float(pane.tape) == 0:
        return []
    middle, half = float(leaf.thickness / 2), float(pane.thickness / 2)
    return [
        Part(
            name=join(lite.name, f"{face} tape"),
            noun="glazing tape",
            mark="Z",
            material=TAPE,
            blank=tape_blank(pane),
            placement=_in_opening(leaf, lite, back),
            cuts=(tape_window(pane),),
            supplied=True,
        )
        for face, back in (("front", middle - half), ("back", middle + half + float(pane.tape)))
    ]
