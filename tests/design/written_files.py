"""Design files for tests, written to a folder of their own, with a house file beside them or not."""

from __future__ import annotations

from pathlib import Path

from parametric.design import Loaded, load

PLAIN = """\
stilewright: 1
units: mm
survey: {widths: {middle: 1400}, heights: {middle: 2010}}
door: {kind: bypass}
leaf:
  timber: ash
  thickness: 40
  stiles: 100
  top to bottom: [top rail: 100, panel: rest, bottom rail: 200]
joint: {slot: 12 x 52 x 42, tenon: 12 x 50 x 80}
panel: {kind: raised, thickness: 26, tongue: 8 x 15, edge thickness: 13, bevel run: 60}
track: {spacing: 54, off wall: 90, bearing: 60}
"""
"""The least that makes a bypass pair: everything else is left to the layers below."""

HOUSE = "stilewright: 1\nunits: mm\n"


def loaded(folder: Path, design: str, house: str | None = None) -> Loaded:
    """Write the files and load the design; no house of the user's own is ever read."""
    (folder / ".git").mkdir(exist_ok=True)  # the house is looked for no higher than this
    path = folder / "design.yaml"
    path.write_text(design, encoding="utf-8")
    if house is not None:
        (folder / "house.yaml").write_text(house, encoding="utf-8")
    return load(path, user_house=False)


def changed(text: str, *pairs: tuple[str, str]) -> str:
    """The text with lines changed; a change that finds nothing would prove nothing."""
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text
