r"""Bar handles and knobs: screwed through the leaf from behind, one hole or two.

seen from the front, on a cupboard's door             on a drawer's front
   stile                                               _____________________
  |      |  from end                                  |     ___________     |
  |  o   |  \                                          |      o  bar  o      |  in the middle
  |  |   |   holes, centre to centre                  |_____________________|
  |  o   |  /
  |<->   from edge
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, named
from parametric.model import Blank, Drilled, Face, Making, RoundArrises
from parametric.names import join
from parametric.written import Block, Length, Words

HandleKind = Literal["bar", "knob"]
DRILLED = Making(
    by="bench", when="after glue-up", tool="drill and jig, from the face on a backing block"
)
BOUGHT = Making(by="bench", tool="by the supplier")


class HandleSpec(Block):
    """A bar handle or a knob as written, from the real thing with callipers."""

    kind: HandleKind
    holes: Length = Field(description="centre to centre of a bar's two; a knob has one")
    hole: Length = Field(description="across")
    across: Length = Field(description="how thick a bar is, or a knob, seen from the front")
    stands_out: Length
    from_edge: Length = Field(description="from the edge that opens to the holes")
    from_end: Length = Field(description="from the nearer end of a door to the first hole")
    reach: Length = Field(
        description="doors that end below this have it at their top, those above at their foot, "
        "taller ones here; above the highest floor"
    )
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Handle:
    """A handle on one leaf, mm: its middle from the leaf's left edge and foot.

    `apart` is between its two holes, 0 of a knob; a `level` one lies across.
    """

    kind: HandleKind
    level: bool
    side: Literal["left", "right"] | None
    """The stile that it is on; None where it is in the middle of a drawer's front, or of the rail
    that opens a flap."""
    x: Figure
    up: Figure
    apart: Figure
    hole: Figure
    across: Figure
    stands_out: Figure
    from_edge: Figure

    @property
    def holes(self) -> tuple[tuple[Figure, Figure], ...]:
        """The middle of each hole from the leaf's left edge and foot, the low or left one first."""
        if not exceeds(self.apart, 0.0):
            return ((self.x, self.up),)
        half = self.apart / 2
        if self.level:
            return ((self.x - half, self.up), (self.x + half, self.up))
        return ((self.x, self.up - half), (self.x, self.up + half))


def size_handle(
    spec: HandleSpec,
    *,
    leaf: str,
    foot: Figure,
    width: Figure,
    height: Figure,
    side: Literal["left", "right"] | None,
    flap: Literal["top", "bottom"] | None = None,
) -> Handle:
    """Where a leaf's handle stands: up the stile that opens, near the hand; level on the rail that
    opens of a flap; else in the middle.

    Args:
        spec: the handle as written.
        leaf: the leaf's name.
        foot: of the leaf, above the highest floor, mm.
        width: of it, mm.
        height: of it, mm.
        side: the stile that opens it; None of a drawer's front and of a flap.
        flap: the edge that a flap hangs by, opposite the one that opens.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(leaf, "handle", quantity), value)

    apart = at("holes apart", spec.holes if spec.kind == "bar" else 0.0)
    edge = at("from the edge", spec.from_edge)
    if flap is not None:
        x, up = width / 2, edge if flap == "top" else height - edge
    elif side is None:
        x, up = width / 2, height / 2
    else:
        x = edge if side == "left" else width - edge
        up = _up(spec, foot, height, apart)
    return Handle(
        kind=spec.kind,
        level=side is None,
        side=side,
        x=at("middle from the left edge", x),
        up=at("middle above the foot", up),
        apart=apart,
        hole=at("hole", spec.hole),
        across=at("across", spec.across),
        stands_out=at("stands out", spec.stands_out),
        from_edge=edge,
    )


def _up(spec: HandleSpec, foot: Figure, height: Figure, apart: Figure) -> Figure:
    """A base cupboard's is at its top, a wall cupboard's at its foot, a tall door's at the hand."""
    near = spec.from_end + apart / 2
    if not exceeds(foot + height, spec.reach):
        return height - near
    if not exceeds(spec.reach, foot):
        return near
    return spec.reach - foot


def handle_holes(
    handle: Handle, *, face: Face, u: float, v: float, along: Literal["u", "v"], through: float
) -> Drilled:
    """The holes through one piece, from its front face.

    Args:
        handle: where it stands.
        face: the piece's front.
        u: of the first hole on that face, mm.
        v: of the first hole, mm.
        along: which way the second lies.
        through: how thick the piece is there, mm.
    """
    pair = exceeds(handle.apart, 0.0)
    return Drilled(
        name="handle",
        face=face,
        u=u,
        v=v,
        diameter=handle.hole,
        depth=through,
        making=DRILLED,
        count=2 if pair else 1,
        pitch=handle.apart if pair else 0.0,
        along=along if pair else "u",
    )


def handle_blank(handle: Handle) -> Blank:
    """The handle as a display body: as long as its holes are apart, and once across."""
    return Blank(
        length=handle.apart + handle.across, width=handle.across, thickness=handle.stands_out
    )


def handle_shape(handle: Handle) -> tuple[RoundArrises, ...]:
    """A bar's arrises eased; a knob as it comes."""
    least = min(float(handle.across), float(handle.stands_out))
    return (RoundArrises(name="eased", radius=least / 4, making=BOUGHT),)
