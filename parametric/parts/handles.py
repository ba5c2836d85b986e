"""Bar handles and knobs: their holes through whatever piece stands there, and their bodies."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hangings.hanging import Side
from parametric.hardware.handle import Handle, handle_blank, handle_holes, handle_shape
from parametric.model import Cut, Face, Material, Part, Placement
from parametric.names import join
from parametric.parts.lying import LEFT, RIGHT, UP, rail_left
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField
from parametric.resolve.rail import Rail

METAL = Material(name="metal", look="metal", density=0.0)


def in_stile(leaf: Leaf, side: Side, front: Face) -> Iterator[Cut]:
    """The holes of a door's handle, through the stile that opens it."""
    handle = leaf.handle
    if handle is None or handle.side != side:
        return
    _, up = handle.holes[0]
    yield handle_holes(
        handle,
        face=front,
        u=float(up + leaf.trim),
        v=float(handle.from_edge),
        along="u",
        through=float(leaf.thickness),
    )


def in_panel(leaf: Leaf, field: PanelField, left: float, foot: float) -> Iterator[Cut]:
    """The holes of a drawer's handle, through the panel behind them.

    Args:
        leaf: the front.
        field: one panel of it.
        left: the panel's left edge from the leaf's, mm.
        foot: its foot above the leaf's, mm.
    """
    handle = leaf.handle
    if handle is None or panel_behind(leaf, handle) is not field:
        return
    x, up = (float(place) for place in handle.holes[0])
    last, _ = (float(place) for place in handle.holes[-1])
    upright = field.panel.grain == "upright"
    yield handle_holes(
        handle,
        face="high face",
        u=up - foot if upright else x - left,
        # an upright panel's width runs to the left, from its right edge
        v=left + float(field.panel.width) - last if upright else up - foot,
        along="v" if upright else "u",
        through=float(field.panel.thickness),
    )


def in_rail(leaf: Leaf, rail: Rail) -> Iterator[Cut]:
    """The holes of a drawer's handle, through the rail behind them."""
    handle = leaf.handle
    if handle is None or handle.side is not None or panel_behind(leaf, handle) is not None:
        return
    x, up = (float(place) for place in handle.holes[0])
    if float(rail.foot) < up < float(rail.top):
        yield handle_holes(
            handle,
            face="high face",
            u=x - rail_left(leaf, rail),
            v=up - float(rail.foot),
            along="u",
            through=float(leaf.thickness),
        )


def panel_behind(leaf: Leaf, handle: Handle) -> PanelField | None:
    """The panel that a drawer's handle stands on; None where it stands on wood of the frame."""
    if handle.side is not None:
        return None
    up = float(handle.up)
    return next(
        (
            field
            for field in leaf.panels
            if exceeds(up, field.foot) and exceeds(field.foot + field.height, up)
        ),
        None,
    )


def handle_parts(leaf: Leaf) -> Iterator[Part]:
    """The handle itself on the face: bought, shown where it stands."""
    handle = leaf.handle
    if handle is None:
        return
    blank = handle_blank(handle)
    x, up = float(handle.x), float(handle.up)
    long, wide = float(blank.length) / 2, float(blank.width) / 2
    placement = (
        Placement(origin=(x - long, 0.0, up - wide), x=RIGHT, y=UP)
        if handle.level
        else Placement(origin=(x + wide, 0.0, up - long), x=UP, y=LEFT)
    )
    yield Part(
        name=join(leaf.name, "handle"),
        noun="bar handle" if handle.kind == "bar" else "knob",
        mark="U",
        material=METAL,
        blank=blank,
        placement=placement,
        cuts=handle_shape(handle),
        supplied=True,
    )
