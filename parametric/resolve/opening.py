"""The opening as measured: widest, narrowest, plumb clear width, floor, and whether it closes.

An opening is never averaged and never tidied. Every reading is trusted to within the
shop's own accuracy, and a survey contradicts itself only beyond that.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from parametric.catalog.shop import Shop
from parametric.design.survey import SurveySpec, Taken
from parametric.figures import Figure, largest, named, origin_line, smallest
from parametric.problems import Problem
from parametric.units import Unit, length_text
from parametric.written import NotMeasured

Fit = Literal["covers", "fits"]
PLACES_UP = ("bottom", "middle", "top")
PLACES_ACROSS = ("left", "middle", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A measured opening, mm.

    `widths` by height place, `heights` (head to floor) by place across; `lean` is how far
    the left side stands in from a plumb line at its foot; `floor` is the floor below its
    highest point (0 there, negative elsewhere), `high_floor` that point above the level line it was
    read from, None where it was read from none; `head` the head height at that point. Of an
    opening that begins above the floor, as a case's does, `foot` is how high where its foot is
    highest; `head` still counts from the floor, and the floor of the room is taken as level.
    """

    widths: Mapping[str, Figure]
    heights: Mapping[str, Figure]
    lean: Mapping[str, Figure]
    widest: Figure
    narrowest: Figure
    clear: Figure
    clear_left: Figure
    head: Figure
    floor: Mapping[str, Figure]
    floor_fall: Figure
    fixing: str
    board: Figure | None
    foot: Figure | None = None
    high_floor: Figure | None = None
    slopes: bool = False
    """Whether the ceiling is meant to slope, from the height at the left to that at the right."""

    @property
    def high(self) -> Figure:
        """From its foot to its head where the tape gave that, mm."""
        if self.foot is None:
            return self.head
        return named("height of the opening", self.head - self.foot)

    @property
    def ceiling(self) -> Mapping[str, Figure]:
        """The head above the highest floor at each place where it was measured, mm."""
        return {
            place: named(f"ceiling {place}", self.floor[place] + high)
            for place, high in self.heights.items()
            if place in self.floor
        }

    def outline(self) -> tuple[tuple[float, float], ...]:
        """Corner and mid points of the opening, x from the left foot, z from the highest floor.

        From the left foot up, across the head and down: as surveyed, for drawing and preview.
        """
        level = float(self.head)
        at = {"bottom": 0.0, "middle": 0.5, "top": 1.0}
        foot = 0.0 if self.foot is None else float(self.foot)
        left_floor = foot + float(self.floor.get("left", 0.0))
        right_floor = foot + float(self.floor.get("right", 0.0))
        rows = [p for p in PLACES_UP if p in self.widths]
        left = [(float(self.lean.get(p, 0.0)), at[p]) for p in rows]
        right = [(x + float(self.widths[p]), f) for p, (x, f) in zip(rows, left, strict=True)]
        if rows[0] != "bottom":
            left.insert(0, (left[0][0], 0.0))
            right.insert(0, (right[0][0], 0.0))
        if rows[-1] != "top":
            left.append((left[-1][0], 1.0))
            right.append((right[-1][0], 1.0))
        up = [(x, left_floor + f * (level - left_floor)) for x, f in left]
        down = [(x, right_floor + f * (level - right_floor)) for x, f in reversed(right)]
        return (*up, *down)

    def floor_line(self) -> tuple[tuple[float, float], ...]:
        """The floor across the opening: (x, z) at each place that was measured."""
        width = float(self.widest)
        x = {"left": 0.0, "middle": width / 2, "right": width}
        return tuple((x[p], float(self.floor[p])) for p in PLACES_ACROSS if p in self.floor)


def _taken(readings: tuple[Taken, ...] | str | None, name: str) -> dict[str, Figure]:
    """The readings that were taken, named by place."""
    if readings is None or isinstance(readings, str):
        return {}
    return {
        taken.place: named(f"{name} {taken.place}", taken.reading)
        for taken in readings
        if isinstance(taken.reading, Figure)
    }


