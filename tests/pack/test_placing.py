"""A pack is there whole or not at all, and nobody's files are ever lost."""

from __future__ import annotations

import contextlib
import errno
import fcntl
import itertools
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

import pytest

from parametric.pack import placing
from parametric.pack.marker import MARKER
from parametric.pack.placing import may_place, place_pack

PROJECT = Path(__file__).resolve().parents[2]

FIRST = {"order/timber.csv": b"1", "numbers.json": b"{1}", "shop/drawings.pdf": b"sheet 1"}
SECOND = {"order/timber.csv": b"2", "numbers.json": b"{2}", "new": b"n"}
THIRD = {"order/glass.csv": b"3", "numbers.json": b"{3}"}

NOTE = {"shop/note.txt": b"rang the client"}
EDIT = {"order/timber.csv": b"1, and two lengths of ash"}


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, by path; the tool's marker left out."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != MARKER
    }


def beside(pack: Path) -> list[str]:
    """What stands in the folder that the pack is in."""
    return sorted(path.name for path in pack.parent.iterdir())


def put(folder: Path, files: Mapping[str, bytes]) -> None:
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)


def codes(placed: placing.Placed) -> list[tuple[str, str]]:
    return [(problem.code, problem.level) for problem in placed.problems]


@pytest.fixture
def pack(tmp_path: Path) -> Path:
    """Where the pack goes; its parent holds nothing else."""
    return tmp_path / "outputs" / "larch-hill"


@pytest.fixture
def lived_in(pack: Path) -> Path:
    """A pack in which somebody has put a note and changed the timber order."""
    assert place_pack(pack, FIRST).written
    put(pack, NOTE | EDIT)
    return pack


# --- what it does ------------------------------------------------------------------


def test_first_pack_holds_the_files_and_nothing_else_stands_beside_it(pack: Path) -> None:
    placed = place_pack(pack, FIRST, design="Larch Hill reading room")
    assert placed.problems == ()
    assert placed.files == ("numbers.json", "order/timber.csv", "shop/drawings.pdf")
    assert contents(pack) == FIRST
    assert beside(pack) == ["larch-hill"]


def test_a_second_pack_leaves_nothing_stale(pack: Path) -> None:
    place_pack(pack, FIRST)
    assert place_pack(pack, SECOND).problems == ()
    assert contents(pack) == SECOND
    assert not (pack / "shop").exists()
    assert beside(pack) == ["larch-hill"]


def test_the_marker_names_the_design_and_every_file(pack: Path) -> None:
    place_pack(pack, {"numbers.json": b"{}"}, design="Larch Hill")
    # sha256 of the two characters {}, as sha256sum prints it.
    assert json.loads((pack / MARKER).read_text()) == {
        "stilewright pack": 1,
        "design": "Larch Hill",
        "files": {
            "numbers.json": "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a"
        },
    }


def test_the_same_pack_has_the_same_bytes_wherever_it_is_placed(tmp_path: Path) -> None:
    place_pack(tmp_path / "a", FIRST, design="x")
    place_pack(tmp_path / "b" / "c", dict(reversed(FIRST.items())), design="x")
    assert (tmp_path / "a" / MARKER).read_bytes() == (tmp_path / "b" / "c" / MARKER).read_bytes()


def test_an_empty_folder_is_used(pack: Path) -> None:
    pack.mkdir(parents=True)
    assert place_pack(pack, FIRST).written
    assert contents(pack) == FIRST


def test_a_link_to_the_folder_stays_a_link(pack: Path, tmp_path: Path) -> None:
    place_pack(pack, FIRST)
    link = tmp_path / "latest"
    link.symlink_to(pack)
    assert place_pack(link, SECOND).written
    assert link.is_symlink()
    assert contents(pack) == SECOND


# --- people's files ----------------------------------------------------------------


def test_added_and_changed_files_are_kept(lived_in: Path) -> None:
    placed = place_pack(lived_in, SECOND)
    kept = lived_in.with_name("larch-hill-kept")
    assert contents(lived_in) == SECOND
    assert contents(kept) == NOTE | EDIT
    assert placed.kept == (kept / "order/timber.csv", kept / "shop/note.txt")
    assert codes(placed) == [("files_kept", "note")]
    assert "larch-hill-kept/shop/note.txt" in placed.problems[0].message


