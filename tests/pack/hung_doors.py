"""Small designs of every way to hang a door, invented, for what a client is told of them."""

from __future__ import annotations

from pathlib import Path

_SURVEY = """stilewright: 1
job: Trial
units: mm
survey:
  widths: {{top: {wide}, middle: {wide}, bottom: {wide}}}
  heights: {{left: 2078, middle: 2074, right: 2069}}
  left side: plumb
  right side: plumb
  head: level
  wall: 130
  fixing: solid timber
  floor in travel: {rise}
"""
_LEAF = """leaf:
  timber: tulipwood
  thickness: 40
  stiles: 110
  top to bottom:
    - top rail: 120
    - lite: equal
    - lock rail: 150
    - panel: 460
    - bottom rail: 240
"""
_HALVES = """leaf upper:
  timber: tulipwood
  thickness: 40
  stiles: 110
  top to bottom:
    - top rail: 120
    - lite: equal
    - lock rail: 120
leaf lower:
  timber: tulipwood
  thickness: 40
  stiles: 110
  top to bottom:
    - top rail: 120
    - panel: equal
    - bottom rail: 240
"""
_MADE = """joint:
  {kind: loose tenon, tenon: 12 x 60 x 90, slot: 12 x 62 x 46, off groove: 6, off end: 40}
panel: {kind: raised, thickness: 28, tongue: 8 x 15, back rebate: 5, edge thickness: 15, bevel run: 75}
glass: {kind: toughened, thickness: 6}
"""
_HINGE = "hinge: {kind: butt, count: 3, length: 102, from top: 150, from bottom: 200}\n"
_TRACK = (
    "track: {spacing: 52, hangers: 2, brackets every: 400, off wall: 50, bearing: 60}\n"
    "guide: {groove: 8 x 20, cutter: 8}\n"
)

DOORS: dict[str, tuple[int, str, str, str]] = {
    "hinged": (826, "  kind: hinged\n  hinge side: right\n  opens: away from you\n", _LEAF, _HINGE),
    "unequal pair": (
        1326,
        "  kind: hinged pair\n  left leaf: 480\n  right leaf: rest\n",
        _LEAF,
        _HINGE,
    ),
    "dutch": (
        826,
        "  kind: dutch\n  hinge side: left\n  split: 1100\n  upper leaf: upper\n"
        "  lower leaf: lower\n",
        _HALVES,
        _HINGE,
    ),
    "sliding": (826, "  kind: sliding\n  opens to: right\n  floor gap: 12\n", _LEAF, _TRACK),
    "biparting": (1626, "  kind: biparting\n  floor gap: 12\n", _LEAF, _TRACK),
    "pocket": (826, "  kind: pocket\n  pocket: right\n  floor gap: 12\n", _LEAF, _TRACK),
    "bifold": (
        2400,
        "  kind: bifold\n  leaves: 4\n  folds to: both\n  jamb gap: 12\n  meeting gap: 6\n"
        "  floor gap: 12\n",
        _LEAF,
        _TRACK + _HINGE,
    ),
}
"""By what hangs: the opening's width, the door, its leaves, what it hangs by."""


def written(folder: Path, which: str, *, rise: str = "4") -> Path:
    """One of them as a file; `rise` is how far the floor rises on its way."""
    wide, door, leaf, hung = DOORS[which]
    path = folder / f"{which.replace(' ', '-')}.yaml"
    text = f"{_SURVEY.format(wide=wide, rise=rise)}door:\n{door}{leaf}{_MADE}{hung}"
    path.write_text(text, encoding="utf-8")
    return path