def resolve_opening(
    survey: SurveySpec, shop: Shop, *, fit: Fit, unit: Unit
) -> tuple[Opening | None, tuple[Problem, ...]]:
    """Read the survey into an Opening.

    A door that covers is sized from the largest reading, one that fits inside from the
    plumb clear width. Problems: missing readings, a reading far from its neighbours,
    sides or diagonals that contradict the widths beyond the trust in a reading.
    """
    problems: list[Problem] = []
    widths = _taken(survey.widths, "width")
    heights = _taken(survey.heights, "height") or _between_lines(survey) or _under_a_slope(survey)
    if not widths:
        problems.append(_missing(survey, "widths", "a width", "widths: {middle: 1826}"))
    if not heights:
        problems.append(_missing(survey, "heights", "a height", "heights: {middle: 2069}"))
    problems += _nothing(widths) + _nothing(heights)
    if not problems:
        problems += _outliers(widths, "width", unit)
        problems += [] if survey.rake else _outliers(heights, "height", unit)
    if problems:
        return None, tuple(problems)

    if survey.rake is not None and set(heights) < {"left", "right"}:
        return None, (_half_a_slope(survey),)

    lean = {place: Figure(0.0) for place in widths}
    lean |= _taken(survey.left_side, "left side")
    problems += _sides(survey, widths, lean, shop, unit)
    problems += _diagonals(survey, widths, heights, shop, unit)
    problems += _assumed_plumb(survey, fit)

    shared = [place for place in widths if place in lean]
    right = [lean[p] + widths[p] for p in shared]
    clear_left = named("left of the plumb clear width", largest(*(lean[p] for p in shared)))
    clear = named("plumb clear width", smallest(*right) - clear_left)
    floor, head = _floor(survey, heights, fit)
    foot = None
    if isinstance(survey.foot_above_floor, Figure):
        foot = named("foot of the opening", survey.foot_above_floor)
        pick = largest if fit == "covers" else smallest
        high = named("height of the opening", pick(*heights.values()))
        head = named("head above the floor", foot + high)
        floor = {place: named(f"floor {place}", 0.0) for place in floor}
    board = survey.board_over_fixing
    return (
        Opening(
            widths=widths,
            heights=heights,
            lean=lean,
            widest=named("largest width", largest(*widths.values())),
            narrowest=named("smallest width", smallest(*widths.values())),
            clear=clear,
            clear_left=clear_left,
            head=head,
            foot=foot,
            floor=floor,
            floor_fall=named("fall of the floor", -smallest(*floor.values())),
            high_floor=_high_floor(survey),
            fixing=survey.fixing or "not known",
            board=board if isinstance(board, Figure) else None,
            slopes=survey.rake is not None,
        ),
        tuple(problems),
    )


def _between_lines(survey: SurveySpec) -> dict[str, Figure]:
    """Heights where floor and ceiling were both read from one level line."""
    floor = _taken(survey.floor, "floor from the line")
    ceiling = _taken(survey.ceiling, "ceiling from the line")
    return {
        place: named(f"height {place}", up - floor[place])
        for place, up in ceiling.items()
        if place in floor
    }


def _half_a_slope(survey: SurveySpec) -> Problem:
    """A slope is known by both its ends."""
    return Problem(
        code="not_measured",
        level="stop",
        message="A ceiling that slopes is known by its height at both ends, and one is missing.",
        where=survey.line("rake"),
        about=survey.heading,
        found="one end",
        allowed="left and right",
        fix="Measure from the floor up to it at both ends.",
    )


def _under_a_slope(survey: SurveySpec) -> dict[str, Figure]:
    """Heights at either end of a ceiling that slopes."""
    if survey.rake is None:
        return {}
    ends = (("left", survey.rake.left), ("right", survey.rake.right))
    return {
        place: named(f"height {place}", reading)
        for place, reading in ends
        if isinstance(reading, Figure)
    }


