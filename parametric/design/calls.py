"""What one block asks of another: a name that is called must be there, and be of use."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.cases.back import BackSpec
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.drawer_written import DrawerBlock
from parametric.cases.run import RunSpec
from parametric.catalog.boards import BOARDS
from parametric.catalog.timbers import TIMBERS
from parametric.design.answers import stop
from parametric.design.arch_needs import arch_needs
from parametric.design.case_needs import (
    cabinet_needs,
    called_by_a_run,
    fronts_as_hung,
    run_needs,
    survey_needs,
)
from parametric.design.flap_needs import flap_needs
from parametric.design.glass_needs import lites_need
from parametric.design.hinge_needs import hinge_needs
from parametric.design.language import CALLS, MAY_DO_WITHOUT, OWN_NAMES, SQUARE, full_heading
from parametric.design.leaf import LeafSpec
from parametric.design.merging import Layers
from parametric.design.settings import BoardSpec, TimberSpec
from parametric.design.several_doors import told_apart
from parametric.design.stub_tenons import stub_tenons_need
from parametric.design.survey import SurveySpec
from parametric.design.understanding import not_built
from parametric.figures import Where
from parametric.hangings import DoorSpec
from parametric.hardware.pivot import PivotSpec
from parametric.infill.board_panel import BoardPanelSpec
from parametric.infill.glass import GlassSpec
from parametric.joints.stub_tenon import StubTenonSpec
from parametric.names import nearest
from parametric.problems import Problem
from parametric.written import Block, Branch, Group

Blocks = Mapping[tuple[str, str], Block]
Halves = dict[tuple[str, str], list[Problem]]
"""What blocks of the house lack to be whole, by kind and name."""


def check_calls(blocks: Blocks, layers: Layers) -> list[Problem]:
    """Every name that is called must be there, and so must what a door cannot do without."""
    problems: list[Problem] = []
    for (kind, _), block in blocks.items():
        for key, other in CALLS.get(kind, {}).items():
            problems += _call(block, key, other, layers)
        if isinstance(block, DoorSpec):
            problems += _door_needs(block, blocks, layers)
            for line in block.callers():
                problems += _call(line, "leaf", "leaf", layers)
        if isinstance(block, CabinetSpec):
            problems += _cabinet(block, blocks, layers)
        if isinstance(block, SurveySpec):
            problems += survey_needs(block, blocks)
        if isinstance(block, RunSpec):
            problems += [*run_needs(block), *_stands_in(block, layers)]
        if isinstance(block, LeafSpec):
            problems += [
                *_leaf_needs(block, blocks, layers),
                *_bands(block),
                *lites_need(block, _glass_of(block, blocks)),
                *arch_needs(block, blocks, _absent(block, "arch", blocks, layers)),
                *_stuck(block, blocks),
                *_stubbed(block, blocks),
            ]
        for key in ("timber", "lip timber"):
            for timber in _names(block, key):
                problems += _timber(block, key, timber, blocks)
        if isinstance(block, (BoardPanelSpec, CabinetSpec, RunSpec)):
            problems += _board(block, str(block.board), blocks)
        if isinstance(block, (BackSpec, DrawerBlock)) and block.board is not None:
            problems += _board(block, str(block.board), blocks)
    return [*problems, *told_apart(blocks)]


def _cabinet(cabinet: CabinetSpec, blocks: Blocks, layers: Layers) -> list[Problem]:
    """A cabinet's own needs, and those of the fronts that hang on it."""
    problems = cabinet_needs(cabinet, blocks, layers)
    if not called_by_a_run(cabinet, blocks):
        problems += _stands_in(cabinet, layers)
    if problems or not cabinet.has_fronts:
        return problems
    for line in cabinet.callers():
        problems += _call(line, "leaf", "leaf", layers)
        problems += _call(line, "stay", "stay", layers)
    fronts = fronts_as_hung(cabinet, blocks, layers)
    return [
        *problems,
        *_hung_needs(fronts, blocks, layers),
        *fronts.faults(),
        *fronts.leaves_called(),
        *flap_needs(cabinet, fronts, blocks),
    ]


