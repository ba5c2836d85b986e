"""The fronts of a cabinet as a door of fronts: what hangs on a case hangs as on one that stood."""

from __future__ import annotations

from typing import Any

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import Case, FrontOpening
from parametric.cases.lines import CaseLine
from parametric.figures import Figure
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
from parametric.hangings.fronts import BayLine, FrontLine
from parametric.hangings.hanging import Side, Site
from parametric.written import Rest


def hung_fronts(
    spec: CabinetSpec,
    *,
    edge: Figure,
    partition: Figure,
    travel: Figure | None,
    hinged: Side | None = None,
) -> FrontsSpec:
    """The fronts as they are hung.

    Args:
        spec: the cabinet as written.
        edge: how thick its sides, top and bottom are seen from the front, mm.
        partition: the same of what stands between two bays, mm.
        travel: how far its drawers draw out, mm; None where it has none.
        hinged: the side that every door hangs on that does not say which.
    """
    fronts: FrontsSpec = FrontsSpec.model_construct(
        kind="cabinet",
        in_=spec.in_,
        leaf=spec.leaf,
        floor_gap=Figure(0.0),
        track=None,
        guide=None,
        hinge=spec.hinge,
        pull=spec.pull,
        lock=None,
        finish=spec.finish,
        pinned=None,
        fronts=spec.fronts,
        front_gap=spec.front_gap,
        edge_reveal=spec.edge_reveal,
        case_edge=edge,
        partition=partition,
        drawer_leaf=spec.drawer_leaf,
        drawer_travel=travel,
        fronts_matched=spec.fronts_matched,
        left_to_right=tuple(_bay(spec, index, hinged) for index in range(len(spec.bays))),
        top_to_bottom=None,
    )
    fronts.stands_for(spec)
    return fronts


def _bay(spec: CabinetSpec, index: int, hinged: Side | None) -> BayLine:
    """One bay with its fronts, of one that is open throughout as of any other."""
    bay = spec.bays[index]
    lines: list[FrontLine] = []
    if bay.top_to_bottom is not None:
        lines += [_held(line, spec) for line in bay.top_to_bottom]
    else:
        kind = "open" if bay.word == "bay" else bay.word
        named: dict[str, Any] = {kind.replace(" ", "_"): Rest()}
        line: CaseLine = CaseLine.model_construct(
            **named, leaf=bay.leaf, hinge_side=bay.hinge_side, stay=bay.stay
        )
        line.stands_for(bay)
        lines.append(_held(line, spec))
    if hinged is None and spec.plan == "inside corner":
        # each of two doors hangs on its own arm's side; which, is known where they are placed
        hinged = "left"
    if hinged is not None:
        lines = [_hinged(line, hinged) for line in lines]
    made: BayLine = BayLine.model_construct(
        bay=bay.size,
        leaf=bay.leaf,
        hinge_side=bay.hinge_side,
        stay=bay.stay,
        top_to_bottom=tuple(lines),
    )
    made.stands_for(bay)
    return made


def _held(line: CaseLine, spec: CabinetSpec) -> CaseLine:
    """A line with the cabinet's stay, where it is a flap's and names none itself."""
    if line.flap is None or line.stay is not None or spec.stay is None:
        return line
    return line.model_copy(update={"stay": spec.stay})


def fronts_of(
    spec: CabinetSpec, case: Case, fronts: FrontsSpec
) -> tuple[tuple[FrontsSpec, FrontOpening], ...]:
    """The fronts of each face of a case with what they hang in; none of an open one.

    Args:
        spec: the cabinet as written.
        case: the case.
        fronts: as they hang in a case with one face.
    """
    if not spec.has_fronts:
        return ()
    if not case.turned_fronts:
        return ((fronts, case.opening),)
    return tuple(
        (
            hung_fronts(
                spec,
                edge=one.opening.edge,
                partition=one.opening.partition,
                travel=None,
                hinged=one.hinged,
            ),
            one.opening,
        )
        for one in case.turned_fronts
    )


def _hinged(line: FrontLine, side: Side) -> FrontLine:
    """A door with the side it hangs on, where it does not say it itself."""
    if line.front != "door" or line.hinge_side is not None:
        return line
    made: FrontLine = line.model_copy(update={"hinge_side": side})
    made.stands_for(line)
    return made


def site_of(opening: FrontOpening) -> Site:
    """What a case's fronts are sized from: true, for it is made so."""
    return Site(
        widest=opening.width,
        narrowest=opening.width,
        clear=opening.width,
        clear_left=Figure(0.0),
        head=opening.head,
        foot=opening.foot,
        wall=None,
        rise=None,
        heads=opening.heads,
    )
