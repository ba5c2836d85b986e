"""A handle's holes break out of the wood behind them, or do not fit on it.

Why: a hole at the edge of a stile splits it; one in its groove finds no wood. Example: holes 128
apart on a drawer's panel of 100.
Source: common practice, no source: as much wood beside a hole as it is across.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds
from parametric.hardware.handle import Handle
from parametric.parts.handles import panel_behind
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked


def handle_does_not_fit(job: Checked) -> Iterator[Problem]:
    """A stop for each leaf whose handle has no wood."""
    for leaf in job.leaves:
        handle = leaf.handle
        if handle is None:
            continue
        has, needs, where = _wood(leaf, handle)
        if exceeds(needs, has):
            yield Problem(
                code="handle_does_not_fit",
                level="stop",
                message=f"The handle of {leaf.name} needs {job.fine(needs)} {where}, and there is "
                f"{job.fine(has)}.",
                where=job.door.written.line("pull"),
                about=leaf.name,
                found=job.fine(has),
                allowed=f"{job.fine(needs)} or more",
                fix="Move it, or take one whose holes are closer together.",
            )


def _wood(leaf: Leaf, handle: Handle) -> tuple[Figure, Figure, str]:
    """What there is, what is needed, and where: the tightest way first."""
    beside = 1.5 * handle.hole
    if handle.side is None:
        panel = panel_behind(leaf, handle)
        across = leaf.shoulder
        where = "across its panel" if panel is not None else "across its rail"
        return across, handle.apart + 2 * beside, where
    stile = leaf.left_stile if handle.side == "left" else leaf.right_stile
    groove = max((field.panel.groove_depth for field in leaf.panels), key=float, default=0.0)
    inner = stile - groove - handle.from_edge
    if exceeds(inner, handle.from_edge):
        return handle.from_edge, beside, "from the edge of its stile"
    return inner, beside, "between it and the inner edge of its stile, groove left out"
