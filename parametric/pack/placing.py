"""Moving a finished pack into place, so that nobody ever meets half of one.

    .NAME.new   the new pack, while it is being written
    NAME        the pack
    .NAME.old   the pack before, for the moment of the swap
    NAME-kept   what people had put into the pack, or changed in it

The order is: write `.NAME.new`; rename NAME to `.NAME.old`; rename `.NAME.new` to NAME;
move people's files out of `.NAME.old` to `NAME-kept`; delete the rest of it, its marker
last. Cut it off anywhere and the next run can tell from the names alone how far it
got: it puts the old pack back if NAME is gone, and finishes clearing if it is not.

The marker file in a pack says that the folder is the tool's and lists what the tool
wrote, with digests, so that a file of a person's, or one that a person changed, is
known and never deleted.
"""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import sys
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from parametric.pack.marker import MARKER, digest_of, marker_for, read_marker
from parametric.problems import Problem, stops

if sys.platform != "win32":
    import fcntl

_PATIENCE = 10.0
"""Seconds to wait for another run that is placing a pack in the same folder."""
_DESKTOP_NOTES = frozenset((".DS_Store", "Thumbs.db", "desktop.ini"))
"""What file managers leave in a folder they have shown: nobody's work."""

_NOT_IN_A_NAME = frozenset('<>:"|?*\\')


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """What came of placing a pack.

    `files` are the paths written, relative to `folder`; `kept` is where people's own
    files went. A stop among `problems` means that the pack is as it was before.
    """

    folder: Path
    files: tuple[str, ...] = ()
    kept: tuple[Path, ...] = ()
    problems: tuple[Problem, ...] = ()

    @property
    def written(self) -> bool:
        """True when the new pack stands."""
        return not stops(self.problems)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Places:
    """The names a swap goes through, all beside each other on one disk."""

    pack: Path
    new: Path
    old: Path


class _RefusedError(Exception):
    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def may_place(folder: Path, *, design: str = "") -> tuple[Problem, ...]:
    """The stop that a pack placed here would meet, before any work is done; changes nothing."""
    home = Path(os.path.realpath(folder))
    try:
        _look(home, folder, design)
        nearest = next(parent for parent in home.parents if os.path.lexists(parent))
        if not nearest.is_dir():
            raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR), str(nearest))
        effective = os.access in os.supports_effective_ids
        if not os.access(nearest, os.W_OK | os.X_OK, effective_ids=effective):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(nearest))
    except _RefusedError as refused:
        return (refused.problem,)
    except OSError as error:
        return (_cannot_write(folder, error),)
    return ()


def place_pack(folder: Path, files: Mapping[str, bytes], *, design: str = "") -> Placed:
    """Write a pack aside and swap it for the one that stands.

    Args:
        folder: the pack folder itself.
        files: contents by path inside the pack, with forward slashes.
        design: what the pack is a pack of. A pack that says it is of another design is
            refused; "" on either side asks nothing.

    Problems:
        pack_folder_not_ours, pack_of_another_design, pack_folder_in_use,
        pack_not_written: stops; the folder is as it was.
        old_pack_left: a caution; the new pack stands, what is left of the old one is named.
        files_kept: a note with where people's files went.

    Raises:
        ValueError: a path is no plain path inside the pack (a fault in the tool).
    """
    _check_paths(files)
    home = Path(os.path.realpath(folder))
    places = _Places(
        pack=home,
        new=home.with_name(f".{home.name}.new"),
        old=home.with_name(f".{home.name}.old"),
    )
    kept: list[Path] = []
    problems: list[Problem] = []
    try:
        home.parent.mkdir(parents=True, exist_ok=True)
        with _alone_in(home.parent, folder):
            _mend(places, kept)
            _look(home, folder, design)
            _write_and_swap(places, files, design)
            problems += _clear_old(places, kept)
    except _RefusedError as refused:
        problems.append(refused.problem)
    except OSError as error:
        problems.append(_cannot_write(folder, error))
    if kept:
        names = ", ".join(str(path) for path in kept)
        message = f"files that were not the tool's own were moved out of the pack: {names}"
        problems.append(Problem(code="files_kept", level="note", message=message))
    return Placed(
        folder=folder,
        files=() if stops(problems) else tuple(sorted(files)),
        kept=tuple(kept),
        problems=tuple(problems),
    )


