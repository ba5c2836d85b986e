"""How far leaves lap the wall or stand clear of it and of one another, as a client is told it."""

from __future__ import annotations

from parametric.pack.door_sizes import DoorSizes
from parametric.pack.door_words import filled
from parametric.trade.standing import cover_stretch
from parametric.writers.client_page import Amount, Chalk, Fact, said
from parametric.writers.page_words import FACT_WORDS as SAID

_ABOVE_FOOT = 0.60
"""How far up a leaf a line across the opening is drawn, as a part of its height."""


def laps(door: DoorSizes) -> Fact | None:
    """How far the leaves cover the wall, so that no daylight shows round the edge."""
    hanging = door.hanging
    side_lap, head_lap = door.named("side lap"), door.named("head lap")
    if side_lap is None or head_lap is None:
        return None
    side, head = door.size(side_lap), door.size(head_lap)
    left, lap = float(hanging.lefts[0]), float(side_lap)
    right = left + float(hanging.cover)
    up = door.foot + float(door.leaf.height) * _ABOVE_FOOT
    top = door.foot + float(door.leaf.height)
    middle = left + float(hanging.cover) * 0.25
    return Fact(
        key="laps",
        label=SAID["laps" if hanging.case is None else "laps case"],
        value=filled(SAID["laps value"], side, head),
        note=said(SAID["laps why" if hanging.case is None else "laps case why"]),
        chalk=(
            Chalk(
                start=(left, door.foremost, up),
                end=(left + lap, door.foremost, up),
                text=side.text,
                aside=(-90.0, 70.0),
            ),
            Chalk(
                start=(right - lap, door.foremost, up),
                end=(right, door.foremost, up),
                text=side.text,
                aside=(90.0, 70.0),
            ),
            Chalk(
                start=(middle, door.foremost, top - float(head_lap)),
                end=(middle, door.foremost, top),
                text=head.text,
                aside=(120.0, -70.0),
            ),
        ),
    )


def gaps(door: DoorSizes) -> Fact | None:
    """What stays free round leaves that stand in their opening, and between them."""
    hanging = door.hanging
    ends = [span for span in (*hanging.across[:1], *hanging.across[-1:]) if span.what == "gap"]
    if len(ends) < 2:
        return None
    left, right = cover_stretch(door.door)
    up = door.foot + float(door.leaf.height) * _ABOVE_FOOT
    sides = [door.size(span.size) for span in ends]
    value: list[str | Amount] = []
    if sides[0].text == sides[1].text:
        value += filled(SAID["gaps sides"], sides[0])
    else:
        value += filled(SAID["gaps left right"], *sides)
    chalk = [
        _across(door, left, left + float(ends[0].size), up, sides[0], (-90.0, 70.0)),
        _across(door, right - float(ends[1].size), right, up, sides[1], (90.0, 70.0)),
    ]
    gap = hanging.meeting_gap
    if gap is None and door.names.halves:
        gap = hanging.split_gap
    if gap is not None:
        between = door.size(gap)
        value += [", ", *filled(SAID["gaps middle"], between)]
        chalk.append(_meeting(door, float(gap), up, between))
    if hanging.head_gap is not None:
        head = door.size(hanging.head_gap)
        value += [", ", *filled(SAID["gaps head"], head)]
        top = max(float(leaf.hung.foot + leaf.height) for leaf in door.door.leaves)
        middle = left + (right - left) * 0.25
        chalk.append(
            Chalk(
                start=(middle, door.foremost, top),
                end=(middle, door.foremost, top + float(hanging.head_gap)),
                text=head.text,
                aside=(120.0, -70.0),
            )
        )
    return Fact(
        key="gaps",
        label=SAID[f"gaps {door.names.one}"],
        value=said(*value),
        note=said(SAID[f"gaps why {door.names.one}"], SAID["fingers"]),
        chalk=tuple(chalk),
        walks=True,
    )


def _across(
    door: DoorSizes, x0: float, x1: float, up: float, amount: Amount, aside: tuple[float, float]
) -> Chalk:
    return Chalk(
        start=(x0, door.foremost, up),
        end=(x1, door.foremost, up),
        text=amount.text,
        aside=aside,
    )


def _meeting(door: DoorSizes, gap: float, up: float, amount: Amount) -> Chalk:
    """Where the first leaf meets the next: beside it, or over the lower half."""
    leaf = door.leaf
    if door.names.halves:
        low = min(door.door.leaves, key=lambda one: float(one.hung.foot))
        z = float(low.hung.foot + low.height)
        x = float(low.hung.left) + float(low.width) * 0.75
        return Chalk(
            start=(x, door.foremost, z),
            end=(x, door.foremost, z + gap),
            text=amount.text,
            aside=(90.0, 70.0),
        )
    x = float(leaf.hung.left) + float(leaf.width)
    return _across(door, x, x + gap, up, amount, (110.0, 70.0))


def passing(door: DoorSizes) -> Fact | None:
    """The gap between leaves that pass: front to back, so it is seen from the side."""
    between = door.hanging.passing_gap
    if between is None:
        return None
    gap = door.size(between)
    back = min(door.fronts) + float(door.leaf.thickness)
    x = float(door.hanging.lefts[1])
    up = door.foot + float(door.leaf.height) * _ABOVE_FOOT
    return Fact(
        key="passing",
        label=SAID["passing"],
        value=said(gap),
        note=said(SAID["passing why"]),
        chalk=(
            Chalk(
                start=(x, back, up),
                end=(x, back + float(between), up),
                text=gap.text,
                aside=(-90.0, 110.0),
            ),
        ),
    )
