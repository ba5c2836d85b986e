"""How leaves move that do more than slide: what a model says, and what its animation does.

Worked out from the design's steps by sums of its own, in the scene's frame: metres, y up.
"""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Any

import numpy as np

from parametric.model import Group, Slide, Step, Vector
from parametric.pack.verifying.glb_file import Floats, GlbFile, Node, trs_matrix


def turning_faults(
    group: Group, node: Node, file: GlbFile, *, near: float, animated: bool
) -> Iterator[str]:
    """A leaf that does more than slide: its steps in its own words, and every key of its animation.

    Args:
        group: the leaf as designed.
        node: its node.
        file: the scene.
        near: what may be off, metres.
        animated: whether it must move by itself as well as say how it does.
    """
    said = node.extras.get("motion")
    steps = json.loads(said) if isinstance(said, str) else said
    try:
        told = [_step(step) for step in steps or ()]
    except (KeyError, TypeError, ValueError):
        told = []
    wanted = [_step_of(step) for step in group.motion]
    if len(told) != len(wanted):
        yield f"{group.name}: says that it moves in {len(told)} steps, the design in {len(wanted)}"
        return
    for ours, theirs in zip(wanted, told, strict=True):
        if float(np.abs(ours(0.37) - theirs(0.37)).max()) > near:
            yield f"{group.name}: says that it moves otherwise than the design"
    keys = file.turned.get(group.name)
    if not animated:
        return
    if keys is None:
        yield f"{group.name}: does not move, and the design does"
        return
    places, turns = keys
    shut = _shut_in_scene(group)
    for i, (place, turn) in enumerate(zip(places, turns, strict=True)):
        matrix = shut
        for step in wanted:
            matrix = step(i / (len(places) - 1)) @ matrix
        stands = trs_matrix(place, turn)
        if float(np.abs(stands - matrix).max()) > near:
            yield f"{group.name}: key {i} of its animation stands off where it should"
            return


Move = Callable[[float], Floats]
"""What a step has moved by when it has gone a part of its way: a matrix of the scene, metres."""


def _step(said: Mapping[str, Any]) -> Move:
    if "slide" in said:
        return partial(_slid, np.array(said["slide"], dtype=float))
    return partial(
        _turned_about,
        np.array(said["point"], dtype=float),
        np.array(said["axis"], dtype=float),
        float(said["turn"]),
    )


def _step_of(step: Step) -> Move:
    if isinstance(step, Slide):
        way = np.array(_floats3(step.direction)) * float(step.travel) / 1000
        return partial(_slid, way[[0, 2, 1]] * (1, 1, -1))
    point = np.array(_floats3(step.point))[[0, 2, 1]] * (1, 1, -1) / 1000
    axis = np.array(_floats3(step.axis))[[0, 2, 1]] * (1, 1, -1)
    return partial(_turned_about, point, axis, float(step.angle))


def _floats3(v: Vector) -> tuple[float, float, float]:
    return (float(v[0]), float(v[1]), float(v[2]))


def _slid(way: Floats, part: float) -> Floats:
    matrix = np.eye(4)
    matrix[:3, 3] = way * part
    return matrix


def _turned_about(point: Floats, axis: Floats, angle: float, part: float) -> Floats:
    """Source: the rotation matrix exp(K a) = I + sin a K + (1 - cos a) K2, K the cross product's."""
    x, y, z = axis
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    a = math.radians(angle * part)
    turn = np.eye(3) + math.sin(a) * cross + (1 - math.cos(a)) * cross @ cross
    matrix = np.eye(4)
    matrix[:3, :3] = turn
    matrix[:3, 3] = point - turn @ point
    return matrix


def _shut_in_scene(group: Group) -> Floats:
    """Where a group's frame stands when shut, in the scene: x right, y up, z towards the viewer."""
    swap = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])
    axes = np.array(
        [_floats3(v) for v in (group.placement.x, group.placement.y, group.placement.z)]
    ).T
    matrix = np.eye(4)
    matrix[:3, :3] = swap @ axes @ swap.T
    matrix[:3, 3] = swap @ np.array(_floats3(group.placement.origin)) / 1000
    return matrix
