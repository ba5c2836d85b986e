"""Lists and notes of a kind of case: its boards with their marks, how they are held, its fronts."""

from __future__ import annotations

import re
from typing import assert_never

from parametric.cases.butt_joints import Dowels
from parametric.cases.cabinet import Corners
from parametric.cases.case_tenons import Tenons
from parametric.cases.fixings import TooShort
from parametric.cases.pocket_screws import PocketScrews
from parametric.drawing.arrangement_words import ON_CASE, said
from parametric.drawing.cases.plan_words import plan_notes
from parametric.drawing.cases.words import listed, sloping_notes
from parametric.drawing.column import Item, Sentences, TableItem, list_width
from parametric.drawing.set_out import diagonals_said, set_out_table, setting_out_of
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column
from parametric.names import SEPARATOR, short
from parametric.problems import Level
from parametric.resolve.matched_fronts import matched_sets
from parametric.trade.case_kinds import CaseKind
from parametric.trade.drawer_places import Covers, DrawerPlace, drawer_places
from parametric.trade.edge_band import banded_words
from parametric.trade.printed import several
from parametric.trade.setting_out import SettingOut

_HELD: dict[Corners, str] = {
    "dowel": "dowelled",
    "screw": "screwed",
    "pocket screw": "screwed through pockets",
    "loose tenon": "held by loose tenons",
    "glue": "glued",
}


def case_items(job: Subject, kind: CaseKind) -> list[Item]:
    """The column in the order it is read."""
    shape = setting_out_of(job, [kind.first.name])
    return [
        _boards(job, kind),
        _drawers(job, kind),
        *(_set_out(job, shape) if shape else []),
        Sentences(title="Mind", kind="warning", texts=_said(job, kind, "caution")),
        Sentences(
            title="Notes",
            kind="numbered",
            texts=(*_notes(job, kind), *_said(job, kind, "note")),
        ),
    ]


def _set_out(job: Subject, shape: SettingOut) -> list[Item]:
    """The case from above, outside: its corners, sides and angles, and its diagonals."""
    most = list_width(job.rules.unit)
    return [
        set_out_table(job, shape, "From above, outside", low="front", most=most),
        Sentences(title="Check", kind="numbered", texts=(diagonals_said(job, shape),)),
    ]


def _boards(job: Subject, kind: CaseKind) -> TableItem:
    """Marks and sizes of one case's boards, along the grain first, and the edges that are banded."""
    parts = next(g for g in job.assembly.groups if g.name == kind.first.name).parts
    lots: dict[str, list[str]] = {}
    for part in parts:
        if part.supplied:
            continue
        blank = part.blank
        size = " × ".join(job.wood(v) for v in (blank.length, blank.width, blank.thickness))
        bands = [word.removesuffix(" edge") for word in banded_words(part)]
        fronts = "front" if part.banded_edges else ""
        band = fronts or ", ".join(bands) or "–"
        row = lots.setdefault(part.mark, [part.mark, _noun(part.name, part.noun), "0", size, band])
        row[2] = str(int(row[2]) + 1)
    columns = (
        Column(head="Mark", width=9.0),
        Column(head="Board", width=26.0),
        Column(head="No.", width=7.0, anchor="right"),
        Column(head="Size, grain first", width=30.0, anchor="right"),
        Column(head="Banded", width=12.0),
    )
    title = "Boards of one" if len(kind.cases) > 1 else "Boards"
    return listed(job, title, columns, lots.values(), most=list_width(job.rules.unit))


def _drawers(job: Subject, kind: CaseKind) -> TableItem:
    """The boxes that run in one case: how high, where their slides go, how far fronts cover them."""
    rows = []
    for one in _places(job, kind):
        box, covers = one.box, one.covers
        rows.append(
            (
                one.called,
                " × ".join(job.wood(v) for v in (box.width, box.height)),
                job.wood(one.up),
                "–" if one.slides is None else job.wood(one.slides),
                "–" if covers is None else job.wood(covers.below),
                "–" if covers is None else _aside(job, covers),
            )
        )
    columns = (
        Column(head="Drawer", width=13.0),
        Column(head="Box w × h", width=24.0, anchor="right"),
        Column(head="up", width=10.0, anchor="right"),
        Column(head="slide up", width=15.0, anchor="right"),
        Column(head="below", width=10.0, anchor="right"),
        Column(head="aside", width=12.0, anchor="right"),
    )
    return listed(job, "Drawers", columns, rows, most=list_width(job.rules.unit))


