"""What holds a board that butts against another: dowels, stepped screws, screws from a pocket.

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
from parametric.figures import Figure, exceeds, named, smallest, tangent, whole_down
from parametric.model import Drilled, End, Face
from parametric.names import join

POCKET_ANGLE = Figure(
    15.0,
    "angle of a pocket's bit",
    origin="catalogue",
    unit="deg",
    source="common practice, no source",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixings:
    """Where fixings stand along a joint, mm: the first from the front edge of the boards."""

    name: str
    first: Figure
    count: Figure
    pitch: Figure

    @property
    def places(self) -> tuple[float, ...]:
        """Each of them, from the front edge."""
        return tuple(float(self.first) + n * float(self.pitch) for n in range(int(self.count)))


@dataclass(frozen=True, slots=True, kw_only=True)
class TooShort:
    """A joint too short for two fixings, mm: one alone lets the board turn."""

    name: str
    has: Figure
    needs: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A joint before it is bored, mm: `length` along it, and the two boards' thicknesses.

    The end of the one stands on the face of the other. `staggered` moves its fixings back by
    half a step, where another board stands on the other side of the same place. `shared` says that
    others hold the same end too, so that one fixing is enough where there is no room for two.
    """

    name: str
    length: Figure
    end: Figure
    face: Figure
    staggered: bool = False
    shared: bool = False


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


@dataclass(frozen=True, slots=True, kw_only=True)
class PocketScrews:
    """Screws from pockets in the end's board, mm; bored with a jig, so no cut of the model.

    `mouth` is how far from the end the bit's axis enters the face: it leaves in the middle of
    the end.
    """

    places: Fixings
    thick: Figure
    long: Figure
    mouth: Figure


def fixings(spec: BoringSpec, joint: Joint, across: Figure) -> Fixings | TooShort:
    """Where fixings stand along a joint: equal steps, each a whole number of the pitch.

    Args:
        spec: how the workshop bores.
        joint: the joint.
        across: the widest hole of a fixing, mm.

    Of the distances from two thirds to four thirds of what is asked, the one that leaves least
    behind the last; of equals the nearest to what is asked, then the closer. A joint too short
    for the edge distance has two in its middle, one step apart, with twice their width of wood
    beside them. Common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(joint.name, quantity), value, unit)

    step, edge = spec.pitch, spec.dowel_from_edge
    room = joint.length - 2 * edge
    aside = step / 2 if joint.staggered else Figure(0.0)
    if exceeds(step, room):
        beside = (joint.length - step) / 2
        if exceeds(2 * across, beside):
            if joint.shared and not exceeds(2 * across, joint.length / 2):
                one = at("count", Figure(1, unit=""), "")
                first = at("first", joint.length / 2)
                return Fixings(name=joint.name, first=first, count=one, pitch=at("apart", step))
            return TooShort(name=joint.name, has=joint.length, needs=step + 4 * across)
        return Fixings(
            name=joint.name,
            first=at("first", beside + aside if joint.staggered else beside),
            count=at("count", Figure(2, unit=""), ""),
            pitch=at("apart", step),
        )
    asked = float(spec.dowel_pitch) / float(step)
    most = int(whole_down(room / step))
    tried = [
        n for n in range(1, most + 1) if n / asked + 1e-9 >= 2 / 3 and n / asked <= 4 / 3 + 1e-9
    ]

    def left(steps: int) -> float:
        each = steps * float(step)
        return float(room) - int(float(room) / each + 1e-9) * each

    steps = min(tried, key=lambda n: (round(left(n), 6), abs(n - asked), n), default=most)
    pitch = at("apart", steps * step)
    return Fixings(
        name=joint.name,
        first=at("first", edge + aside if joint.staggered else edge),
        count=at("count", whole_down(room / pitch) + 1, ""),
        pitch=pitch,
    )


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


def size_pocket_screws(spec: BoringSpec, joint: Joint) -> PocketScrews | TooShort:
    """Pocket screws of one joint: half the board's thickness over the tangent of the jig's angle."""
    thick, long = spec.pocket_screw
    places = fixings(spec, joint, thick)
    if isinstance(places, TooShort):
        return places

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    return PocketScrews(
        places=places,
        thick=at("thick", thick),
        long=at("long", long),
        mouth=at("pocket from the end", joint.end / 2 / tangent(POCKET_ANGLE)),
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


@dataclass(frozen=True, slots=True, kw_only=True)
class InEnd:
    """Which end of a board stands in the joint; `front` is how far behind its front edge that begins."""

    end: End
    front: float = 0.0


def _on_face(
    places: Fixings, on: OnFace, name: str, across: Figure, depth: float, surface: float = 0.0
) -> Drilled:
    return Drilled(
        name=name,
        face=on.face,
        u=on.up,
        v=places.first + on.front if on.front else places.first,
        diameter=across,
        depth=depth,
        surface=surface,
        count=int(places.count),
        pitch=places.pitch if places.count > 1 else 0.0,
        along="v",
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
    """What a joint takes from the face that looks into the bay, as bites in the case.

    Args:
        held: dowels or screws.
        up: the middle of the joint from the case's foot, mm.
        front: how far behind the front edges its boards begin, mm.
    """
    match held:
        case Dowels():
            name, across = f"{held.places.name}, a dowel", held.thick
        case CarcassScrews():
            name, across = f"{held.places.name}, a screw", held.shank
    return tuple(round_bite(name, up, front + place, across) for place in held.places.places)
