"""The house is in order: what stands where, what may import what, and how long a file gets."""

from __future__ import annotations

import fnmatch
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

# A file over this is usually two concepts.
LONGEST = 450

LONG_FOR_A_REASON = {
    "parametric/model.py": "the closed union of cuts, their volumes and the frames, read as one",
}

FOLDERS = {
    "cases",
    "catalog",
    "cnc",
    "design",
    "drawing",
    "hangings",
    "hardware",
    "infill",
    "joints",
    "pack",
    "parts",
    "profiles",
    "resolve",
    "rules",
    "shapes",
    "solids",
    "trade",
    "vendor",
    "writers",
}
MODULES = {
    "__init__.py",
    "cli.py",
    "commands.py",
    "figures.py",
    "job.py",
    "loaded.py",
    "model.py",
    "names.py",
    "outlines.py",
    "paths.py",
    "problems.py",
    "py.typed",
    "runs.py",
    "sections.py",
    "units.py",
    "written.py",
}
TOP = {
    ".ci",
    ".git",
    ".gitignore",
    "CHANGELOG.md",
    "DEVELOPERS.md",
    "LICENSE",
    "LICENSES",
    "Makefile",
    "README.md",
    "benchmarks",
    "docs",
    "examples",
    "outputs",
    "parametric",
    "pyproject.toml",
    "templates",
    "tests",
    "web",
}

DRAWERS = re.compile(
    r"(^|_)(utils?|helpers?|common|misc|base|managers?|handlers?|factory|context)(_|$)"
)

# What takes long to load: the CAD kernel, what traces light and what solves programmes.
KERNEL = {"cadquery", "OCP", "vtkmodules", "casadi", "mitsuba", "drjit", "pyoidn", "highspy"}


def ignored(project: Path, name: str) -> bool:
    """True for what .gitignore keeps out of the project wherever it lies."""
    patterns = (project / ".gitignore").read_text().split()
    return any(fnmatch.fnmatch(name, pattern.rstrip("/")) for pattern in patterns)


def sources(folder: Path) -> Iterator[Path]:
    """Every Python file that was written here."""
    for path in sorted(folder.rglob("*.py")):
        if not {"vendor", "node_modules", "__pycache__"} & set(path.parts):
            yield path


def test_the_top_level_holds_what_the_architecture_lists(project: Path) -> None:
    here = {path.name for path in project.iterdir() if not ignored(project, path.name)}
    assert here - TOP == set()


def test_the_package_holds_what_the_architecture_lists(project: Path) -> None:
    here = [p for p in (project / "parametric").iterdir() if not ignored(project, p.name)]
    assert {p.name for p in here if p.is_dir()} == FOLDERS
    assert {p.name for p in here if p.is_file()} - MODULES == set()


def test_no_drawer_is_opened(project: Path) -> None:
    for root in ("parametric", "tests", "benchmarks"):
        for path in sources(project / root):
            for name in (path.stem, path.parent.name):
                assert not DRAWERS.search(name), path


def test_no_file_holds_two_concepts(project: Path) -> None:
    long = {
        path.relative_to(project).as_posix(): lines
        for path in sources(project / "parametric")
        if (lines := len(path.read_text().splitlines())) > LONGEST
    }
    assert set(long) == set(LONG_FOR_A_REASON), long


def test_nothing_is_left_for_later(project: Path) -> None:
    later = re.compile(r"\b(TO" + r"DO|FIX" + r"ME|XX" + r"X)\b")
    for root in ("parametric", "tests", "benchmarks", "web/src", "docs", "templates", "examples"):
        for path in sorted((project / root).rglob("*")):
            if path.suffix in (".py", ".js", ".mjs", ".css", ".md", ".yaml") and (
                not {"vendor", "node_modules"} & set(path.parts)
            ):
                assert not later.search(path.read_text(encoding="utf-8")), path


def test_import_contracts(project: Path) -> None:
    command = Path(sys.executable).with_name("lint-imports")
    run = subprocess.run(
        [command, "--no-cache"], cwd=project, capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stdout + run.stderr
    assert "2 kept, 0 broken" in run.stdout


def fresh(script: str, *arguments: str, folder: Path) -> str:
    """Run a script in a new interpreter, and return what it prints."""
    run = subprocess.run(
        [sys.executable, "-c", script, *arguments],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env=os.environ | {"PYTHONPATH": str(Path(__file__).resolve().parents[2])},
    )
    assert run.returncode == 0, run.stderr
    return run.stdout


def test_no_module_outside_solids_and_two_writers_loads_the_kernel(
    project: Path, tmp_path: Path
) -> None:
    names = [
        ".".join(path.relative_to(project).with_suffix("").parts)
        for path in sources(project / "parametric")
    ]
    free = [
        name
        for name in names
        if not name.startswith("parametric.solids")
        and name not in ("parametric.writers.step", "parametric.writers.glb")
    ]
    assert len(free) > 20
    script = (
        "import importlib, sys\n"
        "for name in sys.argv[1:]:\n"
        "    importlib.import_module(name.removesuffix('.__init__'))\n"
        f"    loaded = sorted({KERNEL!r} & sys.modules.keys())\n"
        "    if loaded: print(name, loaded); break\n"
    )
    assert fresh(script, *free, folder=tmp_path) == ""


@pytest.mark.parametrize(
    "command",
    [
        ("--help",),
        ("check", "DESIGN"),
        ("check", "--json", "DESIGN"),
        ("cutlist", "DESIGN"),
        ("explain", "DESIGN", "leaf A / width"),
        ("schema",),
    ],
    ids=" ".join,
)
def test_commands_that_need_no_solid_never_load_the_kernel(
    command: tuple[str, ...], reading_room: Path, tmp_path: Path
) -> None:
    arguments = [str(reading_room) if word == "DESIGN" else word for word in command]
    script = (
        "import sys\n"
        "from parametric.cli import app\n"
        "try:\n"
        "    app(sys.argv[1:])\n"
        "except SystemExit as end:\n"
        "    assert end.code in (0, None), end.code\n"
        f"loaded = sorted({KERNEL!r} & sys.modules.keys())\n"
        "assert not loaded, loaded\n"
    )
    assert fresh(script, *arguments, folder=tmp_path) != ""


def test_decisions_are_numbered_and_say_what_was_given_up(project: Path) -> None:
    pages = sorted((project / "docs" / "decisions").iterdir())
    for number, page in enumerate(pages, 1):
        assert re.fullmatch(rf"{number:03}-[a-z0-9-]+\.md", page.name)
        text = page.read_text()
        assert text.startswith(f"# {number:03} ")
        for heading in ("**Context.**", "**Choice.**", "**Given up.**"):
            assert text.count(heading) == 1, (page.name, heading)
        assert len(text.split()) < 350, page.name
    assert len(pages) >= 5


def test_the_glossary_says_each_word_once(project: Path) -> None:
    rows = re.findall(
        r"^\| ([^|]+) \|", (project / "docs" / "glossary.md").read_text(), re.MULTILINE
    )
    words = [word.strip() for row in rows for word in row.split(",")]
    defined = [word for word in words if word not in ("Word", "---")]
    assert len(defined) > 100
    assert sorted(set(defined)) == sorted(defined)


def test_scripts_can_be_run(project: Path) -> None:
    for script in (".ci/run", ".ci/setup"):
        assert os.access(project / script, os.X_OK)
        checked = subprocess.run(["bash", "-n", project / script], check=False)
        assert checked.returncode == 0
