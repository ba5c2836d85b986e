"""A design file to a Design and a Shop: find the house, lay the layers, understand the blocks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic_core import PydanticCustomError

from parametric.catalog.shop import Shop
from parametric.catalog.timbers import TIMBERS
from parametric.design.house import find_house
from parametric.design.language import (
    BESIDE,
    CALLS,
    KINDS,
    MAY_DO_WITHOUT,
    NOT_BUILT_BLOCKS,
    PLAIN,
    RECORD_SPECS,
    RECORDS,
    full_heading,
)
from parametric.design.layer import Layer, read_layer, stop
from parametric.design.leaf import LeafSpec
from parametric.design.merging import Layers, merge
from parametric.design.records import (
    ApprovedSpec,
    Records,
    Revision,
    each,
    read_accepted,
    read_as_built,
    read_cut,
    read_revision,
)
from parametric.design.settings import TimberSpec, make_shop
from parametric.design.understanding import not_built, understand, understand_group
from parametric.figures import Figure, Where
from parametric.hangings import DoorSpec
from parametric.names import nearest
from parametric.problems import Problem, stops
from parametric.units import Unit
from parametric.written import Block, Branch, Group

_ALWAYS = (
    *("sheet", "client", "maker", "shop", "saw", "router", "clamps", "blanks", "accuracy"),
    *("moisture", "limits", "finish"),
)
"""Blocks that every job has, written or not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Design:
    """A design as written, all its layers merged, every block understood."""

    file: str
    job: str
    unit: Unit
    blocks: Mapping[tuple[str, str], Block]
    revisions: tuple[Revision, ...]
    records: Records

    @property
    def doors(self) -> tuple[tuple[str, DoorSpec], ...]:
        """Every door with its name, in the order of the file."""
        return tuple(
            (name, block)
            for (kind, name), block in self.blocks.items()
            if kind == "door" and isinstance(block, DoorSpec)
        )

    def named(self, kind: str) -> dict[str, Block]:
        """All blocks of a kind by name; "" for the one without."""
        return {name: block for (found, name), block in self.blocks.items() if found == kind}

    def block(self, kind: str, name: str | None = None) -> Block | None:
        """A block by its kind and name; without a name the unnamed one, or the only one there is."""
        if name is None and (kind, "") not in self.blocks:
            known = self.named(kind)
            return next(iter(known.values())) if len(known) == 1 else None
        return self.blocks.get((kind, name or ""))


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """What came of reading: a Design and a Shop, or the problems that stand in the way."""

    design: Design | None
    shop: Shop | None
    house_file: str | None
    problems: tuple[Problem, ...]


def load(path: Path, *, house: Path | None = None, user_house: bool = True) -> Loaded:
    """Read a design file and the house file that goes with it.

    Args:
        path: the design file.
        house: a house file to use instead of looking for one.
        user_house: whether the user's own house file may serve.
    """
    problems: list[Problem] = []
    design = _read(path, "chosen", problems)
    found = find_house(path, given=house, user_house=user_house)
    house_layer = None if found is None else _read(found, "house", problems)
    shown = None if found is None else str(found)
    if design is None or (found is not None and house_layer is None):
        return Loaded(design=None, shop=None, house_file=shown, problems=tuple(problems))
    layers = Layers(house=house_layer, design=design)
    blocks = _understood(layers, problems)
    records = _records(path, design, problems)
    revisions = _revisions(design, problems)
    problems += _calls(blocks, layers)
    if stops(problems):
        return Loaded(design=None, shop=None, house_file=shown, problems=tuple(problems))
    return Loaded(
        design=Design(
            file=path.name,
            job=str(design.job) if design.job is not None else path.stem,
            unit=design.unit,
            blocks=blocks,
            revisions=revisions,
            records=records,
        ),
        shop=make_shop(lambda kind: blocks[kind, ""]),
        house_file=shown,
        problems=tuple(problems),
    )


