"""What a proposal says is included: the job's own lists, in a client's words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.drawing.subject import Subject
from parametric.infill.glass import Pane
from parametric.pack.door_words import alike, door_names
from parametric.pack.page_lengths import glass_amount, true_amount, wood_amount
from parametric.pack.preview_doors import of_door
from parametric.pack.proposal_cases import cabinets_included
from parametric.pack.proposal_paragraph import count, joined, on_paper, wood_words
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.paperwork import Paperwork
from parametric.writers.client_page import PreviewPage
from parametric.writers.proposal_words import PROPOSAL_WORDS as SAID

_HUNG_BY = ("track", "hanger", "guide", "hinge", "hinges", "pivot", "lock", "latch", "bolt")
"""The last word of a line of the hardware list that doors are hung or held by."""


def included(job: Subject, page: PreviewPage, paper: Paperwork) -> tuple[str, ...]:
    """What the drawing and the lists of this revision hold."""
    resolved = job.resolved
    found = list(cabinets_included(resolved, job.assembly, page, paper)) if page.cases else []
    found += every_door(resolved)
    panes = [pane for leaf in resolved.leaves for lite in leaf.lites for pane in lite.panes]
    if panes:
        how_many = count(len(panes), SAID["lite"]).capitalize()
        found.append(_glass(resolved, panes[0], how_many))
    counts = {item.what: int(float(item.number)) for item in paper.hardware if item.unit == "off"}
    for what, number in counts.items():
        if what.endswith("pull"):
            found.append(count(number, what).capitalize())
    hung = [count(counts[what], what) for what in counts if what.split()[-1] in _HUNG_BY]
    if hung:
        listed = ", ".join(hung[:-1])
        found.append(
            SAID["hardware"].format(joined([w for w in (listed, hung[-1]) if w]).capitalize())
        )
    found.append(_coats(paper))
    return tuple(on_paper(text) for text in found)


def every_door(resolved: Resolved) -> Iterator[str]:
    """The doors in walls by their size, each with its name where there are several."""
    for door in resolved.walls:
        for words in _doors_included(resolved.of(door)):
            yield of_door(door, words)


def _glass(resolved: Resolved, pane: Pane, how_many: str) -> str:
    """How many panes of what, and how thick: as it is sold, and as it measures where that differs."""
    if pane.unit is not None:
        build = (glass_amount(resolved, size).text for size in pane.unit)
        return SAID["glass unit"].format(how_many, pane.kind, *build)
    thick = glass_amount(resolved, pane.nominal).text
    if pane.true_differs:
        true = true_amount(resolved, pane.thickness).text
        return SAID["glass true"].format(how_many, pane.kind, thick, true)
    return SAID["glass"].format(how_many, pane.kind, thick)


def _doors_included(resolved: Resolved) -> tuple[str, ...]:
    """The doors by their size."""
    door = resolved.door
    wood, several = wood_words(resolved), len(door.leaves)

    def sizes(leaf: Leaf) -> list[str]:
        figures = (leaf.width, leaf.height, leaf.thickness)
        return [wood_amount(resolved, figure).text for figure in figures]

    if several > 1 and not alike(door):
        return tuple(
            SAID["one door"].format(which, *sizes(leaf), wood)
            for leaf, which in zip(door.leaves, door_names(door).which, strict=True)
        )
    how_many = count(several, SAID["door"]).capitalize()
    words = SAID["one door" if several == 1 else "doors"]
    return (words.format(how_many, *sizes(door.leaves[0]), wood),)


def _coats(paper: Paperwork) -> str:
    finish = paper.finish
    if not finish.coats:
        return SAID["bare"]
    numbers = [count(int(float(coat.coats)), "coat") for coat in finish.coats]
    if len(numbers) == 2:
        said = SAID["paint coats"].format(*numbers)
    else:
        said = SAID["coats"].format(numbers[0], finish.kind)
    words = said[0].upper() + said[1:]
    return f"{words}: {finish.colour}" if finish.colour else words


def lines(written: Sequence[str] | None) -> tuple[str, ...]:
    """A maker's list, each line with a capital as the rest has it."""
    return tuple(f"{line[:1].upper()}{line[1:]}" for line in written or ())
