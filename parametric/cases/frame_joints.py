"""The joints of a face frame: what holds its rails between its stiles, bored in both.

seen from behind
    |      |____________________    each rail between the wall stiles, each centre stile between
    | wall |  o                     the rails: two fixings a joint where it is narrow, a quarter
    | stile|  o    rail             of it from either side; or one tenon in its middle
    |      |____________________
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.cases.boring import BoringSpec
from parametric.cases.butt_joints import Dowels
from parametric.cases.case_tenons import Tenons
from parametric.cases.drawer_corners import GLUE_ROOM
from parametric.cases.face_frame import FaceFrame, FrameJoint
from parametric.cases.fixings import Fixings, Joint, TooShort, fixings, slots_along
from parametric.cases.pocket_screws import PocketScrews, pocket_screws_at
from parametric.figures import Figure, exceeds, named, smallest
from parametric.names import join

FrameHeld = Dowels | PocketScrews | Tenons | TooShort
"""What holds one joint of a face frame, or that it is too short for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameJoints:
    """The joints of one face frame, those alike by one set of numbers: `ends` of it have each.

    `wall` is a rail's end on a wall stile, `centre` a centre stile's on a rail.
    """

    wall: FrameHeld
    centre: FrameHeld | None
    centre_stiles: int
    thickness: Figure

    @property
    def counted(self) -> tuple[tuple[FrameHeld, int], ...]:
        """Each sort of joint, and how many there are: two rails' both ends, each centre stile's."""
        found: list[tuple[FrameHeld, int]] = [(self.wall, 4)]
        if self.centre is not None:
            found.append((self.centre, 2 * self.centre_stiles))
        return tuple(found)


def size_frame_joints(
    spec: BoringSpec, frame: FaceFrame, joined_by: FrameJoint, *, name: str, centre_stiles: int
) -> FrameJoints:
    """The joints of a face frame.

    Args:
        spec: how the workshop bores.
        frame: the frame.
        joined_by: how its members are held.
        name: of its case.
        centre_stiles: how many it has.
    """
    place = join(name, "face frame")
    narrowest = smallest(frame.left.shows, frame.right.shows)
    wall = Joint(
        name=join(place, "rails at the wall stiles"),
        length=frame.rail,
        end=frame.thickness,
        face=narrowest,
    )
    centre = Joint(
        name=join(place, "centre stiles at the rails"),
        length=frame.centre_stile,
        end=frame.thickness,
        face=frame.rail,
    )
    return FrameJoints(
        wall=_held(spec, joined_by, wall),
        centre=_held(spec, joined_by, centre) if centre_stiles else None,
        centre_stiles=centre_stiles,
        thickness=frame.thickness,
    )


def _held(spec: BoringSpec, joined_by: FrameJoint, joint: Joint) -> FrameHeld:
    match joined_by:
        case "dowel":
            return _dowels(spec, joint)
        case "pocket screw":
            places = _places(spec, joint, spec.pocket_screw[0], spec.pocket)
            if isinstance(places, TooShort):
                return places
            return pocket_screws_at(spec, joint, places)
        case "loose tenon":
            return _tenons(spec, joint)
        case _:
            assert_never(joined_by)


def _places(spec: BoringSpec, joint: Joint, across: Figure, wide: Figure) -> Fixings | TooShort:
    """Along a joint as boards of a case have them; along a narrow one a quarter in from either side.

    Args:
        spec: how the workshop bores.
        joint: the joint.
        across: the widest hole of a fixing, mm.
        wide: the widest that is cut for it at all, mm.
    """
    usual = fixings(spec, joint, across)
    if isinstance(usual, Fixings):
        return usual
    quarter = joint.length / 4
    least = wide / 2 + spec.behind
    if exceeds(least, quarter):
        return TooShort(name=joint.name, has=joint.length, needs=4 * least)
    return Fixings(
        name=joint.name,
        first=named(join(joint.name, "first"), quarter),
        count=named(join(joint.name, "count"), Figure(2, unit=""), ""),
        pitch=named(join(joint.name, "apart"), joint.length / 2),
    )


def _dowels(spec: BoringSpec, joint: Joint) -> Dowels | TooShort:
    """Half of a dowel in each member, and half of the room for glue."""
    thick, long = spec.dowel
    places = _places(spec, joint, thick, thick)
    if isinstance(places, TooShort):
        return places

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    in_face = at("into the edge", smallest((long + GLUE_ROOM) / 2, joint.face - spec.behind))
    return Dowels(
        places=places,
        thick=at("thick", thick),
        long=at("long", long),
        in_face=in_face,
        in_end=at("into the end", long + GLUE_ROOM - in_face),
        middle=at("middle of the end", joint.end / 2),
    )


def _tenons(spec: BoringSpec, joint: Joint) -> Tenons | TooShort:
    """A tenon no wider than leaves its own thickness of wood at either end of its slot; half in each."""
    thick, wide, long = spec.loose_tenon
    wide = smallest(wide, joint.length - 2 * thick - spec.tenon_play)
    if exceeds(2 * thick, wide):
        needs = 4 * thick + spec.tenon_play
        return TooShort(name=joint.name, has=joint.length, needs=needs, one=True)

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(joint.name, quantity), value, unit)

    slot_long = at("slot long", wide + spec.tenon_play)
    found = slots_along(spec, joint, long=slot_long, wide=thick)
    if isinstance(found, TooShort):
        found = Fixings(
            name=joint.name,
            first=at("first", joint.length / 2),
            count=at("count", Figure(1, unit=""), ""),
            pitch=at("apart", spec.pitch),
        )
    in_face = at("into the edge", smallest((long + GLUE_ROOM) / 2, joint.face - spec.behind))
    return Tenons(
        places=found,
        thick=at("tenon thick", thick),
        wide=at("tenon wide", wide),
        long=at("tenon long", long),
        slot_long=slot_long,
        in_face=in_face,
        in_end=at("into the end", long + GLUE_ROOM - in_face),
        middle=at("middle of the end", joint.end / 2),
    )
