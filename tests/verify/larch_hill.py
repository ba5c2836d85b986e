"""Larch Hill with its pull off the middle of its stile, its sheets, and its pack."""

from __future__ import annotations

import dataclasses
import functools
import re
import tempfile
from pathlib import Path

from parametric.drawing import Drawings, draw
from parametric.job import Job, check
from parametric.model import Assembly
from parametric.pack.verifying.known import Known, known_design
from parametric.writers.dxf_sheets import write_dxf

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/larch-hill-reading-room/design.yaml"
HOUSE = ROOT / "examples/house.yaml"


@functools.cache
def job() -> Job:
    """The pull stands 55 from the edge of a stile of 120, and in the front only."""
    text = DESIGN.read_text(encoding="utf-8")
    changed = text.replace("from edge: 60", "from edge: 55").replace("faces: both", "faces: front")
    assert changed != text
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "design.yaml")
        path.write_text(changed, encoding="utf-8")
        found = check(path, house=HOUSE, user_house=False)
    assert found.exit_status == 0, found.problems
    return found


@functools.cache
def known() -> Known:
    made = job()
    assert made.resolved is not None
    assert made.assembly is not None
    return known_design(made.resolved, made.assembly, made.loads)


def lengthened(name: str, by: float) -> Assembly:
    """The parts of the job, one of them longer than its numbers say."""
    whole = job().assembly
    assert whole is not None
    groups = []
    for group in whole.groups:
        parts = tuple(
            dataclasses.replace(
                part, blank=dataclasses.replace(part.blank, length=float(part.blank.length) + by)
            )
            if part.name == name
            else part
            for part in group.parts
        )
        groups.append(dataclasses.replace(group, parts=parts))
    return dataclasses.replace(whole, groups=tuple(groups))


def drawings_of(assembly: Assembly | None) -> Drawings:
    """The sheets of the job, from its own parts or from others."""
    made = job()
    assert made.resolved is not None
    assert made.assembly is not None
    return draw(
        made.resolved,
        assembly or made.assembly,
        made.loads,
        made.problems,
        mark=known().mark,
    )


def sheets_as_files(drawings: Drawings) -> dict[str, bytes]:
    return {
        f"shop/{i}-{sheet.title.document.lower()}.dxf": write_dxf(sheet)
        for i, sheet in enumerate(drawings.sheets)
    }


def longer_line(leaves: bytes, height: float, by: float) -> bytes:
    """The sheet of leaves with the first edge drawn level at a height running on by so much."""
    text = leaves.decode()
    entities = text.index("\nENTITIES\n")
    edge = re.compile(
        rf"(\n  8\nedge\n100\nAcDbLine\n 10\n[\d.]+\n 20\n{height}\n 30\n0.0\n 11\n)([\d.]+)"
        rf"(\n 21\n{height}\n)"
    )
    found = edge.search(text, entities)
    assert found is not None
    changed = f"{found[1]}{float(found[2]) + by}{found[3]}"
    return (text[: found.start()] + changed + text[found.end() :]).encode()
