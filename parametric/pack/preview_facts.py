"""The sizes that a client must know, the awkward ones too, and where each is seen.

Which there are follows from what the doors have: laps or gaps, a way that they slide or
floor that they sweep over, glass, pulls.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from parametric.infill.glass import Pane
from parametric.names import join
from parametric.pack.door_sizes import DoorSizes
from parametric.pack.door_words import alike, counted, filled
from parametric.pack.page_lengths import glass_amount, true_amount, wood_amount
from parametric.pack.preview_gaps import gaps, laps, passing
from parametric.pack.preview_swing import room_to_swing, swinging_gap
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.door import Resolved
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import weight
from parametric.trade.standing import clear_stretch, widest_open
from parametric.writers.client_page import Amount, Chalk, Fact, Saying, plain, said
from parametric.writers.page_words import FACT_WORDS as SAID

_SQUARE = 90.0


def facts(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[Fact, ...]:
    """All of them, in the order in which a client asks."""
    said_of = _Sizes(resolved)
    found = [
        *said_of.each_door(),
        said_of.opening(),
        said_of.clear_way(),
        room_to_swing(resolved),
        said_of.floor_gap(),
        swinging_gap(resolved),
        laps(said_of),
        gaps(said_of),
        passing(said_of),
        said_of.pulls(),
        said_of.weight(loads),
        said_of.head(),
        said_of.glass(),
    ]
    return tuple(fact for fact in found if fact is not None)


class _Sizes(DoorSizes):
    """What is told of one door but its laps and gaps."""

    def each_door(self) -> Iterator[Fact]:
        """Width and height, seen on the first leaf; leaf by leaf where they differ."""
        if self.names.count == 1 or alike(self.door):
            label = SAID["the door" if self.names.count == 1 else "each door"]
            yield self.one_door(0, label)
            return
        for index, label in enumerate(self.names.which):
            yield self.one_door(index, label)

    def one_door(self, index: int, label: str) -> Fact:
        """One leaf's own size."""
        leaf, front = self.door.leaves[index], self.fronts[index]
        left, foot = float(self.hanging.lefts[index]), float(leaf.hung.foot)
        wide, high = self.size(leaf.width), self.size(leaf.height)
        head = foot + float(leaf.height)
        return Fact(
            key="door",
            label=label,
            value=filled(SAID["wide high"], wide, high),
            note=filled(SAID["thick"], self.size(leaf.thickness)),
            chalk=(
                Chalk(
                    start=(left, front, head - 60),
                    end=(left + float(leaf.width), front, head - 60),
                    text=wide.text,
                    leaf=leaf.name,
                ),
                Chalk(
                    start=(left - 60, front, foot),
                    end=(left - 60, front, head),
                    text=high.text,
                    leaf=leaf.name,
                ),
            ),
        )

    def opening(self) -> Fact:
        """Where it is tightest, each way."""
        opening = self.door.opening
        wide, high = self.size(opening.narrowest), self.size(opening.high)
        place = min(opening.widths, key=lambda p: float(opening.widths[p]))
        low = 0.0 if opening.foot is None else float(opening.foot)
        up = low + {"bottom": 0.05, "middle": 0.5, "top": 0.95}.get(place, 0.5) * float(
            opening.high
        )
        lean = float(opening.lean.get(place, 0.0))
        highest = max(opening.floor, key=lambda p: float(opening.floor[p])) if opening.floor else ""
        across = {"left": 0.0, "middle": 0.5, "right": 1.0}.get(highest, 0.5)
        x = across * float(opening.widest)
        return Fact(
            key="opening",
            label=SAID["opening"],
            value=filled(SAID["wide high"], wide, high),
            note=said(SAID["tightest"]),
            chalk=(
                Chalk(
                    start=(lean, self.foremost, up),
                    end=(lean + float(opening.narrowest), self.foremost, up),
                    text=wide.text,
                ),
                Chalk(
                    start=(x, self.foremost, low),
                    end=(x, self.foremost, float(opening.head)),
                    text=high.text,
                ),
            ),
        )

    def clear_way(self) -> Fact | None:
        """With the doors as far out of the way as they go; None where nobody walks through."""
        clear_way = self.hanging.clear_way
        if clear_way is None:
            return None
        state = widest_open(self.door)
        left, _ = clear_stretch(self.door, state.open)
        clear = self.size(clear_way)
        up = self.foot + float(self.leaf.height) / 2
        return Fact(
            key="clear way",
            label=SAID["clear way"],
            value=said(clear),
            note=said(SAID[f"{self._how_open()} clear {self._apart() or self.names.many}"]),
            chalk=(
                Chalk(
                    start=(left, self.foremost, up),
                    end=(left + float(clear_way), self.foremost, up),
                    text=clear.text,
                ),
            ),
            opened=MappingProxyType(
                {leaf.name: state.open.get(leaf.name, 0.0) for leaf in self.door.leaves}
            ),
        )

    def _apart(self) -> str:
        """Two that slide away from one another, neither before the other."""
        slide = self.names.moves == "slide" and self.names.count == 2
        return "apart" if slide and self.hanging.passing_gap is None else ""

    def _how_open(self) -> str:
        """Slid, square to the wall, or simply open."""
        if self.names.moves == "slide":
            return "slide"
        swings = [leaf.hung.swing for leaf in self.door.leaves]
        square = all(swing is not None and float(swing) == _SQUARE for swing in swings)
        return "swing" if square and self.names.moves == "swing" else "open"

    def floor_gap(self) -> Fact | None:
        """The gap at every place that was measured; the eye goes to each foot in turn.

        What hangs on a case has no floor to clear.
        """
        if self.hanging.case is not None:
            return None
        opening, gaps = self.door.opening, self.door.gaps
        across = {"left": 0.0, "middle": 0.5, "right": 1.0}
        value: list[str | Amount] = []
        lines = []
        for index, (place, gap) in enumerate(gaps):
            amount = self.size(gap)
            value += [", " if index else "", amount, f" {place}"]
            x = across.get(place, 0.5) * float(opening.widest)
            lines.append(
                Chalk(
                    start=(x, self.foremost, self.foot - float(gap)),
                    end=(x, self.foremost, self.foot),
                    text=amount.text,
                    aside=(110.0 if x < float(opening.widest) / 2 else -110.0, 90.0),
                )
            )
        uneven = float(opening.floor_fall) > 0
        return Fact(
            key="floor gap",
            label=SAID[f"gap under {self.names.one}"],
            value=said(*value),
            note=filled(SAID[f"floor rises {self.names.one}"], self.size(opening.floor_fall))
            if uneven
            else said(SAID["level floor"]),
            chalk=tuple(lines),
            walks=len(lines) > 1,
        )

    def pulls(self) -> Fact | None:
        """How high a hand finds them."""
        pulled = [leaf for leaf in self.door.leaves if leaf.pulls]
        if not pulled:
            return None
        last = pulled[-1]
        hung, front = last.pulls[0], self.fronts[self.door.leaves.index(last)]
        up = hung.pull.up + last.hung.foot
        height = wood_amount(self.resolved, up, join(last.name, "pull", "height above the floor"))
        x = float(last.hung.left) + float(hung.across)
        several = len(pulled) > 1
        return Fact(
            key="pulls",
            label=SAID["pulls" if several else "pull"],
            value=said(height),
            note=said(SAID["pulls from" if several else "pull from"]),
            chalk=(
                Chalk(
                    start=(x, front, 0.0),
                    end=(x, front, float(up)),
                    text=height.text,
                    leaf=last.name,
                ),
            ),
        )

    def weight(self, loads: tuple[LeafLoad, ...]) -> Fact:
        """Of the heaviest, as it is hung."""
        heaviest = max(loads, key=lambda load: float(load.governing)).governing
        whose = self.names.one
        if self.names.count > 1 and not alike(self.door):
            whose = "heavier" if self.names.count == 2 else "heaviest"
        if self.names.halves:
            whose = "half"
        glazed = any(leaf.lites for leaf in self.door.leaves)
        return Fact(
            key="weight",
            label=SAID[f"weight {whose}"],
            value=said(
                Amount(
                    figure=heaviest.name or "",
                    text=weight(float(heaviest), self.resolved.design.unit),
                )
            ),
            note=said(SAID["weight of" if glazed else "weight of wood"]),
        )

    def head(self) -> Fact | None:
        """How far a shaped head rises over what it springs from."""
        shaped = [
            (leaf, rail.head)
            for leaf in self.door.leaves
            for rail in leaf.rails
            if rail.head is not None
        ]
        if not shaped:
            return None
        leaf, head = shaped[0]
        rise = self.size(head.curve.rise)
        x = float(leaf.hung.left) + float(head.left) + float(head.curve.crown_at)
        z = float(leaf.hung.foot) + float(head.springing)
        across = float(head.curve.span) > float(leaf.width)
        front = self.fronts[self.door.leaves.index(leaf)]
        return Fact(
            key="head",
            label=SAID["head"],
            value=filled(SAID["head value"], rise),
            note=said(SAID["head across" if across else "head of each"]),
            chalk=(
                Chalk(
                    start=(x, front, z),
                    end=(x, front, z + float(head.curve.rise)),
                    text=rise.text,
                ),
            ),
        )

    def _thick(self, pane: Pane) -> Saying:
        """What is sold, and what it measures where that is less or more; of a unit its two panes."""
        if pane.unit is not None:
            build = (glass_amount(self.resolved, size) for size in pane.unit)
            return filled(SAID["glass value unit"], "", pane.kind, *build)
        nominal = glass_amount(self.resolved, pane.nominal)
        if not pane.true_differs:
            return filled(SAID["glass value"], nominal, pane.kind)
        true = true_amount(self.resolved, pane.thickness)
        return filled(SAID["glass value true"], nominal, pane.kind, true)

    def _planted(self, count: int) -> tuple[str, ...]:
        """Where bars do not part the glass, so that nobody takes one pane for many."""
        if any(
            isinstance(lite.section, PlantedBar) for lf in self.door.leaves for lite in lf.lites
        ):
            return (SAID["bars planted" if count == 1 else "bars planted n"],)
        return ()

    def glass(self) -> Fact | None:
        """What it is, and the size of a pane: of the largest, where they differ."""
        panes = [
            (leaf, pane) for leaf in self.door.leaves for lite in leaf.lites for pane in lite.panes
        ]
        if not panes:
            return None
        leaf, pane = max(
            panes, key=lambda one: round(float(one[1].width) * float(one[1].height), 6)
        )
        wide, high = (
            glass_amount(self.resolved, figure, down=True) for figure in (pane.width, pane.height)
        )
        sizes = {
            tuple(
                plain(said(glass_amount(self.resolved, figure, down=True)))
                for figure in (one.width, one.height)
            )
            for _, one in panes
        }
        words = "panes differ" if len(sizes) > 1 else "panes alike"
        count = len(panes)
        left = float(leaf.hung.left) + float(pane.left)
        foot = float(leaf.hung.foot) + float(pane.foot)
        front = self.fronts[self.door.leaves.index(leaf)]
        middle = left + float(pane.width) * 0.5
        return Fact(
            key="glass",
            label=SAID["glass"],
            value=self._thick(pane),
            note=filled(
                " ".join((SAID["pane alone" if count == 1 else words], *self._planted(count))),
                counted(count),
                wide,
                high,
            ),
            chalk=(
                Chalk(
                    start=(left, front, foot + float(pane.height) * 0.2),
                    end=(left + float(pane.width), front, foot + float(pane.height) * 0.2),
                    text=wide.text,
                    leaf=leaf.name,
                ),
                Chalk(
                    start=(middle, front, foot),
                    end=(middle, front, foot + float(pane.height)),
                    text=high.text,
                    leaf=leaf.name,
                ),
            ),
        )
