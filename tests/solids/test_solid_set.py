"""Each shape is built once, kept between runs, and never taken on trust."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from parametric.model import Making, Part, Slot
from tests.solids.models import HAND_MADE, NAMES, assembly_of, solids_of
from tests.solids.pair import made, pair

if TYPE_CHECKING:
    from parametric.solids.cache import Cache

pytestmark = pytest.mark.kernel

BORE = Slot(
    name="bore", face="low face", u0=5, u1=15, v=10, width=10, depth=20, making=Making(by="bench")
)
BORED = made("bored block", "X1", "block", (40.0, 20.0, 20.0), BORE)


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    from parametric.solids.cache import Cache

    return Cache(folder=tmp_path / "solids")


@pytest.fixture
def no_building(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(part: Part) -> None:
        raise AssertionError(f"{part.name} was built")

    monkeypatch.setattr("parametric.solids.solid_set.part_solid", refuse)


def entries(cache: Cache) -> list[Path]:
    return sorted(cache.folder.iterdir())


@pytest.mark.parametrize("name", NAMES)
def test_every_solid_is_whole_and_of_its_parts_volume(name: str) -> None:
    from OCP.BRepCheck import BRepCheck_Analyzer

    from parametric.solids.shape import solids_in, volume

    assembly, solids = assembly_of(name), solids_of(name)
    for part in assembly.parts:
        shape = solids.of(part)
        assert len(solids_in(shape)) == 1, part.name
        assert BRepCheck_Analyzer(shape).IsValid(), part.name
        assert volume(shape) == pytest.approx(part.volume, rel=1e-6), part.name


@pytest.mark.parametrize("name", NAMES)
def test_every_solid_lies_inside_its_blank(name: str) -> None:
    from OCP.Bnd import Bnd_Box
    from OCP.BRepBndLib import BRepBndLib

    solids = solids_of(name)
    for part in assembly_of(name).parts:
        box = Bnd_Box()
        BRepBndLib.AddOptimal_s(solids.of(part), box, False, False)
        low, high = box.CornerMin().Coord(), box.CornerMax().Coord()
        blank = (part.blank.length, part.blank.width, part.blank.thickness)
        assert all(v >= -1e-6 for v in low), part.name
        assert all(v <= size + 1e-6 for v, size in zip(high, blank, strict=True)), part.name


def test_twins_share_one_solid() -> None:
    """46 pieces of 13 shapes: S1-S3, R1-R3, P1, T1, glass, two stops, pull, track."""
    assembly, solids = assembly_of(HAND_MADE), solids_of(HAND_MADE)
    assert len(assembly.parts) == 46
    assert len(solids.shapes) == 13
    by_name = {part.name: part for part in assembly.parts}
    right, turned = by_name["leaf A / right stile"], by_name["leaf B / left stile"]
    assert solids.of(right) is solids.of(turned)
    assert solids.of(by_name["leaf B / right stile"]) is not solids.of(right)


def test_two_parts_of_one_name_are_refused() -> None:
    from parametric.solids.solid_set import build_solids

    with pytest.raises(ValueError, match="two parts are called bored block"):
        build_solids([BORED, BORED])


def test_a_second_run_takes_every_solid_from_the_cache(
    cache: Cache, request: pytest.FixtureRequest
) -> None:
    from parametric.solids.shape import volume
    from parametric.solids.solid_set import build_solids

    parts = pair().parts
    first = build_solids(parts, cache)
    assert len(entries(cache)) == 13
    request.getfixturevalue("no_building")
    second = build_solids(parts, cache)
    for part in parts:
        assert volume(second.of(part)) == pytest.approx(volume(first.of(part)), rel=1e-12)


def test_kept_solids_give_the_same_bytes_as_built_ones(cache: Cache) -> None:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    assembly = assembly_of(HAND_MADE)
    build_solids(assembly.parts, cache)
    kept = build_solids(assembly.parts, cache)
    assert write_glb(assembly, kept) == write_glb(assembly, solids_of(HAND_MADE))


@pytest.mark.parametrize("harm", ["cut short", "one byte changed", "emptied", "another's solid"])
def test_a_spoilt_entry_is_built_anew(cache: Cache, harm: str) -> None:
    from parametric.solids.shape import volume
    from parametric.solids.solid_set import build_solids

    build_solids([BORED], cache)
    (entry,) = entries(cache)
    good = entry.read_bytes()
    match harm:
        case "cut short":
            entry.write_bytes(good[: len(good) // 2])
        case "one byte changed":
            entry.write_bytes(good[:-40] + bytes([good[-40] ^ 1]) + good[-39:])
        case "emptied":
            entry.write_bytes(b"")
        case _:  # rightly sealed, but the solid of a part without the bore
            other = replace(cache, folder=cache.folder.parent / "other")
            build_solids([replace(BORED, cuts=())], other)
            entry.write_bytes(entries(other)[0].read_bytes())
    solids = build_solids([BORED], cache)
    assert volume(solids.of(BORED)) == pytest.approx(BORED.volume, rel=1e-9)
    assert entry.read_bytes() == good


def test_a_change_of_the_shape_making_code_is_not_served_old_solids(
    cache: Cache, monkeypatch: pytest.MonkeyPatch
) -> None:
    from parametric.solids import cache as module
    from parametric.solids.solid_set import build_solids

    build_solids([BORED], cache)
    monkeypatch.setattr(module, "_made_by", lambda: " other code, other kernel")
    build_solids([BORED], cache)
    assert len(entries(cache)) == 2


def test_what_was_used_longest_ago_goes_first(cache: Cache) -> None:
    from parametric.solids.solid_set import build_solids

    blocks = [made(f"block {i}", "X1", "block", (40.0 + i, 20.0, 20.0), BORE) for i in range(4)]
    for age, block in zip((400, 300, 200, 100), blocks, strict=True):
        before = set(entries(cache)) if cache.folder.exists() else set()
        build_solids([block], cache)
        (new,) = set(entries(cache)) - before
        os.utime(new, (1_000_000_000 - age, 1_000_000_000 - age))
    build_solids([blocks[0]], cache)  # found, so used just now
    small = replace(cache, largest=2 * max(path.stat().st_size for path in entries(cache)))
    small.trim()
    kept = [block for block in blocks if _found(small, block)]
    assert kept == [blocks[0], blocks[3]]


def _found(cache: Cache, part: Part) -> bool:
    from parametric.model import shape_key

    return cache.find(shape_key(part), part.volume) is not None


def test_a_folder_that_cannot_be_written_stops_nothing(tmp_path: Path) -> None:
    from parametric.solids.cache import Cache
    from parametric.solids.solid_set import build_solids

    (tmp_path / "file").write_text("in the way")
    solids = build_solids([BORED], Cache(folder=tmp_path / "file" / "solids"))
    assert len(solids.shapes) == 1
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_a_cut_that_will_not_go_is_a_fault_unless_the_design_has_stops() -> None:
    """Two bores of 10 whose centres are 5 apart: the lens they share is taken but once.

    Lens of two circles r 5, d 5: 2 r2 acos(d / 2r) - (d / 2) sqrt(4 r2 - d2)
    = 50 * acos(0.5) - 2.5 * sqrt(75) = 52.360 - 21.651 = 30.709 mm2, 20 deep.
    """
    from parametric.solids.shape import WrongSolidError, volume
    from parametric.solids.solid_set import build_solids

    meeting = replace(BORED, cuts=(BORE, replace(BORE, name="second", u0=10, u1=20)))
    with pytest.raises(WrongSolidError, match="bored block: the solid has"):
        build_solids([meeting])
    shown = build_solids([meeting], with_stops=True)
    assert volume(shown.of(meeting)) == pytest.approx(meeting.volume + 20 * 30.709, abs=0.01)

    parted = replace(BORED, cuts=(replace(BORE, u0=-30, u1=70, width=12),))
    in_two = build_solids([parted], with_stops=True)
    assert volume(in_two.of(parted)) == pytest.approx(40 * (20 - 12) * 20, rel=1e-9)

    gone = replace(BORED, cuts=(replace(BORE, u0=-30, u1=70, width=24),))
    assert not build_solids([gone], with_stops=True).shows(gone)


def test_the_kernel_loads_only_when_asked_and_without_its_wrapper() -> None:
    """Importing the package costs nothing; even the writers need only the kernel itself."""
    code = (
        "import sys, parametric.solids, parametric.solids.looks\n"
        "assert 'OCP' not in sys.modules\n"
        "import parametric.writers.step, parametric.writers.glb, parametric.solids.clash\n"
        "assert 'OCP' in sys.modules and 'cadquery' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=Path(__file__).parents[2])


def test_two_processes_make_the_same_glb() -> None:
    from parametric.writers.glb import write_glb

    code = (
        "import hashlib\n"
        "from tests.solids.models import *\n"
        "from parametric.writers.glb import write_glb\n"
        f"for name in {NAMES!r}:\n"
        "    print(hashlib.sha256(write_glb(assembly_of(name), solids_of(name))).hexdigest())\n"
    )
    here = [
        hashlib.sha256(write_glb(assembly_of(name), solids_of(name))).hexdigest() for name in NAMES
    ]
    for seed in ("1", "2"):
        ran = subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            text=True,
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed},
        )
        assert ran.stdout.split() == here