def _read(path: Path, origin: str, problems: list[Problem]) -> Layer | None:
    """One file as a layer; None when it cannot be read at all."""
    try:
        if path.is_dir():
            raise IsADirectoryError("it is a folder")
        content = path.read_bytes()
    except OSError as error:
        reason = error.strerror or str(error)
        problems.append(
            stop(
                "file_unreadable",
                f"{path} cannot be read: {reason[:1].lower()}{reason[1:]}.",
                Where(path.name, 1),
                found=reason,
                allowed="a design file",
                fix="Look at the name and the folder; `stilewright new FILE` makes a starter.",
            )
        )
        return None
    layer = read_layer(content, path.name, "house" if origin == "house" else "chosen")
    problems += layer.problems
    return layer if layer.readable else None


def _understood(layers: Layers, problems: list[Problem]) -> dict[tuple[str, str], Block]:
    """Every block of the job as its Spec, the design's own order first."""
    blocks: dict[tuple[str, str], Block] = {}
    problems += _blocks_not_built(layers)
    for kind in (*KINDS, *PLAIN):
        names = layers.names(kind)
        if kind in _ALWAYS and "" not in names:
            names = (*names, "")
        for name in names:
            if not _is_branch(layers, kind, name, problems):
                continue
            understood = understand(kind, merge(layers, kind, name, problems), problems)
            if understood is not None:
                blocks[kind, name] = understood
    if not layers.design.names("door"):
        problems.append(
            stop(
                "no_door",
                "There is no door in this file.",
                layers.design.first,
                found="none",
                allowed="one door",
                fix="Write `door:` with its `kind`; `stilewright new FILE` makes a whole starter.",
            )
        )
    return blocks


def _is_branch(layers: Layers, kind: str, name: str, problems: list[Problem]) -> bool:
    """A block with keys under it; a list or a lone word is answered."""
    for layer in layers.files:
        tree = layer.blocks.get((kind, name))
        if tree is not None and not isinstance(tree, Branch):
            problems.append(
                stop(
                    "wrong_value",
                    f'"{full_heading(kind, name)}" takes keys on the lines under it.',
                    getattr(tree, "where", None) or Where(layer.file, 1),
                    about=kind,
                )
            )
            return False
    return True


def _blocks_not_built(layers: Layers) -> list[Problem]:
    found = []
    for layer in layers.files:
        for (kind, name), tree in layer.blocks.items():
            if kind in NOT_BUILT_BLOCKS:
                where = tree.here if isinstance(tree, Branch) else Where(layer.file, 1)
                heading = full_heading(kind, name)
                found.append(not_built(f'"{heading}"', where, about=heading))
        if layer is not layers.design:
            continue
        doors = [tree for (kind, _), tree in layer.blocks.items() if kind == "door"]
        if len(doors) > 1:
            found.append(
                not_built(
                    "More than one door in a file",
                    doors[1].here if isinstance(doors[1], Branch) else None,
                    about="door",
                    allowed="one door a file",
                )
            )
    return found


# Calls --------------------------------------------------------------------------------------


def _calls(blocks: dict[tuple[str, str], Block], layers: Layers) -> list[Problem]:
    """Every name that is called must be there, and so must what a door cannot do without."""
    problems: list[Problem] = []
    for (kind, _), block in blocks.items():
        for key, other in CALLS.get(kind, {}).items():
            problems += _call(block, key, other, layers)
    for (kind, _), block in blocks.items():
        if kind == "door" and isinstance(block, DoorSpec):
            problems += _door_needs(block, layers)
        if isinstance(block, LeafSpec):
            problems += _leaf_needs(block, layers) + _timber(block, "timber", block.timber, blocks)
        if kind == "panel" and (timber := getattr(block, "timber", None)) is not None:
            problems += _timber(block, "timber", timber, blocks)
    return problems


