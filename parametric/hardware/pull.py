"""Recessed pulls: a flange let in flush, a body let in deeper.

section          flange pocket
 ________  ____________________  ________
         |_                    _|
           |   body pocket    |
           |__________________|
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, named, root
from parametric.model import Blank, Face, Island, Making, Pocket, RoundCorners, relief_inset
from parametric.names import join
from parametric.written import Block, Length, LengthTriple, Words


class PullSpec(Block):
    """A recessed pull as written, from the real thing with callipers."""

    kind: Literal["recessed"]
    body: LengthTriple = Field(description="long x wide x deep")
    body_corner: Length
    flange: LengthTriple = Field(description="long x wide x deep")
    flange_corner: Length
    fit: Length
    extra_depth: Length
    stands_out: Length
    height: Length
    from_edge: Length
    stile: Literal["outer"]
    faces: Literal["front", "back", "both"]
    cutter: Length | None = None
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """A pull and its two pockets, mm. Length runs up the stile; `up` is above the finished foot.

    `relief` is the cutter's radius where it is run into the body pocket's corners, which are
    tighter; 0 where it is not. `relief_past` is how far past the pocket's sides that reaches.
    """

    faces: tuple[Literal["front", "back"], ...]
    body_length: Figure
    body_width: Figure
    body_depth: Figure
    body_corner: Figure
    flange_length: Figure
    flange_width: Figure
    flange_depth: Figure
    flange_corner: Figure
    flange_pocket_length: Figure
    flange_pocket_width: Figure
    flange_pocket_depth: Figure
    flange_pocket_corner: Figure
    body_pocket_length: Figure
    body_pocket_width: Figure
    body_pocket_depth: Figure
    body_pocket_corner: Figure
    stands_out: Figure
    from_edge: Figure
    up: Figure
    body_pocket_low: Figure
    body_pocket_high: Figure
    web: Figure
    cutter: Figure
    relief: Figure
    relief_past: Figure

    @property
    def relief_hidden(self) -> bool:
        """Whether the flange covers all that is cut past the body pocket's corners."""
        inset = relief_inset(self.body_pocket_corner, self.relief)
        along = self.body_pocket_length / 2 - inset
        across = self.body_pocket_width / 2 - inset
        if exceeds(along + self.relief, self.flange_length / 2) or exceeds(
            across + self.relief, self.flange_width / 2
        ):
            return False
        # how far the cutter's middle lies past the middle of the flange's own corner
        past_along = along - (self.flange_length / 2 - self.flange_corner)
        past_across = across - (self.flange_width / 2 - self.flange_corner)
        if min(past_along, past_across) <= 0 or self.relief >= self.flange_corner:
            return True
        return not exceeds(math.hypot(past_along, past_across), self.flange_corner - self.relief)