def _check_paths(files: Mapping[str, bytes]) -> None:
    folded = {path.casefold() for path in files}
    if len(folded) < len(files):
        raise ValueError("two files of the pack differ in capitals only")
    for path in files:
        plain = PurePosixPath(path)
        parts = plain.parts
        inside = parts and not plain.is_absolute() and str(plain) == path and ".." not in parts
        clear = not any(str(parent).casefold() in folded for parent in plain.parents)
        if not inside or not clear or path == MARKER or _NOT_IN_A_NAME & set(path):
            raise ValueError(f"{path!r} is no plain path inside the pack")


@contextlib.contextmanager
def _alone_in(parent: Path, folder: Path) -> Iterator[None]:
    """Hold the parent folder, so that two builds at once wait for each other.

    The lock goes with the process that holds it, however that ends. Windows has no such
    lock on a folder; there, renaming what another process has open fails instead.
    """
    if sys.platform == "win32":
        yield
        return
    handle = os.open(parent, os.O_RDONLY)
    try:
        patience = time.monotonic() + _PATIENCE
        while not _locked(handle):
            if time.monotonic() > patience:
                raise _RefusedError(
                    Problem(
                        code="pack_folder_in_use",
                        level="stop",
                        message="another build is writing beside this pack",
                        found=str(folder),
                        fix="wait for it to end, then build again",
                    )
                )
            time.sleep(0.05)
        yield
    finally:
        os.close(handle)


def _locked(handle: int) -> bool:
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return True  # a file system without locks: go on as without company
    return True


def _look(pack: Path, folder: Path, design: str) -> None:
    """Refuse a folder that is not the tool's, or is another design's."""
    if not os.path.lexists(pack):
        return
    if not pack.is_dir():
        raise _RefusedError(
            Problem(
                code="pack_folder_not_ours",
                level="stop",
                message="there is a file where the pack folder should go",
                found=str(folder),
                fix="move it away, or name another folder with --out",
            )
        )
    if pack == Path.cwd() or pack in Path.cwd().parents:
        raise _RefusedError(
            Problem(
                code="pack_folder_in_use",
                level="stop",
                message="you are standing in the pack folder, which is about to be replaced",
                found=str(folder),
                fix="go up out of it, then build again",
            )
        )
    if _is_empty(pack):
        return
    marker = read_marker(pack)
    if marker is None:
        raise _RefusedError(
            Problem(
                code="pack_folder_not_ours",
                level="stop",
                message="this folder was not made by stilewright, and will not be replaced",
                found=str(folder),
                allowed=f"a new or empty folder, or a pack with its {MARKER}",
                fix="name another folder with --out, or move this one away",
            )
        )
    if design and marker.design and marker.design != design:
        raise _RefusedError(
            Problem(
                code="pack_of_another_design",
                level="stop",
                message=f'this folder holds the pack of another design, "{marker.design}"',
                found=str(folder),
                fix="give the job another name, or name another folder with --out",
            )
        )


def _mend(places: _Places, kept: list[Path]) -> None:
    """Finish or undo a swap that was cut off; adds where people's files went to `kept`."""
    if os.path.lexists(places.new):
        _refuse_strange(places.new)
        _delete(places.new)
    if not os.path.lexists(places.old):
        return
    _refuse_strange(places.old)
    if not os.path.lexists(places.pack):
        places.old.rename(places.pack)
    elif read_marker(places.pack) is not None:
        _clear(places, kept)
    # Else somebody made a folder here meanwhile; `_look` refuses it and both stay as they are.


def _refuse_strange(aside: Path) -> None:
    """Refuse to touch a folder that has one of our names but is not ours."""
    if aside.is_dir() and not aside.is_symlink():
        if read_marker(aside) is not None:
            return
        # Cut off before the marker was whole, or after it was deleted.
        if all(entry.name == MARKER for entry in aside.iterdir()):
            return
    raise _RefusedError(
        Problem(
            code="pack_folder_not_ours",
            level="stop",
            message="the tool needs this name for the moment of the swap, and it is taken",
            found=str(aside),
            fix="move it away, then build again",
        )
    )


def _write_and_swap(places: _Places, files: Mapping[str, bytes], design: str) -> None:
    try:
        _write_aside(places.new, files, design)
        if places.pack.is_dir() and _is_empty(places.pack):
            places.pack.rmdir()
        elif places.pack.is_dir():
            places.pack.rename(places.old)
        places.new.rename(places.pack)
    except OSError:
        # Best effort: what cannot be undone now is undone by the next run.
        with contextlib.suppress(OSError, _RefusedError):
            _mend(places, [])
        raise


