"""Larch Hill with every size to the nearest 1/32 of an inch: its sheets, read back.

Fractions are read here by a few lines of this file's own, off the DXF by ezdxf and off the
PDF by poppler; a value is true when it is within half a step of what it stands for.

Source of the rules: ASME Y14.5 (fractions reduced, no nought before a decimal point), Y14.1
(sizes B and C), Y14.3 (third angle), all from memory; feet and scales as US shops write them,
common practice, no source.
"""

from __future__ import annotations

import io
import re
import subprocess
from fractions import Fraction
from functools import cache
from math import gcd
from pathlib import Path

import ezdxf
import pytest

from parametric.drawing import Drawings
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.primitives import Fill, Label, arrowhead
from parametric.drawing.sheet import Hatch, Sheet, primitives
from parametric.drawing.site import leaf_boxes, upright_cut
from parametric.job import check
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.known import known_design
from parametric.writers.dxf_sheets import write_dxf
from parametric.writers.pdf import write_pdf
from tests.drawing.sheets import ROOT, drawn, larch_hill

TWIN = ROOT / "tests/designs/inch/larch-hill.yaml"
INCH = 25.4
HALF_A_STEP = INCH / 64 + 1e-6
_VALUE = re.compile(r"(?:(\d+)' )?(?:(\d+)-)?(\d+)(?:/(\d+))?(\")?")


@cache
def twin() -> Drawings:
    return drawn(TWIN)


def doors() -> tuple[Sheet, ...]:
    return twin().sets[0].sheets


def inches(said: str) -> Fraction:
    """A value as the sheets say it, in inches; it must be in lowest terms."""
    found = _VALUE.fullmatch(said)
    assert found is not None, said
    feet, whole, number, under, _ = found.groups()
    if under is None:
        assert whole is None, said
        return 12 * Fraction(feet or 0) + int(number)
    assert gcd(int(number), int(under)) == 1, said
    assert int(number) < int(under) <= 32, said
    return 12 * Fraction(feet or 0) + Fraction(whole or 0) + Fraction(int(number), int(under))


def value_of(text: str) -> Fraction:
    """The value in a dimension's text, its words, brackets and decimals left out."""
    bare = re.sub(r"\(\d*\.\d{3}\)", "", text).replace("(", "").replace(")", "")
    found = re.search(_VALUE, bare)
    assert found is not None, text
    return inches(found[0])


def sized(sheet: Sheet) -> list[Dimension | Ordinate]:
    return [e for e in sheet.elements if isinstance(e, (Dimension, Ordinate))]


def test_paper_and_scales() -> None:
    """B is 11 x 17 in: 431.8 x 279.4 mm. One inch to the foot is 1:12."""
    arrangement, leaves = doors()[:2]
    for sheet in doors():
        # The house marks to 0.3 mm: 0.3 / 25.4 = 0.012.
        assert sheet.title.sizes == "inches ±0.012"
        if sheet.title.document.startswith("Part"):
            # A part with many cuts may take the next paper: C is 17 x 22 in.
            assert sheet.paper.name in ("tabloid", "C")
            continue
        assert (sheet.paper.name, sheet.paper.width, sheet.paper.height) == (
            "tabloid",
            pytest.approx(431.8),
            pytest.approx(279.4),
        )
    assert arrangement.title.scale == leaves.title.scale == '1" = 1\'-0"'
    assert {v.scale for v in leaves.views} == {12.0}
    others = {sheet.paper.name for own in twin().sets[1:] for sheet in own.sheets}
    assert "letter" in others
    assert not others & {"A4", "A3", "A2"}


def test_the_audit_of_the_doors_is_clean() -> None:
    numbers = {sheet.name for sheet in doors()}
    assert [str(f) for f in twin().findings if f.sheet in numbers] == []


def test_every_value_is_true_to_a_thirty_second() -> None:
    count = 0
    for sheet in doors():
        for e in sized(sheet):
            assert abs(float(value_of(e.text)) * INCH - abs(e.value)) <= HALF_A_STEP, e.text
            assert e.label.stacked
            count += 1
    assert count >= 70


