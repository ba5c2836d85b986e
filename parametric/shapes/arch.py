"""An arch as written, and the curve that it asks for, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, assert_never

from parametric.figures import Figure, exceeds, named
from parametric.names import join
from parametric.shapes.curve import HeadCurve
from parametric.shapes.elliptical import LONGEST_TO_SHORTEST, elliptical
from parametric.shapes.half_round import half_round
from parametric.shapes.pointed import pointed
from parametric.shapes.raked import raked
from parametric.shapes.segmental import segmental
from parametric.units import Unit, length_text
from parametric.written import Block, Length

Shape = Literal["segmental", "half round", "pointed", "elliptical", "raked"]


class ArchSpec(Block):
    """An arch as written. rise: at its highest; of a half round one it is found."""

    shape: Shape
    across: Literal["leaf", "pair"]
    rise: Length | None = None
    rises_to: Literal["left", "right"] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotArch:
    """Why there is no such arch, in words for the maker; `key` is the one to look at."""

    message: str
    found: str
    allowed: str
    fix: str
    key: str = "rise"


def head_curve(
    spec: ArchSpec, span: Figure, place: str, unit: Unit = "mm"
) -> HeadCurve | CannotArch:
    """The curve of an arch over a span.

    Args:
        spec: the arch as written.
        span: between its springing points, mm.
        place: what its figures are called by: `arch`, `leaf A / arch`.
        unit: what lengths are told in where there is no such arch.

    Returns:
        The curve, or why it cannot be.
    """
    if float(span) <= 0:
        return CannotArch(
            message="The stiles leave no width for an arch between them.",
            found=_said(span, unit),
            allowed="more than 0",
            fix="Look at the stiles and the width of the leaf.",
            key="across",
        )
    if refused := _refused_side(spec):
        return refused
    half = span / 2
    if spec.shape == "half round":
        if spec.rise is None or not _differ(spec.rise, half):
            return half_round(span, place)
        return CannotArch(
            message=(
                f"A half round arch over {_said(span, unit)} rises half of that, "
                f"{_said(half, unit)}, and {_said(spec.rise, unit)} is written."
            ),
            found=_said(spec.rise, unit),
            allowed=_said(half, unit),
            fix="Leave `rise` out: it is found from the width.",
        )
    if spec.rise is None:
        return CannotArch(
            message=f"{_spoken(spec.shape)} needs its rise.",
            found="no rise",
            allowed="a length",
            fix="Write `rise: ...`, from the springing line to its highest.",
        )
    rise = named(join(place, "rise"), spec.rise)
    if float(rise) <= 0:
        return CannotArch(
            message=f"{_spoken(spec.shape)} that rises {_said(rise, unit)} is none.",
            found=_said(rise, unit),
            allowed="more than 0",
            fix="Write its rise, or leave the rail straight underneath.",
        )
    match spec.shape:
        case "segmental":
            return _segmental(span, rise, place, unit)
        case "pointed":
            return _pointed(span, rise, place, unit)
        case "elliptical":
            return _elliptical(span, rise, place, unit)
        case "raked":
            level = Figure(0.0)
            left, right = (rise, level) if spec.rises_to == "left" else (level, rise)
            return raked(span, left, right, place)
        case _:
            assert_never(spec.shape)


def _refused_side(spec: ArchSpec) -> CannotArch | None:
    """A raked head says which way it rises; no other does."""
    if spec.shape == "raked" and spec.rises_to is None:
        return CannotArch(
            message="A raked head needs the side it rises to.",
            found="no side",
            allowed="left or right",
            fix="Write `rises to: left` or `rises to: right`, as seen from the front.",
            key="shape",
        )
    if spec.shape != "raked" and spec.rises_to is not None:
        return CannotArch(
            message=f"{_spoken(spec.shape)} rises to its middle, not to the {spec.rises_to}.",
            found=f"rises to: {spec.rises_to}",
            allowed="`rises to` for a raked head only",
            fix="Leave `rises to` out, or write `shape: raked`.",
            key="rises to",
        )
    return None


def _segmental(span: Figure, rise: Figure, place: str, unit: Unit) -> HeadCurve | CannotArch:
    if not exceeds(rise, span / 2):
        return segmental(span, rise, place)
    return CannotArch(
        message=(
            f"A segmental arch over {_said(span, unit)} rises {_said(span / 2, unit)} at most, "
            f"when it is half a circle, and {_said(rise, unit)} is written."
        ),
        found=_said(rise, unit),
        allowed=f"up to {_said(span / 2, unit)}",
        fix="Write a smaller rise, or `shape: pointed` or `shape: elliptical`.",
    )


def _pointed(span: Figure, rise: Figure, place: str, unit: Unit) -> HeadCurve | CannotArch:
    if exceeds(rise, span / 2):
        return pointed(span, rise, place)
    return CannotArch(
        message=(
            f"A pointed arch over {_said(span, unit)} rises more than half of that, "
            f"{_said(span / 2, unit)}, and {_said(rise, unit)} is written."
        ),
        found=_said(rise, unit),
        allowed=f"more than {_said(span / 2, unit)}",
        fix="Write a larger rise, or `shape: segmental`.",
    )


def _elliptical(span: Figure, rise: Figure, place: str, unit: Unit) -> HeadCurve | CannotArch:
    least, most = span / 2 / LONGEST_TO_SHORTEST, span / 2 * LONGEST_TO_SHORTEST
    if not exceeds(least, rise) and not exceeds(rise, most):
        return elliptical(span, rise, place)
    flat = exceeds(least, rise)
    return CannotArch(
        message=(
            f"An ellipse that rises {_said(rise, unit)} over {_said(span, unit)} is too "
            + ("flat: its ends would be corners." if flat else "steep: its crown would be a point.")
        ),
        found=_said(rise, unit),
        allowed=f"{_said(least, unit)} to {_said(most, unit)}",
        fix="Write a larger rise, or `shape: segmental`."
        if flat
        else "Write a smaller rise, or `shape: pointed`.",
    )


def _differ(a: float, b: float) -> bool:
    return exceeds(a, b) or exceeds(b, a)


def _spoken(shape: Shape) -> str:
    match shape:
        case "raked":
            return "A raked head"
        case "elliptical":
            return "An elliptical arch"
        case "segmental" | "half round" | "pointed":
            return f"A {shape} arch"
        case _:
            assert_never(shape)


def _said(value: float, unit: Unit) -> str:
    """Fine enough that two lengths which differ are seen to."""
    return length_text(float(value), unit, 0.01 if unit == "mm" else Fraction(1, 64))
