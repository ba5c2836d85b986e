"""What a lock or latch and its strike cut: plate and body in the edge, bores from both faces.

In a bevelled edge plate and floor lie on the slope, and are chopped square; the back is level.
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import Figure
from parametric.hardware.bore import circle
from parametric.hardware.lock import LetIn, Lock
from parametric.model import Cut, Making, Shaped
from parametric.outlines import Outline, Vertex, rounded_rectangle

SideFace = Literal["low face", "high face"]
"""A face of the stile's own frame."""


def lock_cuts(
    lock: Lock,
    *,
    front: SideFace,
    planed: SideFace | None,
    thickness: float,
    shift: float,
) -> tuple[Cut, ...]:
    """Faceplate, mortise and bores in a closing stile, once the leaf is glued, trimmed and planed.

    Args:
        lock: the lock.
        front: the face of the stile's own frame that is the leaf's front.
        planed: the face whose edge the bevel sets back; None for a square edge.
        thickness: of the stile, mm.
        shift: turns heights above the finished foot into heights on the blank, mm.
    """
    back: SideFace = "high face" if front == "low face" else "low face"
    bores = [
        Shaped(
            name=bore.name,
            face=face,
            outline=circle(bore.up + shift, bore.across, bore.width),
            depth=bore.depth,
            making=Making(
                by="bench", when="after glue-up", tool="bored from both faces before the mortise"
            ),
        )
        for face in sorted((front, back), reverse=True)
        for bore in lock.bores
    ]
    return (
        *_plate_and_body(
            lock.mortise, "lock faceplate", "lock mortise", lock, planed, thickness, shift
        ),
        *bores,
    )


def strike_cuts(
    lock: Lock, *, planed: SideFace | None, thickness: float, shift: float
) -> tuple[Cut, ...]:
    """The strike let into the meeting edge of the leaf that stands opposite.

    Args:
        lock: the other leaf's lock.
        planed: the face whose edge a bevel sets back here; None for a square edge.
        thickness: of the stile, mm.
        shift: turns heights above the finished foot into heights on the blank, mm.
    """
    if lock.strike is None:
        return ()
    return _plate_and_body(
        lock.strike, "strike plate", "strike box", lock, planed, thickness, shift
    )


def _plate_and_body(
    one: LetIn,
    plate: str,
    body: str,
    lock: Lock,
    planed: SideFace | None,
    thickness: float,
    shift: float,
) -> tuple[Cut, ...]:
    if planed is not None and lock.bevel is not None:
        return _on_the_slope(one, plate, body, 2 * float(lock.bevel), planed, thickness, shift)
    router = Making(
        by="router",
        when="after glue-up",
        cutter=one.cutter,
        tool="straight or spiral cutter, fence and stops on the edge",
    )
    chopped = Making(
        by="bench", when="after glue-up", tool="marked from the plate and chopped square"
    )
    cuts: list[Cut] = [
        Shaped(
            name=plate,
            face="low edge",
            outline=_in_the_middle(
                one.plate_low + shift,
                one.plate_high + shift,
                one.plate_width,
                one.plate_corner,
                thickness,
            ),
            depth=one.plate_depth,
            making=router if float(one.plate_corner) else chopped,
        )
    ]
    if one.low is not None and one.high is not None and one.width and one.deep is not None:
        cuts.append(
            Shaped(
                name=body,
                face="low edge",
                outline=_in_the_middle(
                    one.low - one.run_past + shift,
                    one.high + one.run_past + shift,
                    one.width,
                    one.width / 2,
                    thickness,
                ),
                surface=one.plate_depth,
                depth=one.deep,
                making=router,
            )
        )
    return tuple(cuts)


def _in_the_middle(
    low: float, high: float, width: float, corner: float, thickness: float
) -> Outline:
    """A recess about the middle of an edge."""
    near, radius = (thickness - float(width)) / 2, float(corner)
    return rounded_rectangle(
        (float(low), near, float(high), thickness - near), (radius, radius, radius, radius)
    )


def _on_the_slope(
    one: LetIn,
    plate: str,
    body: str,
    off: float,
    planed: SideFace,
    thickness: float,
    shift: float,
) -> tuple[Cut, ...]:
    """The same in a bevelled edge: drawn on the stile's end, from height to height.

    Args:
        one: plate and body.
        plate: what the plate's cut is called.
        body: what the body's cut is called.
        off: what the bevel takes off the planed face's edge, mm.
        planed: that face.
        thickness: of the stile, mm.
        shift: turns heights above the finished foot into heights on the blank, mm.
    """
    making = Making(
        by="bench", when="after glue-up", tool="bored out and chopped square to the bevelled edge"
    )

    def edge(z: float) -> float:
        part = 1 - z / thickness if planed == "low face" else z / thickness
        return off * part

    def across(width: Figure, near: float, far: float | None) -> Outline:
        """Between two depths under the slope; a floor that is level, where `far` is given."""
        low, high = (thickness - float(width)) / 2, (thickness + float(width)) / 2
        begin = near if far is None else far
        ends = (
            (edge(low) + float(one.plate_depth), edge(high) + float(one.plate_depth))
            if far is None
            else (begin, begin)
        )
        return (
            Vertex(edge(low) + near, low),
            Vertex(ends[0], low),
            Vertex(ends[1], high),
            Vertex(edge(high) + near, high),
        )

    cuts: list[Cut] = [
        Shaped(
            name=plate,
            face="low end",
            outline=across(one.plate_width, 0.0, None),
            surface=one.plate_low + shift,
            depth=one.plate_high + shift,
            making=making,
        )
    ]
    if one.low is not None and one.high is not None and one.width and one.deep is not None:
        floor = float(one.deep) + off / 2
        cuts.append(
            Shaped(
                name=body,
                face="low end",
                outline=across(one.width, float(one.plate_depth), floor),
                surface=one.low + shift,
                depth=one.high + shift,
                making=making,
            )
        )
    return tuple(cuts)
