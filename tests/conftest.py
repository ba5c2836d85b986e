"""What every test may count on: its own empty settings folder, and hypothesis without a clock."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from parametric.job import Built

# Two workers on two cores: how long an example takes says nothing about the code.
settings.register_profile("here", deadline=None, print_blob=True)
settings.register_profile("ci", deadline=None, print_blob=True, derandomize=True, database=None)
settings.load_profile("ci" if os.environ.get("CI") == "true" else "here")

_SETTINGS = tempfile.TemporaryDirectory(prefix="stilewright-tests-")


def pytest_configure() -> None:
    """No test reads the house file of whoever runs it, nor leaves anything in their cache."""
    for name in ("XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME"):
        folder = Path(_SETTINGS.name, name.lower())
        folder.mkdir(exist_ok=True)
        os.environ[name] = str(folder)


def pytest_unconfigure() -> None:
    """Take the settings folder away again."""
    _SETTINGS.cleanup()


@pytest.fixture(scope="session")
def project() -> Path:
    """The folder that holds the whole project."""
    return Path(__file__).resolve().parent.parent


@pytest.fixture(scope="session")
def reading_room(project: Path) -> Path:
    """The design file of the pair of sliding doors that is the worked example."""
    return project / "examples" / "larch-hill-reading-room" / "design.yaml"


@pytest.fixture(scope="session")
def larch_hill(reading_room: Path, tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The worked example as a whole build makes it, once for all tests: copy it to spoil it."""
    return _built(reading_room, tmp_path_factory.mktemp("larch-hill") / "pack")


@pytest.fixture(scope="session")
def larch_hill_inch(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """Its twin in inches, the same way."""
    from tests.whole.test_build import INCH_TWIN

    folder = tmp_path_factory.mktemp("larch-hill-inch")
    design = folder / "design.yaml"
    design.write_text(INCH_TWIN, encoding="utf-8")
    return _built(design, folder / "pack")


@pytest.fixture(scope="session")
def mill_lane(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The hinged pair under one arch, as a whole build makes it."""
    design = project / "examples" / "mill-lane-study" / "design.yaml"
    return _built(design, tmp_path_factory.mktemp("mill-lane") / "pack")


@pytest.fixture(scope="session")
def larch_hill_two_ways(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The worked example with an option, as a whole build makes it."""
    from tests.options.larch_hill_two_ways import HOUSE, written

    folder = tmp_path_factory.mktemp("larch-hill-two-ways")
    (folder / "house.yaml").write_bytes(HOUSE.read_bytes())
    return _built(written(folder), folder / "pack")


def _built(design: Path, folder: Path) -> Built:
    from parametric.job import build

    made = build(design, out=folder, user_house=False)
    assert made.folder == folder, made.problems
    return made
