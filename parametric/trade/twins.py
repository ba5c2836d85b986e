"""Pieces of one shape: which lie turned in their leaf, which are alike on both sides, which mirror.

Turning a piece about its length changes its face for its back. It is then another piece,
unless every cut goes over into a cut when it is mirrored in the middle of its thickness.
Two pieces that are one another's image in any mirror are a left and a right.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from typing import Literal, assert_never

from parametric.model import (
    SAME_SIZE,
    Blank,
    Cut,
    Drilled,
    Edge,
    End,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
    alike,
    face_depth,
    face_size,
)
from parametric.outlines import Outline, Vertex, backwards, turned_over, turned_upside_down
from parametric.runs import RunEnd

Way = Literal["length", "width", "thickness"]

_WAYS: tuple[Way, ...] = ("length", "width", "thickness")
_ACROSS: Mapping[Face, Way] = {
    "low end": "length",
    "high end": "length",
    "low edge": "width",
    "high edge": "width",
    "low face": "thickness",
    "high face": "thickness",
}
_OPPOSITE: Mapping[Face, Face] = {
    "low end": "high end",
    "high end": "low end",
    "low edge": "high edge",
    "high edge": "low edge",
    "low face": "high face",
    "high face": "low face",
}


def mirrored(cut: Cut, blank: Blank, way: Way = "thickness") -> Cut | None:
    """The cut mirrored in the middle of the blank; None for one that knows a single face.

    Args:
        cut: the cut.
        blank: the blank it is made in.
        way: through which of its three middles.
    """
    match cut:
        case Slot() | Groove() | Pocket() | Drilled() | Shaped() if _ACROSS[cut.face] == way:
            return dataclasses.replace(cut, face=_OPPOSITE[cut.face])
        case Slot() | Groove() | Pocket() | Drilled() | Shaped():
            return _on_its_face(cut, blank, way)
        case Moulded() if way == "thickness":
            opposite = "high face" if cut.face == "low face" else "low face"
            return dataclasses.replace(cut, face=opposite)  # type: ignore[arg-type]
        case Moulded():
            return _run_turned(cut, blank, way)
        case Island() if way == "thickness":
            other = "high face" if cut.face == "low face" else "low face"
            return dataclasses.replace(cut, face=other)  # type: ignore[arg-type]
        case ScrewPocket() if way == "thickness":
            over = "high face" if cut.face == "low face" else "low face"
            return dataclasses.replace(cut, face=over)  # type: ignore[arg-type]
        case ScrewPocket() if way == "length":
            return dataclasses.replace(cut, end=_other_end(cut.end))
        case ScrewPocket():
            last = cut.v + cut.pitch * (cut.count - 1)
            return dataclasses.replace(cut, v=blank.width - last)
        case Trim() if way == "length":
            return dataclasses.replace(cut, end=_other_end(cut.end))
        case Mitre() if way == "length":
            return dataclasses.replace(cut, end=_other_end(cut.end))
        case Mitre() if way == "width":
            keeps: Edge = "high edge" if cut.keeps == "low edge" else "low edge"
            return dataclasses.replace(cut, keeps=keeps)
        case RaisedBevel() | Tongue() if way == "thickness":
            return None
        case Island() | Trim() | Mitre() | RoundArrises() | RoundCorners():
            return cut
        case RaisedBevel() | Tongue():
            return cut
        case _:
            assert_never(cut)


def _on_its_face(cut: Slot | Groove | Pocket | Drilled | Shaped, blank: Blank, way: Way) -> Cut:
    """A cut whose face stays where it is, mirrored along u or along v of it."""
    u, v = face_size(cut.face, blank)
    along_u = way == "length" or (way == "width" and _ACROSS[cut.face] == "length")
    match cut:
        case Shaped() if along_u:
            return dataclasses.replace(cut, outline=turned_over(cut.outline, across=float(u)))
        case Shaped():
            return dataclasses.replace(cut, outline=turned_upside_down(cut.outline, up=float(v)))
        case Drilled():
            # a row is told from the end that its first hole is at now
            far = cut.pitch * (cut.count - 1)
            if along_u:
                return dataclasses.replace(cut, u=u - cut.u - (far if cut.along == "u" else 0.0))
            return dataclasses.replace(cut, v=v - cut.v - (far if cut.along == "v" else 0.0))
        case Pocket() if along_u:
            return dataclasses.replace(cut, u=u - cut.u)
        case Slot() | Groove() if along_u:
            return dataclasses.replace(cut, u0=u - cut.u1, u1=u - cut.u0)
        case Slot() | Groove() | Pocket():
            return dataclasses.replace(cut, v=v - cut.v)
        case _:
            assert_never(cut)


def _run_turned(cut: Moulded, blank: Blank, way: Way) -> Moulded:
    """A run mirrored on its face: it goes the other way, so that the wood is on its left again."""

    def over(chain: Outline) -> Outline:
        if way == "length":
            far = float(blank.length)
            return tuple(Vertex(far - v.x, v.y, -v.bulge) for v in chain)
        far = float(blank.width)
        return tuple(Vertex(v.x, far - v.y, -v.bulge) for v in chain)

    def ended(end: RunEnd) -> RunEnd:
        return dataclasses.replace(end, line=over(end.line), floor=over(end.floor))

    path = backwards(over(cut.path))
    return dataclasses.replace(cut, path=path, start=ended(cut.end), end=ended(cut.start))


def _other_end(end: End) -> End:
    return "high end" if end == "low end" else "low end"


def alike_both_sides(part: Part) -> bool:
    """True when the piece is the same with its face for its back."""
    return _is_image(part, part, "thickness")


def mirrors(part: Part, other: Part) -> bool:
    """True when one piece is the other's image in a mirror, whichever way that is held.

    Rails under two halves of one arch are each other's image end for end.
    """
    return any(_is_image(part, other, way) for way in _WAYS)


def _is_image(part: Part, other: Part, way: Way) -> bool:
    turned = [mirrored(cut, part.blank, way) for cut in part.cuts]
    return alike(part.blank, other.blank) and _same_cuts(
        [_as_wood(cut, part.blank) for cut in turned],
        [_as_wood(cut, other.blank) for cut in other.cuts],
    )


def lies_turned(part: Part, twin: Part) -> bool:
    """True when a twin looks to the front with the side that is the first one's back."""
    sides: tuple[Face, ...] = ("low face", "high face")
    return any(part.faces.get(side) != twin.faces.get(side) for side in sides)


