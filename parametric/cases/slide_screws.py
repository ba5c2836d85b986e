"""Holes for the screws of drawer slides, and the packing behind them where a case stands back.

the side of a case, from inside; its front edge at the left
   |  37 |      32 n     |     32 n     |
   |     o               o              o      level with the middle of the box's side, or with the
   |     |<------- slide's length ------...    box's low edge where slides hide beneath it
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.cases.boring import IN_FACE, Bite, BoringSpec, round_bite, too_near
from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_written import UnderSlidesSpec
from parametric.figures import Figure, exceeds, named, smallest, whole_down
from parametric.model import Drilled, Face
from parametric.names import join

_NO_SOURCE = "common practice, no source"
BEFORE_END = Figure(
    20.0, "last screw of a slide from its end", origin="catalogue", source=_NO_SOURCE
)
TWO_UP_TO = Figure(
    350.0, "slide so long has two screws, a longer one three", origin="catalogue", source=_NO_SOURCE
)
UNDER_UP = Figure(
    9.0,
    "screws of a slide beneath the box over its low edge",
    origin="catalogue",
    source=_NO_SOURCE,
)
PACKING_WIDE = Figure(50.0, "slide packing, wide", origin="catalogue", source=_NO_SOURCE)
_STEP, _REACH = 1.0, 16
"""Slides are moved up and down by whole millimetres, so far at most, to clear what is cut."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlideScrews:
    """The screws of one slide, mm: `up` from the case's foot, `first` from its front edges."""

    name: str
    up: Figure
    first: Figure
    count: Figure
    pitch: Figure
    across: Figure
    deep: Figure

    @property
    def places(self) -> tuple[float, ...]:
        """Each of them, from the front edges."""
        return tuple(float(self.first) + n * float(self.pitch) for n in range(int(self.count)))

    def bites(self, up: float | None = None) -> tuple[Bite, ...]:
        """Each hole, at its height or at another."""
        at = float(self.up) if up is None else up
        return tuple(
            round_bite(f"{self.name}, a slide's screw", at, back, self.across)
            for back in self.places
        )


def size_slide_screws(
    spec: BoringSpec, box: DrawerBox, *, front: Figure, low: Figure, taken: Sequence[Bite]
) -> SlideScrews:
    """The screws of one drawer's slides, alike at either side.

    Args:
        spec: how the workshop bores.
        box: the drawer's box.
        front: where its slides begin, from the front edges of the case, mm.
        low: the box's low edge from the case's foot, mm.
        taken: what is cut into the boards at either side.

    Where a screw would come too near to something the slide goes up or down with all of them; a
    slide may stand anywhere on the box's side, as long as both are level.
    """
    name = join(box.name, "slides")

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    hidden = isinstance(box.written, UnderSlidesSpec)
    steps = whole_down((box.length - BEFORE_END - spec.from_front) / spec.pitch)
    if exceeds(spec.from_front + spec.pitch, box.length - BEFORE_END):
        steps = Figure(1, unit="")
    three = exceeds(box.length, TWO_UP_TO) and int(steps) >= 2
    if three:
        steps = 2 * whole_down(steps / 2)
    count = Figure(3 if three else 2, unit="")
    screws = SlideScrews(
        name=name,
        up=low + UNDER_UP if hidden else low + box.height / 2,
        first=at("first screw", front + spec.from_front),
        count=at("screws", count, ""),
        pitch=at("screws apart", steps / (count - 1) * spec.pitch),
        across=at("screw hole", spec.slide_holes[0]),
        deep=at("screw hole depth", spec.slide_holes[1]),
    )
    # what hides beneath a box stands where its data sheet has it
    reach = 0 if hidden else _REACH
    tried = sorted(range(-reach, reach + 1), key=lambda by: (abs(by), by))
    moved = next((by for by in tried if _free(screws, by * _STEP, taken, spec.web)), 0)
    up = screws.up + moved * _STEP if moved else screws.up
    return SlideScrews(
        name=name,
        up=at("height", up),
        first=screws.first,
        count=screws.count,
        pitch=screws.pitch,
        across=screws.across,
        deep=screws.deep,
    )


def _free(screws: SlideScrews, by: float, taken: Sequence[Bite], web: Figure) -> bool:
    own = screws.bites(float(screws.up) + by)
    return all(too_near(hole, taken, web) is None for hole in own)


def in_two(
    screws: SlideScrews, pack: Figure, behind: Figure, least: Figure
) -> tuple[Figure, Figure | None]:
    """How deep the screws go into a packing, and on into the board behind it; None where they stop.

    A packing that would have too little wood behind its holes is bored right through.

    Args:
        screws: of the slide.
        pack: how thick the packing is, mm.
        behind: the most that may be bored into the board, mm.
        least: wood behind a hole, mm.
    """
    if not exceeds(screws.deep - pack, 1.0):
        return (pack if exceeds(least, pack - screws.deep) else screws.deep), None
    return pack, smallest(screws.deep - pack, behind)


def slide_cut(
    screws: SlideScrews, *, face: Face, foot: float, front: float, deep: Figure
) -> Drilled:
    """The row as a board is bored that lies with its length up the case and its width backwards."""
    return Drilled(
        name="slide holes",
        face=face,
        u=screws.up - foot,
        v=screws.first - front if front else screws.first,
        diameter=screws.across,
        depth=deep,
        count=int(screws.count),
        pitch=screws.pitch,
        along="v",
        making=IN_FACE,
    )
