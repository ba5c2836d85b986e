"""What a stub tenon asks of the leaf that it joins: panels everywhere, and nothing else in their way."""

from __future__ import annotations

from parametric.design.answers import stop
from parametric.design.language import SQUARE
from parametric.design.leaf import LeafSpec
from parametric.design.understanding import not_built
from parametric.problems import Problem


def stub_tenons_need(leaf: LeafSpec) -> list[Problem]:
    """Of a leaf whose joint is a stub tenon: what its tenons have no groove for."""
    problems = []
    if all(band.is_rail for band in leaf.top_to_bottom):
        problems.append(
            stop(
                "stub_tenon_without_groove",
                f"Your {leaf.heading} has rails only, and a stub tenon stands in a panel's groove.",
                leaf.line("top to bottom"),
                about=leaf.heading,
                found="no panel",
                allowed="a panel, or `kind: loose tenon`",
                fix="Put a panel between its rails, or join them with loose tenons.",
            )
        )
    lite = next((band for band in leaf.top_to_bottom if band.kind == "lite"), None)
    if lite is not None:
        problems.append(
            not_built(
                "A stub tenon beside a lite, which has no groove for it,",
                lite.here,
                about="stub tenon",
                allowed="panels, or `kind: loose tenon`",
            )
        )
    if str(leaf.sticking or SQUARE) != SQUARE:
        problems.append(
            not_built(
                "A stub tenon in moulded stiles",
                leaf.line("sticking"),
                about="sticking",
                allowed=f"sticking: {SQUARE}",
            )
        )
    problems += [
        not_built(
            f"A stub tenon on an arched {band.kind}",
            band.line("underside"),
            about="stub tenon",
            allowed="`kind: loose tenon`",
        )
        for band in leaf.rails
        if band.underside == "arch"
    ]
    problems += [
        stop(
            "tenons_of_another_joint",
            f"A {band.kind} has one stub tenon at either end, as high as the rail: "
            '"tenons" counts loose ones.',
            band.line("tenons"),
            about=leaf.heading,
            found=str(int(band.tenons)),
            allowed="no line `tenons`",
            fix="Take the line out.",
        )
        for band in leaf.rails
        if band.tenons is not None and int(band.tenons) > 1
    ]
    return problems
