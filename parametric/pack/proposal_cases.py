"""What a proposal says of cabinets: their paragraph, what is included, their drawings' words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from parametric.drawing.cases.room import Room, rooms
from parametric.drawing.proposal import DrawingWords
from parametric.drawing.subject import Subject
from parametric.model import Assembly
from parametric.pack.door_words import in_words
from parametric.pack.page_lengths import wood_amount
from parametric.pack.proposal_paragraph import count, joined, on_paper
from parametric.resolve.door import Resolved
from parametric.trade.paperwork import Paperwork
from parametric.writers.client_page import PreviewPage, plain
from parametric.writers.proposal_words import CABINET_PROPOSAL_WORDS as SAID

_CLOSINGS: Mapping[str, str] = {
    "plinth": "plinth",
    "frame rail": "face frame",
    "filler": "fillers",
    "cornice": "cornice",
    "counter": "counter",
}
"""What closes cabinets to the room, by the end of its name in the shop."""
_TOLD = ("floor", "wall")
"""The facts about the room that are told under its drawing, by what they are known by."""


def cabinets_paragraph(resolved: Resolved, page: PreviewPage, *, brief: bool = False) -> str:
    """The cabinets in a few sentences; `brief`ly, only what they are and of what."""
    casework, finish = resolved.casework, resolved.finish
    assert casework is not None, "the job has casework"
    kind = "none" if finish is None else finish.kind
    worn = {"paint": SAID["painted"], "none": ""}.get(kind, SAID["finished"].format(kind))
    sentences = [SAID["cabinets made"].format(plain(page.thing), worn)]
    if not brief:
        one = "1" if len(casework.cases) == 1 else "n"
        deep = wood_amount(resolved, casework.depth).text
        sentences += [
            SAID["between"].format(fact.label, plain(fact.value))
            for fact in page.facts
            if fact.key == "opening"
        ]
        sentences.append(SAID[f"cabinets deep {one}"].format(deep))
    return on_paper(" ".join(sentences))


def cabinets_included(
    resolved: Resolved, assembly: Assembly, page: PreviewPage, paper: Paperwork
) -> Iterator[str]:
    """What stands there, of what, what closes it to the room, and what drawers run on."""
    casework = resolved.casework
    assert casework is not None, "the job has casework"
    yield plain(page.thing)
    names = {case.name for case in casework.cases}
    fronts = [leaf for door in resolved.doors if door.case for leaf in door.leaves]
    if fronts:
        timbers = dict.fromkeys(leaf.timber.name for leaf in fronts)
        yield SAID["fronts of"].format(joined(list(timbers)))
    boards = dict.fromkeys(
        part.material.name
        for group in assembly.groups
        if group.name in names
        for part in group.parts
        if part.material.look == "board" and not part.noun.startswith("counter")
    )
    if boards:
        yield SAID[f"cabinets of {'1' if len(names) == 1 else 'n'}"].format(joined(list(boards)))
    nouns = {part.noun for group in assembly.groups if not group.motion for part in group.parts}
    closings = [
        SAID[word] for end, word in _CLOSINGS.items() if any(_named(noun, end) for noun in nouns)
    ]
    if closings:
        yield SAID["closings"].format(joined(closings)).capitalize()
    for item in paper.hardware:
        if item.unit == "pair":
            number = count(int(float(item.number)), SAID["pair"])
            yield SAID["pairs of"].format(number, item.what).capitalize()


def _named(noun: str, word: str) -> bool:
    return noun.startswith(word) or noun.endswith(word)


def rooms_words(job: Subject, page: PreviewPage) -> tuple[DrawingWords, ...]:
    """What the drawing of each room says; what the floor and the walls do, where there is one."""
    found = rooms(job)
    alone = len(found) == 1
    floor = " ".join(
        SAID["room does"].format(fact.label, plain(fact.value), plain(fact.note))
        for fact in page.facts
        if alone and fact.key in _TOLD
    )
    return tuple(
        DrawingWords(head=head, floor=on_paper(floor), key=" ".join(_key(room)))
        for room, head in zip(found, _heads(job.resolved, found), strict=True)
    )


def _key(room: Room) -> Iterator[str]:
    """What the drawing's lines mean."""
    if any(front.leaf.hinges for front in room.fronts):
        yield SAID["key hinges"]
    yield SAID["key"]


def _heads(resolved: Resolved, found: Sequence[Room]) -> Iterator[str]:
    """`The drawing`; of several, each with the name of its survey."""
    for room in found:
        where = in_words(SAID["the cabinets"])
        if len(found) > 1:
            where = room.name.removeprefix("survey").strip() or where
        several = len(found) > 1 or resolved.walls
        yield SAID["of place"].format(SAID["drawing"], where) if several else SAID["drawing"]
