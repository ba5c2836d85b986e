"""What the client's page is told of a job: the same numbers, in plain words."""

from __future__ import annotations

from types import MappingProxyType

from parametric.catalog.finishes import GLASSES, METALS, PAINTS, paint_called, timber_called
from parametric.design.settings import ClientSpec
from parametric.pack.page_lengths import wood_amount
from parametric.pack.preview_facts import facts
from parametric.pack.preview_ticks import ticks
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.brackets import bracket_places
from parametric.trade.fingerprint import mark
from parametric.trade.loads import LeafLoad
from parametric.trade.paperwork import Paperwork
from parametric.writers.client_page import (
    OwnPlace,
    PageLeaf,
    Palette,
    Point,
    PreviewPage,
    Saying,
    Scenery,
    said,
)

_WALL = 130.0
"""How deep the wall is pictured, mm: a common partition, when only its face matters."""
_ROOM_ABOVE = 90.0
"""What must be seen above the leaves, mm: the tracks."""
_SKIRTING = (95.0, 16.0)
"""Height and thickness of the skirting that is pictured, mm: scenery, common practice, no source."""


def preview_page(
    resolved: Resolved,
    loads: tuple[LeafLoad, ...],
    *,
    fingerprint: str,
    elevation: str,
    problems: tuple[Problem, ...] = (),
    paper: Paperwork | None = None,
) -> PreviewPage:
    """The page's content, from the resolved door.

    Args:
        resolved: the design's numbers.
        loads: its weights.
        fingerprint: the whole digest of the design.
        elevation: the front elevation as SVG.
        problems: what `check` says of the design; some of it a client must have seen.
        paper: lists of the job, for the boards that panels are glued up from.
    """
    door = resolved.door
    hanging, opening = door.hanging, door.opening
    # The clear way is promised with the narrowest width in the middle of the cover.
    way = float(opening.narrowest if hanging.on_wall else hanging.cover)
    left = float(hanging.lefts[0]) + (float(hanging.cover) - way) / 2
    top = float(hanging.floor_gap) + float(hanging.leaf_height) + _ROOM_ABOVE
    revisions, option = resolved.design.revisions, resolved.design.option
    glued = () if paper is None else paper.panel_glue_ups
    return PreviewPage(
        job=resolved.design.job,
        subtitle="Sliding pair",
        revision=revisions[-1].letter if revisions else "",
        revision_date=revisions[-1].date if revisions else "",
        mark=mark(fingerprint),
        fingerprint=fingerprint,
        unit="mm" if resolved.design.unit == "mm" else "in",
        leaves=tuple(_leaf(resolved, index) for index in range(len(door.leaves))),
        opening=opening.outline(),
        floor=opening.floor_line(),
        wall=_WALL,
        way=(left, left + way),
        clear_way=float(hanging.clear_way),
        top=top,
        facts=facts(resolved, loads),
        elevation_svg=elevation,
        maker=resolved.shop.maker.name,
        thing=_thing(resolved),
        ticks=ticks(resolved, problems),
        palette=palette(resolved),
        scenery=_scenery(resolved),
        places=_places(resolved),
        glued=MappingProxyType({glue_up.mark: float(glue_up.board_width) for glue_up in glued}),
        option="" if option is None else option.letter,
        called="" if option is None else option.called,
    )


def _places(resolved: Resolved) -> tuple[OwnPlace, ...]:
    client = resolved.design.block("client")
    if not isinstance(client, ClientSpec) or not client.from_:
        return ()
    return tuple(
        OwnPlace(
            name=name,
            seated=place.posture == "seated",
            far=float(place.distance),
            side=place.side,
        )
        for name, place in client.from_.items()
    )


def _leaf(resolved: Resolved, index: int) -> PageLeaf:
    hanging, leaf = resolved.door.hanging, resolved.door.leaves[index]
    side = ("Left", "Right")[index]
    track = leaf.hung.track
    where = "in front" if track is None or hanging.tracks[track].word == "outer" else "behind"
    pull = leaf.pulls[0] if leaf.pulls else None
    return PageLeaf(
        name=leaf.name,
        label=f"{side} door, {where}",
        width=float(leaf.width),
        height=float(leaf.height),
        x=float(hanging.lefts[index]),
        foot=float(hanging.floor_gap),
        front=-float(hanging.planes[index]) - float(leaf.thickness) / 2,
        thickness=float(leaf.thickness),
        travel=float(leaf.hung.travel or 0.0),
        pull=None if pull is None else float(pull.across),
        pull_up=None if pull is None else float(pull.pull.up + hanging.floor_gap),
    )


def _thing(resolved: Resolved) -> Saying:
    """What is made, as one line: `Two, 1024.5 × 2102, sliding`."""
    leaf = resolved.door.leaves[0]
    return said(
        "Two, ",
        wood_amount(resolved, leaf.width),
        " wide × ",
        wood_amount(resolved, leaf.height),
        " high, sliding",
    )


def palette(resolved: Resolved) -> Palette:
    """What the design names is what is quoted; what it does not name is still to be agreed."""
    door, finish = resolved.door, resolved.finish
    leaf = door.leaves[0]
    kind = "none" if finish is None else finish.kind
    colour = "" if finish is None else finish.colour or ""
    timber = leaf.timber.name
    wood_key, named = Palette().wood, ""
    quoted: tuple[str, ...] = ()
    if kind == "paint":
        known = paint_called(colour)
        if not colour:
            quoted = tuple(paint.key for paint in PAINTS)
        elif known is not None:
            wood_key, quoted = known.key, (known.key,)
        else:
            named = colour
    else:
        own = timber_called(timber)
        if own is not None:
            wood_key, quoted = own.key, (own.key,)
        else:
            named = timber if kind == "none" else f"{timber}, {kind}"
    glazed = bool(leaf.lites)
    return Palette(
        glasses=GLASSES if glazed else (),
        metals=METALS if leaf.pulls else (),
        # A design that asks for glass and says no more asks for clear glass.
        quoted_wood=quoted,
        quoted_glass=("clear",) if glazed and leaf.lites[0].pane.kind != "mirror" else (),
        wood=wood_key,
        named_wood=named,
    )


def _scenery(resolved: Resolved) -> Scenery:
    door = resolved.door
    hanging = door.hanging
    left = float(hanging.lefts[0])
    head = float(hanging.floor_gap) + float(hanging.leaf_height)
    brackets: list[Point] = []
    if hanging.on_wall:
        for plane in hanging.planes:
            brackets += [
                (float(place.from_opening), -float(plane), head) for place in bracket_places(door)
            ]
    return Scenery(
        skirting=_SKIRTING,
        skirting_clear=(left, left + float(hanging.cover)),
        brackets=tuple(brackets),
    )
