"""Pages of a run of cases made by hand, in a niche out of true.

The niche leans and its floor falls as a bad room's do: its walls by 25 and 15 at the head, its floor
by 18 across, its ceiling by 20. Each is wide enough for its run with 30 to spare on either side.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from parametric.model import Group, Slide
from parametric.pack.preview_niche import niche
from parametric.writers.client_page import Chalk, Fact, PageLeaf, PreviewPage, Scenery, said
from parametric.writers.html import write_html
from tests.browser.standin import standin_page
from tests.solids.run_of_cases import DEEP, HIGH, PLINTH, THICK, WIDE, run_of_cases

SPARE = 30.0


@dataclass(frozen=True)
class Alcove:
    """A niche for so many cases."""

    count: int

    def outline(self) -> tuple[tuple[float, float], ...]:
        """Left wall up, ceiling across, right wall down."""
        right = self.count * WIDE + SPARE
        left = -SPARE
        return (
            *((left, -18.0), (left + 12.0, 1200.0), (left + 25.0, 2380.0)),
            *(((left + right) / 2, 2390.0), (right - 15.0, 2400.0), (right, 0.0)),
        )

    def floor_line(self) -> tuple[tuple[float, float], ...]:
        """Rises from left to right."""
        return ((-SPARE, -18.0), (self.count * WIDE + SPARE, 0.0))


def _size(group: Group) -> tuple[float, float]:
    """Width and height of a front."""
    if isinstance(group.motion[0], Slide):
        front = group.parts[0].blank
        return float(front.length), float(front.width)
    stile, other, rail, *_ = group.parts
    return float(stile.blank.width + other.blank.width + rail.blank.length), float(
        stile.blank.length
    )


def cases_page(count: int, **changes: object) -> PreviewPage:
    """The page of so many cases."""
    made = run_of_cases(count)
    leaves = []
    for group in made.groups:
        if not group.motion:
            continue
        x, front, foot = group.placement.origin
        width, height = _size(group)
        leaves.append(
            PageLeaf(
                name=group.name,
                label=group.name.replace("leaf", "Front"),
                width=width,
                height=height,
                x=x,
                foot=foot,
                front=front,
                thickness=THICK,
                motion=group.motion,
            )
        )
    right = count * WIDE
    alcove = Alcove(count)
    first = leaves[0]
    facts = (
        Fact(
            label="Each door",
            value=said(f"{first.width:g} wide"),
            chalk=(
                Chalk(
                    start=(first.x, first.front, first.foot + 400),
                    end=(first.x + first.width, first.front, first.foot + 400),
                    text=f"{first.width:g}",
                    leaf=first.name,
                ),
            ),
        ),
    )
    fields: dict[str, object] = {
        "job": f"Run of {count}",
        "subtitle": "Made by hand",
        "leaves": tuple(leaves),
        "opening": alcove.outline(),
        "floor": alcove.floor_line(),
        "way": (0.0, right),
        "clear_way": None,
        "top": PLINTH + HIGH,
        "facts": facts,
        "thing": said(f"{count} cases"),
        "scenery": Scenery(skirting_clear=(-SPARE, right + SPARE)),
        "niche": niche(alcove, back=DEEP + 10.0, face=-40.0),
        "cases": True,
        "all_open": True,
    }
    return standin_page(**(fields | changes))


@cache
def cases_glb(count: int) -> bytes:
    """Its model."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    made = run_of_cases(count)
    return write_glb(made, build_solids(made.parts))


@cache
def cases_html(count: int) -> bytes:
    """Its file, with its own model."""
    return write_html(cases_page(count), cases_glb(count))
