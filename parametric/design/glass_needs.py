"""What glass must say before it can be sized: one thickness or a unit, and a unit for spacer bars."""

from __future__ import annotations

from parametric.design.answers import stop
from parametric.infill.glass import GlassSpec
from parametric.problems import Problem


def glass_needs(glass: GlassSpec) -> list[Problem]:
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
