"""What every kind of hinge has: how many, where up the leaf, what each carries, where its pin is.

leaf seen from its face                     seen from above
 ___________                               jamb |gap|____leaf____
|           |-- from the top                     (o) pin: proud of the knuckle face,
|           |=] top hinge                            beyond the leaf's edge in the gap
|           |=] middle hinge
|           |=] bottom hinge
|___________|-- from the bottom
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal

from pydantic import AfterValidator, PlainValidator, WithJsonSchema

from parametric.figures import Figure, exceeds, largest, named, whole_up
from parametric.names import join
from parametric.units import NotALength, no_job_is_longer, read_length
from parametric.written import Block, Count, Mass, Text, Words, refuse

HingeKind = Literal["butt", "cup", "pivot"]
Decided = Literal["written", "height", "weight", "height and weight"]
"""What a number of hinges comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A leaf up to this height, mm, takes this many hinges."""

    height: Figure
    count: Figure


_STEPS = "{height up to: hinges}, the lowest first: {900: 2, 1600: 3}"


def _step(height: str, count: object) -> Step:
    written = count if isinstance(count, Text) else Text(str(count))
    try:
        high = read_length(height, written.unit)
        no_job_is_longer(height, written.unit, high)
    except NotALength as error:
        raise refuse(
            error.code, str(error), found=height, allowed=_STEPS, where=written.where
        ) from None
    if not written.isascii() or not written.isdigit() or not 2 <= int(written) <= MOST_HINGES:
        raise refuse(
            "not_a_count",
            f'"{{key}}" takes 2 to {MOST_HINGES} hinges for each height, not "{written}".',
            found=f"{height}: {written}",
            allowed=_STEPS,
            where=written.where,
        )

    def figure(value: Fraction, unit: str) -> Figure:
        return Figure(
            float(value),
            origin=written.origin,
            unit=unit,
            where=written.where,
            source=written.source,
        )

    return Step(height=figure(high, "mm"), count=figure(Fraction(int(written)), ""))


MOST_HINGES = 12
"""More on one leaf is a slip of the pen. Common practice, no source."""


def _steps(value: object) -> tuple[Step, ...]:
    """Braces as a maker writes them, or the tool's own lines `900: 2`."""
    if isinstance(value, Mapping):
        pairs = [(str(height), count) for height, count in value.items()]
    elif isinstance(value, (list, tuple)) and all(isinstance(v, Text) and ":" in v for v in value):
        pairs = [(v.partition(":")[0].strip(), _rest_of(v)) for v in value]
    else:
        raise refuse("wrong_value", f'"{{key}}" takes {_STEPS}.', allowed=_STEPS)
    if not pairs:
        raise refuse("wrong_value", 'There is nothing in "{key}".', allowed=_STEPS)
    steps = tuple(_step(height, count) for height, count in pairs)
    for (before, _), (word, _), low, high in zip(pairs, pairs[1:], steps, steps[1:], strict=False):
        if not exceeds(high.height, low.height):
            raise refuse(
                "steps_out_of_order",
                f'"{{key}}" goes up from line to line: {word} stands after {before}.',
                found=f"{before}, {word}",
                allowed=_STEPS,
                fix="Write the lowest height first.",
                where=high.height.where,
            )
        if low.count > high.count:
            raise refuse(
                "steps_out_of_order",
                f"A leaf of {word} would take fewer hinges than one of {before}.",
                found=f"{before}: {int(low.count)}, {word}: {int(high.count)}",
                allowed=_STEPS,
                fix="A taller leaf takes as many, or more.",
                where=high.height.where,
            )
    return steps


def _rest_of(text: Text) -> Text:
    return Text(
        text.partition(":")[2].strip(),
        where=text.where,
        origin=text.origin,
        unit=text.unit,
        source=text.source,
    )


def _two_or_more(count: Figure) -> Figure:
    if not 2 <= count <= MOST_HINGES:
        raise refuse(
            "not_a_count",
            f"A leaf hangs on 2 to {MOST_HINGES} hinges, not {int(count)}.",
            found=f"{int(count)}",
            allowed=f"2 to {MOST_HINGES}",
        )
    return count


