"""Flat panels of solid timber: as thick as their groove, or rebated to a tongue at the edges.

section at one edge (face up)
                 ____________  T          ____________________
    ____________|                        |                     as thick as the groove:
    tongue, tt thick, a long             |____________________ no cut at all
    ____________
                |____________  back, with a back rebate b under the tongue
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, Self

from pydantic import Field, model_validator

from parametric.catalog.timbers import Timber
from parametric.figures import Figure, named, plain
from parametric.infill.panel import Panel, PanelTongue, Seasons, SolidPanelBlock, float_in_groove
from parametric.model import Face, Making, Shaped
from parametric.names import join
from parametric.outlines import Outline, rectangle
from parametric.written import Length, LengthPair, refuse

_SAME = 1e-6


class FlatPanelSpec(SolidPanelBlock):
    """A flat panel as written; without a tongue it goes into its groove as thick as it is."""

    kind: Literal["flat"]
    tongue: LengthPair | None = Field(default=None, description="thick x long")
    back_rebate: Length = Field(description="behind the tongue; 0 for none")

    @model_validator(mode="after")
    def _rebate_leaves_a_tongue(self) -> Self:
        if self.tongue is None and float(self.back_rebate) > 0:
            raise refuse(
                "wrong_value",
                "A flat panel without a tongue has no back rebate: write both or neither.",
                found=plain(self.back_rebate),
                allowed="tongue: thick x long",
                fix="Write `tongue: ` and its sizes, or take the back rebate out.",
                where=self.line("back rebate"),
            )
        return self


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPanel(Panel):
    """A flat panel resolved, mm."""

    tongue: PanelTongue | None
    field_below_face: Figure
    volume: Figure
    weight: Figure


def size_flat_panel(
    spec: FlatPanelSpec,
    *,
    name: str,
    opening_width: Figure,
    opening_height: Figure,
    frame: Figure,
    timber: Timber,
    sawn: Literal["flat", "quarter"],
    density: Figure,
    seasons: Seasons,
) -> FlatPanel:
    """Size the panel by the same sums as a raised one, and its tongue where it has one.

    Args:
        spec: the panel as written.
        name: its name (`leaf A / panel`).
        opening_width: between the stiles, mm.
        opening_height: between the rails, mm.
        frame: thickness of the frame, mm.
        timber: movement coefficients.
        sawn: which of them: tangential for flat-sawn, radial for quarter-sawn.
        density: kg/m3.
        seasons: moisture contents, %.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    sized = float_in_groove(
        spec,
        name=name,
        opening_width=opening_width,
        opening_height=opening_height,
        moves=timber.across(sawn),
        seasons=seasons,
    )
    across, along, thickness = sized.across, sized.along, at("thickness", spec.thickness)
    whole = across * along
    if spec.tongue is None:
        tongue = None
        below = (frame - thickness) / 2
        gross = whole * thickness
    else:
        tongue = PanelTongue(
            thickness=at("tongue thickness", spec.tongue[0]),
            length=at("tongue length", spec.tongue[1]),
            back=at("back rebate", spec.back_rebate),
        )
        below = frame / 2 + tongue.thickness / 2 + tongue.back - thickness
        field = (across - 2 * tongue.length) * (along - 2 * tongue.length)
        gross = field * thickness + (whole - field) * tongue.thickness
    volume = at("volume", gross, "mm3")
    return FlatPanel(
        name=name,
        grain=spec.grain,
        groove_by=spec.groove_by,
        material=timber,
        groove_width=sized.groove_width,
        groove_depth=sized.groove_depth,
        opening_across=sized.opening_across,
        opening_along=sized.opening_along,
        across=across,
        along=along,
        thickness=thickness,
        movement=sized.movement,
        engagement_dry=sized.engagement_dry,
        engagement_made=sized.engagement_made,
        engagement_damp=sized.engagement_damp,
        end_engagement=sized.end_engagement,
        tongue=tongue,
        field_below_face=at("field below the frame's face", below),
        volume=volume,
        weight=at("weight", volume * density / 1e9, "kg"),
    )


def flat_panel_cuts(panel: FlatPanel) -> tuple[Shaped, ...]:
    """The rebates, behind and before, that leave its tongue; none where it is all one thickness."""
    tongue = panel.tongue
    if tongue is None:
        return ()
    before = panel.thickness - tongue.thickness - tongue.back
    making = Making(by="saw", tool="dado set in a clamped fence, panel flat, ends first")
    sides: tuple[tuple[Face, str, Figure], ...] = (
        ("low face", "rebate behind the tongue", tongue.back),
        ("high face", "rebate before the tongue", before),
    )
    return tuple(
        Shaped(name=name, face=face, outline=outline, depth=depth, making=making)
        for face, name, depth in sides
        if float(depth) > _SAME
        for outline in _round_the_edge(
            float(panel.along), float(panel.across), float(tongue.length)
        )
    )


def _round_the_edge(long: float, wide: float, inwards: float) -> tuple[Outline, ...]:
    """A strip along each edge of a face: both ends whole, the long edges between them."""
    return (
        rectangle(0.0, 0.0, inwards, wide),
        rectangle(long - inwards, 0.0, long, wide),
        rectangle(inwards, 0.0, long - inwards, inwards),
        rectangle(inwards, wide - inwards, long - inwards, wide),
    )
