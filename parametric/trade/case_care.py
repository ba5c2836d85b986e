"""How cabinets are kept, for whoever lives with them: what they bear, what holds them to the wall."""

from __future__ import annotations

from collections.abc import Iterable

from parametric.resolve.door import Resolved
from parametric.trade.case_shelves import CaseShelf, case_shelves
from parametric.trade.cautions import Cautions
from parametric.trade.printed import Printed, load_text


def loads_borne(shelves: Iterable[CaseShelf], said: Printed) -> str:
    """`Shelves bear: cabinet base 73 kg/m2.`; "" without shelves."""
    bears = {
        f"{shelf.standing.case.spec.heading} {load_text(shelf.written.load, said.unit)}": None
        for shelf in shelves
    }
    return f"Shelves bear: {'; '.join(bears)}." if bears else ""


def case_upkeep(resolved: Resolved, said: Printed) -> tuple[str, ...]:
    """What is done and what is not with cabinets; nothing in a job without.

    Source: common practice, no source.
    """
    casework = resolved.casework
    if casework is None:
        return ()
    borne = loads_borne(case_shelves(resolved), said)
    return (
        *((f"{borne} Heavy things low and beside the uprights.",) if borne else ()),
        *(
            (
                "Drawers draw out one at a time when they are full. Once a year: dust the slides, "
                "tighten their screws by hand; no oil, unless their data sheet asks for it.",
            )
            if casework.drawers
            else ()
        ),
    )


def case_checks(resolved: Resolved) -> tuple[str, ...]:
    """What is looked at on cabinets once a year."""
    casework = resolved.casework
    if casework is None:
        return ()
    shelves = any(case.case.of_role("shelf") for case in casework.cases)
    return (
        "Every cabinet is tight to its wall: no fixing has moved",
        *(("Every shelf lies on all of its pins, none has bent",) if shelves else ()),
        *(("Drawers run out and in freely, no slide is loose",) if casework.drawers else ()),
    )


def case_cautions(resolved: Resolved) -> Cautions:
    """What a client must never do with cabinets."""
    if resolved.casework is None:
        return ()
    return (
        "Nobody climbs on a shelf, a drawer or a door. A cabinet stays fixed to its wall: loose, it "
        "can go over, with what is in it.",
    )
