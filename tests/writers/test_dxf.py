"""Machine files read back: by a reader of our own, by GDAL, and by the library's audit."""

from __future__ import annotations

import dataclasses
import datetime
import io
import math
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import ezdxf
import ezdxf.bbox
import ezdxf.document
import pytest

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import SetUp, set_ups
from parametric.model import (
    Assembly,
    Cut,
    Face,
    Groove,
    Part,
    Pocket,
    Slot,
    Vector,
    face_point,
    removed_volume,
)
from parametric.outlines import Vertex
from parametric.writers.dxf import deterministic_bytes, new_document, write_cnc_dxf
from tests.cnc.pieces import odd_block, reading_room
from tests.readers.cnc_dxf import Fault, MachineFile, amiss, read

STAMP = Stamp(job="Larch Hill reading room", fingerprint="7C1F-04AB", revision="A")

# out of the wood, and the file's x: the length, or on an end the width
SEEN: dict[Face, tuple[Vector, Vector]] = {
    "low end": ((-1, 0, 0), (0, 1, 0)),
    "high end": ((1, 0, 0), (0, 1, 0)),
    "low edge": ((0, -1, 0), (1, 0, 0)),
    "high edge": ((0, 1, 0), (1, 0, 0)),
    "low face": ((0, 0, -1), (1, 0, 0)),
    "high face": ((0, 0, 1), (1, 0, 0)),
}


def written(assembly: Assembly) -> dict[str, tuple[SetUp, bytes]]:
    return {s.file: (s, write_cnc_dxf(s, STAMP)) for s in set_ups(assembly)}


ROOM, BLOCK = reading_room(), odd_block()
FILES = {assembly.name: written(assembly) for assembly in (ROOM, BLOCK)}
ROOM_FILES = FILES[ROOM.name]


def read_back(name: str) -> MachineFile:
    return read(ROOM_FILES[name][1])


def as_cut(cut: Cut, part: Part) -> tuple[Vector, Vector, float]:
    """Low corner, high corner and volume as the router leaves a cut, from the model's own frame."""
    match cut:
        case Slot() | Groove():
            spans = (cut.u0, cut.u1), (cut.v - cut.width / 2, cut.v + cut.width / 2)
        case Pocket():
            spans = (
                (cut.u - cut.length / 2, cut.u + cut.length / 2),
                (cut.v - cut.width / 2, cut.v + cut.width / 2),
            )
        case _:
            raise AssertionError(cut)
    begins = 0.0 if isinstance(cut, Slot) else cut.surface
    a = face_point(cut.face, part.blank, spans[0][0], spans[1][0], begins)
    b = face_point(cut.face, part.blank, spans[0][1], spans[1][1], cut.depth)
    low = tuple(min(p, q) for p, q in zip(a, b, strict=True))
    high = tuple(max(p, q) for p, q in zip(a, b, strict=True))
    left_round = dataclasses.replace(cut, squared=False) if isinstance(cut, Groove) else cut
    return low, high, removed_volume(left_round, part.blank)  # type: ignore[return-value]


def early_cuts(part: Part, face: Face) -> list[tuple[Vector, Vector, float]]:
    return [
        as_cut(cut, part)
        for cut in part.cuts
        if isinstance(cut, Slot | Pocket | Groove)
        and cut.face == face
        and (cut.making.by, cut.making.when) == ("router", "before glue-up")
    ]


def wrong_with(set_up: SetUp, part: Part, data: bytes) -> list[str]:
    assert set_up.face is not None
    normal, along = SEEN[set_up.face]
    blank = part.blank
    return amiss(
        read(data),
        size=(blank.length, blank.width, blank.thickness),
        normal=normal,
        along=along,
        expected=early_cuts(part, set_up.face),
    )


@pytest.mark.parametrize("assembly", [ROOM, BLOCK], ids=lambda a: a.name)
def test_every_part_file_cuts_what_its_part_has_where_it_has_it(assembly: Assembly) -> None:
    parts = {p.name: p for p in assembly.parts}
    files = [(s, d) for s, d in FILES[assembly.name].values() if s.face is not None]
    assert len(files) >= 5
    for set_up, data in files:
        for name in set_up.names:
            assert wrong_with(set_up, parts[name], data) == []


