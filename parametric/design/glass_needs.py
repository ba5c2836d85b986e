"""What lites and their glass must say before they can be sized: how thick, and how many panes."""

from __future__ import annotations

from parametric.design.answers import stop
from parametric.design.leaf import MOST_PANES, LeafSpec
from parametric.design.understanding import not_built
from parametric.infill.glass import GlassSpec
from parametric.problems import Problem


def lites_need(leaf: LeafSpec, glass: GlassSpec | None) -> list[Problem]:
    """Of a leaf and the glass that it calls; None where it calls none that is there."""
    own = [] if glass is None else _glass_needs(glass)
    return [*own, *_divided(leaf)]


def _glass_needs(glass: GlassSpec) -> list[Problem]:
    """Of glass that a leaf calls: what is missing, said twice, or asks for a unit."""
    problems = []
    if glass.thickness is None and glass.unit is None:
        problems.append(
            stop(
                "missing_key",
                f'{glass.heading} needs "thickness".',
                glass.here,
                about=glass.heading,
                found="nothing",
                allowed="thickness, or unit",
                fix="Write `thickness: ` and its value under it; of an insulated unit write "
                "`unit: pane x space x pane`.",
            )
        )
    if glass.thickness is not None and glass.unit is not None:
        problems.append(
            stop(
                "thickness_twice",
                f"{glass.heading} is one pane by its thickness and two by its unit; keep one.",
                glass.line("thickness"),
                about=glass.heading,
                found="thickness, unit",
                allowed="one of them",
                fix="Take one out; `true thickness` is what a unit measures over all.",
            )
        )
    if glass.bars == "spaced" and glass.unit is None:
        problems.append(
            stop(
                "spacer_bars_need_unit",
                "Spacer bars lie between the two panes of an insulated unit, and "
                f"{glass.heading} is one pane.",
                glass.line("bars"),
                about=glass.heading,
                found="bars: spaced",
                allowed="bars: applied, or a unit",
                fix="Write `unit: 4 x 12 x 4` (pane x space x pane) in place of the thickness, or "
                "`bars: applied`.",
            )
        )
    return problems


def _divided(leaf: LeafSpec) -> list[Problem]:
    """Openings in several panes: of a sensible number, and of glass."""
    problems: list[Problem] = []
    for band in leaf.top_to_bottom:
        counts = [(key, getattr(band, key)) for key in ("wide", "high")]
        for key, count in counts:
            if count is not None and not 1 <= count <= MOST_PANES:
                problems.append(
                    stop(
                        "panes_out_of_range",
                        f"A {band.kind} takes 1 to {MOST_PANES} {key}, not {int(count)}.",
                        band.line(key),
                        about=leaf.heading,
                        found=str(int(count)),
                        allowed=f"1 to {MOST_PANES}",
                        fix=f"Write `{key}: 2`, or leave it out.",
                    )
                )
        several = [key for key, count in counts if count is not None and count > 1]
        if not several:
            continue
        key = several[0]
        if band.kind != "lite":
            problems.append(
                not_built(f"A {band.kind} divided by bars", band.line(key), about=key, allowed="1")
            )
    return problems
