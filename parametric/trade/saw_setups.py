"""The raised panel on the table saw: the bevel on edge against a tall fence, then the tongue flat.

seen from the operator, blade leaning away from the fence
        | tall |
        | fence||panel
        |      ||on     /
        |      ||edge  / blade
        |      ||     /
   _____|______||____/______ table
               <-t0->
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.catalog.bench import FILM, TALL_FENCE_RUNS, TALL_FENCE_SHARE
from parametric.figures import Figure, cosine, exceeds, largest, named
from parametric.infill.raised_panel import RaisedPanel
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cautions import DUST, SAW, Cautions
from parametric.trade.printed import Printed, printed

Side = Literal["left", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgePass:
    """One pair of edges, in its turn: how long the edge on the table is, how high the panel stands."""

    order: int
    edges: str
    number: Figure
    on_table: Figure
    stands: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """A notch gauge, mm: `go` slips over, `no_go` does not; `where` is what it is tried on."""

    what: str
    where: str
    go: Figure
    no_go: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class TonguePass:
    """One setting of the tongue, panel flat, mm.

    `buried` is the fence's face to the far side of the blades, which is how long the tongue
    comes out; `left` is the wood that stays over them, from the other side of the panel.
    """

    order: int
    down: Literal["face", "back"]
    what: str
    blade_height: Figure
    buried: Figure
    left: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelSawSetUp:
    """Everything the saw is set to for one type of raised panel: mm, degrees.

    `fence_side` is where the fence stands, seen at the machine, so that the blade leans away
    from it. `reach` is what the blade reaches when tilted, `spare_reach` what that leaves.
    """

    mark: str
    names: tuple[str, ...]
    tilt: Figure
    tilts_to: Side
    fence_side: Side
    blade_height: Figure
    fence_to_blade: Figure
    reach: Figure
    spare_reach: Figure
    edges: tuple[EdgePass, EdgePass]
    tongue: tuple[TonguePass, ...]
    gauges: tuple[Gauge, ...]
    tall_fence: Figure
    steps: tuple[str, ...]
    cautions: Cautions


def panel_saw_set_ups(resolved: Resolved, assembly: Assembly) -> tuple[PanelSawSetUp, ...]:
    """One for every type of raised panel."""
    names: dict[str, list[str]] = {}
    for part in assembly.parts:
        names.setdefault(part.mark, []).append(part.name)
    marks = {name: mark for mark, own in names.items() for name in own}
    found: dict[str, PanelSawSetUp] = {}
    for leaf in resolved.leaves:
        for field in leaf.panels:
            mark = marks[field.name]
            if mark not in found and isinstance(field.panel, RaisedPanel):
                found[mark] = _set_up(resolved, field.panel, mark, tuple(names[mark]))
    return tuple(found.values())


def _set_up(
    resolved: Resolved, panel: RaisedPanel, mark: str, names: tuple[str, ...]
) -> PanelSawSetUp:
    saw = resolved.shop.saw

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(f"saw set-up {mark}", quantity), value, unit)

    tall_fence = at(
        "tall fence",
        largest(
            TALL_FENCE_SHARE * largest(panel.along, panel.across),
            TALL_FENCE_RUNS * panel.bevel_run,
        ),
    )
    pairs = Figure(2 * len(names), unit="")
    edges = (
        EdgePass(
            order=1,
            edges="end grain",
            number=at("end-grain edges", pairs, ""),
            on_table=at("end-grain edge", panel.across),
            stands=at("height on end grain", panel.along),
        ),
        EdgePass(
            order=2,
            edges="long grain",
            number=at("long-grain edges", pairs, ""),
            on_table=at("long-grain edge", panel.along),
            stands=at("height on long grain", panel.across),
        ),
    )
    tongue = _tongue(mark, panel)
    finish = resolved.finish
    coated = finish is not None and finish.kind != "none"
    gauges = _gauges(
        mark, panel, named("machine accuracy", resolved.shop.accuracy.slot), coated=coated
    )
    clean = exceeds(saw.kerf / cosine(panel.tilt), panel.fillet)
    return PanelSawSetUp(
        mark=mark,
        names=names,
        tilt=at("tilt", panel.tilt, "deg"),
        tilts_to=saw.tilts,
        fence_side="right" if saw.tilts == "left" else "left",
        blade_height=at("blade height", panel.bevel_run),
        fence_to_blade=at("fence to blade", panel.edge_thickness),
        reach=at("blade reach when tilted", panel.blade_reach),
        spare_reach=at("reach to spare", panel.blade_reach - panel.bevel_run),
        edges=edges,
        tongue=tongue,
        gauges=gauges,
        tall_fence=tall_fence,
        steps=_steps(printed(resolved), panel, saw.tilts, gauges[0], clean),
        cautions=(
            "The guard comes off for this cut, the riving knife stays, lower than the blade: a "
            "tall fence, a comb against the panel over the blade, a push block that rides the "
            "fence, a close insert.",
            "The wedge that comes off lies loose beside the blade: never pull it out, let the "
            "blade stop.",
            *SAW,
            *DUST,
        ),
    )


def _tongue(mark: str, panel: RaisedPanel) -> tuple[TonguePass, ...]:
    """Face side first, on the field; then the back rebate, on the back, when there is one."""
    place = f"saw set-up {mark}"
    buried = named(join(place, "tongue into the fence"), panel.tongue_length)
    face = TonguePass(
        order=1,
        down="face",
        what="tongue, face side",
        blade_height=named(
            join(place, "blade height face down"),
            panel.thickness - panel.back_rebate - panel.tongue_thickness,
        ),
        buried=buried,
        left=named(
            join(place, "left over the face side"), panel.back_rebate + panel.tongue_thickness
        ),
    )
    if float(panel.back_rebate) == 0:
        return (face,)
    back = TonguePass(
        order=2,
        down="back",
        what="back rebate",
        blade_height=named(join(place, "blade height back down"), panel.back_rebate),
        buried=buried,
        left=named(join(place, "left over the back rebate"), panel.tongue_thickness),
    )
    return (face, back)


def _gauges(mark: str, panel: RaisedPanel, machine: Figure, *, coated: bool) -> tuple[Gauge, ...]:
    """Edge and tongue: the machine's accuracy either way, and never thicker than its groove.

    A tongue that gets its one thin coat before the glue-up is gauged bare, less that coat on
    either side.

    Source: common practice, no source.
    """
    place = f"saw set-up {mark}"

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    room = panel.groove_width - panel.tongue_thickness
    if coated:
        room = largest(Figure(0.0), room - 2 * FILM)
    play = largest(room, machine)
    return (
        Gauge(
            what="edge after the bevel",
            where="the very edge, anywhere along it",
            go=at("edge gauge go", panel.edge_thickness + machine),
            no_go=at("edge gauge no go", panel.edge_thickness - machine),
        ),
        Gauge(
            what="tongue",
            where="all four tongues, bare; the go notch is the groove"
            + (" less a coat a side" if coated else " itself"),
            go=at("tongue gauge go", panel.tongue_thickness + room),
            no_go=at("tongue gauge no go", panel.tongue_thickness - play),
        ),
    )


def _steps(
    said: Printed,
    panel: RaisedPanel,
    tilts: Side,
    edge: Gauge,
    clean: bool,
) -> tuple[str, ...]:
    fence = "right" if tilts == "left" else "left"
    steps = [
        f"Blade tilts to the {tilts} seen at the machine: fence to the {fence} of it, so that it "
        "leans away from the fence.",
        f"Flat-topped rip blade, tilted {float(panel.tilt):.1f} degrees off upright; "
        f"{said.fine(panel.edge_thickness)} from the fence to the blade at the table. "
        f"{said.fine(panel.bevel_run)} above the table, in two heights where the saw labours.",
        "Test piece on edge, back to the fence. "
        f"At the very edge {said.gauge(edge.go)} goes on, {said.gauge(edge.no_go)} does not: the "
        f"bevel thickens at once. The fillet stands {said.fine(panel.fillet)}.",
        "Both end-grain edges of every panel, then both long-grain edges: the second pair cuts "
        "the tear-out of the first away.",
    ]
    if not clean:
        steps.append(
            f"The fillet is deeper than the kerf: score the field {said.fine(panel.fillet)} deep "
            "first, or the wedge hangs on."
        )
    return tuple(steps)
