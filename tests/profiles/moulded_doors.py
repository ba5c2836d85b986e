"""A hinged leaf 900 x 2047 with a moulding round its openings, as a design file says it, mm.

905 - 2.5 - 2.5 = 900 wide, 2058 - 3 - 8 = 2047 high; 900 - 2 x 110 = 680 between the stiles.
"""

from __future__ import annotations

from pathlib import Path

from parametric.job import Job, check
from parametric.model import Part
from parametric.resolve.leaf import Leaf

_DESIGN = """\
stilewright: 1
job: Chandler's Row
units: mm
survey:
  widths: {{top: 906, middle: 905, bottom: 906}}
  heights: {{left: 2060, right: 2058}}
  left side: plumb
  right side: plumb
  head: level
  fixing: solid timber
  wall: 120
door: {{kind: hinged, opens: towards you, hinge side: left, hinge gap: 2.5, lock gap: 2.5, head gap: 3, floor gap: 8, edge bevel: 2 deg}}
leaf:
  timber: ash
  thickness: 44
  stiles: 110
  trim: 12
{says}  top to bottom:
{bands}
{blocks}joint: {{kind: loose tenon, slot: 12 x 62 x 46, tenon: 12 x 60 x 90}}
panel: {{kind: raised, thickness: 28, groove: 9 x 15, clearance: 1, end clearance: 1.5, tongue: 8.8 x 16, back rebate: 4, edge thickness: 14, bevel run: 60, fillet: 2}}
glass: {{kind: toughened, thickness: 4, {held}, clearance: 2}}
hinge: {{kind: butt, count: 3, length: 100, from top: 150, from bottom: 225}}
"""
REBATE = "held by: rebate, frame rebate: 10, rebate depth: 16"
STOPS = "held by: stops, stop: 12 x 8, tape: 1"
"""(44 - 4) / 2 - 1 - 8 = 11 below the face."""
PANELLED = """\
    - top rail: 110
    - lite: rest
    - lock rail: 160
    - panel: 500
    - bottom rail: 220
"""
GLAZED = """\
    - top rail: 110
    - lite: rest
    - bottom rail: 220
"""
ARCHED = """\
    - {top rail: 110, underside: arch}
    - lite: rest
    - bottom rail: 220
"""
ARCH = "arch: {shape: segmental, across: leaf, rise: 90}\n"


def design(
    sticking: str | None, *, blocks: str = "", bands: str = PANELLED, held: str = REBATE
) -> str:
    """The design's text; `sticking` None leaves the leaf without a word of it."""
    says = "" if sticking is None else f"  sticking: {sticking}\n"
    own = blocks + ("" if "underside" not in bands else ARCH)
    return _DESIGN.format(says=says, blocks=own, bands=bands.rstrip(), held=held)


def written(folder: Path, text: str) -> Path:
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def checked(folder: Path, text: str) -> Job:
    """The job of a design that nothing stops."""
    job = check(written(folder, text), user_house=False)
    assert [p.message for p in job.problems if p.level == "stop"] == []
    return job


def leaf_of(job: Job) -> Leaf:
    assert job.resolved is not None
    return job.resolved.door.leaves[0]


def part(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(one for one in job.assembly.parts if one.name == f"leaf A / {name}")
