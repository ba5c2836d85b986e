"""Drawings that say one thing and show another: found, and nothing is found in sound ones."""

from __future__ import annotations

import pytest

from parametric.pack.verifying.drawing_file import read_drawing
from parametric.pack.verifying.drawings import check_drawings
from tests.verify.larch_hill import drawings_of, known, sheets_as_files


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return sheets_as_files(drawings_of(None))


def spoiled(files: dict[str, bytes], which: str, old: str, new: str, times: int = 1) -> str:
    path = next(path for path in files if which in path)
    text = files[path].decode()
    assert old in text, old
    changed = text.replace(old, new, times).encode()
    return "\n".join(check_drawings({path: changed}, known()).faults)


def test_each_dimension_names_its_number(files: dict[str, bytes]) -> None:
    """What is drawn of Larch Hill, worked in the brief: the leaf is 1024.5 x 2102, its shoulder 784.5."""
    seen = {
        d.figure: (d.measured, d.shown)
        for data in files.values()
        for d in read_drawing(data).dimensions
    }
    assert seen["leaf A / width"] == (pytest.approx(1024.5), ("1024.5",))
    assert seen["leaf A / shoulder"] == (pytest.approx(784.5), ("784.5",))
    assert seen["leaf height"] == (pytest.approx(2102.0), ("2102",))
    assert seen["cover"] == (pytest.approx(1929.0), ("1929 cover",))


def test_each_window_names_its_view(files: dict[str, bytes]) -> None:
    views = [w.view for data in files.values() for w in read_drawing(data).windows]
    assert len(set(views)) == len(views)
    assert {"front elevation", "plan A-A", "leaf A", "leaf B"} <= set(views)


def test_a_dimension_that_prints_another_number(files: dict[str, bytes]) -> None:
    said = spoiled(files, "leaves", "leaf A / shoulder", "leaf A / width")
    assert '"784.5" (leaf A / width) measures 784.500, the number is 1024.500' in said
    said = spoiled(files, "leaves", "leaf A / shoulder", "leaf A / shuolder")
    assert "which is no number of the design" in said


def test_a_text_in_place_of_the_measurement(files: dict[str, bytes]) -> None:
    said = spoiled(files, "leaves", "\n  1\n<>\n100\nAcDbAligned", "\n  1\n250\n100\nAcDbAligned")
    assert "the text says 250" in said


def test_a_stated_measurement(files: dict[str, bytes]) -> None:
    assert "says it measures 784.6" in spoiled(files, "leaves", "\n 42\n784.5\n", "\n 42\n784.6\n")


def test_half_a_printing_step_is_no_fault(files: dict[str, bytes]) -> None:
    """Lengths print to 0.5: the picture may say 784.5 of 784.7, and not of 784.8."""
    figures = dict(known().figures)
    assert float(figures["leaf A / shoulder"]) == 784.5
    assert "the text says 784" in spoiled(files, "leaves", "\n  1\n784.5\n", "\n  1\n784\n")
    assert "the text says 785" in spoiled(files, "leaves", "\n  1\n784.5\n", "\n  1\n785\n")


def test_a_drawing_in_inches(files: dict[str, bytes]) -> None:
    said = spoiled(files, "leaves", "$INSUNITS\n 70\n4\n", "$INSUNITS\n 70\n1\n")
    assert "the header's unit is not the millimetre" in said


def test_a_dimension_that_ends_on_nothing(files: dict[str, bytes]) -> None:
    """Both its ends 3 mm aside: it still measures what it says."""
    path = next(path for path in files if "leaves" in path)
    text = files[path].decode()
    at = text.index("leaf A / shoulder")
    start = text.rindex("\nDIMENSION\n", 0, at)
    entity = text[start:at]
    lines = entity.split("\n")
    for i, line in enumerate(lines):
        if line in (" 13", " 14"):
            lines[i + 1] = str(float(lines[i + 1]) + 3.0)
    changed = text[:start] + "\n".join(lines) + text[at:]
    faults = check_drawings({path: changed.encode()}, known()).faults
    assert len(faults) == 2
    assert all("ends where nothing is drawn" in fault for fault in faults)


def test_a_part_left_out_of_the_front(files: dict[str, bytes]) -> None:
    """The dividing rail's lower edge is drawn on another layer of another file: it is gone."""
    path = next(path for path in files if "leaves" in path)
    text = files[path].decode()
    entities = text.index("\nENTITIES\n")
    gone = text[entities:].replace("\n 21\n1371.0\n", "\n 21\n1372.0\n", 1)
    faults = check_drawings({path: (text[:entities] + gone).encode()}, known()).faults
    assert any("dividing rail is not drawn from" in fault for fault in faults)


def test_a_file_that_is_no_drawing() -> None:
    for data in (b"", b"  0\nEOF\n", b"\xff"):
        assert "cannot be read back" in check_drawings({"a.dxf": data}, known()).faults[0]
