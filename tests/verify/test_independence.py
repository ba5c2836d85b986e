"""What reads a pack back shares no code with what wrote it."""

from __future__ import annotations

import ast
from pathlib import Path

FORBIDDEN = (
    "ezdxf",
    "trimesh",
    "cadquery",
    "OCP",
    "reportlab",
    "parametric.writers",
    "parametric.cnc",
    "parametric.drawing",
    "parametric.solids",
    "parametric.trade.cutlist",
    "parametric.trade.glass",
    "parametric.trade.tables",
)


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for one in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(one, ast.Import):
            names |= {alias.name for alias in one.names}
        elif isinstance(one, ast.ImportFrom):
            names.add(one.module or "")
            names |= {f"{one.module}.{alias.name}" for alias in one.names}
    return names


def test_verifying_imports_no_writer(project: Path) -> None:
    files = sorted((project / "parametric/pack/verifying").glob("*.py"))
    assert len(files) >= 18
    for path in files:
        for name in imported(path):
            for forbidden in FORBIDDEN:
                assert name != forbidden, path
                assert not name.startswith(f"{forbidden}."), (path, name)
