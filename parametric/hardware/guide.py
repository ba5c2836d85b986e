"""The floor guide's groove in the foot of a sliding leaf."""

from __future__ import annotations

from dataclasses import dataclass

from pydantic import Field

from parametric.figures import Figure, named, whole_up
from parametric.model import Face, Groove, Making
from parametric.names import join
from parametric.written import Block, Length, LengthPair, Words


class GuideSpec(Block):
    """The groove as written: wide x deep, and the cutter it is run with."""

    groove: LengthPair = Field(description="wide x deep")
    cutter: Length
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class GuideGroove:
    """The groove resolved, mm; `shift` is how far the second pass is moved over."""

    width: Figure
    depth: Figure
    cutter: Figure
    passes: Figure
    shift: Figure


def size_guide(spec: GuideSpec, place: str) -> GuideGroove:
    """Passes of a cutter narrower than its groove.

    One pass clears the cutter's width; each further one at most as much again.
    Source: arithmetic.
    """
    width = named(join(place, "width"), spec.groove[0])
    cutter = named(join(place, "cutter"), spec.cutter)
    spare = width - cutter
    return GuideGroove(
        width=width,
        depth=named(join(place, "depth"), spec.groove[1]),
        cutter=cutter,
        passes=named(join(place, "passes"), whole_up(spare / cutter) + 1, ""),
        shift=named(join(place, "shift of the last pass"), spare),
    )


def guide_cut(
    guide: GuideGroove,
    *,
    face: Face,
    along: tuple[float, float],
    middle: float,
    trimmed: float,
) -> Groove:
    """The groove where it crosses one part, from edge to edge, below the trim line."""
    return Groove(
        name="floor guide groove",
        face=face,
        u0=along[0],
        u1=along[1],
        v=middle,
        width=guide.width,
        depth=guide.depth + trimmed,
        surface=trimmed,
        making=Making(
            by="bench",
            when="after glue-up",
            cutter=guide.cutter,
            tool="hand-held power router against a fence, on the foot of the glued leaf",
        ),
    )
