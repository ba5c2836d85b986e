"""Mortise locks and latches: a body let into the closing edge behind a faceplate, a strike opposite.

closing edge seen straight on       stile seen from its face
    _                                |   backset  |
   | |  faceplate, let in flush      ||----------(o) spindle, `height` above the floor
   |#|                               ||___        |
   |#|  body, let in behind it       ||body|     (o) keyhole
   |_|                               |

Depths are from the edge as it is planed; of a bevelled one, from where its middle is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, named, root, square, tangent
from parametric.hardware.wood_taken import Taken
from parametric.names import join
from parametric.written import Block, Length, LengthTriple, Words


class LockBlock(Block):
    """What locks and latches have in common, with callipers from the real thing."""

    body: LengthTriple = Field(description="long x wide x deep, behind the faceplate")
    faceplate: LengthTriple = Field(description="long x wide x thick")
    faceplate_corner: Length
    backset: Length = Field(description="from the faceplate's front to the spindle")
    height: Length = Field(description="of the spindle above the highest floor")
    above_spindle: Length = Field(description="how far the body reaches above the spindle")
    spindle: Length = Field(description="across the bore for it")
    fit: Length
    extra_depth: Length
    strike: LengthTriple | None = Field(default=None, description="long x wide x thick")
    box: LengthTriple | None = Field(
        default=None, description="long x wide x deep, behind the strike for the bolts"
    )
    cutter: Length | None = None
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


class MortiseLockSpec(LockBlock):
    """A lock as written."""

    kind: Literal["mortise lock"]
    keyhole: Length = Field(description="across the bore for the key")
    keyhole_below: Length = Field(description="from the spindle down to the keyhole")


class MortiseLatchSpec(LockBlock):
    """A latch as written: a spindle and no key."""

    kind: Literal["mortise latch"]


LockSpec = MortiseLockSpec | MortiseLatchSpec
"""Locks and latches as written."""
LOCK_KINDS: dict[str, type[LockBlock]] = {
    "mortise lock": MortiseLockSpec,
    "mortise latch": MortiseLatchSpec,
}
"""The word after `kind:` in a lock, and the Spec it is read by."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LetIn:
    """A plate let in flush, and what stands behind it, in an edge, mm above the finished foot.

    `plate_depth` is the plate's thickness; `deep` from the edge to the floor behind it, None
    where nothing stands behind. `run_past` is how far round ends reach past the body.
    """

    plate_low: Figure
    plate_high: Figure
    plate_width: Figure
    plate_depth: Figure
    plate_corner: Figure
    low: Figure | None
    high: Figure | None
    width: Figure | None
    deep: Figure | None
    run_past: Figure
    cutter: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class LockBore:
    """A bore through both faces into the mortise: its middle up and in from the edge, mm."""

    name: str
    up: Figure
    across: Figure
    width: Figure
    depth: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Lock:
    """A lock or latch in a closing stile and its strike opposite, mm.

    `up` is the spindle above the finished foot; `wall` the wood left each side of the body;
    `back_of_mortise` how far in from the edge it ends; `strike_above_floor` the strike's middle;
    `bevel` what the bevel takes off the middle of the edge, None for a square one.
    """

    kind: Literal["mortise lock", "mortise latch"]
    name: str
    up: Figure
    backset: Figure
    mortise: LetIn
    wall: Figure
    back_of_mortise: Figure
    bores: tuple[LockBore, ...]
    strike: LetIn | None
    strike_above_floor: Figure
    bevel: Figure | None
    thickness: Figure
    written: LockSpec

    @property
    def plate_covers(self) -> bool:
        """Whether the faceplate lies over all of the mortise."""
        one = self.mortise
        if one.low is None or one.high is None or one.width is None:
            return True
        return not (
            exceeds(one.plate_low, one.low - one.run_past)
            or exceeds(one.high + one.run_past, one.plate_high)
            or exceeds(one.width, one.plate_width)
        )

    @property
    def plate_lies_in(self) -> bool:
        """Whether plates are thick enough for the bevel: at their lower side they are still let in."""
        if self.bevel is None:
            return True
        slope = 2 * float(self.bevel) / float(self.thickness)
        return all(
            exceeds(one.plate_depth, one.plate_width / 2 * slope)
            for one in (self.mortise, self.strike)
            if one is not None
        )

    @property
    def bores_meet_body(self) -> bool:
        """Whether every bore comes out within the body's mortise."""
        one = self.mortise
        assert one.low is not None
        assert one.high is not None
        return all(
            not exceeds(one.low, bore.up - bore.width / 2)
            and not exceeds(bore.up + bore.width / 2, one.high)
            and not exceeds(bore.across + bore.width / 2, self.back_of_mortise)
            and not exceeds(one.plate_depth, bore.across - bore.width / 2)
            for bore in self.bores
        )


