"""Two unlike doors in one pack: a hinged one and a sliding one, each in its own opening."""

from __future__ import annotations

import csv
import io
import json
import re
from collections import Counter
from pathlib import Path

import pdfplumber
import pytest

from parametric.commands import approve, compare, explain, verify
from parametric.job import Built, Job, build, check
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.known import known_design
from parametric.solids.clash import clashes
from parametric.solids.solid_set import build_solids
from parametric.trade.cutlist import cut_list
from parametric.trade.hardware_list import hardware_list
from parametric.trade.paperwork import paperwork

pytestmark = pytest.mark.kernel
DESIGN = Path(__file__).parent / "study_and_hall.yaml"


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    made = build(DESIGN, out=tmp_path_factory.mktemp("two") / "pack", user_house=False)
    assert made.folder is not None
    return made


@pytest.fixture(scope="module")
def alone(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Job]:
    """Each of the two doors in a file of its own."""
    text = DESIGN.read_text(encoding="utf-8")
    folder = tmp_path_factory.mktemp("alone")
    found = {}
    for door, other in (("study", "hall"), ("hall", "study")):
        left = re.sub(rf"(?ms)^(survey|door) {other}:.*?(?=^\w)", "", text)
        path = folder / f"{door}.yaml"
        path.write_text(left, encoding="utf-8")
        found[door] = check(path, user_house=False)
        assert found[door].exit_status == 0
    return found


def words_of(path: Path) -> list[str]:
    with pdfplumber.open(path) as paper:
        return [" ".join((page.extract_text() or "").split()) for page in paper.pages]


def test_the_pack_is_whole_and_read_back(built: Built) -> None:
    assert built.exit_status == 0
    assert built.folder is not None
    said = json.loads((built.folder / "numbers.json").read_text())["verification"]
    assert said["sheets"]["findings"] == []
    assert said["proposal"]["findings"] == []
    assert said["drawings"]["fronts"].count("front elevation") == 2
    verified = verify(built.folder, DESIGN, user_house=False)
    assert verified.problems == ()
    assert not [fault for one in verified.verdicts.values() for fault in one.faults]


def test_every_number_is_told_once_and_says_of_which_door(built: Built) -> None:
    assert built.folder is not None
    figures = json.loads((built.folder / "numbers.json").read_text())["figures"]
    names = [figure["name"] for figure in figures]
    assert len(names) == len(set(names))
    values = {figure["name"]: figure["value"] for figure in figures}
    # The study's leaf fits: 864 plumb and clear less gaps of 2.5 and 3. The hall's covers: the
    # widest of 904, 902 and 907, and 45 on either side.
    assert values["door study / leaf width"] == pytest.approx(864 - 2.5 - 3)
    assert values["door hall / leaf width"] == pytest.approx(907 + 2 * 45)
    assert values["leaf A / width"] == values["door study / leaf width"]
    assert values["leaf B / width"] == values["door hall / leaf width"]


def test_orders_are_the_sum_of_both_doors(built: Built, alone: dict[str, Job]) -> None:
    def pieces(job: Job) -> Counter[tuple[object, ...]]:
        assert job.assembly is not None
        found: Counter[tuple[object, ...]] = Counter()
        for row in cut_list(job.assembly):
            sizes = (round(float(size), 6) for size in (row.length, row.width, row.thickness))
            found[(row.noun, row.material, *sizes)] += row.number
        return found

    def bought(job: Job) -> Counter[str]:
        assert job.resolved is not None
        found: Counter[str] = Counter()
        for item in hardware_list(job.resolved, job.loads):
            found[item.what] += round(float(item.number) * 1000)
        return found

    both = built.job
    assert pieces(both) == pieces(alone["study"]) + pieces(alone["hall"])
    assert bought(both) == bought(alone["study"]) + bought(alone["hall"])
    assert both.resolved is not None
    assert both.assembly is not None
    paper = paperwork(both.resolved, both.assembly, both.loads)
    parts = []
    for job in alone.values():
        assert job.resolved is not None
        assert job.assembly is not None
        parts.append(paperwork(job.resolved, job.assembly, job.loads))
    for total, each in (
        (paper.timber.volume, [own.timber.volume for own in parts]),
        (paper.delivery.weight, [own.delivery.weight for own in parts]),
        (paper.finish.area, [own.finish.area for own in parts]),
    ):
        assert float(total) == pytest.approx(sum(map(float, each)))


