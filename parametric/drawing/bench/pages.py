"""Which bench sheets there are and in which order, and on which sheet each set-up is found.

lists first:  order of work, cautions, cut lists, milling list, stop blocks
then:         a set-up sheet for every setting, glue-ups, finish
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.drawing.bench.bore_sheet import bore_sheet
from parametric.drawing.bench.case_glue_sheet import case_glue_sheet
from parametric.drawing.bench.cut_list import ROUGH, cut_list_sheets
from parametric.drawing.bench.drawer_sheet import drawer_sheet
from parametric.drawing.bench.finish_sheet import finish_sheet
from parametric.drawing.bench.glue_sheets import (
    alignment_sheet,
    alike,
    leaf_sheet,
    panel_sheet,
)
from parametric.drawing.bench.groove_sheets import blocks_sheet, groove_sheet
from parametric.drawing.bench.machine_lists import (
    milling_sheets,
    order_sheets,
    stop_sheets,
)
from parametric.drawing.bench.moulding_sheet import moulding_sheet
from parametric.drawing.bench.panel_saw_sheets import (
    bevel_sheet,
    set_alike,
    tongue_sheet,
    turn_of,
)
from parametric.drawing.bench.router_sheets import pocket_sheet, slot_sheet
from parametric.drawing.bench.saw_sheets import lengths_of, mitre_sheet, trim_sheet
from parametric.drawing.bench.saying import Numbers, numbers
from parametric.drawing.bench.screw_pocket_sheet import screw_pocket_sheet
from parametric.drawing.bench.set_up import SetUp, draw_set_up
from parametric.drawing.bench.shape_sheet import shape_sheet
from parametric.drawing.bench.squaring_sheet import squaring_sheet
from parametric.drawing.bench.tenon_sheet import tenon_sheet
from parametric.drawing.bench.words_sheets import all_cautions, paragraphs, words_sheets
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.bench_order import CUTTING_PLAN
from parametric.trade.milling import Setting
from parametric.trade.paperwork import Paperwork
from parametric.trade.router_setups import LooseTenonSetUp, stops_of

_LETTERS = "ABCDEFGHKLMNPRSTUVWXYZ"
"""Capitals that stay on their line: under the number runs a rule."""
PLAN = "plan"
"""The cutting plan is found by its name: its sheets are a group of their own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """Set-up sheets that go together: how lists find them, the number lettered on them.

    `steps` and `cautions` go on the page that follows, where there are any steps.
    """

    keys: tuple[str, ...]
    code: str
    set_ups: tuple[SetUp, ...]
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


def draw_bench(job: Subject, paper: Paperwork | None, title: TitleBlock) -> tuple[Sheet, ...]:
    """Every bench sheet; of a design that cannot be made, only the cut list."""
    if paper is None:
        return tuple(sheet for _, own in cut_list_sheets(job, title, None) for sheet in own)
    cut = cut_list_sheets(job, title, paper)
    waiting = dict.fromkeys(_known_keys(job, paper), "00")
    lists = _lists(job, title, paper, cut, waiting)
    found = {key: str(number) for key, number in _counted(lists).items()}
    found[CUTTING_PLAN] = PLAN
    found |= _stops_of_set_ups(paper, int(found["stop blocks"]), lists[-1][1])
    start = sum(len(own) for _, own in lists)
    drawn: list[Sheet] = []
    for entry in _entries(job, paper, {**waiting, **found}):
        for key in entry.keys:
            found.setdefault(key, str(start + len(drawn) + 1))
        drawn += _draw(job, title, entry)
    listed = [sheet for _, own in _lists(job, title, paper, cut, found) for sheet in own]
    return (*listed, *drawn)


def _lists(
    job: Subject,
    title: TitleBlock,
    paper: Paperwork,
    cut: tuple[tuple[str, tuple[Sheet, ...]], ...],
    sheets: Mapping[str, str],
) -> tuple[tuple[str, tuple[Sheet, ...]], ...]:
    """The lists by their names, in their order."""
    return (
        ("order", order_sheets(job, title, paper, sheets)),
        ("cautions", _cautions(job, title, paper)),
        *cut,
        ("milling", milling_sheets(job, title, paper, sheets)),
        ("stop blocks", stop_sheets(job, title, paper)),
    )


def _counted(lists: Sequence[tuple[str, tuple[Sheet, ...]]]) -> dict[str, int]:
    """The first sheet of each list; the rough sizes follow the cut list where it ends."""
    found, number = {}, 1
    for name, sheets in lists:
        found[name] = number
        for own, sheet in enumerate(sheets, number):
            if any(text.startswith(ROUGH) for text in _texts(sheet)):
                found.setdefault("rough sizes", own)
        number += len(sheets)
    return found


def stops_key(setting: Setting) -> str:
    """What the sheets of the stop-block list that a setting is on are found by."""
    return f"stops of {setting.code}"


