"""What the client's page is told of a job: the same numbers, in plain words."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from types import MappingProxyType

from parametric.catalog.finishes import (
    CLEAR_TIMBERS,
    GLASSES,
    METALS,
    PAINTS,
    PLAIN_WOOD,
    paint_called,
    timber_called,
)
from parametric.design.settings import ClientSpec
from parametric.figures import Figure
from parametric.model import Assembly
from parametric.pack.door_words import alike, counted, door_names, filled, in_words, towards
from parametric.pack.page_lengths import wood_amount
from parametric.pack.preview_cases import shown_cases
from parametric.pack.preview_doors import (
    Outline,
    called,
    doorway,
    in_the_room,
    page_leaves,
    trims_of,
)
from parametric.pack.preview_facts import facts
from parametric.pack.preview_ticks import ticks
from parametric.pack.shown import Shown
from parametric.problems import Problem
from parametric.resolve.door import Door, Resolved
from parametric.trade.brackets import bracket_places
from parametric.trade.fingerprint import mark
from parametric.trade.loads import LeafLoad, loads_of
from parametric.trade.paperwork import Paperwork
from parametric.trade.standing import cover_stretch, first_to_open
from parametric.trade.surround import Surround, surround
from parametric.writers.case_words import CABINET_WORDS
from parametric.writers.client_page import (
    Amount,
    Doorway,
    Fact,
    OwnPlace,
    Palette,
    Point,
    PreviewPage,
    Saying,
    Scenery,
    said,
)
from parametric.writers.page_words import DOOR_WORDS

_WALL = 130.0
"""How deep the wall is pictured, mm: a common partition, where it was not measured or only its
face matters."""
_ROOM_ABOVE = 90.0
"""What must be seen above the leaves, mm: the tracks."""
_SKIRTING_ENDS = 10.0
"""How far skirting runs on behind what it ends against, mm."""
_SKIRTING = (95.0, 16.0)
"""Height and thickness of the skirting that is pictured, mm: scenery, common practice, no source."""


def preview_page(
    resolved: Resolved,
    loads: tuple[LeafLoad, ...],
    *,
    fingerprint: str,
    elevations: tuple[str, ...],
    assembly: Assembly | None = None,
    problems: tuple[Problem, ...] = (),
    paper: Paperwork | None = None,
) -> PreviewPage:
    """The page's content, from the resolved job.

    Args:
        resolved: the design's numbers.
        loads: its weights.
        fingerprint: the whole digest of the design.
        elevations: the front elevation of every door in a wall, as SVG.
        assembly: its parts; a job with casework is told by them.
        problems: what `check` says of the design; some of it a client must have seen.
        paper: lists of the job, for the boards that panels are glued up from.
    """
    cases = resolved.casework is not None
    if cases and assembly is not None:
        shown = _with_doors(
            shown_cases(resolved, assembly, loads, problems), resolved, loads, problems
        )
    else:
        shown = _shown_doors(resolved, loads, problems, elevations)
    revisions, option = resolved.design.revisions, resolved.design.option
    glued = () if paper is None else paper.panel_glue_ups
    return PreviewPage(
        job=resolved.design.job,
        subtitle=shown.subtitle,
        revision=revisions[-1].letter if revisions else "",
        revision_date=revisions[-1].date if revisions else "",
        mark=mark(fingerprint),
        fingerprint=fingerprint,
        unit="mm" if resolved.design.unit == "mm" else "in",
        leaves=shown.leaves,
        opening=shown.opening,
        floor=shown.floor,
        wall=shown.wall,
        way=shown.way,
        clear_way=shown.clear_way,
        top=shown.top,
        facts=shown.facts,
        elevation_svg=shown.drawing,
        maker=resolved.shop.maker.name,
        thing=shown.thing,
        ticks=shown.ticks,
        palette=palette(resolved),
        scenery=shown.scenery,
        places=_places(resolved),
        glued=MappingProxyType({glue_up.mark: float(glue_up.board_width) for glue_up in glued}),
        option="" if option is None else option.letter,
        called="" if option is None else option.called,
        niche=shown.niche,
        cases=cases,
        all_open=shown.all_open,
        doorways=shown.doorways,
    )


def _with_doors(
    shown: Shown, resolved: Resolved, loads: tuple[LeafLoad, ...], problems: tuple[Problem, ...]
) -> Shown:
    """What is told of cabinets, then of the doors in walls of the same job."""
    if not resolved.walls:
        return shown
    own = ticks(dataclasses.replace(resolved, doors=resolved.walls), problems)
    # what both have, the sample of the colour, is ticked once, with the doors'
    told = (*(tick for tick in shown.ticks if tick not in own), *own)
    return dataclasses.replace(
        shown,
        facts=(*shown.facts, *_facts(resolved, resolved.walls, loads)),
        thing=said(*shown.thing, CABINET_WORDS["and in walls"], *_things(resolved, resolved.walls)),
        ticks=told,
    )


def _facts(
    resolved: Resolved, doors: tuple[Door, ...], loads: tuple[LeafLoad, ...]
) -> Iterator[Fact]:
    """What is told of each door, where it stands in the room."""
    for door in doors:
        for fact in facts(resolved.of(door), loads_of(door, loads)):
            yield in_the_room(fact, door)


def _shown_doors(
    resolved: Resolved,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    elevations: tuple[str, ...],
) -> Shown:
    """Doors in their walls, or the fronts of a case that stands already."""
    doors = resolved.doors
    ways = _doorways(resolved, elevations)
    first = ways[0]
    return Shown(
        subtitle=", ".join(_subtitles(doors)),
        leaves=page_leaves(resolved),
        opening=first.opening,
        floor=first.floor,
        wall=_wall(resolved),
        way=first.way,
        clear_way=first.clear_way,
        top=max(float(leaf.hung.foot + leaf.height) for leaf in resolved.leaves) + _ROOM_ABOVE,
        facts=tuple(_facts(resolved, doors, loads)),
        thing=_things(resolved, doors),
        ticks=ticks(resolved, problems),
        scenery=_scenery(resolved, first),
        drawing=first.elevation_svg,
        all_open=all(_opens_at_once(door) for door in doors) and len(resolved.leaves) > 1,
        doorways=ways if len(ways) > 1 else (),
    )


def _opens_at_once(door: Door) -> bool:
    """Whether all fronts of a case may stand open at once."""
    states = door.hanging.states
    return door.hanging.case is not None and any(
        set(state.open.values()) == {1.0} for state in states
    )


def _subtitles(doors: tuple[Door, ...]) -> Iterator[str]:
    """What each of them is: `Sliding pair`; of several, with a capital only at the beginning."""
    for index, door in enumerate(doors):
        said_so = door_names(door).subtitle
        yield in_words(said_so) if index else said_so


def _doorways(resolved: Resolved, elevations: tuple[str, ...]) -> tuple[Doorway, ...]:
    walls = resolved.walls or resolved.doors
    return tuple(
        doorway(door, _skirting_clear(door, _about(resolved, door)), elevation)
        for door, elevation in zip(walls, elevations, strict=True)
    )


def _wall(resolved: Resolved) -> float:
    """The wall's thickness: as it was measured where doors stand in it, the thickest of several."""
    measured = [
        float(door.survey.wall)
        for door in resolved.walls
        if isinstance(door.survey.wall, Figure) and not door.hanging.on_wall
    ]
    return max(measured, default=_WALL)


