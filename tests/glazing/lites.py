"""Designs whose lites are divided: a pair of 792 leaves, and two hinged ones under an arch."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from parametric.job import Job, build, check
from parametric.model import Part
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite

MILL_LANE = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"
HOUSE = Path(__file__).parents[2] / "examples/house.yaml"

PAIR = """stilewright: 1
job: Quarry Row larder
units: mm
survey:
  widths: {{top: 1402, middle: 1400, bottom: 1404}}
  heights: {{left: 2010, middle: 2009, right: 2008}}
  head: level
  fixing: solid timber
door:
  kind: bypass
  hung: on the wall
  side lap: 40
  head lap: 40
  floor gap: 10
leaf:
  timber: ash
  thickness: {thick}
  stiles: 100
  top to bottom:
    - top rail: 100
    - {{lite: rest, wide: {wide}, high: {high}}}
    - bottom rail: 200
joint:
  kind: loose tenon
  slot: 12 x 52 x 42
  tenon: 12 x 50 x 80
glass: {{kind: laminated, {glass}}}
track: {{spacing: 70, off wall: 100, bearing: 60}}
"""
"""Leaves 792 x 2038: stiles of 100 and rails of 100 and 200 leave lites of 592 x 1738."""


def pair(folder: Path, glass: str, *, wide: int = 2, high: int = 3, thick: int = 40) -> Path:
    """The pair with its glass."""
    path = folder / "design.yaml"
    path.write_text(PAIR.format(glass=glass, wide=wide, high=high, thick=thick), encoding="utf-8")
    return path


def arched(folder: Path, glass: str) -> Path:
    """Mill Lane, more said of its glass."""
    text = MILL_LANE.read_text(encoding="utf-8")
    assert "  held by: rebate\n" in text
    path = folder / "design.yaml"
    path.write_text(
        text.replace("  held by: rebate\n", f"  held by: rebate\n{glass}"), encoding="utf-8"
    )
    (folder / "house.yaml").write_bytes(HOUSE.read_bytes())
    return path


def checked(path: Path) -> Job:
    """A design that can be made."""
    job = check(path, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert job.exit_status == 0, [p.message for p in job.problems]
    return job


def first_leaf(job: Job) -> Leaf:
    assert job.resolved is not None
    return job.resolved.door.leaves[0]


def first_lite(job: Job) -> Lite:
    return first_leaf(job).lites[0]


def parts(job: Job) -> dict[str, Part]:
    """Every part by its name."""
    assert job.assembly is not None
    return {part.name: part for part in job.assembly.parts}


def whole_pack(path: Path, out: Path) -> dict[str, Any]:
    """What a built pack says of its own checks; a pack that is not as designed is not built."""
    built = build(path, out=out, user_house=False)
    assert built.folder is not None
    numbers = json.loads((built.folder / "numbers.json").read_text(encoding="utf-8"))
    verification: dict[str, Any] = numbers["verification"]
    return verification


def clashes(job: Job) -> list[str]:
    """What overlaps in any state; each solid is held to its part's volume on the way."""
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    assert job.assembly is not None
    solids = build_solids(job.assembly.parts)
    return [str(clash) for clash in clashes_in_all_states(job.assembly, solids)]
