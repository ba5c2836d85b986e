"""Doors in one room: what they are made of carried to where they stand, and how they stand open."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import assert_never

from parametric.model import Group, Placement, Slide, State, Step, Turn
from parametric.resolve.door import Door
from parametric.resolve.one_door import AS_MEASURED


def stood(group: Group, stands: Placement) -> Group:
    """A group carried from its own frame to where that frame stands, and its way with it."""
    if stands == AS_MEASURED:
        return group
    return dataclasses.replace(
        group,
        placement=_carried(group.placement, stands),
        motion=tuple(carried_step(step, stands) for step in group.motion),
    )


def _carried(placement: Placement, stands: Placement) -> Placement:
    return Placement(
        origin=stands.point(placement.origin),
        x=stands.direction(placement.x),
        y=stands.direction(placement.y),
    )


def carried_step(step: Step, stands: Placement) -> Step:
    """One step of a motion, carried from a frame to where that frame stands."""
    if stands == AS_MEASURED:
        return step
    match step:
        case Slide():
            return dataclasses.replace(step, direction=stands.direction(step.direction))
        case Turn():
            return dataclasses.replace(
                step, point=stands.point(step.point), axis=stands.direction(step.axis)
            )
        case _:
            assert_never(step)


def states_of_job(doors: tuple[Door, ...]) -> tuple[State, ...]:
    """How the job may stand: all shut, each door open in its own ways alone, all open together.

    Doors that stand apart cannot meet, so that their states are not held against one another.
    """
    if len(doors) == 1:
        return doors[0].hanging.states
    shut = {leaf.name: 0.0 for door in doors for leaf in door.leaves}
    alone = [
        State(name=f"{_called(door)} {state.name}", open={**shut, **state.open})
        for door in doors
        for state in door.hanging.states
        if any(state.open.values())
    ]
    together: dict[str, float] = dict(shut)
    for door in doors:
        together |= _most_open(door)
    return (State(name="shut", open=shut), *alone, State(name="open", open=together))


def _called(door: Door) -> str:
    return door.name or door.place


def _most_open(door: Door) -> Mapping[str, float]:
    """The first of the states in which most leaves are as far open as they go."""
    most = max(door.hanging.states, key=lambda state: list(state.open.values()).count(1.0))
    return most.open