def test_kept_files_are_numbered_not_overwritten(lived_in: Path) -> None:
    place_pack(lived_in, SECOND)
    for text in (b"again", b"and again"):
        put(lived_in, {"shop/note.txt": text})
        place_pack(lived_in, SECOND)
    assert contents(lived_in.with_name("larch-hill-kept")) == EDIT | {
        "shop/note.txt": b"rang the client",
        "shop/note-2.txt": b"again",
        "shop/note-3.txt": b"and again",
    }


def test_a_kept_file_gives_way_to_nobody(lived_in: Path) -> None:
    """`shop` is a file in the kept folder, and `larch-hill-kept` may itself be a pack."""
    put(lived_in.parent, {"larch-hill-kept/shop": b"a file called shop"})
    place_pack(lived_in, SECOND)
    assert contents(lived_in.with_name("larch-hill-kept")) == EDIT | {
        "shop": b"a file called shop",
        "shop-2/note.txt": b"rang the client",
    }
    other = lived_in.parent / "alcove"
    place_pack(other, FIRST)
    place_pack(lived_in.parent / "alcove-kept", FIRST)
    put(other, NOTE)
    place_pack(other, FIRST)
    assert contents(lived_in.parent / "alcove-kept") == FIRST
    assert contents(lived_in.parent / "alcove-kept-2") == NOTE


def test_a_link_put_in_a_pack_is_moved_and_what_it_points_at_is_not_touched(
    pack: Path, tmp_path: Path
) -> None:
    put(tmp_path / "photos", {"before.jpg": b"..."})
    place_pack(pack, FIRST)
    (pack / "photos").symlink_to(tmp_path / "photos")
    (pack / "order/timber.csv").unlink()
    (pack / "order/timber.csv").symlink_to(tmp_path / "photos" / "before.jpg")
    place_pack(pack, SECOND)
    kept = pack.with_name("larch-hill-kept")
    assert (kept / "photos").is_symlink()
    assert (kept / "order/timber.csv").is_symlink()
    assert contents(tmp_path / "photos") == {"before.jpg": b"..."}


def test_a_file_managers_own_notes_are_not_kept(pack: Path) -> None:
    place_pack(pack, FIRST)
    put(pack, {"shop/.DS_Store": b"icons", "Thumbs.db": b"icons"})
    assert place_pack(pack, SECOND).problems == ()
    assert beside(pack) == ["larch-hill"]


def test_a_file_that_somebody_deleted_comes_back(pack: Path) -> None:
    place_pack(pack, FIRST)
    shutil.rmtree(pack / "order")
    assert place_pack(pack, FIRST).problems == ()
    assert contents(pack) == FIRST


# --- refusals ----------------------------------------------------------------------


@pytest.mark.parametrize(
    "marker", [None, b"", b"[]", b'{"stilewright pack": 2, "design": "", "files": {}}', b"\xff"]
)
def test_a_folder_without_a_marker_is_refused(pack: Path, marker: bytes | None) -> None:
    theirs = {"thesis.tex": b"years of work"}
    put(pack, theirs)
    if marker is not None:
        (pack / MARKER).write_bytes(marker)
    placed = place_pack(pack, FIRST)
    assert codes(placed) == [("pack_folder_not_ours", "stop")]
    assert may_place(pack) == placed.problems
    assert not placed.written
    assert contents(pack) == theirs
    assert beside(pack) == ["larch-hill"]


def test_the_pack_of_another_design_is_refused(pack: Path) -> None:
    place_pack(pack, FIRST, design="Larch Hill reading room")
    placed = place_pack(pack, SECOND, design="Larch Hill, reading room")
    assert codes(placed) == [("pack_of_another_design", "stop")]
    assert may_place(pack, design="Larch Hill, reading room") == placed.problems
    assert contents(pack) == FIRST
    assert may_place(pack, design="Larch Hill reading room") == ()
    assert place_pack(pack, SECOND, design="Larch Hill reading room").written


