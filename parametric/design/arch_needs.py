"""What an arched rail must find: its arch, and under it something that can follow a curve."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.design.answers import stop
from parametric.design.leaf import Band, LeafSpec
from parametric.design.understanding import not_built
from parametric.infill.flat_panel import FlatPanelSpec
from parametric.infill.glass import GlassSpec
from parametric.infill.raised_panel import RaisedPanelSpec
from parametric.problems import Problem
from parametric.written import Block


def arch_needs(
    leaf: LeafSpec, blocks: Mapping[tuple[str, str], Block], no_arch: bool
) -> list[Problem]:
    """An arched rail needs its arch, and glass or a panel under it that can follow it.

    Args:
        leaf: as written.
        blocks: all that is written, by kind and name.
        no_arch: whether there is none that the leaf calls.
    """
    problems: list[Problem] = []
    for index, band in enumerate(leaf.top_to_bottom):
        if band.underside != "arch":
            continue
        where = band.line("underside")
        if no_arch:
            problems.append(
                stop(
                    "missing_block",
                    f"The {band.kind} has an arch underneath, but there is no "
                    '"arch" block to say its rise.',
                    where,
                    about=leaf.heading,
                    found="no arch",
                    allowed="a block `arch:`",
                    fix="Write `arch: {shape: segmental, rise: ...}` at the margin.",
                )
            )
        below = leaf.top_to_bottom[index + 1] if index + 1 < len(leaf.top_to_bottom) else None
        what = None if below is None else _stays_straight(leaf, below, blocks)
        if what is not None:
            problems.append(not_built(f"An arch over {what}", where, about="arch"))
    return problems


def _stays_straight(
    leaf: LeafSpec, infill: Band, blocks: Mapping[tuple[str, str], Block]
) -> str | None:
    """What fills an opening, in words, where it cannot follow a curve; None where it can."""
    if infill.kind == "lite":
        glass = blocks.get(("glass", str(leaf.glass or "")))
        several = any(count is not None and count > 1 for count in (infill.wide, infill.high))
        barred = isinstance(glass, GlassSpec) and (glass.held_by, glass.bars) == ("stops", "true")
        return "true bars between stops" if barred and several else None
    panel = blocks.get(("panel", str(leaf.panel or "")))
    if isinstance(panel, RaisedPanelSpec):
        return "a raised panel"
    if isinstance(panel, FlatPanelSpec) and panel.tongue is not None:
        return "a panel with a tongue"
    if isinstance(panel, FlatPanelSpec) and panel.grain == "level":
        return "a panel of solid timber whose grain is level"
    return None
