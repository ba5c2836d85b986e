"""Starters that a maker copies: a whole design in trade words, or a house file."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from parametric.design.answers import stop
from parametric.figures import Where
from parametric.names import nearest
from parametric.problems import Problem

_HOUSE = "house.yaml"


def templates() -> Path:
    """The folder of starters: inside an installed package, or beside it in the source."""
    package = Path(__file__).resolve().parents[1]
    installed = package / "templates"
    return installed if installed.is_dir() else package.parent / "templates"


def kinds() -> tuple[str, ...]:
    """What has a starter: every kind of door, and cabinets by what they are for."""
    return tuple(sorted(p.stem for p in templates().glob("*.yaml") if p.name != _HOUSE))


def said_twice(words: Sequence[str], *, alone: bool) -> Problem | None:
    """Why the words said to make a starter by are no kind and file, if they are not.

    Args:
        words: as they were typed; the last is the file to make.
        alone: the kind was said by itself, or it is a house file that is made.
    """
    said, where = " ".join(words), Where(words[-1], 1)
    if words[-1] in kinds() or said in kinds():
        return stop(
            "no_file_said",
            f'"{said}" is a starter, and no file is said after it.',
            where,
            found=said,
            allowed="a starter and the file to make",
            fix=f"Say the file after it: stilewright new {said} my-job.yaml",
        )
    if len(words) > 1 and alone:
        return stop(
            "too_many_words",
            "--kind and --house go with the file alone.",
            where,
            found=said,
            allowed=words[-1],
            fix=f'Leave out "{" ".join(words[:-1])}", or leave out the option.',
        )
    return None


def new_design(kind: str, path: Path) -> tuple[Problem, ...]:
    """Copy a starter to a path where nothing stands yet.

    Args:
        kind: the word after `kind:` in a door, or what a cabinet is for.
        path: the new design file.

    Returns:
        Nothing, or the one reason why no file was written.
    """
    known = kinds()
    where = Where(str(path), 1)
    if kind not in known:
        near = nearest(kind, known)
        return (
            stop(
                "unknown_word",
                f'There is no starter "{kind}".' + (f' Did you mean "{near}"?' if near else ""),
                where,
                found=kind,
                allowed=", ".join(known),
                fix=f"Say one of these: {', '.join(known)}.",
            ),
        )
    return _copy(templates() / f"{kind}.yaml", path)


def new_house(path: Path) -> tuple[Problem, ...]:
    """Copy the house file's starter to a path where nothing stands yet."""
    return _copy(templates() / _HOUSE, path)


def _copy(starter: Path, path: Path) -> tuple[Problem, ...]:
    """Never over a file that is there, which may be somebody's work; whole, or not at all."""
    try:
        _put(path, starter.read_bytes())
    except FileExistsError:
        return (
            stop(
                "file_exists",
                f"{path} is there already, and is left as it is.",
                Where(str(path), 1),
                found=str(path),
                allowed="a name that is free",
                fix="Choose another name.",
            ),
        )
    except OSError as error:
        reason = error.strerror or str(error)
        return (
            stop(
                "file_not_written",
                f"{path} cannot be written: {reason[:1].lower()}{reason[1:]}.",
                Where(str(path), 1),
                found=reason,
                allowed="a folder that can be written in",
                fix="Look at the folder's name and whether you may write there.",
            ),
        )
    return ()


def _put(path: Path, content: bytes) -> None:
    """Written aside and moved into place.

    Raises:
        FileExistsError: something stands there already, a link that leads nowhere included.
        OSError: the folder cannot be written in.
    """
    if os.path.lexists(path):
        raise FileExistsError(path)
    aside = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        with aside.open("wb") as new:
            new.write(content)
            new.flush()
            os.fsync(new.fileno())
        try:
            # A second name for the file: unlike a move, it is never put over another.
            path.hardlink_to(aside)
        except FileExistsError:
            raise
        except OSError:  # a disk without second names, such as a memory stick
            if os.path.lexists(path):
                raise FileExistsError(path) from None
            aside.rename(path)
    finally:
        aside.unlink(missing_ok=True)
