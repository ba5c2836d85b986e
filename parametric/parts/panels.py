"""Panels, loose in their grooves; a raised face looks to the front."""

from __future__ import annotations

from parametric.infill.panel_kinds import (
    behind_groove,
    in_groove,
    panel_blank,
    panel_cuts,
    panel_noun,
    panel_stuff,
)
from parametric.model import Part, Placement, Shaped
from parametric.parts.handles import in_panel
from parametric.parts.rebates import ARCH, over
from parametric.profiles.meeting import laid
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField


def panel_parts(leaf: Leaf) -> tuple[Part, ...]:
    """One part for each panel, centred in its opening, as made."""
    return tuple(_panel(leaf, field) for field in leaf.panels)


def _panel(leaf: Leaf, field: PanelField) -> Part:
    panel = field.panel
    # What stands in the groove is centred in the frame; the back stands its rebate behind it.
    back = float(leaf.thickness / 2 + in_groove(panel) / 2 + behind_groove(panel))
    left = float(leaf.left_stile + (field.width - panel.width) / 2)
    foot = float(field.foot + (field.height - panel.height) / 2)
    if field.arch is not None:
        foot = float(field.arch.foot)
    if panel.grain == "upright":
        placement = Placement(
            origin=(left + float(panel.width), back, foot), x=(0.0, 0.0, 1.0), y=(-1.0, 0.0, 0.0)
        )
    else:
        placement = Placement(origin=(left, back, foot), x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0))
    return Part(
        name=panel.name,
        noun=panel_noun(panel),
        mark="P",
        material=panel_stuff(panel),
        blank=panel_blank(panel),
        placement=placement,
        cuts=(*_arched_top(field), *panel_cuts(panel), *in_panel(leaf, field, left, foot)),
        faces={"low face": "back", "high face": "face"},
    )


def _arched_top(field: PanelField) -> tuple[Shaped, ...]:
    """What is sawn off above the curve that the panel's edge follows."""
    if field.arch is None:
        return ()
    arch, panel = field.arch, field.panel
    low, high = float(arch.left), float(arch.left + panel.width)
    floor = float(arch.foot)
    waste = over(arch.head.edge(low, high, out=float(arch.out)), floor + float(panel.height))
    outline = (
        laid(waste, (high, floor), (0.0, 1.0), (-1.0, 0.0))
        if panel.grain == "upright"
        else laid(waste, (low, floor), (1.0, 0.0), (0.0, 1.0))
    )
    return (
        Shaped(
            name="arched top",
            face="high face",
            outline=outline,
            depth=panel.thickness,
            making=ARCH,
        ),
    )
