"""Fronts for one invented case: an opening 1000 wide and 700 high whose bottom stands 118 up."""

from __future__ import annotations

from pathlib import Path

from parametric.job import Job, check

HEAD = """stilewright: 1
job: Ropewalk trial
units: mm
survey:
  widths: {top: 1002, middle: 1000, bottom: 1001}
  heights: {left: 700, right: 702}
  left side: {bottom: 0, middle: 0.5, top: 0}
  right side: not measured
  foot above floor: 118
  fixing: solid timber
door:
  kind: cabinet
"""
REST = """
leaf:
  timber: tulipwood
  thickness: 20
  stiles: 60
  trim: 12
  site trim: 0
  top to bottom: [top rail: 60, panel: rest, bottom rail: 60]
leaf front:
  timber: tulipwood
  thickness: 20
  stiles: 60
  trim: 12
  site trim: 0
  panel: level
  top to bottom: [top rail: 50, panel: rest, bottom rail: 50]
joint: {kind: loose tenon, slot: 6 x 21 x 26, tenon: 6 x 20 x 50, off groove: 5, off end: 10}
panel: {kind: raised, thickness: 14, groove: 6.2 x 12, clearance: 1, tongue: 6 x 13, back rebate: 2, edge thickness: 10, bevel run: 24}
panel level: {kind: raised, grain: level, thickness: 14, groove: 6.2 x 12, clearance: 1, tongue: 6 x 13, back rebate: 2, edge thickness: 10, bevel run: 24}
hinge: {kind: cup, steps: {900: 2, 1600: 3, 2000: 4, 2400: 5}, carries: 4.5 kg}
"""
DRAWERS = "drawer leaf: front\ndrawer travel: 450\n"


def case_job(door: str, folder: Path, rest: str = REST, head: str = HEAD) -> Job:
    """A case's fronts, checked; `door` is what stands under `kind: cabinet`."""
    lines = "".join(f"  {line}\n" for line in door.strip().splitlines())
    path = folder / "design.yaml"
    path.write_text(head + lines + rest)
    return check(path, user_house=False)
