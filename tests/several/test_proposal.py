"""The proposal of several doors: a drawing of each, and fewer words of each where there are many."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.drawing.subject import subject
from parametric.job import check
from parametric.pack.preview import preview_page
from parametric.pack.proposal import proposal, proposal_content
from parametric.trade.fingerprint import fingerprint
from parametric.trade.paperwork import paperwork

TWO = Path(__file__).parent / "study_and_hall.yaml"
PANTRY = """
survey {name}:
  widths: {{top: 702, middle: 700, bottom: 703}}
  heights: {{left: 2010, middle: 2009, right: 2008}}
  left side: plumb
  head: level
  wall: 150

door {name}:
  kind: pocket
  in: {name}
  leaf: panelled
  pocket: right
  lock: none
  pull: none
  hinge: none
"""


@pytest.mark.parametrize("more", [(), ("pantry",), ("pantry", "attic", "cellar")])
def test_every_door_is_drawn_and_told_and_nothing_overlaps(
    tmp_path: Path, more: tuple[str, ...]
) -> None:
    path = tmp_path / "doors.yaml"
    written = (PANTRY.format(name=name) for name in more)
    path.write_text(TWO.read_text(encoding="utf-8") + "".join(written), encoding="utf-8")
    job = check(path, user_house=False)
    assert job.exit_status == 0
    assert job.resolved is not None
    assert job.assembly is not None
    drawn = subject(job.resolved, job.assembly, job.loads, job.own)
    paper = paperwork(job.resolved, job.assembly, job.loads)
    page = preview_page(
        job.resolved,
        job.loads,
        fingerprint=fingerprint(job.resolved, job.assembly),
        elevations=("",) * len(job.resolved.walls),
        assembly=job.assembly,
        problems=job.own,
        paper=paper,
    )
    said = proposal_content(drawn, page, paper)
    names = ["Study", "Hall", *(name.capitalize() for name in more)]
    assert [own.head for own in said.drawings] == [f"The drawing: {name}" for name in names]
    for name in names:
        assert f"{name}: a " in said.paragraph
        assert f"{name}: a " in said.brief
    assert len(said.brief) < len(said.paragraph)
    made = proposal(drawn, page, paper)
    assert made.pages == 3 + len(names)
    assert made.findings == ()