def _about(resolved: Resolved, door: Door) -> Surround | None:
    return surround(door, _wall(resolved))


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


def _things(resolved: Resolved, doors: tuple[Door, ...]) -> Saying:
    """What is made, door by door."""
    pieces: list[str | Amount] = []
    for door in doors:
        name = called(door)
        pieces += ["; "] if pieces else []
        pieces += filled(DOOR_WORDS["of one"], name, "") if name else ()
        pieces += _thing(resolved.of(door))
    return said(*pieces)


def _thing(resolved: Resolved) -> Saying:
    """What is made, as one line: `Two, 1024.5 wide × 2102 high, sliding`."""
    door = resolved.door
    names = door_names(door)
    how = [DOOR_WORDS[names.moves]]
    into = towards(door)
    if into is not None and names.moves == "swing":
        how.append(DOOR_WORDS["towards" if into else "away"])
    first = first_to_open(door)
    if first is not None:
        which = names.which[door.leaves.index(first)]
        how.append(DOOR_WORDS["first"].format(in_words(which)))
    moving = ", ".join(how)
    if names.count > 1 and not alike(door):
        pieces: list[str | Amount] = []
        for leaf, which in zip(door.leaves, names.which, strict=True):
            sizes = (wood_amount(resolved, leaf.width), wood_amount(resolved, leaf.height))
            pieces += [*filled(DOOR_WORDS["thing each"], which, *sizes), ", "]
        return said(*pieces, moving)
    leaf = door.leaves[0]
    return filled(
        DOOR_WORDS["thing"],
        counted(names.count),
        wood_amount(resolved, leaf.width),
        wood_amount(resolved, leaf.height),
        moving,
    )


def palette(resolved: Resolved) -> Palette:
    """What the design names is what is quoted; what it does not name is still to be agreed."""
    finish, leaves = resolved.finish, resolved.leaves
    kind = "none" if finish is None else finish.kind
    colour = "" if finish is None else finish.colour or ""
    timber = leaves[0].timber.name if leaves else ""
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
    elif timber:
        own = timber_called(timber)
        if own is not None:
            wood_key, quoted = own.key, (own.key,)
        else:
            wood_key = PLAIN_WOOD.key
            named = timber if kind == "none" else f"{timber}, {kind}"
    panes = [pane for one in leaves for lite in one.lites for pane in lite.panes]
    pulls = any(one.pulls for one in leaves)
    return Palette(
        timbers=(*CLEAR_TIMBERS, PLAIN_WOOD) if wood_key == PLAIN_WOOD.key else CLEAR_TIMBERS,
        glasses=GLASSES if panes else (),
        metals=METALS if pulls else (),
        # A design that asks for glass and says no more asks for clear glass.
        quoted_wood=quoted,
        quoted_glass=("clear",) if panes and panes[0].kind != "mirror" else (),
        wood=wood_key,
        named_wood=named,
    )


def _scenery(resolved: Resolved, first: Doorway) -> Scenery:
    brackets: list[Point] = []
    trims: list[tuple[Outline, float, float]] = []
    for door in resolved.walls:
        hanging = door.hanging
        head = float(hanging.floor_gap) + float(hanging.leaf_height)
        if hanging.on_wall and hanging.tracks:
            brackets += [
                door.stands.point((float(place.from_opening), -float(plane), head))
                for plane in hanging.planes
                for place in bracket_places(door)
            ]
        trims += trims_of(door, _about(resolved, door))
    return Scenery(
        skirting=_SKIRTING,
        skirting_clear=first.skirting_clear,
        brackets=tuple(brackets),
        trims=tuple(trims),
    )


def _skirting_clear(door: Door, about: Surround | None) -> tuple[float, float]:
    """The stretch of wall that skirting stays out of."""
    if about is None:
        return cover_stretch(door)
    return about.reach[0] + _SKIRTING_ENDS, about.reach[1] - _SKIRTING_ENDS
