"""Walking round what stands on the client's page: the picture is dragged, and every frame awaited."""

from __future__ import annotations

import statistics
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

_PATIENCE = 60.0
"""Seconds that a frame may take where a processor draws it."""


@dataclass(frozen=True, kw_only=True)
class Walked:
    """What walking round cost: frames drawn, the most draws of one, and what each took, ms."""

    frames: int
    calls: int
    triangles: int
    each_ms: tuple[float, ...]

    @property
    def middle_ms(self) -> float:
        """Half of the frames took no longer."""
        return statistics.median(self.each_ms)


def orbit(page: Page, *, steps: int, across: float = 12.0) -> Walked:
    """Drag the picture to the right in steps, with a new frame after each.

    Args:
        page: open, its picture in the round.
        steps: how many.
        across: of one step, px.
    """
    box = page.locator("#canvas").bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 3, box["y"] + 12
    page.mouse.move(x, y)
    page.mouse.down()
    began = found = page.evaluate("stilewright.figures()")
    calls, each = int(found["calls"]), []
    for step in range(1, steps + 1):
        before = int(found["drawn"])
        page.mouse.move(x + across * step, y)
        found = _after(page, before)
        each.append(float(found["ms"]))
        calls = max(calls, int(found["calls"]))
    page.mouse.up()
    return Walked(
        frames=int(found["drawn"]) - int(began["drawn"]),
        calls=calls,
        triangles=int(found["triangles"]),
        each_ms=tuple(each),
    )


def _after(page: Page, drawn: int) -> dict[str, float]:
    """The figures of the page once it has drawn more frames than so many."""
    end = time.monotonic() + _PATIENCE
    while True:
        found: dict[str, float] = page.evaluate("stilewright.figures()")
        if found["drawn"] > drawn:
            return found
        assert time.monotonic() < end, "no frame was drawn"
        time.sleep(0.005)