def _write_aside(new: Path, files: Mapping[str, bytes], design: str) -> None:
    new.mkdir()
    # The marker first: it is what says that a half-written folder may be deleted.
    _write(new / MARKER, marker_for(design, files))
    for path in sorted(files):
        target = new / path
        target.parent.mkdir(parents=True, exist_ok=True)
        _write(target, files[path])


def _write(target: Path, content: bytes) -> None:
    with target.open("xb") as file:
        file.write(content)
        file.flush()
        # On the disk before the rename is, so that a power cut leaves no empty files.
        os.fsync(file.fileno())


def _delete(new: Path) -> None:
    """Delete a half-written pack, its marker last, so that it stays known until it is gone."""
    for entry in sorted(new.iterdir()):
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        elif entry.name != MARKER:
            entry.unlink()
    (new / MARKER).unlink(missing_ok=True)
    new.rmdir()


def _clear_old(places: _Places, kept: list[Path]) -> tuple[Problem, ...]:
    """Clear the old pack once the new one stands; a failure is no longer a stop."""
    if not os.path.lexists(places.old):
        return ()
    try:
        _clear(places, kept)
    except OSError as error:
        reason = error.strerror or str(error)
        return (
            Problem(
                code="old_pack_left",
                level="caution",
                message=f"the new pack stands; the old one could not be cleared away: {reason}",
                found=str(places.old),
                fix="close what has its files open; the next build clears it",
            ),
        )
    return ()


def _clear(places: _Places, kept: list[Path]) -> None:
    """Move people's files out of the old pack, delete the rest, the marker last."""
    marker = read_marker(places.old)
    listed = marker.files if marker is not None else {}

    def clear(folder: Path) -> None:
        for entry in sorted(folder.iterdir()):
            inside = entry.relative_to(places.old).as_posix()
            if entry.is_dir() and not entry.is_symlink():
                clear(entry)
                entry.rmdir()
            elif inside == MARKER:
                continue
            elif entry.name in _DESKTOP_NOTES or _unchanged(entry, listed.get(inside)):
                entry.unlink()
            else:
                kept.append(_keep(entry, PurePosixPath(inside), places.pack))

    clear(places.old)
    (places.old / MARKER).unlink(missing_ok=True)
    places.old.rmdir()


def _unchanged(file: Path, written: str | None) -> bool:
    return written is not None and digest_of(file) == written


def _keep(file: Path, inside: PurePosixPath, pack: Path) -> Path:
    """Move one file to the same place under `NAME-kept`, under a new number if that is taken."""
    at = _first_free(pack.parent, f"{pack.name}-kept", _takes_kept_files)
    for part in inside.parts[:-1]:
        at.mkdir(exist_ok=True)
        at = _first_free(at, part, _takes_kept_files)
    at.mkdir(exist_ok=True)
    target = _first_free(at, inside.name, lambda _: False)
    file.rename(target)
    return target


def _first_free(folder: Path, name: str, suits: Callable[[Path], bool]) -> Path:
    """`name` in the folder, or `name-2`, `name-3`: the first that is free, or suits."""
    plain = folder / name
    number, path = 1, plain
    while os.path.lexists(path) and not suits(path):
        number += 1
        path = plain.with_name(f"{plain.stem}-{number}{plain.suffix}")
    return path


def _takes_kept_files(path: Path) -> bool:
    """A folder that is not itself a pack."""
    return path.is_dir() and not os.path.lexists(path / MARKER)


def _is_empty(folder: Path) -> bool:
    return next(folder.iterdir(), None) is None


_WHY = {
    errno.EACCES: (
        "this may not be written",
        "choose another folder with --out, or close its files",
    ),
    errno.EPERM: (
        "this may not be written",
        "choose another folder with --out, or close its files",
    ),
    errno.EROFS: ("this disk is read-only", "choose another folder with --out"),
    errno.ENOSPC: ("the disk is full", "make room, then build again"),
    errno.EDQUOT: ("your share of the disk is full", "make room, then build again"),
    errno.ENAMETOOLONG: ("the path is too long for this disk", "choose a shorter one with --out"),
    errno.EEXIST: ("there is a file where a folder should go", "choose another with --out"),
    errno.ENOTDIR: ("there is a file where a folder should go", "choose another with --out"),
    errno.EBUSY: ("the folder is in use", "close what has its files open, then build again"),
}


def _cannot_write(folder: Path, error: OSError) -> Problem:
    reason = error.strerror or str(error)
    why, fix = _WHY.get(error.errno or 0, (reason, "choose another folder with --out"))
    return Problem(
        code="pack_not_written",
        level="stop",
        message=f"the pack was not written: {why}",
        found=str(error.filename or folder),
        fix=fix,
    )
