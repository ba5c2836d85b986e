"""Solids of a STEP file measured from their faces, without a CAD kernel.

The volume of a body, and where its middle is, follow from its skin alone (the theorem of
Gauss): each loop of each face is walked with the wood on its left as seen from outside.
Faces are planes and cylinders, edges straight lines and arcs; mouldings have other faces and
edges besides (`step_skins.py`, `step_curves.py`).

Source: ISO 10303-42 (geometric and topological representation), from memory: a bound's
and an edge's flag say whether it is walked as written; a circle runs counter-clockwise
about its axis.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.step_curves import curve_points
from parametric.pack.verifying.step_file import Ref, StepFile, Typed, Word, axes, vector
from parametric.pack.verifying.step_skins import curved_share

Floats = NDArray[np.float64]

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """What a solid measures: volume mm3, its middle and its box, mm; and where its corners are."""

    volume: float
    middle: tuple[float, float, float]
    low: tuple[float, float, float]
    high: tuple[float, float, float]
    corners: frozenset[tuple[float, float, float]]
    """To a ten-thousandth."""


def measure(file: StepFile, number: int) -> Solid:
    """Measure one solid.

    Raises:
        UnreadableError: it has a face or an edge of another kind.
    """
    shell = file.of(file.of(Ref(number), "MANIFOLD_SOLID_BREP").values[1], "CLOSED_SHELL")
    walker = _Walker(file)
    whole = np.zeros(4)
    for face in _listed(shell.values[1]):
        whole += walker.face(file.of(face, "ADVANCED_FACE"))
    corners = np.vstack(walker.points)
    volume = float(whole[0])
    middle = whole[1:] / volume if volume else whole[1:]
    return Solid(
        volume=volume,
        middle=_vector(middle),
        low=_vector(corners.min(axis=0)),
        high=_vector(corners.max(axis=0)),
        corners=frozenset(to_place(end) for edge in walker.points for end in (edge[0], edge[-1])),
    )


def to_place(point: Sequence[float] | Floats) -> tuple[float, float, float]:
    """A point to a ten-thousandth, to be found again."""
    x, y, z = (round(float(at), 4) + 0.0 for at in point)
    return (x, y, z)


def _vector(values: Floats) -> tuple[float, float, float]:
    return (float(values[0]), float(values[1]), float(values[2]))


def _listed(value: object) -> list[object]:
    if not isinstance(value, list):
        raise UnreadableError("a list was expected")
    return value


class _Walker:
    """Walks the loops of faces, gathering the points it comes by."""

    def __init__(self, file: StepFile) -> None:
        self._file = file
        self.points: list[Floats] = []

    def face(self, face: Typed) -> Floats:
        """A face's share of the volume and of its moments in x, y and z."""
        bounds, surface = _listed(face.values[1]), self._file.of(face.values[2])
        share = np.zeros(4)
        for bound in bounds:
            walk = list(self._loop(self._file.of(bound)))
            if surface.kind == "PLANE":
                share += _flat_share(np.vstack([edge for edge, _ in walk]))
            elif surface.kind == "CYLINDRICAL_SURFACE" and self._square_to_axis(surface, walk):
                share += self._round_share(surface, walk)
            else:
                share += curved_share(self._file, surface, [_joined(walk)])
        return share

    def _loop(self, bound: Typed) -> Iterator[tuple[Floats, bool]]:
        """The edges of a loop as points in the order they are walked, and whether each is curved."""
        if bound.kind not in ("FACE_BOUND", "FACE_OUTER_BOUND"):
            raise UnreadableError(f"a bound of kind {bound.kind}")
        edges = _listed(self._file.of(bound.values[1], "EDGE_LOOP").values[1])
        forward = _is_true(bound.values[2])
        for reference in edges if forward else edges[::-1]:
            oriented = self._file.of(reference, "ORIENTED_EDGE")
            points, arc = self._edge(oriented.values[3])
            if _is_true(oriented.values[4]) != forward:
                points = points[::-1]
            self.points.append(points)
            yield points, arc

    def _edge(self, reference: object) -> tuple[Floats, bool]:
        """An edge from its first point to its last."""
        _, first, last, curve, same = self._file.of(reference, "EDGE_CURVE").values
        a, b = (
            np.array(vector(self._file, self._file.of(v, "VERTEX_POINT").values[1]))
            for v in (first, last)
        )
        drawn = self._file.of(curve)
        points = curve_points(self._file, drawn, a, b, same=_is_true(same))
        return points, drawn.kind != "LINE"

    def _square_to_axis(self, surface: Typed, walk: list[tuple[Floats, bool]]) -> bool:
        """Whether a loop on a cylinder runs round the axis and along it alone."""
        place = axes(self._file, surface.values[1])
        origin, along = np.array(place.origin), np.array(place.z)
        return all(
            np.ptp((points - origin) @ along) <= _SAME
            if arc
            else np.linalg.norm(np.cross(points[1] - points[0], along)) <= _SAME
            for points, arc in walk
        )

    def _round_share(self, surface: Typed, walk: list[tuple[Floats, bool]]) -> Floats:
        """The share of a loop on a cylinder: its edges run round the axis or along it.

        Over a strip of the skin between two heights, the sum of anything that depends on
        the angle alone is that thing summed along the lower edge times the height between;
        walked all round, heights of upper and lower edges come with opposite signs.
        """
        place, radius = axes(self._file, surface.values[1]), float(str(surface.values[2]))
        origin, along = np.array(place.origin), np.array(place.z)
        share = np.zeros(4)
        for points, arc in walk:
            if not arc:
                continue
            share += _round_edge_share(points, origin, along, radius)
        return share


