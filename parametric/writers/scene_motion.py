"""How a leaf moves, in the frame of models for pictures: what is said of it, and keys to play.

A step of a motion is said as `{"slide": way}`, metres from shut, or as `{"turn": degrees,
"point": point, "axis": direction}`, right-handed about the line through the point. Steps
are applied in order, each about its line as it stands when everything is shut, and all go
together from shut to open.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, assert_never

import numpy as np

from parametric.model import Group, Placement, Slide, Step, Turn, Vector, along
from parametric.writers.scene_frame import (
    Floats,
    group_turn,
    metres,
    quaternion,
    scene_direction,
    scene_point,
)

ON_ITS_WAY = 0.05
"""mm: how far any corner of a leaf may be off its way between two keys."""
_BETWEEN = (0.25, 0.5, 0.75)
_BARELY = 1e-9
"""How far a direction may be from an axis and still be along it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Keys:
    """A leaf at parts of its way, 0 to 1: where its frame is, metres, and how it is turned.

    Between keys places are joined by straight lines and turns by the shortest even turn;
    `turns` is None where it never turns. A turn is x, y, z, w.
    """

    parts: tuple[float, ...]
    places: tuple[Vector, ...]
    turns: tuple[tuple[float, float, float, float], ...] | None


def line_slide(motion: tuple[Step, ...]) -> tuple[str, float] | None:
    """The axis of the scene that a leaf slides along and how far, metres and signed.

    None where it does anything else.
    """
    match motion:
        case (Slide() as slide,):
            for axis, part in zip("xyz", scene_direction(slide.direction), strict=True):
                if abs(abs(part) - 1) < _BARELY:
                    return axis, metres(part * slide.travel)
    return None


def scene_steps(motion: tuple[Step, ...]) -> list[dict[str, Any]]:
    """The steps of a motion as a model's file says them."""
    return [_said(step) for step in motion]


def _said(step: Step) -> dict[str, Any]:
    match step:
        case Slide():
            x, y, z = (float(d) * float(step.travel) for d in step.direction)
            return {"slide": list(scene_point((x, y, z)))}
        case Turn():
            return {
                "turn": round(float(step.angle), 9) + 0.0,
                "point": list(scene_point(step.point)),
                "axis": list(scene_direction(step.axis)),
            }
        case _:
            assert_never(step)


def opening_keys(group: Group) -> Keys:
    """A leaf from shut to open in as few evenly spaced keys as keep it on its way."""
    count = 1
    while True:
        keys = _keys(group, count)
        if _strays(group, keys) <= ON_ITS_WAY:
            return keys
        count *= 2


def _keys(group: Group, count: int) -> Keys:
    parts = tuple(i / count for i in range(count + 1))
    stands = [along(group.placement, group.motion, part) for part in parts]
    turns = any(isinstance(step, Turn) for step in group.motion)
    return Keys(
        parts=parts,
        places=tuple(scene_point(stand.origin) for stand in stands),
        turns=_turns(stands) if turns else None,
    )


def _turns(stands: Sequence[Placement]) -> tuple[tuple[float, float, float, float], ...]:
    """Each turn on the side of the one before, so that between them it is the shorter way."""
    found: list[tuple[float, float, float, float]] = []
    for stand in stands:
        x, y, z, w = quaternion(group_turn(stand))
        if found and sum(a * b for a, b in zip(found[-1], (x, y, z, w), strict=True)) < 0:
            x, y, z, w = (0.0 - v for v in (x, y, z, w))
        found.append((x, y, z, w))
    return tuple(found)


def _strays(group: Group, keys: Keys) -> float:
    """The most that any corner of a leaf is off its way between keys, mm."""
    corners = np.array(_corners(group))
    shown = _in_scene(corners)
    shut = group_turn(group.placement)
    most = 0.0
    for i, share in itertools.product(range(len(keys.parts) - 1), _BETWEEN):
        a, b = keys.parts[i], keys.parts[i + 1]
        true = along(group.placement, group.motion, a + (b - a) * share)
        frame = np.array([true.x, true.y, true.z])
        wanted = _in_scene(corners @ frame + np.array(true.origin, dtype=float))
        place = (1 - share) * np.array(keys.places[i]) + share * np.array(keys.places[i + 1])
        turn = shut if keys.turns is None else _between(keys.turns[i], keys.turns[i + 1], share)
        off = np.linalg.norm(shown @ turn.T + place - wanted, axis=1)
        most = max(most, float(off.max()) * 1000)
    return most


def _in_scene(points: Floats) -> Floats:
    """Points of the world in the scene, metres."""
    turned: Floats = points[:, [0, 2, 1]] * np.array([0.001, 0.001, -0.001])
    return turned


def _corners(group: Group) -> list[Vector]:
    """The corners of the box round a group, in its own frame, mm."""
    points = [
        part.placement.point(corner)
        for part in group.parts
        for corner in itertools.product(
            (0.0, float(part.blank.length)),
            (0.0, float(part.blank.width)),
            (0.0, float(part.blank.thickness)),
        )
    ]
    if not points:
        return [(0.0, 0.0, 0.0)]
    sides = [(min(p[i] for p in points), max(p[i] for p in points)) for i in range(3)]
    across, away, up = sides
    return [(x, y, z) for x in across for y in away for z in up]


def _between(
    a: tuple[float, float, float, float], b: tuple[float, float, float, float], share: float
) -> Floats:
    """A part of the even turn from one to the other, as a matrix.

    Source: Shoemake, Animating rotation with quaternion curves, SIGGRAPH 1985 (slerp).
    """
    one, other = np.array(a), np.array(b)
    half = float(np.arccos(np.clip(one @ other, -1.0, 1.0)))
    if half > _BARELY:
        one = (np.sin((1 - share) * half) * one + np.sin(share * half) * other) / np.sin(half)
    x, y, z, w = one / np.linalg.norm(one)
    return np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )
