"""The bands of a leaf, read top to bottom: rails, and what fills the openings between them.

2102 ___________   given     read from the top of the list to its foot;
     | top rail |  equal     the lines that are `equal`, `rest` or `parts`
     |  lite    |  rest      share what the given ones leave
     |   ...    |
   0 |__________|
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, assert_never

from parametric.design.leaf import RAILS, LeafSpec, PinKey
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, named, origin_line
from parametric.names import join, nearest
from parametric.problems import Problem
from parametric.units import Unit, length_text
from parametric.written import Equal, NotMeasured, Parts, Rest


@dataclass(frozen=True, slots=True, kw_only=True)
class _Held:
    """A rail held at a height: by its middle, its upper or its lower edge, mm above the finished foot."""

    rail: WrittenBand
    key: PinKey
    height: Figure


_Pin = tuple[_Held, Literal["above", "below"]]
"""A held rail, and the side of it that is shared out."""


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
    last: _Pin | None = None
    ceiling: Figure = height
    if arch is not None:
        bands = tuple(_raised(line, arch) for line in bands)
    for line, name in zip(bands, names, strict=True):
        held = _held(line, lines)
        if isinstance(held, Problem):
            return (), (held,)
        if held is None:
            zone.append((line, name))
            continue
        own = named(join(name, "height"), _given(line))
        foot = _held_foot(held, own, name)
        shares, found = _share_out(zone, ceiling - (foot + own), leaf, unit, pin=(held, "above"))
        last = (held, "below")
        problems += found
        solved += shares
        solved.append((line, name, own))
        feet[name] = foot
        zone, ceiling = [], foot
    shares, found = _share_out(zone, ceiling, leaf, unit, pin=last)
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


def _given(line: WrittenBand) -> Figure:
    """A pinned rail's own height is always given; the reader has seen to that."""
    assert isinstance(line.size, Figure)
    return line.size


def _held(line: WrittenBand, lines: Mapping[str, Figure | NotMeasured]) -> _Held | Problem | None:
    """Where a rail is held, if it is: at a height of the leaf, or level with a line of the room."""
    pin = line.pin
    if pin is None:
        return None
    key, written = pin
    if isinstance(written, Figure):
        return _Held(rail=line, key=key, height=written)
    height = lines.get(str(written))
    if isinstance(height, Figure):
        return _Held(rail=line, key=key, height=height)
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


def _held_foot(held: _Held, own: Figure, name: str) -> Figure:
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
    unit: Unit,
    *,
    pin: _Pin | None,
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
        if abs(left) > 1e-6:
            if pin is not None:
                return [], [_held_fast(zone, room, float(left), pin, unit)]
            return [], [_does_not_add(zone, room, float(left), leaf, unit)]
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
        _nothing_left(line, name, shares[name], leaf, room, unit)
        if pin is None
        else _nothing_beside(name, shares[name], sum(given.values()), room, pin, unit)
        for line, name in flexible
        if float(shares[name]) <= 0
    ][:1]
    return [(line, name, shares[name]) for line, name in zone], problems


def _show(value: float, unit: Unit) -> str:
    return length_text(float(value), unit)


def _does_not_add(
    zone: Sequence[tuple[WrittenBand, str]], room: Figure, left: float, leaf: LeafSpec, unit: Unit
) -> Problem:
    """Bands that are all given must add to the height, to the last bit of wood."""
    total = _show(float(room) - left, unit)
    amount = _show(abs(left), unit)
    infill = [line.kind for line, _ in zone if line.kind not in RAILS]
    rails = [line.kind for line, _ in zone if line.kind in RAILS]
    first = infill[-1] if infill else rails[0]
    second = next((r for r in reversed(rails) if r != first), first)
    if left > 0:
        outcome = f"{amount} is unallocated"
        change, to = f"add {amount}", "to"
    else:
        outcome = f"That is {amount} too much"
        change, to = f"take {amount}", "off"
    return Problem(
        code="bands_do_not_add_up",
        level="stop",
        message=f"Your rails and openings add to {total}; the door is {_show(room, unit)}. "
        f'{outcome}: make one line "rest", or {change} {to} the {first}, or {to} the {second}.',
        where=leaf.line("top to bottom"),
        about=leaf.heading,
        found=total,
        allowed=_show(room, unit),
        fix=f"Make one line `rest`, or {change} {to} the {first}.",
    )


def _held_fast(
    zone: Sequence[tuple[WrittenBand, str]], room: Figure, left: float, pin: _Pin, unit: Unit
) -> Problem:
    """A pinned rail, and on one side of it nothing that gives way."""
    held, side = pin
    line, key, at = held.rail, held.key, _show(held.height, unit)
    return Problem(
        code="pin_has_no_room",
        level="stop",
        message=f'The {line.kind} cannot be held at {at}: nothing {side} it is "equal" or "rest". '
        "Free one size.",
        where=line.line(key),
        about=line.kind,
        found=f"{_show(float(room) - left, unit)} {side} it",
        allowed=_show(room, unit),
        fix="Make one line there `rest`, or take the pin away."
        if zone
        else f"Put an opening {side} it, or take the pin away.",
    )


def _nothing_beside(
    name: str, share: Figure, given: float, room: Figure, pin: _Pin, unit: Unit
) -> Problem:
    """A held rail stands so near an end, or another held rail, that what lies there has no height."""
    held, side = pin
    rail, way = held.rail.kind, "lower" if side == "above" else "higher"
    less = ", or make a given line there smaller" if given else ""
    return Problem(
        code="no_size_left",
        level="stop",
        message=f"The {name} would be {_show(share, unit)} high: the {rail}, held at "
        f"{_show(held.height, unit)} above the leaf's foot, leaves {_show(room, unit)} {side} it"
        + (f", and the given lines there add to {_show(given, unit)}." if given else "."),
        where=held.rail.line(held.key),
        about=name,
        found=_show(share, unit),
        allowed="more than 0",
        fix=f"Hold the {rail} {way}{less}.",
        no_size=True,
    )


def _nothing_left(
    line: WrittenBand, name: str, share: Figure, leaf: LeafSpec, room: Figure, unit: Unit
) -> Problem:
    """The given lines use up all the height: the flexible one comes out zero or less."""
    given = float(room) - float(share) * sum(
        1 for b in leaf.top_to_bottom if not isinstance(b.size, Figure)
    )
    largest_given = max(
        (b for b in leaf.top_to_bottom if isinstance(b.size, Figure)),
        key=lambda b: float(b.size) if isinstance(b.size, Figure) else 0.0,
        default=line,
    )
    size = largest_given.size
    return Problem(
        code="no_size_left",
        level="stop",
        message=f"The {name} would be {_show(share, unit)} high: the given lines already add to "
        f"{_show(given, unit)} of the door's {_show(room, unit)}. The largest of them is the "
        f"{largest_given.kind}.",
        where=origin_line(size) if isinstance(size, Figure) else line.here,
        about=name,
        found=_show(share, unit),
        allowed="more than 0",
        fix=f"Make the {largest_given.kind} or another given line smaller.",
        no_size=True,
    )
