"""Running sizes from a zero, their numbers pushed apart where the places lie close.

Numbers keep the order of their places and stand as near to them as the pitch allows,
so the thin lines between the two never cross.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.dimensions import Axis, Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, extent
from parametric.drawing.plane import Point, spread
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.printing import MM, Rule
from parametric.drawing.sheet import View
from parametric.figures import Figure

PITCH = 1.45
"""Number to number, in heights of capitals."""
_STACKED_PITCH = 1.95
"""The same where fractions are stacked."""
_OFF = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One place along an axis and the figure that says how far it is from zero.

    `at` is the model coordinate along the axis, mm; `start` the paper coordinate across
    the axis where its line begins; `down` says that the figure counts against the axis,
    `reference` puts the number in brackets: another sheet owns it.
    """

    at: float
    figure: Figure
    start: float
    words: str = ""
    rule: Rule = MM
    down: bool = False
    reference: bool = False

    @property
    def text(self) -> str:
        """The number and its words."""
        value = self.rule.dimension(self.figure)
        value = f"({value})" if self.reference else value
        return f"{value}  {self.words}" if self.words else value


def place_ordinates(
    draft: Draft,
    view: View,
    axis: Axis,
    places: Sequence[Place],
    numbers: float,
    stand: Sequence[float] | None = None,
) -> None:
    """Ordinates along one axis, their numbers in one row or column.

    Args:
        draft: the sheet.
        view: the view measured in.
        axis: the direction measured along.
        places: in any order; the one whose figure is 0 is the zero.
        numbers: the paper coordinate across the axis where the numbers begin.
        stand: where the numbers stand along the axis, mm on paper, when they share their row
            with those of other views; worked out here when None.
    """
    ordered = sorted(places, key=lambda p: p.at)
    scaled = view.y if axis == "up" else view.x
    true = [scaled(p.at) for p in ordered]
    if stand is None:
        stand = spread(true, TEXT * pitch_of(ordered))
    for place, own, at in zip(ordered, true, stand, strict=True):
        away = 1.0 if numbers >= place.start else -1.0
        jog = numbers - away * 2.4
        knee = numbers - away * 0.8
        line = [(place.start + away * _OFF, own), (jog, own), (knee, at)]
        middle = extent("0", TEXT).above / 2
        base = at - middle if axis == "up" else at + middle
        points = tuple(_turn(axis, p) for p in line)
        anchor: Anchor = "left" if away > 0 else "right"
        label = Label(
            text=place.text,
            at=_turn(axis, (numbers, base)),
            anchor=anchor,
            turned=0 if axis == "up" else 90,
            layer="dims",
            view=view.name,
            stacked=place.rule.stacked,
        )
        _add(draft, view, axis, place, (points,), label, ring=None)


def place_stick(
    draft: Draft,
    left: View,
    axis_places: Sequence[Place],
    *,
    from_x: float,
    to_x: float,
    zero_words: str,
) -> None:
    """The column of heights between two twins, a thin line to each: the story stick.

    Args:
        draft: the sheet.
        left: the view whose heights are printed; the twin stands on the same datum.
        axis_places: the heights, any order.
        from_x: right edge of the left twin, mm on paper.
        to_x: left edge of the right twin.
        zero_words: printed beside the 0.
    """
    ordered = sorted(axis_places, key=lambda p: p.at)
    true = [left.y(p.at) for p in ordered]
    stand = spread(true, TEXT * pitch_of(ordered))
    middle = (from_x + to_x) / 2
    half = extent("0", TEXT).above / 2
    for place, own, at in zip(ordered, true, stand, strict=True):
        zero = abs(float(place.figure)) < 1e-9
        text = f"{place.text}  {zero_words}" if zero else place.text
        label = Label(
            text=text,
            at=(middle, at - half),
            anchor="centre",
            weight="bold" if zero else "regular",
            layer="dims",
            view=left.name,
            stacked=place.rule.stacked,
        )
        reach = label.ink.width / 2 + 1.4
        ring = (from_x + 1.2, own) if zero else None
        start = from_x + (2.1 if zero else 1.2)
        near = ((start, own), (middle - reach - 1.6, own), (middle - reach, at))
        far = ((middle + reach, at), (middle + reach + 1.6, own), (to_x - 1.2, own))
        if abs(own - at) < 1e-9:
            near, far = (near[0], near[2]), (far[0], far[2])  # type: ignore[assignment]
        _add(draft, left, "up", place, (near, far), label, ring=ring)


def pitch_of(places: Sequence[Place]) -> float:
    """Number to number of a row of places, in heights of capitals."""
    stacked = any(place.rule.stacked and "/" in place.text for place in places)
    return _STACKED_PITCH if stacked else PITCH


def _turn(axis: Axis, point: Point) -> Point:
    return point if axis == "up" else (point[1], point[0])


def _add(
    draft: Draft,
    view: View,
    axis: Axis,
    place: Place,
    lines: tuple[tuple[Point, ...], ...],
    label: Label,
    ring: Point | None,
) -> None:
    if not draft.free(label.box, 0.1):
        draft.unplaced.append(label.text)
    zero_at = place.at + float(place.figure) * (1 if place.down else -1)
    draft.add(
        Ordinate(
            figure=place.figure.name or "",
            value=float(place.figure),
            text=label.text,
            rule=place.rule,
            axis=axis,
            zero=(0.0, zero_at) if axis == "up" else (zero_at, 0.0),
            point=(0.0, place.at) if axis == "up" else (place.at, 0.0),
            lines=lines,
            label=label,
            ring=ring,
            view=view.name,
        )
    )