def _call(block: Block, key: str, other: str, layers: Layers) -> list[Problem]:
    name = getattr(block, {"in": "in_"}.get(key, key))
    known = [n for n in layers.names(other) if n]
    if name is None or str(name) in known or (str(name) == "none" and key in MAY_DO_WITHOUT):
        return []
    near = nearest(str(name), known)
    return [
        stop(
            "unknown_name",
            f'{block.heading} uses {other} "{name}", but there is no "{other} {name}".'
            + (f' Did you mean "{near}"?' if near else ""),
            block.line(key),
            about=block.heading,
            found=str(name),
            allowed=", ".join(known) or f"a block `{other} {name}`",
            fix=f"Write `{key}: {near}`." if near else f"Write a block `{other} {name}:`.",
        )
    ]


def _needs(block: Group, other: str, why: str, where: Where) -> Problem:
    return stop(
        "missing_block",
        f'{why}, but there is no "{other}" block to say what it is.',
        where,
        about=block.heading,
        found=f"no {other}",
        allowed=f"a block `{other}:`",
        fix=f"Write `{other}:` at the margin, with its keys under it.",
    )


def _absent(block: Block, key: str, layers: Layers) -> bool:
    """Nothing is called by name and there is no unnamed block, or the call says none."""
    name = getattr(block, key)
    if name is None:
        return "" not in layers.names(key)
    return str(name) == "none"


def _door_needs(door: DoorSpec, layers: Layers) -> list[Problem]:
    problems = [
        _needs(door, key, f"{door.heading} has a {key}", door.here)
        for key in ("leaf", "track")
        if _absent(door, key, layers)
    ]
    surveys = layers.names("survey")
    if door.in_ is None and "" not in surveys and len(surveys) != 1:
        problems.append(
            stop(
                "missing_block",
                f"{door.heading} does not say which opening it hangs in."
                if surveys
                else f"{door.heading} hangs in an opening, but there is no survey of one.",
                door.here,
                about=door.heading,
                found=f"{len(surveys)} surveys",
                allowed=", ".join(surveys) or "a block `survey:`",
                fix="Write `in: NAME`."
                if surveys
                else "Write `survey:` with its widths and heights.",
            )
        )
    if int(door.leaves) != 2:
        problems.append(_leaves(door))
    return problems


def _leaves(door: DoorSpec) -> Problem:
    where = door.line("leaves")
    if int(door.leaves) < 2:
        return stop(
            "too_few_leaves",
            'One leaf has none to pass. Did you mean "kind: sliding"?'
            if int(door.leaves) == 1
            else "A door has at least one leaf.",
            where,
            about=door.heading,
            found=f"{int(door.leaves)}",
            allowed="2",
            fix="Write `leaves: 2`, or `kind: sliding`.",
        )
    return not_built(
        f"A bypass door of {int(door.leaves)} leaves", where, about="leaves", allowed="2"
    )


def _leaf_needs(leaf: LeafSpec, layers: Layers) -> list[Problem]:
    problems = []
    if _absent(leaf, "joint", layers):
        problems.append(_needs(leaf, "joint", f"The rails of {leaf.heading} are joined", leaf.here))
    for noun, key in (("panel", "panel"), ("lite", "glass")):
        band = next((b for b in leaf.top_to_bottom if b.kind == noun), None)
        if band is not None and _absent(leaf, key, layers):
            problems.append(_needs(leaf, key, f"{leaf.heading} has a {noun}", band.here))
    for band in leaf.top_to_bottom:
        pins = [k for k in ("centre", "top", "bottom") if getattr(band, k) is not None]
        if len(pins) > 1:
            problems.append(
                stop(
                    "pinned_twice",
                    f"The {band.kind} is held twice, by {' and '.join(pins)}; keep one.",
                    band.line(pins[1]),
                    about=leaf.heading,
                    found=", ".join(pins),
                    allowed="one of centre, top, bottom",
                    fix="Take one out.",
                )
            )
        if band.tenons is not None and not 1 <= band.tenons <= 4:
            problems.append(
                stop(
                    "wrong_value",
                    f"A rail has 1 to 4 tenons, not {int(band.tenons)}.",
                    band.line("tenons"),
                    about=leaf.heading,
                    found=str(int(band.tenons)),
                    allowed="1 to 4",
                    fix="Write `tenons: 1` or `tenons: 2`.",
                )
            )
        if band.of is not None:
            problems.append(not_built('"of" in a leaf\'s list', band.line("of"), about="of"))
    return problems


