"""Doors of every kind in one invented opening: 1524 wide, 2074 high, 150 of wall."""

from __future__ import annotations

from pathlib import Path

from parametric.job import Job, check

HEAD = """stilewright: 1
job: Weir Cottage trial
units: mm
survey:
  widths: {top: 1526, middle: 1524, bottom: 1529}
  heights: {left: 2078, middle: 2074, right: 2069}
  head: level
  left side: plumb
  right side: not measured
  wall: 150
  fixing: solid timber
  floor in travel: 4
door:
"""
REST = """
leaf:
  timber: tulipwood
  thickness: 40
  stiles: 90
  trim: 12
  top to bottom:
    - top rail: 120
    - lite: rest
    - bottom rail: 240
leaf top: {timber: tulipwood, thickness: 40, stiles: 90, top to bottom: [top rail: 90, lite: rest, bottom rail: 120]}
leaf foot: {timber: tulipwood, thickness: 40, stiles: 90, top to bottom: [top rail: 120, lite: rest, bottom rail: 200]}
joint: {kind: loose tenon, tenon: 12 x 60 x 90, slot: 12 x 62 x 46}
glass: {kind: toughened, thickness: 6}
track: {off wall: 86, spacing: 52}
hinge: {kind: butt}
"""
KINDS: dict[str, str] = {
    "sliding right": "kind: sliding\nopens to: right",
    "sliding left": "kind: sliding\nopens to: left",
    "biparting": "kind: biparting",
    "bypass": "kind: bypass",
    "bypass in the opening": "kind: bypass\nhung: in the opening",
    "bypass of three": "kind: bypass\nleaves: 3",
    "bypass of three on three": "kind: bypass\nleaves: 3\ntracks: [front, middle, back]",
    "bypass of four in the opening": "kind: bypass\nleaves: 4\nhung: in the opening",
    "pocket right": "kind: pocket\npocket: right",
    "pocket left": "kind: pocket\npocket: left",
    "hinged left": "kind: hinged\nhinge side: left\nedge bevel: 0 deg",
    "hinged right away": "kind: hinged\nhinge side: right\nopens: away from you\nedge bevel: 0 deg",
    "hinged pair": "kind: hinged pair",
    "hinged pair away": "kind: hinged pair\nopens: away from you",
    "rebated pair": "kind: hinged pair\nmeeting stiles: rebated",
    "rebated pair away": "kind: hinged pair\nmeeting stiles: rebated\nopens: away from you\nfirst to open: left",
    "pair with astragal": "kind: hinged pair\nmeeting stiles: astragal",
    "dutch": "kind: dutch\nhinge side: left\nsplit: 1040\nedge bevel: 0 deg\nupper leaf: top\nlower leaf: foot",
    "unequal pair": "kind: hinged pair\nleft leaf: 2 parts\nright leaf: 1 part",
    "bifold two left": "kind: bifold\nleaves: 2\nfolds to: left\njamb gap: 5",
    "bifold two right": "kind: bifold\nleaves: 2\nfolds to: right\njamb gap: 5",
    "bifold four left": "kind: bifold\nleaves: 4\nfolds to: left\njamb gap: 11",
    "bifold four both": "kind: bifold\nleaves: 4\nfolds to: both\njamb gap: 5\nmeeting gap: 8",
    "bifold six right": "kind: bifold\nleaves: 6\nfolds to: right\njamb gap: 28",
}
"""What stands under `door:` for each."""


def written(kind: str, rest: str = REST) -> str:
    """The design file of a kind."""
    lines = KINDS.get(kind, kind).splitlines()
    return HEAD + "\n".join(f"  {line}" for line in lines) + rest


def job_of(kind: str, folder: Path, rest: str = REST) -> Job:
    """A kind, checked."""
    path = folder / "design.yaml"
    path.write_text(written(kind, rest))
    return check(path, user_house=False)
