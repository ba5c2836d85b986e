"""Raised panels, run on the saw in two steps, floating in grooves.

section at one edge (face up)
                      ______________  T   field
                _.-'' |fillet
          _.-''                       bevel, run L, from t0 at the edge to t2
    ____|                             shoulder
___|                                  tongue, tt thick, a long
___
   |________________________________  back, with a back rebate b under the tongue
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.catalog.timbers import Timber
from parametric.figures import Figure, cosine, named, tilt
from parametric.infill.panel import Panel, PanelTongue, Seasons, SolidPanelBlock, float_in_groove
from parametric.model import Making, RaisedBevel, Tongue
from parametric.names import join
from parametric.written import Length, LengthPair


class RaisedPanelSpec(SolidPanelBlock):
    """A raised panel as written. groove: wide x deep; tongue: thick x long."""

    kind: Literal["raised"]
    tongue: LengthPair = Field(description="thick x long")
    back_rebate: Length
    edge_thickness: Length
    bevel_run: Length
    fillet: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class RaisedPanel(Panel):
    """A raised panel resolved. Lengths mm."""

    tongue_thickness: Figure
    tongue_length: Figure
    back_rebate: Figure
    edge_thickness: Figure
    bevel_run: Figure
    fillet: Figure
    foot_thickness: Figure
    slope: Figure
    shoulder_thickness: Figure
    tilt: Figure
    blade_reach: Figure
    field_below_face: Figure
    volume: Figure
    weight: Figure

    @property
    def tongue(self) -> PanelTongue:
        """What stands in the groove."""
        return PanelTongue(
            thickness=self.tongue_thickness, length=self.tongue_length, back=self.back_rebate
        )


def size_raised_panel(
    spec: RaisedPanelSpec,
    *,
    name: str,
    opening_width: Figure,
    opening_height: Figure,
    frame: Figure,
    timber: Timber,
    sawn: Literal["flat", "quarter"],
    density: Figure,
    seasons: Seasons,
    blade_height: Figure,
) -> RaisedPanel:
    """Size the panel to float in its grooves, and what the saw makes of its edges.

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
        blade_height: the most the saw's blade stands up, upright, mm.

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
    across, along = sized.across, sized.along
    thickness = at("thickness", spec.thickness)
    tongue_thickness = at("tongue thickness", spec.tongue[0])
    tongue_length = at("tongue length", spec.tongue[1])
    back = at("back rebate", spec.back_rebate)
    edge = at("edge thickness", spec.edge_thickness)
    run = at("bevel run", spec.bevel_run)
    fillet = at("fillet", spec.fillet)
    foot = at("thickness at the fillet's foot", thickness - fillet)
    slope = at("bevel slope", (foot - edge) / run, "")
    shoulder = at("thickness at the tongue shoulder", edge + tongue_length * slope)
    lean = at("blade tilt", tilt(foot - edge, run), "deg")
    volume = two_step_volume(
        name,
        across=across,
        along=along,
        thickness=thickness,
        tongue=tongue_thickness,
        length=tongue_length,
        edge=edge,
        run=run,
        foot=foot,
        slope=slope,
    )
    return RaisedPanel(
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
        tongue_thickness=tongue_thickness,
        tongue_length=tongue_length,
        back_rebate=back,
        edge_thickness=edge,
        bevel_run=run,
        fillet=fillet,
        foot_thickness=foot,
        slope=slope,
        shoulder_thickness=shoulder,
        tilt=lean,
        blade_reach=at("blade reach when tilted", blade_height * cosine(lean)),
        field_below_face=at(
            "field below the frame's face",
            frame / 2 + tongue_thickness / 2 + back - thickness,
        ),
        volume=volume,
        weight=at("weight", volume * density / 1e9, "kg"),
    )


def two_step_volume(
    name: str,
    *,
    across: Figure,
    along: Figure,
    thickness: Figure,
    tongue: Figure,
    length: Figure,
    edge: Figure,
    run: Figure,
    foot: Figure,
    slope: Figure,
) -> Figure:
    """Volume of the panel after both saw steps, mm3, as a sum that can be followed.

    tt A(0) + (t0 + a m - tt) A(a) + m (G(L) - G(a)) + (T - t2) A(L), with A(s) the face
    left at an inset s and G(s) its integral W H s - (W + H) s2 + 4/3 s3.
    """

    def face(inset: Figure, quantity: str) -> Figure:
        area = (across - 2 * inset) * (along - 2 * inset)
        return named(join(name, quantity), area, "mm2")

    def integral(inset: Figure, quantity: str) -> Figure:
        total = (
            across * along * inset
            - (across + along) * inset * inset
            + Figure(4) / 3 * inset * inset * inset
        )
        return named(join(name, quantity), total, "mm3")

    whole = named(join(name, "area whole"), across * along, "mm2")
    at_shoulder = face(length, "area at the shoulder")
    field = face(run, "area of the field")
    under_bevel = integral(run, "integral to the fillet")
    under_tongue = integral(length, "integral to the shoulder")
    return named(
        join(name, "volume"),
        tongue * whole
        + (edge + length * slope - tongue) * at_shoulder
        + slope * (under_bevel - under_tongue)
        + (thickness - foot) * field,
        "mm3",
    )


def raised_panel_cuts(panel: RaisedPanel) -> tuple[RaisedBevel, Tongue]:
    """The two saw steps: bevel with the panel on edge, then tongue and back rebate.

    End-grain edges are cut before long-grain edges, so that tear-out is cut away; the
    blade tilts away from the fence.
    """
    bevel = RaisedBevel(
        name="bevel",
        run=panel.bevel_run,
        edge=panel.edge_thickness,
        foot=panel.foot_thickness,
        making=Making(by="saw", tool="panel on edge, back to the tall fence, ends first"),
    )
    tongue = Tongue(
        name="tongue and back rebate",
        thickness=panel.tongue_thickness,
        length=panel.tongue_length,
        back=panel.back_rebate,
        edge=panel.edge_thickness,
        slope=panel.slope,
        making=Making(by="saw", tool="panel flat, ends first"),
    )
    return bevel, tongue
