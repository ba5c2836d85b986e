"""A run of so many cabinets as a design file, each with a door over two drawers and shelves behind."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path

from parametric.job import Job, check

WIDE = 280
"""Of one cabinet, mm: forty stand along one wall, which is no longer than a length may be."""
DESIGN = """stilewright: 1
job: Run of {count}
units: mm
survey:
  widths: {{bottom: {wide}}}
  left side: plumb
  heights: {{left: 2400, right: 2400}}
run:
  plinth: 100
  left to right: [filler: at least 20, {cases}, filler: at least 20]
cabinet a:
  height: 1400
  depth: 560
  hinge: cup
  drawer leaf: front
  left to right: [{{bay: equal, hinge side: left}}]
bay: {{top to bottom: [door: rest, drawer: 220, drawer: 220], shelves: 3}}
leaf:
  timber: tulipwood
  thickness: 22
  stiles: 60
  trim: 0
  site trim: 0
  top to bottom: [top rail: 70, panel: rest, bottom rail: 70]
leaf front:
  timber: tulipwood
  thickness: 22
  stiles: 60
  trim: 0
  site trim: 0
  top to bottom: [top rail: 45, panel: rest, bottom rail: 45]
joint: {{kind: stub tenon, length: 10}}
panel: {{kind: board, thickness: 9, groove: 9 x 10, clearance: 1}}
drawer: {{sides: 15}}
board: {{thickness: 18}}
hinge cup: {{kind: cup, carries: 4.5 kg}}
"""


def design_of(count: int) -> str:
    """The file of so many."""
    cases = ", ".join([f"cabinet a: {WIDE}"] * count)
    return DESIGN.format(count=count, wide=WIDE * count + 60, cases=cases)


@cache
def designed_run(count: int) -> Job:
    """So many cabinets, read, checked and made into parts."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(design_of(count), encoding="utf-8")
        job = check(path, user_house=False)
    assert job.assembly is not None, [one.message for one in job.problems]
    return job
