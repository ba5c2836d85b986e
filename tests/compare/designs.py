"""Larch Hill in a folder of its own, to be signed and changed."""

from __future__ import annotations

from pathlib import Path

from parametric.commands import Approved, approve, check
from parametric.problems import Problem

ROOT = Path(__file__).parents[2]
HOUSE = ROOT / "examples/house.yaml"
LARCH_HILL = ROOT / "examples/larch-hill-reading-room/design.yaml"


def copied(folder: Path, *changes: tuple[str, str], name: str = "design.yaml") -> Path:
    """The design with some of its text changed."""
    path = folder / name
    path.write_text(LARCH_HILL.read_text(encoding="utf-8"), encoding="utf-8")
    changed(path, *changes)
    return path


def changed(path: Path, *changes: tuple[str, str]) -> None:
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    path.write_text(text, encoding="utf-8")


def signed(
    path: Path, revision: str = "B", by: str = "client, on the sheet", date: str = "2026-11-20"
) -> Approved:
    return approve(path, revision=revision, by=by, date=date, house=HOUSE, user_house=False)


def problem(path: Path, code: str) -> Problem | None:
    found = check(path, house=HOUSE, user_house=False).problems
    return next((p for p in found if p.code == code), None)
