"""A hinged leaf with one kind of panel under another, as its starter has it."""

from __future__ import annotations

import re
from pathlib import Path

STARTER = Path(__file__).parents[2] / "templates" / "hinged.yaml"


def filled(panel: str, *blocks: str) -> str:
    """The starter with panels in both openings.

    Args:
        panel: what stands in the braces of the panel block.
        blocks: further lines at the margin.
    """
    text = STARTER.read_text(encoding="utf-8")
    text = re.sub(r"    - lite: rest\n      wide.*\n      high.*\n", "    - panel: rest\n", text)
    text = re.sub(r"(?ms)^glass:.*?(?=^hinge:)", "", text)
    text = re.sub(r"(?ms)^panel:.*?(?=^hinge:)", f"panel: {{{panel}}}\n\n", text)
    return "\n".join((text, *blocks)) + "\n"
