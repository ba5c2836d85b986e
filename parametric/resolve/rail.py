"""A rail between the stiles: where it stands, how it is joined, what is let into its edges."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.joints.joint_kinds import Joint
from parametric.joints.loose_tenon import LooseTenon, SlotPlace, place_slots
from parametric.names import join
from parametric.resolve.bands import Band
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class Rail:
    """A rail between the stiles, mm.

    `length` is from shoulder to shoulder, `blank` from end to end, `reach` past either shoulder:
    over the stile's moulding or as a tenon, nothing where its shoulders are its ends. `low_groove` and `high_groove` are
    how far a panel's groove reaches past either edge, in the rail and in the stiles beside it;
    None where an edge has none.
    """

    name: str
    noun: str
    foot: Figure
    height: Figure
    top: Figure
    length: Figure
    reach: Figure
    blank: Figure
    low_groove: Figure | None
    high_groove: Figure | None
    slots: tuple[SlotPlace, ...]
    head: LeafHead | None = None
    """The curve of its underside; `height` is then that of its blank, `foot` the springing."""
    left_end: Figure | None = None
    right_end: Figure | None = None
    """How high an arched rail is at its ends."""

    @property
    def shoulders(self) -> tuple[float, float]:
        """Where its shoulders lie along its blank, mm."""
        if not float(self.reach):
            return (0.0, self.length)
        return (self.reach, self.reach + self.length)

    @property
    def between_grooves(self) -> tuple[float, float]:
        """Where its wood is whole through the thickness, up from the foot of the leaf, mm."""
        low = self.foot if self.low_groove is None else self.foot + self.low_groove
        high = self.top if self.high_groove is None else self.top - self.high_groove
        return low, high


def resolve_rail(
    bands: tuple[Band, ...],
    index: int,
    joint: Joint,
    shoulder: Figure,
    reaches: Mapping[str, Figure | None],
    head: LeafHead | None,
    reach: Figure | None = None,
) -> Rail:
    """A rail, grooved on each edge that a panel stands against, rebated where glass does.

    `reaches` says how far what fills an opening reaches into the rail, by its noun; `reach`
    how far the rail goes past its shoulders, None where they are its ends.
    """
    band = bands[index]
    above = bands[index - 1].noun if index else None
    below = bands[index + 1].noun if index + 1 < len(bands) else None
    low, high = reaches.get(below or ""), reaches.get(above or "")
    # Slots of an arched rail stand where it is whole from end to end.
    foot, height = (
        (band.foot, band.height)
        if head is None
        else (
            named(join(band.name, "whole from"), band.foot + head.crown),
            named(join(band.name, "least height"), band.height - head.crown),
        )
    )
    length = named(join(band.name, "length"), shoulder)
    return Rail(
        name=band.name,
        noun=band.noun,
        foot=band.foot,
        height=band.height,
        top=band.top,
        length=length,
        reach=Figure(0.0) if reach is None else reach,
        blank=length
        if reach is None
        else named(join(band.name, "blank length"), length + 2 * reach),
        head=head,
        left_end=None
        if head is None
        else named(join(band.name, "height at its left end"), band.height - head.at_left),
        right_end=None
        if head is None
        else named(join(band.name, "height at its right end"), band.height - head.at_right),
        low_groove=low if below == "panel" else None,
        high_groove=high if above == "panel" else None,
        slots=()
        if not isinstance(joint, LooseTenon)
        else place_slots(
            joint,
            rail=band.name,
            count=1 if band.written.tenons is None else int(band.written.tenons),
            foot=foot,
            height=height,
            low_groove=low,
            high_groove=high,
            low_end=below is None,
            high_end=above is None,
        ),
    )
