"""A pack on disk read back: is it this design's, is it as it was built, do its files agree."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from parametric.pack.marker import MARKER, digest_of, read_marker
from parametric.pack.verifying.figures_file import FIGURES
from parametric.pack.verifying.known import Known, Verified
from parametric.pack.verifying.pack import MODELS, verify
from parametric.problems import Problem, stops
from parametric.trade.fingerprint import mark


def verify_folder(folder: Path, known: Known) -> Verified:
    """Read a pack back and hold it against a design.

    Args:
        folder: the pack.
        known: the design.
    """
    found = tuple(_is_of(folder, known))
    if stops(found):
        return Verified(problems=found)
    files = {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != MARKER
    }
    verdicts = verify(files, known)
    disagree = tuple(
        _as_far_as_it_goes(name, fault)
        if known.not_for_making and name in MODELS
        else Problem(
            code="file_disagrees",
            level="stop",
            message=f"{fault}.",
            about=name,
            found=fault,
            allowed="what the design says",
            fix="Make nothing from this pack; build it again.",
        )
        for name, verdict in verdicts.items()
        for fault in verdict.faults
    )
    return Verified(verdicts=verdicts, problems=(*found, *_changed(folder), *disagree))


def option_of(folder: Path) -> str | None:
    """The letter of the option that a pack says it is of; None where it says none."""
    content = _numbers(folder)
    found = None if content is None else content.get("option")
    return found if isinstance(found, str) else None


def _as_far_as_it_goes(name: str, fault: str) -> Problem:
    """A part whose cuts cannot all be made is shown as far as they can, and said to be."""
    return Problem(
        code="shown_as_far_as_it_goes",
        level="caution",
        message=f"{fault}; the model shows it as far as its cuts can be made.",
        about=name,
        found=fault,
        allowed="what the design says",
        fix="Mend the design's stops, and build it again.",
    )


def _is_of(folder: Path, known: Known) -> Iterator[Problem]:
    """Whether a folder is a pack, and of this state of the design."""
    marker = read_marker(folder)
    content = _numbers(folder)
    if marker is None or content is None:
        yield Problem(
            code="not_a_pack",
            level="stop",
            message=f"{folder} is no job pack.",
            found=str(folder),
            allowed=f"a folder that `stilewright build` made, with its {MARKER} and {FIGURES}",
            fix="Name the pack's own folder, such as outputs/NAME.",
            unreadable=True,
        )
        return
    built = str(content.get("fingerprint", ""))
    if built != known.fingerprint:
        yield Problem(
            code="pack_of_another_state",
            level="stop",
            message=f"This pack was built as {mark(built)}; the design is now {known.mark}.",
            found=mark(built),
            allowed=known.mark,
            fix="Build it again, or name the design it was built from.",
        )


def _numbers(folder: Path) -> dict[str, Any] | None:
    try:
        content = json.loads((folder / FIGURES).read_bytes())
    except (OSError, ValueError):
        return None
    return content if isinstance(content, dict) else None


def _changed(folder: Path) -> Iterator[Problem]:
    """Files that are no longer as they were built."""
    marker = read_marker(folder)
    assert marker is not None
    for path, digest in marker.files.items():
        now = digest_of(folder / path)
        if now == digest:
            continue
        what = "is gone" if now is None else "was changed"
        yield Problem(
            code="pack_changed",
            level="caution",
            message=f"{path} {what} since the pack was built.",
            about=path,
            found=path,
            allowed="the files as they were built",
            fix="Build the pack again, or look at who changed it.",
        )
