"""Chains and lines that details share: one link across or up, and what is seen past a cut."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.dimensions import Axis
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Point
from parametric.drawing.sheet import View


def chain(
    view: View,
    axis: Axis,
    line: float,
    places: Sequence[tuple[float, float]],
    links: Sequence[Link | None],
) -> Chain:
    """A chain of links between places, each with the paper coordinate its line begins at.

    Args:
        view: the view it measures in.
        axis: the direction it measures along.
        line: the paper coordinate of its dimension line.
        places: model coordinate along the axis, paper coordinate across it.
        links: one fewer.
    """
    return Chain(
        view=view,
        axis=axis,
        line=line,
        stops=tuple(Stop(at=at, foot=foot) for at, foot in places),
        links=tuple(links),
    )


def beyond(draft: Draft, view: View, *lines: tuple[Point, Point]) -> None:
    """Edges seen past the cut, fine; model coordinates."""
    for a, b in lines:
        draft.line("edge_fine", view.at(a), view.at(b), view.name)
