"""For whoever lives with the doors: how they are kept, and each pane so that it can be ordered again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.catalog.glass_facts import SAFETY_KINDS
from parametric.figures import Figure, named
from parametric.hangings.hanging import Hanging
from parametric.infill.glass import Pane
from parametric.model import Assembly
from parametric.names import SEPARATOR
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite
from parametric.trade.case_care import case_cautions, case_checks, case_upkeep
from parametric.trade.cautions import GLASS, LOCAL, OILY_RAGS, Cautions
from parametric.trade.glass import glass_order
from parametric.trade.glazing import free_cell, free_words, grid_words
from parametric.trade.printed import Printed, printed
from parametric.trade.seasons import leaf_seasons


@dataclass(frozen=True, slots=True, kw_only=True)
class ReplacementPane:
    """One pane where it stands, mm and kg: enough to order it again without the door at hand.

    No stop sizes where the glass lies in a rebate. `cut_by` is the file of a shaped pane's
    outline: its width and height are those of the rectangle it is cut from. `bars` says where those
    in a unit's space stand; `planted` that it carries bars on its faces.
    """

    mark: str
    name: str
    place: str
    kind: str
    called: str
    safety_class: str
    width: Figure
    height: Figure
    nominal: Figure
    thickness: Figure
    unit: tuple[Figure, Figure, Figure] | None
    cut_by: str
    bars: str
    planted: bool
    weight: Figure
    clearances: tuple[Figure, Figure]
    tape: Figure
    corners: str
    stop_width: Figure | None
    stop_depth: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Care:
    """The care sheet: panes, what to do and when, what the room should be kept at in % moisture.

    `movement` mm is how much wider the widest panel is in the dampest season than in the
    driest, None where there is none; `seasons` says what moves with them. `checks` are what
    is looked at once a year.
    """

    panes: tuple[ReplacementPane, ...]
    driest: Figure
    dampest: Figure
    movement: Figure | None
    seasons: tuple[str, ...]
    upkeep: tuple[str, ...]
    checks: tuple[str, ...]
    replacing: tuple[str, ...]
    cautions: Cautions


def care(resolved: Resolved, assembly: Assembly) -> Care:
    """Every pane of every leaf, and the upkeep of wood, finish and track."""
    said = printed(resolved)
    rows = {name: row for row in glass_order(resolved, assembly) for name in row.names}
    panes = []
    for leaf in resolved.leaves:
        for lite, pane in _panes_of(leaf):
            row, stops = rows[pane.name], pane.stops
            place = lite.name if len(lite.panes) == 1 else pane.name
            panes.append(
                ReplacementPane(
                    mark=row.mark,
                    name=pane.name,
                    place=" of ".join(reversed(place.split(SEPARATOR))),
                    kind=pane.kind,
                    called=row.called,
                    safety_class=row.safety_class,
                    width=pane.width,
                    height=pane.height,
                    nominal=pane.nominal,
                    thickness=pane.thickness,
                    unit=pane.unit,
                    bars=grid_words(row, said),
                    planted=isinstance(lite.section, PlantedBar),
                    cut_by="" if row.template is None else row.template.outline_file,
                    weight=pane.weight,
                    clearances=pane.clearances,
                    tape=pane.tape,
                    corners="square, arrises taken off"
                    if pane.outline is None
                    else "by its full-size template, arrises taken off",
                    stop_width=None if stops is None else stops.width,
                    stop_depth=None if stops is None else stops.depth,
                )
            )
    moisture = resolved.shop.moisture
    oiled = resolved.finish is not None and resolved.finish.kind == "oil"
    return Care(
        panes=tuple(panes),
        driest=named("moisture driest", moisture.driest, "%"),
        dampest=named("moisture dampest", moisture.dampest, "%"),
        movement=_movement(resolved),
        seasons=_seasons(resolved, said),
        upkeep=(*_upkeep(resolved), *case_upkeep(resolved, said)),
        checks=(*_checks(resolved), *case_checks(resolved)),
        replacing=_replacing(said, tuple(panes)),
        cautions=(
            *(GLASS if panes else ()),
            *(OILY_RAGS if oiled else ()),
            *_fingers([door.hanging for door in resolved.doors]),
            *case_cautions(resolved),
            LOCAL,
        ),
    )


def _panes_of(leaf: Leaf) -> Iterator[tuple[Lite, Pane]]:
    """Every pane with the lite it stands in."""
    for lite in leaf.lites:
        for pane in lite.panes:
            yield lite, pane


def _fingers(hangings: list[Hanging]) -> Cautions:
    """Where the doors pinch."""
    found = []
    slide = [hanging for hanging in hangings if hanging.tracks and not hanging.swings]
    if any(hanging.passing_gap is not None for hanging in hangings):
        found.append("Fingers: leaves that slide past one another pinch. Mind children.")
    if any(hanging.passing_gap is None for hanging in slide):
        found.append("Fingers: a leaf pinches where it slides shut. Mind children.")
    if any(hanging.swings for hanging in hangings):
        found.append(
            "Fingers: a door that turns crushes at its hinges and where it shuts. Mind children."
        )
    if any(hanging.flaps for hanging in hangings):
        found.append(
            "Flaps: hold one by its edge all the way; let go, it falls. Fingers out of its edges and "
            "its stays, heads out of its way. Nobody sits or climbs on an open flap. Mind children."
        )
    return tuple(found)


def _on_tracks(resolved: Resolved) -> bool:
    return any(door.hanging.tracks for door in resolved.doors)


def _on_hinges(resolved: Resolved) -> bool:
    return any(door.hanging.turns for door in resolved.doors)


def _upkeep(resolved: Resolved) -> tuple[str, ...]:
    moisture, leaves = resolved.shop.moisture, resolved.leaves
    guided = any(leaf.guide is not None for leaf in leaves)
    lines = [
        f"The wood was made at {float(moisture.made):g} % moisture for a room that keeps it "
        f"between {float(moisture.driest):g} and {float(moisture.dampest):g} %: heated, aired, "
        "never left wet.",
        "Dust with a soft dry cloth; wipe spills at once; no steam, no scouring.",
        *(
            (
                "Once a year: tighten bracket and hanger screws, look at the track stops, clear "
                f"the track{' and the floor guides' if guided else ''}. Replace a worn roller "
                "before it marks the track.",
            )
            if _on_tracks(resolved)
            else ()
        ),
        *(
            (
                "Once a year: tighten hinge screws by hand, a drop of light oil on each pin, "
                "wiped off. Hang nothing on a leaf.",
            )
            if _on_hinges(resolved)
            else ()
        ),
        *(
            (
                "Once a year: open each flap and let go near its end, a hand under it. One that sinks "
                "has stays that are worn: change both, and prop it open while they are off.",
            )
            if any(door.hanging.flaps for door in resolved.doors)
            else ()
        ),
        "Mend the finish where it is knocked, the foot and the edges first.",
    ]
    if any(field.panel.moves for leaf in leaves for field in leaf.panels):
        lines.insert(
            1,
            "Panels move in their grooves with the seasons: a line of bare wood in winter is no "
            "fault. Never glue, pin or fill them.",
        )
    return tuple(lines)


def _movement(resolved: Resolved) -> Figure | None:
    moves = [f.panel.movement for leaf in resolved.leaves for f in leaf.panels if f.panel.moves]
    return max(moves, key=float) if moves else None


def _seasons(resolved: Resolved, said: Printed) -> tuple[str, ...]:
    """What the client sees change from winter to summer, and takes for a fault."""
    moved = _movement(resolved)
    moisture = resolved.shop.moisture
    lines = []
    seasons = leaf_seasons(resolved)
    if seasons:
        tight = min(seasons, key=lambda season: float(season.left))
        lines.append(
            f"The gaps beside a leaf close by {said.fine(tight.growth)} in the dampest season "
            "and open again. Never plane an edge in a wet month."
        )
    if moved is not None:
        lines.append(
            f"A panel is {said.fine(moved)} larger across its grain in the dampest season than in "
            "the driest. It has the room: it stands loose in its grooves."
        )
    lines.append(
        "Stiles and rails grow a hair in width and hardly at all in length. A leaf may bow a "
        f"little after a wet month and come back. Under {float(moisture.driest):g} % or over "
        f"{float(moisture.dampest):g} % for long, call the maker."
    )
    return tuple(lines)


def _checks(resolved: Resolved) -> tuple[str, ...]:
    """Once a year, each with a place for the date."""
    leaves = resolved.leaves
    guided = any(leaf.guide is not None for leaf in leaves)
    found = []
    if _on_tracks(resolved):
        found += [
            "Bracket and hanger screws are tight",
            "Track stops hold, no leaf can leave its track",
            "Track and floor guides are clear" if guided else "Track is clear",
            "No roller is worn, no leaf scrapes",
        ]
    if _on_hinges(resolved):
        found += [
            "Hinge screws are tight, no pin has worn or climbed",
            "Gaps are even, no leaf rubs or drops",
        ]
    panes = [pane for leaf in leaves for lite in leaf.lites for pane in lite.panes]
    if any(pane.stops is not None for pane in panes):
        found.append("No stop is loose, no pane is chipped")
    if any(pane.stops is None for pane in panes):
        found.append("No compound is cracked or loose, no pane is chipped")
    return tuple(found)


def _out_and_in(said: Printed, panes: tuple[ReplacementPane, ...]) -> tuple[str, ...]:
    """How the old pane comes out and the new one goes in, for each way that panes are held."""
    found = []
    for pane in panes:
        free = free_words(free_cell(pane.clearances, said))
        if pane.planted:
            found.append(
                "Planted bars first: a thin wire drawn through their bed, or by warming it, never a "
                "lever on the glass; clean them and plant them again on the new pane."
            )
        if pane.stop_width is not None:
            found += [
                "Take the stops off one face only, longest first, from the middle of each; number "
                "them.",
                f"Clean the frame, new tape, setting blocks, {free}; stops back with pins into the "
                "frame, never towards the glass.",
            ]
        else:
            found += [
                "Soften and lift the compound from the back, never against the bars; draw the "
                "points.",
                f"Clean and seal the rebate: bed, setting blocks, {free}, points flat on the glass, a "
                "fillet over them.",
            ]
    return tuple(dict.fromkeys(found))


def _replacing(said: Printed, panes: tuple[ReplacementPane, ...]) -> tuple[str, ...]:
    if not panes:
        return ()
    return (
        "Order by the mark and the sizes above; the pane is cut before it is toughened and cannot "
        "be cut again.",
        *_out_and_in(said, panes),
        *(
            ("The new pane carries its maker's safety mark, to be seen when it is in.",)
            if any(pane.kind in SAFETY_KINDS for pane in panes)
            else ()
        ),
    )