def _floor(
    survey: SurveySpec, heights: dict[str, Figure], fit: Fit
) -> tuple[dict[str, Figure], Figure]:
    """The floor below its highest point, and the head height there.

    With a floor read from a datum line, that; with a floor known level, none; else the
    head is level and the floor is where the tape met it.
    """
    pick = largest if fit == "covers" else smallest
    floor_read = _taken(survey.floor, "floor")
    head_read = _taken(survey.head, "head")
    # under a slope the heights say nothing about the floor; unread, it counts as level
    if survey.floor == "level" or (survey.rake is not None and not floor_read):
        flat = {p: named(f"floor {p}", 0.0) for p in heights}
        return flat, named("head height at the highest floor", pick(*heights.values()))
    if not floor_read and head_read:
        floor_read = {p: head_read[p] - heights[p] for p in heights if p in head_read}
    if floor_read:
        top = largest(*floor_read.values())
        floor = {p: named(f"floor {p} below the highest", v - top) for p, v in floor_read.items()}
        at_top = [heights[p] for p, v in floor.items() if p in heights and float(v) == 0.0]
        return floor, named(
            "head height at the highest floor", pick(*(at_top or list(heights.values())))
        )
    least = smallest(*heights.values())
    floor = {p: named(f"floor {p} below the highest", least - h) for p, h in heights.items()}
    return floor, named("head height at the highest floor", least)


def _high_floor(survey: SurveySpec) -> Figure | None:
    """The highest floor above the line that it was read from."""
    read = _taken(survey.floor, "floor from the line")
    return largest(*read.values()) if read else None


def _missing(survey: SurveySpec, key: str, what: str, example: str) -> Problem:
    return Problem(
        code="not_measured",
        level="stop",
        message=f"The survey needs at least {what}: nothing can be sized without it.",
        where=survey.line(key),
        about=survey.heading,
        found="none",
        allowed="one or more; three are better",
        fix=f"Write `{example}`.",
    )


def _assumed_plumb(survey: SurveySpec, fit: Fit) -> list[Problem]:
    if fit == "covers" or survey.left_side not in (None, "not measured"):
        return []
    return [
        Problem(
            code="sides_not_measured",
            level="caution",
            message="The sides were not checked for plumb; the leaf that fits inside is sized as "
            "if they were.",
            where=survey.line("left side"),
            about="plumb clear width",
            found="not measured",
            allowed="a plumb line at the foot of the left side",
            fix="Write `left side: {bottom: 0, middle: ..., top: ...}`, or `left side: plumb`.",
        )
    ]


def _nothing(readings: dict[str, Figure]) -> list[Problem]:
    """A reading of 0 is no opening."""
    return [
        Problem(
            code="no_size",
            level="stop",
            message=f"The reading of {value.name} is 0: there is no opening there.",
            where=origin_line(value),
            about=value.name or "",
            found="0",
            allowed="more than 0",
            fix="Write what the tape said, or `not measured`.",
            no_size=True,
        )
        for value in readings.values()
        if float(value) <= 0
    ]