@pytest.mark.parametrize("taken", [".larch-hill.new", ".larch-hill.old"])
def test_somebody_elses_folder_under_a_name_of_the_swap_is_left_alone(
    pack: Path, taken: str
) -> None:
    place_pack(pack, FIRST)
    put(pack.parent / taken, {"letter.txt": b"dear"})
    placed = place_pack(pack, SECOND)
    assert codes(placed) == [("pack_folder_not_ours", "stop")]
    assert placed.problems[0].found.endswith(taken)
    assert contents(pack) == FIRST
    assert contents(pack.parent / taken) == {"letter.txt": b"dear"}


def test_a_file_in_the_way_is_refused(tmp_path: Path) -> None:
    put(tmp_path, {"notes": b"mine"})
    assert codes(place_pack(tmp_path / "notes", FIRST)) == [("pack_folder_not_ours", "stop")]
    inside = place_pack(tmp_path / "notes" / "pack", FIRST)
    assert codes(inside) == [("pack_not_written", "stop")]
    assert inside.problems[0].message.endswith("there is a file where a folder should go")
    assert [p.code for p in may_place(tmp_path / "notes" / "pack")] == ["pack_not_written"]
    assert contents(tmp_path) == {"notes": b"mine"}


def test_a_path_too_long_is_a_problem(tmp_path: Path) -> None:
    placed = place_pack(tmp_path / ("n" * 300), FIRST)
    assert codes(placed) == [("pack_not_written", "stop")]
    assert placed.problems[0].message.endswith("the path is too long for this disk")
    # The name alone would go (255 is the limit), but not with the five that the swap adds to it.
    assert codes(place_pack(tmp_path / ("n" * 251), FIRST)) == [("pack_not_written", "stop")]
    assert list(tmp_path.iterdir()) == []


