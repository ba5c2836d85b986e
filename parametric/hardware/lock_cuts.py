"""What a lock or latch and its strike cut: plate and body in the edge, bores from both faces.

The floor of what is let into a bevelled edge is level here, as deep as the plate at its
middle: pared to the slope at the bench it takes as much on one side as it leaves on the other.
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import Figure
from parametric.hardware.bore import circle
from parametric.hardware.lock import LetIn, Lock
from parametric.model import Cut, Making, Shaped
from parametric.outlines import Outline, rounded_rectangle

SideFace = Literal["low face", "high face"]
"""A face of the stile's own frame."""


def lock_cuts(lock: Lock, *, front: SideFace, thickness: float, shift: float) -> tuple[Cut, ...]:
    """Faceplate, mortise and bores in a closing stile, once the leaf is glued, trimmed and planed.

    Args:
        lock: the lock.
        front: the face of the stile's own frame that is the leaf's front.
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
            lock.mortise, "lock faceplate", "lock mortise", shift, lock.bevel, thickness
        ),
        *bores,
    )


def strike_cuts(lock: Lock, *, thickness: float, shift: float) -> tuple[Cut, ...]:
    """The strike let into the meeting edge of the leaf that stands opposite.

    Both edges are planed alike, so what the bevel takes there is what it takes here.

    Args:
        lock: the other leaf's lock.
        thickness: of the stile, mm.
        shift: turns heights above the finished foot into heights on the blank, mm.
    """
    if lock.strike is None:
        return ()
    return _plate_and_body(lock.strike, "strike plate", "strike box", shift, lock.bevel, thickness)


def _plate_and_body(
    one: LetIn, plate: str, body: str, shift: float, off: Figure | None, thickness: float
) -> tuple[Cut, ...]:
    """Both straight in from the edge; a bevelled one begins, on the average, where its middle is."""
    begins = Figure(0.0) if off is None else off
    slope = "" if off is None else ", plate and floor pared to the bevel"
    router = Making(
        by="router",
        when="after glue-up",
        cutter=one.cutter,
        tool=f"straight or spiral cutter, fence and stops on the edge{slope}",
    )
    chopped = Making(
        by="bench", when="after glue-up", tool=f"marked from the plate and chopped square{slope}"
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
            surface=begins,
            depth=begins + one.plate_depth,
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
                surface=begins + one.plate_depth,
                depth=begins + one.deep,
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
