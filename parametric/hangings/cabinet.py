"""New fronts for a case that stands already: doors, pairs and drawer fronts, in or over it.

seen from the front                     inset: within the plumb clear box, a gap at every edge
 __________________________             overlay: over the edges of sides, top and bottom, as far
|  drawer A  |   drawer C  |            as the reveal leaves of them; sized from the widest
|____________|_____________|            half overlay: as overlay over top and bottom, but only to
|            |      |      |            the middle of the sides, which the next case shares
|   door B   |pair D| pair E            between bays: over a partition, the middle of the gap over
|____________|______|______|            the middle of the partition
"""

from __future__ import annotations

import dataclasses
from typing import Literal

from parametric.figures import Figure, largest, named
from parametric.hangings.case_fronts import CaseFronts
from parametric.hangings.flap_gaps import flap_clearances
from parametric.hangings.flaps import FlapWay, flap_way
from parametric.hangings.front_faults import front_faults
from parametric.hangings.front_places import (
    FrontPlace,
    Measures,
    bay_heads,
    bay_spans,
    bay_widths,
    left_over,
    place_fronts,
    room_for_bays,
    room_for_fronts,
)
from parametric.hangings.fronts import Written
from parametric.hangings.hanging import (
    Case,
    Clearance,
    Fittings,
    Hanging,
    HungLeaf,
    Site,
    Span,
    Stock,
    states_of,
)
from parametric.hangings.swinging import Swing, swing_of
from parametric.model import Slide
from parametric.names import join
from parametric.problems import Problem
from parametric.units import Unit
from parametric.written import Group