def _places(job: Subject, kind: CaseKind) -> list[DrawerPlace]:
    return [one for one in drawer_places(job.resolved) if one.case == kind.first.name]


def _aside(job: Subject, covers: Covers) -> str:
    """How far a front stands past its box at the left and the right, once where that is alike."""
    sides = dict.fromkeys(job.wood(side) for side in (covers.left, covers.right))
    return ", ".join(sides)


def _noun(name: str, noun: str) -> str:
    """A board by its own name, but for its number and what is said of its finish."""
    word = short(name)
    same = word.split(" ")[0] == noun.split(" ")[0]
    return (noun if same else word).split(",")[0]


def _notes(job: Subject, kind: CaseKind) -> tuple[str, ...]:
    """How it is held together, what its back stands in, whose fronts it wears."""
    case = kind.first.case
    notes = [
        "Heights are from the foot of the case: upper faces, under faces of tops; clear widths "
        "are between boards.",
        _corners(job, kind),
        *_framed(job, kind),
    ]
    if case.plan is not None:
        notes += plan_notes(job, kind.first, case.plan)
    back = case.back
    if back is not None:
        where = {
            "groove": f"in grooves {job.wood(back.groove)} deep, {job.wood(back.clearance)} free in "
            "each",
            "rebate": f"in rebates {job.wood(back.groove)} deep",
            "planted": "planted on the back edges",
        }[back.held]
        notes.append(f"Back {job.wood(back.thickness)} thick, {where}.")
    notes += sloping_notes(kind.cases, job.rules.wood)
    if case.box.slope is not None:
        notes.append(
            "The top is glued to the bevelled ends and screwed plumb into their middles, heads "
            "sunk: a screw square to it may come out at their faces."
        )
    shelves = [board for board in case.boards if board.role == "shelf"]
    if shelves:
        notes.append("Shelves can be moved but for fixed ones; drawn where they stand at first.")
    if _places(job, kind):
        notes.append(
            "Drawers: up is from the foot of the case to the box's, slide up to the middle of its "
            "slides, if their data sheet asks for no other. Below and aside is how far the front "
            "stands past the box."
        )
    letters = [
        leaf.letter
        for one in kind.cases
        for door in job.resolved.doors
        if door.case == one.name
        for leaf in door.leaves
    ]
    if letters:
        notes.append(f"Its fronts: {', '.join(letters)}, on sheets of their own.")
    notes += _matched(job, kind)
    return tuple(notes)


def _framed(job: Subject, kind: CaseKind) -> list[str]:
    """How the members of its face frame are held together, and how many fixings a joint has."""
    casework = job.resolved.casework
    assert casework is not None, "a kind of case is of casework"
    bored = next(own for own in casework.bored if own.name == kind.first.name)
    if bored.frame is None or isinstance(bored.frame.wall, TooShort):
        return []
    many = int(bored.frame.wall.places.count)
    match bored.frame.wall:
        case Dowels():
            held = several(many, "dowel")
        case PocketScrews():
            held = f"{several(many, 'screw')} from pockets behind"
        case Tenons():
            held = several(many, "loose tenon")
        case _:
            assert_never(bored.frame.wall)
    return [f"Rails of its face frame stand between the stiles: {held} a joint, and glue."]


def _matched(job: Subject, kind: CaseKind) -> list[str]:
    """Which fronts are matched, and in which order they follow one another."""
    names = [case.name for case in kind.cases]
    return [
        f"Panels matched {one.way}, {one.name}: "
        + ", ".join(dict.fromkeys(panel.leaf.removeprefix("leaf ") for panel in one.panels))
        + (" from the foot." if one.way == "up" else " from the left.")
        for one in matched_sets(job.resolved.doors)
        if one.case in names
    ]


def _said(job: Subject, kind: CaseKind, level: Level) -> tuple[str, ...]:
    """What the check found of the boards of these cases."""
    names = {case.name for case in kind.cases}
    headings = "|".join(sorted({re.escape(case.case.spec.heading) for case in kind.cases}))
    return tuple(
        said(p)
        for p in job.problems
        if p.level == level
        and p.code in ON_CASE
        and (
            p.about.split(SEPARATOR)[0] in names
            or re.search(rf"\b({headings})\b", p.message, re.IGNORECASE)
        )
    )


def _corners(job: Subject, kind: CaseKind) -> str:
    """How level boards meet upright ones."""
    case = kind.first.case
    held = _HELD[case.spec.held_by]
    if float(case.box.let_in) > 0:
        return f"Level boards are let {job.wood(case.box.let_in)} into upright ones, and {held}."
    return f"Level boards butt against upright ones, and are {held}."