def _names(block: Group, key: str) -> tuple[str, ...]:
    """What a block calls under a key: nothing, one name, or several."""
    name = getattr(block, {"in": "in_"}.get(key, key.replace(" ", "_")), None)
    if name is None:
        return ()
    return tuple(str(one) for one in name) if isinstance(name, tuple) else (str(name),)


def _called(blocks: Blocks) -> Iterator[tuple[str, str]]:
    """Every block that is called by name, as its kind and name."""
    for (kind, _), block in blocks.items():
        for key, other in CALLS.get(kind, {}).items():
            for name in _names(block, key):
                yield other, name
        if isinstance(block, (DoorSpec, CabinetSpec)):
            for line in block.callers():
                for key in ("leaf", "stay"):
                    yield from ((key, name) for name in _names(line, key))


def _call(block: Group, key: str, other: str, layers: Layers) -> list[Problem]:
    known = [n for n in layers.names(other) if n]
    known += [n for n in OWN_NAMES.get(other, ()) if n not in known]
    known += [SQUARE] if key == "sticking" else []
    without = ("none",) if key in MAY_DO_WITHOUT else ()
    unknown = [name for name in _names(block, key) if name not in (*known, *without)]
    if not unknown:
        return []
    name = unknown[0]
    near = nearest(name, known)
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


def half_written(blocks: Blocks, halves: Halves) -> list[Problem]:
    """A block of the house that is called by name must be whole."""
    called = set(_called(blocks))
    return [problem for block in called & halves.keys() for problem in halves[block]]


def never_called(blocks: Blocks, layers: Layers) -> list[Problem]:
    """Named blocks of the design that nothing uses: perhaps forgotten, perhaps kept."""
    used = set(_called(blocks))
    used |= {(kind, str(b.like)) for (kind, _), b in blocks.items() if b.like is not None}
    for kind in ("timber", "board"):
        used |= {(kind, str(t)) for b in blocks.values() if (t := getattr(b, kind, None))}
    used |= {("bay", name) for name in _bays_called(layers)}
    if any(isinstance(b, CabinetSpec) and b.plan is not None for b in blocks.values()):
        used |= {
            ("survey", name)
            for (kind, name), b in blocks.items()
            if isinstance(b, SurveySpec) and (b.right_of is not None or b.left_of is not None)
        }
    if len(layers.names("survey")) == 1:
        used.add(("survey", layers.names("survey")[0]))
    return [
        Problem(
            code="never_called",
            level="note",
            message=f'"{full_heading(kind, name)}" is written, but nothing uses it.',
            where=block.here,
            about=block.heading,
            found=block.heading,
            allowed=f"called by name: `{kind}: {name}`",
        )
        for (kind, name), block in blocks.items()
        if name
        and kind not in ("door", "cabinet", "run")
        and (kind, name) in layers.design.blocks
        and (kind, name) not in used
    ]


def _bays_called(layers: Layers) -> Iterator[str]:
    """The bays that cases call by their headings."""
    for (kind, _), tree in layers.design.blocks.items():
        cases = kind in ("door", "cabinet") and isinstance(tree, Branch)
        lines = tree.get("left to right") if cases else None
        for line in lines if isinstance(lines, list) else ():
            yield from (key.removeprefix("bay ") for key in line if isinstance(line, Branch))


def _needs(block: Block, other: str, why: str, where: Where) -> Problem:
    if str(getattr(block, other, None)) == "none":
        return stop(
            "missing_block",
            f"{why}, and `{other}: none` says that there is none.",
            where,
            about=block.heading,
            found="none",
            allowed=f"a block `{other}:`",
            fix=f"Take the line `{other}: none` out, and write the block `{other}:` if there is none.",
        )
    return stop(
        "missing_block",
        f'{why}, but there is no "{other}" block to say what it is.',
        where,
        about=block.heading,
        found=f"no {other}",
        allowed=f"a block `{other}:`",
        fix=f"Write `{other}:` at the margin, with its keys under it.",
    )