def test_blank_less_files_less_bench_work_is_the_part() -> None:
    files, bench = ROOM_FILES, bench_work(ROOM)
    for part in ROOM.parts:
        routed = sum(
            read(data).volume for s, data in files.values() if s.face and part.name in s.names
        )
        # a pull is cut into the glued leaf: a stile with pulls takes what both sides take
        letter = part.name[5]
        if part.mark == "S1":
            routed += sum(
                read(data).volume
                for s, data in files.values()
                if s.file in (f"leaf-{letter}-front.dxf", f"leaf-{letter}-back.dxf")
            )
        by_hand = sum(c.removes for c in bench if part.name in c.names)
        assert part.blank.volume - routed - by_hand == pytest.approx(part.volume, rel=1e-9)


def test_a_stile_by_hand() -> None:
    file = read_back("S2-stile-inner-edge.dxf")
    # slot: (62 - 12) x 12 + pi x 6^2 = 600 + 113.097 = 713.097 mm2
    slots = file.on("slot_d46")
    assert [s.area for s in slots] == pytest.approx([713.0973] * 5, abs=1e-3)
    # groove: 488 x 8.2 - (4 - pi) x 4^2 = 4001.6 - 13.735 = 3987.865 mm2
    (groove,) = file.on("groove_d14")
    assert groove.area == pytest.approx(3987.8655, abs=1e-3)
    # 5 x 713.0973 x 46 + 3987.8655 x 14 = 164012.4 + 55830.1 = 219842.5 mm3
    assert file.volume == pytest.approx(219842.5, abs=0.1)


@pytest.mark.parametrize(
    ("leaf", "side", "x"),
    [("A", "front", 60.0), ("A", "back", 964.5), ("B", "front", 964.5), ("B", "back", 60.0)],
)
def test_pull_pockets_by_hand(leaf: str, side: str, x: float) -> None:
    file = read_back(f"leaf-{leaf}-{side}.dxf")
    assert (file.length, file.width, file.thickness) == (1024.5, 2102, 40)
    (flange,) = file.on("pocket_d1.5")
    (body,) = file.on("pocket_d14.2")
    # brief G1: 160.6 x 42.6 - (4 - pi) x 6.3^2 and 150.6 x 32.6 - (4 - pi) x 3.3^2
    assert flange.area == pytest.approx(6807.5, abs=0.05)
    assert body.area == pytest.approx(4900.2, abs=0.05)
    assert flange.area == pytest.approx(160.6 * 42.6 - (4 - math.pi) * 6.3**2, rel=1e-9)
    assert body.area == pytest.approx(150.6 * 32.6 - (4 - math.pi) * 3.3**2, rel=1e-9)
    assert flange.centre == pytest.approx((x, 988))
    assert body.centre == pytest.approx((x, 988))
    # the body lies in the flange and begins at its floor
    assert (flange.begins, flange.floor) == (0, 1.5)
    assert (body.begins, body.floor) == (1.5, 14.2)
    assert (flange.smallest_corner, body.smallest_corner) == pytest.approx((6.3, 3.3))
    assert flange.cutter == body.cutter == 6


@pytest.mark.parametrize("name", list(ROOM_FILES))
def test_the_library_finds_nothing_to_mend_and_extents_are_the_piece(name: str) -> None:
    set_up, data = ROOM_FILES[name]
    document = ezdxf.read(io.StringIO(data.decode()))
    auditor = document.audit()
    assert (auditor.errors, auditor.fixes) == ([], [])
    assert document.dxfversion == "AC1024"
    # text and all: nothing stands outside the piece
    box = ezdxf.bbox.extents(document.modelspace())
    assert (box.extmin.x, box.extmin.y) == pytest.approx((0, 0))
    assert (box.extmax.x, box.extmax.y) == pytest.approx((set_up.length, set_up.width))


@pytest.mark.parametrize("name", list(ROOM_FILES))
def test_words_are_clear_of_cuts(name: str) -> None:
    set_up, data = ROOM_FILES[name]
    document = ezdxf.read(io.StringIO(data.decode()))
    words = [ezdxf.bbox.extents([e]) for e in document.modelspace() if e.dxf.layer == "notes"]
    drawn = [
        ezdxf.bbox.extents([e])
        for e in document.modelspace()
        if e.dxf.layer not in ("notes", "stock")
    ]
    assert len(words) > 1
    assert len(drawn) == len(set_up.operations) + 1
    assert not any(w.has_overlap(d) for w in words for d in drawn)


