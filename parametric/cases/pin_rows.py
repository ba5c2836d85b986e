"""Rows of holes for shelf pins: at which heights, on which lines, what they keep clear of.

   case side, from inside; its front edge at the left
      |  37 |      32 n      |
  --- |.....dado of the top......
   |  |                          least `from ends` to the first and the last
      |     o                o
   32 |     o                o
      |     o                o
      | [plate]                  a height that leaves too little beside what else is cut is left
      |     o                o   out, in all four rows of the bay: a shelf lies level
  --- |.....dado of the bottom...

Rows of a bay are one set of numbers, told from the case's foot and from the front edges; the two
boards on either side of it are bored from them alike.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.cases.boring import IN_FACE, Bite, BoringSpec, round_bite
from parametric.figures import Figure, exceeds, named, smallest, whole_down, whole_up
from parametric.model import Drilled, Face
from parametric.names import join

_STEP = 1.0
"""Rows are moved up and down by whole millimetres to clear what is cut: a rule reads them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A height without pins, and what is cut too near to it."""

    height: float
    beside: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PinRows:
    """The pin holes of one bay, mm: `count` heights from `first` up, `pitch` apart.

    `front` and `back` are the two lines, from the front edges; `left_out` are heights in between
    that no pin is bored at. `deep` is `asked` unless the board is too thin for that.
    """

    name: str
    first: Figure
    last: Figure
    count: Figure
    pitch: Figure
    front: Figure
    back: Figure
    across: Figure
    deep: Figure
    asked: Figure
    left_out: tuple[LeftOut, ...] = ()

    @property
    def heights(self) -> tuple[float, ...]:
        """Every height that has pins, from the lowest."""
        out = {round(one.height, 6) for one in self.left_out}
        every = (float(self.first) + n * float(self.pitch) for n in range(int(self.count)))
        return tuple(at for at in every if round(at, 6) not in out)

    @property
    def bites(self) -> tuple[Bite, ...]:
        """Every hole, for whatever else is to be cut there."""
        return tuple(
            round_bite(f"{self.name}, a pin hole", up, back, self.across)
            for up in self.heights
            for back in (self.front, self.back)
        )

    @property
    def runs(self) -> tuple[tuple[float, int], ...]:
        """Heights that follow one another: the first of each run, and how many."""
        runs: list[list[float]] = []
        for at in self.heights:
            if runs and abs(at - runs[-1][-1] - float(self.pitch)) < 1e-6:
                runs[-1].append(at)
            else:
                runs.append([at])
        return tuple((run[0], len(run)) for run in runs)


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPins:
    """Why a bay has no pins: what it has and what they would need, mm.

    Too `low` or too `shallow` a space, boards too `thin`; every height too near to something,
    `beside` it, where `needs` is the web; or `few` heights for so many shelves.
    """

    name: str
    why: Literal["low", "shallow", "thin", "crowded", "few"]
    has: Figure
    needs: Figure
    beside: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinSpace:
    """What pins have room in, mm: between the boards above and below, from `front` to `depth`.

    Both from the front edges: `front` is what inset fronts take. `both_faces` says that one of the
    boards beside it is bored from its other face too, at the same heights; `thickness` is that of
    the thinner board.
    """

    low: Figure
    high: Figure
    depth: Figure
    thickness: Figure
    both_faces: bool = False
    front: Figure | None = None


def pin_rows(
    spec: BoringSpec,
    space: PinSpace,
    *,
    name: str,
    taken: Sequence[Bite] = (),
    middle: Figure | None = None,
) -> PinRows | NoPins:
    """The rows of one bay or of one space in it.

    Args:
        spec: how the workshop bores.
        space: what there is room in.
        name: `cabinet upper / bay 1`.
        taken: what is cut into either of the two faces already.
        middle: the middle of a board, mm from the case's foot, that the rows are alike above and
            below, so that a left side and a right one are the same board.

    As many heights as go in, the spare shared above and below; moved by whole millimetres to
    where the fewest are too near to something, the nearest such place. Common practice, no source.
    """
    place = join(name, "pin holes")

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    if (none := _no_room(spec, space, name)) is not None:
        return none
    across, pitch = at("across", spec.pins[0]), at("pitch", spec.pitch)
    front = at("front line", _front(spec, space))
    steps = at("steps to the back line", _steps_back(spec, space), "")
    back = at("back line", front + steps * pitch)

    barred = tuple(_barred(taken, (front, back), across, spec.web))

    def blocked(up: float) -> str:
        """What is too near to the holes at a height; empty where nothing is."""
        return next((name for low, high, name in barred if low < up < high), "")

    low, high = space.low + spec.from_ends, space.high - spec.from_ends
    if middle is None:
        first, count = _moved(low, high, pitch, blocked)
    else:
        first, count = _alike_about(middle, low, high, pitch)
    heights = [float(first) + n * float(pitch) for n in range(int(count))]
    out = [LeftOut(height=up, beside=near) for up in heights if (near := blocked(up))]
    if not heights:
        # no whole step from the middle falls into so low a space
        return NoPins(name=name, why="low", has=high - low, needs=pitch)
    if len(out) == len(heights):
        return NoPins(name=name, why="crowded", has=spec.web, needs=spec.web, beside=out[0].beside)
    first, count = at("first", first), at("heights", count, "")
    return PinRows(
        name=name,
        first=first,
        last=at("last", first + (count - 1) * pitch),
        count=count,
        pitch=pitch,
        front=front,
        back=back,
        across=across,
        deep=at("depth", _deep(spec, space)),
        asked=spec.pins[1],
        left_out=tuple(out),
    )


def _barred(
    taken: Sequence[Bite], lines: Sequence[Figure], across: Figure, web: Figure
) -> Iterator[tuple[float, float, str]]:
    """Between which heights no hole's middle may be, and what is there; a web just kept is kept."""
    half, least = float(across) / 2, float(web) - 1e-6
    for bite in taken:
        beside = (
            max(bite.near - line - half, line - half - bite.far) for line in map(float, lines)
        )
        if any(apart < least for apart in beside):
            yield bite.low - half - least, bite.high + half + least, bite.name


