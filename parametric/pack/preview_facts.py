"""The eight or nine sizes that a client must know, the awkward ones too, and where each is seen."""

from __future__ import annotations

from types import MappingProxyType

from parametric.figures import Figure, collect
from parametric.names import join
from parametric.pack.page_lengths import glass_amount, wood_amount
from parametric.resolve.door import Resolved
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import weight
from parametric.writers.client_page import Amount, Chalk, Fact, said

_ABOVE_FOOT = 0.60
"""How far up a leaf a line across the opening is drawn, as a part of its height."""
_COUNTED = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten")


def facts(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[Fact, ...]:
    """All of them, in the order in which a client asks."""
    said_of = _Sizes(resolved)
    found = [
        said_of.each_door(),
        said_of.opening(),
        said_of.clear_way(),
        said_of.floor_gap(),
        said_of.laps(),
        said_of.passing(),
        said_of.pulls(),
        said_of.weight(loads),
        said_of.glass(),
    ]
    return tuple(fact for fact in found if fact is not None)


class _Sizes:
    """The sizes of one door, each with its figure's name and its place in the world, mm."""

    def __init__(self, resolved: Resolved) -> None:
        self.resolved, self.door = resolved, resolved.door
        self.hanging = self.door.hanging
        self.leaf = self.door.leaves[0]
        self.foot = float(self.hanging.floor_gap)
        self.fronts = tuple(
            -float(plane) - float(self.leaf.thickness) / 2 for plane in self.hanging.planes
        )
        self.foremost = min(self.fronts)

    def size(self, figure: Figure) -> Amount:
        """As wood is printed."""
        return wood_amount(self.resolved, figure)

    def each_door(self) -> Fact:
        """Width and height, seen on the first leaf."""
        leaf, left, front = self.leaf, float(self.hanging.lefts[0]), self.fronts[0]
        wide, high = self.size(leaf.width), self.size(leaf.height)
        head = self.foot + float(leaf.height)
        return Fact(
            label="Each door",
            value=said(wide, " wide, ", high, " high"),
            note=said(self.size(leaf.thickness), " thick"),
            chalk=(
                Chalk(
                    start=(left, front, head - 60),
                    end=(left + float(leaf.width), front, head - 60),
                    text=wide.text,
                    leaf=leaf.name,
                ),
                Chalk(
                    start=(left - 60, front, self.foot),
                    end=(left - 60, front, head),
                    text=high.text,
                    leaf=leaf.name,
                ),
            ),
        )

    def opening(self) -> Fact:
        """Where it is tightest, each way."""
        opening = self.door.opening
        wide, high = self.size(opening.narrowest), self.size(opening.head)
        place = min(opening.widths, key=lambda p: float(opening.widths[p]))
        up = {"bottom": 0.05, "middle": 0.5, "top": 0.95}.get(place, 0.5) * float(opening.head)
        lean = float(opening.lean.get(place, 0.0))
        highest = max(opening.floor, key=lambda p: float(opening.floor[p])) if opening.floor else ""
        across = {"left": 0.0, "middle": 0.5, "right": 1.0}.get(highest, 0.5)
        x = across * float(opening.widest)
        return Fact(
            label="Your opening",
            value=said(wide, " wide, ", high, " high"),
            note=said("Where it is tightest, as it was measured."),
            chalk=(
                Chalk(
                    start=(lean, self.foremost, up),
                    end=(lean + float(opening.narrowest), self.foremost, up),
                    text=wide.text,
                ),
                Chalk(
                    start=(x, self.foremost, 0.0),
                    end=(x, self.foremost, float(opening.head)),
                    text=high.text,
                ),
            ),
        )

    def clear_way(self) -> Fact:
        """With the left leaf slid away."""
        hanging = self.hanging
        way = float(self.door.opening.narrowest if hanging.on_wall else hanging.cover)
        left = float(hanging.lefts[0]) + (float(hanging.cover) - way) / 2
        clear = self.size(hanging.clear_way)
        up = self.foot + float(self.leaf.height) / 2
        return Fact(
            label="Clear to walk through",
            value=said(clear),
            note=said("With both doors slid to one side, at the narrowest part of your opening."),
            chalk=(
                Chalk(
                    start=(left, self.foremost, up),
                    end=(left + float(hanging.clear_way), self.foremost, up),
                    text=clear.text,
                ),
            ),
            opened=MappingProxyType(
                {leaf.name: float(n == 0) for n, leaf in enumerate(self.door.leaves)}
            ),
        )

    def floor_gap(self) -> Fact:
        """The gap at every place that was measured; the eye goes to each foot in turn."""
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
            label="Gap under the doors",
            value=said(*value),
            note=said(
                "Your floor rises ",
                self.size(opening.floor_fall),
                " across the opening; the doors hang level.",
            )
            if uneven
            else said("Your floor is level."),
            chalk=tuple(lines),
            walks=len(lines) > 1,
        )

    def laps(self) -> Fact | None:
        """How far the leaves cover the wall, so that no daylight shows round the edge."""
        hanging = self.hanging
        known = collect(self.door)
        side_lap, head_lap = known.get("side lap"), known.get("head lap")
        if side_lap is None or head_lap is None:
            return None
        side, head = self.size(side_lap), self.size(head_lap)
        left, lap = float(hanging.lefts[0]), float(side_lap)
        right = left + float(hanging.cover)
        up = self.foot + float(self.leaf.height) * _ABOVE_FOOT
        top = self.foot + float(self.leaf.height)
        middle = left + float(hanging.cover) * 0.25
        return Fact(
            label="Over the wall",
            value=said(side, " each side, ", head, " above"),
            note=said("So that no daylight shows round the edge."),
            chalk=(
                Chalk(
                    start=(left, self.foremost, up),
                    end=(left + lap, self.foremost, up),
                    text=side.text,
                    aside=(-90.0, 70.0),
                ),
                Chalk(
                    start=(right - lap, self.foremost, up),
                    end=(right, self.foremost, up),
                    text=side.text,
                    aside=(90.0, 70.0),
                ),
                Chalk(
                    start=(middle, self.foremost, top - float(head_lap)),
                    end=(middle, self.foremost, top),
                    text=head.text,
                    aside=(120.0, -70.0),
                ),
            ),
        )

    def passing(self) -> Fact | None:
        """The gap between leaves that pass: front to back, so it is seen from the side."""
        between = self.hanging.passing_gap
        if between is None:
            return None
        gap = self.size(between)
        back = min(self.fronts) + float(self.leaf.thickness)
        x = float(self.hanging.lefts[1])
        up = self.foot + float(self.leaf.height) * _ABOVE_FOOT
        return Fact(
            label="Between the doors",
            value=said(gap),
            note=said("Where they pass one another. Fingers can be caught: mind children."),
            chalk=(
                Chalk(
                    start=(x, back, up),
                    end=(x, back + float(between), up),
                    text=gap.text,
                    aside=(-90.0, 110.0),
                ),
            ),
        )

    def pulls(self) -> Fact | None:
        """How high a hand finds them."""
        last = self.door.leaves[-1]
        if not last.pulls:
            return None
        hung = last.pulls[0]
        up = hung.pull.up + self.hanging.floor_gap
        height = wood_amount(self.resolved, up, join(last.name, "pull", "height above the floor"))
        x = float(self.hanging.lefts[-1]) + float(hung.across)
        return Fact(
            label="Height of the pulls",
            value=said(height),
            note=said("From the highest floor to their middle."),
            chalk=(
                Chalk(
                    start=(x, self.fronts[-1], 0.0),
                    end=(x, self.fronts[-1], float(up)),
                    text=height.text,
                    leaf=last.name,
                ),
            ),
        )

    def weight(self, loads: tuple[LeafLoad, ...]) -> Fact:
        """Of the heaviest, as it is hung."""
        heaviest = max(loads, key=lambda load: float(load.governing)).governing
        return Fact(
            label="Weight of each door",
            value=said(
                Amount(
                    figure=heaviest.name or "",
                    text=weight(float(heaviest), self.resolved.design.unit),
                )
            ),
            note=said("Wood and glass, without the fittings."),
        )

    def glass(self) -> Fact | None:
        """What it is, and the size of a pane."""
        lites = self.leaf.lites
        if not lites:
            return None
        pane, count = lites[0].pane, len(lites) * len(self.door.leaves)
        wide, high = (
            glass_amount(self.resolved, figure, down=True) for figure in (pane.width, pane.height)
        )
        in_leaf = (float(lites[0].width) - float(pane.width)) / 2
        left = float(self.hanging.lefts[0]) + float(self.leaf.left_stile) + in_leaf
        foot = self.foot + float(lites[0].foot) + (float(lites[0].height) - float(pane.height)) / 2
        front, middle = self.fronts[0], left + float(pane.width) * 0.5
        return Fact(
            label="Glass",
            value=said(glass_amount(self.resolved, pane.thickness), f" thick, {pane.kind}"),
            note=said(
                f"{_COUNTED[count] if count < len(_COUNTED) else 'Many'} panes, each ",
                wide,
                " wide and ",
                high,
                " high.",
            ),
            chalk=(
                Chalk(
                    start=(left, front, foot + float(pane.height) * 0.2),
                    end=(left + float(pane.width), front, foot + float(pane.height) * 0.2),
                    text=wide.text,
                    leaf=self.leaf.name,
                ),
                Chalk(
                    start=(middle, front, foot),
                    end=(middle, front, foot + float(pane.height)),
                    text=high.text,
                    leaf=self.leaf.name,
                ),
            ),
        )
