"""What holds a board that butts against another: dowels, stepped screws.

One set of numbers bores both members, so that each hole of the one meets its own of the other.

  upright board, on its face        level board, on its end        through both
        front                         front                         |     |________
   ----|-e-|-------|-------|        |-e-o   o   o   o    |         =|==o==|   dowel: into the
       o   |       o       o        |_____________________|         |     |________   face less
           |<-pitch->|                 v: half its thickness        |     |           deep
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.boring import IN_END, IN_FACE, Bite, BoringSpec, round_bite
from parametric.cases.drawer_corners import DEEP_IN_SIDE, GLUE_ROOM
from parametric.cases.fixings import Fixings, Joint, TooShort, fixings
from parametric.figures import Figure, named, smallest
from parametric.model import Drilled, End, Face
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Dowels:
    """Dowels of one joint, mm: how deep into the face, how deep into the end, the middle of the end."""

    places: Fixings
    thick: Figure
    long: Figure
    in_face: Figure
    in_end: Figure
    middle: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class CarcassScrews:
    """One-piece carcass screws of one joint, mm: stepped, the shank through the face's board.

    `in_end` is how deep the hole for the thread goes, `middle` that of the end.
    """

    places: Fixings
    head: Figure
    head_deep: Figure
    shank: Figure
    long: Figure
    through: Figure
    thread: Figure
    in_end: Figure
    middle: Figure


def size_dowels(spec: BoringSpec, joint: Joint) -> Dowels | TooShort:
    """Dowels of one joint.

    Args:
        spec: how the workshop bores.
        joint: the joint; its name is `cabinet base / bottom / left dowels`.

    Two thirds of the face's board, less where that leaves too little behind; the rest and room for
    glue into the end. Common practice, no source.
    """
    thick, long = spec.dowel
    places = fixings(spec, joint, thick)
    if isinstance(places, TooShort):
        return places

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    in_face = at("into the face", smallest(joint.face * DEEP_IN_SIDE, joint.face - spec.behind))
    return Dowels(
        places=places,
        thick=at("thick", thick),
        long=at("long", long),
        in_face=in_face,
        in_end=at("into the end", long - in_face + GLUE_ROOM),
        middle=at("middle of the end", joint.end / 2),
    )


def size_carcass_screws(spec: BoringSpec, joint: Joint) -> CarcassScrews | TooShort:
    """One-piece carcass screws of one joint; its name is `cabinet base / bottom / left screws`.

    The thread's hole is as deep as the screw comes out of the face's board, and room for what it
    pushes before it.
    """
    head, deep = spec.screw_head
    places = fixings(spec, joint, head)
    if isinstance(places, TooShort):
        return places

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    thick, long = spec.screw
    head_deep = at("head deep", deep)
    return CarcassScrews(
        places=places,
        head=at("head", head),
        head_deep=head_deep,
        shank=at("shank", thick),
        long=at("long", long),
        through=at("through", joint.face),
        thread=at("thread hole", spec.screw_pilot),
        in_end=at("into the end", long - (joint.face - head_deep) + GLUE_ROOM),
        middle=at("middle of the end", joint.end / 2),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class OnFace:
    """Where a joint's end stands on a board's face that lies with its length up the case, mm.

    `up` is the middle of the end from the board's low end; `front` how far behind the board's
    front edge that of the other begins.
    """

    face: Face
    up: Figure
    front: float = 0.0
    upwards: bool = False
    """Whether the joint runs up the board: `up` is then from its front edge, `front` from its foot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InEnd:
    """Which end of a board stands in the joint; `front` is how far behind its front edge that begins."""

    end: End
    front: float = 0.0


def _on_face(
    places: Fixings, on: OnFace, name: str, across: Figure, depth: float, surface: float = 0.0
) -> Drilled:
    first = places.first + on.front if on.front else places.first
    return Drilled(
        name=name,
        face=on.face,
        u=first if on.upwards else on.up,
        v=on.up if on.upwards else first,
        diameter=across,
        depth=depth,
        surface=surface,
        count=int(places.count),
        pitch=places.pitch if places.count > 1 else 0.0,
        along="u" if on.upwards else "v",
        making=IN_FACE,
    )


def _in_end(
    places: Fixings, on: InEnd, name: str, middle: Figure, across: Figure, depth: Figure
) -> Drilled:
    return Drilled(
        name=name,
        face=on.end,
        u=places.first + on.front if on.front else places.first,
        v=middle,
        diameter=across,
        depth=depth,
        count=int(places.count),
        pitch=places.pitch if places.count > 1 else 0.0,
        making=IN_END,
    )


def dowels_in_face(dowels: Dowels, on: OnFace) -> tuple[Drilled, ...]:
    """What dowels take from the face of the board that they stand in."""
    return (_on_face(dowels.places, on, "dowel holes", dowels.thick, dowels.in_face),)


def dowels_in_end(dowels: Dowels, on: InEnd) -> tuple[Drilled, ...]:
    """What they take from the end of the other, which lies with its front edge low."""
    places, middle = dowels.places, dowels.middle
    return (_in_end(places, on, "dowel holes", middle, dowels.thick, dowels.in_end),)


def screws_in_face(screws: CarcassScrews, on: OnFace) -> tuple[Drilled, ...]:
    """What stepped screws take from the board that their shanks go through, from its outside.

    Args:
        screws: of the joint.
        on: its outer face: where the heads are.
    """
    places, deep = screws.places, screws.head_deep
    return (
        _on_face(places, on, "screw heads", screws.head, deep),
        _on_face(places, on, "screw shanks", screws.shank, screws.through, deep),
    )


def screws_in_end(screws: CarcassScrews, on: InEnd) -> tuple[Drilled, ...]:
    """The holes for their threads, in the end of the other board."""
    places, middle = screws.places, screws.middle
    return (_in_end(places, on, "screw threads", middle, screws.thread, screws.in_end),)


def bites_of(held: Dowels | CarcassScrews, *, up: Figure, front: float = 0.0) -> tuple[Bite, ...]:
    """What a joint takes from the board that it stands on, as bites in the case; of screws the heads.

    Args:
        held: dowels or screws.
        up: the middle of the joint from the case's foot, mm.
        front: how far behind the front edges its boards begin, mm.
    """
    match held:
        case Dowels():
            name, across = f"{held.places.name}, a dowel", held.thick
        case CarcassScrews():
            name, across = f"{held.places.name}, a screw", held.head
    return tuple(round_bite(name, up, front + place, across) for place in held.places.places)
