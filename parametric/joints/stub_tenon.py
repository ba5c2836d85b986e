"""Stub tenons: the rail's end thinned to the panel groove, which runs the whole length of the stile.

plan, cut through a rail          front, cut down the middle of the thickness
 stile  | rail                     stile  |
  ______|________                   ______|__________  rail
  |   __|                           | |   |
  |  |  |   cheek, sawn away        | |   |  tenon, as long as the groove is deep
  |  |__|                           | |___|__________
  |_____|________                   |      __________  the panel's groove goes through the
                                                       tenon, to the end of the rail
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, named
from parametric.joints.joint import JointBlock
from parametric.model import Face, Making, Shaped
from parametric.names import join
from parametric.outlines import rectangle
from parametric.written import Length, LengthPair

_FACES: tuple[Literal["low face", "high face"], ...] = ("low face", "high face")


class StubTenonSpec(JointBlock):
    """The joint as written; how thick the tenon is the panel's groove says."""

    kind: Literal["stub tenon"]
    length: Length = Field(description="of the tenon: no more than the panel's groove is deep")


@dataclass(frozen=True, slots=True, kw_only=True)
class StubTenon:
    """The joint's sizes, mm: `cheek` is what comes off either face of the rail's end."""

    length: Figure
    thickness: Figure
    groove_depth: Figure
    cheek: Figure

    @property
    def mortise_depth(self) -> Figure:
        """How deep the stile is cut for it."""
        return self.groove_depth

    @property
    def mortise_width(self) -> Figure:
        """How wide that cut is."""
        return self.thickness


def size_stub_tenon(
    spec: StubTenonSpec, place: str, *, groove: LengthPair, frame: Figure
) -> StubTenon:
    """Name the joint's numbers at their place (`leaf A / joint`).

    Args:
        spec: the joint as written.
        place: its place.
        groove: of the leaf's panels, wide and deep, mm.
        frame: thickness of the frame, mm.
    """

    def at(quantity: str, value: Figure) -> Figure:
        return named(join(place, quantity), value)

    thickness = at("tenon thickness", groove[0])
    return StubTenon(
        length=at("tenon length", spec.length),
        thickness=thickness,
        groove_depth=at("groove depth", groove[1]),
        cheek=at("cheek", (frame - thickness) / 2),
    )


def stub_cheeks(joint: StubTenon, *, length: float, height: float) -> tuple[Shaped, ...]:
    """What is taken off a rail's faces at both ends; the groove in its edge is another cut.

    Args:
        joint: the joint's sizes.
        length: of the rail's blank, over both tenons, mm.
        height: the rail's own width, mm.
    """
    reach, long = float(joint.length), float(length)
    making = Making(by="saw", tool="dado set, rail flat against the mitre gauge, end to a stop")
    return tuple(
        _cheek(joint, face, u0, u1, float(height), making)
        for face in _FACES
        for u0, u1 in ((0.0, reach), (long - reach, long))
    )


def _cheek(
    joint: StubTenon, face: Face, u0: float, u1: float, height: float, making: Making
) -> Shaped:
    return Shaped(
        name="stub tenon cheek",
        face=face,
        outline=rectangle(u0, 0.0, u1, height),
        depth=joint.cheek,
        making=making,
    )