def _outliers(readings: dict[str, Figure], what: str, unit: Unit) -> list[Problem]:
    """A reading a tenth or more away from the middle one was misread or mistyped."""
    if len(readings) < 2:
        return []
    ordered = sorted(readings.values(), key=float)
    middle = float(ordered[len(ordered) // 2])
    found = []
    for place, value in readings.items():
        if abs(value - middle) <= 0.1 * middle:
            continue
        other, reference = next((p, v) for p, v in readings.items() if p != place)
        apart = float(value - reference)
        guess = _slip(float(value), middle)
        asks = f"; was it {_show(guess, unit)}?" if guess is not None else "."
        found.append(
            Problem(
                code="reading_far_off",
                level="stop",
                message=f"The {place} {what} {_show(value, unit)} is {_show(abs(apart), unit)} "
                f"{'less' if apart < 0 else 'more'} than the {other}{asks} Measure again.",
                where=origin_line(value),
                about=value.name or "",
                found=_show(value, unit),
                allowed=f"within a tenth of {_show(middle, unit)}",
                fix="Measure it again and write what the tape says.",
            )
        )
    return found


def _slip(value: float, middle: float) -> float | None:
    """A slipped or missing last digit: ten times, or a tenth, that lands near the others."""
    for guess in (value * 10, value / 10):
        if abs(guess - middle) <= 0.1 * middle:
            return guess
    return None


def _sides(
    survey: SurveySpec, widths: dict[str, Figure], lean: dict[str, Figure], shop: Shop, unit: Unit
) -> list[Problem]:
    """Both sides read: the widths must then follow from them, within the trust in four readings."""
    unknown = (None, "not measured")
    if survey.left_side in unknown or survey.right_side in unknown or "bottom" not in widths:
        return []
    right = _taken(survey.right_side, "right side")
    plumb = survey.right_side == "plumb"
    allowed = 4 * float(shop.accuracy.reading)
    found = []
    for place, width in widths.items():
        if place == "bottom" or not (plumb or place in right):
            continue
        expected = widths["bottom"] - lean.get(place, 0.0) - right.get(place, 0.0)
        apart = float(width - expected)
        if abs(apart) > allowed + 1e-9:
            found.append(
                Problem(
                    code="survey_contradicts_itself",
                    level="stop",
                    message=f"The {place} width {_show(width, unit)} cannot be: the bottom width "
                    f"and the two sides make it {_show(expected, unit)}, {_show(abs(apart), unit)} "
                    "away.",
                    where=origin_line(width),
                    about=width.name or "",
                    found=_show(width, unit),
                    allowed=f"{_show(expected, unit)} within {_show(allowed, unit)}",
                    fix="Measure that width and both sides again.",
                )
            )
    return found


def _diagonals(
    survey: SurveySpec,
    widths: dict[str, Figure],
    heights: dict[str, Figure],
    shop: Shop,
    unit: Unit,
) -> list[Problem]:
    """Do the two diagonals fit what was written about the sides?

    Two diagonals D1, D2 of an opening W wide and H high differ when the sides lean. Both
    leaning e the same way: D1 - D2 = 2 W e / D; one side alone: its lean is the difference
    of the bases sqrt(D1^2 - H^2) and sqrt(D2^2 - H^2). Source: Pythagoras.
    """
    if survey.diagonals is None:
        return []
    rising_right, rising_left = survey.diagonals.rising_right, survey.diagonals.rising_left
    if isinstance(rising_right, NotMeasured) or isinstance(rising_left, NotMeasured):
        return []
    rising_right = named("diagonal rising right", rising_right)
    rising_left = named("diagonal rising left", rising_left)
    width = float(widths.get("middle", next(iter(widths.values()))))
    height = float(heights.get("middle", next(iter(heights.values()))))
    true = math.hypot(width, height)
    long, short = max(rising_right, rising_left), min(rising_right, rising_left)
    apart = float(long - short)
    trust = float(shop.accuracy.reading)
    slack = 2 * trust + 4 * trust * width / true + 2 * trust * height / true
    lean_known = survey.left_side == "plumb" and survey.right_side == "plumb"
    if not lean_known or apart <= slack:
        return []
    both = apart * true / (2 * width)
    one = _base(float(long), height) - _base(float(short), height)
    suspect = max((long, short), key=lambda d: abs(float(d) - true))
    return [
        Problem(
            code="survey_contradicts_itself",
            level="stop",
            message=f"The diagonals disagree by {_show(apart, unit)}. That needs both sides "
            f"leaning {_tenth(both, unit)} the same way, or one side {_tenth(one, unit)}, but you "
            f"wrote plumb. Measure the {_show(suspect, unit)} again.",
            where=origin_line(suspect),
            about=suspect.name or "",
            found=f"{_show(long, unit)} and {_show(short, unit)}",
            allowed=f"a difference of {_tenth(slack, unit)}; the true diagonal is "
            f"{_tenth(true, unit)}",
            fix="Measure both diagonals again, corner to corner.",
        )
    ]


def _base(diagonal: float, height: float) -> float:
    return math.sqrt(max(diagonal**2 - height**2, 0.0))


def _show(value: float, unit: Unit) -> str:
    return length_text(float(value), unit)


def _tenth(value: float, unit: Unit) -> str:
    return length_text(float(value), unit, 0.1 if unit == "mm" else None)