@pytest.mark.skipif(shutil.which("ogrinfo") is None, reason="gdal-bin is not installed")
@pytest.mark.parametrize("name", list(ROOM_FILES))
def test_gdal_reads_the_same(name: str, tmp_path: Path) -> None:
    set_up, data = ROOM_FILES[name]
    path = tmp_path / name
    path.write_bytes(data)
    run = subprocess.run(["ogrinfo", "-al", str(path)], capture_output=True, text=True, check=True)
    layers = re.findall(r"^  Layer \(String\) = (\S+)$", run.stdout, re.MULTILINE)
    assert sorted(x for x in layers if x != "notes") == sorted(
        ["stock", "datum", *(o.layer for o in set_up.operations)]
    )
    extent = re.search(r"^Extent: \((.+), (.+)\) - \((.+), (.+)\)$", run.stdout, re.MULTILINE)
    assert extent is not None
    found = [float(extent[i]) for i in range(1, 5)]
    assert found == pytest.approx([0, 0, set_up.length, set_up.width], abs=1e-6)
    # every cut is one closed ring at minus its depth
    rings = re.findall(r"^  LINESTRING Z \((.+)\)$", run.stdout, re.MULTILINE)
    assert len(rings) == len(set_up.operations)
    for ring, operation in zip(rings, set_up.operations, strict=True):
        points = [tuple(map(float, p.split())) for p in ring.split(",")]
        assert points[0] == points[-1]
        assert {z for _, _, z in points} == {-operation.depth}


