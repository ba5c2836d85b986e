"""What a door's sizes come to before a leaf is made: a leaf of nothing, edges that miss one another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from parametric.figures import Figure, exceeds, inputs, leaves
from parametric.hangings.hanging import DoorBlock, Hanging, HungLeaf, Stock
from parametric.problems import Problem
from parametric.units import Unit, length_text

MEASURED = frozenset({"measured", "assumed", "catalogue"})
"""Numbers that nobody chose for this job: a sum gone wrong is laid to another if there is one."""


def impossible_sizes(
    hanging: Hanging, stock: tuple[Stock, ...], door: DoorBlock, unit: Unit
) -> tuple[Problem, ...]:
    """Stops for leaves of no size, stiles that use a leaf up and edges that should lap and do not.

    Args:
        hanging: the door as it was sized.
        stock: what each of its leaves is made of.
        door: the door as written.
        unit: the design's unit, for messages.
    """
    found = tuple(_no_size(hanging.leaves, unit))
    if found:
        return _once(found)
    return _once((*_no_rails(hanging.leaves, stock, unit), *_do_not_lap(hanging, door, unit)))


def chosen_cause(figure: Figure) -> Figure | None:
    """The number behind a sum that is likeliest wrong: the largest that somebody chose."""
    written = [one for one in leaves(figure) if one.where is not None and one.name]
    return max(
        [one for one in written if one.origin not in MEASURED] or written, key=float, default=None
    )


def _once(found: Iterable[Problem]) -> tuple[Problem, ...]:
    """Leaves alike are answered for once."""
    return tuple({(one.code, one.about): one for one in reversed(tuple(found))}.values())[::-1]


def _no_size(hung: tuple[HungLeaf, ...], unit: Unit) -> Iterator[Problem]:
    for leaf in hung:
        for figure in (leaf.width, leaf.height):
            if float(figure) > 0:
                continue
            said, cause = length_text(float(figure), unit), chosen_cause(figure)
            yield Problem(
                code="no_size",
                level="stop",
                message=f"The {figure.name} comes to {said}. It follows from: "
                f"{_listed(_behind(figure), unit)}.",
                where=None if cause is None else cause.where,
                about=figure.name or "",
                found=said,
                allowed="more than 0",
                fix="Look at those sizes again."
                if cause is None
                else f"Look at the {cause.name} of {length_text(float(cause), unit)} again.",
                no_size=True,
            )


def _behind(figure: Figure) -> Iterator[Figure]:
    """The lengths that a sum adds up, as far back as somebody chose one of them."""
    for one in inputs(figure).values():
        if one.op is not None and any(
            leaf.where is not None and leaf.origin not in MEASURED for leaf in leaves(one)
        ):
            yield from _behind(one)
        elif one.unit == "mm":
            yield one


def _listed(figures: Iterable[Figure], unit: Unit) -> str:
    by_name = {one.name: one for one in figures}
    return ", ".join(f"{name} {length_text(float(one), unit)}" for name, one in by_name.items())


def _no_rails(
    hung: tuple[HungLeaf, ...], stock: tuple[Stock, ...], unit: Unit
) -> Iterator[Problem]:
    """Stiles that together are as wide as their leaf leave no rail between them."""
    for leaf, made in zip(hung, stock, strict=True):
        between = leaf.width - made.left_stile - made.right_stile
        if exceeds(between, 0.0):
            continue
        left, right, wide, over = (
            length_text(float(one), unit)
            for one in (made.left_stile, made.right_stile, leaf.width, between)
        )
        cause = chosen_cause(between)
        yield Problem(
            code="no_size_left",
            level="stop",
            message=f"The stiles of {leaf.name}, {left} and {right}, leave {over} of its width of "
            f"{wide} for the rails between them.",
            where=None if cause is None else cause.where,
            about=f"rails of a leaf {wide} wide",
            found=over,
            allowed="more than 0",
            fix="Make the stiles narrower or the leaf wider."
            if cause is None
            else f"Look at the {cause.name} of {length_text(float(cause), unit)} again.",
            no_size=True,
        )


def _do_not_lap(hanging: Hanging, door: DoorBlock, unit: Unit) -> Iterator[Problem]:
    """Stepped edges, or a strip, that are no wider than the gap they should cover."""
    for leaf in hanging.leaves:
        laps = [
            (step.width, hanging.split_gap, "split rebate", "split gap")
            if step.edge in ("foot", "top")
            else (step.width, hanging.meeting_gap, "meeting rebate", "meeting gap")
            for step in leaf.rebates
        ]
        if leaf.strip is not None:
            laps.append((leaf.strip.width, hanging.meeting_gap, "astragal", "meeting gap"))
        for width, gap, key, gap_key in laps:
            if gap is None or exceeds(width, gap):
                continue
            wide, open_ = length_text(float(width), unit), length_text(float(gap), unit)
            yield Problem(
                code="edges_do_not_lap",
                level="stop",
                message=f"The {key} is {wide} wide and the {gap_key} {open_}: one leaf would not "
                "lap the other.",
                where=door.line(key if door.origin(key) not in MEASURED else gap_key),
                about=key,
                found=wide,
                allowed=f"more than {open_}",
                fix=f"Make the {key} wider or the {gap_key} smaller.",
                no_size=float(width) <= 0,
            )
