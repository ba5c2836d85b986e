"""The sizes of casework that a client must know, where each is seen, and what is ticked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from parametric.figures import Figure, collect
from parametric.model import Assembly
from parametric.pack.case_places import CaseNiche, front_kind, front_name, plainly
from parametric.pack.door_words import counted, filled, in_words
from parametric.pack.page_lengths import wood_amount
from parametric.problems import Problem
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.drawn_sizes import in_room
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import weight
from parametric.writers.case_words import CABINET_WORDS as SAID
from parametric.writers.client_page import Amount, Chalk, Fact, PageLeaf, Saying, said

_BEFORE = 6.0
"""How far before the fronts a line hangs, mm."""


class CaseFacts:
    """What is told of a job's casework; `leaves` are those of the page."""

    def __init__(
        self,
        resolved: Resolved,
        assembly: Assembly,
        loads: Sequence[LeafLoad],
        problems: Sequence[Problem],
        niches: Sequence[CaseNiche],
        leaves: Sequence[PageLeaf],
    ) -> None:
        assert resolved.casework is not None, "the job has casework"
        self.resolved, self.assembly = resolved, assembly
        self.problems = problems
        self.casework: Casework = resolved.casework
        self.niches, self.leaves = niches, leaves
        self.hung = [leaf for door in resolved.doors if door.case for leaf in door.leaves]
        own = {leaf.name for leaf in self.hung}
        self.loads = [load for load in loads if load.leaf in own]

    def _before(self, one: CaseNiche) -> float:
        """The y in its wall's frame of what hangs before the foremost of a niche's fronts, mm."""
        return -_BEFORE - max(
            float(standing.case.front_out) - standing.front
            for standing in self.casework.cases
            if standing.room == one.room
        )

    def subtitle(self) -> str:
        """`Three fitted cabinets`."""
        count = len(self.casework.cases)
        return SAID[f"cabinets {'1' if count == 1 else 'n'}"].format(counted(count))

    def thing(self) -> Saying:
        """`Three fitted cabinets, six doors, three drawers`."""
        kinds = [front_kind(leaf) for leaf in self.hung]
        swing, drawn = kinds.count("door"), kinds.count("drawer")
        draw = drawn + sum(not drawer.leaf for drawer in self.casework.drawers)
        words = [self.subtitle()]
        for what, count in (("doors", swing), ("flaps", kinds.count("flap")), ("drawers", draw)):
            if count:
                many = SAID[f"{what} {'1' if count == 1 else 'n'}"]
                words.append(many.format(in_words(counted(count))))
        lids = len([leaf for leaf in self.leaves if leaf.name.endswith(" / lid")])
        if lids:
            many = SAID[f"lids {'1' if lids == 1 else 'n'}"]
            words.append(many.format(in_words(counted(lids))))
        return said(", ".join(words if len(words) > 1 else [*words, SAID["open"]]))

    def _size(self, figure: Figure) -> Amount:
        return wood_amount(self.resolved, figure)

    def facts(self) -> Iterator[Fact]:
        """All of them, in the order in which a client asks."""
        yield from self._cabinets()
        for number, one in enumerate(self.niches):
            which = ""
            if len(self.niches) > 1:
                which = SAID[
                    "left" if not number else "right" if one is self.niches[-1] else "middle"
                ]
            yield self._between(one, which)
            yield from self._walls(one, which)
        yield from self._fronts()
        yield from self._room_taken()
        yield from self._weight()

    def _cabinets(self) -> Iterator[Fact]:
        """Each size of cabinet once, seen on the first of it."""
        alike: dict[tuple[str, ...], list[StandingCase]] = {}
        for standing in self.casework.cases:
            box = standing.case.box
            sizes = tuple(
                self._size(f).text for f in (box.width, box.highest, box.depth, box.height)
            )
            alike.setdefault(sizes, []).append(standing)
        for standing, *others in alike.values():
            box = standing.case.box
            wide, high, deep = (self._size(f) for f in (box.width, box.highest, box.depth))
            place, y = standing.stands.point, -float(standing.case.front_out) - _BEFORE
            end, head = float(box.width), float(box.highest)
            # where a top slopes its height is read at its higher end, its width under the lower
            up = 60.0 if float(box.high_at("left")) >= head else end - 60.0
            across = float(box.height) - 60
            note = filled(SAID["deep"], deep)
            if box.slope is not None:
                note = filled(SAID["deep under slope"], deep, self._size(box.height))
            name = plainly(standing.name, number=not others)
            if others:
                note = filled(SAID["deep each"], deep, counted(len(others) + 1))
                names = {plainly(one.name, number=False) for one in (standing, *others)}
                name = SAID["each"] if len(names) > 1 else name
            yield Fact(
                key="cabinet",
                label=name,
                value=filled(SAID["wide high"], wide, high),
                note=note,
                chalk=(
                    _line(place((0.0, y, across)), place((end, y, across)), wide),
                    _line(place((up, y, 0.0)), place((up, y, head)), high),
                ),
            )

    def _between(self, one: CaseNiche, which: str) -> Fact:
        opening, y = one.opening, self._before(one)
        wide, high = (
            self._size(in_room(size, one.place)) for size in (opening.narrowest, opening.high)
        )
        place = min(opening.widths, key=lambda p: float(opening.widths[p]))
        up = {"bottom": 0.05, "middle": 0.5, "top": 0.95}.get(place, 0.5) * float(opening.high)
        left = float(opening.lean.get(place, 0.0))
        ends = [one.room.point((x, y, up)) for x in (left, left + float(opening.narrowest))]
        return Fact(
            key="opening",
            label=SAID["between walls"] + which,
            value=filled(SAID["wide high"], wide, high),
            note=said(SAID["tightest"]),
            chalk=(_line(ends[0], ends[1], wide),),
        )

    def _walls(self, one: CaseNiche, which: str) -> Iterator[Fact]:
        """How far the left wall leans, and the floor's rise: what nobody can square up."""
        opening, y = one.opening, self._before(one)
        leaning = max(opening.lean.values(), key=lambda f: abs(float(f)), default=None)
        if leaning is not None and float(leaning):
            way = "in" if float(leaning) > 0 else "out"
            yield Fact(
                key="wall",
                label=SAID["left wall"] + which,
                value=filled(SAID[f"leans {way}"], self._size(in_room(leaning, one.place))),
                note=said(SAID[f"leans {way} why"]),
            )
        if float(opening.floor_fall):
            rise = self._size(in_room(opening.floor_fall, one.place))
            low, high = (pick(opening.floor.values(), key=float) for pick in (min, max))
            x = float(opening.widest) / 2
            ends = [one.room.point((x, y, float(z))) for z in (low, high)]
            yield Fact(
                key="floor",
                label=SAID["floor"] + which,
                value=filled(SAID["floor rises"], rise),
                note=said(SAID["floor why"]),
                chalk=(_line(ends[0], ends[1], rise, aside=(110.0, 90.0)),),
            )

    def _fronts(self) -> Iterator[Fact]:
        """Each size of front once, with all that have it."""
        groups = {group.name: group for group in self.assembly.groups}
        alike: dict[tuple[str, ...], list[Leaf]] = {}
        for leaf in self.hung:
            sizes = [self._size(size).text for size in (leaf.width, leaf.height)]
            alike.setdefault((front_kind(leaf), *sizes), []).append(leaf)
        for leaves in alike.values():
            leaf = leaves[0]
            wide, high = self._size(leaf.width), self._size(leaf.height)
            group = groups[leaf.name]
            place, end, head = group.placement.point, float(leaf.width), float(leaf.height)
            y = -_BEFORE
            goes = leaf.name if group.motion else ""
            yield Fact(
                key="door",
                label=front_name(leaf)
                if len(leaves) == 1
                else SAID[f"{front_kind(leaf)}s"].format(_listed([one.letter for one in leaves])),
                value=filled(SAID["wide high"], wide, high),
                note=filled(SAID["thick"], self._size(leaf.thickness)),
                chalk=(
                    _line(place((0.0, y, head - 60)), place((end, y, head - 60)), wide, goes),
                    _line(place((40.0, y, 0.0)), place((40.0, y, head)), high, goes),
                ),
            )

    def _reach(self) -> Figure | None:
        reaches = [door.hanging.reach for door in self.resolved.doors if door.case]
        return max((r for r in reaches if r is not None and float(r)), key=float, default=None)

    def _room_taken(self) -> Iterator[Fact]:
        """How far doors come into the room, and drawers."""
        reach = self._reach()
        if reach is not None:
            yield Fact(
                key="swing",
                label=SAID["swing"],
                value=filled(SAID["swing value"], self._size(reach)),
                note=said(SAID["swing why"]),
                opened={leaf.name: 1.0 for leaf in self.leaves},
            )
        out = [
            figure
            for name, figure in collect(self.resolved.doors).items()
            if name.endswith(" / draws out")
        ]
        if out:
            farthest = max(out, key=float)
            yield Fact(
                key="drawn",
                label=SAID["drawn"],
                value=filled(SAID["drawn value"], self._size(farthest)),
                opened={leaf.name: 1.0 for leaf in self.resolved.leaves if not leaf.hung.turns},
            )

    def _weight(self) -> Iterator[Fact]:
        if not self.loads:
            return
        heaviest = max((load.governing for load in self.loads), key=float)
        text = weight(float(heaviest), self.resolved.design.unit)
        yield Fact(
            key="weight",
            label=SAID["weight"],
            value=said(Amount(figure=heaviest.name or "", text=text)),
            note=said(SAID["weight of"]),
        )

    def ticks(self) -> Iterator[Saying]:
        """What must be seen before it is made, the gravest first."""
        codes = {problem.code for problem in self.problems if problem.level == "caution"}
        reach = self._reach()
        if reach is not None:
            draws = any(front_kind(leaf) == "drawer" for leaf in self.hung)
            yield filled(SAID["tick swing" if draws else "tick swing doors"], self._size(reach))
        for code, word in _TICKED.items():
            if code in codes:
                yield said(SAID[word])
        finish = self.resolved.finish
        if finish is not None and finish.kind != "none":
            yield said(SAID["tick sample"])


_TICKED: Mapping[str, str] = {
    "may_tip_over": "tick tips",
    "flap_falls": "tick flaps",
    "fingers_at_hinges": "tick hinges",
}
"""By a caution's code, the gravest first."""


def _line(
    start: tuple[float, float, float],
    end: tuple[float, float, float],
    amount: Amount,
    leaf: str = "",
    *,
    aside: tuple[float, float] = (0.0, 0.0),
) -> Chalk:
    return Chalk(start=start, end=end, text=amount.text, leaf=leaf, aside=aside)


def _listed(letters: list[str]) -> str:
    """`A, B and H`."""
    return SAID["and"].join((", ".join(letters[:-1]), letters[-1]))
