"""Panes, their tape and their mitred stops, centred in the leaf's thickness."""

from __future__ import annotations

from parametric.catalog.glass_facts import DENSITY
from parametric.infill.glass import (
    Pane,
    Stops,
    glass_name,
    pane_blank,
    stop_blank,
    stop_mitres,
    tape_blank,
    tape_window,
)
from parametric.model import Cut, Making, Material, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import SAME, Outline, Vertex, backwards, no_short_edges, turned_over
from parametric.parts.arched_stops import arched_stops
from parametric.parts.lying import DOWN, LEFT, RIGHT, UP
from parametric.parts.planted_bars import planted_tapes
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite

TAPE = Material(name="glazing tape", look="tape", density=0.0)


def glazing_parts(leaf: Leaf) -> tuple[Part, ...]:
    """Glass first, then stops, then tape, lite by lite."""
    return (
        *(_glass(leaf, lite, pane) for lite in leaf.lites for pane in lite.panes),
        *(stop for lite in leaf.lites for pane in lite.panes for stop in _stops(leaf, lite, pane)),
        *(tape for lite in leaf.lites for pane in lite.panes for tape in _tapes(leaf, lite, pane)),
        *planted_tapes(leaf),
    )


def _glass(leaf: Leaf, lite: Lite, pane: Pane) -> Part:
    """Between stops it stands in the middle of the leaf; in a rebate it is bedded on the lip.

    A shaped pane that is higher on the left is another one turned about: the glazier is asked
    for both as one.
    """
    if lite.rebate is None:
        back = float(leaf.thickness / 2 + pane.thickness / 2)
    else:
        back = float(leaf.thickness - lite.rebate.depth + pane.tape + pane.thickness)
    width, height = float(pane.width), float(pane.height)
    cuts: tuple[Cut, ...] = ()
    placement = _at(pane, back)
    if pane.outline is not None:
        outline = pane.outline
        if pane.edges[0] > pane.edges[1]:
            outline = turned_over(outline, across=width)
            placement = Placement(
                origin=(float(pane.left) + width, back - float(pane.thickness), float(pane.foot)),
                x=LEFT,
                y=UP,
            )
        cuts = (
            Shaped(
                name="shaped edge",
                face="high face",
                outline=_off(outline, width, height),
                depth=pane.thickness,
                making=Making(by="bench", tool="cut by the glazier to the template"),
            ),
        )
    return Part(
        name=pane.name,
        noun=f"{pane.kind} unit" if pane.unit is not None else f"{pane.kind} glass",
        mark="G",
        material=_glass_material(pane),
        blank=pane_blank(pane),
        placement=placement,
        cuts=cuts,
    )


def _glass_material(pane: Pane) -> Material:
    """What it is made of; an insulated unit's density is that of its glass shared over the whole."""
    density = (
        DENSITY if pane.unit is None else DENSITY * (pane.unit[0] + pane.unit[2]) / pane.thickness
    )
    return Material(name=glass_name(pane), look="glass", density=density)


def _off(outline: Outline, width: float, height: float) -> Outline:
    """What is cut off a pane's rectangle above its curved edge.

    The pane stands on one straight edge; its curve runs from the top of its right side to
    the top of its left.
    """
    feet = [i for i, vertex in enumerate(outline) if abs(vertex.y) < SAME]
    right = max(feet, key=lambda i: outline[i].x)
    curve = (*outline[right + 1 :], *outline[:right])[: len(outline) - 2]
    return tuple(no_short_edges([*backwards(curve), Vertex(width, height), Vertex(0.0, height)]))


def _at(pane: Pane, back: float) -> Placement:
    """A sheet the size of the pane with its back face at a depth in the leaf."""
    return Placement(origin=(float(pane.left), back, float(pane.foot)), x=RIGHT, y=UP)


def _place(lite: Lite, pane: Pane) -> str:
    """What stops and tape are named by: the opening, or one of its panes where it has several."""
    return lite.name if len(lite.panes) == 1 else pane.name


def _stops(leaf: Leaf, lite: Lite, pane: Pane) -> list[Part]:
    """Four to a face: the low edge against the frame, so the mitres run in from it."""
    held = pane.stops
    if held is None:
        return []
    low, right = float(held.left), float(held.left + held.across)
    down, top = float(held.foot), float(held.foot + held.up)
    runs = (
        ("bottom", held.across, (low, down), RIGHT, UP),
        ("top", held.across, (right, top), LEFT, DOWN),
        ("left", held.up, (low, top), DOWN, RIGHT),
        ("right", held.up, (right, down), UP, LEFT),
    )
    stops: list[Part] = []
    for face, back in _stop_backs(leaf, pane, held):
        if held.arch is not None:
            stops += arched_stops(leaf, _place(lite, pane), face, held, held.arch, back)
            continue
        for word, length, (x, z), along, across in runs:
            stops.append(
                Part(
                    name=join(_place(lite, pane), f"{face} {word} stop"),
                    noun="stop across" if length is held.across else "stop upright",
                    mark="L",
                    material=leaf.material,
                    blank=stop_blank(held, length),
                    placement=Placement(origin=(x, back, z), x=along, y=across),
                    cuts=stop_mitres(),
                    faces={"low edge": "edge against the frame", "high edge": "sight edge"},
                )
            )
    return stops


def _stop_backs(leaf: Leaf, pane: Pane, held: Stops) -> tuple[tuple[str, float], tuple[str, float]]:
    """How deep in the leaf the back of the front stops and of the back stops lies."""
    middle, half = float(leaf.thickness / 2), float(pane.thickness / 2)
    tape, deep = float(pane.tape), float(held.depth)
    return ("front", middle - half - tape), ("back", middle + half + tape + deep)


def _tape_cuts(pane: Pane) -> tuple[Cut, ...]:
    """What the tape leaves free; of a shaped pane also what is outside the glass."""
    if pane.outline is None or pane.stops is None or pane.stops.arch is None:
        return (tape_window(pane),)
    laid = Making(by="bench", tool="tape applied in strips")
    return (
        Shaped(
            name="edge of the glass",
            face="high face",
            outline=_off(pane.outline, float(pane.width), float(pane.height)),
            depth=pane.tape,
            making=laid,
        ),
        Shaped(
            name="sight size",
            face="high face",
            outline=pane.stops.arch.sight,
            depth=pane.tape,
            making=laid,
        ),
    )


def _tapes(leaf: Leaf, lite: Lite, pane: Pane) -> list[Part]:
    if float(pane.tape) == 0 or pane.stops is None:
        return []
    middle, half = float(leaf.thickness / 2), float(pane.thickness / 2)
    return [
        Part(
            name=join(_place(lite, pane), f"{face} tape"),
            noun="glazing tape",
            mark="Z",
            material=TAPE,
            blank=tape_blank(pane),
            placement=_at(pane, back),
            cuts=_tape_cuts(pane),
            supplied=True,
        )
        for face, back in (("front", middle - half), ("back", middle + half + float(pane.tape)))
    ]
