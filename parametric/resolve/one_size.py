"""Panes that differ by a hair, ordered as one size: the least width and the least height of them.

Every pane may be cut smaller and none larger: in the roomier openings the clearance grows and
the bite shrinks, by half of what the pane lost. Panes with spacer bars keep their own sizes,
since their grid is measured from the edge of the glass, and so do shaped ones.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.catalog.glass_facts import ENOUGH_BITE
from parametric.figures import Figure, exceeds, largest, named, smallest
from parametric.infill.glass import Pane
from parametric.names import join
from parametric.resolve.leaf import Leaf

Size = tuple[Figure, Figure]


@dataclass(frozen=True, slots=True, kw_only=True)
class OneSize:
    """Panes of nearly one size, mm: `width` and `height` serve all of them.

    `clearance` is the most that is then free at an edge, `bite` the least that is covered.
    `apart` is how far the largest and the smallest differ, the greater of both ways.
    """

    panes: tuple[Pane, ...]
    width: Figure
    height: Figure
    apart: Figure
    clearance: Figure
    bite: Figure

    @property
    def holds(self) -> bool:
        """Whether enough of the glass stays covered in every opening."""
        return not exceeds(ENOUGH_BITE, self.bite)


def near_equal(leaves: Iterable[Leaf]) -> tuple[OneSize, ...]:
    """Lots of panes of more than one size that a size in common may serve.

    Sizes are taken from the largest down: one joins a lot when it is within what the glass
    block allows of all that are in it, both ways.
    """
    alike: dict[object, list[Pane]] = {}
    for pane in (pane for leaf in leaves for lite in leaf.lites for pane in lite.panes):
        if pane.outline is None and pane.grid is None:
            own = (pane.written.here, pane.kind, pane.unit, round(float(pane.thickness), 6))
            alike.setdefault(own, []).append(pane)
    found: list[OneSize] = []
    for panes in alike.values():
        for lot in _lots(panes, float(panes[0].written.one_size_within)):
            if len({_rounded(pane) for pane in lot}) > 1:
                found.append(_one(lot, f"glass in one size {len(found) + 1}"))
    return tuple(found)


def sizes_in_common(leaves: Sequence[Leaf]) -> Mapping[str, Size]:
    """Width and height by pane, of those whose glass asks for one size."""
    return {
        pane.name: (lot.width, lot.height)
        for lot in near_equal(leaves)
        if lot.holds
        for pane in lot.panes
        if pane.written.ordered == "one size"
    }


def _rounded(pane: Pane) -> tuple[float, float]:
    return (round(float(pane.width), 6), round(float(pane.height), 6))


def _lots(panes: list[Pane], within: float) -> Iterator[list[Pane]]:
    lots: list[list[Pane]] = []
    for pane in sorted(panes, key=_rounded, reverse=True):
        for lot in lots:
            if all(
                not exceeds(abs(mine - theirs), within)
                for one in lot
                for mine, theirs in zip(_rounded(one), _rounded(pane), strict=True)
            ):
                lot.append(pane)
                break
        else:
            lots.append([pane])
    yield from lots


def _one(lot: list[Pane], place: str) -> OneSize:
    # One pane speaks for all of its width, and one for all of its height.
    widths = {_rounded(pane)[0]: _own(pane, "width", pane.width) for pane in reversed(lot)}
    heights = {_rounded(pane)[1]: _own(pane, "height", pane.height) for pane in reversed(lot)}
    width = named(join(place, "width"), smallest(*widths.values()))
    height = named(join(place, "height"), smallest(*heights.values()))
    lost = [((pane.width - width) / 2, (pane.height - height) / 2) for pane in lot]
    return OneSize(
        panes=tuple(lot),
        width=width,
        height=height,
        apart=largest(*(2 * off for pair in lost for off in pair)),
        clearance=largest(
            *(pane.clearance + off for pane, pair in zip(lot, lost, strict=True) for off in pair)
        ),
        bite=smallest(
            *(
                bite - off
                for pane, pair in zip(lot, lost, strict=True)
                for bite, off in zip(pane.bites, pair, strict=True)
            )
        ),
    )


def _own(pane: Pane, word: str, size: Figure) -> Figure:
    """The size that its opening would give a pane, under a name of its own."""
    return Figure(float(size), join(pane.name, f"own {word}"), op=size.op, args=size.args)