Steps = Annotated[
    tuple[Step, ...],
    PlainValidator(_steps),
    WithJsonSchema(
        {
            "type": "object",
            "minProperties": 1,
            "additionalProperties": {"type": ["integer", "string"], "pattern": "^[0-9]+$"},
            "description": _STEPS,
        }
    ),
]
"""How many hinges by the height of the leaf."""
HingesWritten = Annotated[Count, AfterValidator(_two_or_more)]
"""How many hinges, when it is said."""


class HingeBlock(Block):
    """What is written of every kind of hinge."""

    carries: Mass | None = None
    set_carries: Mass | None = None
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


class CountedHinges(HingeBlock):
    """Hinges of which a leaf may have more than two."""

    count: HingesWritten | None = None
    steps: Steps


@dataclass(frozen=True, slots=True, kw_only=True)
class HungEdge:
    """The edge of a leaf that hinges are sized for, mm and kg.

    Args:
        leaf: `leaf A`, or `leaf A / left edge` where both edges carry hinges.
        height: of the leaf; of a flap how long the edge is that it hangs by.
        width: of the leaf.
        thickness: of the leaf.
        gap: between the leaf and what it hangs on.
        foot: the leaf's foot above the highest floor.
        head_gap: above the leaf; None without one.
        weight: of the leaf.
        cutters: router cutters in the shop, diameters.
        density: of the leaf's timber, kg/m3.
        level: whether it is a flap's: hinges are then measured from its left end.
    """

    leaf: str
    height: Figure
    width: Figure
    thickness: Figure
    gap: Figure
    foot: Figure
    head_gap: Figure | None
    weight: Figure
    cutters: tuple[Figure, ...]
    density: Figure
    level: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class HingePlace:
    """One hinge, mm above the leaf's finished foot; of a flap from its left end."""

    name: str
    centre: Figure
    low: Figure
    high: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Saving:
    """A leaf a little lower takes fewer hinges: `over` the step, mm, and how many are `saved`."""

    step: Figure
    over: Figure
    saved: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeCount:
    """How many hinges, and what decided it.

    `by_height` and `by_weight` are what each asks for, also where the count was written;
    `past` is the last step where the leaf is higher than all of them.
    """

    count: Figure
    by: Decided
    by_height: Figure | None
    by_weight: Figure | None
    past: Figure | None
    saving: Saving | None


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeLoad:
    """What hinges carry, kg: `share` each, `pull` sideways on the top one; `spread` mm apart.

    `rating` is what one of them is rated for, None where nobody wrote it.
    """

    weight: Figure
    share: Figure
    spread: Figure
    pull: Figure
    rating: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hinges:
    """The hinges of one edge of a leaf, from the top down; of a flap from the left.

    `pin_out` is how far the pin's middle stands proud of the knuckle face, `pin_beside` how far
    beyond the leaf's hinge edge, mm; both less than nothing where the pin stands in the leaf.
    """

    kind: HingeKind
    name: str
    places: tuple[HingePlace, ...]
    counted: HingeCount
    load: HingeLoad
    pin_out: Figure
    pin_beside: Figure

    @property
    def count(self) -> Figure:
        """How many."""
        return self.counted.count


