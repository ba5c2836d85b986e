"""What no router file makes: saw and bench cuts by part, so that none is ever dropped."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import assert_never

from parametric.cnc.operations import depth_text, squaring
from parametric.cnc.setups import PartType, face_word, file_cut, part_types
from parametric.figures import plain
from parametric.model import (
    Assembly,
    By,
    Cut,
    Drilled,
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
    When,
    removed_volume,
)
from parametric.outlines import Outline, arc_of, bounds_of, edges
from parametric.trade.moulded_runs import run_sizes
from parametric.trade.shaped_sizes import is_rectangle


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchCut:
    """One cut of one part type that the saw or the bench makes.

    `what` is the cut in words with its sizes in mm; `removes` is what it takes from one
    part, mm3.
    """

    mark: str
    noun: str
    names: tuple[str, ...]
    cut: str
    what: str
    by: By
    when: When
    tool: str
    removes: float

    @property
    def count(self) -> int:
        """How many parts are cut so."""
        return len(self.names)


def bench_work(
    assembly: Assembly, said: Callable[[float], str] = depth_text
) -> tuple[BenchCut, ...]:
    """Every cut of every made part that is in no set-up, part by part, in order of making.

    A groove that the router stops and the bench squares is counted here with its corners.

    Args:
        assembly: the job's parts.
        said: how a length is said; in mm to a thousandth where nothing else is wanted.
    """
    return tuple(cut for kind in part_types(assembly) for cut in _of_part(kind, said))


def _of_part(kind: PartType, said: Callable[[float], str]) -> Iterator[BenchCut]:
    part = kind.part
    # glass is bought cut to its outline: nobody here has a saw or a bench for it
    for cut in () if part.material.look == "glass" else part.cuts:
        if file_cut(cut, part) is None:
            yield _bench_cut(
                kind,
                cut,
                what=described(cut, part, said),
                by=cut.making.by,
                tool=cut.making.tool,
                removes=float(removed_volume(cut, part.blank)),
            )
        elif isinstance(cut, Groove) and (left := squaring(cut, part.blank, part.cuts)):
            yield _bench_cut(
                kind,
                cut,
                what=f"chop the round ends square, r {said(cut.corner)}, "
                f"{said(cut.depth)} deep, in the {face_word(part, cut.face)}",
                by="bench",
                tool="chisel",
                removes=left,
            )


def _bench_cut(
    kind: PartType, cut: Cut, *, what: str, by: By, tool: str, removes: float
) -> BenchCut:
    return BenchCut(
        mark=kind.part.mark,
        noun=kind.part.noun,
        names=kind.names,
        cut=cut.name,
        what=what,
        by=by,
        when=cut.making.when,
        tool=tool,
        removes=removes,
    )


def described(cut: Cut, part: Part, n: Callable[[float], str] = depth_text) -> str:
    """A cut in words, its sizes from the lower left corner of the blank's face.

    Args:
        cut: the cut.
        part: its part.
        n: how a length, mm, is said.
    """
    match cut:
        case Slot():
            return (
                f"slot {n(cut.width)} wide, {n(cut.u0)} to {n(cut.u1)}, centre across {n(cut.v)}, "
                f"{_down(n, cut.depth, cut.surface)}, in the {face_word(part, cut.face)}"
            )
        case Pocket():
            return (
                f"pocket {n(cut.length)} x {n(cut.width)}, corners r {n(cut.corner)}"
                f"{f' relieved by r {n(cut.relief)}' if cut.relief else ''}, centred on "
                f"{n(cut.u)}; {n(cut.v)}, {_down(n, cut.depth, cut.surface)}, "
                f"in the {face_word(part, cut.face)}"
            )
        case Groove():
            ramp = f", stopped with ramps of a blade r {n(cut.ramp)}" if cut.ramp else ""
            return (
                f"groove {n(cut.width)} wide, {n(cut.u0)} to {n(cut.u1)}, centre across "
                f"{n(cut.v)}, {_down(n, cut.depth, cut.surface)}, "
                f"in the {face_word(part, cut.face)}{ramp}"
            )
        case Drilled():
            return (
                f"{_bore(cut, n)}, {_down(n, cut.depth, cut.surface)}, "
                f"in the {face_word(part, cut.face)}"
            )
        case ScrewPocket():
            row = (
                f", {cut.count} of them, then every {n(cut.pitch)} across" if cut.count > 1 else ""
            )
            return (
                f"bore a screw pocket {n(cut.wide)} dia, {n(cut.deep)} deep along it at "
                f"{n(cut.angle)} degrees, in the {face_word(part, cut.face)} {n(cut.mouth)} from "
                f"the {face_word(part, cut.end)} at {n(cut.v)}{row}, and a pilot {n(cut.pilot)} dia "
                "out of the end"
            )
        case Trim():
            return f"trim {n(cut.length)} off the {face_word(part, cut.end)}"
        case Mitre():
            return (
                f"mitre the {face_word(part, cut.end)} at 45 degrees, "
                f"the {face_word(part, cut.keeps)} keeping its length"
            )
        case RaisedBevel():
            return (
                f"bevel all round the {face_word(part, 'high face')}: {n(cut.run)} in, from "
                f"{n(cut.edge)} thick at the edge to {n(cut.foot)}"
            )
        case Tongue():
            return (
                f"tongue all round: {n(cut.thickness)} thick, {n(cut.length)} long, "
                f"{n(cut.back)} off the {face_word(part, 'low face')}"
            )
        case RoundArrises():
            return f"round the four long edges, r {n(cut.radius)}"
        case RoundCorners():
            return f"round the four corners, r {n(cut.radius)}"
        case Shaped():
            return (
                f"take out {_shape(cut.outline, n)}, {_down(n, cut.depth, cut.surface)}, "
                f"in the {face_word(part, cut.face)}"
            )
        case Moulded():
            own = run_sizes(cut, part.blank)
            return (
                f"run the {cut.profile} {n(own.width)} x {n(own.depth)}, section "
                f"{plain(own.area)} mm2, {n(own.run)} long in the middle, "
                f"in the {face_word(part, cut.face)} along the {face_word(part, own.beside)}"
            )
        case Island():
            return (
                f"take the {face_word(part, cut.face)} down {n(cut.depth)} round a raised "
                f"{n(cut.length)} x {n(cut.width)}, corners r {n(cut.corner)}"
            )
        case _:
            assert_never(cut)


def _shape(outline: Outline, n: Callable[[float], str]) -> str:
    """A rectangle from where to where; any other outline corner by corner.

    A side that is no straight line is said after the corner it leaves: which way it bows and
    how far off its chord, and its radius.
    """
    u0, v0, u1, v1 = bounds_of(outline)
    if is_rectangle(outline):
        return f"{n(u0)} to {n(u1)} along, {n(v0)} to {n(v1)} across"
    said = []
    for a, b in edges(outline):
        corner, arc = f"{n(a.x)}; {n(a.y)}", arc_of(a, b)
        if arc is not None:
            high = abs(a.bulge) * math.dist(a[:2], b[:2]) / 2
            way = "bulging" if a.bulge > 0 else "hollow"
            # a bow too slight to be said is still an arc
            bow = f"r {n(arc.radius)}" if n(high) == "0" else f"{n(high)} (r {n(arc.radius)})"
            corner += f" {way} {bow}"
        said.append(corner)
    return f"the shape {', '.join(said)}"


def _bore(cut: Drilled, n: Callable[[float], str]) -> str:
    """One hole and where its middle is, or a row of them from the first to the last."""
    at = f"{n(cut.u)}; {n(cut.v)}"
    if cut.count == 1:
        return f"bore 1 hole {n(cut.diameter)} dia at {at}"
    way = "along" if cut.along == "u" else "across"
    return (
        f"bore {cut.count} holes {n(cut.diameter)} dia, "
        f"the first at {at}, then every {n(cut.pitch)} {way}"
    )


def _down(n: Callable[[float], str], depth: float, surface: float) -> str:
    """How deep, and from where, when the wood begins below the blank's own face."""
    deep = f"{n(depth - surface)} deep"
    return f"{deep} from {n(surface)} below the blank" if surface else deep
