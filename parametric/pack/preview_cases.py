"""What the client's page is told of casework: cabinets in their niche, fronts, drawers, sizes, ticks."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.model import Assembly, Group, Slide
from parametric.pack.case_facts import CaseFacts
from parametric.pack.case_front import case_front
from parametric.pack.case_places import box_round, front_name, niches_of, own_box, plainly
from parametric.pack.corner_room import corner_room
from parametric.pack.door_words import label
from parametric.pack.preview_niche import niche
from parametric.pack.shown import Shown
from parametric.problems import Problem
from parametric.resolve.casework import Casework
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.loads import LeafLoad
from parametric.writers.case_words import CABINET_WORDS as SAID
from parametric.writers.client_page import PageLeaf, Scenery, go_together

_ABOVE = 60.0
"""What must be seen above the highest piece, mm."""
_SCRIBED = frozenset(("counter", "cornice"))
"""What comes before the wall's face, though it stands in the niche."""
_WALL = 130.0
"""How thick the wall is that it stands in, mm: nothing of it is seen."""
_FAR = 1e6
"""Past any wall, mm: there is no skirting in a room whose walls turn."""
_BEHIND = 1.0
"""How far behind the deepest cabinet the wall is pictured, mm, so that it is not seen through it."""


def shown_cases(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
) -> Shown:
    """All of it.

    Args:
        resolved: the numbers of a job with casework.
        assembly: its parts.
        loads: what its fronts weigh.
        problems: what `check` says of it.
    """
    return _Cases(resolved, assembly, loads, problems).shown()


class _Cases:
    """A job's casework where it stands in the room."""

    def __init__(
        self,
        resolved: Resolved,
        assembly: Assembly,
        loads: tuple[LeafLoad, ...],
        problems: tuple[Problem, ...],
    ) -> None:
        assert resolved.casework is not None, "the job has casework"
        self.resolved, self.assembly = resolved, assembly
        self.loads, self.problems = loads, problems
        self.casework: Casework = resolved.casework
        self.niches = niches_of(self.casework)
        self.still = [group for group in assembly.groups if not group.motion]
        self.leaves = tuple(self._leaves())

    def shown(self) -> Shown:
        """As the page is told it."""
        straight = [one for one in self.niches if not one.turned] or [*self.niches[:1]]
        outline = tuple(point for one in straight for point in one.outline())
        floor = tuple(point for one in straight for point in one.floor_line())
        boxes = [box_round(group) for group in self.assembly.groups if group.parts]
        corner = any(one.turned for one in self.niches)
        inner = [x for x, _ in outline]
        if corner:
            inner = [*(low[0] for low, _ in boxes), *(high[0] for _, high in boxes)]
        back = max(high[1] for _, high in boxes) + _BEHIND
        top = max(high[2] for _, high in boxes) + _ABOVE
        told = CaseFacts(
            self.resolved, self.assembly, self.loads, self.problems, self.niches, self.leaves
        )
        return Shown(
            subtitle=told.subtitle(),
            leaves=self.leaves,
            opening=outline,
            floor=floor,
            wall=_WALL,
            way=(min(inner), max(inner)),
            clear_way=None,
            top=top,
            facts=tuple(told.facts()),
            thing=told.thing(),
            ticks=tuple(told.ticks()),
            scenery=Scenery(skirting_clear=(-_FAR, _FAR) if corner else (min(inner), max(inner))),
            niche=corner_room(self.niches, float(self.casework.depth) + _BEHIND)
            if corner
            else niche(*self.niches, back=back, face=min(0.0, self._face())),
            drawing=case_front(self.assembly, [one.outline() for one in straight], floor),
            all_open=len(self.leaves) > 1
            and any(set(state.open.values()) == {1.0} for state in self.assembly.states),
        )

    def _face(self) -> float:
        """The foremost of what is scribed to the walls: they come at least as far."""
        return min(
            (
                box_round(Group(name="", placement=group.placement, parts=(part,)))[0][1]
                for group in self.still
                for part in group.parts
                if part.noun not in _SCRIBED
            ),
            default=0.0,
        )

    def _leaves(self) -> Iterator[PageLeaf]:
        """Every group that moves: fronts by their own sizes, what else by the box round it."""
        fronts = {leaf.name: (door, leaf) for door in self.resolved.doors for leaf in door.leaves}
        together: dict[str, str] = {}
        for door in self.resolved.doors:
            motions = {leaf.name: leaf.hung.motion for leaf in door.leaves}
            together |= go_together(motions, door.hanging.states)
        for group in self.assembly.groups:
            if not group.motion:
                continue
            low, high = own_box(group)
            if group.name in fronts:
                yield self._front(group, *fronts[group.name], together[group.name])
                continue
            word = "inner drawer" if isinstance(group.motion[0], Slide) else "lid"
            case = group.name.rsplit(" / ", 1)[0]
            x, front, foot = group.placement.point(low)
            yield PageLeaf(
                name=group.name,
                label=SAID[word].format(plainly(case)),
                width=high[0] - low[0],
                height=high[2] - low[2],
                x=x,
                foot=foot,
                front=front,
                thickness=high[1] - low[1],
                motion=group.motion,
                along=group.placement.x[:2],
                behind=self._before(case) if word == "inner drawer" else (),
            )

    def _front(self, group: Group, door: Door, leaf: Leaf, together: str) -> PageLeaf:
        pull = leaf.pulls[0] if leaf.pulls else None
        x, front, foot = group.placement.origin
        return PageLeaf(
            name=leaf.name,
            label=self._label(door, leaf),
            width=float(leaf.width),
            height=float(leaf.height),
            x=x,
            foot=foot,
            front=front,
            thickness=float(leaf.thickness),
            motion=group.motion,
            goes_with=together,
            along=group.placement.x[:2],
            pull=None if pull is None else float(pull.across),
            pull_up=None if pull is None else float(pull.pull.up) + foot,
        )

    def _label(self, door: Door, leaf: Leaf) -> str:
        """`Door A, hung on its left`, though it be the only one of its cabinet."""
        _, comma, how = label(door, leaf).partition(", ")
        return f"{front_name(leaf)}{comma}{how}"

    def _before(self, case: str) -> tuple[str, ...]:
        """The doors and flaps before a cabinet's inner drawers."""
        return tuple(
            leaf.name
            for door in self.resolved.doors
            if door.case == case
            for leaf in door.leaves
            if leaf.hung.turns
        )