def _absent(block: Block, key: str, blocks: Blocks, layers: Layers) -> bool:
    """Nothing is called by name and there is no unnamed block, or the call says none.

    Habits alone in the house file are no block; in the design even half a block is one, and
    its own lines are then answered for.
    """
    name = getattr(block, key)
    if name is None:
        return (key, "") not in blocks and "" not in layers.design.names(key)
    return str(name) == "none"


def _hung_needs(door: DoorSpec, blocks: Blocks, layers: Layers) -> list[Problem]:
    """The leaf and the hardware that a door cannot do without."""
    problems = [
        _needs(door, key, f"{door.heading} cannot do without a {key}", door.line(key))
        for key in door.needs
        if _absent(door, key, blocks, layers)
    ]
    if (
        None in door.leaf_blocks
        and ("leaf", "") not in blocks
        and "" not in layers.design.names("leaf")
    ):
        problems.append(
            _needs(door, "leaf", f"{door.heading} cannot do without a leaf", door.line("leaf"))
        )
    return [*problems, *hinge_needs(door, blocks.get(("hinge", str(door.hinge or ""))))]


def _stands_in(block: DoorSpec | CabinetSpec | RunSpec, layers: Layers) -> list[Problem]:
    """An opening of its own, or the only one there is."""
    surveys = layers.names("survey")
    if block.in_ is not None or "" in surveys or len(surveys) == 1:
        return []
    verb = "hangs" if isinstance(block, DoorSpec) else "stands"
    return [
        stop(
            "missing_block",
            f"{block.heading} does not say which opening it {verb} in."
            if surveys
            else f"{block.heading} {verb} in an opening, but there is no survey of one.",
            block.here,
            about=block.heading,
            found=f"{len(surveys)} surveys",
            allowed=", ".join(surveys) or "a block `survey:`",
            fix=f"Write `in: {surveys[0]}`, or another of them."
            if surveys
            else "Write `survey:` with its widths and heights.",
        )
    ]


def _door_needs(door: DoorSpec, blocks: Blocks, layers: Layers) -> list[Problem]:
    return [
        *_hung_needs(door, blocks, layers),
        *_stands_in(door, layers),
        *_of_the_track(door, blocks),
        *_on_a_step(door, blocks),
        *door.faults(),
        *door.leaves_called(),
    ]


def _on_a_step(door: DoorSpec, blocks: Blocks) -> list[Problem]:
    """A lock and a pin are let into plain edges: a stepped one would need another plate."""
    hinge = blocks.get(("hinge", str(door.hinge or "")))
    if door.kind == "dutch" and isinstance(hinge, PivotSpec):
        return [not_built("A dutch door on pivots", hinge.line("kind"), about="pivot")]
    name = str(door.lock or "")
    stepped = getattr(door, "meeting_stiles", "butt") == "rebated"
    if not stepped or name == "none" or ("lock", name) not in blocks:
        return []
    return [
        not_built("A lock in rebated meeting stiles", door.line("meeting stiles"), about="lock")
    ]


def _of_the_track(door: DoorSpec, blocks: Blocks) -> list[Problem]:
    """What the door's track must say for the leaves to be sized."""
    track = None if str(door.track) == "none" else blocks.get(("track", str(door.track or "")))
    if track is None:
        return []
    return [
        stop(
            "missing_key",
            f'{track.heading} needs "{key}".',
            track.here,
            about=track.heading,
            found="nothing",
            allowed=key,
            fix=f"Write `{key}: ` and its value under it.",
        )
        for key in door.asks_of_track
        if getattr(track, key.replace(" ", "_")) is None
    ]


def _leaf_needs(leaf: LeafSpec, blocks: Blocks, layers: Layers) -> list[Problem]:
    problems = []
    if _absent(leaf, "joint", blocks, layers):
        problems.append(_needs(leaf, "joint", f"The rails of {leaf.heading} are joined", leaf.here))
    for noun, key in (("panel", "panel"), ("lite", "glass")):
        band = next((b for b in leaf.top_to_bottom if b.kind == noun), None)
        if band is not None and _absent(leaf, key, blocks, layers):
            problems.append(_needs(leaf, key, f"{leaf.heading} has a {noun}", band.here))
    return problems