def test_by_hand() -> None:
    """Cover 72 + 2 x 1 31/32 = 75 15/16, said 6' 3 15/16"; leaf (75 15/16 + 4 23/32) / 2 = 40 21/64.

    80 21/32 / 2 = 40 21/64 is half way between 40 10/32 and 40 11/32, and halves go up. Leaf
    height 81 15/32 + 1 25/32 - 15/32 = 82 25/32, said 6' 10 25/32" where it hangs and in inches
    at the bench. Shoulder 40 21/64 - 2 x 4 23/32 = 30 57/64, half way again: 30 29/32.
    """
    arrangement, leaves = ({e.figure: e.text for e in sized(sheet)} for sheet in doors()[:2])
    assert arrangement["cover"] == "6' 3-15/16\" cover"
    assert arrangement["leaf height"] == "6' 10-25/32\""
    assert leaves["leaf A / width"] == "40-11/32"
    assert leaves["leaf A / height"] == "82-25/32"
    assert leaves["leaf A / shoulder"] == "30-29/32"


def test_feet_stand_on_the_arrangement_alone() -> None:
    arrangement, *others = doors()
    for e in sized(arrangement):
        assert ("'" in e.text) == (abs(e.value) > 72 * INCH + INCH / 64), e.text
    assert not any("'" in e.text for sheet in others for e in sized(sheet))


def test_what_is_machined_off_the_step_has_its_decimal() -> None:
    """The pane's tongue in its stop, 11/32 with .347: within half a thousandth of its number."""
    found = [
        (float(m[1]), e.value)
        for sheet in doors()
        for e in sized(sheet)
        if (m := re.search(r"\((\d*\.\d{3})\)", e.text))
    ]
    assert found
    for said, value in found:
        assert said * INCH == pytest.approx(value, abs=0.0005 * INCH + 1e-9)


@pytest.mark.parametrize("index", [0, 1])
def test_real_dimensions_measure_what_they_say(index: int) -> None:
    """Off the DXF: points apart, the text of the picture, and what another program prints."""
    document = ezdxf.read(io.StringIO(write_dxf(doors()[index]).decode("utf-8")))
    assert document.audit().errors == []
    count = 0
    for entity in document.modelspace().query("DIMENSION"):
        measured = entity.get_measurement()
        picture = document.blocks[entity.dxf.geometry]
        said = [t.plain_text() for t in picture.query("MTEXT")]
        said += [t.dxf.text for t in picture.query("TEXT")]
        assert len(said) == 1
        # ezdxf gives a stack as "29 13/16" or "2913/16": the numbers are read off the codes.
        codes = [t.text for t in picture.query("MTEXT")] or said
        plain = re.sub(r"(\d)? ?\{\\H0\.75x;\\S(\d+)/(\d+);\}", _joined, codes[0])
        plain = plain.removeprefix("\\A1;")
        assert abs(float(value_of(plain)) * INCH - measured) <= HALF_A_STEP, codes
        settings = entity.override()
        assert settings["dimlfac"] == pytest.approx(1 / INCH, abs=1e-12)
        assert settings["dimtfac"] == 0.75
        # 5 is fractional, 4 is feet and inches; 2 ** 5 is 32.
        assert settings["dimlunit"] == (4 if "'" in plain else 5)
        assert settings["dimdec"] == 5
        count += 1
    assert count >= 12


def _joined(found: re.Match[str]) -> str:
    before, top, bottom = found.groups()
    return f"{before}-{top}/{bottom}" if before else f"{top}/{bottom}"