def _same_cuts(cuts: Sequence[Cut | None], others: Sequence[Cut | None]) -> bool:
    """Whether each cut of the one has its own among those of the other, in any order."""
    left = list(others)
    for cut in cuts:
        found = next((i for i, other in enumerate(left) if alike(cut, other)), None)
        if found is None:
            return False
        del left[found]
    return not left


def _as_wood(cut: Cut | None, blank: Blank) -> Cut | None:
    match cut:
        case Shaped():
            return _wood(cut, blank)
        case Drilled() if cut.face.startswith("low") and _goes_through(cut, blank):
            return dataclasses.replace(cut, face=_OPPOSITE[cut.face])
        case _:
            return cut


def _goes_through(cut: Drilled, blank: Blank) -> bool:
    """Whether holes come out behind, so that they may be bored from either side."""
    through = abs(float(cut.depth) - float(face_depth(cut.face, blank))) <= SAME_SIZE
    return through and not float(cut.surface)


def _wood(cut: Shaped, blank: Blank) -> Shaped:
    """The same wood said in one way: from the high side, begun at the lowest corner on the left.

    What is cut right through may be cut from either side, and an outline begun anywhere.
    """
    leftmost = min(float(vertex.x) for vertex in cut.outline) + SAME_SIZE
    corners = [
        (float(vertex.y), index)
        for index, vertex in enumerate(cut.outline)
        if float(vertex.x) <= leftmost
    ]
    first = min(corners)[1]
    begun = (*cut.outline[first:], *cut.outline[:first])
    outline = tuple(Vertex(*map(float, vertex)) for vertex in begun)
    face, surface, depth = cut.face, float(cut.surface), float(cut.depth)
    if face.startswith("low"):
        behind = float(face_depth(face, blank))
        face, surface, depth = _OPPOSITE[face], behind - depth, behind - surface
    return dataclasses.replace(cut, face=face, outline=outline, surface=surface, depth=depth)
