"""Panels of sheet material, plywood or fibreboard: as thick as their groove, and they do not move.

section at one edge (face up)
    ______                  frame
          |___________
    groove|___________      panel, its thickness throughout
    ______|                 clearance left at the bottom of the groove
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.catalog.boards import Board
from parametric.figures import Figure, named
from parametric.infill.panel import Panel, PanelBlock, PanelTongue
from parametric.names import join
from parametric.written import Name


class BoardPanelSpec(PanelBlock):
    """A panel of sheet material as written."""

    kind: Literal["board"]
    board: Name


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPanel(Panel):
    """A panel of sheet material resolved, mm: its engagement is the same in every season."""

    field_below_face: Figure
    volume: Figure
    weight: Figure

    @property
    def tongue(self) -> PanelTongue | None:
        """None: it goes into its groove as thick as it is."""
        return None


def size_board_panel(
    spec: BoardPanelSpec,
    *,
    name: str,
    opening_width: Figure,
    opening_height: Figure,
    frame: Figure,
    board: Board,
) -> BoardPanel:
    """Size the panel: opening + 2 (groove - clearance), both ways.

    Args:
        spec: the panel as written.
        name: its name (`leaf A / panel`).
        opening_width: between the stiles, mm.
        opening_height: between the rails, mm.
        frame: thickness of the frame, mm.
        board: its density.

    Source: common practice, no source; that sheet material stands still is taken from the same.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    upright = spec.grain == "upright"
    opening_across = at("opening across the grain", opening_width if upright else opening_height)
    opening_along = at("opening along the grain", opening_height if upright else opening_width)
    groove_width, groove_depth = (
        at("groove width", spec.groove[0]),
        at("groove depth", spec.groove[1]),
    )
    clearance = at("clearance", spec.clearance)
    end_clearance = at(
        "end clearance", spec.clearance if spec.end_clearance is None else spec.end_clearance
    )
    across = at("size across the grain", opening_across + 2 * (groove_depth - clearance))
    along = at("size along the grain", opening_along + 2 * (groove_depth - end_clearance))
    thickness = at("thickness", spec.thickness)
    engagement = at("engagement", (across - opening_across) / 2)
    volume = at("volume", across * along * thickness, "mm3")
    return BoardPanel(
        name=name,
        grain=spec.grain,
        groove_by=spec.groove_by,
        material=board,
        groove_width=groove_width,
        groove_depth=groove_depth,
        opening_across=opening_across,
        opening_along=opening_along,
        across=across,
        along=along,
        thickness=thickness,
        movement=at("seasonal movement", Figure(0.0)),
        engagement_dry=engagement,
        engagement_made=engagement,
        engagement_damp=engagement,
        end_engagement=at("engagement at the ends", (along - opening_along) / 2),
        field_below_face=at("face below the frame's face", (frame - thickness) / 2),
        volume=volume,
        weight=at("weight", volume * board.density / 1e9, "kg"),
    )
