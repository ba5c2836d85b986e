"""Ways in which machine files, cutters and the bench list break their contract, each found."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable

import pytest

from parametric.cnc.operations import Operation
from parametric.pack.verifying.rebuilt import BENCH, TOOLS, check_cutting
from tests.verify.lopsided import cutting, known, written
from tests.verify.seeds import (
    Files,
    set_up,
    shifted,
    spoiled_cut,
    spoiled_entity,
    spoiled_set_up,
    spoiled_text,
    with_operations,
)

INNER, FRONT = "S1-post-inner-edge.dxf", "leaf-A-front.dxf"


def found(files: Files) -> str:
    return "\n".join(check_cutting(files, known()).faults)


def replaced(old: str, new: str, times: int = -1) -> Files:
    return spoiled_text(INNER, old, new, times)


def spoiled_list(path: str, old: str, new: str) -> Files:
    files = cutting()
    text = files[path].decode()
    assert old in text, old
    return {**files, path: text.replace(old, new, 1).encode()}


TURNED_OVER = [("210", "0.0"), ("220", "0.0"), ("230", "-1.0")]

TEXTS: tuple[tuple[str, str, str, str], ...] = (
    ("not metric", "$MEASUREMENT\n 70\n1\n", "$MEASUREMENT\n 70\n0\n", "does not say metric"),
    ("a spline", "\nLWPOLYLINE\n", "\nSPLINE\n", "a SPLINE on layer"),
    (
        "frozen",
        "AcDbLayerTableRecord\n  2\nslot_d31\n 70\n0\n",
        "AcDbLayerTableRecord\n  2\nslot_d31\n 70\n1\n",
        "switched off or frozen",
    ),
    ("not of this design", "0123-ABCD", "9999-ABCD", "does not carry the fingerprint 0123-ABCD"),
    (
        "wrong cutter",
        "6, depth 26, corner",
        "16, depth 26, corner",
        "a cutter of 16 does not go where 12 fits",
    ),
    ("wrong count", "slot_d26: 1 off", "slot_d26: 2 off", "1 drawn, 2 said"),
    ("wrong depth in words", "depth 26", "depth 62", "the words say 62"),
    ("wrong stock in words", "stock 720 x 45", "stock 702 x 45", "drawn 720 x 45, said 702 x 45"),
    ("wrong thickness in words", "110 thick", "101 thick", "the stock is 101 thick, the piece 110"),
    ("another piece", "leaf A / post", "leaf B / post", "there is no piece called leaf B / post"),
    ("another face", "inner edge face up", "outer edge face up", "mirror image"),
    ("no such face", "inner edge face up", "broad side face up", "no face called broad side"),
    ("another mark", "S1 post, inner", "S2 post, inner", "is called S2 post, and is run on S1"),
    (
        "one piece too few said",
        "1 off: leaf A / post",
        "2 off: leaf A / post",
        "2 off are said, 1 pieces named",
    ),
)


@pytest.mark.parametrize(("old", "new", "says"), [t[1:] for t in TEXTS], ids=[t[0] for t in TEXTS])
def test_words_and_headers(old: str, new: str, says: str) -> None:
    once = 1 if old == "\nLWPOLYLINE\n" else -1
    assert says in found(replaced(old, new, once))


def test_a_file_that_cannot_be_read() -> None:
    for data in (b"", b"\xff\xfe", b"0\nSECTION\n2\nHEADER\n", b"a\nb\n"):
        files = {**cutting(), f"cnc/{INNER}": data}
        assert f"{INNER}: cannot be read back" in found(files)
        assert "S1: no file cuts its inner edge (3 cuts)" in found(files)


def test_a_file_too_few_and_one_too_many() -> None:
    files = cutting()
    gone = {path: data for path, data in files.items() if INNER not in path}
    assert "S1: no file cuts its inner edge (3 cuts)" in found(gone)
    gone = {path: data for path, data in files.items() if FRONT not in path}
    assert "leaf A: no file cuts its front (2 cuts)" in found(gone)
    twice = {**files, "cnc/again.dxf": files[f"cnc/{INNER}"]}
    assert "again.dxf: slot_d31 at 40 to 90; 23 to 33 is not in the part" in found(twice)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda tags: [t for t in tags if t[0] != " 42"], "mm2 of outline"),
        (lambda tags: [*tags[:-1], *TURNED_OVER, tags[-1]], "tilted or turned over"),
        (
            lambda tags: [(c, "3" if c == " 90" else v) for c, v in tags],
            "4 corners where 3 are said",
        ),
        (
            lambda tags: [(c, "-30.8" if c == " 38" else v) for c, v in tags],
            "lies 30.8 deep, and its name says 31",
        ),
        (lambda tags: [(c, "31.0" if c == " 38" else v) for c, v in tags], "is -31 deep"),
        (lambda tags: [(c, f"-{v}" if c == " 42" else v) for c, v in tags], "mm2 of outline"),
    ],
    ids=[
        "square ends",
        "upside down",
        "corner count",
        "elevation",
        "above the wood",
        "arcs inwards",
    ],
)
def test_one_outline(
    change: Callable[[list[tuple[str, str]]], list[tuple[str, str]]], says: str
) -> None:
    assert says in found(spoiled_entity(INNER, "slot_d31", change))


def moved(name: str, x: float, y: float) -> Callable[[Operation], Operation]:
    return lambda op: (
        dataclasses.replace(op, outline=shifted(op.outline, x, y)) if op.name == name else op
    )


def test_a_cut_half_out_of_the_stock_is_told_as_such() -> None:
    files = spoiled_set_up(INNER, with_operations(moved("low slot", -45.0, 0.0)))
    assert "slot_d31: reaches out of the stock" in found(files)


def test_two_cuts_that_cross() -> None:
    files = spoiled_set_up(INNER, with_operations(moved("low slot", 90.0, 0.0)))
    assert "slot_d31 and groove_d11 cross" in found(files)


def test_a_pocket_deeper_than_the_one_that_lies_in_it() -> None:
    """The flange at 14 deep would swallow the body at 13.7."""
    change = with_operations(
        lambda op: dataclasses.replace(op, depth=14.0) if op.name == "flange" else op
    )
    assert "lies in a cut that is already 14 deep" in found(spoiled_set_up(FRONT, change))


def test_a_leaf_whose_datum_is_said_otherwise() -> None:
    files = {
        **cutting(),
        f"cnc/{FRONT}": written(dataclasses.replace(set_up(FRONT), y_from="lower edge")),
    }
    assert "the datum is said to be at left edge as seen on the front and lower edge" in found(
        files
    )


def test_a_hundredth_is_found_and_a_nanometre_is_not() -> None:
    assert found(spoiled_set_up(INNER, with_operations(moved("low slot", 1e-6, 0.0)))) == ""
    assert "low slot" in found(spoiled_set_up(INNER, with_operations(moved("low slot", 0.01, 0.0))))


BENCH_LINES = (
    (
        "trim 9 off the foot",
        "trim 8 off the foot",
        "trim foot of S1 says 8, foot, the part has 9, foot",
    ),
    ("trim 9 off the foot", "trim 9 off the top", "says 9, top, the part has 9, foot"),
    ("trim 9 off the foot", "saw something off", "says no cut that can be read"),
    ("r 4, 11 deep", "r 3, 11 deep", "panel groove of S1"),
    ("110 to 260", "111 to 260", "sawn groove of R1"),
    ("ramps of a blade r 100", "ramps of a blade r 127", "sawn groove of R1"),
    ("from 12 thick at the edge", "from 11 thick at the edge", "bevel of P1"),
    ("8 thick, 13 long", "8 thick, 15 long", "tongue of P1"),
    ("r 5", "r 4", "rounding of T1"),
    ("mitre the high end", "mitre the low end", "mitre of L1"),
    ("S1,post,1,trim foot", "S1,post,2,trim foot", "trim foot of S1 is 2 off, and there are 1"),
    (",trim foot,", ",trim the foot,", "trim foot of S1 is missing"),
)


@pytest.mark.parametrize(("old", "new", "says"), BENCH_LINES)
def test_the_saw_and_bench_list(old: str, new: str, says: str) -> None:
    assert says in found(spoiled_list(BENCH, old, new))


def test_a_line_of_the_bench_list_dropped() -> None:
    """The cut itself is told as missing, and the part no longer comes out."""
    files = cutting()
    lines = files[BENCH].decode().split("\r\n")
    for dropped in lines[1:-1]:
        left = "\r\n".join(line for line in lines if line != dropped)
        said = found({**files, BENCH: left.encode()})
        assert "is missing" in said
        assert "blank less machine files less saw and bench list" in said
    assert f"{BENCH} is missing" in found({p: d for p, d in files.items() if p != BENCH})


def test_the_list_of_cutters() -> None:
    for old, new, says in (
        ("slot_d31,6,31,110", "slot_d31,8,31,110", "cutter diameter mm of slot_d31"),
        ("slot_d31,6,31,110", "slot_d31,6,32,110", "depth mm of slot_d31"),
        ("slot_d31,6,31,110", "slot_d31,6,31,111", "stock thickness mm of slot_d31"),
        ("slot_d31", "slot_d30", "is missing"),
        (",inner edge,slot_d31", ",outer edge,slot_d31", "its own words say inner edge"),
    ):
        assert says in found(spoiled_list(TOOLS, old, new))


@pytest.mark.parametrize(
    ("name", "change"),
    [
        ("panel groove", {"u1": 519.0}),
        ("short groove", {"corner": 3.0}),
        ("window", {"depth": 44.0}),
        ("hole", {"v": 12.0}),
        ("sawn groove", {"ramp": 101.0}),
        ("guide groove", {"depth": 33.0}),
        ("flange", {"corner": 6.0}),
        ("bevel", {"run": 49.0}),
        ("tongue", {"back": 2.0}),
    ],
)
def test_files_of_a_slightly_other_part(name: str, change: dict[str, float]) -> None:
    """All files made alike from a part in which one number is another."""
    assert found(spoiled_cut(name, lambda cut: dataclasses.replace(cut, **change))) != ""
