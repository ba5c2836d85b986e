"""Where the house file is looked for."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

NAME = "house.yaml"


def find_house(design: Path, *, given: Path | None, user_house: bool) -> Path | None:
    """The house file of a design: the one given, else the nearest, else the user's own.

    The nearest is beside the design or in a folder above it, up to the root of the
    repository it lies in, or up to the user's home. None means the tool's own settings.
    """
    if given is not None:
        return given
    for folder in _upwards(design.resolve().parent):
        if (folder / NAME).is_file():
            return folder / NAME
    if not user_house:
        return None
    import platformdirs

    own = Path(platformdirs.user_config_dir("stilewright", appauthor=False)) / NAME
    return own if own.is_file() else None


def _upwards(folder: Path) -> Iterator[Path]:
    home = Path.home()
    for one in (folder, *folder.parents):
        yield one
        if (one / ".git").exists() or one == home:
            return
