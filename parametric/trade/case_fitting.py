"""Cabinets on site: plinth, standing up, joining, fixing, scribing, fronts, in the order that works."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from parametric.cases.run_edges import Filler
from parametric.figures import Figure
from parametric.names import short
from parametric.resolve.casework import Casework
from parametric.resolve.door import Resolved
from parametric.trade.case_care import loads_borne
from parametric.trade.case_loads import CaseLoad
from parametric.trade.case_names import begun, listed, together
from parametric.trade.case_shelves import CaseShelf
from parametric.trade.cautions import LOCAL, ON_SITE, OVERHEAD, Cautions, lifting
from parametric.trade.flap_steps import flap_cautions
from parametric.trade.install_steps import Step
from parametric.trade.installing import InstallSheet
from parametric.trade.printed import Printed, printed, several, weight
from parametric.trade.site_words import Said

BRADS_APART = Figure(
    200.0, "brads of a face frame apart", origin="catalogue", source="common practice, no source"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseFitting:
    """What is brought, done and checked to fit every cabinet of a job."""

    bring: tuple[str, ...]
    steps: tuple[Step, ...]
    cautions: Cautions


def case_fitting(
    resolved: Resolved,
    cases: tuple[CaseLoad, ...],
    shelves: tuple[CaseShelf, ...],
    fronts: tuple[InstallSheet, ...],
) -> CaseFitting | None:
    """The order of work for cabinets; None in a job without.

    Args:
        resolved: the design's numbers.
        cases: what each weighs and how it comes to stand.
        shelves: what its shelves bear.
        fronts: the install sheets of the job's doors; those of cases are hung here.

    Source: common practice, no source.
    """
    casework = resolved.casework
    if casework is None:
        return None
    said = printed(resolved)
    low = [load for load in cases if not load.standing.on]
    high = [load for load in cases if load.standing.on]
    heaviest = max(cases, key=lambda load: float(load.carried))
    steps = [
        _measure(resolved, said),
        *_plinths(casework, said),
        *_stood(low, said),
        *_joined(casework),
        *_fixed(low, resolved, said),
        *_framed(casework, said),
        *_filled([one for run in casework.runs for one in (run.edges.left, run.edges.right)]),
        *_counters(casework),
        *_stood(high, said),
        *_fixed(high, resolved, said),
        *_filled([*(run.edges.top for run in casework.runs), *(e.top for _, e in casework.edges)]),
        *_hung(casework, fronts),
        _handed_over(shelves, said),
    ]
    return CaseFitting(
        bring=_BRING,
        steps=tuple(Step(number=n, do=do, check=check) for n, (do, check) in enumerate(steps, 1)),
        cautions=(
            *lifting(int(heaviest.people), weight(heaviest.carried, said.unit)),
            "A case that is not fixed to the wall goes over: no drawer is drawn out and nobody "
            "climbs on it before it is.",
            *OVERHEAD[:1],
            *flap_cautions(resolved.leaves),
            *ON_SITE,
            LOCAL,
        ),
    )


_BRING = (
    "level line or laser, plumb line, long straight edge, tape, scribing block, pencil",
    "packers and wedges, clamps with pads, blankets, straps",
    "drill, bits with a stop, screws and plugs for the wall, plane and jigsaw for scribing",
)


def _measure(resolved: Resolved, said: Printed) -> Said:
    return (
        "Measure the room again: widths at foot, middle and top, both walls off a plumb line, floor "
        "and ceiling off one level line. Mark the highest point of the floor.",
        f"Each within {said.fine(resolved.shop.accuracy.reading)} of the drawing. If not, stop and "
        "ask.",
    )


def _plinths(casework: Casework, said: Printed) -> Iterator[Said]:
    for run in casework.runs:
        plinth = run.edges.plinth
        if plinth is not None:
            line = run.edges.plinth_from_line
            read = "" if line is None else f", {said.wood(line)} over the line it was read from"
            yield (
                f"{begun(run.name)}: a level line {said.wood(run.foot)} over the highest floor{read}; the "
                f"{run.spec.levelled_by} to it, from the floor "
                f"{_by_place(plinth.seen.items(), said)}.",
                f"Level along and across, its front {said.wood(run.spec.plinth_back)} behind the "
                "cases'; nothing rocks.",
            )


def _stood(cases: Iterable[CaseLoad], said: Printed) -> Iterator[Said]:
    """Cases that come to stand in one way, together."""
    ways: dict[str, list[CaseLoad]] = {}
    for load in cases:
        ways.setdefault(_way(load, "it", said), []).append(load)
    for loads in ways.values():
        way = _way(loads[0], "it" if len(loads) == 1 else "each", said)
        names = together([load.standing.name for load in loads])
        by_weight = sorted((load.carried for load in loads), key=float)
        weighs = dict.fromkeys(weight(by_weight[i], said.unit) for i in (0, -1))
        people = several(max(int(load.people) for load in loads), "person", "people")
        yield (
            f"{begun(names)}, without fronts and loose shelves: {way}.",
            f"{people}; {' to '.join(weighs)}. Level on its foot, front edges in one line.",
        )


def _way(load: CaseLoad, it: str, said: Printed) -> str:
    """How a case comes to stand; `it` is what it is called there, one or each of several."""
    standing, up = load.standing, load.up
    base, on = standing.case.box.foot, standing.on
    raised = float(base) > 0.0
    if load.hangs or (up is None and raised and not on):
        return f"lift {it} to its place, its foot {said.wood(base)} over the highest floor"
    if up is None:
        return f"carry {it} in upright and set it {f'on {on}' if on else 'down'}"
    lift = f"then lift it {said.wood(base)}" if raised else "then walk it in"
    place = f"on {on}" if on else "where it stands"
    match up.order:
        case "where it stands":
            return f"lay {it} on its back and tip it up {place}"
        case "on the floor, then lifted":
            return f"tip {it} up on the floor, {lift}: it does not tip up {place}"
        case "from its side, where it stands":
            return f"bring {it} in on its side and tip it up {place}"
        case "from its side on the floor, then lifted":
            return f"tip {it} up from its side on the floor, {lift}"
        case "not at all":
            return f"bring {it} in in parts and build it in place: it does not tip up in this room"
        case _:
            assert_never(up.order)


def _joined(casework: Casework) -> Iterator[Said]:
    if any(len(run.cases) > 1 for run in casework.runs):
        yield (
            "Clamp neighbours to one another, faces of the sides together, and screw them through "
            "where a hinge plate or a row of holes hides it.",
            "Front edges flush to the finger, tops in one line.",
        )


FIXED_INTO = {
    "solid timber": "into the timber behind it",
    "studs": "into studs only",
    "masonry": "into plugs that suit the masonry",
    "board only": "into a timber built in first: board alone holds nothing",
    "not known": "once it is known what is behind: drill and look",
}
"""What a case is screwed into, by what the survey says is behind the wall. Common practice, no source."""


def _fixed(cases: Sequence[CaseLoad], resolved: Resolved, said: Printed) -> Iterator[Said]:
    walls: dict[str, list[str]] = {}
    for load in cases:
        opening = load.standing.opening
        board = "" if opening.board is None else f" under {said.fine(opening.board)} of board"
        thread = f", {said.wood(resolved.shop.limits.screw_in_timber)} of thread in it{board}"
        timber = opening.fixing in ("solid timber", "studs")
        into = f"{FIXED_INTO[opening.fixing]}{thread if timber else ''}"
        walls.setdefault(into, []).append(load.standing.name)
    sloping = {load.standing.name for load in cases if load.standing.case.box.slope is not None}
    for into, names in walls.items():
        # under a slope the diagonals of a case are not alike
        true = "its gap to the slope even" if sloping & set(names) else "its two diagonals alike"
        yield (
            f"Fix {together(names)} to the wall, at least two screws high up in each, {into}. Pack "
            "behind where the wall falls away; never pull a case to it.",
            f"Plumb, {true}, and still when it is pulled at its top.",
        )


def _framed(casework: Casework, said: Printed) -> Iterator[Said]:
    for standing in casework.cases:
        if (frame := standing.case.frame) is not None:
            yield (
                f"Hold the face frame level before {standing.name}, scribe both stiles to the walls, "
                "cut, try; then glue it to the front edges and pin it with brads "
                f"{said.wood(BRADS_APART)} apart into sides, partitions and bottom, or screw it from "
                "pockets inside; punch and fill.",
                f"Both stiles show {said.wood(frame.left.shows)} where they are narrowest; no light "
                "at the wall.",
            )


def _filled(fillers: Iterable[Filler | None]) -> Iterator[Said]:
    names = dict.fromkeys(f"the {short(one.name)}" for one in fillers if one is not None)
    if names:
        yield (
            f"Scribe and fit {listed(names)}, as the sheet of scribes says.",
            "No light between it and wall or ceiling; its face level with what is beside.",
        )


def _counters(casework: Casework) -> Iterator[Said]:
    under = [case.name for case in casework.cases if case.counter is not None]
    if under:
        yield (
            f"Counter on {together(under)}: scribe it to the walls, then screw it from below through "
            "slots.",
            "Level both ways; it lies on every side and partition.",
        )


def _hung(casework: Casework, fronts: tuple[InstallSheet, ...]) -> Iterator[Said]:
    """What is hung on each case, as its own order of work has it: without measuring and handing over.

    Cases whose fronts go on alike are told together, by the letters of the first.
    """
    alike: dict[tuple[str, ...], list[InstallSheet]] = {}
    for install in fronts:
        if install.on_a_case:
            words = tuple(_without_letters(f"{s.do} {s.check}") for s in install.steps[1:-1])
            alike.setdefault(words, []).append(install)
    for installs in alike.values():
        names = begun(together([install.place for install in installs]))
        if len(installs) > 1:
            names = f"{names}, by the letters of the first"
        for step in installs[0].steps[1:-1]:
            alone = len(casework.cases) == 1 or not installs[0].place
            yield (step.do if alone else f"{names}: {step.do}", step.check)


def _without_letters(words: str) -> str:
    """`leaves A and B` as `leaves # and #`: which leaves they are is all that two cases differ in."""
    return re.sub(
        r"\b(leaf|leaves) [A-Z]{1,2}\b(, [A-Z]{1,2}\b)*( and [A-Z]{1,2}\b)?",
        lambda found: re.sub(r"\b[A-Z]{1,2}\b", "#", found[0]),
        words,
    )


def _handed_over(shelves: tuple[CaseShelf, ...], said: Printed) -> Said:
    told = "Show the client: one drawer at a time, nobody climbs, the fixings to the wall stay."
    return (
        " ".join(
            filter(None, ("Shelves in." if shelves else "", told, loads_borne(shelves, said)))
        ),
        "Signed for, with this sheet left behind.",
    )


def _by_place(values: Iterable[tuple[str, Figure]], said: Printed) -> str:
    return listed(f"{said.wood(value)} at the {place}" for place, value in values)
