"""How leaves move, against the design: what a model says of it, and what its animation does.

Worked out from the design's steps by sums of its own, in the scene's frame: metres, y up. Two
motions are the same when they carry the corners of a leaf to the same places.
"""

from __future__ import annotations

import itertools
import json
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial, reduce
from typing import Any

import numpy as np

from parametric.model import Group, Slide, Step, Vector
from parametric.pack.verifying.boxes import placed_box
from parametric.pack.verifying.glb_file import Floats, GlbFile, Node, Played, trs_matrix

BETWEEN_KEYS = 1e-4
"""metres: how far a leaf may be off its way where no key holds it."""
_PARTS = tuple(n / 8 for n in range(9))
"""Of the whole way, where what is said is tried."""
_SHARES = (0.2, 0.5, 0.8)
"""Of the way from one key to the next, where an animation is tried."""

Move = Callable[[float], Floats]
"""What a step has moved by when it has gone a part of its way: a matrix of the scene, metres."""


def motion_faults(
    group: Group, node: Node, file: GlbFile, *, near: float, animated: bool
) -> Iterator[str]:
    """What is wrong with how a group moves, in a file's own words and in its animation.

    Args:
        group: as designed.
        node: its node.
        file: the scene.
        near: what a corner may be off, metres.
        animated: whether a leaf must move by itself as well as say how it does.
    """
    played = file.played.get(group.name)
    if not group.motion:
        told = {"axis", "travel", "motion"} & node.extras.keys()
        if played is not None or told:
            verb = (
                "moves" if "motion" in told or (played and played.turns is not None) else "slides"
            )
            yield f"{group.name}: {verb}, and should not"
        return
    verb = "slide" if all(isinstance(step, Slide) for step in group.motion) else "move"
    wanted = [_designed(step) for step in group.motion]
    corners = _corners(group)
    said = _said(node.extras)
    if said is None:
        yield f"{group.name}: does not say how it {verb}s"
    else:
        off = max(_apart(_gone(said, p), _gone(wanted, p), corners) for p in _PARTS)
        if off > near:
            yield f"{group.name}: says it {verb}s {off * 1000:.3f} otherwise than the design"
    if not animated:
        return
    if played is None:
        yield f"{group.name}: {verb}s not at all, and the design does"
    else:
        yield from _plays(group, played, wanted, corners, verb, near)


def _plays(
    group: Group,
    played: Played,
    wanted: Sequence[Move],
    corners: Floats,
    verb: str,
    near: float,
) -> Iterator[str]:
    """The first place at which an animation leaves the design's way, at its keys and between."""
    clock = played.times
    if len(clock) < 2 or (np.diff(clock) <= 0).any():
        yield f"{group.name}: the times of its keys do not run on"
        return
    back = np.linalg.inv(_shut_in_scene(group))
    parts = (clock - clock[0]) / (clock[-1] - clock[0])
    for i in range(len(parts)):
        off = _apart(_stands(played, i, 0.0) @ back, _gone(wanted, float(parts[i])), corners)
        if off > near and i == 0:
            yield f"{group.name}: begins to {verb} {off * 1000:.3f} off where it stands shut"
            return
        if off > near:
            yield f"{group.name}: {verb}s {off * 1000:.3f} off its way, {parts[i]:.0%} open"
            return
    for i, share in itertools.product(range(len(parts) - 1), _SHARES):
        part = float(parts[i] + (parts[i + 1] - parts[i]) * share)
        off = _apart(_stands(played, i, share) @ back, _gone(wanted, part), corners)
        if off > BETWEEN_KEYS:
            yield f"{group.name}: {verb}s {off * 1000:.3f} off its way between keys, {part:.0%} open"
            return


def _stands(played: Played, i: int, share: float) -> Floats:
    """Where a node stands a share of the way from key i to the next, as a viewer has it."""
    place, turn = played.places[i], played.turn
    if played.turns is not None:
        turn = played.turns[i]
    if share:
        place = (1 - share) * place + share * played.places[i + 1]
        if played.turns is not None:
            turn = _evenly(turn, played.turns[i + 1], share)
    return trs_matrix(place, turn)


def _evenly(a: Floats, b: Floats, share: float) -> Floats:
    """Source: glTF 2.0, appendix C, interpolation modes: spherical linear interpolation."""
    dot = float(a @ b)
    angle = math.acos(min(abs(dot), 1.0))
    if angle < 1e-6:
        found = (1 - share) * a + share * math.copysign(1.0, dot) * b
    else:
        found = math.sin(angle * (1 - share)) * a
        found = found + math.copysign(1.0, dot) * math.sin(angle * share) * b
    even: Floats = found / np.linalg.norm(found)
    return even


def _said(extras: Mapping[str, Any]) -> list[Move] | None:
    """The motion that a node tells of; None where it tells none that can be understood."""
    try:
        if "axis" in extras:
            low, high = extras["travel"]
            way = np.zeros(3)
            way["xyz".index(extras["axis"])] = high - low
            return [partial(_slid, way)]
        said = extras["motion"]
        return [_told(step) for step in (json.loads(said) if isinstance(said, str) else said)]
    except (KeyError, TypeError, ValueError):
        return None


def _told(said: Mapping[str, Any]) -> Move:
    if "slide" in said:
        return partial(_slid, np.array(said["slide"], dtype=float).reshape(3))
    return partial(
        _turned_about,
        np.array(said["point"], dtype=float).reshape(3),
        np.array(said["axis"], dtype=float).reshape(3),
        float(said["turn"]),
    )


def _designed(step: Step) -> Move:
    if isinstance(step, Slide):
        return partial(_slid, _up(step.direction) * float(step.travel) / 1000)
    return partial(_turned_about, _up(step.point) / 1000, _up(step.axis), float(step.angle))


def _gone(steps: Sequence[Move], part: float) -> Floats:
    """What the steps, each after the one before, have moved by."""
    return reduce(lambda matrix, step: step(part) @ matrix, steps, np.eye(4))


def _apart(one: Floats, other: Floats, corners: Floats) -> float:
    """The most that a corner is carried to different places, metres."""
    return float(np.linalg.norm(((one - other) @ corners.T)[:3], axis=0).max())


def _corners(group: Group) -> Floats:
    """The corners of the box round a shut group, in the scene, each with a one behind it."""
    boxes = np.array([placed_box(group, part) for part in group.parts], dtype=float)
    if not group.parts:
        return np.array([[*_up(group.placement.origin) / 1000, 1.0]])
    low, high = boxes[:, 0].min(axis=0), boxes[:, 1].max(axis=0)
    corners = itertools.product(*zip(low, high, strict=True))
    return np.array([(x / 1000, z / 1000, -y / 1000, 1.0) for x, y, z in corners])


def _up(v: Vector) -> Floats:
    """A direction or point of the world, x right, y away, z up, with y up and z nearer."""
    return np.array([float(v[0]), float(v[2]), -float(v[1])])


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
    """Where a group's frame stands when shut, in the scene, its own frame with y up as well."""
    stand = group.placement
    matrix = np.eye(4)
    matrix[:3, 0] = _up(stand.x)
    matrix[:3, 1] = _up(stand.z)
    matrix[:3, 2] = -_up(stand.y)
    matrix[:3, 3] = _up(stand.origin) / 1000
    return matrix
