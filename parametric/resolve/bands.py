"""The bands of a leaf, read top to bottom: rails, and what fills the openings between them.

2102 ___________   given     read from the top of the list to its foot;
     | top rail |  equal     the lines that are `equal`, `rest` or `parts`
     |  lite    |  rest      share what the given ones leave
     |   ...    |
   0 |__________|
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.design.leaf import RAILS, LeafSpec
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, named, origin_line
from parametric.names import join
from parametric.problems import Problem
from parametric.units import Unit, length_text
from parametric.written import Equal, Parts, Rest


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
    leaf: LeafSpec, *, place: str, height: Figure, unit: Unit
) -> tuple[tuple[Band, ...], tuple[Problem, ...]]:
    """Share the leaf's height over its bands, from the top of the list down.

    A rail pinned by `centre`, `top` or `bottom` cuts the leaf into zones that are shared out
    separately.

    Args:
        leaf: the leaf as written.
        place: the leaf's name.
        height: the finished leaf, mm.
        unit: the design's unit, for messages.

    Problems: bands that do not add up, or leave a line nothing.
    """
    lines = tuple(leaf.top_to_bottom)
    names = _names(lines, place)
    solved: list[tuple[WrittenBand, str, Figure]] = []
    feet: dict[str, Figure] = {}
    problems: list[Problem] = []
    zone: list[tuple[WrittenBand, str]] = []
    ceiling: Figure = height
    for line, name in zip(lines, names, strict=True):
        foot = _pinned_foot(line, name)
        if foot is None:
            zone.append((line, name))
            continue
        own = named(join(name, "height"), _given(line))
        shares, found = _share_out(zone, ceiling - (foot + own), leaf, unit, pin=line)
        problems += found
        solved += shares
        solved.append((line, name, own))
        feet[name] = foot
        zone, ceiling = [], foot
    shares, found = _share_out(zone, ceiling, leaf, unit, pin=None)
    problems += found
    solved += shares
    if problems:
        return (), tuple(problems)
    return tuple(_stack(solved, feet)), ()


def _stack(
    solved: Sequence[tuple[WrittenBand, str, Figure]], feet: dict[str, Figure]
) -> list[Band]:
    """Heights into places, from the finished foot up; listed from the top again."""
    bands: list[Band] = []
    foot = Figure(0.0, "finished foot", origin="catalogue", source="the datum")
    for line, name, size in reversed(solved):
        start = feet.get(name, foot)
        low = named(join(name, "foot"), start)
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


def _pinned_foot(line: WrittenBand, name: str) -> Figure | None:
    if line.centre is not None:
        return named(
            join(name, "foot"), named(join(name, "pinned centre"), line.centre) - _given(line) / 2
        )
    if line.top is not None:
        return named(join(name, "foot"), named(join(name, "pinned top"), line.top) - _given(line))
    if line.bottom is not None:
        return named(join(name, "foot"), named(join(name, "pinned foot"), line.bottom))
    return None


def _share_out(
    zone: Sequence[tuple[WrittenBand, str]],
    room: Figure,
    leaf: LeafSpec,
    unit: Unit,
    *,
    pin: WrittenBand | None,
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
            return [], [_does_not_add(zone, room, float(left), leaf, unit, pin)]
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
        for line, name in flexible
        if float(shares[name]) <= 0
    ][:1]
    return [(line, name, shares[name]) for line, name in zone], problems


def _show(value: float, unit: Unit) -> str:
    return length_text(float(value), unit)


def _does_not_add(
    zone: Sequence[tuple[WrittenBand, str]],
    room: Figure,
    left: float,
    leaf: LeafSpec,
    unit: Unit,
    pin: WrittenBand | None,
) -> Problem:
    """Bands that are all given must add to the height, to the last bit of wood."""
    where = leaf.line("top to bottom")
    if pin is not None and not zone:
        return Problem(
            code="pin_has_no_room",
            level="stop",
            message=f"The {pin.kind} cannot be held there: it would stand "
            f"{_show(abs(left), unit)} {'short of' if left > 0 else 'beyond'} its neighbour.",
            where=pin.here,
            about=pin.kind,
            found=_show(abs(left), unit),
            allowed="0",
            fix="Move the pin, or put an opening with `equal` or `rest` beside the rail.",
        )
    total = float(room) - left
    amount = _show(abs(left), unit)
    infill = [line.kind for line, _ in zone if line.kind not in RAILS]
    rails = [line.kind for line, _ in zone if line.kind in RAILS]
    first = infill[-1] if infill else rails[0]
    second = next((r for r in reversed(rails) if r != first), first)
    whole = "door" if pin is None and _is_whole(zone, leaf) else "room between the pinned rails"
    if pin is not None or not _is_whole(zone, leaf):
        pinned = f" {pin.kind} is pinned;" if pin is not None else ""
        message = (
            f"The{pinned} lines beside it add to {_show(total, unit)}; the {whole} is "
            f"{_show(room, unit)}. Nothing there is `equal` or `rest`: free one size."
        )
        fix = "Make one of those lines `rest`."
    elif left > 0:
        message = (
            f"Your rails and openings add to {_show(total, unit)}; the door is "
            f'{_show(room, unit)}. {amount} is unallocated: make one line "rest", or add {amount} '
            f"to the {first}, or to the {second}."
        )
        fix = f"Make one line `rest`, or add {amount} to the {first}."
    else:
        message = (
            f"Your rails and openings add to {_show(total, unit)}; the door is "
            f'{_show(room, unit)}. That is {amount} too much: make one line "rest", or take '
            f"{amount} off the {first}, or off the {second}."
        )
        fix = f"Make one line `rest`, or take {amount} off the {first}."
    return Problem(
        code="bands_do_not_add_up",
        level="stop",
        message=message,
        where=where,
        about=leaf.heading,
        found=_show(total, unit),
        allowed=_show(room, unit),
        fix=fix,
    )


def _is_whole(zone: Sequence[tuple[WrittenBand, str]], leaf: LeafSpec) -> bool:
    return len(zone) == len(leaf.top_to_bottom)


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
