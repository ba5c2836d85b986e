"""What a run of moulding is told by: its edge, from where to where, its section, how it ends.

And where the shoulders lie behind it, past which only the moulded face of a piece goes on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from parametric.figures import plain
from parametric.model import Blank, Cut, Edge, End, Moulded, Part, Shaped, Trim, removed_volume
from parametric.outlines import area_of, bounds_of
from parametric.paths import heading
from parametric.runs import RunEnd, run_bounds
from parametric.sections import depth_of, reach_of

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSizes:
    """A run of moulding on its part, mm and mm2.

    `low`, `high` are where it begins and ends along the part, `width`, `depth` and `area` its
    section's; `run` is how long a square-ended one of as much wood is.
    """

    beside: Edge | End
    low: float
    high: float
    width: float
    depth: float
    area: float
    run: float
    ends: str


def run_sizes(cut: Moulded, blank: Blank) -> RunSizes:
    """The sizes of a run."""
    low, _, high, _ = run_bounds(cut.section, cut.path, cut.start, cut.end)
    area = area_of(cut.section)
    return RunSizes(
        beside=edge_beside(cut),
        low=round(low, 9) + 0.0,
        high=round(high, 9) + 0.0,
        width=reach_of(cut.section),
        depth=depth_of(cut.section),
        area=area,
        run=removed_volume(cut, blank) / area,
        ends=_ends(cut),
    )


def edge_beside(cut: Moulded) -> Edge | End:
    """The edge or the end of the blank that a run goes along: where no wood is, on its right.

    However steep one is, as under a pointed head, along an end it runs straight across.
    """
    a, b = cut.path[0], cut.path[-1]
    if abs(b.x - a.x) > _SAME:
        return "low edge" if b.x > a.x else "high edge"
    return "high end" if b.y > a.y else "low end"


def shoulders(blank: Blank, cuts: Sequence[Cut]) -> tuple[float, float]:
    """Where the wood behind the face of a piece begins and ends along it, mm: its ends, or its shoulders.

    A coped end is cut along the end of the blank; behind a mitred one all the wood is taken, up
    to the upper edge and through the middle of the thickness. A piece without a moulding has no
    shoulder, whatever is cut at its ends.
    """
    long = float(blank.length)
    low, high = 0.0, long
    if not any(isinstance(cut, Moulded) for cut in cuts):
        return low, high
    for cut in cuts:
        match cut:
            case Moulded() if edge_beside(cut) == "low end":
                low = max(low, reach_of(cut.section))
            case Moulded() if edge_beside(cut) == "high end":
                high = min(high, long - reach_of(cut.section))
            case Shaped() if cut.face in ("low face", "high face") and _takes_the_end(cut, blank):
                u0, _, u1, _ = bounds_of(cut.outline)
                low, high = (max(low, u1), high) if u0 <= _SAME else (low, min(high, u0))
            case _:
                pass
    return low, high


def wood_along(blank: Blank, cuts: Sequence[Cut]) -> tuple[float, float]:
    """Where the wood of a piece begins and ends along it once its ends are trimmed, mm.

    A groove from one to the other runs out at both.
    """
    low, high = shoulders(blank, cuts)
    trims = [cut for cut in cuts if isinstance(cut, Trim)]
    low += sum(float(cut.length) for cut in trims if cut.end == "low end")
    high -= sum(float(cut.length) for cut in trims if cut.end == "high end")
    return low, high


def _takes_the_end(cut: Shaped, blank: Blank) -> bool:
    u0, _, u1, v1 = bounds_of(cut.outline)
    one_end = (u0 <= _SAME) != (u1 >= float(blank.length) - _SAME)
    middle = float(blank.thickness) / 2
    return (
        one_end
        and v1 >= float(blank.width) - _SAME
        and float(cut.surface) < middle < float(cut.depth)
    )


def _ends(cut: Moulded) -> str:
    first, last = (_end(cut, end, flag) for end, flag in ((cut.start, True), (cut.end, False)))
    return first if first == last else f"{first}, {last}"


def _end(cut: Moulded, end: RunEnd, at_start: bool) -> str:
    if end.over:
        return "coped"
    a, b = cut.path[:2] if at_start else cut.path[-2:]
    here = a if at_start else b
    (x, y), (first, last) = heading(a, b, (here.x, here.y)), (end.line[0], end.line[-1])
    along = x * (last.x - first.x) + y * (last.y - first.y)
    if abs(along) > 1e-6:
        return "mitred"
    return "open" if end.open else "stopped"


def set_up_line(cut: Moulded, part: Part, said: Callable[[float], str] = plain) -> str:
    """What to set for a run: the profile and its size, which edge of which face, with what, when.

    Args:
        cut: the run.
        part: its part.
        said: how a length is said.
    """
    own = run_sizes(cut, part.blank)
    edge, face = (part.faces.get(word, word) for word in (own.beside, cut.face))
    return (
        f"{cut.profile} {said(own.width)} x {said(own.depth)} along the {edge}, on the {face}: "
        f"{cut.making.tool}; {cut.making.when}"
    )
