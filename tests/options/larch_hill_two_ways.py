"""The worked example with options: one tall lite in place of two, and a third way without pulls."""

from __future__ import annotations

from pathlib import Path

from parametric.job import Job, check

PROJECT = Path(__file__).resolve().parents[2]
EXAMPLE = PROJECT / "examples/larch-hill-reading-room/design.yaml"
HOUSE = PROJECT / "examples/house.yaml"

TWO_WAYS = """
option A: {called: two lites}
option B:
  called: one tall lite
  leaf:
    top to bottom: [top rail: 120, lite: rest, lock rail: 150, panel: 460, {bottom rail: 240, tenons: 2}]
"""
A_THIRD = """
option C:
  like: B
  called: broad laps, no pulls
  door: {side lap: 80, pull: none}
  finish: {kind: none}
"""


def written(folder: Path, more: str = TWO_WAYS) -> Path:
    """The design with its options, in a folder of its own."""
    path = folder / "design.yaml"
    path.write_text(EXAMPLE.read_text("utf-8") + more, "utf-8")
    return path


def checked(path: Path, option: str | None = None) -> Job:
    """The design checked, with the example's house and no other."""
    return check(path, house=HOUSE, user_house=False, option=option)