def _timber(
    block: Block, key: str, name: str, blocks: dict[tuple[str, str], Block]
) -> list[Problem]:
    """A timber of the catalogue, or one the file gives its own density and movement."""
    own = blocks.get(("timber", str(name)))
    whole = isinstance(own, TimberSpec) and own.density is not None and own.movement is not None
    if str(name) in TIMBERS or whole:
        return []
    near = nearest(str(name), TIMBERS)
    return [
        stop(
            "unknown_name",
            f'No timber is called "{name}".' + (f' Did you mean "{near}"?' if near else ""),
            block.line(key),
            about=block.heading,
            found=str(name),
            allowed=", ".join(TIMBERS),
            fix=f"Write `timber: {near}`."
            if near
            else f"Write a block `timber {name}:` with its density and movement.",
        )
    ]


# Records ------------------------------------------------------------------------------------


def _revisions(design: Layer, problems: list[Problem]) -> tuple[Revision, ...]:
    tree = design.blocks.get(("revisions", ""))
    return tuple(_each(tree, "revisions", read_revision, problems))


def _each(tree: object, heading: str, read: Any, problems: list[Problem]) -> list[Any]:
    """Every entry of a record that can be read; the others become problems."""
    refused: list[tuple[Where | None, PydanticCustomError]] = []
    made = each(tree, read, refused)
    for where, error in refused:
        ctx = error.context or {}
        problems.append(
            stop(
                str(ctx["code"]),
                str(ctx["message"]).replace("{key}", heading).replace("{heading}", heading),
                ctx.get("where") or where,
                about=heading,
                found=str(ctx["found"]),
                allowed=str(ctx["allowed"]),
                fix=str(ctx["fix"]),
            )
        )
    return made


def _records(path: Path, design: Layer, problems: list[Problem]) -> Records:
    """What happened since: from the design, or from NAME.records.yaml beside it; never both."""
    trees = {kind: design.blocks[kind, ""] for kind in RECORDS if (kind, "") in design.blocks}
    beside_path = path.with_name(f"{path.stem}.records.yaml")
    if beside_path.is_file():
        beside = _read(beside_path, "chosen", problems)
        for (kind, name), tree in ({} if beside is None else beside.blocks).items():
            where = tree.here if isinstance(tree, Branch) else Where(beside_path.name, 1)
            if kind not in BESIDE:
                problems.append(
                    stop(
                        "not_a_record",
                        f'"{full_heading(kind, name)}" does not belong in a file of records.',
                        where,
                        found=kind,
                        allowed=", ".join(BESIDE),
                        fix=f"Write it in {path.name}.",
                    )
                )
            elif kind in trees:
                problems.append(
                    stop(
                        "record_twice",
                        f'"{kind}" stands both in {path.name} and in {beside_path.name}; keep one.',
                        where,
                        found="two",
                        allowed="one",
                        fix="Take one of them out.",
                    )
                )
            else:
                trees[kind] = tree
    return Records(
        approved=_approved(trees.get("approved"), problems),
        accepted=tuple(_each(trees.get("accepted"), "accepted", read_accepted, problems)),
        as_built=_as_built(trees.get("as built"), problems),
        cut=tuple(_each(trees.get("cut"), "cut", read_cut, problems)),
    )


def _as_built(tree: object, problems: list[Problem]) -> dict[str, tuple[Figure, ...]]:
    if not isinstance(tree, Branch):
        return {}
    pairs = _each(tree, "as built", lambda name, text: (name, read_as_built(name, text)), problems)
    return dict(pairs)


def _approved(tree: object, problems: list[Problem]) -> ApprovedSpec | None:
    if not isinstance(tree, Branch):
        return None
    found = understand_group("approved", tree, RECORD_SPECS["approved"], problems)
    return found if isinstance(found, ApprovedSpec) else None