def test_a_pack_one_stands_in_is_refused(pack: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place_pack(pack, FIRST)
    monkeypatch.chdir(pack / "order")
    assert codes(place_pack(pack, SECOND)) == [("pack_folder_in_use", "stop")]
    assert contents(pack) == FIRST


@contextlib.contextmanager
def as_somebody_who_may_not() -> Iterator[Path]:
    """An open folder to try in, without root's rights while inside."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        folder.chmod(0o777)
        root = os.geteuid() == 0
        if root:
            os.seteuid(65534)
        try:
            yield folder
        finally:
            if root:
                os.seteuid(0)


def test_a_folder_that_may_not_be_written_is_a_problem() -> None:
    with as_somebody_who_may_not() as folder:
        pack = folder / "outputs" / "larch-hill"
        place_pack(pack, FIRST)
        pack.parent.chmod(0o555)
        placed = place_pack(pack, SECOND)
        pack.parent.chmod(0o755)
        assert codes(placed) == [("pack_not_written", "stop")]
        assert placed.problems[0].message == "the pack was not written: this may not be written"
        assert contents(pack) == FIRST
        assert beside(pack) == ["larch-hill"]


def test_an_old_pack_that_may_not_be_cleared_is_a_caution_until_it_may() -> None:
    with as_somebody_who_may_not() as folder:
        pack = folder / "outputs" / "larch-hill"
        place_pack(pack, FIRST)
        pack.chmod(0o555)
        placed = place_pack(pack, SECOND)
        assert codes(placed) == [("old_pack_left", "caution")]
        assert contents(pack) == SECOND
        assert codes(place_pack(pack, THIRD)) == [("pack_not_written", "stop")]
        assert contents(pack) == SECOND
        (pack.parent / ".larch-hill.old").chmod(0o755)
        assert place_pack(pack, THIRD).problems == ()
        assert contents(pack) == THIRD
        assert beside(pack) == ["larch-hill"]


def test_may_place_sees_a_folder_that_may_not_be_written() -> None:
    with as_somebody_who_may_not() as folder:
        shut = folder / "shut"
        shut.mkdir(mode=0o555)
        found = may_place(shut / "outputs" / "larch-hill")
        assert [(p.code, p.found) for p in found] == [("pack_not_written", str(shut))]
        assert may_place(folder / "outputs" / "larch-hill") == ()
        assert list(folder.iterdir()) == [shut]


@pytest.mark.parametrize(
    "files",
    [
        {"../x": b""},
        {"/x": b""},
        {"": b""},
        {"a//b": b""},
        {"a\\b": b""},
        {"a:b": b""},
        {MARKER: b""},
        {"a": b"", "A": b""},
        {"cnc": b"", "CNC/x.dxf": b""},
    ],
)
def test_a_path_that_is_no_plain_path_inside_the_pack_is_our_fault(
    pack: Path, files: dict[str, bytes]
) -> None:
    with pytest.raises(ValueError, match=r"plain path|capitals"):
        place_pack(pack, files)
    assert not pack.parent.exists()


# --- two at once -------------------------------------------------------------------


def test_a_build_waits_for_another_and_then_says_so(
    pack: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place_pack(pack, FIRST)
    monkeypatch.setattr(placing, "_PATIENCE", 0.1)
    handle = os.open(pack.parent, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        assert codes(place_pack(pack, SECOND)) == [("pack_folder_in_use", "stop")]
    finally:
        os.close(handle)
    assert contents(pack) == FIRST
    assert place_pack(pack, SECOND).written


def test_builds_at_once_leave_one_whole_pack(pack: Path) -> None:
    never = 10**6
    runs = [subprocess.Popen(kill_command(pack, never), cwd=PROJECT) for _ in range(4)]
    assert [run.wait() for run in runs] == [0, 0, 0, 0]
    assert contents(pack) == SECOND
    assert beside(pack) == ["larch-hill"]


# --- cut off anywhere --------------------------------------------------------------


class Cut(BaseException):
    """The end of the process, as far as the code under test can tell: nothing catches it."""


@contextlib.contextmanager
def failing_at(step: int, failure: Callable[[], BaseException]) -> Iterator[list[str]]:
    """Let `step` changes of the disk through, then fail; yields the changes that were tried.

    A file is cut off half written.
    """
    tried: list[str] = []
    with pytest.MonkeyPatch.context() as patch:

        def stand_in_front_of(name: str) -> None:
            real = getattr(os, name)

            def change(*args: object, **more: object) -> object:
                tried.append(name)
                if len(tried) <= step:
                    return None if name == "fsync" else real(*args, **more)
                if name == "fsync":
                    os.ftruncate(args[0], os.fstat(args[0]).st_size // 2)  # type: ignore[arg-type]
                raise failure()

            patch.setattr(os, name, change)

        for name in ("mkdir", "rename", "unlink", "rmdir", "fsync"):
            stand_in_front_of(name)
        yield tried


def everything(pack: Path) -> list[bytes]:
    """Every file below the parent, wherever it went."""
    return [p.read_bytes() for p in pack.parent.rglob("*") if p.is_file() and p.name != MARKER]


def assert_nothing_lost_and_nothing_torn(pack: Path) -> None:
    """What must hold after any cut: people's files exist once, and one whole pack stands."""
    for mine in (*NOTE.values(), *EDIT.values()):
        assert everything(pack).count(mine) == 1
    stands = pack if pack.exists() else pack.with_name(".larch-hill.old")
    assert contents(stands) in (SECOND, THIRD, FIRST | NOTE | EDIT)


def assert_mended(pack: Path) -> None:
    """After the next run: the third pack, people's files beside it, nothing else."""
    assert contents(pack) == THIRD
    kept = pack.with_name("larch-hill-kept")
    assert contents(kept) == NOTE | EDIT
    assert beside(pack) == ["larch-hill", "larch-hill-kept"]


def test_cut_off_at_any_step_and_again_at_any_step_of_the_mending(tmp_path: Path) -> None:
    cuts = 0
    for first_cut in itertools.count():
        for second_cut in itertools.count():
            pack = tmp_path / f"{first_cut}-{second_cut}" / "larch-hill"
            place_pack(pack, FIRST)
            put(pack, NOTE | EDIT)
            first_done = second_done = False
            with contextlib.suppress(Cut), failing_at(first_cut, Cut):
                first_done = place_pack(pack, SECOND).written
            assert_nothing_lost_and_nothing_torn(pack)
            with contextlib.suppress(Cut), failing_at(second_cut, Cut):
                second_done = place_pack(pack, SECOND).written
            assert_nothing_lost_and_nothing_torn(pack)
            assert place_pack(pack, THIRD).written
            assert_mended(pack)
            shutil.rmtree(pack.parent)
            cuts += 1
            if second_done:
                break
        if first_done:
            break
    assert cuts > 20 * 20


def test_a_disk_that_fails_at_any_step_is_a_problem_and_loses_nothing(tmp_path: Path) -> None:
    outcomes = set()
    for step in itertools.count():
        pack = tmp_path / str(step) / "larch-hill"
        place_pack(pack, FIRST)
        put(pack, NOTE | EDIT)
        with failing_at(step, lambda: OSError(errno.EIO, "the disk hums")) as tried:
            placed = place_pack(pack, SECOND)
        assert_nothing_lost_and_nothing_torn(pack)
        if len(tried) <= step:
            break
        outcomes.add(codes(placed)[0])
        assert placed.problems[0].message.endswith("the disk hums")
        if not placed.written:
            assert not pack.exists() or contents(pack) == FIRST | NOTE | EDIT
        assert place_pack(pack, THIRD).written
        assert_mended(pack)
    assert outcomes == {("pack_not_written", "stop"), ("old_pack_left", "caution")}


def test_one_failure_of_the_disk_is_undone_at_once(tmp_path: Path) -> None:
    """A full disk, then room again: the old pack stands as if nothing had been tried."""
    for step in range(8):
        pack = tmp_path / str(step) / "larch-hill"
        place_pack(pack, FIRST)
        with pytest.MonkeyPatch.context() as patch:
            real, calls = os.fsync, itertools.count()

            def full(
                handle: int, real: Callable[[int], None] = real, calls: Iterator[int] = calls
            ) -> None:
                if next(calls) == step:  # noqa: B023 - used up within the turn
                    raise OSError(errno.ENOSPC, "No space left on device")
                real(handle)

            patch.setattr(os, "fsync", full)
            placed = place_pack(pack, SECOND)
        if step < len(SECOND) + 1:
            assert codes(placed) == [("pack_not_written", "stop")]
            assert placed.problems[0].message == "the pack was not written: the disk is full"
            assert contents(pack) == FIRST
        else:
            assert contents(pack) == SECOND
        assert beside(pack) == ["larch-hill"]


def kill_command(pack: Path, step: int) -> list[str]:
    return [sys.executable, "-m", "tests.pack.cut_off", str(pack), str(step)]


def test_killed_at_any_step(tmp_path: Path) -> None:
    """With a real signal, that no handler sees, at every change of the disk."""
    for step in itertools.count():
        pack = tmp_path / str(step) / "larch-hill"
        place_pack(pack, FIRST)
        put(pack, NOTE | EDIT)
        ended = subprocess.run(kill_command(pack, step), cwd=PROJECT, check=False).returncode
        assert_nothing_lost_and_nothing_torn(pack)
        assert ended in (0, -signal.SIGKILL)
        assert place_pack(pack, THIRD).written
        assert_mended(pack)
        if ended == 0:
            break
    # At least: 2 folders and 4 files of the new pack, 2 renames, 2 files kept in 3 folders,
    # 2 files, 2 folders and the marker of the old pack deleted, and the old folder itself.
    assert step >= 2 + 4 + 2 + 2 + 3 + 2 + 2 + 1 + 1


def test_killed_while_writing_the_very_first_pack(tmp_path: Path) -> None:
    for step in range(8):
        pack = tmp_path / str(step) / "larch-hill"
        pack.parent.mkdir()
        assert subprocess.run(kill_command(pack, step), cwd=PROJECT, check=False).returncode < 0
        assert not pack.exists()
        assert place_pack(pack, FIRST).problems == ()
        assert contents(pack) == FIRST
        assert beside(pack) == ["larch-hill"]
