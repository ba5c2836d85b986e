"""The tool list beside the machine files, and the list of what is left for saw and bench."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from parametric.cnc.bench_work import BenchCut
from parametric.cnc.operations import Operation
from parametric.cnc.setups import SetUp

Row = tuple[str | float, ...]

TOOL_LIST_HEADER = (
    "file",
    "part",
    "name",
    "count",
    "face up",
    "layer",
    "cutter diameter mm",
    "depth mm",
    "stock thickness mm",
    "corner radius mm",
    "how many",
    "note",
    "turned pieces",
)
BENCH_LIST_HEADER = ("mark", "part", "count", "cut", "what", "by", "when", "tool")


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolUse:
    """What the one cutter of a layer does in one file; `corner` is the smallest; lengths mm."""

    layer: str
    cutter: float
    depth: float
    corner: float
    count: int
    note: str


def tool_uses(set_up: SetUp) -> tuple[ToolUse, ...]:
    """The operations of a set-up, like with like, in the order they are met."""
    layers: dict[str, list[Operation]] = {}
    for operation in set_up.operations:
        layers.setdefault(operation.layer, []).append(operation)
    return tuple(
        ToolUse(
            layer=layer,
            cutter=same[0].cutter,
            depth=same[0].depth,
            corner=min((op.corner for op in same if op.corner), default=0.0),
            count=len(same),
            note="; ".join(dict.fromkeys(op.note for op in same if op.note)),
        )
        for layer, same in layers.items()
    )


def tool_list(found: Iterable[SetUp]) -> tuple[Row, ...]:
    """One row for each layer of each file, under `TOOL_LIST_HEADER`."""
    return tuple(
        (
            set_up.file,
            set_up.mark or set_up.noun,
            set_up.noun if set_up.mark else "glued leaf",
            set_up.count,
            set_up.face_up,
            use.layer,
            use.cutter,
            use.depth,
            set_up.thickness,
            use.corner,
            use.count,
            use.note,
            "; ".join(set_up.turned),
        )
        for set_up in found
        for use in tool_uses(set_up)
    )


def bench_list(found: Iterable[BenchCut]) -> tuple[Row, ...]:
    """One row for each saw or bench cut of each part type, under `BENCH_LIST_HEADER`."""
    return tuple(
        (cut.mark, cut.noun, cut.count, cut.cut, cut.what, cut.by, cut.when, cut.tool)
        for cut in found
    )
