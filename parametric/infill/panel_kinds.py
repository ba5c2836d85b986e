"""Every kind of panel there is, by the word it is written with."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, assert_never

from parametric.catalog.boards import Board
from parametric.catalog.timbers import Timber
from parametric.figures import Figure
from parametric.infill.board_panel import BoardPanel, BoardPanelSpec, size_board_panel
from parametric.infill.flat_panel import (
    FlatPanel,
    FlatPanelSpec,
    flat_panel_cuts,
    size_flat_panel,
)
from parametric.infill.panel import PanelBlock, Seasons
from parametric.infill.raised_panel import (
    RaisedPanel,
    RaisedPanelSpec,
    raised_panel_cuts,
    size_raised_panel,
)
from parametric.model import Blank, Cut, Material

PanelSpec = RaisedPanelSpec | FlatPanelSpec | BoardPanelSpec
AnyPanel = RaisedPanel | FlatPanel | BoardPanel

PANEL_KINDS: Mapping[str, type[PanelBlock]] = MappingProxyType(
    {"raised": RaisedPanelSpec, "flat": FlatPanelSpec, "board": BoardPanelSpec}
)
PANEL_NOUNS: tuple[str, ...] = tuple(f"{kind} panel" for kind in PANEL_KINDS)
"""What the shop calls them; their sizes are printed rounded down, so that they go in."""


def size_panel(
    spec: PanelSpec,
    *,
    name: str,
    opening_width: Figure,
    opening_height: Figure,
    frame: Figure,
    material: Timber | Board,
    sawn: Literal["flat", "quarter"],
    seasons: Seasons,
    blade_height: Figure,
) -> AnyPanel:
    """A panel's numbers, by its kind; the arguments are those of the kinds' own functions."""
    match spec:
        case RaisedPanelSpec():
            assert isinstance(material, Timber), "a raised panel is of timber"
            return size_raised_panel(
                spec,
                name=name,
                opening_width=opening_width,
                opening_height=opening_height,
                frame=frame,
                timber=material,
                sawn=spec.sawn or sawn,
                density=material.density,
                seasons=seasons,
                blade_height=blade_height,
            )
        case FlatPanelSpec():
            assert isinstance(material, Timber), "a flat panel is of timber"
            return size_flat_panel(
                spec,
                name=name,
                opening_width=opening_width,
                opening_height=opening_height,
                frame=frame,
                timber=material,
                sawn=spec.sawn or sawn,
                density=material.density,
                seasons=seasons,
            )
        case BoardPanelSpec():
            assert isinstance(material, Board), "a board panel is of sheet material"
            return size_board_panel(
                spec,
                name=name,
                opening_width=opening_width,
                opening_height=opening_height,
                frame=frame,
                board=material,
            )
        case _:
            assert_never(spec)


def panel_noun(panel: AnyPanel) -> str:
    """What the shop calls it."""
    match panel:
        case RaisedPanel():
            return "raised panel"
        case FlatPanel():
            return "flat panel"
        case BoardPanel():
            return "board panel"
        case _:
            assert_never(panel)


def panel_stuff(panel: AnyPanel) -> Material:
    """What it is made of."""
    return Material(
        name=panel.material.name,
        look="timber" if panel.moves else "board",
        density=panel.material.density,
    )


def panel_blank(panel: AnyPanel) -> Blank:
    """The panel before its cuts: along the grain first."""
    return Blank(length=panel.along, width=panel.across, thickness=panel.thickness)


def panel_cuts(panel: AnyPanel) -> tuple[Cut, ...]:
    """What is taken off its edges."""
    match panel:
        case RaisedPanel():
            return raised_panel_cuts(panel)
        case FlatPanel():
            return flat_panel_cuts(panel)
        case BoardPanel():
            return ()
        case _:
            assert_never(panel)


def in_groove(panel: AnyPanel) -> Figure:
    """How thick what stands in the groove is, mm."""
    return panel.thickness if panel.tongue is None else panel.tongue.thickness


def behind_groove(panel: AnyPanel) -> Figure:
    """How far its back stands behind what is in the groove, mm."""
    return Figure(0.0) if panel.tongue is None else panel.tongue.back