_MOST_TENONS = 4
"""More in one rail leave no wood between them. Common practice, no source."""


def _bands(leaf: LeafSpec) -> list[Problem]:
    """Lines of the list that hold a rail twice, tenon it oddly, or call what cannot be called."""
    problems: list[Problem] = []
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
        if band.tenons is not None and not 1 <= band.tenons <= _MOST_TENONS:
            problems.append(
                stop(
                    "tenons_out_of_range",
                    f"A {band.kind} takes 1 to {_MOST_TENONS} tenons, not {int(band.tenons)}.",
                    band.line("tenons"),
                    about=leaf.heading,
                    found=str(int(band.tenons)),
                    allowed=f"1 to {_MOST_TENONS}",
                    fix="Write `tenons: 1` or `tenons: 2`.",
                )
            )
        if band.of is not None:
            problems.append(not_built('"of" in a leaf\'s list', band.line("of"), about="of"))
    return problems


def _glass_of(leaf: LeafSpec, blocks: Blocks) -> GlassSpec | None:
    found = blocks.get(("glass", str(leaf.glass or "")))
    return found if isinstance(found, GlassSpec) else None


def _stuck(leaf: LeafSpec, blocks: Blocks) -> list[Problem]:
    """What a moulding goes round, and a block that no leaf can call."""
    name = str(leaf.sticking or "")
    if name == SQUARE and ("sticking", SQUARE) in blocks:
        own = blocks["sticking", SQUARE]
        return [
            stop(
                "wrong_name",
                f'"{own.heading}" cannot be called: a leaf whose sticking is {SQUARE} has none.',
                own.here,
                about=own.heading,
                found=SQUARE,
                allowed="another name",
                fix=f"Give it another name, and write that in {leaf.heading}.",
            )
        ]
    divided = [
        (band, key)
        for band in leaf.top_to_bottom
        for key in ("wide", "high")
        if band.kind == "lite" and (count := getattr(band, key)) is not None and count > 1
    ]
    if ("sticking", name) not in blocks or not divided:
        return []
    band, key = divided[0]
    return [
        not_built(
            "A moulding round a lite that bars divide", band.line(key), about=key, allowed="1"
        )
    ]


def _stubbed(leaf: LeafSpec, blocks: Blocks) -> list[Problem]:
    """What stub tenons ask of their leaf."""
    joint = blocks.get(("joint", str(leaf.joint or "")))
    return stub_tenons_need(leaf) if isinstance(joint, StubTenonSpec) else []


def _timber(block: Block, key: str, name: str, blocks: Blocks) -> list[Problem]:
    """A timber of the catalogue, or one the file gives its own density and movement."""
    own = blocks.get(("timber", name))
    if name in TIMBERS:
        return []
    if isinstance(own, TimberSpec) and own.density is not None and own.movement is not None:
        return []
    near = nearest(name, TIMBERS)
    fix = f"Write a block `timber {name}:` with its density and movement."
    return [
        stop(
            "unknown_name",
            f'No timber is called "{name}".' + (f' Did you mean "{near}"?' if near else ""),
            block.line(key),
            about=block.heading,
            found=name,
            allowed=", ".join(TIMBERS),
            fix=f"Write `{key}: {near}`. If it is another: {fix[0].lower()}{fix[1:]}"
            if near
            else fix,
        )
    ]


def _board(block: Block, name: str, blocks: Blocks) -> list[Problem]:
    """A board of the catalogue, or one the file gives its own density."""
    own = blocks.get(("board", name)) or blocks.get(("board", ""))
    if name in BOARDS or (isinstance(own, BoardSpec) and own.density is not None):
        return []
    near = nearest(name, BOARDS)
    fix = f"Write a block `board {name}:` with its density."
    return [
        stop(
            "unknown_name",
            f'No board is called "{name}".' + (f' Did you mean "{near}"?' if near else ""),
            block.line("board"),
            about=block.heading,
            found=name,
            allowed=", ".join(BOARDS),
            fix=f"Write `board: {near}`. If it is another: {fix[0].lower()}{fix[1:]}"
            if near
            else fix,
        )
    ]