def test_same_bytes_in_two_processes_and_at_any_time(monkeypatch: pytest.MonkeyPatch) -> None:
    program = (
        "import hashlib; from tests.writers.test_dxf import ROOM_FILES\n"
        "for n, (_, d) in sorted(ROOM_FILES.items()):\n"
        "    print(n, hashlib.sha256(d).hexdigest())"
    )
    root = Path(__file__).parents[2]
    runs = [
        subprocess.run(
            [sys.executable, "-c", program],
            env={**os.environ, "PYTHONHASHSEED": seed, "TZ": zone},
            cwd=root,
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo"))
    ]
    assert runs[0] == runs[1]
    assert runs[0].count("\n") == 9

    class LongAgo(datetime.datetime):
        @classmethod
        def now(cls, tz: datetime.tzinfo | None = None) -> datetime.datetime:
            return datetime.datetime(1999, 5, 6, 7, 8, 9, tzinfo=tz)

    monkeypatch.setattr(ezdxf.document, "datetime", LongAgo)
    assert written(ROOM) == ROOM_FILES


def test_the_library_is_left_as_it_was() -> None:
    assert not ezdxf.options.write_fixed_meta_data_for_testing
    deterministic_bytes(new_document())
    assert not ezdxf.options.write_fixed_meta_data_for_testing


# Seeded faults: each must be seen, by the reader alone or against the part


def stile_file() -> tuple[SetUp, Part, bytes]:
    set_up, data = ROOM_FILES["S2-stile-inner-edge.dxf"]
    part = next(p for p in ROOM.parts if p.name == "leaf A / right stile")
    return set_up, part, data


def odd_file(face: Face) -> tuple[SetUp, Part, bytes]:
    set_up, data = next(f for f in FILES[BLOCK.name].values() if f[0].face == face)
    return set_up, BLOCK.parts[0], data


def record(data: bytes, layer: str) -> str:
    """The first polyline on a layer, as it stands in the file."""
    found = re.search(
        rf"  0\nLWPOLYLINE\n(?:(?!  0\n).*\n)*?  8\n{layer}\n(?:(?!  0\n).*\n)*", data.decode()
    )
    assert found is not None
    return found[0]


def opened(data: bytes) -> bytes:
    whole = record(data, "slot_d46")
    return data.replace(whole.encode(), whole.replace(" 70\n1\n", " 70\n0\n").encode())


def doubled(data: bytes) -> bytes:
    whole = record(data, "slot_d46")
    again = re.sub(r"  5\n\w+\n", "  5\nFFF0\n", whole)
    return data.replace(whole.encode(), (whole + again).encode())


def stray_line(data: bytes) -> bytes:
    whole = record(data, "slot_d46")
    line = "  0\nLINE\n  5\nFFF1\n  8\nslot_d46\n 10\n58\n 20\n14\n 11\n108\n 21\n14\n"
    return data.replace(whole.encode(), (whole + line).encode())


def misnamed(data: bytes) -> bytes:
    return data.replace(b"slot_d46", b"slot_d64")


def mislaid(data: bytes) -> bytes:
    """One slot drawn at another height than its layer says."""
    whole = record(data, "slot_d46")
    return data.replace(whole.encode(), whole.replace("-46.0", "-45.8").encode())


def in_inches(data: bytes) -> bytes:
    return data.replace(b"$INSUNITS\n 70\n4\n", b"$INSUNITS\n 70\n1\n")


def inch_numbers(data: bytes) -> bytes:
    """Every coordinate over 25.4, and still called millimetres."""
    return re.sub(
        r"( 10| 20| 38)\n(-?[\d.]+)\n",
        lambda m: f"{m[1]}\n{float(m[2]) / 25.4}\n",
        data.decode(),
    ).encode()


def left_out(data: bytes) -> bytes:
    return data.replace(record(data, "slot_d46").encode(), b"")


def moved_datum(data: bytes) -> bytes:
    whole = record(data, "datum")
    moved = whole.replace(" 10\n0.0\n 20\n0.0\n", " 10\n5.0\n 20\n1.0\n")
    return data.replace(whole.encode(), moved.encode())


@pytest.mark.parametrize(
    ("spoil", "seen"),
    [
        (opened, "an open outline"),
        (doubled, "a doubled line on slot_d46"),
        (stray_line, "a LINE on layer slot_d46"),
        (misnamed, "layer slot_d64 lies at -46.0"),
        (mislaid, "layer slot_d46 lies at -45.8"),
        (in_inches, r"\$INSUNITS is 1, not 4"),
        (inch_numbers, "the stock is said to be 2126 x 40, drawn 83.7"),
        (left_out, "slot_d46: 5 said, 4 drawn"),
        (moved_datum, "the datum is not drawn at 0;0"),
    ],
    ids=lambda v: v.__name__ if callable(v) else "",
)
def test_a_spoilt_file_is_seen(spoil: Callable[[bytes], bytes], seen: str) -> None:
    _, _, data = stile_file()
    spoilt = spoil(data)
    assert spoilt != data
    with pytest.raises(Fault, match=seen):
        read(spoilt)


@pytest.mark.parametrize("face", list(SEEN))
@pytest.mark.parametrize("across", ["x", "y", "half a turn"])
def test_a_mirrored_or_turned_file_is_seen(face: Face, across: str) -> None:
    set_up, part, data = odd_file(face)
    assert wrong_with(set_up, part, data) == []
    (operation,) = set_up.operations

    def turn(v: Vertex) -> Vertex:
        x = v.x if across == "y" else set_up.length - v.x
        y = v.y if across == "x" else set_up.width - v.y
        return v._replace(x=x, y=y)

    outline = [turn(v) for v in operation.outline]
    if across != "half a turn":
        back = outline[::-1]
        bulges = [v.bulge for v in (*back[1:], back[0])]
        outline = [v._replace(bulge=b) for v, b in zip(back, bulges, strict=True)]
    spoilt = dataclasses.replace(
        set_up, operations=(dataclasses.replace(operation, outline=tuple(outline)),)
    )
    assert len(wrong_with(spoilt, part, write_cnc_dxf(spoilt, STAMP))) == 2


def test_a_file_without_one_slot_is_seen_against_the_part() -> None:
    set_up, part, _ = stile_file()
    fewer = dataclasses.replace(set_up, operations=set_up.operations[1:])
    (missing,) = wrong_with(fewer, part, write_cnc_dxf(fewer, STAMP))
    assert missing.startswith("not cut: ")


def test_a_pocket_a_little_shallow_is_seen_against_the_part() -> None:
    set_up, part, _ = odd_file("high face")
    (operation,) = set_up.operations
    shallow = dataclasses.replace(
        set_up, operations=(dataclasses.replace(operation, depth=operation.depth - 0.2),)
    )
    assert len(wrong_with(shallow, part, write_cnc_dxf(shallow, STAMP))) == 2


def test_a_blank_of_another_length_is_seen_against_the_part() -> None:
    set_up, part, _ = stile_file()
    longer = dataclasses.replace(set_up, length=set_up.length + 1)
    (wrong,) = wrong_with(longer, part, write_cnc_dxf(longer, STAMP))
    assert wrong.startswith("a blank of (2127.0, 120.0, 40.0)")
