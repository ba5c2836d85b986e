"""The doors in a few sentences, as a proposal begins, from what there is of them."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.infill.raised_panel import RaisedPanel
from parametric.pack.door_words import (
    DoorNames,
    alike,
    counted,
    door_names,
    hung_on,
    in_words,
    towards,
)
from parametric.pack.page_lengths import wood_amount
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.printed import several
from parametric.trade.standing import first_to_open
from parametric.writers.client_page import Amount, Fact, plain
from parametric.writers.page_words import FACT_WORDS
from parametric.writers.proposal_words import PROPOSAL_WORDS as SAID


def paragraph(resolved: Resolved, facts: dict[str, Fact], *, brief: bool = False) -> str:
    """The doors in a few sentences; `brief`ly, only what they are and how large."""
    door, finish = resolved.door, resolved.finish
    names = door_names(door)
    kind = "none" if finish is None else finish.kind
    worn = {"paint": SAID["painted"], "none": ""}.get(kind, SAID["finished"].format(kind))
    what = "halves" if names.halves else f"{names.moves} {names.many}"
    if names.fronts:
        what = f"fronts {names.one}"
    opened = f"open {names.many}"
    if names.moves == "slide":
        apart = names.count == 2 and door.hanging.passing_gap is None
        opened = "open slide apart" if apart else f"open slide {names.many}"
    sentences = [
        SAID[what].format(wood_words(resolved), worn, counted(names.count)),
        *_sized(resolved),
    ]
    if brief:
        return on_paper(" ".join(sentences))
    sentences += [*_headed(facts, names), *_moving(resolved, facts)]
    if (clear := facts.get("clear way")) is not None:
        sentences.append(SAID[opened].format(plain(clear.value)))
    return f"{on_paper(' '.join(sentences))} {floor_words(facts)}".rstrip()


def _sized(resolved: Resolved) -> tuple[str, ...]:
    """How large each is and what fills it; leaf by leaf where they differ."""
    door = resolved.door
    leaf, names = door.leaves[0], door_names(door)
    thick = wood_amount(resolved, leaf.thickness).text
    if names.count == 1 or alike(door):
        sizes = [wood_amount(resolved, figure).text for figure in (leaf.width, leaf.height)]
        each = "each 1" if names.count == 1 else "each n"
        return (SAID[each].format(*sizes, thick, _filled([leaf])),)
    apart = [
        SAID["differ"].format(
            in_words(which),
            wood_amount(resolved, one.width).text,
            wood_amount(resolved, one.height).text,
        )
        for one, which in zip(door.leaves, names.which, strict=True)
    ]
    return (*apart, SAID["differ thick"].format(thick, _filled(door.leaves)))


def _filled(leaves: Sequence[Leaf]) -> str:
    """`, with two panes of toughened glass and raised panel`."""
    panes = [pane for leaf in leaves for lite in leaf.lites for pane in lite.panes]
    panels = [panel for leaf in leaves for panel in leaf.panels]
    fills = []
    if panes:
        fills.append(SAID["lites"].format(count(len(panes), SAID["lite"]), panes[0].kind))
    raised = sum(isinstance(field.panel, RaisedPanel) for field in panels)
    for number, word in ((raised, "raised panel"), (len(panels) - raised, "flat panel")):
        if number:
            fills.append(count(number, SAID[word]))
    return SAID["filled"].format(joined(fills)) if fills else ""


def _headed(facts: dict[str, Fact], names: DoorNames) -> tuple[str, ...]:
    """What their shaped head does."""
    head = facts.get("head")
    if head is None:
        return ()
    rise = next(piece.text for piece in head.value if isinstance(piece, Amount))
    across = plain(head.note) == FACT_WORDS["head across"]
    return (SAID["head across" if across else f"head {names.one}"].format(rise),)


def _moving(resolved: Resolved, facts: dict[str, Fact]) -> tuple[str, ...]:
    """How they open."""
    door = resolved.door
    names, into, swing = door_names(door), towards(door), facts.get("swing")
    if names.moves == "slide":
        how = "1" if names.count == 1 else "n" if door.hanging.passing_gap is not None else "apart"
        where = "on the wall" if door.hanging.on_wall else "in the opening"
        return (SAID[f"{where} {how}"],)
    if swing is None or into is None:
        return ()
    reach = next(piece.text for piece in swing.value if isinstance(piece, Amount))
    first = first_to_open(door)
    aside: str = hung_on(door) if names.one == "1" else ""
    if first is not None:
        aside = SAID["first"].format(in_words(names.which[door.leaves.index(first)]))
    return (SAID[f"swing {'towards' if into else 'away'} {names.one}"].format(reach, aside),)


def floor_words(facts: dict[str, Fact]) -> str:
    """What the floor does under the doors, and how near they come to it as they swing."""
    if "floor gap" not in facts:
        return ""
    words = plain(facts["floor gap"].note)
    least = facts.get("swinging gap")
    if least is not None:
        words = f"{words} {SAID['least gap'].format(least.label, plain(least.value))}"
    return on_paper(words)


def wood_words(resolved: Resolved) -> str:
    """What they are made of."""
    return resolved.door.leaves[0].timber.name


def count(number: int, one: str, more: str = "") -> str:
    """`two panes`."""
    return several(number, one, more).replace(str(number), counted(number).lower(), 1)


def joined(pieces: Sequence[str]) -> str:
    """`two panes and one raised panel`."""
    *first, last = pieces
    return SAID["and"].format(", ".join(first), last) if first else last


def on_paper(text: str) -> str:
    """The page's fractions as paper has them: `33-17/32″`, to be stacked."""
    return text.replace("\u2009", "-").replace("\u2044", "/")
