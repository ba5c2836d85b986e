"""What is said beside the picture of a flap: its hinges, where its stays go, what they hold."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import assert_never

from parametric.cases.case import Case
from parametric.drawing.arrangement_words import ON_FLAPS, said
from parametric.drawing.column import Item, Sentences, TableItem
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.figures import exceeds
from parametric.hangings.flaps import LEVEL
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.lid_stay import LidStays
from parametric.hardware.stay import NoPlace
from parametric.hardware.stay_kinds import Stays
from parametric.names import SEPARATOR
from parametric.resolve.flap_boring import board_at
from parametric.resolve.leaf import Leaf
from parametric.trade.printed import force, moment, weight, weight_limit


def flap_items(job: Subject, case: Case, leaf: Leaf, letters: str) -> list[Item]:
    """Tables and notes of one flap and those alike.

    Args:
        job: the job.
        case: whose front it is.
        leaf: the flap.
        letters: of all that are alike.
    """
    return [
        _hinges(job, case, leaf, letters),
        *_fixings(job, leaf),
        *_holds(job, leaf),
        Sentences(title="Mind", kind="warning", texts=_cautions(job, leaf)),
        Sentences(title="Notes", kind="numbered", texts=tuple(_notes(job, case, leaf))),
    ]


def _cautions(job: Subject, leaf: Leaf) -> tuple[str, ...]:
    """What the check found of this flap, and of those that are told with it."""
    found = (
        said(p)
        for p in job.problems
        if p.level == "caution"
        and p.code in ON_FLAPS
        and re.search(rf"\b(leaf|leaves)\b[^:;.]*\b{leaf.letter}\b", p.message, re.IGNORECASE)
    )
    return tuple(dict.fromkeys(found))


def _table(
    job: Subject, title: str, columns: Sequence[Column], rows: Sequence[tuple[str, ...]]
) -> TableItem:
    height = table_height(job.rules.unit)
    return TableItem(
        title=title, columns=fitted(columns, tuple(rows), height), rows=tuple(rows), height=height
    )


def _hinges(job: Subject, case: Case, leaf: Leaf, letters: str) -> TableItem:
    """Each hinge: its cup from the flap's left end, its plate along the board."""
    flap = leaf.hung.flap
    assert flap is not None, "only flaps are told here"
    board = board_at(case, leaf, flap)
    left = float(case.opening.left + leaf.hung.left)
    rows = []
    for place in leaf.hinges[0].hinges.places if leaf.hinges else ():
        word = place.name.rpartition(" / ")[2].removesuffix(" hinge")
        plate = job.wood(float(place.centre) + left - board.x)
        rows.append((word, job.wood(place.centre), plate))
    name = board.name.rpartition(" / ")[2]
    columns = (
        Column(head="Hinge", width=18.0),
        Column(head="Cup, from the left", width=40.0, anchor="right"),
        Column(head=f"Plate, along the {name}", width=60.0, anchor="right"),
    )
    return _table(job, f"Hinges of flap {letters}, by its {flap.side}", columns, rows)


def _fixings(job: Subject, leaf: Leaf) -> Iterator[TableItem]:
    """Where each stay is screwed."""
    stays = leaf.stays
    if stays is None or isinstance(stays.sized, NoPlace):
        return
    rows = [
        (
            one.side,
            job.wood(one.across),
            job.wood(one.up),
            job.wood(one.behind),
            job.wood(one.case_up),
        )
        for one in stays.sides
    ]
    columns = (
        Column(head="Stay", width=14.0),
        Column(head="Flap, from its left", width=28.0, anchor="right"),
        Column(head="from its foot", width=22.0, anchor="right"),
        Column(head="Case, from the front", width=30.0, anchor="right"),
        Column(head="from its foot", width=24.0, anchor="right"),
    )
    yield _table(job, "Stays, to the middle of each fixing", columns, rows)


def _holds(job: Subject, leaf: Leaf) -> Iterator[TableItem]:
    """What turns the flap, and what turns it back."""
    stays = leaf.stays
    if stays is None or isinstance(stays.sized, NoPlace):
        return
    columns = (
        Column(head="What holds it", width=74.0),
        Column(head="", width=44.0, anchor="right"),
    )
    yield _table(
        job, f"{int(stays.sized.count)} × {stays.sized.kind}", columns, _rows(job, stays.sized)
    )


def _rows(job: Subject, stays: Stays) -> list[tuple[str, ...]]:
    unit, place = job.rules.unit, stays.place
    taut = ("between fixings, open", job.fine(place.open))
    match stays:
        case GasStruts():
            way = "push it open" if exceeds(stays.struts_shut, 0.0) else "press it shut"
            return [
                ("between fixings, shut", job.fine(place.shut)),
                taut,
                ("force of each", force(stays.force, unit)),
                ("least that holds it", force(stays.least, unit)),
                ("open: its weight turns it by", moment(stays.weight_open, unit)),
                ("open: the struts turn it back by", moment(stays.struts_open, unit)),
                ("shut: its weight opens it by", moment(stays.weight_shut, unit)),
                (f"shut: the struts {way} by", moment(stays.struts_shut, unit)),
                ("pull at its edge that starts it down", force(stays.to_shut, unit)),
            ]
        case LidStays():
            rated = "not known" if stays.carries is None else weight_limit(stays.carries, unit)
            return [
                taut,
                ("leaning on its free edge", weight_limit(stays.written.leant_on, unit)),
                ("pull on each", weight(stays.pull, unit)),
                ("each is made for", rated),
            ]
        case _:
            assert_never(stays)


def _notes(job: Subject, case: Case, leaf: Leaf) -> Iterator[str]:
    flap = leaf.hung.flap
    assert flap is not None, "only flaps are told here"
    hinges = leaf.hinges[0].hinges if leaf.hinges else None
    if isinstance(hinges, CupHinges):
        yield (
            f"Cups Ø{job.fine(hinges.cup)}, {job.fine(hinges.depth)} deep, their middle "
            f"{job.fine(hinges.boring)} from the {flap.side} edge, in the back of the rail."
        )
    if flap.side == "bottom" and float(flap.angle) == LEVEL:
        board = board_at(case, leaf, flap)
        top = case.box.foot + board.z + board.thickness
        over = flap.line + leaf.thickness - top
        word = "over" if exceeds(over, 0.0) else "under"
        yield (
            f"Open, its back lies {job.fine(abs(float(over)))} {word} the upper face of the "
            f"{board.name.rpartition(SEPARATOR)[2]} inside."
        )
    if leaf.stays is not None and not isinstance(leaf.stays.sized, NoPlace):
        wide, deep = (job.fine(size) for size in leaf.stays.pilot)
        yield f"A pilot Ø{wide}, {deep} deep, at the middle of each fixing; its other screws by the plate."
        yield "Sizes of the stays are their data sheet's: try one on the case before the rest is bored."
    grain = {field.panel.grain for field in leaf.panels}
    panel = f"; the panel's runs {'up' if grain == {'upright'} else 'across'}" if grain else ""
    yield f"Stiles run through from foot to top, grain upright{panel}."
    yield "A flap that nothing holds yet is propped or held by a second person."