def size_pull(
    spec: PullSpec,
    *,
    place: str,
    floor_gap: Figure,
    thickness: Figure,
    cutters: tuple[Figure, ...],
    relieve: bool = False,
) -> Pull:
    """Pockets from the hardware's own sizes: twice the fit over, and the extra depth to the deepest.

    Args:
        spec: the pull as written.
        place: its name (`pull`).
        floor_gap: the leaf's foot above the highest floor, mm.
        thickness: leaf thickness, mm.
        cutters: router cutters in the shop, diameters mm.
        relieve: run a cutter too large for the body pocket's corners into them.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    fit = at("fit", spec.fit)
    extra = at("extra depth", spec.extra_depth)
    body_length, body_width, body_depth = (
        at(f"body {q}", v) for q, v in zip(("length", "width", "depth"), spec.body, strict=True)
    )
    flange_length, flange_width, flange_depth = (
        at(f"flange {q}", v) for q, v in zip(("length", "width", "depth"), spec.flange, strict=True)
    )
    body_corner, flange_corner = (
        at("body corner", spec.body_corner),
        at("flange corner", spec.flange_corner),
    )
    pocket_length = at("body pocket length", body_length + 2 * fit)
    pocket_depth = at("body pocket depth", body_depth + extra)
    pocket_corner = at("body pocket corner", body_corner + fit)
    up = at("centre above the foot", at("height above the floor", spec.height) - floor_gap)
    faces: tuple[Literal["front", "back"], ...] = (
        ("front", "back") if spec.faces == "both" else (spec.faces,)
    )
    deepest = 2 * pocket_depth if len(faces) == 2 else pocket_depth
    cutter = at("cutter", _cutter(spec, float(pocket_corner), cutters))
    relief = at("corner relief", Figure(0.0))
    past = at("corner relief past the pocket", Figure(0.0))
    if relieve and exceeds(cutter / 2, pocket_corner):
        relief = at("corner relief", cutter / 2)
        # the cutter stands on the diagonal: of what it is too large by, all but 1 / root 2
        past = at("corner relief past the pocket", (relief - pocket_corner) * (1 - root(0.5)))
    return Pull(
        faces=faces,
        body_length=body_length,
        body_width=body_width,
        body_depth=body_depth,
        body_corner=body_corner,
        flange_length=flange_length,
        flange_width=flange_width,
        flange_depth=flange_depth,
        flange_corner=flange_corner,
        flange_pocket_length=at("flange pocket length", flange_length + 2 * fit),
        flange_pocket_width=at("flange pocket width", flange_width + 2 * fit),
        flange_pocket_depth=at("flange pocket depth", flange_depth),
        flange_pocket_corner=at("flange pocket corner", flange_corner + fit),
        body_pocket_length=pocket_length,
        body_pocket_width=at("body pocket width", body_width + 2 * fit),
        body_pocket_depth=pocket_depth,
        body_pocket_corner=pocket_corner,
        stands_out=at("stands out", spec.stands_out),
        from_edge=at("centre from the edge", spec.from_edge),
        up=up,
        body_pocket_low=at("body pocket low end", up - pocket_length / 2),
        body_pocket_high=at("body pocket high end", up + pocket_length / 2),
        web=at("web behind the pockets", thickness - deepest),
        cutter=cutter,
        relief=relief,
        relief_past=past,
    )


def _cutter(spec: PullSpec, corner: float, cutters: tuple[Figure, ...]) -> Figure:
    """The cutter written, else the largest in the shop that the corner admits, else the smallest."""
    if spec.cutter is not None:
        return spec.cutter
    fitting = [c for c in cutters if c / 2 <= corner]
    return max(fitting) if fitting else min(cutters)


def pull_pockets(pull: Pull, *, face: Face, u: float, v: float) -> tuple[Pocket, Pocket]:
    """Both pockets on one face of a stile, cut into the glued leaf."""
    making = Making(
        by="router", when="after glue-up", cutter=pull.cutter, tool="straight or spiral cutter"
    )
    flange = Pocket(
        name="pull flange",
        face=face,
        u=u,
        v=v,
        length=pull.flange_pocket_length,
        width=pull.flange_pocket_width,
        corner=pull.flange_pocket_corner,
        depth=pull.flange_pocket_depth,
        making=making,
    )
    body = Pocket(
        name="pull body",
        face=face,
        u=u,
        v=v,
        length=pull.body_pocket_length,
        width=pull.body_pocket_width,
        corner=pull.body_pocket_corner,
        depth=pull.body_pocket_depth,
        surface=pull.flange_pocket_depth,
        relief=pull.relief,
        making=making,
    )
    return flange, body


def pull_blank(pull: Pull) -> Blank:
    """The pull as a display body: flange size, body depth."""
    return Blank(length=pull.flange_length, width=pull.flange_width, thickness=pull.body_depth)


_SHEET = 1.5
"""Wall of the display body, mm: it shows the hollow a finger finds, no more."""


def pull_shape(pull: Pull) -> tuple[RoundCorners, Island, Pocket]:
    """The display body: flange corners, the body under the flange, the finger's hollow."""
    bought = Making(by="bench", tool="by the supplier")
    return (
        RoundCorners(name="flange corners", radius=pull.flange_corner, making=bought),
        Island(
            name="body",
            face="low face",
            length=pull.body_length,
            width=pull.body_width,
            corner=pull.body_corner,
            outer=pull.flange_corner,
            depth=pull.body_depth - pull.flange_depth,
            making=bought,
        ),
        Pocket(
            name="finger hollow",
            face="high face",
            u=pull.flange_length / 2,
            v=pull.flange_width / 2,
            length=pull.body_length - 2 * _SHEET,
            width=pull.body_width - 2 * _SHEET,
            corner=pull.body_corner - _SHEET if pull.body_corner > _SHEET else 0.0,
            depth=pull.body_depth - _SHEET,
            making=bought,
        ),
    )