class CabinetSpec(CaseFronts):
    """New fronts for a case, as written."""

    kind: Literal["cabinet"]

    def faults(self) -> tuple[Problem, ...]:
        """Lists that are missing or doubled, words of another way to lie, hinges on nothing."""
        return front_faults(self)

    def misfits(self, site: Site, unit: Unit) -> tuple[Problem, ...]:
        """Bays that do not add up to the case's width, or fronts that do not to its height."""
        measures, bays = measures_of(self, site), self.bays
        lines: list[tuple[Written, Group]] = [(bay.size, bay) for bay in bays]
        found = left_over(
            room_for_bays(measures, len(bays)), lines, what="bays", gaps="partitions", unit=unit
        )
        for bay, head in zip(bays, bay_heads(measures, bays), strict=True):
            room = room_for_fronts(measures, len(bay.fronts), head)
            lines = [(front.size, front.line) for front in bay.fronts]
            found += left_over(room, lines, what="fronts", gaps="gaps", unit=unit)
        return found

    def size(self, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
        """Inset from the plumb clear width, overlays from the widest; heights from the head."""
        return _size(self, site, stock, fittings)


def measures_of(spec: CaseFronts, site: Site) -> Measures:
    """What a case's fronts are placed by."""
    gap, edge = named("front gap", spec.front_gap), named("case edge", spec.case_edge)
    partition = edge if spec.partition is None else spec.partition
    partition = named("partition", partition)
    inset = spec.fronts == "inset"
    if inset:
        over = over_ends = -gap
    else:
        over_ends = named("head lap", edge - named("edge reveal", spec.edge_reveal))
        half = spec.fronts == "half overlay"
        over = named("side lap", edge / 2 - gap / 2 if half else over_ends)
    return Measures(
        left=site.clear_left if inset else named("left of the opening", 0.0),
        width=site.clear if inset else site.widest,
        foot=site.foot,
        head=site.head,
        gap=gap,
        partition=partition,
        over=over,
        over_ends=over_ends,
        inset=inset,
        shared=spec.fronts == "half overlay",
        heads=site.heads,
    )


def _size(spec: CaseFronts, site: Site, stock: tuple[Stock, ...], fittings: Fittings) -> Hanging:
    measures = measures_of(spec, site)
    places = place_fronts(measures, spec.bays)
    swings = [
        None if place.hinge is None else _swing(place, measures, stock[i], fittings)
        for i, place in enumerate(places)
    ]
    flaps = _flaps(places, measures, stock, fittings)
    leaves = tuple(
        _leaf(spec, place, i, measures, stock[i], swings[i], flaps[i])
        for i, place in enumerate(places)
    )
    cover = site.clear if measures.inset else measures.width + 2 * measures.over
    foot = named("foot of the fronts", measures.foot - measures.over_ends)
    every = range(len(leaves))
    head = max(bay_heads(measures, spec.bays), key=float)
    pairs = any(place.kind == "door pair" for place in places)
    return Hanging(
        kind=spec.kind,
        on_wall=not measures.inset,
        cover=named("cover", cover),
        leaf_width=max((place.width for place in places), key=float),
        leaf_height=named("height of the fronts", head - measures.foot + 2 * measures.over_ends),
        floor_gap=foot,
        head_above_foot=named("head above the foot", site.head - foot),
        leaves=leaves,
        tracks=(),
        states=states_of(
            {
                "shut": {},
                **_rows_open(places),
                "half open": dict.fromkeys(every, 0.5),
                "open": dict.fromkeys(every, 1.0),
            },
            stock,
        ),
        clear_way=None,
        across=_across(places, measures, spec, stock),
        head_gap=measures.gap if measures.inset else None,
        meeting_gap=measures.gap if pairs else None,
        meeting="butt" if pairs else None,
        hinge_gap=measures.gap,
        reach=named("reach when open", largest(*_reaches(spec, places, swings, flaps))),
        clearances=(
            *_clearances(places, swings, measures, stock, fittings.least_gap),
            *flap_clearances(places, measures, stock, fittings.least_gap),
        ),
        case=Case(
            gap=measures.gap,
            edge=named("case edge", spec.case_edge),
            partition=measures.partition,
            partitions=_partitions(measures, spec),
        ),
    )


def _swing(place: FrontPlace, measures: Measures, stock: Stock, fittings: Fittings) -> Swing:
    """How a door of the case opens: always towards the room."""
    assert place.hinge is not None
    assert fittings.pin_out is not None, "the reader has seen that there are hinges"
    return swing_of(
        name=stock.name,
        hinge_side=place.hinge,
        opens="towards you",
        left=place.left,
        width=place.width,
        thickness=stock.thickness,
        gap=measures.gap,
        pin_out=fittings.pin_out,
        pin_beside=fittings.pin_beside,
        wall=None,
        plane=_plane(measures, stock),
    )


def _flaps(
    places: tuple[FrontPlace, ...],
    measures: Measures,
    stock: tuple[Stock, ...],
    fittings: Fittings,
) -> list[FlapWay | None]:
    """How each flap opens, as far as its stay lets it; None of what is no flap."""
    opens = fittings.flaps_open or (None,) * len(places)
    return [
        None
        if place.flap is None
        else flap_way(
            leaf.name,
            place.flap,
            foot=place.foot,
            height=place.height,
            face_out=_plane(measures, leaf) + leaf.thickness / 2,
            opens=angle,
        )
        for place, leaf, angle in zip(places, stock, opens, strict=True)
    ]


def _plane(measures: Measures, stock: Stock) -> Figure:
    """Inset fronts stand flush with the case's front edges, overlays before them."""
    return -stock.thickness / 2 if measures.inset else stock.thickness / 2


def _leaf(
    spec: CaseFronts,
    place: FrontPlace,
    index: int,
    measures: Measures,
    stock: Stock,
    swing: Swing | None,
    flap: FlapWay | None,
) -> HungLeaf:
    left, right = spec.roles()[index]
    hung = HungLeaf(
        letter=stock.letter,
        block=spec.leaf_blocks[index],
        width=place.width,
        height=place.height,
        left=named(join(stock.name, "left edge"), place.left),
        foot=named(join(stock.name, "foot"), place.foot),
        plane=named(join(stock.name, "middle off the wall face"), _plane(measures, stock)),
        left_edge=left,
        right_edge=right,
        motion=(),
        pull_side=None,
        stacked=True,
    )
    if swing is not None and place.hinge is not None:
        return dataclasses.replace(
            hung,
            plane=swing.plane,
            motion=(swing.turn,),
            pull_side="left" if place.hinge == "right" else "right",
            swing=swing.angle,
            knuckles=swing.knuckles,
            hinged=((place.hinge, swing.knuckles),),
        )
    if flap is not None:
        return dataclasses.replace(
            hung,
            motion=(flap.turn,),
            flap=flap.hung,
            knuckles="front",
            hinged=((flap.hung.side, "front"),),
        )
    if place.kind == "fixed front":
        return hung
    assert spec.drawer_travel is not None, "the reader has seen that it is written"
    out = named(join(stock.name, "draws out"), spec.drawer_travel)
    return dataclasses.replace(hung, motion=(Slide(direction=(0.0, -1.0, 0.0), travel=out),))


def _rows_open(places: tuple[FrontPlace, ...]) -> dict[str, dict[int, float]]:
    """Fronts of one row open, those over and under it shut, where there are several rows."""
    rows = sorted({place.row for place in places})
    return {
        f"row {row + 1} open": {i: 1.0 for i, place in enumerate(places) if place.row == row}
        for row in rows
        if len(rows) > 1
    }


def _reaches(
    spec: CaseFronts,
    places: tuple[FrontPlace, ...],
    swings: list[Swing | None],
    flaps: list[FlapWay | None],
) -> list[Figure]:
    """How far each leaf comes out of the fronts' plane."""
    found = [swing.reach for swing in swings if swing is not None]
    found += [flap.hung.reach for flap in flaps if flap is not None]
    if spec.drawer_travel is not None and any(place.kind == "drawer" for place in places):
        found.append(spec.drawer_travel)
    return found or [Figure(0.0)]


def _partitions(measures: Measures, spec: CaseFronts) -> tuple[Figure, ...]:
    """The left edges of what stands between the bays."""
    found: list[Figure] = []
    at = measures.left
    for number, width in enumerate(bay_widths(measures, spec.bays)[:-1], 1):
        at = at + width
        if float(measures.partition) > 0:
            found.append(named(f"partition {number} from the left of the opening", at))
        at = at + measures.partition
    return tuple(found)


def _across(
    places: tuple[FrontPlace, ...],
    measures: Measures,
    spec: CaseFronts,
    stock: tuple[Stock, ...],
) -> tuple[Span, ...]:
    """From left to right through the row of each bay that has most leaves."""
    gap = Span(what="gap", name="front gap", size=measures.gap)
    between = gap
    if measures.inset and float(measures.partition) > 0:
        apart = named("between fronts at a partition", measures.partition + 2 * measures.gap)
        between = Span(what="gap", name="partition and its gaps", size=apart)
    spans: list[Span] = [gap] if measures.inset else []
    for bay, stretch in enumerate(bay_spans(measures, spec.bays)):
        if bay > 0:
            spans.append(between)
        rows: dict[int, list[int]] = {}
        for index, place in enumerate(places):
            if place.bay == bay:
                rows.setdefault(place.row, []).append(index)
        if not rows:
            spans.append(Span(what="gap", name="open bay", size=stretch.width))
            continue
        fullest: list[int] = max(rows.values(), key=len)
        for n, index in enumerate(fullest):
            spans += [gap] if n else []
            spans.append(Span(what="leaf", name=stock[index].name, size=places[index].width))
    return (*spans, *([gap] if measures.inset else []))


def _clearances(
    places: tuple[FrontPlace, ...],
    swings: list[Swing | None],
    measures: Measures,
    stock: tuple[Stock, ...],
    least: Figure | None,
) -> tuple[Clearance, ...]:
    """What a door needs of the gaps beside it: to come past with the edge that closes, and, where
    its hinges' data sheet says so, at the edge it hangs by; of a gap that two hang at, twice that.

    Beside an overlay at the end of the case there is nothing, but where the next case shares
    its side.
    """
    alone = not measures.inset and not measures.shared
    found = []
    for place, swing, leaf in zip(places, swings, stock, strict=True):
        if swing is None:
            continue
        hinge = 0 if place.hinge == "left" else 1
        if not (place.meets[1 - hinge] == "side" and alone):
            found.append(
                Clearance(
                    where=f"front gap beside {leaf.name}",
                    key="front gap",
                    has=measures.gap,
                    needs=swing.needs,
                )
            )
        if least is not None and not (place.meets[hinge] == "side" and alone):
            shared = place.meets[hinge] == "front" and _hung_beside(place, places)
            found.append(
                Clearance(
                    where=f"front gap at the hinges of {leaf.name}",
                    key="front gap",
                    has=measures.gap,
                    needs=named(
                        join(leaf.name, "gap that its hinges need"),
                        2 * least if shared else least,
                    ),
                )
            )
    return tuple(found)


def _hung_beside(place: FrontPlace, places: tuple[FrontPlace, ...]) -> bool:
    """Whether a door of the next bay hangs at the same gap, over some of the same height."""
    way = -1 if place.hinge == "left" else 1
    return any(
        one.bay == place.bay + way
        and one.hinge is not None
        and one.hinge != place.hinge
        and float(one.foot) < float(place.foot + place.height)
        and float(place.foot) < float(one.foot + one.height)
        for one in places
    )
