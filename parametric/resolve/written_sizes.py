"""Sizes that a thing cannot be without: a zero among them is answered before anything is worked out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from parametric.figures import Figure
from parametric.problems import Problem
from parametric.written import Block, spoken

MUST_BE_MORE_THAN_NOTHING: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "leaf": ("thickness", "stiles"),
        "panel": ("thickness", "groove", "tongue", "edge_thickness", "bevel_run"),
        "glass": ("thickness", "unit", "true_thickness", "stop", "bar_thickness"),
        "joint": ("slot", "tenon", "length"),
        "track": ("hangers", "brackets_every", "spacing"),
        "guide": ("groove", "cutter"),
        "hinge": (),
        "pull": ("body", "body_corner", "flange", "flange_corner", "height", "from_edge", "cutter"),
    }
)
"""By kind of block; what is not here may be 0 (a lap, a gap, a clearance, a fillet, a trim)."""


def zero_sizes(blocks: Iterable[tuple[str, Block | None]]) -> Iterator[Problem]:
    """A stop for every size of 0 that makes no thing, with the line that says it."""
    for kind, block in blocks:
        if block is None:
            continue
        for field in MUST_BE_MORE_THAN_NOTHING[kind]:
            value = getattr(block, field, None)
            figures = value if isinstance(value, tuple) else (value,)
            if any(isinstance(f, Figure) and float(f) <= 0 for f in figures):
                key = spoken(field)
                yield Problem(
                    code="no_size",
                    level="stop",
                    message=f"The {key} of the {block.heading} is 0: there would be no {kind}.",
                    where=block.line(key),
                    about=f"{block.heading} / {key}",
                    found="0",
                    allowed="more than 0",
                    fix=f"Write the true {key}.",
                    no_size=True,
                )
