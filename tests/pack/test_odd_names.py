"""Names with quotes, angle brackets, other scripts and emoji: whole where they can be, never acting.

Read by other hands than those that wrote: XML by the standard library, PDF by pdfplumber,
CSV by the standard library, DXF by ezdxf.
"""

from __future__ import annotations

import csv
import io
import json
import re
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import ezdxf
import pdfplumber
import pytest

from parametric.job import Built, build, check
from parametric.pack.letters import left_out

HOSTILE = '</script><script>1</script> "O\'Brien" & <i>غرفة</i> 🚪 Łódź % ( ) \\ {{data}}'
MAKER = "Quern & <b>Søn</b> 'مريم' 🪚"
CLIENT = "Ada <img src=x onerror=bad()> مريم"
DRAWN = "=cmd|' /C calc'!A0"


@pytest.fixture(scope="module")
def odd(reading_room: Path, tmp_path_factory: pytest.TempPathFactory) -> Built:
    folder = tmp_path_factory.mktemp("odd")
    text = reading_room.read_text(encoding="utf-8")
    text = text.replace(
        "job: Larch Hill reading room", f"job: {json.dumps(HOSTILE, ensure_ascii=False)}", 1
    )
    text = text.replace(
        "sheet: {number: LH-07, drawn by: N. Pell,",
        f"maker: {{name: {json.dumps(MAKER, ensure_ascii=False)}}}\n"
        f"client: {{name: {json.dumps(CLIENT, ensure_ascii=False)}}}\n"
        f"sheet: {{number: LH-07, drawn by: {json.dumps(DRAWN)},",
        1,
    )
    design = folder / "design.yaml"
    design.write_text(text, encoding="utf-8")
    made = build(design, out=folder / "pack", user_house=False)
    assert made.folder is not None, made.problems
    return made


def test_file_names_hold_nothing_that_a_system_minds(odd: Built) -> None:
    """No sign that a shell, a web address or a file system gives a meaning; at most 255 bytes."""
    names = [path.name for path in odd.folder.rglob("*") if not path.name.startswith(".")]
    assert len(names) > 60
    for name in names:
        stem, _, ending = name.rpartition(".")
        assert all(letter.isalnum() or letter in "-." for letter in stem or ending), name
        assert len(name.encode()) <= 255
    (model,) = (odd.folder / "model").glob("*.glb")
    assert model.name.startswith("script-script-1-script-o-brien-i-")


def test_the_page_and_its_drawing_are_only_that(odd: Built) -> None:
    """One script of the tool's own, two blocks of data; the drawing parses and has no other element."""
    page = (odd.folder / "client/preview.html").read_text(encoding="utf-8")
    openings = re.findall(r"<script[^>]*>", page)
    assert len([tag for tag in openings if "type=" not in tag]) == 1
    assert not re.search(
        r"<(?:i|b|img)\b",
        page[page.index("<body>") : page.index('id="job"')]
        .replace('<b id="state">', "")
        .replace("<b><span data-figure", "")
        .replace("<i style=", ""),
    )
    (svg,) = re.findall(r'<div id="drawing".*?(<svg.*?</svg>)', page, re.DOTALL)
    root = ElementTree.fromstring(svg)
    (title,) = (e for e in root.iter() if e.tag.endswith("title"))
    assert title.text is not None
    assert title.text.startswith('</script><script>1</script> "O\'Brien" & <i>')
    assert {e.tag.rsplit("}", 1)[-1] for e in root.iter()} <= {
        *("svg", "title", "g", "path", "circle", "text", "tspan"),
    }
    (data,) = re.findall(
        r'<script type="application/json" id="job">(.*?)</script>', page, re.DOTALL
    )
    assert json.loads(data)["job"] == HOSTILE


def test_paper_prints_what_it_can_and_marks_the_rest(odd: Built) -> None:
    """Every letter of every PDF is in its font: none is a box, none is left out unsaid."""
    for path in sorted(odd.folder.rglob("*.pdf")):
        with pdfplumber.open(path) as paper:
            said = " ".join(page.extract_text() for page in paper.pages)
        assert "\ufffd" not in said
        assert "(cid:" not in said
        assert not re.search("[\u0600-\u06ff\U0001f000-\U0001ffff]", said)
    with pdfplumber.open(odd.folder / "shop/drawings.pdf") as paper:
        said = " ".join((paper.pages[0].extract_text() or "").split())
    # in a cell of the title block, cut where the cell ends: after the letters left out
    assert '</script><script>1</script> "O\'Brien" & <i>…</i> …' in said
    assert "Quern & <b>Søn</b> '…' …" in said


def test_no_name_runs_out_of_its_cell(odd: Built) -> None:
    """The audit of every sheet, which measures each text against its cell, its frame and its font."""
    record = json.loads((odd.folder / "numbers.json").read_text(encoding="utf-8"))
    found = record["verification"]["sheets"]["findings"]
    assert found == []


def test_what_paper_leaves_out_is_told(odd: Built) -> None:
    told = [p for p in odd.problems if p.code == "letters_left_out"]
    assert {p.about for p in told} == {
        "the job's name",
        "the maker's name",
        "the client's name",
    }
    assert all(p.level == "note" for p in told)
    assert left_out(odd.job.resolved) == tuple(told)


def test_drawings_for_a_program_open_and_say_the_name(odd: Built) -> None:
    for path in sorted(odd.folder.rglob("*.dxf"))[:3] + sorted(odd.folder.glob("shop/*.dxf"))[:2]:
        document = ezdxf.readfile(path)
        assert not document.audit().has_errors
    first = ezdxf.readfile(odd.folder / "shop/drawing-1-arrangement.dxf")
    texts = [
        e.plain_text() if e.dxftype() == "MTEXT" else e.dxf.text
        for e in first.entitydb.values()
        if e.dxftype() in ("TEXT", "MTEXT")
    ]
    assert any("</script>" in text and "O'Brien" in text for text in texts)


def test_no_cell_of_a_list_is_a_formula(odd: Built) -> None:
    """A spreadsheet reckons whatever begins with = + - or @; a negative number it may."""
    rows = 0
    for path in sorted(odd.folder.rglob("*.csv")):
        for row in csv.reader(io.StringIO(path.read_text(encoding="utf-8-sig"))):
            rows += 1
            for cell in row:
                assert not re.match(r"[=+@]|-(?![0-9.]+$)", cell), (path.name, cell)
    assert rows > 50


def test_half_a_letter_is_answered_on_its_line(reading_room: Path, tmp_path: Path) -> None:
    r"""`"\ud83d\udeaa"`, as JSON writes a sign beyond \uffff: YAML takes it as two halves of none."""
    design = tmp_path / "design.yaml"
    text = reading_room.read_text(encoding="utf-8")
    design.write_text(text.replace("job: Larch", r'job: "\ud83d\udeaa" #', 1), encoding="utf-8")
    (problem,) = check(design, user_house=False).problems
    assert problem.message.startswith("Half a letter is written here")
    assert problem.unreadable
    assert problem.where is not None
    assert problem.where.line == 2
