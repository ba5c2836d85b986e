"""One door of each kind worked out by hand, in the opening of `doors.py`; the sums stand beside.

The opening: widths 1526, 1524, 1529 (left side plumb, so the plumb clear width is the least,
1524); head 2069 above the highest floor; wall 150; leaves 40 thick. The pin of a hinge stands
6 out of the face and a pivot 40 in from the end, where no hinge says otherwise.
"""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import pytest

from parametric.pack.numbers import figures
from tests.hangings.doors import REST, job_of

WORKED: dict[str, dict[str, float]] = {
    "sliding right": {
        "leaf width": 1529 + 2 * 40,
        "leaf height": 2069 + 40 - 10,
        "leaf A / left edge": -40,
        # until its closing edge is at the far side of the widest opening
        "leaf A / travel": 1529 + 40,
        "track length": 1609 + 1569,
        "clear way": 1524,
        "gap behind the leaf": 86 - 20,
        "lap each side where narrowest": (1609 - 1524) / 2,
        "floor gap in the travel": 10 - 4,
    },
    "biparting": {
        "leaf width": (1609 - 3) / 2,
        "leaf B / left edge": -40 + 803 + 3,
        "leaf A / travel": -(803 - 40),
        "leaf B / travel": 803 - 40,
        "track length": 1609 + 2 * 763,
        "track begins at": -40 - 763,
        "clear way": 1524,
    },
    "bypass": {
        "leaf width": (1609 + 90) / 2,
        "overlap": 90,
        "gap between passing leaves": 52 - 40,
        "clear way": 1524 - (849.5 - 42.5),
        "track length": 1609,
    },
    "bypass of three": {
        # three leaves, two overlaps of a stile; A and C on the outer track, B on the inner
        "leaf width": (1609 + 2 * 90) / 3,
        "leaf B / left edge": -40 + (1789 / 3 - 90),
        "leaf A / travel": 1609 - 2 * 1789 / 3,
        "leaf B / travel": 1609 - 1789 / 3 - (1789 / 3 - 90),
        "leaf C / travel": 1789 / 3 - 2 * (1789 / 3 - 90),
        # B aside behind C: all the cover but A and C, 416.3; at a side a lap of 42.5 is lost, 373.8
        "clear way": 1609 - 2 * 1789 / 3,
        "inner track off the wall": 86 - 52,
    },
    "bypass of three on three": {
        "inner track off the wall": 86 - 2 * 52,
        "middle track off the wall": 86 - 52,
        "clear way": 1524 - (1789 / 3 - 42.5),
    },
    # A and D on the front track, the others alone on theirs: B and C slid to the right leave all of
    # the cover but A and D, with no lap lost
    "kind: bypass\nleaves: 4\ntracks: [front, middle, back, front]": {
        "leaf width": (1609 + 3 * 90) / 4,
        "clear way": 1609 - 2 * 469.75,
    },
    # two tracks in turn: at a side B and D stand before A and C, and the lap of 42.5 is lost
    "kind: bypass\nleaves: 4": {"clear way": 1524 - (2 * 469.75 - 42.5)},
    # A, C, E on the front track: B and C slid to the right leave all but three widths
    "kind: bypass\nleaves: 5": {
        "leaf width": (1609 + 4 * 90) / 5,
        "clear way": 1609 - 3 * 393.8,
    },
    "kind: bypass\nleaves: 5\ntracks: [front, middle, back, front, middle]": {
        "clear way": 1524 - (2 * 393.8 - 42.5),
    },
    "kind: bypass\nleaves: 6": {
        "leaf width": (1609 + 5 * 90) / 6,
        "clear way": 1524 - (3 * 2059 / 6 - 42.5),
    },
    # leaves of 40 and 50: half of either stands in the 52 between the tracks, the 50 at the wall
    "kind: bypass\nleaf: [top, thick]": {
        "gap between passing leaves": 52 - (40 + 50) / 2,
        "gap behind the inner leaf": 86 - 52 - 25,
    },
    "pocket right": {
        "leaf width": 1524 + 10 + 18,
        "leaf height": 2069 + 25 - 10,
        "leaf A / left edge": -10,
        "leaf A / travel": 1524 - 50 + 10,
        "clear way": 1524 - 50,
        # what lies in the wall when open: the leaf less what stays out, and the buffer behind it
        "depth of the pocket": 1552 - 10 - 50 + 20 + 5,
        "track length": 1552 + 1484,
        "gap beside the leaf in the wall": (150 - 40) / 2,
    },
    "hinged left": {
        "leaf width": 1524 - 2.5 - 3,
        "leaf height": 2069 - 3 - 10,
        "leaf A / left edge": 2.5,
        "leaf A / pin from the left of the opening": 1.25,
        "leaf A / stands in the way when open": 1.25 + 6 + 40,
        "clear way": 1524 - 47.25,
        "leaf A / reach when open": 6 + 1.25 + 1518.5,
        # the far corner of a square edge, 1519.75 along and 46 back from the pin, comes round until
        # it is level with the knuckle face, 6 from the pin
        "leaf A / gap that the closing edge needs": math.sqrt(1519.75**2 + 46**2 - 6**2) - 1519.75,
    },
    "hinged pair": {
        "leaf width": (1524 - 5 - 3) / 2,
        "leaf B / left edge": 2.5 + 758 + 3,
        "clear way": 1524 - 2 * 47.25,
        # planed 3 degrees the far corner is 40 tan 3 = 2.10 nearer, and passes inside its own width
        "leaf A / gap that the closing edge needs": 0,
    },
    "unequal pair": {
        "left leaf width": (1524 - 8) * 2 / 3,
        "right leaf width": (1524 - 8) / 3,
    },
    "bifold two left": {
        "leaf width": (1524 - 2 * 5 - 3) / 2,
        "leaf height": 2069 - 45 - 10,
        "clear way": 1524 - (5 + 40 + 20 + (40 + 12)),
        "gap that the corner at the pivot needs": math.hypot(40, 20) - 40,
        # pivot to last edge 1474 along, two hinges of 26 and half the leaf, 72, aside
        "folding / gap that the last edge from the left needs": math.hypot(1474, 72) - 1474,
        "reach when open": 755.5 - 40 - 75,
    },
    "bifold four both": {
        "leaf width": (1524 - 2 * 5 - 2 * 3 - 8) / 4,
        "folded / stack at the left": 5 + 40 + 20 + 52,
        "clear way": 1524 - 2 * 117,
    },
    "bifold six right": {
        "leaf width": (1524 - 2 * 28 - 5 * 3) / 6,
        "folded / stack at the right": 28 + 40 + 20 + 5 * 52,
    },
}