def count_hinges(spec: CountedHinges, *, name: str, height: Figure, weight: Figure) -> HingeCount:
    """As many as are written, else the larger of what the leaf's height and its weight ask for.

    Args:
        spec: count, steps and rating as written.
        name: `leaf A / hinges`.
        height: of the leaf, mm.
        weight: of the leaf, kg.

    Source: one hinge never carries more than it is rated for (arithmetic); the steps are the
    house's or the tool's.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value, "")

    by_height = by_weight = past = None
    index = next((i for i, step in enumerate(spec.steps) if not exceeds(height, step.height)), None)
    if index is None:
        past = named(join(name, "last step"), spec.steps[-1].height)
    else:
        by_height = at("count by height", spec.steps[index].count)
    if spec.carries is not None:
        rating = named(join(name, "rating"), spec.carries, "kg")
        by_weight = at("count by weight", whole_up(weight / rating))
    if spec.count is not None:
        return HingeCount(
            count=at("count", spec.count),
            by="written",
            by_height=by_height,
            by_weight=by_weight,
            past=past,
            saving=None,
        )
    # above the last step it is not known how many; the rule that says so stops the design
    tall = at("count of the last step", spec.steps[-1].count) if by_height is None else by_height
    count = at("count", tall if by_weight is None else largest(tall, by_weight))
    return HingeCount(
        count=count,
        by=_decided(tall, by_weight),
        by_height=by_height,
        by_weight=by_weight,
        past=past,
        saving=None
        if not index
        else _saving(spec.steps[index - 1], name, height, count, by_weight),
    )


def _decided(by_height: Figure, by_weight: Figure | None) -> Decided:
    if by_weight is None or by_height > by_weight:
        return "height"
    return "weight" if by_weight > by_height else "height and weight"


def _saving(
    below: Step, name: str, height: Figure, count: Figure, by_weight: Figure | None
) -> Saving | None:
    """What a leaf no higher than the step below would save; None where weight keeps the count."""
    fewer = below.count if by_weight is None else largest(below.count, by_weight)
    if not exceeds(count, fewer):
        return None
    return Saving(
        step=named(join(name, "step below"), below.height),
        over=named(join(name, "over the step below"), height - below.height),
        saved=named(join(name, "saved by the step below"), count - fewer, ""),
    )


UPRIGHT_ENDS, LEVEL_ENDS = ("top", "bottom"), ("left", "right")
"""What the first and the last hinge of an edge are called."""


def place_hinges(
    leaf: str,
    *,
    count: int,
    top: Figure,
    bottom: Figure,
    half: Figure,
    ends: tuple[str, str] = UPRIGHT_ENDS,
) -> tuple[HingePlace, ...]:
    """Hinges from the top down, the rest shared evenly between the two that are given.

    Args:
        leaf: `leaf A`.
        count: how many.
        top: centre of the top hinge above the finished foot, mm.
        bottom: centre of the bottom hinge, mm.
        half: half a hinge's length, mm.
        ends: what the first and the last are called.

    Source: common practice, no source.
    """
    places = []
    for number in range(count):
        word = _word(number, count, ends)
        if number in (0, count - 1):
            centre = top if number == 0 else bottom
        elif count == 3:
            centre = (top + bottom) / 2
        else:
            centre = top - (top - bottom) / (count - 1) * number
        name = join(leaf, word)
        middle = named(join(name, "centre"), centre)
        places.append(
            HingePlace(
                name=name,
                centre=middle,
                low=named(join(name, "low end"), middle - half),
                high=named(join(name, "high end"), middle + half),
            )
        )
    return tuple(places)


def _word(number: int, count: int, ends: tuple[str, str]) -> str:
    if number == 0:
        return f"{ends[0]} hinge"
    if number == count - 1:
        return f"{ends[1]} hinge"
    return "middle hinge" if count == 3 else f"hinge {number + 1}"


def load_of(
    spec: HingeBlock,
    *,
    name: str,
    weight: Figure,
    arm: Figure,
    spread: Figure,
    carriers: Figure,
    ends: tuple[str, str] = UPRIGHT_ENDS,
) -> HingeLoad:
    """What hinges carry of a leaf, and how hard the top one is pulled away from the jamb.

    Args:
        spec: its rating, for one hinge or for the set.
        name: `leaf A / hinges`.
        weight: of the leaf, kg.
        arm: from the hinges' line to the middle of the leaf, mm.
        spread: between the top and the bottom hinge, mm.
        carriers: how many share the weight.
        ends: what the first and the last hinge are called.

    Source: moments about the bottom hinge: pull x spread = weight x arm (statics).
    """
    rating: Figure | None = None
    if spec.carries is not None:
        rating = named(join(name, "rating"), spec.carries, "kg")
    elif spec.set_carries is not None:
        rating = named(join(name, "rating"), spec.set_carries / carriers, "kg")
    apart = named(join(name, f"{ends[0]} to {ends[1]}"), spread)
    return HingeLoad(
        weight=weight,
        share=named(join(name, "load on each"), weight / carriers, "kg"),
        spread=apart,
        pull=named(join(name, "pull on the top hinge"), weight * arm / apart, "kg"),
        rating=rating,
    )
