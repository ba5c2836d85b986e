"""A drawer with what lies in it is more than its pair of slides carries.

Why: slides sag, bind and drop the drawer when it is drawn out full.
Example: a box of 6.1 kg with a front of 2 and 26.6 in it is 34.7 on slides for 30.
Source: arithmetic; what lies in it is the drawer's `load`, ANSI/KCMA A161.1 where nothing is said.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.drawer_written import WoodenRunnersSpec
from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import listed
from parametric.trade.hardware_for_slides import OnSlides, on_slides
from parametric.trade.printed import weight, weight_limit


def slides_overloaded(cases: CheckedCases) -> Iterator[Problem]:
    """Caution, for drawers whose slides say what they carry; those alike are told together."""
    unit = cases.job.design.unit
    lots: dict[tuple[str, str], list[OnSlides]] = {}
    for own in on_slides(cases.job.resolved, cases.job.loads):
        spec = own.box.written
        if isinstance(spec, WoodenRunnersSpec) or spec.carries is None:
            continue
        if exceeds(own.carried, spec.carries):
            rated, found = weight_limit(spec.carries, unit), weight(own.carried, unit)
            lots.setdefault((rated, found), []).append(own)
    for (rated, found), lot in lots.items():
        first = lot[0].box
        assert not isinstance(first.written, WoodenRunnersSpec)
        assert first.written.carries is not None
        each = "the drawer" if len(lot) == 1 else "each drawer"
        yield Problem(
            code="slides_overloaded",
            level="caution",
            message=f"The slides of {listed(own.box.name for own in lot)} carry {rated} a pair; "
            f"{each} and what lies in it are {found}.",
            where=origin_line(first.written.carries),
            about=first.name,
            found=found,
            allowed=f"{rated} or less",
            fix="Take slides that carry more, or write the `load` that the drawers are for.",
        )
