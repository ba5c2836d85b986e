"""What the client's page is told of a job: the same numbers, in plain words."""

from __future__ import annotations

from parametric.hangings.bypass import Bypass
from parametric.resolve.door import Resolved
from parametric.trade.loads import LeafLoad
from parametric.trade.tables import fine, wood
from parametric.writers.html import Fact, PageLeaf, PreviewPage

_WALL = 130.0
"""How deep the wall is pictured, mm: a common partition, when only its face matters."""
_ROOM_ABOVE = 90.0
"""What must be seen above the leaves, mm: the tracks."""


def preview_page(
    resolved: Resolved, loads: tuple[LeafLoad, ...], *, mark: str, revision: str, elevation: str
) -> PreviewPage:
    """The page's content, from the resolved door."""
    door = resolved.door
    hanging = door.hanging
    opening = door.opening
    # The clear way is promised with the narrowest width in the middle of the cover.
    way = float(opening.narrowest if hanging.on_wall else hanging.cover)
    left = float(hanging.lefts[0]) + (float(hanging.cover) - way) / 2
    top = float(hanging.floor_gap) + float(hanging.leaf_height) + _ROOM_ABOVE
    return PreviewPage(
        job=resolved.job,
        subtitle="Sliding pair",
        revision=revision,
        mark=mark,
        unit="mm" if resolved.design.unit == "mm" else "in",
        leaves=tuple(_leaf(resolved, index) for index in range(len(door.leaves))),
        opening=opening.outline(),
        floor=opening.floor_line(),
        wall=_WALL,
        way=(left, left + way),
        clear_way=float(hanging.clear_way),
        top=top,
        facts=_facts(resolved, loads, hanging),
        elevation_svg=elevation,
        maker=resolved.shop.maker.name,
    )


def _leaf(resolved: Resolved, index: int) -> PageLeaf:
    hanging, leaf = resolved.door.hanging, resolved.door.leaves[index]
    side = ("Left", "Right")[index]
    where = "in front" if hanging.tracks[index] == "outer" else "behind"
    return PageLeaf(
        name=leaf.name,
        label=f"{side} door, {where}",
        width=float(leaf.width),
        height=float(leaf.height),
        x=float(hanging.lefts[index]),
        foot=float(hanging.floor_gap),
        front=-float(hanging.planes[index]) - float(leaf.thickness) / 2,
        thickness=float(leaf.thickness),
        travel=float(hanging.travels[index]),
        pull=float(leaf.pulls[0].across) if leaf.pulls else None,
    )


def _facts(resolved: Resolved, loads: tuple[LeafLoad, ...], hanging: Bypass) -> tuple[Fact, ...]:
    """A handful of facts that a client must know, the awkward ones too."""
    unit, shop, door = resolved.design.unit, resolved.shop, resolved.door
    leaf = door.leaves[0]

    def size(value: float) -> str:
        return wood(value, unit, shop)

    gaps = " ".join(f"{size(gap)} {place}," for place, gap in door.gaps).rstrip(",")
    fall = float(door.opening.floor_fall)
    facts = [
        Fact(
            label="Clear to walk through",
            value=size(hanging.clear_way),
            note="With both doors slid to one side, at the narrowest part of your opening.",
        ),
        Fact(
            label="Gap under the doors",
            value=gaps,
            note=f"Your floor rises {size(fall)} across the opening; the doors hang level."
            if fall
            else "Your floor is level.",
        ),
        Fact(
            label="Each door",
            value=f"{size(leaf.width)} × {size(leaf.height)} × {size(leaf.thickness)}",
            note="Wide, high and thick.",
        ),
        Fact(
            label="Beyond the opening",
            value=size(-hanging.lefts[0]) if hanging.on_wall else "0",
            note="How far the doors cover the wall at each side when shut.",
        ),
        Fact(
            label="Between the doors",
            value=size(hanging.passing_gap),
            note="Where they pass one another. Fingers can be caught: mind children.",
        ),
        Fact(
            label="Weight of each door",
            value=f"{max(float(load.governing) for load in loads):.0f} kg",
            note="Wood and glass, without the fittings.",
        ),
    ]
    if leaf.lites:
        pane = leaf.lites[0].pane
        facts.append(
            Fact(
                label="Glass",
                value=f"{fine(pane.thickness, unit, shop)} {pane.kind}",
                note=f"{len(leaf.lites) * len(door.leaves)} panes, each about "
                f"{fine(pane.width, unit, shop, down=True)} wide and "
                f"{fine(pane.height, unit, shop, down=True)} high.",
            )
        )
    if leaf.pulls:
        facts.append(
            Fact(
                label="Pulls",
                value=size(leaf.pulls[0].pull.up + hanging.floor_gap),
                note="Height of their middle above the highest floor.",
            )
        )
    return tuple(facts)
