"""The set-ups of the machine as their pages print them: plain numbers, taken from the files' own.

Drawing knows no machine: what it draws of one is laid out here.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from parametric.catalog.bench import CUT_A_PASS
from parametric.cnc.bench_work import bench_work
from parametric.cnc.operations import Operation, depth_text
from parametric.cnc.setups import PartType, SetUp, face_word, part_types
from parametric.cnc.tool_list import ToolUse, tool_uses
from parametric.cnc.views import along_foot, along_left
from parametric.drawing.machine.work import (
    ByHand,
    Lies,
    MachineCut,
    MachineSetUp,
    MachineTool,
    MachineWork,
)
from parametric.drawing.part_sheets.words import runs_said
from parametric.figures import Figure, named, whole_up
from parametric.model import Assembly, Face
from parametric.names import join
from parametric.outlines import bounds_of

_ACROSS_FROM: dict[Face, Face] = {
    "low end": "high end",
    "high end": "low end",
    "low edge": "high edge",
    "high edge": "low edge",
    "low face": "high face",
    "high face": "low face",
}
_SHORTEST_CLEAR = 40.0
"""mm: a clamp needs this much. Common practice, no source."""


def machine_work(
    assembly: Assembly, found: Sequence[SetUp], said: Callable[[float], str]
) -> MachineWork:
    """Every set-up and every cut by hand.

    Args:
        assembly: the job's parts.
        found: its set-ups, as they are written to files.
        said: a length, mm, in the unit and to the step that the job prints.
    """
    types = {kind.part.mark: kind for kind in part_types(assembly)}
    return MachineWork(
        set_ups=tuple(_set_up(one, n, types) for n, one in enumerate(found, 1)),
        by_hand=tuple(
            ByHand(
                mark=cut.mark,
                part=cut.noun,
                count=cut.count,
                cut=cut.cut,
                what=cut.what,
                by=cut.by,
                when=cut.when,
                tool=cut.tool,
            )
            for cut in bench_work(assembly, said)
        ),
    )


def _set_up(one: SetUp, number: int, types: dict[str, PartType]) -> MachineSetUp:
    place = join("machine file", one.file.removesuffix(".dxf").replace(",", ""))

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    length = at("length", one.length)
    return MachineSetUp(
        number=number,
        file=one.file,
        title=f"{one.mark} {one.noun}".strip(),
        names=one.names,
        turned=one.turned,
        length=length,
        width=at("width", one.width),
        thickness=at("thickness", one.thickness),
        lies=_lies(one, types),
        leaf=one.face is None,
        cuts=tuple(_cut(ops, n, length, at) for n, ops in enumerate(_rows(one), 1)),
        tools=tuple(_tool(use, one, at) for use in tool_uses(one)),
        clear=tuple(_clear(one, at)),
    )


def _lies(one: SetUp, types: dict[str, PartType]) -> Lies:
    if one.face is None:
        side, other = ("front", "back") if one.face_up == "front" else ("back", "front")
        return Lies(
            up=side,
            down=other,
            left=f"left edge seen on the {side}",
            right="right edge",
            near="finished foot",
            away="top",
        )
    part = types[one.mark].part
    left, near = along_left(one.face), along_foot(one.face)
    return Lies(
        up=one.face_up,
        down=face_word(part, _ACROSS_FROM[one.face]),
        left=one.x_from,
        right=face_word(part, _ACROSS_FROM[left]),
        near=one.y_from,
        away=face_word(part, _ACROSS_FROM[near]),
    )


_At = Callable[..., Figure]


def _rows(one: SetUp) -> tuple[tuple[Operation, ...], ...]:
    """The operations of a file as they are numbered: the holes of a row together, all others alone."""
    found: dict[str, list[Operation]] = {}
    for place, operation in enumerate(one.operations):
        found.setdefault(operation.row or str(place), []).append(operation)
    return tuple(map(tuple, found.values()))


def _cut(ops: Sequence[Operation], number: int, length: Figure, at: _At) -> MachineCut:
    op, *others = ops
    x0, y0, x1, y1 = bounds_of(op.outline)
    name = f"cut {number}"
    low_x, high_x = at(f"{name} x low", x0), at(f"{name} x high", x1)
    low_y, high_y = at(f"{name} y low", y0), at(f"{name} y high", y1)
    return MachineCut(
        number=number,
        name=op.name,
        layer=op.layer,
        outline=tuple((v.x, v.y, v.bulge) for v in op.outline),
        x=(low_x, high_x),
        y=(low_y, high_y),
        length=at(f"{name} along x", high_x - low_x),
        width=at(f"{name} along y", high_y - low_y),
        beyond=at(f"{name} to the right end", length - high_x),
        others=tuple(tuple((v.x, v.y, v.bulge) for v in one.outline) for one in others),
        middles=_middles(ops, name, at) if op.row else None,
    )


def _middles(
    ops: Sequence[Operation], name: str, at: _At
) -> tuple[tuple[Figure, ...], tuple[Figure, ...]]:
    """Where the middles of the first and the last hole of a row are; once where they are level."""
    ends = [_middle(op) for op in dict.fromkeys((ops[0], ops[-1]))]

    def along(which: int, word: str) -> tuple[Figure, ...]:
        places = dict.fromkeys(round(end[which], 6) for end in ends)
        words = ("first", "last")
        return tuple(
            at(f"{name} {word} of the {w}", p) for w, p in zip(words, places, strict=False)
        )

    return (along(0, "x"), along(1, "y"))


def _middle(op: Operation) -> tuple[float, float]:
    x0, y0, x1, y1 = bounds_of(op.outline)
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _row_words(own: Sequence[tuple[int, Sequence[Operation]]]) -> Iterator[str]:
    """Each kind of row once: its cuts, how many holes, how wide and how far apart, mm as in the file."""
    alike: dict[str, list[int]] = {}
    for number, ops in own:
        if ops[0].row:
            apart = (
                f" at {depth_text(math.dist(_middle(ops[0]), _middle(ops[1])))}"
                if len(ops) > 1
                else ""
            )
            alike.setdefault(f"{len(ops)} × {ops[0].note}{apart}", []).append(number)
    for words, numbers in alike.items():
        yield f"cut{'' if len(numbers) == 1 else 's'} {runs_said(numbers)}: {words}"


def _tool(use: ToolUse, one: SetUp, at: _At) -> MachineTool:
    own = [(n, ops) for n, ops in enumerate(_rows(one), 1) if ops[0].layer == use.layer]
    first = own[0][1][0]
    cutter, depth = at(f"{use.layer} cutter", use.cutter), at(f"{use.layer} depth", use.depth)
    # a bit bores in one go, and comes up to clear itself as the machine's program has it
    bored = all(ops[0].row for _, ops in own)
    passes = Figure(1.0, unit="") if bored else whole_up(depth / (cutter * CUT_A_PASS))
    return MachineTool(
        layer=use.layer,
        cuts=tuple(n for n, _ in own),
        cutter=cutter,
        depth=depth,
        passes=at(f"{use.layer} passes", passes, ""),
        across=at(f"{use.layer} passes across", _across(first, cutter), ""),
        corner=at(f"{use.layer} corner", use.corner),
        note="; ".join(_row_words(own)) if bored else use.note,
    )


def _across(op: Operation, cutter: Figure) -> Figure:
    """Side by side in a groove or a slot; a pocket is cleared as the machine's program has it."""
    x0, y0, x1, y1 = bounds_of(op.outline)
    spare = Figure(min(x1 - x0, y1 - y0)) - cutter
    if op.kind not in ("groove", "slot") or float(spare) <= 1e-6:
        return Figure(1.0, unit="")
    return whole_up(spare / cutter) + 1


def _clear(one: SetUp, at: _At) -> Iterator[tuple[Figure, Figure]]:
    """Stretches along x in which no cutter comes nearer than its own diameter."""
    taken = sorted(
        (x0 - op.cutter, x1 + op.cutter)
        for op in one.operations
        for x0, _, x1, _ in (bounds_of(op.outline),)
    )
    edge, count = 0.0, 0
    for low, high in [*taken, (one.length, one.length)]:
        if low - edge >= _SHORTEST_CLEAR:
            count += 1
            yield at(f"clear {count} low", edge), at(f"clear {count} high", low)
        edge = max(edge, high)