@pytest.mark.parametrize("kind", WORKED)
def test_numbers(kind: str, tmp_path: Path) -> None:
    job = job_of(kind, tmp_path, f"{REST}leaf thick: {{like: top, thickness: 50}}\n")
    assert job.resolved is not None
    found = figures(job.resolved, job.loads)
    for name, worked in WORKED[kind].items():
        assert float(found[name]) == pytest.approx(worked, abs=1e-9), name


@pytest.mark.parametrize("hung", ["on the wall", "in the opening"])
@pytest.mark.parametrize("tracks", [None, ("front", "back"), ("front", "middle", "back")])
@pytest.mark.parametrize("count", [2, 3, 4, 5, 6])
def test_the_clear_way_is_the_widest_that_leaves_can_leave(
    count: int, tracks: tuple[str, ...] | None, hung: str, tmp_path: Path
) -> None:
    """By trying every leaf shut and slid, wherever no two of a track come to one place."""
    kind = f"kind: bypass\nleaves: {count}\nhung: {hung}"
    if tracks is not None:
        kind += f"\ntracks: [{', '.join((tracks * count)[:count])}]"
    job = job_of(kind, tmp_path)
    assert job.resolved is not None
    hanging = job.resolved.door.hanging
    begins = float(hanging.leaves[0].left) + float(hanging.stack_lap or 0)
    ends, widest = begins + 1524, 0.0
    for slid in itertools.product((0, 1), repeat=count):
        stands = [
            (float(leaf.left) + far * float(leaf.travel or 0), leaf.track)
            for leaf, far in zip(hanging.leaves, slid, strict=True)
        ]
        wide = float(hanging.leaf_width)
        if any(
            a[1] == b[1] and abs(a[0] - b[0]) < wide - 1e-6
            for a, b in itertools.combinations(stands, 2)
        ):
            continue
        covered = begins
        for left, _ in sorted(stands):
            widest = max(widest, min(left, ends) - covered)
            covered = max(covered, left + wide)
        widest = max(widest, ends - covered)
    assert float(hanging.clear_way) == pytest.approx(widest, abs=1e-6)
