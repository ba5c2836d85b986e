"""The marker in a pack: it says that the folder is the tool's, and what the tool wrote in it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

MARKER = ".stilewright-pack.json"
_FORMAT = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Marker:
    """Of what design the pack is, and the sha256 of each file by its path in the pack."""

    design: str
    files: Mapping[str, str]


def marker_for(design: str, files: Mapping[str, bytes]) -> bytes:
    """The marker file of a pack with these files."""
    marker = {
        "stilewright pack": _FORMAT,
        "design": design,
        "files": {path: hashlib.sha256(files[path]).hexdigest() for path in sorted(files)},
    }
    return (json.dumps(marker, indent=1, ensure_ascii=False) + "\n").encode()


def read_marker(folder: Path) -> Marker | None:
    """The marker of a folder; None when it has none that can be read."""
    try:
        text = (folder / MARKER).read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        return None
    try:
        written = json.loads(text)
        if written["stilewright pack"] != _FORMAT:
            return None
        files = {str(path): str(digest) for path, digest in written["files"].items()}
        return Marker(design=str(written["design"]), files=files)
    except (ValueError, KeyError, TypeError, AttributeError):
        return None


def digest_of(file: Path) -> str | None:
    """sha256 of a file; None for what is no plain file or cannot be read."""
    if file.is_symlink() or not file.is_file():
        return None
    try:
        return hashlib.sha256(file.read_bytes()).hexdigest()
    except OSError:
        return None
