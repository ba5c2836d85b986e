"""The bands of a leaf, read top to bottom: rails, and what fills the openings between them.

2102 ___________   given     read from the top of the list to its foot;
     | top rail |  equal     the lines that are `equal`, `rest` or `parts`
     |  lite    |  rest      share what the given ones leave
     |   ...    |
   0 |__________|
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import assert_never

from parametric.design.leaf import RAILS, LeafSpec
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, named
from parametric.names import join, nearest
from parametric.problems import Problem
from parametric.resolve.bands_amiss import (
    Beside,
    Held,
    Told,
    does_not_add,
    held_fast,
    nothing_beside,
    nothing_left,
)
from parametric.units import Unit
from parametric.written import Equal, NotMeasured, Parts, Rest


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """One line of the list, resolved. mm; `foot` is above the finished foot of the leaf."""

    noun: str
    name: str
    height: Figure
    foot: Figure
    top: Figure
    written: WrittenBand

    @property
    def is_rail(self) -> bool:
        """A rail, as against an opening."""
        return self.noun in RAILS


def resolve_bands(
    leaf: LeafSpec,
    *,
    place: str,
    height: Figure,
    unit: Unit,
    whole: str = "the door",
    arch: Figure | None = None,
    lines: Mapping[str, Figure | NotMeasured] = MappingProxyType({}),
) -> tuple[tuple[Band, ...], tuple[Problem, ...]]:
    """Share the leaf's height over its bands, from the top of the list down.

    A rail pinned by `centre`, `top` or `bottom` cuts the leaf into zones that are shared out
    separately.

    Args:
        leaf: the leaf as written.
        place: the leaf's name.
        height: the finished leaf, mm.
        unit: the design's unit, for messages.
        whole: what the leaf's height is called in them.
        arch: how far the curve under an arched rail rises over the opening, mm: the rail is
            that much higher where it springs than where it is least.
        lines: the lines of the room that a rail may be held at, above the finished foot, mm.

    Problems: bands that do not add up, or leave a line nothing; a line nobody measured.
    """
    bands = tuple(leaf.top_to_bottom)
    names = _names(bands, place)
    solved: list[tuple[WrittenBand, str, Figure]] = []
    feet: dict[str, Figure] = {}
    problems: list[Problem] = []
    zone: list[tuple[WrittenBand, str]] = []
    last: Beside | None = None
    ceiling: Figure = height
    told = Told(
        unit=unit,
        whole=whole,
        crown=arch,
        arched=sum(line.underside == "arch" for line in bands),
    )
    if arch is not None:
        bands = tuple(_raised(line, arch) for line in bands)
    for index, (line, name) in enumerate(zip(bands, names, strict=True)):
        held = _held(line, lines)
        if isinstance(held, Problem):
            return (), (held,)
        if held is None:
            zone.append((line, name))
            continue
        own = named(join(name, "height"), _given(line))
        foot = _held_foot(held, own, name)
        above = Beside(
            held=held,
            side="above",
            other_gives=_gives(bands[index + 1 :]),
            over=None if last is None else last.held,
        )
        shares, found = _share_out(zone, ceiling - (foot + own), leaf, told, pin=above)
        last = Beside(held=held, side="below", other_gives=_gives(one for one, _ in zone))
        problems += found
        solved += shares
        solved.append((line, name, own))
        feet[name] = foot
        zone, ceiling = [], foot
    shares, found = _share_out(zone, ceiling, leaf, told, pin=last)
    problems += found
    solved += shares
    if problems:
        return (), tuple(problems)
    return tuple(_stack(solved, feet)), ()


def _raised(line: WrittenBand, arch: Figure) -> WrittenBand:
    """An arched rail as high as its blank; every other line as it is."""
    if line.underside != "arch" or not isinstance(line.size, Figure):
        return line
    field = line.kind.replace(" ", "_")
    return line.model_copy(update={field: line.size + arch})


def _stack(
    solved: Sequence[tuple[WrittenBand, str, Figure]], feet: dict[str, Figure]
) -> list[Band]:
    """Heights into places, from the finished foot up; listed from the top again."""
    bands: list[Band] = []
    foot = Figure(0.0, "finished foot", origin="catalogue", source="the datum")
    for line, name, size in reversed(solved):
        low = feet[name] if name in feet else named(join(name, "foot"), foot)
        top = named(join(name, "top"), low + size)
        bands.append(Band(noun=line.kind, name=name, height=size, foot=low, top=top, written=line))
        foot = top
    return bands[::-1]


def _names(lines: Sequence[WrittenBand], place: str) -> list[str]:
    """Bands of one kind are counted from the top; a lone one needs no number."""
    total: dict[str, int] = {}
    for line in lines:
        total[line.kind] = total.get(line.kind, 0) + 1
    seen: dict[str, int] = {}
    names = []
    for line in lines:
        seen[line.kind] = seen.get(line.kind, 0) + 1
        number = f" {seen[line.kind]}" if total[line.kind] > 1 else ""
        names.append(join(place, line.kind + number))
    return names


def _gives(lines: Iterable[WrittenBand]) -> bool:
    """Whether one of the lines next to a held rail takes what is left; another held rail is an end."""
    for line in lines:
        if line.pin is not None:
            return False
        if not isinstance(line.size, Figure):
            return True
    return False


def _given(line: WrittenBand) -> Figure:
    """A pinned rail's own height is always given; the reader has seen to that."""
    assert isinstance(line.size, Figure)
    return line.size