def size_lock(
    spec: LockSpec,
    *,
    leaf: str,
    foot: Figure,
    thickness: Figure,
    cutters: tuple[Figure, ...],
    bevel: Figure | None = None,
) -> Lock:
    """Mortises, bores and strike from the hardware's own sizes.

    Args:
        spec: the lock as written.
        leaf: `leaf A`.
        foot: the leaf's foot above the highest floor, mm.
        thickness: of the leaf, mm.
        cutters: router cutters in the shop, diameters mm.
        bevel: of the closing edge, deg; None for a square one.

    Source: common practice, no source.
    """
    name = join(leaf, "lock")

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    fit = at("fit", spec.fit)
    height = at("height above the floor", spec.height)
    up = at("spindle above the foot", height - foot)
    long, wide, deep = (
        at(f"body {word}", value)
        for word, value in zip(("length", "width", "depth"), spec.body, strict=True)
    )
    body_top = up + at("body above the spindle", spec.above_spindle)
    middle = at("middle of the faceplate", body_top - long / 2)
    mortise = _let_in(
        name,
        middle=middle,
        plate=spec.faceplate,
        corner=spec.faceplate_corner,
        body=(long, wide, deep),
        fit=fit,
        extra=at("extra depth", spec.extra_depth),
        words=("faceplate", "mortise"),
        cutter=_cutter(spec, wide + 2 * fit, cutters),
    )
    # what a bevel has taken off the edge where the middle of the faceplate lies
    off = None
    if bevel is not None and float(bevel) > 0:
        off = at("bevel at the middle of the edge", thickness / 2 * tangent(bevel))
    assert mortise.deep is not None
    assert mortise.width is not None
    backset = at("backset", spec.backset)
    wall = at("wood beside the body", (thickness - mortise.width) / 2)
    return Lock(
        kind=spec.kind,
        name=name,
        up=up,
        backset=backset,
        mortise=mortise,
        wall=wall,
        back_of_mortise=at(
            "back of the mortise from the edge",
            mortise.deep if off is None else mortise.deep + off,
        ),
        bores=_bores(spec, name, up, backset if off is None else backset + off, wall),
        strike=None
        if spec.strike is None
        else _let_in(
            join(name, "strike"),
            middle=middle,
            plate=spec.strike,
            corner=Figure(0.0),
            body=spec.box,
            fit=fit,
            extra=at("strike / extra depth", spec.extra_depth),
            words=("plate", "box"),
            cutter=_cutter(
                spec, spec.strike[1] if spec.box is None else spec.box[1] + 2 * fit, cutters
            ),
        ),
        strike_above_floor=at("strike above the floor", middle + foot),
        bevel=off,
        thickness=thickness,
        written=spec,
    )


def _cutter(spec: LockSpec, width: Figure, cutters: tuple[Figure, ...]) -> Figure:
    if spec.cutter is not None:
        return spec.cutter
    fitting = [c for c in cutters if not exceeds(c, width)]
    return max(fitting, key=float) if fitting else min(cutters, key=float)


def _let_in(
    name: str,
    *,
    middle: Figure,
    plate: tuple[Figure, Figure, Figure],
    corner: Figure,
    body: tuple[Figure, Figure, Figure] | None,
    fit: Figure,
    extra: Figure,
    words: tuple[str, str],
    cutter: Figure,
) -> LetIn:
    """A plate and what is behind it about one middle; twice the fit over the sizes.

    A square body goes home in a round-ended mortise when that is longer by what the round ends
    hold back: half the mortise's width less the root of its square less that of half the body.
    Source: Pythagoras.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    of_plate, of_body = words
    half = at(f"{of_plate} recess length", plate[0] + 2 * fit) / 2
    low = high = width = deep = None
    run_past = Figure(0.0)
    thick = at(f"{of_plate} recess depth", plate[2])
    if body is not None:
        long, wide, far = body
        width = at(f"{of_body} width", wide + 2 * fit)
        low = at(f"{of_body} low end", middle - long / 2 - fit)
        high = at(f"{of_body} high end", middle + long / 2 + fit)
        deep = at(f"{of_body} depth", thick + far + extra)
        run_past = width / 2 - root(square(width / 2) - square(wide / 2))
    return LetIn(
        plate_low=at(f"{of_plate} recess low end", middle - half),
        plate_high=at(f"{of_plate} recess high end", middle + half),
        plate_width=at(f"{of_plate} recess width", plate[1] + 2 * fit),
        plate_depth=thick,
        plate_corner=at(f"{of_plate} recess corner", corner + fit if float(corner) else 0.0),
        low=low,
        high=high,
        width=width,
        deep=deep,
        run_past=at(f"{of_body} past its ends", run_past),
        cutter=at(f"{of_body} cutter", cutter),
    )


def _bores(
    spec: LockSpec, name: str, up: Figure, across: Figure, wall: Figure
) -> tuple[LockBore, ...]:
    def bore(word: str, width: Figure, height: Figure) -> LockBore:
        place = join(name, word)
        return LockBore(
            name=f"{word} bore",
            up=named(join(place, "above the foot"), height),
            across=named(join(place, "from the edge"), across),
            width=named(join(place, "width"), width),
            depth=wall,
        )

    spindle = bore("spindle", spec.spindle, up)
    if isinstance(spec, MortiseLatchSpec):
        return (spindle,)
    below = named(join(name, "keyhole below the spindle"), spec.keyhole_below)
    return (bore("keyhole", spec.keyhole, up - below), spindle)


def lock_wood(lock: Lock, *, thickness: Figure) -> Taken:
    """The wood that the lock's plate and body take from the stile."""
    return _wood(lock.mortise, "lock", lock.back_of_mortise, thickness)


def strike_wood(lock: Lock, *, thickness: Figure) -> tuple[Taken, ...]:
    """The wood that its strike and box take from the other leaf's stile; none without a strike."""
    one = lock.strike
    if one is None:
        return ()
    deep = one.plate_depth if one.deep is None else one.deep
    return (_wood(one, "strike", deep if lock.bevel is None else deep + lock.bevel, thickness),)


def _wood(one: LetIn, name: str, far: Figure, thickness: Figure) -> Taken:
    low, high, width = one.plate_low, one.plate_high, one.plate_width
    if one.low is not None and one.high is not None and one.width is not None:
        low = min(low, one.low - one.run_past, key=float)
        high = max(high, one.high + one.run_past, key=float)
        width = one.width
    return Taken(
        name=name,
        low=low,
        high=high,
        near=Figure(0.0),
        far=far,
        front=(thickness - width) / 2,
        back=(thickness + width) / 2,
    )
