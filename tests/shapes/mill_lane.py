"""Mill Lane study with a head of another shape, written to a folder with its house file."""

from __future__ import annotations

import shutil
from pathlib import Path

EXAMPLES = Path(__file__).parents[2] / "examples"
MILL_LANE = EXAMPLES / "mill-lane-study/design.yaml"
_ARCH = "  shape: segmental\n  across: pair\n  rise: 6\n"
_PANES = "wide: 2, high: 4"

HEADS = {
    "half round over each leaf": ("half round", "leaf", None, None, 2),
    "half round, one pane wide": ("half round", "leaf", None, None, 1),
    "half round over the pair": ("half round", "pair", None, None, 2),
    "pointed over the pair": ("pointed", "pair", "30", None, 2),
    "pointed, one pane wide": ("pointed", "leaf", "14", None, 1),
    "elliptical over the pair": ("elliptical", "pair", "12", None, 2),
    "elliptical, three panes wide": ("elliptical", "leaf", "6", None, 3),
    "raked to the left": ("raked", "leaf", "5", "left", 2),
    "raked over the pair": ("raked", "pair", "8", "right", 2),
}
"""Shape, across, rise in inches, the side it rises to, panes wide."""


def with_head(folder: Path, head: str) -> Path:
    """The design with one of the heads, in a folder of its own."""
    shape, across, rise, side, wide = HEADS[head]
    lines = [f"shape: {shape}", f"across: {across}"]
    lines += [f"rise: {rise}"] if rise else []
    lines += [f"rises to: {side}"] if side else []
    text = MILL_LANE.read_text(encoding="utf-8")
    assert _ARCH in text
    assert _PANES in text
    text = text.replace(_ARCH, "".join(f"  {line}\n" for line in lines))
    text = text.replace(_PANES, f"wide: {wide}, high: 4")
    shutil.copy(EXAMPLES / "house.yaml", folder / "house.yaml")
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path