def test_each_door_has_its_sheets_and_the_fitter_a_set_for_each(built: Built) -> None:
    assert built.folder is not None
    sheets = words_of(built.folder / "shop/drawings.pdf")
    for door in ("study", "hall"):
        own = [page for page in sheets if f"study and hall, door {door}" in page]
        assert sum("General arrangement" in page for page in own) == 1
        assert any("Leaf " in page for page in own)
    install = words_of(built.folder / "site/install.pdf")
    wall = [n for n, page in enumerate(install, 1) if page.startswith("Install ")]
    assert len(wall) == 2
    fixings = [page for page in install if page.startswith("Fixings ")]
    assert [re.findall(r"as drawn on sheet (\d+)", page)[0] for page in fixings[:1]] == ["1"]
    assert any(f"as drawn on sheet {wall[1]}" in page for page in fixings)
    rows = list(csv.DictReader(io.StringIO((built.folder / "site/fixings.csv").read_text("utf-8"))))
    assert {row["door"] for row in rows} == {"door study", "door hall"}
    tracks = [row for row in rows if row["what"].startswith("bracket 1")]
    assert [row["door"] for row in tracks] == ["door hall"]


def test_the_page_stands_both_in_one_room_and_tells_each(built: Built) -> None:
    assert built.folder is not None
    page = (built.folder / "client/preview.html").read_text("utf-8")
    told = re.search(r'<script type="application/json" id="job">(.*?)</script>', page, re.DOTALL)
    assert told is not None
    job = json.loads(told[1])
    study, hall = job["doorways"]
    assert (study["called"], hall["called"]) == ("Study", "Hall")
    assert (study["leaves"], hall["leaves"]) == (["leaf A"], ["leaf B"])
    assert study["opening"][-1][0] < hall["opening"][0][0]
    labels = [fact["label"] for fact in job["facts"]]
    assert "Study: clear to walk through" in labels
    assert "Hall: clear to walk through" in labels
    assert [tick.split(":")[0] for tick in job["ticks"][:1]] == ["Study"]
    resolved = built.job.resolved
    assert resolved is not None
    at = {leaf["name"]: leaf["x"] for leaf in job["leaves"]}
    hung = resolved.doors[1]
    assert at["leaf B"] == pytest.approx(hung.stands.origin[0] + float(hung.leaves[0].hung.left))
    # and the proposal has a drawing of each
    proposal = words_of(built.folder / "client/proposal.pdf")
    assert [page.split(" Sizes in")[0] for page in proposal[1:3]] == [
        "The drawing: Study",
        "The drawing: Hall",
    ]


def test_no_part_meets_another_in_any_state(built: Built) -> None:
    assembly = built.job.assembly
    assert assembly is not None
    solids = build_solids(assembly.parts, None)
    assert [state.name for state in assembly.states] == [
        "shut",
        "study half open",
        "study open",
        "hall half open",
        "hall open",
        "open",
    ]
    for state in assembly.states:
        assert clashes(assembly, state, solids) == ()


def test_an_arrangement_of_the_other_door_is_found(built: Built) -> None:
    assert built.folder is not None
    job = built.job
    assert job.resolved is not None
    assert job.assembly is not None
    known = known_design(job.resolved, job.assembly, job.loads)
    drawn = sorted(
        built.folder.glob("shop/drawing-*arrangement.dxf"),
        key=lambda path: int(path.name.split("-")[1]),
    )
    study, hall = ((f"shop/{path.name}", path.read_bytes()) for path in drawn)
    assert check_drawings(dict((study, hall)), known).faults == ()
    swapped = {study[0]: hall[1], hall[0]: study[1]}
    assert check_drawings(swapped, known).faults


def test_a_moved_reading_moves_its_own_door_alone(tmp_path: Path) -> None:
    text = DESIGN.read_text(encoding="utf-8")
    signed, later = tmp_path / "signed.yaml", tmp_path / "later.yaml"
    signed.write_text(text, encoding="utf-8")
    later.write_text(text.replace("bottom: 907", "bottom: 911"), encoding="utf-8")
    changes = compare(signed, later, user_house=False).changes
    assert changes is not None
    moved = {name for one in changes.numbers for name in one.names}
    assert "door hall / leaf width" in moved
    assert not [name for name in moved if name.startswith(("door study", "leaf A"))]
    done = approve(signed, revision="A", by="M. Rowe", date="2026-11-20", user_house=False)
    assert [one for one in done.problems if one.level == "stop"] == []
    assert check(signed, user_house=False).moved is None


def test_a_caution_of_one_door_is_accepted_by_its_name(tmp_path: Path) -> None:
    path = tmp_path / "accepted.yaml"
    path.write_text(
        DESIGN.read_text(encoding="utf-8")
        + "accepted:\n  door hall / floor gap uneven: HW 2026-11-20, the client knows\n",
        encoding="utf-8",
    )
    job = check(path, user_house=False)
    assert job.exit_status == 0
    (gap,) = [one for one in job.problems if one.code == "uneven_floor_gap"]
    assert gap.message.startswith("Door hall: ")
    assert "Accepted by HW 2026-11-20: the client knows." in gap.message


def test_a_number_that_both_have_is_asked_for_by_its_door() -> None:
    hall = explain(DESIGN, "hall leaf width", user_house=False)
    assert hall.lines[0] == "door hall / leaf width = 997 mm"
    which = explain(DESIGN, "cover", user_house=False)
    assert which.figures == ()
    (asked,) = which.problems
    assert "door study / cover, door hall / cover" in asked.message