def test_reading_the_drawings_back_finds_no_fault() -> None:
    job = check(TWIN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    known = known_design(job.resolved, job.assembly, job.loads)
    files = {f"D{sheet.title.sheet}.dxf": write_dxf(sheet) for sheet in doors()}
    verdict = check_drawings(files, known)
    assert verdict.faults == ()
    assert verdict.looked_at["dimensions"] >= 60  # type: ignore[operator]


def test_a_drawing_that_other_programs_would_letter_in_millimetres_is_found() -> None:
    job = check(TWIN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    known = known_design(job.resolved, job.assembly, job.loads)
    text = write_dxf(doors()[1]).decode("utf-8")
    factor = re.search(r"1070\n *144\n1040\n(0\.0393\d+)\n", text)
    assert factor is not None
    wrong = text.replace(factor[1], "1.0", 1).encode()
    assert "would be lettered" in "\n".join(check_drawings({"D2.dxf": wrong}, known).faults)


def test_the_pdf_reads_as_it_is_said(tmp_path: Path) -> None:
    """Every value of the leaf's sheet stands in the text of its page, whole and in order."""
    path = tmp_path / "doors.pdf"
    path.write_bytes(write_pdf(doors()))
    for page in (1, 2):
        text = subprocess.run(
            ["pdftotext", "-raw", "-f", str(page), "-l", str(page), str(path), "-"],
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        words = " ".join(text.split())
        for e in sized(doors()[page - 1]):
            assert " ".join(e.text.split()) in words, e.text


# Third angle ----------------------------------------------------------------------------------


def arrows(sheet: Sheet, letter: str) -> set[str]:
    """Which way the arrows of a section look: from the letter's side to the tip's."""
    letters = [
        p
        for e in sheet.elements
        for p in primitives(e)
        if isinstance(p, Label) and p.text == letter and p.height == 3.5 and p.weight == "bold"
    ]
    tips = [e for e in sheet.elements if isinstance(e, Fill) and e.layer == "dims"]
    long = {len(arrowhead((0, 0), (5, 0), 2.6, 0.75))}
    ways = set()
    for label in letters:
        near = [
            t.points[0]
            for t in tips
            if len(t.points) in long
            and abs(t.points[0][0] - label.at[0]) < 9
            and abs(t.points[0][1] - label.at[1]) < 6
        ]
        ways |= {"right" if tip[0] > label.at[0] else "left" for tip in near}
    return ways


def wall_side(sheet: Sheet) -> str:
    """On which side of its face the timber over the head is drawn."""
    view = sheet.view("section B-B")
    xs = [
        x
        for e in sheet.elements
        if isinstance(e, Hatch) and e.view == view.name and e.material == "carcassing timber"
        for stroke in e.strokes
        for x, _ in stroke
    ]
    assert xs
    return "right" if min(xs) > view.x(0.0) - 1e-9 else "left"


def test_the_section_stands_on_the_side_it_is_seen_from() -> None:
    """In inches the leaves are seen from the right, arrows to the left; in mm the other way."""
    assert arrows(doors()[0], "B") == {"left"}
    assert arrows(larch_hill().sheets[0], "B") == {"right"}
    # The front is towards the elevation in third angle, away from it in first.
    assert (wall_side(doors()[0]), wall_side(larch_hill().sheets[0])) == ("right", "left")
    assert (doors()[0].title.projection, larch_hill().sheets[0].title.projection) == (
        "third",
        "first",
    )


def test_the_section_is_cut_where_the_other_leaf_stands_beyond() -> None:
    """Seen from the right it goes through the last leaf, so that the front one lies beyond."""
    job = check(TWIN, user_house=False)
    assert job.resolved is not None
    front, rear = leaf_boxes(job.resolved.door)
    at = upright_cut(job.resolved.door, third_angle=True)
    assert rear.x0 < at < rear.x1
    assert front.x0 < at
    assert front.x1 < at
    metric = upright_cut(job.resolved.door)
    assert front.x0 < metric < front.x1 < rear.x1


def test_weights_are_said_in_pounds() -> None:
    """1 lb is 0.45359237 kg: 36.3 / 0.45359237 = 80.03, 23.6 / 0.4536 = 52.0."""
    words = [p.text for e in doors()[0].elements for p in primitives(e) if isinstance(p, Label)]
    assert "lb (kg)" in words
    assert "80 (36.3)" in words
    assert "52 (23.6)" in words
    assert any("80 lb (36.3 kg)" in word for word in words)