def _stops_of_set_ups(paper: Paperwork, first: int, sheets: tuple[Sheet, ...]) -> dict[str, str]:
    """On which sheets of the stop-block list each setting has its places."""
    found = {}
    for setting in paper.milling:
        numbers = [n for n, sheet in enumerate(sheets, first) if setting.code in _texts(sheet)]
        found[stops_key(setting)] = _from_to(numbers[0], numbers[-1]) if numbers else ""
    return found


def _from_to(first: int, last: int) -> str:
    """`sheet 8`, `sheets 8 and 9`, `sheets 8 to 10`."""
    if first == last:
        return f"sheet {first}"
    return f"sheets {first} {'and' if last == first + 1 else 'to'} {last}"


def _texts(sheet: Sheet) -> Iterator[str]:
    return (element.text for element in sheet.elements if isinstance(element, Label))


def _cautions(job: Subject, title: TitleBlock, paper: Paperwork) -> tuple[Sheet, ...]:
    """Every caution of every setting, once; the glue's and the finish's are on their own sheets."""
    title = dataclasses.replace(
        title,
        document="Cautions for the machines",
        second_line="before each, the set-ups it is for; local codes and each machine's own "
        "instructions come first",
    )
    found = [(setting.code, setting.cautions) for setting in paper.milling]
    return words_sheets(job, title, (), all_cautions(found))


# --- set-ups -------------------------------------------------------------------------------


def _known_keys(job: Subject, paper: Paperwork) -> tuple[str, ...]:
    """Everything that a list may point to."""
    names = (
        "order",
        "cautions",
        "cut list",
        "rough sizes",
        "by door",
        "milling",
        "stop blocks",
    )
    blank = dict.fromkeys((*names, *(stops_key(one) for one in paper.milling)), "00")
    codes = (stops_key(setting) for setting in paper.milling)
    return (*names, *codes, *(key for entry in _entries(job, paper, blank) for key in entry.keys))


def _entries(job: Subject, paper: Paperwork, sheets: Mapping[str, str]) -> list[Entry]:
    """Every set-up sheet in the order of work."""
    say = numbers(job)
    early = [s for s in paper.milling if s.when == "before glue-up"]
    later = [s for s in paper.milling if s.when != "before glue-up"]
    beside = [door for door in job.resolved.doors if len(door.leaves) > 1]
    found = [
        Entry(
            keys=(f"glue-up {one.mark}",),
            code="",
            set_ups=(panel_sheet(job, say, one),),
            steps=one.steps,
            cautions=one.cautions[1:],
        )
        for one in paper.panel_glue_ups
    ]
    found += [_setting(job, say, paper, one, sheets) for one in early]
    found += [
        Entry(
            keys=tuple(f"glue-up {leaf.leaf}" for leaf in own),
            code="",
            set_ups=(leaf_sheet(job, say, own),),
            steps=own[0].steps,
            cautions=own[0].cautions[1:],
        )
        for own in alike(paper.leaf_glue_ups)
    ]
    found += [
        Entry(
            keys=tuple(f"glue-up {box.name}" for box in one.boxes),
            code="",
            set_ups=(drawer_sheet(job, say, one),),
            steps=one.steps,
            cautions=one.cautions[1:],
        )
        for one in paper.drawer_glue_ups
    ]
    found += [
        Entry(
            keys=tuple(f"glue-up {case.name}" for case in one.cases),
            code="",
            set_ups=(case_glue_sheet(job, say, one),),
            steps=one.steps,
            cautions=one.cautions[1:],
        )
        for one in paper.case_glue_ups
    ]
    if beside:
        found.append(
            Entry(
                keys=("alignment",),
                code="",
                set_ups=(alignment_sheet(job, say, paper.alignment, beside),),
            )
        )
    found += [_setting(job, say, paper, one, sheets) for one in later]
    if paper.finish.coats:
        found.append(
            Entry(
                keys=("finish",),
                code="",
                set_ups=(finish_sheet(say, paper.finish),),
                steps=paper.finish.steps,
                cautions=paper.finish.cautions[1:],
            )
        )
    return found


