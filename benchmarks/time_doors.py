"""Timings of solids on two hard doors, printed as ratios in one run. Nothing is asserted.

    python benchmarks/time_doors.py [REPEATS]

The doors: six folding leaves with divided lites, and the arched pair of Mill Lane. For each:

1. Solids of all unique parts built anew: seconds for one, and the share of it inside kernel calls.
2. The same after one changed size, with the other solids kept from before: against all built anew.
"""

from __future__ import annotations

import cProfile
import pstats
import statistics
import sys
import tempfile
import time
from pathlib import Path

from parametric.job import check
from parametric.model import Part, shape_key
from parametric.solids.cache import Cache
from parametric.solids.solid_set import build_solids

HERE = Path(__file__).resolve().parent
MILL_LANE = HERE.parent / "examples/mill-lane-study/design.yaml"
HOUSE = HERE.parent / "examples/house.yaml"
FOLDING = HERE / "six folding leaves.yaml"
CHANGES = {
    FOLDING: (
        ("from bottom: 225", "from bottom: 226"),
        ("- bottom rail: 200 mm", "- bottom rail: 201 mm"),
    ),
    MILL_LANE: (
        ("from bottom: 11", "from bottom: 11-1/8"),
        ("- bottom rail: 9-1/2", "- bottom rail: 9-5/8"),
    ),
}
"""What is changed in each file, one at a time, from and to."""


def parts_of(text: str, folder: Path) -> tuple[Part, ...]:
    """The parts of a design, from its text; its house file lies in the folder."""
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    if job.assembly is None:
        raise SystemExit("\n".join(one.message for one in job.problems))
    return job.assembly.parts


def anew(parts: tuple[Part, ...]) -> float:
    """Seconds for the solids of all parts."""
    start = time.perf_counter()
    build_solids(parts)
    return time.perf_counter() - start


def rebuilt(parts: tuple[Part, ...], changed: tuple[Part, ...], folder: Path) -> float:
    """Seconds for the changed parts' solids, those of the first parts being kept."""
    with tempfile.TemporaryDirectory(dir=folder) as name:
        cache = Cache(folder=Path(name))
        build_solids(parts, cache)
        start = time.perf_counter()
        build_solids(changed, cache)
        return time.perf_counter() - start


def in_kernel(parts: tuple[Part, ...]) -> float:
    """The share of the time spent in calls of the kernel and not in our own code, 0 to 1.

    The profiler slows our own code and not the kernel's, so the share is rather too small.
    """
    profile = cProfile.Profile()
    profile.runcall(build_solids, parts)
    rows = pstats.Stats(profile).get_stats_profile().func_profiles
    total = sum(row.tottime for row in rows.values())
    return sum(row.tottime for row in rows.values() if row.file_name == "~") / total


def main(repeats: int) -> None:
    """Run and print."""
    for path, changes in CHANGES.items():
        text = path.read_text(encoding="utf-8")
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name)
            (folder / "house.yaml").write_bytes(HOUSE.read_bytes())
            parts = parts_of(text, folder)
            shapes = set(build_solids(parts).shapes)
            whole = statistics.median(anew(parts) for _ in range(repeats))
            print(f"{path.relative_to(HERE.parent)}: {len(parts)} parts, {len(shapes)} unique")
            print(f"  built anew  {whole:7.3f} s  {whole / len(shapes):6.3f} s a unique part")
            print(f"  in the kernel  {100 * in_kernel(parts):4.0f} %")
            for before, after in changes:
                if before not in text:
                    raise SystemExit(f"{path} has no line {before!r} to change")
                changed = parts_of(text.replace(before, after), folder)
                new = len({shape_key(part) for part in changed} - shapes)
                again = statistics.median(rebuilt(parts, changed, folder) for _ in range(repeats))
                print(f"  {after:<22}{again:7.3f} s  {again / whole:6.2f} x anew, {new} new shapes")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 3)
