"""Overhead tracks and hangers: bought, never made; what matters is where they stand."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named, whole_up
from parametric.model import Blank
from parametric.written import Block, Count, Length, Mass, Words


class TrackSpec(Block):
    """The track as written: from its data sheet or measured with callipers."""

    spacing: Length | None = None
    hangers: Count
    brackets_every: Length
    off_wall: Length
    bearing: Length | None = None
    carries: Mass | None = None
    set_carries: Mass | None = None
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Track:
    """What the track carries and how it is fixed. kg, mm."""

    written: TrackSpec
    hangers: Figure
    load_per_hanger: Figure
    carries: Figure | None
    brackets: Figure
    fixing_depth: Figure | None


def size_track(
    spec: TrackSpec,
    *,
    length: Figure,
    heaviest: Figure,
    board: Figure | None,
    screw: Figure,
) -> Track:
    """Share the heaviest leaf over its hangers and set out the brackets.

    Args:
        spec: the track as written.
        length: length of each track, mm.
        heaviest: weight of the heaviest leaf, kg.
        board: board over the fixing, mm; None when not measured.
        screw: least screw in solid timber, mm.

    Source: a centred mass shares alike over its hangers (statics); one bracket at each
    end and none farther apart than `brackets every` (common practice, no source).
    """
    hangers = named("hangers a leaf", spec.hangers, "")
    carries: Figure | None = None
    if spec.carries is not None:
        carries = named("hanger rating", spec.carries, "kg")
    elif spec.set_carries is not None:
        carries = named("hanger rating", spec.set_carries / hangers, "kg")
    depth = None
    if board is not None:
        depth = named(
            "screw through board into timber",
            named("board over fixing", board) + named("screw in timber", screw),
        )
    return Track(
        written=spec,
        hangers=hangers,
        load_per_hanger=named("load per hanger", heaviest / hangers, "kg"),
        carries=carries,
        brackets=named(
            "brackets a track",
            whole_up(length / named("brackets every", spec.brackets_every)) + 1,
            "",
        ),
        fixing_depth=depth,
    )


TRACK_WIDE, TRACK_HIGH, TRACK_ABOVE_LEAF = 32.0, 24.0, 8.0
"""The bar that stands for a track in pictures, mm. The real one is the supplier's."""


def track_blank(length: Figure) -> Blank:
    """A plain bar in a track's place: shown, never made."""
    return Blank(length=length, width=TRACK_WIDE, thickness=TRACK_HIGH)
