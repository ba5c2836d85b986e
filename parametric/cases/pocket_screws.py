"""Screws from pockets: a stepped hole at a flat angle in one board, on into the face of another.

the end's board, cut along a screw                 |  the face's board
_____________                    ______________    |        |
:    pocket      .:              |    |        |
.  deep     .:                |    |        |
.____ .:   seat           |    |        |
::------- screw -----|----|--->    |  into: what holds
______________________________________________|    |        |
|<-------------- mouth --------->|
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.cases.boring import Bite, BoringSpec, round_bite
from parametric.cases.butt_joints import InEnd
from parametric.cases.fixings import Fixings, Joint, TooShort, fixings
from parametric.figures import Figure, cosine, exceeds, named, tangent
from parametric.model import Making, ScrewPocket
from parametric.names import join

_NO_SOURCE = "common practice, no source"

POCKET_ANGLE = Figure(
    15.0, "angle of a pocket's bit", origin="catalogue", unit="deg", source=_NO_SOURCE
)
SOLD = tuple(
    Figure(long, f"pocket screw {long:g}", origin="catalogue", source=_NO_SOURCE)
    for long in (19.0, 25.0, 32.0, 38.0, 51.0, 64.0)
)
"""The lengths that pocket screws are sold in, mm."""
LEAST_HOLD = Figure(
    2.0,
    "times its thickness that a pocket screw goes into each board",
    origin="catalogue",
    unit="",
    source=_NO_SOURCE,
)
HOLDS = Figure(
    3 / 5,
    "part of what it goes through of its own board that a pocket screw goes on for",
    origin="catalogue",
    unit="",
    source=_NO_SOURCE,
)
SUNK = Figure(1.0, "pocket deeper than lets a head sink in", origin="catalogue", source=_NO_SOURCE)
JIG = Making(by="bench", tool="pocket jig, its stepped bit, a collar on it")
BroadFace = Literal["low face", "high face"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PocketScrews:
    """Pocket screws of one joint, mm: each leaves its board in the middle of the end.

    `mouth` is how far from the end the bit's axis enters the face, `deep` how far along it the
    pocket goes, `seat` what is left from there to the end; `into` how deep a screw goes into the
    other board, `face` thick, square to its face. `least` is the least of both that holds.
    Nothing is bored for it in the other board.
    """

    places: Fixings
    thick: Figure
    long: Figure
    mouth: Figure
    angle: Figure
    wide: Figure
    deep: Figure
    seat: Figure
    into: Figure
    face: Figure
    least: Figure


def size_pocket_screws(spec: BoringSpec, joint: Joint) -> PocketScrews | TooShort:
    """Pocket screws of one joint: half the board's thickness over the tangent of the jig's angle.

    Args:
        spec: how the workshop bores.
        joint: the joint; its name is `cabinet base / bottom / left end`.
    """
    places = fixings(spec, joint, spec.pocket_screw[0])
    return places if isinstance(places, TooShort) else pocket_screws_at(spec, joint, places)


def pocket_screws_at(spec: BoringSpec, joint: Joint, places: Fixings) -> PocketScrews:
    """Pocket screws at places of a joint.

    The pocket goes as deep as lets a head sink in wholly, and a little more. A screw whose length
    nobody wrote is the shortest sold that goes on for three fifths of what it goes through of its
    own board, of those that stay in the other one. Common practice, no source: 32 in 18 to 20.
    """
    thick, written = spec.pocket_screw

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    mouth = at("pocket from the end", joint.end / 2 / tangent(POCKET_ANGLE))
    deep = at("pocket deep", spec.pocket / 2 / tangent(POCKET_ANGLE) + SUNK)
    seat = at("pocket to the end", mouth / cosine(POCKET_ANGLE) - deep)
    room = joint.face - spec.behind
    long = written
    if written.origin == "assumed":
        fitting = [one for one in SOLD if not exceeds((one - seat) * cosine(POCKET_ANGLE), room)]
        holding = [one for one in fitting if not exceeds(seat * HOLDS, one - seat)]
        long = next(iter((*holding, *reversed(fitting), SOLD[0])))
    return PocketScrews(
        places=places,
        thick=at("thick", thick),
        long=at("long", long),
        mouth=mouth,
        angle=POCKET_ANGLE,
        wide=at("pocket", spec.pocket),
        deep=deep,
        seat=seat,
        into=at("into the face", (long - seat) * cosine(POCKET_ANGLE)),
        face=at("other board", joint.face),
        least=at("least hold", LEAST_HOLD * thick),
    )


def pockets_in_face(screws: PocketScrews, at: InEnd, face: BroadFace) -> ScrewPocket:
    """The pockets and their pilots, in the board that carries them.

    Args:
        screws: of the joint.
        at: the end that they come out of.
        face: the face that the pockets open in.
    """
    places = screws.places
    return ScrewPocket(
        name="screw pocket",
        face=face,
        end=at.end,
        mouth=screws.mouth,
        v=places.first + at.front if at.front else places.first,
        angle=screws.angle,
        wide=screws.wide,
        deep=screws.deep,
        pilot=screws.thick,
        count=int(places.count),
        pitch=places.pitch if places.count > 1 else 0.0,
        making=JIG,
    )


def screw_bites(screws: PocketScrews, *, up: Figure, front: float = 0.0) -> tuple[Bite, ...]:
    """Where the screws go into the other board's face, as bites in the case."""
    name = f"{screws.places.name}, a screw"
    return tuple(
        round_bite(name, up, front + place, screws.thick) for place in screws.places.places
    )


def pocket_bites(
    screws: PocketScrews, cut: ScrewPocket, *, low: float, high: float, front: float
) -> tuple[Bite, ...]:
    """What the pockets take from the face of an upright board, as bites in the case.

    Args:
        screws: of the joint.
        cut: the pockets in it.
        low: the board's foot, mm from the case's.
        high: its head.
        front: how far behind the front edges its own stands, mm.
    """
    half, reach = float(cut.wide) / 2, cut.reach
    begins, ends = (low, low + reach) if cut.end == "low end" else (high - reach, high)
    return tuple(
        Bite(
            name=f"{screws.places.name}, a pocket",
            low=begins,
            high=ends,
            near=front + place - half,
            far=front + place + half,
        )
        for place in cut.places
    )
