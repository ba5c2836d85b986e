"""A design file to a Design and a Shop: find the house, lay the layers, understand the blocks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from parametric.catalog.shop import Shop
from parametric.design.answers import stop
from parametric.design.calls import Halves, check_calls, half_written, never_called
from parametric.design.design import Design
from parametric.design.house import find_house
from parametric.design.language import (
    ALWAYS,
    ALWAYS_OF_CASES,
    CALLS,
    KINDS,
    NOT_BUILT_BLOCKS,
    OWN_NAMES,
    PLAIN,
    full_heading,
)
from parametric.design.layer import Layer, read_file
from parametric.design.merging import Layers, merge
from parametric.design.options import AS_DRAWN, Way, ways
from parametric.design.recorded import read_records, read_revisions
from parametric.design.records import Records, Revision
from parametric.design.settings import make_shop
from parametric.design.understanding import not_built, understand
from parametric.figures import Where
from parametric.problems import Problem, in_order, stops
from parametric.written import Block, Branch

_MISSING = "missing_key"


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """What came of reading: a Design and a Shop, or the problems that stand in the way.

    `letter` is that of the option which was read, "A" for the design as it stands.
    """

    design: Design | None
    shop: Shop | None
    house_file: str | None
    problems: tuple[Problem, ...]
    letter: str = AS_DRAWN


def load(path: Path | str, *, house: Path | str | None = None, user_house: bool = True) -> Loaded:
    """Read a design file and the house file that goes with it, as it stands.

    Args:
        path: the design file.
        house: a house file to use instead of looking for one.
        user_house: whether the user's own house file may serve; examples and tests say no.

    Returns:
        The Design and the Shop when there is no stop; every problem either way, stops first.
    """
    return load_options(path, house=house, user_house=user_house)[0]


def load_options(
    path: Path | str, *, house: Path | str | None = None, user_house: bool = True
) -> tuple[Loaded, ...]:
    """Read a design file and each of its options as a whole design; as it stands comes first.

    Args:
        path: the design file.
        house: as for `load`.
        user_house: as for `load`.

    Returns:
        As `load` does, for each option. What is wrong with the file itself is told of each.
    """
    path = Path(path)
    problems: list[Problem] = []
    design = read_file(path, "chosen", problems)
    found = find_house(path, given=None if house is None else Path(house), user_house=user_house)
    house_layer = None if found is None else read_file(found, "house", problems)
    shown = None if found is None else str(found)
    if design is None or (found is not None and house_layer is None):
        return (Loaded(design=None, shop=None, house_file=shown, problems=in_order(problems)),)
    records = read_records(path, design, problems)
    revisions = read_revisions(design, problems)
    return tuple(
        _loaded(path, way, house_layer, shown, records, revisions, problems)
        for way in ways(design, problems)
    )


def _loaded(
    path: Path,
    way: Way,
    house: Layer | None,
    shown: str | None,
    records: Records,
    revisions: tuple[Revision, ...],
    found: list[Problem],
) -> Loaded:
    """One way to make the job; `found` is what is wrong with the file, whichever way it is."""
    design, problems = way.layer, list(found)
    letter = AS_DRAWN if way.option is None else way.option.letter
    layers = Layers(house=house, design=design)
    halves: Halves = {}
    blocks = _understood(layers, problems, halves)
    problems += check_calls(blocks, layers)
    problems += half_written(blocks, halves)
    if not stops(problems):
        problems += never_called(blocks, layers)
    told = _told_once(problems)
    if stops(told):
        return Loaded(design=None, shop=None, house_file=shown, problems=told, letter=letter)
    return Loaded(
        design=Design(
            file=path.name,
            job=str(design.job) if design.job is not None else path.stem,
            unit=design.unit,
            blocks=blocks,
            revisions=revisions,
            records=records,
            option=way.option,
        ),
        shop=make_shop(lambda kind: blocks[kind, ""]),
        house_file=shown,
        problems=told,
        letter=letter,
    )


def _told_once(problems: list[Problem]) -> tuple[Problem, ...]:
    """What one line of a file brings about is answered once.

    A line of a house file lies under several blocks; and a block that seems to be missing
    may only have its heading misspelt.
    """
    misspelt = " ".join(p.fix for p in problems if p.code == "unknown_block")
    first: dict[tuple[str, Where | None, str, str], Problem] = {}
    for problem in problems:
        if problem.about and problem.code in ("missing_block", "no_door"):
            lacking = problem.allowed.removeprefix("a block `").removesuffix(":`")
            if f"`{lacking}" in misspelt:
                continue
        said = problem.found or problem.message
        first.setdefault((problem.code, problem.where, said, problem.allowed), problem)
    return in_order(first.values())


def _understood(
    layers: Layers, problems: list[Problem], halves: Halves
) -> dict[tuple[str, str], Block]:
    """Every block of the job as its Spec, the design's own first.

    What a block of the house lacks goes into `halves`: it is a habit as long as nothing
    calls the block, and a stop when something does.
    """
    blocks: dict[tuple[str, str], Block] = {}
    problems += _not_built_blocks(layers.design)
    cabinets = layers.design.names("cabinet")
    makes = layers.design.names("door") + cabinets
    always = (*ALWAYS, *(ALWAYS_OF_CASES if cabinets else ()))
    for kind in (*KINDS, *PLAIN):
        names = layers.names(kind)
        if kind in always and "" not in names:
            names = (*names, "")
        names = (*names, *(word for word in _own_names(layers, kind) if word not in names))
        for name in names:
            if not _has_keys(layers, kind, name, problems):
                continue
            found: list[Problem] = []
            understood = understand(kind, merge(layers, kind, name, found), found)
            if understood is not None:
                blocks[kind, name] = understood
            if any(p.code == "like_unknown" for p in found):
                found = [p for p in found if p.code != _MISSING]
            own = makes and ((kind, name) in layers.design.blocks or kind in always)
            lacking = [p for p in found if p.code == _MISSING]
            if lacking and not own:
                halves[kind, name] = lacking
            problems += found if own else [p for p in found if p.code != _MISSING]
    if not makes:
        problems.append(
            stop(
                "no_door",
                "There is no door or cabinet in this file.",
                layers.design.first,
                about="door",
                found="none",
                allowed="a block `door:`",
                fix="Write `door:` with its `kind`; `stilewright new FILE` makes a whole starter.",
            )
        )
    return blocks


def _own_names(layers: Layers, kind: str) -> Iterator[str]:
    """What is called of the tool's own: blocks that nobody need write."""
    callers = [(caller, key) for caller, keys in CALLS.items() for key in keys if keys[key] == kind]
    called = {
        str(tree.get(key))
        for caller, key in callers
        for layer in layers.files
        for (of, _), tree in layer.blocks.items()
        if of == caller and isinstance(tree, Branch)
    }
    return (word for word in OWN_NAMES.get(kind, ()) if word in called)


def _has_keys(layers: Layers, kind: str, name: str, problems: list[Problem]) -> bool:
    """A block with keys under it; a list in their place is answered."""
    for layer in layers.files:
        tree = layer.blocks.get((kind, name))
        if tree is not None and not isinstance(tree, Branch):
            heading = full_heading(kind, name)
            problems.append(
                stop(
                    "wrong_value",
                    f'"{heading}" takes keys on the lines under it, not a list.',
                    layer.lines[kind, name],
                    about=heading,
                    found="a list",
                    allowed="keys and values",
                    fix="Write `key: value` lines, without dashes.",
                )
            )
            return False
    return True


def _not_built_blocks(design: Layer) -> list[Problem]:
    found = []
    for (kind, name), where in design.lines.items():
        if kind in NOT_BUILT_BLOCKS:
            heading = full_heading(kind, name)
            found.append(not_built(f'"{heading}"', where, about=heading))
    return found
