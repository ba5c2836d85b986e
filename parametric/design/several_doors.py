"""What several doors of one file need: a name each, and an opening each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.design.answers import stop
from parametric.design.understanding import not_built
from parametric.hangings import DoorSpec
from parametric.problems import Problem
from parametric.written import Block


def told_apart(blocks: Mapping[tuple[str, str], Block]) -> list[Problem]:
    """Stops where two doors of a file cannot be told apart, or stand in one opening."""
    doors = {
        name: block
        for (kind, name), block in blocks.items()
        if kind == "door" and isinstance(block, DoorSpec)
    }
    if len(doors) < 2:
        return []
    surveys = [name for kind, name in blocks if kind == "survey"]
    return [
        *_unnamed(doors),
        *_in_one_opening(doors, surveys),
        *_finished_apart(doors),
    ]


def _unnamed(doors: Mapping[str, DoorSpec]) -> Iterator[Problem]:
    if "" in doors:
        others = ", ".join(door.heading for name, door in doors.items() if name)
        yield stop(
            "door_without_a_name",
            f"There are {len(doors)} doors in this file, and this one has no name to tell it from "
            f"{others}.",
            doors[""].here,
            about="door",
            found="door",
            allowed="a name for every door where there are several",
            fix="Write its name in its heading: `door hall:`.",
        )


def _in_one_opening(doors: Mapping[str, DoorSpec], surveys: list[str]) -> Iterator[Problem]:
    """A survey is of one opening, and one door stands in it."""
    only = surveys[0] if len(surveys) == 1 else ""
    first: dict[str, DoorSpec] = {}
    for door in doors.values():
        opening = only if door.in_ is None else str(door.in_)
        if opening not in surveys:
            continue
        before = first.setdefault(opening, door)
        if before is door:
            continue
        which = f"the opening of survey {opening}" if opening else "the one opening surveyed"
        yield stop(
            "doors_in_one_opening",
            f"{door.heading} would stand in {which}, where {before.heading} is.",
            door.line("in") if door.in_ is not None else door.here,
            about=door.heading,
            found=f"survey {opening}".rstrip(),
            allowed="a survey for every door",
            fix="Write the survey of its own opening, `survey NAME:`, and `in: NAME` in the door. "
            "Two ways to close one opening are two options.",
        )


def _finished_apart(doors: Mapping[str, DoorSpec]) -> Iterator[Problem]:
    """The orders, the page and the finish sheet know one finish a job."""
    first, *others = doors.values()
    for door in others:
        if (door.finish or "") != (first.finish or ""):
            yield not_built(
                "Doors of one file that are finished differently",
                door.line("finish") if door.finish is not None else door.here,
                about=door.heading,
                allowed="one finish for all doors of a file",
            )