def _setting(
    job: Subject, say: Numbers, paper: Paperwork, one: Setting, sheets: Mapping[str, str]
) -> Entry:
    """The sheets of one setting of the milling list."""
    at = f"stop-block list, {sheets[stops_key(one)]}"
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    match one.kind:
        case "slot":
            tenon = tenon_of_slot(one, paper.loose_tenons)
            set_ups: tuple[SetUp, ...] = (slot_sheet(job, say, one, tenon, at),)
            # a rail's slot that begins at its shoulder is plunged as the stile's are, only deeper
            if tenon is not None and abs(float(one.depth or 0.0) - float(tenon.slot_depth)) < 1e-6:
                steps = tenon.steps
            if tenon is not None:
                cautions = _further(one, tenon.cautions)
        case "groove":
            lines = [line for line in stops_of(one, paper.stops) if line.blocks]
            set_ups = (
                groove_sheet(job, say, one, lines),
                *(
                    blocks_sheet(job, say, one, line, block)
                    for line in lines
                    for block in line.blocks
                ),
            )
        case "bevel":
            alike_saws = set_alike(one, paper.panel_saw)
            set_ups = tuple(bevel_sheet(job, say, one, own) for own in alike_saws)
            every = [saw for own in alike_saws for saw in own]
            steps = tuple(dict.fromkeys(step for saw in every for step in saw.steps))
            cautions = _further(one, every[0].cautions)
        case "tongue" | "back rebate":
            set_ups = tuple(
                tongue_sheet(job, say, one, own, turn)
                for own in set_alike(one, paper.panel_saw)
                if (turn := turn_of(one, own[0])) is not None
            )
        case "mitre":
            set_ups = (mitre_sheet(job, say, one, lengths_of(one, paper.lengths)),)
        case "trim":
            set_ups = (trim_sheet(job, say, one, paper.site_trim),)
        case "pocket":
            pockets = [s for s in paper.milling if s.kind == "pocket"]
            set_ups = (pocket_sheet(job, say, one, at, last=one is pockets[-1]),)
        case "bore":
            set_ups = (bore_sheet(job, say, one),)
        case "screw pocket":
            set_ups = (screw_pocket_sheet(job, say, one),)
        case "edges":
            set_ups = tuple(
                tenon_sheet(job, say, one, tenon, _slots_of(tenon, paper))
                for tenon in paper.loose_tenons
                if tenon_runs(one, tenon)
            )
        case "squaring":
            set_ups = (squaring_sheet(job, say, one, stops_of(one, paper.stops)),)
        case "shape":
            set_ups = (shape_sheet(job, say, one),)
        case "cope" | "moulding":
            set_ups = (moulding_sheet(job, say, one),)
    pointed = tuple(
        dataclasses.replace(
            set_up, under=f"{set_up.under} · all cautions: sheet {sheets['cautions']}"
        )
        for set_up in set_ups
    )
    return Entry(keys=(one.code,), code=one.code, set_ups=pointed, steps=steps, cautions=cautions)


def _slots_of(tenon: LooseTenonSetUp, paper: Paperwork) -> str:
    """The numbers of the settings that cut a tenon's slots."""
    return ", ".join(
        one.code
        for one in paper.milling
        if one.kind == "slot" and tenon_of_slot(one, (tenon,)) is not None
    )


def _further(setting: Setting, cautions: tuple[str, ...]) -> tuple[str, ...]:
    """The cautions that are neither on the set-up, as the first is, nor on the page of cautions."""
    return tuple(text for text in cautions[1:] if text not in setting.cautions)


def tenon_of_slot(setting: Setting, tenons: tuple[LooseTenonSetUp, ...]) -> LooseTenonSetUp | None:
    """The set-up whose slots a setting makes: its leaves, its size; in a rail that goes over its
    stiles' mouldings a slot is deeper by as much.
    """
    leaves = _leaves(setting)
    return next(
        (
            t
            for t in tenons
            if leaves & set(t.leaves)
            and setting.depth is not None
            and float(setting.depth) > float(t.slot_depth) - 1e-6
            and all(
                a is not None and abs(float(a) - float(b)) < 1e-6
                for a, b in (
                    (setting.cutter, t.cutter),
                    (setting.length, t.slot_length),
                    (setting.fence[0] if setting.fence else None, t.fence),
                )
            )
        ),
        None,
    )


def tenon_runs(setting: Setting, tenon: LooseTenonSetUp) -> bool:
    """True when a setting rounds the tenons of a set-up."""
    return bool(_leaves(setting) & set(tenon.leaves)) and (
        setting.width is None or abs(float(setting.width) - float(tenon.edge_radius)) < 1e-6
    )


def _leaves(setting: Setting) -> set[str]:
    return {name.split(" / ")[0] for run in setting.runs for name in run.names}


def _draw(job: Subject, title: TitleBlock, entry: Entry) -> list[Sheet]:
    """The set-ups of an entry, numbered M4, M4A, M4B; then their steps and cautions."""
    codes = [entry.code, *(f"{entry.code}{letter}" for letter in _LETTERS)]
    if not entry.code:
        codes = [""] * len(codes)
    sheets: list[Sheet] = []
    over = []
    for set_up in entry.set_ups:
        sheet, left_over = draw_set_up(job, title, codes[len(sheets)], set_up)
        sheets.append(sheet)
        over += list(left_over)
    parts = paragraphs(over, entry.steps, entry.cautions if entry.steps else ())
    if parts:
        first = entry.set_ups[0]
        follows = dataclasses.replace(
            title, document=f"{first.title}: step by step", second_line=first.under
        )
        sheets += words_sheets(job, follows, codes[len(sheets) :], parts)
    return sheets
