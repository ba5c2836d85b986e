"""What the client's page is told of a job: the same numbers, in plain words."""

from __future__ import annotations

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
from parametric.pack.door_words import alike, counted, door_names, filled, in_words, label, towards
from parametric.pack.page_lengths import wood_amount
from parametric.pack.preview_cases import shown_cases
from parametric.pack.preview_facts import facts
from parametric.pack.preview_ticks import ticks
from parametric.pack.shown import Shown
from parametric.pack.side_by_side import side_by_side
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.brackets import bracket_places
from parametric.trade.fingerprint import mark
from parametric.trade.loads import LeafLoad, loads_of
from parametric.trade.paperwork import Paperwork
from parametric.trade.standing import cover_stretch, first_to_open, way
from parametric.trade.surround import surround
from parametric.writers.client_page import (
    Amount,
    OwnPlace,
    PageLeaf,
    Palette,
    Point,
    PreviewPage,
    Saying,
    Scenery,
    go_together,
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
        shown = shown_cases(resolved, assembly, loads, problems)
    else:
        shown = side_by_side(
            [
                (door, _shown_door(resolved.of(door), loads_of(door, loads), problems, drawing))
                for door, drawing in zip(resolved.doors, elevations, strict=True)
            ]
        )
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
        openings_beside=shown.openings_beside,
        cases=cases,
        all_open=shown.all_open,
    )


def _shown_door(
    resolved: Resolved, loads: tuple[LeafLoad, ...], problems: tuple[Problem, ...], drawing: str
) -> Shown:
    """One door in its wall, or the fronts of a case that stands already."""
    door = resolved.door
    hanging, opening = door.hanging, door.opening
    return Shown(
        subtitle=door_names(door).subtitle,
        leaves=tuple(_leaf(resolved, index) for index in range(len(door.leaves))),
        opening=opening.outline(),
        floor=opening.floor_line(),
        wall=_wall(resolved),
        way=way(door),
        clear_way=None if hanging.clear_way is None else float(hanging.clear_way),
        top=max(float(leaf.hung.foot + leaf.height) for leaf in door.leaves) + _ROOM_ABOVE,
        facts=facts(resolved, loads),
        thing=_thing(resolved),
        ticks=ticks(resolved, problems),
        scenery=_scenery(resolved),
        drawing=drawing,
        all_open=hanging.case is not None
        and len(door.leaves) > 1
        and any(set(state.open.values()) == {1.0} for state in hanging.states),
    )


def _wall(resolved: Resolved) -> float:
    """The wall's thickness: as it was measured where doors stand in it."""
    door = resolved.door
    measured = door.survey.wall
    return float(measured) if isinstance(measured, Figure) and not door.hanging.on_wall else _WALL


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
    pull = leaf.pulls[0] if leaf.pulls else None
    return PageLeaf(
        name=leaf.name,
        label=label(resolved.door, leaf),
        width=float(leaf.width),
        height=float(leaf.height),
        x=float(hanging.lefts[index]),
        foot=float(leaf.hung.foot),
        front=-float(hanging.planes[index]) - float(leaf.thickness) / 2,
        thickness=float(leaf.thickness),
        motion=leaf.hung.motion,
        goes_with=go_together(
            {one.name: one.hung.motion for one in resolved.door.leaves}, hanging.states
        )[leaf.name],
        after=_after(resolved, leaf.name),
        pull=None if pull is None else float(pull.across),
        pull_up=None if pull is None else float(pull.pull.up + leaf.hung.foot),
    )


def _after(resolved: Resolved, name: str) -> str:
    """The leaf that shuts over this one, so that it opens first and shuts last; none where they butt."""
    door = resolved.door
    first = first_to_open(door)
    laps = door.hanging.meeting in ("rebated", "astragal")
    return first.name if first is not None and laps and first.name != name else ""


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


def _scenery(resolved: Resolved) -> Scenery:
    door = resolved.door
    hanging = door.hanging
    head = float(hanging.floor_gap) + float(hanging.leaf_height)
    brackets: list[Point] = []
    if hanging.on_wall and hanging.tracks:
        for plane in hanging.planes:
            brackets += [
                (float(place.from_opening), -float(plane), head) for place in bracket_places(door)
            ]
    about = surround(door, _wall(resolved))
    return Scenery(
        skirting=_SKIRTING,
        skirting_clear=cover_stretch(door)
        if about is None
        else (about.reach[0] + _SKIRTING_ENDS, about.reach[1] - _SKIRTING_ENDS),
        brackets=tuple(brackets),
        trims=()
        if about is None
        else tuple((piece.outline, piece.near, piece.far) for piece in about.pieces),
    )