def _no_room(spec: BoringSpec, space: PinSpace, name: str) -> NoPins | None:
    high, ends = space.high - space.low, 2 * spec.from_ends
    if exceeds(ends, high):
        return NoPins(name=name, why="low", has=high, needs=ends)
    if _steps_back(spec, space) < 1:
        needs = _front(spec, space) + spec.pitch + spec.from_back
        return NoPins(name=name, why="shallow", has=space.depth, needs=needs)
    if exceeds(spec.least_pin, _deep(spec, space)):
        needs = (2 if space.both_faces else 1) * spec.least_pin + spec.behind
        return NoPins(name=name, why="thin", has=space.thickness, needs=needs)
    return None


def _steps_back(spec: BoringSpec, space: PinSpace) -> Figure:
    """From the front line to the back one, in steps of the pitch."""
    return whole_down((space.depth - _front(spec, space) - spec.from_back) / spec.pitch)


def _front(spec: BoringSpec, space: PinSpace) -> Figure:
    """The front line, from the front edges: behind inset fronts where there are some."""
    return spec.from_front if space.front is None else space.front + spec.from_front


def _deep(spec: BoringSpec, space: PinSpace) -> Figure:
    """As deep as asked; no deeper than leaves wood behind, or between two pins back to back."""
    wood = space.thickness - spec.behind
    return smallest(spec.pins[1], wood / 2 if space.both_faces else wood)


def _moved(
    low: Figure, high: Figure, pitch: Figure, blocked: Callable[[float], str]
) -> tuple[Figure, Figure]:
    """The first height and how many: the spare shared, then moved to lose the fewest."""
    count = whole_down((high - low) / pitch) + 1
    shared = low + (high - low - (count - 1) * pitch) / 2
    tried = sorted(range(-int(pitch / 2), int(pitch / 2) + 1), key=lambda far: (abs(far), -far))
    best, kept = (shared, count), -1
    for far in tried:
        first = shared + far * _STEP if far else shared
        if exceeds(low, first):
            first = first + pitch
        if exceeds(first, high):
            continue
        number = whole_down((high - first) / pitch) + 1
        free = [not blocked(float(first) + n * float(pitch)) for n in range(int(number))]
        if sum(free) > kept:
            kept = sum(free)
            skipped = free.index(True) if any(free) else 0
            left = number - skipped - (free[::-1].index(True) if any(free) else 0)
            best = (first + skipped * pitch if skipped else first, left)
        if kept == int(count):
            break
    return best


def _alike_about(middle: Figure, low: Figure, high: Figure, pitch: Figure) -> tuple[Figure, Figure]:
    """The first height and how many, alike above and below a middle: a height on it, or none.

    Where the middle is not between the first and the last, whole steps from it.
    """
    room = smallest(middle - low, high - middle)
    if exceeds(0.0, room):
        first = middle + whole_up((low - middle) / pitch) * pitch
        return first, whole_down((high - first) / pitch) + 1
    on = 2 * whole_down(room / pitch) + 1
    beside = 2 * whole_down(room / pitch + 0.5)
    count = max(beside, on)
    return middle - (count - 1) * pitch / 2, count


def pin_cuts(rows: PinRows, *, face: Face, foot: float, front: float = 0.0) -> tuple[Drilled, ...]:
    """The rows as one board of the bay is bored: a cut for each run of each line.

    Args:
        rows: of the bay.
        face: of the board, lying with its length up the case and its width backwards.
        foot: how high its low end stands in the case, mm.
        front: how far behind the front edges its own stands, mm.
    """
    lines = [line - front if front else line for line in (rows.front, rows.back)]
    return line_cuts(rows, lines, face=face, foot=foot)


def line_cuts(
    rows: PinRows, lines: Sequence[Figure], *, face: Face, foot: float
) -> tuple[Drilled, ...]:
    """The heights of a bay's rows on lines of one board's own, a cut for each run of each.

    Args:
        rows: of the bay.
        lines: from the board's front edge, mm.
        face: of the board, lying with its length up the case.
        foot: how high its low end stands in the case, mm.
    """
    return tuple(
        Drilled(
            name="pin holes",
            face=face,
            u=first - foot,
            v=line,
            diameter=rows.across,
            depth=rows.deep,
            count=count,
            pitch=rows.pitch if count > 1 else 0.0,
            making=IN_FACE,
        )
        for line in lines
        for first, count in rows.runs
    )


def lying_on(heights: Sequence[float], pin: float, wanted: float) -> float:
    """The pins that a shelf lies on whose underside is wanted at a height, mm.

    Args:
        heights: of the pins.
        pin: across one: the shelf lies on top of it.
        wanted: the height.
    """
    return min(heights, key=lambda up: (abs(up + float(pin) / 2 - float(wanted)), up))
