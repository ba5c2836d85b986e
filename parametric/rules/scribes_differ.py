"""What closes a case to a wall is scribed, and not by the same amount all the way.

Why: whoever fits it must know which edge takes how much, before the saw; and that it is meant so.
Example: 1/8 off at the foot, 1/4 at the middle and 3/8 at the top of a wall that leans in.
Source: common practice, no source; what differs by less than a reading is trusted to is no difference.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from parametric.cases.face_frame import Scribe
from parametric.cases.run_edges import Filler
from parametric.figures import Figure, exceeds
from parametric.names import short
from parametric.problems import Problem
from parametric.resolve.casework import Edges
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun, listed, together


def scribes_differ(cases: CheckedCases) -> Iterator[Problem]:
    """A note for each frame and each run between walls, ceiling and floor that are not true."""
    for standing in cases.casework.cases:
        frame = standing.case.frame
        if frame is None:
            continue
        told = [_off(cases, side) for side in (frame.left, frame.right) if _differ(cases, side)]
        if told:
            shows = cases.job.size(frame.left.shows)
            yield _note(
                standing.name,
                f"{begun(standing.name)}: {'; '.join(told)}. Scribe it to the walls on site: both "
                f"stiles then show {shows} where they are narrowest.",
                cases,
            )
    alike: dict[str, list[str]] = {}
    for name, own in (
        *((run.name, run.edges) for run in cases.casework.runs),
        *cases.casework.edges,
    ):
        seen = [_seen(cases, one) for one in _fillers(own) if _uneven(cases, one.seen.values())]
        if seen:
            alike.setdefault("; ".join(seen), []).append(name)
    for seen_of, names in alike.items():
        message = f"{begun(together(names))}: {seen_of}. Scribe each on site."
        yield _note(names[0], message, cases)


def _fillers(edges: Edges) -> Iterator[Filler]:
    """Those that are seen: a plinth is levelled, and told where it is cut."""
    yield from (one for one in (edges.left, edges.right, edges.top) if one is not None)


def _differ(cases: CheckedCases, side: Scribe) -> bool:
    return _uneven(cases, [away for _, away in side.away])


def _uneven(cases: CheckedCases, values: Iterable[float]) -> bool:
    """Past what a reading is trusted to: 1.5 is said as 1/16 where inches are read."""
    sizes, trust = [float(value) for value in values], cases.job.shop.accuracy.reading
    apart = max(sizes) - min(sizes)
    return exceeds(apart, trust) and cases.job.size(apart) != cases.job.size(trust)


def _off(cases: CheckedCases, side: Scribe) -> str:
    """`off the left stile come 1/8 at the bottom, 1/4 at the middle and 3/8 at the top`."""
    return f"off the {side.side} stile come {_by_place(cases, side.away)}"


def _seen(cases: CheckedCases, filler: Filler) -> str:
    """`the left filler, made 42 wide, shows 36 at the bottom, 33 at the middle and 31 at the top`."""
    made = cases.job.size(filler.blank)
    return (
        f"the {short(filler.name)}, made {made} wide, shows {_by_place(cases, filler.seen.items())}"
    )


def _by_place(cases: CheckedCases, values: Iterable[tuple[str, Figure]]) -> str:
    return listed(f"{cases.job.size(value)} at the {place}" for place, value in values)


def _note(name: str, message: str, cases: CheckedCases) -> Problem:
    first = cases.casework.cases[0]
    here = next((c.survey for c in cases.casework.cases if name in (c.name, c.run)), first.survey)
    return Problem(
        code="scribes_differ",
        level="note",
        message=message,
        where=here.here,
        about=f"{name} / scribes",
        found="walls that are not true",
        allowed="scribed on site",
    )
