"""Panels, floating in their grooves; the raised face looks to the front."""

from __future__ import annotations

from parametric.infill.raised_panel import panel_blank, panel_cuts
from parametric.model import Material, Part, Placement
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField


def panel_parts(leaf: Leaf) -> tuple[Part, ...]:
    """One part for each panel, centred in its opening, as made."""
    return tuple(_panel(leaf, field) for field in leaf.panels)


def _panel(leaf: Leaf, field: PanelField) -> Part:
    panel = field.panel
    # The tongue is centred in the frame; the back stands the back rebate behind it.
    back = float(leaf.thickness / 2 + panel.tongue_thickness / 2 + panel.back_rebate)
    left = float(leaf.left_stile + (field.width - panel.width) / 2)
    foot = float(field.foot + (field.height - panel.height) / 2)
    if panel.grain == "upright":
        placement = Placement(
            origin=(left + float(panel.width), back, foot), x=(0.0, 0.0, 1.0), y=(-1.0, 0.0, 0.0)
        )
    else:
        placement = Placement(origin=(left, back, foot), x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0))
    return Part(
        name=panel.name,
        noun="raised panel",
        mark="P",
        material=Material(name=panel.timber.name, look="timber", density=panel.timber.density),
        blank=panel_blank(panel),
        placement=placement,
        cuts=panel_cuts(panel),
        faces={"low face": "back", "high face": "face"},
    )