def _held(line: WrittenBand, lines: Mapping[str, Figure | NotMeasured]) -> Held | Problem | None:
    """Where a rail is held, if it is: at a height of the leaf, or level with a line of the room."""
    pin = line.pin
    if pin is None:
        return None
    key, written = pin
    if isinstance(written, Figure):
        return Held(rail=line, key=key, height=written, said=written)
    height = lines.get(str(written))
    if isinstance(height, Figure):
        return Held(rail=line, key=key, height=height, said=None)
    near = nearest(str(written), lines)
    return Problem(
        code="unknown_name" if height is None else "line_not_measured",
        level="stop",
        message=f'The survey has no line called "{written}".'
        + (f' Did you mean "{near}"?' if near else "")
        if height is None
        else f'The {line.kind} is held at "{written}", which was not measured.',
        where=line.line(key),
        about=line.kind,
        found=str(written),
        allowed=", ".join(lines) or "a height",
        fix=f"Write `{key}: {near}`."
        if near and height is None
        else f"Write `lines: {{{written}: ...}}` in the survey, its height above the highest floor.",
        no_size=True,
    )


def _held_foot(held: Held, own: Figure, name: str) -> Figure:
    """The foot of a held rail, mm above the finished foot of the leaf."""
    match held.key:
        case "centre":
            return named(
                join(name, "foot"), named(join(name, "pinned centre"), held.height) - own / 2
            )
        case "top":
            return named(join(name, "foot"), named(join(name, "pinned top"), held.height) - own)
        case "bottom":
            return named(join(name, "foot"), named(join(name, "pinned foot"), held.height))
        case _:
            assert_never(held.key)


def _share_out(
    zone: Sequence[tuple[WrittenBand, str]],
    room: Figure,
    leaf: LeafSpec,
    told: Told,
    *,
    pin: Beside | None,
) -> tuple[list[tuple[WrittenBand, str, Figure]], list[Problem]]:
    """Give every line of a zone its height; the zone must be filled exactly."""
    given = {
        name: named(join(name, "height"), line.size)
        for line, name in zone
        if isinstance(line.size, Figure)
    }
    left = room
    for size in given.values():
        left = left - size
    flexible = [(line, name) for line, name in zone if not isinstance(line.size, Figure)]
    if not flexible:
        lines = [line for line, _ in zone]
        if abs(left) > 1e-6:
            if pin is not None:
                return [], [held_fast(lines, room, float(left), pin, told)]
            return [], [does_not_add(lines, room, float(left), leaf, told)]
        return [(line, name, given[name]) for line, name in zone], []
    shares = dict(given)
    parts: Figure | float = sum(
        (line.size.count for line, _ in flexible if isinstance(line.size, Parts)), start=0.0
    )
    for line, name in flexible:
        match line.size:
            case Parts(count=count):
                shares[name] = named(join(name, "height"), left * count / parts)
            case Equal() | Rest():
                shares[name] = named(join(name, "height"), left / len(flexible))
            case _:
                raise AssertionError(line.size)
    problems = [
        nothing_left(line, name, shares[name], sum(given.values()), room, leaf, told)
        if pin is None
        else nothing_beside(name, shares[name], sum(given.values()), room, pin, told)
        for line, name in flexible
        if float(shares[name]) <= 0
    ][:1]
    return [(line, name, shares[name]) for line, name in zone], problems