def _is_true(value: object) -> bool:
    return isinstance(value, Word) and value.text == "T"


def _joined(walk: list[tuple[Floats, bool]]) -> Floats:
    """A loop's edges as one chain of points, each corner once."""
    return np.vstack([points[:-1] for points, _ in walk])


def _flat_share(points: Floats) -> Floats:
    """A flat loop as a fan of triangles about its first point.

    Over a triangle, the volume under it is a sixth of the product of its corners, and a
    moment in x the normal's x times the mean of x squared over it, halved.
    """
    a = points[0]
    b, c = points, np.roll(points, -1, axis=0)
    twice = np.cross(b - a, c - a)
    volume = float(np.einsum("j,ij->", a, twice)) / 6
    squares = (a**2 + b**2 + c**2 + a * b + b * c + c * a) / 6
    moments = (twice / 2 * squares).sum(axis=0) / 2
    return np.array([volume, *moments])


def _round_edge_share(points: Floats, origin: Floats, along: Floats, radius: float) -> Floats:
    """One arc's share of a loop on a cylinder (see `_round_share`)."""
    out = points - origin
    heights = out @ along
    out = (out - np.outer(heights, along)) / radius
    middle = out[:-1] + out[1:]
    middle /= np.linalg.norm(middle, axis=1)[:, None]
    turns = np.einsum("ij,j->i", np.cross(out[:-1], out[1:]), along)
    angles = np.arcsin(np.clip(turns, -1.0, 1.0))
    height = float(heights.mean())
    # what is summed: position . normal / 3 for the volume, x squared times normal / 2 for a moment
    at_axis = origin[None, :] + radius * middle
    share = np.zeros(4)
    volume = np.einsum("ij,ij->i", at_axis, middle) / 3
    share[0] = -height * radius * float((volume * angles).sum())
    # along the axis the position grows with the height, squared and to the third power
    flat, up = at_axis, along[None, :]
    grown = height * flat**2 + height**2 * flat * up + height**3 / 3 * up**2
    share[1:] = -radius * (grown * middle / 2 * angles[:, None]).sum(axis=0)
    return share
