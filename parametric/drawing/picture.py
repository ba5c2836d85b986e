"""The front elevation alone, for a page that cannot show the doors in the round."""

from __future__ import annotations

import dataclasses

from parametric.drawing.sheet import Sheet

ELEVATION = "front elevation"


def elevation_picture(arrangement: Sheet) -> Sheet:
    """The arrangement without its paper: only what belongs to the elevation."""
    return dataclasses.replace(
        arrangement,
        views=tuple(view for view in arrangement.views if view.name == ELEVATION),
        elements=tuple(e for e in arrangement.elements if e.view == ELEVATION),
        cells=(),
        unplaced=(),
    )
